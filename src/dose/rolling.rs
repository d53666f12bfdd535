//! Loads over the last days: plain means over a window, and means that fade.

use alloc::vec::Vec;

use super::daily::{DailyLoad, LoadTotal};
use super::set::above_zero;
use crate::error::{Code, Error};
use crate::numeric;
use crate::source::{Source, formula, rows};

pub(super) const WILLIAMS_2017: Source = Source {
    id: "williams-2017",
    citation: "Williams S, West S, Cross MJ, Stokes KA. Better way to determine the acute:chronic workload ratio? Br J Sports Med 2017;51(3):209-210",
    doi: None,
};

/// Longest window: ten years of days.
const LONGEST_WINDOW: u16 = 3660;

fn window_length(window: u16) -> Result<usize, Error> {
    if (1..=LONGEST_WINDOW).contains(&window) {
        Ok(usize::from(window))
    } else {
        Err(Error::range(Code::OutOfRange, "window", window, 1.0, f64::from(LONGEST_WINDOW), "days"))
    }
}

formula! {
    "dose.rolling_load",
    /// What was the mean daily load over the last so many days, for each day?
    ///
    /// # Formula
    /// `mean(L[d-window+1..d])`. None while the window reaches before the first day or over a day that was not
    /// recorded.
    ///
    /// # Domain
    /// Windows of 1 to 3660 days. Order inside the window does not count.
    ///
    /// # Errors
    /// `out_of_range` for the window.
    ///
    /// # Source
    /// Definition. (One published index runs over eight days for a window of seven: Midoglu et al. 2024, table 2.)
    ///
    /// # Examples
    /// ```
    /// use bismar::dose::{DailyLoad, rolling_load};
    ///
    /// let days = [DailyLoad::recorded(4.0)?, DailyLoad::Rested, DailyLoad::recorded(2.0)?];
    /// assert_eq!(rolling_load(&days, 2)?, [None, Some(2.0), Some(1.0)]);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn rolling_load(days: &[DailyLoad], window: u16) -> Result<Vec<Option<f64>>, Error> {
        let length = window_length(window)?;
        let divisor = f64::from(window);
        // Days in blocks of one window: what a window takes from the block before it is a sum from some place to
        // that block's end, and the rest a sum from the start of its own. Nothing is ever subtracted, so nothing
        // cancels. NaN stands for not known inside, and never leaves.
        let mut ends = alloc::vec![f64::NAN; length];
        if let Some(last) = ends.last_mut() {
            *last = 0.0;
        }
        let mut means = Vec::with_capacity(days.len());
        for block in days.chunks(length.max(1)) {
            let mut start = 0.0;
            means.extend(block.iter().zip(&ends).map(|(day, end)| {
                start += day.value().unwrap_or(f64::NAN);
                let sum: f64 = start + end;
                (!sum.is_nan()).then_some(sum / divisor)
            }));
            let mut sum = 0.0;
            for (end, day) in ends.iter_mut().zip(block).rev() {
                *end = sum;
                sum += day.value().unwrap_or(f64::NAN);
            }
        }
        Ok(means)
    }
    source: crate::source::ARITHMETIC, place: "mean over a window of days", standing: Derived, seen: NotApplicable,
}

/// How fast a weighted mean forgets.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Fading {
    /// By a span of N days: today's share is `2 / (N + 1)`. N is not a time constant.
    Span(u16),
    /// By a time constant in days: today's share is `1 - exp(-1 / days)`.
    TimeConstant(f64),
}

/// What a weighted mean starts from; the source leaves it open, and the first weeks depend on it.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum WeightedStart {
    /// The first day's load.
    #[default]
    FirstLoad,
    /// Nothing was done before: false for anyone already training.
    Zero,
    /// The mean of the first so many days; no value before.
    MeanOfFirst(u16),
    /// A level known from earlier records.
    From(LoadTotal),
}

formula! {
    "dose.weighting_factor",
    /// What share does today have in a weighted mean?
    ///
    /// # Formula
    /// `2 / (N + 1)` for a span of N days; `1 - exp(-1 / tau)` for a time constant. 7 days give 0.25 as a span but
    /// 0.133 as a time constant.
    ///
    /// # Domain
    /// Spans of 1 to 3660 days; time constants above 0, to 3660.
    ///
    /// # Errors
    /// `out_of_range`, `not_finite`.
    ///
    /// # Source
    /// Williams et al. 2017 (the form recalled: the letter shows it as a picture).
    ///
    /// # Examples
    /// ```
    /// use bismar::dose::{Fading, weighting_factor};
    ///
    /// assert_eq!(weighting_factor(Fading::Span(7))?, 0.25);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn weighting_factor(fading: Fading) -> Result<f64, Error> {
        match fading {
            Fading::Span(days) => Ok(2.0 / (window_length(days)? as f64 + 1.0)),
            Fading::TimeConstant(days) => {
                let days = above_zero("time_constant", days, f64::from(LONGEST_WINDOW), "days, above 0")?;
                Ok(1.0 - numeric::exp(-1.0 / days))
            }
        }
    }
    source: WILLIAMS_2017, place: "the formula for lambda", standing: Published, seen: Memory,
}

/// One run of known days, folded into a weighted mean.
struct WeightedRun {
    factor: f64,
    kept: f64,
    start: WeightedStart,
    level: Option<f64>,
    sum: f64,
    days: u32,
}

impl WeightedRun {
    fn new(factor: f64, start: WeightedStart) -> WeightedRun {
        let level = match start {
            WeightedStart::Zero => Some(0.0),
            WeightedStart::From(level) => Some(level.value()),
            WeightedStart::FirstLoad | WeightedStart::MeanOfFirst(_) => None,
        };
        WeightedRun { factor, kept: 1.0 - factor, start, level, sum: 0.0, days: 0 }
    }

    /// After a gap nothing is known of what went before, so neither zero nor an old level may stand for it.
    fn after_gap(&self) -> WeightedRun {
        let start = match self.start {
            WeightedStart::MeanOfFirst(days) => WeightedStart::MeanOfFirst(days),
            _ => WeightedStart::FirstLoad,
        };
        WeightedRun::new(self.factor, start)
    }

    /// The first level of a run.
    fn begin(&mut self, load: f64) -> Option<f64> {
        let WeightedStart::MeanOfFirst(days) = self.start else { return Some(load) };
        self.sum += load;
        self.days += 1;
        (self.days >= u32::from(days)).then(|| self.sum / f64::from(days))
    }

    fn day(&mut self, load: f64) -> Option<f64> {
        self.level = match self.level {
            Some(level) => Some(self.factor * load + self.kept * level),
            None => self.begin(load),
        };
        self.level
    }
}

formula! {
    "dose.weighted_load",
    /// What was the mean daily load, recent days counting most, for each day?
    ///
    /// # Formula
    /// `E_d = lambda L_d + (1 - lambda) E_(d-1)`; `lambda` by [`weighting_factor`], the start by choice.
    ///
    /// # Domain
    /// None on a day that was not recorded; after it the mean starts anew from the first known load (or mean of
    /// first days), for what lies before a gap is unknown, not zero.
    ///
    /// # Errors
    /// `out_of_range`, `not_finite`.
    ///
    /// # Source
    /// Williams et al. 2017, recalled: the letter shows its formulas as pictures. It leaves the start value open.
    ///
    /// # Examples
    /// ```
    /// use bismar::dose::{DailyLoad, Fading, WeightedStart, weighted_load};
    ///
    /// let days = [DailyLoad::recorded(40.0)?, DailyLoad::Rested, DailyLoad::recorded(60.0)?];
    /// let means = weighted_load(&days, Fading::Span(7), WeightedStart::FirstLoad)?;
    /// assert_eq!(means, [Some(40.0), Some(30.0), Some(37.5)]);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn weighted_load(days: &[DailyLoad], fading: Fading, start: WeightedStart) -> Result<Vec<Option<f64>>, Error> {
        let factor = weighting_factor(fading)?;
        if let WeightedStart::MeanOfFirst(days) = start {
            window_length(days)?;
        }
        let mut run = WeightedRun::new(factor, start);
        Ok(days.iter().map(|day| match day.value() {
            Some(load) => run.day(load),
            None => { run = run.after_gap(); None }
        }).collect())
    }
    source: WILLIAMS_2017, place: "the recursion", standing: Published, seen: Memory,
}

rows![rolling_load, weighting_factor, weighted_load];
