//! The fold: events in order, one state out. The walk from an event to a state goes through here and nowhere else.

use alloc::borrow::Cow;
use alloc::sync::Arc;
use alloc::vec::Vec;

use super::foreseen::Foreseen;
use super::shared::{OpenAsk, TodayReport};
use super::state::{State, Told};
use super::status::Status;
use crate::condition::DayClass;
use crate::error::{Code, Error};
use crate::quantity::Day;
use crate::reason::OverrideEnd;
use crate::record::{DayReport, Event, EventKind, Layoff, LayoffReason, Log, NextDayReport};

/// Folds a whole log into the state after its last event. Order in the list does not matter; day and number do.
///
/// # Errors
/// What [`Log::check`] and [`Log::effective`] report, and `unknown_lift`, `unknown_region`, `no_parameters`,
/// `negative_load` tied to the event. Nothing is folded half.
///
/// ```
/// use bismar::progression::fold;
/// use bismar::quantity::Name;
/// use bismar::record::{Lifter, Log};
///
/// let log = Log::new(Lifter::new(Name::new("A")?));
/// assert_eq!(fold(&log)?.lifts().len(), 0);
/// # Ok::<(), bismar::Error>(())
/// ```
pub fn fold(log: &Log) -> Result<State, Error> {
    fold_watched(log, |_, _, _, _| {}).map(|(_, state)| state)
}

/// The state around an event: as the event found it, and as it left it.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(crate) enum When {
    Before,
    After,
}

/// The same fold, watched: what each event in turn (with its place among them) found and left. Also the events that count, in order.
pub(crate) fn fold_watched(
    log: &Log,
    watch: impl FnMut(&State, usize, &Event, When),
) -> Result<(Vec<Cow<'_, Event>>, State), Error> {
    log.check()?;
    let (events, told) = log.effective_and_told()?;
    let mut state = State { told: Told(told), ..State::before(log) };
    take_all(&mut state, &events, watch)?;
    Ok((events, state))
}

/// Folds events of a log which count, in order: all of them or the first so many, on from the state after `taken` of them.
pub(crate) fn fold_on(mut state: State, taken: usize, events: &[Cow<'_, Event>]) -> Result<State, Error> {
    let foreseen = Foreseen::find(events);
    for event in events.get(taken..).unwrap_or_default() {
        state.take(event, &foreseen)?;
    }
    Ok(state)
}

fn take_all(
    state: &mut State,
    events: &[Cow<'_, Event>],
    mut watch: impl FnMut(&State, usize, &Event, When),
) -> Result<(), Error> {
    let foreseen = Foreseen::find(events);
    for (at, event) in events.iter().enumerate() {
        watch(state, at, event, When::Before);
        state.take(event, &foreseen)?;
        watch(state, at, event, When::After);
    }
    Ok(())
}

impl State {
    /// Applies one more event.
    ///
    /// # Errors
    /// `needs_refold` if the event changes the past: it comes before the last one, its number is not above that
    /// one's, it corrects another, takes a pass back, or is a second session of a lift on one day. Then fold the whole
    /// log anew. Else what [`fold`] reports; the state is unchanged on an error. A number that an event before the last
    /// one used is seen by [`fold`] only.
    pub fn apply(&mut self, event: &Event) -> Result<(), Error> {
        let lifter = &self.shared.lifter;
        lifter.check()?;
        event
            .check_in(self.log_version)
            .and_then(|()| lifter.check_born_by(event.day))
            .map_err(|error| error.at_event(event.sequence))?;
        if self.changes_the_past(event) {
            return Err(Error::plain(Code::NeedsRefold, "event").at_event(event.sequence));
        }
        let mut next = self.clone();
        next.take(event, &Foreseen::default())?;
        next.told = Told(self.told.0.saturating_add(1));
        *self = next;
        Ok(())
    }

    /// Whether the event says something about what was taken before it.
    pub(super) fn changes_the_past(&self, event: &Event) -> bool {
        // A number not above the last one may have been used before; only the whole log knows.
        let late = self.last.is_some_and(|(day, number)| event.day < day || event.sequence <= number);
        let again = |id: &crate::quantity::Name| {
            self.lifts.iter().any(|lift| lift.set.id == *id && lift.now.last_session == Some(event.day))
        };
        late || match &event.kind {
            EventKind::Correction(_) => true,
            EventKind::NextDayReport(report) => report.pain.as_ref().is_some_and(|pain| !pain.is_empty()),
            EventKind::DayReport(report) => report.pain.as_ref().is_some_and(|pain| !pain.is_empty()),
            EventKind::SessionRecorded(session) => session.lifts.iter().any(|done| again(&done.lift)),
            _ => false,
        }
    }

    /// Takes the next event in order.
    pub(crate) fn take(&mut self, event: &Event, foreseen: &Foreseen) -> Result<(), Error> {
        self.expire(event.day);
        let tied = |error: Error| error.at_event(event.sequence);
        self.take_kind(event, foreseen).map_err(tied)?;
        self.accept_where_automatic(event).map_err(tied)?;
        self.forget_closed_regions();
        self.last = Some((event.day, event.sequence));
        Ok(())
    }

    fn take_kind(&mut self, event: &Event, foreseen: &Foreseen) -> Result<(), Error> {
        let (on, number) = (event.day, event.sequence);
        match &event.kind {
            EventKind::SessionRecorded(session) => self.take_session(session, on, number, foreseen),
            EventKind::NextDayReport(report) => self.take_next_day(report, on, number, foreseen),
            EventKind::LayoffNoted(layoff) => {
                self.take_layoff(layoff, on);
                Ok(())
            }
            EventKind::PainReport(answer) => {
                self.check_region(&answer.region)?;
                self.take_pains(core::slice::from_ref(answer), on, number)
            }
            EventKind::UsualPainAgreed(usual) => self.agree_usual(usual, on),
            EventKind::SymptomReport(report) => {
                self.stop_everything(&report.signs, on, number);
                Ok(())
            }
            EventKind::DayReport(report) => self.take_day_report(report, on, number, foreseen),
            EventKind::AskAnswered(answer) => self.take_answer(answer),
            EventKind::CoachSignOff(given) => self.take_sign_off(given, on),
            EventKind::CoachOverride(given) => self.take_override(given, on, number),
            EventKind::AdvanceAccepted(given) => self.take_acceptance(given, on, number),
            EventKind::AdvanceDeclined(given) => self.take_decline(given, on),
            EventKind::VariantChanged(given) | EventKind::RangeChanged(given) => {
                self.take_move(given, on, number)
            }
            EventKind::BarOrDiscsChanged(changed) => self.forget_where_changed(changed, on),
            EventKind::RaterChanged(changed) => self.take_rater(changed, on),
            EventKind::BodyMassRecorded(mass) => {
                self.shared.weigh(*mass, on);
                for lift in self.lifts.iter_mut().filter(|lift| lift.loadable.helps()) {
                    Arc::make_mut(&mut lift.loadable).measure_against(*mass);
                }
                Ok(())
            }
            EventKind::ClearanceRecorded(clearance) => self.take_clearance(clearance, on, number),
            EventKind::ClearanceExpired(_) => {
                if let Some(clearance) = &mut self.shared.clearance {
                    clearance.expires = clearance.expires.min(on.plus(-1)?);
                }
                Ok(())
            }
            EventKind::ParametersChanged(parameters) => self.take_parameters(parameters, on),
            EventKind::RoleSet(given) => self.take_role(given, on),
            EventKind::Unknown(_) => {
                self.shared.unknown = self.shared.unknown.saturating_add(1);
                Ok(())
            }
            // Kept in the log; they change no grant.
            EventKind::SessionMissed(_)
            | EventKind::BlockStarted(_)
            | EventKind::BlockEnded(_)
            | EventKind::FunctionTested(_)
            | EventKind::Correction(_) => Ok(()),
        }
    }

    fn take_next_day(
        &mut self,
        report: &NextDayReport,
        on: Day,
        event: u32,
        foreseen: &Foreseen,
    ) -> Result<(), Error> {
        // Not asked is no answer.
        let Some(pain) = &report.pain else { return Ok(()) };
        self.take_pain_list(pain, on, event)?;
        self.take_flares(foreseen.flare(event), on);
        let trained = self.day_of(report.session).filter(|trained| *trained < on);
        self.calm_regions(trained);
        self.confirm(|sitting| Some(sitting.day) == trained, on);
        Ok(())
    }

    fn take_day_report(
        &mut self,
        report: &DayReport,
        on: Day,
        event: u32,
        foreseen: &Foreseen,
    ) -> Result<(), Error> {
        if let Some(pain) = &report.pain {
            self.take_pain_list(pain, on, event)?;
        }
        for ask in report.asks.iter().flatten() {
            if !self.shared.asks.iter().any(|open| open.ask == *ask) {
                self.shared.asks.push(OpenAsk { ask: *ask, since: on });
            }
        }
        // Two reports of one day are one: the more cautious answer stands.
        let class = report.class.unwrap_or(DayClass::Unknown);
        let earlier = self.shared.today.take().filter(|earlier| earlier.day == on);
        let raised = earlier.as_ref().and_then(|earlier| earlier.raised);
        let (class, asks_asked, pain_asked, minutes) = match &earlier {
            Some(earlier) => {
                (earlier.class.min(class), earlier.asks_asked, earlier.pain_asked, earlier.minutes)
            }
            None => (class, false, false, None),
        };
        self.shared.today = Some(TodayReport {
            day: on,
            class,
            asks_asked: asks_asked || report.asks.is_some(),
            pain_asked: pain_asked || report.pain.is_some(),
            raised: raised.or(report.asks.as_deref().and_then(|asks| asks.first().copied())),
            minutes: report.minutes.or(minutes),
        });
        // The same question before the next session stands for the next-morning answer.
        if report.pain.is_some() {
            self.take_flares(foreseen.flare(event), on);
            let trained = self.last_trained().filter(|trained| *trained < on);
            self.calm_regions(trained);
            self.confirm(|sitting| Some(sitting.day) == trained, on);
        }
        Ok(())
    }

    fn take_layoff(&mut self, layoff: &Layoff, on: Day) {
        if layoff.reason == LayoffReason::Ill {
            self.shared.ill_since = Some(layoff.from);
            let all = self.lifts.iter_mut().chain(&mut self.set_aside);
            for lift in all {
                lift.now.ill = true;
                // What was allowed above the grant was allowed to somebody well.
                lift.now.keep_easing_only(OverrideEnd::Illness);
            }
        }
        self.shared.note_layoff(layoff);
        // One that is still to come, or is over, leaves the lifts as they stand.
        let now = layoff.from <= on && layoff.to.is_none_or(|to| on <= to);
        if layoff.reason == LayoffReason::Planned && now {
            for lift in &mut self.lifts {
                let now = &mut lift.now;
                if now.status.is_trained() && !matches!(now.status, Status::SteppingBack { .. }) {
                    now.rest(on);
                }
            }
        }
    }
}
