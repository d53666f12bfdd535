//! Left against right: the indices of the literature, each under its own definition.
//!
//! The same two numbers give 20 %, 11 % or 7 % by different indices, so a threshold belongs to one of them only.

use super::domain::not_negative;
use crate::error::{Allowed, Code, Error};
use crate::numeric::{atan, finite, larger, smaller};
use crate::source::{Source, formula, rows};

const BISHOP_2016: Source = Source {
    id: "bishop-2016",
    citation: "Bishop C, Read P, Chavda S, Turner A. Asymmetries of the lower limb: the calculation conundrum. Strength Cond J 38(6):27-32, 2016",
    doi: Some("10.1519/SSC.0000000000000264"),
};
const BISHOP_2018: Source = Source {
    id: "bishop-2018",
    citation: "Bishop C, Read P, Lake J, Chavda S, Turner A. Interlimb asymmetries: understanding how to calculate differences from bilateral and unilateral tests. Strength Cond J 40(4):1-6, 2018",
    doi: Some("10.1519/SSC.0000000000000371"),
};
const ZIFCHOCK_2008: Source = Source {
    id: "zifchock-2008",
    citation: "Zifchock RA, Davis I, Higginson J, Royer T. The symmetry angle. Gait Posture 27:622-627, 2008",
    doi: None,
};

/// `100 part / whole`, refused where the whole is 0.
fn percent(part: f64, whole: f64, field: &'static str) -> Result<f64, Error> {
    if whole > 0.0 {
        finite(field, 100.0 * part / whole)
    } else {
        Err(Error::new(Code::OutOfRange, field, whole, Allowed::rule("above 0")))
    }
}

/// Two measured sides, neither below 0.
fn sides(a: (&'static str, f64), b: (&'static str, f64)) -> Result<(f64, f64), Error> {
    Ok((not_negative(a.0, a.1)?, not_negative(b.0, b.1)?))
}

formula! {
    "statistics.limb_symmetry_index",
    /// How much of the dominant side does the other reach? In percent.
    ///
    /// # Formula
    /// `100 ND / D`.
    ///
    /// # Domain
    /// Any test of one side at a time; the dominant side above 0.
    ///
    /// # Errors
    /// `out_of_range` for a side below 0 or where the denominator is 0; `not_finite`.
    ///
    /// # Source
    /// Bishop et al. 2016, limb symmetry index 1 (row `statistics.limb_symmetry_index`).
    ///
    /// # Examples
    /// ```
    /// let percent = bismar::statistics::limb_symmetry_index(25.0, 20.0)?;
    /// assert!((percent - 80.0).abs() < 0.00005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn limb_symmetry_index(dominant: f64, non_dominant: f64) -> Result<f64, Error> {
        let (a, b) = sides(("dominant", dominant), ("non_dominant", non_dominant))?;
        percent(b, a, "dominant")
    }
    source: BISHOP_2016, place: "limb symmetry index 1", standing: Published, seen: Memory,
    domain: "any test of one side at a time; the dominant side above 0",
}

formula! {
    "statistics.limb_symmetry_deficit",
    /// How much is missing to the dominant side? In percent.
    ///
    /// # Formula
    /// `100 (1 - ND / D)`.
    ///
    /// # Domain
    /// The dominant side above 0; not antisymmetric: 100 and 90 give 10 %, 90 and 100 give -11.1 %.
    ///
    /// # Errors
    /// `out_of_range` for a side below 0 or where the denominator is 0; `not_finite`.
    ///
    /// # Source
    /// Bishop et al. 2016, limb symmetry index 2 (row `statistics.limb_symmetry_deficit`).
    ///
    /// # Examples
    /// ```
    /// let percent = bismar::statistics::limb_symmetry_deficit(25.0, 20.0)?;
    /// assert!((percent - 20.0).abs() < 0.00005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn limb_symmetry_deficit(dominant: f64, non_dominant: f64) -> Result<f64, Error> {
        let (a, b) = sides(("dominant", dominant), ("non_dominant", non_dominant))?;
        percent(a - b, a, "dominant")
    }
    source: BISHOP_2016, place: "limb symmetry index 2", standing: Published, seen: Memory,
    domain: "the dominant side above 0; not antisymmetric: 100 and 90 give 10 %, 90 and 100 give -11.1 %",
}

formula! {
    "statistics.asymmetry_robinson_1987",
    /// How far apart are right and left, against their mean? In percent.
    ///
    /// # Formula
    /// `100 (R - L) / ((R + L) / 2)`.
    ///
    /// # Domain
    /// Not both 0; positive if the right side is higher.
    ///
    /// # Errors
    /// `out_of_range` for a side below 0 or where the denominator is 0; `not_finite`.
    ///
    /// # Source
    /// Bishop et al. 2016, limb symmetry index 3, asymmetry index (row `statistics.asymmetry_robinson_1987`).
    ///
    /// # Examples
    /// ```
    /// let percent = bismar::statistics::asymmetry_robinson_1987(25.0, 20.0)?;
    /// assert!((percent - 22.2222).abs() < 0.00005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn asymmetry_robinson_1987(right: f64, left: f64) -> Result<f64, Error> {
        let (a, b) = sides(("right", right), ("left", left))?;
        percent(a - b, 0.5 * (a + b), "right")
    }
    source: BISHOP_2016, place: "limb symmetry index 3, asymmetry index", standing: Published, seen: Memory,
    domain: "not both 0; positive if the right side is higher",
}

formula! {
    "statistics.asymmetry_impellizzeri_2007",
    /// How much weaker is the weaker side? In percent.
    ///
    /// # Formula
    /// `100 (S - W) / S`.
    ///
    /// # Domain
    /// Tests of one side at a time; the stronger side above 0.
    ///
    /// # Errors
    /// `out_of_range` for a side below 0 or where the denominator is 0; `not_finite`.
    ///
    /// # Source
    /// Bishop et al. 2016, bilateral strength asymmetry (row `statistics.asymmetry_impellizzeri_2007`).
    ///
    /// # Examples
    /// ```
    /// let percent = bismar::statistics::asymmetry_impellizzeri_2007(25.0, 20.0)?;
    /// assert!((percent - 20.0).abs() < 0.00005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn asymmetry_impellizzeri_2007(stronger: f64, weaker: f64) -> Result<f64, Error> {
        let (a, b) = sides(("stronger", stronger), ("weaker", weaker))?;
        percent(a - b, a, "stronger")
    }
    source: BISHOP_2016, place: "bilateral strength asymmetry", standing: Published, seen: Memory,
    domain: "tests of one side at a time; the stronger side above 0",
}

formula! {
    "statistics.asymmetry_kobayashi_2013",
    /// How unevenly is the total shared, dominant side first? In percent.
    ///
    /// # Formula
    /// `100 (D - ND) / (D + ND)`.
    ///
    /// # Domain
    /// Tests where both sides work at once; not both 0.
    ///
    /// # Errors
    /// `out_of_range` for a side below 0 or where the denominator is 0; `not_finite`.
    ///
    /// # Source
    /// Bishop et al. 2016, bilateral asymmetry index 1 (row `statistics.asymmetry_kobayashi_2013`).
    ///
    /// # Examples
    /// ```
    /// let percent = bismar::statistics::asymmetry_kobayashi_2013(25.0, 20.0)?;
    /// assert!((percent - 11.1111).abs() < 0.00005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn asymmetry_kobayashi_2013(dominant: f64, non_dominant: f64) -> Result<f64, Error> {
        let (a, b) = sides(("dominant", dominant), ("non_dominant", non_dominant))?;
        percent(a - b, a + b, "dominant")
    }
    source: BISHOP_2016, place: "bilateral asymmetry index 1", standing: Published, seen: Memory,
    domain: "tests where both sides work at once; not both 0",
}

formula! {
    "statistics.asymmetry_sugiyama_2014",
    /// How unevenly is the total shared, doubled? In percent.
    ///
    /// # Formula
    /// `200 (D - ND) / (D + ND)`.
    ///
    /// # Domain
    /// Not both 0.
    ///
    /// # Errors
    /// `out_of_range` for a side below 0 or where the denominator is 0; `not_finite`.
    ///
    /// # Source
    /// Bishop et al. 2016, bilateral asymmetry index 2 (row `statistics.asymmetry_sugiyama_2014`).
    ///
    /// # Examples
    /// ```
    /// let percent = bismar::statistics::asymmetry_sugiyama_2014(25.0, 20.0)?;
    /// assert!((percent - 22.2222).abs() < 0.00005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn asymmetry_sugiyama_2014(dominant: f64, non_dominant: f64) -> Result<f64, Error> {
        let (a, b) = sides(("dominant", dominant), ("non_dominant", non_dominant))?;
        percent(2.0 * (a - b), a + b, "dominant")
    }
    source: BISHOP_2016, place: "bilateral asymmetry index 2", standing: Published, seen: Memory,
    domain: "not both 0",
}

formula! {
    "statistics.asymmetry_shorter_2008",
    /// How unevenly is the total shared, higher side first? In percent.
    ///
    /// # Formula
    /// `100 (H - L) / (H + L)`.
    ///
    /// # Domain
    /// Tests where both sides work at once; not both 0.
    ///
    /// # Errors
    /// `out_of_range` for a side below 0 or where the denominator is 0; `not_finite`.
    ///
    /// # Source
    /// Bishop et al. 2016, symmetry index (row `statistics.asymmetry_shorter_2008`).
    ///
    /// # Examples
    /// ```
    /// let percent = bismar::statistics::asymmetry_shorter_2008(25.0, 20.0)?;
    /// assert!((percent - 11.1111).abs() < 0.00005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn asymmetry_shorter_2008(higher: f64, lower: f64) -> Result<f64, Error> {
        let (a, b) = sides(("higher", higher), ("lower", lower))?;
        percent(a - b, a + b, "higher")
    }
    source: BISHOP_2016, place: "symmetry index", standing: Published, seen: Memory,
    domain: "tests where both sides work at once; not both 0",
}

formula! {
    "statistics.symmetry_angle_zifchock_2008",
    /// How far does the pair lie from the line of equality, as an angle? In percent.
    ///
    /// # Formula
    /// `100 (45 - atan(W / S)) / 90, angles in degrees`.
    ///
    /// # Domain
    /// No reference side needed; not both 0; at most 50 %.
    ///
    /// # Errors
    /// `out_of_range` for a side below 0 or where the denominator is 0; `not_finite`.
    ///
    /// # Source
    /// Zifchock et al. 2008, symmetry angle (row `statistics.symmetry_angle_zifchock_2008`).
    ///
    /// # Examples
    /// ```
    /// let percent = bismar::statistics::symmetry_angle_zifchock_2008(25.0, 20.0)?;
    /// assert!((percent - 7.0447).abs() < 0.00005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn symmetry_angle_zifchock_2008(stronger: f64, weaker: f64) -> Result<f64, Error> {
        let (a, b) = sides(("stronger", stronger), ("weaker", weaker))?;
        if a <= 0.0 && b <= 0.0 {
            return Err(Error::new(Code::OutOfRange, "stronger", a, Allowed::rule("not both 0")));
        }
        let angle = if a > 0.0 { atan(b / a) } else { core::f64::consts::FRAC_PI_2 };
        finite("stronger", 100.0 * (core::f64::consts::FRAC_PI_4 - angle) / core::f64::consts::FRAC_PI_2)
    }
    source: ZIFCHOCK_2008, place: "symmetry angle", standing: Published, seen: Memory,
    domain: "no reference side needed; not both 0; at most 50 %",
}

formula! {
    "statistics.percentage_difference_bishop_2018",
    /// How much less is the lower of the two? In percent.
    ///
    /// # Formula
    /// `100 - 100 min / max`.
    ///
    /// # Domain
    /// Tests of one side at a time; not both 0; never negative.
    ///
    /// # Errors
    /// `out_of_range` for a side below 0 or where the denominator is 0; `not_finite`.
    ///
    /// # Source
    /// Bishop et al. 2018, percentage difference (row `statistics.percentage_difference_bishop_2018`).
    ///
    /// # Examples
    /// ```
    /// let percent = bismar::statistics::percentage_difference_bishop_2018(25.0, 20.0)?;
    /// assert!((percent - 20.0).abs() < 0.00005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn percentage_difference_bishop_2018(left: f64, right: f64) -> Result<f64, Error> {
        let (a, b) = sides(("left", left), ("right", right))?;
        percent(larger(a, b) - smaller(a, b), larger(a, b), "left")
    }
    source: BISHOP_2018, place: "percentage difference", standing: Published, seen: Memory,
    domain: "tests of one side at a time; not both 0; never negative",
}

rows![
    limb_symmetry_index,
    limb_symmetry_deficit,
    asymmetry_robinson_1987,
    asymmetry_impellizzeri_2007,
    asymmetry_kobayashi_2013,
    asymmetry_sugiyama_2014,
    asymmetry_shorter_2008,
    symmetry_angle_zifchock_2008,
    percentage_difference_bishop_2018,
];
