//! A lifter who does exactly what is printed, and answers well, comes back: whatever happened before, in a bounded number of
//! sessions each lift stands where it holds.
//!
//! Courses are drawn, with lifts of few sets and repetitions at light loads among them. Then the coach puts in order what is
//! theirs: a clearance, sign-offs, answers, the roles, no override. From there on each day is asked about and well, every lift is
//! done as it is printed, and nobody accepts a step.
//!
//! Let be, each counted: a lift of which nothing can be done at its place (no load so light is made, or no height), and one that is
//! granted more than a ceiling allows. Both name what the coach has to set otherwise.

use std::collections::BTreeMap;

use super::course::*;
use super::moves::crate_cases;
use super::prescription::whole_plan;
use bismar::condition::DayClass;
use bismar::gate::{Mark, Rater, SetMarks};
use bismar::prescription::{Change, LiftToday, next_session_from};
use bismar::progression::{Purpose, RegionState, Status};
use bismar::quantity::{Day, Name, Reps, Rir};
use bismar::reason::Reason;
use bismar::record::*;
use proptest::prelude::*;
use proptest::strategy::ValueTree;
use proptest::test_runner::{Config, RngAlgorithm, TestRng, TestRunner};

/// Sessions within which every lift comes back; of 3,000 courses none took more than six.
const SESSIONS: usize = 8;

type Counts = BTreeMap<String, usize>;

fn count(counts: &mut Counts, what: impl Into<String>) {
    *counts.entry(what.into()).or_default() += 1;
}

/// How small the work of a drawn world is.
#[derive(Clone, Copy, Debug)]
struct Small {
    sets: u8,
    reps: u8,
    rung: u8,
    /// At the lightest load, or one of the smallest discs above it.
    light: Option<bool>,
}

fn any_small() -> impl Strategy<Value = Small> {
    (1_u8..=3, 1_u8..=6, 0_u8..=2, prop::option::of(any::<bool>()))
        .prop_map(|(sets, reps, rung, light)| Small { sets, reps, rung, light })
}

/// The lifts with the bar from the rack, of that work; their gates ask for no more than it has.
fn make_small(all: &mut Parameters, small: Small) {
    for lift in all.lifts.iter_mut().filter(|lift| lift.starts_from == StartsFrom::Rack) {
        let work = &mut lift.start.work;
        (work.sets, work.reps) = (small.sets, small.reps);
        lift.start.place.rung = small.rung.min(lift.rungs.len() as u8 - 1);
        if lift.implement == name("bar") {
            let light = small.light.map(|more| kg(if more { 21.0 } else { 20.0 }));
            work.load = light.unwrap_or(work.load);
        }
    }
}

/// What the coach and the clinic put in order.
fn put_in_order(course: &mut Course) {
    course.day = course.day.plus(1).unwrap();
    course.clear(true);
    // What hurts where nobody asks any more, nobody can say to be over.
    course.step(&Step::Parameters(super::changes::Change::Declare));
    // A break without a last day has had it: who rests as is printed would rest on.
    let endless: Vec<Day> = course
        .log
        .events
        .iter()
        .filter_map(|event| match &event.kind {
            EventKind::LayoffNoted(layoff)
                if layoff.to.is_none() && layoff.reason == LayoffReason::Planned =>
            {
                Some(layoff.from)
            }
            _ => None,
        })
        .collect();
    for from in endless {
        let over = Layoff::new(from, LayoffReason::Planned).with_to(course.day.plus(-1).unwrap().max(from));
        course.add(EventKind::LayoffNoted(over));
    }
    for open in course.state().asks().to_vec() {
        course.try_add(EventKind::AskAnswered(AskAnswered::new(open.ask, name("clinic"), true)));
    }
    let stopped = |region: &&RegionState| region.stop.is_some();
    let stopped: Vec<Name> =
        course.state().regions().iter().filter(stopped).map(|region| region.id.clone()).collect();
    let scopes = stopped.into_iter().map(SignOffScope::Region).chain([SignOffScope::Everything]);
    for scope in scopes {
        course.add(EventKind::CoachSignOff(SignOff::new(name("coach"), scope)));
    }
    for at in 0..course.count() {
        let id = course.lift_name(at as u8);
        if course.stands(at).purpose != Purpose::Train {
            course.add(EventKind::RoleSet(RoleSet::new(id.clone(), Role::Train)));
        }
        let granted = course.stands(at).grant.load();
        if course.stands(at).overruled.is_some() {
            course.add(EventKind::CoachOverride(Override::new(id, granted, name("coach"))));
        }
    }
}

/// A lift as it is printed: at its place, with its load, its sets and its repetitions, all well.
fn done(course: &Course, today: &LiftToday) -> Option<LiftSession> {
    let load = today.load?;
    let set = course.set().lifts.iter().find(|set| set.id == today.lift)?;
    let reps = u16::from(today.reps);
    let marks = set.criteria.iter().fold(SetMarks::scored(reps, reps, Rater::Coach), |marks, criterion| {
        marks.with(criterion.id.as_str(), Mark::Met).unwrap()
    });
    let left = Some(Effort::Rir(Rir::whole(4)));
    let one = WorkSet::done(load, Reps::whole(reps).unwrap()).with_marks(marks).with_effort(left);
    let spotted = set.over_the_body.then(|| Setup::default().with_company(ByTheBar::Spotter));
    let sets = vec![one; usize::from(today.sets)];
    Some(LiftSession::as_granted(today.lift.clone(), sets).with_place(today.place).with_setup(spotted))
}

fn is_back(course: &Course, at: usize) -> bool {
    let now = course.stands(at);
    let on = matches!(
        now.now.status,
        Status::Holding | Status::ReadyToAdvance { .. } | Status::Consolidating | Status::Maintaining
    );
    on && now.half_sessions == 0 && !now.partner_pain && !now.nothing_easier
}

/// Why nothing that is printed for the lift can lead on, where it cannot.
fn let_be(today: &LiftToday) -> Option<&'static str> {
    let says = |code: &str| today.reasons.iter().any(|reason| reason.code() == code);
    let names = |change: fn(&Change) -> bool| today.would_change.iter().any(change);
    let coach = names(|change| matches!(change, Change::CoachSetsOtherwise));
    let blocks = names(|change| matches!(change, Change::BlocksOrDiscs { .. }));
    if says("nothing_loadable") && coach {
        Some("nothing so light is made")
    } else if today.limit < today.granted.load() && says("ceiling") && coach {
        Some("granted more than a ceiling allows")
    } else if says("height_not_made") && blocks {
        Some("its height is not made")
    } else {
        None
    }
}

/// Days of training until each lift is back; a lift that stays away is told.
fn come_back(course: &mut Course, counts: &mut Counts) -> Vec<String> {
    let mut back: Vec<Option<usize>> = vec![None; course.count()];
    for session in 0..=SESSIONS {
        for (at, back) in back.iter_mut().enumerate() {
            if back.is_none() && is_back(course, at) {
                *back = Some(session);
                count(counts, format!("back after {session:02}"));
            }
        }
        if back.iter().all(Option::is_some) {
            return Vec::new();
        }
        // A noted break or illness with a last day is waited for.
        course.day_report(DayClass::Within, true);
        let plan = next_session_from(course.state(), &whole_plan(course), course.day).unwrap();
        for today in &plan.lifts {
            for code in [
                "half_for_lighter",
                "least_there_is",
                "easier_rung",
                "nothing_easier",
                "half_sets",
                "pair_pain",
            ] {
                if today.reasons.iter().any(|reason| reason.code() == code) {
                    count(counts, code);
                }
            }
        }
        let lifts: Vec<LiftSession> = plan.lifts.iter().filter_map(|today| done(course, today)).collect();
        if lifts.is_empty() {
            course.day = course.day.plus(1).unwrap();
        } else {
            course.train(lifts, Some(Vec::new()));
            course.morning(false);
        }
        course.day = course.day.plus(2).unwrap();
    }
    course.day_report(DayClass::Within, true);
    let plan = next_session_from(course.state(), &whole_plan(course), course.day).unwrap();
    let mut stay = Vec::new();
    for (at, today) in plan.lifts.iter().enumerate().filter(|(at, _)| back[*at].is_none()) {
        match let_be(today) {
            Some(why) => count(counts, format!("let be: {why}")),
            None => {
                let reasons: Vec<&str> = today.reasons.iter().map(Reason::code).collect();
                stay.push(format!(
                    "{} {:?} {:?} {}x{} {reasons:?} {:?} short {:?}",
                    today.lift,
                    today.status,
                    today.load,
                    today.sets,
                    today.reps,
                    today.would_change,
                    course.stands(at).short
                ));
            }
        }
    }
    stay
}

fn all_cases(cases: std::ops::Range<u32>) {
    let mut runner =
        TestRunner::new_with_rng(Config::default(), TestRng::deterministic_rng(RngAlgorithm::ChaCha));
    let (mut counts, mut wrong) = (Counts::new(), Vec::new());
    for case in 0..cases.end {
        let drawn = any_course().new_tree(&mut runner).unwrap().current();
        let small = any_small().new_tree(&mut runner).unwrap().current();
        if case < cases.start {
            continue;
        }
        let mut course = Course::of_with(&drawn, |all| make_small(all, small));
        put_in_order(&mut course);
        for at in 0..course.count() {
            count(&mut counts, format!("from {}", course.stands(at).status));
        }
        for story in come_back(&mut course, &mut counts) {
            wrong.push(format!("case {case} {small:?}: {story}\n  {drawn:?}"));
        }
    }
    println!("{counts:#?}");
    assert!(wrong.is_empty(), "{} stay away\n{}", wrong.len(), wrong.join("\n\n"));
    if cases.len() < 400 {
        return;
    }
    let expected =
        ["from returning", "from stepping_back", "from learning", "half_for_lighter", "least_there_is"];
    let rare: Vec<&str> =
        expected.into_iter().filter(|what| counts.get(*what).is_none_or(|count| *count < 3)).collect();
    assert!(rare.is_empty(), "hardly drawn: {rare:?}");
}

#[test]
fn a_lifter_who_does_what_is_printed_and_answers_well_comes_back() {
    all_cases(0..400.max(crate_cases()));
}

/// `BISMAR_CASES=4000 cargo test --release --all-features --test invariants comes_back_many -- --ignored --nocapture`
#[test]
#[ignore = "a minute or more"]
fn comes_back_many() {
    let from = std::env::var("BISMAR_FROM").map_or(0, |from| from.parse().unwrap());
    all_cases(from..300.max(crate_cases()));
}
