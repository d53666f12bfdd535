//! Mean and variance in one pass.

use super::sqrt;

/// Running mean and sum of squared deviations (Welford 1962; merging: Chan, Golub & LeVeque 1983).
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

    /// Both groups together.
    pub(crate) fn merged(self, other: Moments) -> Moments {
        if self.count == 0 || other.count == 0 {
            return if self.count == 0 { other } else { self };
        }
        let (a, b) = (f64::from(self.count), f64::from(other.count));
        let apart = other.mean - self.mean;
        Moments {
            count: self.count + other.count,
            mean: self.mean + apart * b / (a + b),
            squares: self.squares + other.squares + apart * apart * a * b / (a + b),
        }
    }

    pub(crate) fn count(&self) -> u32 {
        self.count
    }

    /// Mean, where there is at least one value.
    pub(crate) fn mean(&self) -> Option<f64> {
        (self.count > 0).then_some(self.mean)
    }

    /// Sum of squared deviations from the mean.
    pub(crate) fn squares(&self) -> f64 {
        self.squares
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

    #[test]
    fn merging_equals_one_pass() {
        let values = [3.0, 5.5, -1.0, 8.25, 4.0, 4.0];
        let whole: Moments = values.into_iter().collect();
        let (a, b) = values.split_at(2);
        let merged = a.iter().copied().collect::<Moments>().merged(b.iter().copied().collect());
        assert!((whole.variance().unwrap() - merged.variance().unwrap()).abs() < 1e-14);
        assert!((whole.mean().unwrap() - merged.mean().unwrap()).abs() < 1e-15);
        assert_eq!(Moments::default().merged(whole), whole);
    }
}
