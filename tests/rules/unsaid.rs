//! What nobody said is taken as the more careful; what was said counts, wherever it was said.

use super::world::*;
use bismar::condition::DayClass;
use bismar::prescription::Verdict;
use bismar::quantity::Rir;
use bismar::reason::{Reason, Unasked};
use bismar::record::*;

#[test]
fn a_planned_break_is_not_trained_through() {
    let mut world = World::on_offer("squat");
    let (from, to) = (world.day, world.day.plus(6).unwrap());
    world.add(EventKind::LayoffNoted(Layoff::new(from, LayoffReason::Planned).with_to(to)));
    for days in [0, 2, 4] {
        world.wait(days).day_report(DayClass::Within);
        let today = world.today("squat");
        assert_eq!((today.verdict, today.load), (Verdict::Rest, None));
        assert!(says(&today, "planned_break"));
    }
    world.wait(1).day_report(DayClass::Within);
    assert!(world.today("squat").load.is_some(), "the day after");
}

fn session(world: &mut World, efforts: [Option<u8>; 2]) {
    world.day_report(DayClass::Within);
    let mut sets = World::sets(world.today("squat").load.unwrap(), 2, true);
    for (set, left) in sets.iter_mut().zip(efforts) {
        set.effort = left.map(|left| Effort::Rir(Rir::whole(left)));
    }
    world.train_with(LiftSession::as_granted(name("squat"), sets));
    world.morning();
    world.wait(2);
}

#[test]
fn effort_that_nobody_said_in_two_of_three_sessions_offers_nothing() {
    // Not said at all, or of one set only; one session too hard and one not said.
    for (first, second) in
        [([None, None], [None, None]), ([Some(3), None], [None, Some(3)]), ([Some(0), Some(3)], [None, None])]
    {
        let mut world = World::on_offer("squat");
        session(&mut world, first);
        world.day_report(DayClass::Within);
        assert!(world.is_offered("squat"), "once is a day");
        session(&mut world, second);
        world.day_report(DayClass::Within);
        assert!(blocked_by(&world.against("squat"), "effort_not_said"), "{:?}", world.against("squat"));
        session(&mut world, [Some(3), Some(3)]);
        session(&mut world, [Some(3), Some(3)]);
        world.day_report(DayClass::Within);
        assert!(world.is_offered("squat"), "{:?}", world.against("squat"));
    }
}

#[test]
fn a_set_too_hard_counts_though_another_says_nothing() {
    let mut world = World::on_offer("squat");
    (0..2).for_each(|_| session(&mut world, [Some(0), None]));
    world.day_report(DayClass::Within);
    assert!(blocked_by(&world.against("squat"), "reserve_short"));
}

#[test]
fn a_bar_over_the_body_of_which_nobody_said_who_takes_it_is_as_if_alone() {
    let mut all = parameters();
    all.lifts[0].over_the_body = true;
    let mut world = World::new(all);
    (0..4).for_each(|_| world.passing_day("squat"));
    world.day_report(DayClass::Within);
    let today = world.today("squat");
    assert!(blocked_by(&world.against("squat"), "rack_not_asked"));
    assert_eq!(today.reserve, Rir::whole(4));
    assert!(today.cautions.iter().any(|caution| caution.as_str() == "alone_without_pins"));
    let setup = Some(Setup::default().with_company(ByTheBar::Spotter));
    let sets = World::sets(kg(60.0), 2, true);
    world.train_with(LiftSession::as_granted(name("squat"), sets).with_setup(setup));
    world.morning();
    world.wait(1).day_report(DayClass::Within);
    assert!(world.is_offered("squat"), "{:?}", world.against("squat"));
    assert_eq!(world.today("squat").reserve, Rir::whole(3));
}

#[test]
fn pain_where_the_strict_lift_loads_reaches_its_partner_whoever_said_it() {
    let mut all = parameters();
    all.lifts[1] = lift("front", "back", 40.0);
    all.pairs = vec![Pair::new(name("front"), name("squat")).with_ratio_cap(2.0)];
    let mut world = World::new(all);
    (0..4).for_each(|_| world.passing_day("squat"));
    world.day_report(DayClass::Within);
    assert_eq!(world.today("squat").load, Some(kg(60.0)));
    world.pain("back", 4);
    let today = world.today("squat");
    assert_eq!((today.verdict, today.load), (Verdict::EaseOff, Some(kg(54.0))));
    assert!(says(&today, "pair_pain"));
}

/// Which question about pain is missing, where one is.
fn unasked(world: &World) -> Option<Unasked> {
    world.against("squat").iter().find_map(|reason| match reason {
        Reason::PainNotAsked { when } => Some(*when),
        _ => None,
    })
}

/// The sentence must not say of one day what is true of the other.
#[test]
fn rule_16_which_question_about_pain_nobody_asked_is_told() {
    let unasked_today = |world: &mut World| {
        let report = DayReport::all_well(DayClass::Within).with_pain(None);
        world.add(EventKind::DayReport(report));
    };
    let trained = |pain: Option<Vec<PainAnswer>>| {
        let mut world = World::on_offer("squat");
        world.train_all(vec![LiftSession::as_granted(name("squat"), World::sets(kg(60.0), 2, true))], pain);
        world.wait(2);
        world
    };
    assert_eq!(unasked(&World::new(parameters())), Some(Unasked::NoSessionYet));
    for (pain, today, missing) in [
        (Some(Vec::new()), true, None),
        (Some(Vec::new()), false, Some(Unasked::Today)),
        (None, true, Some(Unasked::LastSession)),
        (None, false, Some(Unasked::LastSessionAndToday)),
    ] {
        let mut world = trained(pain);
        if today {
            world.day_report(DayClass::Within)
        } else {
            unasked_today(&mut world)
        }
        assert_eq!(unasked(&world), missing);
    }
    // A lift that is new beside one that is trained: a session has asked, of another lift.
    let mut world = World::on_offer("press");
    world.wait(1);
    unasked_today(&mut world);
    assert!(blocked_by(&world.against("squat"), "never_trained"));
    assert_eq!(unasked(&world), Some(Unasked::Today));
}
