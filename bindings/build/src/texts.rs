//! `registry.json`: rows with their sources, what the codes mean, and every phrase by its key. None of it is in the wasm.

use bismar::{Code, registry};
use serde_json::{Map, Value, json};

use crate::Failure;

/// Writes the file's text.
pub(crate) fn write(build_id: &str) -> Result<String, Failure> {
    let rows: Vec<Value> = registry::rows().map(serde_json::to_value).collect::<Result<_, _>>()?;
    let codes: Map<String, Value> =
        Code::ALL.iter().map(|code| (code.as_str().to_string(), json!(code.meaning()))).collect();
    let phrases: Map<String, Value> =
        bismar::text::phrases().into_iter().map(|(key, text)| (key, json!(text))).collect();
    let document = json!({
        "version": env!("CARGO_PKG_VERSION"),
        "build": build_id,
        "codes": codes,
        "phrases": phrases,
        "rows": rows,
    });
    Ok(format!("{}\n", serde_json::to_string(&document)?))
}
