//! How high the bar lies, and how to keep it there while the load changes. The loads of a lift at its height are those of
//! `at_height`, which `progression` asks through its `loadable`.

use alloc::vec::Vec;

use super::bar::{Bar, BarKind};
use super::disc::{Disc, Stock};
use super::ends::{MARGIN_IN_DISCS, prepare_with};
use super::implement::Implement;
use super::loaded::{Loaded, Rounding};
use super::prepared::Prepared;
use super::presets::FULL_DIAMETER;
use crate::error::{Allowed, Code, Error};
use crate::quantity::{Length, Mass};
use crate::source::{ARITHMETIC, OURS, constant, formula, rows};

constant! {
    "loading.same_diameter",
    /// Two discs whose diameters differ by no more than this stand equally high.
    pub const SAME_DIAMETER: Length = Length::millimetres(2);
    source: OURS, place: "default; the weightlifting rules allow 1 mm either way", standing: OurChoice,
    seen: NotApplicable,
}

fn alike(a: Length, b: Length) -> bool {
    a.micrometres().abs_diff(b.micrometres()) <= SAME_DIAMETER.micrometres().unsigned_abs()
}

/// The smaller of two diameters that stand equally high.
pub(super) fn same_diameters(left: Length, right: Length) -> Result<Length, Error> {
    if alike(left, right) {
        return Ok(left.min(right));
    }
    let rule = Allowed::rule("the same largest diameter on both ends");
    Err(Error::new(Code::LopsidedDiameters, "right", right.mm(), rule))
}

formula! {
    "loading.centre_height",
    /// How high is the bar's centre with discs of these diameters on its ends?
    ///
    /// # Formula
    /// Half the largest diameter, which must be the same on both ends within 2 mm.
    ///
    /// # Errors
    /// `no_disc` for an end without discs; `lopsided_diameters`.
    ///
    /// # Source
    /// Geometry (row `loading.centre_height`).
    ///
    /// # Examples
    /// ```
    /// use bismar::{loading::centre_height, quantity::Length};
    ///
    /// let end = [Length::from_mm(450.0)?, Length::from_mm(230.0)?];
    /// assert_eq!(centre_height(&end, &end)?.mm(), 225.0);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn centre_height(left: &[Length], right: &[Length]) -> Result<Length, Error> {
        let largest = |end: &[Length], field| {
            end.iter().copied().max().ok_or_else(|| Error::plain(Code::NoDisc, field))
        };
        same_diameters(largest(left, "left")?, largest(right, "right")?).map(Length::half)
    }
    source: ARITHMETIC, place: "definition", standing: Derived, seen: NotApplicable,
}

formula! {
    "loading.drop_below_full",
    /// How much lower does the bar lie with this largest disc than with a full one of 450 mm?
    ///
    /// # Formula
    /// `(450 mm - d) / 2`; blocks of this height under each end bring it back.
    ///
    /// # Errors
    /// `out_of_range` for a diameter at or below 0 mm or above 1000 mm.
    ///
    /// # Source
    /// Geometry (row `loading.drop_below_full`).
    ///
    /// # Examples
    /// ```
    /// use bismar::{loading::drop_below_full, quantity::Length};
    ///
    /// assert_eq!(drop_below_full(Length::from_mm(325.0)?)?.mm(), 62.5);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn drop_below_full(diameter: Length) -> Result<Length, Error> {
        let diameter = super::disc::between("diameter", diameter, Length::millimetres(1_000))?;
        FULL_DIAMETER.minus(diameter).map(Length::half)
    }
    source: ARITHMETIC, place: "definition", standing: Derived, seen: NotApplicable,
}

/// Heights of what the hands hold.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct GripHeight {
    /// The bar itself, or the low handles.
    pub low: Length,
    /// The high handles, where there are some.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub high: Option<Length>,
}

formula! {
    "loading.grip_height",
    /// How high do the hands begin on this bar, with its centre this high?
    ///
    /// # Formula
    /// A straight bar: the centre. A hex bar: the centre plus the offset of the handles. The centre stands on
    /// the discs plus whatever lies under them.
    ///
    /// # Errors
    /// `overflow` beyond 10 m.
    ///
    /// # Source
    /// Geometry (row `loading.grip_height`).
    ///
    /// # Examples
    /// ```
    /// use bismar::loading::{Bar, BarKind, grip_height};
    /// use bismar::quantity::{Length, Mass, Name};
    ///
    /// let handles = BarKind::Hex { low_handle: Length::ZERO, high_handle: Some(Length::from_mm(130.0)?) };
    /// let bar = Bar::new(Name::new("hex")?, Mass::from_kg(24.0)?, Mass::ZERO)?.shaped(handles)?;
    /// let grip = grip_height(&bar, Length::from_mm(225.0)?)?;
    /// assert_eq!((grip.low.mm(), grip.high.map(Length::mm)), (225.0, Some(355.0)));
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn grip_height(bar: &Bar, centre: Length) -> Result<GripHeight, Error> {
        let BarKind::Hex { low_handle, high_handle } = bar.kind() else {
            return Ok(GripHeight { low: centre, high: None });
        };
        let high = high_handle.map(|offset| centre.plus(offset)).transpose()?;
        Ok(GripHeight { low: centre.plus(low_handle)?, high })
    }
    source: ARITHMETIC, place: "definition", standing: Derived, seen: NotApplicable,
}

/// Two ways to lift this load from this height.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct KeepHeight {
    /// The load with discs that hold the height, where the policy finds one.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub held: Option<Loaded>,
    /// The lightest load that discs hold at this height; none if no pair has the diameter.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub lightest_held: Option<Mass>,
    /// The load without regard for height.
    pub plain: Loaded,
    /// Blocks to put under each end for that load; none for a bar without discs, which needs supports.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub blocks: Option<Length>,
    /// Kinds of disc not used: of unknown diameter, or so large that they would lift the bar higher.
    pub left_out: Vec<u16>,
}

formula! {
    "loading.keep_height",
    /// How is this load made with the bar's centre at this height: with which discs, or on which blocks?
    ///
    /// # Formula
    /// Held by discs: at least one disc a side of twice the height (within 2 mm), none larger, else as
    /// [`load`](super::load()). On blocks: the plain load, and `height - d / 2` under each end.
    ///
    /// One load, on whatever blocks it takes; the rules hold a lift's height by [`AtHeight`](super::AtHeight), which knows the blocks
    /// that there are.
    ///
    /// # Domain
    /// Light, thin discs of full diameter are often not made to be dropped.
    ///
    /// # Errors
    /// `out_of_range` for a height at or below 0 mm or above 500 mm; those of [`load`](super::load()) for the
    /// plain load.
    ///
    /// # Source
    /// Geometry (row `loading.keep_height`).
    ///
    /// # Examples
    /// ```
    /// use bismar::loading::{Bar, Disc, Rounding, Stock, keep_height};
    /// use bismar::quantity::{Length, Mass, Name};
    ///
    /// let bar = Bar::new(Name::new("bar 20")?, Mass::from_kg(20.0)?, Mass::ZERO)?;
    /// let disc = |kg: f64, mm: f64| -> Result<Disc, bismar::Error> {
    ///     Disc::new(Mass::from_kg(kg)?, 2)?.with_diameter(Length::from_mm(mm)?)
    /// };
    /// let stock = Stock::new(vec![disc(20.0, 450.0)?, disc(10.0, 325.0)?])?;
    /// let plan = keep_height(&bar, &stock, Mass::from_kg(40.0)?, Rounding::Below, Length::from_mm(225.0)?)?;
    /// assert!(plan.held.is_none());
    /// assert_eq!(plan.lightest_held.map(Mass::kg), Some(60.0));
    /// assert_eq!(plan.blocks.map(Length::mm), Some(62.5));
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn keep_height(bar: &Bar, stock: &Stock, target: Mass, policy: Rounding, height: Length) -> Result<KeepHeight, Error> {
        let height = super::disc::between("height", height, Length::millimetres(500))?;
        let wanted = height.times(2)?;
        let (stock, left_out) = only(stock, |own| own <= wanted || alike(own, wanted))?;
        let plain = Prepared::new(&Implement::Bar(bar.clone()), &stock, target)?.load(target, policy)?;
        let blocks = plain.centre_height.map(|centre| height.minus(centre)).transpose()?;
        let mut plan = KeepHeight {
            held: None,
            lightest_held: None,
            plain,
            // A disc up to 2 mm larger than asked still stands at the height.
            blocks: blocks.map(|blocks| blocks.max(Length::ZERO)),
            left_out,
        };
        let holds = |disc: &Disc| disc.pairs() > 0 && disc.diameter().is_some_and(|d| alike(d, wanted));
        if stock.discs().iter().any(holds) {
            let prepared = prepare_with(bar, &stock, target, MARGIN_IN_DISCS, holds)?;
            plan.lightest_held = prepared.lightest();
            plan.held = prepared.load(target, policy).ok();
        }
        Ok(plan)
    }
    source: ARITHMETIC, place: "definition", standing: Derived, seen: NotApplicable,
}

/// The stock with none of the discs whose diameter is unknown or unfit, places kept; and which kinds those are.
pub(super) fn only(stock: &Stock, fit: impl Fn(Length) -> bool) -> Result<(Stock, Vec<u16>), Error> {
    let mut left_out = Vec::new();
    let mut discs = Vec::new();
    for (kind, disc) in (0_u16..).zip(stock.discs()) {
        let fits = disc.diameter().is_some_and(&fit);
        if !fits {
            left_out.push(kind);
        }
        discs.push(if fits { *disc } else { disc.counted(0)? });
    }
    Ok((Stock::new(discs)?, left_out))
}

rows![SAME_DIAMETER, centre_height, drop_below_full, grip_height, keep_height];
