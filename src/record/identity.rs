//! Who is meant: lifts and regions by a stable id, with a name for people beside it. An id that is not declared is refused here, with
//! what is declared; what becomes of a lift that new parameters leave out is `progression::change` and `set_aside`, and what a region
//! that no lift loads any more halts is `progression::stop`.

use derive_setters::Setters;

use crate::canonical::canonical_fields;
use crate::error::{Allowed, Code, Error};
use crate::quantity::Name;

/// A region of the body. Events name its id; the name is for people and may change at any time.
///
/// ```
/// use bismar::{quantity::Name, record::Region};
///
/// let back = Region::new(Name::new("back")?).with_name(Name::new("lower back")?);
/// assert_eq!(back.label().as_str(), "lower back");
/// # Ok::<(), bismar::Error>(())
/// ```
#[derive(Clone, Debug, PartialEq, Eq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct Region {
    /// The id that events name; it never changes.
    pub id: Name,
    /// What people call it; absent where the id says it.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub name: Option<Name>,
}

canonical_fields!(Region: id, name);

impl Region {
    /// A region whose id is its name.
    #[must_use]
    pub const fn new(id: Name) -> Region {
        Region { id, name: None }
    }

    /// What people call it.
    #[must_use]
    pub fn label(&self) -> &Name {
        self.name.as_ref().unwrap_or(&self.id)
    }
}

/// Refuses an id that is not among those declared, and says which are.
pub(crate) fn declared<'a>(
    code: Code,
    field: &'static str,
    id: &Name,
    known: impl Iterator<Item = &'a Name> + Clone,
) -> Result<(), Error> {
    if known.clone().any(|name| name == id) {
        return Ok(());
    }
    let names: alloc::vec::Vec<&str> = known.map(Name::as_str).collect();
    let list = if names.is_empty() { "none is declared".into() } else { names.join(", ") };
    Err(Error::new(code, field, id.as_str(), Allowed::Rule(list.into())))
}
