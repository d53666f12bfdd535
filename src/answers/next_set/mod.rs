//! That set is done: what now? The same, less, more within what the day allows, an easier rung, or the end.
//!
//! Uses record, progression, prescription, one_rm, gate, and the words of the module above.

mod answer;
mod by_rule;
mod course;

use alloc::vec::Vec;

pub use answer::{NextSet, SetReason, SetWork, SetsToday, Then};
use by_rule::Own;
use course::Course;

use super::curve::LiftCurve;
use super::diary::Diary;
use crate::error::{Code, Error};
use crate::loading::Implement;
use crate::one_rm::CurveForm;
use crate::prescription::next_session_from;
use crate::progression::State;
use crate::quantity::{Day, Mass, Name};
use crate::record::{Event, EventKind, Log, PainAnswer, Place, Plan, Session, WorkSet};

/// What comes after the sets of a lift done so far today, by the lift's rule in the plan?
///
/// Nothing passes today's load. Pain comes first, then technique and missed repetitions, then the number of sets, then
/// the rule ([`SetRule`](crate::record::SetRule)), then what can be loaded. What nobody said is taken as the more careful.
/// Sets of the lift that the log holds of today come before those given. The own curve is that of earlier sets on the
/// rung and in the range of today's work; of a lift that is helped, over the body less the help.
///
/// # Errors
/// What [`fold`](crate::progression::fold) and [`next_session_from`] report; `unknown_lift` for a lift that is not in the
/// plan; what the log refuses of a set ([`Session::check`]).
pub fn next_set(log: &Log, plan: &Plan, today: Day, done: &SetsToday) -> Result<NextSet, Error> {
    Diary::of(log)?.next_set(plan, today, done)
}

impl Diary<'_> {
    /// What comes after the sets of a lift done so far today? See [`next_set`].
    ///
    /// # Errors
    /// As [`next_set`].
    pub fn next_set(&self, plan: &Plan, today: Day, done: &SetsToday) -> Result<NextSet, Error> {
        let (earlier, pain, rest) = self.before_today(&done.lift, today);
        let Some(rest) = rest else { return self.next_set_of(plan, today, done, done.pain.is_some()) };
        // What was asked before says nothing of the sets since.
        let asked = done.pain.is_some() || (done.sets.is_empty() && pain.is_some());
        let log = self.log_of(rest);
        let all = SetsToday {
            lift: done.lift.clone(),
            sets: earlier.into_iter().chain(done.sets.iter().cloned()).collect(),
            pain: worst(pain, done.pain.clone()),
        };
        self.of_some(&log)?.next_set_of(plan, today, &all, asked)
    }

    fn next_set_of(&self, plan: &Plan, today: Day, done: &SetsToday, asked: bool) -> Result<NextSet, Error> {
        next_set_after(self.state(), plan, today, (done, asked), |place| {
            self.curve_at(&done.lift, place, today)
        })
    }

    /// Sets and pain of the lift that the log holds of today, and the events without them; none where there are none.
    fn before_today(
        &self,
        lift: &Name,
        today: Day,
    ) -> (Vec<WorkSet>, Option<Vec<PainAnswer>>, Option<Vec<Event>>) {
        let (mut sets, mut pain, mut rest) = (Vec::new(), None, Vec::new());
        let of_lift = |session: &&Session| session.lifts.iter().any(|done| done.lift == *lift);
        if !self.sessions_on(today).any(|(_, session)| of_lift(&session)) {
            return (sets, pain, None);
        }
        for event in self.events() {
            let session = match &event.kind {
                EventKind::SessionRecorded(session) if event.day == today => Some(session),
                _ => None,
            };
            let Some(session) = session.filter(of_lift) else {
                rest.push(event.clone());
                continue;
            };
            let mut left = session.clone();
            left.lifts.retain(|done| done.lift != *lift);
            let own = session.lifts.iter().filter(|done| done.lift == *lift);
            sets.extend(own.flat_map(|done| done.sets.iter().cloned()));
            pain = worst(pain, session.pain.clone());
            if !left.lifts.is_empty() {
                rest.push(Event { kind: EventKind::SessionRecorded(left), ..event.clone() });
            }
        }
        (sets, pain, Some(rest))
    }
}

/// The same from a state that was kept since before the lift's first set of today, and from the answer of
/// [`curve`](super::curve()) that was kept beside it; without one, or where it does not tell enough of today's place, by a
/// published equation in place of the own curve.
///
/// # Errors
/// As [`next_set`]; `needs_refold` where the state holds a session of the lift of today.
pub fn next_set_from(
    state: &State,
    plan: &Plan,
    today: Day,
    done: &SetsToday,
    curve: Option<&LiftCurve>,
) -> Result<NextSet, Error> {
    if state.lift_state(&done.lift).is_some_and(|lift| lift.last_session() == Some(today)) {
        return Err(Error::plain(Code::NeedsRefold, "state"));
    }
    next_set_after(state, plan, today, (done, done.pain.is_some()), |place| {
        let own = curve.filter(|own| own.enough && own.lift == done.lift);
        let own =
            own.filter(|own| own.place.is_some_and(|at| (at.rung, at.range) == (place.rung, place.range)))?;
        own.curve.as_ref().map(|own| (own.form, own.slope))
    })
}

/// With the sets, whether anybody asked about pain since the last of them.
fn next_set_after(
    state: &State,
    plan: &Plan,
    today: Day,
    (done, asked): (&SetsToday, bool),
    curve: impl FnOnce(Place) -> Option<(CurveForm, f64)>,
) -> Result<NextSet, Error> {
    let session = next_session_from(state, plan, today)?;
    let planned = plan.lifts.iter().find(|lift| lift.lift == done.lift);
    let of_today = session.lifts.iter().find(|lift| lift.lift == done.lift);
    let (Some(planned), Some(of_today)) = (planned, of_today) else {
        return Err(super::not_in_plan(&done.lift));
    };
    let then = state.as_of(today);
    let view = then.view(&done.lift, today)?;
    for (at, set) in done.sets.iter().enumerate() {
        let inside = |error: Error| error.within(&alloc::format!("sets[{at}]"));
        set.check().and_then(|()| view.all.check_load(&view.lift.set, set.load)).map_err(inside)?;
        for marks in set.all_marks() {
            marks.check(&view.lift.set.criteria).map_err(inside)?;
        }
    }
    let implement = view.all.implement(&view.lift.set.implement);
    let own = Own {
        curve: curve(of_today.place),
        body: match implement {
            Some(Implement::Assistance(_)) => then.body_mass().map(|(_, mass)| mass),
            _ => Some(Mass::ZERO),
        },
    };
    let cautions = super::cautions_of_lift(state, of_today, today);
    let (stops, beside) = (session.stops.clone(), (planned, of_today));
    Course::new(view, beside, done, own, asked, (stops, cautions)).answer()
}

/// Both lists of answers: every answer counts.
fn worst(one: Option<Vec<PainAnswer>>, other: Option<Vec<PainAnswer>>) -> Option<Vec<PainAnswer>> {
    match (one, other) {
        (Some(mut one), Some(other)) => {
            one.extend(other);
            Some(one)
        }
        (one, other) => one.or(other),
    }
}
