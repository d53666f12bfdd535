//! Did this one person change, and does it matter?

use super::domain::{not_negative, number, open_unit, positive};
use crate::error::Error;
use crate::numeric::normal::{normal_cdf, normal_reach};
use crate::numeric::student::student_cdf;
use crate::numeric::{finite, sqrt, tidy};
use crate::quantity::Interval;
use crate::source::{Source, formula, rows};

const HOPKINS_2004: Source = Source {
    id: "hopkins-2004",
    citation: "Hopkins WG. How to interpret changes in an athletic performance test. Sportscience 8:1-7, 2004",
    doi: None,
};
const SWINTON_2018: Source = Source {
    id: "swinton-2018",
    citation: "Swinton PA, Hemingway BS, Saunders B, Gualano B, Dolan E. A statistical framework to interpret individual response to intervention. Front Nutr 5:41, 2018",
    doi: Some("10.3389/fnut.2018.00041"),
};

const ROOT_TWO: f64 = core::f64::consts::SQRT_2;

/// How likely it is that the true change of one person helps, does nothing of note, or harms.
///
/// A flat prior on the true change of one athlete; not a claim about a group.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct ChangeChances {
    /// The true change is at least the smallest worthwhile one.
    pub benefit: f64,
    /// The true change is smaller than that, either way.
    pub trivial: f64,
    /// The true change is at least the smallest worthwhile one, downwards.
    pub harm: f64,
}

formula! {
    "statistics.change_chances",
    /// One person's test changed: how likely is a true benefit, nothing of note, or harm?
    ///
    /// # Formula
    /// `benefit = 1 - F((w - D) / (sqrt(2) e))`, `harm = F((-w - D) / (sqrt(2) e))`, the rest trivial; `D` observed
    /// change, `e` typical error, `w` smallest worthwhile change, `F` normal, or t where the degrees of freedom of the
    /// typical error are given.
    ///
    /// # Domain
    /// One person, higher values better. Regression to the mean is ignored.
    ///
    /// # Errors
    /// `out_of_range` for a typical error or degrees at or below 0, or a worthwhile change below 0; `not_finite`.
    ///
    /// # Source
    /// Hopkins 2004 (row `statistics.change_chances`).
    ///
    /// # Examples
    /// ```
    /// let chances = bismar::statistics::change_chances(2.0, 1.0, 1.0, None)?;
    /// assert!((chances.benefit - 0.76).abs() < 0.005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn change_chances(change: f64, typical_error: f64, worthwhile: f64, degrees: Option<f64>) -> Result<ChangeChances, Error> {
        let change = number("change", change)?;
        let scale = ROOT_TWO * positive("typical_error", typical_error)?;
        let worthwhile = not_negative("worthwhile", worthwhile)?;
        let below = |score: f64| match degrees {
            Some(degrees) => {
                finite("degrees", student_cdf(finite("change", score)?, positive("degrees", degrees)?)?)
            }
            None => Ok(normal_cdf(finite("change", score)?)),
        };
        let benefit = below((change - worthwhile) / scale)?;
        let harm = below((-worthwhile - change) / scale)?;
        Ok(ChangeChances { benefit, trivial: tidy(crate::numeric::larger(1.0 - benefit - harm, 0.0)), harm })
    }
    source: HOPKINS_2004, place: "chances of a true change", standing: Published, seen: Memory,
}

/// `centre +- z scale` with the exact normal quantile.
fn around(centre: f64, scale: f64, level: f64) -> Result<Interval, Error> {
    let half = normal_reach(open_unit("level", level)?) * scale;
    Interval::new(centre - half, centre + half, level)
}

formula! {
    "statistics.true_value_interval",
    /// Where may the true value of one person lie after one test?
    ///
    /// # Formula
    /// `observed +- z e`, `e` the typical error.
    ///
    /// # Domain
    /// Typical error above 0.
    ///
    /// # Errors
    /// `out_of_range`, `not_finite`.
    ///
    /// # Source
    /// Swinton et al. 2018 (row `statistics.true_value_interval`).
    ///
    /// # Examples
    /// ```
    /// let interval = bismar::statistics::true_value_interval(100.0, 2.0, 0.95)?;
    /// assert!((interval.high() - 103.92).abs() < 0.005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn true_value_interval(observed: f64, typical_error: f64, level: f64) -> Result<Interval, Error> {
        around(number("observed", observed)?, positive("typical_error", typical_error)?, level)
    }
    source: SWINTON_2018, place: "true score interval", standing: Published, seen: Memory,
}

formula! {
    "statistics.true_change_interval",
    /// Where may the true change of one person lie after two tests?
    ///
    /// # Formula
    /// `D +- z sqrt(2) e`, `e` the typical error of one test.
    ///
    /// # Domain
    /// Typical error above 0. Multipliers of the error: 0.954 at 50 %, 1.627 at 75 %, 2.326 at 90 %, 2.772 at 95 %.
    ///
    /// # Errors
    /// `out_of_range`, `not_finite`.
    ///
    /// # Source
    /// Swinton et al. 2018 (row `statistics.true_change_interval`).
    ///
    /// # Examples
    /// ```
    /// let interval = bismar::statistics::true_change_interval(0.0, 1.0, 0.90)?;
    /// assert!((interval.high() - 2.326).abs() < 0.0005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn true_change_interval(change: f64, typical_error: f64, level: f64) -> Result<Interval, Error> {
        around(number("change", change)?, ROOT_TWO * positive("typical_error", typical_error)?, level)
    }
    source: SWINTON_2018, place: "true change interval", standing: Published, seen: Memory,
}

formula! {
    "statistics.individual_response_deviation",
    /// Do people really respond differently, beyond what a control group shows?
    ///
    /// # Formula
    /// `sqrt(Si^2 - Sc^2)`, with the sign of the difference; `Si`, `Sc` standard deviations of the changes with the
    /// intervention and without.
    ///
    /// # Domain
    /// Both at least 0. Below 0 means the intervention group varied less: no sign of different response.
    ///
    /// # Errors
    /// `out_of_range` below 0 or beyond 1e100, `not_finite`.
    ///
    /// # Source
    /// Swinton et al. 2018 (row `statistics.individual_response_deviation`).
    ///
    /// # Examples
    /// ```
    /// assert_eq!(bismar::statistics::individual_response_deviation(5.0, 4.0)?, 3.0);
    /// assert_eq!(bismar::statistics::individual_response_deviation(4.0, 5.0)?, -3.0);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn individual_response_deviation(with_intervention: f64, without: f64) -> Result<f64, Error> {
        let a = not_negative("with_intervention", with_intervention)?;
        let b = not_negative("without", without)?;
        let difference = (a - b) * (a + b);
        finite("with_intervention", if difference < 0.0 { -sqrt(-difference) } else { sqrt(difference) })
    }
    source: SWINTON_2018, place: "standard deviation of individual response", standing: Published, seen: Memory,
}

formula! {
    "statistics.responding_share",
    /// Which part of people gains at least what matters?
    ///
    /// # Formula
    /// `1 - Phi((w - m) / S)`; `w` smallest worthwhile change, `m` mean change, `S` standard deviation of the true
    /// individual response.
    ///
    /// # Domain
    /// `S` above 0; responses taken as normal.
    ///
    /// # Errors
    /// `out_of_range`, `not_finite`.
    ///
    /// # Source
    /// Swinton et al. 2018 (row `statistics.responding_share`).
    ///
    /// # Examples
    /// ```
    /// assert_eq!(bismar::statistics::responding_share(2.0, 2.0, 1.5)?, 0.5);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn responding_share(mean_change: f64, worthwhile: f64, response_deviation: f64) -> Result<f64, Error> {
        let apart = number("mean_change", mean_change)? - number("worthwhile", worthwhile)?;
        Ok(normal_cdf(finite("mean_change", apart / positive("response_deviation", response_deviation)?)?))
    }
    source: SWINTON_2018, place: "proportion of responders", standing: Published, seen: Memory,
}

rows![
    change_chances,
    true_value_interval,
    true_change_interval,
    individual_response_deviation,
    responding_share,
];
