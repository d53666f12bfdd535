//! The lifter's own curve: fitted from own sets, drawn towards a stated prior, in doubt saying so.
//!
//! The unknowns are the logarithm of the maximum, the slope, the step of the first repetition, the habit of calling
//! reserve and the days. A set that
//! lies off loses weight (Huber's rule), so that one typing error does not move the curve far.

use alloc::vec::Vec;

use derive_setters::Setters;

use super::evidence::{SetEvidence, SetUse, UsableSet};
use super::from_sets::sort;
use super::options::EstimateOptions;
use super::own_curve_form::{CurveForm, FIRST_REPETITION_SPREAD, FIRST_REPETITION_STEP};
use super::posterior::{Observations, Posterior, Prior};
use super::set_row::{Row, rows};
use crate::error::{Allowed, Code, Error};
use crate::numeric;
use crate::quantity::{Interval, Kilograms};
use crate::source::{Source, formula, rows};

const MITTER_2023: Source = Source {
    id: "mitter-2023",
    citation: "Mitter B, Zhang L, Bauer P, Baca A, Tschan H. Modelling the relationship between load and repetitions to failure in resistance training: a Bayesian analysis. Eur J Sport Sci 2023;23:1203-1213",
    doi: Some("10.1080/17461391.2022.2089915"),
};

/// What is believed of the slope before this lifter's sets are seen: a normal spread around `slope`.
#[derive(Clone, Copy, Debug, PartialEq, Setters)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, rename_all = "snake_case")
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct CurvePrior {
    /// Typical slope a repetition.
    pub slope: f64,
    /// Coefficient of variation between people.
    pub cv: f64,
}

impl CurvePrior {
    /// That slope, with that coefficient of variation.
    #[must_use]
    pub fn new(slope: f64, cv: f64) -> CurvePrior {
        CurvePrior { slope, cv }
    }
}

impl CurvePrior {
    fn check(&self) -> Result<(), Error> {
        numeric::within(Code::OutOfRange, "slope", self.slope, 0.001, 0.5, "a repetition")?;
        numeric::within(Code::OutOfRange, "cv", self.cv, 0.01, 10.0, "")?;
        Ok(())
    }

    fn deviation(&self) -> f64 {
        self.slope * self.cv
    }
}

/// A lifter's own curve.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct OwnCurve {
    /// Its form.
    pub form: CurveForm,
    /// The maximum: the anchor with the step of the first repetition.
    pub one_rm: Kilograms,
    /// Where it lies, in kg.
    pub one_rm_interval: Interval,
    /// Load that the curve gives at one repetition: what loads for repetitions are worked out from.
    pub anchor: Kilograms,
    /// Slope a repetition.
    pub slope: f64,
    /// Where the slope lies.
    pub slope_interval: Interval,
    /// How much of the prior's variance of the slope the own sets removed: 0 nothing, 1 everything.
    pub learned: f64,
    /// Used sets beside the curve, divided by their stated spread: root mean square. Above 1 the intervals are
    /// widened by it.
    pub scatter: f64,
    /// What became of every set; the weight is 1 for a set on the curve and falls for one that lies off.
    pub sets: Vec<SetUse>,
}

/// Fewest sets, and the least distance between the shortest and the longest, in repetitions to failure.
const ENOUGH: (usize, f64) = (3, 3.0);

/// Residuals beyond this many of their spreads lose weight (Huber's rule at 95 % efficiency for normal noise).
const HUBER: f64 = 1.345;

/// Rounds of reweighting and of following the bend of the curve.
const ROUNDS: u32 = 500;

/// A curve is made straight at this slope at least.
const LEAST_SLOPE: f64 = 0.001;

/// Rounds end when no unknown moves by more than this part of its spread.
const SETTLED: f64 = 1e-9;

/// Sets in a form ready to fit.
struct Fitting<'a> {
    form: CurveForm,
    prior: CurvePrior,
    sets: &'a [UsableSet],
    rows: &'a [Row],
    days: usize,
    day_cv: f64,
}

/// Where the rounds stand.
struct Standing {
    slope: f64,
    weights: Vec<f64>,
    residuals: Vec<f64>,
    posterior: Posterior,
}

impl Standing {
    fn falling(self) -> Result<Standing, Error> {
        if self.slope > 0.0 {
            return Ok(self);
        }
        let rule = Allowed::rule("sets whose loads fall as repetitions rise");
        Err(Error::new(Code::OutOfRange, "slope", self.slope, rule))
    }
}

impl Fitting<'_> {
    fn priors(&self) -> Vec<Prior> {
        let slope = Some((self.prior.slope, self.prior.deviation()));
        let step = Some((FIRST_REPETITION_STEP, FIRST_REPETITION_SPREAD));
        let mut priors = alloc::vec![None, slope, Some((0.0, 1.0)), step];
        priors.extend((0..self.days).map(|_| Some((0.0, 1.0))));
        priors
    }

    fn coefficients(&self, set: &UsableSet, row: &Row, slope: f64) -> Vec<f64> {
        let step = if set.is_maximum { 0.0 } else { -1.0 };
        // The curve has no side to its interval: what is left unsaid counts as part of the habit's spread.
        let habit = numeric::sqrt(row.habit * row.habit + row.unsaid * row.unsaid);
        let mut all = alloc::vec![1.0, -self.form.pull(set.to_failure, slope), habit, step];
        all.extend((0..self.days).map(|day| if day == row.day { self.day_cv } else { 0.0 }));
        all
    }

    /// One weighted fit of the curve made straight at `slope`.
    fn fit(&self, slope: f64, weights: &[f64]) -> Result<Standing, Error> {
        let mut observations = Observations::new(&self.priors());
        let mut straight = Vec::with_capacity(self.sets.len());
        for ((set, row), weight) in self.sets.iter().zip(self.rows).zip(weights) {
            let bend = self.form.drop(set.to_failure, slope) - self.form.pull(set.to_failure, slope) * slope;
            let (coefficients, value) = (self.coefficients(set, row, slope), numeric::ln(set.load) + bend);
            observations.observe(&coefficients, value, row.own_deviation() / numeric::sqrt(*weight));
            straight.push((coefficients, value, row.own_deviation()));
        }
        let posterior = observations.posterior()?;
        let residual = |(coefficients, value, deviation): &(Vec<f64>, f64, f64)| {
            let fitted: f64 = coefficients.iter().zip(&posterior.means).map(|(c, mean)| c * mean).sum();
            (value - fitted) / deviation
        };
        let residuals: Vec<f64> = straight.iter().map(residual).collect();
        let slope = posterior.means.get(1).copied().unwrap_or(f64::NAN);
        let weights = residuals.iter().map(|residual| huber(*residual)).collect();
        Ok(Standing { slope, weights, residuals, posterior })
    }

    fn settled(&self) -> Result<Standing, Error> {
        let mut standing = self.fit(self.prior.slope, &alloc::vec![1.0; self.sets.len()])?;
        for _ in 0..ROUNDS {
            // On the way, before a wild set has lost its weight, the slope may pass through nothing.
            let slope = numeric::larger(standing.slope, LEAST_SLOPE);
            let next = self.fit(slope, &standing.weights)?;
            if self.distance(&standing, &next) < SETTLED {
                return next.falling();
            }
            standing = next;
        }
        Err(Error::plain(Code::DidNotConverge, "evidence"))
    }

    /// Largest move of the slope or of a residual, in their own spreads.
    fn distance(&self, before: &Standing, after: &Standing) -> f64 {
        let slope = numeric::fabs(after.slope - before.slope) / self.prior.deviation();
        let moves = before.residuals.iter().zip(&after.residuals).map(|(a, b)| numeric::fabs(b - a));
        moves.fold(slope, numeric::larger)
    }
}

fn huber(residual: f64) -> f64 {
    let size = numeric::fabs(residual);
    if size <= HUBER { 1.0 } else { HUBER / size }
}

/// Whether the sets can tell a slope at all.
fn enough(sets: &[UsableSet], given: usize) -> Result<(), Error> {
    let reps = || sets.iter().map(|set| set.to_failure);
    let span = reps().fold(f64::MIN, numeric::larger) - reps().fold(f64::MAX, numeric::smaller);
    if sets.len() >= ENOUGH.0 && span >= ENOUGH.1 {
        return Ok(());
    }
    let rule = Allowed::rule("3 usable sets, at least 3 repetitions to failure apart");
    Err(Error::new(Code::NotEnoughData, "evidence", given, rule))
}

formula! {
    "one_rm.own_curve",
    /// What is this lifter's own curve of repetitions and load, and how sure is it?
    ///
    /// # Formula
    /// Exponential: `ln w = ln A - b (r - 1)`. Anchored line: `ln w = ln A - ln(1 + k (r - 1))`. `A` is the anchor;
    /// `ln 1RM = ln A + step`, the step of the first repetition being an unknown with the spread of the published
    /// equations ([`FIRST_REPETITION_STEP`](super::FIRST_REPETITION_STEP)), seen only by sets of one. The slope has a
    /// normal prior, the habit of calling reserve and each day are unknowns as in [`estimate`](super::estimate), own
    /// noise is that of the estimate; residuals beyond 1.345 spreads lose weight (Huber's rule). The interval is normal,
    /// from the spread at the last round, widened where sets scatter more than stated.
    ///
    /// # Domain
    /// At least three usable sets at least three repetitions to failure apart; else it says so. One prior for all
    /// lifts and people by default: state your own where you know better. `learned` tells how much the sets added.
    ///
    /// # Errors
    /// `not_enough_data`; `out_of_range` for a prior or options outside their range, more than 200 sets, or sets whose
    /// loads rise with repetitions; `did_not_converge`.
    ///
    /// # Source
    /// Form: Mitter et al. 2023, abstract; fit and prior are ours (row `one_rm.own_curve`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::{CurveForm, EstimateOptions, SetEffort, SetEvidence, TechniqueVerdict, own_curve};
    /// use bismar::quantity::{Mass, Reps};
    ///
    /// let set = |kg, reps| {
    ///     Ok::<_, bismar::Error>(SetEvidence::new(Mass::from_kg(kg)?, Reps::whole(reps)?, SetEffort::Failure, TechniqueVerdict::Passed))
    /// };
    /// let sets = [set(95.0, 2)?, set(85.0, 5)?, set(75.0, 9)?, set(70.0, 11)?];
    /// let form = CurveForm::Exponential;
    /// let curve = own_curve(&sets, form, form.prior(), &EstimateOptions::default())?;
    /// assert!((curve.anchor.value() - 98.0).abs() < 1.0);
    /// assert!(curve.learned > 0.5);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn own_curve(
        evidence: &[SetEvidence], form: CurveForm, prior: CurvePrior, options: &EstimateOptions
    ) -> Result<OwnCurve, Error> {
        prior.check().map_err(|error| error.within("prior"))?;
        let (mut reports, sets) = sort(evidence, options)?;
        enough(&sets, evidence.len())?;
        let (rows, days) = rows(&sets, options)?;
        let day_cv = options.day_to_day_cv;
        let fitting = Fitting { form, prior, sets: &sets, rows: &rows, days, day_cv };
        let standing = fitting.settled()?;
        for (set, weight) in sets.iter().zip(&standing.weights) {
            if let Some(report) = reports.get_mut(set.at) {
                report.weight = *weight;
            }
        }
        finished(&fitting, &standing, options.level, reports)
    }
    source: MITTER_2023, place: "the form, from the abstract; prior and fit are ours", standing: Derived, seen: NotApplicable,
    population: "30 people, pin press at 90, 80 and 70 %; here the lifter's own sets",
    domain: "3 usable sets or more, 3 repetitions to failure apart", error: "R2 0.97 to 0.98 for individual curves",
}

fn finished(
    fitting: &Fitting<'_>,
    standing: &Standing,
    level: f64,
    sets: Vec<SetUse>,
) -> Result<OwnCurve, Error> {
    let weighted = standing.residuals.iter().zip(&standing.weights).map(|(z, weight)| weight * z * z);
    let scatter = numeric::sqrt(weighted.sum::<f64>() / standing.residuals.len() as f64);
    let reach = numeric::normal::normal_reach(level) * numeric::larger(scatter, 1.0);
    let of = |list: &[f64], at: usize| list.get(at).copied().unwrap_or(f64::NAN);
    let spread = |at| reach * numeric::sqrt(of(&standing.posterior.variances, at));
    let ln_one_rm = of(&standing.posterior.means, 0);
    let step = of(&standing.posterior.means, 3);
    let prior_variance = fitting.prior.deviation() * fitting.prior.deviation();
    Ok(OwnCurve {
        form: fitting.form,
        one_rm: Kilograms::new(numeric::exp(ln_one_rm))?,
        one_rm_interval: Interval::new(
            numeric::exp(ln_one_rm - spread(0)),
            numeric::exp(ln_one_rm + spread(0)),
            level,
        )?,
        anchor: Kilograms::new(numeric::exp(ln_one_rm - step))?,
        slope: numeric::finite("slope", standing.slope)?,
        slope_interval: Interval::new(standing.slope - spread(1), standing.slope + spread(1), level)?,
        learned: numeric::finite("learned", 1.0 - of(&standing.posterior.variances, 1) / prior_variance)?,
        scatter: numeric::finite("scatter", scatter)?,
        sets,
    })
}

rows![own_curve];
