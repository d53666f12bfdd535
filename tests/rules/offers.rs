//! Rules 4, 5, 7, 8, 9 and 10: when a step is on offer and when it is not.

use super::world::*;
use bismar::condition::DayClass;
use bismar::progression::MoveOutlook;
use bismar::quantity::{Pain, Rir};
use bismar::record::*;

#[test]
fn rule_04_a_session_that_waits_for_its_morning_permits_nothing_whatever_it_came_to() {
    for clean in [true, false] {
        let mut world = World::on_offer("squat");
        world.train("squat", clean);
        assert!(blocked_by(&world.against("squat"), "pass_provisional"), "clean: {clean}");
    }
}

#[test]
fn rule_05_two_sessions_of_one_day_are_one() {
    let mut once = World::new(parameters());
    let mut twice = World::new(parameters());
    for _ in 0..2 {
        once.passing_day("squat");
        twice.day_report(DayClass::Within);
        twice.train("squat", true);
        twice.train("squat", true);
        twice.morning();
        twice.wait(2);
    }
    let status = |world: &World| {
        let state = world.state();
        let lift = state.lift_state(&name("squat")).unwrap();
        (lift.status().clone(), lift.now().calibration, lift.now().here.0)
    };
    assert_eq!(status(&once), status(&twice));
    // A second session that fails spoils the day that the first had passed.
    let mut spoilt = World::on_offer("squat");
    spoilt.train("squat", true);
    spoilt.train("squat", false);
    spoilt.morning();
    spoilt.day_report(DayClass::Within);
    assert!(!spoilt.is_offered("squat"));
}

#[test]
fn rule_05_a_day_is_one_clear_day_however_many_sessions_it_had() {
    let mut world = World::on_offer("squat");
    world.pain("knee", 3);
    let needed = |world: &World| world.state().region(&name("knee")).unwrap().clear_needed;
    assert_eq!(needed(&world), 2);
    world.wait(2);
    world.train("squat", true);
    world.train("squat", true);
    assert_eq!(needed(&world), 1);
}

fn paired() -> Parameters {
    let mut all = parameters();
    all.lifts[1].regions = vec![name("knee")];
    all.pairs = vec![Pair::new(name("press"), name("squat"))];
    all.policy.region_moves = 4;
    all
}

#[test]
fn rule_07_the_lifts_of_a_pair_on_one_day_get_no_step() {
    let mut world = World::new(paired());
    for _ in 0..4 {
        world.day_report(DayClass::Within);
        world.train("squat", true);
        world.morning();
        world.wait(3);
    }
    world.day_report(DayClass::Within);
    assert!(world.is_offered("squat"));
    let together = Plan::of([name("squat"), name("press")]);
    let today = world.planned(together);
    assert!(says(&today, "pair_together"));
    assert!(matches!(today.outlook, MoveOutlook::Blocked { ref by, .. } if blocked_by(by, "pair_together")));
    // Too little rest after the partner says so too, with or without a plan for both.
    world.wait(1).day_report(DayClass::Within);
    let done = World::sets(kg(40.0), 2, true);
    world.train_with(LiftSession::as_granted(name("press"), done));
    world.morning();
    world.day_report(DayClass::Within);
    assert!(blocked_by(&world.against("squat"), "pair_rest"));
}

#[test]
fn rule_08_pain_that_rises_or_stays_brings_the_clinician_and_blocks() {
    for scores in [[1, 2, 3], [3, 3, 3], [4, 3, 4]] {
        let mut world = World::on_offer("squat");
        for score in scores {
            let load = world.today("squat").load.unwrap();
            let pain = vec![PainAnswer::plain(name("knee"), Pain::new(score).unwrap())];
            world.train_all(
                vec![LiftSession::as_granted(name("squat"), World::sets(load, 2, true))],
                Some(pain),
            );
            world.wait(3);
        }
        world.day_report(DayClass::Within);
        let today = world.today("squat");
        assert!(says(&today, "pain_persists"), "{scores:?}");
        assert!(today.cautions.iter().any(|caution| caution.as_str() == "see_clinician_first"), "{scores:?}");
        assert!(blocked_by(&world.against("squat"), "pain_persists"), "{scores:?}");
    }
    let mut settles = World::on_offer("squat");
    for score in [2, 1, 2] {
        let load = settles.today("squat").load.unwrap();
        let pain = vec![PainAnswer::plain(name("knee"), Pain::new(score).unwrap())];
        settles
            .train_all(vec![LiftSession::as_granted(name("squat"), World::sets(load, 2, true))], Some(pain));
        settles.wait(3);
    }
    settles.day_report(DayClass::Within);
    assert!(!says(&settles.today("squat"), "pain_persists"));
}

#[test]
fn rule_09_too_little_in_reserve_in_two_of_three_sessions_offers_nothing() {
    let hard = |world: &mut World| {
        world.day_report(DayClass::Within);
        let mut sets = World::sets(world.today("squat").load.unwrap(), 2, true);
        sets.iter_mut().for_each(|set| set.effort = Some(Effort::Rir(Rir::whole(0))));
        world.train_with(LiftSession::as_granted(name("squat"), sets));
        world.morning();
        world.wait(2);
    };
    let mut world = World::on_offer("squat");
    hard(&mut world);
    world.day_report(DayClass::Within);
    assert!(world.is_offered("squat"), "once is a day: {:?}", world.against("squat"));
    hard(&mut world);
    world.day_report(DayClass::Within);
    assert!(blocked_by(&world.against("squat"), "reserve_short"));
}

#[test]
fn rule_10_good_sessions_keep_renewing_the_offer() {
    let mut world = World::on_offer("squat");
    for week in 0..8 {
        world.passing_day("squat");
        world.wait(4).day_report(DayClass::Within);
        assert!(world.is_offered("squat"), "week {week}: {:?}", world.against("squat"));
    }
}

#[test]
fn rule_10_a_lighter_or_unscored_last_session_leaves_no_offer() {
    let lighter = LiftSession::as_granted(name("squat"), World::sets(kg(50.0), 2, true));
    let mut unscored = LiftSession::as_granted(name("squat"), World::sets(kg(60.0), 2, true));
    unscored.sets.iter_mut().for_each(|set| set.marks = None);
    let elsewhere =
        LiftSession::as_granted(name("squat"), World::sets(kg(60.0), 2, true)).with_place(Place::at_rung(0));
    for (done, code) in [(lighter, "not_at_grant"), (unscored, "not_scored"), (elsewhere, "not_at_grant")] {
        let mut world = World::on_offer("squat");
        world.train_with(done);
        world.morning();
        world.wait(1).day_report(DayClass::Within);
        assert!(!world.is_offered("squat"), "{code}");
        assert!(says(&world.today("squat"), code), "{code}");
        // One session as it was meant brings the offer back.
        world.passing_day("squat");
        world.day_report(DayClass::Within);
        assert!(world.is_offered("squat"), "{code}: {:?}", world.against("squat"));
    }
}

#[test]
fn rule_10_no_offer_with_fever_in_an_easy_week_or_below_the_usual() {
    let mut fever = World::on_offer("squat");
    let asks = Some(vec![Ask::Fever]);
    fever.add(EventKind::DayReport(DayReport::all_well(DayClass::Within).with_asks(asks)));
    assert!(blocked_by(&fever.against("squat"), "asks_first"));
    let easy = World::on_offer("squat");
    // The last session lies three days back: no break that would count as an easy week.
    let plan = Plan::of([name("squat")]).with_easy_week(true);
    let outlook = easy.planned(plan).outlook;
    assert!(
        matches!(outlook, MoveOutlook::Blocked { ref by, .. } if blocked_by(by, "easy_week")),
        "{outlook:?}"
    );
    let mut below = World::on_offer("squat");
    below.day_report(DayClass::Below);
    assert!(blocked_by(&below.against("squat"), "day_below"));
    // Nor is one decided beside the session, and one that is asked for all the same is refused.
    let granted = |world: &World| world.today("squat").granted;
    for (mut world, code) in [(fever, "asks_first"), (below, "day_below")] {
        let decided = world.state().decide(world.day).unwrap();
        let squat = decided.into_iter().find(|decision| decision.lift == name("squat")).unwrap();
        let MoveOutlook::Blocked { by, .. } = squat.outlook else { panic!("{code}: decided as on offer") };
        assert!(blocked_by(&by, code), "{by:?}");
        let before = granted(&world);
        world.add(EventKind::AdvanceAccepted(Advance::new(name("squat"), name("coach"))));
        assert_eq!(granted(&world), before, "{code}");
        assert!(says(&world.today("squat"), "move_refused"), "{code}");
    }
}

#[test]
fn a_session_as_printed_counts_though_the_load_cannot_be_made_to_the_gram() {
    let mut world = World::granted_what_is_no_longer_made();
    // The day's load is printed as 60 and written down as 60.2, or as 132 lb (59.87 kg).
    for written in [kg(60.2), bismar::quantity::Mass::from_lb(132.0).unwrap(), kg(60.0), kg(60.0)] {
        world.day_report(DayClass::Within);
        world.train_with(LiftSession::as_granted(name("squat"), World::sets(written, 2, true)));
        world.morning();
        world.wait(2);
    }
    world.day_report(DayClass::Within);
    assert!(world.is_offered("squat"), "{:?}", world.against("squat"));
}

/// Two sessions of the squat that left so many where so many were asked for; whether a step is on offer after them.
fn offered_after(asked: Option<u8>, left: u8) -> bool {
    let mut world = World::on_offer("squat");
    for _ in 0..2 {
        world.day_report(DayClass::Within);
        let mut sets = World::sets(world.today("squat").load.unwrap(), 2, true);
        sets.iter_mut().for_each(|set| set.effort = Some(Effort::Rir(Rir::whole(left))));
        let done = LiftSession::as_granted(name("squat"), sets).with_reserve_asked(asked.map(Rir::whole));
        world.train_with(done);
        world.morning();
        world.wait(2);
    }
    world.day_report(DayClass::Within);
    let against = world.against("squat");
    assert_eq!(world.is_offered("squat"), !blocked_by(&against, "reserve_short"), "{against:?}");
    world.is_offered("squat")
}

/// The policy asks for 2 for a step, and nobody may ask for less than 1 without an override.
#[test]
fn rule_09_what_was_left_is_held_against_what_was_asked() {
    assert!(!offered_after(Some(3), 2), "less than the three that were asked for");
    assert!(offered_after(Some(3), 3));
    assert!(offered_after(Some(1), 1), "as much as was asked for");
    assert!(!offered_after(Some(1), 0));
    assert!(!offered_after(Some(0), 0), "below the floor of the policy");
    // Where nobody wrote it down what was printed stands: three.
    assert!(offered_after(None, 3));
    assert!(!offered_after(None, 2));
}

/// Both lifts were done in two parts on one day, each part with its own ask.
#[test]
fn rule_09_each_part_of_a_day_is_held_against_its_own_ask() {
    let mut world = World::on_offer("squat");
    for _ in 0..2 {
        world.day_report(DayClass::Within);
        for (asked, left) in [(4, 3), (1, 3)] {
            let mut sets = World::sets(kg(60.0), 1, true);
            sets.iter_mut().for_each(|set| set.effort = Some(Effort::Rir(Rir::whole(left))));
            let part = LiftSession::as_granted(name("squat"), sets);
            world.train_with(part.with_reserve_asked(Rir::whole(asked)));
        }
        world.morning();
        world.wait(2);
    }
    world.day_report(DayClass::Within);
    assert!(blocked_by(&world.against("squat"), "reserve_short"), "{:?}", world.against("squat"));
}

#[test]
fn rule_09_holds_beside_an_effort_cap_in_the_gate_too() {
    let run = bismar::gate::Requirement::PassRun(bismar::gate::PassRun::new(9, 10, 2).unwrap());
    let all_of = bismar::gate::Requirement::All(vec![run, bismar::gate::Requirement::EffortCap]);
    let mut all = parameters();
    all.lifts[0].gate = bismar::gate::Gate::new(all_of).unwrap();
    let mut world = World::new(all);
    (0..4).for_each(|_| world.passing_day("squat"));
    for left in [1, 1, 3] {
        world.day_report(DayClass::Within);
        let mut sets = World::sets(kg(60.0), 2, true);
        sets.iter_mut().for_each(|set| set.effort = Some(Effort::Rir(Rir::whole(left))));
        world.train_with(LiftSession::as_granted(name("squat"), sets));
        world.morning();
        world.wait(2);
    }
    world.day_report(DayClass::Within);
    assert!(blocked_by(&world.against("squat"), "reserve_short"), "{:?}", world.against("squat"));
}

#[test]
fn rule_07_neither_lift_of_a_pair_on_one_day_gets_a_step() {
    let mut world = World::new(paired());
    for _ in 0..4 {
        for id in ["squat", "press"] {
            world.day_report(DayClass::Within);
            world.train(id, true);
            world.morning();
            world.wait(3);
        }
    }
    world.day_report(DayClass::Within);
    let together = || Plan::of([name("squat"), name("press")]);
    let lifts =
        bismar::prescription::next_session_from(&world.state(), &together(), world.day).unwrap().lifts;
    for lift in lifts {
        assert!(
            matches!(lift.outlook, MoveOutlook::Blocked { ref by, .. } if blocked_by(by, "pair_together")),
            "{:?}",
            lift.outlook
        );
    }
}

/// Two sessions on one day of a way back are one pass, and one of the sessions with half the sets; so they are where something was
/// told between them and each is judged by itself.
#[test]
fn rule_05_two_sessions_of_a_day_on_the_way_back_are_one() {
    let back = |sessions: u8, parted: bool| {
        let mut world = World::on_offer("squat");
        world.wait(45).day_report(DayClass::Within);
        for session in 0..sessions {
            if parted && session > 0 {
                world.add(EventKind::AdvanceDeclined(Advance::new(name("squat"), name("coach"))));
            }
            world.train("squat", true);
        }
        world.morning();
        world.wait(2).day_report(DayClass::Within);
        let state = world.state();
        let now = state.lift_state(&name("squat")).unwrap().now().clone();
        (now.status, now.half_sessions, now.here.0)
    };
    assert_eq!(back(1, false), back(2, false));
    assert_eq!(back(1, false), back(2, true));
    assert_eq!(back(1, false), back(3, true));
}

#[test]
fn rule_08_pain_of_three_to_five_prints_how_far_to_go() {
    for score in [3, 4, 5] {
        let mut world = World::on_offer("squat");
        world.pain("knee", score);
        let said = bismar::text::Words::of(&parameters()).lift_line(&world.today("squat"));
        assert!(said.contains("ease off"), "{said}");
        let plan = Plan::of([name("squat")]);
        let session = bismar::prescription::next_session_from(&world.state(), &plan, world.day).unwrap();
        let sheet = bismar::text::Words::of(&parameters()).session(&session).to_string();
        assert!(sheet.contains("lower until 2 or less, else stop this lift"), "{sheet}");
    }
}
