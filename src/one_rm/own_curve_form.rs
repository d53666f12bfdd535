//! The forms a lifter's own curve may take, and what follows from a slope.

use super::curve::{HIGHEST_ANSWER, answered_reps, positive, positive_maximum};
use super::own_curve_fit::CurvePrior;
use crate::error::{Code, Error};
use crate::numeric;
use crate::quantity::{Kilograms, Mass, Reps};
use crate::source::{ARITHMETIC, OURS, constant, formula, rows};

/// The form of a lifter's own curve; both give the load itself at one repetition.
#[non_exhaustive]
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum CurveForm {
    /// `w = 1RM exp(-b (r - 1))`: best simple form for individuals (Mitter et al. 2023).
    Exponential,
    /// `1RM = w (1 + k (r - 1))`: a straight line of the estimate in repetitions.
    AnchoredLine,
}

constant! {
    "one_rm.prior_slope_exponential",
    /// Typical slope of the exponential form, as a part of the load for each repetition.
    ///
    /// # Domain
    /// Gives 80 % at 9.3 repetitions, inside what the classic equations say (7.3 to 10).
    ///
    /// # Source
    /// Our choice (row `one_rm.prior_slope_exponential`).
    pub const PRIOR_SLOPE_EXPONENTIAL: f64 = 0.027;
    source: OURS, place: "prior of the own curve", standing: OurChoice, seen: NotApplicable,
    domain: "start of the lifter's own curve",
}

constant! {
    "one_rm.first_repetition_step",
    /// How far a maximum lies above the load that a curve through longer sets gives at one repetition, as a part.
    ///
    /// # Domain
    /// Mean over the eight equations of [`EstimateOptions::EQUATIONS`](super::EstimateOptions::EQUATIONS) of what they
    /// give at one repetition, less the load: from 0 to 8.9 %.
    ///
    /// # Source
    /// Follows from the equations (row `one_rm.first_repetition_step`).
    pub const FIRST_REPETITION_STEP: f64 = 0.022;
    source: ARITHMETIC, place: "eight equations at one repetition", standing: Derived, seen: NotApplicable,
    domain: "maximum of the own curve",
}

constant! {
    "one_rm.first_repetition_spread",
    /// Standard deviation of that step over the same equations.
    ///
    /// # Source
    /// Follows from the equations (row `one_rm.first_repetition_spread`).
    pub const FIRST_REPETITION_SPREAD: f64 = 0.030;
    source: ARITHMETIC, place: "eight equations at one repetition", standing: Derived, seen: NotApplicable,
    domain: "maximum of the own curve",
}

impl CurveForm {
    /// The prior used where nothing better is known: the typical slope, with the spread between people.
    #[must_use]
    pub const fn prior(self) -> CurvePrior {
        let slope = match self {
            CurveForm::Exponential => PRIOR_SLOPE_EXPONENTIAL,
            CurveForm::AnchoredLine => super::options::TYPICAL_SLOPE,
        };
        CurvePrior { slope, cv: super::options::PERSONAL_SLOPE_CV }
    }

    /// By how much the logarithm of the load drops from one repetition to `reps`.
    pub(super) fn drop(self, reps: f64, slope: f64) -> f64 {
        match self {
            CurveForm::Exponential => slope * (reps - 1.0),
            CurveForm::AnchoredLine => numeric::ln_1p(slope * (reps - 1.0)),
        }
    }

    /// How that drop changes with the slope.
    pub(super) fn pull(self, reps: f64, slope: f64) -> f64 {
        match self {
            CurveForm::Exponential => reps - 1.0,
            CurveForm::AnchoredLine => (reps - 1.0) / (1.0 + slope * (reps - 1.0)),
        }
    }

    /// The repetitions at which the drop is that large.
    fn reps_after(self, drop: f64, slope: f64) -> f64 {
        match self {
            CurveForm::Exponential => 1.0 + drop / slope,
            CurveForm::AnchoredLine => 1.0 + numeric::exp_m1(drop) / slope,
        }
    }
}

/// A slope that a lifter can have.
fn slope_in_range(slope: f64) -> Result<f64, Error> {
    numeric::within(Code::OutOfRange, "slope", slope, 0.001, 0.5, "a repetition")
}

fn reps_in_range(reps: Reps) -> Result<f64, Error> {
    numeric::within(Code::RepsOutOfDomain, "reps", reps.value(), 1.0, HIGHEST_ANSWER, "")
}

formula! {
    "one_rm.own_curve_one_rm",
    /// What could this lifter lift once, from a set to failure and the slope of the own curve?
    ///
    /// # Formula
    /// Exponential `E = w exp(b (r - 1))`; anchored line `E = w (1 + k (r - 1))`.
    ///
    /// # Domain
    /// Slopes from 0.001 to 0.5 a repetition; best within the repetitions the curve was fitted on.
    ///
    /// # Errors
    /// `out_of_range` for the slope; `reps_out_of_domain` below 1; `load_out_of_domain` at or below 0 kg;
    /// `not_finite` where the result would be.
    ///
    /// # Source
    /// Follows from the form (row `one_rm.own_curve_one_rm`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::{CurveForm, own_curve_one_rm};
    /// use bismar::quantity::{Mass, Reps};
    ///
    /// let set = (Mass::from_kg(80.0)?, Reps::whole(10)?);
    /// let estimate = own_curve_one_rm(CurveForm::AnchoredLine, 0.25 / 9.0, set.0, set.1)?;
    /// assert!((estimate.value() - 100.0).abs() < 1e-9);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn own_curve_one_rm(form: CurveForm, slope: f64, load: Mass, reps: Reps) -> Result<Kilograms, Error> {
        let (slope, reps) = (slope_in_range(slope)?, reps_in_range(reps)?);
        Kilograms::new(positive(load)? * numeric::exp(form.drop(reps, slope)))
    }
    source: ARITHMETIC, place: "the form solved for the maximum", standing: Derived, seen: NotApplicable,
    domain: "slopes from 0.001 to 0.5",
}

formula! {
    "one_rm.own_curve_load",
    /// What load can this lifter lift this often to failure?
    ///
    /// # Formula
    /// Exponential `w = E exp(-b (r - 1))`; anchored line `w = E / (1 + k (r - 1))`.
    ///
    /// # Domain
    /// As [`own_curve_one_rm`].
    ///
    /// # Errors
    /// `out_of_range` for the slope; `reps_out_of_domain` below 1; `load_out_of_domain` where the maximum is at or below
    /// 0 kg.
    ///
    /// # Source
    /// Follows from the form (row `one_rm.own_curve_load`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::{CurveForm, own_curve_load};
    /// use bismar::quantity::{Kilograms, Reps};
    ///
    /// let load = own_curve_load(CurveForm::Exponential, 0.027, Kilograms::new(100.0)?, Reps::whole(5)?)?;
    /// assert!((load.value() - 89.76).abs() < 0.005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn own_curve_load(form: CurveForm, slope: f64, one_rm: Kilograms, reps: Reps) -> Result<Kilograms, Error> {
        let (slope, reps) = (slope_in_range(slope)?, reps_in_range(reps)?);
        Kilograms::new(positive_maximum(one_rm)? * numeric::exp(-form.drop(reps, slope)))
    }
    source: ARITHMETIC, place: "the form solved for the load", standing: Derived, seen: NotApplicable,
    domain: "slopes from 0.001 to 0.5",
}

formula! {
    "one_rm.own_curve_reps",
    /// How often can this lifter lift this load, to failure?
    ///
    /// # Formula
    /// Exponential `r = 1 + ln(E / w) / b`; anchored line `r = 1 + (E / w - 1) / k`.
    ///
    /// # Domain
    /// As [`own_curve_one_rm`]; loads up to the maximum.
    ///
    /// # Errors
    /// `out_of_range` for the slope; `load_out_of_domain` where load or maximum is at or below 0 kg;
    /// `percent_out_of_domain` where there is no answer from 1 to 200 repetitions.
    ///
    /// # Source
    /// Follows from the form (row `one_rm.own_curve_reps`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::{CurveForm, own_curve_reps};
    /// use bismar::quantity::{Kilograms, Mass};
    ///
    /// let reps = own_curve_reps(CurveForm::AnchoredLine, 0.025, Kilograms::new(100.0)?, Mass::from_kg(80.0)?)?;
    /// assert!((reps - 11.0).abs() < 1e-9);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn own_curve_reps(form: CurveForm, slope: f64, one_rm: Kilograms, load: Mass) -> Result<f64, Error> {
        let slope = slope_in_range(slope)?;
        let (load, one_rm) = (positive(load)?, positive_maximum(one_rm)?);
        answered_reps(form.reps_after(numeric::ln(one_rm / load), slope), load / one_rm)
    }
    source: ARITHMETIC, place: "the form solved for repetitions", standing: Derived, seen: NotApplicable,
    domain: "slopes from 0.001 to 0.5, loads up to the maximum",
}

formula! {
    "one_rm.own_slope",
    /// What slope follows from one set to failure and a known one-repetition maximum?
    ///
    /// # Formula
    /// Exponential `b = ln(E / w) / (r - 1)`; anchored line `k = (E / w - 1) / (r - 1)`.
    ///
    /// # Domain
    /// More than one repetition; a load below the maximum. One set says little: prefer
    /// [`own_curve`](super::own_curve()).
    ///
    /// # Errors
    /// `reps_out_of_domain` at or below 1 repetition; `load_out_of_domain` unless `0 < w < E`.
    ///
    /// # Source
    /// Follows from the form (row `one_rm.own_slope`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::{CurveForm, own_slope};
    /// use bismar::quantity::{Kilograms, Mass, Reps};
    ///
    /// let set = (Mass::from_kg(80.0)?, Reps::whole(10)?);
    /// let slope = own_slope(CurveForm::AnchoredLine, Kilograms::new(100.0)?, set.0, set.1)?;
    /// assert!((slope - 0.02778).abs() < 0.000_005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn own_slope(form: CurveForm, one_rm: Kilograms, load: Mass, reps: Reps) -> Result<f64, Error> {
        let (load, one_rm) = (positive(load)?, positive_maximum(one_rm)?);
        let further = reps_in_range(reps)? - 1.0;
        if further <= 0.0 {
            return Err(Error::range(Code::RepsOutOfDomain, "reps", reps.value(), 1.0, HIGHEST_ANSWER, "(above 1)"));
        }
        if load >= one_rm {
            return Err(Error::range(Code::LoadOutOfDomain, "load", load, 0.0, one_rm, "kg, ends excluded"));
        }
        let rise = match form {
            CurveForm::Exponential => numeric::ln(one_rm / load),
            CurveForm::AnchoredLine => one_rm / load - 1.0,
        };
        numeric::finite("slope", rise / further)
    }
    source: ARITHMETIC, place: "the form solved for the slope", standing: Derived, seen: NotApplicable,
    domain: "more than 1 repetition, a load below the maximum",
}

rows![
    PRIOR_SLOPE_EXPONENTIAL,
    FIRST_REPETITION_STEP,
    FIRST_REPETITION_SPREAD,
    own_curve_one_rm,
    own_curve_load,
    own_curve_reps,
    own_slope
];
