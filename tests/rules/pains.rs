//! Rule 8, by whomever and whenever pain was told: before training, in a report of its own, after it, and at an agreed usual
//! level.

use super::world::*;
use bismar::condition::DayClass;
use bismar::prescription::Verdict;
use bismar::quantity::Pain;
use bismar::record::*;

fn knee(score: u8) -> Vec<PainAnswer> {
    vec![PainAnswer::plain(name("knee"), Pain::new(score).unwrap())]
}

fn squat_at_60() -> LiftSession {
    LiftSession::as_granted(name("squat"), World::sets(kg(60.0), 2, true))
}

/// How a host asks about pain on a day of training.
#[derive(Clone, Copy, Debug)]
enum Told {
    /// Before training, and the session asks again: by then there is none.
    BeforeAndNoneInIt,
    /// Before training alone: the session asks nothing.
    BeforeAlone,
    /// In a report of its own, after a session that had none.
    AfterIt,
}

fn day_with(world: &mut World, told: Told, score: u8) {
    let report = DayReport::all_well(DayClass::Within).with_pain(knee(score));
    match told {
        Told::BeforeAndNoneInIt => {
            world.add(EventKind::DayReport(report));
            world.train_all(vec![squat_at_60()], Some(Vec::new()));
        }
        Told::BeforeAlone => {
            world.add(EventKind::DayReport(report));
            world.train_all(vec![squat_at_60()], None);
        }
        Told::AfterIt => {
            world.day_report(DayClass::Within);
            world.train_all(vec![squat_at_60()], Some(Vec::new()));
            world.pain("knee", score);
        }
    }
}

#[test]
fn rule_08_pain_counts_in_whatever_way_it_was_told_on_a_day_of_training() {
    let mut uncounted = Vec::new();
    for told in [Told::BeforeAndNoneInIt, Told::BeforeAlone, Told::AfterIt] {
        for scores in [[1, 2, 3], [3, 3, 3], [0, 1, 2]] {
            let mut world = World::on_offer("squat");
            for score in scores {
                world.wait(3);
                day_with(&mut world, told, score);
            }
            world.wait(3).day_report(DayClass::Within);
            let cautions = world.today("squat").cautions;
            let sent = cautions.iter().any(|caution| caution.as_str() == "see_clinician_first");
            if !sent || !blocked_by(&world.against("squat"), "pain_persists") {
                uncounted.push((told, scores));
            }
        }
    }
    assert!(uncounted.is_empty(), "{uncounted:?}");
}

/// That it did not hurt before training says nothing of the training itself, of which nobody asked.
#[test]
fn rule_08_a_session_that_nobody_asked_about_ends_no_row_of_pain() {
    let mut world = World::on_offer("squat");
    for _ in 0..3 {
        world.wait(3);
        day_with(&mut world, Told::BeforeAlone, 3);
    }
    world.wait(3);
    day_with(&mut world, Told::BeforeAlone, 0);
    world.wait(3).day_report(DayClass::Within);
    assert!(blocked_by(&world.against("squat"), "pain_persists"), "{:?}", world.against("squat"));
}

/// A day on which pain of a region was told that nothing loaded is no day of training of it.
#[test]
fn rule_08_days_without_training_are_not_counted() {
    let mut world = World::on_offer("squat");
    for score in [1, 2, 3] {
        world.wait(2).pain("knee", score);
    }
    world.wait(2).day_report(DayClass::Within);
    assert!(!blocked_by(&world.against("squat"), "pain_persists"));
}

/// Three days of training with that much pain in the knee, also on the mornings after.
fn standing_at(world: &mut World, score: u8) {
    for _ in 0..3 {
        world.add(EventKind::DayReport(DayReport::all_well(DayClass::Within).with_pain(knee(score))));
        let load = world.today("squat").load.unwrap();
        let done = LiftSession::as_granted(name("squat"), World::sets(load, 2, true));
        world.train_all(vec![done], Some(knee(score)));
        world.wait(3);
    }
    world.add(EventKind::DayReport(DayReport::all_well(DayClass::Within).with_pain(knee(score))));
}

fn agreed(world: &mut World, level: u8) {
    let usual = UsualPain::new(name("knee"), Pain::new(level).unwrap(), name("clinic")).with_clinician(true);
    world.add(EventKind::UsualPainAgreed(usual));
}

#[test]
fn rule_08_pain_that_stands_at_the_level_agreed_with_a_clinician_is_the_usual_and_no_news() {
    let mut world = World::on_offer("squat");
    agreed(&mut world, 3);
    standing_at(&mut world, 3);
    let today = world.today("squat");
    assert_eq!(today.verdict, Verdict::Train, "{:?}", today.reasons);
    assert!(!says(&today, "pain_persists"));
    assert!(world.is_offered("squat"), "steady at the usual level: {:?}", world.against("squat"));

    // Above the agreed level it is news.
    let mut above = World::on_offer("squat");
    agreed(&mut above, 2);
    standing_at(&mut above, 3);
    assert!(blocked_by(&above.against("squat"), "pain_persists"));

    // A rise is one, also below the agreed level.
    let mut rises = World::on_offer("squat");
    agreed(&mut rises, 3);
    for score in [1, 2, 3] {
        rises.wait(3).train_all(vec![squat_at_60()], Some(knee(score)));
    }
    rises.wait(3).add(EventKind::DayReport(DayReport::all_well(DayClass::Within).with_pain(knee(3))));
    assert!(blocked_by(&rises.against("squat"), "pain_persists"));

    // A level that is due to be looked at again stands for nothing.
    world.wait(91).add(EventKind::DayReport(DayReport::all_well(DayClass::Within).with_pain(knee(3))));
    assert!(blocked_by(&world.against("squat"), "pain_persists"));
}

/// The press is the strict lift of a pair with the squat; it loads the shoulder, or the knee with it.
fn pressed_with(region: &str, usual: u8, score: u8) -> World {
    let mut all = parameters();
    all.lifts[1].regions = vec![name(region)];
    all.pairs = vec![Pair::new(name("press"), name("squat"))];
    let mut world = World::new(all);
    (0..4).for_each(|_| world.passing_day("squat"));
    let level = Pain::new(usual).unwrap();
    world.add(EventKind::UsualPainAgreed(UsualPain::new(name(region), level, name("coach"))));
    let pain = || vec![PainAnswer::plain(name(region), Pain::new(score).unwrap())];
    let report = || EventKind::DayReport(DayReport::all_well(DayClass::Within).with_pain(pain()));
    world.add(report());
    let press = LiftSession::as_granted(name("press"), World::sets(kg(40.0), 2, true));
    world.train_all(vec![press], Some(pain()));
    world.wait(3).add(report());
    world
}

#[test]
fn pain_of_the_strict_lift_that_is_no_more_than_agreed_to_be_usual_holds_no_partner() {
    for region in ["shoulder", "knee"] {
        let usual = pressed_with(region, 2, 2).today("squat");
        assert!(!says(&usual, "pair_pain"), "{region}: {:?}", usual.reasons);
        assert_eq!((usual.verdict, usual.load), (Verdict::Train, Some(kg(60.0))), "{region}");
        for (level, score) in [(1, 2), (0, 1)] {
            let more = pressed_with(region, level, score).today("squat");
            assert!(says(&more, "pair_pain"), "{region} {level} {score}: {:?}", more.reasons);
            assert!(more.verdict > Verdict::Train, "{region} {level} {score}");
        }
    }
}

/// Pain that stays asks for a step down until the region has had a session without it: at the lightest load that is half of the
/// work, as long as it hurts no more than pain that blocks. A lift that rested would rest for good.
#[test]
fn rule_02_at_the_lightest_load_pain_that_stays_low_ends_with_a_session() {
    let mut all = parameters();
    all.lifts[0].start = Grant::new(Work::new(2, 5, kg(20.0))).with_place(Place::at_rung(0));
    let mut world = World::new(all);
    let done = |sets: u8| vec![LiftSession::as_granted(name("squat"), World::sets(kg(20.0), sets, true))];
    for score in [0, 1, 2] {
        world.wait(3).train_all(done(2), Some(knee(score)));
    }
    let asked = |world: &World, score: u8| {
        let mut then = world.clone();
        let report = DayReport::all_well(DayClass::Within).with_pain(knee(score));
        then.wait(3).add(EventKind::DayReport(report));
        then
    };
    let mut low = asked(&world, 2);
    let today = low.today("squat");
    assert!(says(&today, "pain_persists") && says(&today, "half_for_lighter"), "{:?}", today.reasons);
    assert_eq!((today.verdict, today.load, today.sets), (Verdict::EaseOff, Some(kg(20.0)), 1));
    low.train_all(done(1), Some(knee(2)));
    let after = asked(&low, 2).today("squat");
    assert!(!says(&after, "pain_persists"), "{:?}", after.reasons);
    assert_eq!((after.verdict, after.sets), (Verdict::Train, 2));

    // More than that, or more than was asked about: not today.
    let high = asked(&world, 3).today("squat");
    assert_eq!((high.verdict, high.load), (Verdict::Rest, None));
    assert!(says(&high, "nothing_easier") && !says(&high, "half_for_lighter"), "{:?}", high.reasons);
}

/// One answer says one thing: a lift that is left out is neither lowered nor done more easily.
#[test]
fn rule_08_beside_a_lift_that_is_left_out_pain_asks_for_no_work_of_it() {
    let mut all = parameters();
    all.lifts[0].start = Grant::new(Work::new(2, 5, kg(20.0))).with_place(Place::at_rung(0));
    let mut lightest = World::new(all.clone());
    for score in [1, 2, 3] {
        let done = LiftSession::as_granted(name("squat"), World::sets(kg(20.0), 2, true));
        lightest.wait(3).train_all(vec![done], Some(knee(score)));
    }
    let resting = World::on_offer("squat");
    for (what, world) in [("nothing lighter", lightest), ("a planned break", resting)] {
        for score in [1, 3, 5] {
            let mut world = world.clone();
            if what == "a planned break" {
                let until = world.day.plus(9).unwrap();
                world.add(EventKind::LayoffNoted(
                    Layoff::new(world.day, LayoffReason::Planned).with_to(until),
                ));
            }
            let new = knee(score).into_iter().map(|one| one.with_features(vec![PainFeature::New]));
            let report = DayReport::all_well(DayClass::Within).with_pain(new.collect::<Vec<_>>());
            world.wait(3).add(EventKind::DayReport(report));
            let today = world.today("squat");
            if today.sets > 0 {
                continue;
            }
            let state = world.state();
            let words = bismar::text::Words::of(state.parameters().unwrap());
            let session =
                bismar::prescription::next_session_from(&state, &Plan::of([name("squat")]), world.day)
                    .unwrap();
            let said = words.session(&session).to_string();
            assert!(says(&today, "pain_block"), "{what}, {score}: {said}");
            assert!(
                said.contains("Pain in the knee: this lift is left out today."),
                "{what}, {score}: {said}"
            );
            for work in ["lower until", "easier work", "stop this lift"] {
                assert!(!said.contains(work), "{what}, {score}, {work}: {said}");
            }
        }
    }
}

/// As high as pain that blocks, in a region about which nobody is asked any more: no half of the work either.
#[test]
fn rule_02_high_pain_that_stays_in_a_region_no_longer_declared_is_not_trained_on() {
    let mut all = parameters();
    all.lifts[0].start = Grant::new(Work::new(2, 5, kg(20.0))).with_place(Place::at_rung(0));
    let mut world = World::new(all.clone());
    for _ in 0..3 {
        let done = LiftSession::as_granted(name("squat"), World::sets(kg(20.0), 2, true));
        world.wait(3).train_all(vec![done], Some(knee(4)));
    }
    all.lifts[0].regions = vec![name("back")];
    all.regions.retain(|region| region.id != name("knee"));
    world.add(EventKind::ParametersChanged(Box::new(all)));
    world.wait(3).day_report(DayClass::Within);
    let today = world.today("squat");
    assert!(says(&today, "pain_persists"), "{:?}", today.reasons);
    assert_eq!((today.verdict, today.load), (Verdict::Rest, None), "{:?}", today.reasons);
    let otherwise = bismar::prescription::Change::CoachSetsOtherwise;
    assert!(today.would_change.contains(&otherwise), "{:?}", today.would_change);
}

/// Pain at or above the score from which pain blocks is not trained on where nothing is easier: neither a level that is agreed
/// to be usual nor a policy that blocks later makes it a low one.
#[test]
fn rule_02_at_the_lightest_load_pain_that_rises_to_three_rests_at_an_agreed_level_and_under_any_policy() {
    let risen = |usual: Option<u8>, from: u8, today: u8| {
        let mut all = parameters();
        all.lifts[0].start = Grant::new(Work::new(2, 5, kg(20.0))).with_place(Place::at_rung(0));
        all.policy.pain_block_from = from;
        let mut world = World::new(all);
        usual.into_iter().for_each(|level| agreed(&mut world, level));
        for score in [1, 2, 3] {
            let done = LiftSession::as_granted(name("squat"), World::sets(kg(20.0), 2, true));
            world.wait(3).train_all(vec![done], Some(knee(score)));
        }
        let report = DayReport::all_well(DayClass::Within).with_pain(knee(today));
        world.wait(3).add(EventKind::DayReport(report));
        world.today("squat")
    };
    for (usual, from) in [(Some(3), 3), (None, 5), (Some(3), 5)] {
        let high = risen(usual, from, 3);
        assert!(says(&high, "pain_persists"), "{usual:?} {from}: {:?}", high.reasons);
        assert_eq!((high.verdict, high.load), (Verdict::Rest, None), "{usual:?} {from}: {:?}", high.reasons);
        assert!(says(&high, "nothing_easier"), "{usual:?} {from}: {:?}", high.reasons);
        let low = risen(usual, from, 2);
        assert_eq!((low.verdict, low.sets), (Verdict::EaseOff, 1), "{usual:?} {from}: {:?}", low.reasons);
    }
}
