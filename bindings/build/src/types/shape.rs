//! A Rust type, as it is written, as a shape.

use super::{Shape, Types};

fn primitive_shape(word: &str) -> Option<Shape> {
    let whole = |low: f64, high: f64| Some(Shape::Whole { low, high });
    // Whole numbers beyond this are not exact in f64, and the reader refuses them.
    let exact = 9_007_199_254_740_992.0;
    match word {
        "f64" | "f32" => Some(Shape::Number),
        "u8" => whole(0.0, 255.0),
        "u16" => whole(0.0, 65_535.0),
        "u32" => whole(0.0, 4_294_967_295.0),
        "u64" | "usize" | "u128" => whole(0.0, exact),
        "i8" => whole(-128.0, 127.0),
        "i16" => whole(-32_768.0, 32_767.0),
        "i32" => whole(-2_147_483_648.0, 2_147_483_647.0),
        "i64" | "isize" | "i128" => whole(-exact, exact),
        "bool" => Some(Shape::Flag),
        "String" | "str" | "char" => Some(Shape::Text),
        _ => None,
    }
}

/// Where a name is seen from.
pub(crate) struct From<'a> {
    pub(super) types: &'a Types,
    pub(super) file: String,
    pub(super) inside: Vec<String>,
}

impl<'a> From<'a> {
    /// From anywhere in a module.
    pub(crate) fn module(types: &'a Types, module: &str) -> From<'a> {
        From { types, file: format!("{module}/"), inside: Vec::new() }
    }

    fn find(&self, path: &syn::Path) -> Option<usize> {
        let words: Vec<String> = path.segments.iter().map(|segment| segment.ident.to_string()).collect();
        let (name, qualifiers) = words.split_last()?;
        let own = self.file.split('/').next().unwrap_or_default().trim_end_matches(".rs");
        let imported = self.types.imports.get(&self.file).and_then(|imports| imports.get(name));
        let (mut best, mut best_score) = (None, 0);
        for (at, place) in self.types.places.iter().enumerate().filter(|(_, place)| place.name == *name) {
            let within = |word: &String| {
                place.inside.contains(word) || place.module() == *word || place.file.contains(word.as_str())
            };
            let qualified = qualifiers.iter().filter(|word| within(word)).count();
            let same_file = place.file == self.file;
            // A private wire type is meant only where it is named as such, or from beside it.
            let reachable = place.inside.is_empty()
                || same_file
                    && (qualified > 0
                        || place.inside == self.inside && !qualifiers.iter().any(|word| word == "super"));
            if !reachable {
                continue;
            }
            let score = 1
                + 64 * qualified
                + 32 * usize::from(imported == Some(&place.module()))
                + 16 * usize::from(same_file)
                + 8 * usize::from(same_file && place.inside == self.inside)
                + 4 * usize::from(place.module() == own)
                + 2 * usize::from(place.module() == "quantity");
            if score > best_score {
                (best, best_score) = (Some(at), score);
            }
        }
        best
    }
}

/// The shape of a Rust type.
pub(crate) fn shape(written: &syn::Type, from: &From<'_>) -> Shape {
    match written {
        syn::Type::Reference(reference) => shape(&reference.elem, from),
        syn::Type::Paren(inner) => shape(&inner.elem, from),
        syn::Type::Group(inner) => shape(&inner.elem, from),
        syn::Type::Slice(slice) => Shape::List(Box::new(shape(&slice.elem, from))),
        syn::Type::Array(array) => array_shape(array, from),
        syn::Type::Tuple(tuple) if tuple.elems.is_empty() => Shape::Nothing,
        syn::Type::Tuple(tuple) => Shape::Tuple(tuple.elems.iter().map(|item| shape(item, from)).collect()),
        syn::Type::Path(path) => path_shape(&path.path, from),
        other => Shape::Unknown(quote::quote!(#other).to_string()),
    }
}

/// A short array of known length is a tuple; a long one, or one of a named length, is a list.
fn array_shape(array: &syn::TypeArray, from: &From<'_>) -> Shape {
    let inner = shape(&array.elem, from);
    let length = match &array.len {
        syn::Expr::Lit(literal) => match &literal.lit {
            syn::Lit::Int(length) => length.base10_parse::<usize>().ok(),
            _ => None,
        },
        _ => None,
    };
    match length {
        Some(length @ 1..=8) => Shape::Tuple(vec![inner; length]),
        _ => Shape::List(Box::new(inner)),
    }
}

fn path_shape(path: &syn::Path, from: &From<'_>) -> Shape {
    let Some(last) = path.segments.last() else { return Shape::Nothing };
    let arguments: Vec<&syn::Type> = match &last.arguments {
        syn::PathArguments::AngleBracketed(list) => list
            .args
            .iter()
            .filter_map(|argument| match argument {
                syn::GenericArgument::Type(one) => Some(one),
                _ => None,
            })
            .collect(),
        _ => Vec::new(),
    };
    let name = last.ident.to_string();
    match (name.as_str(), arguments.as_slice()) {
        ("Option", [inner]) => Shape::Optional(Box::new(shape(inner, from))),
        ("Vec" | "BTreeSet" | "VecDeque", [inner]) => Shape::List(Box::new(shape(inner, from))),
        ("Box" | "Cow" | "Arc" | "Rc", [inner]) => shape(inner, from),
        ("BTreeMap", [_, value]) => Shape::Table(Box::new(shape(value, from))),
        (word, _) => primitive_shape(word)
            .or_else(|| from.find(path).map(Shape::Type))
            .unwrap_or_else(|| Shape::Unknown(name.clone())),
    }
}
