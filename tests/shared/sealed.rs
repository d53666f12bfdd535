//! A stored state that was changed, with the seal that belongs to it.

use bismar::value::Value;
use serde_json::{Value as Json, json};

/// The document with its own seal: FNV-1a over its canonical bytes without one.
pub fn sealed(text: &str) -> String {
    let mut document: Json = serde_json::from_str(text).unwrap();
    document.as_object_mut().unwrap().shift_remove("seal");
    let bytes = Value::from_json(&document.to_string()).unwrap().canonical_bytes();
    let mixed = |hash: u64, byte: &u8| (hash ^ u64::from(*byte)).wrapping_mul(0x0000_0100_0000_01b3);
    document["seal"] = json!(format!("{:016x}", bytes.iter().fold(0xcbf2_9ce4_8422_2325, mixed)));
    document.to_string()
}
