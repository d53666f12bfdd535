//! A state is bounded, and nothing that it must keep is dropped without a word.

use bismar::Code;
use bismar::condition::DayClass;
use bismar::prescription::Verdict;
use bismar::progression::State;
use bismar::quantity::Name;
use bismar::record::*;

use crate::world::{World, kg, lift, name, parameters, says};

fn planned(world: &World, from: i32, to: Option<i32>) -> EventKind {
    let day = |days: i32| world.day.plus(days).unwrap();
    EventKind::LayoffNoted(Layoff::new(day(from), LayoffReason::Planned).with_to(to.map(day)))
}

#[test]
fn a_ninth_coming_break_pushes_none_out() {
    let mut world = World::new(parameters());
    for at in 1..=8 {
        world.add(planned(&world, 10 * at, Some(10 * at + 3)));
    }
    let error = world.turned_away(planned(&world, 90, Some(93)));
    assert_eq!((error.code(), error.field()), (Code::TooMany, "layoff_noted"));
    // The nearest still holds.
    world.wait(11).day_report(DayClass::Within);
    let today = world.today("squat");
    assert!(today.verdict == Verdict::Rest && says(&today, "planned_break"), "{:?}", today.reasons);
    // One told anew takes no more room, and one that is over makes some.
    world.add(planned(&world, -1, Some(1)));
    world.wait(4);
    world.add(planned(&world, 80, Some(83)));
    let error = world.turned_away(planned(&world, 90, Some(93)));
    assert_eq!(error.code(), Code::TooMany);
    // What is over already when it is noted pushes nothing out either.
    world.add(planned(&world, -9, Some(-8)));
    world.wait(6).day_report(DayClass::Within);
    assert!(says(&world.today("squat"), "planned_break"));
}

/// Lifts that come and go: sixteen are set aside as they stood, of sixty-four more the last day is kept.
#[test]
fn no_lift_that_is_laid_by_loses_its_last_day_without_a_word() {
    let of = |id: &str| {
        let mut all = parameters();
        all.lifts = vec![lift(id, "knee", 60.0)];
        EventKind::ParametersChanged(Box::new(all))
    };
    let mut world = World::new(parameters());
    let mut refused = None;
    for at in 0..100 {
        let id = format!("lift {at:02}");
        world.clear();
        match world.try_add(of(&id)) {
            Ok(()) => {}
            Err(error) => {
                refused = Some((at, error.code(), error.field().to_string()));
                break;
            }
        }
        world.day_report(DayClass::Within);
        world.train(&id, true);
        world.wait(200);
    }
    let (at, code, _) = refused.expect("a lift was dropped");
    assert_eq!(code, Code::TooMany);
    assert!(at > 64 + 16, "{at}");
    // The first of them comes back with its break.
    let mut all = parameters();
    all.lifts = vec![lift("lift 00", "knee", 60.0), lift(&format!("lift {:02}", at - 1), "knee", 60.0)];
    world.add(EventKind::ParametersChanged(Box::new(all)));
    assert!(world.state().lift_state(&name("lift 00")).unwrap().now().last_session.is_some());
}

/// An override that ended while its lift was left out is over when the lift is taken back, and the state comes back as it is.
#[test]
fn an_override_that_ended_while_its_lift_was_left_out_is_over() {
    let mut world = World::new(parameters());
    world.override_to("press", 42.0, 4);
    world.wait(1);
    let mut without = parameters();
    without.lifts.truncate(1);
    world.add(EventKind::ParametersChanged(Box::new(without)));
    let mut soon = world.clone();
    world.wait(8).add(EventKind::ParametersChanged(Box::new(parameters())));
    let state = bismar::progression::fold(&world.log).unwrap();
    assert_eq!(State::from_json(&state.to_json().unwrap()).as_ref(), Ok(&state));
    assert_eq!(state.lift_state(&name("press")).unwrap().now().overruled, None);
    // Taken back in time it goes on.
    soon.wait(1).add(EventKind::ParametersChanged(Box::new(parameters())));
    assert!(soon.state().lift_state(&name("press")).unwrap().now().overruled.is_some());
}

/// Illness told every day without an end, and planned breaks without one, never fill the list.
#[test]
fn what_is_told_day_by_day_without_an_end_is_never_too_much() {
    for (reason, verdict) in [(LayoffReason::Ill, Verdict::Stop), (LayoffReason::Planned, Verdict::Rest)] {
        let mut world = World::new(parameters());
        for _ in 0..12 {
            world.wait(1);
            let from = world.day;
            world.add(EventKind::LayoffNoted(Layoff::new(from, reason)));
        }
        assert_eq!(world.today("squat").verdict, verdict, "{reason:?}");
        // One noted later that began earlier tells the same.
        let from = world.day.plus(-20).unwrap();
        world.add(EventKind::LayoffNoted(Layoff::new(from, reason)));
        assert_eq!(world.today("squat").verdict, verdict, "{reason:?}");
        for at in 1..=7 {
            world.add(planned(&world, 10 * at, Some(10 * at + 3)));
        }
    }
}

/// Sixteen lifts of the back, so many that those left out longest ago are laid by.
fn sixteen() -> Vec<LiftParameters> {
    (0..16).map(|at| lift(&format!("other {at:02}"), "back", 40.0)).collect()
}

/// The squat waits for half a year, then it is left out, and so are sixteen more that were trained just now: it is laid by. After
/// that it is declared again as a lift of the back. A lunge loads the knee throughout.
fn laid_by_and_back(mut world: World, all: &Parameters) -> World {
    world.wait(200).clear_again();
    let (squat, lunge) = (all.lifts[0].clone(), lift("lunge", "knee", 30.0));
    let of =
        |lifts: Vec<LiftParameters>| EventKind::ParametersChanged(Box::new(all.clone().with_lifts(lifts)));
    let done = |set: &LiftParameters| LiftSession::as_granted(set.id.clone(), World::sets(kg(40.0), 2, true));
    let others = sixteen();
    let (first, second) = others.split_at(14);
    for (with, some) in [(vec![squat.clone(), lunge.clone()], first), (vec![lunge.clone()], second)] {
        world.add(of(with.into_iter().chain(some.iter().cloned()).collect()));
        world.train_all(some.iter().map(done).collect(), None);
    }
    world.wait(1).add(of(vec![lunge.clone()]));
    assert_eq!(world.state().set_aside().len(), 16);
    assert!(world.state().set_aside().all(|lift| lift.id() != &name("squat")), "not laid by");
    world.wait(1).add(of(vec![squat.with_regions(vec![name("back")]), lunge]));
    world
}

impl World {
    /// The same limit of the knee, given anew where there is one.
    fn clear_again(&mut self) {
        if let Some(given) = self.state().clearance() {
            let again = Clearance::new(given.status, name("clinic")).with_limits(given.limits.clone());
            self.add(EventKind::ClearanceRecorded(again.with_expires(self.day.plus(900).unwrap())));
        }
    }

    fn former(&self, id: &str) -> Vec<Name> {
        self.state().lift_state(&name(id)).unwrap().now().former.clone()
    }
}

/// A squat and a lunge of the knee, with a limit of the knee.
fn limited(trained: bool) -> (World, Parameters) {
    let mut all = parameters();
    all.lifts = vec![lift("squat", "knee", 60.0), lift("lunge", "knee", 30.0)];
    let mut world = World::new(all.clone());
    if trained {
        world.passing_day("squat");
    }
    let limit = ClearanceLimits::default().with_region(name("knee")).with_load(kg(40.0));
    world.add(EventKind::ClearanceRecorded(
        Clearance::new(ClearanceStatus::ClearedWithLimits, name("clinic")).with_limits(vec![limit]),
    ));
    (world, all)
}

#[test]
fn a_limit_stays_with_a_lift_that_was_laid_by() {
    for trained in [true, false] {
        let (world, all) = limited(trained);
        let world = laid_by_and_back(world, &all);
        assert_eq!(world.former("squat"), [name("knee")], "trained: {trained}");
        assert!(world.today("squat").limit <= kg(40.0));
    }
}

#[test]
fn clear_sessions_to_come_stay_with_a_lift_that_was_laid_by() {
    let mut all = parameters();
    all.lifts = vec![lift("squat", "knee", 60.0), lift("lunge", "knee", 30.0)];
    let mut world = World::new(all.clone());
    world.passing_day("squat");
    world.pain("knee", 4);
    let world = laid_by_and_back(world, &all);
    assert!(world.state().region(&name("knee")).unwrap().clear_needed > 0);
    assert_eq!(world.former("squat"), [name("knee")]);
}

/// What a coach made easier does not begin harder because it was left out for long.
#[test]
fn a_lift_that_was_laid_by_comes_back_at_no_harder_place_than_it_stood() {
    let mut all = parameters();
    all.lifts = vec![lift("squat", "knee", 60.0), lift("lunge", "knee", 30.0)];
    let mut world = World::new(all.clone());
    world.passing_day("squat");
    let to = Grant::new(Work::new(2, 5, kg(50.0))).with_place(Place::at_rung(0));
    world.add(EventKind::VariantChanged(Move::new(name("squat"), to, name("coach"))));
    let world = laid_by_and_back(world, &all);
    let state = world.state();
    let squat = state.lift_state(&name("squat")).unwrap();
    assert!(squat.last_session().is_some());
    assert_eq!(squat.grant().place.rung, 0);
}
