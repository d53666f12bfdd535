//! Is the trend of a lift real, or within what days scatter by themselves?

use bismar::Error;
use bismar::condition::{EvidenceKind, StrengthEvidence, TrendOptions, TrendReport, trend as judge};
use bismar::gate::SetMarks;
use bismar::one_rm::{EstimateOptions, SetEffort, SetEvidence, TechniqueVerdict, estimate};
use bismar::quantity::{Day, Name};
use bismar::record::{Effort, EventKind, Log, WorkSet};
use serde::{Deserialize, Serialize};

use crate::opened::open;

/// Standard errors from the middle to the ends of a 95 % interval (normal quantile).
const REACH: f64 = 1.959_963_984_540_054;
const LEVEL: f64 = 0.95;

/// The question.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Asked {
    log: String,
    lift: Name,
    today: Day,
    weeks: u16,
}

/// The answer: the library's own, the single estimates, and the ends of the level's band.
#[derive(Serialize)]
pub(crate) struct Answer {
    report: TrendReport,
    points: Vec<Point>,
}

/// One session: estimate with its range, and the level behind it with its band, kg.
#[derive(Serialize)]
struct Point {
    day: Day,
    value: f64,
    low: f64,
    high: f64,
    level: f64,
    level_low: f64,
    level_high: f64,
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

/// The estimate of one session, with its range.
pub(crate) struct Estimated {
    pub(crate) evidence: StrengthEvidence,
    low: f64,
    high: f64,
}

/// One estimate for each session since that day whose sets can speak about strength.
pub(crate) fn estimates(log: &Log, lift: &Name, since: Day) -> Result<Vec<Estimated>, Error> {
    let mut options = EstimateOptions::default();
    options.level = LEVEL;
    let mut found = Vec::new();
    for event in log.effective()? {
        let EventKind::SessionRecorded(session) = &event.kind else { continue };
        if event.day < since {
            continue;
        }
        let Some(done) = session.lifts.iter().find(|done| done.lift == *lift) else { continue };
        let sets: Vec<SetEvidence> = done.sets.iter().map(|set| evidence(set, event.day)).collect();
        if let Ok(one) = estimate(&sets, &options) {
            let (low, high) = (one.interval.low(), one.interval.high());
            let standard_error = (high - low) / (2.0 * REACH);
            let (day, kind) = (event.day, EvidenceKind::RepsAndEffort);
            let evidence = StrengthEvidence { day, estimate: one.value.value(), standard_error, kind };
            found.push(Estimated { evidence, low, high });
        }
    }
    Ok(found)
}

/// The trend of a lift; as many days again before the window let the level settle (our choice).
pub(crate) fn trend(asked: Asked) -> Result<Answer, Error> {
    let opened = open(&asked.log)?;
    let found = estimates(&opened.log, &asked.lift, asked.today.plus(-14 * i32::from(asked.weeks))?)?;
    let evidence: Vec<StrengthEvidence> = found.iter().map(|one| one.evidence).collect();
    let options = TrendOptions { window_days: 7 * u32::from(asked.weeks), ..TrendOptions::default() };
    let report = judge(&evidence, asked.today, &options)?;
    let from = asked.today.plus(-7 * i32::from(asked.weeks))?;
    let points = found
        .iter()
        .zip(&report.path)
        .filter(|(one, _)| one.evidence.day >= from)
        .map(|(one, path)| Point {
            day: one.evidence.day,
            value: one.evidence.estimate,
            low: one.low,
            high: one.high,
            level: path.level,
            level_low: path.level - REACH * path.standard_error,
            level_high: path.level + REACH * path.standard_error,
        })
        .collect();
    Ok(Answer { report, points })
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
