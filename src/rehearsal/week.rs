//! The days of a week and what is trained on them.

use alloc::vec::Vec;

use derive_setters::Setters;

use super::finding::{Finding, Found};
use crate::error::{Allowed, Code, Error};
use crate::quantity::Name;
use crate::record::{Pair, Parameters};
use crate::source::{ARITHMETIC, formula, rows};

/// Days of a week.
pub(super) const WEEK: u8 = 7;

/// One training day of a week that repeats.
#[derive(Clone, Debug, PartialEq, Eq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct TrainingDay {
    /// Day of the week, 0 to 6 from the host's first day.
    pub weekday: u8,
    /// Ids of the lifts of that day.
    pub lifts: Vec<Name>,
}

impl TrainingDay {
    /// These lifts on that day of the week.
    #[must_use]
    pub fn new(weekday: u8, lifts: Vec<Name>) -> TrainingDay {
        TrainingDay { weekday, lifts }
    }
}

/// Refuses a week that is none: a day beyond the seventh, a day twice, a lift twice on a day or unknown.
pub(super) fn check_days(parameters: &Parameters, week: &[TrainingDay]) -> Result<(), Error> {
    for (at, day) in week.iter().enumerate() {
        let inside = |error: Error| error.within(&alloc::format!("week[{at}]"));
        let twice = week.iter().take(at).any(|earlier| earlier.weekday == day.weekday);
        if day.weekday >= WEEK || twice {
            let highest = f64::from(WEEK - 1);
            return Err(inside(Error::range(Code::OutOfRange, "weekday", day.weekday, 0.0, highest, "once")));
        }
        for (place, lift) in day.lifts.iter().enumerate() {
            if parameters.lift(lift).is_none() {
                let rule = Allowed::rule("a lift of the parameters");
                return Err(inside(Error::new(Code::UnknownLift, "lifts", lift.as_str(), rule)));
            }
            if day.lifts.iter().take(place).any(|earlier| earlier == lift) {
                let rule = Allowed::rule("each lift once a day");
                return Err(inside(Error::new(Code::DuplicateLift, "lifts", lift.as_str(), rule)));
            }
        }
    }
    Ok(())
}

formula! {
    "rehearsal.check_week",
    /// Are the lifts of each pair far enough apart in this week, and does every lift come back in time?
    ///
    /// # Formula
    /// Full rest days between two days of a week that repeats: days from one to the next, less one. Asked for:
    /// the policy's number for a pair (one more for an older lifter or one of unknown age, which this check leaves out).
    ///
    /// # Errors
    /// `out_of_range` for a day that is not 0 to 6 or named twice; `unknown_lift`; `duplicate_lift`.
    ///
    /// # Source
    /// Arithmetic over the rules in force (row `rehearsal.check_week`).
    ///
    /// # Examples
    /// ```
    /// # use bismar::{gate::*, loading::*, quantity::*, record::*};
    /// # let lift = |id: &str| -> Result<LiftParameters, bismar::Error> {
    /// #     let (gate, work) = (Gate::usual(PassRun::new(9, 10, 2)?)?, Work::new(2, 5, Mass::from_kg(40.0)?));
    /// #     Ok(LiftParameters::new(Name::new(id)?, Body::Lower, Name::new("bar")?, Grant::new(work), gate)
    /// #         .with_regions(vec![Name::new("knee")?])
    /// #         .with_rungs(vec![Rung::new(Name::new("free")?, vec![])])
    /// #         .with_criteria(vec![Criterion::critical("brace held")?])
    /// #         .with_over_the_body(true))
    /// # };
    /// # let bar = Implement::Bar(Bar::new(Name::new("bar")?, Mass::from_kg(20.0)?, Mass::ZERO)?);
    /// # let stock = Stock::new(vec![Disc::new(Mass::from_kg(10.0)?, 4)?, Disc::new(Mass::from_kg(1.0)?, 8)?])?;
    /// # let lifts = vec![lift("front squat")?, lift("box squat")?];
    /// # let parameters = Parameters::new(vec![Region::new(Name::new("knee")?)], lifts, vec![bar], stock)
    /// #     .with_pairs(vec![Pair::new(Name::new("front squat")?, Name::new("box squat")?)]);
    /// use bismar::rehearsal::{TrainingDay, check_week};
    ///
    /// let day = |weekday, lift: &str| -> Result<TrainingDay, bismar::Error> {
    ///     Ok(TrainingDay::new(weekday, vec![Name::new(lift)?]))
    /// };
    /// let found = check_week(&parameters, &[day(0, "box squat")?, day(1, "front squat")?])?;
    /// assert_eq!(found[0].code(), "strict_after_heavy");
    /// assert!(check_week(&parameters, &[day(0, "front squat")?, day(3, "box squat")?])?.is_empty());
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn check_week(parameters: &Parameters, week: &[TrainingDay]) -> Result<Vec<Finding>, Error> {
        check_days(parameters, week)?;
        let mut findings = Vec::new();
        for pair in &parameters.pairs {
            closest(parameters, pair, week, &mut findings);
        }
        for lift in &parameters.lifts {
            let allowed = parameters.policy.freshness_days;
            let due = parameters.policy.probe_days;
            let longest = longest_gap(&days_of(&lift.id, week));
            if let Some(gap) = longest.filter(|gap| *gap > due) {
                findings.push(Finding::about(&lift.id, Found::ProbeBeforeSession { gap, due }));
            }
            match longest {
                None => findings.push(Finding::about(&lift.id, Found::NoDay)),
                Some(gap) if gap > allowed => {
                    findings.push(Finding::about(&lift.id, Found::StaleBetweenSessions { gap, allowed }));
                }
                Some(_) => {}
            }
        }
        crate::numeric::sort::sort_by_key(&mut findings, |finding| finding.severity);
        Ok(findings)
    }
    source: ARITHMETIC, place: "the rules in force", standing: Derived, seen: NotApplicable,
    domain: "one week that repeats",
}

fn days_of(lift: &Name, week: &[TrainingDay]) -> Vec<u8> {
    let mut days: Vec<u8> =
        week.iter().filter(|day| day.lifts.contains(lift)).map(|day| day.weekday).collect();
    crate::numeric::sort::sort(&mut days);
    days
}

/// Days from one weekday to the next time it is the other, 0 for the same day.
const fn days_until(from: u8, to: u8) -> u8 {
    (to + WEEK - from) % WEEK
}

fn longest_gap(days: &[u8]) -> Option<u16> {
    let next = days.iter().skip(1).chain(days.first());
    let gaps = days.iter().zip(next).map(|(from, to)| match days_until(*from, *to) {
        0 => WEEK,
        gap => gap,
    });
    gaps.max().map(u16::from)
}

/// What the pair's days have against it: the day after first, then too little rest either way.
fn closest(parameters: &Parameters, pair: &Pair, week: &[TrainingDay], findings: &mut Vec<Finding>) {
    let (strict, forgiving) = (days_of(&pair.strict, week), days_of(&pair.forgiving, week));
    let both = || strict.iter().flat_map(|s| forgiving.iter().map(move |f| (*s, *f)));
    let mut say = |what| findings.push(Finding::about(&pair.strict, what));
    if both().any(|(s, f)| days_until(f, s) == 1) {
        say(Found::StrictAfterHeavy { forgiving: pair.forgiving.clone() });
        return;
    }
    if both().any(|(s, f)| s == f) {
        say(Found::PairInOneSession { forgiving: pair.forgiving.clone() });
    }
    let apart = both().map(|(s, f)| days_until(s, f).min(days_until(f, s))).min();
    let needed = u16::from(parameters.policy.pair_rest_days);
    let days = apart.map(|apart| u16::from(apart.saturating_sub(1)));
    if let Some(days) = days.filter(|days| *days < needed) {
        say(Found::PairTooClose { partner: pair.forgiving.clone(), days, needed });
    }
}

rows![check_week];
