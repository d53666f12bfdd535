//! Passes that the next morning takes back, found before the fold so that the result equals the fold in which
//! the session was marked as failed.

use alloc::borrow::Cow;
use alloc::vec::Vec;

use crate::quantity::{Day, Name, Pain};
use crate::record::{Event, EventKind, PainAnswer};

/// Sessions whose pass is taken back, with the region that flared.
#[derive(Clone, Debug, Default)]
pub(crate) struct Retractions(Vec<(u32, Name)>);

impl Retractions {
    /// Whether that session's pass is taken back for a lift of these regions.
    pub(crate) fn holds(&self, session: u32, regions: &[Name]) -> bool {
        let from = self.0.partition_point(|(earlier, _)| *earlier < session);
        let own = self.0.get(from..).unwrap_or_default().iter().take_while(|(number, _)| *number == session);
        own.into_iter().any(|(_, region)| regions.contains(region))
    }

    /// Looks through events in order.
    pub(crate) fn find(events: &[Cow<'_, Event>]) -> Retractions {
        let mut morning = Morning::default();
        let mut found = Vec::new();
        for event in events {
            morning.look(event, &mut found);
        }
        found.sort();
        found.dedup();
        Retractions(found)
    }
}

/// What is known about pain before the last sessions, while looking through the events.
#[derive(Default)]
struct Morning {
    usual: Vec<(Name, Pain)>,
    before: Option<(Day, Vec<PainAnswer>)>,
    /// The last sessions: number, day, pain before each, whether answered.
    sessions: Vec<(u32, Day, Vec<PainAnswer>, bool)>,
}

/// Sessions that an answer may still speak of.
const OPEN_SESSIONS: usize = 8;

impl Morning {
    fn look(&mut self, event: &Event, found: &mut Vec<(u32, Name)>) {
        match &event.kind {
            EventKind::UsualPainAgreed(usual) => {
                self.usual.retain(|(region, _)| *region != usual.region);
                self.usual.push((usual.region.clone(), usual.level));
            }
            EventKind::SessionRecorded(_) => {
                let before = self.before.take().filter(|(day, _)| *day == event.day).map(|(_, pain)| pain);
                self.sessions.push((event.sequence, event.day, before.unwrap_or_default(), false));
                if self.sessions.len() > OPEN_SESSIONS {
                    self.sessions.remove(0);
                }
            }
            EventKind::NextDayReport(report) => {
                self.answer(Some(report.session), event.day, &report.pain, found)
            }
            EventKind::DayReport(report) => {
                if let Some(pain) = &report.pain {
                    self.answer(None, event.day, pain, found);
                    self.before = Some((event.day, pain.clone()));
                }
            }
            _ => {}
        }
    }

    /// Compares an answer with the level before its session; without a number it speaks of the last one.
    fn answer(&mut self, session: Option<u32>, on: Day, pain: &[PainAnswer], found: &mut Vec<(u32, Name)>) {
        let usual = &self.usual;
        let spoken_of = self.sessions.iter_mut().rev().find(|(number, day, _, answered)| match session {
            Some(wanted) => *number == wanted,
            None => !answered && *day < on,
        });
        let Some((number, _, before, answered)) = spoken_of else { return };
        *answered = true;
        for answer in pain {
            let was =
                before.iter().find(|earlier| earlier.region == answer.region).map(|earlier| earlier.score);
            let agreed = usual.iter().find(|(region, _)| *region == answer.region).map(|(_, level)| *level);
            if answer.score > was.unwrap_or(Pain::NONE).max(agreed.unwrap_or(Pain::NONE)) {
                found.push((*number, answer.region.clone()));
            }
        }
    }
}
