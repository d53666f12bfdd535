//! Sums that keep what plain addition drops.

use super::{fabs, ln};

/// Neumaier's compensated sum (1974): the rounding error of each addition is kept apart and added at the end.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Sum {
    total: f64,
    lost: f64,
}

impl Sum {
    pub(crate) fn add(&mut self, value: f64) {
        let next = self.total + value;
        self.lost += if fabs(self.total) >= fabs(value) {
            (self.total - next) + value
        } else {
            (value - next) + self.total
        };
        self.total = next;
    }

    /// Adds `a * b` with the rounding error of the product kept.
    pub(crate) fn add_product(&mut self, a: f64, b: f64) {
        let product = a * b;
        let (a_high, a_low) = halves(a);
        let (b_high, b_low) = halves(b);
        let error = ((a_high * b_high - product) + a_high * b_low + a_low * b_high) + a_low * b_low;
        self.add(product);
        if error.is_finite() {
            self.add(error);
        }
    }

    pub(crate) fn value(self) -> f64 {
        self.total + self.lost
    }
}

/// The logarithm of a product of many numbers above 0, by few logarithms: each costs as much as dozens of products.
#[derive(Clone, Copy, Debug)]
pub(crate) struct LogProduct {
    logs: Sum,
    product: f64,
}

impl LogProduct {
    /// Well inside the range of numbers, so that no digit of a product is lost.
    const FITS: core::ops::RangeInclusive<f64> = 1e-200..=1e200;

    pub(crate) fn new() -> LogProduct {
        LogProduct { logs: Sum::default(), product: 1.0 }
    }

    pub(crate) fn multiply(&mut self, factor: f64) {
        let next = self.product * factor;
        if LogProduct::FITS.contains(&next) {
            self.product = next;
        } else {
            self.logs.add(ln(self.product));
            self.product = factor;
        }
    }

    pub(crate) fn value(mut self) -> f64 {
        self.logs.add(ln(self.product));
        self.logs.value()
    }
}

/// A number split into two of at most 26 bits each (Dekker 1971), so that products of the parts are exact.
fn halves(value: f64) -> (f64, f64) {
    const SPLIT: f64 = 134_217_729.0; // 2^27 + 1
    let scaled = SPLIT * value;
    let high = scaled - (scaled - value);
    (high, value - high)
}

impl FromIterator<f64> for Sum {
    fn from_iter<T: IntoIterator<Item = f64>>(values: T) -> Sum {
        let mut sum = Sum::default();
        for value in values {
            sum.add(value);
        }
        sum
    }
}

/// Compensated sum of the values.
pub(crate) fn sum(values: impl IntoIterator<Item = f64>) -> f64 {
    values.into_iter().collect::<Sum>().value()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_logarithm_of_a_product_is_the_sum_of_logarithms() {
        // Far beyond the range of numbers in both directions, then back.
        let factors = [3.0, 1e150, 1e150, 2.0, 1e-180, 1e-180, 1e-180, 5e-324, 1e300, 0.7];
        let mut product = LogProduct::new();
        factors.iter().for_each(|factor| product.multiply(*factor));
        let expected = sum(factors.map(ln));
        assert!(fabs(product.value() - expected) <= 1e-12 * fabs(expected), "{expected}");
        assert_eq!(LogProduct::new().value().to_bits(), 0.0_f64.to_bits());
        let mut nothing = LogProduct::new();
        nothing.multiply(0.0);
        assert!(!nothing.value().is_finite());
    }

    #[test]
    fn keeps_what_plain_addition_drops() {
        let values = [1.0, 1e100, 1.0, -1e100];
        assert_eq!(sum(values).to_bits(), 2.0_f64.to_bits());
        assert_eq!(values.iter().sum::<f64>().to_bits(), 0.0_f64.to_bits());
        assert_eq!(sum([0.1; 10]).to_bits(), 1.0_f64.to_bits());
    }

    #[test]
    fn products_keep_their_error() {
        let mut exact = Sum::default();
        exact.add_product(1.0 + f64::EPSILON, 1.0 - f64::EPSILON);
        exact.add(-1.0);
        assert_eq!(exact.value().to_bits(), (-f64::EPSILON * f64::EPSILON).to_bits());
    }
}
