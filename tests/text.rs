//! The English sentences: one for every code, with its numbers, careful with people.

#![allow(clippy::unwrap_used, clippy::panic, reason = "a test may panic")]

use std::collections::BTreeSet;

use bismar::caution::Caution;
use bismar::gate::{GateState, Missing};
use bismar::prescription::{Change, LiftToday, Verdict};
use bismar::progression::{MoveOutlook, Status};
use bismar::quantity::{Day, Mass, Name, Rir};
use bismar::reason::Reason;
use bismar::record::{Dimension, Tuple};
use bismar::rehearsal::{Found, Severity};
use bismar::text;
use bismar::value::Value;

#[path = "text/careful.rs"]
mod careful;

use careful::is_careful;

fn kg(value: f64) -> Mass {
    Mass::from_kg(value).unwrap()
}

fn name(text: &str) -> Name {
    Name::new(text).unwrap()
}

fn day() -> Day {
    Day::from_calendar(2026, 3, 9).unwrap()
}

const DAY: &str = "2026-03-09";

/// Every reason, with what its sentence must tell: the numbers that it carries, or the rule that it stands for.
fn reasons() -> Vec<(Reason, Vec<&'static str>)> {
    let (region, load) = (|| name("left knee"), kg(52.5));
    let (who, criterion) = (name("invented coach"), Some(name("brace held")));
    vec![
        (Reason::SymptomStop { since: day() }, vec![DAY, "every lift", "clinician", "signed off"]),
        (
            Reason::PainStop { region: region(), since: day() },
            vec!["left knee", DAY, "clinician", "signed off"],
        ),
        (Reason::Stopped, vec!["clinician", "signed off"]),
        (Reason::NoLoadedFlexion, vec!["clearance", "spine"]),
        (Reason::NotCleared, vec!["clearance", "not to train"]),
        (Reason::ClearanceMissing, vec!["no clearance"]),
        (Reason::ClearanceExpired { on: day() }, vec!["clearance", DAY]),
        (Reason::ClearanceAfterIllness, vec!["illness", "clearance"]),
        (Reason::ClearanceLimit { load }, vec!["clearance", "52.5 kg"]),
        (Reason::ClearanceRange, vec!["clearance", "range"]),
        (Reason::NoLimitsOnRecord, vec!["blood pressure"]),
        (Reason::AsksFirst, vec!["fever", "dizziness", "palpitations", "fall", "medicine", "clinician"]),
        (Reason::PainBlock { region: region(), clear_sessions: 2 }, vec!["left knee", "2 sessions"]),
        (Reason::PainBlock { region: region(), clear_sessions: 1 }, vec!["left knee", "1 session "]),
        (Reason::UsualPainUnsteady { region: region() }, vec!["left knee", "three sessions"]),
        (Reason::UsualPainReview { region: region(), agreed: day() }, vec!["left knee", DAY]),
        (Reason::PainNotAsked, vec!["pain"]),
        (Reason::PainMissingAfterHigh { region: region() }, vec!["left knee", "technique work only"]),
        (Reason::PassProvisional { session: 41 }, vec!["41", "morning after"]),
        (Reason::GateNotOpen, vec!["gate"]),
        (Reason::LearningNotDone { done: 2, needed: 6 }, vec!["2 of 6"]),
        (Reason::Consolidating, vec!["settling in"]),
        (Reason::SteppingBack, vec!["easier"]),
        (Reason::Resting, vec!["planned"]),
        (Reason::Returning { at_most: load }, vec!["not above 52.5 kg"]),
        (Reason::Maintaining, vec!["on purpose"]),
        (Reason::MaintainingBand { not_below: load }, vec!["52.5 kg", "on plan"]),
        (Reason::ProbeDue { by: day(), criterion: None }, vec![DAY]),
        (Reason::ProbeDue { by: day(), criterion }, vec![DAY, "brace held"]),
        (Reason::Retired, vec!["no longer used"]),
        (Reason::Holding { sessions: 9 }, vec!["9 sessions", "the work itself"]),
        (Reason::MoveOnOffer { until: day() }, vec![DAY, "or not at all"]),
        (Reason::BadDay, vec!["bad day", "less load", "fewer sets"]),
        (Reason::BadDaySingle, vec!["first work set"]),
        (Reason::DayUnknown, vec!["no step up"]),
        (Reason::GoodDay, vec!["planned load"]),
        (Reason::QualifiedOnBadDays, vec!["ordinary day"]),
        (Reason::Stale { days: 23, allowed: 21 }, vec!["23 days", "21"]),
        (Reason::CoolingOff { days_left: 1 }, vec!["1 more day."]),
        (Reason::CoolingOff { days_left: 4 }, vec!["4 more days."]),
        (Reason::RegionWindow { region: region(), days_left: 3 }, vec!["left knee", "3 more days"]),
        (Reason::WindowCap { load }, vec!["52.5 kg"]),
        (Reason::PairCap { load }, vec!["52.5 kg", "forgiving"]),
        (Reason::PairProofMissing, vec!["forgiving"]),
        (Reason::PairWindow { days_left: 5 }, vec!["partner", "5 more days"]),
        (Reason::PairPain, vec!["holds", "one step down"]),
        (Reason::PairFault, vec!["same critical fault", "both"]),
        (Reason::PairRest { days: 0, needed: 2 }, vec!["0 full rest days", "2"]),
        (Reason::PairReview, vec!["nothing is blocked"]),
        (Reason::NoLoadableStep { cap: load, next: Some(kg(55.0)) }, vec!["52.5 kg", "55 kg"]),
        (Reason::NoLoadableStep { cap: load, next: None }, vec!["52.5 kg"]),
        (Reason::Ceiling { load }, vec!["52.5 kg"]),
        (Reason::BodyMassMissing, vec!["body mass"]),
        (Reason::AtTop, vec!["top"]),
        (Reason::NotOneStep, vec!["one step"]),
        (Reason::UnknownEventPresent { count: 1 }, vec!["1 event of", "stop"]),
        (Reason::UnknownEventPresent { count: 2 }, vec!["2 events", "stop"]),
        (Reason::AloneWithoutPins, vec!["pins", "no step up", "reserve"]),
        (Reason::NotScored, vec!["marked"]),
        (Reason::NotAtGrant, vec!["granted"]),
        (Reason::Layoff { gap: 12, row: 1, load }, vec!["12 days", "one step down"]),
        (Reason::Layoff { gap: 30, row: 2, load }, vec!["30 days", "52.5 kg"]),
        (Reason::HalfSets { sessions: 2 }, vec!["half the sets", "2 sessions"]),
        (Reason::OverrideInForce { load, who: who.clone(), until: None }, vec!["invented coach", "52.5 kg"]),
        (Reason::OverrideInForce { load, who, until: Some(day()) }, vec!["invented coach", "52.5 kg", DAY]),
        (Reason::EasyWeek, vec!["easy week"]),
        (Reason::BreakCounts { days: 8 }, vec!["8 days"]),
        (Reason::ReserveFloor { reserve: Rir::whole(4) }, vec!["4 in reserve"]),
        (Reason::RoundedDown { from: kg(53.1), to: load }, vec!["53.1 kg", "52.5 kg"]),
        (Reason::NothingLoadable { lightest: kg(20.0) }, vec!["20 kg"]),
        (Reason::ImplementUnavailable { implement: name("hex bar") }, vec!["hex bar"]),
        (Reason::ShortOfTime, vec!["nothing is added"]),
        (Reason::FewerSets { sets: 1 }, vec!["1 set."]),
        (Reason::PlanAsksLess, vec!["less than granted"]),
        (Reason::MoveRefused { event: 77 }, vec!["77"]),
        (Reason::SteppedBack { from: load }, vec!["52.5 kg"]),
    ]
}

#[test]
fn every_reason_is_a_careful_sentence_with_its_numbers() {
    let reasons = reasons();
    let codes: BTreeSet<&str> = reasons.iter().map(|(reason, _)| reason.code()).collect();
    assert_eq!(codes, Reason::CODES.iter().copied().collect());
    let mut sentences = BTreeSet::new();
    for (reason, tells) in reasons {
        let said = text::reason(&reason);
        // A sentence begins with a capital, a number, or the name of who overruled.
        let overruled = matches!(reason, Reason::OverrideInForce { .. });
        assert!(said.ends_with('.') && (overruled || !said.starts_with(char::is_lowercase)), "{said}");
        for told in tells {
            assert!(said.to_lowercase().contains(told), "{told:?} is not in {said:?}");
        }
        is_careful(&said);
        assert!(sentences.insert(said), "{} says what another says", reason.code());
    }
}

#[test]
fn a_reason_is_written_under_its_code_and_read_again() {
    for (reason, _) in reasons() {
        let written = Value::write(&reason).unwrap();
        let bare = written == Value::Text(reason.code().into());
        assert!(bare || written.field(reason.code()).is_some(), "{written:?}");
        assert_eq!(written.read::<Reason>(), Ok(reason));
    }
}

#[test]
fn what_a_gate_misses_is_told_with_its_numbers() {
    let own = |text| name(text);
    let missing = [
        (
            Missing::PassingSessions { have: 1, need: 3, restarted: None, weakest: Some(own("brace")) },
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
            "9 missed of 40 by 2026-03-09: start again on something easier",
        ),
        (Missing::PassingDays { have: 1, need: 4 }, "1 of 4 passing days"),
        (Missing::LastSessionNotPassed { day: day() }, "the session of 2026-03-09 did not pass"),
        (Missing::NextMorningAnswer { day: day() }, "the answer of the morning after 2026-03-09"),
        (Missing::EffortCap { recorded: true }, "effort was above its cap"),
        (Missing::EffortCap { recorded: false }, "effort was not recorded"),
        (Missing::OpenBlock { name: own("left knee") }, "a block is open: left knee"),
        (Missing::DwellSessions { have: 2, need: 6 }, "2 of 6 sessions at this place"),
        (Missing::DwellDays { have: 9, need: 14 }, "9 of 14 days at this place"),
        (Missing::Spacing { have: 3, need: 7 }, "3 of 7 days since the last step"),
        (Missing::SignOff, "the coach's sign-off"),
        (Missing::Pair { name: own("front squat") }, "its partner: front squat"),
        (Missing::Region { name: own("hip") }, "its region: hip"),
        (Missing::Ways { have: 1, need: 2, of: 3 }, "1 of 2 ways open, of 3"),
    ];
    for (missing, said) in missing {
        assert_eq!(text::missing(&missing), said);
        is_careful(said);
    }
}

#[test]
fn what_would_change_an_answer_counts_in_words_that_fit() {
    let changes = [
        (Change::CoachAccepts, "the coach takes the step"),
        (Change::PassingSessions { count: 1 }, "1 more passing session on another day"),
        (Change::PassingSessions { count: 2 }, "2 more passing sessions in a row, each on another day"),
        (Change::LearningSessions { count: 1 }, "1 more session of learning"),
        (Change::Days { count: 1 }, "1 more day"),
        (Change::Days { count: 5 }, "5 more days"),
        (
            Change::ClearSessions { region: name("hip"), count: 2 },
            "2 sessions without more hip pain than usual",
        ),
        (Change::ClearanceAndSignOff, "a clearance, then the coach's sign-off"),
        (Change::SmallerDiscs { up_to: kg(41.25) }, "discs that make a load up to 41.25 kg"),
    ];
    for (change, said) in changes {
        assert_eq!(text::change(&change), said);
        is_careful(said);
    }
}

fn lift(verdict: Verdict, load: Option<Mass>) -> LiftToday {
    let granted = Tuple { rung: 0, range: 0, tempo: 0, sets: 3, reps: 5, load: kg(50.0) };
    LiftToday {
        lift: name("squat"),
        verdict,
        status: Status::ReadyToAdvance,
        granted,
        limit: kg(50.0),
        load,
        loaded: None,
        sets: 3,
        reps: 5,
        reserve: Rir::whole(3),
        warm_up: Vec::new(),
        reasons: Vec::new(),
        outlook: MoveOutlook::OnOffer { to: Tuple { load: kg(52.5), ..granted } },
        gate: GateState::default(),
        would_change: vec![Change::CoachAccepts],
        evidence: Vec::new(),
        cautions: Vec::new(),
    }
}

#[test]
fn a_lift_is_one_line_and_nothing_to_lift_stands_beside_rest_and_stop() {
    let line = |verdict, load| text::lift_line(&lift(verdict, load));
    assert_eq!(line(Verdict::Train, Some(kg(50.0))), "squat: train, 50 kg, 3 x 5, leave 3");
    assert_eq!(line(Verdict::EaseOff, Some(kg(-20.5))), "squat: ease off, 20.5 kg of help, 3 x 5, leave 3");
    assert_eq!(line(Verdict::TechniqueOnly, None), "squat: technique only, no load, 3 x 5, leave 3");
    // Even a load left in the answer is not shown where nobody is to lift.
    assert_eq!(line(Verdict::Rest, Some(kg(50.0))), "squat: rest");
    assert_eq!(line(Verdict::Stop, Some(kg(50.0))), "squat: stop");
    for verdict in [Verdict::Train, Verdict::EaseOff, Verdict::TechniqueOnly, Verdict::Rest, Verdict::Stop] {
        // The stable name is the one that is written, and people read it without its line.
        assert_eq!(Value::write(&verdict), Ok(Value::Text(verdict.as_str().into())));
        assert_eq!(verdict.as_str().replace('_', " "), text::verdict(verdict));
    }
}

#[test]
fn a_step_on_offer_is_not_urged_and_a_blocked_one_names_every_reason() {
    let mut today = lift(Verdict::Train, Some(kg(50.0)));
    assert_eq!(text::one_line(&today), "A step to 52.5 kg is on offer; staying is as good.");
    let by = vec![Reason::GateNotOpen, Reason::CoolingOff { days_left: 2 }];
    today.outlook = MoveOutlook::Blocked { by, to: None };
    today.would_change = vec![Change::GateOpens, Change::Days { count: 2 }];
    assert_eq!(
        text::one_line(&today),
        "The technique gate is not open yet. The last step was recent: 2 more days. What would change it: the \
         gate's other conditions; 2 more days."
    );
}

#[test]
fn every_caution_is_one_sentence_of_its_own() {
    let said: BTreeSet<&str> = Caution::ALL.iter().map(|caution| text::caution(*caution)).collect();
    assert_eq!(said.len(), Caution::ALL.len());
    assert!(said.iter().all(|said| said.ends_with('.') && said.starts_with(char::is_uppercase)));
    said.iter().for_each(|said| is_careful(said));
    assert!(text::caution(Caution::HoldingIsGood).contains("nobody has to add weight"));
}

#[test]
fn findings_tell_what_can_be_made_and_what_moves() {
    assert_eq!(text::severity(Severity::Warns), "look again");
    assert_eq!(text::severity(Severity::Notes), "note");
    let not_made = |below, above| text::found(&Found::StartNotLoadable { load: kg(40.1), below, above });
    let tail = "No session is done at the start load.";
    assert_eq!(not_made(None, None), format!("The equipment does not make 40.1 kg. {tail}"));
    for (below, above) in [(Some(kg(40.0)), None), (None, Some(kg(40.0)))] {
        assert_eq!(
            not_made(below, above),
            format!("The equipment does not make 40.1 kg; it makes 40 kg. {tail}")
        );
    }
    assert_eq!(
        not_made(Some(kg(40.0)), Some(kg(41.0))),
        format!("The equipment does not make 40.1 kg; it makes 40 kg and 41 kg. {tail}")
    );
    let stuck = Found::StuckLater { load: kg(60.0), cap: kg(63.0), next: None, discs: Vec::new() };
    assert_eq!(
        text::found(&stuck),
        "Later on, no step up from 60 kg can be loaded: the cap is 63 kg, and nothing heavier can be made."
    );
    let moving = [
        (Dimension::Variant, "rung"),
        (Dimension::Range, "range"),
        (Dimension::Tempo, "tempo"),
        (Dimension::Sets, "sets"),
        (Dimension::Reps, "repetitions"),
        (Dimension::Load, "load"),
    ];
    for (moving, word) in moving {
        let said = text::found(&Found::NothingToMove { moving });
        assert!(said.contains(&format!("in {word},")), "{said}");
    }
}
