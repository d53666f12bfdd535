//! Passes that the next morning takes back, found before the fold so that the result equals the fold in which
//! the session was marked as failed.

use alloc::borrow::Cow;
use alloc::vec::Vec;

use crate::quantity::{Day, Name, Pain};
use crate::record::{Event, EventKind, PainAnswer, Policy};

/// Sessions whose pass is taken back, with the region that flared, and the answers that found it.
#[derive(Clone, Debug, Default)]
pub(crate) struct Retractions {
    passes: Vec<(u32, Name)>,
    flares: Vec<Flare>,
}

/// An answer that found more pain than before the session.
#[derive(Clone, Debug)]
pub(crate) struct Flare {
    event: u32,
    /// Day of the session that it speaks of.
    pub(crate) trained: Day,
    pub(crate) regions: Vec<Name>,
}

impl Retractions {
    /// Whether that session's pass is taken back for a lift of these regions.
    pub(crate) fn holds<'a>(&self, session: u32, mut regions: impl Iterator<Item = &'a Name>) -> bool {
        let from = self.passes.partition_point(|(earlier, _)| *earlier < session);
        let own =
            self.passes.get(from..).unwrap_or_default().iter().take_while(|(number, _)| *number == session);
        let own: Vec<&Name> = own.map(|(_, region)| region).collect();
        !own.is_empty() && regions.any(|region| own.contains(&region))
    }

    /// What the answer with that number found.
    pub(crate) fn flare(&self, event: u32) -> Option<&Flare> {
        let at = self.flares.binary_search_by_key(&event, |flare| flare.event).ok()?;
        self.flares.get(at)
    }

    /// Looks through events in order.
    pub(crate) fn find(events: &[Cow<'_, Event>]) -> Retractions {
        let review_days = Policy::default().usual_review_days;
        let mut morning = Morning { usual: Vec::new(), review_days, levels: None, sessions: Vec::new() };
        let mut found = Retractions::default();
        for event in events {
            morning.look(event, &mut found);
        }
        crate::numeric::sort::sort(&mut found.passes);
        found.passes.dedup();
        crate::numeric::sort::sort_by_key(&mut found.flares, |flare| flare.event);
        found
    }
}

/// What is known about pain before the last sessions, while looking through the events.
struct Morning {
    /// Agreed levels, each with the day of the agreement.
    usual: Vec<(Name, Pain, Day)>,
    review_days: u16,
    levels: Option<Levels>,
    /// The last sessions, oldest first.
    sessions: Vec<Trained>,
}

/// What was said about pain on a day before training.
#[derive(Clone)]
struct Levels {
    day: Day,
    /// Every region was asked about: those not named had none.
    whole: bool,
    said: Vec<(Name, Pain)>,
}

struct Trained {
    number: u32,
    day: Day,
    before: Option<Levels>,
    answered: Option<Day>,
}

/// Who asked for an answer.
#[derive(Clone, Copy)]
enum Asked {
    /// The question of the morning after that session.
    OfSession(u32),
    /// The questions of a day.
    OfToday,
    /// Nobody: one region was named because it hurts.
    Nobody,
}

/// Sessions that an answer may still speak of, and all of the last day.
pub(crate) const OPEN_SESSIONS: usize = 8;

impl Morning {
    fn look(&mut self, event: &Event, found: &mut Retractions) {
        match &event.kind {
            EventKind::UsualPainAgreed(usual) => {
                self.usual.retain(|(region, ..)| *region != usual.region);
                self.usual.push((usual.region.clone(), usual.level, event.day));
            }
            EventKind::ParametersChanged(parameters) => {
                self.review_days = parameters.policy.usual_review_days;
            }
            EventKind::SessionRecorded(_) => {
                let before = self.levels.clone().filter(|levels| levels.day == event.day);
                self.sessions.push(Trained {
                    number: event.sequence,
                    day: event.day,
                    before,
                    answered: None,
                });
                // However many sessions a day is told in, the answer of the next morning speaks of all of it.
                let over = self.sessions.len().saturating_sub(OPEN_SESSIONS);
                let older = self.sessions.iter().take_while(|session| session.day != event.day).count();
                self.sessions.drain(..over.min(older));
            }
            EventKind::NextDayReport(report) => {
                if let Some(pain) = &report.pain {
                    self.answer(event, Asked::OfSession(report.session), pain, found);
                    self.say_all(pain, event.day);
                }
            }
            EventKind::DayReport(report) => {
                if let Some(pain) = &report.pain {
                    self.answer(event, Asked::OfToday, pain, found);
                    self.say_all(pain, event.day);
                }
            }
            EventKind::PainReport(answer) => {
                self.answer(event, Asked::Nobody, core::slice::from_ref(answer), found);
                self.say_one(answer, event.day);
            }
            _ => {}
        }
    }

    fn say_all(&mut self, pain: &[PainAnswer], day: Day) {
        let said = pain.iter().map(|answer| (answer.region.clone(), answer.score)).collect();
        self.levels = Some(Levels { day, whole: true, said });
    }

    /// A report about one region on its own.
    fn say_one(&mut self, answer: &PainAnswer, day: Day) {
        let fresh = || Levels { day, whole: false, said: Vec::new() };
        let mut levels = self.levels.take().filter(|levels| levels.day == day).unwrap_or_else(fresh);
        levels.said.retain(|(region, _)| *region != answer.region);
        levels.said.push((answer.region.clone(), answer.score));
        self.levels = Some(levels);
    }

    /// Compares an answer with the level before its session. Without a number it speaks of the last day of
    /// training, unless that was answered on an earlier day. An answer of the training day itself is not the
    /// morning after. What is said of one region unasked is the morning after where it is worse, and answers for nothing.
    fn answer(&mut self, event: &Event, asked: Asked, pain: &[PainAnswer], found: &mut Retractions) {
        let last = self.sessions.last().map(|session| session.day);
        // An answer about a session speaks of its day. One whose number names none of the last sessions, and is of no older
        // one, speaks of the last day where it is worse; it answers for nothing.
        let day_of = |number: u32| match self.sessions.iter().find(|session| session.number == number) {
            Some(session) => Some(Some(session.day)),
            None if self.sessions.first().is_some_and(|first| number < first.number) => Some(None),
            None => None,
        };
        let (asked, answers) = match asked {
            Asked::OfSession(number) => {
                let day = day_of(number);
                (day, day.is_some())
            }
            Asked::OfToday => (None, true),
            Asked::Nobody => (None, false),
        };
        // A level that is due to be looked at again stands for nothing.
        let in_force =
            self.usual.iter().filter(|(.., agreed)| event.day.since(*agreed) <= i32::from(self.review_days));
        let usual: Vec<(Name, Pain)> = in_force.map(|(name, level, _)| (name.clone(), *level)).collect();
        let mut flare: Option<Flare> = None;
        for session in self.sessions.iter_mut().filter(|session| session.day < event.day) {
            let open = session.answered.is_none_or(|day| day == event.day);
            let spoken_of = asked.map_or(Some(session.day) == last && open, |day| Some(session.day) == day);
            if !spoken_of {
                continue;
            }
            if answers {
                // Told once more it opens no other morning.
                session.answered.get_or_insert(event.day);
            }
            let worse = pain.iter().filter(|answer| answer.score > session.level(&answer.region, &usual));
            for answer in worse {
                found.passes.push((session.number, answer.region.clone()));
                let new = || Flare { event: event.sequence, trained: session.day, regions: Vec::new() };
                flare.get_or_insert_with(new).regions.push(answer.region.clone());
            }
        }
        found.flares.extend(flare);
    }
}

impl Trained {
    /// Pain before the session; where nobody asked, the level agreed to be usual stands for it, if there is one.
    fn level(&self, region: &Name, usual: &[(Name, Pain)]) -> Pain {
        let of = |all: &[(Name, Pain)]| all.iter().find(|(name, _)| name == region).map(|(_, score)| *score);
        let said = self.before.as_ref().and_then(|levels| of(&levels.said));
        let whole = self.before.as_ref().is_some_and(|levels| levels.whole);
        said.or(whole.then_some(Pain::NONE)).or_else(|| of(usual)).unwrap_or(Pain::NONE)
    }
}
