//! Rules 8, 12, 16 and 18: what is so is said for as long as it is so.

use bismar::condition::DayClass;
use bismar::quantity::Pain;
use bismar::reason::Reason;
use bismar::record::*;

use crate::world::*;

fn gap_and_row(world: &World) -> Option<(u16, u8)> {
    world.today("squat").reasons.iter().find_map(|reason| match reason {
        Reason::Layoff { gap, row, .. } => Some((*gap, *row)),
        _ => None,
    })
}

#[test]
fn rule_18_a_planned_break_on_a_way_back_hides_neither_gap_nor_row() {
    let mut world = World::of(Lifter::new(name("ageless")), parameters());
    world.passing_day("squat");
    world.wait(27).day_report(DayClass::Within);
    let row = gap_and_row(&world);
    assert_eq!(row.map(|(gap, _)| gap), Some(30));
    for clean in [true, false] {
        world.train("squat", clean);
        world.morning();
        world.wait(2).day_report(DayClass::Within);
    }
    assert_eq!((world.today("squat").status.as_str(), gap_and_row(&world)), ("returning", row));
    let (from, to) = (world.day, world.day.plus(3).unwrap());
    world.add(EventKind::LayoffNoted(Layoff::new(from, LayoffReason::Planned).with_to(to)));
    assert_eq!(gap_and_row(&world), row, "within the break");
    world.wait(4).day_report(DayClass::Within);
    let today = world.today("squat");
    assert!(says(&today, "after_break"), "{:?}", today.reasons);
    assert_eq!(gap_and_row(&world), row, "after it");
    assert!(says(&today, "age_unknown"), "{:?}", today.reasons);
}

/// Weighed every so many days, falling evenly from 90 kg by a fifth of a kilogram a week: of a half-year that is never less than
/// a twentieth.
#[test]
fn rule_12_a_fall_in_body_mass_is_said_for_as_long_as_it_goes_on() {
    for every in [1, 3, 7, 14] {
        let mut world = World::new(parameters());
        let start = world.day;
        while world.day.since(start) <= 60 * 7 {
            let days = world.day.since(start);
            let mass = 90.0 - 0.2 * f64::from(days) / 7.0;
            world.add(EventKind::BodyMassRecorded(
                bismar::quantity::Mass::from_kg((mass * 100.0).round() / 100.0).unwrap(),
            ));
            // After half a year and what lies between two weighings.
            if days > 183 {
                let fallen = world.state().fallen_mass(world.day);
                assert!(fallen.is_some(), "every {every} days: nothing on day {days}");
            }
            world.wait(every);
        }
        let kept = bismar::progression::StoredState::from(&world.state());
        assert!(bismar::value::Value::write(&kept).unwrap().to_json().len() < 20_000);
    }
}

fn refused_step() -> World {
    let mut world = World::new(parameters());
    world.train("squat", true);
    world.add(EventKind::AdvanceAccepted(Advance::new(name("squat"), name("coach"))));
    assert!(says(&world.today("squat"), "move_refused"));
    world
}

#[test]
fn rule_16_a_refused_act_is_said_until_the_next_session_whatever_else_is_taken() {
    let to = Grant::new(Work::new(2, 5, kg(50.0))).with_place(Place::at_rung(1));
    let mut moved = refused_step();
    moved.add(EventKind::VariantChanged(Move::new(name("squat"), to, name("coach"))));
    let mut eased = refused_step();
    eased.override_to("squat", 50.0, 3);
    let mut overruled = World::on_offer("squat");
    overruled.add(EventKind::CoachOverride(Override::new(name("squat"), kg(70.0), name("coach"))));
    let mut stepped = overruled.clone();
    overruled.override_to("squat", 70.0, 3);
    stepped.add(EventKind::AdvanceAccepted(Advance::new(name("squat"), name("coach"))));
    assert_eq!(stepped.today("squat").status.as_str(), "consolidating");
    for (mut world, code, why) in [
        (moved, "move_refused", "a move by hand"),
        (eased, "move_refused", "a lower load"),
        (overruled, "override_refused", "an override with its reason"),
        (stepped, "override_refused", "a step"),
    ] {
        assert!(says(&world.today("squat"), code), "after {why}: {:?}", world.today("squat").reasons);
        world.wait(1).day_report(DayClass::Within);
        assert!(says(&world.today("squat"), code), "the day after {why}");
        world.train("squat", true);
        assert!(!says(&world.today("squat"), code), "after the session that came after {why}");
    }
}

/// Whatever score a policy lets block, pain that stands at 3 or more for three days of training brings the note.
#[test]
fn rule_08_pain_that_stands_at_three_brings_the_note_under_any_policy() {
    for from in [3, 4, 5] {
        let mut all = parameters();
        all.policy.pain_block_from = from;
        let mut world = World::new(all);
        (0..4).for_each(|_| world.passing_day("squat"));
        for _ in 0..3 {
            let knee = PainAnswer::plain(name("knee"), Pain::new(3).unwrap());
            world.day_report(DayClass::Within);
            let load = world.today("squat").load.unwrap();
            let done = LiftSession::as_granted(name("squat"), World::sets(load, 2, true));
            world.train_all(vec![done], Some(vec![knee]));
            world.wait(3);
        }
        world.day_report(DayClass::Within);
        let today = world.today("squat");
        assert!(blocked_by(&world.against("squat"), "pain_persists"), "{from}: {:?}", world.against("squat"));
        let note = today.cautions.iter().any(|caution| caution.as_str() == "see_clinician_first");
        assert!(note, "{from}: {:?}", today.cautions);
    }
}
