//! What concerns every lift: the regions, stops, clearance, what was asked, the day.

use alloc::vec::Vec;

use super::asks::OpenAsk;
use super::day_report::TodayReport;
use super::lift::Lift;
use super::region::RegionState;
use super::set_aside::LaidBy;
use super::status::Stop;
use crate::error::{Code, Error};
use crate::quantity::{Day, Mass, Name};
use crate::record::{ClearanceLimits, ClearanceStatus, Layoff, Lifter, Parameters};

/// Days over which a fall in body mass is looked at, and the part of it that is to be talked over with a clinician.
pub(crate) const FALL_DAYS: i32 = 183;
pub(crate) const FALL_PART: f64 = 0.05;
/// The most sessions that an answer may still speak of.
pub(crate) const MOST_SESSIONS: usize = 16;
/// The most body masses kept, so that a state stays small: one a week of the half year, and the ends.
pub(crate) const MOST_MASSES: usize = 28;

/// What concerns every lift.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
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
    /// An illness after which a new clearance is needed, by its first day, with the number under which it was told last.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub(crate) ill_since: Option<(Day, u32)>,
    /// Illnesses noted in advance, the next one first, each with the number under which it was told last.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub(crate) ill_ahead: Vec<(Day, u32)>,
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
    /// The day on which the morning after the last training was first answered; absent while it is not.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub(crate) answered: Option<Day>,
    /// Numbers and days of the last sessions, oldest first: an answer about one of them speaks of its day.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub(crate) sessions: Vec<(u32, Day)>,
    /// Lifts left out so long ago that they are kept no more as they stood, in the order of their last sessions.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub(crate) laid_by: Vec<LaidBy>,
    /// Events of unknown kinds so far.
    pub(crate) unknown: u32,
}

/// The clearance in force.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct ClearanceInForce {
    /// What was said.
    pub status: ClearanceStatus,
    /// When.
    pub given: Day,
    /// Last day it holds.
    pub expires: Day,
    /// Number under which it and its limits were told last: one given before takes none of them away.
    pub told: u32,
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
            ill_ahead: Vec::new(),
            asks: Vec::new(),
            layoffs: Vec::new(),
            today: None,
            body_masses: Vec::new(),
            pain_asked: None,
            pain_on: None,
            answered: None,
            sessions: Vec::new(),
            laid_by: Vec::new(),
            unknown: 0,
        }
    }

    /// Keeps number and day of a session.
    pub(crate) fn note_session(&mut self, session: u32, on: Day) {
        self.answered = None;
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
        if self.body_masses.len() > MOST_MASSES
            && let Some(closest) = self.closest_mass()
        {
            self.body_masses.remove(closest);
        }
    }

    /// Of the body masses between the first and the last the one whose neighbours lie closest together, so that what is kept lies
    /// evenly over the half year. The oldest is the heaviest, and the last the present one.
    fn closest_mass(&self) -> Option<usize> {
        let between = |at: &usize| match self.body_masses.get(at - 1..at + 2) {
            Some([(before, _), _, (after, _)]) => after.since(*before),
            _ => i32::MAX,
        };
        (1..self.body_masses.len().saturating_sub(1)).min_by_key(between)
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

    /// Those that concern a lift.
    pub(crate) fn limits_of<'a>(&'a self, lift: &'a Lift) -> impl Iterator<Item = &'a ClearanceLimits> {
        let here =
            |limit: &&ClearanceLimits| limit.region.as_ref().is_none_or(|region| lift.has_region(region));
        self.limits().iter().filter(here)
    }

    /// Regions with a limit that no lift loads any more: nobody can tell what the limit still concerns.
    pub(crate) fn limits_without_lift<'a>(&'a self, all: &'a Parameters) -> impl Iterator<Item = &'a Name> {
        let limited = self.limits().iter().filter_map(|limit| limit.region.as_ref());
        limited.filter(|id| self.is_limited_without_lift(id, Some(all)))
    }

    /// Whether the region, which has a limit, was loaded by a lift once and is by none now.
    pub(crate) fn is_limited_without_lift(&self, id: &Name, all: Option<&Parameters>) -> bool {
        let lifted = self.region(id).is_some_and(|region| region.lifted);
        lifted && !all.is_some_and(|all| is_loaded(all, id))
    }

    /// Stopped regions that no lift loads: such a stop halts every lift.
    pub(crate) fn stops_without_lift<'a>(
        &'a self,
        all: &'a Parameters,
    ) -> impl Iterator<Item = &'a RegionState> {
        self.regions.iter().filter(|region| region.stop.is_some() && !is_loaded(all, &region.id))
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
