//! The crate's serialised types, read from its source.
//!
//! What serde writes and reads follows from the declarations and their attributes; reading them here gives
//! TypeScript and JSON Schema for every type without a line written twice. A test holds the result against
//! real values.

mod bodies;
pub(crate) mod by_hand;
pub(crate) mod python;
mod reader;
mod schema;
mod serde_attributes;
mod shape;
mod typescript;

use std::collections::BTreeSet;

pub(crate) use reader::{read, read_all};
pub(crate) use schema::schema;
pub(crate) use typescript::{Direction, comment, declarations, spelled};

/// What a value looks like.
#[derive(Clone, Debug)]
pub(crate) enum Shape {
    Number,
    Whole {
        low: f64,
        high: f64,
    },
    Text,
    Flag,
    Nothing,
    Optional(Box<Shape>),
    List(Box<Shape>),
    Tuple(Vec<Shape>),
    Table(Box<Shape>),
    /// Another type, by its place in the list.
    Type(usize),
    /// A type that could not be found, by its name.
    Unknown(String),
}

/// A named field.
#[derive(Clone, Debug)]
pub(crate) struct Field {
    pub(crate) name: String,
    pub(crate) doc: String,
    pub(crate) shape: Shape,
    /// May be left out when given.
    pub(crate) optional_in: bool,
    /// May be absent when answered.
    pub(crate) optional_out: bool,
    pub(crate) flattened: bool,
}

/// What stands behind the name of a kind.
#[derive(Clone, Debug)]
pub(crate) enum Inside {
    Nothing,
    One(Shape),
    Several(Vec<Shape>),
    Fields(Vec<Field>),
}

/// One kind of an enum.
#[derive(Clone, Debug)]
pub(crate) struct Kind {
    pub(crate) name: String,
    pub(crate) doc: String,
    pub(crate) inside: Inside,
}

/// What a type is made of.
#[derive(Clone, Debug)]
pub(crate) enum Body {
    Alias(Shape),
    Fields(Vec<Field>),
    Kinds(Vec<Kind>),
    /// Written by hand in `by_hand`.
    ByHand(&'static by_hand::ByHand),
}

/// A type that serde reads or writes.
#[derive(Clone, Debug)]
pub(crate) struct Type {
    pub(crate) module: String,
    /// Name shown in TypeScript: the Rust name, with the module in front where two modules share it.
    pub(crate) name: String,
    pub(crate) doc: String,
    pub(crate) body: Body,
}

/// All types.
#[derive(Debug)]
pub(crate) struct Types {
    pub(crate) all: Vec<Type>,
    places: Vec<reader::Place>,
    imports: reader::Imports,
}

impl Types {
    /// The shape of a type as written in a row of the registry, seen from the module of its key.
    pub(crate) fn of_row(&self, key: &str, written: &str) -> Shape {
        let module = key.split('.').next().unwrap_or_default();
        match syn::parse_str::<syn::Type>(written) {
            Ok(parsed) => shape::shape(&parsed, &shape::From::module(self, module)),
            Err(_) => Shape::Unknown(written.into()),
        }
    }

    /// The shape of a type as written in a file.
    pub(crate) fn seen_from(&self, file: &str, written: &syn::Type) -> Shape {
        shape::shape(written, &shape::From { types: self, file: file.into(), inside: Vec::new() })
    }

    /// The type with that name in that module.
    pub(crate) fn find(&self, module: &str, name: &str) -> Option<usize> {
        self.all.iter().position(|one| one.module == module && one.name == name)
    }

    /// Every type that the shapes mention, directly or inside others.
    pub(crate) fn reachable(&self, shapes: &[Shape]) -> BTreeSet<usize> {
        let mut found = BTreeSet::new();
        let mut waiting: Vec<Shape> = shapes.to_vec();
        while let Some(shape) = waiting.pop() {
            match shape {
                Shape::Optional(inner) | Shape::List(inner) | Shape::Table(inner) => waiting.push(*inner),
                Shape::Tuple(items) => waiting.extend(items),
                Shape::Type(at) if found.insert(at) => waiting.extend(self.parts(at)),
                _ => {}
            }
        }
        found
    }

    /// Shapes directly inside a type.
    fn parts(&self, at: usize) -> Vec<Shape> {
        let fields = |fields: &[Field]| fields.iter().map(|field| field.shape.clone()).collect::<Vec<_>>();
        match self.all.get(at).map(|one| &one.body) {
            Some(Body::Alias(shape)) => vec![shape.clone()],
            Some(Body::Fields(inside)) => fields(inside),
            Some(Body::Kinds(kinds)) => kinds
                .iter()
                .flat_map(|kind| match &kind.inside {
                    Inside::Nothing => Vec::new(),
                    Inside::One(shape) => vec![shape.clone()],
                    Inside::Several(shapes) => shapes.clone(),
                    Inside::Fields(inside) => fields(inside),
                })
                .collect(),
            Some(Body::ByHand(_)) | None => Vec::new(),
        }
    }

    /// Names that could not be found among the shapes and everything inside them.
    pub(crate) fn unknown(&self, shapes: &[Shape]) -> BTreeSet<String> {
        let mut parts: Vec<Shape> = shapes.to_vec();
        parts.extend(self.reachable(shapes).iter().flat_map(|at| self.parts(*at)));
        let mut found = BTreeSet::new();
        while let Some(shape) = parts.pop() {
            match shape {
                Shape::Optional(inner) | Shape::List(inner) | Shape::Table(inner) => parts.push(*inner),
                Shape::Tuple(items) => parts.extend(items),
                Shape::Unknown(name) => _ = found.insert(name),
                _ => {}
            }
        }
        found
    }
}
