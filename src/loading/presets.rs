//! Bars and discs of open standards, and generic trade sizes.

use alloc::vec::Vec;

use super::bar::Bar;
use super::disc::{Disc, Stock};
use crate::error::Error;
use crate::quantity::{Length, Mass, Name};
use crate::source::{COMMON_PRACTICE, Source, constant, formula, rows};

pub(super) const IWF: Source = Source {
    id: "iwf-rules",
    citation: "International Weightlifting Federation. Technical and Competition Rules and Regulations, \
               section 3.3, Sport equipment (editions 2013 to 2020)",
    doi: None,
};

pub(super) const IPF: Source = Source {
    id: "ipf-rules",
    citation: "International Powerlifting Federation. Technical Rules Book, Bars and Discs (2014)",
    doi: None,
};

const WDFPF: Source = Source {
    id: "wdfpf-rules",
    citation: "World Drug-Free Powerlifting Federation. Rule Book, revised January 2007, Equipment and Specifications",
    doi: None,
};

/// Collars of both rule books: 2.5 kg each.
const COLLAR: Mass = Mass::grams(2_500);
/// Discs of the weightlifting set in grams, and the lightest that has the full diameter.
const IWF_DISCS: [i32; 10] = [25_000, 20_000, 15_000, 10_000, 5_000, 2_500, 2_000, 1_500, 1_000, 500];
const LIGHTEST_FULL_DISC: Mass = Mass::grams(10_000);
/// Discs of the powerlifting set in grams; the last two serve records only.
const IPF_DISCS: [i32; 9] = [25_000, 20_000, 15_000, 10_000, 5_000, 2_500, 1_250, 500, 250];
/// Iron discs of the trade: pounds and about how many millimetres across.
const POUND_DISCS: [(f64, i16); 6] =
    [(45.0, 450), (35.0, 360), (25.0, 280), (10.0, 228), (5.0, 200), (2.5, 160)];

constant! {
    "loading.full_diameter",
    /// Diameter of the largest disc of the weightlifting rules.
    pub const FULL_DIAMETER: Length = Length::millimetres(450);
    source: IWF, place: "section 3.3.3", standing: Standard, seen: Secondary,
    copies: "two articles that restate the rules",
    domain: "weightlifting discs of 10 kg and more, within 1 mm; the upper limit in powerlifting, as recalled",
}

formula! {
    "loading.iwf_bar_men",
    /// What is a men's weightlifting bar?
    ///
    /// # Formula
    /// 20 kg, collars of 2.5 kg each, 415 mm of sleeve.
    ///
    /// # Errors
    /// None for a valid name.
    ///
    /// # Source
    /// IWF rules, section 3.3, as others restate them (row `loading.iwf_bar_men`).
    ///
    /// # Examples
    /// ```
    /// use bismar::{loading::iwf_bar_men, quantity::Name};
    ///
    /// assert_eq!(iwf_bar_men(Name::new("men's bar")?)?.empty()?.kg(), 25.0);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn iwf_bar_men(id: Name) -> Result<Bar, Error> {
        Bar::new(id, Mass::grams(20_000), COLLAR)?.with_sleeve(Length::millimetres(415))
    }
    source: IWF, place: "section 3.3.2", standing: Standard, seen: Secondary,
    copies: "a national federation's page, a broadcaster's guide and an article that restate the rules",
}

formula! {
    "loading.iwf_bar_women",
    /// What is a women's weightlifting bar?
    ///
    /// # Formula
    /// 15 kg, collars of 2.5 kg each, 320 mm of sleeve.
    ///
    /// # Errors
    /// None for a valid name.
    ///
    /// # Source
    /// IWF rules, section 3.3, as others restate them (row `loading.iwf_bar_women`).
    ///
    /// # Examples
    /// ```
    /// use bismar::{loading::iwf_bar_women, quantity::Name};
    ///
    /// assert_eq!(iwf_bar_women(Name::new("women's bar")?)?.empty()?.kg(), 20.0);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn iwf_bar_women(id: Name) -> Result<Bar, Error> {
        Bar::new(id, Mass::grams(15_000), COLLAR)?.with_sleeve(Length::millimetres(320))
    }
    source: IWF, place: "section 3.3.2", standing: Standard, seen: Secondary,
    copies: "a national federation's page, a broadcaster's guide and an article that restate the rules",
}

formula! {
    "loading.powerlifting_bar",
    /// What is a powerlifting bar?
    ///
    /// # Formula
    /// 20 kg and collars of 2.5 kg each, 25 kg together, for men and women. The rules give no sleeve length:
    /// measure it.
    ///
    /// # Errors
    /// None for a valid name.
    ///
    /// # Source
    /// WDFPF rules: bar and collars together weigh 25 kg. The split into 20 kg and twice 2.5 kg is recalled, and the
    /// same in weightlifting (row `loading.powerlifting_bar`).
    ///
    /// # Examples
    /// ```
    /// use bismar::{loading::powerlifting_bar, quantity::Name};
    ///
    /// assert_eq!(powerlifting_bar(Name::new("bar")?)?.empty()?.kg(), 25.0);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn powerlifting_bar(id: Name) -> Result<Bar, Error> {
        Bar::new(id, Mass::grams(20_000), COLLAR)
    }
    source: WDFPF, place: "Equipment and Specifications", standing: Standard, seen: Read,
    recalled: "the split into bar and collars, and one bar for men and women",
}

/// A stock of so many pairs of each mass in grams.
fn stock_of(grams: &[i32], pairs: u16) -> Result<Vec<Disc>, Error> {
    grams.iter().map(|grams| Disc::new(Mass::grams(*grams), pairs.saturating_mul(2))).collect()
}

formula! {
    "loading.iwf_stock",
    /// Which discs has a weightlifting set, with so many pairs of each?
    ///
    /// # Formula
    /// 25, 20, 15, 10, 5, 2.5, 2, 1.5, 1 and 0.5 kg; those of 10 kg and more are 450 mm across. The smaller
    /// ones have no diameter here, nor has any a thickness: measure them.
    ///
    /// # Errors
    /// `out_of_range` above 15 pairs.
    ///
    /// # Source
    /// IWF rules, section 3.3.3, as others restate them (row `loading.iwf_stock`).
    ///
    /// # Examples
    /// ```
    /// assert_eq!(bismar::loading::iwf_stock(1)?.discs().len(), 10);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn iwf_stock(pairs: u16) -> Result<Stock, Error> {
        let full = |disc: Disc| {
            if disc.nominal() < LIGHTEST_FULL_DISC { Ok(disc) } else { disc.with_diameter(FULL_DIAMETER) }
        };
        Stock::new(stock_of(&IWF_DISCS, pairs)?.into_iter().map(full).collect::<Result<_, Error>>()?)
    }
    source: IWF, place: "section 3.3.3", standing: Standard, seen: Secondary,
    copies: "a broadcaster's guide and an article that restate the rules",
}

formula! {
    "loading.powerlifting_stock",
    /// Which discs has a powerlifting set, with so many pairs of each?
    ///
    /// # Formula
    /// 25, 20, 15, 10, 5, 2.5 and 1.25 kg; 0.5 and 0.25 kg serve records only and are listed last. The rules
    /// limit diameter and thickness without fixing them: measure them.
    ///
    /// # Errors
    /// `out_of_range` above 15 pairs.
    ///
    /// # Source
    /// IPF rules, Bars and Discs, recalled for the edition of 2014 (row `loading.powerlifting_stock`). A copy of
    /// unknown edition lists discs up to 50 kg, and a page for referees has 0.5, 1, 1.5 and 2 kg for records: count
    /// your own.
    ///
    /// # Examples
    /// ```
    /// assert_eq!(bismar::loading::powerlifting_stock(1)?.discs().len(), 9);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn powerlifting_stock(pairs: u16) -> Result<Stock, Error> {
        Stock::new(stock_of(&IPF_DISCS, pairs)?)
    }
    source: IPF, place: "Bars and Discs; recalled", standing: CommonPractice, seen: Memory,
}

formula! {
    "loading.pound_stock",
    /// Which iron discs does the trade sell in pounds, with so many pairs of each?
    ///
    /// # Formula
    /// 45, 35, 25, 10, 5 and 2.5 lb; about 450, 360, 280, 228, 200 and 160 mm across. No standard fixes
    /// them: weigh and measure your own.
    ///
    /// # Errors
    /// `out_of_range` above 15 pairs.
    ///
    /// # Source
    /// Common practice (row `loading.pound_stock`).
    ///
    /// # Examples
    /// ```
    /// assert_eq!(bismar::loading::pound_stock(1)?.discs().len(), 6);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn pound_stock(pairs: u16) -> Result<Stock, Error> {
        let disc = |(pounds, millimetres): &(f64, i16)| {
            Disc::new(Mass::from_lb(*pounds)?, pairs.saturating_mul(2))?
                .with_diameter(Length::millimetres(*millimetres))
        };
        Stock::new(POUND_DISCS.iter().map(disc).collect::<Result<_, Error>>()?)
    }
    source: COMMON_PRACTICE, place: "trade sizes", standing: CommonPractice, seen: NotApplicable,
}

formula! {
    "loading.quarter_pounds_down",
    /// How do powerlifting records in kilograms read in pounds?
    ///
    /// # Formula
    /// `lb = floor(4 kg / 0.453 592 37) / 4`: down to the next lower quarter pound, never to the nearest.
    ///
    /// # Domain
    /// Loads; labels of body-mass classes are rounded in other ways.
    ///
    /// # Errors
    /// None.
    ///
    /// # Source
    /// The rows of rule books and record charts as recalled; none was read (row `loading.quarter_pounds_down`).
    ///
    /// # Examples
    /// ```
    /// use bismar::{loading::quarter_pounds_down, quantity::Mass};
    ///
    /// assert_eq!(quarter_pounds_down(Mass::from_kg(182.5)?)?, 402.25);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn quarter_pounds_down(mass: Mass) -> Result<f64, Error> {
        let pound = Mass::from_lb(1.0)?.nanograms();
        let quarters = mass.nanograms().saturating_mul(4).div_euclid(pound);
        Ok(quarters as f64 / 4.0)
    }
    source: IPF, place: "rows of rule books and record charts; recalled", standing: CommonPractice, seen: Memory,
}

rows![
    FULL_DIAMETER,
    iwf_bar_men,
    iwf_bar_women,
    powerlifting_bar,
    iwf_stock,
    powerlifting_stock,
    pound_stock,
    quarter_pounds_down,
];
