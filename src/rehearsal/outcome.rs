//! What came of a rehearsal.

use alloc::string::String;
use alloc::vec::Vec;

use super::skill::Milestone;
use crate::caution::Caution;
use crate::quantity::Name;

/// Values that 10, 25, 50, 75 and 90 % of the rehearsed lifters did not exceed; absent where so many were not
/// there by the end.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct Centiles {
    /// The value that 10 % did not exceed.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub tenth: Option<u32>,
    /// The value that 25 % did not exceed.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub quarter: Option<u32>,
    /// The value that 50 % did not exceed.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub half: Option<u32>,
    /// The value that 75 % did not exceed.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub three_quarters: Option<u32>,
    /// The value that 90 % did not exceed.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub nine_tenths: Option<u32>,
}

impl Centiles {
    /// Of these values among so many lifters: the smallest value that the stated part of all of them did not
    /// exceed.
    pub(super) fn of(mut values: Vec<u32>, lifters: u32) -> Centiles {
        crate::numeric::sort::sort(&mut values);
        let at = |percent: u64| {
            let rank = (u64::from(lifters) * percent).div_ceil(100).max(1);
            usize::try_from(rank - 1).ok().and_then(|place| values.get(place)).copied()
        };
        Centiles { tenth: at(10), quarter: at(25), half: at(50), three_quarters: at(75), nine_tenths: at(90) }
    }
}

/// How the planned sessions of a lift went, as parts of all of them. The five add up to 1.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct Shares {
    /// Trained, and the place stayed.
    pub held: f64,
    /// A move was taken before the session, which was trained at the new place.
    pub moved: f64,
    /// The lift went one step easier at the session or at the morning after it.
    pub stepped_back: f64,
    /// No loaded work: a stop, a rest, or nothing light enough to load.
    pub stopped: f64,
    /// The day was missed.
    pub missed: f64,
}

/// One lift over all rehearsed lifters.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct LiftRehearsal {
    /// Which lift.
    pub lift: Name,
    /// What it was to reach.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub milestone: Option<Milestone>,
    /// Part of the lifters who reached it in the weeks rehearsed; absent without a milestone.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub reached: Option<f64>,
    /// Days from the first day until it was reached.
    pub days: Centiles,
    /// Moves taken by a lifter.
    pub moves: Centiles,
    /// Planned sessions, all lifters together.
    pub sessions: u32,
    /// How they went.
    pub shares: Shares,
}

/// What came of playing the rules through. It is about the rules, not about a person.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct Rehearsal {
    /// Lifters played.
    pub lifters: u32,
    /// Weeks played.
    pub weeks: u32,
    /// The seed; the same one gives the same bits.
    pub seed: u32,
    /// The lifts of the model in their order.
    pub lifts: Vec<LiftRehearsal>,
    /// What to show beside it.
    pub cautions: Vec<Caution>,
    /// Library version.
    pub version: String,
    /// Digest of the parameters.
    pub parameters: String,
}

/// How one planned session of one lift went.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Went {
    Held,
    Moved,
    SteppedBack,
    Stopped,
    Missed,
}

/// Counts of one lift while the lifters are played.
#[derive(Clone, Debug, Default)]
pub(super) struct Tally {
    pub(super) days: Vec<u32>,
    pub(super) moves: Vec<u32>,
    went: [u32; 5],
}

impl Tally {
    pub(super) fn count(&mut self, went: Went) {
        let [held, moved, back, stopped, missed] = &mut self.went;
        *match went {
            Went::Held => held,
            Went::Moved => moved,
            Went::SteppedBack => back,
            Went::Stopped => stopped,
            Went::Missed => missed,
        } += 1;
    }

    pub(super) fn finish(self, lift: Name, milestone: Option<Milestone>, lifters: u32) -> LiftRehearsal {
        let sessions: u32 = self.went.iter().sum();
        let part = |count: u32| if sessions == 0 { 0.0 } else { f64::from(count) / f64::from(sessions) };
        let [held, moved, stepped_back, stopped, missed] = self.went.map(part);
        let reached = self.days.len() as f64 / f64::from(lifters.max(1));
        LiftRehearsal {
            lift,
            reached: milestone.is_some().then_some(reached),
            milestone,
            days: Centiles::of(self.days, lifters),
            moves: Centiles::of(self.moves, lifters),
            sessions,
            shares: Shares { held, moved, stepped_back, stopped, missed },
        }
    }
}
