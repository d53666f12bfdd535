//! How many repetitions of a session are acceptable, by chance: independent, or alike within a session.

use alloc::vec::Vec;

use super::marks::REPS_IN_A_SET;
use super::pass_run::PassRun;
use crate::error::{Allowed, Code, Error};
use crate::numeric::{self, sum::sum};
use crate::source::{Source, formula, rows};

pub(super) const SKELLAM_1948: Source = Source {
    id: "skellam-1948",
    citation: "Skellam JG. A probability distribution derived from the binomial distribution by regarding the \
               probability of success as variable between the sets of trials. J R Stat Soc B 10:257-261, 1948",
    doi: Some("10.1111/j.2517-6161.1948.tb00014.x"),
};

/// Chances of a session's number of acceptable repetitions.
pub(super) struct Session {
    /// At place `x`: chance of `x` acceptable repetitions with the first ones clean.
    pub(super) clean: Vec<f64>,
    /// The same with a miss among the first ones.
    pub(super) not_clean: Vec<f64>,
}

impl Session {
    /// `reps` repetitions, each acceptable with chance `rate`; `correlation` between two of one session.
    ///
    /// An urn that is drawn from: after `x` acceptable of `i`, the next is acceptable with chance
    /// `(rate + x t) / (1 + i t)`, `t = correlation / (1 - correlation)`. That is the beta-binomial
    /// distribution, and the binomial at `t = 0`; every term is positive, so nothing cancels.
    pub(super) fn new(reps: u16, rate: f64, correlation: f64, first: u16) -> Session {
        let pull = correlation / (1.0 - correlation);
        let mut session = Session { clean: Vec::from([1.0]), not_clean: Vec::from([0.0]) };
        for done in 0..reps {
            let next = |acceptable: f64| {
                let scale = 1.0 + f64::from(done) * pull;
                let miss = (1.0 - rate + (f64::from(done) - acceptable) * pull) / scale;
                ((rate + acceptable * pull) / scale, miss)
            };
            let (clean, clean_miss) = step(&session.clean, next);
            let (mut not_clean, missed) = step(&session.not_clean, next);
            let early = done < first;
            for (to, more) in not_clean.iter_mut().zip(&missed) {
                *to += more;
            }
            let mut clean = clean;
            let target = if early { &mut not_clean } else { &mut clean };
            for (to, more) in target.iter_mut().zip(&clean_miss) {
                *to += more;
            }
            session = Session { clean, not_clean };
        }
        session
    }

    /// Chance of at least so many acceptable ones, the first ones clean.
    pub(super) fn at_least(&self, acceptable: u16) -> f64 {
        numeric::smaller(sum(self.clean.iter().skip(usize::from(acceptable)).copied()), 1.0)
    }
}

/// One repetition more: where an acceptable one leads, where a miss leads.
fn step(chances: &[f64], next: impl Fn(f64) -> (f64, f64)) -> (Vec<f64>, Vec<f64>) {
    let mut acceptable = Vec::from([0.0]);
    let mut missed = Vec::new();
    for (chance, count) in chances.iter().zip(0_u16..) {
        let (good, miss) = next(f64::from(count));
        acceptable.push(chance * good);
        missed.push(chance * miss);
    }
    missed.push(0.0);
    (acceptable, missed)
}

/// A rate, 0 and 1 included.
pub(super) fn check_rate(rate: f64) -> Result<f64, Error> {
    numeric::within(Code::OutOfRange, "rate", rate, 0.0, 1.0, "")
}

/// A correlation within a session: from 0, below 1.
pub(super) fn check_correlation(correlation: f64) -> Result<f64, Error> {
    let value = numeric::within(Code::OutOfRange, "correlation", correlation, 0.0, 1.0, "")?;
    if value < 1.0 {
        Ok(value)
    } else {
        Err(Error::new(Code::OutOfRange, "correlation", value, Allowed::rule("from 0, below 1")))
    }
}

formula! {
    "gate.session_chance",
    /// How likely is a session with at least so many acceptable repetitions?
    ///
    /// # Formula
    /// `P(X >= acceptable)`, `X` beta-binomial over `of` repetitions with mean `rate` per repetition and
    /// correlation `correlation` between two repetitions of one session (`a = rate (1/rho - 1)`,
    /// `b = (1 - rate) (1/rho - 1)`); binomial where the correlation is 0.
    ///
    /// # Domain
    /// 1 to 200 repetitions; a rate from 0 to 1; a correlation from 0, below 1. Repetitions of one session
    /// are alike, so 0 is a lower bound.
    ///
    /// # Errors
    /// Those of [`PassRun::new`]; `out_of_range`, `not_finite`.
    ///
    /// # Source
    /// Skellam 1948 (row `gate.session_chance`).
    ///
    /// # Examples
    /// ```
    /// let chance = bismar::gate::session_chance(9, 10, 0.9, 0.0)?;
    /// assert!((chance - 0.7361).abs() < 0.00005);
    /// // Alike repetitions: more very good and more very bad sessions.
    /// assert!(bismar::gate::session_chance(9, 10, 0.7, 0.3)? > bismar::gate::session_chance(9, 10, 0.7, 0.0)?);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn session_chance(acceptable: u16, of: u16, rate: f64, correlation: f64) -> Result<f64, Error> {
        let run = PassRun::new(acceptable, of, 1)?;
        let (rate, correlation) = (check_rate(rate)?, check_correlation(correlation)?);
        Ok(Session::new(run.of(), rate, correlation, 0).at_least(run.acceptable()))
    }
    source: SKELLAM_1948, place: "the distribution", standing: Published, seen: Memory,
    domain: "1 to 200 repetitions, correlation from 0 below 1",
}

/// Refuses a number of repetitions that no set has.
pub(super) fn check_reps(reps: u16) -> Result<u16, Error> {
    if (1..=REPS_IN_A_SET).contains(&reps) {
        Ok(reps)
    } else {
        Err(Error::range(Code::OutOfRange, "reps", reps, 1.0, f64::from(REPS_IN_A_SET), "reps"))
    }
}

rows![session_chance];
