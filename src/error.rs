//! The one error type, with stable machine codes.
//!
//! Uses nothing else of the crate. Every fallible function of the crate returns [`Error`]: which rule was
//! broken ([`Code`]), in which field, the value that was given, and what is allowed. Code and numbers are the
//! contract; the English sentence is one renderer over them (feature `english`, module `text`).

use alloc::borrow::Cow;
use alloc::boxed::Box;
use alloc::format;
use alloc::string::String;
use core::fmt;

macro_rules! codes {
    ($($variant:ident $text:literal $meaning:literal),+ $(,)?) => {
        /// What went wrong, as a stable code. The text form (`as_str`) never changes within a major version.
        #[non_exhaustive]
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum Code {
            $(#[doc = $meaning] $variant,)+
        }

        impl Code {
            /// Every code of this version.
            pub const ALL: &'static [Code] = &[$(Code::$variant,)+];

            /// The stable machine text, for example `reps_out_of_domain`.
            ///
            /// ```
            /// assert_eq!(bismar::Code::RepsOutOfDomain.as_str(), "reps_out_of_domain");
            /// ```
            #[must_use]
            pub const fn as_str(self) -> &'static str {
                match self { $(Code::$variant => $text,)+ }
            }

            /// What the code means, in one plain sentence.
            #[must_use]
            pub const fn meaning(self) -> &'static str {
                match self { $(Code::$variant => $meaning,)+ }
            }
        }
    };
}

// One line a code, grouped by the module that first needed it; a test keeps texts unique and well formed.
codes! {
    // quantity and reading
    NotFinite "not_finite" "The number is NaN or infinite.",
    OutOfRange "out_of_range" "The value lies outside the range that its type allows.",
    NotANumber "not_a_number" "The text could not be read as a decimal number.",
    UnknownUnit "unknown_unit" "The unit is not one of those allowed here.",
    NotAName "not_a_name" "The text cannot serve as a name.",
    NotADate "not_a_date" "The text is not a calendar date of the form YYYY-MM-DD.",
    NotAHalfStep "not_a_half_step" "The value must be a whole number or end in .5.",
    NotWhole "not_whole" "The value must be a whole number.",
    IntervalReversed "interval_reversed" "The lower end of the interval lies above its upper end.",
    Overflow "overflow" "The result is larger than the type can hold exactly.",
    WrongType "wrong_type" "The value has another type than the field wants.",
    MissingField "missing_field" "A required field is absent.",
    UnknownField "unknown_field" "The field is not known here; nothing is ignored in silence.",
    UnknownVariant "unknown_variant" "The name is not one of those allowed here.",
    DuplicateField "duplicate_field" "The same field is given twice.",
    NullNotAllowed "null_not_allowed" "Null is given where a value is wanted; leave the field out instead.",
    NotJson "not_json" "The text is not valid JSON.",
    UnknownFunction "unknown_function" "No function of that name is in the dispatch table.",
    // one_rm
    RepsOutOfDomain "reps_out_of_domain" "The equation is not defined, or was not measured, at this number of repetitions.",
    LoadOutOfDomain "load_out_of_domain" "The equation is not defined at this load.",
    PercentOutOfDomain "percent_out_of_domain" "The equation has no answer at this fraction of the one-repetition maximum.",
    NotScaleFree "not_scale_free" "The part of the maximum depends on the load too, so it cannot be given alone.",
    VelocityOutOfDomain "velocity_out_of_domain" "The velocity lies outside what the relation can answer.",
    NoUsableSet "no_usable_set" "Every set is refused, so nothing can be said about strength.",
    NotAReserve "not_a_reserve" "The rating does not name a number of repetitions in reserve.",
    // loading
    StockTooLarge "stock_too_large" "The stock makes more different sums than the stated bound.",
    BelowLightest "below_lightest" "The load is lighter than the lightest that the implement can make.",
    AboveHeaviest "above_heaviest" "The load is heavier than the heaviest that the implement can make.",
    NotInStock "not_in_stock" "The stock has no such disc, or not so many of them.",
    NotRising "not_rising" "Each value must lie above the one before it.",
    AboveWorkSet "above_work_set" "A warm-up or reference set must stay below the work set.",
    NotFalling "not_falling" "Each value must lie below the one before it.",
    UnevenEnds "uneven_ends" "The two ends of the bar carry different loads.",
    LopsidedDiameters "lopsided_diameters" "The largest discs of the two ends differ in diameter.",
    NoDisc "no_disc" "An end of the bar carries no disc.",
    SleeveOverflow "sleeve_overflow" "The discs need more room than the sleeve has.",
    ImbalanceAboveLimit "imbalance_above_limit" "One end would become heavier than the other by more than the limit.",
    NotLoadable "not_loadable" "No combination of what is at hand makes this load.",
    // record, gate, progression, prescription
    TooManyCriticalCriteria "too_many_critical_criteria" "More criteria are critical than one lift may have.",
    DuplicateCriterion "duplicate_criterion" "The same criterion is named twice.",
    UnknownCriterion "unknown_criterion" "A mark names a criterion that is not on the list of the lift.",
    AcceptableExceedReps "acceptable_exceed_reps" "More repetitions are called acceptable than were done.",
    FirstFailingRepContradicts "first_failing_rep_contradicts" "The first failing repetition does not fit the number of acceptable ones.",
    DaysOutOfOrder "days_out_of_order" "An entry is dated before the one listed ahead of it.",
    GateAlwaysOpen "gate_always_open" "The gate asks for nothing, so it would always be open.",
    GateNeverOpens "gate_never_opens" "The gate asks for more than there can be, so it would never open.",
    GateTooLarge "gate_too_large" "The gate has too many requirements, or they are nested too deeply.",
    GateNotSingle "gate_not_single" "The question can be answered for a gate with exactly one pass-run or test.",
    TooMany "too_many" "The list is longer than its stated limit.",
    TooLong "too_long" "The text is longer than its stated limit.",
    EmptyList "empty_list" "The list must hold at least one entry.",
    NegativeLoad "negative_load" "A load on a bar cannot be negative; assistance is a type of its own.",
    DuplicateLift "duplicate_lift" "The same lift is named twice.",
    DuplicateName "duplicate_name" "The same name is used twice.",
    UnknownName "unknown_name" "Nothing of that name is known here.",
    UnknownLift "unknown_lift" "No lift with that id is in the parameters in force.",
    UnknownRegion "unknown_region" "No region with that id is in the parameters in force.",
    NotAsked "not_asked" "Nothing of that kind was asked, or it has its answer.",
    OtherVersion "other_version" "Another version of this library made it; fold the log anew.",
    UnknownEvent "unknown_event" "This version of the log has no event of that kind.",
    NeedsClinician "needs_clinician" "Only a clinician's word answers that.",
    LadderCycle "ladder_cycle" "A rung is harder than itself along its own chain.",
    WrongFormat "wrong_format" "The document is of another format.",
    NewerVersion "newer_version" "The document is of a version that this library does not know.",
    SequenceReused "sequence_reused" "Two different events carry the same number.",
    CorrectionOfNothing "correction_of_nothing" "The correction names an event that is not in the log.",
    CorrectionCycle "correction_cycle" "Corrections replace each other in a circle.",
    ParametersAltered "parameters_altered" "The digest is not that of the parameters, so they were altered since the state was made.",
    NeedsRefold "needs_refold" "The event changes the past: fold the whole log anew.",
    BeforeLastEvent "before_last_event" "The day lies before the last event of the log.",
    NoParameters "no_parameters" "No parameters are in force yet; the log must hold a parameters_changed event first.",
    // rehearsal
    RehearsalTooLong "rehearsal_too_long" "The rehearsal would take more lifters times weeks than its stated bound.",
    // dose
    NoRepetitions "no_repetitions" "There are no repetitions to average over.",
    DayNotRecorded "day_not_recorded" "A day in the range was not recorded, which is not the same as a rest day.",
    NotCovered "not_covered" "The published table has no row for this value.",
    NoReserveLeft "no_reserve_left" "At the one-repetition maximum or above it the ratio has no value.",
    TimeConstantsOutOfOrder "time_constants_out_of_order" "Fitness must fade more slowly than fatigue.",
    NeverCrosses "never_crosses" "With these parameters the curve never reaches that point.",
    // condition
    // horizon
    AgeOutOfDomain "age_out_of_domain" "The model or table has no value at this age.",
    AgesReversed "ages_reversed" "The later age or day lies before the earlier one.",
    BodyMassOutOfDomain "body_mass_out_of_domain" "The formula is not defined, or not meant, at this body mass.",
    SexNeeded "sex_needed" "The answer differs between the sexes and has no common range; sex must be given.",
    NotMeasuredInSex "not_measured_in_sex" "The source measured the other sex only.",
    NotInSource "not_in_source" "The source has no value for this combination.",
    CurveBroken "curve_broken" "The pieces of the curve leave a gap, overlap, or are empty.",
    StrengthUsedUp "strength_used_up" "The curve reaches no strength at all before this age.",
    // statistics
    SuccessesExceedTrials "successes_exceed_trials" "There are more successes than trials.",
    NoTrials "no_trials" "At least one trial is needed.",
    NotEnoughData "not_enough_data" "There are too few values to answer.",
    NotIdentified "not_identified" "The values do not determine the answer: some of them repeat each other.",
    WrongLength "wrong_length" "Two lists that belong together differ in length.",
    ZeroSpread "zero_spread" "All values are equal, so the question has no answer.",
    DidNotConverge "did_not_converge" "The calculation did not settle within its stated number of steps.",
    // bindings
    NotReady "not_ready" "The WebAssembly instance is not set up yet; await the package's init first.",
    BuildMismatch "build_mismatch" "The wasm file and the JavaScript around it come from different builds.",
    InstanceFailed "instance_failed" "The WebAssembly instance stopped at a fault and can no longer be used.",
}

/// The value that was given, kept as it came.
#[derive(Clone, Debug, PartialEq)]
pub enum Given {
    /// Nothing was given, or the value has no short form.
    Nothing,
    /// A number, in the unit of the field.
    Number(f64),
    /// A text.
    Text(String),
}

impl From<f64> for Given {
    fn from(value: f64) -> Self {
        Given::Number(value)
    }
}

macro_rules! given_from_integer {
    ($($integer:ty),+) => {$(
        impl From<$integer> for Given {
            fn from(value: $integer) -> Self {
                Given::Number(value as f64)
            }
        }
    )+};
}
given_from_integer!(u8, u16, u32, i32, u64, i64, usize);

impl From<&str> for Given {
    fn from(value: &str) -> Self {
        Given::Text(value.into())
    }
}

impl From<String> for Given {
    fn from(value: String) -> Self {
        Given::Text(value)
    }
}

/// What would have been accepted.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq)]
pub enum Allowed {
    /// The code alone says it.
    Unstated,
    /// From `low` to `high`, both included, in `unit` (empty for plain numbers).
    Between {
        /// Lowest value allowed.
        low: f64,
        /// Highest value allowed.
        high: f64,
        /// Unit of both, for example `kg`.
        unit: Cow<'static, str>,
    },
    /// One of these names, separated by commas.
    OneOf(Cow<'static, str>),
    /// A rule in words, for what no range can say.
    Rule(Cow<'static, str>),
}

impl Allowed {
    /// A rule in words.
    #[must_use]
    pub const fn rule(rule: &'static str) -> Allowed {
        Allowed::Rule(Cow::Borrowed(rule))
    }

    /// One of these names.
    #[must_use]
    #[cold]
    #[inline(never)]
    pub fn one_of(names: &[&str]) -> Allowed {
        Allowed::OneOf(Cow::Owned(names.join(", ")))
    }
}

/// The one error of the crate.
///
/// ```
/// use bismar::{Code, quantity::Mass};
///
/// let error = Mass::from_kg(f64::NAN).unwrap_err();
/// assert_eq!(error.code(), Code::NotFinite);
/// assert_eq!(error.field(), "mass");
/// ```
#[derive(Clone, PartialEq)]
pub struct Error(Box<Detail>);

#[derive(Clone, PartialEq)]
struct Detail {
    code: Code,
    field: Cow<'static, str>,
    given: Given,
    allowed: Allowed,
    event: Option<u32>,
}

impl Error {
    /// Builds an error; apps that add rules of their own may use it too.
    #[must_use]
    pub fn new(code: Code, field: &'static str, given: impl Into<Given>, allowed: Allowed) -> Self {
        Error::build(code, field, given.into(), allowed)
    }

    // Errors are rare and made in hundreds of places: never copied into them.
    #[cold]
    #[inline(never)]
    fn build(code: Code, field: &'static str, given: Given, allowed: Allowed) -> Self {
        Error(Box::new(Detail { code, field: Cow::Borrowed(field), given, allowed, event: None }))
    }

    /// An error that needs no value and no range.
    #[must_use]
    #[cold]
    #[inline(never)]
    pub fn plain(code: Code, field: &'static str) -> Self {
        Error::new(code, field, Given::Nothing, Allowed::Unstated)
    }

    /// An error for a number outside `low..=high`.
    #[must_use]
    pub fn range(
        code: Code,
        field: &'static str,
        given: impl Into<Given>,
        low: f64,
        high: f64,
        unit: &'static str,
    ) -> Self {
        Error::outside(code, field, given.into(), low, high, unit)
    }

    #[cold]
    #[inline(never)]
    fn outside(
        code: Code,
        field: &'static str,
        given: Given,
        low: f64,
        high: f64,
        unit: &'static str,
    ) -> Self {
        Error::build(code, field, given, Allowed::Between { low, high, unit: Cow::Borrowed(unit) })
    }

    /// The same error seen from one level further out: `reps` inside `sets[2]` becomes `sets[2].reps`.
    #[must_use]
    #[cold]
    #[inline(never)]
    pub fn within(mut self, outer: &str) -> Self {
        let field = &self.0.field;
        self.0.field = Cow::Owned(if field.is_empty() {
            String::from(outer)
        } else if field.starts_with('[') {
            format!("{outer}{field}")
        } else {
            format!("{outer}.{field}")
        });
        self
    }

    /// The same error under another field name, for an argument that has a name of its own.
    #[must_use]
    #[cold]
    #[inline(never)]
    pub fn named(mut self, field: &'static str) -> Self {
        self.0.field = Cow::Borrowed(field);
        self
    }

    /// The same error tied to the event with this sequence number.
    #[must_use]
    pub fn at_event(mut self, sequence: u32) -> Self {
        self.0.event = Some(sequence);
        self
    }

    /// The stable code.
    #[must_use]
    pub fn code(&self) -> Code {
        self.0.code
    }

    /// The field, with its path where it lies inside a larger value.
    #[must_use]
    pub fn field(&self) -> &str {
        &self.0.field
    }

    /// The value as it was given.
    #[must_use]
    pub fn given(&self) -> &Given {
        &self.0.given
    }

    /// What would have been accepted.
    #[must_use]
    pub fn allowed(&self) -> &Allowed {
        &self.0.allowed
    }

    /// The sequence number of the event it concerns, if it concerns one.
    #[must_use]
    pub fn event(&self) -> Option<u32> {
        self.0.event
    }
}

impl fmt::Display for Given {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Given::Nothing => Ok(()),
            Given::Number(number) => write!(out, "{number}"),
            Given::Text(text) => write!(out, "\"{text}\""),
        }
    }
}

impl fmt::Display for Allowed {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Allowed::Unstated => Ok(()),
            Allowed::Between { low, high, unit } if unit.is_empty() => write!(out, "{low} to {high}"),
            Allowed::Between { low, high, unit } => write!(out, "{low} to {high} {unit}"),
            Allowed::OneOf(text) | Allowed::Rule(text) => out.write_str(text),
        }
    }
}

impl fmt::Display for Error {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        let detail = &self.0;
        if out.alternate() {
            return parcel::write(detail, out);
        }
        if let Some(event) = detail.event {
            write!(out, "event {event}: ")?;
        }
        out.write_str(detail.code.as_str())?;
        if !detail.field.is_empty() {
            write!(out, ": {}", detail.field)?;
        }
        if detail.given != Given::Nothing {
            write!(out, " = {}", detail.given)?;
        }
        if detail.allowed != Allowed::Unstated {
            write!(out, " (allowed: {})", detail.allowed)?;
        }
        Ok(())
    }
}

impl fmt::Debug for Error {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(out, "Error({self})")
    }
}

impl core::error::Error for Error {}

/// The lossless text form, written by `{:#}`. A serde deserializer may carry an error of ours only as text
/// (`custom` takes anything that displays); this form lets the strict reader unpack it unharmed.
mod parcel {
    use super::{Allowed, Code, Cow, Detail, Error, Given, String, fmt};

    const MARK: char = '\u{1f}';

    pub(super) fn write(detail: &Detail, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(out, "{MARK}{}{MARK}{}{MARK}", detail.code.as_str(), detail.field.replace(MARK, " "))?;
        match &detail.given {
            Given::Nothing => write!(out, "-{MARK}"),
            Given::Number(number) => write!(out, "n{}{MARK}", number.to_bits()),
            Given::Text(text) => write!(out, "t{}{MARK}", text.replace(MARK, " ")),
        }?;
        match &detail.allowed {
            Allowed::Unstated => write!(out, "-"),
            // As bits: exact, and spares a small build the code that reads decimal numbers.
            Allowed::Between { low, high, unit } => {
                write!(out, "b{}{MARK}{}{MARK}{unit}", low.to_bits(), high.to_bits())
            }
            Allowed::OneOf(names) => write!(out, "o{names}"),
            Allowed::Rule(rule) => write!(out, "r{rule}"),
        }
    }

    #[cfg_attr(not(feature = "serde"), allow(dead_code))]
    pub(super) fn read(text: &str) -> Option<Error> {
        let mut parts = text.strip_prefix(MARK)?.split(MARK);
        let name = parts.next()?;
        let code = Code::ALL.iter().copied().find(|code| code.as_str() == name)?;
        let field = Cow::Owned(String::from(parts.next()?));
        let given = parts.next()?;
        let given = match given.split_at_checked(1)? {
            ("n", bits) => Given::Number(f64::from_bits(bits.parse().ok()?)),
            ("t", text) => Given::Text(text.into()),
            _ => Given::Nothing,
        };
        let allowed = parts.next()?;
        let allowed = match allowed.split_at_checked(1)? {
            ("b", low) => Allowed::Between {
                low: f64::from_bits(low.parse().ok()?),
                high: f64::from_bits(parts.next()?.parse().ok()?),
                unit: Cow::Owned(parts.next()?.into()),
            },
            ("o", names) => Allowed::OneOf(Cow::Owned(names.into())),
            ("r", rule) => Allowed::Rule(Cow::Owned(rule.into())),
            _ => Allowed::Unstated,
        };
        Some(Error(alloc::boxed::Box::new(Detail { code, field, given, allowed, event: None })))
    }
}

#[cfg(feature = "serde")]
impl Error {
    /// Unpacks what another deserializer could carry only as text; other texts become `wrong_type`.
    pub(crate) fn unpack(message: &dyn fmt::Display) -> Error {
        let text = format!("{message:#}");
        parcel::read(&text).unwrap_or_else(|| {
            Error::new(Code::WrongType, "", Given::Nothing, Allowed::Rule(Cow::Owned(text)))
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use alloc::string::ToString;

    #[test]
    fn codes_are_unique_and_snake_case() {
        for (index, code) in Code::ALL.iter().enumerate() {
            let text = code.as_str();
            assert!(text.chars().all(|c| c.is_ascii_lowercase() || c == '_'), "{text}");
            assert!(code.meaning().ends_with('.'), "{text} needs a sentence");
            assert!(!Code::ALL[..index].iter().any(|earlier| earlier.as_str() == text), "{text} twice");
        }
    }

    #[cfg(feature = "serde")]
    #[test]
    fn an_error_survives_being_carried_as_text() {
        let errors = [
            Error::range(Code::OutOfRange, "reps", 300_u16, 0.0, 200.0, "kg"),
            Error::new(Code::NotADate, "day", "2026-02-30", Allowed::rule("YYYY-MM-DD")),
            Error::new(Code::UnknownUnit, "mass", "stone", Allowed::one_of(&["kg", "lb"])),
            Error::plain(Code::Overflow, "mass"),
        ];
        for error in errors {
            assert_eq!(Error::unpack(&error), error);
        }
    }

    #[test]
    fn the_path_grows_outwards() {
        let error = Error::range(Code::OutOfRange, "reps", 300_u16, 0.0, 200.0, "");
        let error = error.within("[2]").within("sets").at_event(7);
        assert_eq!(error.to_string(), "event 7: out_of_range: sets[2].reps = 300 (allowed: 0 to 200)");
    }
}
