//! From source files to declarations.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

use proc_macro2::{TokenStream, TokenTree};
use syn::{Item, UseTree};

use super::Types;
use super::bodies::build;
use super::serde_attributes::{Said, said};
use crate::Failure;

/// Where a type is declared.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Place {
    /// File below `src`, with `/`.
    pub(super) file: String,
    /// Modules inside the file.
    pub(super) inside: Vec<String>,
    /// Rust name.
    pub(super) name: String,
}

impl Place {
    /// Whether it is a type of its own, not the private form another is read from.
    pub(crate) fn is_public(&self) -> bool {
        self.inside.is_empty()
    }

    pub(super) fn module(&self) -> String {
        let first = self.file.split('/').next().unwrap_or_default();
        first.trim_end_matches(".rs").to_string()
    }
}

/// For each file, the module that an imported name comes from.
pub(crate) type Imports = BTreeMap<String, BTreeMap<String, String>>;

/// A type that serde reads or writes, as it was found.
pub(super) struct Declared {
    pub(super) place: Place,
    pub(super) said: Said,
    pub(super) item: Declaration,
}

pub(super) enum Declaration {
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
pub(super) struct Listed {
    pub(super) text: String,
    pub(super) doc: String,
    pub(super) body: Option<syn::Type>,
    pub(super) fields: Option<syn::FieldsNamed>,
}

/// Reads every serialised type below `root/src`.
pub(crate) fn read(root: &Path) -> Result<Types, Failure> {
    read_all(&[root.join("src")])
}

/// Reads every serialised type below those folders; modules of one name are one.
pub(crate) fn read_all(sources: &[PathBuf]) -> Result<Types, Failure> {
    let mut files = Vec::new();
    for source in sources {
        let mut own = Vec::new();
        rust_files(source, &mut own)?;
        own.sort();
        files.extend(own.into_iter().map(|path| (source, path)));
    }
    let (mut declared, mut imports) = (Vec::new(), Imports::new());
    let (mut bare, mut by_hand) = (Vec::new(), Vec::new());
    let mut parsed = Vec::new();
    for (source, path) in files {
        let name = path.strip_prefix(source)?.to_string_lossy().replace('\\', "/");
        let file =
            syn::parse_file(&std::fs::read_to_string(&path)?).map_err(|error| format!("{name}: {error}"))?;
        parsed.push((name, file));
    }
    let macros = macros(&parsed);
    for (name, parsed) in parsed {
        let mut file = File {
            name: name.clone(),
            macros: &macros,
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

/// What every macro of a module says, by module and name.
type Macros = BTreeMap<(String, String), TokenStream>;

/// The macro that a macro hands its lines to, and the lines that it adds behind them: a list in two files.
fn handed_on(says: &TokenStream) -> Option<(String, TokenStream)> {
    let TokenTree::Group(writes) =
        says.clone().into_iter().filter(|token| matches!(token, TokenTree::Group(_))).nth(1)?
    else {
        return None;
    };
    let mut written = writes.stream().into_iter();
    let (Some(TokenTree::Ident(name)), Some(TokenTree::Punct(mark)), Some(TokenTree::Group(lines)), None) =
        (written.next(), written.next(), written.next(), written.next())
    else {
        return None;
    };
    let mut lines = lines.stream().into_iter();
    let first = lines.next()?;
    let taken =
        matches!(first, TokenTree::Punct(ref first) if first.as_char() == '$') && mark.as_char() == '!';
    // The caller's lines stand first: `$`, what is repeated, `*`.
    taken.then(|| (name.to_string(), lines.skip(2).collect()))
}

fn macros(files: &[(String, syn::File)]) -> Macros {
    let mut found = Macros::new();
    for (name, file) in files {
        let place = Place { file: name.clone(), ..Place::default() };
        for item in &file.items {
            if let Item::Macro(syn::ItemMacro { ident: Some(own), mac, .. }) = item {
                found.insert((place.module(), own.to_string()), mac.tokens.clone());
            }
        }
    }
    found
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
    macros: &'a Macros,
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
                Item::Macro(one) => self.listed(one, inside),
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

    /// An enum that a macro of the same module declares from lines of `Name "text" "meaning"`.
    fn listed(&mut self, call: &syn::ItemMacro, inside: &[String]) {
        let Some(called) = call.mac.path.get_ident() else { return };
        let module = self.place(inside, called).module();
        let says = |name: String| self.macros.get(&(module.clone(), name));
        let mut lines = call.mac.tokens.clone();
        let mut body = says(called.to_string());
        if let Some((name, more)) = body.and_then(handed_on) {
            lines.extend(more);
            body = says(name);
        }
        let Some(body) = body.map(ToString::to_string).filter(|body| body.contains("serde")) else { return };
        let words: Vec<&str> = body.split_whitespace().collect();
        let Some(name) = words.iter().position(|word| *word == "enum").and_then(|at| words.get(at + 1))
        else {
            return;
        };
        let (mut kinds, mut doc): (Vec<Listed>, _) = (Vec::new(), String::new());
        let mut at_start = true;
        for token in lines {
            match token {
                TokenTree::Ident(_) if at_start => {
                    at_start = false;
                    kinds.push(Listed { doc: std::mem::take(&mut doc), ..Listed::default() });
                }
                TokenTree::Group(group) if group.delimiter() == proc_macro2::Delimiter::Bracket => {
                    // A line of documentation each; other attributes say nothing of it.
                    let text = group.to_string();
                    let is_doc = text.trim_start_matches(['[', ' ']).starts_with("doc");
                    if let Some(line) = text.split('"').nth(1).filter(|_| is_doc) {
                        doc = [doc.as_str(), line.trim()].join(" ").trim().into();
                    }
                }
                TokenTree::Group(group) => {
                    if let Some(last) = kinds.last_mut().filter(|last| last.text.is_empty()) {
                        match group.delimiter() {
                            proc_macro2::Delimiter::Brace => {
                                last.fields = syn::parse2(TokenTree::Group(group).into()).ok();
                            }
                            _ => last.body = syn::parse2(group.stream()).ok(),
                        }
                    }
                }
                TokenTree::Literal(literal) => {
                    let Ok(text) = syn::parse_str::<syn::LitStr>(&literal.to_string()) else { continue };
                    match kinds.last_mut() {
                        Some(last) if last.text.is_empty() => last.text = text.value(),
                        Some(last) => last.doc = text.value(),
                        None => {}
                    }
                }
                TokenTree::Punct(mark) => at_start |= mark.as_char() == ',',
                TokenTree::Ident(_) => {}
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
                    && (first == "crate" || first == "bismar")
                {
                    self.imports.insert(one.ident.to_string(), module.clone());
                }
            }
            _ => {}
        }
    }
}
