//! The declarations of the package as the page takes it: those of the library, and the page's own answers with what each
//! takes and gives, read from the answers' source.

use std::path::Path;

use proc_macro2::TokenTree;
use syn::{FnArg, GenericArgument, Item, PathArguments, ReturnType, Type};

use crate::types::{self, Shape, Types};
use crate::{Failure, declarations, package};

/// Where the answers' source lies, below the workspace.
const ANSWERS: &str = "www-demo/answers/src";

/// One answer: its key, and the types that it takes and gives as seen from its module.
struct Answer {
    key: String,
    takes: Shape,
    gives: Shape,
}

/// Writes the declarations.
pub(crate) fn write(root: &Path) -> Result<String, Failure> {
    let types = types::read_all(&[root.join("src"), root.join(ANSWERS)])?;
    let answers = answers(root, &types)?;
    let own: Vec<declarations::More> = answers
        .iter()
        .map(|one| declarations::More { key: &one.key, takes: one.takes.clone(), gives: one.gives.clone() })
        .collect();
    let surface = declarations::write_with(&types, None, &package::documents(&types), &own)?;
    match surface.unknown.as_slice() {
        [] => Ok(surface.text),
        names => Err(format!("no TypeScript for {}", names.join(", ")).into()),
    }
}

/// The lines of the table in `lib.rs`: a key, and the path of a function.
fn answers(root: &Path, types: &Types) -> Result<Vec<Answer>, Failure> {
    let source = |file: &str| -> Result<syn::File, Failure> {
        Ok(syn::parse_file(&std::fs::read_to_string(root.join(ANSWERS).join(file))?)?)
    };
    let table = source("lib.rs")?.items.into_iter().find_map(|item| match item {
        Item::Macro(one) if one.mac.path.is_ident("entries") => Some(one.mac.tokens),
        _ => None,
    });
    let mut found = Vec::new();
    let (mut key, mut path) = (String::new(), Vec::new());
    let ends = std::iter::once(TokenTree::Punct(proc_macro2::Punct::new(',', proc_macro2::Spacing::Alone)));
    for token in table.ok_or("no table of answers")?.into_iter().chain(ends) {
        match token {
            TokenTree::Literal(text) => key = text.to_string().trim_matches('"').to_string(),
            TokenTree::Ident(word) => path.push(word.to_string()),
            TokenTree::Punct(mark) if mark.as_char() == ',' => {
                if let [module, function] = path.as_slice() {
                    let name = format!("{module}.rs");
                    let (takes, gives) =
                        signature(&source(&name)?, function).ok_or(format!("{key}: no signature"))?;
                    let shape = |written: &Type| types.seen_from(&name, written);
                    found.push(Answer { key: key.clone(), takes: shape(&takes), gives: shape(&gives) });
                }
                path.clear();
            }
            _ => {}
        }
    }
    Ok(found)
}

/// What a function of one argument takes, and what its result gives.
fn signature(file: &syn::File, name: &str) -> Option<(Type, Type)> {
    let item = file.items.iter().find_map(|item| match item {
        Item::Fn(one) if one.sig.ident == name => Some(one),
        _ => None,
    })?;
    let Some(FnArg::Typed(takes)) = item.sig.inputs.first() else { return None };
    let ReturnType::Type(_, result) = &item.sig.output else { return None };
    let Type::Path(result) = result.as_ref() else { return None };
    let PathArguments::AngleBracketed(inside) = &result.path.segments.last()?.arguments else { return None };
    match inside.args.first()? {
        GenericArgument::Type(gives) => Some(((*takes.ty).clone(), gives.clone())),
        _ => None,
    }
}
