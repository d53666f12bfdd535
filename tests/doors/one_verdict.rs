//! Rules 8, 12, 13 and 15 at the doors: one verdict about a step, a stop before anything else, and what pain asks for said whole.

use bismar::answers::{NextSet, Odd, SetsToday, handover, next_set, review};
use bismar::caution::Caution;
use bismar::condition::DayClass;
use bismar::prescription::next_session;
use bismar::progression::fold;
use bismar::quantity::Pain;
use bismar::record::*;
use bismar::sign::{PainFeature, StopSign};
use bismar::text::{SaidLift, Words};

use crate::world::{World, kg, name, parameters};

fn squat() -> LiftPlan {
    LiftPlan::new(name("squat"))
}

fn said(world: &World, plan: &Plan) -> SaidLift {
    let session = next_session(&world.log, plan, world.day).unwrap();
    let state = fold(&world.log).unwrap();
    Words::of(state.parameters().unwrap()).said(&session).lifts.remove(0)
}

/// A step of the squat is earned, and a press is there beside it as its pair.
fn earned() -> World {
    let mut all = parameters();
    all.pairs = vec![Pair::new(name("press"), name("squat"))];
    let mut world = World::new(all);
    (0..4).for_each(|_| world.passing_day("squat"));
    world.day_report(DayClass::Within);
    assert!(world.is_offered("squat"), "{:?}", world.against("squat"));
    world
}

#[test]
fn rule_15_the_status_of_a_lift_is_no_second_verdict_about_a_step() {
    let world = earned();
    let open = said(&world, &Plan::of([name("squat")]));
    assert!(open.outlook.contains("is on offer") && open.status == "a step is earned", "{open:?}");
    let plans = [
        ("an easy week", Plan::of([name("squat")]).with_easy_week(true)),
        ("fewer sets by plan", Plan::of([]).with_lifts(vec![squat().with_sets(1)])),
        ("fewer sets by time", Plan::of([name("squat")]).with_minutes(10)),
        ("the pair on one day", Plan::of([name("squat"), name("press")])),
    ];
    for (why, plan) in plans {
        let lift = said(&world, &plan);
        assert_eq!(lift.outlook, "No step today.", "{why}");
        assert!(!lift.status.contains("step"), "{why}: {}", lift.status);
    }
}

#[test]
fn rule_15_a_door_without_a_plan_promises_no_step_for_today() {
    let world = earned();
    let answer = handover(&world.log, world.day, world.day).unwrap();
    let state = fold(&world.log).unwrap();
    let lines = Words::of(state.parameters().unwrap()).handover(&answer);
    let step = lines.iter().find(|line| line.contains("a step to")).unwrap();
    assert!(step.contains("whether it is for today"), "{step}");
    assert!(!step.contains("waits") && !step.contains("on offer"), "{step}");
    // Where something of today stands against it already, the state is no second verdict either.
    let mut sore = earned();
    sore.pain("knee", 1);
    let answer = handover(&sore.log, sore.day, sore.day).unwrap();
    let lines = Words::of(state.parameters().unwrap()).handover(&answer).join("\n");
    assert!(!lines.contains("a step is earned"), "{lines}");
}

/// Pain that stood high on three days of training stops the squat, under which nobody stands.
#[test]
fn rule_13_beside_a_lift_the_clinician_is_named_once() {
    let mut all = parameters();
    all.lifts[0].over_the_body = true;
    let mut world = World::new(all);
    (0..2).for_each(|_| world.passing_day("squat"));
    for score in [3, 3, 7] {
        world.day_report(DayClass::Within);
        let load = world.today("squat").load.unwrap();
        let done = LiftSession::as_granted(name("squat"), World::sets(load, 1, true));
        world.train_all(vec![done], Some(vec![PainAnswer::plain(name("knee"), Pain::new(score).unwrap())]));
        world.wait(3);
    }
    let cautions = world.today("squat").cautions;
    assert!(cautions.contains(&Caution::AloneWithoutPins), "{cautions:?}");
    let named = cautions.iter().filter(|caution| **caution == Caution::SeeClinicianFirst).count();
    assert_eq!(named, 1, "{cautions:?}");
}

#[cfg(feature = "json")]
#[test]
fn rule_13_a_stop_is_the_first_thing_in_a_decision() {
    let mut world = earned();
    world.add(EventKind::SymptomReport(SymptomReport::new(vec![StopSign::ChestPain])));
    for decision in world.state().decide(world.day).unwrap() {
        let json = bismar::value::Value::write(&decision).unwrap().to_json();
        assert!(json.starts_with("{\"stops\":[{\"symptom_stop\""), "{json}");
    }
    // Pain in the knee stops the squat; the press's answer says so first as well.
    let mut sore = earned();
    sore.pain("knee", 7);
    for decision in sore.state().decide(sore.day).unwrap() {
        let json = bismar::value::Value::write(&decision).unwrap().to_json();
        assert!(json.starts_with("{\"stops\":[{\"pain_stop\""), "{json}");
    }
    let none = earned();
    let json = bismar::value::Value::write(&none.state().decide(none.day).unwrap()).unwrap().to_json();
    assert!(json.starts_with("[{\"stops\":[],"), "{json}");
}

fn after_a_set(answer: PainAnswer, from: u8) -> (NextSet, String) {
    let mut all = parameters();
    all.policy.pain_block_from = from;
    let mut world = World::new(all);
    world.day_report(DayClass::Within);
    let sets = World::sets(kg(60.0), 1, true);
    let done = SetsToday::new(name("squat"), sets).with_pain(vec![answer]);
    let next = next_set(&world.log, &Plan::of([name("squat")]), world.day, &done).unwrap();
    let said = Words::of(world.state().parameters().unwrap()).next_set(&next).join("\n");
    (next, said)
}

#[test]
fn rule_08_between_two_sets_pain_from_three_to_five_is_to_be_lowered_or_ends_the_lift() {
    let knee = |score: u8| PainAnswer::plain(name("knee"), Pain::new(score).unwrap());
    for score in [3, 4, 5] {
        let (_, said) = after_a_set(knee(score), 3);
        assert!(said.contains("lower until 2 or less, else stop this lift"), "{score}: {said}");
    }
    // New, and that low already.
    let (_, said) = after_a_set(knee(2).with_features(vec![PainFeature::New]), 3);
    assert!(!said.contains("lower until") && said.contains("above 2, stop this lift"), "{said}");
    let (_, said) = after_a_set(knee(1), 3);
    assert!(!said.contains("lower until"), "{said}");
}

/// A bar of 27 kg, then dumbbells of 12 kg, which is 27 kg written as pounds: a load of one kind says nothing about the other.
#[test]
fn rule_12_another_kind_of_implement_is_no_slip_of_the_pen() {
    let set = |load: f64, implement: &str| {
        let mut all = parameters();
        all.lifts[1].implement = name(implement);
        all.lifts[1].start.work.load = kg(load);
        EventKind::ParametersChanged(Box::new(all))
    };
    let press = |load: f64| LiftSession::as_granted(name("press"), World::sets(kg(load), 2, true));
    let mut world = World::new(parameters());
    world.add(set(27.0, "bar"));
    world.train_with(press(27.0));
    world.wait(3).add(set(12.0, "bells"));
    world.train_with(press(12.0));
    let findings = review(&world.log, world.day).unwrap().findings;
    assert!(!findings.iter().any(|found| matches!(found.what, Odd::LoadSlip { .. })), "{findings:?}");
    // And back at the bar, where it stood.
    let mut back = world.clone();
    back.wait(3).add(set(27.0, "bar"));
    back.train_with(press(27.0));
    let findings = review(&back.log, back.day).unwrap().findings;
    assert!(!findings.iter().any(|found| matches!(found.what, Odd::LoadSlip { .. })), "{findings:?}");
    // A slip at the other kind is one all the same.
    world.wait(3).train_with(press(5.5));
    let findings = review(&world.log, world.day).unwrap().findings;
    assert!(findings.iter().any(|found| matches!(found.what, Odd::LoadSlip { .. })), "{findings:?}");
}
