//! By which rule a lift goes from one set to the next.

use crate::error::{Allowed, Code, Error};
use crate::numeric;
use crate::quantity::Rpe;

/// By which rule a lift goes from one set to the next. Whatever the rule, a lost critical point of technique, pain and
/// today's limit come before it: no rule ever passes what the day allows.
#[non_exhaustive]
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(rename_all = "snake_case", deny_unknown_fields)
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum SetRule {
    /// Only technique, pain and missed repetitions change anything.
    TechniqueStop,
    /// By the lifter's own curve of repetitions and load where there is one, else by a published equation.
    OwnCurve,
    /// By a fixed part of the load for each point of rating missed.
    FixedPerPoint {
        /// Part of the load, above 0 and at most 0.1; absent means that of
        /// [`PART_PER_POINT`](crate::prescription::PART_PER_POINT).
        #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
        part: Option<f64>,
    },
    /// Repetitions first: less load where a set ends below the bottom of the range.
    DoubleProgression {
        /// Fewest repetitions of a set.
        bottom: u8,
        /// Most repetitions of a set.
        top: u8,
    },
    /// By the published table of repetitions done to the limit at the working load (Knight 1979), made for the knee
    /// extension after an injury.
    RepetitionTable,
    /// The same load until a set reaches this rating.
    StopAtEffort {
        /// The rating that ends the lift for today.
        rating: Rpe,
    },
    /// A first set at today's load, then lighter ones until one of them reaches this rating.
    BackOff {
        /// By which part of the first set's load the others are lighter, at most 0.5.
        reduction: f64,
        /// The rating that ends the lift for today.
        rating: Rpe,
    },
}

impl SetRule {
    pub(super) fn check(&self) -> Result<(), Error> {
        let part = |field, value, high| {
            let value = numeric::within(Code::OutOfRange, field, value, 0.0, high, "of the load")?;
            if value > 0.0 {
                Ok(())
            } else {
                Err(Error::range(Code::OutOfRange, field, value, 0.0, high, "of the load, above 0"))
            }
        };
        match *self {
            SetRule::FixedPerPoint { part: Some(value) } => part("part", value, 0.1),
            SetRule::BackOff { reduction, .. } => part("reduction", reduction, 0.5),
            SetRule::DoubleProgression { bottom, top } => {
                for (field, reps) in [("bottom", bottom), ("top", top)] {
                    if !(1..=30).contains(&reps) {
                        return Err(Error::range(Code::OutOfRange, field, reps, 1.0, 30.0, ""));
                    }
                }
                if bottom > top {
                    return Err(Error::new(
                        Code::IntervalReversed,
                        "top",
                        top,
                        Allowed::rule("bottom <= top"),
                    ));
                }
                Ok(())
            }
            _ => Ok(()),
        }
    }
}
