//! A gate made of evidence: how sure are we that enough repetitions are acceptable?

use alloc::vec::Vec;

use super::facts::SessionFact;
use super::state::{Met, Missing};
use super::verdict::Outcome;
use crate::canonical::{Canonical, canonical_kinds};
use crate::error::{Allowed, Code, Error};
use crate::numeric;
use crate::quantity::Day;
use crate::source::{OURS, formula, rows};
use crate::statistics::{BetaPrior, SequentialTest, probability_rate_at_least, sequential_counts};

/// Most repetitions over which any test may run.
pub const MOST_REPS: u16 = 1_000;

/// Most passing days that any test may ask for.
const MOST_DAYS: u8 = 10;

/// What is asked of the repetitions.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, rename_all = "snake_case")
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum EvidenceRule {
    /// A sequential probability ratio test between two rates of acceptable repetitions.
    Sequential {
        /// Rate that is not good enough.
        poor: f64,
        /// Rate that is good enough.
        good: f64,
        /// Chance, before truncation, that the gate opens at the poor rate.
        false_open: f64,
        /// Chance, before truncation, that it stays shut at the good rate.
        false_shut: f64,
    },
    /// The probability that the rate of acceptable repetitions is at least `rate`, after a Beta prior.
    Posterior {
        /// Rate wanted.
        rate: f64,
        /// Probability wanted.
        level: f64,
        /// Acceptable repetitions that the prior is worth (1 and 1 for a uniform one).
        prior_acceptable: f64,
        /// Missed repetitions that the prior is worth.
        prior_missed: f64,
    },
}

canonical_kinds!(EvidenceRule:
    0 Sequential { poor, good, false_open, false_shut },
    1 Posterior { rate, level, prior_acceptable, prior_missed },
);

/// A test of the rate of acceptable repetitions, turned into whole counts when it is built.
///
/// It is looked at after each session. All scored repetitions count; of a session that lost a critical
/// criterion, was not fully scored, or failed on a confirmed day below the usual, only the misses do. It opens when misses
/// are few enough, with at least so many passing days, the last scored one among them. Evidence against ends the
/// test, as does its last repetition: then it must be started again by leaving the earlier sessions out, on
/// an easier tuple or because the coach says so.
///
/// ```
/// use bismar::gate::{Evidence, EvidenceRule};
///
/// let rule = EvidenceRule::Sequential { poor: 0.7, good: 0.9, false_open: 0.05, false_shut: 0.1 };
/// let test = Evidence::new(rule, 60, 2)?;
/// assert_eq!(test.opens_at(11), None);
/// assert_eq!(test.opens_at(12), Some(0)); // twelve straight acceptable repetitions
/// assert_eq!(test.ends_at(3), Some(3)); // three straight misses
/// # Ok::<(), bismar::Error>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(try_from = "wire::Evidence", into = "wire::Evidence")
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Evidence {
    rule: EvidenceRule,
    most_reps: u16,
    days: u8,
    /// After `n` repetitions, at place `n - 1`.
    limits: Vec<Limit>,
}

impl Canonical for Evidence {
    fn put(&self, out: &mut Vec<u8>) {
        // The limits follow from the rest.
        let Evidence { rule, most_reps, days, limits: _ } = self;
        rule.put(out);
        most_reps.put(out);
        days.put(out);
    }
}

formula! {
    "gate.usual_evidence",
    /// The test of evidence to begin with, where nobody has asked for another.
    ///
    /// # Domain
    /// Between 7 and 9 acceptable repetitions of 10, over at most 60 repetitions and on at least two days. It opens after twelve
    /// straight acceptable repetitions, and ends after three straight misses.
    ///
    /// # Errors
    /// None.
    ///
    /// # Source
    /// Our choice (row `gate.usual_evidence`).
    ///
    /// # Examples
    /// ```
    /// let test = bismar::gate::usual_evidence()?;
    /// assert_eq!((test.most_reps(), test.days()), (60, 2));
    /// assert_eq!((test.opens_at(12), test.ends_at(3)), (Some(0), Some(3)));
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn usual_evidence() -> Result<Evidence, Error> {
        let rule = EvidenceRule::Sequential { poor: 0.7, good: 0.9, false_open: 0.05, false_shut: 0.1 };
        Evidence::new(rule, 60, 2)
    }
    source: OURS, place: "technique gate", standing: OurChoice, seen: NotApplicable,
    domain: "barbell lifts under a technique gate",
}

rows![usual_evidence];

fn open_unit(field: &'static str, value: f64) -> Result<f64, Error> {
    let value = numeric::finite(field, value)?;
    if value > 0.0 && value < 1.0 {
        Ok(value)
    } else {
        Err(Error::new(Code::OutOfRange, field, value, Allowed::rule("above 0 and below 1")))
    }
}

/// Misses that decide after so many repetitions.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
struct Limit {
    /// The gate opens with no more than these.
    opens: Option<u32>,
    /// The test ends with no fewer than these.
    ends: Option<u32>,
}

fn sequential_limits(most_reps: u16, rates: [f64; 2], errors: [f64; 2]) -> Result<Vec<Limit>, Error> {
    let [poor, good] = rates;
    let (poor, good) = (open_unit("poor", poor)?, open_unit("good", good)?);
    let [false_open, false_shut] = errors;
    if poor >= good {
        return Err(Error::new(Code::OutOfRange, "poor", poor, Allowed::rule("below the good rate")));
    }
    if open_unit("false_open", false_open)? + open_unit("false_shut", false_shut)? >= 1.0 {
        let rule = Allowed::rule("the two chances of error add up to less than 1");
        return Err(Error::new(Code::OutOfRange, "false_open", false_open, rule));
    }
    let test = SequentialTest::new(1.0 - good, 1.0 - poor, false_shut, false_open)?;
    let limit = |reps: u16| {
        let counts = sequential_counts(test, u32::from(reps))?;
        Ok(Limit { opens: counts.accept, ends: counts.reject })
    };
    (1..=most_reps).map(limit).collect()
}

fn posterior_limits(most_reps: u16, rate: f64, level: f64, prior: BetaPrior) -> Result<Vec<Limit>, Error> {
    let (rate, level) = (open_unit("rate", rate)?, open_unit("level", level)?);
    let sure = |reps: u32, misses: u32| {
        Ok::<bool, Error>(probability_rate_at_least(prior, reps - misses, reps, rate)? >= level)
    };
    if sure(0, 0)? {
        return Err(Error::new(Code::GateAlwaysOpen, "level", level, Allowed::rule("not met by the prior")));
    }
    let mut limits = Vec::new();
    let mut opens: Option<u32> = None;
    for reps in 1..=u32::from(most_reps) {
        // One more acceptable repetition never lowers the number of misses that may be among them.
        let next = opens.map_or(0, |misses| misses + 1);
        if next <= reps && sure(reps, next)? {
            opens = Some(next);
        }
        limits.push(Limit { opens, ends: None });
    }
    Ok(limits)
}

impl Evidence {
    /// A test over at most `most_reps` repetitions that opens after at least `days` passing days.
    ///
    /// # Errors
    /// `out_of_range`, `not_finite`; `gate_always_open` for 0 days or repetitions, or a
    /// prior that is sure already; `gate_never_opens` where even a clean run does not open it.
    pub fn new(rule: EvidenceRule, most_reps: u16, days: u8) -> Result<Evidence, Error> {
        let asked = Allowed::rule("at least 1");
        for (field, given) in [("most_reps", most_reps), ("days", u16::from(days))] {
            if given == 0 {
                return Err(Error::new(Code::GateAlwaysOpen, field, given, asked));
            }
        }
        if most_reps > MOST_REPS {
            let highest = f64::from(MOST_REPS);
            return Err(Error::range(Code::OutOfRange, "most_reps", most_reps, 1.0, highest, "reps"));
        }
        if days > MOST_DAYS {
            return Err(Error::range(Code::OutOfRange, "days", days, 1.0, f64::from(MOST_DAYS), "days"));
        }
        let limits = match rule {
            EvidenceRule::Sequential { poor, good, false_open, false_shut } => {
                sequential_limits(most_reps, [poor, good], [false_open, false_shut])?
            }
            EvidenceRule::Posterior { rate, level, prior_acceptable, prior_missed } => {
                posterior_limits(most_reps, rate, level, BetaPrior::new(prior_acceptable, prior_missed)?)?
            }
        };
        let test = Evidence { rule, most_reps, days, limits };
        match test.opens_at(u32::from(most_reps)) {
            Some(_) => Ok(test),
            None => {
                let rule = Allowed::rule("enough repetitions for a clean run to open the gate");
                Err(Error::new(Code::GateNeverOpens, "most_reps", most_reps, rule))
            }
        }
    }

    /// The rule it was built from.
    #[must_use]
    pub const fn rule(&self) -> &EvidenceRule {
        &self.rule
    }

    /// Repetitions after which it ends.
    #[must_use]
    pub const fn most_reps(&self) -> u16 {
        self.most_reps
    }

    /// Passing days it takes at least.
    #[must_use]
    pub const fn days(&self) -> u8 {
        self.days
    }

    /// Most misses with which the gate opens after so many scored repetitions; none if it cannot open yet.
    /// From the last repetition of the test on, the number stays as it is there.
    #[must_use]
    pub fn opens_at(&self, reps: u32) -> Option<u32> {
        self.limit(reps)?.opens
    }

    /// Fewest misses that end the test after so many scored repetitions; none if it cannot end yet.
    #[must_use]
    pub fn ends_at(&self, reps: u32) -> Option<u32> {
        let Limit { opens, ends } = self.limit(reps)?;
        let last = reps >= u32::from(self.most_reps);
        if last { opens.map(|misses| misses + 1).or(ends) } else { ends }
    }

    fn limit(&self, reps: u32) -> Option<Limit> {
        let place = reps.min(u32::from(self.most_reps)).checked_sub(1)?;
        self.limits.get(usize::try_from(place).ok()?).copied()
    }

    /// Where the test stands after these days.
    pub(super) fn standing(&self, days: &[SessionFact]) -> Standing {
        let mut standing = Standing::default();
        for day in days {
            standing.add(day);
            let (scored, misses) = (standing.scored, standing.misses);
            if self.ends_at(scored).is_some_and(|end| misses >= end) {
                standing.ended = Some(day.day);
                break;
            }
        }
        standing
    }

    /// What is met, or everything that is missing.
    pub(super) fn outcome(&self, days: &[SessionFact]) -> Result<Met, Vec<Missing>> {
        let standing = self.standing(days);
        let Standing { scored, misses, .. } = standing;
        if let Some(day) = standing.ended {
            return Err([Missing::EvidenceAgainst { day, scored, misses }].into());
        }
        let mut missing = Vec::new();
        let most_misses = self.opens_at(scored).filter(|most| misses <= *most);
        if most_misses.is_none() {
            missing.push(Missing::Evidence { scored, misses, clean_reps: self.clean_reps(scored, misses) });
        }
        let (have, need) = (standing.days, u32::from(self.days));
        if have < need {
            missing.push(Missing::PassingDays { have, need });
        }
        missing.extend(
            standing.last.filter(|(_, passed)| !passed).map(|(day, _)| Missing::LastSessionNotPassed { day }),
        );
        missing.extend(standing.pending.map(|day| Missing::NextMorningAnswer { day }));
        match most_misses.filter(|_| missing.is_empty()) {
            Some(most_misses) => Ok(Met::Evidence { scored, misses, most_misses }),
            None => Err(missing),
        }
    }

    /// Acceptable repetitions in a row that would do.
    fn clean_reps(&self, scored: u32, misses: u32) -> Option<u32> {
        let left = u32::from(self.most_reps).saturating_sub(scored);
        (1..=left).find(|more| self.opens_at(scored + more).is_some_and(|most| misses <= most))
    }
}

/// Where a test stands.
#[derive(Default)]
pub(super) struct Standing {
    scored: u32,
    misses: u32,
    days: u32,
    last: Option<(Day, bool)>,
    pending: Option<Day>,
    ended: Option<Day>,
}

impl Standing {
    fn add(&mut self, day: &SessionFact) {
        let neutral = day.passed == Outcome::Fail && day.day_class.is_confirmed_below();
        let misses_only = day.critical_fail || day.passed == Outcome::NotScored || neutral;
        // Misses count from any session, so that a worse one never leaves the count better.
        self.misses += day.misses();
        self.scored += if misses_only { day.misses() } else { day.scored };
        let passed = day.passed == Outcome::Pass && !day.critical_fail;
        if day.passed != Outcome::NotScored {
            self.last = Some((day.day, passed));
        }
        if passed {
            self.days += 1;
            self.pending = if day.answer_pending { Some(day.day) } else { self.pending };
        }
    }
}

#[cfg(feature = "serde")]
mod wire {
    //! The test as written: its rule and its length; the counts follow.
    use super::{Error, EvidenceRule};

    #[derive(Clone, serde::Serialize, serde::Deserialize)]
    #[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
    #[serde(deny_unknown_fields)]
    pub(super) struct Evidence {
        rule: EvidenceRule,
        most_reps: u16,
        days: u8,
    }

    impl TryFrom<Evidence> for super::Evidence {
        type Error = Error;

        fn try_from(wire: Evidence) -> Result<super::Evidence, Error> {
            super::Evidence::new(wire.rule, wire.most_reps, wire.days)
        }
    }

    impl From<super::Evidence> for Evidence {
        fn from(test: super::Evidence) -> Evidence {
            Evidence { rule: test.rule, most_reps: test.most_reps, days: test.days }
        }
    }
}
