//! What concerns every lift: the regions, stops, clearance, what was asked, the day.

use alloc::vec::Vec;

use super::region::RegionState;
use super::status::Stop;
use crate::condition::DayClass;
use crate::error::{Code, Error};
use crate::quantity::{Day, Mass, Name};
use crate::reason::Reason;
use crate::record::{ClearanceLimits, ClearanceStatus, Layoff, LayoffReason, Lifter, Parameters};
use crate::sign::Ask;

/// Days over which a fall in body mass is looked at, and the part of it that is to be talked over with a clinician.
pub(crate) const FALL_DAYS: i32 = 183;
pub(crate) const FALL_PART: f64 = 0.05;
/// The most sessions that an answer may still speak of.
pub(crate) const MOST_SESSIONS: usize = 16;
/// The most breaks kept, so that a state stays small.
pub(crate) const MOST_LAYOFFS: usize = 8;
/// The most body masses kept, so that a state stays small.
pub(crate) const MOST_MASSES: usize = 12;

/// What concerns every lift.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub(crate) struct Shared {
    /// Whose log it is.
    pub(crate) lifter: Lifter,
    /// Every region that was ever declared.
    pub(crate) regions: Vec<RegionState>,
    /// A symptom stop in force.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub(crate) stop: Option<Stop>,
    /// The clearance in force.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub(crate) clearance: Option<ClearanceInForce>,
    /// An illness after which a new clearance is needed, by its first day.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub(crate) ill_since: Option<Day>,
    /// What was said when asked before training, until it is answered.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub(crate) asks: Vec<OpenAsk>,
    /// Planned breaks and illnesses noted, until training goes on in them or after them; the last one noted last.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub(crate) layoffs: Vec<Layoff>,
    /// The last day's report.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub(crate) today: Option<TodayReport>,
    /// Body masses of the last half year that were no lower than any later one, oldest first; the last is the present one.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub(crate) body_masses: Vec<(Day, Mass)>,
    /// Whether the last session asked about pain; absent before the first.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub(crate) pain_asked: Option<bool>,
    /// The last day on which pain was asked about everywhere.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub(crate) pain_on: Option<Day>,
    /// Numbers and days of the last sessions, oldest first: an answer about one of them speaks of its day.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub(crate) sessions: Vec<(u32, Day)>,
    /// Events of unknown kinds so far.
    pub(crate) unknown: u32,
}

/// Something said when asked before training, that nobody has answered yet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[non_exhaustive]
pub struct OpenAsk {
    /// What.
    pub ask: Ask,
    /// Said first on that day.
    pub since: Day,
}

/// The day's answers as the state keeps them.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub(crate) struct TodayReport {
    /// Which day.
    pub(crate) day: Day,
    /// Its class.
    pub(crate) class: DayClass,
    /// The questions that come first were asked.
    pub(crate) asks_asked: bool,
    /// Pain was asked.
    pub(crate) pain_asked: bool,
    /// The first thing said today that comes before training, whether or not it was answered since.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub(crate) raised: Option<Ask>,
    /// Minutes there are.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub(crate) minutes: Option<u16>,
}

/// A planned break or an illness, as noted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Away {
    /// Its last day, where one was noted.
    pub(crate) until: Option<Day>,
    pub(crate) ill: bool,
}

impl Away {
    /// Why nothing is trained.
    pub(crate) fn reason(self) -> Reason {
        match self.until.filter(|_| self.ill) {
            Some(until) => Reason::IllUntil { until },
            None => Reason::PlannedBreak { until: self.until },
        }
    }
}

/// The clearance in force.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[non_exhaustive]
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

impl Shared {
    pub(crate) const fn new(lifter: Lifter) -> Shared {
        Shared {
            lifter,
            regions: Vec::new(),
            stop: None,
            clearance: None,
            ill_since: None,
            asks: Vec::new(),
            layoffs: Vec::new(),
            today: None,
            body_masses: Vec::new(),
            pain_asked: None,
            pain_on: None,
            sessions: Vec::new(),
            unknown: 0,
        }
    }

    /// Keeps number and day of a session.
    pub(crate) fn note_session(&mut self, session: u32, on: Day) {
        self.sessions.push((session, on));
        if self.sessions.len() > MOST_SESSIONS {
            self.sessions.remove(0);
        }
    }

    /// The last body mass recorded.
    pub(crate) fn body_mass(&self) -> Option<(Day, Mass)> {
        self.body_masses.last().copied()
    }

    /// Keeps a body mass, and of earlier ones those from which a fall can still be counted.
    pub(crate) fn weigh(&mut self, mass: Mass, on: Day) {
        self.body_masses.retain(|(day, earlier)| *earlier > mass && on.since(*day) <= FALL_DAYS);
        self.body_masses.push((on, mass));
        if self.body_masses.len() > MOST_MASSES {
            // The oldest stays, since it is the heaviest.
            self.body_masses.remove(1);
        }
    }

    /// Part of the body mass that was lost within half a year, where that is enough to be talked over.
    pub(crate) fn fallen_mass(&self, on: Day) -> Option<f64> {
        let (_, now) = self.body_mass()?;
        let recent = self.body_masses.iter().filter(|(day, _)| on.since(*day) <= FALL_DAYS);
        let before = recent.map(|(_, mass)| *mass).max()?;
        let part = 1.0 - now.kg() / before.kg();
        (part >= FALL_PART).then_some(part)
    }

    /// The region with that id, if it was ever declared.
    pub(crate) fn region(&self, id: &Name) -> Option<&RegionState> {
        self.regions.iter().find(|region| region.id == *id)
    }

    pub(crate) fn region_mut(&mut self, id: &Name) -> Option<&mut RegionState> {
        self.regions.iter_mut().find(|region| region.id == *id)
    }

    /// The same, of a region that was declared.
    ///
    /// # Errors
    /// `unknown_region`.
    pub(crate) fn known_mut(&mut self, id: &Name) -> Result<&mut RegionState, Error> {
        self.region_mut(id).ok_or_else(|| Error::plain(Code::UnknownRegion, "region"))
    }

    /// Whether something in that region waits for an answer, or a clearance limits it.
    pub(crate) fn is_open(&self, id: &Name) -> bool {
        let limited = self.limits().iter().any(|limit| limit.region.as_ref() == Some(id));
        limited || self.region(id).is_some_and(RegionState::is_open)
    }

    /// The answers of that day.
    pub(crate) fn report_on(&self, on: Day) -> Option<&TodayReport> {
        self.today.as_ref().filter(|report| report.day == on)
    }

    /// The day's class: what was reported today, else unknown.
    pub(crate) fn class_on(&self, on: Day) -> DayClass {
        self.report_on(on).map_or(DayClass::Unknown, |report| report.class)
    }

    /// Whether a lifter of that age counts as older; an age that nobody told counts so.
    pub(crate) fn is_older(&self, from_years: u8, on: Day) -> bool {
        self.lifter.oldest_on(on).is_none_or(|age| age >= i32::from(from_years))
    }

    /// Whether no clearance stands in the way on that day: one is in force and says yes, or none is asked for.
    pub(crate) fn is_cleared(&self, required: bool, on: Day) -> bool {
        self.clearance
            .as_ref()
            .map_or(!required, |given| given.status != ClearanceStatus::NotCleared && given.expires >= on)
    }

    /// Limits of the clearance in force.
    pub(crate) fn limits(&self) -> &[ClearanceLimits] {
        self.clearance.as_ref().map(|clearance| clearance.limits.as_slice()).unwrap_or_default()
    }

    /// Regions with a limit that no lift loads any more: nobody can tell what the limit still concerns.
    pub(crate) fn limits_without_lift<'a>(&'a self, all: &'a Parameters) -> impl Iterator<Item = &'a Name> {
        let limited = self.limits().iter().filter_map(|limit| limit.region.as_ref());
        limited.filter(|id| {
            let lifted = self.region(id).is_some_and(|region| region.lifted);
            lifted && !is_loaded(all, id)
        })
    }

    /// Stopped regions that no lift loads: such a stop halts every lift.
    pub(crate) fn stops_without_lift<'a>(
        &'a self,
        all: &'a Parameters,
    ) -> impl Iterator<Item = &'a RegionState> {
        self.regions.iter().filter(|region| region.stop.is_some() && !is_loaded(all, &region.id))
    }

    /// The planned break or the illness within whose dates that day lies; of several the one that ends last. A planned
    /// break without an end lasts until training goes on.
    pub(crate) fn away_on(&self, on: Day) -> Option<Away> {
        let covers = |layoff: &&Layoff| match layoff.reason {
            LayoffReason::Well => false,
            LayoffReason::Planned => layoff.from <= on && layoff.to.is_none_or(|to| on <= to),
            LayoffReason::Ill => layoff.from <= on && layoff.to.is_some_and(|to| on <= to),
        };
        let away = |layoff: &Layoff| Away { until: layoff.to, ill: layoff.reason == LayoffReason::Ill };
        self.layoffs.iter().filter(covers).map(away).max_by_key(|away| (away.until.is_none(), away.until))
    }

    /// Keeps a planned break or an illness; one of the same kind that begins on the same day is noted anew. Of more than a
    /// state keeps the one that ends first is forgotten.
    pub(crate) fn note_layoff(&mut self, layoff: &Layoff) {
        if layoff.reason == LayoffReason::Well {
            return;
        }
        self.layoffs.retain(|kept| (kept.reason, kept.from) != (layoff.reason, layoff.from));
        self.layoffs.push(layoff.clone());
        if self.layoffs.len() > MOST_LAYOFFS {
            let ends = |at: &usize| self.layoffs.get(*at).map(|kept| (kept.to.is_none(), kept.to));
            if let Some(first) = (0..self.layoffs.len()).min_by_key(ends) {
                self.layoffs.remove(first);
            }
        }
    }

    /// Training on that day ends the breaks that have begun.
    pub(crate) fn end_layoffs(&mut self, on: Day) {
        self.layoffs.retain(|layoff| layoff.from > on);
    }

    /// Something that comes before training was said on that day, and is answered by now.
    pub(crate) fn asked_and_answered(&self, on: Day) -> Option<Ask> {
        self.report_on(on).and_then(|report| report.raised).filter(|_| self.asks.is_empty())
    }

    /// The last day on which anything was trained.
    pub(crate) fn last_trained(&self) -> Option<Day> {
        self.regions.iter().filter_map(|region| region.loaded).max()
    }
}

/// Whether any lift of the parameters loads the region.
fn is_loaded(all: &Parameters, id: &Name) -> bool {
    all.lifts.iter().any(|lift| lift.regions.contains(id))
}
