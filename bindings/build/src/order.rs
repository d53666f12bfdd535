//! In which order functions lie in the wasm: code that reads, writes, clones or compares is alike whatever its type,
//! and what is alike compresses better side by side.

use crate::sizes::plain;

/// What sorts beside what: the functions of the dispatch table, then each method of a trait, then the rest by path.
pub(crate) fn kind(mangled: &str) -> String {
    let name = plain(&format!("{:#}", rustc_demangle::demangle(mangled)));
    if name.contains("ENTRY::{closure") {
        return "1".into();
    }
    match trait_method(&name) {
        Some(method) => format!("2{method}"),
        None => format!("3{}", name.split('<').next().unwrap_or_default()),
    }
}

/// Trait and method of `<Type as Trait<..>>::method`, without what the trait is of.
fn trait_method(name: &str) -> Option<String> {
    let (_, rest) = name.split_once(" as ")?;
    let path: String = rest.chars().take_while(|c| c.is_alphanumeric() || matches!(c, '_' | ':')).collect();
    let method = rest.rsplit_once(">::")?.1.split(['<', ':']).next()?;
    Some(format!("{path}{method}"))
}

#[cfg(test)]
mod tests {
    use super::kind;

    #[test]
    fn methods_of_a_trait_lie_together_whatever_their_type() {
        let read =
            |of: &str| kind(&format!("<bismar::{of} as serde_core::de::Deserialize>::deserialize::<Reader>"));
        assert_eq!(read("Mass"), read("record::Plan"));
        assert_eq!(read("Mass"), "2serde_core::de::Deserializedeserialize");
        assert_eq!(kind("bismar::one_rm::epley<f64>"), "3bismar::one_rm::epley");
        assert_eq!(kind("bismar::one_rm::epley_1985::ENTRY::{closure#0}"), "1");
    }
}
