//! Ordinary courses to begin from, and for each guard the course on which it alone holds back a wrong move.

use super::acts::Act;

/// A day of training for both lifts, the morning after it, and the day that follows.
const BOTH: &[Act] = &[Act::DayWithin, Act::BothClean, Act::Morning, Act::WaitOne];
/// A move taken two days after the pair was trained.
const FORGIVING_MOVES: &[Act] = &[Act::WaitOne, Act::DayWithin, Act::AcceptForgiving];
const STRICT_MOVES: &[Act] = &[Act::WaitOne, Act::DayWithin, Act::AcceptStrict];

/// A course of a wrong move: what happens before it, the act that would make it, and the rule that it would break.
pub(super) struct Witness {
    pub(super) guard: &'static str,
    pub(super) course: &'static [&'static [Act]],
    pub(super) last: Act,
    pub(super) rule: &'static str,
}

macro_rules! course {
    ($($part:expr),+ $(,)?) => {{
        const PARTS: &[&[Act]] = &[$($part),+];
        const LENGTH: usize = length(PARTS);
        const ALL: [Act; LENGTH] = joined(PARTS);
        &ALL
    }};
}

const fn length(parts: &[&[Act]]) -> usize {
    let (mut at, mut length) = (0, 0);
    while at < parts.len() {
        length += parts[at].len();
        at += 1;
    }
    length
}

const fn joined<const LENGTH: usize>(parts: &[&[Act]]) -> [Act; LENGTH] {
    let mut all = [Act::WaitOne; LENGTH];
    let (mut part, mut at) = (0, 0);
    while part < parts.len() {
        let mut number = 0;
        while number < parts[part].len() {
            all[at] = parts[part][number];
            number += 1;
            at += 1;
        }
        part += 1;
    }
    all
}

/// The forgiving lift moves, then the strict one, then the forgiving one to its top.
static TO_THE_TOP: &[Act] = course![
    &[Act::Cleared],
    BOTH,
    BOTH,
    FORGIVING_MOVES,
    BOTH,
    BOTH,
    &[Act::Cleared],
    STRICT_MOVES,
    BOTH,
    BOTH,
    &[Act::Cleared, Act::WaitOne],
    FORGIVING_MOVES,
    BOTH,
    BOTH,
];

/// The strict lift goes down a rung and proves itself there, and up again.
static DOWN_A_RUNG: &[Act] = course![
    &[Act::Cleared, Act::RungDown],
    BOTH,
    BOTH,
    BOTH,
    &[Act::ByRung],
    STRICT_MOVES,
    BOTH,
    &[Act::Cleared],
    BOTH,
];

/// A stop, a break and the ways back.
static WAYS_BACK: &[Act] = course![
    &[Act::Cleared],
    BOTH,
    BOTH,
    &[Act::Morning, Act::WaitOne, Act::PainMuch, Act::Cleared, Act::SignOffRegion],
    BOTH,
    BOTH,
    &[Act::WaitThree, Act::WaitOne, Act::Cleared],
    BOTH,
    BOTH,
];

/// Moves taken without asking, in a pair trained on days apart.
static BY_ITSELF: &[Act] = course![
    &[Act::Cleared, Act::Automatic],
    &[Act::DayWithin, Act::ForgivingClean, Act::WaitOne],
    &[Act::DayWithin, Act::ForgivingClean, Act::WaitOne],
    &[Act::DayWithin, Act::ForgivingClean, Act::WaitOne],
];

/// Where every search begins, besides the first day.
pub(super) static COURSES: &[&[Act]] = &[TO_THE_TOP, DOWN_A_RUNG, WAYS_BACK, BY_ITSELF];

/// The strict lift alone is ready for its next load on the third day; the question of the day confirms its passes.
const ALONE: &[Act] = &[Act::Cleared, Act::NoPair];
const FORGIVING: &[Act] = &[Act::DayWithin, Act::ForgivingClean, Act::WaitOne];
const STRICT: &[Act] = &[Act::DayWithin, Act::StrictClean, Act::WaitOne];
const BOTH_LIFTS: &[Act] = &[Act::DayWithin, Act::BothClean, Act::WaitOne];
const TODAY: &[Act] = &[Act::DayWithin];

/// For every guard the move that it alone holds back.
pub(super) static WITNESSES: &[Witness] = &[
    Witness {
        guard: "no_stop",
        course: &[
            &[Act::Cleared, Act::Apart],
            FORGIVING,
            FORGIVING,
            &[Act::DayWithin, Act::AcceptForgiving, Act::ForgivingClean, Act::WaitOne, Act::Limited],
            STRICT,
            STRICT,
            &[Act::OtherRegion],
            TODAY,
        ],
        last: Act::AcceptStrict,
        rule: "strict: moved under a limit that no lift has any more",
    },
    Witness {
        guard: "clearance_in_force",
        course: &[ALONE, STRICT, STRICT, TODAY, &[Act::ClearanceEnds]],
        last: Act::AcceptStrict,
        rule: "strict: moved without a clearance",
    },
    Witness {
        guard: "pain_clear",
        course: &[ALONE, STRICT, STRICT, &[Act::Morning, Act::WaitOne], TODAY, &[Act::PainLittle]],
        last: Act::AcceptStrict,
        rule: "strict: moved before the clear sessions after pain",
    },
    Witness {
        guard: "pain_asked",
        course: &[ALONE, STRICT, &[Act::DayWithin, Act::StrictPainNotAsked, Act::WaitOne], TODAY],
        last: Act::AcceptStrict,
        rule: "strict: moved without an answer about pain",
    },
    Witness {
        guard: "state_allows",
        course: &[ALONE, STRICT, STRICT, TODAY, &[Act::Maintain]],
        last: Act::AcceptStrict,
        rule: "strict: moved from a state that does not move",
    },
    Witness {
        guard: "gate_open",
        course: &[ALONE, STRICT, TODAY],
        last: Act::AcceptStrict,
        rule: "strict: moved without its gate",
    },
    Witness {
        guard: "reserve_held",
        course: &[
            ALONE,
            &[Act::DayWithin, Act::StrictNoReserve, Act::WaitOne],
            &[Act::DayWithin, Act::StrictNoReserve, Act::WaitOne],
            TODAY,
        ],
        last: Act::AcceptStrict,
        rule: "strict: moved with too little in reserve",
    },
    Witness {
        guard: "not_overruled",
        course: &[ALONE, STRICT, STRICT, TODAY, &[Act::EaseToday]],
        last: Act::AcceptStrict,
        rule: "strict: moved beside an override",
    },
    Witness {
        guard: "day_allows",
        course: &[ALONE, STRICT, STRICT, &[Act::DayBelow]],
        last: Act::AcceptStrict,
        rule: "strict: moved on a day below the usual or unknown",
    },
    Witness {
        guard: "asked_first",
        course: &[ALONE, STRICT, STRICT, &[Act::DayFever]],
        last: Act::AcceptStrict,
        rule: "strict: moved before what was asked is answered",
    },
    Witness {
        guard: "qualified_on_usual_days",
        course: &[
            ALONE,
            &[Act::DayBelow, Act::StrictClean, Act::WaitOne],
            &[Act::DayBelow, Act::StrictClean, Act::WaitOne],
            TODAY,
        ],
        last: Act::AcceptStrict,
        rule: "strict: moved on days below the usual alone",
    },
    Witness {
        guard: "fresh",
        course: &[ALONE, STRICT, STRICT, FORGIVING, FORGIVING, &[Act::WaitOne, Act::Cleared], TODAY],
        last: Act::AcceptStrict,
        rule: "strict: moved on old evidence",
    },
    Witness {
        guard: "cooled_off",
        course: &[ALONE, STRICT, STRICT, TODAY, &[Act::AcceptStrict], STRICT, STRICT, TODAY],
        last: Act::TempoUp,
        rule: "strict: moved too soon after its last move",
    },
    Witness {
        guard: "region_window",
        course: &[ALONE, BOTH_LIFTS, BOTH_LIFTS, TODAY, &[Act::AcceptForgiving]],
        last: Act::AcceptStrict,
        rule: "strict: moved too soon in its region",
    },
    Witness {
        guard: "pair_allows",
        course: &[&[Act::Cleared], STRICT, STRICT, TODAY],
        last: Act::AcceptStrict,
        rule: "strict: moved without proof of the forgiving lift",
    },
    Witness {
        guard: "pair_rested",
        course: &[&[Act::Cleared], BOTH_LIFTS, BOTH_LIFTS, TODAY],
        last: Act::AcceptForgiving,
        rule: "forgiving: moved without a day of rest in its pair",
    },
    Witness {
        guard: "step_fits",
        course: &[ALONE, &[Act::Ease], STRICT, STRICT, TODAY],
        last: Act::TwoUp,
        rule: "strict: moved by more than its step",
    },
    Witness {
        guard: "one_dimension",
        course: &[ALONE, &[Act::RangeDown], STRICT, STRICT, TODAY],
        last: Act::RangeUpHeavier,
        rule: "strict: moved in two dimensions at once",
    },
    Witness {
        guard: "window_cap",
        course: &[
            ALONE,
            STRICT,
            STRICT,
            TODAY,
            &[Act::AcceptStrict],
            STRICT,
            STRICT,
            &[Act::WaitOne, Act::Cleared],
            TODAY,
        ],
        last: Act::AcceptStrict,
        rule: "strict: moved further than its window allows",
    },
    Witness {
        guard: "ceiling",
        course: &[&[Act::Cleared], FORGIVING, FORGIVING, &[Act::LowCeiling], TODAY],
        last: Act::AcceptForgiving,
        rule: "forgiving: moved above its ceiling",
    },
    Witness {
        guard: "guarded_when_alone",
        course: &[ALONE, STRICT, &[Act::DayWithin, Act::StrictAlone, Act::WaitOne], TODAY],
        last: Act::AcceptStrict,
        rule: "strict: moved alone without pins",
    },
    Witness {
        guard: "known_events",
        course: &[ALONE, STRICT, STRICT, TODAY, &[Act::Unknown]],
        last: Act::AcceptStrict,
        rule: "strict: moved with something on record that is not understood",
    },
];

/// The shortest courses on which a rule was once broken.
pub(super) static BROKEN_ONCE: &[&[Act]] = &[
    // A range that a clearance rules out was not said where there was nowhere to go.
    &[Act::ByRung, Act::LimitedRange],
    // What was allowed above the grant outlasted an illness.
    &[Act::OverrideUp, Act::BreakIll],
    // An easing allowed more than the load of the harder rung.
    course![
        &[Act::Cleared, Act::RungDown],
        BOTH,
        BOTH,
        BOTH,
        &[Act::ByRung, Act::WaitOne, Act::DayWithin, Act::EaseToday, Act::AcceptStrict],
    ],
    // A lift left out while a stop held every lift, and back: its clear days count for that region too.
    &[
        Act::StrictLeftOut,
        Act::PainNeck,
        Act::Cleared,
        Act::SignOffNeck,
        Act::WaitOne,
        Act::Automatic,
        Act::StrictUnscored,
        Act::WaitOne,
        Act::StrictFewerReps,
    ],
];
