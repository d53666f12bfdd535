//! Rule 13: a stop of the lifter is in every answer, whatever is planned and whatever is asked: in the first field, and as
//! the first sentence, with the sign named, what to do at once, and the clinician once.

use bismar::answers::{
    Comparison, Diary, SetsToday, Sharing, Then, block_review, compare, curve, day as day_door, easy_week,
    handover, history, in_force, missed, next_set, next_set_from, opens, pair, rack, raters, review, share,
    trend, verdicts, week, year,
};
use bismar::condition::DayClass;
use bismar::prescription::next_session;
use bismar::quantity::Pain;
use bismar::reason::Reason;
use bismar::record::*;
use bismar::sign::{Ask, PainFeature, StopSign};
use bismar::text::{Show, Words};
use bismar::value::Value;
use serde::Serialize;

use crate::careful::is_careful;
use crate::world::{World, kg, name, parameters};

/// A squat and a press, both trained, which are a pair.
fn trained() -> World {
    let mut all = parameters();
    all.pairs = vec![Pair::new(name("squat"), name("press"))];
    let mut world = World::new(all);
    world.passing_day("squat");
    world.passing_day("press");
    world
}

fn stopped_by(signs: Vec<StopSign>) -> World {
    let mut world = trained();
    world.add(EventKind::SymptomReport(SymptomReport::new(signs)));
    world
}

/// Every answer to that log with no lift planned but what a door must be asked about: its name, its text, its JSON.
fn answers(world: &World, planned: &str) -> Vec<(&'static str, Vec<String>, String)> {
    fn told<A: Show + Serialize>(
        all: &Parameters,
        door: &'static str,
        answer: &A,
    ) -> (&'static str, Vec<String>, String) {
        (door, answer.show(&Words::of(all)), Value::write(answer).unwrap().to_json())
    }
    let (log, today) = (&world.log, world.day);
    let state = world.state();
    let all = state.parameters().unwrap();
    let (plan, none, lift) = (Plan::of([name(planned)]), Plan::of([]), name(planned));
    let done = SetsToday::new(lift.clone(), Vec::new()).with_pain(Vec::new());
    let diary = Diary::of(log).unwrap();
    vec![
        told(all, "next_session", &next_session(log, &plan, today).unwrap()),
        told(all, "next_session of nothing", &next_session(log, &none, today).unwrap()),
        told(all, "next_set", &next_set(log, &plan, today, &done).unwrap()),
        told(all, "next_set_from", &next_set_from(&state, &plan, today, &done, None).unwrap()),
        told(all, "rack", &rack(log, &plan, &lift, today, None).unwrap()),
        told(all, "day", &day_door(log, today, None).unwrap()),
        told(all, "trend", &trend(log, &lift, today, None).unwrap()),
        told(all, "curve", &curve(log, &lift, today).unwrap()),
        told(all, "week", &week(log, today).unwrap()),
        told(all, "easy_week", &easy_week(log, Some(&none), today).unwrap()),
        told(all, "missed", &missed(log, &none, today, None).unwrap()),
        told(all, "pair", &pair(log, &name("squat"), &name("press"), today, None).unwrap()),
        told(all, "verdicts", &verdicts(log, today).unwrap()),
        told(all, "history", &history(log, None, today).unwrap()),
        told(all, "in_force", &in_force(log, today).unwrap()),
        told(all, "opens", &opens(log, today, None, None).unwrap()),
        told(all, "compare", &compared(world, &lift)),
        told(all, "raters", &raters(log, None, today).unwrap()),
        told(all, "raters of a diary", &diary.raters(None, today).unwrap()),
        told(all, "block_review", &block_review(log, today, None).unwrap()),
        told(all, "year", &year(log, &none, today, None, None).unwrap()),
        told(all, "handover", &handover(log, today, today.plus(-30).unwrap()).unwrap()),
        told(all, "review", &review(log, today).unwrap()),
        told(all, "review of a diary", &diary.review(today)),
    ]
}

/// What is granted, with one repetition more.
fn compared(world: &World, lift: &bismar::quantity::Name) -> Comparison {
    let mut to = world.state().lift_state(lift).unwrap().grant();
    to.work.reps += 1;
    compare(&world.log, lift, world.day, &to, None).unwrap()
}

fn shared(world: &World, planned: &str) -> (Vec<String>, String) {
    let sharing = Sharing::new(world.log.clone(), Plan::of([name(planned)]), name(planned));
    let answer = share(&[sharing], world.day).unwrap();
    (answer.show(&Words::plain()), Value::write(&answer).unwrap().to_json())
}

fn once(door: &str, said: &[String], parts: &[&str]) {
    let text = said.join("\n");
    for part in parts {
        assert_eq!(text.matches(part).count(), 1, "{door}: {part:?} in {text}");
    }
}

#[test]
fn rule_13_a_sign_is_the_first_thing_in_every_answer() {
    let world = stopped_by(vec![StopSign::ChestPain]);
    for (door, said, json) in answers(&world, "press") {
        assert_eq!(&said[0], "Stop: chest pain or pressure, reported on 11 Jan 2026.", "{door}");
        assert_eq!(&said[1], "Call emergency help now.", "{door}");
        let paragraph = ["until a clinician has cleared it", "See a clinician before lifting again"];
        once(door, &said, &paragraph);
        once(door, &said, &["chest pain or pressure, reported"]);
        assert!(json.starts_with("{\"stops\":[{"), "{door}: {json}");
        assert!(json.contains("\"chest_pain\""), "{door}: {json}");
        for line in &said {
            is_careful(line);
            for good in ["the work itself", "staying is as good", "good result"] {
                assert!(!line.to_lowercase().contains(good), "{door}: {line}");
            }
        }
        let clinician = said.iter().position(|line| line.contains("until a clinician")).unwrap();
        assert!(said[..clinician].iter().all(|line| !line.contains("quat") && !line.contains("ress,")));
    }
    let (said, json) = shared(&world, "press");
    assert_eq!(&said[0], "Invented: Stop: chest pain or pressure, reported on 11 Jan 2026.");
    assert_eq!(&said[1], "Call emergency help now.");
    once("share", &said, &["until a clinician has cleared it", "See a clinician before lifting again"]);
    assert!(json.contains("\"stops\":[{\"symptom_stop\""), "{json}");
}

/// Pain stops the squat: an answer about the press, or about nothing, says so first.
#[test]
fn rule_13_a_stop_of_another_lift_is_the_first_thing_in_every_answer() {
    let mut world = trained();
    world.add(EventKind::PainReport(
        PainAnswer::plain(name("knee"), Pain::new(7).unwrap()).with_features(vec![PainFeature::Numbness]),
    ));
    for planned in ["squat", "press"] {
        for (door, said, json) in answers(&world, planned) {
            assert!(said[0].starts_with("Stop: pain in the knee (numbness or weakness"), "{door}: {said:#?}");
            once(door, &said, &["Stop: pain in the knee", "until a clinician has cleared it"]);
            assert!(json.starts_with("{\"stops\":[{"), "{door}: {json}");
        }
        assert!(shared(&world, planned).0[0].starts_with("Invented: Stop: pain in the knee"));
    }
}

/// An illness and a fever stop every lift, whatever is planned.
#[test]
fn rule_13_an_illness_and_what_was_said_before_training_are_in_every_answer() {
    let mut ill = trained();
    let from = ill.day;
    ill.add(EventKind::LayoffNoted(Layoff::new(from, LayoffReason::Ill)));
    let mut fever = trained();
    fever.add(EventKind::DayReport(DayReport::all_well(DayClass::Within).with_asks(Some(vec![Ask::Fever]))));
    for (world, first) in [(&ill, "Stop: after an illness"), (&fever, "Stop: fever")] {
        for (door, said, json) in answers(world, "press") {
            assert!(said[0].starts_with(first), "{door}: {said:#?}");
            once(door, &said, &[first]);
            assert!(
                json.starts_with("{\"stops\":[{") || json.starts_with("{\"stops\":[\""),
                "{door}: {json}"
            );
        }
        assert!(shared(world, "press").0[0].starts_with(&format!("Invented: {first}")));
    }
}

/// Two stops: each is named, and the clinician once.
#[test]
fn rule_13_two_stops_have_one_paragraph() {
    let mut world = stopped_by(vec![StopSign::ChestPain]);
    world.pain("shoulder", 8);
    for (door, said, _) in answers(&world, "squat") {
        once(door, &said, &["Stop: chest pain", "Stop: pain in the shoulder", "has cleared it"]);
        assert!(said[0].contains("chest pain"), "{door}");
    }
}

/// The same a week later: help now is for what nobody has examined.
#[test]
fn rule_13_a_week_later_the_first_line_is_the_same() {
    let mut world = stopped_by(vec![StopSign::ChestPain]);
    world.wait(7);
    for (door, said, _) in answers(&world, "press") {
        assert!(said[0].starts_with("Stop: chest pain"), "{door}");
        assert!(said[1].starts_with("If nobody has examined it yet"), "{door}: {said:#?}");
    }
}

/// What is said after a set stops as what is said before one.
#[test]
fn rule_13_pain_after_a_set_is_the_first_thing_said() {
    let world = trained();
    let plan = Plan::of([name("squat")]);
    let set = WorkSet::done(kg(60.0), bismar::quantity::Reps::whole(5).unwrap());
    let asked = |answer: PainAnswer| {
        let done = SetsToday::new(name("squat"), vec![set.clone()]).with_pain(vec![answer]);
        next_set(&world.log, &plan, world.day, &done).unwrap()
    };
    let next = asked(PainAnswer::plain(name("knee"), Pain::new(7).unwrap()));
    assert_eq!(next.then, Then::Stop);
    assert!(matches!(&next.stops[..], [Reason::PainStop { since, .. }] if *since == world.day));
    let said = next.show(&Words::plain());
    assert!(said[0].starts_with("Stop: pain in the knee, reported on"), "{said:#?}");
    once("next_set", &said, &["until a clinician has cleared it", "See a clinician before lifting again"]);
    // A region that no lift loads halts every lift; one of another lift alone does not, and is named.
    let next = asked(PainAnswer::plain(name("neck"), Pain::new(7).unwrap()));
    assert_eq!(next.then, Then::Stop);
    let next = asked(PainAnswer::plain(name("shoulder"), Pain::new(7).unwrap()));
    assert_ne!(next.then, Then::Stop);
    assert!(next.show(&Words::plain())[0].starts_with("Stop: pain in the shoulder"));
}

/// Pain that stands for three days of training eases and sends to a clinician; it is no stop, and no answer calls it one.
#[test]
fn rule_13_what_is_advised_is_not_called_a_stop() {
    let mut world = World::on_offer("squat");
    let sore = || vec![PainAnswer::plain(name("knee"), Pain::new(3).unwrap())];
    for _ in 0..3 {
        let load = world.today("squat").load.unwrap();
        let done = LiftSession::as_granted(name("squat"), World::sets(load, 2, true));
        world.train_all(vec![done], Some(sore()));
        world.wait(3);
    }
    world.add(EventKind::DayReport(DayReport::all_well(DayClass::Within).with_pain(sore())));
    let today = world.today("squat");
    assert!(
        today.reasons.iter().any(|reason| matches!(reason, Reason::PainPersists { .. })),
        "{:?}",
        today.reasons
    );
    assert!(today.cautions.contains(&bismar::caution::Caution::SeeClinicianFirst));
    for (door, said, _) in answers(&world, "squat") {
        assert!(said.iter().all(|line| !line.starts_with("Stop:")), "{door}: {said:#?}");
    }
    assert!(shared(&world, "squat").0.iter().all(|line| !line.contains("Stop:")));
}

/// What cannot be taken in order hides no stop.
#[test]
fn rule_13_a_log_that_cannot_be_read_whole_is_stopped_all_the_same() {
    let world = stopped_by(vec![StopSign::ChestPain]);
    let mut log = world.log.clone();
    let sequence = log.events.iter().map(|event| event.sequence).max().unwrap() + 1;
    let unknown = PainAnswer::plain(name("no such region"), Pain::new(2).unwrap());
    log.events.push(Event::new(sequence, world.day, EventKind::PainReport(unknown)));
    assert!(bismar::progression::fold(&log).is_err());
    let said = review(&log, world.day).unwrap().show(&Words::plain());
    assert!(said[0].starts_with("Stop: chest pain"), "{said:#?}");
    let said = raters(&log, None, world.day).unwrap().show(&Words::plain());
    assert!(said[0].starts_with("Stop: chest pain"), "{said:#?}");
    // Nor does one that comes before it.
    let mut log = trained().log;
    let (day, sequence) = (world.day, log.events.iter().map(|event| event.sequence).max().unwrap() + 1);
    let unknown = PainAnswer::plain(name("no such region"), Pain::new(2).unwrap());
    log.events.push(Event::new(sequence, day, EventKind::PainReport(unknown)));
    let faint = EventKind::SymptomReport(SymptomReport::new(vec![StopSign::Faint]));
    log.events.push(Event::new(sequence + 1, day, faint));
    assert!(matches!(&review(&log, day).unwrap().stops[..], [Reason::SymptomStop { .. }]));
}

/// What came with the pain is told together, whether it was said before or after the set.
#[test]
fn rule_13_what_came_with_the_pain_is_told_of_a_region_that_is_stopped_already() {
    let mut world = trained();
    world.pain("knee", 7);
    world.wait(2);
    let numb =
        PainAnswer::plain(name("knee"), Pain::new(8).unwrap()).with_features(vec![PainFeature::Numbness]);
    let done = SetsToday::new(name("press"), Vec::new()).with_pain(vec![numb]);
    let next = next_set(&world.log, &Plan::of([name("press")]), world.day, &done).unwrap();
    let [Reason::PainStop { since, features, .. }] = &next.stops[..] else { panic!("{:?}", next.stops) };
    assert_eq!((*since, &features[..]), (world.day, &[PainFeature::Numbness][..]));
}

/// Two limits of one region that no lift loads are one stop.
#[test]
fn rule_13_a_stop_is_told_once() {
    let mut world = trained();
    let limit = |reserve: f64| {
        let effort = bismar::quantity::Rpe::new(reserve).unwrap();
        ClearanceLimits::default().with_region(name("knee")).with_effort(effort)
    };
    let cleared = Clearance::new(ClearanceStatus::ClearedWithLimits, name("clinic"));
    world.add(EventKind::ClearanceRecorded(cleared.with_limits(vec![limit(6.0), limit(7.0)])));
    let mut all = parameters();
    all.lifts.retain(|lift| !lift.regions.contains(&name("knee")));
    all.pairs.clear();
    world.add(EventKind::ParametersChanged(Box::new(all)));
    let stops = world.state().stops();
    assert!(matches!(&stops[..], [Reason::LimitWithoutLift { .. }]), "{stops:?}");
}

/// Several at one bar: each by name, with what ends the own stop.
#[test]
fn rule_13_at_a_shared_bar_each_is_told_what_ends_the_own_stop() {
    let mut sore = trained();
    sore.pain("knee", 7);
    let sign = stopped_by(vec![StopSign::ChestPain]);
    let sharing = |world: &World, id: &str| {
        let log = world.log.clone().with_lifter(Lifter::new(name(id)));
        Sharing::new(log, Plan::of([name("squat")]), name("squat"))
    };
    let answer = share(&[sharing(&sign, "ann"), sharing(&sore, "bob")], sign.day).unwrap();
    let said = answer.show(&Words::plain());
    assert!(
        said.contains(
            &"Ann: Every lift stays stopped until a clinician has cleared it and the coach has signed off."
                .into()
        ),
        "{said:#?}"
    );
    assert!(
        said.iter().any(|line| line.starts_with("Bob: The lifts that this concerns stay stopped")),
        "{said:#?}"
    );
    once("share", &said, &["See a clinician before lifting again"]);
}
