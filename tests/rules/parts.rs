//! Parts of one day: what stops, limits or lowers between two of them parts them, and what is done after it never adds to what
//! was done before.

use bismar::condition::DayClass;
use bismar::gate::Outcome;
use bismar::progression::Status;
use bismar::quantity::Pain;
use bismar::record::*;
use bismar::sign::{PainFeature, StopSign};

use crate::world::{World, kg, mm, name, parameters};

fn sets(count: u8) -> LiftSession {
    LiftSession::as_granted(name("squat"), World::sets(kg(60.0), count, true))
}

/// Whether any session of the squat counts as a pass at its place, and how its way back stands.
fn shown(world: &World) -> (bool, Option<u8>) {
    let state = world.state();
    let now = state.lift_state(&name("squat")).unwrap();
    let passed = now.now().sittings.iter().any(|sitting| sitting.outcome == Outcome::Pass);
    let passes = match now.status() {
        Status::Returning { passes, .. } => Some(*passes),
        _ => None,
    };
    (passed, passes)
}

/// One of the two sets granted, then what is told, then the other.
fn told_between(kinds: Vec<EventKind>) -> World {
    let mut all = parameters();
    all.lifts[0].ranges = vec![mm(300.0), mm(500.0)];
    all.lifts[0].start.place = Place::at_rung(1).with_range(1);
    let mut world = World::new(all);
    world.day_report(DayClass::Within);
    world.train_with(sets(1));
    assert!(!shown(&world).0, "one set of two");
    kinds.into_iter().for_each(|kind| world.add(kind));
    world.train_with(sets(1));
    world
}

fn clearance(status: ClearanceStatus, limits: Vec<ClearanceLimits>) -> EventKind {
    EventKind::ClearanceRecorded(Clearance::new(status, name("clinic")).with_limits(limits))
}

fn knee(score: u8, features: Vec<PainFeature>) -> PainAnswer {
    PainAnswer::plain(name("knee"), Pain::new(score).unwrap()).with_features(features)
}

#[test]
fn two_halves_of_a_day_are_one_session_where_nothing_is_told_between() {
    let harmless = [
        vec![],
        vec![EventKind::BodyMassRecorded(kg(80.0))],
        vec![EventKind::DayReport(DayReport::all_well(DayClass::Within))],
        vec![EventKind::PainReport(knee(0, Vec::new()))],
        vec![EventKind::BlockStarted(name("autumn"))],
    ];
    for kinds in harmless {
        assert!(shown(&told_between(kinds.clone())).0, "{kinds:?}");
    }
}

#[test]
fn what_is_done_after_a_stop_a_limit_or_less_never_adds_to_what_was_done_before() {
    let world = World::new(parameters());
    let (from, to) = (world.day, world.day.plus(3).unwrap());
    let lower = Grant::new(Work::new(2, 5, kg(60.0))).with_place(Place::at_rung(1));
    let load = ClearanceLimits::default().with_region(name("knee")).with_load(kg(40.0));
    let effort = ClearanceLimits::default().with_effort(bismar::quantity::Rpe::new(6.0).unwrap());
    let limited = |limit| clearance(ClearanceStatus::ClearedWithLimits, vec![limit]);
    let override_to = |load: f64, expires| {
        let given = Override::new(name("squat"), kg(load), name("coach")).with_why(Some("a look".into()));
        EventKind::CoachOverride(given.with_expires(expires))
    };
    let below = DayReport::all_well(DayClass::Below);
    let stops = [
        vec![EventKind::SymptomReport(SymptomReport::new(vec![StopSign::ChestPain]))],
        vec![EventKind::PainReport(knee(7, Vec::new()))],
        vec![EventKind::PainReport(knee(0, vec![PainFeature::Numbness]))],
        vec![EventKind::PainReport(knee(3, Vec::new()))],
        vec![EventKind::PainReport(knee(1, Vec::new()))],
        vec![EventKind::DayReport(below)],
        vec![EventKind::LayoffNoted(Layoff::new(from, LayoffReason::Ill))],
        vec![EventKind::LayoffNoted(Layoff::new(from, LayoffReason::Planned).with_to(to))],
        vec![clearance(ClearanceStatus::NotCleared, Vec::new())],
        vec![limited(load)],
        vec![limited(effort)],
        vec![EventKind::ClearanceExpired(name("clinic"))],
        vec![EventKind::RangeChanged(Move::new(name("squat"), lower, name("coach")))],
        vec![override_to(40.0, Some(to))],
        vec![override_to(50.0, None)],
        vec![EventKind::RoleSet(RoleSet::new(name("squat"), Role::Rest))],
        vec![EventKind::BarOrDiscsChanged(BarChanged::new(name("other")))],
    ];
    for kinds in stops {
        let world = told_between(kinds.clone());
        assert!(!shown(&world).0, "{kinds:?}: {:?}", world.state().lift_state(&name("squat")).unwrap().now());
    }
}

/// A break of which one pass of half the sets gives the load back: a set after chest pain is no part of that pass.
#[test]
fn a_set_after_chest_pain_brings_nobody_back() {
    let mut all = parameters();
    all.lifts[0].start.work.sets = 3;
    let mut world = World::new(all);
    for _ in 0..3 {
        world.passing_day("squat");
    }
    world.wait(10).day_report(DayClass::Within);
    let today = world.today("squat");
    let load = today.load.unwrap();
    assert!(today.sets == 2 && load < kg(60.0), "{today:?}");
    let one = || LiftSession::as_granted(name("squat"), World::sets(load, 1, true));
    world.train_with(one());
    world.add(EventKind::SymptomReport(SymptomReport::new(vec![StopSign::ChestPain])));
    let without = world.state().lift_state(&name("squat")).unwrap().now().grant;
    assert_eq!(without.load(), load);
    world.train_with(one());
    assert_eq!(world.state().lift_state(&name("squat")).unwrap().now().grant, without);
}

/// Pain told in the first part was there before the second.
#[test]
fn pain_in_the_first_part_parts_the_second() {
    let mut world = World::new(parameters());
    world.day_report(DayClass::Within);
    world.train_all(vec![sets(1)], Some(vec![knee(3, Vec::new())]));
    world.train_with(sets(1));
    assert!(!shown(&world).0);
}

/// Pain told between two parts makes nothing of the first undone: what was left in reserve before it counts for the day, and so
/// does what was lost.
#[test]
fn what_the_first_part_lost_is_not_found_again_by_the_second() {
    let part = |left: u8, clean: bool| {
        let set = |set: WorkSet| set.with_effort(Effort::Rir(bismar::quantity::Rir::whole(left)));
        LiftSession::as_granted(name("squat"), World::sets(kg(60.0), 2, clean).into_iter().map(set).collect())
    };
    let trained = |first: LiftSession, second: LiftSession| {
        let mut world = World::new(parameters());
        world.day_report(DayClass::Within);
        world.train_with(first);
        world.add(EventKind::PainReport(knee(1, Vec::new())));
        world.train_with(second);
        world.state().lift_state(&name("squat")).unwrap().now().clone()
    };
    for (first, second) in [(0, 4), (4, 0)] {
        let now = trained(part(first, true), part(second, true));
        assert!(now.sittings.last().unwrap().short_of_reserve, "{first} left, then {second}");
        assert_eq!(now.reserve, Some(0));
    }
    let now = trained(part(4, false), part(4, true));
    assert_eq!(now.fault, trained(part(4, true), part(4, false)).fault);
    assert!(now.fault.is_some());
}

/// Pain where the lift loads nothing asks for less of it neither before nor after.
#[test]
fn pain_that_is_not_of_the_lift_parts_nothing() {
    let wrist = |score| {
        let answer = PainAnswer::plain(name("shoulder"), Pain::new(score).unwrap());
        vec![EventKind::PainReport(answer)]
    };
    assert!(shown(&told_between(wrist(2))).0);
}

/// A squat at the empty bar with its step on offer, on a day that asks for the easier rung where it is below the usual.
fn at_the_empty_bar_on_offer() -> World {
    let mut all = parameters();
    all.lifts[0].start = Grant::new(Work::new(2, 5, kg(20.0))).with_place(Place::at_rung(1));
    all.lifts[0].step = Some(StepPolicy::Fixed(kg(2.0)));
    let mut world = World::new(all);
    (0..4).for_each(|_| world.passing_day("squat"));
    world.day_report(DayClass::Within);
    assert!(world.is_offered("squat"), "{:?}", world.against("squat"));
    world
}

/// One civil day is one: what was on offer after its first part does not outlast a second one that was no session of the work
/// granted, though the day asked for it so. What the first part has shown is kept.
#[test]
fn rule_05_an_offer_does_not_outlast_a_second_part_done_elsewhere() {
    let (below, within) = (|| DayReport::all_well(DayClass::Below), || DayReport::all_well(DayClass::Within));
    let places = [None, Some(Place::at_rung(0)), Some(Place::at_rung(1))];
    for (told, place) in [below(), within()].into_iter().flat_map(|told| places.map(|at| (told.clone(), at)))
    {
        let mut world = at_the_empty_bar_on_offer();
        world.train("squat", true);
        world.add(EventKind::DayReport(told.clone()));
        let elsewhere = world.today("squat").place.rung == 0 || place == Some(Place::at_rung(0));
        let part = LiftSession::as_granted(name("squat"), World::sets(kg(20.0), 2, true)).with_place(place);
        world.train_with(part);
        world.morning();
        world.day_report(DayClass::Within);
        let against = world.against("squat");
        assert_eq!(world.is_offered("squat"), !elsewhere, "{told:?} {place:?}: {against:?}");
        let ready = world.state().lift_state(&name("squat")).unwrap().status().is_ready();
        assert_eq!(ready, !elsewhere, "{told:?} {place:?}");
        // One session as it was meant brings it back.
        world.passing_day("squat");
        world.day_report(DayClass::Within);
        assert!(world.is_offered("squat"), "{told:?} {place:?}: {:?}", world.against("squat"));
    }
}

/// A pass on a day on which something came first says nothing, and is not listed: a worse part after it ends the offer all the
/// same.
#[test]
fn rule_05_an_offer_does_not_outlast_a_worse_part_after_one_that_said_nothing() {
    let mut unscored = sets(2);
    unscored.sets.iter_mut().for_each(|set| set.marks = None);
    for part in [unscored, sets(2).with_place(Place::at_rung(0)), sets(1)] {
        let mut world = World::on_offer("squat");
        let asks = Some(vec![Ask::Fever]);
        world.add(EventKind::DayReport(DayReport::all_well(DayClass::Within).with_asks(asks)));
        world.train_with(sets(2));
        world.add(EventKind::AskAnswered(AskAnswered::new(Ask::Fever, name("coach"), false)));
        world.add(EventKind::PainReport(knee(0, Vec::new())));
        world.add(EventKind::DayReport(DayReport::all_well(DayClass::Below)));
        world.train_with(part.clone());
        world.morning();
        world.wait(1).day_report(DayClass::Within);
        assert!(!world.is_offered("squat"), "{part:?}");
    }
}

/// Three parts of a day: at the place, elsewhere, and at the place again.
#[test]
fn rule_05_three_parts_of_a_day_count_a_place_once() {
    let days = |parts: &[(u8, bool)]| {
        let mut world = World::new(parameters());
        world.day_report(DayClass::Within);
        for (at, (rung, clean)) in parts.iter().enumerate() {
            if at > 0 {
                world.pain("knee", 1);
            }
            let part = LiftSession::as_granted(name("squat"), World::sets(kg(60.0), 2, *clean));
            world.train_with(part.with_place(Place::at_rung(*rung)));
        }
        world.state().lift_state(&name("squat")).unwrap().now().here.0
    };
    for parts in [
        &[(1, true), (0, true), (1, false)][..],
        &[(1, true), (0, false), (1, false)],
        &[(1, false), (0, true), (1, false)],
        &[(0, true), (1, false), (0, true)],
        &[(1, true), (0, true), (0, true), (1, false)],
        &[(0, false), (1, false), (0, false), (1, false)],
    ] {
        assert_eq!(days(parts), 1, "{parts:?}");
    }
}

/// Sets of the squat with what is said of the setup.
fn set_up(count: u8, setup: Setup) -> LiftSession {
    sets(count).with_setup(setup)
}

fn kit(words: &[&str]) -> Setup {
    Setup::default().with_kit(words.iter().map(|word| name(word)).collect::<Vec<_>>())
}

/// A squat to a box, two days of it seen, and a third in two parts.
fn third_day(first: LiftSession, second: LiftSession) -> World {
    let mut world = World::new(parameters());
    for _ in 0..2 {
        world.day_report(DayClass::Within);
        world.train_with(set_up(2, kit(&[])).with_height(mm(400.0)));
        world.morning();
        world.wait(2);
    }
    world.day_report(DayClass::Within);
    world.train_with(first);
    world.train_with(second);
    world
}

/// What changed between two parts of a day and back again changed: nothing of the day counts with what was shown before, nor is
/// anything of it shown in the setup that it ended with.
#[test]
fn a_setup_that_changed_within_a_day_starts_the_comparison_anew() {
    let box_at = |height: f64| sets(2).with_height(mm(height));
    let days = [
        ("a belt, then none", set_up(2, kit(&["belt"])), set_up(1, kit(&[]))),
        ("none, then a belt", set_up(2, kit(&[])), set_up(1, kit(&["belt"]))),
        ("nothing said, then a belt", sets(2), set_up(1, kit(&["belt"]))),
        ("a lower box, then the same", box_at(300.0), box_at(400.0)),
        ("the same box, then a lower one", box_at(400.0), box_at(300.0)),
    ];
    for (what, first, second) in days {
        let mut world = third_day(first, second);
        let state = world.state();
        let now = state.lift_state(&name("squat")).unwrap().now().clone();
        assert_eq!(now.setup.as_ref().unwrap().changed, Some(world.day), "{what}");
        let shown = now.sittings.iter().filter(|sitting| sitting.outcome == Outcome::Pass).count();
        assert_eq!(shown, 0, "{what}: {:?}", now.sittings);
        world.morning();
        assert!(!world.is_offered("squat"), "{what}");
    }
    // Said again the same it changes nothing.
    let world = third_day(set_up(1, kit(&[])), set_up(1, kit(&[])).with_height(mm(405.0)));
    let state = world.state();
    let now = state.lift_state(&name("squat")).unwrap().now();
    assert_eq!(now.setup.as_ref().unwrap().changed, None);
    assert_eq!(now.sittings.iter().filter(|sitting| sitting.outcome == Outcome::Pass).count(), 3);
}

/// Who is alone under the bar is given nothing back, though somebody came to spot for the last set.
#[test]
fn a_spotter_of_the_last_set_does_not_stand_by_the_first() {
    let by = |company| Setup::default().with_company(company);
    let after = |first: Setup, second: Setup| {
        let mut all = parameters();
        all.lifts[0].over_the_body = true;
        let mut world = World::new(all);
        for _ in 0..3 {
            world.day_report(DayClass::Within);
            world.train_with(set_up(2, by(ByTheBar::Spotter)));
            world.morning();
            world.wait(2);
        }
        world.wait(8).day_report(DayClass::Within);
        let load = world.today("squat").load.unwrap();
        assert!(load < kg(60.0));
        let part = |count, setup| {
            let done = LiftSession::as_granted(name("squat"), World::sets(load, count, true));
            done.with_setup(Some(setup))
        };
        world.train_with(part(2, first));
        world.train_with(part(1, second));
        world.state().lift_state(&name("squat")).unwrap().grant().load()
    };
    let (alone, spotted) = (by(ByTheBar::Alone), by(ByTheBar::Spotter));
    assert_eq!(after(spotted.clone(), spotted.clone()), kg(60.0));
    assert!(after(alone.clone(), spotted.clone()) < kg(60.0));
    assert!(after(alone.clone(), alone) < kg(60.0));
}
