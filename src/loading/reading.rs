//! The bar as it stands: what is its total?

use alloc::vec::Vec;

use super::bar::Bar;
use super::disc::{Disc, Stock};
use super::height::same_diameters;
use super::tolerance::{MassBand, Tolerance};
use crate::error::{Allowed, Code, Error};
use crate::quantity::{Length, Mass};
use crate::source::{ARITHMETIC, formula, rows};

/// What a bar with these discs weighs.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct BarReading {
    /// The whole load from the best known masses.
    pub total: Mass,
    /// The same in pounds.
    pub pounds: f64,
    /// The whole load by the face values.
    pub nominal: Mass,
    /// The least and the most it may be: measured discs as measured, all else within the rule.
    pub band: MassBand,
    /// The left end less the right end, from the best known masses.
    pub left_over_right: Mass,
    /// Height of the centre, where both ends carry discs and every diameter is known.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub centre_height: Option<Length>,
}

formula! {
    "loading.read_bar",
    /// What is on the bar now?
    ///
    /// # Formula
    /// `total = bar + 2 collar + left + right`; `left` and `right` name the kinds of disc seen on each end, in
    /// any order. Limits of bar, collars and discs add up.
    ///
    /// # Errors
    /// `uneven_ends` if the face values of the two ends differ and `uneven` is false; `lopsided_diameters` if
    /// their largest discs do; `sleeve_overflow`; `not_in_stock`; those of [`Tolerance::band`].
    ///
    /// # Source
    /// Arithmetic (row `loading.read_bar`).
    ///
    /// # Examples
    /// ```
    /// use bismar::loading::{Tolerance, iwf_bar_men, iwf_stock, read_bar};
    /// use bismar::quantity::Name;
    ///
    /// let (bar, stock) = (iwf_bar_men(Name::new("bar")?)?, iwf_stock(1)?);
    /// // 25, 10 and 2.5 kg on each end.
    /// let reading = read_bar(&bar, &stock, &[0, 3, 5], &[0, 3, 5], false, Tolerance::Iwf)?;
    /// assert_eq!(reading.total.kg(), 100.0);
    /// assert_eq!((reading.band.low.kg(), reading.band.high.kg()), (99.955, 100.13));
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn read_bar(
        bar: &Bar,
        stock: &Stock,
        left: &[u16],
        right: &[u16],
        uneven: bool,
        tolerance: Tolerance
    ) -> Result<BarReading, Error> {
        let ends = [seen(bar, stock, "left", left)?, seen(bar, stock, "right", right)?];
        enough(stock, left, right)?;
        let [left, right] = &ends;
        let faces = (sum(left, Disc::nominal)?, sum(right, Disc::nominal)?);
        if faces.0 != faces.1 && !uneven {
            let rule = Allowed::rule("the same face value on both ends, unless uneven ends are meant");
            return Err(Error::new(Code::UnevenEnds, "right", faces.1.kg(), rule));
        }
        let masses = (sum(left, Disc::mass)?, sum(right, Disc::mass)?);
        let total = bar.empty()?.plus(masses.0)?.plus(masses.1)?;
        Ok(BarReading {
            total,
            pounds: total.lb(),
            nominal: bar.empty()?.plus(faces.0)?.plus(faces.1)?,
            band: band(bar, &ends, tolerance)?,
            left_over_right: masses.0.minus(masses.1)?,
            centre_height: centre(left, right)?,
        })
    }
    source: ARITHMETIC, place: "definition", standing: Derived, seen: NotApplicable,
}

/// The discs of one end, which must fit on it.
fn seen(bar: &Bar, stock: &Stock, field: &'static str, kinds: &[u16]) -> Result<Vec<Disc>, Error> {
    let disc =
        |kind: &u16| stock.discs().get(usize::from(*kind)).copied().ok_or_else(|| absent(field, *kind));
    let discs: Vec<Disc> = kinds.iter().map(disc).collect::<Result<_, Error>>()?;
    if let Some(sleeve) = bar.sleeve() {
        let mut room = Length::ZERO;
        for disc in &discs {
            room = room.plus(disc.thickness().unwrap_or(Length::ZERO))?;
        }
        if room > sleeve {
            return Err(Error::range(Code::SleeveOverflow, field, room.mm(), 0.0, sleeve.mm(), "mm"));
        }
    }
    Ok(discs)
}

fn absent(field: &'static str, kind: u16) -> Error {
    Error::new(Code::NotInStock, field, kind, Allowed::rule("kinds of the stock, no more discs than it has"))
}

/// Refuses more discs of a kind than the stock has.
fn enough(stock: &Stock, left: &[u16], right: &[u16]) -> Result<(), Error> {
    for (kind, disc) in (0_u16..).zip(stock.discs()) {
        let seen = left.iter().chain(right).filter(|other| **other == kind).count();
        if seen > usize::from(disc.count()) {
            return Err(absent("right", kind));
        }
    }
    Ok(())
}

fn sum(discs: &[Disc], mass: impl Fn(&Disc) -> Mass) -> Result<Mass, Error> {
    discs.iter().try_fold(Mass::ZERO, |sum, disc| sum.plus(mass(disc)))
}

fn band(bar: &Bar, ends: &[Vec<Disc>; 2], tolerance: Tolerance) -> Result<MassBand, Error> {
    let mut whole = tolerance.band(bar.mass())?;
    let mut add = |part: MassBand| -> Result<(), Error> {
        whole = MassBand { low: whole.low.plus(part.low)?, high: whole.high.plus(part.high)? };
        Ok(())
    };
    if bar.collar().is_positive() {
        for _ in 0..2 {
            add(tolerance.band(bar.collar())?)?;
        }
    }
    for disc in ends.iter().flatten() {
        add(match disc.measured() {
            Some(mass) => MassBand { low: mass, high: mass },
            None => tolerance.band(disc.nominal())?,
        })?;
    }
    Ok(whole)
}

/// Height of the centre; an error if the ends stand on discs of different size.
fn centre(left: &[Disc], right: &[Disc]) -> Result<Option<Length>, Error> {
    let largest = |discs: &[Disc]| -> Option<Length> {
        let all: Option<Vec<Length>> = discs.iter().map(Disc::diameter).collect();
        all?.into_iter().max()
    };
    let (Some(left), Some(right)) = (largest(left), largest(right)) else { return Ok(None) };
    same_diameters(left, right).map(|diameter| Some(diameter.half()))
}

rows![read_bar];
