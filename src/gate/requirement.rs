//! A gate: requirements, alone or put together.

use alloc::vec::Vec;

use super::evidence::Evidence;
use super::pass_run::PassRun;
use crate::canonical::{Canonical, canonical_kinds};
use crate::error::{Allowed, Code, Error};
use crate::source::{OURS, constant, rows};

constant! {
    "gate.spacing_days",
    /// Days between two steps up of one lift.
    ///
    /// # Source
    /// Our choice (row `gate.spacing_days`).
    pub const SPACING_DAYS: u16 = 7;
    source: OURS, place: "technique gate", standing: OurChoice, seen: NotApplicable,
    domain: "days since the last step up",
}

/// Deepest nesting of requirements.
const DEEPEST: u8 = 6;
/// Most requirements of one gate, groups included.
const MOST: usize = 60;
/// Longest dwell or spacing, in sessions or days.
const LONGEST: u16 = 3_660;

/// One thing that a gate asks for.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, rename_all = "snake_case")
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Requirement {
    /// Passing sessions in a row.
    PassRun(PassRun),
    /// Enough acceptable repetitions to be sure enough.
    Evidence(Evidence),
    /// Effort recorded and under its cap in the qualifying sessions.
    EffortCap,
    /// No open block: pain, symptom, clearance.
    NoOpenBlock,
    /// So many sessions at the present tuple.
    DwellSessions(u16),
    /// So many days at the present tuple.
    DwellDays(u16),
    /// So many days since the last step up.
    Spacing(u16),
    /// The coach's sign-off.
    SignOff,
    /// Every condition set by the other lift of the pair; in the progression, that it is not stopped.
    Pair,
    /// Every condition set by the regions of the lift; in the progression, that none is stopped and each has had its
    /// clear sessions since it last hurt.
    Region,
    /// All of these.
    All(Vec<Requirement>),
    /// At least one of these.
    Any(Vec<Requirement>),
    /// At least so many of these.
    AtLeast {
        /// How many.
        count: u8,
        /// Of which.
        of: Vec<Requirement>,
    },
}

canonical_kinds!(Requirement:
    0 PassRun(run),
    1 Evidence(test),
    2 EffortCap,
    3 NoOpenBlock,
    4 DwellSessions(sessions),
    5 DwellDays(days),
    6 Spacing(days),
    7 SignOff,
    8 Pair,
    9 Region,
    10 All(of),
    11 Any(of),
    12 AtLeast { count, of },
);

/// A gate: what must have been shown before a step up may be taken.
///
/// Built from a [`Requirement`] and checked once, so that a gate that is always open or can never open does
/// not exist.
///
/// ```
/// use bismar::gate::{Gate, GateFacts, PassRun, Requirement};
///
/// let gate = Gate::usual(PassRun::new(9, 10, 3)?)?;
/// assert!(!gate.check(&GateFacts::default())?.open);
/// assert!(Gate::new(Requirement::All(vec![])).is_err());
/// # Ok::<(), bismar::Error>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(try_from = "Requirement", into = "Requirement")
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Gate(Requirement);

impl Canonical for Gate {
    fn put(&self, out: &mut Vec<u8>) {
        self.0.put(out);
    }
}

impl Gate {
    /// A gate.
    ///
    /// # Errors
    /// `gate_always_open` for an empty group, a count of 0, a dwell or spacing of 0; `gate_never_opens` for a
    /// count above the size of its group; `gate_too_large` above 60 requirements or 6 levels; `out_of_range`
    /// for a dwell or spacing above 3660.
    pub fn new(requirement: Requirement) -> Result<Gate, Error> {
        let mut left = MOST;
        validate(&requirement, DEEPEST, &mut left)?;
        Ok(Gate(requirement))
    }

    /// The usual gate: this pass-run, no open block, effort under its cap, a week since the last step up.
    ///
    /// # Errors
    /// None in practice; as [`Gate::new`].
    pub fn usual(run: PassRun) -> Result<Gate, Error> {
        Gate::new(Requirement::All(Vec::from([
            Requirement::PassRun(run),
            Requirement::NoOpenBlock,
            Requirement::EffortCap,
            Requirement::Spacing(SPACING_DAYS),
        ])))
    }

    /// Whether any run in it starts anew when another person gives the marks.
    #[must_use]
    pub fn restarts_with_another_rater(&self) -> bool {
        fn restarts(requirement: &Requirement) -> bool {
            match requirement {
                Requirement::PassRun(run) => run.rater_restarts(),
                Requirement::All(parts) | Requirement::Any(parts) => parts.iter().any(restarts),
                Requirement::AtLeast { of, .. } => of.iter().any(restarts),
                _ => false,
            }
        }
        restarts(&self.0)
    }

    /// What it asks for.
    #[must_use]
    pub const fn requirement(&self) -> &Requirement {
        &self.0
    }
}

impl TryFrom<Requirement> for Gate {
    type Error = Error;

    fn try_from(requirement: Requirement) -> Result<Gate, Error> {
        Gate::new(requirement)
    }
}

impl From<Gate> for Requirement {
    fn from(gate: Gate) -> Requirement {
        gate.0
    }
}

fn validate(requirement: &Requirement, depth: u8, left: &mut usize) -> Result<(), Error> {
    let (Some(rest), Some(depth)) = (left.checked_sub(1), depth.checked_sub(1)) else {
        let rule = Allowed::rule("at most 60 requirements in at most 6 levels");
        return Err(Error::new(Code::GateTooLarge, "gate", "", rule));
    };
    *left = rest;
    match requirement {
        Requirement::DwellSessions(need) => length("dwell_sessions", *need),
        Requirement::DwellDays(need) => length("dwell_days", *need),
        Requirement::Spacing(need) => length("spacing", *need),
        Requirement::All(parts) => group("all", parts, parts.len(), depth, left),
        Requirement::Any(parts) => group("any", parts, 1, depth, left),
        Requirement::AtLeast { count, of } => group("at_least", of, usize::from(*count), depth, left),
        _ => Ok(()),
    }
}

fn length(field: &'static str, need: u16) -> Result<(), Error> {
    match need {
        0 => Err(Error::new(Code::GateAlwaysOpen, field, need, Allowed::rule("at least 1"))),
        1..=LONGEST => Ok(()),
        _ => Err(Error::range(Code::OutOfRange, field, need, 1.0, f64::from(LONGEST), "")),
    }
}

fn group(
    field: &'static str,
    parts: &[Requirement],
    count: usize,
    depth: u8,
    left: &mut usize,
) -> Result<(), Error> {
    if parts.is_empty() || count == 0 {
        return Err(Error::new(Code::GateAlwaysOpen, field, count, Allowed::rule("at least 1")));
    }
    if count > parts.len() {
        return Err(Error::range(Code::GateNeverOpens, field, count, 1.0, parts.len() as f64, ""));
    }
    parts.iter().try_for_each(|part| validate(part, depth, left).map_err(|error| error.within(field)))
}

rows![SPACING_DAYS];
