//! Warm-up sets before the work sets.

use alloc::vec::Vec;

use crate::quantity::Mass;

/// Parts of the work load, in percent, and repetitions of the warm-up sets (common practice; our choice).
const STEPS: [(i64, u8); 3] = [(40, 5), (60, 3), (80, 2)];

/// One warm-up set.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct WarmUpSet {
    /// Its load.
    pub load: Mass,
    /// Its repetitions.
    pub reps: u8,
    /// It is the fixed set that measures the day: same load, repetitions and rest every time.
    pub reference: bool,
}

impl WarmUpSet {
    /// So many repetitions at that load, which may be the set that measures the day.
    #[must_use]
    pub const fn new(load: Mass, reps: u8, reference: bool) -> WarmUpSet {
        WarmUpSet { load, reps, reference }
    }
}

/// Rising sets below the work load, each loadable; the reference set is always among them where it is lighter.
pub(super) fn warm_up(
    work: Mass,
    reference: Option<Mass>,
    round: impl Fn(Mass) -> Option<Mass>,
) -> Vec<WarmUpSet> {
    let mut sets: Vec<WarmUpSet> = Vec::new();
    for (percent, reps) in STEPS {
        let part = Mass::from_nanograms(work.nanograms().div_euclid(100) * percent).and_then(&round);
        if let Some(load) = part.filter(|load| *load < work && load.is_positive())
            && sets.last().is_none_or(|last| last.load < load)
        {
            sets.push(WarmUpSet { load, reps, reference: false });
        }
    }
    if let Some(load) = reference.and_then(round).filter(|load| *load <= work) {
        sets.retain(|set| set.load != load);
        sets.push(WarmUpSet { load, reps: 3, reference: true });
        crate::numeric::sort::sort_by_key(&mut sets, |set| set.load);
    }
    sets
}
