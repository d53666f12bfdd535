//! What this device counts, to the last bit: held by the page against what was counted natively.

use bismar::Error;
use bismar::registry;
use bismar::value::Value;
use serde::Serialize;

use crate::seal::{BASIS, taken};
use crate::words::Nothing;

/// What was counted here.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub(crate) struct SameBits {
    /// Functions of the library that gave an answer.
    functions: u32,
    answers: u32,
    /// Of every bit of all answers.
    digest: String,
}

/// What each function is given that takes such arguments; what it refuses counts as well, by its code.
const GIVEN: [&str; 12] = [
    "{}",
    r#"{"load":{"kg":62.5},"reps":7}"#,
    r#"{"load":{"lb":155},"reps":3}"#,
    r#"{"one_rm":{"kg":117.3},"reps":6}"#,
    r#"{"fraction":0.83}"#,
    r#"{"values":[47.5,48.25,46.125,50.0625,49.1,47.9,51.3,50.7]}"#,
    r#"{"successes":27,"trials":31,"level":0.95}"#,
    r#"{"age":67}"#,
    r#"{"dominant":41.7,"non_dominant":38.9}"#,
    r#"{"total":{"kg":212.5},"body_mass":{"kg":81.4},"sex":"female"}"#,
    r#"{"strength":104.6,"from":57,"to":83,"outlook":{"planning":"consistent"}}"#,
    r#"{"reps":5,"rir":2,"equation":"epley_1985"}"#,
];

/// Asks every function of the library that takes such arguments.
pub(crate) fn same_bits(_: Nothing) -> Result<SameBits, Error> {
    let given = GIVEN.iter().map(|text| Value::from_json(text)).collect::<Result<Vec<_>, Error>>()?;
    let (mut hash, mut answers, mut functions) = (BASIS, 0_u32, 0_u32);
    for entry in registry::entries() {
        let before = answers;
        for one in &given {
            hash = match entry.call(one) {
                Ok(answer) => {
                    answers += 1;
                    taken(hash, answer.canonical_bytes())
                }
                Err(error) => taken(hash, error.code().as_str().bytes()),
            };
        }
        functions += u32::from(answers > before);
    }
    Ok(SameBits { functions, answers, digest: format!("{hash:016x}") })
}
