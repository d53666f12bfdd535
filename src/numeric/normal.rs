//! The normal distribution.
//!
//! The quantile is algorithm AS 241 (Wichura 1988, Applied Statistics 37:477-484, doi 10.2307/2347330), good to
//! about one part in 10^16.

use super::{exp, fabs, ln, sqrt};

/// Density of the standard normal distribution.
pub(crate) fn normal_pdf(z: f64) -> f64 {
    const ONE_OVER_ROOT_TAU: f64 = 0.398_942_280_401_432_7;
    ONE_OVER_ROOT_TAU * exp(-0.5 * z * z)
}

/// Probability that a standard normal value lies at or below `z`. Keeps its digits in the lower tail; for the
/// upper tail ask for `normal_cdf(-z)`.
pub(crate) fn normal_cdf(z: f64) -> f64 {
    0.5 * libm::erfc(-z * core::f64::consts::FRAC_1_SQRT_2)
}

/// Numerator, highest power first: |p - 1/2| up to 0.425.
const CENTRE_TOP: [f64; 8] = [
    2_509.080_928_730_122_7,
    33_430.575_583_588_13,
    67_265.770_927_008_7,
    45_921.953_931_549_87,
    13_731.693_765_509_46,
    1_971.590_950_306_551_3,
    133.141_667_891_784_38,
    3.387_132_872_796_366_5,
];
/// Denominator, highest power first: |p - 1/2| up to 0.425.
const CENTRE_BOTTOM: [f64; 8] = [
    5_226.495_278_852_854,
    28_729.085_735_721_943,
    39_307.895_800_092_71,
    21_213.794_301_586_597,
    5_394.196_021_424_751,
    687.187_007_492_057_9,
    42.313_330_701_600_91,
    1.0,
];
/// Numerator, highest power first: the root of -ln(tail) up to 5.
const SHOULDER_TOP: [f64; 8] = [
    0.000_774_545_014_278_341_4,
    0.022_723_844_989_269_184,
    0.241_780_725_177_450_6,
    1.270_458_252_452_368_4,
    3.647_848_324_763_204_5,
    5.769_497_221_460_691,
    4.630_337_846_156_546,
    1.423_437_110_749_683_5,
];
/// Denominator, highest power first: the root of -ln(tail) up to 5.
const SHOULDER_BOTTOM: [f64; 8] = [
    1.050_750_071_644_416_9e-09,
    0.000_547_593_808_499_534_5,
    0.015_198_666_563_616_457,
    0.148_103_976_427_480_08,
    0.689_767_334_985_1,
    1.676_384_830_183_803_8,
    2.053_191_626_637_759,
    1.0,
];
/// Numerator, highest power first: further out.
const FAR_TOP: [f64; 8] = [
    2.010_334_399_292_288_1e-07,
    2.711_555_568_743_487_6e-05,
    0.001_242_660_947_388_078_4,
    0.026_532_189_526_576_124,
    0.296_560_571_828_504_87,
    1.784_826_539_917_291_3,
    5.463_784_911_164_114,
    6.657_904_643_501_103,
];
/// Denominator, highest power first: further out.
const FAR_BOTTOM: [f64; 8] = [
    2.044_263_103_389_939_7e-15,
    1.421_511_758_316_446e-07,
    1.846_318_317_510_054_8e-05,
    0.000_786_869_131_145_613_3,
    0.014_875_361_290_850_615,
    0.136_929_880_922_735_8,
    0.599_832_206_555_888,
    1.0,
];

/// A polynomial, highest power first (Horner).
fn polynomial(coefficients: &[f64], x: f64) -> f64 {
    coefficients.iter().fold(0.0, |sum, coefficient| sum * x + coefficient)
}

/// The point below which a standard normal value lies with probability `p`, strictly between 0 and 1.
pub(crate) fn normal_quantile(p: f64) -> f64 {
    let centred = p - 0.5;
    if fabs(centred) <= 0.425 {
        let r = 0.180_625 - centred * centred;
        return centred * polynomial(&CENTRE_TOP, r) / polynomial(&CENTRE_BOTTOM, r);
    }
    let tail = if centred < 0.0 { p } else { 1.0 - p };
    let r = sqrt(-ln(tail));
    let distance = if r <= 5.0 {
        polynomial(&SHOULDER_TOP, r - 1.6) / polynomial(&SHOULDER_BOTTOM, r - 1.6)
    } else {
        polynomial(&FAR_TOP, r - 5.0) / polynomial(&FAR_BOTTOM, r - 5.0)
    };
    if centred < 0.0 { -distance } else { distance }
}

/// How many standard errors each side of the centre an interval of that level reaches, for 0 < level < 1.
pub(crate) fn normal_reach(level: f64) -> f64 {
    -normal_quantile(0.5 * (1.0 - level))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn close(got: f64, expected: f64, relative: f64) {
        assert!((got / expected - 1.0).abs() < relative, "{got} instead of {expected}");
    }

    // Reference values: mpmath 1.3, 40 digits.
    #[test]
    fn distribution_and_density_match_the_reference() {
        let cases = [
            (-8.0, 6.220_960_574_271_784e-16),
            (-5.0, 2.866_515_718_791_939e-7),
            (-1.5, 0.066_807_201_268_858_07),
            (-0.1, 0.460_172_162_722_971),
            (0.0, 0.5),
            (0.3, 0.617_911_422_188_952_6),
            (1.0, 0.841_344_746_068_542_9),
            (2.5, 0.993_790_334_674_224),
            (6.0, 0.999_999_999_013_412_4),
        ];
        for (z, expected) in cases {
            close(normal_cdf(z), expected, 4e-14);
        }
        close(normal_pdf(-8.0), 5.052_271_083_536_892e-15, 1e-14);
        close(normal_pdf(1.5), 0.129_517_595_665_891_73, 1e-15);
    }

    #[test]
    fn quantile_matches_the_reference() {
        let cases = [
            (0.9, 1.281_551_565_544_600_5),
            (0.95, 1.644_853_626_951_472_7),
            (0.975, 1.959_963_984_540_054_2),
            (0.995, 2.575_829_303_548_901),
            (1e-20, -9.262_340_089_798_408),
            (1e-300, -37.047_096_299_361_2),
        ];
        for (p, expected) in cases {
            close(normal_quantile(p), expected, 2e-15);
        }
        assert!(normal_quantile(0.5).abs() < 1e-16);
        close(normal_reach(0.95), 1.959_963_984_540_054_2, 1e-15);
    }

    #[test]
    fn quantile_undoes_the_distribution() {
        for step in -70..=70 {
            let z = f64::from(step) / 10.0 - 0.003;
            let back =
                if z < 0.0 { normal_quantile(normal_cdf(z)) } else { -normal_quantile(normal_cdf(-z)) };
            assert!((back - z).abs() < 1e-13, "{z} {back}");
        }
    }
}
