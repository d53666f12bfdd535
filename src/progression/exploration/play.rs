//! A course of the small world: the progression's state and the notes beside it, one act after another.

use std::borrow::Cow;
use std::boxed::Box;
use std::string::String;
use std::vec;
use std::vec::Vec;

use super::super::asked::{Asked, RESERVE};
use super::super::foreseen::Foreseen;
use super::super::layoff::returned;
use super::super::lift::Lift;
use super::super::state::State;
use super::super::status::Purpose;
use super::super::view::View;
use super::acts::Act;
use super::bytes::{Kept, Read, Written};
use super::codec::{Worlds, write};
use super::events::{correction, second_session, worse_morning};
use super::notes::Notes;
use super::oracle;
use super::telling::{Standing, Standings};
use super::world::{LIFTS, Set, any_day, name};
use crate::quantity::{Day, Rir};
use crate::record::*;

/// Somebody young enough, and a log of a newer version, so that unknown events are kept.
pub(super) fn lifter() -> Lifter {
    Lifter { born: Some(any_day().plus(-15_000).unwrap()), ..Lifter::new(name("invented")) }
}

/// The state of a log that holds nothing but that set.
pub(super) fn new_state(set: Set, on: Day, without: Option<&'static str>) -> State {
    let mut state = State { log_version: VERSION + 1, taken_out: without, ..State::new(lifter()) };
    let kind = EventKind::ParametersChanged(set.parameters().clone().into());
    state.take(&Event { sequence: 1, day: on, kind, note: None }, &Foreseen::default()).unwrap();
    state
}

/// Where a course has come to.
#[derive(Clone)]
pub(in super::super) struct Point {
    pub(in super::super) state: State,
    pub(in super::super) notes: Notes,
    pub(in super::super) on: Day,
    /// The rule that the last act broke.
    pub(super) broken: Option<String>,
}

impl Point {
    /// Before anything has happened.
    pub(in super::super) fn first(without: Option<&'static str>) -> Point {
        let mut notes = Notes::of_nobody(Set::First);
        notes.regions[0].lifted = true;
        Point { state: new_state(Set::First, any_day(), without), notes, on: any_day(), broken: None }
    }

    /// What the course comes to with one more act; none where the event is turned away and nothing changes.
    pub(in super::super) fn after(&self, act: Act) -> Option<Point> {
        let mut next = Point { broken: None, ..self.clone() };
        let taken = match act {
            Act::StrictTwice | Act::StrictTwiceFails => next.play_twice(act),
            Act::BothFlare | Act::StrictFlare | Act::BothFlareTold => next.play_flare(act),
            _ if correction(act, &self.state, self.on).is_some() => next.play_corrected(act),
            _ => match act.waits() {
                Some(days) => next.wait(days),
                None => next.tell(act.event(&self.state, self.on)?),
            },
        };
        taken.map(|()| next)
    }

    /// Days pass, and with them what runs out.
    fn wait(&mut self, days: u8) -> Option<()> {
        let before = self.standings(None);
        self.on = self.on.plus(i32::from(days)).ok()?;
        self.state.expire(self.on);
        self.notes.wait(days);
        self.judge(None, &before);
        Some(())
    }

    fn event(&self, ahead: u32, kind: EventKind) -> Event {
        let last = self.state.last.map_or(0, |(_, number)| number);
        Event { sequence: last + 1 + ahead, day: self.on, kind, note: None }
    }

    /// Takes an event as a log of the host would, if it is well-formed and says nothing about the past.
    fn tell(&mut self, kind: EventKind) -> Option<()> {
        let event = self.event(0, kind);
        if self.state.changes_the_past(&event) {
            return None;
        }
        self.take(&event, &Foreseen::default())
    }

    fn take(&mut self, event: &Event, foreseen: &Foreseen) -> Option<()> {
        // The sets of this world are checked once.
        if !matches!(event.kind, EventKind::ParametersChanged(_)) {
            event.check_in(self.state.log_version).ok()?;
        }
        let before = self.standings(Some(&event.kind));
        self.state.take(event, foreseen).ok()?;
        // A region that this session closes concerned its lifts when they were trained.
        let flares = foreseen.retracts(event.sequence, [name("hip")].iter());
        let flared = LIFTS.iter().enumerate().map(|(number, _)| flares && self.notes.concerns(number, 0));
        let flared: Vec<bool> = flared.collect();
        self.notes.tell(&event.kind, &before, self.on);
        self.notes.take_back(&flared);
        self.judge(Some(&event.kind), &before);
        Some(())
    }

    /// An event and the correction of it, as the log resolves them before anything is folded.
    fn play_corrected(&mut self, act: Act) -> Option<()> {
        let with = correction(act, &self.state, self.on)?.map(Box::new);
        let wrong = self.event(0, act.event(&self.state, self.on)?);
        let said = Correction { replaces: wrong.sequence, day: None, with };
        let right = self.event(1, EventKind::Correction(said));
        let events = vec![wrong, right];
        let log = Log { version: self.state.log_version, events, ..Log::new(lifter()) };
        for event in log.effective().ok()? {
            self.tell(event.into_owned().kind)?;
        }
        Some(())
    }

    /// Two sessions of one day, folded together as one day.
    fn play_twice(&mut self, act: Act) -> Option<()> {
        let one = self.event(0, act.event(&self.state, self.on)?);
        let other = self.event(1, second_session(act, &self.state, self.on));
        if self.state.changes_the_past(&one) {
            return None;
        }
        let foreseen = Foreseen::find(&[Cow::Borrowed(&one), Cow::Borrowed(&other)]);
        let before = self.standings(Some(&one.kind));
        self.state.take(&one, &foreseen).ok()?;
        self.state.take(&other, &foreseen).ok()?;
        let day = joined(&one.kind, &other.kind)?;
        self.notes.tell(&day, &before, self.on);
        self.judge(Some(&day), &before);
        Some(())
    }

    /// A session, and the morning after it that was worse.
    fn play_flare(&mut self, act: Act) -> Option<()> {
        let session = self.event(0, act.event(&self.state, self.on)?);
        // An answer speaks of the whole day: of one whose first session is taken already it would change the past.
        if self.state.changes_the_past(&session) || self.notes.last_trained() == Some(0) {
            return None;
        }
        let next_day = self.on.plus(1).ok()?;
        let morning = Event { day: next_day, ..self.event(1, worse_morning(act, session.sequence)) };
        let mut told = self.told_of_pain();
        told.extend([session.clone(), morning.clone()]);
        let foreseen = Foreseen::find(&told.into_iter().map(Cow::Owned).collect::<Vec<_>>());
        self.take(&session, &foreseen)?;
        let broken = self.broken.take();
        self.wait(1)?;
        self.take(&morning, &foreseen)?;
        self.broken = broken.or_else(|| self.broken.take());
        Some(())
    }

    /// The events that say what the hip stood at before a session of today, as the notes have them.
    fn told_of_pain(&self) -> Vec<Event> {
        let hip = &self.notes.regions[0];
        let on = |ago: u8, kind| {
            let day = self.on.plus(-i32::from(ago)).unwrap();
            Event { sequence: 0, day, kind, note: None }
        };
        let answer = |score| super::events::pain(score);
        let mut told = vec![on(7, EventKind::ParametersChanged(self.notes.set.parameters().clone().into()))];
        told.extend(hip.usual.map(|(age, _)| {
            let level = answer(2).score;
            on(
                age,
                EventKind::UsualPainAgreed(UsualPain {
                    region: name("hip"),
                    level,
                    who: name("coach"),
                    clinician: false,
                }),
            )
        }));
        told.extend(hip.said.map(|score| on(0, EventKind::PainReport(answer(score)))));
        told
    }

    /// What the lifts are told to do before the next event; a session ends the breaks of its lifts.
    fn standings(&self, kind: Option<&EventKind>) -> Standings {
        let trains = |id: &str| match kind {
            Some(EventKind::SessionRecorded(session)) => {
                session.lifts.iter().any(|done| done.lift.as_str() == id)
            }
            _ => false,
        };
        LIFTS.map(|id| {
            let standing = |lift: &Lift, asked, in_force, (anew, elsewhere)| Standing {
                asked,
                in_force,
                bar: lift.set.implement.as_str() == "bar",
                grant: lift.now.grant,
                status: lift.now.status.clone(),
                rests: lift.now.purpose == Purpose::Rest,
                halves: lift.now.half_sessions > 0 || lift.now.nothing_easier,
                anew,
                elsewhere,
            };
            if let Ok(view) = self.state.view(&name(id), self.on) {
                let back = if trains(id) { returned(&view).map(|now| view.lift.standing(now)) } else { None };
                let lift = back.as_ref().unwrap_or(view.lift);
                let elsewhere = lift.now.grant.place != view.lift.now.grant.place;
                let asked = View { lift, ..view }.asked();
                return Some(standing(lift, asked, true, (back.is_some(), elsewhere)));
            }
            let aside = self.state.set_aside.iter().find(|lift| lift.set.id.as_str() == id)?;
            let asked = Asked {
                place: aside.now.grant.place,
                eased: false,
                reserve: RESERVE,
                reserve_least: Rir::whole(0),
            };
            Some(standing(aside, asked, false, (false, false)))
        })
    }

    /// Holds what has become of the grants against the rules, and notes it.
    fn judge(&mut self, kind: Option<&EventKind>, before: &Standings) {
        self.notes.forget_unheard();
        self.broken = oracle::step(before, &self.notes, kind, &self.state);
        oracle::settle(&mut self.notes, before, kind, &self.state);
    }

    /// Canonical bytes.
    pub(super) fn write(&self) -> Vec<u8> {
        let mut out = Written::on(self.on, self.state.last_trained());
        write(&self.state, &mut out);
        self.notes.put(&mut out);
        out.all
    }

    pub(super) fn read(bytes: &[u8], worlds: &Worlds) -> Point {
        let mut from = Read(bytes);
        let state = worlds.read(&mut from);
        Point { state, notes: Notes::get(&mut from), on: any_day(), broken: None }
    }
}

/// Both sessions of a day as one.
fn joined(one: &EventKind, other: &EventKind) -> Option<EventKind> {
    let (EventKind::SessionRecorded(one), EventKind::SessionRecorded(other)) = (one, other) else {
        return None;
    };
    let mut day = one.clone();
    day.lifts[0].sets.extend(other.lifts[0].sets.iter().cloned());
    Some(EventKind::SessionRecorded(day))
}
