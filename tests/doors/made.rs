//! Small logs for the doors.

use bismar::gate::{Mark, Rater, SetMarks};
use bismar::loading::{Implement, MachineStack};
use bismar::quantity::{Day, Mass, Reps, Rir, Rpe};
use bismar::record::*;

use crate::careful::is_careful;
use crate::world::{kg, lift, name, parameters};

/// Holds every sentence to the rules of words.
pub fn all_careful(said: &[String]) {
    for said in said {
        is_careful(said);
        assert!(!said.contains(['{', '}']) && !said.is_empty(), "{said}");
    }
}

pub fn day(text: &str) -> Day {
    text.parse().unwrap()
}

pub fn sets(count: usize, load: f64, reps: u16, left: u8) -> Vec<WorkSet> {
    let set = WorkSet::done(kg(load), Reps::whole(reps).unwrap()).with_effort(Effort::Rir(Rir::whole(left)));
    vec![set; count]
}

pub fn session(lifts: &[(&str, Vec<WorkSet>)], rated: Option<(f64, u16)>) -> EventKind {
    let done = |(lift, sets): &(&str, Vec<WorkSet>)| LiftSession::as_granted(name(lift), sets.clone());
    EventKind::SessionRecorded(
        Session::new(lifts.iter().map(done).collect())
            .with_pain(Vec::new())
            .with_minutes(rated.map(|(_, minutes)| minutes))
            .with_effort(rated.map(|(rating, _)| Rpe::new(rating).unwrap())),
    )
}

pub fn log_of(all: Parameters, events: impl IntoIterator<Item = (Day, EventKind)>) -> Log {
    let mut log = Log::new(Lifter::new(name("invented")));
    let start = (day("2026-01-05"), EventKind::ParametersChanged(Box::new(all)));
    for (sequence, (day, kind)) in (1..).zip(core::iter::once(start).chain(events)) {
        log.events.push(Event::new(sequence, day, kind));
    }
    log
}

pub fn with_helped_pull_up() -> Parameters {
    let mut all = parameters();
    let stack = MachineStack::new(name("helper"), Mass::ZERO, vec![kg(10.0); 6], Vec::new(), 1.0).unwrap();
    all.implements.push(Implement::Assistance(stack));
    let mut pull_up = lift("pull-up", "back", 0.0);
    pull_up.implement = name("helper");
    pull_up.start.work.load = kg(-30.0);
    all.lifts.push(pull_up);
    all
}

/// A single that held up and left nothing, which is taken as the maximum.
pub fn single(load: f64) -> WorkSet {
    let marks = SetMarks::scored(1, 1, Rater::Coach).with("brace", Mark::Met).unwrap();
    WorkSet::done(kg(load), Reps::whole(1).unwrap()).with_effort(Effort::Rir(Rir::whole(0))).with_marks(marks)
}

/// A set to failure that held up.
pub fn to_failure(load: f64, reps: u16) -> WorkSet {
    let marks = SetMarks::scored(reps, reps, Rater::Coach).with("brace", Mark::Met).unwrap();
    WorkSet::done(kg(load), Reps::whole(reps).unwrap()).with_failed(true).with_marks(marks)
}

/// A session of one lift.
pub fn of(lift: &str, sets: Vec<WorkSet>) -> EventKind {
    session(&[(lift, sets)], None)
}

/// The Monday so many weeks after 12 January 2026.
pub fn monday(week: i32) -> Day {
    day("2026-01-12").plus(7 * week).unwrap()
}
