//! What the generator draws, counted: a kind that is never drawn is never tested.

use std::collections::BTreeMap;

use super::course::*;
use super::prescription::whole_plan;
use bismar::error::Code;
use bismar::prescription::next_session_from;
use bismar::record::EventKind;
use proptest::strategy::{Strategy, ValueTree};
use proptest::test_runner::{Config, RngAlgorithm, TestRng, TestRunner};

/// Courses looked at.
const COURSES: usize = 400;

type Counts = BTreeMap<String, usize>;

fn count(counts: &mut Counts, what: impl Into<String>) {
    *counts.entry(what.into()).or_default() += 1;
}

/// The name of a variant, without what it holds.
pub fn variant(value: &impl std::fmt::Debug) -> String {
    let text = format!("{value:?}");
    text.split(|letter: char| !letter.is_alphanumeric()).next().unwrap_or_default().to_owned()
}

fn of_world(world: &World, counts: &mut Counts) {
    for (lift, moving) in ["strict", "forgiving", "press"].into_iter().zip(&world.moving) {
        count(counts, format!("{lift} moves {}", variant(moving)));
    }
    count(counts, format!("measured {}", variant(&world.measured)));
    count(counts, format!("age {}", variant(&world.age)));
    for (what, drawn) in [
        ("tempos", world.tempos),
        ("paired", world.paired),
        ("not paired", !world.paired),
        ("two regions of one lift", world.shared),
        ("moves taken by the rule", world.automatic),
        ("one rater", world.one_rater),
        ("days at the place", world.dwell),
        ("a pull whose range moves", world.floor.is_some_and(|(_, ranges)| ranges)),
        ("a pull whose load moves", world.floor.is_some_and(|(_, ranges)| !ranges)),
        ("help and a body mass", world.helped == Some(true)),
        ("help without a body mass", world.helped == Some(false)),
    ] {
        if drawn {
            count(counts, what);
        }
    }
    if let Some((floor, _)) = world.floor {
        count(counts, format!("floor {}", variant(&floor)));
    }
}

fn of_step(step: &Step, counts: &mut Counts) {
    count(counts, format!("step {}", variant(step)));
    match step {
        Step::Odd { odd, .. } => count(counts, format!("odd {}", variant(odd))),
        Step::Parameters(change) | Step::Between { change, .. } => {
            count(counts, format!("change {}", variant(change)));
        }
        Step::Session { quality, weight, pain, .. } => {
            count(counts, format!("quality {}", variant(quality)));
            count(counts, format!("weight {}", variant(weight)));
            count(counts, if pain.is_some() { "pain asked" } else { "pain not asked" });
        }
        Step::Pain { region, came, .. } => {
            count(counts, format!("pain in the {}", REGIONS[usize::from(*region)]));
            count(counts, format!("came {}", variant(came)));
        }
        _ => {}
    }
}

/// Sets of parameters that the log took and that made a difference.
fn of_changes(drawn: &Drawn, counts: &mut Counts) {
    let mut course = drawn.world.course(1, |_| {});
    for step in &drawn.steps {
        let before = course.set().clone();
        course.step(step);
        match step {
            Step::Parameters(change) if *course.set() != before => {
                count(counts, format!("took the change {}", variant(change)));
                if let Change::Implement { lift, .. } = change {
                    let set = &course.set().lifts[course.number(*lift)];
                    count(counts, format!("given the {}", set.implement.as_str()));
                }
            }
            _ => {}
        }
    }
}

/// What came of it: moves by dimension and by kind of lift, states, events that change the past, acts refused.
fn of_course(course: &Course, counts: &mut Counts) {
    for (at, lift, from, to) in course.upward() {
        let set = &course.states[at].parameters().unwrap().lifts[lift];
        for dimension in set.harder_in(&from, &to) {
            count(counts, format!("moved {}", variant(&dimension)));
        }
        count(counts, format!("moved the {}", set.id.as_str()));
    }
    for state in &course.states {
        for lift in state.set_aside() {
            count(counts, format!("set aside {}", lift.status().as_str()));
        }
        for lift in all_stand(state) {
            count(counts, format!("state {}", lift.status));
            for (what, seen) in [
                ("a former region", !lift.former.is_empty()),
                ("a gap that another lift ended", lift.missed > 0),
                ("an act refused", lift.refused.is_some()),
                ("an override", lift.overruled.is_some()),
                ("another rater", lift.other_rater),
                ("unguarded", lift.unguarded),
                ("partner pain", lift.partner_pain),
            ] {
                if seen {
                    count(counts, what);
                }
            }
        }
    }
    for events in course.log.events.windows(3) {
        let [one, set, other] = events else { continue };
        let sessions = [one, other].map(|event| matches!(event.kind, EventKind::SessionRecorded(_)));
        if sessions == [true; 2]
            && one.day == other.day
            && matches!(set.kind, EventKind::ParametersChanged(_))
        {
            count(counts, "parameters between two sessions of a day");
        }
    }
    let mut state = bismar::progression::State::before(&course.log);
    for (at, event) in course.log.events.iter().enumerate() {
        match state.apply(event) {
            Err(error) if error.code() == Code::NeedsRefold => {
                count(counts, "an event that changes the past");
                state = course.states[at].clone();
            }
            _ => {}
        }
    }
    let plan = whole_plan(course);
    // On the day after it nobody has asked anything yet.
    let days = [course.day, course.day.plus(1).unwrap()];
    let sessions = days.map(|day| next_session_from(course.state(), &plan, day).unwrap());
    for lift in sessions.into_iter().flat_map(|session| session.lifts) {
        count(counts, format!("verdict {}", lift.verdict.as_str()));
        for reason in &lift.reasons {
            count(counts, format!("reason {}", reason.code()));
        }
        if lift.blocks.is_some() {
            count(counts, "blocks under the bar");
        }
    }
}

fn expected() -> Vec<String> {
    let dimensions = DIMENSIONS.map(|dimension| variant(&dimension));
    let mut all: Vec<String> = Vec::new();
    for lift in ["strict", "forgiving", "press"] {
        all.extend(dimensions.iter().map(|dimension| format!("{lift} moves {dimension}")));
    }
    all.extend(dimensions.iter().map(|dimension| format!("moved {dimension}")));
    let lists: [(&str, &[&str]); 15] = [
        ("moved the", &["strict", "forgiving", "press", "pull", "dips"]),
        ("measured", &["Nothing", "Depths", "Heights"]),
        ("floor", &["OnBlocks", "NoBlocks", "Unknown"]),
        ("age", &["Young", "Old", "Unknown", "Band"]),
        ("odd", &["Kit", "Height", "Short", "Easier", "FewSets", "FewReps", "Alone", "Reserve", "Missed"]),
        ("change", &CHANGES),
        ("took the change", &CHANGES),
        ("quality", &["Clean", "OneMiss", "ManyMisses", "CriticalLost", "Unscored"]),
        ("weight", &["AtLimit", "Lighter", "Heavier"]),
        ("pain in the", &REGIONS),
        ("came", &["Nothing", "NotAsked", "New", "Sharp"]),
        ("state", &bismar::progression::Status::NAMES),
        ("verdict", &["train", "ease_off", "technique_only", "rest", "stop"]),
        ("reason", &["height_off", "height_unknown", "easier_rung", "layoff", "half_sets"]),
        ("step", &STEPS),
    ];
    for (what, kinds) in lists {
        all.extend(kinds.iter().map(|kind| format!("{what} {kind}")));
    }
    let single = [
        "tempos",
        "paired",
        "not paired",
        "two regions of one lift",
        "moves taken by the rule",
        "one rater",
        "days at the place",
        "a pull whose range moves",
        "a pull whose load moves",
        "help and a body mass",
        "help without a body mass",
        "pain asked",
        "pain not asked",
        "a former region",
        "a gap that another lift ended",
        "an act refused",
        "an override",
        "another rater",
        "unguarded",
        "partner pain",
        "an event that changes the past",
        "blocks under the bar",
        "parameters between two sessions of a day",
        "set aside learning",
        "set aside holding",
        "set aside stopped_refer",
        "given the bar",
        "given the lighter bar",
        "given the dumbbells",
        "given the helper",
    ];
    all.extend(single.map(String::from));
    all
}

const CHANGES: [&str; 14] = [
    "Names",
    "Regions",
    "Moving",
    "Discs",
    "Ceiling",
    "LeaveOut",
    "TakeBack",
    "Undeclare",
    "Declare",
    "Implement",
    "Rungs",
    "Ranges",
    "Tempos",
    "Criteria",
];

const STEPS: [&str; 32] = [
    "Wait",
    "CleanWeek",
    "Session",
    "Split",
    "Between",
    "Odd",
    "Morning",
    "SilentMorning",
    "Day",
    "Ask",
    "Answer",
    "Pain",
    "Usual",
    "Symptom",
    "Clearance",
    "Limit",
    "SignOff",
    "Override",
    "Ease",
    "EaseFor",
    "Accept",
    "Decline",
    "Layoff",
    "Rung",
    "ByHand",
    "Role",
    "Rater",
    "OtherDiscs",
    "Parameters",
    "Weigh",
    "Unknown",
    "Missed",
];

#[test]
fn every_kind_of_world_and_of_step_is_drawn_and_comes_to_something() {
    let mut runner =
        TestRunner::new_with_rng(Config::default(), TestRng::deterministic_rng(RngAlgorithm::ChaCha));
    let mut counts = Counts::new();
    for _ in 0..COURSES {
        let drawn = any_course().new_tree(&mut runner).unwrap().current();
        of_world(&drawn.world, &mut counts);
        drawn.steps.iter().for_each(|step| of_step(step, &mut counts));
        of_changes(&drawn, &mut counts);
        of_course(&Course::of(&drawn), &mut counts);
    }
    let never: Vec<String> = expected().into_iter().filter(|what| !counts.contains_key(what)).collect();
    assert!(never.is_empty(), "never drawn: {never:?}\nof {counts:#?}");
    // A kind that is drawn and not listed here would not be missed.
    let steps = counts.keys().filter_map(|what| what.strip_prefix("step "));
    let unlisted: Vec<&str> = steps.filter(|step| !STEPS.contains(step)).collect();
    assert!(unlisted.is_empty(), "not listed: {unlisted:?}");
}
