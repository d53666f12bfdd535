//! A table of sets from elsewhere: what it would add to a log, before anything is added.

use bismar::Error;
use bismar::answers::{SetsTable, SetsToLog, TableReading, sets_to_log};
use bismar::record::Log;
use bismar::value::Value;
use serde::{Deserialize, Serialize};

/// A table, with what the coach says about it, for a log as text.
#[derive(Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename = "TableInTable"))]
#[serde(deny_unknown_fields)]
pub(crate) struct Table {
    log: String,
    csv: String,
    reading: TableReading,
}

/// What became of it.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub(crate) struct TableIn {
    /// What was read, guessed and left out; its log is empty, since the page has it.
    told: SetsToLog,
    /// The sessions that it adds, each as its text is kept.
    texts: Vec<String>,
}

pub(crate) fn table_in(asked: Table) -> Result<TableIn, Error> {
    let log = Log::from_json(&asked.log)?;
    let mut told = sets_to_log(&SetsTable::Csv(asked.csv), &log, Some(&asked.reading))?;
    let added = told.log.events.split_off(log.events.len());
    told.log.events.clear();
    let texts: Result<Vec<String>, Error> =
        added.iter().map(|event| Value::write(event).map(|value| value.to_json())).collect();
    Ok(TableIn { told, texts: texts? })
}
