//! Light work: lighter than what is granted, whatever makes it so: a limit of a clearance, the ceiling of the plan, the coach's
//! lower word, a kit that makes no such load, pain and days below the usual, or the lifter's own choice. It keeps its regions
//! loaded, so that the layoff table alone would give the old load back whole one day, after however many months. Its days are
//! counted instead, as a break from the work granted; what was lifted last in them is not taken away (both our choice: nobody
//! measured what light work keeps).

use alloc::vec::Vec;

use super::judge::Judged;
use super::lift::Lift;
use super::state::State;
use super::status::Purpose;
use super::view::View;
use crate::gate::Outcome;
use crate::quantity::{Day, Mass};
use crate::reason::Shortfall;
use crate::record::Policy;

/// Less than this part of the load granted is light work, whether a kit makes no more of it or a kept lift's band reaches so far
/// down (our choice: as much as the shortest break takes).
const NEARLY: f64 = 0.9;

/// Words no further apart than this, without a light session between them, make one stretch of days (our choice: no row of the table
/// as it comes is shorter).
const APART: i32 = 10;

/// Days of work below what is granted, since that was done last.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct Held {
    /// The load granted when it began.
    pub load: Mass,
    /// Days of stretches before the last one.
    pub days: u16,
    /// First and last known day of that.
    pub stretch: (Day, Day),
    /// It goes on: a limit, a ceiling, the coach's word or the kit holds the lift there.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "core::ops::Not::not"))]
    pub goes_on: bool,
    /// The heaviest load of its last session that was not missed, as it is made and no more than was allowed; none where that was done
    /// on another rung.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub lifted: Option<Mass>,
    /// The same of the session before: one day of less takes nothing away.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub before: Option<Mass>,
    /// Both were at the granted place, not in less range.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "core::ops::Not::not"))]
    pub whole: bool,
}

impl Held {
    const fn new(load: Mass, on: Day) -> Held {
        let (lifted, before) = (None, None);
        Held { load, days: 0, stretch: (on, on), goes_on: false, lifted, before, whole: true }
    }

    /// All days up to that one.
    pub(crate) fn days_by(&self, on: Day) -> u16 {
        let (first, last) = self.stretch;
        let last = if self.goes_on { on.max(last) } else { last };
        self.days.saturating_add(u16::try_from(last.since(first)).unwrap_or(0))
    }

    /// What was lifted where the lift is to be done: in less range, where a limit still keeps it there.
    pub(crate) fn lifted_where(&self, less_range: bool) -> Option<Mass> {
        self.lifted.max(self.before).filter(|_| self.whole || less_range)
    }

    /// What a session showed: of one that failed only that less was lifted.
    fn show(&mut self, lifted: Option<Mass>, whole: bool, (failed, same_day): (bool, bool)) {
        self.whole &= whole;
        let last = self.lifted;
        self.lifted = match (failed, same_day) {
            (true, _) => last.and_then(|last| lifted.map(|lifted| lifted.min(last))),
            (false, true) => last.max(lifted),
            (false, false) => lifted,
        };
        if !same_day {
            self.before = last.or(self.lifted);
        }
    }

    /// With a light session on that day. The days between two of them are days of it too, whatever else loaded the regions meanwhile.
    fn with_session(mut self, on: Day) -> Held {
        self.stretch.1 = self.stretch.1.max(on);
        self
    }

    /// With a word that begins on that day: of the same stretch, or the first day of another.
    fn with_word(self, on: Day) -> Held {
        if on.since(self.stretch.1) > APART { self.parted(on) } else { self.with_session(on) }
    }

    /// Another stretch begins, as after a break that has a row of its own: what lies between is no day of light work, where no word
    /// goes on.
    pub(crate) fn parted(self, on: Day) -> Held {
        if self.goes_on { self } else { Held { days: self.days_by(on), stretch: (on, on), ..self } }
    }

    fn closed(self, on: Day) -> Held {
        let last = if self.goes_on { on.max(self.stretch.0) } else { self.stretch.1 };
        Held { stretch: (self.stretch.0, last), goes_on: false, ..self }
    }
}

impl View<'_> {
    /// Whether something keeps the lift from the work granted.
    pub(crate) fn is_held(&self) -> bool {
        let lighter = self.limit() < self.lift.now.grant.load() && !self.allows_granted_load();
        lighter || self.is_range_held() || self.is_kit_held()
    }

    /// Whether a limit of range keeps it from the range granted.
    pub(crate) fn is_range_held(&self) -> bool {
        let range = self.lift.now.grant.place.range;
        self.range_limited() && self.range_allowed(range) != Some(range)
    }

    /// Whether what is made of the load granted is not nearly so heavy.
    pub(crate) fn is_kit_held(&self) -> bool {
        self.lift.granted_as_loaded() < self.nearly_granted()
    }

    /// The least that is nearly the load granted.
    fn nearly_granted(&self) -> Mass {
        let granted = self.lift.now.grant;
        self.lift.loadable.at(granted.place).share(granted.load(), NEARLY)
    }

    /// Whether the load granted may be loaded, as printed.
    pub(crate) fn allows_granted_load(&self) -> bool {
        let loads = self.lift.loadable.at(self.lift.now.grant.place);
        loads.within(self.limit()).is_some_and(|allowed| allowed >= self.lift.granted_as_loaded())
    }

    /// The load that is allowed, as it is made.
    pub(crate) fn allowed_as_made(&self) -> Mass {
        self.lift.loadable.at(self.lift.now.grant.place).rounded_down(self.limit())
    }

    /// What a session lifted on the granted rung of what was allowed, as it is made.
    fn lifted(&self, result: &Judged) -> Option<Mass> {
        let loads = self.lift.loadable.at(self.lift.now.grant.place);
        let load = result.completed.filter(|_| result.short != Some(Shortfall::Rung))?;
        let most = self.allowed_as_made();
        Some(if loads.is_as_printed(load, most) { most } else { loads.as_made(load).min(most) })
    }

    /// What a session means for it; none where it ends it: the work granted was done.
    pub(crate) fn held_after(&self, result: &Judged) -> Option<Held> {
        let now = &self.lift.now;
        let is_held = self.is_held();
        let noted = self.noted(is_held);
        let failed = result.outcome == Outcome::Fail;
        if !is_held && !self.is_light(result) {
            let shown = now.status.is_trained() && result.short.is_none() && !failed;
            return noted.filter(|_| !shown);
        }
        let mut held = noted.unwrap_or(Held::new(now.grant.load(), self.on)).with_session(self.on);
        let same_day = now.last_session == Some(self.on);
        held.show(self.lifted(result), !result.elsewhere, (failed, same_day));
        Some(held)
    }

    fn is_lighter(&self, load: Mass, than: Mass) -> bool {
        let loads = self.lift.loadable.at(self.lift.now.grant.place);
        load < than && !loads.is_as_printed(load, than)
    }

    /// Whether a session was below the work granted: lighter, on another rung or in less range, whatever the day asked for. What is
    /// on plan for a kept lift and nearly as heavy is none.
    fn is_light(&self, result: &Judged) -> bool {
        let elsewhere = matches!(result.short, Some(Shortfall::Rung | Shortfall::Range))
            || (result.elsewhere && result.short == Some(Shortfall::Limit));
        let planned = match self.lift.now.purpose {
            Purpose::Maintain { not_below: Some(least) } => {
                least.max(self.nearly_granted()).min(self.lift.granted_as_loaded())
            }
            _ => self.lift.granted_as_loaded(),
        };
        elsewhere || result.heaviest.is_none_or(|load| self.is_lighter(load, planned))
    }

    /// The days as they stand on this one: they begin, go on or are over.
    fn noted(&self, is_held: bool) -> Option<Held> {
        let (before, load) = (self.lift.now.held, self.lift.now.grant.load());
        if !is_held {
            return before.map(|held| held.closed(self.on));
        }
        let held = before.unwrap_or(Held::new(load, self.on));
        let held = if held.goes_on { held } else { held.with_word(self.on) };
        let allowed = self.allowed_as_made();
        let within = |lifted: Option<Mass>| lifted.map(|lifted| lifted.min(allowed));
        let (lifted, before) = (within(held.lifted), within(held.before));
        Some(Held { load: held.load.max(load), goes_on: true, lifted, before, ..held })
    }
}

impl Lift {
    /// What a lift that was kept below its work for so long keeps of its load where it leaves its implement; none where it was not.
    pub(crate) fn kept_of(&self, policy: &Policy, on: Day) -> Option<Mass> {
        let first = policy.layoff.first()?.from_days;
        let held = self.now.held.filter(|held| held.days_by(on) >= first)?;
        held.lifted_where(false).or_else(|| self.loadable.at(self.now.grant.place).lightest())
    }

    /// What it kept is noted while its loads are known, where it is left out.
    pub(crate) fn settle_held(&mut self) {
        let lightest = self.loadable.at(self.now.grant.place).lightest();
        if let Some(held) = self.now.held.as_mut().filter(|held| held.lifted_where(false).is_none()) {
            (held.lifted, held.before, held.whole) = (lightest, None, lightest.is_some());
        }
    }
}

impl State {
    /// Notes of every lift whether something keeps it below its work from that day on.
    pub(crate) fn note_held(&mut self, on: Day) {
        let held: Vec<Option<Held>> = self.views(on).map(|view| view.noted(view.is_held())).collect();
        self.lifts.iter_mut().zip(held).for_each(|(lift, held)| lift.now.held = held);
    }

    /// Ends the days of an override that ran out on the day after its last, unless something else keeps the lift there.
    pub(crate) fn end_held(&mut self, ran_out: &[Option<Day>], on: Day) {
        let held: Vec<bool> = self.views(on).map(|view| view.is_held()).collect();
        for ((lift, ran_out), held) in self.lifts.iter_mut().zip(ran_out).zip(held) {
            if let Some(last) = ran_out.filter(|_| !held) {
                let over = last.plus(1).unwrap_or(last);
                lift.now.held = lift.now.held.map(|held| held.closed(over));
            }
        }
    }
}
