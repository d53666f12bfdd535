//! What an override does not open: a way back, the floor of the reserve, a step beside it, a day on which nobody asked.

use super::world::*;
use bismar::condition::DayClass;
use bismar::prescription::Verdict;
use bismar::quantity::{Pain, Rir};
use bismar::record::*;
use bismar::text::Words;

fn spared(reserve: u8) -> Plan {
    let lift = LiftPlan::new(name("squat")).with_reserve(Rir::whole(reserve));
    Plan::of([]).with_lifts(vec![lift])
}

#[test]
fn an_override_upward_waits_on_the_way_back_from_a_break() {
    let mut world = World::on_offer("squat");
    // 45 days without the region: a fifth less than 60 kg.
    world.wait(45).day_report(DayClass::Within);
    world.train("squat", true);
    world.morning();
    world.wait(1).day_report(DayClass::Within);
    world.override_to("squat", 100.0, 30);
    let today = world.today("squat");
    assert_eq!((today.status.as_str(), today.load), ("returning", Some(kg(48.0))));
    assert!(says(&today, "override_suspended"));
}

#[test]
fn an_override_upward_waits_on_a_step_back_and_after_a_stop() {
    let mut world = World::on_offer("squat");
    for _ in 0..2 {
        world.day_report(DayClass::Within);
        world.train("squat", false);
        world.morning();
        world.wait(2);
    }
    world.day_report(DayClass::Within);
    world.override_to("squat", 100.0, 30);
    let today = world.today("squat");
    assert_eq!(today.status.as_str(), "stepping_back");
    assert!(today.load.unwrap() < kg(60.0) && says(&today, "override_suspended"), "{:?}", today.load);
    let mut world = World::on_offer("squat");
    world.pain("knee", 7);
    world.wait(1).clear();
    world.sign_off(SignOffScope::Region(name("knee")));
    world.wait(2).day_report(DayClass::Within);
    world.override_to("squat", 100.0, 30);
    let today = world.today("squat");
    assert!(today.load.unwrap() < kg(60.0) && says(&today, "override_suspended"), "{:?}", today.load);
}

#[test]
fn an_override_upward_waits_until_everything_was_asked_today() {
    let mut world = World::on_offer("squat");
    world.override_to("squat", 80.0, 30);
    assert_eq!(world.today("squat").load, Some(kg(80.0)));
    let asked = DayReport::all_well(DayClass::Within);
    let left_out = [
        None,
        Some(asked.clone().with_pain(None)),
        Some(asked.clone().with_asks(None)),
        Some(asked.with_class(None)),
    ];
    for report in left_out {
        let mut world = world.clone();
        world.wait(1);
        report.into_iter().for_each(|report| world.add(EventKind::DayReport(report)));
        let today = world.today("squat");
        assert_eq!(today.load, Some(kg(60.0)));
        assert!(says(&today, "override_suspended"));
    }
}

#[test]
fn the_floor_of_the_reserve_stays_beside_an_override_that_allows_no_more_today() {
    let world = World::on_offer("squat");
    let reserve = |world: &World| world.planned(spared(0)).reserve;
    let with = |load: f64, change: fn(&mut World)| {
        let mut world = world.clone();
        world.override_to("squat", load, 30);
        change(&mut world);
        world
    };
    assert_eq!(reserve(&with(50.0, |_| {})), Rir::whole(1), "downward");
    assert_eq!(reserve(&with(60.0, |_| {})), Rir::whole(1), "no more than granted");
    let waiting = with(80.0, |world| {
        world.wait(1);
    });
    assert_eq!(reserve(&waiting), Rir::whole(1), "waiting");
    assert_eq!(reserve(&with(80.0, |_| {})), Rir::whole(0), "in force");
}

#[test]
fn no_step_is_on_offer_beside_an_override() {
    for load in [50.0, 80.0] {
        let mut world = World::on_offer("squat");
        world.override_to("squat", load, 30);
        assert!(blocked_by(&world.against("squat"), "override_in_force"), "{load}");
        world.add(EventKind::AdvanceAccepted(Advance::new(name("squat"), name("coach"))));
        assert_eq!(world.today("squat").granted.load(), kg(60.0), "{load}");
        // One to the working load, without a last day, ends it.
        world.add(EventKind::CoachOverride(Override::new(name("squat"), kg(60.0), name("coach"))));
        assert!(world.is_offered("squat"), "{load}: {:?}", world.against("squat"));
    }
}

#[test]
fn an_override_that_a_break_ends_says_so_until_the_next_session() {
    let mut world = World::on_offer("squat");
    world.override_to("squat", 80.0, 90);
    world.wait(45).day_report(DayClass::Within);
    let today = world.today("squat");
    assert!(today.load.unwrap() <= kg(48.0) && says(&today, "override_ended"), "{:?}", today.reasons);
    world.train("squat", true);
    world.morning();
    world.wait(1).day_report(DayClass::Within);
    assert!(!says(&world.today("squat"), "override_ended"));
}

#[test]
fn an_override_that_an_easy_week_holds_says_that_it_waits() {
    let mut world = World::on_offer("squat");
    world.override_to("squat", 80.0, 30);
    let today = world.planned(Plan::of([name("squat")]).with_easy_week(true));
    assert_eq!((today.verdict, today.load), (Verdict::EaseOff, Some(kg(60.0))));
    assert!(says(&today, "override_suspended"));
}

#[test]
fn a_session_above_the_grant_is_another_load_and_one_at_it_counts() {
    let mut world = World::on_offer("squat");
    world.override_to("squat", 80.0, 30);
    let mut above = world.clone();
    above.train_with(LiftSession::as_granted(name("squat"), World::sets(kg(80.0), 2, true)));
    let short = above.today("squat").reasons;
    let other = bismar::reason::Reason::NotAtGrant { short: bismar::reason::Shortfall::Load };
    assert!(short.contains(&other), "{short:?}");
    world.train_with(LiftSession::as_granted(name("squat"), World::sets(kg(60.0), 2, true)));
    assert!(!says(&world.today("squat"), "not_at_grant"));
}

#[test]
fn a_little_pain_that_is_new_or_rising_eases_the_lift() {
    let told = |features: Option<Vec<PainFeature>>| {
        let mut world = World::on_offer("squat");
        let score = Pain::new(2).unwrap();
        let answer = PainAnswer::plain(name("knee"), score).with_features(features);
        world.add(EventKind::DayReport(DayReport::all_well(DayClass::Within).with_pain(vec![answer])));
        world.today("squat")
    };
    for features in [Some(vec![PainFeature::Rising]), Some(vec![PainFeature::New]), None] {
        let today = told(features);
        // A tenth less than 60 kg.
        assert_eq!((today.verdict, today.load), (Verdict::EaseOff, Some(kg(54.0))));
    }
    let familiar = told(Some(Vec::new()));
    assert_eq!((familiar.verdict, familiar.load), (Verdict::Train, Some(kg(60.0))));
}

/// The coach's word allows less in reserve than the floor: the sets that left it left what was asked, and less than a step
/// needs. The sentence says no more than is true.
#[test]
fn what_an_override_asks_below_the_floor_is_not_called_less_than_asked() {
    let mut world = World::on_offer("squat");
    world.override_to("squat", 63.0, 60);
    let lift = LiftPlan::new(name("squat")).with_reserve(Rir::whole(0));
    for _ in 0..2 {
        world.day_report(DayClass::Within);
        let today = world.planned(Plan::of([]).with_lifts(vec![lift.clone()]));
        assert_eq!(today.reserve, Rir::whole(0), "{:?}", today.reasons);
        let mut sets = World::sets(today.load.unwrap(), 2, true);
        sets.iter_mut().for_each(|set| set.effort = Some(Effort::Rir(Rir::whole(0))));
        let done = LiftSession::as_granted(name("squat"), sets).with_reserve_asked(today.reserve);
        world.train_with(done);
        world.morning();
        world.wait(2);
    }
    world.day_report(DayClass::Within);
    let against = world.against("squat");
    let short = against.iter().find(|reason| reason.code() == "reserve_short").unwrap();
    let said = Words::plain().reason(short);
    assert!(!said.starts_with("Less than asked"), "{said}");
    assert!(said.contains("than was asked for, or than a step needs at the least"), "{said}");
}

#[test]
fn a_lower_word_on_the_day_of_return_says_that_it_waits() {
    let mut world = World::on_offer("squat");
    world.wait(27).day_report(DayClass::Within);
    world.override_to("squat", 58.0, 30);
    let today = world.today("squat");
    assert!(today.load.unwrap() < kg(58.0), "{:?}", today.load);
    assert!(says(&today, "override_suspended"), "{:?}", today.reasons);
}
