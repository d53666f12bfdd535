//! Which of two answers about a lift allows more.

use bismar::prescription::{LiftToday, Verdict};
use bismar::progression::Decision;
use bismar::quantity::Mass;
use bismar::reason::Reason;
use bismar::record::*;

/// How two places lie to each other.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Places {
    Same,
    /// The first is easier in something, and in nothing harder.
    Easier,
    /// Harder in something, or a rung that no chain connects.
    Harder,
}

pub fn places(set: &LiftParameters, one: Place, other: Place) -> Places {
    let rung_easier = set.is_harder(other.rung, one.rung);
    let rung_harder = one.rung != other.rung && !rung_easier;
    match (one == other, rung_harder || one.range > other.range || one.tempo > other.tempo) {
        (true, _) => Places::Same,
        (_, true) => Places::Harder,
        _ => Places::Easier,
    }
}

/// In what `worse` is granted more than `better`. At an easier place there may be more load and work, since what was
/// shown at the harder one says so; at a harder place there may be nothing. A lift that is stopped is granted nothing
/// until it is let go, whatever load it had.
pub fn granted_more(set: &LiftParameters, worse: &Decision, better: &Decision) -> Option<String> {
    if worse.status.is_stopped() {
        return None;
    }
    let (one, other) = (worse.grant, better.grant);
    // What a limit of range leaves is asked for in less range than is granted: an easier place.
    let less_range =
        |decision: &Decision| decision.reasons.iter().any(|reason| matches!(reason, Reason::ClearanceRange));
    if less_range(worse) && !less_range(better) {
        return None;
    }
    match places(set, one.place, other.place) {
        Places::Harder => Some(format!("place {:?} against {:?}", one.place, other.place)),
        Places::Easier => None,
        Places::Same => more("limit", worse.limit, better.limit)
            .or_else(|| more("load", one.work.load, other.work.load))
            .or_else(|| more("sets", one.work.sets, other.work.sets))
            .or_else(|| more("reps", one.work.reps, other.work.reps)),
    }
}

fn more<T: PartialOrd + std::fmt::Debug>(what: &str, worse: T, better: T) -> Option<String> {
    (worse > better).then(|| format!("{what} {worse:?} against {better:?}"))
}

/// In what today's session asks more of the lifter in `worse` than in `better`.
pub fn asked_more(set: &LiftParameters, worse: &LiftToday, better: &LiftToday) -> Option<String> {
    if worse.verdict < better.verdict {
        return Some(format!("verdict {:?} against {:?}", worse.verdict, better.verdict));
    }
    if worse.verdict >= Verdict::Rest {
        return worse.load.map(|load| format!("{load:?} where nothing is lifted"));
    }
    match places(set, worse.place, better.place) {
        Places::Harder => Some(format!("place {:?} against {:?}", worse.place, better.place)),
        Places::Easier => None,
        Places::Same => more("load", worse.load, better.load)
            .or_else(|| more("sets", worse.sets, better.sets))
            .or_else(|| more("reps", worse.reps, better.reps))
            .or_else(|| more("reserve", better.reserve, worse.reserve)),
    }
}

/// The decisions for every lift, so many days after the last thing that happened.
pub fn decisions(course: &super::course::Course, days: i32) -> Vec<Decision> {
    course.state().decide(course.day.plus(days).unwrap()).unwrap()
}

/// The highest loads allowed.
pub fn limits(course: &super::course::Course, days: i32) -> Vec<Mass> {
    decisions(course, days).iter().map(|decision| decision.limit).collect()
}

/// In what any lift is granted more in `worse` than in `better`, on that many days after the last event of each.
pub fn any_granted_more(
    worse: &super::course::Course,
    better: &super::course::Course,
    days: i32,
) -> Option<String> {
    let (one, other) = (decisions(worse, days), decisions(better, days));
    let all = worse.set().lifts.iter().zip(one.iter().zip(&other));
    let mut found = all.filter_map(|(set, (one, other))| {
        granted_more(set, one, other).map(|what| format!("{}: {what}", set.id.as_str()))
    });
    found.next()
}
