//! The generated `.d.ts`.

use std::collections::BTreeMap;
use std::fmt::Write as _;

use bismar::Code;
use bismar::source::Kind;
use bismar_bindings::names::camel;

use crate::Failure;
use crate::javascript::{Chosen, Named, modules};
use crate::types::{Direction, Shape, Signature, Types, comment, declarations, spelled};

/// Hand-written part of the declarations.
const HEAD: &str = include_str!("../../javascript/head.d.ts");

/// Unit of a quantity that is given as one number.
fn unit(kind: &str) -> &'static str {
    match kind {
        "Mass" | "Kilograms" => "kg",
        "Length" => "mm",
        "Day" => "days from 1970-01-01",
        "Fraction" => "part of 1RM, above 0, at most 1.5",
        "Reps" => "repetitions, whole or half",
        "Rir" => "repetitions in reserve, half steps",
        "Rpe" => "rating 0 to 10, half steps",
        "Pain" => "0 to 10",
        "f64" => "number",
        _ => "whole number",
    }
}

/// Types of everything that the functions take and give.
pub(crate) struct Surface {
    pub(crate) text: String,
    /// Types that say nothing of a part of theirs.
    pub(crate) unknown: Vec<String>,
}

/// A function that is called by its key only.
pub(crate) struct More<'a> {
    pub(crate) key: &'a str,
    /// What it takes as one argument, and what it gives.
    pub(crate) takes: Shape,
    pub(crate) gives: Shape,
}

/// Writes the declarations of the whole surface, or of a part's.
pub(crate) fn write(types: &Types, part: Chosen, documents: &[Shape]) -> Result<Surface, Failure> {
    write_with(types, part, documents, &[])
}

/// The same with more functions that are called by their keys.
pub(crate) fn write_with(
    types: &Types,
    part: Chosen,
    documents: &[Shape],
    more: &[More<'_>],
) -> Result<Surface, Failure> {
    let modules = modules(part)?;
    let (mut given, mut answered) = (documents.to_vec(), documents.to_vec());
    given.extend(more.iter().map(|one| one.takes.clone()));
    answered.extend(more.iter().map(|one| one.gives.clone()));
    for member in modules.values().flatten() {
        let Signature { takes, gives } = types.of(member.key);
        given.extend(takes);
        answered.push(gives);
    }
    let mut out = String::from(HEAD);
    codes(&mut out);
    out.push_str(&declarations(types, &given, &answered));
    for (module, members) in &modules {
        _ = writeln!(out, "export declare const {module}: {{");
        for member in members {
            method(&mut out, types, member);
        }
        out.push_str("};\n\n");
    }
    if part.is_none_or(|part| part.keeps) {
        progress(&mut out, types);
    }
    functions(&mut out, types, &modules, more);
    flats(&mut out, &modules);
    batches(&mut out, &modules);
    let mut unknown = types.unknown(&given, Direction::Given);
    unknown.extend(types.unknown(&answered, Direction::Answered));
    Ok(Surface { text: out, unknown: unknown.into_iter().collect() })
}

fn codes(out: &mut String) {
    out.push_str("/** Stable codes of errors. */\nexport type Code =\n");
    for code in Code::ALL {
        _ = writeln!(out, "  /** {} */\n  | {:?}", code.meaning(), code.as_str());
    }
    out.truncate(out.trim_end().len());
    out.push_str(";\n\n");
}

fn documented(one: &Named) -> String {
    let source = match one.citation {
        Some(citation) => format!("Row `{}` of registry.json: {citation}\n", one.key),
        None => String::new(),
    };
    format!("{}\n{source}@throws {{BismarError}}\n", one.doc.trim_end())
}

fn method(out: &mut String, types: &Types, one: &Named) {
    let Signature { takes, gives } = types.of(one.key);
    let answer = spelled(types, &gives, Direction::Answered);
    if one.kind == Kind::Constant {
        comment(out, "  ", one.doc);
        _ = writeln!(out, "  readonly {}: {answer};", one.name);
        return;
    }
    comment(out, "  ", &documented(one));
    let mut fields = Vec::new();
    let mut all_optional = true;
    for (argument, shape) in one.arguments.iter().zip(takes) {
        let mark = if matches!(shape, Shape::Optional(_)) { "?" } else { "" };
        all_optional &= mark == "?";
        fields.push(format!("{}{mark}: {}", camel(argument.name), spelled(types, &shape, Direction::Given)));
    }
    let given = match fields.as_slice() {
        [] => "given?: Record<string, never>".to_string(),
        fields => format!("given{}: {{ {} }}", if all_optional { "?" } else { "" }, fields.join("; ")),
    };
    _ = writeln!(out, "  {}({given}): {answer};", one.name);
}

/// The class of kept states, in the types that the doors take and give.
fn progress(out: &mut String, types: &Types) {
    let given = |key, argument| {
        let shape = types.of(key).takes.get(argument).cloned().unwrap_or(Shape::Any);
        spelled(types, &shape, Direction::Given)
    };
    let answered = |key| spelled(types, &types.of(key).gives, Direction::Answered);
    let (fold, apply, decide) = ("progression.fold", "progression.apply", "progression.decide");
    let next_session = "prescription.next_session";
    _ = writeln!(
        out,
        "/** A folded log that stays inside the instance, so that only what is new crosses. */
export declare class Progress {{
  /** Folds the log. @throws {{BismarError}} */
  constructor(log: {});
  /**
   * Takes a stored state where this version of the library made it and the log has told nothing since; else folds the
   * log. @throws {{BismarError}} for a log that does not fold; a state that is of no use is not an error.
   */
  static fromState(state: {}, log: {}): Progress;
  /** Applies one more event; `needs_refold` if it changes the past. The state is unchanged on an error. */
  apply(event: {}): void;
  /** What may each lift do today, and what stands in its way? */
  decide(today: {}): {};
  /** What does this lifter do today? */
  nextSession(plan: {}, today: {}): {};
  /** The state as a value, to be stored. */
  state(): {};
  /** Gives the memory back; afterwards every method throws `not_ready`. */
  close(): void;
}}
",
        given(fold, 0),
        given(apply, 0),
        given(fold, 0),
        given(apply, 1),
        given(decide, 1),
        answered(decide),
        given(next_session, 1),
        given(next_session, 2),
        answered(next_session),
        answered(fold),
    );
}

type Members = BTreeMap<String, Vec<Named>>;

fn functions(out: &mut String, types: &Types, modules: &Members, more: &[More<'_>]) {
    out.push_str("/** Every key of the registry with its function; constants take nothing. */\n");
    out.push_str("export interface Functions {\n");
    for (module, members) in modules {
        for Named { key, kind, name, .. } in members {
            let kind = match kind {
                Kind::Function => format!("typeof {module}.{name}"),
                Kind::Constant => format!("(given?: Record<string, never>) => typeof {module}.{name}"),
            };
            _ = writeln!(out, "  {key:?}: {kind};");
        }
    }
    for More { key, takes, gives } in more {
        let spelled = |shape, direction| spelled(types, shape, direction);
        let (takes, gives) = (spelled(takes, Direction::Given), spelled(gives, Direction::Answered));
        _ = writeln!(out, "  {key:?}: (given: {takes}) => {gives};");
    }
    out.push_str("}\n\n");
}

fn by_module(out: &mut String, modules: &Members, mut each: impl FnMut(&mut String, &Named)) {
    for (module, members) in modules {
        if members.iter().all(|member| member.flat.is_none()) {
            continue;
        }
        _ = writeln!(out, "  readonly {module}: {{");
        members.iter().filter(|member| member.flat.is_some()).for_each(|member| each(out, member));
        out.push_str("  };\n");
    }
}

fn flats(out: &mut String, modules: &Members) {
    out.push_str("/** Numbers in, a number out, for functions of numbers only: the quickest door. */\n");
    out.push_str("export declare const flat: {\n");
    by_module(out, modules, |out, Named { arguments, result, name, .. }| {
        let mut doc = String::new();
        for argument in *arguments {
            _ = writeln!(doc, "@param {} {}", camel(argument.name), unit(argument.r#type));
        }
        _ = writeln!(doc, "@returns {}\n@throws {{BismarError}}", unit(result));
        comment(out, "    ", &doc);
        let list: Vec<_> = arguments.iter().map(|one| format!("{}: number", camel(one.name))).collect();
        _ = writeln!(out, "    {name}({}): number;", list.join(", "));
    });
    out.push_str("};\n\n");
}

fn batches(out: &mut String, modules: &Members) {
    out.push_str(
        "/** The flat functions over columns; a number stands for the same number in every row. */\n",
    );
    out.push_str("export declare const batch: {\n");
    by_module(out, modules, |out, Named { arguments, name, .. }| {
        let list: Vec<_> = arguments.iter().map(|one| format!("{}: Column", camel(one.name))).collect();
        _ = writeln!(out, "    {name}(given: {{ {} }}): Float64Array;", list.join("; "));
    });
    out.push_str("};\n");
}
