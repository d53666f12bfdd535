//! Is the trend of a lift real, or within what days scatter by themselves?

use bismar::Error;
use bismar::gate::SetMarks;
use bismar::one_rm::{EstimateOptions, SetEffort, SetEvidence, TechniqueVerdict, estimate};
use bismar::quantity::{Day, Interval, Name};
use bismar::record::{Effort, EventKind, WorkSet};
use bismar::statistics::robust_line;
use serde::{Deserialize, Serialize};

use crate::opened::open;

/// Level of the interval of the slope (common choice).
const LEVEL: f64 = 0.95;
/// Fewest sessions for a line that says anything (our choice).
const FEWEST: usize = 6;
const DAYS_A_WEEK: f64 = 7.0;

/// The question.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Asked {
    log: String,
    track: Name,
    today: Day,
    weeks: u16,
}

/// The answer.
#[derive(Serialize)]
pub(crate) struct Answer {
    verdict: Verdict,
    points: Vec<Point>,
    needed: u32,
    #[serde(skip_serializing_if = "Option::is_none")]
    line: Option<Line>,
    text: String,
}

#[derive(Clone, Copy, Serialize)]
#[serde(rename_all = "snake_case")]
enum Verdict {
    TooFew,
    WithinNoise,
    Rising,
    Falling,
}

/// One session: estimate and interval, kg.
#[derive(Serialize)]
struct Point {
    day: Day,
    days_ago: i32,
    value: f64,
    low: f64,
    high: f64,
}

/// The line and its band, kg a week.
#[derive(Serialize)]
struct Line {
    slope: f64,
    low: f64,
    high: f64,
    start: f64,
    end: f64,
    start_low: f64,
    start_high: f64,
    end_low: f64,
    end_high: f64,
}

pub(crate) fn evidence(set: &WorkSet, day: Day) -> SetEvidence {
    let effort = match set.effort {
        _ if set.failed => SetEffort::Failure,
        Some(Effort::Rir(rir)) => SetEffort::Rir(rir),
        Some(Effort::Rpe(rpe)) => SetEffort::Rpe(rpe),
        None => SetEffort::NotReported,
    };
    let technique = match set.marks.as_ref().and_then(SetMarks::misses) {
        Some(0 | 1) => TechniqueVerdict::Passed,
        Some(_) => TechniqueVerdict::Failed,
        None => TechniqueVerdict::NotScored,
    };
    SetEvidence { load: set.load, reps: set.reps, effort, technique, day: Some(day) }
}

fn points(asked: &Asked) -> Result<Vec<Point>, Error> {
    let opened = open(&asked.log)?;
    let from = asked.today.plus(-7 * i32::from(asked.weeks))?;
    let mut points = Vec::new();
    for event in opened.log.effective()? {
        let EventKind::SessionRecorded(session) = &event.kind else { continue };
        let Some(lift) = session.lifts.iter().find(|lift| lift.track == asked.track) else { continue };
        if event.day < from || event.day > asked.today {
            continue;
        }
        let sets: Vec<SetEvidence> = lift.sets.iter().map(|set| evidence(set, event.day)).collect();
        // A session whose sets cannot speak about strength gives no point.
        if let Ok(found) = estimate(&sets, &EstimateOptions::default()) {
            points.push(Point {
                day: event.day,
                days_ago: asked.today.since(event.day),
                value: found.value.value(),
                low: found.interval.low(),
                high: found.interval.high(),
            });
        }
    }
    Ok(points)
}

/// The trend of the estimates of a lift.
pub(crate) fn trend(asked: Asked) -> Result<Answer, Error> {
    let points = points(&asked)?;
    let x: Vec<f64> = points.iter().map(|point| -f64::from(point.days_ago) / DAYS_A_WEEK).collect();
    let y: Vec<f64> = points.iter().map(|point| point.value).collect();
    let needed = FEWEST.saturating_sub(points.len()) as u32;
    if needed > 0 {
        let text =
            format!("{} of {FEWEST} sessions that can speak about strength in these weeks", points.len());
        return Ok(Answer { verdict: Verdict::TooFew, points, needed, line: None, text });
    }
    let found = robust_line(&x, &y, LEVEL)?;
    let (verdict, text) = words(&found.slope_interval);
    let (first, last) = (x.first().copied().unwrap_or_default(), x.last().copied().unwrap_or_default());
    let middle = f64::midpoint(first, last);
    let centre = found.joint_intercept + found.slope * middle;
    let at = |slope: f64, place: f64| centre + slope * (place - middle);
    let (low, high) = (found.slope_interval.low(), found.slope_interval.high());
    let line = Line {
        slope: found.slope,
        low,
        high,
        start: at(found.slope, first),
        end: at(found.slope, last),
        start_low: at(high, first),
        start_high: at(low, first),
        end_low: at(low, last),
        end_high: at(high, last),
    };
    Ok(Answer { verdict, points, needed: 0, line: Some(line), text })
}

fn words(slope: &Interval) -> (Verdict, String) {
    if slope.low() > 0.0 {
        (Verdict::Rising, "rising, beyond what days scatter".into())
    } else if slope.high() < 0.0 {
        (Verdict::Falling, "falling, beyond what days scatter".into())
    } else {
        (Verdict::WithinNoise, "within what days scatter by themselves".into())
    }
}

/// One set.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct OneSet {
    load: bismar::quantity::Mass,
    reps: bismar::quantity::Reps,
    rpe: bismar::quantity::Rpe,
    technique: TechniqueVerdict,
}

/// What one set says about the maximum, with the library's usual options.
pub(crate) fn one_set(asked: OneSet) -> Result<bismar::one_rm::Estimate, Error> {
    let OneSet { load, reps, rpe, technique } = asked;
    estimate(
        &[SetEvidence { load, reps, effort: SetEffort::Rpe(rpe), technique, day: None }],
        &EstimateOptions::default(),
    )
}
