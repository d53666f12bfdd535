//! The table, what the host knows about it, and what became of it.

use alloc::string::String;
use alloc::vec::Vec;

use derive_setters::Setters;

use crate::quantity::{Name, Unit};
use crate::record::Log;

/// A table of sets: a head, then a row a set.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum SetsTable {
    /// As text, the cells between commas, semicolons or tabs.
    Csv(String),
    /// As cells.
    Rows(TableRows),
}

/// A table as cells.
#[derive(Clone, Debug, PartialEq, Eq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct TableRows {
    /// Names of the columns.
    pub columns: Vec<String>,
    /// The rows, each with a text a column; empty where nothing was written down.
    pub rows: Vec<Vec<String>>,
}

impl TableRows {
    /// These rows below these columns.
    #[must_use]
    pub fn new(columns: Vec<String>, rows: Vec<Vec<String>>) -> TableRows {
        TableRows { columns, rows }
    }
}

/// What the host knows about a table, so that it need not be guessed.
#[derive(Clone, Debug, Default, PartialEq, Setters)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, default)
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct TableReading {
    /// The unit of loads that name none.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub unit: Option<Unit>,
    /// Which number of a day is the month.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub day_order: Option<DayOrder>,
    /// What the table calls a lift.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Vec::is_empty"))]
    pub lifts: Vec<LiftSpelling>,
}

/// Which number of a day comes first.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum DayOrder {
    /// 29.3.2026.
    DayFirst,
    /// 3/29/2026.
    MonthFirst,
}

/// A lift as a table calls it.
#[derive(Clone, Debug, PartialEq, Eq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct LiftSpelling {
    /// In the table.
    pub text: String,
    /// Its id in the log.
    pub lift: Name,
}

impl LiftSpelling {
    /// That text means that lift.
    #[must_use]
    pub fn new(text: String, lift: Name) -> LiftSpelling {
        LiftSpelling { text, lift }
    }
}

/// Something that the table does not say, and how it was read.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum TableGuess {
    /// Cells stand between these.
    Separator(String),
    /// A column goes by another name.
    ColumnReadAs {
        /// Its name.
        column: String,
        /// What it was taken for.
        field: &'static str,
    },
    /// Days are written in this order, since so many rows can be read in no other.
    DayOrder {
        /// The order.
        order: DayOrder,
        /// Rows that show it.
        rows: u32,
    },
    /// So many days have a time of day, which a log does not keep.
    TimeLeftOut(u32),
    /// So many rows have a comma that was read as the decimal mark.
    DecimalComma(u32),
    /// So many loads are in pounds.
    Pounds(u32),
    /// A lift was found under another spelling.
    LiftReadAs {
        /// In the table.
        text: String,
        /// Its id in the log.
        lift: Name,
    },
    /// The rows of one day are one session, since no column tells sessions apart.
    OneSessionADay,
    /// Every row is a work set, since no column tells warm-ups.
    EveryRowAWorkSet,
    /// Every set was done at the place that was granted: the table says nothing of rung, range and tempo.
    PlaceAsGranted,
}

/// A row of which nothing was taken.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct RowLeftOut {
    /// The line where it begins; of a table as cells the number of the row, where the head is 1.
    pub line: u32,
    /// Code of the error, or `warm_up`, or `already_there`.
    pub why: &'static str,
    /// Which part of the row.
    pub field: String,
    /// What stands there.
    pub given: String,
}

/// The log with the sessions of the table, and what became of each row.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SetsToLog {
    /// The log that was given, with the sessions of the table behind its events.
    pub log: Log,
    /// Rows of the table.
    pub rows: u32,
    /// Rows of which the set, or sets, were taken.
    pub taken: u32,
    /// Sessions that were added.
    pub sessions: u32,
    /// Everything that the table does not say.
    pub guesses: Vec<TableGuess>,
    /// Columns that say nothing a log can keep, or that have no known name.
    pub columns_left_out: Vec<String>,
    /// Rows of which nothing was taken; together with those taken they are all.
    pub left_out: Vec<RowLeftOut>,
}
