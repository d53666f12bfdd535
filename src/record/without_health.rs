//! A log and a plan without health detail and without anybody's own words, for somebody whom neither concerns.

use alloc::vec::Vec;

use super::event::{Event, EventKind};
use super::health::{Clearance, ClearanceStatus};
use super::log::{Lifter, Log};
use super::parameters::Parameters;
use super::plan::Plan;
use super::session::Session;
use crate::error::Error;
use crate::quantity::{Day, Name};

/// What is left out of a log where health is left out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum HealthDetail {
    /// Whole events of that kind, by the name that logs have for it.
    Event(&'static str),
    /// The day of birth, or the band of age.
    Age,
    /// Notes of events.
    Note,
    /// Answers about pain in sessions.
    Pain,
    /// Cues, reasons, names of blocks and of kit, what people call regions, lifts and rungs: somebody's own words.
    OwnWords,
    /// Names of people; numbers stand in their place.
    People,
}

/// How often something was left out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct LeftOut {
    /// What.
    pub what: HealthDetail,
    /// How often.
    pub times: u32,
}

/// A copy of a log without health detail.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct WithoutHealth {
    /// The copy.
    pub log: Log,
    /// What it does not have, in the order in which it was first met. For whoever makes the copy: handed on with it, it would tell what
    /// there was.
    pub left_out: Vec<LeftOut>,
}

/// The year on whose first day the stop of a copy lies in which nothing else stays: before any log.
const LONG_AGO: i32 = 2000;

impl Log {
    /// A copy without answers about pain, symptoms, days, clearances and body mass, and without what somebody wrote in own words: notes,
    /// cues, reasons, names of people, of blocks and of kit, and what people call regions, lifts and rungs; corrections applied, numbered
    /// anew.
    ///
    /// It ends stopped, by an answer about clearance that was not to train: what was left out may have held a stop or a limit, so a new
    /// clearance comes first wherever the copy is used. Loads, marks and settings stay, and so do ids, by which events find what they speak
    /// of: of the lifter, of regions, lifts, rungs, criteria and implements. Whoever writes own words into an id hands them on.
    ///
    /// It is no log to train by: reports that held a lift or took a pass back are not in it, so that it can grant more than the log it was
    /// made from.
    ///
    /// # Errors
    /// What [`effective`](Log::effective) reports.
    ///
    /// ```
    /// use bismar::quantity::{Mass, Name};
    /// use bismar::record::{Event, EventKind, HealthDetail, Lifter, Log};
    ///
    /// let mut log = Log::new(Lifter::new(Name::new("A")?));
    /// let weighed = EventKind::BodyMassRecorded(Mass::from_kg(80.0)?);
    /// log.events.push(Event::new(1, "2026-03-02".parse()?, weighed));
    /// let copy = log.without_health()?;
    /// assert_eq!(copy.left_out[0].what, HealthDetail::Event("body_mass_recorded"));
    /// assert_eq!(copy.log.events.len(), 1); // the stop
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn without_health(&self) -> Result<WithoutHealth, Error> {
        let mut left = Leaving::default();
        let mut events: Vec<Event> = Vec::new();
        for event in self.effective()? {
            events.extend(left.stripped(event.into_owned())?);
        }
        // On the last day that stays, or long ago: the day of what was left out would tell of it.
        let day = events.last().map_or(Day::from_calendar(LONG_AGO, 1, 1), |event| Ok(event.day))?;
        let stop = Clearance::new(ClearanceStatus::NotCleared, Name::new("health detail left out")?);
        events.push(Event::new(0, day, EventKind::ClearanceRecorded(stop)));
        // A number that is not there would tell that something of that day was left out.
        for (number, event) in (1..).zip(&mut events) {
            event.sequence = number;
        }
        if self.lifter.born.is_some() || self.lifter.age.is_some() {
            left.note(HealthDetail::Age);
        }
        let lifter = Lifter { born: None, age: None, ..self.lifter.clone() };
        let (format, version) = (self.format.clone(), self.version);
        Ok(WithoutHealth { log: Log { format, version, lifter, events }, left_out: left.out })
    }
}

impl Plan {
    /// The plan without what tells of health: what a planned gap or a load to keep is for, in somebody's own words, and that body mass is
    /// meant to fall. Ids of lifts, and of equipment that was weighed, stay.
    ///
    /// # Errors
    /// None that a plan which was read gives.
    pub fn without_health(&self) -> Result<Plan, Error> {
        let mut plan = self.clone();
        if let Some(years) = &mut plan.years {
            for gap in &mut years.gaps {
                gap.name = words_left_out()?;
            }
            for kept in &mut years.keep {
                kept.name = words_left_out()?;
            }
            years.mass_loss_intended = false;
        }
        Ok(plan)
    }
}

/// Stands for words that were left out.
const LEFT_OUT: &str = "left out";

fn words_left_out() -> Result<Name, Error> {
    Name::new(LEFT_OUT)
}

/// What was left out so far.
#[derive(Default)]
struct Leaving {
    out: Vec<LeftOut>,
    /// People by numbers: who marked may matter for the numbers, who it was does not.
    people: Vec<Name>,
}

impl Leaving {
    fn note(&mut self, what: HealthDetail) {
        match self.out.iter_mut().find(|one| one.what == what) {
            Some(one) => one.times = one.times.saturating_add(1),
            None => self.out.push(LeftOut { what, times: 1 }),
        }
    }

    fn number(&mut self, name: &mut Name) -> Result<(), Error> {
        let known = self.people.iter().position(|known| known == name);
        let at = known.unwrap_or_else(|| {
            self.people.push(name.clone());
            self.people.len() - 1
        });
        *name = Name::new(&alloc::format!("person {}", at + 1))?;
        self.note(HealthDetail::People);
        Ok(())
    }

    fn words(&mut self, name: &mut Name) -> Result<(), Error> {
        *name = words_left_out()?;
        self.note(HealthDetail::OwnWords);
        Ok(())
    }

    /// Takes something out that is there.
    fn take<T>(&mut self, from: &mut Option<T>, what: HealthDetail) {
        if from.take().is_some() {
            self.note(what);
        }
    }

    /// An event without health detail and without anybody's own words; nothing where nothing of it may stay.
    fn stripped(&mut self, mut event: Event) -> Result<Option<Event>, Error> {
        match &mut event.kind {
            EventKind::SessionRecorded(session) => self.session(session)?,
            EventKind::CoachOverride(given) => {
                if let Some(why) = &mut given.why {
                    *why = LEFT_OUT.into();
                    self.note(HealthDetail::OwnWords);
                }
                self.number(&mut given.who)?;
            }
            EventKind::AdvanceAccepted(given) | EventKind::AdvanceDeclined(given) => {
                self.number(&mut given.who)?;
            }
            EventKind::VariantChanged(given) | EventKind::RangeChanged(given) => {
                self.number(&mut given.who)?;
            }
            EventKind::RaterChanged(given) => self.number(&mut given.now)?,
            EventKind::BarOrDiscsChanged(given) => self.words(&mut given.now)?,
            EventKind::SessionMissed(missed) => self.words(&mut missed.reason)?,
            EventKind::BlockStarted(name) | EventKind::BlockEnded(name) => self.words(name)?,
            EventKind::ParametersChanged(all) => self.names(all),
            // What it means for health is told by leaving the lift out; the marks and loads of a lift are no health detail.
            EventKind::RoleSet(_) => {}
            // Corrections are made already. Whatever comes later is left out until somebody has thought about it.
            kind => {
                self.note(HealthDetail::Event(kind.name()));
                return Ok(None);
            }
        }
        self.take(&mut event.note, HealthDetail::Note);
        Ok(Some(event))
    }

    /// What people call a region, a lift or a rung: its id says which it is.
    fn names(&mut self, all: &mut Parameters) {
        let regions = all.regions.iter_mut().map(|region| &mut region.name);
        let lifts = all.lifts.iter_mut();
        let lifts = lifts.flat_map(|lift| {
            core::iter::once(&mut lift.name).chain(lift.rungs.iter_mut().map(|rung| &mut rung.name))
        });
        regions.chain(lifts).for_each(|name| self.take(name, HealthDetail::OwnWords));
    }

    fn session(&mut self, session: &mut Session) -> Result<(), Error> {
        self.take(&mut session.pain, HealthDetail::Pain);
        for lift in &mut session.lifts {
            self.take(&mut lift.cue, HealthDetail::OwnWords);
            if let Some(setup) = &mut lift.setup {
                self.take(&mut setup.kit, HealthDetail::OwnWords);
            }
            for set in &mut lift.sets {
                for marks in set.marks.iter_mut().chain(&mut set.also_marked) {
                    marks.rater_id.as_mut().map_or(Ok(()), |rater| self.number(rater))?;
                }
            }
        }
        Ok(())
    }
}
