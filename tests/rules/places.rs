//! Where a session was done that does not say so: where the day asked for it, never at a harder place, and kept.

use bismar::answers::handover;
use bismar::condition::DayClass;
use bismar::gate::Outcome;
use bismar::prescription::{Verdict, next_session_from};
use bismar::progression::State;
use bismar::quantity::{Day, Pain, Tempo};
use bismar::reason::Shortfall;
use bismar::record::*;

use crate::world::{World, kg, mm, name, parameters};

/// A squat on its full rung at the empty bar, so that a day which eases it asks for the easier rung.
fn at_the_empty_bar() -> World {
    let mut all = parameters();
    all.lifts[0].start = Grant::new(Work::new(2, 5, kg(20.0))).with_place(Place::at_rung(1));
    World::new(all)
}

fn clean(place: Option<Place>) -> LiftSession {
    LiftSession::as_granted(name("squat"), World::sets(kg(20.0), 2, true)).with_place(place)
}

/// What the last session of the squat came to, in what it fell short, and on which rung it was done.
fn last(state: &State) -> (Outcome, Option<Shortfall>, Option<u8>) {
    let squat = state.lift_state(&name("squat")).unwrap();
    let now = squat.now();
    (now.sittings.last().unwrap().outcome, now.short, now.last_place.map(|place| place.rung))
}

#[test]
fn a_place_left_out_is_the_granted_one_on_an_ordinary_day() {
    let mut world = at_the_empty_bar();
    world.day_report(DayClass::Within);
    world.train_with(clean(None));
    assert_eq!(last(&world.state()), (Outcome::Pass, None, Some(1)));
}

/// Pain eases the lift to the easier rung at the same load: done as asked, it says nothing about the full one.
#[test]
fn a_place_left_out_on_an_eased_day_is_the_easier_rung_and_no_pass_at_the_granted_one() {
    let mut world = at_the_empty_bar();
    world.pain("knee", 4);
    let today = world.today("squat");
    assert_eq!((today.verdict, today.place.rung, today.load), (Verdict::EaseOff, 0, Some(kg(20.0))));
    world.train_with(clean(None));
    let state = world.state();
    assert_eq!(last(&state), (Outcome::NotScored, Some(Shortfall::Rung), Some(0)));
    // The answers say where it was done.
    let told = handover(&world.log, world.day, world.day).unwrap();
    let place = told.lifts[0].last.as_ref().unwrap().place.clone().unwrap();
    assert_eq!(place.rung, Some(name("easier")));
    // As if it had been written down.
    let mut written = at_the_empty_bar();
    written.pain("knee", 4);
    written.train_with(clean(Some(Place::at_rung(0))));
    assert_eq!(last(&written.state()), last(&state));
}

/// Who trains at the harder place all the same has shown nothing there: the day allowed less.
#[test]
fn no_pass_counts_at_a_harder_place_than_the_day_asked_for() {
    let mut world = at_the_empty_bar();
    world.day_report(DayClass::Below);
    assert_eq!(world.today("squat").place.rung, 0);
    world.train_with(clean(Some(Place::at_rung(1))));
    assert_eq!(last(&world.state()), (Outcome::NotScored, Some(Shortfall::Limit), Some(1)));
    // What fails there fails.
    let mut world = at_the_empty_bar();
    world.day_report(DayClass::Within);
    world.pain("knee", 4);
    let lost = LiftSession::as_granted(name("squat"), World::sets(kg(20.0), 2, false));
    world.train_with(lost);
    assert_eq!(last(&world.state()).0, Outcome::Fail);
}

/// A range beyond a clearance is harder than the day asked for too.
#[test]
fn no_pass_counts_in_a_range_beyond_a_clearance() {
    let mut all = parameters();
    all.lifts[0].ranges = vec![mm(300.0), mm(500.0)];
    all.lifts[0].start.place = Place::at_rung(1).with_range(1);
    let mut world = World::new(all);
    let limit = ClearanceLimits::default().with_region(name("knee")).with_range(mm(300.0));
    world.add(EventKind::ClearanceRecorded(
        Clearance::new(ClearanceStatus::ClearedWithLimits, name("clinic")).with_limits(vec![limit]),
    ));
    world.day_report(DayClass::Within);
    let sets = || World::sets(kg(60.0), 2, true);
    let mut left_out = world.clone();
    left_out.train_with(LiftSession::as_granted(name("squat"), sets()));
    assert_eq!(last(&left_out.state()).1, Some(Shortfall::Range));
    let place = Place::at_rung(1).with_range(1);
    world.train_with(LiftSession::as_granted(name("squat"), sets()).with_place(place));
    assert_eq!(last(&world.state()), (Outcome::NotScored, Some(Shortfall::Limit), Some(1)));
}

/// Pain that is told in the session itself came after what was asked.
#[test]
fn pain_within_the_session_changes_nothing_of_where_it_was_done() {
    let mut world = at_the_empty_bar();
    world.day_report(DayClass::Within);
    let answer = PainAnswer::plain(name("knee"), Pain::new(4).unwrap());
    world.train_all(vec![clean(None)], Some(vec![answer.clone()]));
    assert_eq!(last(&world.state()), (Outcome::Pass, None, Some(1)));
    // A second session of that day is asked for on the easier rung: it takes nothing from what was shown before it.
    assert_eq!(world.today("squat").place.rung, 0);
    world.train_with(clean(None));
    assert_eq!(last(&world.state()), (Outcome::Pass, Some(Shortfall::Rung), Some(0)));
    // And it adds nothing: one set of two was done at the granted rung.
    let mut world = at_the_empty_bar();
    world.day_report(DayClass::Within);
    let one = || LiftSession::as_granted(name("squat"), World::sets(kg(20.0), 1, true));
    let mut free = world.clone();
    world.train_all(vec![one()], Some(vec![answer]));
    world.train_with(one());
    assert_eq!(last(&world.state()), (Outcome::NotScored, Some(Shortfall::Sets), Some(0)));
    // Without the pain the two are one.
    free.train_with(one());
    free.train_with(one());
    assert_eq!(last(&free.state()), (Outcome::Pass, None, Some(1)));
}

/// A long break brings the lift back on an easier rung, where nothing is lighter: that is where the first session is done.
#[test]
fn a_place_left_out_after_a_break_is_where_the_lift_comes_back() {
    let mut world = at_the_empty_bar();
    world.day_report(DayClass::Within);
    world.train_with(clean(None));
    world.morning();
    world.wait(60).day_report(DayClass::Within);
    assert_eq!(world.today("squat").place.rung, 0);
    world.train_with(clean(None));
    let (_, _, rung) = last(&world.state());
    assert_eq!(rung, Some(0));
    let told = handover(&world.log, world.day, world.day).unwrap();
    assert_eq!(told.lifts[0].last.as_ref().unwrap().place.clone().unwrap().rung, Some(name("easier")));
}

/// The place is kept by what it is: new lists carry it along, and where it is gone it is not said.
#[test]
fn the_last_place_is_kept_and_follows_new_lists() {
    let mut world = at_the_empty_bar();
    world.day_report(DayClass::Within);
    world.train_with(clean(None));
    let text = world.state().to_json().unwrap();
    assert_eq!(last(&State::from_json(&text).unwrap()).2, Some(1));
    let mut all = world.state().parameters().unwrap().clone();
    all.lifts[0].rungs.reverse();
    all.lifts[0].start.place = Place::at_rung(0);
    let mut reordered = world.clone();
    reordered.add(EventKind::ParametersChanged(Box::new(all.clone())));
    let place = |world: &World| world.state().lift_state(&name("squat")).unwrap().now().last_place;
    assert_eq!(place(&reordered), Some(Place::at_rung(0)));
    all.lifts[0].rungs = vec![Rung::new(name("another"), vec![])];
    world.add(EventKind::ParametersChanged(Box::new(all)));
    assert_eq!(place(&world), None);
}

/// An implement that is not there cannot be missing: a slip of the pen would leave the lift in the plan.
#[test]
fn a_plan_that_calls_an_unknown_implement_missing_is_refused() {
    let world = World::on_offer("squat");
    let day: Day = world.day;
    let mut plan = Plan::of([name("squat")]);
    plan.unavailable = vec![name("bells"), name("barr")];
    let error = next_session_from(&world.state(), &plan, day).unwrap_err();
    assert_eq!((error.code(), error.field()), (bismar::Code::UnknownName, "unavailable[1].implement"));
    assert_eq!(error.allowed().to_string(), "bar, bells");
    plan.unavailable = vec![name("bar")];
    assert_eq!(world.planned(plan).verdict, Verdict::Rest);
}

/// A place is told by what stands in the lists, so that nothing may stand there twice.
#[test]
fn a_range_or_a_tempo_that_is_declared_twice_is_refused() {
    let refused = |change: &dyn Fn(&mut LiftParameters)| {
        let mut world = World::new(parameters());
        let mut all = parameters();
        change(&mut all.lifts[0]);
        let error = world.turned_away(EventKind::ParametersChanged(Box::new(all)));
        (error.code(), error.field().to_string())
    };
    let at = |field: &str| {
        let path = format!("events[2].kind.parameters_changed.lifts[0].{field}");
        (bismar::Code::DuplicateName, path)
    };
    let twice = refused(&|set| set.ranges = vec![mm(300.0), mm(500.0), mm(300.0)]);
    assert_eq!(twice, at("ranges[2].range"));
    let tempo = |down, up| Tempo::new(down, 0, up);
    let tempos = move || vec![tempo(2, 1), tempo(3, 1), tempo(2, 1)];
    assert_eq!(refused(&|set| set.tempos = tempos()), at("tempos[2].tempo"));
}

/// A limit of range, training without a word of the place, and a clearance of before it that is written down afterwards: what was
/// done within the limit is no session in the full range.
#[test]
fn a_limit_that_is_lifted_late_moves_no_session_told_before_it() {
    let mut all = parameters();
    all.lifts[0].ranges = vec![mm(300.0), mm(500.0)];
    all.lifts[0].start.place = Place::at_rung(1).with_range(1);
    let mut world = World::new(all);
    let limit = ClearanceLimits::default().with_region(name("knee")).with_range(mm(300.0));
    world.add(EventKind::ClearanceRecorded(
        Clearance::new(ClearanceStatus::ClearedWithLimits, name("clinic")).with_limits(vec![limit]),
    ));
    world.wait(4).day_report(DayClass::Within);
    let squat = || LiftSession::as_granted(name("squat"), World::sets(kg(60.0), 2, true));
    let mut in_order = world.clone();
    world.train_with(squat());
    world.wait(-1).clear();
    world.wait(1);
    let state = world.state();
    assert_eq!(last(&state).1, Some(Shortfall::Range));
    let range = |world: &World| {
        world.state().lift_state(&name("squat")).unwrap().now().last_place.map(|place| place.range)
    };
    assert_eq!((world.today("squat").place.range, range(&world)), (1, Some(0)));
    world.wait(2).day_report(DayClass::Within);
    world.train_with(squat());
    assert_eq!((last(&world.state()).1, range(&world)), (None, Some(1)));
    in_order.clear();
    in_order.train_with(squat());
    assert_eq!((last(&in_order.state()).1, range(&in_order)), (None, Some(1)));
}

/// The squat moves by its range, and a longer one is on offer.
fn by_range() -> World {
    let mut all = parameters();
    all.lifts[0].ranges = vec![mm(300.0), mm(400.0), mm(500.0)];
    all.lifts[0].moving = Dimension::Range;
    let mut world = World::new(all);
    (0..4).for_each(|_| world.passing_day("squat"));
    world.day_report(DayClass::Within);
    assert!(world.is_offered("squat"), "{:?}", world.today("squat").outlook);
    world
}

/// Who trained without a word of the place trained where the lift stood then; that a step was taken before, written down
/// afterwards, makes no session in the longer range of it.
#[test]
fn a_step_that_is_written_down_late_moves_no_session_told_before_it() {
    let accept = || EventKind::AdvanceAccepted(Advance::new(name("squat"), name("coach")));
    let to = Grant::new(Work::new(2, 5, kg(60.0))).with_place(Place::at_rung(1).with_range(1));
    let by_hand = || EventKind::RangeChanged(Move::new(name("squat"), to, name("coach")));
    let squat = || LiftSession::as_granted(name("squat"), World::sets(kg(60.0), 2, true));
    let range = |world: &World| {
        let state = world.state();
        let now = state.lift_state(&name("squat")).unwrap().now().clone();
        assert_eq!(now.grant.place.range, 1);
        (now.last_place.map(|place| place.range), now.short, now.sittings.last().map(|last| last.outcome))
    };
    for step in [accept(), by_hand()] {
        let mut late = by_range();
        late.wait(1).day_report(DayClass::Within);
        late.train_with(squat());
        late.wait(-1).add(step.clone());
        late.wait(1);
        assert_eq!(range(&late), (Some(0), Some(Shortfall::Range), Some(Outcome::NotScored)));
        // What is told after it is done there.
        late.wait(2).day_report(DayClass::Within);
        late.train_with(squat());
        assert_eq!(range(&late), (Some(1), None, Some(Outcome::Pass)));
        // Told in the order in which it was, it is a session in the longer range; so it is where that is written down.
        let mut in_order = by_range();
        in_order.add(step.clone());
        in_order.wait(1).day_report(DayClass::Within);
        in_order.train_with(squat());
        assert_eq!(range(&in_order), (Some(1), None, Some(Outcome::Pass)));
        let mut written = by_range();
        written.wait(1).day_report(DayClass::Within);
        written.train_with(squat().with_place(Place::at_rung(1).with_range(1)));
        written.wait(-1).add(step);
        written.wait(1);
        assert_eq!(range(&written), (Some(1), None, Some(Outcome::Pass)));
    }
}
