//! The fold: events in order, one state out. The walk from an event to a state goes through here and nowhere else.

use alloc::borrow::Cow;
use alloc::sync::Arc;

use super::foreseen::Foreseen;
use super::state::{State, Told};
use crate::error::{Code, Error};
use crate::record::{Corrected, Effective, Event, EventKind, Log};

/// Folds a whole log into the state after its last event. Order in the list does not matter; day and number do.
///
/// # Errors
/// What [`Log::check`] and [`Log::effective`] report, and `unknown_lift`, `unknown_region`, `no_parameters`,
/// `negative_load`, `too_many` tied to the event. Nothing is folded half.
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
    log.check()?;
    fold_told(log, &log.as_told()?, |_, _, _, _| {})
}

/// The state around an event: as the event found it, and as it left it.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(crate) enum When {
    Before,
    After,
}

/// The same of the events of a log which count, checked before; watched: what each event in turn (with its place among them) found
/// and left.
pub(crate) fn fold_told(
    log: &Log,
    told: &Effective<'_>,
    watch: impl FnMut(&State, usize, &Event, When),
) -> Result<State, Error> {
    let mut state = State { told: Told { count: told.count, ..Told::default() }, ..State::before(log) };
    take_all(&mut state, told, watch)?;
    Ok(state)
}

/// Folds events of a log which count, in order: all of them or the first so many, on from the state after `taken` of them.
pub(crate) fn fold_on(
    mut state: State,
    taken: usize,
    events: &[Cow<'_, Event>],
    corrected: &Corrected,
) -> Result<State, Error> {
    let foreseen = Foreseen::find(events).with_corrected(corrected);
    for event in events.get(taken..).unwrap_or_default() {
        state.take(event, &foreseen)?;
    }
    Ok(state)
}

fn take_all(
    state: &mut State,
    told: &Effective<'_>,
    mut watch: impl FnMut(&State, usize, &Event, When),
) -> Result<(), Error> {
    let foreseen = Foreseen::find(&told.events).with_corrected(&told.corrected);
    for (at, event) in told.events.iter().enumerate() {
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
        self.check_next(event)?;
        *self = self.clone().take_next(event)?;
        Ok(())
    }

    /// The state after one more event, for a host that needs the state before no more: nothing is copied.
    ///
    /// # Errors
    /// As [`State::apply`]; the state is gone then. [`State::changes_the_past`] tells beforehand where a fold anew is needed.
    ///
    /// ```
    /// use bismar::progression::State;
    /// use bismar::quantity::{Mass, Name};
    /// use bismar::record::{Event, EventKind, Lifter};
    ///
    /// let weighed = EventKind::BodyMassRecorded(Mass::from_kg(80.0)?);
    /// let event = Event::new(1, "2026-03-02".parse()?, weighed);
    /// let mut state = State::new(Lifter::new(Name::new("A")?));
    /// let after = state.clone().applied(&event)?;
    /// state.apply(&event)?;
    /// assert_eq!(after, state);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn applied(self, event: &Event) -> Result<State, Error> {
        self.check_next(event)?;
        self.take_next(event)
    }

    fn check_next(&self, event: &Event) -> Result<(), Error> {
        let lifter = &self.shared.lifter;
        lifter.check()?;
        event
            .check_in(self.log_version)
            .and_then(|()| lifter.check_days_of(event))
            .map_err(|error| error.at_event(event.sequence))?;
        if self.changes_the_past(event) {
            return Err(Error::plain(Code::NeedsRefold, "event").at_event(event.sequence));
        }
        Ok(())
    }

    fn take_next(mut self, event: &Event) -> Result<State, Error> {
        self.take(event, &Foreseen::default())?;
        self.told.count = self.told.count.saturating_add(1);
        Ok(self)
    }

    /// Whether the event says something about what was taken before it, so that the whole log has to be folded anew with it.
    #[must_use]
    pub fn changes_the_past(&self, event: &Event) -> bool {
        // A number not above the last one may have been used before; only the whole log knows.
        let late = self.last.is_some_and(|(day, number)| event.day < day || event.sequence <= number);
        let again = |id: &crate::quantity::Name| {
            self.lifts.iter().any(|lift| lift.set.id == *id && lift.now.last_session == Some(event.day))
        };
        late || match &event.kind {
            EventKind::Correction(_) => true,
            EventKind::NextDayReport(report) => report.pain.as_ref().is_some_and(|pain| !pain.is_empty()),
            EventKind::DayReport(report) => report.pain.as_ref().is_some_and(|pain| !pain.is_empty()),
            EventKind::PainReport(answer) => {
                answer.score > crate::quantity::Pain::NONE && self.morning_is_open(event.day)
            }
            EventKind::SessionRecorded(session) => session.lifts.iter().any(|done| again(&done.lift)),
            _ => false,
        }
    }

    /// Takes the next event in order.
    pub(crate) fn take(&mut self, event: &Event, foreseen: &Foreseen) -> Result<(), Error> {
        self.expire(event.day);
        let tied = |error: Error| error.at_event(event.sequence);
        let unread = foreseen.is_unread(event.sequence);
        if unread {
            self.shared.unknown = self.shared.unknown.saturating_add(1);
        }
        self.take_kind(event, foreseen).map_err(tied)?;
        if matches!(
            event.kind,
            EventKind::ClearanceRecorded(_)
                | EventKind::CoachOverride(_)
                | EventKind::ParametersChanged(_)
                | EventKind::AdvanceAccepted(_)
                | EventKind::VariantChanged(_)
                | EventKind::RangeChanged(_)
        ) {
            self.note_held(event.day);
        }
        self.accept_where_automatic(event, foreseen.told(event.sequence)).map_err(tied)?;
        self.forget_closed_regions();
        self.told = self.told.and(event, foreseen.told(event.sequence), unread);
        self.last = Some((event.day, event.sequence));
        Ok(())
    }

    fn take_kind(&mut self, event: &Event, foreseen: &Foreseen) -> Result<(), Error> {
        // What a word closes was told before it: of a corrected event what it says was told by the correction, and a word that
        // is corrected is as old as the word.
        let (on, number) = (event.day, event.sequence);
        let told = foreseen.told(number);
        match &event.kind {
            EventKind::SessionRecorded(session) => self.take_session(session, on, number, foreseen),
            EventKind::NextDayReport(report) => self.take_next_day(report, on, number, foreseen),
            EventKind::LayoffNoted(layoff) => self.take_layoff(layoff, on, told),
            EventKind::PainReport(answer) => self.take_pain_report(answer, on, number, foreseen),
            EventKind::UsualPainAgreed(usual) => self.agree_usual(usual, on),
            EventKind::SymptomReport(report) => {
                self.stop_everything(&report.signs, on, told);
                Ok(())
            }
            EventKind::DayReport(report) => self.take_day_report(report, on, number, foreseen),
            EventKind::AskAnswered(answer) => {
                self.take_answer(answer, number);
                Ok(())
            }
            EventKind::CoachSignOff(given) => self.take_sign_off(given, on, number),
            EventKind::CoachOverride(given) => {
                self.take_override(given, on, (number, foreseen.is_unread(number)))
            }
            EventKind::AdvanceAccepted(given) => self.take_acceptance(given, on, (number, told)),
            EventKind::AdvanceDeclined(given) => self.take_decline(given, on),
            EventKind::VariantChanged(given) | EventKind::RangeChanged(given) => {
                self.take_move(given, on, (number, told))
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
            EventKind::ClearanceRecorded(clearance) => self.take_clearance(clearance, on, (number, told)),
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
}
