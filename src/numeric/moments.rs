//! Mean and variance in one pass.

use super::sqrt;

/// Running mean and sum of squared deviations (Welford 1962).
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(crate) struct Moments {
    count: u32,
    mean: f64,
    squares: f64,
}

impl Moments {
    pub(crate) fn add(&mut self, value: f64) {
        self.count += 1;
        let before = value - self.mean;
        self.mean += before / f64::from(self.count);
        self.squares += before * (value - self.mean);
    }

    pub(crate) fn count(&self) -> u32 {
        self.count
    }

    /// Mean, where there is at least one value.
    pub(crate) fn mean(&self) -> Option<f64> {
        (self.count > 0).then_some(self.mean)
    }

    /// Variance with n - 1 below, where there are at least two values.
    pub(crate) fn variance(&self) -> Option<f64> {
        (self.count > 1).then(|| self.squares / f64::from(self.count - 1))
    }

    /// Standard deviation with n - 1 below, where there are at least two values.
    pub(crate) fn standard_deviation(&self) -> Option<f64> {
        self.variance().map(sqrt)
    }
}

impl FromIterator<f64> for Moments {
    fn from_iter<T: IntoIterator<Item = f64>>(values: T) -> Moments {
        let mut moments = Moments::default();
        for value in values {
            moments.add(value);
        }
        moments
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    // Source: NIST Statistical Reference Datasets, NumAcc1 and NumAcc4.
    #[test]
    fn certified_spread() {
        let first: Moments = [10_000_001.0, 10_000_003.0, 10_000_002.0].into_iter().collect();
        assert_eq!(first.mean().unwrap().to_bits(), 10_000_002.0_f64.to_bits());
        assert_eq!(first.standard_deviation().unwrap().to_bits(), 1.0_f64.to_bits());
        let pair = [10_000_000.1, 10_000_000.3];
        let fourth: Moments =
            core::iter::once(10_000_000.2).chain((0..1000).map(|at| pair[at % 2])).collect();
        assert!((fourth.standard_deviation().unwrap() - 0.1).abs() < 1e-9);
    }
}
