//! One lift: what the coach set, how it stands now, and what its equipment can load. One value, so that the three cannot
//! fall apart.

use alloc::boxed::Box;
use alloc::sync::Arc;
use alloc::vec::Vec;

use super::day_start::DayStart;
use super::held::Held;
use super::loadable::Loadable;
use super::setup::SetupSeen;
use super::sitting::Sitting;
use super::status::{Calibration, OverrideInForce, Purpose, Status, WayBack};
use crate::quantity::{Day, Mass, Name};
use crate::reason::{NamedPlace, OverrideEnd, Restart, Shortfall};
use crate::record::{Grant, LiftParameters, Place};

/// One lift.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Lift {
    /// What the coach set.
    pub(crate) set: Arc<LiftParameters>,
    /// How it stands.
    pub(crate) now: Now,
    /// What its equipment can load; made from the parameters, never stored.
    pub(crate) loadable: Arc<Loadable>,
}

/// How one lift stands.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct Now {
    /// Its state.
    pub status: Status,
    /// Since when.
    pub since: Day,
    /// The granted place and work.
    pub grant: Grant,
    /// What it is for in this block.
    pub purpose: Purpose,
    /// Sessions of calibration.
    pub calibration: Calibration,
    /// Fails in a row.
    pub fails: u8,
    /// Fails on days below the usual in a row that counted as no information.
    pub neutral: u8,
    /// Days with a session at this place and load, and since when.
    pub here: (u16, Day),
    /// The last of these days.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub here_on: Option<Day>,
    /// The last sessions since it stands at this place, oldest first; those that were done elsewhere are no passes.
    pub sittings: Vec<Sitting>,
    /// Acceptable and scored repetitions of sessions no longer listed.
    pub earlier: (u32, u32),
    /// Day of the last session, at whatever place.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub last_session: Option<Day>,
    /// Where its last session was done: as written down, or where the day asked for it; absent where new parameters have no
    /// such place.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub last_place: Option<Place>,
    /// Number and day of the last session, where it is not listed among those at this place, until the morning after it is
    /// answered.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub unanswered: Option<(u32, Day)>,
    /// In what the last session fell short of the work granted, where it did.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub short: Option<Shortfall>,
    /// Its last step put it where it stands, and it has not been trained there.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "core::ops::Not::not"))]
    pub stepped: bool,
    /// Number under which the last act or clearance was told that has it done at another place, and the place before: a session told
    /// earlier that says no place was not done where it stands now.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub moved: Option<(u32, Place)>,
    /// Upward moves within the longest window, each with the load before it.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub moves: Vec<(Day, Mass)>,
    /// Longest gap of a region of the lift that ended without it since it was last trained, in days.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "is_nought"))]
    pub missed: u16,
    /// Days of work below what is granted since that was done last, and what was lifted all the same.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub held: Option<Held>,
    /// Sessions that still have half the sets.
    pub half_sessions: u8,
    /// Days and row of the break for which they have, where it was one.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub half_after: Option<(u16, u8)>,
    /// Highest load ever granted.
    pub peak: Mass,
    /// Load of the last confirmed pass, and its day.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub proven: Option<(Day, Mass)>,
    /// An override in force.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub overruled: Option<OverrideInForce>,
    /// Load of an override upward that has ended, what ended it, and the place it was for, until the next session.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub override_ended: Option<(Mass, OverrideEnd, NamedPlace)>,
    /// Last day of an override that was past when it was recorded, until the next session.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub override_past: Option<Day>,
    /// Since when sessions at this place are counted anew, and why.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub restarted: Option<(Day, Restart)>,
    /// Heaviest load of the last session of a maintained lift, where that lay below its band.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub below_band: Option<Mass>,
    /// While the lift was left out, its implement became another kind or was gone: it begins anew when it is taken back.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "core::ops::Not::not"))]
    pub other_implement: bool,
    /// Kinds of implement that it was done with before, each with the highest load that was allowed when it left it, and that day.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub left: Vec<(Name, Mass, Day)>,
    /// Its implement became another kind, and it has not been trained since.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "core::ops::Not::not"))]
    pub begun_anew: bool,
    /// The coach signed the gate off since the last move.
    pub signed_off: bool,
    /// The partner's strict lift hurt: hold, and start one step down.
    pub partner_pain: bool,
    /// An illness was noted since the lift was last trained.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "core::ops::Not::not"))]
    pub ill: bool,
    /// When the rack was last spoken of, the lifter was alone under the bar without pins.
    pub unguarded: bool,
    /// Somebody has said once who and what would take the bar.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "core::ops::Not::not"))]
    pub rack_said: bool,
    /// How it was last said to be set up.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub setup: Option<Box<SetupSeen>>,
    /// Another person gives the marks from now on.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "core::ops::Not::not"))]
    pub other_rater: bool,
    /// The critical criterion lost in the last session.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub fault: Option<Name>,
    /// The criterion that held worst in the last session at this place in which one did not hold.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub weak: Option<Name>,
    /// What was weak before the last move, until it is seen to hold, and the day by which it is to be looked at.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub watched: Option<(Day, Name)>,
    /// Strict lift of a pair: since when its gate is known to be closed, and what the forgiving lift had shown then.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub closed_since: Option<(Day, Mass)>,
    /// The last session's least reserve, in half repetitions, where effort was given for every set.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub reserve: Option<u16>,
    /// Regions that earlier parameters gave the lift, or that halted every lift since none loaded them, and in which
    /// something is still open or limited.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub former: Vec<Name>,
    /// What was refused last was an override.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "core::ops::Not::not"))]
    pub override_refused: bool,
    /// A break, a stop or a step back asks for easier work than granted, and there is none.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "core::ops::Not::not"))]
    pub nothing_easier: bool,
    /// The last coach's act for this lift that a guard refused, until its next session.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub refused: Option<u32>,
    /// How it stood before the first session of the day, where another one follows.
    #[cfg_attr(feature = "serde", serde(skip))]
    pub(crate) day_start: DayStart,
}

#[cfg(feature = "serde")]
const fn is_nought(days: &u16) -> bool {
    *days == 0
}

impl Lift {
    /// The same lift, standing otherwise.
    pub(crate) fn standing(&self, now: Now) -> Lift {
        Lift { set: Arc::clone(&self.set), now, loadable: Arc::clone(&self.loadable) }
    }

    /// Ids of every region that concerns the lift: those it loads, and those it had in which something is still open.
    pub(crate) fn regions(&self) -> impl Iterator<Item = &Name> {
        self.set.regions.iter().chain(&self.now.former)
    }

    /// Whether that region concerns the lift.
    pub(crate) fn has_region(&self, id: &Name) -> bool {
        self.regions().any(|region| region == id)
    }

    /// Whether a lift set like that has the same loads on the same equipment, and this one knows them.
    pub(crate) fn loads_like(&self, set: &LiftParameters) -> bool {
        let own = &self.set;
        let same_start = own.starts_from == set.starts_from && own.ranges == set.ranges;
        own.implement == set.implement && same_start && !self.loadable.is_unknown()
    }

    /// The granted load as it can be made at its place: what is printed, and what a session is held against.
    pub(crate) fn granted_as_loaded(&self) -> Mass {
        self.loadable.at(self.now.grant.place).rounded_down(self.now.grant.load())
    }
}

impl Now {
    pub(crate) fn new(grant: Grant, day: Day, learning: u8) -> Now {
        Now {
            status: Status::Learning,
            since: day,
            grant,
            purpose: Purpose::Train,
            calibration: Calibration::of(learning),
            fails: 0,
            neutral: 0,
            here: (0, day),
            here_on: None,
            sittings: Vec::new(),
            earlier: (0, 0),
            last_session: None,
            last_place: None,
            unanswered: None,
            short: None,
            stepped: false,
            moved: None,
            moves: Vec::new(),
            missed: 0,
            held: None,
            half_sessions: 0,
            half_after: None,
            peak: grant.load(),
            proven: None,
            overruled: None,
            override_ended: None,
            other_implement: false,
            left: Vec::new(),
            begun_anew: false,
            override_past: None,
            restarted: None,
            below_band: None,
            signed_off: false,
            partner_pain: false,
            ill: false,
            unguarded: false,
            rack_said: false,
            setup: None,
            other_rater: false,
            fault: None,
            weak: None,
            watched: None,
            closed_since: None,
            reserve: None,
            former: Vec::new(),
            override_refused: false,
            nothing_easier: false,
            refused: None,
            day_start: DayStart::default(),
        }
    }

    /// Stands at an easier grant than before, as a break, a stop or a step back asks for; where it is the same, nothing is
    /// easier.
    pub(crate) fn stand_easier(&mut self, grant: Grant, day: Day) {
        let same = grant == self.grant;
        self.stand_at(grant, day);
        self.nothing_easier = same;
    }

    /// Goes to another state on that day.
    pub(crate) fn enter(&mut self, status: Status, day: Day) {
        self.status = status;
        self.since = day;
    }

    /// The state that an ordinary course leads to: holding, or maintaining where that is what the lift is for.
    pub(crate) fn settle(&mut self, day: Day) {
        let status = match self.purpose {
            Purpose::Maintain { .. } => Status::Maintaining,
            _ => Status::Holding,
        };
        self.enter(status, day);
    }

    /// Takes back a move on offer, where one is.
    pub(crate) fn withdraw_offer(&mut self, day: Day) {
        if self.status.is_ready() {
            self.settle(day);
        }
    }

    /// Onward from a return or a step back. Neither takes the place of sessions of calibration still to come.
    pub(crate) fn lead_on(&mut self, day: Day) {
        self.nothing_easier = false;
        if self.calibration.is_open() {
            self.enter(Status::Learning, day);
        } else {
            self.settle(day);
        }
    }

    /// Takes up again after a rest where it left off.
    pub(crate) fn wake(&mut self, day: Day) {
        if self.purpose == Purpose::Rest {
            self.purpose = Purpose::Train;
        }
        match self.status.way_back() {
            Some(way) => self.enter(Status::Returning { way, passes: 0 }, day),
            None => self.lead_on(day),
        }
    }

    /// Rests. A move or a step back that was still to be seen to hold becomes a return: a rest is no pass.
    pub(crate) fn rest(&mut self, day: Day) {
        let way = if self.status.is_to_be_seen() {
            Some(WayBack::new(self.grant.load(), 2, 0))
        } else {
            self.status.way_back()
        };
        self.enter(Status::Resting { way }, day);
    }

    /// Stands at another place or with other work from that day: technique shown elsewhere does not carry over.
    pub(crate) fn stand_at(&mut self, grant: Grant, day: Day) {
        self.proven.take_if(|_| grant.place != self.grant.place);
        self.step_to(grant, day);
    }

    /// The same on the way up, where the proof that another lift is measured by was shown on the way and stays.
    pub(crate) fn step_to(&mut self, grant: Grant, day: Day) {
        self.grant = grant;
        (self.stepped, self.nothing_easier) = (false, false);
        if let Some(way) = self.status.way_back_mut() {
            way.stepped_from = None;
        }
        self.below_band = None;
        self.weak = None;
        self.watched = None;
        if let Status::SteppingBack { from, .. } = &mut self.status {
            *from = None;
        }
        self.forget_evidence(day);
    }

    /// Evidence toward the gate starts anew.
    pub(crate) fn forget_evidence(&mut self, day: Day) {
        (self.here, self.here_on) = ((0, day), None);
        self.restarted = None;
        self.sittings.clear();
        self.unanswered = None;
        self.earlier = (0, 0);
        self.fails = 0;
        self.neutral = 0;
        self.signed_off = false;
        self.withdraw_offer(day);
    }

    /// The same where the lift stays where it is: what was counted there is not forgotten without a word, passes of a way back or a
    /// step back count anew as well, and fails go on counting.
    pub(crate) fn restart(&mut self, day: Day, why: Restart) {
        let counted = self.here.0 > 0;
        let before = self.restarted;
        let fails = (self.fails, self.neutral);
        self.forget_evidence(day);
        (self.fails, self.neutral) = fails;
        self.status.forget_passes();
        self.restarted = if counted { Some((day, why)) } else { before };
    }

    /// Keeps where it was to be done before what was told under that number, where that is another place since.
    pub(crate) fn note_moved(&mut self, before: Place, after: Place, told: u32) {
        if before != after {
            self.moved = Some((told, before));
        }
    }

    /// Ends the right to go straight back to the load before a short break.
    pub(crate) fn forgo_restoring(&mut self) {
        if let Some(way) = self.status.way_back_mut() {
            way.no_restoring = true;
        }
    }

    /// Counts a day with a session at this place and load, once.
    pub(crate) fn count_here(&mut self, on: Day) {
        if self.here_on.replace(on) != Some(on) {
            self.here.0 = self.here.0.saturating_add(1);
        }
    }
}
