//! What sets say about the one-repetition maximum, how sure that is, and where the doubt comes from.
//!
//! Every set gives the mean of its equations (of their logarithms). What all sets share (the lifter's own slope,
//! the standing of the equations against each other, the lifter's habit of calling reserve, the day) is an
//! unknown of its own with a stated spread, so that a heavy set near failure counts for more than a long easy one,
//! and more sets of one day do not make the day go away.

use alloc::vec::Vec;

use super::equation::Equation;
use super::evidence::{SetEvidence, SetFlag, SetRefusal, SetUse, UsableSet, sort_set};
use super::options::{
    BIAS_ERROR_CORRECTED, BIAS_ERROR_UNCORRECTED, EstimateOptions, MITTER_2022_REPETITION_SEM,
    RESERVE_ERROR_IN_LONG_SETS, RESERVE_ERROR_NEAR_FAILURE, RESERVE_ERROR_PER_REPETITION, TYPICAL_SLOPE,
};
use super::posterior::Observations;
use crate::caution::Caution;
use crate::error::{Allowed, Code, Error};
use crate::numeric;
use crate::quantity::{Day, Interval, Kilograms};
use crate::source::{ARITHMETIC, formula, rows};

/// Shares of the variance behind the interval; they add up to 1.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct WidthParts {
    /// Which equation, and how this lifter differs from it.
    pub equation: f64,
    /// Misjudged repetitions in reserve, the lifter's habit included.
    pub reserve: f64,
    /// The day, and the scatter of repetitions from set to set.
    pub day_to_day: f64,
}

/// What one equation alone would have said.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct EquationEstimate {
    /// The equation.
    pub equation: Equation,
    /// Its estimate from the sets at which it is defined, weighted as the whole is; absent where there is none.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub value: Option<Kilograms>,
    /// Used sets, by position, whose repetitions to failure the equation was not measured at.
    pub outside_measured: Vec<u32>,
}

/// An estimate of the usual one-repetition maximum.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct Estimate {
    /// The estimate.
    pub value: Kilograms,
    /// Where the usual maximum lies, in kg.
    pub interval: Interval,
    /// Where the width comes from.
    pub parts: WidthParts,
    /// Every chosen equation on its own.
    pub by_equation: Vec<EquationEstimate>,
    /// What became of every set, in the order given.
    pub sets: Vec<SetUse>,
    /// What to show beside it.
    pub cautions: Vec<Caution>,
}

/// Sets in one estimate at most.
const MOST_SETS: usize = 200;

/// Where calls of reserve become poor (Halperin et al. 2022).
const LONG_SET: f64 = 12.0;

/// A single that is taken as the maximum could have been heavier by about one small step (our choice).
const SINGLE_STEP: f64 = 0.01;

/// A set further off than this many of its own standard deviations is flagged (our choice).
const FAR_OFF: f64 = 3.0;

/// The unknowns in order: maximum, slope, standing of the equations, habit of calling; then one a day.
const SHARED: usize = 4;

/// What one usable set contributes: logarithm of its maximum, and how shared unknowns move it.
pub(super) struct Row {
    ln_maximum: f64,
    slope: f64,
    between: f64,
    pub(super) habit: f64,
    misjudged: f64,
    scatter: f64,
    pub(super) day: usize,
}

impl Row {
    pub(super) fn own_deviation(&self) -> f64 {
        numeric::sqrt(self.misjudged * self.misjudged + self.scatter * self.scatter)
    }

    fn coefficients(&self, days: usize, day_cv: f64) -> Vec<f64> {
        let mut all = alloc::vec![1.0, self.slope, self.between, self.habit];
        all.extend((0..days).map(|day| if day == self.day { day_cv } else { 0.0 }));
        all
    }

    fn whole_deviation(&self, day_cv: f64) -> f64 {
        let own = self.own_deviation();
        let parts = [self.slope, self.between, self.habit, day_cv, own];
        numeric::sqrt(parts.iter().map(|part| part * part).sum())
    }
}

/// Change of the logarithm of the maximum with one repetition, for a typical lifter.
fn gain(to_failure: f64) -> f64 {
    TYPICAL_SLOPE / (1.0 + TYPICAL_SLOPE * (to_failure - 1.0))
}

fn misjudged_reps(set: &UsableSet) -> f64 {
    if set.reserve.failed {
        return 0.0;
    }
    let long = if set.to_failure > LONG_SET { RESERVE_ERROR_IN_LONG_SETS } else { 1.0 };
    let called = long * (RESERVE_ERROR_NEAR_FAILURE + RESERVE_ERROR_PER_REPETITION * set.reserve.rir);
    // A band is even over its width: variance one third of the half width squared.
    numeric::sqrt(called * called + set.reserve.half_band * set.reserve.half_band / 3.0)
}

/// Mean and standard deviation of the logarithms that the equations give.
fn logarithms(set: &UsableSet) -> Result<(f64, f64), Error> {
    if set.is_maximum {
        return Ok((numeric::ln(set.load), 0.0));
    }
    let logarithm = |equation: &Equation| equation.one_rm_at(set.load, set.to_failure).map(numeric::ln);
    let all = set.equations.iter().map(logarithm).collect::<Result<Vec<f64>, Error>>()?;
    let count = all.len() as f64;
    let mean = all.iter().sum::<f64>() / count;
    let squares: f64 = all.iter().map(|one| (one - mean) * (one - mean)).sum();
    Ok((mean, if all.len() < 2 { 0.0 } else { numeric::sqrt(squares / (count - 1.0)) }))
}

fn row(set: &UsableSet, day: usize, options: &EstimateOptions) -> Result<Row, Error> {
    let (ln_maximum, between) = logarithms(set)?;
    let gain = gain(set.to_failure);
    let habit = match (set.reserve.failed, options.bias.reps() == 0.0) {
        (true, _) => 0.0,
        (false, true) => BIAS_ERROR_UNCORRECTED,
        (false, false) => BIAS_ERROR_CORRECTED,
    };
    let scatter = if set.is_maximum { SINGLE_STEP } else { MITTER_2022_REPETITION_SEM * gain };
    Ok(Row {
        ln_maximum,
        slope: options.personal_slope_cv * (set.to_failure - 1.0) * gain,
        between,
        habit: habit * gain,
        misjudged: misjudged_reps(set) * gain,
        scatter,
        day,
    })
}

pub(super) fn rows(sets: &[UsableSet], options: &EstimateOptions) -> Result<(Vec<Row>, usize), Error> {
    let mut days: Vec<Option<Day>> = sets.iter().map(|set| set.day).collect();
    crate::numeric::sort::sort(&mut days);
    days.dedup();
    let day_of = |set: &UsableSet| days.iter().position(|day| *day == set.day).unwrap_or(0);
    let rows = sets.iter().map(|set| row(set, day_of(set), options)).collect::<Result<Vec<Row>, Error>>()?;
    Ok((rows, days.len()))
}

/// Mean, standard deviation and weights of the logarithm of the maximum.
struct Combined {
    mean: f64,
    deviation: f64,
    weights: Vec<f64>,
}

fn combined(rows: &[Row], days: usize, day_cv: f64) -> Result<Combined, Error> {
    let mut priors = alloc::vec![None; 1];
    priors.extend((1..SHARED + days).map(|_| Some((0.0, 1.0))));
    let mut observations = Observations::new(&priors);
    for row in rows {
        observations.observe(&row.coefficients(days, day_cv), row.ln_maximum, row.own_deviation());
    }
    let posterior = observations.posterior()?;
    let mean = posterior.means.first().copied().unwrap_or(f64::NAN);
    let variance = posterior.variances.first().copied().unwrap_or(f64::NAN);
    Ok(Combined { mean, deviation: numeric::sqrt(variance), weights: posterior.weights_of_first() })
}

fn square(value: f64) -> f64 {
    value * value
}

fn parts(rows: &[Row], days: usize, weights: &[f64], day_cv: f64) -> WidthParts {
    let moved =
        |of: fn(&Row) -> f64| rows.iter().zip(weights).map(|(row, weight)| weight * of(row)).sum::<f64>();
    let own = |of: fn(&Row) -> f64| {
        rows.iter().zip(weights).map(|(row, weight)| square(weight * of(row))).sum::<f64>()
    };
    let on_day = |day: usize| -> f64 {
        rows.iter().zip(weights).filter(|(row, _)| row.day == day).map(|(_, weight)| weight).sum()
    };
    let equation = square(moved(|row| row.slope)) + square(moved(|row| row.between));
    let reserve = square(moved(|row| row.habit)) + own(|row| row.misjudged);
    let day_to_day = (0..days).map(|day| square(day_cv * on_day(day))).sum::<f64>() + own(|row| row.scatter);
    let whole = equation + reserve + day_to_day;
    WidthParts { equation: equation / whole, reserve: reserve / whole, day_to_day: day_to_day / whole }
}

/// Weighted mean of the logarithms of one equation over the sets at which it is defined.
fn alone(equation: Equation, sets: &[UsableSet], weights: &[f64]) -> Result<EquationEstimate, Error> {
    let (mut sum, mut total) = (0.0, 0.0);
    let mut outside_measured = Vec::new();
    for (set, weight) in sets.iter().zip(weights) {
        let maximum =
            if set.is_maximum { Ok(set.load) } else { equation.one_rm_at(set.load, set.to_failure) };
        if let Ok(maximum) = maximum {
            sum += weight * numeric::ln(maximum);
            total += weight;
        }
        if !equation.was_measured_at(set.to_failure) {
            outside_measured.push(set.at as u32);
        }
    }
    // Weights of both signs may cancel where sets are missing; then the equation has nothing to say.
    const LEAST_WEIGHT: f64 = 0.1;
    let value = if total > LEAST_WEIGHT { Some(Kilograms::new(numeric::exp(sum / total))?) } else { None };
    Ok(EquationEstimate { equation, value, outside_measured })
}

/// Sorts the sets; every one leaves a report.
pub(super) fn sort(
    evidence: &[SetEvidence],
    options: &EstimateOptions,
) -> Result<(Vec<SetUse>, Vec<UsableSet>), Error> {
    options.check().map_err(|error| error.within("options"))?;
    if evidence.len() > MOST_SETS {
        return Err(Error::range(
            Code::OutOfRange,
            "evidence",
            evidence.len(),
            1.0,
            MOST_SETS as f64,
            "sets",
        ));
    }
    let (mut reports, mut usable) = (Vec::new(), Vec::new());
    for (at, set) in evidence.iter().enumerate() {
        let (report, set) = sort_set(at, set, options);
        reports.push(report);
        usable.extend(set);
    }
    Ok((reports, usable))
}

fn no_usable_set(reports: &[SetUse]) -> Error {
    let first = reports.iter().flat_map(|report| report.refusals.first()).next();
    let rule = match first {
        None => "at least one set",
        Some(SetRefusal::TechniqueFailed | SetRefusal::TechniqueNotScored) => "a set that passed technique",
        Some(SetRefusal::TooManyReps) => "a shorter set",
        Some(SetRefusal::TooFarFromFailure) => "a set nearer to failure",
        Some(SetRefusal::EffortNotReported | SetRefusal::NotAReserve) => "a set with repetitions in reserve",
        Some(_) => "a set with load and repetitions at which an equation is defined",
    };
    Error::new(Code::NoUsableSet, "evidence", reports.len(), Allowed::rule(rule))
}

formula! {
    "one_rm.usable_sets",
    /// Which of these sets may speak about strength, and why not the others?
    ///
    /// # Formula
    /// Refused: technique failed or not scored, no reserve named, more than `highest_reserve` left, more than
    /// `highest_reps`, no load, no repetition, no equation defined. Flagged: see [`SetFlag`].
    ///
    /// # Domain
    /// Up to 200 sets. By default sets of 1 to 10 repetitions with at most 4 in reserve; 11 to 15 are flagged.
    ///
    /// # Errors
    /// `out_of_range` for options outside their range or more than 200 sets.
    ///
    /// # Source
    /// Arithmetic; calls far from failure and in sets of more than 12 repetitions are poor: Halperin et al. 2022 (row
    /// `one_rm.usable_sets`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::{EstimateOptions, SetEffort, SetEvidence, SetRefusal, TechniqueVerdict, usable_sets};
    /// use bismar::quantity::{Mass, Reps, Rir};
    ///
    /// let easy = SetEvidence {
    ///     load: Mass::from_kg(60.0)?,
    ///     reps: Reps::whole(5)?,
    ///     effort: SetEffort::Rir(Rir::new(6.0)?),
    ///     technique: TechniqueVerdict::Passed,
    ///     day: None,
    /// };
    /// let sets = usable_sets(&[easy], &EstimateOptions::default())?;
    /// assert_eq!(sets[0].refusals, [SetRefusal::TooFarFromFailure]);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn usable_sets(evidence: &[SetEvidence], options: &EstimateOptions) -> Vec<SetUse> {
        Ok(sort(evidence, options)?.0)
    }
    source: ARITHMETIC, place: "rules of the options", standing: Derived, seen: NotApplicable,
    domain: "up to 200 sets",
}

formula! {
    "one_rm.estimate",
    /// What do these sets say about the one-repetition maximum, how sure is that, and why not surer?
    ///
    /// # Formula
    /// For set `i`: `y_i = mean over equations of ln E(w_i, r_i)`, modelled as
    /// `y_i = ln 1RM + slope_i a + between_i b + habit_i c + day + own_i`. `a`, `b`, `c` and the days are unknowns with
    /// normal priors (mean 0), `ln 1RM` has none; `own_i` is normal. With `g = k / (1 + k (r - 1))` and `k` the
    /// [`typical slope`](super::TYPICAL_SLOPE): `slope_i = cv (r - 1) g`, `between_i` the standard deviation of the
    /// equations' logarithms, `habit_i` and `own_i` the error of calling reserve times `g`. The value is
    /// `exp(mean)`, the interval `exp(mean +- z sd)`, `z` the normal quantile.
    ///
    /// # Domain
    /// The usual maximum over the days given. As [`usable_sets`]. Normal spread on the logarithm; spreads are published
    /// anchors and choices, all parameters or named constants. Sets should lie close in time: strength is taken as
    /// one number.
    ///
    /// # Errors
    /// `no_usable_set` where every set is refused (ask [`usable_sets`] for the reasons); `out_of_range` for options
    /// outside their range or more than 200 sets.
    ///
    /// # Source
    /// The equations named in the options; linear model with normal priors (row `one_rm.estimate`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::{EstimateOptions, SetEffort, SetEvidence, TechniqueVerdict, estimate};
    /// use bismar::quantity::{Mass, Reps, Rpe};
    ///
    /// let set = SetEvidence {
    ///     load: Mass::from_kg(60.0)?,
    ///     reps: Reps::whole(5)?,
    ///     effort: SetEffort::Rpe(Rpe::new(7.0)?),
    ///     technique: TechniqueVerdict::Passed,
    ///     day: None,
    /// };
    /// let answer = estimate(&[set], &EstimateOptions::default())?;
    /// assert!((answer.value.value() - 73.9).abs() < 0.5);
    /// assert!(answer.interval.low() < 66.0 && answer.interval.high() > 80.0);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn estimate(evidence: &[SetEvidence], options: &EstimateOptions) -> Estimate {
        let (mut reports, sets) = sort(evidence, options)?;
        if sets.is_empty() {
            return Err(no_usable_set(&reports));
        }
        let (rows, days) = rows(&sets, options)?;
        let combined = combined(&rows, days, options.day_to_day_cv)?;
        report_weights(&mut reports, &sets, &rows, &combined, options.day_to_day_cv);
        let by_equation = options.equations.iter().map(|equation| alone(*equation, &sets, &combined.weights));
        let reach = numeric::normal::normal_reach(options.level) * combined.deviation;
        let (low, high) = (numeric::exp(combined.mean - reach), numeric::exp(combined.mean + reach));
        Ok(Estimate {
            value: Kilograms::new(numeric::exp(combined.mean))?,
            interval: Interval::new(low, high, options.level)?,
            parts: parts(&rows, days, &combined.weights, options.day_to_day_cv),
            by_equation: by_equation.collect::<Result<_, Error>>()?,
            sets: reports,
            cautions: alloc::vec![Caution::EstimateIsARange],
        })
    }
    source: ARITHMETIC, place: "linear model with normal priors over the equations named", standing: Derived,
    seen: NotApplicable, domain: "up to 200 sets, close in time",
}

fn report_weights(reports: &mut [SetUse], sets: &[UsableSet], rows: &[Row], all: &Combined, day_cv: f64) {
    for ((set, row), weight) in sets.iter().zip(rows).zip(&all.weights) {
        let Some(report) = reports.get_mut(set.at) else { continue };
        report.weight = numeric::tidy(*weight);
        if numeric::fabs(row.ln_maximum - all.mean) > FAR_OFF * row.whole_deviation(day_cv) {
            report.flags.push(SetFlag::DisagreesWithTheRest);
        }
    }
}

rows![usable_sets, estimate];
