//! What went wrong, in words.

use alloc::format;
use alloc::string::String;

use super::phrases::ERROR;
use super::words::Words;
use crate::error::{Allowed, Error, Given};

impl Words<'_> {
    /// An error as one or two plain sentences: what, where, and what would have been accepted.
    ///
    /// The entry of the log that it concerns is named by its number, since nothing else finds it again.
    #[must_use]
    pub fn error(&self, error: &Error) -> String {
        let mut text = String::new();
        if let Some(event) = error.event() {
            text.push_str(&format!("Entry {event} of the log. "));
        }
        let meaning = self.say(&format!("{ERROR}{}", error.code().as_str()), &[]);
        text.push_str(meaning.trim_end_matches('.'));
        match (error.field(), error.given()) {
            ("", Given::Nothing) => {}
            (field, Given::Nothing) => text.push_str(&format!(": {field}")),
            ("", given) => text.push_str(&format!(": {given}")),
            (field, given) => text.push_str(&format!(": {field} is {given}")),
        }
        text.push('.');
        if *error.allowed() != Allowed::Unstated {
            text.push_str(&format!(" Allowed: {}.", error.allowed()));
        }
        text
    }
}
