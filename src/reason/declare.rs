//! How reasons are declared: once, with code, meaning and values.

macro_rules! reasons {
    ($($(#[doc = $doc:literal])+ $variant:ident $({ $($(#[doc = $field_doc:literal])+ $field:ident : $type:ty),+ $(,)? })? $text:literal,)+) => {
        /// Why a decision is what it is.
        #[non_exhaustive]
        #[derive(Clone, Debug, PartialEq)]
        #[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case", deny_unknown_fields))]
        #[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
        pub enum Reason {
            $($(#[doc = $doc])+ $variant $({ $($(#[doc = $field_doc])+ $field: $type),+ })?,)+
        }

        impl Reason {
            /// Every code of this version.
            pub const CODES: &'static [&'static str] = &[$($text),+];

            /// Every code with what it means and the names of its values.
            pub const MEANINGS: &'static [(&'static str, &'static str, &'static [&'static str])] =
                &[$(($text, concat!($($doc),+), &[$($(stringify!($field)),+)?])),+];

            /// The stable code.
            #[must_use]
            pub const fn code(&self) -> &'static str {
                match self { $(Reason::$variant { .. } => $text,)+ }
            }

            /// Its values by their names.
            #[must_use]
            pub fn values(&self) -> alloc::vec::Vec<(&'static str, Told<'_>)> {
                match self {
                    $(Reason::$variant $({ $($field),+ })? =>
                        alloc::vec![$($((stringify!($field), Told::from($field))),+)?],)+
                }
            }
        }
    };
}
