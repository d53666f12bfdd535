//! A long log, invented: eight lifts, two sessions a week each, five sets a session.

use bismar::condition::DayClass;
use bismar::gate::{Mark, Rater, SetMarks};
use bismar::quantity::{Day, Name, Reps};
use bismar::record::{
    Clearance, ClearanceStatus, DayReport, Event, EventKind, LiftSession, Lifter, Log, NextDayReport,
    Session, WorkSet,
};

use super::scenario;

const LIFTS: u32 = 8;
const SETS: usize = 5;

/// The log of so many weeks.
pub fn log(weeks: i32) -> Log {
    let parameters = scenario::parameters(LIFTS).unwrap();
    let lifter = Lifter::new(Name::new("invented").unwrap()).with_invented(true);
    let mut log = Log::new(lifter);
    let first = Day::from_calendar(1985, 1, 7).unwrap();
    let add = |log: &mut Log, day: Day, kind: EventKind| {
        let sequence = log.events.len() as u32 + 1;
        log.events.push(Event::new(sequence, day, kind));
    };
    add(&mut log, first, EventKind::ParametersChanged(Box::new(parameters.clone())));
    for week in 0..weeks {
        if week % 50 == 0 {
            let who = Name::new("clinic").unwrap();
            let status = ClearanceStatus::Cleared;
            let clearance = Clearance::new(status, who);
            add(&mut log, first.plus(week * 7).unwrap(), EventKind::ClearanceRecorded(clearance));
        }
        for offset in [0, 3] {
            let day = first.plus(week * 7 + offset).unwrap();
            add(&mut log, day, EventKind::DayReport(DayReport::all_well(DayClass::Within)));
            let lifts = parameters.lifts.iter().enumerate().map(|(at, lift)| {
                let clean = !(week as usize + at).is_multiple_of(3);
                let sets = (0..SETS).map(|_| {
                    let mut marks = SetMarks::scored(5, if clean { 5 } else { 3 }, Rater::Coach);
                    marks.first_failing_rep = (!clean).then_some(4);
                    for criterion in &lift.criteria {
                        marks = marks.with(criterion.id.as_str(), Mark::Met).unwrap();
                    }
                    let reps = Reps::whole(5).unwrap();
                    WorkSet::done(lift.start.load(), reps).with_marks(marks)
                });
                LiftSession::as_granted(lift.id.clone(), sets.collect())
            });
            let session = Session::new(lifts.collect()).with_pain(Vec::new()).with_minutes(60);
            add(&mut log, day, EventKind::SessionRecorded(session));
            let session = log.events.len() as u32;
            let report = NextDayReport::new(session).with_pain(Vec::new());
            add(&mut log, day.plus(1).unwrap(), EventKind::NextDayReport(report));
        }
    }
    log
}
