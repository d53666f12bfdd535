//! The state: a digest of the log, of bounded size.

use alloc::string::String;
use alloc::sync::Arc;
use alloc::vec::Vec;

use super::loadable::Loadable;
use super::status::Status;
use crate::condition::DayClass;
use crate::gate::Outcome;
use crate::quantity::{Day, Mass, Name, Pain};
use crate::record::{ClearanceLimits, ClearanceStatus, Layoff, Parameters, Role, Tuple};

/// The most sessions a track remembers one by one; older ones at the same place are kept as counts.
pub(crate) const SITTINGS: usize = 12;

/// Everything the fold knows after the last event. The host keeps the log; this can always be made again.
#[derive(Clone, Debug, Default, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct State {
    /// Library version that made it; another version folds the log anew.
    pub version: String,
    /// Day of birth of the lifter, where it is known.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub born: Option<Day>,
    /// Day and number of the last event applied.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub last: Option<(Day, u32)>,
    /// The parameters in force.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub parameters: Option<Arc<Parameters>>,
    /// Digest of the parameters in force, in hexadecimal.
    pub digest: String,
    /// The lifts, in the order of the parameters.
    pub tracks: Vec<TrackState>,
    /// The regions that the lifts load.
    pub regions: Vec<RegionState>,
    /// A symptom stop in force.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub stop: Option<Stop>,
    /// The clearance in force.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub clearance: Option<ClearanceInForce>,
    /// An illness after which a new clearance is needed, by its first day.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub ill_since: Option<Day>,
    /// The last break noted, until training goes on.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub layoff: Option<Layoff>,
    /// The last day report: its day, the class, whether it asks for a clinician first, whether pain was asked.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub today: Option<TodayReport>,
    /// The last body mass recorded.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub body_mass: Option<(Day, Mass)>,
    /// Whether the last session asked about pain; absent before the first.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub pain_asked: Option<bool>,
    /// Events of unknown kinds so far.
    pub unknown: u32,
    /// The last coach's act that a guard refused.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub refused: Option<u32>,
    /// What each lift's equipment can load; made from the parameters, never stored.
    #[cfg_attr(feature = "serde", serde(skip))]
    pub(crate) loadables: Vec<Arc<Loadable>>,
    /// A guard taken out, for the test that each of them is needed.
    #[cfg(test)]
    #[cfg_attr(feature = "serde", serde(skip))]
    pub(crate) taken_out: Option<&'static str>,
}

/// The day's answers as the state keeps them.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct TodayReport {
    /// Which day.
    pub day: Day,
    /// Its class.
    pub class: DayClass,
    /// Something asks for a clinician's word first.
    pub asks_first: bool,
    /// Pain was asked.
    pub pain_asked: bool,
    /// Minutes there are.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub minutes: Option<u16>,
}

/// A stop that only a clearance and a sign-off lift.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct Stop {
    /// When.
    pub since: Day,
    /// The event that stopped.
    pub event: u32,
    /// A clearance was given since.
    pub cleared: bool,
    /// The coach signed off since.
    pub signed: bool,
}

/// The clearance in force.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct ClearanceInForce {
    /// What was said.
    pub status: ClearanceStatus,
    /// When.
    pub given: Day,
    /// Last day it holds.
    pub expires: Day,
    /// Its limits.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub limits: Vec<ClearanceLimits>,
}

/// One session at the current place, as the gate needs it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(from = "SittingLine", into = "SittingLine")
)]
pub struct Sitting {
    /// Number of the session's event.
    pub session: u32,
    /// Its day.
    pub day: Day,
    /// What it came to.
    pub outcome: Outcome,
    /// A critical criterion was lost.
    pub critical: bool,
    /// It was a confirmed bad day.
    pub bad_day: bool,
    /// The work granted was done: load, sets and repetitions.
    pub at_grant: bool,
    /// The next-morning answer was given and raised nothing.
    pub confirmed: bool,
    /// Repetitions scored.
    pub scored: u16,
    /// Repetitions among them that were acceptable.
    pub acceptable: u16,
}

/// A sitting as it is stored: session, day, outcome, flags, scored, acceptable. Short, since there are many.
#[cfg(feature = "serde")]
type SittingLine = (u32, Day, Outcome, u8, u16, u16);

#[cfg(feature = "serde")]
impl From<SittingLine> for Sitting {
    fn from((session, day, outcome, flags, scored, acceptable): SittingLine) -> Sitting {
        let flag = |bit: u8| flags & bit != 0;
        Sitting {
            session,
            day,
            outcome,
            critical: flag(1),
            bad_day: flag(2),
            confirmed: flag(4),
            at_grant: flag(8),
            scored,
            acceptable,
        }
    }
}

#[cfg(feature = "serde")]
impl From<Sitting> for SittingLine {
    fn from(sitting: Sitting) -> SittingLine {
        let flags = [sitting.critical, sitting.bad_day, sitting.confirmed, sitting.at_grant];
        let flags = flags.into_iter().rev().fold(0, |bits, flag| 2 * bits + u8::from(flag));
        (sitting.session, sitting.day, sitting.outcome, flags, sitting.scored, sitting.acceptable)
    }
}

/// An override in force.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct OverrideInForce {
    /// Load allowed by it.
    pub load: Mass,
    /// Last day it holds.
    pub expires: Day,
    /// Who.
    pub who: Name,
    /// Its event.
    pub event: u32,
}

/// Where one lift stands.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct TrackState {
    /// Its state.
    pub status: Status,
    /// Since when.
    pub since: Day,
    /// The granted place.
    pub tuple: Tuple,
    /// What it is for in this block.
    pub role: Role,
    /// Calibration sessions done, and asked for.
    pub learned: (u8, u8),
    /// Passes since the state began.
    pub passes: u8,
    /// Fails in a row.
    pub fails: u8,
    /// Fails on bad days in a row that counted as no information.
    pub neutral: u8,
    /// Sessions at this place, and since when.
    pub here: (u16, Day),
    /// The last sessions at this place, oldest first.
    pub sittings: Vec<Sitting>,
    /// Acceptable and scored repetitions of sessions no longer listed.
    pub earlier: (u32, u32),
    /// Day of the last session.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub last_session: Option<Day>,
    /// Upward moves within the longest window, each with the load before it.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub moves: Vec<(Day, Mass)>,
    /// Day the gate opened, while the move is on offer.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub offered: Option<Day>,
    /// Granted load before the break, while returning.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub return_cap: Option<Mass>,
    /// Row of the layoff table that the return began with.
    pub return_row: u8,
    /// Sessions that still have half the sets.
    pub half_sessions: u8,
    /// Highest load ever granted.
    pub peak: Mass,
    /// Load of the last confirmed pass, and its day.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub proven: Option<(Day, Mass)>,
    /// An override in force.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub overruled: Option<OverrideInForce>,
    /// The coach signed the gate off since the last move.
    pub signed_off: bool,
    /// The partner's strict lift hurt: hold, and start one step down.
    pub partner_pain: bool,
    /// An illness was noted since the lift was last trained.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "core::ops::Not::not"))]
    pub ill: bool,
    /// When the rack was last spoken of, the lifter was alone under the bar without pins.
    pub unguarded: bool,
    /// The critical criterion lost in the last session.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub fault: Option<Name>,
    /// The criterion that held worst in the last session at this place in which one did not hold.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub weak: Option<Name>,
    /// What was weak before the last move, until it is seen to hold, and the day by which it is to be looked at.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub watched: Option<(Day, Name)>,
    /// Maintaining: the load down to which it is on plan.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub not_below: Option<Mass>,
    /// Load before the step back that is being looked at.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub stepped_from: Option<Mass>,
    /// Strict lift of a pair: since when its gate is known to be closed, and what the forgiving lift had shown then.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub closed_since: Option<(Day, Mass)>,
    /// The last session's least reserve, in half repetitions, where effort was given for every set.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub reserve: Option<u16>,
}

/// One region of the body.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct RegionState {
    /// Its name.
    pub name: Name,
    /// Last day on which a lift loaded it.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub loaded: Option<Day>,
    /// The last score reported, and its day.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub last: Option<(Day, Pain)>,
    /// The agreed usual level, since when, and how many sessions in a row it has been steady.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub usual: Option<(Pain, Day, u8)>,
    /// Clear sessions still to come before a move.
    pub clear_needed: u8,
    /// Next-morning flares in a row.
    pub flares: u8,
    /// Day of training whose morning flared last.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub flared: Option<Day>,
    /// A pain stop in force.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub stop: Option<Stop>,
    /// Moves of its lifts within the region's window.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub moves: Vec<Day>,
}

impl RegionState {
    pub(crate) fn new(name: Name) -> RegionState {
        RegionState {
            name,
            loaded: None,
            last: None,
            usual: None,
            clear_needed: 0,
            flares: 0,
            flared: None,
            stop: None,
            moves: Vec::new(),
        }
    }

    /// The score up to which pain is no more than usual; none where the agreed level is due to be looked at.
    pub(crate) fn usual_level(&self, on: Day, review_days: u16) -> Pain {
        let in_force = self.usual.filter(|_| self.review_due(on, review_days).is_none());
        in_force.map_or(Pain::NONE, |(level, _, _)| level)
    }

    /// Day of the agreement, where it is due to be looked at again.
    pub(crate) fn review_due(&self, on: Day, review_days: u16) -> Option<Day> {
        self.usual.map(|(_, agreed, _)| agreed).filter(|agreed| on.since(*agreed) > i32::from(review_days))
    }
}

impl TrackState {
    pub(crate) fn new(tuple: Tuple, day: Day, learning: u8) -> TrackState {
        TrackState {
            status: Status::Learning,
            since: day,
            tuple,
            role: Role::Train,
            learned: (0, learning),
            passes: 0,
            fails: 0,
            neutral: 0,
            here: (0, day),
            sittings: Vec::new(),
            earlier: (0, 0),
            last_session: None,
            moves: Vec::new(),
            offered: None,
            return_cap: None,
            return_row: 0,
            half_sessions: 0,
            peak: tuple.load,
            proven: None,
            overruled: None,
            signed_off: false,
            partner_pain: false,
            ill: false,
            unguarded: false,
            fault: None,
            weak: None,
            watched: None,
            not_below: None,
            stepped_from: None,
            closed_since: None,
            reserve: None,
        }
    }

    /// Drops an override that allows more than is granted; one that allows less stays in force.
    pub(crate) fn keep_easing_only(&mut self) {
        let granted = self.tuple.load;
        self.overruled.take_if(|overruled| overruled.load > granted);
    }

    /// Ends the right to go straight back to the load before a short break.
    pub(crate) fn forgo_restoring(&mut self) {
        if self.return_row == 1 {
            self.return_row = 2;
        }
    }

    /// Is to be learned from the start; there is no load before a break any more to go back to.
    pub(crate) fn learn_anew(&mut self, sessions: u8) {
        self.learned = (0, sessions);
        self.return_cap = None;
        self.return_row = 0;
    }

    /// Takes up again after a rest where it left off.
    pub(crate) fn wake(&mut self, day: Day) {
        if self.role == Role::Rest {
            self.role = Role::Train;
        }
        if self.return_cap.is_some() {
            self.enter(Status::Returning, day);
        } else {
            self.lead_on(day);
        }
    }

    /// Rests by the coach's word. A step back that was still to be seen to hold becomes a return: a rest is no pass.
    pub(crate) fn rest(&mut self, day: Day) {
        if self.status == Status::SteppingBack && self.return_cap.is_none() {
            (self.return_cap, self.return_row) = (Some(self.tuple.load), 2);
        }
        self.enter(Status::Resting, day);
    }

    /// Onward from a return or a step back. Neither takes the place of sessions of calibration still to come.
    pub(crate) fn lead_on(&mut self, day: Day) {
        if self.learned.0 < self.learned.1 {
            self.enter(Status::Learning, day);
        } else {
            self.settle(day);
        }
    }

    /// Goes to another state on that day.
    pub(crate) fn enter(&mut self, status: Status, day: Day) {
        self.status = status;
        self.since = day;
        self.passes = 0;
        self.offered = None;
        if status != Status::SteppingBack {
            self.stepped_from = None;
        }
    }

    /// The state that an ordinary course leads to: holding, or maintaining where that is the role.
    pub(crate) fn settle(&mut self, day: Day) {
        let status = match self.role {
            Role::Maintain => Status::Maintaining,
            _ => Status::Holding,
        };
        self.enter(status, day);
    }

    /// Stands at another place from that day: technique shown elsewhere does not carry over.
    pub(crate) fn stand_at(&mut self, tuple: Tuple, day: Day) {
        self.tuple = tuple;
        self.weak = None;
        self.watched = None;
        self.stepped_from = None;
        self.forget_evidence(day);
    }

    /// Starts at that place without the loads of another kind of implement.
    pub(crate) fn forget_loads(&mut self, start: Tuple, day: Day) {
        self.stand_at(start, day);
        self.peak = start.load;
        self.moves.clear();
        self.proven = None;
        self.not_below = None;
        self.closed_since = None;
        self.overruled = None;
        self.return_cap = self.return_cap.map(|_| start.load);
    }

    /// Evidence toward the gate starts anew.
    pub(crate) fn forget_evidence(&mut self, day: Day) {
        self.here = (0, day);
        self.sittings.clear();
        self.earlier = (0, 0);
        self.fails = 0;
        self.neutral = 0;
        self.signed_off = false;
        self.offered = None;
    }
}
