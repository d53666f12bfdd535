//! What a hostile coach would try: to lose a stop, a gap or a pain by changing what is declared, or to bring something back
//! that never counted.

use super::world::*;
use bismar::condition::DayClass;
use bismar::error::Code;
use bismar::gate::{Criterion, Mark, Outcome};
use bismar::progression::State;
use bismar::quantity::Pain;
use bismar::record::*;
use bismar::sign::{PainFeature, StopSign};
use bismar::value::Value;

fn set(world: &mut World, all: Parameters) {
    world.add(EventKind::ParametersChanged(Box::new(all)));
}

fn without_squat() -> Parameters {
    let mut all = parameters();
    all.lifts.remove(0);
    all
}

#[test]
fn a_stop_reaches_a_lift_that_is_set_aside() {
    let mut world = World::on_offer("squat");
    set(&mut world, without_squat());
    world.add(EventKind::SymptomReport(SymptomReport::new(vec![StopSign::ChestPain])));
    assert_eq!(world.state().set_aside().next().unwrap().status().as_str(), "stopped_refer");
    world.clear();
    world.sign_off(SignOffScope::Everything);
    set(&mut world, parameters());
    world.day_report(DayClass::Within);
    let today = world.today("squat");
    assert_eq!((today.status.as_str(), today.place.rung), ("returning", 0));
    assert!(today.granted.load() < kg(60.0) && !world.is_offered("squat"));
}

#[test]
fn a_stored_state_without_a_declared_region_is_refused() {
    let mut world = World::on_offer("squat");
    world.pain("knee", 4);
    let whole = Value::write(&world.state()).unwrap().to_json();
    let mut stored: serde_json::Value = serde_json::from_str(&whole).unwrap();
    stored["shared"]["regions"] = serde_json::json!([]);
    let stored = stored.to_string();
    let error = State::from_json(&stored).unwrap_err();
    assert_eq!((error.code(), error.field()), (Code::UnknownRegion, "shared.regions"), "{stored}");
}

#[test]
fn a_lift_given_other_regions_keeps_its_gap() {
    let mut all = parameters();
    all.lifts.push(lift("pull", "back", 60.0));
    let mut world = World::new(all.clone());
    world.passing_day("squat");
    for _ in 0..26 {
        world.passing_day("pull");
        world.wait(5);
    }
    all.lifts[0].regions = vec![name("back")];
    set(&mut world, all);
    world.day_report(DayClass::Within);
    let today = world.today("squat");
    assert!(today.load.unwrap() < kg(60.0) && says(&today, "layoff"), "{:?}", today.reasons);
}

#[test]
fn a_morning_that_names_no_session_speaks_of_the_last_one() {
    let mut world = World::new(parameters());
    for _ in 0..3 {
        world.passing_day("squat");
    }
    world.day_report(DayClass::Within);
    world.train("squat", true);
    world.wait(1);
    let pain = Some(vec![PainAnswer::plain(name("knee"), Pain::new(2).unwrap())]);
    let outcome = |world: &World| {
        let state = world.state();
        state.lift_state(&name("squat")).unwrap().now().sittings.last().unwrap().outcome
    };
    let report = |pain| EventKind::NextDayReport(NextDayReport::new(999).with_pain(pain));
    let mut quiet = world.clone();
    world.add(report(pain.clone()));
    assert_eq!(outcome(&world), bismar::gate::Outcome::Fail);
    // A quiet one answers for nothing: what is said the day after still counts.
    quiet.add(report(Some(Vec::new())));
    quiet.wait(1);
    quiet.add(EventKind::DayReport(DayReport::all_well(DayClass::Within).with_pain(pain)));
    assert_eq!(outcome(&quiet), bismar::gate::Outcome::Fail);
}

#[test]
fn pain_goes_with_a_lift_that_is_given_other_regions() {
    let mut world = World::on_offer("squat");
    world.pain("knee", 2);
    let mut all = parameters();
    all.lifts[0].regions = vec![name("back")];
    all.lifts.push(lift("lunge", "knee", 30.0));
    set(&mut world, all);
    world.wait(1);
    let report = DayReport::all_well(DayClass::Within).with_pain(None);
    world.add(EventKind::DayReport(report));
    assert!(!world.is_offered("squat"), "{:?}", world.against("squat"));
}

#[test]
fn a_region_that_is_no_longer_declared_is_not_counted_clear() {
    let mut world = World::on_offer("squat");
    world.pain("knee", 4);
    let mut all = parameters();
    all.regions.remove(0);
    all.lifts[0].regions = vec![name("back")];
    set(&mut world, all);
    for _ in 0..4 {
        world.wait(2);
        world.passing_day("squat");
    }
    world.day_report(DayClass::Within);
    assert!(blocked_by(&world.against("squat"), "pain_block"), "{:?}", world.against("squat"));
    let error = world.turned_away(EventKind::PainReport(PainAnswer::plain(name("knee"), Pain::NONE)));
    assert_eq!(error.code(), Code::UnknownRegion);
    // Declared again, its clear days count.
    set(&mut world, parameters());
    for _ in 0..4 {
        world.wait(2);
        world.passing_day("squat");
    }
    assert!(!blocked_by(&world.against("squat"), "pain_block"), "{:?}", world.against("squat"));
}

#[test]
fn edited_lists_lead_to_no_harder_place() {
    let mut all = parameters();
    all.lifts[0].ranges = vec![mm(450.0), mm(350.0)];
    all.lifts[0].tempos = vec![Tempo::new(2, 0, 1)];
    all.lifts[0].start.place.range = 1;
    let mut world = World::new(all.clone());
    world.passing_day("squat");
    let granted = world.today("squat").granted;
    let to = Grant::new(Work::new(1, 3, kg(60.0))).with_place(granted.place.with_range(0));
    world.add(EventKind::RangeChanged(Move::new(name("squat"), to, name("coach"))));
    all.lifts[0].tempos = vec![Tempo::new(3, 1, 1)];
    set(&mut world, all);
    let now = world.today("squat").granted;
    assert_eq!((now.place.range, now.work.sets, now.work.reps), (0, 1, 3));
}

#[test]
fn what_was_trained_through_an_illness_does_not_count() {
    let mut world = World::new(parameters());
    world.passing_day("squat");
    world.wait(2);
    world.add(EventKind::LayoffNoted(Layoff::new(world.day, LayoffReason::Ill)));
    let passes = |world: &World| {
        let state = world.state();
        state.lift_state(&name("squat")).unwrap().now().sittings.len()
    };
    let before = passes(&world);
    world.day_report(DayClass::Within);
    world.train_with(LiftSession::as_granted(name("squat"), World::sets(kg(60.0), 2, true)));
    assert!(passes(&world) <= before);
}

/// Discs were lost: a start that was taken before is refused as any other, and said anew the lift goes on as far as it goes.
#[test]
fn a_start_taken_before_may_not_lie_above_what_is_left() {
    let mut world = World::new(parameters());
    let mut all = parameters();
    all.stock = bismar::loading::Stock::new(vec![bismar::loading::Disc::new(kg(5.0), 2).unwrap()]).unwrap();
    all.lifts[1].start.work.load = kg(30.0);
    let error = world.turned_away(EventKind::ParametersChanged(Box::new(all.clone())));
    assert_eq!((error.code(), error.field()), (bismar::Code::NotLoadable, "lifts[0].start.work.load"));
    all.lifts[0].start.work.load = kg(30.0);
    set(&mut world, all);
    assert_eq!((world.today("squat").granted.load(), world.today("squat").load), (kg(60.0), Some(kg(30.0))));
}

/// The squat with one more critical point.
fn with_feet() -> Parameters {
    let mut all = parameters();
    all.lifts[0].criteria.push(Criterion::critical("feet").unwrap());
    all
}

/// Two sets of the squat at 60 kg, with that mark for the feet.
fn with_marks_for_feet(feet: Mark) -> LiftSession {
    let mut sets = World::sets(kg(60.0), 2, true);
    for set in &mut sets {
        let marks = set.marks.take().unwrap();
        set.marks = Some(marks.with("feet", feet).unwrap());
    }
    LiftSession::as_granted(name("squat"), sets)
}

#[test]
fn a_point_added_between_two_sessions_of_a_day_leaves_the_log_readable() {
    let last = |world: &World| {
        let state = world.state();
        let now = state.lift_state(&name("squat")).unwrap().now().clone();
        (now.sittings.last().map(|last| last.outcome), now.fails, now.fault)
    };
    for feet in [Mark::Met, Mark::NotSeen, Mark::NotMet] {
        let mut world = World::on_offer("squat");
        world.train("squat", true);
        set(&mut world, with_feet());
        world.train_with(with_marks_for_feet(feet));
        assert!(!world.is_offered("squat"), "{feet:?}");
        // The day has counted; what was lost counts all the same.
        let expected = match feet {
            Mark::NotMet => (Some(Outcome::Fail), 1, Some(name("feet"))),
            _ => (None, 0, None),
        };
        assert_eq!(last(&world), expected, "{feet:?}");
    }
}

#[test]
fn one_day_of_fails_is_one_though_the_lift_is_set_otherwise_within_it() {
    let squat = |world: &World| {
        let state = world.state();
        let now = state.lift_state(&name("squat")).unwrap().now().clone();
        (now.fails, now.sittings.last().map(|last| last.outcome), now.here.0)
    };
    for outcomes in [[false, false], [false, true], [true, false]] {
        let mut world = World::on_offer("squat");
        let (_, _, days) = squat(&world);
        world.train("squat", outcomes[0]);
        let mut all = parameters();
        all.lifts[0].step_cap = Some(0.05);
        set(&mut world, all);
        world.train("squat", outcomes[1]);
        assert_eq!(squat(&world), (1, Some(Outcome::Fail), days + 1), "{outcomes:?}");
    }
}

#[test]
fn a_later_session_by_other_parameters_leaves_no_pass_that_it_did_not_show() {
    for (load, outcome) in [(60.0, Outcome::Pass), (50.0, Outcome::NotScored)] {
        let mut world = World::on_offer("squat");
        world.train("squat", true);
        let mut all = parameters();
        all.lifts[0].step_cap = Some(0.05);
        set(&mut world, all);
        world.train_with(LiftSession::as_granted(name("squat"), World::sets(kg(load), 2, true)));
        let state = world.state();
        let last = *state.lift_state(&name("squat")).unwrap().now().sittings.last().unwrap();
        assert_eq!(last.outcome, outcome);
        world.morning();
        world.wait(3).day_report(DayClass::Within);
        assert_eq!(world.is_offered("squat"), outcome == Outcome::Pass, "{:?}", world.against("squat"));
    }
}

#[test]
fn names_changed_between_two_sessions_of_a_day_change_nothing() {
    let stands = |all: Parameters| {
        let mut world = World::on_offer("squat");
        world.train_with(LiftSession::as_granted(name("squat"), World::sets(kg(60.0), 1, true)));
        set(&mut world, all);
        world.train_with(LiftSession::as_granted(name("squat"), World::sets(kg(60.0), 1, true)));
        world.state().lift_state(&name("squat")).unwrap().now().clone()
    };
    let mut named = parameters();
    named.lifts[0].name = Some(name("back squat"));
    named.lifts[0].rungs[1].name = Some(name("to parallel"));
    let plain = stands(parameters());
    assert_eq!(plain.sittings.last().map(|last| last.outcome), Some(Outcome::Pass));
    assert_eq!(stands(named), plain);
}

fn planned(world: &World, to: Option<bismar::quantity::Day>) -> EventKind {
    EventKind::LayoffNoted(Layoff::new(world.day, LayoffReason::Planned).with_to(to))
}

#[test]
fn no_break_stands_for_the_pass_that_a_move_has_still_to_show() {
    let moved = || {
        let mut world = World::on_offer("squat");
        world.add(EventKind::AdvanceAccepted(Advance::new(name("squat"), name("coach"))));
        assert_eq!(world.today("squat").status.as_str(), "consolidating");
        world
    };
    let role = |role| EventKind::RoleSet(RoleSet::new(name("squat"), role));
    let mut away = moved();
    let end = away.day.plus(3).unwrap();
    away.add(planned(&away, Some(end)));
    away.wait(5).day_report(DayClass::Within);
    assert_eq!(away.today("squat").status.as_str(), "consolidating");
    let mut rested = moved();
    rested.add(role(Role::Rest));
    rested.wait(5).add(role(Role::Train));
    rested.day_report(DayClass::Within);
    assert_eq!(rested.today("squat").status.as_str(), "returning");
    for mut world in [away, rested] {
        // Not scored is no pass.
        let mut sets = World::sets(world.today("squat").load.unwrap(), 2, true);
        sets.iter_mut().for_each(|set| set.marks = None);
        world.train_with(LiftSession::as_granted(name("squat"), sets));
        assert_ne!(world.today("squat").status.as_str(), "holding");
    }
}

#[test]
fn of_two_answers_about_the_time_there_is_the_shorter_stands() {
    for minutes in [[0, 90], [90, 0]] {
        let mut world = World::on_offer("squat");
        for minutes in minutes {
            let report = DayReport::all_well(DayClass::Within).with_minutes(minutes);
            world.add(EventKind::DayReport(report));
        }
        assert_eq!(world.state().minutes_on(world.day), Some(0));
        assert_eq!(world.today("squat").load, None, "no time trains nothing");
    }
}

#[test]
fn numbness_stands_though_a_later_answer_leaves_it_out() {
    let features =
        |world: &World| world.state().region(&name("knee")).unwrap().stop.clone().unwrap().features;
    for later in [None, Some(Vec::new()), Some(vec![PainFeature::Sharp])] {
        let mut world = World::on_offer("squat");
        let numb = Some(vec![PainFeature::Numbness]);
        let answer = |score, features| {
            PainAnswer::plain(name("knee"), Pain::new(score).unwrap()).with_features(features)
        };
        world.add(EventKind::PainReport(answer(6, numb)));
        world.add(EventKind::PainReport(answer(6, later.clone())));
        let mut expected = vec![PainFeature::Numbness];
        expected.extend(later.into_iter().flatten());
        assert_eq!(features(&world), expected);
    }
}

/// A lift of its own for each number, with nothing else.
fn alone(at: usize) -> Parameters {
    let lifts = vec![lift(&format!("lift {at:02}"), "knee", 60.0)];
    parameters().with_lifts(lifts)
}

#[test]
fn a_lift_left_out_after_sixteen_others_is_not_refused_and_comes_back_under_its_break() {
    let mut world = World::new(alone(0));
    for at in 0..40 {
        set(&mut world, alone(at));
        let id = format!("lift {at:02}");
        world.passing_day(&id);
        world.wait(20);
    }
    let state = world.state();
    assert_eq!((state.set_aside().len(), state.laid_by().len()), (16, 23));
    let text = state.to_json().unwrap();
    assert_eq!(State::from_json(&text).unwrap(), state);
    // Nearly two years ago: the last row of the table, at the lightest load.
    set(&mut world, alone(3));
    world.day_report(DayClass::Within);
    let today = world.today("lift 03");
    assert_eq!((today.status.as_str(), today.load), ("returning", Some(kg(20.0))), "{:?}", today.reasons);
    assert!(says(&today, "layoff") && world.state().laid_by().all(|(id, _)| *id != name("lift 03")));
}

/// The same, where what it loads is the back.
fn alone_of_the_back(at: usize) -> Parameters {
    let mut all = alone(at);
    all.lifts[0].regions = vec![name("back")];
    all
}

#[test]
fn a_lift_is_laid_by_once_its_stop_is_lifted_and_not_before() {
    let mut world = World::new(alone(0));
    for at in 0..17 {
        set(&mut world, alone(at));
        world.passing_day(&format!("lift {at:02}"));
        world.wait(20);
    }
    world.pain("knee", 7);
    // Nobody loads the knee now, so that its stop holds every one of them.
    let error = world.turned_away(EventKind::ParametersChanged(Box::new(alone_of_the_back(17))));
    assert_eq!((error.code(), error.field()), (Code::TooMany, "lifts set aside"));
    world.clear();
    world.sign_off(SignOffScope::Region(name("knee")));
    set(&mut world, alone_of_the_back(17));
    assert_eq!((world.state().set_aside().len(), world.state().laid_by().len()), (16, 1));
}

/// A lift that was stopped before its first session comes back one step lower with half the sets: that is not lost.
#[test]
fn a_lift_stopped_before_its_first_session_is_not_laid_by() {
    let mut world = World::new(alone(0));
    world.pain("knee", 7);
    set(&mut world, alone_of_the_back(1));
    world.clear();
    world.sign_off(SignOffScope::Region(name("knee")));
    for at in 2..30 {
        set(&mut world, alone_of_the_back(at));
        world.wait(20);
    }
    set(&mut world, alone(0));
    world.day_report(DayClass::Within);
    let today = world.today("lift 00");
    assert_eq!(today.status.as_str(), "returning", "{:?}", today.reasons);
    assert!(today.load < Some(kg(60.0)), "{:?}", today.load);
}

/// With forty lifts after it, for longer than any break of the table.
fn after_forty_others(mut world: World, mut again: Parameters) -> (World, Parameters) {
    for at in 1..40 {
        let mut other = alone(at);
        other.policy = again.policy.clone();
        set(&mut world, other);
        world.passing_day(&format!("lift {at:02}"));
        world.wait(20);
    }
    again.lifts.truncate(1);
    set(&mut world, again.clone());
    world.day_report(DayClass::Within);
    (world, again)
}

#[test]
fn what_a_coach_made_easier_is_not_laid_by() {
    let mut rests = World::new(alone(0));
    rests.passing_day("lift 00");
    rests.add(role("lift 00", Role::Rest));
    let (rests, _) = after_forty_others(rests, alone(0));
    assert_eq!(rests.today("lift 00").status.as_str(), "resting");
    let mut given_up = World::new(alone(0));
    given_up.passing_day("lift 00");
    given_up.add(role("lift 00", Role::Retire));
    let (given_up, _) = after_forty_others(given_up, alone(0));
    assert_eq!(given_up.today("lift 00").status.as_str(), "retired");
}

/// Each way in which a coach makes a lift easier, alone: with it the lift stays as it stood when sixteen others that were left
/// out later have to stay as well, and without it only the day of its last session does.
#[test]
fn every_way_to_ease_a_lift_keeps_it_as_it_stood() {
    fn kept_after(act: impl Fn(&mut World), trained: bool) -> bool {
        let mut first = alone(0);
        let squat = &mut first.lifts[0];
        squat.ranges = vec![mm(300.0), mm(400.0)];
        squat.tempos = vec![Tempo::new(1, 0, 1), Tempo::new(3, 1, 1)];
        squat.start.place = Place::at_rung(1).with_range(1).with_tempo(1);
        let mut world = World::new(first);
        if trained {
            world.passing_day("lift 00");
        }
        act(&mut world);
        for at in 1..40 {
            set(&mut world, alone(at));
            world.passing_day(&format!("lift {at:02}"));
            world.wait(20);
        }
        let state = world.state();
        assert_eq!(state.set_aside().len(), 16);
        state.set_aside().any(|lift| *lift.id() == name("lift 00"))
    }
    let start = Place::at_rung(1).with_range(1).with_tempo(1);
    let moved = |place: Place, work: Work| {
        move |world: &mut World| {
            let to = Grant::new(work).with_place(place);
            world.add(EventKind::VariantChanged(Move::new(name("lift 00"), to, name("coach"))));
        }
    };
    let (same, whole) = (start, Work::new(2, 5, kg(60.0)));
    assert!(!kept_after(|_| {}, true));
    assert!(!kept_after(moved(same, whole), true), "a move to where it stands eases nothing");
    assert!(kept_after(moved(start.with_rung(0), whole), true), "an easier rung");
    assert!(kept_after(moved(start.with_range(0), whole), true), "a shorter range");
    assert!(kept_after(moved(start.with_tempo(0), whole), true), "an easier tempo");
    assert!(kept_after(moved(same, Work::new(1, 5, kg(60.0))), true), "fewer sets");
    assert!(kept_after(moved(same, Work::new(2, 4, kg(60.0))), true), "fewer repetitions");
    assert!(kept_after(moved(same, Work::new(2, 5, kg(40.0))), false), "less load before the first session");
    let keeps = |world: &mut World| world.add(role("lift 00", Role::Maintain));
    assert!(kept_after(keeps, true), "kept on purpose");
    let overruled = |days| move |world: &mut World| world.override_to("lift 00", 50.0, days);
    assert!(kept_after(overruled(2_000), true), "the coach's word for less");
}

/// Given up and left out is how a lift ends: the seventeenth is not refused, and the last ones stay as they stood.
#[test]
fn lifts_given_up_one_after_the_other_are_never_too_many() {
    let mut world = World::new(alone(0));
    for at in 0..40 {
        let id = format!("lift {at:02}");
        set(&mut world, alone(at));
        world.passing_day(&id);
        world.add(role(&id, Role::Retire));
        world.wait(20);
    }
    let state = world.state();
    assert_eq!((state.set_aside().len(), state.laid_by().len()), (16, 23));
}

/// A table whose longest break leaves a part of the load, and no restart: what is left is less than the start.
#[test]
fn a_lift_is_laid_by_only_where_a_break_leaves_the_lightest_load() {
    let mut all = alone(0);
    all.policy.layoff.retain(|row| !row.restart);
    let mut world = World::new(all.clone());
    world.passing_day("lift 00");
    for at in 1..=16 {
        let mut other = alone(at);
        other.policy = all.policy.clone();
        set(&mut world, other);
        world.passing_day(&format!("lift {at:02}"));
        world.wait(20);
    }
    let mut other = alone(17);
    other.policy = all.policy;
    let error = world.turned_away(EventKind::ParametersChanged(Box::new(other)));
    assert_eq!((error.code(), error.field()), (Code::TooMany, "lifts set aside"));
}

fn with_ranges() -> Parameters {
    let mut all = parameters();
    let squat = &mut all.lifts[0];
    squat.ranges = vec![mm(300.0), mm(400.0)];
    squat.start.place.range = 1;
    all
}

#[test]
fn what_a_clearance_forbade_was_not_shown() {
    let mut world = World::new(with_ranges());
    let limit = ClearanceLimits::default().with_range(mm(300.0));
    let limited = Clearance::new(ClearanceStatus::ClearedWithLimits, name("clinic"));
    world.add(EventKind::ClearanceRecorded(limited.with_limits(vec![limit])));
    for _ in 0..8 {
        world.day_report(DayClass::Within);
        assert_eq!(world.today("squat").place.range, 0);
        world.train("squat", true);
        world.morning();
        world.wait(2);
    }
    world.clear();
    world.day_report(DayClass::Within);
    let state = world.state();
    let shown = |sitting: &bismar::progression::Sitting| sitting.outcome == Outcome::Pass;
    assert!(!state.lift_state(&name("squat")).unwrap().now().sittings.iter().any(shown));
    assert!(!world.is_offered("squat"));
}

fn role(lift: &str, role: Role) -> EventKind {
    EventKind::RoleSet(RoleSet::new(name(lift), role))
}

#[test]
fn time_alone_ends_no_rest_of_the_coach() {
    let mut world = World::on_offer("squat");
    world.add(role("squat", Role::Rest));
    for days in [5, 10, 100, 300] {
        world.wait(days);
        let mut today = world.clone();
        today.day_report(DayClass::Within);
        let today = today.today("squat");
        assert_eq!((today.status.as_str(), today.load), ("resting", None), "{days}");
    }
    world.add(role("squat", Role::Train));
    world.day_report(DayClass::Within);
    let today = world.today("squat");
    assert!(today.status.as_str() == "returning" && today.load.unwrap() < kg(60.0));
}

#[test]
fn alone_is_remembered_though_the_lift_was_not_done_under_the_bar_then() {
    let under = |under| {
        let mut all = parameters();
        all.lifts[0].over_the_body = under;
        all
    };
    let alone = |world: &mut World| {
        world.day_report(DayClass::Within);
        let setup = Setup::default().with_company(ByTheBar::Alone);
        let done = LiftSession::as_granted(name("squat"), World::sets(kg(60.0), 2, true));
        world.train_with(done.with_setup(setup));
        world.morning();
        world.wait(1);
    };
    for first in [true, false] {
        let mut world = World::new(under(first));
        alone(&mut world);
        set(&mut world, under(false));
        world.passing_day("squat");
        set(&mut world, under(true));
        world.day_report(DayClass::Within);
        assert!(blocked_by(&world.against("squat"), "alone_without_pins"), "{:?}", world.against("squat"));
    }
}

#[test]
fn a_retired_lift_keeps_its_gap_though_it_is_done_once() {
    let mut world = World::on_offer("squat");
    world.add(role("squat", Role::Retire));
    world.wait(200);
    world.train_with(LiftSession::as_granted(name("squat"), World::sets(kg(20.0), 2, true)));
    world.wait(1);
    world.add(role("squat", Role::Train));
    world.day_report(DayClass::Within);
    let today = world.today("squat");
    assert!(says(&today, "layoff"), "{:?}", today.reasons);
    assert_eq!(today.load, Some(kg(20.0)));
}

#[test]
fn another_implement_and_back_gives_back_nothing_that_a_break_took() {
    let mut world = World::on_offer("squat");
    world.wait(200);
    world.passing_day("squat");
    let left = world.state().lift_state(&name("squat")).unwrap().grant().load();
    assert_eq!(left, kg(20.0));
    let mut bells = parameters();
    bells.lifts[0].implement = name("bells");
    bells.lifts[0].start.work.load = kg(8.0);
    set(&mut world, bells);
    set(&mut world, parameters());
    world.day_report(DayClass::Within);
    assert_eq!(world.today("squat").load, Some(left));
}

#[test]
fn the_morning_after_speaks_of_a_day_told_in_ever_so_many_sessions() {
    for by_number in [false, true] {
        let mut all = parameters();
        let others = (0..12).map(|at| lift(&format!("other {at}"), "shoulder", 30.0));
        all.lifts.extend(others);
        let mut world = World::new(all);
        world.passing_day("squat");
        world.day_report(DayClass::Within);
        world.train("squat", true);
        let squat = world.log.events.last().unwrap().sequence;
        for at in 0..12 {
            world.train(&format!("other {at}"), true);
        }
        world.wait(1);
        let pain = Some(vec![PainAnswer::plain(name("knee"), Pain::new(2).unwrap())]);
        world.add(if by_number {
            EventKind::NextDayReport(NextDayReport::new(squat).with_pain(pain))
        } else {
            EventKind::DayReport(DayReport::all_well(DayClass::Within).with_pain(pain))
        });
        let state = world.state();
        let last = *state.lift_state(&name("squat")).unwrap().now().sittings.last().unwrap();
        assert_eq!((last.session, last.outcome), (squat, Outcome::Fail), "by number: {by_number}");
    }
}

#[test]
fn a_second_flare_steps_back_a_lift_that_is_left_out_over_the_morning() {
    let flared = |left_out: bool| {
        let mut world = World::on_offer("squat");
        for at in 0..2 {
            world.wait(2);
            world.day_report(DayClass::Within);
            world.train("squat", true);
            if left_out && at == 1 {
                set(&mut world, without_squat());
            }
            world.wait(1);
            let pain = Some(vec![PainAnswer::plain(name("knee"), Pain::new(2).unwrap())]);
            world.add(EventKind::DayReport(DayReport::all_well(DayClass::Within).with_pain(pain)));
        }
        set(&mut world, parameters());
        world.state().lift_state(&name("squat")).unwrap().grant().load()
    };
    assert!(flared(false) < kg(60.0));
    assert!(flared(true) <= flared(false), "{} {}", flared(true), flared(false));
}

#[test]
fn sets_done_after_something_was_said_make_no_pass() {
    let mut world = World::new(parameters());
    world.day_report(DayClass::Within);
    world.train_with(LiftSession::as_granted(name("squat"), World::sets(kg(60.0), 1, true)));
    world.add(EventKind::DayReport(
        DayReport::all_well(DayClass::Within).with_asks(vec![bismar::sign::Ask::Palpitations]),
    ));
    world.train_with(LiftSession::as_granted(name("squat"), World::sets(kg(60.0), 1, true)));
    let state = world.state();
    let passed = |sitting: &bismar::progression::Sitting| sitting.outcome == Outcome::Pass;
    assert!(!state.lift_state(&name("squat")).unwrap().now().sittings.iter().any(passed));
}

#[test]
fn a_lighter_session_wipes_out_no_effort_that_was_too_much() {
    let trained = |light: bool| {
        let mut world = World::new(parameters());
        let mut train = |load: f64, left: u8| {
            world.day_report(DayClass::Within);
            let mut sets = World::sets(kg(load), 2, true);
            let effort = Effort::Rir(bismar::quantity::Rir::whole(left));
            sets.iter_mut().for_each(|set| set.effort = Some(effort));
            world.train_with(LiftSession::as_granted(name("squat"), sets));
            world.morning();
            world.wait(1);
        };
        for (load, left) in [(60.0, 3), (60.0, 1), (60.0, 1)] {
            train(load, left);
        }
        if light {
            train(40.0, 5);
        }
        train(60.0, 3);
        world.day_report(DayClass::Within);
        blocked_by(&world.against("squat"), "reserve_short")
    };
    assert!(trained(false) && trained(true));
}

#[test]
fn a_move_that_a_break_interrupts_is_not_given_back_by_one_pass() {
    let mut world = World::on_offer("squat");
    world.add(EventKind::AdvanceAccepted(Advance::new(name("squat"), name("coach"))));
    let status = |world: &World| world.state().lift_state(&name("squat")).unwrap().status().clone();
    assert_eq!(status(&world).as_str(), "consolidating");
    world.wait(15);
    world.passing_day("squat");
    let state = world.state();
    let lift = state.lift_state(&name("squat")).unwrap();
    assert!(lift.grant().load() <= kg(60.0), "{:?} {:?}", lift.grant(), lift.status());
}

/// A short break gives the load back on a day on which what comes before training was asked, and on no other.
#[test]
fn a_load_is_given_back_on_no_day_on_which_nobody_asked() {
    let mut world = World::new(parameters());
    for _ in 0..4 {
        world.passing_day("squat");
    }
    let before = world.state().lift_state(&name("squat")).unwrap().grant().load();
    world.wait(12);
    let mut asked = world.clone();
    asked.day_report(DayClass::Within);
    assert!(asked.today("squat").load < Some(before));
    asked.train("squat", true);
    world.train("squat", true);
    let load = |world: &World| world.state().lift_state(&name("squat")).unwrap().grant().load();
    assert_eq!(load(&asked), before);
    assert!(load(&world) < before);
}

/// Kept where it is and trained again, a move still has to be seen to hold.
#[test]
fn a_lift_that_is_kept_and_trained_again_has_its_move_still_to_be_seen() {
    let mut world = World::on_offer("squat");
    world.add(EventKind::AdvanceAccepted(Advance::new(name("squat"), name("coach"))));
    let status = |world: &World| world.state().lift_state(&name("squat")).unwrap().status().as_str();
    assert_eq!(status(&world), "consolidating");
    world.add(role("squat", Role::Maintain));
    world.add(role("squat", Role::Train));
    assert_eq!(status(&world), "consolidating");
    world.add(role("squat", Role::Maintain));
    world.train("squat", true);
    assert_eq!(status(&world), "maintaining");
}
