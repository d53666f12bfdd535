//! The generated JavaScript: one object a module, flat functions, batches.

use std::collections::BTreeMap;
use std::fmt::Write as _;

use bismar::registry;
use bismar::source::{Argument, Entry, Kind};
use bismar::value::Value;
use bismar_bindings::doors::DOORS;
use bismar_bindings::flat;
use bismar_bindings::names::camel;

use crate::Failure;

/// Hand-written part of the package.
const CORE: &str = include_str!("../../javascript/core.js");
/// Where the part of the glue ends that is of use here: loading is done by `core.js`.
const GLUE_END: &str = "            function initSync(module) {";

/// A function or constant under its names.
pub(crate) struct Named {
    pub(crate) key: &'static str,
    pub(crate) kind: Kind,
    pub(crate) doc: &'static str,
    pub(crate) arguments: &'static [Argument],
    pub(crate) result: &'static str,
    /// Where it comes from, for what has a row.
    pub(crate) citation: Option<&'static str>,
    /// Place in the dispatch table.
    pub(crate) index: usize,
    /// Name in JavaScript.
    pub(crate) name: String,
    /// Place in the table of flat functions.
    pub(crate) flat: Option<usize>,
}

/// Modules in JavaScript's spelling, each with its functions.
pub(crate) fn modules() -> Result<BTreeMap<String, Vec<Named>>, Failure> {
    let mut modules: BTreeMap<String, Vec<Named>> = BTreeMap::new();
    let keys: Vec<&str> = registry::entries().map(|entry| entry.key).collect();
    if !registry::rows().map(|row| row.key).eq(keys.iter().copied()) {
        return Err("rows and entries are not in one order".into());
    }
    for one in rows().chain(doors(keys.len())) {
        let (module, _) = one.key.split_once('.').ok_or("a key without a module")?;
        let members = modules.entry(spelled(module)).or_default();
        if members.iter().any(|other| other.name == one.name) {
            return Err(format!("{}: {} is taken in JavaScript", one.key, one.name).into());
        }
        members.push(one);
    }
    Ok(modules)
}

fn rows() -> impl Iterator<Item = Named> {
    registry::rows().enumerate().map(|(index, row)| Named {
        key: row.key,
        kind: row.kind,
        doc: row.doc,
        arguments: row.arguments,
        result: row.result,
        citation: Some(row.source.citation),
        index,
        name: function_name(row.key),
        flat: flat::TABLE.iter().position(|flat| flat.key == row.key),
    })
}

fn doors(first: usize) -> impl Iterator<Item = Named> {
    DOORS.iter().enumerate().map(move |(at, door)| Named {
        key: door.key,
        kind: Kind::Function,
        doc: door.doc,
        arguments: door.arguments,
        result: door.result,
        citation: None,
        index: first + at,
        name: function_name(door.key),
        flat: None,
    })
}

/// Every key that `call` takes, in the order of its numbers.
pub(crate) fn keys() -> Vec<&'static str> {
    registry::entries().map(|entry| entry.key).chain(DOORS.iter().map(|door| door.key)).collect()
}

fn function_name(key: &str) -> String {
    spelled(key.split_once('.').map_or(key, |(_, name)| name))
}

/// A function's or module's name: like `camel`, and an underscore before a digit goes too.
fn spelled(name: &str) -> String {
    camel(name).replace('_', "")
}

/// What the entries of the package pass on from the core.
pub(crate) fn exports() -> Result<String, Failure> {
    let modules = modules()?;
    let mut names =
        vec!["BismarError", "Progress", "batch", "call", "diagnostics", "flat", "fromJson", "toJson"];
    names.extend(modules.keys().map(String::as_str));
    Ok(format!("export {{ {} }} from \"./core.js\";", names.join(", ")))
}

/// The core of the package: glue, hand-written part, generated functions; `further` are entries that only
/// `call` reaches.
pub(crate) fn core(glue: &str, build_id: &str, further: &'static [Entry]) -> Result<String, Failure> {
    let (glue, _) = glue.split_once(GLUE_END).ok_or("wasm-bindgen's glue has another shape than expected")?;
    let mut out = String::from("// Generated; do not edit.\n");
    out.push_str(&glue.replace("export function ", "function "));
    _ = writeln!(out, "\nconst BUILD_ID = {build_id:?};");
    _ = writeln!(out, "const VERSION = {:?};\n", env!("CARGO_PKG_VERSION"));
    out.push_str(CORE);
    let further = further.iter().map(|entry| entry.key);
    let keys: Vec<_> = keys().into_iter().chain(further).map(|key| format!("{key:?}")).collect();
    _ = writeln!(out, "\nconst KEYS = [\n  {},\n];", keys.join(",\n  "));
    let modules = modules()?;
    for (module, members) in &modules {
        _ = writeln!(out, "\nexport const {module} = Object.freeze({{");
        for member in members {
            out.push_str(&method(member)?);
        }
        out.push_str("});\n");
    }
    flats(&mut out, &modules);
    batches(&mut out, &modules);
    Ok(out)
}

fn method(member: &Named) -> Result<String, Failure> {
    let Named { key, kind, arguments, index, name, .. } = member;
    if *kind == Kind::Constant {
        let value = registry::call(key, &Value::Map(Vec::new()))?;
        return Ok(format!("  {name}: {},\n", literal(&value)));
    }
    let optional = arguments.iter().all(|argument| argument.r#type.starts_with("Option"));
    let given = if optional { "given = {}" } else { "given" };
    Ok(format!("  {name}: ({given}) => invoke({index}, given),\n"))
}

/// A constant as JavaScript; numbers in the shortest form that reads back to the same bits.
fn literal(value: &Value) -> String {
    match value {
        Value::Null => "null".into(),
        Value::Bool(flag) => flag.to_string(),
        Value::Number(number) => number.to_string(),
        Value::Text(text) => format!("{text:?}"),
        Value::List(items) => {
            format!("Object.freeze([{}])", items.iter().map(literal).collect::<Vec<_>>().join(", "))
        }
        Value::Map(fields) => {
            let fields: Vec<_> =
                fields.iter().map(|(key, value)| format!("{:?}: {}", camel(key), literal(value))).collect();
            format!("Object.freeze({{ {} }})", fields.join(", "))
        }
    }
}

type Members = BTreeMap<String, Vec<Named>>;

/// Calls `each` for every flat function, inside the object of its module.
fn by_module(
    out: &mut String,
    modules: &Members,
    mut each: impl FnMut(&mut String, &Named, &[String], usize),
) {
    for (module, members) in modules {
        if members.iter().all(|member| member.flat.is_none()) {
            continue;
        }
        _ = writeln!(out, "  {module}: Object.freeze({{");
        for member in members {
            if let Some(at) = member.flat {
                let names: Vec<_> = member.arguments.iter().map(|one| camel(one.name)).collect();
                each(out, member, &names, at);
            }
        }
        out.push_str("  }),\n");
    }
}

fn flats(out: &mut String, modules: &Members) {
    out.push_str("\nexport const flat = Object.freeze({\n");
    by_module(out, modules, |out, member, names, at| {
        let list = names.join(", ");
        let numbers: Vec<_> = names.iter().map(|name| format!("typeof {name} === \"number\"")).collect();
        let quoted: Vec<_> = names.iter().map(|name| format!("{name:?}")).collect();
        _ = writeln!(
            out,
            "    {}: ({list}) => {{\n      let answer = NaN;\n      try {{\n        if ({}) answer = \
             wasm.raw_flat{}({at}, {list});\n      }} catch (thrown) {{\n        throw translated(thrown);\n      \
             }}\n      if (answer === answer) return answer;\n      throw flatError([{}], [{list}]);\n    }},",
            member.name,
            numbers.join(" && "),
            names.len(),
            quoted.join(", "),
        );
    });
    out.push_str("});\n");
}

fn batches(out: &mut String, modules: &Members) {
    out.push_str("\nexport const batch = Object.freeze({\n");
    by_module(out, modules, |out, member, names, at| {
        let quoted: Vec<_> = names.iter().map(|name| format!("{name:?}")).collect();
        _ = writeln!(out, "    {}: (given) => runBatch({at}, [{}], given),", member.name, quoted.join(", "));
    });
    out.push_str("});\n");
}
