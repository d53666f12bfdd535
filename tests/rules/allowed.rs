//! What was allowed above the granted load, and when it ends; what else stands in the way where a lift is at its top.

use super::world::*;
use bismar::condition::DayClass;
use bismar::prescription::Verdict;
use bismar::progression::MoveOutlook;
use bismar::quantity::Pain;
use bismar::reason::Reason;
use bismar::record::*;

/// From 60 kg on the easier rung a step goes to the full one at four fifths, 48 kg.
#[test]
fn what_was_allowed_is_no_leave_to_go_above_the_load_that_a_move_leads_to() {
    let mut all = parameters();
    all.lifts[0].moving = Dimension::Variant;
    all.lifts[0].start = Grant::new(Work::new(2, 5, kg(60.0))).with_place(Place::at_rung(0));
    let mut world = World::new(all);
    (0..4).for_each(|_| world.passing_day("squat"));
    world.day_report(DayClass::Within);
    // Eased from 60 kg to 55 kg: no move is taken beside it, and it does not outlast its end.
    world.override_to("squat", 55.0, 5);
    let accept = || EventKind::AdvanceAccepted(Advance::new(name("squat"), name("coach")));
    world.add(accept());
    let today = world.today("squat");
    assert_eq!((today.place.rung, today.granted.load(), today.limit), (0, kg(60.0), kg(55.0)));
    world.add(EventKind::CoachOverride(Override::new(name("squat"), kg(60.0), name("coach"))));
    world.add(accept());
    let today = world.today("squat");
    assert_eq!((today.place.rung, today.granted.load()), (1, kg(48.0)));
    assert_eq!((today.limit, today.load), (kg(48.0), Some(kg(48.0))));
}

/// A lift that was never trained has no break to come back from, and yet nothing is left of what was allowed to
/// somebody well.
#[test]
fn an_illness_ends_what_was_allowed_above_the_grant_of_a_lift_that_was_never_trained() {
    let mut world = World::new(parameters());
    world.override_to("press", 60.0, 30);
    world.day_report(DayClass::Within);
    assert_eq!(world.today("press").limit, kg(60.0));
    let from = world.day;
    world.add(EventKind::LayoffNoted(Layoff::new(from, LayoffReason::Ill)));
    world.wait(1).clear();
    assert_eq!(world.today("press").limit, kg(40.0));
}

#[test]
fn a_range_that_a_clearance_rules_out_stands_in_the_way_also_where_there_is_nowhere_to_go() {
    let mut all = parameters();
    (all.lifts[0].moving, all.lifts[0].ranges) = (Dimension::Range, vec![mm(300.0), mm(400.0)]);
    all.lifts[0].start.place.range = 1;
    let mut world = World::new(all);
    world.add(EventKind::ClearanceRecorded(
        Clearance::new(ClearanceStatus::ClearedWithLimits, name("clinic"))
            .with_limits(vec![ClearanceLimits::default().with_range(mm(300.0))]),
    ));
    let against = world.against("squat");
    assert!(blocked_by(&against, "at_top") && blocked_by(&against, "clearance_range"), "{against:?}");
}

/// A pain that is new counts, whatever its score: the session of the same day is none of the clear ones to come.
#[test]
fn what_was_unusual_before_training_makes_its_day_no_clear_one() {
    let mut world = World::on_offer("squat");
    let level = Pain::new(2).unwrap();
    let who = name("coach");
    world.add(EventKind::UsualPainAgreed(UsualPain::new(name("knee"), level, who)));
    let needed = |world: &World| world.state().region(&name("knee")).unwrap().clear_needed;
    for features in [Some(vec![PainFeature::New]), None] {
        let mut world = world.clone();
        let score = Pain::new(1).unwrap();
        world.add(EventKind::PainReport(PainAnswer::plain(name("knee"), score).with_features(features)));
        assert_eq!(needed(&world), 2);
        world.train("squat", true);
        assert_eq!(needed(&world), 2);
        world.wait(2);
        world.train("squat", true);
        assert_eq!(needed(&world), 1);
    }
}

/// Seven days from one session to the next are how a lift is trained once a week, and no break.
#[test]
fn a_lift_that_is_trained_once_a_week_is_eased_in_an_easy_week() {
    for (days, eased) in [(6, true), (7, true), (8, false), (9, false)] {
        let mut world = World::new(parameters());
        world.train("squat", true);
        world.wait(days);
        let plan = Plan::of([name("squat")]).with_easy_week(true);
        let today = world.planned(plan);
        assert_eq!(says(&today, "easy_week"), eased, "{days} days: {:?}", today.reasons);
        assert_eq!(today.verdict == Verdict::EaseOff, eased, "{days} days");
        let off = today.reasons.iter().find_map(|reason| match reason {
            Reason::BreakCounts { days } => Some(i32::from(*days)),
            _ => None,
        });
        assert_eq!(off, (!eased).then_some(days - 1), "full days without training");
    }
}

/// Where the step is not for today, no reason says that it waits.
#[test]
fn no_reason_calls_a_step_on_offer_that_is_not_for_today() {
    let world = World::on_offer("squat");
    assert!(says(&world.today("squat"), "move_on_offer"));
    let mut hurts = world.clone();
    hurts.pain("knee", 1);
    let easy = Plan::of([name("squat")]).with_easy_week(true);
    for (why, today) in [("pain", hurts.today("squat")), ("an easy week", world.planned(easy))] {
        assert!(matches!(today.outlook, MoveOutlook::Blocked { .. }), "{why}");
        assert!(!says(&today, "move_on_offer"), "{why}: {:?}", today.reasons);
        assert!(says(&today, "holding"), "{why}: {:?}", today.reasons);
    }
    let decision = hurts.state().decide(hurts.day).unwrap().remove(0);
    assert!(decision.reasons.iter().all(|reason| reason.code() != "move_on_offer"), "{:?}", decision.reasons);
    assert!(decision.expires.is_some(), "the step that was earned is not lost");
}
