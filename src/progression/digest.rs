//! The digest of a set of parameters, as decisions name it.

use alloc::format;
use alloc::string::String;

use crate::record::Parameters;

/// 64-bit FNV-1a over canonical bytes, in hexadecimal: the same with every set of features.
pub(crate) fn digest(parameters: &Parameters) -> String {
    let bytes = format!("{parameters:?}").into_bytes();
    let hash = bytes.iter().fold(0xcbf2_9ce4_8422_2325_u64, |hash, byte| {
        (hash ^ u64::from(*byte)).wrapping_mul(0x0000_0100_0000_01b3)
    });
    format!("{hash:016x}")
}
