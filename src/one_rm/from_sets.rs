//! What sets say about the one-repetition maximum, how sure that is, and where the doubt comes from.
//!
//! Every set gives the mean of its equations (of their logarithms). What all sets share (the lifter's own slope,
//! the standing of the equations against each other, the lifter's habit of calling reserve, the day) is an
//! unknown of its own with a stated spread, so that a heavy set near failure counts for more than a long easy one,
//! and more sets of one day do not make the day go away.

use alloc::vec::Vec;

use super::equation::Equation;
use super::evidence::{SetEvidence, SetFlag, SetRefusal, SetUse, UsableSet, sort_set};
use super::options::EstimateOptions;
use super::posterior::Observations;
use super::set_row::{Row, rows};
use crate::caution::Caution;
use crate::error::{Allowed, Code, Error};
use crate::numeric;
use crate::quantity::{Interval, Kilograms};
use crate::source::{ARITHMETIC, formula, rows};

/// Shares of the variance behind the interval; they add up to 1.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
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
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
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
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct Estimate {
    /// The estimate.
    pub value: Kilograms,
    /// Where the usual maximum lies, in kg. Its upper end counts in full what people leave without saying so.
    pub interval: Interval,
    /// By which part of the maximum that moves the upper end: 0 where nothing was called, or the bias covers it.
    pub left_unsaid: f64,
    /// Where the width comes from.
    pub parts: WidthParts,
    /// Every chosen equation on its own.
    pub by_equation: Vec<EquationEstimate>,
    /// What became of every set, in the order given.
    pub sets: Vec<SetUse>,
    /// What to show beside it.
    pub cautions: Vec<Caution>,
}

impl Estimate {
    /// Standard error of the estimate in kg: half the width of the interval over the normal quantile of its level, as the
    /// filters of [`condition`](crate::condition) take it. It is not the same as the width to one side, since the interval
    /// is one of the logarithm, and its upper end counts what people leave.
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::{EstimateOptions, SetEffort, SetEvidence, TechniqueVerdict, estimate};
    /// use bismar::quantity::{Mass, Reps, Rir};
    ///
    /// let effort = SetEffort::Rir(Rir::new(2.0)?);
    /// let set = SetEvidence::new(Mass::from_kg(60.0)?, Reps::whole(5)?, effort, TechniqueVerdict::Passed);
    /// let estimate = estimate(&[set], &EstimateOptions::default())?;
    /// assert!(estimate.standard_error() > 0.0 && estimate.standard_error() < estimate.interval.width() / 3.9);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    #[must_use]
    pub fn standard_error(&self) -> f64 {
        self.interval.width() / (2.0 * numeric::normal::normal_reach(self.interval.level()))
    }
}

/// Sets in one estimate at most.
const MOST_SETS: usize = 200;

/// A set further off than this many of its own standard deviations is flagged (our choice).
const FAR_OFF: f64 = 3.0;

/// The unknowns in order: maximum, slope, standing of the equations, habit of calling; then one a day.
const SHARED: usize = 4;

/// Mean, standard deviation and weights of the logarithm of the maximum.
pub(super) struct Combined {
    pub(super) mean: f64,
    pub(super) deviation: f64,
    pub(super) weights: Vec<f64>,
}

pub(super) fn combined(rows: &[Row], days: usize, day_cv: f64) -> Result<Combined, Error> {
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
    /// `highest_reps` to failure, done and called, no load, no repetition, no equation that answers; those of
    /// [`Equation::runs_away_above`] do not beyond 15. Flagged: see [`SetFlag`].
    ///
    /// # Domain
    /// Up to 200 sets. By default sets of up to 15 repetitions to failure with at most 4 in reserve; more than 10 done and
    /// more than 12 to failure are flagged.
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
    /// let easy = SetEvidence::new(Mass::from_kg(60.0)?, Reps::whole(5)?, SetEffort::Rir(Rir::new(6.0)?), TechniqueVerdict::Passed);
    /// let sets = usable_sets(&[easy], &EstimateOptions::default())?;
    /// assert_eq!(sets[0].refusals, [SetRefusal::TooFarFromFailure]);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn usable_sets(evidence: &[SetEvidence], options: &EstimateOptions) -> Result<Vec<SetUse>, Error> {
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
    /// equations' logarithms, `habit_i` and `own_i` the spread of calling reserve times `g`. The value is
    /// `exp(mean)`, the interval from `exp(mean - z sd)` to `exp(mean + z sd + u)`, `z` the normal quantile, `u` what people
    /// leave without saying so: the printed mean error of a call (0.95 repetitions; in sets of more than 12 to failure 2.05
    /// at 1 in reserve to 5.15 at 5; 2.55 who is new to the lift) less the bias of the options, times `g` and the weights of
    /// the sets. It raises no value: nobody lifts more for a habit that is only likely.
    ///
    /// # Domain
    /// The usual maximum over the days given. As [`usable_sets`]. Normal spread on the logarithm; spreads are published
    /// ones, all parameters or named constants. Sets should lie close in time: strength is taken as one number. Past 15
    /// repetitions to failure there is no number: at 16 to 20 the equations said from 8 % too little to 67 % too much.
    ///
    /// How often an interval of 95 % from one set held the maximum, in worlds drawn from printed numbers: 99 % of sets on a leg
    /// press at 80 %, 91 % of long ones called at 1 in reserve and 87 % called at 3 (the maximum lay above), 92 % of
    /// untrained people where `new_to_lift` said so and 47 % where it did not. On an arm curl single sets scatter twice as
    /// much as this.
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
    /// let set = SetEvidence::new(Mass::from_kg(60.0)?, Reps::whole(5)?, SetEffort::Rpe(Rpe::new(7.0)?), TechniqueVerdict::Passed);
    /// let answer = estimate(&[set], &EstimateOptions::default())?;
    /// assert!((answer.value.value() - 73.9).abs() < 0.5);
    /// assert!(answer.interval.low() < 66.0 && answer.interval.high() > 80.0);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn estimate(evidence: &[SetEvidence], options: &EstimateOptions) -> Result<Estimate, Error> {
        let (mut reports, sets) = sort(evidence, options)?;
        if sets.is_empty() {
            return Err(no_usable_set(&reports));
        }
        let (rows, days) = rows(&sets, options)?;
        let combined = combined(&rows, days, options.day_to_day_cv)?;
        report_weights(&mut reports, &sets, &rows, &combined, options.day_to_day_cv);
        let by_equation = options.equations.iter().map(|equation| alone(*equation, &sets, &combined.weights));
        let reach = numeric::normal::normal_reach(options.level) * combined.deviation;
        let unsaid = rows.iter().zip(&combined.weights).map(|(row, weight)| weight * row.unsaid).sum::<f64>();
        // Longer sets may weigh against shorter ones; what is left unsaid never lowers the upper end.
        let unsaid = numeric::tidy(numeric::larger(unsaid, 0.0));
        let (low, high) = (numeric::exp(combined.mean - reach), numeric::exp(combined.mean + reach + unsaid));
        Ok(Estimate {
            value: Kilograms::new(numeric::exp(combined.mean))?,
            interval: Interval::new(low, high, options.level)?,
            left_unsaid: numeric::finite("evidence", numeric::exp_m1(unsaid))?,
            parts: parts(&rows, days, &combined.weights, options.day_to_day_cv),
            by_equation: by_equation.collect::<Result<_, Error>>()?,
            sets: reports,
            cautions: cautions(options),
        })
    }
    source: ARITHMETIC, place: "linear model with normal priors over the equations named", standing: Derived,
    seen: NotApplicable, domain: "up to 200 sets, close in time",
}

fn cautions(options: &EstimateOptions) -> Vec<Caution> {
    let mut cautions = alloc::vec![Caution::EstimateIsARange];
    if options.new_to_lift {
        cautions.push(Caution::NewToTheLift);
    }
    cautions
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
