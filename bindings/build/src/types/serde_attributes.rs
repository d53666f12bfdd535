//! What serde's attributes say, plain or behind `cfg_attr(feature = "serde", ...)`.

use syn::punctuated::Punctuated;
use syn::{Attribute, Expr, Lit, Meta, Token};

/// The attributes of one item.
#[derive(Clone, Debug, Default)]
pub(super) struct Said {
    pub(super) serialises: bool,
    pub(super) deserialises: bool,
    pub(super) rename_all: Option<String>,
    pub(super) rename: Option<String>,
    pub(super) read_from: Option<String>,
    pub(super) written_as: Option<String>,
    /// The function that writes a field.
    pub(super) written_by: Option<String>,
    pub(super) default: bool,
    pub(super) skipped_when_empty: bool,
    pub(super) skipped: bool,
    pub(super) flattened: bool,
    pub(super) doc: String,
}

/// Reads them.
pub(super) fn said(attributes: &[Attribute]) -> Said {
    let mut said = Said::default();
    for attribute in attributes {
        note(&attribute.meta, &mut said);
    }
    said.doc = said.doc.trim().to_string();
    said
}

fn inner(meta: &Meta) -> Vec<Meta> {
    match meta {
        Meta::List(list) => list
            .parse_args_with(Punctuated::<Meta, Token![,]>::parse_terminated)
            .map(|metas| metas.into_iter().collect())
            .unwrap_or_default(),
        _ => Vec::new(),
    }
}

fn note(meta: &Meta, said: &mut Said) {
    if meta.path().is_ident("cfg_attr") {
        for meta in inner(meta).iter().skip(1) {
            note(meta, said);
        }
    } else if meta.path().is_ident("derive") {
        for derived in inner(meta) {
            match derived.path().segments.last().map(|last| last.ident.to_string()).as_deref() {
                Some("Serialize") => said.serialises = true,
                Some("Deserialize") => said.deserialises = true,
                _ => {}
            }
        }
    } else if meta.path().is_ident("serde") {
        for word in inner(meta) {
            note_word(&word, said);
        }
    } else if meta.path().is_ident("doc") {
        said.doc.push_str(&text(meta).unwrap_or_default());
        said.doc.push('\n');
    }
}

fn note_word(word: &Meta, said: &mut Said) {
    let Some(name) = word.path().get_ident().map(ToString::to_string) else { return };
    match name.as_str() {
        "rename_all" => said.rename_all = text(word),
        "rename" => said.rename = text(word),
        "try_from" | "from" => said.read_from = text(word),
        "into" => said.written_as = text(word),
        "serialize_with" => said.written_by = text(word),
        "default" => said.default = true,
        "skip_serializing_if" => said.skipped_when_empty = true,
        "skip" => said.skipped = true,
        "flatten" => said.flattened = true,
        _ => {}
    }
}

fn text(meta: &Meta) -> Option<String> {
    match meta {
        Meta::NameValue(pair) => match &pair.value {
            Expr::Lit(literal) => match &literal.lit {
                Lit::Str(text) => Some(text.value()),
                _ => None,
            },
            _ => None,
        },
        _ => None,
    }
}

/// A name under a `rename_all` rule.
pub(super) fn renamed(name: &str, rule: Option<&str>) -> String {
    let separated = |separator: char| {
        let mut out = String::new();
        for (at, letter) in name.chars().enumerate() {
            if letter.is_uppercase() && at > 0 {
                out.push(separator);
            }
            out.extend(letter.to_lowercase());
        }
        out
    };
    match rule {
        Some("snake_case") => separated('_'),
        Some("kebab-case") => separated('-'),
        Some("lowercase") => name.to_lowercase(),
        _ => name.to_string(),
    }
}
