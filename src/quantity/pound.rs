//! The pound, and turning one unit into the other.

use super::Mass;
use crate::error::Error;
use crate::source::{Source, constant, formula, rows};

const NIST_SP_811: Source = Source {
    id: "nist-sp-811",
    citation: "Thompson A, Taylor BN. Guide for the Use of the International System of Units. NIST Special Publication 811, 2008, appendix B; also Abramowitz M, Stegun IA, Handbook of Mathematical Functions, tables 2.4 and 2.5, p 8",
    doi: Some("10.6028/NIST.SP.811e2008"),
};

constant! {
    "quantity.pound",
    /// One avoirdupois pound in kilograms, exact since 1959.
    pub const POUND: f64 = 0.453_592_37;
    source: NIST_SP_811, place: "AMS 55 table 2.4, p 8", standing: Standard, seen: Read,
}

formula! {
    "quantity.mass_in_pounds",
    /// How many pounds is this mass?
    ///
    /// # Formula
    /// `lb = kg / 0.453 592 37`
    ///
    /// # Errors
    /// None beyond those of building the mass.
    ///
    /// # Examples
    /// ```
    /// use bismar::quantity::{Mass, mass_in_pounds};
    ///
    /// assert_eq!(mass_in_pounds(Mass::from_lb(155.0)?)?, 155.0);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn mass_in_pounds(mass: Mass) -> Result<f64, Error> {
        Ok(mass.lb())
    }
    source: NIST_SP_811, place: "AMS 55 table 2.4, p 8", standing: Standard, seen: Read,
}

rows![POUND, mass_in_pounds];
