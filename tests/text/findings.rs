//! Findings of the plan check: a careful sentence for each, in the words of the coach.

use std::collections::BTreeSet;

use bismar::quantity::{Mass, Rir};
use bismar::record::Dimension;
use bismar::rehearsal::{Finding, Found, Severity};
use bismar::text::{self, Words};

use crate::careful::is_careful;
use crate::gym::{kg, lb, mm, name, parameters};

/// Every finding, with what its sentence must tell.
pub fn findings() -> Vec<(Found, Vec<&'static str>)> {
    let mut all = of_the_documents();
    all.extend(of_gates());
    all.extend(of_loads(kg(60.0), kg(63.0)));
    all.extend(of_pairs_and_days());
    all
}

fn of_the_documents() -> Vec<(Found, Vec<&'static str>)> {
    let (error, field) = (|| "out_of_range".to_string(), || "lifts[0].step".to_string());
    vec![
        (Found::ParametersRefused { error: error(), field: field() }, vec!["out_of_range", "lifts[0].step"]),
        (Found::PlanRefused { error: error(), field: field() }, vec!["plan", "out_of_range"]),
        (Found::UnknownImplement { implement: name("hex bar") }, vec!["hex bar"]),
        (Found::UnavailableUnknown { implement: name("hex bar") }, vec!["hex bar", "missing"]),
        (Found::UnknownLift, vec!["no such lift"]),
        (Found::NotPlanned, vec!["leaves it out"]),
        (Found::NotCleared, vec!["nobody trains"]),
        (Found::TooManyCritical { count: 5, most: 3 }, vec!["5 criteria", "3"]),
        (Found::NoCriticalCriterion, vec!["critical"]),
        (Found::LearningNone, vec!["learn"]),
        (
            Found::PlanAsksMore { sets: 4, reps: 6, granted_sets: 3, granted_reps: 5 },
            vec!["4 x 6", "allows 3 x 5", "only ask for less"],
        ),
        (
            Found::PlanNeverPasses { sets: 2, reps: 5, granted_sets: 3, granted_reps: 5 },
            vec!["2 x 5", "3 x 5", "no such session counts"],
        ),
        (Found::HelpNeedsBodyMass, vec!["body mass"]),
        (Found::NoDay, vec!["no day"]),
    ]
}

fn of_gates() -> Vec<(Found, Vec<&'static str>)> {
    vec![
        (Found::GateNeverOpens { asks: 20, session: 15 }, vec!["20", "15", "never open"]),
        (Found::GateTooLong { sessions: 40, long_from: 24 }, vec!["40 sessions", "24"]),
        (Found::GateOpensForAnyone { rate: 0.5, sessions: 12, chance: 0.31 }, vec!["50 %", "12", "31 %"]),
        (Found::GateRarelyOpens { rate: 0.95, sessions: 12, chance: 0.2 }, vec!["95 %", "12", "20 %"]),
        (Found::GateNeedsNoTechnique, vec!["without a look"]),
        (Found::ReserveBelowGate { plan: Rir::whole(1), asks: Rir::whole(2) }, vec!["1 in reserve", "2"]),
    ]
}

fn of_loads(load: Mass, cap: Mass) -> Vec<(Found, Vec<&'static str>)> {
    let none = || None;
    let discs = || vec![kg(0.5), lb(1.25)];
    vec![
        (
            Found::StartNotLoadable { load, below: Some(kg(50.0)), above: None },
            vec!["60 kg", "heaviest is 50 kg"],
        ),
        (Found::StartNotLoadable { load, below: None, above: Some(kg(65.0)) }, vec!["lightest is 65 kg"]),
        (Found::StartNotLoadable { load, below: None, above: None }, vec!["60 kg:"]),
        (
            Found::StartNotLoadable { load, below: Some(kg(50.0)), above: Some(kg(65.0)) },
            vec!["50 kg and 65 kg"],
        ),
        (Found::HeightOff { height: mm(225.0), mm: -62.5 }, vec!["225 mm", "below"]),
        (Found::HeightUnknown, vec!["diameter"]),
        (
            Found::StuckAtStart { load, cap, next: Some(kg(65.0)), discs: discs() },
            vec!["from the start", "60 kg", "63 kg", "65 kg", "0.5 kg, 1.25 lb"],
        ),
        (
            Found::StuckLater { load, cap, next: none(), discs: Vec::new() },
            vec!["later on", "the cap is 63 kg, and nothing heavier can be made."],
        ),
        (
            Found::StuckLater { load: kg(4.0), cap: kg(4.24), next: none(), discs: Vec::new() },
            vec!["from 4 kg", "the cap is 4.24 kg"],
        ),
        (Found::CeilingBelowStart { ceiling: kg(50.0), start: load }, vec!["50 kg", "60 kg"]),
        (Found::StepAboveCap { wanted: kg(65.0), cap }, vec!["65 kg", "63 kg"]),
        (Found::WindowBelowStep { load, to: kg(65.0), window: cap }, vec!["60 kg", "65 kg", "63 kg"]),
        (Found::PairStartAboveCap { start: load, cap: kg(55.0) }, vec!["60 kg", "55 kg"]),
        (Found::ClearanceBelowStart { limit: kg(40.0), start: load }, vec!["40 kg", "60 kg"]),
        (Found::ReferenceNotLighter { reference: load, start: load }, vec!["60 kg"]),
    ]
}

fn of_pairs_and_days() -> Vec<(Found, Vec<&'static str>)> {
    let mut all = vec![
        (Found::UnknownPairLift { lift: name("row") }, vec!["row"]),
        (
            Found::RegionShared { region: name("knee-l"), lifts: vec![name("sq"), name("dl")] },
            vec!["back squat, deadlift", "left knee"],
        ),
        (Found::RegionWithoutLift { region: name("back-l") }, vec!["lower back", "halts every lift"]),
        (Found::PairBothMove { partner: name("dl") }, vec!["deadlift"]),
        (Found::PairInOneSession { forgiving: name("dl") }, vec!["deadlift", "one session"]),
        (Found::StrictAfterHeavy { forgiving: name("dl") }, vec!["deadlift", "day after"]),
        (
            Found::PairTooClose { partner: name("dl"), days: 1, needed: 2 },
            vec!["1 rest day ", "deadlift", "2"],
        ),
        (Found::StaleBetweenSessions { gap: 28, allowed: 21 }, vec!["28 days", "21"]),
        (Found::ProbeBeforeSession { gap: 28, due: 21 }, vec!["28 days", "21"]),
    ];
    let moving = [
        (Dimension::Variant, "in rung,"),
        (Dimension::Range, "in range,"),
        (Dimension::Tempo, "in tempo,"),
        (Dimension::Sets, "in sets,"),
        (Dimension::Reps, "in repetitions,"),
        (Dimension::Load, "in load,"),
    ];
    all.extend(moving.map(|(moving, word)| (Found::NothingToMove { moving }, vec![word])));
    all
}

/// Where the squat starts.
const START: &str = "high box, range 450 mm, 3 s down, 1 s hold, 1 s up";

/// Findings that name a load as it is at the start: a load without its place is no load.
const LOADS_AT_THE_START: [&str; 9] = [
    "ceiling_below_start",
    "clearance_below_start",
    "pair_start_above_cap",
    "reference_not_lighter",
    "start_not_loadable",
    "step_above_cap",
    "stuck_at_start",
    "stuck_later",
    "window_below_step",
];

/// Further up only a lift whose load moves is still at the place of its start.
#[test]
fn a_finding_from_further_up_names_the_start_only_where_the_load_moves() {
    let mut all = parameters();
    let what = Found::StuckLater { load: kg(80.0), cap: kg(82.0), next: None, discs: Vec::new() };
    let finding = Finding::about(&name("sq"), what);
    assert!(Words::of(&all).finding(&finding).starts_with(&format!("Back squat, {START}: ")));
    all.lifts[0].moving = Dimension::Range;
    assert!(Words::of(&all).finding(&finding).starts_with("Back squat: "));
    assert!(
        text::finding(&finding).starts_with("sq: "),
        "nobody knows where a lift without parameters starts"
    );
}

#[test]
fn every_finding_is_a_careful_sentence_with_its_numbers_and_names() {
    let all = parameters();
    let findings = findings();
    let codes: BTreeSet<&str> = findings.iter().map(|(found, _)| found.code()).collect();
    assert_eq!(codes, Found::CODES.iter().copied().collect());
    for (found, tells) in findings {
        let said = Words::of(&all).found(&found);
        assert!(said.ends_with('.') && !said.starts_with(char::is_lowercase), "{said}");
        for told in tells {
            assert!(said.to_lowercase().contains(told), "{told:?} is not in {said:?}");
        }
        is_careful(&said);
        let finding = Finding::about(&name("sq"), found);
        let words = Words::of(&all).finding(&finding);
        let start = words == format!("Back squat, {START}: {said}");
        assert_eq!(start, LOADS_AT_THE_START.contains(&finding.code()), "{words}");
        assert!(start || words == format!("Back squat: {said}"), "{words}");
    }
    assert_eq!(text::severity(Severity::Blocks), "cannot work");
    assert_eq!(text::severity(Severity::Warns), "look again");
    assert_eq!(text::severity(Severity::Notes), "note");
}
