//! Lifts that raise the body too: which part of it moves, and the volume load with it.

use super::set::{SetDone, Totals, not_negative, positive};
use super::volume::MCBRIDE_2009;
use crate::error::{Code, Error};
use crate::numeric;
use crate::quantity::{Kilograms, Mass};
use crate::source::{Source, constant, formula, rows};

const CORMIE_2007: Source = Source {
    id: "cormie-2007",
    citation: "Cormie P, McBride JM, McCaulley GO. The influence of body mass on calculation of power during lower-body resistance exercises. J Strength Cond Res 2007;21(4):1042",
    doi: None,
};

const DE_LEVA_1996: Source = Source {
    id: "de-leva-1996",
    citation: "de Leva P. Adjustments to Zatsiorsky-Seluyanov's segment inertia parameters. J Biomech 1996;29(9):1223-1230",
    doi: Some("10.1016/0021-9290(95)00178-6"),
};

/// A calculated mass of zero or more, in kg.
pub(super) fn not_below_zero(field: &'static str, mass: Kilograms) -> Result<f64, Error> {
    if mass.value() < 0.0 {
        Err(Error::range(Code::LoadOutOfDomain, field, mass.value(), 0.0, f64::MAX, "kg"))
    } else {
        Ok(mass.value())
    }
}

/// Part of the body from 0 to 1.
fn share_of_body(field: &'static str, share: f64) -> Result<f64, Error> {
    numeric::within(Code::OutOfRange, field, share, 0.0, 1.0, "of body mass")
}

constant! {
    "dose.shank_and_foot_share",
    /// Part of body mass in both lower legs and feet, which a squat or a jump does not lift: 0.12, recalled. The
    /// tables of segments give 0.114 for young men and 0.122 for young women.
    pub const SHANK_AND_FOOT_SHARE: f64 = 0.12;
    source: CORMIE_2007, place: "method", standing: Published, seen: Memory,
    population: "young trained men",
}

formula! {
    "dose.system_mass",
    /// What mass moves when the body is lifted together with the load?
    ///
    /// # Formula
    /// `load + moved_share * body mass`, in kg. In a squat or jump the moved share is 0.88 (all but lower legs
    /// and feet; recalled); in a deadlift or bench press it is 0 by convention.
    ///
    /// # Domain
    /// Shares from 0 to 1. Leaving body mass out shifts the load of best power and lowers the power.
    ///
    /// # Errors
    /// `load_out_of_domain`; `out_of_range` for the share.
    ///
    /// # Source
    /// Cormie, McBride and McCaulley 2007.
    ///
    /// # Examples
    /// ```
    /// use bismar::dose::system_mass;
    /// use bismar::quantity::Mass;
    ///
    /// let mass = system_mass(Mass::from_kg(100.0)?, Mass::from_kg(80.0)?, 0.88)?;
    /// assert!((mass.value() - 170.4).abs() < 1e-9);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn system_mass(load: Mass, body_mass: Mass, moved_share: f64) -> Result<Kilograms, Error> {
        let share = share_of_body("moved_share", moved_share)?;
        Kilograms::new(not_negative(load)?.kg() + share * positive("body_mass", body_mass)?)
    }
    source: CORMIE_2007, place: "abstract", standing: Published, seen: Read,
}

formula! {
    "dose.maximum_dynamic_strength_volume_load",
    /// How large is the volume load with the moved part of the body counted?
    ///
    /// # Formula
    /// `sum sets * reps * (body mass - still_share * body mass + load)`, in kg; `still_share` is the part of the
    /// body that stays down, 0.12 by the source ([`SHANK_AND_FOOT_SHARE`]).
    ///
    /// # Domain
    /// Exercises that lift the body: squat, jump, lunge. Without the body-mass term a session of jumps has a
    /// volume load of exactly 0.
    ///
    /// # Errors
    /// `load_out_of_domain`; `out_of_range` for the share.
    ///
    /// # Source
    /// McBride et al. 2009 (formula and 0.12 recalled).
    ///
    /// # Examples
    /// ```
    /// use bismar::dose::{SHANK_AND_FOOT_SHARE, SetDone, maximum_dynamic_strength_volume_load};
    /// use bismar::quantity::{Mass, Reps};
    ///
    /// let sets = [SetDone::new(Mass::from_kg(100.0)?, Reps::whole(5)?).times(3)];
    /// let body_mass = Mass::from_kg(80.0)?;
    /// let volume = maximum_dynamic_strength_volume_load(&sets, body_mass, SHANK_AND_FOOT_SHARE)?;
    /// assert!((volume.value() - 2556.0).abs() < 1e-9);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn maximum_dynamic_strength_volume_load(
        sets: &[SetDone], body_mass: Mass, still_share: f64
    ) -> Result<Kilograms, Error> {
        let moved = (1.0 - share_of_body("still_share", still_share)?) * positive("body_mass", body_mass)?;
        let totals = Totals::of(sets)?;
        Kilograms::new(totals.volume_load() + totals.reps() * moved)
    }
    source: MCBRIDE_2009, place: "method", standing: Published, seen: Memory,
    population: "10 trained students; squats and jump squats",
}

/// Which of the two published body tables to use.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum BodyTable {
    /// Young men.
    Male,
    /// Young women.
    Female,
}

/// Parts of body mass by segment; one side where there are two.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, rename_all = "snake_case")
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct SegmentShares {
    /// Head and neck.
    pub head: f64,
    /// Trunk.
    pub trunk: f64,
    /// One upper arm.
    pub upper_arm: f64,
    /// One forearm.
    pub forearm: f64,
    /// One hand.
    pub hand: f64,
    /// One thigh.
    pub thigh: f64,
    /// One lower leg.
    pub shank: f64,
    /// One foot.
    pub foot: f64,
}

// de Leva 1996, the table of adjusted parameters.
const MALE: SegmentShares = SegmentShares {
    head: 0.0694,
    trunk: 0.4346,
    upper_arm: 0.0271,
    forearm: 0.0162,
    hand: 0.0061,
    thigh: 0.1416,
    shank: 0.0433,
    foot: 0.0137,
};
const FEMALE: SegmentShares = SegmentShares {
    head: 0.0668,
    trunk: 0.4257,
    upper_arm: 0.0255,
    forearm: 0.0138,
    hand: 0.0056,
    thigh: 0.1478,
    shank: 0.0481,
    foot: 0.0129,
};

formula! {
    "dose.segment_shares_de_leva_1996",
    /// What part of body mass is each segment?
    ///
    /// # Formula
    /// The published table.
    ///
    /// # Domain
    /// Young adults (students); nobody older was measured. The female column adds up to 0.9999 by rounding.
    ///
    /// # Errors
    /// None of its own.
    ///
    /// # Source
    /// de Leva 1996, as a handbook of a motion-analysis program reprints the table.
    ///
    /// # Examples
    /// ```
    /// use bismar::dose::{BodyTable, segment_shares_de_leva_1996};
    ///
    /// assert_eq!(segment_shares_de_leva_1996(BodyTable::Male)?.shank, 0.0433);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn segment_shares_de_leva_1996(table: BodyTable) -> Result<SegmentShares, Error> {
        Ok(match table { BodyTable::Male => MALE, BodyTable::Female => FEMALE })
    }
    source: DE_LEVA_1996, place: "table of adjusted parameters", standing: Published, seen: Secondary,
    copies: "one handbook that reprints the table",
    population: "young adult students",
}

formula! {
    "dose.squat_body_share",
    /// What part of the body does a squat raise?
    ///
    /// # Formula
    /// `1 - 2 (shank + foot)`: 0.886 for the male table. Taking off the shanks alone would give 0.913.
    ///
    /// # Domain
    /// Young adults. 0.88 is the usual general figure.
    ///
    /// # Errors
    /// None of its own.
    ///
    /// # Source
    /// Follows from de Leva 1996.
    ///
    /// # Examples
    /// ```
    /// use bismar::dose::{BodyTable, squat_body_share};
    ///
    /// assert!((squat_body_share(BodyTable::Male)? - 0.886).abs() < 1e-12);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn squat_body_share(table: BodyTable) -> Result<f64, Error> {
        let shares = segment_shares_de_leva_1996(table)?;
        Ok(1.0 - 2.0 * (shares.shank + shares.foot))
    }
    source: DE_LEVA_1996, place: "derived from the table", standing: Derived, seen: NotApplicable,
    population: "young adult students",
}

formula! {
    "dose.pull_up_body_share",
    /// What part of the body does a pull-up raise?
    ///
    /// # Formula
    /// `1 - 2 (forearm + hand)`: 0.9554 male, 0.9612 female.
    ///
    /// # Domain
    /// Young adults. No measured share was found; common practice counts the whole body.
    ///
    /// # Errors
    /// None of its own.
    ///
    /// # Source
    /// Follows from de Leva 1996.
    ///
    /// # Examples
    /// ```
    /// use bismar::dose::{BodyTable, pull_up_body_share};
    ///
    /// assert!((pull_up_body_share(BodyTable::Female)? - 0.9612).abs() < 1e-12);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn pull_up_body_share(table: BodyTable) -> Result<f64, Error> {
        let shares = segment_shares_de_leva_1996(table)?;
        Ok(1.0 - 2.0 * (shares.forearm + shares.hand))
    }
    source: DE_LEVA_1996, place: "derived from the table", standing: Derived, seen: NotApplicable,
    population: "young adult students",
}

rows![
    SHANK_AND_FOOT_SHARE,
    system_mass,
    maximum_dynamic_strength_volume_load,
    segment_shares_de_leva_1996,
    squat_body_share,
    pull_up_body_share,
];
