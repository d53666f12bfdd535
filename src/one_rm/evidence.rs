//! What is known of a set, and whether it may speak about strength.

use alloc::vec::Vec;

use derive_setters::Setters;

use super::effort::reserve_of;
use super::equation::Equation;
use super::options::EstimateOptions;
use super::reserve_error::LONG_SET;
use crate::quantity::{Day, Mass, Reps, Rir, Rpe};

/// How near to failure a set went.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum SetEffort {
    /// One more was tried and failed: nothing is left to misjudge.
    Failure,
    /// Repetitions in reserve as the lifter called them. None left is a call too, not a failure.
    Rir(Rir),
    /// A rating on the scale built on reserve.
    Rpe(Rpe),
    /// Nobody asked.
    NotReported,
}

/// Whether the movement held up.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum TechniqueVerdict {
    /// It passed.
    Passed,
    /// It did not.
    Failed,
    /// Nobody scored it, which is not a pass.
    NotScored,
}

/// One set, as plain facts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Setters)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, rename_all = "snake_case")
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct SetEvidence {
    /// Load.
    pub load: Mass,
    /// Repetitions done.
    pub reps: Reps,
    /// How near to failure.
    pub effort: SetEffort,
    /// Whether the movement held up.
    pub technique: TechniqueVerdict,
    /// The day; sets without one are taken to share a day.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub day: Option<Day>,
}

impl SetEvidence {
    /// That set, on a day nobody wrote down.
    #[must_use]
    pub fn new(load: Mass, reps: Reps, effort: SetEffort, technique: TechniqueVerdict) -> SetEvidence {
        SetEvidence { load, reps, effort, technique, day: None }
    }
}

/// Why a set is not used.
#[non_exhaustive]
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum SetRefusal {
    /// The movement failed: the number would inflate the plan.
    TechniqueFailed,
    /// Nobody scored the movement (unless the options accept that).
    TechniqueNotScored,
    /// Nobody asked how many were left.
    EffortNotReported,
    /// The rating does not name a reserve.
    NotAReserve,
    /// Too many left for the call to mean much.
    TooFarFromFailure,
    /// Too many repetitions to failure, done and called: equations say far too much or too little there.
    TooManyReps,
    /// No repetition was done.
    NoRepetition,
    /// No load.
    NoLoad,
    /// None of the chosen equations is defined here.
    NoEquation,
}

/// Why a used set should be read with care.
#[non_exhaustive]
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum SetFlag {
    /// Longer than the usual 1 to 10 repetitions.
    MoreRepsThanUsual,
    /// Nobody scored the movement.
    TechniqueNotScored,
    /// The rating stands for a band; its middle is used and its width counted.
    ReserveIsABand,
    /// Some of the chosen equations were not measured at this many repetitions to failure; they are left out.
    SomeEquationsOutside,
    /// None of the chosen equations was measured at this many repetitions to failure; they are used all the same.
    AllEquationsOutside,
    /// Called in a set of more than 12 repetitions to failure: people leave 2 to 5 more than they say there.
    CalledInALongSet,
    /// A single repetition with nothing left: its load is taken as the maximum (our choice).
    TakenAsMaximum,
    /// It lies far from what the sets say together.
    DisagreesWithTheRest,
}

/// What became of one set.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct SetUse {
    /// Repetitions to failure that it stands for, bias included; absent where there is no reserve.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub reps_to_failure: Option<f64>,
    /// How the estimate moves with it: weights of all sets add up to 1; 0 where it is refused. A weight may be
    /// negative where longer sets only serve to correct for the lifter's curve.
    pub weight: f64,
    /// Every reason against it; used if empty.
    pub refusals: Vec<SetRefusal>,
    /// Reasons for care.
    pub flags: Vec<SetFlag>,
}

/// The middle of the reserve and half the width of its band.
pub(super) struct Reserve {
    pub(super) rir: f64,
    pub(super) half_band: f64,
    pub(super) failed: bool,
}

/// A set that may speak, with the equations that may speak for it.
pub(super) struct UsableSet {
    pub(super) at: usize,
    pub(super) load: f64,
    pub(super) done: f64,
    pub(super) to_failure: f64,
    pub(super) reserve: Reserve,
    pub(super) day: Option<Day>,
    pub(super) equations: Vec<Equation>,
    pub(super) is_maximum: bool,
}

fn reserve(effort: SetEffort) -> Result<Reserve, SetRefusal> {
    match effort {
        SetEffort::Failure => Ok(Reserve { rir: 0.0, half_band: 0.0, failed: true }),
        SetEffort::Rir(rir) => Ok(Reserve { rir: rir.value(), half_band: 0.0, failed: false }),
        SetEffort::NotReported => Err(SetRefusal::EffortNotReported),
        SetEffort::Rpe(rpe) => {
            let (least, most) = reserve_of(rpe).map_err(|_| SetRefusal::NotAReserve)?;
            let (least, most) = (least.value(), most.value());
            Ok(Reserve { rir: (least + most) / 2.0, half_band: (most - least) / 2.0, failed: false })
        }
    }
}

fn plain_refusals(set: &SetEvidence, options: &EstimateOptions) -> Vec<SetRefusal> {
    let mut refusals = Vec::new();
    match set.technique {
        TechniqueVerdict::Failed => refusals.push(SetRefusal::TechniqueFailed),
        TechniqueVerdict::NotScored if !options.accept_unscored => {
            refusals.push(SetRefusal::TechniqueNotScored);
        }
        _ => {}
    }
    if !set.load.is_positive() {
        refusals.push(SetRefusal::NoLoad);
    }
    if set.reps.value() < 1.0 {
        refusals.push(SetRefusal::NoRepetition);
    }
    refusals
}

fn plain_flags(set: &SetEvidence, options: &EstimateOptions) -> Vec<SetFlag> {
    let mut flags = Vec::new();
    if set.reps > options.usual_reps {
        flags.push(SetFlag::MoreRepsThanUsual);
    }
    if set.technique == TechniqueVerdict::NotScored {
        flags.push(SetFlag::TechniqueNotScored);
    }
    flags
}

/// The chosen equations that answer here: those measured here if there are any, else all that are defined.
fn speaking(options: &EstimateOptions, load: f64, reps: f64, flags: &mut Vec<SetFlag>) -> Vec<Equation> {
    let answers =
        |equation: &Equation| equation.one_rm_at(load, reps).is_ok() && !equation.has_run_away_at(reps);
    let defined: Vec<Equation> = options.equations.iter().copied().filter(answers).collect();
    let measured: Vec<Equation> =
        defined.iter().copied().filter(|equation| equation.was_measured_at(reps)).collect();
    if measured.is_empty() {
        flags.push(SetFlag::AllEquationsOutside);
        return defined;
    }
    if measured.len() < options.equations.len() {
        flags.push(SetFlag::SomeEquationsOutside);
    }
    measured
}

/// Sorts one set into used or refused.
pub(super) fn sort_set(
    at: usize,
    set: &SetEvidence,
    options: &EstimateOptions,
) -> (SetUse, Option<UsableSet>) {
    let mut refusals = plain_refusals(set, options);
    let mut flags = plain_flags(set, options);
    let most = options.highest_reps.value();
    let reserve = match reserve(set.effort) {
        Ok(reserve) => reserve,
        Err(refusal) => {
            if set.reps.value() > most {
                refusals.push(SetRefusal::TooManyReps);
            }
            refusals.push(refusal);
            return (SetUse { reps_to_failure: None, weight: 0.0, refusals, flags }, None);
        }
    };
    if reserve.half_band > 0.0 {
        flags.push(SetFlag::ReserveIsABand);
    }
    if reserve.rir + reserve.half_band > options.highest_reserve.value() {
        refusals.push(SetRefusal::TooFarFromFailure);
    }
    let done = set.reps.value();
    let to_failure = if reserve.failed { done } else { options.bias.applied(done, reserve.rir) };
    if to_failure > most {
        refusals.push(SetRefusal::TooManyReps);
    }
    if !reserve.failed && done + reserve.rir > LONG_SET {
        flags.push(SetFlag::CalledInALongSet);
    }
    let is_maximum = to_failure <= 1.0 && options.single_is_maximum;
    if is_maximum {
        flags.push(SetFlag::TakenAsMaximum);
    }
    let load = set.load.kg();
    let mut equations = Vec::new();
    if refusals.is_empty() && !is_maximum {
        equations = speaking(options, load, to_failure, &mut flags);
        if equations.is_empty() {
            refusals.push(SetRefusal::NoEquation);
        }
    }
    let usable = refusals.is_empty();
    let report = SetUse { reps_to_failure: Some(to_failure), weight: 0.0, refusals, flags };
    let set = UsableSet { at, load, done, to_failure, reserve, day: set.day, equations, is_maximum };
    (report, usable.then_some(set))
}
