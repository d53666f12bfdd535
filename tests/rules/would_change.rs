//! Rule 16: what is said to change the answer does change it, and nothing unnamed is in its way.

use super::world::*;
use bismar::condition::DayClass;
use bismar::loading::{Disc, Stock};
use bismar::prescription::Change;
use bismar::progression::MoveOutlook;
use bismar::quantity::{Pain, Rir};
use bismar::record::*;

/// Does what a change says, as a coach would, for the squat of that world.
fn act(world: &mut World, change: &Change) {
    match change {
        Change::CoachAccepts | Change::NewerLibrary => {}
        Change::PassingSessions { count } => (0..*count).for_each(|_| world.passing_day("squat")),
        Change::GateOpens | Change::RecentSession | Change::SessionAsGranted => world.passing_day("squat"),
        Change::LearningSessions { count } => (0..*count).for_each(|_| world.passing_day("squat")),
        Change::NextMorningAnswer => world.every_morning(),
        Change::Days { count } => drop(world.wait(i32::from(*count))),
        Change::ClearSessions { count, .. } | Change::SteadySessions { count, .. } => {
            (0..*count).for_each(|_| world.passing_day("squat"))
        }
        Change::DayWithin => drop(world.wait(1)),
        Change::PainAnswer | Change::PassOnDayWithin => {
            world.wait(1);
            world.passing_day("squat");
        }
        Change::Clearance => world.clear(),
        Change::ClearanceAndSignOff => {
            world.wait(1);
            world.clear();
            world.sign_off(SignOffScope::Everything);
            world.sign_off(SignOffScope::Region(name("knee")));
        }
        Change::DayReport => world.day_report(DayClass::Within),
        Change::AskAnswered { ask } => {
            world.add(EventKind::AskAnswered(AskAnswered::new(*ask, name("clinic"), true)));
        }
        Change::ForgivingProof => {
            world.wait(2).day_report(DayClass::Within);
            world.train_with(LiftSession::as_granted(
                name("press"),
                World::sets(world.today("press").limit, 2, true),
            ));
            world.morning();
            world.wait(2);
        }
        Change::SmallerDiscs { up_to } => {
            let mut all = world.state().parameters().unwrap().clone();
            let added = Disc::new(kg(0.5), 8).unwrap().with_diameter(mm(120.0)).unwrap();
            let discs = all.stock.discs().iter().copied().chain([added]).collect();
            all.stock = Stock::new(discs).unwrap();
            assert!(*up_to >= kg(61.0), "a step of a kilogram lies within {up_to:?}");
            world.add(EventKind::ParametersChanged(Box::new(all)));
        }
        Change::PinsOrSpotter => {
            world.wait(1).day_report(DayClass::Within);
            let setup = Some(Setup::default().with_company(ByTheBar::Spotter));
            let sets = World::sets(world.today("squat").load.unwrap(), 2, true);
            world.train_with(LiftSession::as_granted(name("squat"), sets).with_setup(setup));
            world.morning();
        }
        Change::MoreInReserve { count } | Change::EffortSaid { count } => {
            (0..*count).for_each(|_| world.passing_day("squat"))
        }
        Change::UsualPainAgreed { region } => world.add(EventKind::UsualPainAgreed(UsualPain::new(
            region.clone(),
            Pain::new(2).unwrap(),
            name("coach"),
        ))),
        Change::OverrideEnds => {
            let (load, who) = (world.today("squat").granted.load(), name("coach"));
            let given = Override::new(name("squat"), load, who);
            world.add(EventKind::CoachOverride(given));
        }
        Change::BreakOver { until } => {
            let days = until.since(world.day) + 1;
            world.wait(days.max(0));
        }
        Change::BodyMass => world.add(EventKind::BodyMassRecorded(kg(80.0))),
        // Beside a step there is nothing to be done about these on the day itself.
        Change::MoreRepetitions
        | Change::CoachSetsOtherwise
        | Change::EasyWeekOver
        | Change::Sessions { .. }
        | Change::MoreTime
        | Change::WholeWork
        | Change::LeaveOutPartner { .. }
        | Change::Implement { .. } => {}
        other => panic!("no act for {other:?}"),
    }
}

fn asks(ask: Ask) -> EventKind {
    EventKind::DayReport(DayReport::all_well(DayClass::Within).with_asks(vec![ask]))
}

fn session(world: &mut World, change: impl FnOnce(&mut LiftSession), pain: Option<Vec<PainAnswer>>) {
    let load = world.today("squat").load.unwrap();
    let mut done = LiftSession::as_granted(name("squat"), World::sets(load, 2, true));
    change(&mut done);
    world.train_all(vec![done], pain);
}

/// Every situation by the code of what stands in the way.
fn situations() -> Vec<(&'static str, World)> {
    let offered = || World::on_offer("squat");
    let with = |change: fn(&mut World)| {
        let mut world = offered();
        change(&mut world);
        world
    };
    let unguarded = || {
        let mut all = parameters();
        all.lifts[0].over_the_body = true;
        let mut world = World::new(all);
        (0..4).for_each(|_| world.passing_day("squat"));
        world.day_report(DayClass::Within);
        let setup = Some(Setup::default().with_company(ByTheBar::Alone));
        session(&mut world, |done| done.setup = setup, Some(vec![]));
        world.morning();
        world.day_report(DayClass::Within);
        world
    };
    let coarse = || {
        let mut all = parameters();
        let disc =
            |mass: f64, across: f64| Disc::new(kg(mass), 4).unwrap().with_diameter(mm(across)).unwrap();
        all.stock = Stock::new(vec![disc(20.0, 450.0), disc(10.0, 325.0)]).unwrap();
        let mut world = World::new(all);
        (0..4).for_each(|_| world.passing_day("squat"));
        world.day_report(DayClass::Within);
        world
    };
    let paired = || {
        let mut all = parameters();
        all.pairs = vec![Pair::new(name("squat"), name("press")).with_ratio_cap(2.0)];
        let mut world = World::new(all);
        (0..4).for_each(|_| world.passing_day("squat"));
        world.day_report(DayClass::Within);
        world
    };
    vec![
        (
            "symptom_stop",
            with(|world| {
                world.add(EventKind::SymptomReport(SymptomReport::new(vec![StopSign::ChestPain])));
            }),
        ),
        ("pain_stop", with(|world| world.pain("knee", 7))),
        ("clearance_missing", {
            let mut world = offered();
            world.log.events.retain(|event| !matches!(event.kind, EventKind::ClearanceRecorded(_)));
            world
        }),
        (
            "clearance_after_illness",
            with(|world| {
                let from = world.day;
                world.add(EventKind::LayoffNoted(Layoff::new(from, LayoffReason::Ill)));
            }),
        ),
        ("asks_first", with(|world| world.add(asks(Ask::Fall)))),
        (
            "asks_not_asked",
            with(|world| {
                world.wait(1);
            }),
        ),
        (
            "day_unknown",
            with(|world| {
                world.wait(1);
            }),
        ),
        ("day_below", with(|world| world.day_report(DayClass::Below))),
        ("pain_block", with(|world| world.pain("knee", 3))),
        ("pain_not_asked", with(|world| session(world, |_| {}, None))),
        ("pass_provisional", with(|world| session(world, |_| {}, Some(vec![])))),
        (
            "not_at_grant",
            with(|world| {
                session(world, |done| done.place = Some(Place::at_rung(0)), Some(vec![]));
                world.morning();
                world.day_report(DayClass::Within);
            }),
        ),
        ("gate_not_open", {
            let mut world = World::new(parameters());
            world.passing_day("squat");
            world.day_report(DayClass::Within);
            world
        }),
        ("learning_not_done", {
            let mut all = parameters();
            all.lifts[0].learning_sessions = Some(4);
            let mut world = World::new(all);
            world.passing_day("squat");
            world.day_report(DayClass::Within);
            world
        }),
        (
            "stale",
            with(|world| {
                world.wait(23).day_report(DayClass::Within);
            }),
        ),
        ("never_trained", World::new(parameters())),
        (
            "reserve_short",
            with(|world| {
                for _ in 0..2 {
                    let hard = |done: &mut LiftSession| {
                        done.sets.iter_mut().for_each(|set| set.effort = Some(Effort::Rir(Rir::whole(0))));
                    };
                    world.wait(1).day_report(DayClass::Within);
                    session(world, hard, Some(vec![]));
                    world.morning();
                }
                world.day_report(DayClass::Within);
            }),
        ),
        (
            "consolidating",
            with(|world| {
                world.add(EventKind::AdvanceAccepted(Advance::new(name("squat"), name("coach"))));
            }),
        ),
        (
            "cooling_off",
            with(|world| {
                world.add(EventKind::AdvanceAccepted(Advance::new(name("squat"), name("coach"))));
            }),
        ),
        (
            "window_cap",
            with(|world| {
                world.add(EventKind::AdvanceAccepted(Advance::new(name("squat"), name("coach"))));
                (0..6).for_each(|_| world.passing_day("squat"));
                world.day_report(DayClass::Within);
            }),
        ),
        (
            "pain_persists",
            with(|world| {
                for score in [1, 2, 3] {
                    let pain = vec![PainAnswer::plain(name("knee"), Pain::new(score).unwrap())];
                    session(world, |_| {}, Some(pain));
                    world.wait(2);
                }
                world.day_report(DayClass::Within);
            }),
        ),
        ("alone_without_pins", unguarded()),
        ("override_in_force", with(|world| world.override_to("squat", 50.0, 90))),
        (
            "effort_not_said",
            with(|world| {
                for _ in 0..2 {
                    world.wait(1).day_report(DayClass::Within);
                    let unsaid = |done: &mut LiftSession| {
                        done.sets.iter_mut().for_each(|set| set.effort = None);
                    };
                    session(world, unsaid, Some(vec![]));
                    world.morning();
                }
                world.day_report(DayClass::Within);
            }),
        ),
        ("no_loadable_step", coarse()),
        ("pair_proof_missing", paired()),
    ]
}

#[test]
fn rule_16_each_blocker_goes_when_what_is_named_is_done() {
    for (code, world) in situations() {
        let against = world.against("squat");
        assert!(blocked_by(&against, code), "{code} is not in the way: {against:?}");
        let mut world = world;
        // Each round does everything that is named; doing takes days, so that the day's own questions come up again.
        for round in 0.. {
            let today = world.today("squat");
            if matches!(today.outlook, MoveOutlook::OnOffer { .. }) {
                break;
            }
            assert!(round < 6, "{code}: still {:?}; named {:?}", today.outlook, today.would_change);
            assert!(!today.would_change.is_empty(), "{code}: nothing is named beside {:?}", today.outlook);
            today.would_change.iter().for_each(|change| act(&mut world, change));
            world.wait(1).day_report(DayClass::Within);
        }
    }
}

/// The press is trained with pain in the shoulder; two days pass, and the questions of the day are asked.
fn hurt_the_press(world: &mut World) {
    let press = LiftSession::as_granted(name("press"), World::sets(kg(40.0), 2, true));
    let pain = vec![PainAnswer::plain(name("shoulder"), Pain::new(3).unwrap())];
    world.train_all(vec![press], Some(pain));
    world.morning();
    world.wait(2).day_report(DayClass::Within);
}

/// A press as the strict lift beside the squat, with a step of the squat on offer; the knee is the squat's alone.
fn beside_a_strict_press() -> World {
    let mut all = parameters();
    all.pairs = vec![Pair::new(name("press"), name("squat")).with_ratio_cap(2.0)];
    let mut world = World::new(all);
    (0..4).for_each(|_| world.passing_day("squat"));
    world.day_report(DayClass::Within);
    assert!(world.is_offered("squat"), "{:?}", world.against("squat"));
    world
}

/// The strict lift hurt, so the next session of the forgiving one is a step down: done as printed it shows nothing of the work
/// granted, and is none of those that have to pass.
#[test]
fn rule_16_after_pain_in_the_strict_lift_the_eased_session_is_counted_beside_the_passes() {
    let mut open = beside_a_strict_press();
    hurt_the_press(&mut open);
    // The same where the gate has to be opened anew.
    let mut closed = beside_a_strict_press();
    let other = BarChanged::new(name("other discs")).with_lift(Some(name("squat")));
    closed.add(EventKind::BarOrDiscsChanged(other));
    hurt_the_press(&mut closed);
    for (gate, mut world) in [("open", open), ("closed", closed)] {
        let against = world.against("squat");
        assert!(blocked_by(&against, "pair_pain"), "{gate}: {against:?}");
        let named = world.today("squat").would_change;
        let counts = named.iter().map(|change| match change {
            Change::PassingSessions { count } => *count,
            Change::ClearSessions { count, .. } | Change::Sessions { count } => u32::from(*count),
            _ => 0,
        });
        (0..counts.max().unwrap()).for_each(|_| world.passing_day("squat"));
        world.day_report(DayClass::Within);
        assert!(world.is_offered("squat"), "{gate}: named {named:?}, left {:?}", world.against("squat"));
    }
}

/// A day of training as printed, with that much pain in the knee before it, in it and on the morning after; three days pass.
fn aching_day(world: &mut World, score: u8) {
    let knee = || vec![PainAnswer::plain(name("knee"), Pain::new(score).unwrap())];
    world.add(EventKind::DayReport(DayReport::all_well(DayClass::Within).with_pain(knee())));
    let today = world.today("squat");
    let done = LiftSession::as_granted(name("squat"), World::sets(today.load.unwrap(), today.sets, true));
    world.train_all(vec![done], Some(knee()));
    let session = world.log.events.last().unwrap().sequence;
    world.wait(1).add(EventKind::NextDayReport(NextDayReport::new(session).with_pain(knee())));
    world.wait(2);
}

/// The session that is eased because the pain stays is none of those that have to pass; at the lightest load it is half of the
/// work, and the lift gets out.
#[test]
fn rule_16_after_pain_that_stays_the_eased_session_is_counted_beside_the_passes() {
    for load in [20.0, 60.0] {
        let mut all = parameters();
        all.lifts[0].start = Grant::new(Work::new(2, 5, kg(load))).with_place(Place::at_rung(0));
        all.lifts[0].step = Some(StepPolicy::SmallestLoadable);
        let three_in_a_row = bismar::gate::PassRun::new(9, 10, 3).unwrap();
        let requirement = bismar::gate::Requirement::PassRun(three_in_a_row);
        all.lifts[0].gate = bismar::gate::Gate::new(requirement).unwrap();
        let mut world = World::new(all);
        let (level, who) = (Pain::new(2).unwrap(), name("coach"));
        world.add(EventKind::UsualPainAgreed(UsualPain::new(name("knee"), level, who)));
        [0, 1, 2].into_iter().for_each(|score| aching_day(&mut world, score));
        let other = BarChanged::new(name("other discs")).with_lift(Some(name("squat")));
        world.add(EventKind::BarOrDiscsChanged(other));
        let asked = |world: &World| {
            let knee = vec![PainAnswer::plain(name("knee"), level)];
            let mut then = world.clone();
            then.add(EventKind::DayReport(DayReport::all_well(DayClass::Within).with_pain(knee)));
            then
        };
        let against = asked(&world).against("squat");
        assert!(blocked_by(&against, "pain_persists"), "{load}: {against:?}");
        let named = asked(&world).today("squat").would_change;
        let counts = named.iter().map(|change| match change {
            Change::PassingSessions { count } => *count,
            Change::ClearSessions { count, .. } | Change::SteadySessions { count, .. } => u32::from(*count),
            _ => 0,
        });
        let named_sessions = counts.max().unwrap();
        let mut done = 0;
        while !asked(&world).is_offered("squat") {
            assert!(
                done < named_sessions,
                "{load}: named {named:?}, left {:?}",
                asked(&world).against("squat")
            );
            aching_day(&mut world, 2);
            done += 1;
        }
        assert_eq!(done, named_sessions, "{load}: {named:?}");
    }
}

/// A break hides that the lift is still being learned.
#[test]
fn rule_16_behind_a_planned_break_the_learning_still_to_come_is_named() {
    for days in [None, Some(3)] {
        let mut all = parameters();
        all.lifts[0].learning_sessions = Some(4);
        let mut world = World::new(all);
        world.passing_day("squat");
        let to = days.map(|days| world.day.plus(days).unwrap());
        let layoff = Layoff::new(world.day, LayoffReason::Planned).with_to(to);
        world.add(EventKind::LayoffNoted(layoff));
        world.day_report(DayClass::Within);
        let against = world.against("squat");
        assert!(blocked_by(&against, "planned_break"), "{days:?}: {against:?}");
        let named = world.today("squat").would_change;
        assert!(named.contains(&Change::LearningSessions { count: 3 }), "{days:?}: {named:?}");
    }
}

#[test]
fn rule_16_nothing_is_named_that_is_not_in_the_way() {
    let world = World::on_offer("squat");
    assert_eq!(world.today("squat").would_change, [Change::CoachAccepts]);
}

#[test]
fn rule_16_a_refused_act_stays_visible_until_the_next_session() {
    let mut world = World::on_offer("squat");
    world.day_report(DayClass::Below);
    world.add(EventKind::AdvanceAccepted(Advance::new(name("squat"), name("coach"))));
    for _ in 0..3 {
        assert!(says(&world.today("squat"), "move_refused"));
        world.wait(1).day_report(DayClass::Within);
    }
    world.train("squat", true);
    assert!(!says(&world.today("squat"), "move_refused"));
}

/// Sessions that pass, as many as it takes until the way back is over.
fn passes_until_back(mut world: World) -> u32 {
    for passes in 0..10 {
        let state = world.state();
        let status = state.lift_state(&name("squat")).unwrap().status().as_str();
        if !["returning", "resting"].contains(&status) {
            return passes;
        }
        world.passing_day("squat");
    }
    panic!("{:?}", world.today("squat").reasons)
}

fn passes_named(world: &World) -> u32 {
    let named = world.today("squat").would_change;
    let passes = named.iter().find_map(|change| match change {
        Change::PassingSessions { count } => Some(*count),
        _ => None,
    });
    passes.unwrap_or_else(|| panic!("{named:?}"))
}

/// A squat of which half of the sets are enough for a session to tell its gate something, and one session opens it.
fn told_by_half() -> World {
    let mut all = parameters();
    let one = bismar::gate::Requirement::PassRun(bismar::gate::PassRun::new(4, 5, 1).unwrap());
    all.lifts[0].gate = bismar::gate::Gate::new(one).unwrap();
    let mut world = World::new(all);
    (0..3).for_each(|_| world.passing_day("squat"));
    world
}

/// A noted break that will have grown long by its last day: all the passes of the way back that comes then are named, and no more.
#[test]
fn rule_16_behind_a_long_break_all_passes_of_its_way_back_are_named() {
    for days in [20, 30, 50] {
        let mut world = told_by_half();
        let to = world.day.plus(days).unwrap();
        world.add(EventKind::LayoffNoted(Layoff::new(world.day, LayoffReason::Planned).with_to(to)));
        world.day_report(DayClass::Within);
        assert!(blocked_by(&world.against("squat"), "planned_break"), "{days}: {:?}", world.against("squat"));
        let named = passes_named(&world);
        world.wait(days + 1).day_report(DayClass::Within);
        world.train("squat", true);
        world.morning();
        world.wait(2);
        assert_eq!(named, 1 + passes_until_back(world), "{days}");
    }
}

/// A break on the way back: the passes before it do not count, so that as many are named as after the first break.
#[test]
fn rule_16_behind_a_break_on_the_way_back_its_passes_are_named_anew() {
    for until in [None, Some(2)] {
        let mut world = told_by_half();
        world.wait(22);
        world.passing_day("squat");
        assert_eq!(passes_until_back(world.clone()), 1, "one of two is done");
        let to = until.map(|days| world.day.plus(days).unwrap());
        world.add(EventKind::LayoffNoted(Layoff::new(world.day, LayoffReason::Planned).with_to(to)));
        world.day_report(DayClass::Within);
        assert!(blocked_by(&world.against("squat"), "planned_break"), "{:?}", world.against("squat"));
        let named = passes_named(&world);
        world.wait(3).day_report(DayClass::Within);
        if until.is_some() {
            // Over, and not trained since.
            assert!(blocked_by(&world.against("squat"), "after_break"), "{:?}", world.against("squat"));
            assert_eq!(passes_named(&world), named);
        }
        let first = if until.is_none() {
            // As nothing is printed within a break, whoever goes on does half the sets at the load granted.
            let load = world.today("squat").limit;
            world.train_with(LiftSession::as_granted(name("squat"), World::sets(load, 1, true)));
            world.morning();
            world.wait(2);
            1
        } else {
            0
        };
        assert_eq!((named, first + passes_until_back(world)), (2, 2), "{until:?}");
    }
}

/// Pain that stays eases the next session, and an eased session is no pass of the work granted: one that passes comes after it.
#[test]
fn rule_16_beside_pain_that_stays_the_pass_after_the_eased_session_is_named() {
    let mut world = World::on_offer("squat");
    let (level, who) = (Pain::new(2).unwrap(), name("coach"));
    world.add(EventKind::UsualPainAgreed(UsualPain::new(name("knee"), level, who)));
    [0, 1, 2].into_iter().for_each(|score| aching_day(&mut world, score));
    let knee = || vec![PainAnswer::plain(name("knee"), level)];
    world.add(EventKind::DayReport(DayReport::all_well(DayClass::Within).with_pain(knee())));
    let against = world.against("squat");
    assert!(blocked_by(&against, "pain_persists") && !blocked_by(&against, "gate_not_open"), "{against:?}");
    assert_eq!(passes_named(&world), 2, "the eased one, and one that passes");
    // Done as it is printed today, the lift is not at the work granted.
    aching_day(&mut world, 2);
    world.add(EventKind::DayReport(DayReport::all_well(DayClass::Within).with_pain(knee())));
    let against = world.against("squat");
    assert!(!blocked_by(&against, "pain_persists") && blocked_by(&against, "not_at_grant"), "{against:?}");
}

/// A strict squat and a forgiving press that share no region, both on that rung and proven.
fn pair_on(rung: u8) -> World {
    let mut all = parameters();
    all.pairs = vec![Pair::new(name("squat"), name("press")).with_ratio_cap(2.0)];
    for lift in &mut all.lifts {
        lift.start.place = Place::at_rung(rung);
    }
    let mut world = World::new(all);
    for _ in 0..4 {
        for id in ["press", "squat"] {
            world.passing_day(id);
        }
    }
    world.day_report(DayClass::Within);
    assert!(!blocked_by(&world.against("squat"), "pair_proof_missing"), "{:?}", world.against("squat"));
    world
}

/// A stop of both lifts of a pair: the forgiving one comes back on an easier rung, so that what it had shown is to be shown anew;
/// where it is on its easiest one already, its proof stands.
#[test]
fn rule_16_behind_a_stop_the_proof_that_the_forgiving_lift_loses_is_named() {
    for (rung, lost) in [(1, true), (0, false)] {
        let mut world = pair_on(rung);
        world.add(EventKind::SymptomReport(SymptomReport::new(vec![StopSign::ChestPain])));
        let named = world.today("squat").would_change;
        assert_eq!(named.contains(&Change::ForgivingProof), lost, "{rung}: {named:?}");
        world.clear();
        world.sign_off(SignOffScope::Everything);
        world.wait(1).day_report(DayClass::Within);
        assert_eq!(blocked_by(&world.against("squat"), "pair_proof_missing"), lost, "{rung}");
    }
    // Stopped alone, the strict lift finds it as it was.
    let mut world = pair_on(1);
    world.pain("knee", 8);
    assert!(!world.today("squat").would_change.contains(&Change::ForgivingProof));
}
