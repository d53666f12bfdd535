//! Gauss-Legendre points and weights.

use alloc::vec::Vec;

use super::fabs;

/// Value and slope of the Legendre polynomial of that degree.
fn legendre(degree: u32, x: f64) -> (f64, f64) {
    let (mut before, mut now) = (1.0, x);
    for k in 2..=degree {
        let k = f64::from(k);
        (before, now) = (now, ((2.0 * k - 1.0) * x * now - (k - 1.0) * before) / k);
    }
    (now, f64::from(degree) * (x * now - before) / (x * x - 1.0))
}

/// Points and weights that integrate polynomials up to degree `2 count - 1` exactly over `low` to `high`.
pub(crate) fn gauss_legendre(count: u32, low: f64, high: f64) -> Vec<(f64, f64)> {
    let (middle, half) = (0.5 * (low + high), 0.5 * (high - low));
    let point = |index: u32| {
        let turn = (f64::from(index) + 0.75) / (f64::from(count) + 0.5);
        let mut x = libm::cos(core::f64::consts::PI * turn);
        // Newton from Tricomi's start needs at most five steps.
        for _ in 0..12 {
            let (value, slope) = legendre(count, x);
            let step = value / slope;
            x -= step;
            if fabs(step) < 1e-16 {
                break;
            }
        }
        let slope = legendre(count, x).1;
        (middle - half * x, half * 2.0 / ((1.0 - x * x) * slope * slope))
    };
    (0..count).map(point).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn integrates_polynomials_exactly() {
        for count in [2, 5, 24, 64] {
            let points = gauss_legendre(count, 0.0, 2.0);
            let cube: f64 = points.iter().map(|(x, weight)| weight * x * x * x).sum();
            assert!((cube - 4.0).abs() < 1e-13, "{count}: {cube}");
        }
        let points = gauss_legendre(32, -8.0, 8.0);
        let whole: f64 = points.iter().map(|(x, weight)| weight * super::super::normal::normal_pdf(*x)).sum();
        assert!((whole - 1.0).abs() < 1e-7, "{whole}");
    }
}
