//! Mayhew et al. 1992.

use crate::numeric;
use crate::one_rm::curve::Curve;
use crate::quantity::{Fraction, Kilograms, Mass, Reps};
use crate::source::{Source, formula, rows};

const MAYHEW_1992: Source = Source {
    id: "mayhew-1992",
    citation: "Mayhew JL, Ball TE, Arnold MD, Bowen JC. Relative muscular endurance performance as a predictor of bench press strength in college men and women. J Appl Sport Sci Res 1992;6(4):200-206",
    doi: None,
};

/// Percent of the maximum that the curve levels off at.
const FLOOR: f64 = 52.2;
const SPAN: f64 = 41.9;
const RATE: f64 = 0.055;

pub(in crate::one_rm) const CURVE: Curve = Curve {
    highest: 50.0,
    measured: (1.0, 50.0),
    multiplier: |r| 100.0 / (FLOOR + SPAN * numeric::exp(-RATE * r)),
    reps: |m| -numeric::ln((100.0 / m - FLOOR) / SPAN) / RATE,
};

formula! {
    "one_rm.mayhew_1992",
    /// What could be lifted once, from a set to failure?
    ///
    /// # Formula
    /// `E = 100 w / (52.2 + 41.9 exp(-0.055 r))`; `w` load in kg, `r` repetitions to failure, `E` in kg. At one
    /// repetition it gives 1.0886 w, not the load itself.
    ///
    /// # Domain
    /// From 1 repetition up to 50 repetitions: no pole; levels off at 1.9157 w, and above 91.86 % of the maximum
    /// it has less than one repetition. Measured: loads of 55 to 95 % lifted as often as possible in one minute,
    /// about 50 repetitions at the lightest (college men and women, bench press, repetitions in one minute). One
    /// curve, bench press only; lift-specific curves under this name found elsewhere are not its own.
    ///
    /// # Errors
    /// `reps_out_of_domain` below 1 and above 50 repetitions; `load_out_of_domain` at or below 0 kg.
    ///
    /// # Source
    /// Mayhew et al. 1992, p 200-206 (row `one_rm.mayhew_1992`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::mayhew_1992;
    /// use bismar::quantity::{Mass, Reps};
    ///
    /// let estimate = mayhew_1992(Mass::from_kg(100.0)?, Reps::whole(8)?)?;
    /// assert!((estimate.value() - 126.286).abs() < 0.0005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn mayhew_1992(load: Mass, reps: Reps) -> Kilograms {
        CURVE.one_rm(load, reps)
    }
    source: MAYHEW_1992, place: "p 200-206", standing: Published, seen: Secondary,
    copies: "public code and lists of equations",
    recalled: "the pages",
    population: "college men and women, bench press, repetitions in one minute",
    domain: "1 to 50 repetitions; loads of 55 to 95 % lifted as often as possible in one minute, about 50 repetitions at the lightest",
}

formula! {
    "one_rm.mayhew_1992_load",
    /// What load would be lifted this often to failure, given the one-repetition maximum?
    ///
    /// # Formula
    /// `w = E (52.2 + 41.9 exp(-0.055 r)) / 100`; `E` one-repetition maximum in kg, `r` repetitions to failure,
    /// `w` in kg.
    ///
    /// # Domain
    /// As [`mayhew_1992`].
    ///
    /// # Errors
    /// `reps_out_of_domain` below 1 and above 50 repetitions; `load_out_of_domain` where the maximum is at or
    /// below 0 kg.
    ///
    /// # Source
    /// Mayhew et al. 1992 solved for the load (row `one_rm.mayhew_1992_load`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::mayhew_1992_load;
    /// use bismar::quantity::{Kilograms, Reps};
    ///
    /// let load = mayhew_1992_load(Kilograms::new(100.0)?, Reps::whole(8)?)?;
    /// assert!((load.value() - 79.185).abs() < 0.0005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn mayhew_1992_load(one_rm: Kilograms, reps: Reps) -> Kilograms {
        CURVE.load(one_rm, reps)
    }
    source: MAYHEW_1992, place: "p 200-206", standing: Published, seen: Secondary,
    copies: "public code and lists of equations",
    recalled: "the pages",
    population: "college men and women, bench press, repetitions in one minute",
    domain: "1 to 50 repetitions; loads of 55 to 95 % lifted as often as possible in one minute, about 50 repetitions at the lightest",
}

formula! {
    "one_rm.mayhew_1992_reps",
    /// How many repetitions to failure does a part of the maximum allow?
    ///
    /// # Formula
    /// `r = -ln((100 F - 52.2) / 41.9) / 0.055`; `F` part of the one-repetition maximum, `r` repetitions.
    ///
    /// # Domain
    /// As [`mayhew_1992`]; the answer may lie above what that form accepts, up to 200.
    ///
    /// # Errors
    /// `percent_out_of_domain` where the equation has no answer from 1 to 200 repetitions.
    ///
    /// # Source
    /// Mayhew et al. 1992 solved for repetitions (row `one_rm.mayhew_1992_reps`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::mayhew_1992_reps;
    /// use bismar::quantity::Fraction;
    ///
    /// let reps = mayhew_1992_reps(Fraction::new(0.8)?)?;
    /// assert!((reps - 7.46).abs() < 0.005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn mayhew_1992_reps(fraction: Fraction) -> f64 {
        CURVE.reps(fraction)
    }
    source: MAYHEW_1992, place: "p 200-206", standing: Published, seen: Secondary,
    copies: "public code and lists of equations",
    recalled: "the pages",
    population: "college men and women, bench press, repetitions in one minute",
    domain: "where the answer lies from 1 to 200 repetitions",
}

rows![mayhew_1992, mayhew_1992_load, mayhew_1992_reps];
