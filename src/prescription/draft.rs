//! A lift of today while it is worked out. Its setters only ever lower.

use alloc::vec::Vec;

use super::lift::Verdict;
use crate::quantity::{Mass, Rir};
use crate::reason::Reason;
use crate::record::Grant;

#[derive(Clone, Debug)]
pub(super) struct Draft {
    pub(super) verdict: Verdict,
    pub(super) rung: u8,
    pub(super) load: Mass,
    pub(super) sets: u8,
    pub(super) reps: u8,
    pub(super) reserve: Rir,
    pub(super) reasons: Vec<Reason>,
    /// Of these, those for which no step is on offer today.
    pub(super) against: Vec<Reason>,
    /// Less is planned, and the whole of the work would not fit into the time there is.
    pub(super) short_for_whole: bool,
}

impl Draft {
    /// The work granted, at the highest load allowed.
    pub(super) fn new(limit: Mass, grant: Grant, reserve: Rir) -> Draft {
        Draft {
            verdict: Verdict::Train,
            rung: grant.place.rung,
            load: limit,
            sets: grant.work.sets,
            reps: grant.work.reps,
            reserve,
            reasons: Vec::new(),
            against: Vec::new(),
            short_for_whole: false,
        }
    }

    /// A graver verdict stands; a milder one changes nothing.
    pub(super) fn at_least(&mut self, verdict: Verdict, reason: Reason) {
        self.verdict = self.verdict.max(verdict);
        self.no_step(reason);
    }

    /// Says a reason for which no step is on offer today.
    pub(super) fn no_step(&mut self, reason: Reason) {
        if !self.against.contains(&reason) {
            self.against.push(reason.clone());
        }
        self.say(reason);
    }

    /// Whether less is asked in anything than of that one.
    pub(super) fn is_easier_than(&self, other: &Draft) -> bool {
        self.rung != other.rung
            || self.load < other.load
            || self.sets < other.sets
            || self.reps < other.reps
            || self.reserve > other.reserve
    }

    pub(super) fn say(&mut self, reason: Reason) {
        if !self.reasons.contains(&reason) {
            self.reasons.push(reason);
        }
    }

    /// A height that nothing makes is told as that, and not a second time as one that today's load is off by.
    pub(super) fn say_height_once(&mut self, not_made: Option<Reason>) {
        let Some(Reason::HeightNotMade { off_mm, .. }) = &not_made else { return };
        let off = *off_mm;
        let same =
            |reason: &Reason| matches!(reason, Reason::HeightOff { mm } if mm.to_bits() == off.to_bits());
        if self.reasons.iter().any(same) {
            self.reasons.retain(|reason| !same(reason));
            not_made.into_iter().for_each(|reason| self.say(reason));
        }
    }

    pub(super) fn lower_load(&mut self, load: Mass) {
        self.load = self.load.min(load);
    }

    /// Goes to a rung directly easier than the granted one.
    pub(super) fn easier_rung(&mut self, rung: u8) {
        self.rung = rung;
    }

    pub(super) fn lower_sets(&mut self, sets: u8) {
        self.sets = self.sets.min(sets.max(1));
    }

    pub(super) fn lower_reps(&mut self, reps: u8) {
        self.reps = self.reps.min(reps.max(1));
    }

    /// Half the sets; of one set half the repetitions.
    pub(super) fn halve_work(&mut self) {
        match self.sets {
            0..=1 => self.lower_reps(self.reps.div_ceil(2)),
            _ => self.halve_sets(),
        }
    }

    /// The same in place of easier work, of which there is none. Of one repetition there is no half: it is done as it is.
    pub(super) fn halve_for_lighter(&mut self) {
        let least = self.sets <= 1 && self.reps <= 1;
        self.at_least(Verdict::EaseOff, if least { Reason::LeastThereIs } else { Reason::HalfForLighter });
        self.halve_work();
    }

    pub(super) fn halve_sets(&mut self) {
        self.lower_sets(self.sets.div_ceil(2));
    }

    /// More in reserve is easier, so this is a floor.
    pub(super) fn keep_in_reserve(&mut self, reserve: Rir) {
        if reserve > self.reserve {
            self.reserve = reserve;
            self.say(Reason::ReserveFloor { reserve });
        }
    }
}
