//! What a function takes and gives, as JSON Schema from the types themselves.

use alloc::vec::Vec;

use schemars::{Schema, SchemaGenerator};

/// Schemas of what a function takes and gives. The generator says which way values go: what is taken is described for
/// reading, what is given for writing.
#[derive(Clone, Copy, Debug)]
#[non_exhaustive]
pub struct Schemas {
    /// Schemas of the arguments in order.
    pub takes: fn(&mut SchemaGenerator) -> Vec<Schema>,
    /// Schema of the result.
    pub gives: fn(&mut SchemaGenerator) -> Schema,
}

impl Schemas {
    /// Those schemas.
    #[must_use]
    pub const fn new(
        takes: fn(&mut SchemaGenerator) -> Vec<Schema>,
        gives: fn(&mut SchemaGenerator) -> Schema,
    ) -> Schemas {
        Schemas { takes, gives }
    }
}

/// The schemas of an argument list and a result.
macro_rules! schemas {
    ($out:ty; $($name:ident : $type:ty),* $(,)?) => {
        $crate::source::Schemas::new(
            |_generator| alloc::vec![$(_generator.subschema_for::<$type>()),*],
            |generator| generator.subschema_for::<$out>(),
        )
    };
}

pub(crate) use schemas;
