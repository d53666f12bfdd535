//! The shapes that published decline takes, and carrying one person's strength along them.
//!
//! Every shape is relative: it says what part of the strength at its start is left at an age. Strength is carried
//! from one age to another by the difference of two logarithms, so that forward and back are exact inverses.

use alloc::vec::Vec;

use super::{Age, AnnualLoss};
use crate::error::{Allowed, Code, Error};
use crate::numeric;

/// A yearly loss that holds between two ages.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct LossBand {
    /// First age.
    pub from: Age,
    /// Last age.
    pub to: Age,
    /// Part of the present strength lost in each year.
    pub loss: AnnualLoss,
}

/// A strength at an age, as tables and centile curves give it.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct AgePoint {
    /// The age.
    pub age: Age,
    /// Strength there, above 0, in any unit; only its ratio to the other points counts.
    pub strength: f64,
}

/// A course of strength over age.
///
/// Percent of what is left (compound) and percent of the strength at the start (line) are never mixed: at 2 % they
/// differ by 7 points of the starting strength after 20 years.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(rename_all = "snake_case", deny_unknown_fields)
)]
pub enum Curve {
    /// A part of the present strength each year, by bands of age that join without a gap.
    Compound(Vec<LossBand>),
    /// A yearly loss that rises in a straight line with age: a quadratic in the logarithm of strength.
    RisingLoss {
        /// First age.
        from: Age,
        /// Yearly loss there.
        from_loss: AnnualLoss,
        /// Last age.
        to: Age,
        /// Yearly loss there.
        to_loss: AnnualLoss,
    },
    /// The same amount each year: a part of the strength at the first age.
    Line {
        /// First age; a change point, for instance.
        from: Age,
        /// Last age.
        to: Age,
        /// Part of the strength at `from` lost in each year.
        loss: AnnualLoss,
    },
    /// `1 - linear t - square t^2`, with `t` years after the first age.
    Quadratic {
        /// First age.
        from: Age,
        /// Last age.
        to: Age,
        /// Part of the strength at `from`, for each year; 0 to 1.
        linear: f64,
        /// Part of the strength at `from`, for each year squared; 0 to 1.
        square: f64,
    },
    /// `1 - exp((age - zero) / time_constant)`: slow at first, then ever faster, to nothing at the age `zero`.
    Saturating {
        /// First age.
        from: Age,
        /// Age at which nothing is left.
        zero: Age,
        /// Time constant in years, above 0.
        time_constant: f64,
    },
    /// A table or centile curve, read between its points in a straight line.
    Points(Vec<AgePoint>),
}

impl Curve {
    /// First and last age.
    ///
    /// # Errors
    /// `curve_broken` if there are none, or the first is not below the last.
    pub fn ages(&self) -> Result<(Age, Age), Error> {
        let ends = match self {
            Curve::Compound(bands) => {
                bands.first().zip(bands.last()).map(|(first, last)| (first.from, last.to))
            }
            Curve::Points(points) => {
                points.first().zip(points.last()).map(|(first, last)| (first.age, last.age))
            }
            Curve::RisingLoss { from, to, .. }
            | Curve::Line { from, to, .. }
            | Curve::Quadratic { from, to, .. } => Some((*from, *to)),
            Curve::Saturating { from, zero, .. } => Some((*from, *zero)),
        };
        ends.filter(|(from, to)| from < to).ok_or_else(|| broken("a first age below the last"))
    }

    /// Natural logarithm of the part left at an age.
    fn log_left(&self, field: &'static str, age: Age) -> Result<f64, Error> {
        let (from, to) = self.ages()?;
        if age < from || age > to {
            let (low, high) = (from.years(), to.years());
            return Err(Error::range(Code::AgeOutOfDomain, field, age.years(), low, high, "years"));
        }
        let after = age.years() - from.years();
        match self {
            Curve::Compound(bands) => compound(bands, age),
            Curve::RisingLoss { from_loss, to_loss, .. } => {
                let rise = (to_loss.value() - from_loss.value()) / (2.0 * (to.years() - from.years()));
                Ok(-(from_loss.value() * after + rise * after * after))
            }
            Curve::Line { loss, .. } => left(field, age, 1.0 - loss.value() * after),
            Curve::Quadratic { linear, square, .. } => {
                let linear = numeric::within(Code::OutOfRange, "linear", *linear, 0.0, 1.0, "a year")?;
                let square =
                    numeric::within(Code::OutOfRange, "square", *square, 0.0, 1.0, "a year squared")?;
                left(field, age, 1.0 - linear * after - square * after * after)
            }
            Curve::Saturating { zero, time_constant, .. } => {
                let constant = above_zero("time_constant", *time_constant)?;
                left(field, age, 1.0 - numeric::exp((age.years() - zero.years()) / constant))
            }
            Curve::Points(points) => between_points(points, age),
        }
    }

    /// Natural logarithm of strength at `to` over strength at `from`; the ages may come in either order.
    pub(super) fn log_change(&self, from: Age, to: Age) -> Result<f64, Error> {
        Ok(self.log_left("to", to)? - self.log_left("from", from)?)
    }
}

fn broken(rule: &'static str) -> Error {
    Error::new(Code::CurveBroken, "curve", crate::error::Given::Nothing, Allowed::rule(rule))
}

/// Largest strength taken, in any unit: far beyond newtons on any machine.
const STRONGEST: f64 = 1e6;

/// A finite number above 0.
pub(super) fn above_zero(field: &'static str, value: f64) -> Result<f64, Error> {
    let value = numeric::within(Code::OutOfRange, field, value, 0.0, STRONGEST, "above 0")?;
    if value > 0.0 {
        Ok(value)
    } else {
        Err(Error::range(Code::OutOfRange, field, value, 0.0, STRONGEST, "above 0"))
    }
}

pub(super) fn left(field: &'static str, age: Age, part: f64) -> Result<f64, Error> {
    if part > 0.0 {
        Ok(numeric::ln(part))
    } else {
        let rule = Allowed::rule("an age at which the curve has strength left");
        Err(Error::new(Code::StrengthUsedUp, field, age.years(), rule))
    }
}

fn compound(bands: &[LossBand], age: Age) -> Result<f64, Error> {
    let mut log = 0.0;
    let mut reached = bands.first().map(|band| band.from);
    for band in bands {
        let joined = reached.is_some_and(|end| end.years().total_cmp(&band.from.years()).is_eq());
        if !joined || band.to <= band.from {
            return Err(broken("bands that follow one another without gap or overlap"));
        }
        let years = numeric::smaller(age.years(), band.to.years()) - band.from.years();
        if years > 0.0 {
            log += years * numeric::ln_1p(-band.loss.value());
        }
        reached = Some(band.to);
    }
    Ok(log)
}

fn between_points(points: &[AgePoint], age: Age) -> Result<f64, Error> {
    let mut found = None;
    for pair in points.windows(2) {
        let [lower, upper] = pair else { continue };
        let low = above_zero("strength", lower.strength)?;
        let high = above_zero("strength", upper.strength)?;
        if upper.age <= lower.age {
            return Err(broken("points in order of age"));
        }
        if found.is_none() && age <= upper.age {
            let share = (age.years() - lower.age.years()) / (upper.age.years() - lower.age.years());
            found = Some(low + share * (high - low));
        }
    }
    found.map(numeric::ln).ok_or_else(|| broken("at least two points"))
}

/// Two ages in order.
pub(super) fn in_order(earlier: Age, later: Age) -> Result<(), Error> {
    if later < earlier {
        let rule = Allowed::rule("the later age at or after the earlier one");
        return Err(Error::new(Code::AgesReversed, "later", later.years(), rule));
    }
    Ok(())
}

fn carried(strength: f64, from: Age, to: Age, curve: &Curve) -> Result<f64, Error> {
    let strength = above_zero("strength", strength)?;
    numeric::finite("strength", strength * numeric::exp(curve.log_change(from, to)?))
}

formula! {
    "horizon.carried_forward",
    /// What is left at a later age of a strength measured now, along one curve?
    ///
    /// # Formula
    /// `S(b) = S(a) f(b) / f(a)`; `f` the part left at an age by the curve, `a` the earlier age, `b` the later.
    ///
    /// # Domain
    /// Ages of the curve. Any unit of strength. Arithmetic over a curve, not a prognosis.
    ///
    /// # Errors
    /// `ages_reversed`; `age_out_of_domain` outside the curve; `curve_broken`; `strength_used_up`;
    /// `out_of_range` for a strength at or below 0.
    ///
    /// # Source
    /// Arithmetic (row `horizon.carried_forward`).
    ///
    /// # Examples
    /// ```
    /// use bismar::horizon::{Age, AnnualLoss, Curve, LossBand, carried_forward};
    ///
    /// let band = LossBand { from: Age::new(70.0)?, to: Age::new(90.0)?, loss: AnnualLoss::new(0.026)? };
    /// let left = carried_forward(40.0, Age::new(70.0)?, Age::new(85.0)?, &Curve::Compound(vec![band]))?;
    /// assert!((left - 26.94).abs() < 0.005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn carried_forward(strength: f64, earlier: Age, later: Age, curve: &Curve) -> f64 {
        in_order(earlier, later)?;
        carried(strength, earlier, later, curve)
    }
    source: ARITHMETIC, place: "ratio of two values of the curve", standing: Derived, seen: NotApplicable,
    population: "that of the curve given", domain: "ages of the curve given",
}

formula! {
    "horizon.carried_back",
    /// What strength at an earlier age leaves this strength at a later one? The exact inverse of carrying forward.
    ///
    /// # Formula
    /// `S(a) = S(b) f(a) / f(b)`; `f` the part left at an age by the curve, `a` the earlier age, `b` the later.
    ///
    /// # Domain
    /// Ages of the curve. Any unit of strength.
    ///
    /// # Errors
    /// `ages_reversed`; `age_out_of_domain` outside the curve; `curve_broken`; `strength_used_up`;
    /// `out_of_range` for a strength at or below 0.
    ///
    /// # Source
    /// Arithmetic (row `horizon.carried_back`).
    ///
    /// # Examples
    /// ```
    /// use bismar::horizon::{Age, AnnualLoss, Curve, LossBand, carried_back};
    ///
    /// let band = LossBand { from: Age::new(60.0)?, to: Age::new(90.0)?, loss: AnnualLoss::new(0.03)? };
    /// let needed = carried_back(60.0, Age::new(60.0)?, Age::new(68.0)?, &Curve::Compound(vec![band]))?;
    /// assert!((needed - 76.56).abs() < 0.005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn carried_back(strength: f64, earlier: Age, later: Age, curve: &Curve) -> f64 {
        in_order(earlier, later)?;
        carried(strength, later, earlier, curve)
    }
    source: ARITHMETIC, place: "ratio of two values of the curve", standing: Derived, seen: NotApplicable,
    population: "that of the curve given", domain: "ages of the curve given",
}

/// A total loss as a part of the start, below 1, over a number of years above 0.
fn total_and_years(total_loss: f64, years: f64) -> Result<(f64, f64), Error> {
    let total = AnnualLoss::new(total_loss).map_err(|error| error.named("total_loss"))?;
    Ok((
        total.value(),
        numeric::within(Code::OutOfRange, "years", above_zero("years", years)?, 0.0, 120.0, "")?,
    ))
}

formula! {
    "horizon.annual_loss_compound",
    /// What yearly part of the strength then present makes up this total loss?
    ///
    /// # Formula
    /// `r = 1 - (1 - L)^(1/n)`; `L` total loss as a part of the start, `n` years.
    ///
    /// # Domain
    /// `L` from 0 to below 1; more than 0 and at most 120 years. For compound curves only; see
    /// [`annual_loss_linear`] for lines.
    ///
    /// # Errors
    /// `out_of_range`.
    ///
    /// # Source
    /// Arithmetic (row `horizon.annual_loss_compound`).
    ///
    /// # Examples
    /// ```
    /// let loss = bismar::horizon::annual_loss_compound(0.14, 10.0)?;
    /// assert!((loss.value() - 0.01497).abs() < 0.000005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn annual_loss_compound(total_loss: f64, years: f64) -> AnnualLoss {
        let (total, years) = total_and_years(total_loss, years)?;
        AnnualLoss::new(numeric::tidy(1.0 - numeric::exp(numeric::ln_1p(-total) / years)))
    }
    source: ARITHMETIC, place: "definition of compound loss", standing: Derived, seen: NotApplicable,
}

formula! {
    "horizon.annual_loss_linear",
    /// What yearly part of the strength at the start makes up this total loss?
    ///
    /// # Formula
    /// `r = L / n`; `L` total loss as a part of the start, `n` years.
    ///
    /// # Domain
    /// `L` from 0 to below 1; more than 0 and at most 120 years. For lines only; see [`annual_loss_compound`].
    ///
    /// # Errors
    /// `out_of_range`.
    ///
    /// # Source
    /// Arithmetic (row `horizon.annual_loss_linear`).
    ///
    /// # Examples
    /// ```
    /// let loss = bismar::horizon::annual_loss_linear(0.3, 12.0)?;
    /// assert!((loss.value() - 0.025).abs() < 1e-15);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn annual_loss_linear(total_loss: f64, years: f64) -> AnnualLoss {
        let (total, years) = total_and_years(total_loss, years)?;
        AnnualLoss::new(total / years)
    }
    source: ARITHMETIC, place: "definition of linear loss", standing: Derived, seen: NotApplicable,
}

formula! {
    "horizon.part_of_peak",
    /// What part of the peak is left at an age, by the shape fitted to masters records?
    ///
    /// # Formula
    /// `y = 1 - exp((T - T0) / tau)`; `T` age, `T0` the age at which nothing is left, `tau` in years.
    ///
    /// # Domain
    /// Masters records of many sports, records of the thirties as the baseline. The fitted `T0` and `tau` were not
    /// seen, so both are the caller's.
    ///
    /// # Errors
    /// `strength_used_up` from `T0` on; `out_of_range`.
    ///
    /// # Source
    /// Baker and Tang 2010 (row `horizon.part_of_peak`).
    ///
    /// # Examples
    /// ```
    /// use bismar::horizon::{Age, part_of_peak};
    ///
    /// let part = part_of_peak(Age::new(60.0)?, Age::new(100.0)?, 20.0)?;
    /// assert!((part - 0.8647).abs() < 0.00005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn part_of_peak(age: Age, zero: Age, time_constant: f64) -> f64 {
        let constant = above_zero("time_constant", time_constant)?;
        let part = 1.0 - numeric::exp((age.years() - zero.years()) / constant);
        if part > 0.0 { Ok(part) } else { left("age", age, part) }
    }
    source: BAKER_TANG_2010, place: "the model equation", standing: Published, seen: Read,
    population: "holders of masters records", domain: "ages below the age of nothing left",
}

rows![carried_forward, carried_back, annual_loss_compound, annual_loss_linear, part_of_peak];
