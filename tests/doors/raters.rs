//! Agreement between those who mark the same sets.

use bismar::answers::{Diary, Lacking, Raters, WhoMarks, raters};
use bismar::gate::{Mark, Outcome, Rater, SetMarks};
use bismar::progression::fold;
use bismar::quantity::Reps;
use bismar::record::*;
use bismar::text::Words;
use bismar::value::Value;

use crate::careful::is_careful;
use crate::world::{World, kg, name, parameters};

fn marks(rater: Rater, mark: Mark) -> SetMarks {
    let acceptable = if mark == Mark::NotMet { 3 } else { 5 };
    SetMarks::scored(5, acceptable, rater).with("brace", mark).unwrap()
}

fn set(coach: Mark, video: Mark) -> WorkSet {
    WorkSet::done(kg(60.0), Reps::whole(5).unwrap())
        .with_marks(marks(Rater::Coach, coach))
        .with_also_marked(vec![marks(Rater::Video, video)])
}

fn world_of(sets: &[WorkSet]) -> World {
    let mut world = World::new(parameters());
    for sets in sets.chunks(25) {
        world.train_with(LiftSession::as_granted(name("squat"), sets.to_vec()));
        world.wait(3);
    }
    world
}

fn asked(world: &World, lift: Option<&str>) -> Raters {
    let lift = lift.map(name);
    let answer = raters(&world.log, lift.as_ref(), world.day).unwrap();
    let diary = Diary::of(&world.log).unwrap();
    assert_eq!(diary.raters(lift.as_ref(), world.day).unwrap(), answer, "of a kept reading");
    for said in Words::of(&parameters()).raters(&answer) {
        is_careful(&said);
        assert!(!said.contains(['{', '}']), "{said}");
    }
    answer
}

/// 50 sets: both met 20, coach met and video lost 5, coach lost and video met 10, both lost 15. Observed 35/50 = 0.7; by
/// chance 0.5 x 0.6 + 0.5 x 0.4 = 0.5; kappa (0.7 - 0.5) / (1 - 0.5) = 0.4.
#[test]
fn row_82_kappa_between_two_who_marked_the_same_sets() {
    let of = |count, coach, video| std::iter::repeat_n(set(coach, video), count);
    let (met, lost) = (Mark::Met, Mark::NotMet);
    let sets: Vec<WorkSet> =
        of(20, met, met).chain(of(5, met, lost)).chain(of(10, lost, met)).chain(of(15, lost, lost)).collect();
    let answer = asked(&world_of(&sets), Some("squat"));
    assert_eq!(answer.pairs.len(), 1);
    let pair = &answer.pairs[0];
    assert_eq!((pair.first.rater, pair.second.rater, pair.sets), (Rater::Coach, Rater::Video, 50));
    assert_eq!((pair.counted, pair.same_count), (50, 35));
    for alike in [&pair.all, &pair.criteria[0].1] {
        assert_eq!((alike.pairs, alike.same), (50, 35));
        assert!((alike.agreement.as_ref().unwrap().kappa - 0.4).abs() < 1e-12);
    }
    let said = Words::plain().raters(&answer).join(" ");
    assert!(said.contains("35 of 50 marks are the same; agreement beyond chance 0.4, "), "{said}");
}

#[test]
fn what_one_has_not_seen_is_left_out_and_one_kind_of_mark_gives_no_kappa() {
    let answer = asked(&world_of(&[set(Mark::Met, Mark::NotSeen), set(Mark::Met, Mark::Met)]), None);
    let alike = &answer.pairs[0].all;
    assert_eq!((alike.pairs, alike.same, &alike.agreement), (1, 1, &None));
}

#[test]
fn an_empty_log_and_one_rater_say_what_is_missing() {
    let world = World::new(parameters());
    assert_eq!(asked(&world, None).missing, [Lacking::Session, Lacking::SecondRater]);
    assert_eq!(
        asked(&world, Some("squat")).missing,
        [Lacking::SessionOf(name("squat")), Lacking::SecondRater]
    );
    let alone = set(Mark::Met, Mark::Met).with_also_marked(Vec::new());
    assert_eq!(asked(&world_of(&[alone]), None).missing, [Lacking::SecondRater]);
    assert!(asked(&world_of(&[set(Mark::Met, Mark::Met)]), Some("press")).pairs.is_empty());
}

/// Coach first or video first: the same pair. Two coaches are told apart by their names.
#[test]
fn the_order_in_which_two_are_written_down_makes_no_second_pair() {
    let turned = set(Mark::Met, Mark::Met)
        .with_marks(marks(Rater::Video, Mark::NotMet))
        .with_also_marked(vec![marks(Rater::Coach, Mark::Met)]);
    let answer = asked(&world_of(&[set(Mark::Met, Mark::NotMet), turned]), None);
    assert_eq!((answer.pairs.len(), answer.pairs[0].sets, answer.pairs[0].all.same), (1, 2, 0));
    let named = |id: &str| marks(Rater::Coach, Mark::Met).with_rater_id(name(id));
    let two = set(Mark::Met, Mark::Met).with_marks(named("A")).with_also_marked(vec![named("B"), named("C")]);
    let answer = asked(&world_of(&[two]), None);
    assert_eq!(answer.pairs.len(), 3);
    assert_eq!(answer.pairs[0].first, WhoMarks::new(Rater::Coach).with_id(name("A")));
}

/// What a second person saw lost counts as lost; what a second person thought well of adds nothing.
#[test]
fn a_second_person_can_only_take_away() {
    let outcome = |sets: Vec<WorkSet>| {
        let mut world = World::new(parameters());
        world.train_with(LiftSession::as_granted(name("squat"), sets));
        let state = fold(&world.log).unwrap();
        state.lift_state(&name("squat")).unwrap().now().sittings.last().unwrap().outcome
    };
    let two = |coach: Option<Mark>, video: Option<Mark>| {
        let one = set(Mark::Met, Mark::Met)
            .with_marks(coach.map(|mark| marks(Rater::Coach, mark)))
            .with_also_marked(video.map(|mark| marks(Rater::Video, mark)).into_iter().collect());
        vec![one.clone(), one]
    };
    assert_eq!(outcome(two(Some(Mark::Met), None)), Outcome::Pass);
    assert_eq!(outcome(two(Some(Mark::Met), Some(Mark::Met))), Outcome::Pass);
    assert_eq!(outcome(two(Some(Mark::Met), Some(Mark::NotMet))), Outcome::Fail);
    assert_eq!(outcome(two(Some(Mark::NotMet), Some(Mark::Met))), Outcome::Fail);
    assert_eq!(outcome(two(None, Some(Mark::Met))), Outcome::NotScored);
    assert_eq!(outcome(two(None, Some(Mark::NotMet))), Outcome::Fail);
}

#[test]
fn the_same_person_twice_and_marks_of_another_lift_are_refused() {
    let twice = set(Mark::Met, Mark::Met).with_also_marked(vec![marks(Rater::Coach, Mark::Met)]);
    let mut world = World::new(parameters());
    let session = |set| {
        let lifts = vec![LiftSession::as_granted(name("squat"), vec![set])];
        EventKind::SessionRecorded(Session::new(lifts).with_pain(Vec::new()))
    };
    let error = world.turned_away(session(twice));
    assert_eq!(error.code(), bismar::Code::DuplicateName);
    let odd = SetMarks::scored(5, 5, Rater::Video).with("elbows", Mark::Met).unwrap();
    let error = world.turned_away(session(set(Mark::Met, Mark::Met).with_also_marked(vec![odd])));
    assert_eq!(error.code(), bismar::Code::UnknownCriterion);
    assert!(error.field().ends_with("also_marked.marks"), "{error:?}");
}

#[test]
fn a_set_without_a_second_person_is_written_as_before() {
    let alone = set(Mark::Met, Mark::Met).with_also_marked(Vec::new());
    let written = Value::write(&alone).unwrap();
    assert!(written.field("also_marked").is_none());
    let read: WorkSet = Value::write(&set(Mark::Met, Mark::NotMet)).unwrap().read().unwrap();
    assert_eq!(read, set(Mark::Met, Mark::NotMet));
}
