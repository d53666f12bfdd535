//! The types that are given and answered, from the library's own schemas.
//!
//! Each function says what it takes and gives as JSON Schema, which `schemars` makes from the types and from serde's
//! attributes. Reading and writing may differ, so each type is described both ways; a test holds the result against real
//! values.

mod generate;
pub(crate) mod python;
mod read;
mod schema;
#[cfg(test)]
mod tests;
mod typescript;

use std::collections::{BTreeMap, BTreeSet};

use serde_json::{Map, Value};

pub(crate) use generate::{generate, generate_with};
pub(crate) use schema::schema;
pub(crate) use typescript::{comment, declarations, spelled};

/// Which way a value goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Direction {
    /// Given by the caller.
    Given,
    /// Answered.
    Answered,
}

/// What a value looks like.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Shape {
    Number,
    Text,
    Flag,
    Nothing,
    Optional(Box<Shape>),
    List(Box<Shape>),
    Tuple(Vec<Shape>),
    Table(Box<Shape>),
    /// One of several, told apart by what it is.
    Either(Vec<Shape>),
    /// Another type, by its name.
    Type(String),
    /// Whatever JSON holds.
    Any,
}

/// A named field.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Field {
    pub(crate) name: String,
    pub(crate) doc: String,
    pub(crate) shape: Shape,
    /// May be left out.
    pub(crate) optional: bool,
}

/// What stands behind the name of a kind.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Inside {
    Nothing,
    One(Shape),
    Fields(Vec<Field>),
}

/// One kind of an enum.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Kind {
    pub(crate) name: String,
    pub(crate) doc: String,
    pub(crate) inside: Inside,
}

/// What a type is made of.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Body {
    Alias(Shape),
    Fields(Vec<Field>),
    Kinds(Vec<Kind>),
}

/// A type that is read or written.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Type {
    pub(crate) doc: String,
    pub(crate) body: Body,
}

/// What a function takes, in the order of its arguments, and what it gives.
#[derive(Clone, Debug)]
pub(crate) struct Signature {
    pub(crate) takes: Vec<Shape>,
    pub(crate) gives: Shape,
}

/// All types by name, each as it is given and as it is answered; and every function by its key.
#[derive(Debug)]
pub(crate) struct Types {
    given: BTreeMap<String, Type>,
    answered: BTreeMap<String, Type>,
    /// The schemas of what is given, as they were made.
    definitions: Map<String, Value>,
    functions: BTreeMap<String, Signature>,
}

impl Types {
    /// What the function with that key takes and gives; nothing and whatever, for an unknown one.
    pub(crate) fn of(&self, key: &str) -> Signature {
        let nobody = Signature { takes: Vec::new(), gives: Shape::Any };
        self.functions.get(key).cloned().unwrap_or(nobody)
    }

    /// The type of that name.
    fn get(&self, name: &str, direction: Direction) -> Option<&Type> {
        match direction {
            Direction::Given => self.given.get(name),
            Direction::Answered => self.answered.get(name),
        }
    }

    /// Every type that the shapes mention, directly or inside others.
    pub(crate) fn reachable(&self, shapes: &[Shape], direction: Direction) -> BTreeSet<String> {
        let mut found = BTreeSet::new();
        let mut waiting: Vec<Shape> = shapes.to_vec();
        while let Some(shape) = waiting.pop() {
            match shape {
                Shape::Type(name) if !found.contains(&name) => {
                    waiting.extend(self.get(&name, direction).map_or(Vec::new(), Type::parts));
                    found.insert(name);
                }
                other => waiting.extend(other.parts()),
            }
        }
        found
    }

    /// Which of the types that the shapes mention say nothing of a part of theirs; `?` for a shape itself.
    pub(crate) fn unknown(&self, shapes: &[Shape], direction: Direction) -> BTreeSet<String> {
        let any = |shapes: Vec<Shape>| shapes.iter().any(Shape::is_any);
        let mut found: BTreeSet<String> = self.reachable(shapes, direction);
        found.retain(|name| self.get(name, direction).is_none_or(|one| any(one.parts())));
        if any(shapes.to_vec()) {
            found.insert("?".into());
        }
        found
    }
}

impl Shape {
    /// Shapes directly inside.
    fn parts(&self) -> Vec<Shape> {
        match self {
            Shape::Optional(inner) | Shape::List(inner) | Shape::Table(inner) => vec![(**inner).clone()],
            Shape::Tuple(items) | Shape::Either(items) => items.clone(),
            _ => Vec::new(),
        }
    }

    /// Whether it, or something in it that has no name, is whatever JSON holds.
    fn is_any(&self) -> bool {
        *self == Shape::Any || self.parts().iter().any(Shape::is_any)
    }
}

impl Type {
    /// Shapes directly inside.
    fn parts(&self) -> Vec<Shape> {
        let fields = |fields: &[Field]| fields.iter().map(|field| field.shape.clone()).collect::<Vec<_>>();
        match &self.body {
            Body::Alias(shape) => vec![shape.clone()],
            Body::Fields(inside) => fields(inside),
            Body::Kinds(kinds) => kinds
                .iter()
                .flat_map(|kind| match &kind.inside {
                    Inside::Nothing => Vec::new(),
                    Inside::One(shape) => vec![shape.clone()],
                    Inside::Fields(inside) => fields(inside),
                })
                .collect(),
        }
    }
}
