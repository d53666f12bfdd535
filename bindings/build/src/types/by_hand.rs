//! Types whose reading and writing is written by hand in the crate.

/// A type given in words of its own.
#[derive(Debug)]
pub(crate) struct ByHand {
    pub(crate) module: &'static str,
    pub(crate) name: &'static str,
    pub(crate) doc: &'static str,
    /// TypeScript of what may be given.
    pub(crate) given: &'static str,
    /// TypeScript of what is answered.
    pub(crate) answered: &'static str,
    /// JSON Schema of what may be given.
    pub(crate) schema: &'static str,
}

const MASS_SCHEMA: &str = r#"{ "oneOf": [
    { "type": "object", "properties": { "kg": { "type": "number" } }, "required": ["kg"], "additionalProperties": false },
    { "type": "object", "properties": { "lb": { "type": "number" } }, "required": ["lb"], "additionalProperties": false } ] }"#;

/// All of them.
pub(crate) static BY_HAND: &[ByHand] = &[
    ByHand {
        module: "quantity",
        name: "Mass",
        doc: "A mass: kilograms or pounds may be given, kilograms are answered. Exact; from -2000 kg to 2000 kg.",
        given: "{ kg: number } | { lb: number }",
        answered: "{ kg: number }",
        schema: MASS_SCHEMA,
    },
    ByHand {
        module: "quantity",
        name: "Face",
        doc: "The face value of a disc: answered in the unit in which the disc is marked.",
        given: "{ kg: number } | { lb: number }",
        answered: "{ kg: number; lb?: never } | { lb: number; kg?: never }",
        schema: MASS_SCHEMA,
    },
    ByHand {
        module: "quantity",
        name: "Kilograms",
        doc: "A calculated mass, such as an estimate: kilograms or pounds may be given, kilograms are answered.",
        given: "{ kg: number } | { lb: number }",
        answered: "{ kg: number }",
        schema: MASS_SCHEMA,
    },
    ByHand {
        module: "text",
        name: "ToldValue",
        doc: "A value that was refused; `NaN`, `Infinity` and `-Infinity` stand for the numbers that JSON cannot say.",
        given: "number | string",
        answered: "number | string",
        schema: r#"{ "type": ["number", "string"] }"#,
    },
    ByHand {
        module: "opened",
        name: "Which",
        doc: "Which log of the page is asked: the number of one that is kept open, or a log's text.",
        given: "number | string",
        answered: "number",
        schema: r#"{ "type": ["number", "string"] }"#,
    },
    ByHand {
        module: "quantity",
        name: "Length",
        doc: "A height or thickness in millimetres.",
        given: "{ mm: number }",
        answered: "{ mm: number }",
        schema: r#"{ "type": "object", "properties": { "mm": { "type": "number" } }, "required": ["mm"], "additionalProperties": false }"#,
    },
    ByHand {
        module: "quantity",
        name: "Day",
        doc: "A calendar day, `YYYY-MM-DD`, from 1900 to 2199.",
        given: "string",
        answered: "string",
        schema: r#"{ "type": "string", "pattern": "^[0-9]{4}-[0-9]{2}-[0-9]{2}$" }"#,
    },
    ByHand {
        module: "quantity",
        name: "Reps",
        doc: "Repetitions, 0 to 200, whole or half.",
        given: "number",
        answered: "number",
        schema: r#"{ "type": "number", "minimum": 0, "maximum": 200, "multipleOf": 0.5 }"#,
    },
    ByHand {
        module: "quantity",
        name: "Rir",
        doc: "Repetitions in reserve, 0 to 30, in half steps.",
        given: "number",
        answered: "number",
        schema: r#"{ "type": "number", "minimum": 0, "maximum": 30, "multipleOf": 0.5 }"#,
    },
    ByHand {
        module: "quantity",
        name: "Rpe",
        doc: "Rating of perceived exertion built on repetitions in reserve, 0 to 10, in half steps.",
        given: "number",
        answered: "number",
        schema: r#"{ "type": "number", "minimum": 0, "maximum": 10, "multipleOf": 0.5 }"#,
    },
    ByHand {
        module: "quantity",
        name: "Fraction",
        doc: "Part of the one-repetition maximum: 0.8 is 80 %. Above 0, at most 1.5.",
        given: "number",
        answered: "number",
        schema: r#"{ "type": "number", "exclusiveMinimum": 0, "maximum": 1.5 }"#,
    },
    ByHand {
        module: "quantity",
        name: "Pain",
        doc: "Pain as the lifter rates it, a whole number from 0 (none) to 10 (worst imaginable).",
        given: "number",
        answered: "number",
        schema: r#"{ "type": "integer", "minimum": 0, "maximum": 10 }"#,
    },
];
