//! Seals of stored events: each covers its text and the seal before it, so a torn or altered one shows.

use bismar::Error;
use serde::{Deserialize, Serialize};

/// A text and the seal before it.
#[derive(Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename = "SealAsked"))]
#[serde(deny_unknown_fields)]
pub(crate) struct Asked {
    before: String,
    text: String,
}

/// What 64-bit FNV-1a begins with.
pub(crate) const BASIS: u64 = 0xcbf2_9ce4_8422_2325;

/// 64-bit FNV-1a, taken on from there: it finds accidents, not forgers.
pub(crate) fn taken(hash: u64, bytes: impl IntoIterator<Item = u8>) -> u64 {
    bytes.into_iter().fold(hash, |hash, byte| (hash ^ u64::from(byte)).wrapping_mul(0x0000_0100_0000_01b3))
}

/// In hexadecimal.
fn sealed(before: &str, text: &str) -> String {
    format!("{:016x}", taken(BASIS, before.bytes().chain([0]).chain(text.bytes())))
}

/// The seal of a text.
pub(crate) fn seal(asked: Asked) -> Result<String, Error> {
    Ok(sealed(&asked.before, &asked.text))
}

/// Texts with their seals in order.
#[derive(Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub(crate) struct Chain {
    start: String,
    texts: Vec<String>,
    seals: Vec<String>,
}

#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub(crate) struct Checked {
    /// How many are whole from the beginning on.
    whole: u32,
    last: String,
}

/// How many stored texts are as they were written.
pub(crate) fn check_seals(asked: Chain) -> Result<Checked, Error> {
    let mut last = asked.start;
    let mut whole = 0;
    for (text, seal) in asked.texts.iter().zip(&asked.seals) {
        if sealed(&last, text) != *seal {
            break;
        }
        last.clone_from(seal);
        whole += 1;
    }
    Ok(Checked { whole, last })
}
