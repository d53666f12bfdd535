//! The macros that declare a function or a number together with its row and its entry.

/// Declares a public function together with its registry row and its entry in the dispatch table.
///
/// The function stands there as it is; it returns `Result<T, Error>`, and the row's result is `T`. `copies`, `recalled`,
/// `population`, `domain` and `error`, in this order, may be left out where they say nothing.
macro_rules! formula {
    (
        $key:expr,
        $(#[doc = $doc:expr])*
        pub fn $name:ident ( $($args:tt)* ) -> Result<$out:ty, $refusal:ty> $body:block
        source: $source:expr, place: $place:expr, standing: $standing:ident, seen: $seen:ident
        $(, copies: $copies:expr)? $(, recalled: $recalled:expr)? $(, population: $population:expr)?
        $(, domain: $domain:expr)? $(, error: $error:expr)? $(,)?
    ) => {
        $(#[doc = $doc])*
        #[doc = $crate::source::known!($seen $(, $copies)? $(, recalled $recalled)?)]
        pub fn $name($($args)*) -> Result<$out, $refusal> $body

        #[allow(unused_imports, reason = "argument types of the parent are named here")]
        pub(crate) mod $name {
            use super::*;

            static ROW: $crate::source::Row = $crate::source::Row {
                key: $key,
                kind: $crate::source::Kind::Function,
                doc: concat!($($doc, "\n",)* $crate::source::known!($seen $(, $copies)? $(, recalled $recalled)?)),
                arguments: $crate::source::arguments!([] $($args)*),
                result: stringify!($out),
                source: $source,
                place: $place,
                standing: $crate::source::Standing::$standing,
                seen: $crate::source::Seen::$seen,
                copies: concat!($($copies)?),
                recalled: concat!($($recalled)?),
                population: concat!($($population)?),
                domain: concat!($($domain)?),
                published_error: concat!($($error)?),
                #[cfg(feature = "schema")]
                schemas: $crate::source::schemas!($out; $($args)*),
            };

            static ENTRY: $crate::source::Entry = $crate::source::Entry {
                key: $key,
                #[cfg(feature = "serde")]
                call: |given| {
                    #[allow(unused_mut)]
                    let mut arguments = $crate::value::Arguments::new(given)?;
                    $crate::source::call!(arguments, super::$name, [] $($args)*)
                },
            };

            pub(crate) static DECLARED: $crate::source::Declared = $crate::source::Declared { row: &ROW, entry: &ENTRY };
        }
    };
}

/// Declares a public named number with its row; its entry takes no arguments and gives the number.
macro_rules! constant {
    (
        $key:literal,
        $(#[doc = $doc:expr])*
        pub const $name:ident : $type:ty = $value:expr;
        source: $source:expr, place: $place:expr, standing: $standing:ident, seen: $seen:ident
        $(, copies: $copies:expr)? $(, recalled: $recalled:expr)? $(, population: $population:expr)?
        $(, domain: $domain:expr)? $(, error: $error:expr)? $(,)?
    ) => {
        $(#[doc = $doc])*
        #[doc = $crate::source::known!($seen $(, $copies)? $(, recalled $recalled)?)]
        pub const $name: $type = $value;

        $crate::source::fixed! {
            $key, $name, $type, super::$name,
            concat!($($doc, "\n",)* $crate::source::known!($seen $(, $copies)? $(, recalled $recalled)?)),
            $source, $place, $standing, $seen, concat!($($copies)?), concat!($($recalled)?), concat!($($population)?),
            concat!($($domain)?), concat!($($error)?)
        }
    };
}

/// Declares the row of a type's default: every number in force where a caller names none. Its entry takes no
/// arguments and gives `Type::default()`.
macro_rules! default_of {
    (
        $key:literal,
        $(#[doc = $doc:expr])*
        $name:ident : $type:ty;
        source: $source:expr, place: $place:expr, standing: $standing:ident, seen: $seen:ident
        $(, copies: $copies:expr)? $(, recalled: $recalled:expr)? $(, population: $population:expr)?
        $(, domain: $domain:expr)? $(, error: $error:expr)? $(,)?
    ) => {
        $crate::source::fixed! {
            $key, $name, $type, <$type as Default>::default(),
            concat!($($doc, "\n",)* $crate::source::known!($seen $(, $copies)? $(, recalled $recalled)?)),
            $source, $place, $standing, $seen, concat!($($copies)?), concat!($($recalled)?), concat!($($population)?),
            concat!($($domain)?), concat!($($error)?)
        }
    };
}

/// The last words of a documentation: how the numbers are known. Written here, so that no recalled number can leave
/// them out.
macro_rules! known {
    (Read) => {
        "\n # Known how\n Read in the work or in its abstract.\n"
    };
    (Read, recalled $recalled:expr) => {
        concat!(
            "\n # Known how\n Read in the work or in its abstract. Recalled, not read again: ",
            $recalled,
            ".\n"
        )
    };
    (Secondary, $copies:expr, recalled $recalled:expr) => {
        concat!(
            "\n # Known how\n Not read in the work itself; copies seen: ",
            $copies,
            ". Recalled, not read again: ",
            $recalled,
            ".\n"
        )
    };
    (Secondary, $copies:expr) => {
        concat!("\n # Known how\n Not read in the work itself; copies seen: ", $copies, ".\n")
    };
    (Memory) => {
        "\n # Known how\n Recalled, not read again: take the numbers with care.\n"
    };
    (NotApplicable) => {
        ""
    };
}

/// The row and the entry of a value that takes no arguments.
macro_rules! fixed {
    (
        $key:literal, $name:ident, $type:ty, $value:expr, $doc:expr, $source:expr, $place:expr, $standing:ident,
        $seen:ident, $copies:expr, $recalled:expr, $population:expr, $domain:expr, $error:expr
    ) => {
        #[allow(non_snake_case, unused_imports, reason = "named after the value; its types are named here")]
        pub(crate) mod $name {
            use super::*;

            static ROW: $crate::source::Row = $crate::source::Row {
                key: $key,
                kind: $crate::source::Kind::Constant,
                doc: $doc,
                arguments: &[],
                result: stringify!($type),
                source: $source,
                place: $place,
                standing: $crate::source::Standing::$standing,
                seen: $crate::source::Seen::$seen,
                copies: $copies,
                recalled: $recalled,
                population: $population,
                domain: $domain,
                published_error: $error,
                #[cfg(feature = "schema")]
        schemas: $crate::source::schemas!($type;),
            };

            static ENTRY: $crate::source::Entry = $crate::source::Entry {
                key: $key,
                #[cfg(feature = "serde")]
                call: |given| {
                    $crate::value::Arguments::new(given)?.finish()?;
                    $crate::value::Value::write(&$value)
                },
            };

            pub(crate) static DECLARED: $crate::source::Declared =
                $crate::source::Declared { row: &ROW, entry: &ENTRY };
        }
    };
}

/// The argument list of a row.
macro_rules! arguments {
    ([$($done:tt)*]) => { &[$($done)*] };
    ([$($done:tt)*] $name:ident : & [$type:ty] $(, $($rest:tt)*)?) => {
        $crate::source::arguments!([$($done)* $crate::source::Argument {
            name: stringify!($name), r#type: concat!("&[", stringify!($type), "]") },] $($($rest)*)?)
    };
    ([$($done:tt)*] $name:ident : & $type:ty $(, $($rest:tt)*)?) => {
        $crate::source::arguments!([$($done)* $crate::source::Argument {
            name: stringify!($name), r#type: concat!("&", stringify!($type)) },] $($($rest)*)?)
    };
    ([$($done:tt)*] $name:ident : $type:ty $(, $($rest:tt)*)?) => {
        $crate::source::arguments!([$($done)* $crate::source::Argument {
            name: stringify!($name), r#type: stringify!($type) },] $($($rest)*)?)
    };
}

/// Takes the arguments one by one, then calls.
#[cfg(feature = "serde")]
macro_rules! call {
    ($arguments:ident, $function:path, [$($ready:tt)*]) => {{
        $arguments.finish()?;
        $crate::value::Value::write(&$function($($ready)*)?)
    }};
    ($arguments:ident, $function:path, [$($ready:tt)*] $name:ident : & str $(, $($rest:tt)*)?) => {{
        let $name: alloc::string::String = $arguments.take(stringify!($name))?;
        $crate::source::call!($arguments, $function, [$($ready)* &$name,] $($($rest)*)?)
    }};
    ($arguments:ident, $function:path, [$($ready:tt)*] $name:ident : Option<&$type:ty> $(, $($rest:tt)*)?) => {{
        let $name: Option<$type> = $arguments.take(stringify!($name))?;
        $crate::source::call!($arguments, $function, [$($ready)* $name.as_ref(),] $($($rest)*)?)
    }};
    ($arguments:ident, $function:path, [$($ready:tt)*] $name:ident : & [$type:ty] $(, $($rest:tt)*)?) => {{
        let $name: alloc::vec::Vec<$type> = $arguments.take(stringify!($name))?;
        $crate::source::call!($arguments, $function, [$($ready)* &$name,] $($($rest)*)?)
    }};
    ($arguments:ident, $function:path, [$($ready:tt)*] $name:ident : & $type:ty $(, $($rest:tt)*)?) => {{
        let $name: $type = $arguments.take(stringify!($name))?;
        $crate::source::call!($arguments, $function, [$($ready)* &$name,] $($($rest)*)?)
    }};
    ($arguments:ident, $function:path, [$($ready:tt)*] $name:ident : $type:ty $(, $($rest:tt)*)?) => {{
        let $name: $type = $arguments.take(stringify!($name))?;
        $crate::source::call!($arguments, $function, [$($ready)* $name,] $($($rest)*)?)
    }};
}

/// Lists what one file declares: `rows![epley_1985, brzycki_1993];`
macro_rules! rows {
    ($($name:ident),* $(,)?) => {
        pub(crate) static DECLARED: &[$crate::source::Declared] = &[$($name::DECLARED),*];
    };
}

#[cfg(feature = "serde")]
pub(crate) use call;
pub(crate) use {arguments, constant, default_of, fixed, formula, known, rows};
