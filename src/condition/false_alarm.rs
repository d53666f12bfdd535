//! How often do ordinary days look like ones below the usual by the rules in force?

use alloc::vec::Vec;

use super::own_baseline::DayOptions;
use crate::error::{Code, Error};
use crate::numeric::generator::Generator;
use crate::numeric::normal::normal_cdf;
use crate::numeric::sqrt;
use crate::numeric::student::student_cdf;
use crate::source::{ARITHMETIC, OURS, formula, rows};
use crate::statistics::robust::{median_of, spread_about};

/// Chances that an ordinary day is called one below the usual.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct FalseAlarms {
    /// Of each marker alone, in the order given.
    pub by_marker: Vec<f64>,
    /// That at least one marker says so.
    pub any: f64,
    /// That enough markers say so to agree.
    pub agreeing: f64,
}

/// Simulated baselines for one rate: its standard error is then below 0.003.
const BASELINES: u32 = 2000;
/// Start of the generator: the answer is the same every time.
const SEED: u32 = 20_517;

/// Chance that a marker with this many baseline values calls an ordinary day one below the usual.
///
/// Given a simulated baseline, the chance is exact: the normal tail beyond its bound; both tails are averaged, which
/// are equally likely.
fn one_marker(values: u32, threshold: f64) -> f64 {
    let mut generator = Generator::stream(SEED, values);
    let mut total = 0.0;
    for _ in 0..BASELINES {
        let sample: Vec<f64> = (0..values).map(|_| generator.normal()).collect();
        let centre = median_of(&sample).unwrap_or(0.0);
        let reach = threshold * spread_about(&sample, centre).unwrap_or(0.0);
        total += 0.5 * (normal_cdf(centre - reach) + normal_cdf(-centre - reach));
    }
    total / f64::from(BASELINES)
}

/// Chance that at least `least` of independent alarms ring.
fn at_least(rates: &[f64], least: u32) -> f64 {
    // chances[k]: exactly k so far; what passes the end is kept in `done`.
    let mut chances = alloc::vec![0.0; least as usize];
    if let Some(none) = chances.first_mut() {
        *none = 1.0;
    }
    let mut done = 0.0;
    for rate in rates {
        let mut carried = 0.0;
        for chance in &mut chances {
            let moved = *chance * rate;
            *chance += carried - moved;
            carried = moved;
        }
        done += carried;
    }
    crate::numeric::tidy(done)
}

formula! {
    "condition.false_alarms",
    /// With so many markers and past values, how often does an ordinary day look like one below the usual?
    ///
    /// # Formula
    /// For each marker the mean, over 2000 simulated baselines of normal values, of the normal chance beyond the bound;
    /// any and agreeing from independent markers. Seed fixed: the same answer every time.
    ///
    /// # Domain
    /// 3 to 60 values a marker, up to 20 markers. Without the floor on the spread, which only lowers it; markers that
    /// move together agree by chance more often than shown.
    ///
    /// # Errors
    /// `out_of_range`.
    ///
    /// # Source
    /// Simulation of this project's own rule (row `condition.false_alarms`).
    ///
    /// # Examples
    /// ```
    /// use bismar::condition::{DayOptions, false_alarms};
    ///
    /// let found = false_alarms(&[12, 12, 12, 12], DayOptions::STANDARD)?;
    /// assert!(found.any > 0.25 && found.agreeing < 0.12);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn false_alarms(values: &[u32], options: DayOptions) -> Result<FalseAlarms, Error> {
        let options = options.checked()?;
        crate::numeric::within(Code::OutOfRange, "values", values.len() as f64, 0.0, 20.0, "markers")?;
        let mut known: Vec<(u32, f64)> = Vec::new();
        let mut by_marker = Vec::with_capacity(values.len());
        for count in values {
            crate::numeric::within(Code::OutOfRange, "values", f64::from(*count), 3.0, 60.0, "past values")?;
            let rate = match known.iter().find(|(values, _)| values == count) {
                Some((_, rate)) => *rate,
                None => one_marker(*count, options.threshold),
            };
            known.push((*count, rate));
            by_marker.push(rate);
        }
        Ok(FalseAlarms {
            any: at_least(&by_marker, 1),
            agreeing: at_least(&by_marker, options.agreeing),
            by_marker,
        })
    }
    source: OURS, place: "simulation of the rule", standing: OurChoice, seen: NotApplicable,
    domain: "normal, independent markers",
}

formula! {
    "condition.false_alarm_of_mean",
    /// How often would an ordinary day look like one below the usual, against a plain mean and standard deviation of so
    /// many values?
    ///
    /// # Formula
    /// `F(-c / sqrt(1 + 1/n))`, `F` Student's t with `n - 1` degrees of freedom, `c` the threshold in spreads.
    ///
    /// # Domain
    /// 2 to 100,000 values, threshold from 0; normal values.
    ///
    /// # Errors
    /// `out_of_range`, `not_finite`.
    ///
    /// # Source
    /// The prediction interval of one normal value (row `condition.false_alarm_of_mean`).
    ///
    /// # Examples
    /// ```
    /// let rate = bismar::condition::false_alarm_of_mean(12, 1.5)?;
    /// assert!((0.08..0.10).contains(&rate));
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn false_alarm_of_mean(values: u32, threshold: f64) -> Result<f64, Error> {
        let count = crate::numeric::within(Code::OutOfRange, "values", f64::from(values), 2.0, 1e5, "values")?;
        let threshold = crate::numeric::within(Code::OutOfRange, "threshold", threshold, 0.0, 10.0, "spreads")?;
        student_cdf(-threshold / sqrt(1.0 + 1.0 / count), count - 1.0)
    }
    source: ARITHMETIC, place: "prediction interval", standing: Derived, seen: NotApplicable,
    domain: "normal values",
}

rows![false_alarms, false_alarm_of_mean];
