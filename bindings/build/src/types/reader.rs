//! From source files to types.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

use syn::{Fields, Item, UseTree};

use super::by_hand::BY_HAND;
use super::serde_attributes::{Said, renamed, said};
use super::{Body, Field, Inside, Kind, Shape, Type, Types};
use crate::Failure;

/// Where a type is declared.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Place {
    /// File below `src`, with `/`.
    file: String,
    /// Modules inside the file.
    inside: Vec<String>,
    /// Rust name.
    name: String,
}

impl Place {
    /// Whether it is a type of its own, not the private form another is read from.
    pub(crate) fn is_public(&self) -> bool {
        self.inside.is_empty()
    }

    fn module(&self) -> String {
        let first = self.file.split('/').next().unwrap_or_default();
        first.trim_end_matches(".rs").to_string()
    }
}

/// For each file, the module that an imported name comes from.
pub(crate) type Imports = BTreeMap<String, BTreeMap<String, String>>;

struct Declared {
    place: Place,
    said: Said,
    item: Declaration,
}

enum Declaration {
    Struct(syn::ItemStruct),
    Enum(syn::ItemEnum),
    /// Kinds listed by a macro.
    Listed(Vec<Listed>),
    /// Another name for a type, or a type whose `Deserialize` is written by hand over this one.
    Aliased(syn::Type),
}

/// A hand-written `Deserialize`, wherever it stands in its module: what it starts from.
struct ReadByHand {
    module: String,
    name: String,
    start: syn::Type,
}

/// One line of such a list: `Name "text" "meaning"`, or after `/// doc` `Name(Body) "text"` or
/// `Name { field: Type } "text"`.
#[derive(Default)]
struct Listed {
    text: String,
    doc: String,
    body: Option<syn::Type>,
    fields: Option<syn::FieldsNamed>,
}

/// Reads every serialised type below `root/src`.
pub(crate) fn read(root: &Path) -> Result<Types, Failure> {
    let source = root.join("src");
    let mut files = Vec::new();
    rust_files(&source, &mut files)?;
    files.sort();
    let (mut declared, mut imports) = (Vec::new(), Imports::new());
    let (mut bare, mut by_hand) = (Vec::new(), Vec::new());
    for path in files {
        let name = path.strip_prefix(&source)?.to_string_lossy().replace('\\', "/");
        let parsed = syn::parse_file(&std::fs::read_to_string(&path)?).map_err(|error| format!("{name}: {error}"))?;
        let mut file = File {
            name: name.clone(),
            declared: &mut declared,
            bare: &mut bare,
            by_hand: &mut by_hand,
            imports: BTreeMap::new(),
        };
        file.items(&parsed.items, &[]);
        let found = std::mem::take(&mut file.imports);
        imports.insert(name, found);
    }
    for (place, said) in bare {
        let own = |one: &&ReadByHand| one.module == place.module() && one.name == place.name;
        if let Some(one) = by_hand.iter().find(own) {
            declared.push(Declared { place, said, item: Declaration::Aliased(one.start.clone()) });
        }
    }
    Ok(build(declared, imports))
}

fn rust_files(folder: &Path, files: &mut Vec<PathBuf>) -> Result<(), Failure> {
    for entry in std::fs::read_dir(folder)? {
        let path = entry?.path();
        if path.is_dir() {
            rust_files(&path, files)?;
        } else if path.extension().is_some_and(|kind| kind == "rs") {
            files.push(path);
        }
    }
    Ok(())
}

struct File<'a> {
    name: String,
    declared: &'a mut Vec<Declared>,
    /// Structs without derived reading and writing.
    bare: &'a mut Vec<(Place, Said)>,
    by_hand: &'a mut Vec<ReadByHand>,
    imports: BTreeMap<String, String>,
}

impl File<'_> {
    fn items(&mut self, items: &[Item], inside: &[String]) {
        for item in items {
            match item {
                Item::Struct(one) => {
                    let said = said(&one.attrs);
                    if said.serialises || said.deserialises {
                        self.add(inside, &one.ident, said, Declaration::Struct(one.clone()));
                    } else {
                        self.bare.push((self.place(inside, &one.ident), said));
                    }
                }
                Item::Impl(one) => self.by_hand.extend(self.read_by_hand(one)),
                Item::Enum(one) => {
                    let said = said(&one.attrs);
                    if said.serialises || said.deserialises {
                        self.add(inside, &one.ident, said, Declaration::Enum(one.clone()));
                    }
                }
                Item::Mod(one) if one.ident != "tests" => {
                    if let Some((_, items)) = &one.content {
                        let deeper = [inside, &[one.ident.to_string()]].concat();
                        self.items(items, &deeper);
                    }
                }
                Item::Type(one) if one.generics.params.is_empty() => {
                    let aliased = Declaration::Aliased((*one.ty).clone());
                    self.add(inside, &one.ident, said(&one.attrs), aliased);
                }
                Item::Macro(one) => self.listed(items, one, inside),
                Item::Use(one) => self.import(&one.tree, &mut Vec::new()),
                _ => {}
            }
        }
    }

    fn add(&mut self, inside: &[String], name: &syn::Ident, said: Said, item: Declaration) {
        let place = self.place(inside, name);
        self.declared.push(Declared { place, said, item });
    }

    fn place(&self, inside: &[String], name: &syn::Ident) -> Place {
        Place { file: self.name.clone(), inside: inside.to_vec(), name: name.to_string() }
    }

    /// What a hand-written `Deserialize` starts from: the type before the first `::deserialize(`.
    fn read_by_hand(&self, one: &syn::ItemImpl) -> Option<ReadByHand> {
        let (_, of, _) = one.trait_.as_ref()?;
        if of.segments.last()?.ident != "Deserialize" {
            return None;
        }
        let syn::Type::Path(read) = one.self_ty.as_ref() else { return None };
        let body: String = one.items.iter().map(|item| quote::quote!(#item).to_string()).collect();
        let (before, _) = body.split_once(" :: deserialize (")?;
        let start = syn::parse_str(before.rsplit(|c: char| !c.is_alphanumeric()).next()?).ok()?;
        let module = self.place(&[], &read.path.segments.last()?.ident).module();
        Some(ReadByHand { module, name: read.path.get_ident()?.to_string(), start })
    }

    /// An enum that a macro of the same file declares from lines of `Name "text" "meaning"`.
    fn listed(&mut self, items: &[Item], call: &syn::ItemMacro, inside: &[String]) {
        let Some(called) = call.mac.path.get_ident() else { return };
        let body = items.iter().find_map(|item| match item {
            Item::Macro(one) if one.ident.as_ref() == Some(called) => Some(one.mac.tokens.to_string()),
            _ => None,
        });
        let Some(body) = body.filter(|body| body.contains("serde")) else { return };
        let words: Vec<&str> = body.split_whitespace().collect();
        let Some(name) = words.iter().position(|word| *word == "enum").and_then(|at| words.get(at + 1))
        else {
            return;
        };
        let (mut kinds, mut doc): (Vec<Listed>, _) = (Vec::new(), String::new());
        let mut at_start = true;
        for token in call.mac.tokens.clone() {
            match token {
                proc_macro2::TokenTree::Ident(_) if at_start => {
                    at_start = false;
                    kinds.push(Listed { doc: std::mem::take(&mut doc), ..Listed::default() });
                }
                proc_macro2::TokenTree::Group(group)
                    if group.delimiter() == proc_macro2::Delimiter::Bracket =>
                {
                    doc = group.to_string().split('"').nth(1).unwrap_or_default().trim().into();
                }
                proc_macro2::TokenTree::Group(group) => {
                    if let Some(last) = kinds.last_mut().filter(|last| last.text.is_empty()) {
                        match group.delimiter() {
                            proc_macro2::Delimiter::Brace => {
                                last.fields = syn::parse2(proc_macro2::TokenTree::Group(group).into()).ok();
                            }
                            _ => last.body = syn::parse2(group.stream()).ok(),
                        }
                    }
                }
                proc_macro2::TokenTree::Literal(literal) => {
                    let Ok(text) = syn::parse_str::<syn::LitStr>(&literal.to_string()) else { continue };
                    match kinds.last_mut() {
                        Some(last) if last.text.is_empty() => last.text = text.value(),
                        Some(last) => last.doc = text.value(),
                        None => {}
                    }
                }
                proc_macro2::TokenTree::Punct(mark) => at_start |= mark.as_char() == ',',
                proc_macro2::TokenTree::Ident(_) => {}
            }
        }
        let doc = body.split('"').nth(1).unwrap_or_default().trim().to_string();
        let place = Place { file: self.name.clone(), inside: inside.to_vec(), name: (*name).into() };
        self.declared.push(Declared {
            place,
            said: Said { doc, ..Said::default() },
            item: Declaration::Listed(kinds),
        });
    }

    fn import(&mut self, tree: &UseTree, path: &mut Vec<String>) {
        match tree {
            UseTree::Path(one) => {
                path.push(one.ident.to_string());
                self.import(&one.tree, path);
                path.pop();
            }
            UseTree::Group(group) => group.items.iter().for_each(|item| self.import(item, path)),
            UseTree::Name(one) => {
                if let [first, module, ..] = path.as_slice()
                    && first == "crate"
                {
                    self.imports.insert(one.ident.to_string(), module.clone());
                }
            }
            _ => {}
        }
    }
}

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

fn build(declared: Vec<Declared>, imports: Imports) -> Types {
    let places: Vec<Place> = declared.iter().map(|one| one.place.clone()).collect();
    let mut types = Types { all: Vec::new(), places, imports };
    for one in &declared {
        let module = one.place.module();
        let doc = one.said.doc.clone();
        let body = Body::Alias(Shape::Nothing);
        types.all.push(Type { module, name: one.place.name.clone(), doc, body });
    }
    for by_hand in BY_HAND {
        let (module, name) = (by_hand.module.to_string(), by_hand.name.to_string());
        let (doc, body) = (by_hand.doc.to_string(), Body::ByHand(by_hand));
        match types.all.iter_mut().find(|one| one.module == module && one.name == name) {
            Some(known) => known.body = body,
            None => {
                types.places.push(Place { file: format!("{module}.rs"), inside: vec![], name: name.clone() });
                types.all.push(Type { module, name, doc, body });
            }
        }
    }
    let bodies: Vec<Body> = declared.iter().map(|one| body(one, &declared, &types)).collect();
    for (known, body) in types.all.iter_mut().zip(bodies) {
        if !matches!(known.body, Body::ByHand(_)) {
            known.body = body;
        }
    }
    types
}

fn body(one: &Declared, declared: &[Declared], types: &Types) -> Body {
    let from = From { types, file: one.place.file.clone(), inside: one.place.inside.clone() };
    // What is read is another type: its fields say which may be left out.
    let wire = one.said.read_from.as_deref().and_then(|name| syn::parse_str::<syn::Type>(name).ok());
    let wire = wire.map(|wire| shape(&wire, &from));
    if let Some(Shape::Type(at)) = wire
        && let Some(read) = declared.get(at)
    {
        let read =
            own_body(read, &From { types, file: read.place.file.clone(), inside: read.place.inside.clone() });
        // Written as the same type: then nothing of its own is seen.
        if one.said.written_as == one.said.read_from {
            return read;
        }
        let mut own = own_body(one, &from);
        merge(&mut own, &read);
        return own;
    }
    match wire {
        Some(Shape::Unknown(_)) | None => own_body(one, &from),
        Some(shape) => Body::Alias(shape),
    }
}

/// Takes from the type that is read which fields may be left out.
fn merge(own: &mut Body, read: &Body) {
    match (own, read) {
        (Body::Fields(own), Body::Fields(read)) => {
            for field in own {
                if let Some(wire) = read.iter().find(|wire| wire.name == field.name) {
                    field.optional_in = wire.optional_in;
                }
            }
        }
        (own, read) => *own = read.clone(),
    }
}

fn own_body(one: &Declared, from: &From<'_>) -> Body {
    let rule = one.said.rename_all.as_deref();
    match &one.item {
        Declaration::Aliased(written) => Body::Alias(shape(written, from)),
        Declaration::Listed(kinds) => Body::Kinds(
            kinds
                .iter()
                .map(|one| Kind {
                    name: one.text.clone(),
                    doc: one.doc.clone(),
                    inside: match (&one.body, &one.fields) {
                        (Some(body), _) => Inside::One(shape(body, from)),
                        (None, Some(named)) => Inside::Fields(fields(named, None, false, from)),
                        (None, None) => Inside::Nothing,
                    },
                })
                .collect(),
        ),
        Declaration::Struct(item) => match &item.fields {
            Fields::Named(named) => Body::Fields(fields(named, rule, one.said.default, from)),
            Fields::Unnamed(list) => {
                let mut shapes: Vec<Shape> =
                    list.unnamed.iter().map(|field| shape(&field.ty, from)).collect();
                if shapes.len() == 1 {
                    Body::Alias(shapes.remove(0))
                } else {
                    Body::Alias(Shape::Tuple(shapes))
                }
            }
            Fields::Unit => Body::Alias(Shape::Nothing),
        },
        Declaration::Enum(item) => {
            Body::Kinds(item.variants.iter().map(|variant| kind(variant, rule, from)).collect())
        }
    }
}

fn kind(variant: &syn::Variant, rule: Option<&str>, from: &From<'_>) -> Kind {
    let said = said(&variant.attrs);
    let name = said.rename.clone().unwrap_or_else(|| renamed(&variant.ident.to_string(), rule));
    let inside = match &variant.fields {
        Fields::Unit => Inside::Nothing,
        Fields::Named(named) => Inside::Fields(fields(named, said.rename_all.as_deref(), false, from)),
        Fields::Unnamed(list) => {
            let mut shapes: Vec<Shape> = list.unnamed.iter().map(|field| shape(&field.ty, from)).collect();
            if shapes.len() == 1 { Inside::One(shapes.remove(0)) } else { Inside::Several(shapes) }
        }
    };
    Kind { name, doc: said.doc, inside }
}

fn fields(named: &syn::FieldsNamed, rule: Option<&str>, all_default: bool, from: &From<'_>) -> Vec<Field> {
    let mut out = Vec::new();
    for field in &named.named {
        let said = said(&field.attrs);
        let Some(ident) = &field.ident else { continue };
        if said.skipped {
            continue;
        }
        let plain = ident.to_string().trim_start_matches("r#").to_string();
        // Field names are written in snake_case already; another rule changes nothing for them.
        let name = said.rename.clone().unwrap_or_else(|| match rule {
            Some("kebab-case") => plain.replace('_', "-"),
            _ => plain,
        });
        let shape = shape(&field.ty, from);
        let optional = matches!(shape, Shape::Optional(_));
        out.push(Field {
            name,
            doc: said.doc,
            optional_in: said.default || all_default || optional,
            // The crate's writer leaves an absent value out.
            optional_out: said.skipped_when_empty || optional,
            flattened: said.flattened,
            shape,
        });
    }
    out
}

/// Where a name is seen from.
pub(crate) struct From<'a> {
    types: &'a Types,
    file: String,
    inside: Vec<String>,
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
