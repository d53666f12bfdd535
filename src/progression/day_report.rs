//! The day's report: its class, what was asked, the time there is. Reports of one day are one, and of two answers the more
//! cautious stands.

use super::foreseen::Foreseen;
use super::shared::Shared;
use super::state::State;
use crate::condition::DayClass;
use crate::error::Error;
use crate::quantity::Day;
use crate::record::DayReport;
use crate::sign::Ask;

/// The day's answers as the state keeps them.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub(crate) struct TodayReport {
    /// Which day.
    pub(crate) day: Day,
    /// Its class.
    pub(crate) class: DayClass,
    /// The questions that come first were asked.
    pub(crate) asks_asked: bool,
    /// Pain was asked.
    pub(crate) pain_asked: bool,
    /// The first thing said today that comes before training, whether or not it was answered since.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub(crate) raised: Option<Ask>,
    /// Minutes there are.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub(crate) minutes: Option<u16>,
}

impl State {
    pub(crate) fn take_day_report(
        &mut self,
        report: &DayReport,
        on: Day,
        event: u32,
        foreseen: &Foreseen,
    ) -> Result<(), Error> {
        if let Some(pain) = &report.pain {
            self.take_pain_list(pain, on, foreseen.told(event))?;
        }
        self.shared.open_asks(report, on, foreseen.told(event));
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
            minutes: report.minutes.into_iter().chain(minutes).min(),
        });
        // The same question before the next session stands for the next-morning answer.
        if report.pain.is_some() {
            self.take_flares(foreseen.flare(event), on);
            let trained = self.last_trained().filter(|trained| *trained < on);
            self.calm_regions(trained);
            self.confirm(trained, on);
        }
        Ok(())
    }
}

impl Shared {
    /// The answers of that day.
    pub(crate) fn report_on(&self, on: Day) -> Option<&TodayReport> {
        self.today.as_ref().filter(|report| report.day == on)
    }

    /// The day's class: what was reported today, else unknown.
    pub(crate) fn class_on(&self, on: Day) -> DayClass {
        self.report_on(on).map_or(DayClass::Unknown, |report| report.class)
    }
}
