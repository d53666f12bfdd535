//! What is asked before training: a fall, a new medicine, fever and the like. What was said stays open until somebody answers
//! it, whatever later reports leave out.

use super::shared::Shared;
use super::state::State;
use crate::error::{Allowed, Code, Error};
use crate::quantity::Day;
use crate::record::{AskAnswered, DayReport};
use crate::sign::Ask;

/// Something said when asked before training, that nobody has answered yet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[non_exhaustive]
pub struct OpenAsk {
    /// What.
    pub ask: Ask,
    /// Said first on that day.
    pub since: Day,
}

impl State {
    /// Somebody's word closes what was asked; that it may be theirs to give, the event itself has checked.
    pub(crate) fn take_answer(&mut self, answer: &AskAnswered) -> Result<(), Error> {
        let before = self.shared.asks.len();
        self.shared.asks.retain(|open| open.ask != answer.ask);
        if self.shared.asks.len() == before {
            let rule = Allowed::rule("something that was asked and is still open");
            return Err(Error::new(Code::NotAsked, "ask", answer.ask.as_str(), rule));
        }
        Ok(())
    }
}

impl Shared {
    /// Opens what a report says when asked; what is open already stays so since it was said first.
    pub(crate) fn open_asks(&mut self, report: &DayReport, on: Day) {
        for ask in report.asks.iter().flatten() {
            if !self.asks.iter().any(|open| open.ask == *ask) {
                self.asks.push(OpenAsk { ask: *ask, since: on });
            }
        }
    }

    /// Something that comes before training was said on that day, and is answered by now.
    pub(crate) fn asked_and_answered(&self, on: Day) -> Option<Ask> {
        self.report_on(on).and_then(|report| report.raised).filter(|_| self.asks.is_empty())
    }
}
