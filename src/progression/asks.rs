//! What is asked before training: a fall, a new medicine, fever and the like. What was said stays open until somebody answers
//! it, whatever later reports leave out. (Where a day asks for a lift to be done is `asked`; the strict reading of one event, which
//! refuses a kind that nobody knows, is in `record::check`.)

use super::shared::Shared;
use super::state::State;
use crate::quantity::Day;
use crate::record::{AskAnswered, DayReport};
use crate::sign::Ask;

/// Something said when asked before training, that nobody has answered yet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct OpenAsk {
    /// What.
    pub ask: Ask,
    /// Said first on that day.
    pub since: Day,
    /// Number under which it was told last: an answer given before closes nothing.
    pub told: u32,
}

impl State {
    /// Somebody's word closes what was asked; that it may be theirs to give, the event itself has checked. Where nothing of the
    /// kind is open it closes nothing and is kept: a clearance written down late, a report that is corrected, or the same answer
    /// told twice must not make a log unreadable. The review of a log names it.
    pub(crate) fn take_answer(&mut self, answer: &AskAnswered, event: u32) {
        self.shared.asks.retain(|open| open.ask != answer.ask || open.told > event);
    }

    /// Whether something of that kind waits for an answer.
    pub(crate) fn is_asked(&self, ask: Ask) -> bool {
        self.shared.asks.iter().any(|open| open.ask == ask)
    }
}

impl Shared {
    /// Opens what a report says when asked; what is open already stays so since it was said first.
    pub(crate) fn open_asks(&mut self, report: &DayReport, on: Day, told: u32) {
        for ask in report.asks.iter().flatten() {
            match self.asks.iter_mut().find(|open| open.ask == *ask) {
                Some(open) => open.told = open.told.max(told),
                None => self.asks.push(OpenAsk { ask: *ask, since: on, told }),
            }
        }
    }

    /// Something that comes before training was said on that day, and is answered by now.
    pub(crate) fn asked_and_answered(&self, on: Day) -> Option<Ask> {
        self.report_on(on).and_then(|report| report.raised).filter(|_| self.asks.is_empty())
    }
}
