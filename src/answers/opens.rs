//! What would a correction, an undo, one more event or another log in its place open?

use alloc::borrow::Cow;
use alloc::vec::Vec;

use super::diary::Diary;
use super::in_force::{
    Restriction, ceilings, days, each_once, limits, missing, narrowing, parts, refusal, sessions, stopping,
    unread,
};
use super::lacking::Lacking;
use super::reported::is_taken_back;
use super::{cautions_of, check_today};
use crate::caution::Caution;
use crate::error::Error;
use crate::prescription::{LiftToday, SessionPlan, Verdict};
use crate::progression::State;
use crate::quantity::{Day, Name};
use crate::reason::Reason;
use crate::record::{ClearanceLimits, Dimension, Event, EventKind, Grant, LiftParameters, Log, Work};

/// A stop that is in force and would not be any more.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct StopGone {
    /// The stop.
    pub stop: Restriction,
    /// What reported it would not be in the log any more, or would say something else; else something in it lifts the stop.
    pub taken_back: bool,
}

/// A load that would be higher, or work that would be more: at a harder place, or with more sets or repetitions at no less load.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum HigherLoad {
    /// The granted work of a lift.
    Granted {
        /// The lift.
        lift: Name,
        /// What is granted now.
        from: Grant,
        /// What would be granted.
        to: Grant,
    },
    /// The work of a lift on that day, where it says more than the granted ones do.
    Today {
        /// The lift.
        lift: Name,
        /// Today's work; absent where nothing is lifted, though nothing stops the lift.
        #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
        from: Option<Grant>,
        /// What would be done today.
        to: Grant,
    },
}

/// What would open.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Opens {
    /// Every stop of the lifter, as it is in force; empty where nothing is stopped. Shown before anything else.
    pub stops: Vec<Reason>,
    /// The day it was made for.
    pub today: Day,
    /// Stops that would no longer be in force.
    pub stops_gone: Vec<StopGone>,
    /// What else would no longer be in force, in the order of [`InForce`](super::InForce).
    pub gone: Vec<Restriction>,
    /// Loads that would be higher, and work that would be more.
    pub higher: Vec<HigherLoad>,
    /// Nothing would be set for the lifts any more.
    pub unsets: bool,
    /// What nobody wrote down.
    pub missing: Vec<Lacking>,
    /// What to show beside it.
    pub cautions: Vec<Caution>,
}

impl Opens {
    /// Whether nothing opens, and something stays set where something is set.
    #[must_use]
    pub const fn is_empty(&self) -> bool {
        self.stops_gone.is_empty() && self.gone.is_empty() && self.higher.is_empty() && !self.unsets
    }
}

/// What would open if one more event (a correction or an undo among them) were written down on that day, or another log stood in
/// this one's place: stops gone, limits gone or looser, loads higher or work more. To be asked before anything is written.
///
/// With both, the event is written behind the other log. Nothing is kept of it.
///
/// # Rules
/// What [`in_force`](super::in_force()) lists now and would not list then. A stop is the same whenever it was reported; a part of a
/// limit stays where a limit then holds all that it says (no higher load or rating, the same range, in that region or everywhere); a
/// ceiling where it is no higher; a word of the coach where one that lasts as long, or the granted load, is no higher; a break where one
/// that lasts as long holds that day. Breaks noted for later are looked at on their first day, each day by itself. More work is a higher
/// load, a harder place (one that is not known to be easier among them), or more sets or repetitions at no less load. Work of today that
/// would be more is told where no stop keeps it at nothing: the stop tells that.
///
/// # Errors
/// What [`fold`](crate::progression::fold) reports of either log; `before_last_event` for a day before the last event of either.
///
/// # Examples
/// ```
/// use bismar::answers::{Restriction, opens};
/// use bismar::quantity::Name;
/// use bismar::record::{Correction, Event, EventKind, Lifter, Log, SymptomReport};
/// use bismar::sign::StopSign;
///
/// let mut log = Log::new(Lifter::new(Name::new("A")?));
/// let (day, told) = ("2026-03-02".parse()?, SymptomReport::new(vec![StopSign::Faint]));
/// log.events.push(Event::new(1, day, EventKind::SymptomReport(told)));
/// let undo = EventKind::Correction(Correction::new(1));
/// let found = opens(&log, day, Some(&undo), None)?;
/// assert!(matches!(found.stops_gone[0].stop, Restriction::Sign { sign: StopSign::Faint, .. }));
/// assert!(found.stops_gone[0].taken_back);
/// # Ok::<(), bismar::Error>(())
/// ```
pub fn opens(
    log: &Log,
    today: Day,
    suppose: Option<&EventKind>,
    instead: Option<&Log>,
) -> Result<Opens, Error> {
    let before = Diary::of(log)?;
    let mut then = Cow::Borrowed(instead.unwrap_or(log));
    if let Some(kind) = suppose {
        let last = then.events.iter().map(|event| event.sequence).max();
        let event = Event::new(last.unwrap_or_default().saturating_add(1), today, kind.clone());
        then.to_mut().events.push(event);
    }
    before.opens(&Diary::of(&then)?, today)
}

impl Diary<'_> {
    /// What would open if the log of that other diary stood in this one's place? See [`opens`].
    ///
    /// # Errors
    /// `before_last_event` for a day before the last event of either.
    pub fn opens(&self, then: &Diary<'_>, today: Day) -> Result<Opens, Error> {
        let (before, after) = (self.state(), then.state());
        check_today(before, today)?;
        check_today(after, today)?;
        let days = days(before, today);
        let policy = before.parameters().map(|all| all.policy.clone()).unwrap_or_default();
        let stops_gone = stops_gone(before, after, &days).into_iter().map(|stop| {
            let taken_back = is_taken_back(&stop, self, then, &policy);
            StopGone { stop, taken_back }
        });
        let stops_gone = stops_gone.collect();
        let (now, later) = (sessions(before, &days), sessions(after, &days));
        let mut gone: Vec<Restriction> = parts(before).filter(|part| !is_limited(after, part)).collect();
        gone.extend(widened((before, &now), (after, &later)));
        gone.extend(ceilings(before).filter(|one| is_above(after, one)));
        gone.extend(unread(before).filter(|_| unread(after).is_none()));
        let higher = match (now.first(), later.first()) {
            (Some(Some(now)), Some(Some(then))) => higher((before, now), (after, then)),
            _ => Vec::new(),
        };
        Ok(Opens {
            stops: before.stops_on(today),
            today,
            stops_gone,
            gone,
            higher,
            unsets: before.parameters().is_some() && after.parameters().is_none(),
            missing: missing(before),
            cautions: cautions_of(before, today),
        })
    }
}

/// Stops of each of these days that are not there then, whenever they were reported; each once.
fn stops_gone(before: &State, after: &State, days: &[Day]) -> Vec<Restriction> {
    // After a newer clearance a refusal waits for the coach's word alone, and a sign that is told meanwhile for more.
    let answered = refusal(before).is_none();
    let signs = |other: &Restriction| matches!(other, Restriction::Sign { .. });
    let stays = |one: &Restriction, still: &[Restriction]| {
        let refused = matches!(one, Restriction::NotToTrain { .. });
        still.iter().any(|other| is_same(one, other) || (refused && answered && signs(other)))
    };
    each_once(days.iter().flat_map(|day| {
        let still = stopping(after, *day);
        let mut gone = stopping(before, *day);
        gone.retain(|one| !stays(one, &still));
        gone
    }))
}

/// Whether two stops are the same, whenever they were reported.
fn is_same(one: &Restriction, other: &Restriction) -> bool {
    match (one, other) {
        (Restriction::Sign { sign, .. }, Restriction::Sign { sign: other, .. }) => sign == other,
        (Restriction::Pain { region, .. }, Restriction::Pain { region: other, .. })
        | (
            Restriction::LimitWithoutLift { region, .. },
            Restriction::LimitWithoutLift { region: other, .. },
        ) => region == other,
        (Restriction::Asked { ask, .. }, Restriction::Asked { ask: other, .. }) => ask == other,
        (Restriction::NotToTrain { .. }, Restriction::NotToTrain { .. })
        | (Restriction::Illness { .. }, Restriction::Illness { .. }) => true,
        _ => false,
    }
}

/// Whether a limit of that state holds all that a part of another says.
fn is_limited(state: &State, part: &Restriction) -> bool {
    let Restriction::Limit { limit: part } = part else { return false };
    limits(state).iter().any(|limit| holds(limit, part))
}

fn holds(limit: &ClearanceLimits, part: &ClearanceLimits) -> bool {
    limit.region.as_ref().is_none_or(|region| part.region.as_ref() == Some(region))
        && part.load.is_none_or(|most| limit.load.is_some_and(|load| load <= most))
        && part.effort.is_none_or(|most| limit.effort.is_some_and(|effort| effort <= most))
        // How deep a range goes, the lift's own list of ranges says: only the same is known to be as careful.
        && part.range.is_none_or(|range| limit.range == Some(range))
        && (!part.no_loaded_flexion || limit.no_loaded_flexion)
        && (!part.no_breath_hold || limit.no_breath_hold)
}

/// Rests, breaks and words that something no less careful does not follow, day by day; each once.
fn widened(
    now: (&State, &[Option<SessionPlan>]),
    then: (&State, &[Option<SessionPlan>]),
) -> Vec<Restriction> {
    each_once(now.1.iter().zip(then.1).flat_map(|(before, after)| {
        let still = narrowing(then.0, core::slice::from_ref(after));
        let stays = |one: &Restriction| {
            still.iter().any(|other| no_less(one, other)) || is_granted(one, after.as_ref())
        };
        let mut gone = narrowing(now.0, core::slice::from_ref(before));
        gone.retain(|one| !stays(one));
        gone
    }))
}

/// Whether the other holds all that the one does, and for as long.
fn no_less(one: &Restriction, other: &Restriction) -> bool {
    let as_long = |until: Option<Day>, then: Option<Day>| {
        then.is_none_or(|then| until.is_some_and(|until| then >= until))
    };
    match (one, other) {
        (Restriction::PlannedBreak { until }, Restriction::PlannedBreak { until: then }) => {
            as_long(*until, *then)
        }
        // After an illness a clearance comes first as well.
        (Restriction::PlannedBreak { until }, Restriction::IllUntil { until: then }) => {
            as_long(*until, Some(*then))
        }
        (Restriction::IllUntil { until }, Restriction::IllUntil { until: then }) => then >= until,
        (
            Restriction::Word { lift, place, load, until, .. },
            Restriction::Word { lift: of, place: at, load: most, until: then, .. },
        ) => lift == of && place == at && most <= load && as_long(*until, *then),
        _ => one == other,
    }
}

/// Whether a word says no less than what is granted then at that place.
fn is_granted(word: &Restriction, then: Option<&SessionPlan>) -> bool {
    let Restriction::Word { lift, place, load, .. } = word else { return false };
    let own = then.and_then(|then| then.lifts.iter().find(|own| own.lift == *lift));
    own.is_some_and(|own| own.granted.place == *place && own.granted.load() <= *load)
}

/// Whether a lift that is still there has no ceiling any more, or a higher one.
fn is_above(state: &State, ceiling: &Restriction) -> bool {
    let Restriction::Ceiling { lift, load } = ceiling else { return false };
    let set = state.lift_state(lift);
    set.is_some_and(|lift| lift.parameters().ceiling.is_none_or(|then| then > *load))
}

/// The work of a lift that is trained that day.
fn work(lift: &LiftToday) -> Option<Grant> {
    let load = lift.load.filter(|_| lift.sets > 0)?;
    Some(Grant::new(Work::new(lift.sets, lift.reps, load)).with_place(lift.place))
}

/// Whether that is more work: a higher load, a harder place or one of which nobody can tell, or more sets or repetitions at no less
/// load.
fn is_more((before, from): (&LiftParameters, &Grant), (after, to): (&LiftParameters, &Grant)) -> bool {
    let alike = before.rungs == after.rungs && before.ranges == after.ranges && before.tempos == after.tempos;
    let harder = after.harder_in(from, to);
    let (rung, other) = (from.place.rung, to.place.rung);
    // A rung that no chain connects is not known to be easier, and numbers tell nothing of other lists.
    let elsewhere = if alike {
        rung != other && !after.is_harder(rung, other)
    } else {
        before.named_place(from.place) != after.named_place(to.place)
    };
    elsewhere
        || harder.into_iter().any(|what| match what {
            Dimension::Sets | Dimension::Reps => to.load() >= from.load(),
            Dimension::Load => true,
            _ => alike,
        })
}

/// The grants that are more, and the work of a day. What a stop kept at nothing is told by the stop.
fn higher(before: (&State, &SessionPlan), after: (&State, &SessionPlan)) -> Vec<HigherLoad> {
    let mut all = Vec::new();
    for then in &after.1.lifts {
        let Some(now) = before.1.lifts.iter().find(|own| own.lift == then.lift) else { continue };
        let (Some(own), Some(later)) = (before.0.lift_state(&then.lift), after.0.lift_state(&then.lift))
        else {
            continue;
        };
        let is_more = |from: &Grant, to: &Grant| is_more((own.parameters(), from), (later.parameters(), to));
        let granted = is_more(&now.granted, &then.granted);
        if granted {
            all.push(HigherLoad::Granted { lift: then.lift.clone(), from: now.granted, to: then.granted });
        }
        let (Some(to), from) = (work(then), work(now)) else { continue };
        // Where today does what is granted, before and then, it is said already.
        let said = granted && to == then.granted && from.is_some_and(|from| from == now.granted);
        let more = from.is_none_or(|from| is_more(&from, &to));
        if more && !said && now.verdict != Verdict::Stop {
            all.push(HigherLoad::Today { lift: then.lift.clone(), from, to });
        }
    }
    all
}
