//! The generated JavaScript: one object a module, flat functions, batches.

use std::collections::BTreeMap;
use std::fmt::Write as _;

use bismar::answers::Door;
use bismar::registry;
use bismar::source::{Argument, Entry, Kind};
use bismar::value::Value;
use bismar_bindings::doors;
use bismar_bindings::flat;
use bismar_bindings::names::camel;
use bismar_bindings::parts::{self, Part};

use crate::Failure;

/// Hand-written part of the package.
const CORE: &str = include_str!("../../javascript/core.js");
/// The class of errors, shared by the whole and the parts.
pub(crate) const ERROR: &str = include_str!("../../javascript/error.js");
/// States kept between calls.
const KEPT: &str = include_str!("../../javascript/kept.js");
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
pub(crate) fn modules(part: Chosen) -> Result<BTreeMap<String, Vec<Named>>, Failure> {
    let mut modules: BTreeMap<String, Vec<Named>> = BTreeMap::new();
    let keys = registry::entries().map(|entry| entry.key);
    if !registry::rows().map(|row| row.key).eq(keys) {
        return Err("rows and entries are not in one order".into());
    }
    for one in rows(part).chain(named_doors(part)) {
        let (module, _) = one.key.split_once('.').ok_or("a key without a module")?;
        let members = modules.entry(spelled(module)).or_default();
        if members.iter().any(|other| other.name == one.name) {
            return Err(format!("{}: {} is taken in JavaScript", one.key, one.name).into());
        }
        members.push(one);
    }
    Ok(modules)
}

fn rows(part: Chosen) -> impl Iterator<Item = Named> {
    let flats: Vec<_> = flat::TABLE.iter().map(|flat| flat.key).filter(|key| has(part, key)).collect();
    parts::rows(part).enumerate().map(move |(index, row)| Named {
        key: row.key,
        kind: row.kind,
        doc: row.doc,
        arguments: row.arguments,
        result: row.result,
        citation: Some(row.source.citation),
        index,
        name: function_name(row.key),
        flat: flats.iter().position(|key| *key == row.key),
    })
}

fn named_doors(part: Chosen) -> impl Iterator<Item = Named> {
    let first = parts::rows(part).count();
    doors_of(part).enumerate().map(move |(at, door)| named(door, first + at))
}

/// A door as a function with that number.
pub(crate) fn named(door: &'static Door, index: usize) -> Named {
    Named {
        key: door.key,
        kind: Kind::Function,
        doc: door.doc,
        arguments: door.arguments,
        result: door.result,
        citation: None,
        index,
        name: function_name(door.key),
        flat: None,
    }
}

/// A part of the package; the whole without one.
pub(crate) type Chosen = Option<&'static Part>;

fn has(part: Chosen, key: &str) -> bool {
    part.is_none_or(|part| part.has(key))
}

fn doors_of(part: Chosen) -> impl Iterator<Item = &'static Door> {
    doors::lists(part.map(|part| part.name)).into_iter().flatten()
}

/// Whether states are kept between calls.
fn keeps(part: Chosen) -> bool {
    part.is_none_or(|part| part.keeps)
}

/// Every key that `call` takes, in the order of its numbers.
pub(crate) fn keys(part: Chosen) -> Vec<&'static str> {
    parts::rows(part).map(|row| row.key).chain(doors_of(part).map(|door| door.key)).collect()
}

fn function_name(key: &str) -> String {
    spelled(key.split_once('.').map_or(key, |(_, name)| name))
}

/// A function's or module's name: like `camel`, and an underscore before a digit goes too.
fn spelled(name: &str) -> String {
    camel(name).replace('_', "")
}

/// What the entries of the package pass on from the core.
pub(crate) fn exports(part: Chosen) -> Result<String, Failure> {
    let modules = modules(part)?;
    let mut names = vec!["BismarError", "batch", "call", "diagnostics", "flat", "fromJson", "toJson"];
    if keeps(part) {
        names.push("Progress");
    }
    names.extend(modules.keys().map(String::as_str));
    Ok(format!("export {{ {} }} from \"./core.js\";", names.join(", ")))
}

/// The core of the package or of a part: glue, hand-written part, generated functions; `further` are entries that only
/// `call` reaches.
pub(crate) fn core(
    glue: &str,
    build_id: &str,
    part: Chosen,
    further: &'static [Entry],
) -> Result<String, Failure> {
    let (glue, _) = glue.split_once(GLUE_END).ok_or("wasm-bindgen's glue has another shape than expected")?;
    let mut out = String::new();
    out.push_str(&glue.replace("export function ", "function "));
    _ = writeln!(out, "\nconst BUILD_ID = {build_id:?};");
    _ = writeln!(out, "const VERSION = {:?};\n", env!("CARGO_PKG_VERSION"));
    out.push_str(CORE);
    if keeps(part) {
        out.push('\n');
        out.push_str(KEPT);
    }
    let further = further.iter().map(|entry| entry.key);
    let keys: Vec<_> = keys(part).into_iter().chain(further).map(|key| format!("{key:?}")).collect();
    _ = writeln!(out, "\nconst KEYS = [\n  {},\n];", keys.join(",\n  "));
    let modules = modules(part)?;
    for (module, members) in &modules {
        _ = writeln!(out, "\nexport const {module} = Object.freeze({{");
        for member in members {
            out.push_str(&method(member)?);
        }
        out.push_str("});\n");
    }
    flats(&mut out, &modules);
    batches(&mut out, &modules);
    Ok(format!("// Generated; do not edit.\n{}{}", import_of_error(part), instances(&out)))
}

/// What the entries of the package make a further instance with; each knows where the wasm is.
const CREATED: &str = "
/** Another instance, set up. */
export async function created(source) {
  const { startWith: start, ...instance } = another();
  await start(source);
  return Object.freeze(instance);
}
";

/// The core as a function that makes instances, each with memory and a state of its own, and the first of them.
fn instances(core: &str) -> String {
    let exported = |line: &str| {
        let declared = line.strip_prefix("export ")?;
        let name = ["function ", "const ", "class "].iter().find_map(|word| declared.strip_prefix(word))?;
        name.split(|letter: char| !letter.is_alphanumeric()).next().map(String::from)
    };
    let names: Vec<String> = core.lines().filter_map(exported).collect();
    let inside: Vec<&str> = core.lines().map(|line| line.strip_prefix("export ").unwrap_or(line)).collect();
    let names = names.join(", ");
    format!(
        "\n/** Another instance: nothing that happens in one reaches another. */\nfunction another() {{\n{}\n\
         return {{ {names} }};\n}}\n{CREATED}\nexport const {{ {names} }} = another();\n",
        inside.join("\n"),
    )
}

/// The lines that take the class of errors from its own file, so that it is one for the whole and the parts.
pub(crate) fn import_of_error(part: Chosen) -> String {
    let file = if part.is_none() { "./error.js" } else { "../error.js" };
    format!("import {{ BismarError }} from {file:?};\nexport {{ BismarError }};\n")
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
