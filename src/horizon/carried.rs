//! One person's strength carried along one curve, and losses made yearly.

use alloc::borrow::Cow;
use alloc::vec;
use alloc::vec::Vec;

use super::curve::{above_zero, left};
use super::{Age, AnnualLoss, Curve};
use crate::caution::Caution;
use crate::error::{Allowed, Code, Error};
use crate::numeric;
use crate::source::{ARITHMETIC, Source, formula, rows};

const BAKER_TANG_2010: Source = Source {
    id: "baker-tang-2010",
    citation: "Baker AB, Tang YQ. Aging performance for masters records in athletics, swimming, rowing, cycling, \
               triathlon, and weightlifting. Experimental Aging Research 2010;36(4):453-477",
    doi: Some("10.1080/0361073X.2010.507433"),
};

/// Two ages in order.
pub(super) fn in_order(earlier: Age, later: Age) -> Result<(), Error> {
    if later < earlier {
        let rule = Allowed::rule("the later age at or after the earlier one");
        return Err(Error::new(Code::AgesReversed, "later", later.years(), rule));
    }
    Ok(())
}

/// A strength carried along one curve.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct Carried {
    /// Strength at the other age, in the unit given.
    pub strength: f64,
    /// Who it describes: whoever the curve does.
    pub population: Cow<'static, str>,
    /// What to show beside it.
    pub cautions: Vec<Caution>,
}

fn carried(strength: f64, from: Age, to: Age, curve: &Curve) -> Result<Carried, Error> {
    let strength = above_zero("strength", strength)?;
    Ok(Carried {
        strength: numeric::finite("strength", strength * numeric::exp(curve.log_change(from, to)?))?,
        population: Cow::Borrowed("that of the curve given"),
        cautions: vec![Caution::NotAPrognosis],
    })
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
    /// let band = LossBand::new(Age::new(70.0)?, Age::new(90.0)?, AnnualLoss::new(0.026)?);
    /// let left = carried_forward(40.0, Age::new(70.0)?, Age::new(85.0)?, &Curve::Compound(vec![band]))?;
    /// assert!((left.strength - 26.94).abs() < 0.005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn carried_forward(strength: f64, earlier: Age, later: Age, curve: &Curve) -> Result<Carried, Error> {
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
    /// let band = LossBand::new(Age::new(60.0)?, Age::new(90.0)?, AnnualLoss::new(0.03)?);
    /// let needed = carried_back(60.0, Age::new(60.0)?, Age::new(68.0)?, &Curve::Compound(vec![band]))?;
    /// assert!((needed.strength - 76.56).abs() < 0.005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn carried_back(strength: f64, earlier: Age, later: Age, curve: &Curve) -> Result<Carried, Error> {
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
    pub fn annual_loss_compound(total_loss: f64, years: f64) -> Result<AnnualLoss, Error> {
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
    pub fn annual_loss_linear(total_loss: f64, years: f64) -> Result<AnnualLoss, Error> {
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
    pub fn part_of_peak(age: Age, zero: Age, time_constant: f64) -> Result<f64, Error> {
        let constant = above_zero("time_constant", time_constant)?;
        let part = 1.0 - numeric::exp((age.years() - zero.years()) / constant);
        if part > 0.0 { Ok(part) } else { left("age", age, part) }
    }
    source: BAKER_TANG_2010, place: "the model equation", standing: Published, seen: Read,
    population: "holders of masters records", domain: "ages below the age of nothing left",
}

rows![carried_forward, carried_back, annual_loss_compound, annual_loss_linear, part_of_peak];
