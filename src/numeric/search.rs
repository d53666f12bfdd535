//! Bounded searches: a root in a bracket, the lowest point of a curve, the lowest point of a surface.

use alloc::vec::Vec;

use super::fabs;
use crate::error::{Code, Error};

/// A point where `f` crosses zero between `low` and `high`, which must have different signs there.
///
/// Halving with a secant guess wherever the guess keeps to the bracket and halves it.
pub(crate) fn root(
    mut f: impl FnMut(f64) -> Result<f64, Error>,
    mut low: f64,
    mut high: f64,
    field: &'static str,
) -> Result<f64, Error> {
    let (mut at_low, mut at_high) = (f(low)?, f(high)?);
    if at_low * at_high > 0.0 {
        return Err(Error::plain(Code::DidNotConverge, field));
    }
    for step in 0..400_u32 {
        let middle = 0.5 * (low + high);
        let secant = high - at_high * (high - low) / (at_high - at_low);
        let inside = secant.is_finite() && secant > low && secant < high;
        let x = if inside && step % 3 != 2 { secant } else { middle };
        let value = f(x)?;
        if fabs(value) <= 0.0 || high - low <= 2.0 * f64::EPSILON * fabs(x) {
            return Ok(x);
        }
        if (value > 0.0) == (at_high > 0.0) {
            (high, at_high) = (x, value);
        } else {
            (low, at_low) = (x, value);
        }
    }
    Ok(0.5 * (low + high))
}

/// A point of a valley of `f` between `low` and `high` (golden section), to about half the digits of a number.
pub(crate) fn lowest(
    mut f: impl FnMut(f64) -> Result<f64, Error>,
    mut low: f64,
    mut high: f64,
    tolerance: f64,
) -> Result<f64, Error> {
    const GOLDEN: f64 = 0.618_033_988_749_894_9;
    let mut left = high - GOLDEN * (high - low);
    let mut right = low + GOLDEN * (high - low);
    let (mut at_left, mut at_right) = (f(left)?, f(right)?);
    for _ in 0..200 {
        if high - low <= tolerance {
            break;
        }
        if at_left <= at_right {
            (high, right, at_right) = (right, left, at_left);
            left = high - GOLDEN * (high - low);
            at_left = f(left)?;
        } else {
            (low, left, at_left) = (left, right, at_right);
            right = low + GOLDEN * (high - low);
            at_right = f(right)?;
        }
    }
    Ok(0.5 * (low + high))
}

/// A corner of the simplex and its height.
type Corner = (Vec<f64>, f64);

fn blend(a: &[f64], b: &[f64], part: f64) -> Vec<f64> {
    a.iter().zip(b).map(|(a, b)| a + part * (b - a)).collect()
}

/// A low point of `f` near `start` (Nelder & Mead 1965), each coordinate first moved by `stride`.
///
/// # Errors
/// `did_not_converge` after `steps` steps without the corners meeting within `tolerance` in height.
pub(crate) fn lowest_corner(
    mut f: impl FnMut(&[f64]) -> Result<f64, Error>,
    start: &[f64],
    stride: f64,
    tolerance: f64,
    steps: u32,
) -> Result<Corner, Error> {
    let mut corners: Vec<Corner> = alloc::vec![(start.to_vec(), f(start)?)];
    for axis in 0..start.len() {
        let moved: Vec<f64> =
            start.iter().enumerate().map(|(at, x)| if at == axis { x + stride } else { *x }).collect();
        let height = f(&moved)?;
        corners.push((moved, height));
    }
    for _ in 0..steps {
        crate::numeric::sort::sort_by(&mut corners, |a, b| a.1.total_cmp(&b.1));
        let Some((worst, others)) = corners.split_last_mut() else { break };
        let Some(best) = others.first() else { break };
        if fabs(worst.1 - best.1) <= tolerance * (1.0 + fabs(best.1)) && narrow(others, &worst.0, tolerance) {
            return Ok(best.clone());
        }
        let count = others.len() as f64;
        let centre: Vec<f64> = (0..start.len())
            .map(|at| others.iter().filter_map(|(point, _)| point.get(at)).sum::<f64>() / count)
            .collect();
        if !step(&mut f, worst, others, &centre)? {
            shrink(&mut f, &mut corners)?;
        }
    }
    Err(Error::plain(Code::DidNotConverge, "parameters"))
}

/// Whether the corners lie close together: within the root of the tolerance, as heights are flat at the bottom.
fn narrow(others: &[Corner], worst: &[f64], tolerance: f64) -> bool {
    let reach = super::sqrt(tolerance);
    others
        .iter()
        .all(|(point, _)| point.iter().zip(worst).all(|(a, b)| fabs(a - b) <= reach * (1.0 + fabs(*b))))
}

/// Replaces the worst corner by a better point on the line through the centre; false if there is none.
fn step(
    f: &mut impl FnMut(&[f64]) -> Result<f64, Error>,
    worst: &mut Corner,
    others: &[Corner],
    centre: &[f64],
) -> Result<bool, Error> {
    let best = others.first().map_or(worst.1, |corner| corner.1);
    let second = others.last().map_or(worst.1, |corner| corner.1);
    let mirrored = blend(&worst.0, centre, 2.0);
    let height = f(&mirrored)?;
    if height < best {
        let further = blend(&worst.0, centre, 3.0);
        let far = f(&further)?;
        *worst = if far < height { (further, far) } else { (mirrored, height) };
        return Ok(true);
    }
    if height < second {
        *worst = (mirrored, height);
        return Ok(true);
    }
    let inner = if height < worst.1 { blend(centre, &mirrored, 0.5) } else { blend(&worst.0, centre, 0.5) };
    let inside = f(&inner)?;
    if inside < super::smaller(height, worst.1) {
        *worst = (inner, inside);
        return Ok(true);
    }
    Ok(false)
}

/// Moves every corner halfway to the best one.
fn shrink(f: &mut impl FnMut(&[f64]) -> Result<f64, Error>, corners: &mut [Corner]) -> Result<(), Error> {
    let Some((best, rest)) = corners.split_first_mut() else { return Ok(()) };
    for corner in rest {
        corner.0 = blend(&best.0, &corner.0, 0.5);
        corner.1 = f(&corner.0)?;
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn finds_a_root() {
        let x = root(|x| Ok(x * x - 2.0), 0.0, 2.0, "x").unwrap();
        assert!((x - core::f64::consts::SQRT_2).abs() < 1e-15);
        assert_eq!(root(|x| Ok(x * x + 1.0), 0.0, 2.0, "x").unwrap_err().code(), Code::DidNotConverge);
    }

    #[test]
    fn finds_the_lowest_point() {
        let x = lowest(|x| Ok((x - 1.25) * (x - 1.25)), -3.0, 4.0, 1e-9).unwrap();
        assert!((x - 1.25).abs() < 1e-7);
        let valley = |p: &[f64]| {
            let (x, y) = (p[0], p[1]);
            Ok(100.0 * (y - x * x) * (y - x * x) + (1.0 - x) * (1.0 - x))
        };
        let (point, height) = lowest_corner(valley, &[-1.2, 1.0], 0.5, 1e-14, 2000).unwrap();
        assert!((point[0] - 1.0).abs() < 1e-5 && height < 1e-10, "{point:?}");
        assert!(lowest_corner(valley, &[-1.2, 1.0], 0.5, 1e-14, 5).is_err());
    }
}
