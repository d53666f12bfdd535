//! The stable codes, one line each.

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
    MarksOfOtherReps "marks_of_other_reps" "The marks are of more or fewer repetitions than the set has.",
    BornLater "born_later" "The day of birth lies after an entry of the log.",
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
    StateAltered "state_altered" "The seal is not that of the stored state, so it was altered since it was made.",
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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn codes_are_unique_and_snake_case() {
        for (index, code) in Code::ALL.iter().enumerate() {
            let text = code.as_str();
            assert!(text.chars().all(|c| c.is_ascii_lowercase() || c == '_'), "{text}");
            assert!(code.meaning().ends_with('.'), "{text} needs a sentence");
            assert!(!Code::ALL[..index].iter().any(|earlier| earlier.as_str() == text), "{text} twice");
        }
    }
}
