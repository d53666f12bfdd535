//! What would change an answer, and what a gate misses.

use std::collections::BTreeSet;

use bismar::gate::Missing;
use bismar::prescription::{Change, Verdict};
use bismar::sign::Ask;
use bismar::text::{self, Words};
use bismar::value::Value;

use crate::careful::is_careful;
use crate::gym::{day, kg, name, parameters, today};
use crate::variants_of;

fn changes() -> Vec<Change> {
    vec![
        Change::CoachAccepts,
        Change::PassingSessions { count: 1 },
        Change::PassingSessions { count: 2 },
        Change::GateOpens,
        Change::LearningSessions { count: 1 },
        Change::NextMorningAnswer,
        Change::Days { count: 1 },
        Change::Days { count: 5 },
        Change::ClearSessions { region: name("hip"), count: 2 },
        Change::SteadySessions { region: name("hip"), count: 1 },
        Change::SteadySessions { region: name("hip"), count: 2 },
        Change::PainAnswer,
        Change::Clearance,
        Change::ClearanceAndSignOff,
        Change::ClearanceOrRanges,
        Change::DayReport,
        Change::AskAnswered { ask: Ask::Fever },
        Change::AskAnswered { ask: Ask::NewMedicine },
        Change::SessionAsGranted,
        Change::MoreInReserve { count: 1 },
        Change::EffortSaid { count: 2 },
        Change::OverrideEnds,
        Change::LeaveOutPartner { partner: name("front squat") },
        Change::BreakOver { until: day() },
        Change::WholeWork,
        Change::DayWithin,
        Change::PassOnDayWithin,
        Change::RecentSession,
        Change::ForgivingProof,
        Change::SmallerDiscs { up_to: kg(41.25) },
        Change::MoreToLoad { up_to: kg(41.25) },
        Change::BlocksOrDiscs { height: bismar::quantity::Length::from_mm(325.0).unwrap() },
        Change::MoreRepetitions,
        Change::UsualPainAgreed { region: name("hip") },
        Change::BodyMass,
        Change::EasyWeekOver,
        Change::Sessions { count: 2 },
        Change::MoreTime,
        Change::Implement { implement: name("hex bar") },
        Change::PinsOrSpotter,
        Change::CoachSetsOtherwise,
        Change::NewerLibrary,
    ]
}

fn written_name(value: &impl serde::Serialize) -> String {
    match Value::write(value).unwrap() {
        Value::Text(name) => name.to_string(),
        Value::Map(fields) => fields.first().unwrap().0.to_string(),
        other => panic!("{other:?}"),
    }
}

/// Read alone it is whole and true: it begins with what it is needed for, and names who acts.
#[test]
fn what_would_change_an_answer_says_by_itself_who_does_what() {
    let changes = changes();
    let named: BTreeSet<String> = changes.iter().map(written_name).collect();
    assert_eq!(named, variants_of(include_str!("../../src/prescription/change.rs"), "Change"));
    let mut sentences = BTreeSet::new();
    for change in changes {
        let said = text::change(&change);
        let what_for = ["A step ", "Training needs "].iter().any(|start| said.starts_with(start));
        let who = ["the lifter", "the coach", "a clinician"].iter().any(|who| said.contains(who));
        assert!(what_for && who && said.ends_with('.') && !said.contains(';'), "{said}");
        is_careful(&said);
        assert!(!said.contains("1 more session in a row"), "{said}");
        assert!(sentences.insert(said), "{change:?} says what another says");
    }
    assert_eq!(
        text::change(&Change::PassingSessions { count: 2 }),
        "A step needs the lifter to pass 2 more sessions in a row, each on another day."
    );
}

/// What lifts a stop is needed for training, not for a step.
#[test]
fn what_a_stop_waits_for_is_not_said_of_a_step() {
    for change in [Change::ClearanceAndSignOff, Change::AskAnswered { ask: Ask::Fall }] {
        assert!(text::change(&change).starts_with("Training needs "), "{}", text::change(&change));
    }
}

#[test]
fn a_load_in_what_would_change_an_answer_has_its_place() {
    let all = parameters();
    let mut lift = today("dp", Verdict::Train);
    lift.would_change = vec![Change::SmallerDiscs { up_to: kg(11.0) }];
    let said = Words::of(&all).changes(&lift);
    assert_eq!(
        said,
        ["A step needs the coach to find discs or dumbbells for a smaller one, up to 11 kg each (high box)."]
    );
}

#[test]
fn what_a_gate_misses_is_told_with_its_numbers() {
    let missing = [
        (
            Missing::PassingSessions { have: 1, need: 3, restarted: None, weakest: Some(name("brace")) },
            "1 of 3 passing sessions in a row; watch: brace",
        ),
        (
            Missing::PassingSessions { have: 0, need: 2, restarted: Some(day()), weakest: None },
            "0 of 2 passing sessions in a row",
        ),
        (
            Missing::Evidence { scored: 40, misses: 3, clean_reps: Some(25) },
            "3 missed of 40 repetitions so far; 25 clean in a row would do",
        ),
        (Missing::Evidence { scored: 40, misses: 3, clean_reps: None }, "3 missed of 40 repetitions so far"),
        (
            Missing::EvidenceAgainst { day: day(), scored: 40, misses: 9 },
            "9 missed of 40 by 27 Aug 2026: start again on something easier",
        ),
        (Missing::PassingDays { have: 1, need: 4 }, "1 of 4 passing days"),
        (Missing::LastSessionNotPassed { day: day() }, "the session of 27 Aug 2026 did not pass"),
        (Missing::NextMorningAnswer { day: day() }, "the answer of the morning after 27 Aug 2026"),
        (Missing::EffortCap { recorded: true }, "effort was above its cap"),
        (Missing::EffortCap { recorded: false }, "effort was not recorded"),
        (Missing::OpenBlock { name: name("knee-l") }, "a block is open: left knee"),
        (Missing::DwellSessions { have: 2, need: 6 }, "2 of 6 sessions at this place"),
        (Missing::DwellDays { have: 9, need: 14 }, "9 of 14 days at this place"),
        (Missing::Spacing { have: 3, need: 7 }, "3 of 7 days since the last step"),
        (Missing::SignOff, "the coach's sign-off"),
        (Missing::Pair { name: name("dl") }, "its partner: Deadlift"),
        (Missing::Region { name: name("back-l") }, "its region: lower back"),
        (Missing::Ways { have: 1, need: 2, of: 3 }, "1 of 2 ways open, of 3"),
    ];
    let all = parameters();
    let named: BTreeSet<String> = missing.iter().map(|(missing, _)| written_name(missing)).collect();
    assert_eq!(named, variants_of(include_str!("../../src/gate/state.rs"), "Missing"));
    for (missing, said) in missing {
        assert_eq!(Words::of(&all).missing(&missing), said);
        is_careful(said);
    }
}
