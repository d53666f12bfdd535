//! Level and slope at one time, and how they move to another.

use derive_setters::Setters;

/// Level and slope with their variances and covariance.
#[derive(Clone, Copy, Debug, Default, PartialEq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct TrendState {
    /// Level, in the unit of the readings.
    pub level: f64,
    /// Slope, in that unit per day.
    pub slope: f64,
    /// Variance of the level.
    pub level_variance: f64,
    /// Variance of the slope.
    pub slope_variance: f64,
    /// Covariance of the two.
    pub covariance: f64,
}

/// Variance added over some days: of the level, of the slope, and between them.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Added {
    pub(super) level: f64,
    pub(super) slope: f64,
    pub(super) both: f64,
}

impl Added {
    /// Day by day: the level moves by the slope and by its own noise, then the slope by its own.
    pub(super) fn over(days: f64, level_drift: f64, slope_drift: f64) -> Added {
        Added {
            level: days * level_drift + slope_drift * (days - 1.0) * days * (2.0 * days - 1.0) / 6.0,
            slope: days * slope_drift,
            both: slope_drift * days * (days - 1.0) / 2.0,
        }
    }
}

impl TrendState {
    /// The state so many days later, before any reading.
    pub(super) fn ahead(&self, days: f64, added: Added) -> TrendState {
        let slope_part = days * self.slope_variance;
        TrendState {
            level: self.level + days * self.slope,
            slope: self.slope,
            level_variance: self.level_variance + days * (2.0 * self.covariance + slope_part) + added.level,
            slope_variance: self.slope_variance + added.slope,
            covariance: self.covariance + slope_part + added.both,
        }
    }

    /// The state so many days earlier, from this one alone.
    fn back(&self, days: f64, added: Added) -> TrendState {
        let wider = TrendState {
            level_variance: self.level_variance + added.level,
            slope_variance: self.slope_variance + added.slope,
            covariance: self.covariance + added.both,
            ..*self
        };
        wider.ahead(-days, Added::default())
    }

    /// After an observation of `level - age * slope` with that variance; the innovation and its variance too.
    pub(super) fn seen(&self, age: f64, value: f64, variance: f64) -> (TrendState, f64, f64) {
        let with_level = self.level_variance - age * self.covariance;
        let with_slope = self.covariance - age * self.slope_variance;
        let total = with_level - age * with_slope + variance;
        let innovation = value - (self.level - age * self.slope);
        let (level_gain, slope_gain) = (with_level / total, with_slope / total);
        let state = TrendState {
            level: self.level + level_gain * innovation,
            slope: self.slope + slope_gain * innovation,
            level_variance: self.level_variance - level_gain * with_level,
            slope_variance: self.slope_variance - slope_gain * with_slope,
            covariance: self.covariance - level_gain * with_slope,
        };
        (state, innovation, total)
    }

    /// The level so many days ahead, and its variance.
    pub(crate) fn level_ahead(&self, days: f64, level_drift: f64, slope_drift: f64) -> (f64, f64) {
        let ahead = self.ahead(days, Added::over(days, level_drift, slope_drift));
        (ahead.level, ahead.level_variance)
    }
}

/// The Rauch-Tung-Striebel step where the prediction is proper.
pub(super) fn between(now: TrendState, ahead: TrendState, later: TrendState, days: f64) -> TrendState {
    let determinant = ahead.level_variance * ahead.slope_variance - ahead.covariance * ahead.covariance;
    if determinant <= 0.0 {
        // Neither level nor slope moves or is uncertain any more: the later state, carried back.
        return later.back(days, Added::default());
    }
    // Gain G = P T' (predicted)^-1, written out.
    let (level_cross, level_slope) = (now.level_variance + days * now.covariance, now.covariance);
    let (slope_cross, slope_slope) = (now.covariance + days * now.slope_variance, now.slope_variance);
    let gain = |a: f64, b: f64| {
        (
            (a * ahead.slope_variance - b * ahead.covariance) / determinant,
            (b * ahead.level_variance - a * ahead.covariance) / determinant,
        )
    };
    let (g11, g12) = gain(level_cross, level_slope);
    let (g21, g22) = gain(slope_cross, slope_slope);
    let (level, slope) = (later.level - ahead.level, later.slope - ahead.slope);
    let d11 = later.level_variance - ahead.level_variance;
    let d22 = later.slope_variance - ahead.slope_variance;
    let d12 = later.covariance - ahead.covariance;
    let quadratic =
        |a: (f64, f64), b: (f64, f64)| a.0 * (d11 * b.0 + d12 * b.1) + a.1 * (d12 * b.0 + d22 * b.1);
    TrendState {
        level: now.level + g11 * level + g12 * slope,
        slope: now.slope + g21 * level + g22 * slope,
        level_variance: now.level_variance + quadratic((g11, g12), (g11, g12)),
        slope_variance: now.slope_variance + quadratic((g21, g22), (g21, g22)),
        covariance: now.covariance + quadratic((g11, g12), (g21, g22)),
    }
}

/// A step where nothing proper was predicted: the state given the later one exactly, then averaged over it.
///
/// Given the later state, the earlier is `T^-1 (later - noise)`, then updated by what was known then. The update is
/// linear in the later state, so it suffices to see where its two axes go.
pub(super) fn through(
    later: TrendState,
    days: f64,
    added: Added,
    update: impl Fn(TrendState) -> TrendState,
) -> TrendState {
    let exact = |level: f64, slope: f64| {
        update(TrendState { level, slope, ..TrendState::default() }.back(days, added))
    };
    let centre = exact(later.level, later.slope);
    let by_level = exact(later.level + 1.0, later.slope);
    let by_slope = exact(later.level, later.slope + 1.0);
    let to_level = (by_level.level - centre.level, by_slope.level - centre.level);
    let to_slope = (by_level.slope - centre.slope, by_slope.slope - centre.slope);
    let spread = |a: (f64, f64), b: (f64, f64)| {
        a.0 * (later.level_variance * b.0 + later.covariance * b.1)
            + a.1 * (later.covariance * b.0 + later.slope_variance * b.1)
    };
    TrendState {
        level_variance: centre.level_variance + spread(to_level, to_level),
        slope_variance: centre.slope_variance + spread(to_slope, to_slope),
        covariance: centre.covariance + spread(to_level, to_slope),
        ..centre
    }
}
