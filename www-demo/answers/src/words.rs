//! Cautions, errors, sources and days in words.

use bismar::caution::Caution;
use bismar::progression::State;
use bismar::quantity::{Day, Mass, Unit};
use bismar::source::{Seen, Standing};
use bismar::text::Words;
use bismar::{Code, Error, registry};
use serde::{Deserialize, Serialize};

use crate::today::{Said, said};

/// The words for the loads of a lifter, as the page shows them: in that unit, one load in one way.
pub(crate) fn spoken(state: &State, unit: Unit) -> Words<'_> {
    state.parameters().map_or_else(Words::plain, Words::of).in_unit(unit).finely()
}

#[derive(Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub(crate) struct Nothing {}

/// The notes that belong beside every answer, gravest first.
const NOTES: [Caution; 10] = [
    Caution::EmergencySigns,
    Caution::BackEmergency,
    Caution::SeeClinicianFirst,
    Caution::NotWhileUnwell,
    Caution::AskBeforeStarting,
    Caution::BreathingPlan,
    Caution::EstimatesAreRanges,
    Caution::HoldingIsGood,
    Caution::GatesUnproven,
    Caution::ExaminesNobody,
];

/// The notes in words.
pub(crate) fn cautions(_: Nothing) -> Result<Vec<Said>, Error> {
    Ok(NOTES.iter().map(said).collect())
}

#[derive(Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub(crate) struct Coded {
    code: String,
}

/// What an error code or the key of a caution says.
pub(crate) fn explain(asked: Coded) -> Result<String, Error> {
    let error = Code::ALL.iter().find(|code| code.as_str() == asked.code).map(|code| code.meaning());
    let caution =
        Caution::ALL.iter().find(|caution| caution.as_str() == asked.code).map(|caution| caution.meaning());
    Ok(error.or(caution).unwrap_or("Something was refused.").to_string())
}

#[derive(Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename = "WordsKey"))]
#[serde(deny_unknown_fields)]
pub(crate) struct Key {
    key: String,
}

/// Where a function's numbers come from.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub(crate) struct SourceSaid {
    citation: String,
    #[serde(skip_serializing_if = "Option::is_none")]
    doi: Option<String>,
    place: String,
    standing: &'static str,
    seen: &'static str,
    population: String,
    domain: String,
}

/// The source of a row of the registry.
pub(crate) fn source(asked: Key) -> Result<SourceSaid, Error> {
    let row = registry::row(&asked.key).ok_or_else(|| {
        let rule = bismar::error::Allowed::rule("a key of the registry");
        Error::new(Code::UnknownFunction, "key", asked.key.as_str(), rule)
    })?;
    Ok(SourceSaid {
        citation: row.source.citation.to_string(),
        doi: row.source.doi.map(ToString::to_string),
        place: row.place.to_string(),
        standing: match row.standing {
            Standing::Published => "published",
            Standing::Standard => "a standard",
            Standing::Derived => "plain arithmetic",
            Standing::CommonPractice => "common practice",
            _ => "this project's choice",
        },
        seen: match row.seen {
            Seen::Read => "read in the source",
            Seen::Secondary => "equal in independent copies, not read in the source",
            Seen::Memory => "recalled, not checked in the source",
            Seen::NotApplicable => "",
        },
        population: row.population.to_string(),
        domain: row.domain.to_string(),
    })
}

/// A day and how many days to add.
#[derive(Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub(crate) struct Shift {
    day: Day,
    plus: i32,
}

/// The day so many days later.
pub(crate) fn day(asked: Shift) -> Result<Day, Error> {
    asked.day.plus(asked.plus)
}

/// A mass in any unit.
#[derive(Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub(crate) struct Weighed {
    mass: Mass,
}

/// The mass in kilograms.
pub(crate) fn mass(asked: Weighed) -> Result<Mass, Error> {
    Ok(asked.mass)
}

/// Every digit of a mass in kilograms.
pub(crate) fn exact(asked: Weighed) -> Result<String, Error> {
    Ok(asked.mass.exact_kg())
}
