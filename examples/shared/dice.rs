//! Chance for invented data, from a seed.

/// A small generator of its own, so that the log does not depend on the library's.
pub struct Dice(u64);

impl Dice {
    pub fn new(seed: u32) -> Dice {
        Dice(u64::from(seed).wrapping_mul(0x9e37_79b9_7f4a_7c15) | 1)
    }

    /// Uniform in 0..1.
    pub fn roll(&mut self) -> f64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        (self.0 >> 11) as f64 / (1_u64 << 53) as f64
    }

    pub fn below(&mut self, chance: f64) -> bool {
        self.roll() < chance
    }
}
