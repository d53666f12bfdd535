//! Do two people, or one person twice, give the same marks?

use alloc::vec::Vec;

use super::marks::Mark;
use crate::error::{Allowed, Code, Error};
use crate::numeric::normal::normal_reach;
use crate::numeric::{self, sqrt, sum::sum};
use crate::quantity::Interval;
use crate::source::{OURS, Source, formula, rows};

const COHEN_1960: Source = Source {
    id: "cohen-1960",
    citation: "Cohen J. A coefficient of agreement for nominal scales. Educ Psychol Meas 20:37-46, 1960; weighted: \
               Cohen J, Psychol Bull 70:213-220, 1968; standard error: Fleiss JL, Cohen J, Everitt BS, \
               Psychol Bull 72:323-327, 1969",
    doi: Some("10.1177/001316446002000104"),
};

/// Most categories of a table.
const MOST_CATEGORIES: usize = 20;
/// Most pairs of marks.
const MOST_PAIRS: usize = 100_000;

/// How much a near miss counts as agreement, categories being in order.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum AgreementWeights {
    /// Only the same category counts.
    #[default]
    None,
    /// Falls off with the distance.
    Linear,
    /// Falls off with the square of the distance.
    Quadratic,
}

impl AgreementWeights {
    fn at(self, row: usize, column: usize, categories: usize) -> f64 {
        let distance = row.abs_diff(column) as f64 / (categories - 1) as f64;
        match self {
            AgreementWeights::None if row == column => 1.0,
            AgreementWeights::None => 0.0,
            AgreementWeights::Linear => 1.0 - distance,
            AgreementWeights::Quadratic => 1.0 - distance * distance,
        }
    }
}

/// Agreement beyond chance.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct Agreement {
    /// Pairs that were compared.
    pub pairs: u32,
    /// Pairs left out because one of the two had not seen it.
    pub left_out: u32,
    /// Share of agreement, weighted.
    pub observed: f64,
    /// Share that two raters with these habits would reach by chance.
    pub by_chance: f64,
    /// `(observed - by_chance) / (1 - by_chance)`: 1 in full agreement, 0 at chance.
    pub kappa: f64,
    /// Large-sample standard error; too small below some dozens of pairs.
    pub standard_error: f64,
    /// `kappa` with the standard error times the normal quantile on either side.
    pub interval: Interval,
}

/// A square table of pairs as shares, with its row and column sums.
struct Shares {
    cells: Vec<(usize, usize, f64)>,
    rows: Vec<f64>,
    columns: Vec<f64>,
    pairs: u32,
}

impl Shares {
    fn new(table: &[Vec<u32>]) -> Result<Shares, Error> {
        let categories = table.len();
        if !(2..=MOST_CATEGORIES).contains(&categories) {
            let highest = MOST_CATEGORIES as f64;
            return Err(Error::range(Code::OutOfRange, "table", categories, 2.0, highest, "categories"));
        }
        if let Some(row) = table.iter().find(|row| row.len() != categories) {
            let rule = Allowed::rule("as many columns as rows");
            return Err(Error::new(Code::WrongLength, "table", row.len(), rule));
        }
        let total: u64 = table.iter().flatten().map(|count| u64::from(*count)).sum();
        if total == 0 {
            return Err(Error::new(Code::NoTrials, "table", total, Allowed::rule("at least one pair")));
        }
        let Ok(pairs) = u32::try_from(total) else {
            return Err(Error::range(Code::OutOfRange, "table", total, 1.0, f64::from(u32::MAX), "pairs"));
        };
        let share = |count: u32| f64::from(count) / f64::from(pairs);
        let cells = table.iter().enumerate().flat_map(|(row, counts)| {
            counts.iter().enumerate().map(move |(column, count)| (row, column, share(*count)))
        });
        let of_row = |row: &Vec<u32>| sum(row.iter().map(|count| share(*count)));
        let of_column =
            |column: usize| sum(table.iter().filter_map(|row| row.get(column)).map(|c| share(*c)));
        Ok(Shares {
            cells: cells.collect(),
            rows: table.iter().map(of_row).collect(),
            columns: (0..categories).map(of_column).collect(),
            pairs,
        })
    }

    /// Mean weight of each row, or of each column, over the other rater's habits.
    fn mean_weights(&self, other: &[f64], weights: AgreementWeights) -> Vec<f64> {
        let size = self.rows.len();
        let mean = |at: usize| sum((0..size).zip(other).map(|(to, share)| weights.at(at, to, size) * share));
        (0..size).map(mean).collect()
    }
}

fn agreement(shares: &Shares, weights: AgreementWeights, level: f64) -> Result<Agreement, Error> {
    let level = numeric::within(Code::OutOfRange, "level", level, 0.5, 0.9999, "")?;
    let size = shares.rows.len();
    let row_means = shares.mean_weights(&shares.columns, weights);
    let column_means = shares.mean_weights(&shares.rows, weights);
    let observed =
        sum(shares.cells.iter().map(|(row, column, share)| weights.at(*row, *column, size) * share));
    let by_chance = sum(row_means.iter().zip(&shares.rows).map(|(weight, share)| weight * share));
    let room = 1.0 - by_chance;
    // Both raters used one category only: full agreement, and nothing to tell it from habit.
    if room <= 1e-12 {
        return Err(Error::new(Code::ZeroSpread, "table", by_chance, Allowed::rule("two categories in use")));
    }
    let spread = sum(shares.cells.iter().map(|(row, column, share)| {
        let mean = |means: &[f64], at: usize| means.get(at).copied().unwrap_or_default();
        let habit = mean(&row_means, *row) + mean(&column_means, *column);
        let term = weights.at(*row, *column, size) * room - habit * (1.0 - observed);
        share * term * term
    }));
    let centre = observed * by_chance - 2.0 * by_chance + observed;
    let variance = numeric::larger(spread - centre * centre, 0.0) / f64::from(shares.pairs);
    let standard_error = sqrt(variance) / (room * room);
    let kappa = numeric::tidy((observed - by_chance) / room);
    let reach = normal_reach(level) * standard_error;
    Ok(Agreement {
        pairs: shares.pairs,
        left_out: 0,
        observed,
        by_chance,
        kappa,
        standard_error,
        interval: Interval::new(kappa - reach, kappa + reach, level)?,
    })
}

formula! {
    "gate.cohen_kappa",
    /// How far do two raters agree beyond chance, given the table of their pairs?
    ///
    /// # Formula
    /// `kappa = (po - pe) / (1 - pe)`, `po = sum w_ij p_ij`, `pe = sum w_ij p_i. p_.j`; weights 1 on the diagonal
    /// and 0 elsewhere, or `1 - |i-j| / (k-1)`, or `1 - ((i-j) / (k-1))^2`. Variance
    /// `(sum p_ij (w_ij (1-pe) - (w_i. + w_.j) (1-po))^2 - (po pe - 2 pe + po)^2) / (n (1-pe)^4)`, with `w_i.`
    /// and `w_.j` the mean weights of a row and a column; interval `kappa` plus and minus the normal quantile
    /// times its root.
    ///
    /// # Domain
    /// A square table of 2 to 20 categories, in order if weighted; rows one rater, columns the other; a level
    /// from 0.5 to 0.9999. The standard error is for large samples, and the interval may pass 1.
    ///
    /// # Errors
    /// `wrong_length`, `no_trials`, `out_of_range`; `zero_spread` where both used one and the same category only.
    ///
    /// # Source
    /// Cohen 1960 and 1968; Fleiss, Cohen, Everitt 1969 (row `gate.cohen_kappa`).
    ///
    /// # Examples
    /// ```
    /// use bismar::gate::{AgreementWeights, cohen_kappa};
    ///
    /// let table = [vec![20, 5], vec![10, 15]];
    /// let agreement = cohen_kappa(&table, AgreementWeights::None, 0.95)?;
    /// assert!((agreement.kappa - 0.4).abs() < 1e-12);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn cohen_kappa(table: &[Vec<u32>], weights: AgreementWeights, level: f64) -> Result<Agreement, Error> {
        agreement(&Shares::new(table)?, weights, level)
    }
    source: COHEN_1960, place: "equations 1 and 2; the variance in Fleiss et al. 1969", standing: Published, seen: Memory,
    domain: "2 to 20 categories",
}

/// Place of a mark in order, if it was seen.
const fn place(mark: Mark) -> Option<usize> {
    match mark {
        Mark::Met => Some(0),
        Mark::Borderline => Some(1),
        Mark::NotMet => Some(2),
        Mark::NotSeen => None,
    }
}

formula! {
    "gate.rater_agreement",
    /// Do two raters mark alike, over the same criteria of the same sets?
    ///
    /// # Formula
    /// Kappa ([`cohen_kappa`]) over met, borderline and not met, in this order.
    ///
    /// # Domain
    /// Two lists of marks of equal length, place by place the same thing seen. Pairs with a mark that was not
    /// seen are left out and counted.
    ///
    /// # Errors
    /// `wrong_length` for lists of different length; `out_of_range` above 100 000 pairs; those of
    /// [`cohen_kappa`].
    ///
    /// # Source
    /// Our choice of what to compare; the coefficient is Cohen's (row `gate.rater_agreement`).
    ///
    /// # Examples
    /// ```
    /// use bismar::gate::{AgreementWeights, Mark, rater_agreement};
    ///
    /// let coach = [Mark::Met, Mark::Met, Mark::NotMet, Mark::Borderline, Mark::NotSeen];
    /// let video = [Mark::Met, Mark::Met, Mark::NotMet, Mark::NotMet, Mark::Met];
    /// let agreement = rater_agreement(&coach, &video, AgreementWeights::None, 0.95)?;
    /// assert_eq!((agreement.pairs, agreement.left_out), (4, 1));
    /// assert!((agreement.kappa - 0.6).abs() < 1e-12);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn rater_agreement(first: &[Mark], second: &[Mark], weights: AgreementWeights, level: f64) -> Result<Agreement, Error> {
        if first.len() != second.len() {
            let rule = Allowed::rule("as many as in `first`");
            return Err(Error::new(Code::WrongLength, "second", second.len(), rule));
        }
        if first.len() > MOST_PAIRS {
            let highest = MOST_PAIRS as f64;
            return Err(Error::range(Code::OutOfRange, "first", first.len(), 1.0, highest, "marks"));
        }
        let mut table = Vec::from([[0; 3]; 3].map(Vec::from));
        let mut left_out = 0;
        for (one, other) in first.iter().zip(second) {
            let seen = place(*one).zip(place(*other));
            match seen.and_then(|(row, column)| table.get_mut(row)?.get_mut(column)) {
                Some(count) => *count += 1,
                None => left_out += 1,
            }
        }
        Ok(Agreement { left_out, ..agreement(&Shares::new(&table)?, weights, level)? })
    }
    source: OURS, place: "technique gate", standing: OurChoice, seen: NotApplicable,
    domain: "up to 100 000 pairs of marks",
}

rows![cohen_kappa, rater_agreement];
