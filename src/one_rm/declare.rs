//! How an equation is declared: its facts once, and its three functions, their documentation and their rows follow.

/// Declares a published relation of load, repetitions to failure and maximum: what could be lifted once, which load, how
/// many repetitions.
///
/// ```text
/// equation! {
///     "Author 1999", "p 12", highest: 30;
///     row: { source: AUTHOR_1999, place: "p 12", standing: Published, seen: Read, population: "who was measured" },
///     domain: "1 to 30 repetitions; measured 3 to 10";
///     /// From 1 to 30 repetitions: whatever else is to be said of the domain.
///     pub fn author_1999(load: Mass, reps: Reps) -> Result<Kilograms, Error> { AUTHOR.one_rm(load, reps) }
///     "`E = w (1 + r / 40)`", at_one: "1.025 w, not the load itself", gives: 120.000;
///     pub fn author_1999_load(one_rm: Kilograms, reps: Reps) -> Result<Kilograms, Error> { AUTHOR.load(one_rm, reps) }
///     "`w = E / (1 + r / 40)`", gives: 83.333;
///     pub fn author_1999_reps(fraction: Fraction) -> Result<f64, Error> { AUTHOR.reps(fraction) }
///     "`r = 40 (1 / F - 1)`", gives: 10.00;
/// }
/// ```
///
/// The first line says how the work is called in a sentence, where in it the equation stands, and up to how many
/// repetitions it answers; then, where the third function answers no further than 20, `answers: 20` (200 otherwise), and
/// with `uses: "Device"` what else the examples name. `row` holds what a row of `formula!` holds, but for `domain` and
/// `error`, which follow it. A function may have a question of its own (`asks: "...";` before it), and `symbols`, `errors`
/// of its own behind its equation, and the first one `more` to say. `gives` is what the example shows, to 0.0005 kg or 0.005 repetitions, or
/// to what `within: "..."` names where the value is exact: for 100 kg and 8 repetitions, or 0.8 of the maximum, or for what
/// `from: "..."` names (for repetitions with the types that it needs).
macro_rules! equation {
    (
        $name:literal, $stands:literal, highest: $highest:literal $(, answers: $answers:literal)? $(, uses: $uses:literal)?;
        row: $row:tt, domain: $domain:literal $(, error: $error:literal)?;
        $(#[doc = $told:expr])+
        $(asks: $one_rm_asks:literal;)?
        pub fn $one_rm:ident $one_rm_takes:tt -> Result<$one_rm_out:ty, $one_rm_refusal:ty> $one_rm_body:block
        $one_rm_equation:literal $(, symbols: $one_rm_symbols:literal)? $(, at_one: $at_one:literal)?
        $(, more: $more:literal)? $(, errors: $one_rm_errors:literal)?, gives: $one_rm_gives:literal $(, within: $one_rm_within:literal)? $(, from: $one_rm_given:literal)?;
        $(asks: $load_asks:literal;)?
        pub fn $load:ident $load_takes:tt -> Result<$load_out:ty, $load_refusal:ty> $load_body:block
        $load_equation:literal $(, symbols: $load_symbols:literal)? $(, errors: $load_errors:literal)?,
        gives: $load_gives:literal $(, within: $load_within:literal)? $(, from: $load_given:literal)?;
        $(asks: $reps_asks:literal;)?
        pub fn $reps:ident $reps_takes:tt -> Result<$reps_out:ty, $reps_refusal:ty> $reps_body:block
        $reps_equation:literal $(, symbols: $reps_symbols:literal)? $(, errors: $reps_errors:literal)?,
        gives: $reps_gives:literal $(, within: $reps_within:literal)? $(, from: $reps_given:literal, $reps_needs:literal)?;
    ) => {
        $crate::one_rm::declare::one_function! {
            $row, $domain, [$($error)?],
            [
                [$($one_rm_asks)?] "What could be lifted once, from a set to failure?",
                $one_rm_equation,
                [$($one_rm_symbols)?] "`w` load in kg, `r` repetitions to failure, `E` in kg",
                concat!($(" At one repetition it gives ", $at_one, ".",)? $(" ", $more)?),
                concat!($($told, "\n"),+),
                [$($one_rm_errors)?] concat!("`reps_out_of_domain` below 1 and above ", $highest,
                    " repetitions; `load_out_of_domain` at or below 0 kg."),
                concat!($name, ", ", $stands),
                [$($uses)?] "{Mass, Reps}", "estimate", [$($one_rm_given)?] "Mass::from_kg(100.0)?, Reps::whole(8)?", "(estimate.value() - ", $one_rm_gives, [$($one_rm_within)?] "0.0005",
            ]
            pub fn $one_rm $one_rm_takes -> Result<$one_rm_out, $one_rm_refusal> $one_rm_body
        }
        $crate::one_rm::declare::one_function! {
            $row, $domain, [$($error)?],
            [
                [$($load_asks)?] "What load would be lifted this often to failure, given the one-repetition maximum?",
                $load_equation,
                [$($load_symbols)?] "`E` one-repetition maximum in kg, `r` repetitions to failure, `w` in kg",
                "",
                concat!(" As [`", stringify!($one_rm), "`].\n"),
                [$($load_errors)?] concat!("`reps_out_of_domain` below 1 and above ", $highest,
                    " repetitions; `load_out_of_domain` where the maximum is at or below 0 kg."),
                concat!($name, " solved for the load"),
                [$($uses)?] "{Kilograms, Reps}", "load", [$($load_given)?] "Kilograms::new(100.0)?, Reps::whole(8)?", "(load.value() - ", $load_gives, [$($load_within)?] "0.0005",
            ]
            pub fn $load $load_takes -> Result<$load_out, $load_refusal> $load_body
        }
        $crate::one_rm::declare::one_function! {
            $row,
            concat!("where the answer lies from 1 to ", $crate::one_rm::declare::or!([$($answers)?] 200), " repetitions"),
            [$($error)?],
            [
                [$($reps_asks)?] "How many repetitions to failure does a part of the maximum allow?",
                $reps_equation,
                [$($reps_symbols)?] "`F` part of the one-repetition maximum, `r` repetitions",
                "",
                concat!(" As [`", stringify!($one_rm), "`]", $crate::one_rm::declare::or!([$(concat!("; answers up to ", $answers, " repetitions"))?]
                    "; the answer may lie above what that form accepts, up to 200"), ".\n"),
                [$($reps_errors)?] concat!("`percent_out_of_domain` where the equation has no answer from 1 to ",
                    $crate::one_rm::declare::or!([$($answers)?] 200), " repetitions."),
                concat!($name, " solved for repetitions"),
                [$($uses)?] $crate::one_rm::declare::or!([$($reps_needs)?] "Fraction"), "reps", [$($reps_given)?] "Fraction::new(0.8)?", "(reps - ", $reps_gives, [$($reps_within)?] "0.005",
            ]
            pub fn $reps $reps_takes -> Result<$reps_out, $reps_refusal> $reps_body
        }
    };
}

/// One of an equation's functions with its documentation.
macro_rules! one_function {
    (
        { $($row:tt)* }, $domain:expr, [$($error:literal)?],
        [
            [$($asks:literal)?] $asked:literal, $equation:literal, [$($symbols:literal)?] $usual:literal, $more:expr,
            $told:expr, [$($errors:literal)?] $refused:expr, $stands:expr,
            [$($uses:literal)?] $quantities:expr, $answer:literal, [$($given:literal)?] $sample:literal, $difference:literal, $gives:literal,
            [$($within:literal)?] $usually:literal,
        ]
        pub fn $name:ident $takes:tt -> Result<$out:ty, $refusal:ty> $body:block
    ) => {
        $crate::source::formula! {
            concat!("one_rm.", stringify!($name)),
            #[doc = concat!(
                " ", $crate::one_rm::declare::or!([$($asks)?] $asked),
                "\n\n # Formula\n ", $equation, "; ", $crate::one_rm::declare::or!([$($symbols)?] $usual), ".", $more,
                "\n\n # Domain\n", $told,
                "\n # Errors\n ", $crate::one_rm::declare::or!([$($errors)?] $refused),
                "\n\n # Source\n ", $stands, " (row `one_rm.", stringify!($name), "`).",
                "\n\n # Examples\n ```\n use bismar::one_rm::",
                $crate::one_rm::declare::or!([$(concat!("{", $uses, ", ", stringify!($name), "}"))?] stringify!($name)),
                ";\n use bismar::quantity::", $quantities, ";\n\n let ", $answer, " = ", stringify!($name), "(", $crate::one_rm::declare::or!([$($given)?] $sample), ")?;\n assert!(", $difference,
                stringify!($gives), ").abs() < ", $crate::one_rm::declare::or!([$($within)?] $usually), ");\n # Ok::<(), bismar::Error>(())\n ```"
            )]
            pub fn $name $takes -> Result<$out, $refusal> $body
            $($row)*, domain: $domain $(, error: $error)?
        }
    };
}

/// What is given, else what is usual.
macro_rules! or {
    ([$given:expr] $usual:expr) => {
        $given
    };
    ([] $usual:expr) => {
        $usual
    };
}

pub(super) use {equation, one_function, or};
