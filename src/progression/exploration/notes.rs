//! What was told in a course, kept as somebody with a pencil would keep it: from the events and from what was granted,
//! and from nothing that the progression keeps for itself. The rules are stated over these notes.

use std::vec::Vec;

use super::bytes::{FAR, keep, keep_one_of};
use super::world::{REVIEW, Set};
use crate::condition::DayClass;
use crate::quantity::Mass;
use crate::record::ClearanceStatus;

/// The notes of one course.
#[derive(Clone, Debug)]
pub(in super::super) struct Notes {
    /// What the coach last set.
    pub(super) set: Set,
    /// What was answered today.
    pub(super) day: Option<DayNotes>,
    /// A stop for a symptom or a refused clearance, and whether a clearance came since.
    pub(super) symptom: Option<bool>,
    pub(super) clearance: Option<ClearanceNotes>,
    /// Ill without a clearance since.
    pub(super) ill: bool,
    /// Pain was asked about everywhere today.
    pub(super) pain_today: bool,
    /// In a planned break, until the next session.
    pub(super) away: bool,
    /// Fever and a fall, said and not answered.
    pub(super) asks: [bool; 2],
    /// Whether the last session asked about pain.
    pub(super) pain_asked: Option<bool>,
    /// The morning after the last training was answered, and whether first today.
    pub(super) answered: Option<bool>,
    /// Something on record is not understood.
    pub(super) unknown: bool,
    /// In the order of the world's regions.
    pub(super) regions: [RegionNotes; 3],
    /// In the order of the world's lifts.
    pub(super) lifts: [LiftNotes; 2],
}

#[derive(Clone, Debug)]
pub(super) struct DayNotes {
    pub(super) class: DayClass,
    pub(super) asks_asked: bool,
    /// Something that comes before training was said, whether or not it was answered since.
    pub(super) raised: bool,
}

#[derive(Clone, Debug)]
pub(super) struct ClearanceNotes {
    pub(super) status: ClearanceStatus,
    /// Days that it still holds; below nought where it has run out.
    pub(super) left: i8,
    /// A limit of load for the hip, and one of range.
    pub(super) load: bool,
    pub(super) range: bool,
}

/// Notes of one region; days are days ago.
#[derive(Clone, Debug, Default)]
pub(super) struct RegionNotes {
    /// A stop for pain, and whether a clearance came since.
    pub(super) stop: Option<bool>,
    /// Training days without more than usual still to come.
    pub(super) due: u8,
    /// The last score, and whether it is of today.
    pub(super) last: Option<(u8, bool)>,
    /// More than usual was said of it today.
    pub(super) unclear: bool,
    /// Today was taken as one of the days that were due.
    pub(super) cleared: bool,
    /// An agreed usual level of 2: its age, and training days steady since.
    pub(super) usual: Option<(u8, u8)>,
    /// Worst scores of the last three training days, and whether the newest is of today.
    pub(super) scores: Vec<u8>,
    pub(super) scored_today: bool,
    /// When a lift last loaded it.
    pub(super) loaded: Option<u8>,
    /// Mornings in a row with more pain than before the training, and whether the last was one.
    pub(super) flares: u8,
    pub(super) flared: bool,
    /// When a lift of it last moved up.
    pub(super) moved: Option<u8>,
    /// What was said of it today, and on the day of the last training before it.
    pub(super) said: Option<u8>,
    pub(super) level: Option<u8>,
    /// A lift has ever loaded it.
    pub(super) lifted: bool,
}

/// Notes of one lift; days are days ago.
#[derive(Clone, Debug, Default)]
pub(super) struct LiftNotes {
    /// Sessions with the present grant since the comparison last broke.
    pub(super) sessions: Vec<SessionNote>,
    /// Fails in a row before it broke where the lift stands, and whether the last was excused.
    pub(super) earlier: (u8, bool),
    pub(super) last: Option<u8>,
    /// The last session is not kept, and its morning has not been answered.
    pub(super) waits: Option<u8>,
    /// The last session was not the work granted.
    pub(super) elsewise: bool,
    /// Moves up, each with the load before it.
    pub(super) moves: Vec<(u8, Mass)>,
    /// Load of the last pass that a good morning confirmed.
    pub(super) proven: Option<(u8, Mass)>,
    /// The critical point was lost in the last session.
    pub(super) fault: bool,
    /// Alone under the bar without pins, as last said.
    pub(super) alone: bool,
    /// The coach signed its gate off since the grant last changed.
    pub(super) signed: bool,
    /// Held since the strict lift of the pair hurt.
    pub(super) held: bool,
    /// With a bar, as last set.
    pub(super) bar: bool,
    /// Whether a belt was worn, as last said.
    pub(super) belt: Option<bool>,
    /// A load above the grant that the coach allows with a reason, and for how many days more.
    pub(super) allowed: Option<(Mass, i8)>,
    /// A load no higher than the grant that the coach set for so many days more.
    pub(super) eased: Option<(Mass, i8)>,
    /// Regions it once had, or whose stop halted everything, in which something is open.
    pub(super) former: [bool; 3],
}

/// What a session came to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Verdict {
    Pass,
    Fail,
    /// A fail of the critical point.
    Critical,
    /// A pass that the next morning took back.
    TakenBack,
    /// Nothing that counts.
    Nothing,
    /// A pass while something else comes first, unless the next morning takes it back.
    Unheard,
}

#[derive(Clone, Copy, Debug)]
pub(super) struct SessionNote {
    pub(super) ago: u8,
    pub(super) verdict: Verdict,
    pub(super) below_usual: bool,
    /// Less left in reserve than asked.
    pub(super) hard: bool,
    /// The morning after was answered.
    pub(super) answered: bool,
}

keep!(Notes {
    set,
    day,
    symptom,
    clearance,
    ill,
    away,
    pain_today,
    asks,
    pain_asked,
    answered,
    unknown,
    regions,
    lifts
});
keep!(DayNotes { class, asks_asked, raised });
keep!(ClearanceNotes { status, left, load, range });
keep!(RegionNotes {
    stop,
    due,
    last,
    unclear,
    cleared,
    usual,
    scores,
    scored_today,
    loaded,
    flares,
    flared,
    moved,
    said,
    level,
    lifted,
});
keep!(LiftNotes {
    sessions,
    earlier,
    last,
    waits,
    elsewise,
    moves,
    proven,
    fault,
    alone,
    signed,
    held,
    bar,
    belt,
    allowed,
    eased,
    former
});
keep!(SessionNote { ago, verdict, below_usual, hard, answered });
keep_one_of!(Verdict: [
    Verdict::Pass,
    Verdict::Fail,
    Verdict::Critical,
    Verdict::TakenBack,
    Verdict::Unheard,
    Verdict::Nothing,
]);

impl Notes {
    /// Of somebody of whom nothing is known yet.
    pub(super) fn of_nobody(set: Set) -> Notes {
        Notes {
            set,
            day: None,
            symptom: None,
            clearance: None,
            ill: false,
            away: false,
            pain_today: false,
            asks: [false; 2],
            pain_asked: None,
            answered: None,
            unknown: false,
            regions: Default::default(),
            lifts: Default::default(),
        }
    }

    /// Days pass.
    pub(super) fn wait(&mut self, days: u8) {
        let trained = self.last_trained();
        self.day = None;
        self.pain_today = false;
        self.answered = self.answered.map(|_| false);
        if let Some(clearance) = &mut self.clearance {
            clearance.left = (clearance.left - days.cast_signed()).max(-1);
        }
        self.regions.iter_mut().for_each(|region| region.wait(days, trained));
        self.lifts.iter_mut().for_each(|lift| lift.wait(days, trained));
    }

    /// Whether a clearance says yes today.
    pub(super) fn is_cleared(&self) -> bool {
        let given = self.clearance.as_ref();
        given.is_some_and(|given| given.status != ClearanceStatus::NotCleared && given.left >= 0)
    }

    /// Something that comes before training is open, or was said today.
    pub(super) fn comes_first(&self) -> bool {
        self.asks.contains(&true) || self.day.as_ref().is_some_and(|day| day.raised)
    }

    pub(super) fn class(&self) -> DayClass {
        self.day.as_ref().map_or(DayClass::Unknown, |day| day.class)
    }

    /// Days since anything was trained.
    pub(super) fn last_trained(&self) -> Option<u8> {
        let regions = self.regions.iter().filter_map(|region| region.loaded);
        regions.chain(self.lifts.iter().filter_map(|lift| lift.last)).min()
    }
}

/// A day that lies further back; of those far back the last training is told apart, since a morning may speak of it.
fn older(age: &mut u8, days: u8, trained: Option<u8>) {
    let far = FAR as u8 + u8::from(trained != Some(*age));
    *age = if *age + days < FAR as u8 { *age + days } else { far };
}

impl RegionNotes {
    fn wait(&mut self, days: u8, trained: Option<u8>) {
        self.last.iter_mut().for_each(|(_, today)| *today = false);
        self.unclear = false;
        self.cleared = false;
        self.usual.iter_mut().for_each(|(age, _)| *age = (*age + days).min(REVIEW as u8 + 1));
        self.scored_today = false;
        self.loaded.iter_mut().for_each(|age| older(age, days, trained));
        self.moved.iter_mut().for_each(|age| older(age, days, trained));
        self.moved.take_if(|age| i32::from(*age) >= super::world::REGION_WINDOW);
        self.said = None;
    }

    /// The level up to which pain is no more than usual: none where the agreement is due to be looked at.
    pub(super) fn usual_level(&self) -> u8 {
        self.usual.filter(|(age, _)| i32::from(*age) <= REVIEW).map_or(0, |_| 2)
    }

    pub(super) fn is_open(&self) -> bool {
        self.stop.is_some() || self.due > 0 || self.last.is_some_and(|(score, _)| score > 0)
    }

    /// Pain on the last three training days: rising, or never below 3.
    pub(super) fn persists(&self) -> bool {
        match self.scores.as_slice() {
            [a, b, c] => (a < b && b < c) || [a, b, c].into_iter().all(|score| *score >= 3),
            _ => false,
        }
    }

    /// No pain, or an agreed usual level that is in force and was steady over three training days.
    pub(super) fn is_calm(&self) -> bool {
        let steady = self.usual.is_some_and(|(age, steady)| i32::from(age) <= REVIEW && steady >= 3);
        self.last.is_none_or(|(score, _)| score == 0) || steady
    }
}

impl LiftNotes {
    fn wait(&mut self, days: u8, trained: Option<u8>) {
        self.sessions.iter_mut().for_each(|session| older(&mut session.ago, days, trained));
        self.last.iter_mut().for_each(|age| older(age, days, trained));
        self.waits.iter_mut().for_each(|age| older(age, days, trained));
        self.moves.iter_mut().for_each(|(age, _)| older(age, days, trained));
        self.moves.retain(|(age, _)| i32::from(*age) < super::world::GROWTH_WINDOW);
        self.proven.iter_mut().for_each(|(age, _)| older(age, days, trained));
        self.allowed.iter_mut().for_each(|(_, left)| *left -= days.cast_signed());
        self.allowed.take_if(|(_, left)| *left < 0);
        self.eased.iter_mut().for_each(|(_, left)| *left -= days.cast_signed());
        self.eased.take_if(|(_, left)| *left < 0);
    }

    /// Whether the coach's word for less than that grant stands.
    pub(super) fn is_eased(&self, granted: Mass) -> bool {
        self.eased.is_some_and(|(load, _)| load <= granted)
    }
}
