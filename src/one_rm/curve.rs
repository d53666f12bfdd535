//! A scale-free repetition curve: the maximum is the load times a multiplier of the repetitions.

use crate::error::{Allowed, Code, Error};
use crate::numeric;
use crate::quantity::{Fraction, Kilograms, Mass, Reps};

/// The most repetitions an inverse answers with: the range of [`Reps`].
pub(super) const HIGHEST_ANSWER: f64 = 200.0;

/// A repetition that rounding put this close to 1 is 1.
const ROUNDING: f64 = 1e-9;

/// One published curve with its domain. `multiplier` rises with repetitions from 1 to `highest`.
pub(super) struct Curve {
    /// Most repetitions at which the equation means anything.
    pub(super) highest: f64,
    /// Repetitions that were measured, or that the author spoke of.
    pub(super) measured: (f64, f64),
    /// One-repetition maximum for a load of 1.
    pub(super) multiplier: fn(f64) -> f64,
    /// The repetitions with that multiplier; NaN or out of range where there are none.
    pub(super) reps: fn(f64) -> f64,
}

impl Curve {
    pub(super) const fn new(
        highest: f64,
        measured: (f64, f64),
        multiplier: fn(f64) -> f64,
        reps: fn(f64) -> f64,
    ) -> Curve {
        Curve { highest, measured, multiplier, reps }
    }

    /// The multiplier, with the domain checked.
    pub(super) fn at(&self, reps: f64) -> Result<f64, Error> {
        numeric::within(Code::RepsOutOfDomain, "reps", reps, 1.0, self.highest, "")?;
        Ok((self.multiplier)(reps))
    }

    pub(super) fn one_rm(&self, load: Mass, reps: Reps) -> Result<Kilograms, Error> {
        let multiplier = self.at(reps.value())?;
        Kilograms::new(positive(load)? * multiplier)
    }

    pub(super) fn load(&self, one_rm: Kilograms, reps: Reps) -> Result<Kilograms, Error> {
        let multiplier = self.at(reps.value())?;
        Kilograms::new(positive_maximum(one_rm)? / multiplier)
    }

    pub(super) fn reps(&self, fraction: Fraction) -> Result<f64, Error> {
        answered_reps((self.reps)(1.0 / fraction.value()), fraction.value())
    }
}

/// An inverse's answer, refused where it is not from 1 to 200 repetitions.
pub(super) fn answered_reps(reps: f64, fraction: f64) -> Result<f64, Error> {
    let reps = if numeric::fabs(reps - 1.0) < ROUNDING { 1.0 } else { reps };
    if (1.0..=HIGHEST_ANSWER).contains(&reps) {
        Ok(reps)
    } else {
        let rule = Allowed::rule("a part that the equation reaches with 1 to 200 repetitions");
        Err(Error::new(Code::PercentOutOfDomain, "fraction", fraction, rule))
    }
}

/// The repetitions at which a rising multiplier reaches `multiplier`, by halving; NaN outside `1..=highest`.
pub(super) fn by_halving(curve: impl Fn(f64) -> f64, highest: f64, multiplier: f64) -> f64 {
    /// Halvings that take any range of repetitions below the spacing of `f64`.
    const HALVINGS: u32 = 64;
    let (mut low, mut high) = (1.0, highest);
    let outside = multiplier < curve(low) * (1.0 - ROUNDING) || multiplier > curve(high) * (1.0 + ROUNDING);
    if outside || multiplier.is_nan() {
        return f64::NAN;
    }
    for _ in 0..HALVINGS {
        let middle = low + (high - low) / 2.0;
        if curve(middle) < multiplier {
            low = middle;
        } else {
            high = middle;
        }
    }
    high
}

/// A load to estimate from: above nothing.
pub(super) fn positive(load: Mass) -> Result<f64, Error> {
    if load.is_positive() {
        Ok(load.kg())
    } else {
        Err(Error::range(Code::LoadOutOfDomain, "load", load.kg(), 0.0, Mass::MAX.kg(), "kg, above 0"))
    }
}

/// A one-repetition maximum to work back from: above nothing.
pub(super) fn positive_maximum(one_rm: Kilograms) -> Result<f64, Error> {
    if one_rm.value() > 0.0 {
        Ok(one_rm.value())
    } else {
        let range =
            Error::range(Code::LoadOutOfDomain, "one_rm", one_rm.value(), 0.0, f64::MAX, "kg, above 0");
        Err(range)
    }
}
