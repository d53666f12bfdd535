//! From declarations to what the types are made of.

use syn::Fields;

use super::by_hand::BY_HAND;
use super::reader::{Declaration, Declared, Imports, Place};
use super::serde_attributes::{renamed, said};
use super::shape::{From, shape};
use super::{Body, Field, Inside, Kind, Shape, Type, Types};

/// All types, each with what it is made of.
pub(super) fn build(declared: Vec<Declared>, imports: Imports) -> Types {
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
        let shape = match said.written_by.as_deref().and_then(|path| path.rsplit("::").next()) {
            Some("write_face") => face(from.types),
            _ => shape(&field.ty, from),
        };
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

/// The type of what is written on a disc.
fn face(types: &Types) -> Shape {
    let at = types.all.iter().position(|one| one.module == "quantity" && one.name == "Face");
    at.map_or_else(|| Shape::Unknown("Face".into()), Shape::Type)
}
