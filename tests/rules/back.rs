//! Rule 2 on the way back: who does what is printed comes back, though nothing is lighter and one set cannot be halved.

use bismar::condition::DayClass;
use bismar::gate::{Gate, Mark, PassRun, Rater, Requirement, SetMarks};
use bismar::prescription::{LiftToday, Verdict};
use bismar::quantity::{Reps, Rir};
use bismar::record::*;

use crate::world::{World, kg, name, parameters, says};

/// The squat of so many sets of so many repetitions at that load on that rung, of which the lowest is the easiest.
fn squat(sets: u8, reps: u8, load: f64, rung: u8) -> World {
    let mut all = parameters();
    all.lifts[0].start = Grant::new(Work::new(sets, reps, kg(load))).with_place(Place::at_rung(rung));
    let run = PassRun::new(u16::from(sets * reps), u16::from(sets * reps), 2).unwrap();
    all.lifts[0].gate = Gate::new(Requirement::PassRun(run)).unwrap();
    all.lifts[0].step = Some(StepPolicy::SmallestLoadable);
    let mut world = World::new(all);
    (0..2).for_each(|_| as_printed(&mut world, Plan::of([name("squat")])));
    world
}

/// The squat after a stop that a clearance and a sign-off lifted.
fn stopped(sets: u8, reps: u8, load: f64, rung: u8) -> World {
    let mut world = squat(sets, reps, load, rung);
    world.pain("knee", 8);
    world.clear();
    world.sign_off(SignOffScope::Region(name("knee")));
    world.wait(1).day_report(DayClass::Within);
    world
}

/// A day at its usual on which the squat is done as it is printed, and well; three days pass.
fn as_printed(world: &mut World, plan: Plan) {
    world.day_report(DayClass::Within);
    let today = world.planned(plan);
    if let Some(load) = today.load {
        let reps = u16::from(today.reps);
        let marks = SetMarks::scored(reps, reps, Rater::Coach).with("brace", Mark::Met).unwrap();
        let effort = Some(Effort::Rir(Rir::whole(4)));
        let set = WorkSet::done(load, Reps::whole(reps).unwrap()).with_effort(effort).with_marks(marks);
        world.train_with(LiftSession::as_granted(name("squat"), vec![set; usize::from(today.sets)]));
        world.morning();
    }
    world.wait(2).day_report(DayClass::Within);
}

fn work(today: &LiftToday) -> (Verdict, Option<bismar::quantity::Mass>, u8, u8) {
    (today.verdict, today.load, today.sets, today.reps)
}

fn status(world: &World) -> (&'static str, u8) {
    let state = world.state();
    let now = state.lift_state(&name("squat")).unwrap().now().clone();
    (now.status.as_str(), now.half_sessions)
}

/// After the stop it stands at the empty bar on its easiest rung, and one set is what is granted.
#[test]
fn rule_02_one_set_at_the_lightest_on_the_way_back_is_half_of_its_repetitions() {
    for (load, rung) in [(20.0, 1), (22.0, 0)] {
        let mut world = stopped(1, 5, load, rung);
        let today = world.today("squat");
        assert!(says(&today, "half_for_lighter"), "{load}: {:?}", today.reasons);
        assert_eq!((work(&today), today.place.rung), ((Verdict::EaseOff, Some(kg(20.0)), 1, 3), 0), "{load}");
        assert_eq!(status(&world), ("returning", 2));
        // As it is printed it is a pass of the way back, and two of them end it.
        (0..2).for_each(|_| as_printed(&mut world, Plan::of([name("squat")])));
        assert_eq!(status(&world), ("holding", 0), "{load}");
        assert_eq!(work(&world.today("squat")), (Verdict::Train, Some(kg(20.0)), 1, 5), "{load}");
    }
}

/// Where there is something lighter, or an easier rung, the way back is there.
#[test]
fn rule_02_one_set_on_the_way_back_is_eased_by_load_or_rung_where_there_is_one() {
    let lighter = stopped(1, 5, 60.0, 0).today("squat");
    assert!(lighter.load < Some(lighter.granted.load()) && lighter.reps == 5, "{:?}", work(&lighter));
    assert!(!says(&lighter, "half_for_lighter"), "{:?}", lighter.reasons);
}

/// Fewer than one repetition there is not: it is done as it is, and the lift comes back.
#[test]
fn rule_02_one_repetition_of_one_set_at_the_lightest_is_the_least_there_is() {
    for (load, rung) in [(20.0, 1), (20.0, 0), (22.0, 0)] {
        let mut world = stopped(1, 1, load, rung);
        let today = world.today("squat");
        assert_eq!(
            work(&today),
            (Verdict::EaseOff, Some(kg(20.0)), 1, 1),
            "{load} {rung}: {:?}",
            today.reasons
        );
        assert!(says(&today, "least_there_is") && !says(&today, "half_for_lighter"), "{:?}", today.reasons);
        (0..2).for_each(|_| as_printed(&mut world, Plan::of([name("squat")])));
        // The whole work was done all along, so that its gate may be open already.
        let (status, half) = status(&world);
        assert!(
            half == 0 && ["holding", "ready_to_advance"].contains(&status),
            "{load} {rung}: {status} {half}"
        );
        assert!(!says(&world.today("squat"), "least_there_is"));
    }
}

/// Two sets of which the plan asks for one: half of them is what is planned already.
#[test]
fn rule_02_what_the_plan_asks_for_less_is_halved_once_more_on_the_way_back() {
    let one = || Plan::of([]).with_lifts(vec![LiftPlan::new(name("squat")).with_sets(1)]);
    for (load, rung) in [(20.0, 1), (20.0, 0)] {
        let mut world = stopped(2, 5, load, rung);
        assert_eq!(work(&world.planned(one())), (Verdict::EaseOff, Some(kg(20.0)), 1, 3), "{load} {rung}");
        (0..2).for_each(|_| as_printed(&mut world, one()));
        assert_eq!(status(&world).1, 0, "{load} {rung}: the sessions with half the sets are over");
    }
}

/// A day below the usual, or an easy week, is over by itself: there the lift may rest.
#[test]
fn rule_02_a_day_below_the_usual_on_the_way_back_rests_where_nothing_is_easier() {
    let mut world = stopped(1, 5, 20.0, 1);
    world.day_report(DayClass::Below);
    let today = world.today("squat");
    assert_eq!((today.verdict, today.load), (Verdict::Rest, None));
    assert!(says(&today, "nothing_easier"), "{:?}", today.reasons);
}

/// Pain in the strict lift asks for easier work until the forgiving one is trained: at the least there is, that is it.
#[test]
fn rule_02_pain_in_the_strict_lift_ends_with_the_least_there_is() {
    let mut world = squat(1, 1, 20.0, 0);
    let mut all = world.state().parameters().unwrap().clone();
    all.pairs = vec![Pair::new(name("press"), name("squat"))];
    world.add(EventKind::ParametersChanged(Box::new(all)));
    let press = LiftSession::as_granted(name("press"), World::sets(kg(40.0), 2, true));
    let pain = vec![PainAnswer::plain(name("shoulder"), bismar::quantity::Pain::new(3).unwrap())];
    world.train_all(vec![press], Some(pain));
    world.morning();
    world.wait(2).day_report(DayClass::Within);
    let today = world.today("squat");
    assert!(says(&today, "pair_pain") && says(&today, "least_there_is"), "{:?}", today.reasons);
    assert_eq!(work(&today), (Verdict::EaseOff, Some(kg(20.0)), 1, 1));
    as_printed(&mut world, Plan::of([name("squat")]));
    assert!(!says(&world.today("squat"), "pair_pain"), "{:?}", world.today("squat").reasons);
}

/// One set that is done is never called half of the sets: it is easier otherwise, or the least there is.
#[cfg(feature = "english")]
#[test]
fn rule_17_one_set_on_the_way_back_is_not_called_half_of_the_sets() {
    for (sets, reps, load, said) in [
        (1, 5, 20.0, "Easier work for 2 sessions"),
        (1, 5, 60.0, "Easier work for 2 sessions"),
        (1, 1, 20.0, "As little as can be for 2 sessions"),
        (2, 5, 60.0, "Half the sets for 2 sessions"),
    ] {
        let world = stopped(sets, reps, load, 1);
        let plan = Plan::of([name("squat")]);
        let session = bismar::prescription::next_session_from(&world.state(), &plan, world.day).unwrap();
        let all = world.state().parameters().unwrap().clone();
        let sheet = bismar::text::Words::of(&all).session(&session).to_string();
        assert!(sheet.contains(said), "{sets} x {reps} at {load}: {sheet}");
    }
}
