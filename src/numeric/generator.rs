//! The one generator behind every answer that draws: seeded, fixed, the same everywhere.

use super::normal::normal_quantile;

/// SplitMix64 (Steele, Lea & Flood 2014, doi 10.1145/2660193.2660195): a counter that moves by an odd constant,
/// mixed. State starts at the seed or at one mixed from it; period 2^64.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Generator(u64);

impl Generator {
    /// The counter's step: the odd integer next to 2^64 divided by the golden ratio.
    const STEP: u64 = 0x9E37_79B9_7F4A_7C15;

    /// A generator of its own for the `index`-th part of a calculation, so that one part may draw more or less
    /// without shifting the draws of the others.
    pub(crate) fn stream(seed: u32, index: u32) -> Generator {
        let mut mixed = Generator(u64::from(seed) | u64::from(index) << 32);
        Generator(mixed.bits())
    }

    /// The next 64 bits.
    pub(crate) fn bits(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(Generator::STEP);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        mixed ^ (mixed >> 31)
    }

    /// A number strictly between 0 and 1: one of 2^52 midpoints, each as likely.
    pub(crate) fn uniform(&mut self) -> f64 {
        const SCALE: f64 = 1.0 / 4_503_599_627_370_496.0; // 2^-52
        ((self.bits() >> 12) as f64 + 0.5) * SCALE
    }

    /// A standard normal number, by the inverse of the distribution function: one draw each.
    pub(crate) fn normal(&mut self) -> f64 {
        normal_quantile(self.uniform())
    }

    /// True with probability `p`.
    #[cfg(any(test, feature = "rehearsal"))]
    pub(crate) fn chance(&mut self, p: f64) -> bool {
        self.uniform() < p
    }
}

#[cfg(test)]
mod tests {
    use super::super::moments::Moments;
    use super::*;

    /// The first outputs for seed 1234567, as printed with several public implementations of the algorithm.
    #[test]
    fn known_outputs() {
        let mut generator = Generator(1_234_567);
        let expected = [6_457_827_717_110_365_317, 3_203_168_211_198_807_973, 9_817_491_932_198_370_423_u64];
        assert_eq!([generator.bits(), generator.bits(), generator.bits()], expected);
    }

    #[test]
    fn draws_have_the_moments_they_claim() {
        let mut generator = Generator(7);
        let uniform: Moments = (0..40_000).map(|_| generator.uniform()).collect();
        assert!((uniform.mean().unwrap() - 0.5).abs() < 0.005);
        assert!((uniform.variance().unwrap() - 1.0 / 12.0).abs() < 0.002);
        let normal: Moments = (0..40_000).map(|_| generator.normal()).collect();
        assert!(normal.mean().unwrap().abs() < 0.015);
        assert!((normal.variance().unwrap() - 1.0).abs() < 0.025);
        let hits = (0..10_000).filter(|_| generator.chance(0.3)).count();
        assert!((2_850..3_150).contains(&hits));
    }

    #[test]
    fn streams_differ() {
        assert_ne!(Generator::stream(1, 0).bits(), Generator::stream(1, 1).bits());
        assert_ne!(Generator::stream(1, 0).bits(), Generator::stream(2, 0).bits());
    }
}
