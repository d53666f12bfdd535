//! Names that the host gives to its equipment.

use alloc::string::String;
use core::fmt;

use crate::error::{Allowed, Code, Error};

/// Name of a bar, a machine or another implement: 1 to 40 characters that a log or a plan refers to.
///
/// Two implements with the same numbers and different names are different: a load on one machine says
/// nothing about another.
///
/// ```
/// use bismar::loading::EquipmentId;
///
/// assert_eq!(EquipmentId::new("bar 20")?.as_str(), "bar 20");
/// assert!(EquipmentId::new("").is_err());
/// # Ok::<(), bismar::Error>(())
/// ```
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(try_from = "String", into = "String")
)]
pub struct EquipmentId(String);

impl EquipmentId {
    /// The longest name, in characters.
    pub const LONGEST: usize = 40;

    /// A name.
    ///
    /// # Errors
    /// `id_not_valid` if empty, longer than 40 characters, with control characters, or with blanks at an end.
    pub fn new(name: impl Into<String>) -> Result<EquipmentId, Error> {
        let name = name.into();
        let length = name.chars().take(EquipmentId::LONGEST + 1).count();
        let printable = !name.chars().any(char::is_control) && name.trim().len() == name.len();
        if (1..=EquipmentId::LONGEST).contains(&length) && printable {
            return Ok(EquipmentId(name));
        }
        let shown: String = name.chars().take(EquipmentId::LONGEST).collect();
        let rule = Allowed::rule("1 to 40 characters, no control characters, no blank at either end");
        Err(Error::new(Code::IdNotValid, "id", shown, rule))
    }

    /// The name.
    #[must_use]
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl TryFrom<String> for EquipmentId {
    type Error = Error;

    fn try_from(name: String) -> Result<EquipmentId, Error> {
        EquipmentId::new(name)
    }
}

impl From<EquipmentId> for String {
    fn from(id: EquipmentId) -> String {
        id.0
    }
}

impl fmt::Display for EquipmentId {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(&self.0)
    }
}
