//! A copy of a log without health detail and without anybody's own words.

use std::collections::BTreeMap;

use bismar::answers::{OF_COPIES, in_force};
use bismar::condition::DayClass;
use bismar::prescription::{Verdict, next_session};
use bismar::quantity::Pain;
use bismar::record::*;
use bismar::sign::{Ask, StopSign};
use bismar::value::Value;

use crate::world::{World, kg, name, parameters};

/// Everything that tells of health or is in somebody's own words, with words that stand nowhere else.
fn told() -> World {
    let mut world = World::new(parameters());
    world.day_report(DayClass::Within);
    world.train("squat", true);
    let hurts = PainAnswer::plain(name("knee"), Pain::new(3).unwrap());
    if let EventKind::SessionRecorded(session) = &mut world.log.events.last_mut().unwrap().kind {
        session.pain = Some(vec![hurts.clone()]);
        session.lifts[0].cue = Some(name("secret cue"));
        let marks = session.lifts[0].sets[0].marks.as_mut().unwrap();
        marks.rater_id = Some(name("secret person"));
    }
    world.log.events.last_mut().unwrap().note = Some("secret note".into());
    let session = world.log.events.last().unwrap().sequence;
    world.wait(1);
    for kind in [
        EventKind::NextDayReport(NextDayReport::new(session).with_pain(vec![hurts.clone()])),
        EventKind::PainReport(hurts),
        EventKind::BodyMassRecorded(kg(80.0)),
        EventKind::DayReport(DayReport::default().with_asks(vec![Ask::Fall])),
        EventKind::SymptomReport(SymptomReport::new(vec![StopSign::Faint])),
        EventKind::LayoffNoted(Layoff::new(world.day, LayoffReason::Ill)),
        EventKind::SessionMissed(SessionMissed::new(name("secret reason"))),
        EventKind::BlockStarted(name("secret block")),
        EventKind::CoachOverride(
            Override::new(name("squat"), kg(40.0), name("secret person")).with_why(Some("secret why".into())),
        ),
    ] {
        world.add(kind);
    }
    world
}

#[test]
fn nothing_of_health_and_nobodys_own_words_stay() {
    let copy = told().log.without_health().unwrap();
    let lifter = Value::write(&copy.log.lifter).unwrap().to_json();
    // The first event is what is set for the lifts, with a policy that speaks of pain.
    let text = format!("{lifter}{}", Value::write(&copy.log.events[1..].to_vec()).unwrap().to_json());
    let health = ["secret", "pain", "born", "note", "fall", "symptom", "asks", "body_mass", "clinic\""];
    for word in health {
        assert!(!text.contains(word), "{word} in {text}");
    }
    assert!(text.contains("person 1") && !text.contains("person 2"), "one person is one number");
    // Loads, marks and settings stay.
    let kinds: Vec<&str> = copy.log.events.iter().map(|event| event.kind.name()).collect();
    assert_eq!(
        kinds,
        [
            "parameters_changed",
            "session_recorded",
            "session_missed",
            "block_started",
            "coach_override",
            "clearance_recorded",
        ]
    );
    let numbers: Vec<u32> = copy.log.events.iter().map(|event| event.sequence).collect();
    assert_eq!(numbers, [1, 2, 3, 4, 5, 6], "no gap tells of what was left out");
}

/// What people call a region, a lift or a rung is in somebody's own words, and so is what a load is to be kept for; ids stay.
#[test]
fn names_beside_ids_are_own_words() {
    let mut all = parameters();
    all.regions[0].name = Some(name("secret operated knee"));
    all.lifts[0].name = Some(name("secret lift"));
    all.lifts[0].rungs[1].name = Some(name("secret rung"));
    let log = World::new(all).log;
    let copy = log.without_health().unwrap();
    let text = Value::write(&copy.log).unwrap().to_json();
    assert!(!text.contains("secret"), "{text}");
    assert!(
        ["knee", "squat", "full", "brace"].iter().all(|id| text.contains(&format!("\"{id}\""))),
        "{text}"
    );
    let words = copy.left_out.iter().find(|one| one.what == HealthDetail::OwnWords).unwrap();
    assert_eq!(words.times, 3);
    let keep = ["secret suitcase", "secret grandchild"];
    let keep = keep.map(|what| LoadToKeep::new(name("squat"), name(what), kg(40.0), 80)).to_vec();
    let plan = Plan::of([name("squat")]).with_years(YearsAhead::default().with_keep(keep));
    let copy = plan.without_health().unwrap();
    assert_eq!(copy.years.as_ref().unwrap().keep.len(), 2);
    assert!(!Value::write(&copy).unwrap().to_json().contains("secret"));
    copy.check().unwrap();
}

#[test]
fn what_was_left_out_is_counted() {
    let copy = told().log.without_health().unwrap();
    let out = copy.left_out.iter().map(|one| (format!("{:?}", one.what), one.times));
    let out: BTreeMap<String, u32> = out.collect();
    let wanted = [
        ("Age", 1),
        ("Event(\"body_mass_recorded\")", 1),
        ("Event(\"clearance_recorded\")", 1),
        ("Event(\"day_report\")", 2),
        ("Event(\"layoff_noted\")", 1),
        ("Event(\"next_day_report\")", 1),
        ("Event(\"pain_report\")", 1),
        ("Event(\"symptom_report\")", 1),
        ("Note", 1),
        ("OwnWords", 4),
        ("Pain", 1),
        ("People", 2),
    ];
    assert_eq!(out, wanted.map(|(what, times)| (what.to_string(), times)).into());
    // A copy of the copy leaves out its stop alone, and the words that stand in the place of others.
    let again = copy.log.without_health().unwrap();
    assert_eq!(again.log, copy.log);
}

/// Whatever was left out may have been a stop: the copy stops every lift, an empty one too.
#[test]
fn a_copy_stops_until_a_clearance() {
    let world = told();
    let copy = world.log.without_health().unwrap().log;
    let session = next_session(&copy, &Plan::of([name("squat"), name("press")]), world.day).unwrap();
    assert!(session.lifts.iter().all(|lift| lift.verdict == Verdict::Stop), "{session:?}");
    let empty = Log::new(Lifter::new(name("invented"))).without_health().unwrap();
    assert!(empty.left_out.is_empty());
    assert_eq!(in_force(&empty.log, world.day).unwrap().restrictions[0].kind(), "not_to_train");
    assert_eq!(empty.log.events[0].day, "2000-01-01".parse().unwrap());
}

#[test]
fn the_doors_give_the_same_by_name() {
    let call = |key: &str, argument: &'static str, value: Value| {
        let door = OF_COPIES.iter().find(|door| door.key == key).unwrap();
        (door.call)(&Value::Map(vec![(argument.into(), value)]))
    };
    let log = told().log;
    let copy = call("record.log_without_health", "log", Value::write(&log).unwrap()).unwrap();
    assert_eq!(copy, Value::write(&log.without_health().unwrap()).unwrap());
    let years = YearsAhead::default().with_mass_loss_intended(true).with_gaps(vec![PlannedGap::new(
        name("secret"),
        "2026-05-01".parse().unwrap(),
        "2026-05-09".parse().unwrap(),
    )]);
    let plan = Plan::of([name("squat")]).with_years(years);
    let copy = call("record.plan_without_health", "plan", Value::write(&plan).unwrap()).unwrap();
    assert!(!copy.to_json().contains("secret") && copy.to_json().contains("left out"), "{copy:?}");
    assert!(!copy.to_json().contains("mass_loss_intended"), "{copy:?}");
}
