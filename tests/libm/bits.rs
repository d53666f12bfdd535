//! A digest of the bits that each function of `libm` in use gives over eight million arguments: four million of the range
//! in which the library calls it, and as many of any finite bit pattern. `tests/libm_versions.sh` runs it for each version.

/// Marsaglia's generator of 64 bits with the shifts 13, 7, 17.
fn next(state: &mut u64) -> u64 {
    *state ^= *state << 13;
    *state ^= *state >> 7;
    *state ^= *state << 17;
    *state
}

fn arguments(low: f64, high: f64, mut take: impl FnMut(f64)) {
    const EACH: u32 = 4_000_000;
    let mut state = 0x9E37_79B9_7F4A_7C15;
    for _ in 0..EACH {
        let part = (next(&mut state) >> 11) as f64 / (1_u64 << 53) as f64;
        take(low + (high - low) * part);
    }
    let mut drawn = 0;
    while drawn < EACH {
        let any = f64::from_bits(next(&mut state));
        if any.is_finite() {
            take(any);
            drawn += 1;
        }
    }
}

fn digest(name: &str, low: f64, high: f64, mut function: impl FnMut(f64) -> f64) {
    let mut digest: u64 = 0xcbf2_9ce4_8422_2325;
    arguments(low, high, |given| {
        let value = function(given);
        // Nothing in the library lets NaN out, and which of its bit patterns comes is not promised.
        let bits = if value.is_nan() { 1 } else { value.to_bits() };
        digest = (digest ^ bits).wrapping_mul(0x0000_0100_0000_01b3).rotate_left(5);
    });
    println!("{name} {digest:016x}");
}

fn main() {
    digest("atan", -50.0, 50.0, libm::atan);
    digest("exp", -745.0, 709.0, libm::exp);
    digest("exp_small", -2.0, 2.0, libm::exp);
    digest("expm1", -2.0, 2.0, libm::expm1);
    digest("log", 0.0, 4.0, libm::log);
    digest("log_large", 0.0, 1e6, libm::log);
    digest("log1p", -0.999, 10.0, libm::log1p);
    digest("log10", 0.0, 1e4, libm::log10);
    digest("erfc", -6.0, 28.0, libm::erfc);
    digest("lgamma", 0.0, 1e4, libm::lgamma);
    digest("lgamma_small", 0.0, 10.0, libm::lgamma);
    digest("cos", -7.0, 7.0, libm::cos);
    digest("sqrt", 0.0, 1e6, libm::sqrt);
    digest("ceil", -1e6, 1e6, libm::ceil);
    digest("floor", -1e6, 1e6, libm::floor);
    digest("round", -1e6, 1e6, libm::round);
    let mut power = -3.0;
    digest("pow", 0.0, 300.0, |given| {
        power = if power > 6.0 { -3.0 } else { power + 0.000_37 };
        libm::pow(given, power)
    });
}
