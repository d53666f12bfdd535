//! Effort: from repetitions and reserve to a part of the maximum, and back, over any equation.
//!
//! Repetitions done plus repetitions in reserve stand for repetitions to failure. That is a convention of the
//! literature on reserve, not of the authors of the equations, who all went to failure.

use super::equation::Equation;
use super::reserve_error::{HALPERIN_2022_UNDER_CALL, LONG_SET, reserve_error};
use crate::error::{Allowed, Code, Error};
use crate::numeric;
use crate::quantity::{Fraction, Kilograms, Reps, Reserve, Rir, Rpe};
use crate::source::{ARITHMETIC, Source, formula, rows};

const ZOURDOS_2016: Source = Source {
    id: "zourdos-2016",
    citation: "Zourdos MC, Klemp A, Dolan C, et al. Novel resistance training-specific rating of perceived exertion scale measuring repetitions in reserve. J Strength Cond Res 2016;30:267-275",
    doi: Some("10.1519/JSC.0000000000001049"),
};

/// What is added to a reported reserve before it is used. Nothing unless asked for.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "serde", serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(from = "wire::Wire"))]
pub struct ReserveBias {
    reps: f64,
    /// Whether long sets take what was measured in long sets instead.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "is_false"))]
    by_length_of_set: bool,
}

impl ReserveBias {
    /// Reports are taken as they come.
    pub const NONE: ReserveBias = ReserveBias { reps: 0.0, by_length_of_set: false };

    /// The pooled under-call of [`HALPERIN_2022_UNDER_CALL`].
    #[must_use]
    pub const fn halperin_2022() -> ReserveBias {
        ReserveBias { reps: HALPERIN_2022_UNDER_CALL, by_length_of_set: false }
    }

    /// The pooled under-call in sets of up to 12 repetitions to failure, done and called; beyond, that of
    /// [`zourdos_2021_reserve_error`](super::zourdos_2021_reserve_error()), its outer lines carried on.
    #[must_use]
    pub const fn by_length_of_set() -> ReserveBias {
        ReserveBias { reps: HALPERIN_2022_UNDER_CALL, by_length_of_set: true }
    }

    /// A lifter's own bias: actual less reported reserve, from -10 to 10 repetitions.
    ///
    /// # Errors
    /// `not_finite`, `out_of_range`.
    pub fn new(reps: f64) -> Result<ReserveBias, Error> {
        let reps = numeric::within(Code::OutOfRange, "reps", reps, -10.0, 10.0, "repetitions")?;
        Ok(ReserveBias { reps, by_length_of_set: false })
    }

    /// Repetitions added to a reported reserve; in long sets more, where the bias goes by the length of the set.
    #[must_use]
    pub const fn reps(self) -> f64 {
        self.reps
    }

    /// Repetitions added to this report.
    pub(super) fn added(self, reps: f64, rir: f64) -> f64 {
        if self.by_length_of_set && reps + rir > LONG_SET {
            reserve_error(reps, rir, false).mean
        } else {
            self.reps
        }
    }

    /// Repetitions to failure of a set with a reported reserve; a negative bias leaves no reserve below 0.
    pub(super) fn applied(self, reps: f64, rir: f64) -> f64 {
        reps + numeric::larger(rir + self.added(reps, rir), 0.0)
    }
}

/// Part of the maximum from `low` to `high`; both the same where the rating names one reserve.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct FractionBand {
    /// With the larger reserve.
    pub low: Fraction,
    /// With the smaller reserve.
    pub high: Fraction,
}

/// How hard a set should feel.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct ExpectedEffort {
    /// Repetitions in reserve, not rounded.
    pub rir: f64,
    /// The rating, where the scale names one: reserve 0 to 3 rounded to whole repetitions.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub rpe: Option<Rpe>,
}

formula! {
    "one_rm.reps_to_failure",
    /// How many repetitions would this set have had, taken to failure?
    ///
    /// # Formula
    /// `r = done + max(0, reported reserve + bias)`, in repetitions.
    ///
    /// # Domain
    /// A reported reserve is best near failure and in short sets. The bias is nothing, the pooled
    /// [`ReserveBias::halperin_2022`], [`ReserveBias::by_length_of_set`], or the lifter's own.
    ///
    /// # Errors
    /// None beyond the types.
    ///
    /// # Source
    /// Convention of the literature on reserve (row `one_rm.reps_to_failure`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::{ReserveBias, reps_to_failure};
    /// use bismar::quantity::{Reps, Rir};
    ///
    /// let (reps, rir) = (Reps::whole(5)?, Rir::new(2.0)?);
    /// assert_eq!(reps_to_failure(reps, rir, ReserveBias::NONE)?, 7.0);
    /// assert_eq!(reps_to_failure(reps, rir, ReserveBias::halperin_2022())?, 7.95);
    /// // Thirteen done and three called: nearer twenty than sixteen.
    /// let long = reps_to_failure(Reps::whole(13)?, Rir::new(3.0)?, ReserveBias::by_length_of_set())?;
    /// assert!((long - 19.65).abs() < 1e-9);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn reps_to_failure(reps: Reps, rir: Rir, bias: ReserveBias) -> Result<f64, Error> {
        numeric::finite("reps", bias.applied(reps.value(), rir.value()))
    }
    source: ARITHMETIC, place: "repetitions done plus repetitions left", standing: Derived, seen: NotApplicable,
    domain: "every set; a reserve is best reported near failure",
}

formula! {
    "one_rm.fraction_for",
    /// What part of the maximum is this many repetitions with this reserve?
    ///
    /// # Formula
    /// `F = 1 / M(reps + reserve)`, `M` the multiplier of the equation.
    ///
    /// # Domain
    /// That of the equation, with reserve counted as repetitions.
    ///
    /// # Errors
    /// `reps_out_of_domain`; `not_scale_free` for an equation bound to kilograms.
    ///
    /// # Source
    /// The equation named in the call (row `one_rm.fraction_for`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::{Equation, fraction_for};
    /// use bismar::quantity::{Reps, Rir};
    ///
    /// let part = fraction_for(Reps::whole(5)?, Rir::new(3.0)?, Equation::Brzycki1993)?;
    /// assert!((part.percent() - 80.56).abs() < 0.005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn fraction_for(reps: Reps, rir: Rir, equation: Equation) -> Result<Fraction, Error> {
        equation.multiplier_at(reps.value() + rir.value()).and_then(|multiplier| Fraction::new(1.0 / multiplier))
    }
    source: ARITHMETIC, place: "the equation's own row", standing: Derived, seen: NotApplicable,
    domain: "that of the equation, reserve counted as repetitions",
}

formula! {
    "one_rm.fraction_for_rpe",
    /// What part of the maximum is this many repetitions at this rating?
    ///
    /// # Formula
    /// As [`fraction_for`], at both ends of the reserve that the rating stands for.
    ///
    /// # Domain
    /// Ratings 7 to 10 in half steps, 5, 5.5 and 6. Half steps and 5 to 6 are bands and stay bands; 9.5 means no
    /// repetition left.
    ///
    /// # Errors
    /// `not_a_reserve` for every other rating; `reps_out_of_domain`; `not_scale_free`.
    ///
    /// # Source
    /// Zourdos et al. 2016 for the scale (row `one_rm.fraction_for_rpe`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::{Equation, fraction_for_rpe};
    /// use bismar::quantity::{Reps, Rpe};
    ///
    /// let band = fraction_for_rpe(Reps::whole(5)?, Rpe::new(8.5)?, Equation::Epley1985)?;
    /// assert!((band.low.percent() - 81.08).abs() < 0.005); // 2 in reserve
    /// assert!((band.high.percent() - 83.33).abs() < 0.005); // 1 in reserve
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn fraction_for_rpe(reps: Reps, rpe: Rpe, equation: Equation) -> Result<FractionBand, Error> {
        let (least, most) = reserve_of(rpe)?;
        Ok(FractionBand { low: fraction_for(reps, most, equation)?, high: fraction_for(reps, least, equation)? })
    }
    source: ZOURDOS_2016, place: "the scale", standing: Published, seen: Memory,
    population: "29 lifters, squat", domain: "ratings with a reserve: 5 to 6, 7 to 10",
}

formula! {
    "one_rm.load_for",
    /// What load for this many repetitions with this reserve?
    ///
    /// # Formula
    /// `w = E / M(reps + reserve)`, or the equation's own inverse where it is bound to kilograms.
    ///
    /// # Domain
    /// That of the equation, with reserve counted as repetitions.
    ///
    /// # Errors
    /// `reps_out_of_domain`; `load_out_of_domain` where the maximum is at or below 0 kg.
    ///
    /// # Source
    /// The equation named in the call (row `one_rm.load_for`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::{Equation, load_for};
    /// use bismar::quantity::{Kilograms, Reps, Rir};
    ///
    /// let load = load_for(Kilograms::new(100.0)?, Reps::whole(5)?, Rir::new(3.0)?, Equation::Brzycki1993)?;
    /// assert!((load.value() - 80.56).abs() < 0.005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn load_for(one_rm: Kilograms, reps: Reps, rir: Rir, equation: Equation) -> Result<Kilograms, Error> {
        let one_rm = super::curve::positive_maximum(one_rm)?;
        equation.load_at(one_rm, reps.value() + rir.value()).and_then(Kilograms::new)
    }
    source: ARITHMETIC, place: "the equation's own row", standing: Derived, seen: NotApplicable,
    domain: "that of the equation, reserve counted as repetitions",
}

formula! {
    "one_rm.reps_for",
    /// How many repetitions at this part of the maximum leave this reserve?
    ///
    /// # Formula
    /// `reps = r(F) - reserve`, `r` the equation's inverse.
    ///
    /// # Domain
    /// That of the equation's inverse.
    ///
    /// # Errors
    /// `percent_out_of_domain` where fewer than one repetition would be left to do, or the equation has no answer;
    /// `not_scale_free`.
    ///
    /// # Source
    /// The equation named in the call (row `one_rm.reps_for`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::{Equation, reps_for};
    /// use bismar::quantity::{Fraction, Rir};
    ///
    /// let reps = reps_for(Fraction::new(0.8)?, Rir::new(2.0)?, Equation::Epley1985)?;
    /// assert!((reps - 5.5).abs() < 1e-9);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn reps_for(fraction: Fraction, rir: Rir, equation: Equation) -> Result<f64, Error> {
        super::curve::answered_reps(equation.reps_at(fraction)? - rir.value(), fraction.value())
    }
    source: ARITHMETIC, place: "the equation's own row", standing: Derived, seen: NotApplicable,
    domain: "where at least one repetition is left to do",
}

formula! {
    "one_rm.effort_for",
    /// How hard should this many repetitions at this part of the maximum feel?
    ///
    /// # Formula
    /// `reserve = r(F) - reps`; the rating is 10 less the reserve rounded to a whole repetition (halves up), from 0 to
    /// 3 only.
    ///
    /// # Domain
    /// That of the equation's inverse. No rating is given where the scale names none.
    ///
    /// # Errors
    /// `reps_out_of_domain` where the equation allows fewer repetitions than that; `percent_out_of_domain`;
    /// `not_scale_free`.
    ///
    /// # Source
    /// The equation named in the call; Zourdos et al. 2016 for the scale (row `one_rm.effort_for`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::{Equation, effort_for};
    /// use bismar::quantity::{Fraction, Reps, Rpe};
    ///
    /// let felt = effort_for(Fraction::new(0.8)?, Reps::whole(5)?, Equation::Epley1985)?;
    /// assert!((felt.rir - 2.5).abs() < 1e-9);
    /// assert_eq!(felt.rpe, Some(Rpe::new(7.0)?));
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn effort_for(fraction: Fraction, reps: Reps, equation: Equation) -> Result<ExpectedEffort, Error> {
        let to_failure = equation.reps_at(fraction)?;
        let rir = to_failure - reps.value();
        if rir < -ROUNDING || reps.value() < 1.0 {
            return Err(Error::range(Code::RepsOutOfDomain, "reps", reps.value(), 1.0, to_failure, ""));
        }
        let rir = numeric::larger(rir, 0.0);
        let rpe = Rir::new(numeric::round(rir)).ok().and_then(Rpe::from_reserve);
        Ok(ExpectedEffort { rir, rpe })
    }
    source: ZOURDOS_2016, place: "the scale", standing: Published, seen: Memory,
    population: "29 lifters, squat", domain: "where the equation allows that many repetitions",
}

/// A reserve that rounding put this little below nothing is nothing.
const ROUNDING: f64 = 1e-9;

/// The smallest and largest reserve that a rating stands for.
pub(super) fn reserve_of(rpe: Rpe) -> Result<(Rir, Rir), Error> {
    match rpe.reserve() {
        Reserve::Exactly(rir) => Ok((rir, rir)),
        Reserve::Between(least, most) => Ok((least, most)),
        Reserve::MoreLoadOnly => Ok((Rir::ZERO, Rir::ZERO)),
        Reserve::NotAReserve => {
            let rule = Allowed::rule("5, 5.5, 6, or 7 to 10");
            Err(Error::new(Code::NotAReserve, "rpe", rpe.value(), rule))
        }
    }
}

#[cfg(feature = "serde")]
fn is_false(flag: &bool) -> bool {
    !*flag
}

#[cfg(feature = "serde")]
mod wire {
    //! Repetitions added, and whether long sets take their own.
    use super::ReserveBias;
    use serde::{Deserialize, Deserializer, de};

    #[derive(Deserialize)]
    #[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
    #[serde(deny_unknown_fields, rename = "ReserveBias")]
    pub(super) struct Wire {
        reps: f64,
        #[serde(default)]
        by_length_of_set: bool,
    }

    impl<'de> Deserialize<'de> for ReserveBias {
        fn deserialize<D: Deserializer<'de>>(from: D) -> Result<ReserveBias, D::Error> {
            let wire = Wire::deserialize(from)?;
            let bias = ReserveBias::new(wire.reps).map_err(de::Error::custom)?;
            Ok(ReserveBias { by_length_of_set: wire.by_length_of_set, ..bias })
        }
    }
}

rows![reps_to_failure, fraction_for, fraction_for_rpe, load_for, reps_for, effort_for,];
