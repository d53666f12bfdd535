//! What a coach sets for one lift: ladder, range, tempo, gate, steps.

use alloc::vec::Vec;

use super::event::Rung;
use super::parameters::Policy;
use crate::error::{Allowed, Code, Error};
use crate::gate::{Criterion, Gate, PassRules, check_criteria};
use crate::quantity::{Length, Mass, Name};
use crate::record::session::at_most;

/// The most rungs, ranges, tempos and regions of one lift.
const MOST_CHOICES: usize = 24;
const MOST_REGIONS: usize = 6;
/// No automatic step is ever larger than this part of the load (our choice, a hard limit).
pub(crate) const HARD_STEP_CAP: f64 = 0.10;

/// Which half of the body a lift loads; sets the default size of a step.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
pub enum Body {
    /// Arms and shoulders: steps of at most 2.5 %.
    Upper,
    /// Legs and hips: steps of at most 5 %.
    Lower,
}

/// The one thing that may move at a time.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
pub enum Dimension {
    /// Another rung of the ladder.
    Variant,
    /// A longer range.
    Range,
    /// A harder tempo.
    Tempo,
    /// One more set.
    Sets,
    /// One more repetition.
    Reps,
    /// More load.
    Load,
}

/// How large a step in load is.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
pub enum StepPolicy {
    /// A part of the load, 0.025 being 2.5 %.
    Part(f64),
    /// A fixed mass.
    Fixed(Mass),
    /// Whatever the equipment loads next.
    SmallestLoadable,
}

/// Seconds down, hold and up.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct Tempo {
    /// Seconds down.
    pub down: u8,
    /// Seconds of hold.
    pub hold: u8,
    /// Seconds up.
    pub up: u8,
}

/// Where a lift stands: rung, range and tempo as places in the lists of its parameters, then sets, repetitions
/// and load. Technique is judged at a tuple and does not carry over to another.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct Tuple {
    /// Place in the list of rungs.
    #[cfg_attr(feature = "serde", serde(default))]
    pub rung: u8,
    /// Place in the list of ranges, easiest first.
    #[cfg_attr(feature = "serde", serde(default))]
    pub range: u8,
    /// Place in the list of tempos, easiest first.
    #[cfg_attr(feature = "serde", serde(default))]
    pub tempo: u8,
    /// Work sets.
    pub sets: u8,
    /// Repetitions a set.
    pub reps: u8,
    /// Load.
    pub load: Mass,
}

/// What a coach sets for one lift.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct TrackParameters {
    /// Name of the lift.
    pub name: Name,
    /// Upper or lower body.
    pub body: Body,
    /// Regions the lift loads; pain in one of them concerns every lift that shares it.
    pub regions: Vec<Name>,
    /// Id of the implement in the equipment.
    pub implement: Name,
    /// Rungs, at least one.
    pub rungs: Vec<Rung>,
    /// Ranges from easiest to full, as heights or depths; empty where range is not measured.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub ranges: Vec<Length>,
    /// Tempos from easiest to hardest; empty where tempo is not prescribed.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub tempos: Vec<Tempo>,
    /// Where the lift starts.
    pub start: Tuple,
    /// The one dimension that moves in this block.
    #[cfg_attr(feature = "serde", serde(default = "load_moves"))]
    pub moving: Dimension,
    /// What technique is judged by.
    pub criteria: Vec<Criterion>,
    /// When a session passes.
    #[cfg_attr(feature = "serde", serde(default))]
    pub pass: PassRules,
    /// When the lift may move.
    pub gate: Gate,
    /// Size of a step; absent means 2.5 % for the upper and 5 % for the lower body.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub step: Option<StepPolicy>,
    /// Largest step allowed as a part of the load, at most 0.10; absent means the default of the body half.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub step_cap: Option<f64>,
    /// Highest load the coach allows at all.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub ceiling: Option<Mass>,
    /// Most repetitions a set, where repetitions move.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub reps_top: Option<u8>,
    /// Most sets, where sets move.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub sets_top: Option<u8>,
    /// Sessions of calibration on a new rung; absent means the policy's number.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub learning_sessions: Option<u8>,
    /// Needs pins or a spotter when alone, as a bench press or a squat does.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "core::ops::Not::not"))]
    pub over_the_body: bool,
}

#[cfg(feature = "serde")]
fn load_moves() -> Dimension {
    Dimension::Load
}

impl TrackParameters {
    /// Largest step allowed as a part of the load.
    #[must_use]
    pub fn cap(&self) -> f64 {
        self.step_cap.unwrap_or(match self.body {
            Body::Upper => 0.025,
            Body::Lower => 0.05,
        })
    }

    /// Size of a step.
    #[must_use]
    pub fn step_policy(&self) -> StepPolicy {
        self.step.unwrap_or(StepPolicy::Part(self.cap()))
    }

    /// Sessions of calibration on a lift that is new or taken up again.
    pub(crate) fn learning(&self, policy: &Policy) -> u8 {
        self.learning_sessions.unwrap_or(policy.learning_sessions)
    }

    /// Sessions of calibration where only the rung is new, or a long break lies behind: half, at least two (our
    /// choice).
    pub(crate) fn relearning(&self, policy: &Policy) -> u8 {
        (self.learning(policy) / 2).max(2)
    }

    /// Whether rung `harder` lies above rung `easier` on some chain of the ladder.
    #[must_use]
    pub fn is_harder(&self, harder: u8, easier: u8) -> bool {
        let mut reached = alloc::vec![harder];
        let mut at = 0;
        // Each rung enters the list once, so the walk ends.
        while let Some(index) = reached.get(at).copied() {
            at += 1;
            for below in self.easier_rungs(index) {
                if below == easier {
                    return true;
                }
                if !reached.contains(&below) {
                    reached.push(below);
                }
            }
        }
        false
    }

    /// Places of the rungs directly easier than the one at `index`.
    pub(crate) fn easier_rungs(&self, index: u8) -> impl Iterator<Item = u8> + '_ {
        let names =
            self.rungs.get(usize::from(index)).map(|rung| rung.harder_than.as_slice()).unwrap_or_default();
        names
            .iter()
            .filter_map(|name| self.rungs.iter().position(|rung| rung.name == *name))
            .map(|at| at as u8)
    }

    /// Checks what the parts alone cannot.
    ///
    /// # Errors
    /// `too_many`, `empty_list`, `unknown_name`, `duplicate_name`, `ladder_cycle`, `out_of_range`, and what
    /// [`check_criteria`] and [`PassRules::check`] report.
    pub fn check(&self) -> Result<(), Error> {
        at_most("rungs", self.rungs.len(), MOST_CHOICES)?;
        at_most("ranges", self.ranges.len(), MOST_CHOICES)?;
        at_most("tempos", self.tempos.len(), MOST_CHOICES)?;
        at_most("regions", self.regions.len(), MOST_REGIONS)?;
        if self.rungs.is_empty() {
            return Err(Error::plain(Code::EmptyList, "rungs"));
        }
        check_criteria(&self.criteria)?;
        self.pass.check().map_err(|error| error.within("pass"))?;
        self.check_ladder()?;
        self.check_tuple(&self.start).map_err(|error| error.within("start"))?;
        self.check_step()
    }

    fn check_ladder(&self) -> Result<(), Error> {
        for (at, rung) in self.rungs.iter().enumerate() {
            let inside = |error: Error| error.within(&alloc::format!("rungs[{at}]"));
            if self.rungs.iter().take(at).any(|earlier| earlier.name == rung.name) {
                return Err(Error::new(Code::DuplicateName, "rungs", rung.name.as_str(), Allowed::Unstated));
            }
            at_most("harder_than", rung.harder_than.len(), MOST_CHOICES).map_err(inside)?;
            for name in &rung.harder_than {
                if !self.rungs.iter().any(|other| other.name == *name) {
                    let rule = Allowed::rule("a rung of this ladder");
                    return Err(inside(Error::new(Code::UnknownName, "harder_than", name.as_str(), rule)));
                }
            }
            if let Some(ratio) = rung.own_ratio {
                crate::numeric::within(Code::OutOfRange, "own_ratio", ratio, 0.05, 20.0, "")
                    .map_err(inside)?;
            }
            if self.is_harder(at as u8, at as u8) {
                return Err(Error::new(Code::LadderCycle, "rungs", rung.name.as_str(), Allowed::Unstated));
            }
        }
        Ok(())
    }

    /// Whether a tuple names places that exist. Whether its load can be, the implement says:
    /// [`Parameters::check_load`](super::Parameters::check_load).
    ///
    /// # Errors
    /// `out_of_range`.
    pub fn check_tuple(&self, tuple: &Tuple) -> Result<(), Error> {
        let inside = |field, place: u8, length: usize| {
            let highest = length.max(1) - 1;
            if usize::from(place) > highest {
                return Err(Error::range(Code::OutOfRange, field, place, 0.0, highest as f64, ""));
            }
            Ok(())
        };
        inside("rung", tuple.rung, self.rungs.len())?;
        inside("range", tuple.range, self.ranges.len())?;
        inside("tempo", tuple.tempo, self.tempos.len())?;
        for (field, count) in [("sets", tuple.sets), ("reps", tuple.reps)] {
            if !(1..=30).contains(&count) {
                return Err(Error::range(Code::OutOfRange, field, count, 1.0, 30.0, ""));
            }
        }
        Ok(())
    }

    fn check_step(&self) -> Result<(), Error> {
        let part = |field, value| {
            let value =
                crate::numeric::within(Code::OutOfRange, field, value, 0.0, HARD_STEP_CAP, "of the load")?;
            if value > 0.0 {
                Ok(())
            } else {
                Err(Error::range(Code::OutOfRange, field, value, 0.0, HARD_STEP_CAP, "above 0"))
            }
        };
        if let Some(cap) = self.step_cap {
            part("step_cap", cap)?;
        }
        match self.step {
            Some(StepPolicy::Part(value)) => part("step", value),
            Some(StepPolicy::Fixed(mass)) if !mass.is_positive() => {
                Err(Error::range(Code::OutOfRange, "step", mass.kg(), 0.0, Mass::MAX.kg(), "kg, above 0"))
            }
            _ => Ok(()),
        }
    }
}
