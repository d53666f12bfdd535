//! What the public types promise a caller: a new field or a new variant breaks nobody, and every type can be sent,
//! shared, cloned and shown. The types are read from the source, so that one that is added is looked at too.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test may panic"
)]

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use syn::{Attribute, Fields, Item, Visibility};

#[path = "public_types/common.rs"]
mod common;
#[path = "shared/files.rs"]
mod files;
use files::files;

/// Public types that callers may build or match whole, each with the reason why it cannot grow.
const COMPLETE: &[(&str, &str)] = &[
    ("BodyHalf", "upper and lower: a body has two halves"),
    ("Body", "upper and lower: a body has two halves"),
    ("End", "a bar has two ends"),
    ("Unit", "masses are written in kilograms or pounds"),
    ("Sex", "the two columns of the published tables"),
    ("BodyTable", "the two columns of the published table"),
    ("BreakGroup", "the two groups that the source measured"),
    ("ReturnGroup", "the two groups that the source tells apart"),
    ("ResponseForm", "a sum begins before a session or with it"),
    ("Deviation", "of a population or of a sample"),
    ("Monotony", "a quotient has a value or none"),
    ("RatioAnswer", "a quotient has a value or none"),
    ("FitAnswer", "a fit was found or refused"),
    ("Fading", "a span and a time constant say the same thing, and there is no third"),
    ("DailyLoad", "a day has a record, had none on purpose, or nobody knows"),
    ("WeekVerdict", "below, within, above, or nothing to compare with"),
    ("ReturnVolume", "below a range, in it, or above it"),
    ("FloorPlace", "below a range, in it, or above it"),
    ("ExpectationPlace", "below a range, in it, or above it"),
    ("YearsToFloor", "a curve is below a line already, meets it, or never does"),
    ("Crossing", "a curve is below a line already, meets it, or does not within the span"),
    ("Better", "more is better or less is"),
    ("SideTest", "two sides are tested together or apart"),
    ("DayOrder", "a day stands before its month or behind it"),
    ("Given", "the value in an error is nothing, a number or a text"),
    ("Value", "the six kinds of JSON"),
    ("Mark", "looked at and met, in between, not met; or not looked at"),
    ("Outcome", "passed, failed, or not scored"),
    ("TechniqueVerdict", "passed, failed, or not scored"),
    ("Reserve", "what a rating says about the reserve: a number, a range, or neither"),
    ("Effort", "an effort is told as a reserve or as a rating"),
    ("Verdict", "a host has to show each of them: a sixth is a breaking change on purpose"),
    ("MoveOutlook", "a move is on offer or something stands in its way"),
    ("TechniqueStop", "a host has to act on each of them: a fourth is a breaking change on purpose"),
    ("NextStep", "a host has to act on each of them: a fourth is a breaking change on purpose"),
    ("ClearanceStatus", "a host has to act on each of them: a fourth is a breaking change on purpose"),
    ("Severity", "a host has to show each of them: a fourth is a breaking change on purpose"),
    ("Purpose", "a host has to show each of them: a fifth is a breaking change on purpose"),
    ("Kind", "a row is computed or looked up"),
    ("Standing", "whoever shows where a number comes from has to say something of each"),
    ("Seen", "whoever shows where a number comes from has to say something of each"),
];

/// A public struct or enum as it stands in the source.
struct Declared {
    name: String,
    place: String,
    /// A caller can build it with a literal, or match it without a wildcard.
    whole: bool,
    non_exhaustive: bool,
}

fn has(attributes: &[Attribute], name: &str) -> bool {
    attributes.iter().any(|attribute| attribute.path().is_ident(name))
}

fn declared() -> Vec<Declared> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    let mut found = Vec::new();
    for path in files(&root, &[".rs"]) {
        let place = path.strip_prefix(&root).unwrap().display().to_string();
        let file = syn::parse_file(&std::fs::read_to_string(&path).unwrap()).unwrap();
        for item in &file.items {
            let (name, attributes, visibility, whole) = match item {
                Item::Struct(item) => {
                    let public = item.fields.iter().all(|field| matches!(field.vis, Visibility::Public(_)));
                    let some = !matches!(item.fields, Fields::Unit);
                    (&item.ident, &item.attrs, &item.vis, public && some)
                }
                Item::Enum(item) => (&item.ident, &item.attrs, &item.vis, true),
                _ => continue,
            };
            if matches!(visibility, Visibility::Public(_)) {
                let non_exhaustive = has(attributes, "non_exhaustive");
                let (name, place) = (name.to_string(), place.clone());
                found.push(Declared { name, place, whole, non_exhaustive });
            }
        }
    }
    found
}

/// The names that a tree of `pub use` gives away, `as` taken into account.
fn used(tree: &syn::UseTree, names: &mut Vec<String>) {
    match tree {
        syn::UseTree::Path(path) => used(&path.tree, names),
        syn::UseTree::Name(name) => names.push(name.ident.to_string()),
        syn::UseTree::Rename(name) => names.push(name.rename.to_string()),
        syn::UseTree::Group(group) => group.items.iter().for_each(|tree| used(tree, names)),
        // The one glob is of functions; a type behind it is asked for its growth as a declaration.
        syn::UseTree::Glob(_) => {}
    }
}

/// Whether a name is written as a type is: constants are capitals only, functions and modules small.
fn is_type(name: &str) -> bool {
    name.starts_with(char::is_uppercase) && name.contains(char::is_lowercase)
}

/// Every public type by its path: what a public module declares and what it gives away, macros included.
fn listed() -> BTreeSet<String> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    let parsed = |path: &Path| syn::parse_file(&std::fs::read_to_string(path).unwrap()).unwrap();
    let found = files(&root, &[".rs"]);
    let is_trait =
        |item: &Item| if let Item::Trait(item) = item { Some(item.ident.to_string()) } else { None };
    let traits: BTreeSet<String> = found
        .iter()
        .flat_map(|path| parsed(path).items.iter().filter_map(is_trait).collect::<Vec<_>>())
        .collect();
    let mut paths = BTreeSet::new();
    for module in &parsed(&root.join("lib.rs")).items {
        let Item::Mod(module) = module else { continue };
        if !matches!(module.vis, Visibility::Public(_)) {
            continue;
        }
        let name = module.ident.to_string();
        let file = [root.join(format!("{name}.rs")), root.join(&name).join("mod.rs")];
        let file = file.iter().find(|file| file.is_file()).unwrap();
        let mut names = Vec::new();
        for item in &parsed(file).items {
            match item {
                Item::Use(item) if matches!(item.vis, Visibility::Public(_)) => used(&item.tree, &mut names),
                Item::Struct(item) if matches!(item.vis, Visibility::Public(_)) => {
                    names.push(item.ident.to_string());
                }
                Item::Enum(item) if matches!(item.vis, Visibility::Public(_)) => {
                    names.push(item.ident.to_string());
                }
                _ => {}
            }
        }
        paths.extend(
            names
                .iter()
                .filter(|one| is_type(one) && !traits.contains(*one))
                .map(|one| format!("bismar::{name}::{one}")),
        );
    }
    paths
}

fn last(path: &str) -> &str {
    path.rsplit("::").next().unwrap()
}

#[test]
fn no_public_type_breaks_a_caller_when_it_grows() {
    let declared = declared();
    assert!(declared.len() > 350, "the search finds {} types only", declared.len());
    let complete: BTreeMap<&str, &str> = COMPLETE.iter().copied().collect();
    let broken: Vec<String> = declared
        .iter()
        .filter(|one| one.whole && !one.non_exhaustive && !complete.contains_key(one.name.as_str()))
        .map(|one| format!("{}: {}", one.place, one.name))
        .collect();
    assert!(broken.is_empty(), "without #[non_exhaustive] and without a reason:\n{}", broken.join("\n"));
}

#[test]
fn every_reason_not_to_grow_is_needed() {
    let declared = declared();
    for (name, reason) in COMPLETE {
        assert!(reason.len() > 15, "{name}: {reason}");
        let meant = declared.iter().any(|one| one.name == *name && one.whole && !one.non_exhaustive);
        assert!(meant, "{name} is not a complete type");
    }
}

/// Two types of one name make a reader of a signature guess, and languages without modules need another name for one.
#[test]
fn no_two_public_types_share_a_name() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    let text: String =
        files(&root, &[".rs"]).iter().map(|path| std::fs::read_to_string(path).unwrap()).collect();
    let mut paths: BTreeMap<String, Vec<String>> = BTreeMap::new();
    for path in listed() {
        paths.entry(last(&path).to_string()).or_default().push(path);
    }
    assert!(paths.len() > 350, "the search finds {} names only", paths.len());
    // One declaration may be shown by several modules.
    let declarations = |name: &str| {
        let heads = ["struct", "enum"].map(|kind| format!("pub {kind} {name}"));
        let ends = |rest: &&str| !rest.starts_with(|c: char| c.is_alphanumeric() || c == '_');
        heads.iter().map(|head| text.split(head.as_str()).skip(1).filter(ends).count()).sum::<usize>()
    };
    let doubled: Vec<_> =
        paths.iter().filter(|(name, paths)| paths.len() > 1 && declarations(name) > 1).collect();
    assert!(doubled.is_empty(), "{doubled:#?}");
}

/// What a macro of this crate declares is not read as an item, but its text stands in the source.
#[test]
fn every_enum_of_a_macro_may_grow() {
    let seen: BTreeSet<String> = declared().into_iter().map(|one| one.name).collect();
    let paths = listed();
    let of_macros: Vec<&str> =
        paths.iter().map(|path| last(path)).filter(|name| !seen.contains(*name)).collect();
    assert!((3..40).contains(&of_macros.len()), "{of_macros:?}");
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    let text: String =
        files(&root, &[".rs"]).iter().map(|path| std::fs::read_to_string(path).unwrap()).collect();
    for name in of_macros {
        let at =
            text.find(&format!("pub enum {name} {{")).unwrap_or_else(|| panic!("{name} is declared nowhere"));
        let head: Vec<&str> =
            text[..at].lines().rev().take_while(|line| !line.trim_end().ends_with(['}', ';'])).collect();
        assert!(head.iter().any(|line| line.contains("#[non_exhaustive]")), "{name}");
    }
}

/// The list of `public_types/common.rs`, which the compiler checks, holds every public type. `BISMAR_UPDATE=1` writes it
/// anew.
#[test]
fn every_public_type_is_asked_for_the_common_traits() {
    let paths = listed();
    let mut wanted = String::from(
        "//! Written by `BISMAR_UPDATE=1 cargo test --all-features --test public_types`: every public type is asked for what a\n\
         //! caller takes for granted.\n\n\
         use core::fmt::Debug;\n\n\
         const fn common<T: Send + Sync + Clone + Debug>() {}\n\n\
         #[rustfmt::skip]\nconst _: () = {\n",
    );
    for path in &paths {
        let life = if path == "bismar::value::Arguments" { "<'static>" } else { "" };
        wanted.push_str(&format!("    common::<{path}{life}>();\n"));
    }
    wanted.push_str("};\n");
    let kept = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/public_types/common.rs");
    if std::env::var("BISMAR_UPDATE").is_ok() {
        std::fs::write(&kept, &wanted).unwrap();
    }
    assert_eq!(std::fs::read_to_string(&kept).unwrap(), wanted, "BISMAR_UPDATE=1 writes the list anew");
}
