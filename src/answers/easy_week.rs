//! Is an easy week due, counting life's own breaks, and what would it be?

use alloc::vec::Vec;

use super::diary::Diary;
use super::lacking::Lacking;
use super::week::Weeks;
use crate::caution::Caution;
use crate::dose::{
    DailyLoad, EasyWeekOptions, EasyWeekRange, EasyWeekStatus, easy_week_range_bell_2022, easy_week_status,
};
use crate::error::Error;
use crate::prescription::{SessionPlan, next_session_from};
use crate::quantity::{Day, Mass, Name, Rir};
use crate::reason::Reason;
use crate::record::{EventKind, Log, Place, Plan};

const WEEK: i32 = 7;

/// One lift of an easy week.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct EasyLift {
    /// Id of the lift.
    pub lift: Name,
    /// Where it would be done.
    pub place: Place,
    /// Work sets.
    pub sets: u8,
    /// Work sets without the easy week.
    pub usual_sets: u8,
    /// Repetitions a set.
    pub reps: u8,
    /// Load; absent where nothing is lifted.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub load: Option<Mass>,
    /// Repetitions to leave in reserve.
    pub reserve: Rir,
}

/// Where the next easy week stands.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct EasyWeek {
    /// Every stop of the lifter, whatever is asked about; empty where nothing is stopped. Shown before anything else.
    pub stops: Vec<Reason>,
    /// The day it was made for.
    pub today: Day,
    /// Where it stands; absent where the log holds no session.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub status: Option<EasyWeekStatus>,
    /// First day of the last week that was easy, planned or made by life.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub last: Option<Day>,
    /// What coaches report of length and spacing.
    pub practice: EasyWeekRange,
    /// What it would be for the lifts of the plan; empty without one, and while a stop is in force.
    pub would_be: Vec<EasyLift>,
    /// What nobody wrote down.
    pub missing: Vec<Lacking>,
    /// Rows of the registry that the numbers come from.
    pub sources: Vec<&'static str>,
    /// What to show beside it.
    pub cautions: Vec<Caution>,
}

/// Is an easy week due, counting those that life has already given, and what would it be?
///
/// # Rules
/// Seven-day weeks back from today, whole ones within the log, at most 13. A week without a session, or at or below 0.7 of the
/// lifter's own median trained week, was easy: travel and illness count. A break noted for a coming day counts as planned.
/// What it would be is the plan's next session as an easy week. Never an order: the coach decides.
///
/// # Errors
/// What [`fold`](crate::progression::fold) reports; `before_last_event`; what
/// [`next_session`](crate::prescription::next_session) reports of the plan.
///
/// # Examples
/// ```
/// use bismar::answers::{Lacking, easy_week};
/// use bismar::quantity::Name;
/// use bismar::record::{Lifter, Log};
///
/// let empty = Log::new(Lifter::new(Name::new("A")?));
/// let found = easy_week(&empty, None, "2026-03-02".parse()?)?;
/// assert!(found.status.is_none());
/// assert_eq!(found.missing, [Lacking::Session]);
/// # Ok::<(), bismar::Error>(())
/// ```
pub fn easy_week(log: &Log, plan: Option<&Plan>, today: Day) -> Result<EasyWeek, Error> {
    Diary::of(log)?.easy_week(plan, today)
}

impl Diary<'_> {
    /// Is an easy week due? See [`easy_week`].
    ///
    /// # Errors
    /// `before_last_event`; what [`next_session`](crate::prescription::next_session) reports of the plan.
    pub fn easy_week(&self, plan: Option<&Plan>, today: Day) -> Result<EasyWeek, Error> {
        self.check_today(today)?;
        let options = EasyWeekOptions::default();
        let weeks = Weeks::of(self, today)?;
        let loads: Vec<DailyLoad> = weeks.loads()?;
        let status = if loads.is_empty() {
            None
        } else {
            Some(easy_week_status(&loads, self.absence(today), options)?)
        };
        let since = match status {
            Some(EasyWeekStatus::NotYet { weeks_since } | EasyWeekStatus::Consider { weeks_since }) => {
                weeks_since
            }
            _ => u16::MAX,
        };
        let easy = loads.len().checked_sub(usize::from(since)).and_then(|past| past.checked_sub(1));
        let last = easy.and_then(|at| weeks.summaries.get(at)).map(|week| week.from);
        let mut missing = Vec::new();
        missing.extend(loads.is_empty().then_some(Lacking::Session));
        let empty = loads.iter().filter(|week| **week == DailyLoad::Rested).count() as u32;
        missing.extend((empty > 0).then_some(Lacking::Weeks { weeks: empty }));
        missing.extend(plan.is_none().then_some(Lacking::Plan).filter(|_| status.is_some()));
        Ok(EasyWeek {
            stops: self.state().stops_on(today),
            today,
            status,
            last,
            practice: easy_week_range_bell_2022()?,
            would_be: match plan {
                Some(plan) if !self.is_stopped() && status.is_some() => self.eased(plan, today)?,
                _ => Vec::new(),
            },
            missing,
            sources: alloc::vec!["dose.easy_week_status", "dose.easy_week_range_bell_2022"],
            cautions: self.cautions(today),
        })
    }

    /// Weeks until a break that is noted for a coming day.
    fn absence(&self, today: Day) -> Option<u16> {
        let noted = self.events().filter_map(|event| match &event.kind {
            EventKind::LayoffNoted(layoff) => Some(layoff.from),
            _ => None,
        });
        let coming = noted.filter(|from| *from > today).min()?;
        u16::try_from(coming.since(today) / WEEK).ok()
    }

    /// The plan's next session as an easy week, beside the same without.
    fn eased(&self, plan: &Plan, today: Day) -> Result<Vec<EasyLift>, Error> {
        let session = |easy_week| -> Result<SessionPlan, Error> {
            next_session_from(self.state(), &Plan { easy_week, ..plan.clone() }, today)
        };
        let (easy, usual) = (session(true)?, session(false)?);
        let both = easy.lifts.into_iter().zip(usual.lifts);
        Ok(both
            .map(|(easy, usual)| EasyLift {
                lift: easy.lift,
                place: easy.place,
                sets: easy.sets,
                usual_sets: usual.sets,
                reps: easy.reps,
                load: easy.load,
                reserve: easy.reserve,
            })
            .collect())
    }
}
