//! Asks the library for its schemas.

use std::collections::BTreeMap;

use bismar::registry;
use bismar::source::Schemas;
use bismar_bindings::doors;
use schemars::SchemaGenerator;
use schemars::generate::{Contract, SchemaSettings};
use serde_json::{Map, Value};

use super::read::{described, shape, type_of};
use super::typescript::is_taken;
use super::{Direction, Signature, Types};
use crate::Failure;

/// The types of everything in the library that is called by name.
pub(crate) fn generate() -> Result<Types, Failure> {
    generate_with(&[])
}

/// The same with more functions that are called by name.
pub(crate) fn generate_with(more: &[(&str, Schemas)]) -> Result<Types, Failure> {
    let mut all: Vec<(&str, Schemas)> = registry::rows().map(|row| (row.key, row.schemas())).collect();
    for door in doors::lists(None).into_iter().chain(doors::lists(Some("english"))).flatten() {
        let schemas = door.schemas().ok_or_else(|| format!("{} has no schemas", door.key))?;
        all.push((door.key, schemas));
    }
    all.extend(more);
    let (mut given, mut answered) = (Generator::new(Direction::Given), Generator::new(Direction::Answered));
    let mut functions = BTreeMap::new();
    for (key, schemas) in all {
        // Each way for all of them, so that a type that goes one way only has the name that says which.
        let (takes, _) = given.signature(&schemas);
        let (_, gives) = answered.signature(&schemas);
        let takes = takes.iter().map(shape).collect();
        functions.insert(key.to_string(), Signature { takes, gives: shape(&gives) });
    }
    let (definitions, written) = (given.definitions()?, answered.definitions()?);
    let answered: BTreeMap<_, _> =
        written.iter().map(|(name, schema)| (name.clone(), type_of(schema))).collect();
    let mut given: BTreeMap<_, _> =
        definitions.iter().map(|(name, schema)| (name.clone(), type_of(schema))).collect();
    for (name, one) in &mut given {
        if let Some(other) = answered.get(name) {
            described(one, other);
        }
    }
    Ok(Types { given, answered, definitions, functions })
}

/// Makes schemas for one way.
struct Generator(SchemaGenerator);

impl Generator {
    fn new(direction: Direction) -> Generator {
        let contract = match direction {
            Direction::Given => Contract::Deserialize,
            Direction::Answered => Contract::Serialize,
        };
        Generator(
            SchemaSettings::draft2020_12().with(|settings| settings.contract = contract).into_generator(),
        )
    }

    fn signature(&mut self, schemas: &Schemas) -> (Vec<Value>, Value) {
        let takes = (schemas.takes)(&mut self.0).into_iter().map(Value::from).collect();
        (takes, (schemas.gives)(&mut self.0).into())
    }

    /// All types that were named; two of one name are refused, since nobody could tell them apart.
    fn definitions(mut self) -> Result<Map<String, Value>, Failure> {
        let definitions = self.0.take_definitions(true);
        let mut wrong = Vec::new();
        for name in definitions.keys() {
            // A second one of a name gets a number.
            let plain = name.trim_end_matches(|c: char| c.is_ascii_digit());
            if is_taken(name) {
                wrong.push(format!("{name} means something in TypeScript"));
            } else if plain != name && definitions.contains_key(plain) {
                wrong.push(format!("two types are called {plain}"));
            }
        }
        if wrong.is_empty() {
            return Ok(definitions);
        }
        Err(format!("{}: say `schemars(rename = \"...\")` on the type", wrong.join(", ")).into())
    }
}
