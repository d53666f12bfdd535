//! What may happen in the small world, by name.

use core::fmt;

use super::world::Set;

macro_rules! acts {
    ($($act:ident $text:literal),+ $(,)?) => {
        /// One thing that may happen.
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        pub(in super::super) enum Act {
            $($act),+
        }

        impl Act {
            pub(in super::super) const ALL: [Act; [$($text),+].len()] = [$(Act::$act),+];
        }

        impl fmt::Display for Act {
            fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
                out.write_str(match self { $(Act::$act => $text),+ })
            }
        }
    };
}

acts! {
    WaitOne "wait a day",
    WaitThree "wait three days",
    DayWithin "day within the usual, no pain",
    DayAbove "day above the usual, no pain",
    DayBelow "day below the usual, no pain",
    DayBelowSingle "day with one marker below the usual, no pain",
    DayFever "a day with fever",
    DayFall "a day after a fall",
    DayNothingAsked "day within the usual, not asked what comes first",
    DayPainNotAsked "day within the usual, pain not asked",
    FeverOver "the coach says that the fever is over",
    FallAnsweredByCoach "the coach, no clinician, answers about the fall",
    FallCleared "a clinician's word about the fall",
    StrictClean "strict clean",
    StrictFail "strict fails",
    StrictMissed "strict misses a repetition",
    StrictUnscored "strict not scored",
    StrictPainNotAsked "strict clean, pain not asked",
    StrictPain "strict clean, with pain 2",
    StrictCriticalPain "strict loses a critical point with pain 1",
    StrictAlone "strict clean, alone without pins",
    StrictEasierRung "strict clean, on the easier rung",
    StrictEasierTempo "strict clean, in another tempo",
    StrictOtherRange "strict clean, in another range",
    StrictPlaceUnsaid "strict clean, without a word about where",
    StrictLessRange "strict clean, short of its range",
    StrictLighter "strict clean, lighter",
    StrictOneSet "strict clean, one set",
    StrictFewerReps "strict clean, one repetition fewer",
    StrictBelt "strict clean, with a belt",
    StrictNoBelt "strict clean, without a belt",
    StrictNoReserve "strict clean, nothing in reserve",
    StrictTwice "strict clean, in two sessions of one day",
    StrictTwiceFails "strict clean, and fails later that day",
    StrictCorrected "strict clean, corrected: it failed",
    StrictNever "strict clean, corrected: it never was",
    PainCorrected "pain 2, corrected: it was 7",
    StopNever "a stop sign, corrected: it never was",
    BothClean "both clean",
    BothPain "both clean, with pain 2",
    BothFault "both lose the same critical point",
    ForgivingClean "forgiving clean",
    ForgivingFail "forgiving fails",
    BothFlare "both clean, and worse the next morning",
    StrictFlare "strict clean, and worse the next day",
    BothFlareTold "both clean, and pain told unasked the next day",
    Morning "good morning after",
    MorningNotAsked "the morning after, not asked",
    Missed "session missed",
    PainLittle "pain 2",
    PainSome "pain 3",
    PainMuch "pain 7",
    PainNew "pain 1, not known from before",
    PainNotKnown "pain 1, nothing more asked",
    PainSharp "pain 1, sharp",
    PainNeck "pain 7 where no lift loads",
    PainBack "pain 7 in the back",
    Usual "pain 2 agreed as usual",
    Symptom "stop sign",
    BreakWell "a break, well",
    BreakPlanned "a planned break",
    BreakIll "a break, ill",
    Cleared "cleared",
    NotCleared "not cleared",
    Limited "cleared up to 20 kg for the hip",
    LimitedRange "cleared up to the shorter range for the hip",
    ClearedBefore "cleared until yesterday",
    ClearanceEnds "the clearance ends",
    SignOff "sign-off for everything",
    SignOffRegion "sign-off for the region",
    SignOffNeck "sign-off for the neck",
    SignOffBack "sign-off for the back",
    SignOffGate "sign-off for the gate",
    OverrideUp "override up",
    OverrideNoReason "override up without a reason",
    EaseToday "ease for a day",
    Ease "ease for good",
    AcceptStrict "accept strict",
    AcceptForgiving "accept forgiving",
    DeclineStrict "decline strict",
    OneUp "coach asks for the next load",
    TwoUp "coach asks for two loads more",
    RungDown "easier rung",
    RungUp "harder rung",
    RungUpLighter "harder rung, lighter",
    RungBeside "another rung beside it",
    RangeDown "shorter range",
    RangeUp "longer range",
    RangeUpHeavier "longer range with more load",
    TempoDown "easier tempo",
    TempoUp "harder tempo",
    RepsDown "three repetitions",
    RepsUp "four repetitions",
    Rater "another rater",
    Discs "other discs",
    Maintain "strict is kept",
    MaintainBand "strict is kept, down to 16 kg",
    Rest "strict rests",
    Train "strict is trained",
    Retire "strict is retired",
    BodyMass "body mass",
    BlockStarts "a block starts",
    BlockEnds "a block ends",
    FunctionTest "a test of function",
    FirstSet "the first parameters anew",
    StrictLeftOut "strict left out",
    OtherRegion "both lifts on the back",
    OtherImplement "strict with another kind of implement",
    Apart "strict on the back, forgiving on the hip",
    NoPair "the lifts no pair",
    LowCeiling "both lifts no higher than 20 kg",
    ByTempo "strict moves by tempo",
    ByRung "strict moves by rung",
    ByReps "strict moves by repetitions",
    OtherGate "strict with a longer gate",
    Automatic "moves taken without asking",
    Unknown "unknown event",
}

impl Act {
    /// Days that pass, where nothing else happens.
    pub(super) const fn waits(self) -> Option<u8> {
        match self {
            Act::WaitOne => Some(1),
            Act::WaitThree => Some(3),
            _ => None,
        }
    }

    /// The parameters that the coach sets, where that is what happens.
    pub(super) const fn set(self) -> Option<Set> {
        Some(match self {
            Act::FirstSet => Set::First,
            Act::StrictLeftOut => Set::StrictLeftOut,
            Act::OtherRegion => Set::OtherRegion,
            Act::OtherImplement => Set::OtherImplement,
            Act::Apart => Set::Apart,
            Act::NoPair => Set::NoPair,
            Act::LowCeiling => Set::LowCeiling,
            Act::ByTempo => Set::ByTempo,
            Act::ByRung => Set::ByRung,
            Act::ByReps => Set::ByReps,
            Act::OtherGate => Set::OtherGate,
            Act::Automatic => Set::Automatic,
            _ => return None,
        })
    }
}
