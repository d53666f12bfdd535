//! Named arguments of a call by name.

use alloc::vec::Vec;

use super::{Value, read};
use crate::error::{Code, Error};

/// Named arguments of a call, taken one by one; what is left over at the end is an unknown field.
#[derive(Clone, Debug)]
pub struct Arguments<'a> {
    left: Vec<(&'a str, &'a Value)>,
}

impl<'a> Arguments<'a> {
    /// Arguments from a map.
    ///
    /// # Errors
    /// `wrong_type` if the value is not a map; `duplicate_field`.
    #[inline(never)]
    pub fn new(given: &'a Value) -> Result<Arguments<'a>, Error> {
        let Value::Map(fields) = given else {
            return Err(read::wrong_type(given, "a map of named arguments"));
        };
        read::no_duplicates(fields)?;
        Ok(Arguments { left: fields.iter().map(|(key, value)| (&**key, value)).collect() })
    }

    /// Takes one argument. An absent one is an error unless its type is an `Option`.
    ///
    /// # Errors
    /// `missing_field`, or what reading the type reports, with the path.
    // One copy a type, shared by all functions that take it.
    #[inline(never)]
    pub fn take<T: serde::de::DeserializeOwned>(&mut self, name: &'static str) -> Result<T, Error> {
        match self.find(name) {
            Some(value) => value.read().map_err(|error: Error| error.within(name)),
            None => T::deserialize(read::Absent(name)),
        }
    }

    #[inline(never)]
    fn find(&mut self, name: &str) -> Option<&'a Value> {
        let at = self.left.iter().position(|(key, _)| *key == name)?;
        Some(self.left.swap_remove(at).1)
    }

    /// Ends the reading.
    ///
    /// # Errors
    /// `unknown_field` if an argument was not taken.
    #[inline(never)]
    pub fn finish(self) -> Result<(), Error> {
        match self.left.first() {
            None => Ok(()),
            Some((key, _)) => Err(Error::plain(Code::UnknownField, "").within(key)),
        }
    }
}
