//! The digest of a set of parameters, as decisions name it.

use alloc::format;
use alloc::string::String;

use crate::canonical;
use crate::record::Parameters;

/// 64-bit FNV-1a over canonical bytes, in hexadecimal: the same with every set of features.
pub(crate) fn digest(parameters: &Parameters) -> String {
    format!("{:016x}", canonical::hash(parameters))
}

#[cfg(all(test, feature = "json"))]
#[allow(clippy::indexing_slicing, clippy::unwrap_used, reason = "a test may panic")]
mod tests;
