//! What was done, what it came to, and how the grant moved.

use bismar::answers::{Course, Diary, History, Lacking, history};
use bismar::condition::DayClass;
use bismar::error::Code;
use bismar::gate::{Mark, Outcome, Rater, SetMarks};
use bismar::quantity::Pain;
use bismar::record::*;
use bismar::text::{Show, Words};

use crate::made::all_careful;
use crate::world::{World, kg, name, parameters};

fn of_squat(world: &World) -> History {
    let found = history(&world.log, Some(&name("squat")), world.day).unwrap();
    all_careful(&found.show(&Words::of(&parameters())));
    found
}

/// Each session by what it came to in the end, and whether a pass was taken back.
fn outcomes(found: &History) -> Vec<(Outcome, bool)> {
    found.sessions.iter().map(|session| (session.lifts[0].outcome, session.lifts[0].taken_back)).collect()
}

#[test]
fn an_empty_log_names_the_session_that_is_missing() {
    let log = Log::new(Lifter::new(name("invented")));
    let found = history(&log, None, World::new(parameters()).day).unwrap();
    assert_eq!(found.missing, [Lacking::Session]);
    assert!(found.sessions.is_empty() && found.steps.is_empty());
    let found = of_squat(&World::new(parameters()));
    assert_eq!(found.missing, [Lacking::SessionOf(name("squat"))]);
    assert_eq!(found.steps.len(), 1, "it stands where it was set");
}

/// Two work sets of five, all acceptable; then one with the critical point lost.
#[test]
fn sessions_are_told_with_what_they_came_to() {
    let mut world = World::new(parameters());
    world.passing_day("squat");
    world.day_report(DayClass::Within);
    world.train("squat", false);
    let found = of_squat(&world);
    assert_eq!(outcomes(&found), [(Outcome::Pass, false), (Outcome::Fail, false)]);
    let [first, second] = found.sessions.as_slice() else { panic!("{found:?}") };
    let counts = |at: &bismar::answers::SessionDone| (at.lifts[0].acceptable, at.lifts[0].scored);
    assert_eq!((counts(first), counts(second)), ((10, 10), (4, 10)));
    assert_eq!((first.days_ago, second.days_ago), (3, 0));
    assert_eq!(first.lifts[0].load, Some(kg(60.0)));
    assert_eq!(first.lifts[0].place.as_ref().unwrap().rung, Some(name("full")));
    assert_eq!((&first.lifts[0].weakest, &second.lifts[0].weakest), (&None, &Some(name("brace"))));
    let said = found.show(&Words::of(&parameters()));
    assert_eq!(said[0], "5 Jan 2026: Squat, 60 kg (full): passed, 10 of 10 repetitions acceptable.");
    assert_eq!(said[1], "8 Jan 2026: Squat, 60 kg (full): not passed, 4 of 10 repetitions acceptable.");
}

/// Every set was marked clean and missed at its end: a fail, that of the session which led to a step back too, after which the lift
/// remembers nothing of its old place.
#[test]
fn a_failed_set_fails_the_session_whatever_its_marks_say() {
    let mut world = World::new(parameters());
    world.passing_day("squat");
    let status = |world: &World| world.state().lift_state(&name("squat")).unwrap().status().as_str();
    for _ in 0..8 {
        if status(&world) == "stepping_back" {
            break;
        }
        world.day_report(DayClass::Within);
        let today = world.today("squat");
        let set = |set: WorkSet| set.with_effort(Effort::Rir(today.reserve)).with_failed(true);
        let sets = World::sets(today.load.unwrap(), today.sets, true).into_iter().map(set).collect();
        world.train_with(LiftSession::as_granted(name("squat"), sets));
        world.wait(3);
    }
    assert_eq!(status(&world), "stepping_back");
    let found = outcomes(&of_squat(&world));
    assert_eq!(found[0], (Outcome::Pass, false));
    assert!(found.len() > 1 && found[1..].iter().all(|one| *one == (Outcome::Fail, false)), "{found:?}");
}

/// A lift that rests by its role counts toward no gate. Its session is judged as any other: a set that nobody marked is not scored, and a
/// loss counts whoever saw it.
#[test]
fn a_session_that_counts_toward_no_gate_is_judged_as_carefully() {
    let of = |change: fn(&mut Vec<WorkSet>)| {
        let mut world = World::new(parameters());
        world.passing_day("squat");
        world.add(EventKind::RoleSet(RoleSet::new(name("squat"), Role::Rest)));
        let mut sets = World::sets(kg(60.0), 4, true);
        change(&mut sets);
        world.train_with(LiftSession::as_granted(name("squat"), sets));
        let last = of_squat(&world).sessions.remove(1).lifts.remove(0);
        (last.outcome, last.acceptable, last.scored)
    };
    assert_eq!(of(|_| ()), (Outcome::Pass, 20, 20));
    assert_eq!(of(|sets| sets[1..].iter_mut().for_each(|set| set.marks = None)), (Outcome::NotScored, 5, 5));
    assert_eq!(of(|sets| sets[3].failed = true), (Outcome::Fail, 20, 20));
    let lost = of(|sets| {
        let other = SetMarks::scored(5, 2, Rater::Lifter).with("brace", Mark::NotMet).unwrap();
        sets[0].also_marked.push(other);
    });
    assert_eq!(lost, (Outcome::Fail, 17, 20));
}

/// The knee hurts the morning after, at 6 of 10: the pass is none, from that morning on.
#[test]
fn the_morning_after_takes_a_pass_back() {
    let mut world = World::new(parameters());
    world.passing_day("squat");
    world.day_report(DayClass::Within);
    world.train("squat", true);
    assert_eq!(outcomes(&of_squat(&world)), [(Outcome::Pass, false), (Outcome::Pass, false)]);
    let session = world.log.events.last().unwrap().sequence;
    let hurts = PainAnswer::plain(name("knee"), Pain::new(6).unwrap());
    let calm = world.clone();
    world.wait(1);
    world.add(EventKind::NextDayReport(NextDayReport::new(session).with_pain(vec![hurts])));
    let found = of_squat(&world);
    assert_eq!(outcomes(&found), [(Outcome::Pass, false), (Outcome::Fail, true)]);
    let last = found.steps.last().unwrap();
    assert_eq!((last.cause, last.status.as_str()), ("next_day_report", "stopped_refer"));
    assert!(found.show(&Words::of(&parameters())).iter().any(|line| line.contains("took the pass back")));
    let mut calm = calm;
    calm.morning();
    assert_eq!(outcomes(&of_squat(&calm)), [(Outcome::Pass, false), (Outcome::Pass, false)]);
}

/// 60 kg, and the coach's word for 50 kg: each with its cause. Another lift is not told with it.
#[test]
fn a_step_is_told_with_its_cause_and_of_the_lift_alone() {
    let mut world = World::new(parameters());
    world.passing_day("press");
    world.add(EventKind::CoachOverride(Override::new(name("squat"), kg(50.0), name("coach"))));
    let found = of_squat(&world);
    let steps: Vec<_> =
        found.steps.iter().map(|step| (step.cause, step.load, step.days_in, step.lift.clone())).collect();
    assert_eq!(
        steps,
        [("parameters_changed", kg(60.0), 0, name("squat")), ("coach_override", kg(50.0), 3, name("squat")),]
    );
    let all = history(&world.log, None, world.day).unwrap();
    assert_eq!(all.sessions.len(), 1);
    assert!(all.steps.iter().any(|step| step.lift == name("press")));
    assert_eq!(history(&world.log, Some(&name("lunge")), world.day).unwrap_err().code(), Code::UnknownLift);
    let before = world.day.plus(-1).unwrap();
    assert_eq!(history(&world.log, None, before).unwrap_err().code(), Code::BeforeLastEvent);
}

#[test]
fn a_load_of_two_is_one_in_each_hand() {
    let mut all = parameters();
    (all.lifts[1].implement, all.lifts[1].start.work.load) = (name("bells"), kg(8.0));
    let mut world = World::new(all);
    world.passing_day("press");
    let found = history(&world.log, Some(&name("press")), world.day).unwrap();
    assert!(found.sessions[0].lifts[0].each_hand && found.steps[0].each_hand);
    assert!(!of_squat(&world).steps[0].each_hand);
}

/// A course that is kept and followed on says what one says that is followed from the beginning, and says nothing while it is behind.
#[test]
fn a_course_that_is_followed_on_says_what_a_new_one_says() {
    let mut world = World::new(parameters());
    let mut diary = Diary::of(&world.log).unwrap().into_owned();
    let mut course = Course::default().follow(&diary).unwrap();
    let mut told = world.log.events.len();
    for clean in [true, true, false, true, true] {
        world.day_report(DayClass::Within);
        world.train("squat", clean);
        world.morning();
        world.wait(2);
        for event in &world.log.events[told..] {
            diary.add(event).unwrap();
        }
        told = world.log.events.len();
        let behind = course.history(&diary, None, world.day).unwrap_err();
        assert_eq!(behind.code(), Code::NeedsRefold);
        course = course.follow(&diary).unwrap();
        let kept = course.history(&diary, None, world.day).unwrap();
        assert_eq!(kept, history(&world.log, None, world.day).unwrap());
        assert_eq!(kept, diary.history(None, world.day).unwrap());
    }
}
