//! A number of units as a whole number of nanograms, rounded once.

/// `value * factor` rounded once, half away from zero, with no rounding in between.
/// The caller has checked that the product fits.
pub(super) fn scaled(value: f64, factor: i64) -> i64 {
    let bits = value.to_bits();
    let exponent = ((bits >> 52) & 0x7ff) as i32 - 1075;
    // Below 2^-120 every product is far under half a nanogram.
    if exponent < -120 {
        return 0;
    }
    let mantissa = (bits & ((1 << 52) - 1)) | (1 << 52);
    let zeros = factor.trailing_zeros();
    let odd = factor.unsigned_abs() >> zeros;
    let exponent = exponent + zeros as i32;
    let magnitude = if exponent >= 0 {
        (i128::from(mantissa) * i128::from(odd)) << exponent
    } else if (-60..=-HALF).contains(&exponent) && odd < 1 << 36 {
        i128::from(in_halves(mantissa, odd, exponent.unsigned_abs()))
    } else if exponent < -126 {
        0
    } else {
        (i128::from(mantissa) * i128::from(odd) + (1_i128 << (-exponent - 1))) >> -exponent
    };
    let signed = if value < 0.0 { -magnitude } else { magnitude };
    signed as i64
}

/// Bits of the lower half of a mantissa.
const HALF: i32 = 26;

/// `mantissa * factor / 2^shift`, rounded half up, by halves of the mantissa: exact in 64 bits where the shift takes
/// off the lower half at least, which is every load that is lifted. WebAssembly has no product of 128 bits.
fn in_halves(mantissa: u64, factor: u64, shift: u32) -> i64 {
    let low = mantissa & ((1 << HALF) - 1);
    let high = mantissa >> HALF;
    let carried = (low * factor + (1 << (shift - 1))) >> HALF;
    ((high * factor + carried) >> (shift - HALF as u32)) as i64
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::numeric;
    use crate::quantity::Unit;
    use proptest::prelude::*;

    /// The product in full width, then one rounding.
    fn in_full(value: f64, factor: i64) -> i64 {
        let bits = value.to_bits();
        let shift = 1075 - ((bits >> 52) & 0x7ff) as i32;
        let mantissa = i128::from((bits & ((1 << 52) - 1)) | (1 << 52));
        let magnitude = match shift {
            1..=126 => (mantissa * i128::from(factor) + (1_i128 << (shift - 1))) >> shift,
            _ => 0,
        };
        (if value < 0.0 { -magnitude } else { magnitude }) as i64
    }

    proptest! {
        #[test]
        fn a_load_is_rounded_once(mantissa in 1.0_f64..2.0, power in -70_i32..11, lb in any::<bool>(), minus in any::<bool>()) {
            let value = mantissa * numeric::pow(2.0, f64::from(power)) * if minus { -1.0 } else { 1.0 };
            let unit = if lb { Unit::Lb } else { Unit::Kg };
            prop_assert_eq!(scaled(value, unit.nanograms()), in_full(value, unit.nanograms()));
        }
    }
}
