//! Volume: repetitions, load times repetitions, and what follows from the two.

use super::set::{RelativeSet, SetDone, Totals, above_zero, positive};
use crate::error::Error;
use crate::numeric;
use crate::quantity::{Kilograms, Mass};
use crate::source::{Source, formula, rows};

pub(super) const SHEPPARD_TRIPLETT_2016: Source = Source {
    id: "sheppard-triplett-2016",
    citation: "Sheppard JM, Triplett NT. Program design for resistance training. In: Haff GG, Triplett NT (eds), Essentials of Strength Training and Conditioning, 4th ed. Human Kinetics 2016, ch 17",
    doi: None,
};

pub(super) const MCBRIDE_2009: Source = Source {
    id: "mcbride-2009",
    citation: "McBride JM, McCaulley GO, Cormie P, Nuzzo JL, Cavill MJ, Triplett NT. Comparison of methods to quantify volume during resistance exercise. J Strength Cond Res 2009;23(1):106-110",
    doi: None,
};

const BMJ_MILITARY_HEALTH: Source = Source {
    id: "bmj-military-health-table-1",
    citation: "BMJ Military Health, an article on resistance training, table 1 (title not visible in the copy read)",
    doi: None,
};

/// Minutes in a day: no session is longer.
pub(super) const MINUTES_PER_DAY: f64 = 1440.0;

formula! {
    "dose.total_repetitions",
    /// How many repetitions were done?
    ///
    /// # Formula
    /// `sum sets_i * reps_i`.
    ///
    /// # Domain
    /// Any sets; no sets are 0 repetitions.
    ///
    /// # Errors
    /// `load_out_of_domain` for a load below 0 kg.
    ///
    /// # Source
    /// Sheppard and Triplett 2016, step 6, volume.
    ///
    /// # Examples
    /// ```
    /// use bismar::dose::{SetDone, total_repetitions};
    /// use bismar::quantity::{Mass, Reps};
    ///
    /// let sets = [SetDone::new(Mass::from_kg(65.0)?, Reps::whole(8)?).times(3)];
    /// assert_eq!(total_repetitions(&sets)?, 24.0);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn total_repetitions(sets: &[SetDone]) -> Result<f64, Error> {
        Ok(Totals::of(sets)?.reps())
    }
    source: SHEPPARD_TRIPLETT_2016, place: "ch 17, step 6: volume", standing: Published, seen: Read,
}

formula! {
    "dose.volume_load",
    /// How much was lifted in all (tonnage)?
    ///
    /// # Formula
    /// `VL = sum sets_i * reps_i * load_i`, in kg. Added up exactly in nanograms, so pounds are converted once,
    /// not set by set.
    ///
    /// # Domain
    /// Loads of 0 kg and more. Proportional to work only while the height of a repetition stays the same; not
    /// comparable between exercises or between people ([`Caution::SameLiftOnly`](crate::caution::Caution)).
    ///
    /// # Errors
    /// `load_out_of_domain` for a load below 0 kg.
    ///
    /// # Source
    /// Sheppard and Triplett 2016, step 6; Haff 2010.
    ///
    /// # Examples
    /// ```
    /// use bismar::dose::{SetDone, volume_load};
    /// use bismar::quantity::{Mass, Reps};
    ///
    /// let sets = [SetDone::new(Mass::from_lb(50.0)?, Reps::whole(10)?).times(2)];
    /// assert!((volume_load(&sets)?.value() - 453.59).abs() < 0.005); // 1000 lb
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn volume_load(sets: &[SetDone]) -> Result<Kilograms, Error> {
        Kilograms::new(Totals::of(sets)?.volume_load())
    }
    source: SHEPPARD_TRIPLETT_2016, place: "ch 17, step 6: volume", standing: Published, seen: Read,
}

formula! {
    "dose.average_load",
    /// How heavy was the average repetition (training intensity)?
    ///
    /// # Formula
    /// `VL / repetitions`, in kg.
    ///
    /// # Domain
    /// At least one repetition: without any there is no average, and 0 would be a lie.
    ///
    /// # Errors
    /// `no_repetitions`; `load_out_of_domain` for a load below 0 kg.
    ///
    /// # Source
    /// BMJ Military Health, table 1; the name after Haff 2010.
    ///
    /// # Examples
    /// ```
    /// use bismar::dose::{SetDone, average_load};
    /// use bismar::quantity::{Mass, Reps};
    ///
    /// let set = |kg, reps| Ok::<_, bismar::Error>(SetDone::new(Mass::from_kg(kg)?, Reps::whole(reps)?));
    /// let sets = [set(55.0, 10)?, set(65.0, 8)?, set(75.0, 6)?];
    /// assert!((average_load(&sets)?.value() - 63.33).abs() < 0.005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn average_load(sets: &[SetDone]) -> Result<Kilograms, Error> {
        let totals = Totals::of(sets)?;
        Kilograms::new(totals.volume_load() / totals.some_reps()?)
    }
    source: BMJ_MILITARY_HEALTH, place: "table 1", standing: Published, seen: Read,
}

formula! {
    "dose.relative_average_load",
    /// What part of the one-repetition maximum was the average repetition?
    ///
    /// # Formula
    /// `(VL / repetitions) / 1RM`. Nothing is rounded on the way.
    ///
    /// # Domain
    /// At least one repetition, a maximum above 0 kg. It did not follow how hard sessions felt (r from -0.42 to
    /// 0.33): it knows nothing of rests.
    ///
    /// # Errors
    /// `no_repetitions`; `load_out_of_domain`.
    ///
    /// # Source
    /// BMJ Military Health, table 1, which rounds midway and prints 57 % where 57.58 % follows.
    ///
    /// # Examples
    /// ```
    /// use bismar::dose::{SetDone, relative_average_load};
    /// use bismar::quantity::{Mass, Reps};
    ///
    /// let sets = [SetDone::new(Mass::from_kg(63.0)?, Reps::whole(8)?)];
    /// assert!((relative_average_load(&sets, Mass::from_kg(110.0)?)? - 0.5727).abs() < 0.00005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn relative_average_load(sets: &[SetDone], one_rm: Mass) -> Result<f64, Error> {
        numeric::finite("sets", average_load(sets)?.value() / positive("one_rm", one_rm)?)
    }
    source: BMJ_MILITARY_HEALTH, place: "table 1", standing: Published, seen: Read,
}

formula! {
    "dose.session_density",
    /// How much was lifted per minute of the session?
    ///
    /// # Formula
    /// `VL / minutes`, in kg per minute.
    ///
    /// # Domain
    /// More than 0 minutes, at most a day.
    ///
    /// # Errors
    /// `out_of_range` at 0 minutes or over 1440; `load_out_of_domain` below 0 kg.
    ///
    /// # Source
    /// BMJ Military Health, table 1.
    ///
    /// # Examples
    /// ```
    /// use bismar::dose::session_density;
    /// use bismar::quantity::Kilograms;
    ///
    /// assert!((session_density(Kilograms::new(1560.0)?, 45.0)? - 34.667).abs() < 0.0005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn session_density(volume_load: Kilograms, minutes: f64) -> Result<f64, Error> {
        let volume_load = super::body_mass::not_below_zero("volume_load", volume_load)?;
        numeric::finite("minutes", volume_load / above_zero("minutes", minutes, MINUTES_PER_DAY, "min, above 0")?)
    }
    source: BMJ_MILITARY_HEALTH, place: "table 1", standing: Published, seen: Read,
}

formula! {
    "dose.relative_volume",
    /// How many repetitions at the one-repetition maximum would be the same volume?
    ///
    /// # Formula
    /// `sum sets * reps * fraction of 1RM`; no unit. Equals volume load divided by 1RM.
    ///
    /// # Domain
    /// Fractions above 0 and at most 1.5.
    ///
    /// # Errors
    /// None of its own.
    ///
    /// # Source
    /// The two sessions of McBride et al. 2009: 4 x 10 at 75 %, 11 x 3 at 90 %.
    ///
    /// # Examples
    /// ```
    /// use bismar::dose::{RelativeSet, relative_volume};
    /// use bismar::quantity::{Fraction, Reps};
    ///
    /// let sets = [RelativeSet::new(Fraction::new(0.9)?, Reps::whole(3)?).times(11)];
    /// assert!((relative_volume(&sets)? - 29.7).abs() < 1e-12);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn relative_volume(sets: &[RelativeSet]) -> Result<f64, Error> {
        numeric::finite("sets", sets.iter().map(|set| set.repetitions() * set.fraction.value()).sum())
    }
    source: MCBRIDE_2009, place: "abstract: the protocols", standing: Derived, seen: NotApplicable,
}

formula! {
    "dose.relative_volume_load",
    /// How large is the volume load against the lifter's own one-repetition maximum?
    ///
    /// # Formula
    /// `VL / 1RM`; no unit.
    ///
    /// # Domain
    /// A maximum above 0 kg. Both loads and maximum must be of the same lift.
    ///
    /// # Errors
    /// `load_out_of_domain`.
    ///
    /// # Source
    /// Follows from the definitions of volume load and of [`relative_volume`].
    ///
    /// # Examples
    /// ```
    /// use bismar::dose::{SetDone, relative_volume_load};
    /// use bismar::quantity::{Mass, Reps};
    ///
    /// let sets = [SetDone::new(Mass::from_kg(75.0)?, Reps::whole(10)?).times(4)];
    /// assert_eq!(relative_volume_load(&sets, Mass::from_kg(100.0)?)?, 30.0);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn relative_volume_load(sets: &[SetDone], one_rm: Mass) -> Result<f64, Error> {
        numeric::finite("sets", Totals::of(sets)?.volume_load() / positive("one_rm", one_rm)?)
    }
    source: crate::source::ARITHMETIC, place: "VL / 1RM", standing: Derived, seen: NotApplicable,
}

rows![
    total_repetitions,
    volume_load,
    average_load,
    relative_average_load,
    session_density,
    relative_volume,
    relative_volume_load,
];
