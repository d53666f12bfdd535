//! Pounds typed as kilograms, and the other way round.

use crate::error::{Code, Error};
use crate::numeric;
use crate::quantity::{Mass, POUND};
use crate::source::{OURS, constant, formula, rows};

/// A load that looks as if it were typed in the other unit. To be asked about, never corrected in silence.
#[non_exhaustive]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum UnitSlip {
    /// The number may be pounds although kilograms were meant to be read: 2.2 times the last load.
    PoundsReadAsKilograms,
    /// The number may be kilograms although pounds were meant to be read: 0.45 times the last load.
    KilogramsReadAsPounds,
}

constant! {
    "loading.unit_slip_within",
    /// How near the ratio of two loads must come to that of the units to look like a slip, as a part of it.
    pub const UNIT_SLIP_WITHIN: f64 = 0.03;
    source: OURS, place: "default", standing: OurChoice, seen: NotApplicable,
}

formula! {
    "loading.unit_slip",
    /// Does this load look as if it were typed in the wrong unit, beside the last one?
    ///
    /// # Formula
    /// `now / last` within 3 % of 2.2046, or of 0.4536.
    ///
    /// # Errors
    /// `load_out_of_domain` for a load at or below 0 kg.
    ///
    /// # Source
    /// Our choice (rows `loading.unit_slip`, `loading.unit_slip_within`).
    ///
    /// # Examples
    /// ```
    /// use bismar::loading::{UnitSlip, unit_slip};
    /// use bismar::quantity::Mass;
    ///
    /// let slip = unit_slip(Mass::from_kg(60.0)?, Mass::from_kg(132.5)?)?;
    /// assert_eq!(slip, Some(UnitSlip::PoundsReadAsKilograms));
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn unit_slip(last: Mass, now: Mass) -> Result<Option<UnitSlip>, Error> {
        for (field, load) in [("last", last), ("now", now)] {
            if !load.is_positive() {
                let high = Mass::MAX.kg();
                return Err(Error::range(Code::LoadOutOfDomain, field, load.kg(), 0.0, high, "kg, above 0"));
            }
        }
        let ratio = now.kg() / last.kg();
        let near = |wanted: f64| numeric::fabs(ratio / wanted - 1.0) <= UNIT_SLIP_WITHIN;
        if near(1.0 / POUND) {
            return Ok(Some(UnitSlip::PoundsReadAsKilograms));
        }
        Ok(near(POUND).then_some(UnitSlip::KilogramsReadAsPounds))
    }
    source: OURS, place: "default", standing: OurChoice, seen: NotApplicable,
}

rows![UNIT_SLIP_WITHIN, unit_slip];
