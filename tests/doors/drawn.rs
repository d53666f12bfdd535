//! More of the same never makes an answer less sure, over drawn lifters: what a lifter did in some weeks is done again in as many.

use bismar::answers::{DayAnswers, curve, day as of_day, pair, raters, trend, verdicts};
use bismar::condition::{Conditions, DayClass, MarkerKind, WarmUpTechnique};
use bismar::gate::{Mark, Rater, SetMarks};
use bismar::quantity::Reps;
use bismar::record::*;
use bismar::value::Value;
use proptest::prelude::*;

use crate::evidence::{asked_all, missing};
use crate::made::{log_of, monday, of, session, single, to_failure};
use crate::world::{kg, name, parameters};

/// Twice the same has at most the same width, but for the rounding.
fn no_wider(once: f64, twice: f64) -> Result<(), TestCaseError> {
    prop_assert!(twice <= once * (1.0 + 1e-9), "{once} once, {twice} twice");
    Ok(())
}

/// A single as the limit of that day.
fn limit(load: f64) -> WorkSet {
    single(load).with_failed(true)
}

fn marks(rater: Rater, met: bool) -> SetMarks {
    let mark = if met { Mark::Met } else { Mark::NotMet };
    SetMarks::scored(5, if met { 5 } else { 3 }, rater).with("brace", mark).unwrap()
}

/// One week of a lifter: how heavy, how the day was called, whether a repetition was missed, what two people saw.
#[derive(Clone, Debug)]
struct DrawnWeek {
    load: u8,
    below: bool,
    short: bool,
    seen: [bool; 2],
    recovery: u8,
}

fn weeks() -> impl Strategy<Value = Vec<DrawnWeek>> {
    let one = (90_u8..110, any::<bool>(), any::<bool>(), any::<[bool; 2]>(), 3_u8..10);
    let one =
        one.prop_map(|(load, below, short, seen, recovery)| DrawnWeek { load, below, short, seen, recovery });
    prop::collection::vec(one, 4..=6)
}

/// Everything that is told of these weeks, so many times over.
fn told(weeks: &[DrawnWeek], rounds: usize) -> Log {
    let all = weeks.iter().cycle().take(weeks.len() * rounds);
    let events = (0..).zip(all).flat_map(|(at, week)| {
        let class = if week.below { DayClass::Below } else { DayClass::Within };
        let marker = MarkerAnswer::new(MarkerKind::Recovery, f64::from(week.recovery));
        let report = DayReport::all_well(class).with_markers(vec![marker]);
        let five = WorkSet::done(kg(60.0), Reps::whole(5).unwrap())
            .with_failed(week.short)
            .with_marks(marks(Rater::Coach, week.seen[0]))
            .with_also_marked(vec![marks(Rater::Video, week.seen[1])]);
        let load = f64::from(week.load);
        let done = session(
            &[("squat", vec![limit(load), five]), ("press", vec![limit(0.6 * load)])],
            Some((6.0, 60)),
        );
        [(monday(at), EventKind::DayReport(report)), (monday(at), done)]
    });
    log_of(parameters(), events)
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(24) })]

    #[test]
    fn twice_the_weeks_make_the_trend_no_less_sure(weeks in weeks()) {
        let (squat, today) = (name("squat"), monday(14));
        let slope = |rounds| {
            trend(&told(&weeks, rounds), &squat, today, Some(26)).unwrap().report.and_then(|report| report.slope)
        };
        if let (Some(once), Some(twice)) = (slope(1), slope(2)) {
            no_wider(once.interval.width(), twice.interval.width())?;
        }
    }

    #[test]
    fn twice_the_sets_make_the_own_curve_no_less_sure(percent in 2_u8..7, off in prop::collection::vec(-2.0..2.0_f64, 3), weeks in 2_i32..6) {
        let width = |weeks: i32| {
            let set = |at: usize, reps: u16| {
                let part = 1.0 - f64::from(percent) / 100.0;
                let load = (1..reps).fold(100.0, |load, _| load * part) + off[at];
                to_failure((load * 2.0).round() / 2.0, reps)
            };
            let one = |week| (monday(week), of("squat", vec![set(0, 3), set(1, 6), set(2, 10)]));
            let found = curve(&log_of(parameters(), (0..weeks).map(one)), &name("squat"), monday(12)).unwrap();
            found.curve.unwrap().slope_interval.width()
        };
        no_wider(width(weeks), width(2 * weeks))?;
    }

    #[test]
    fn twice_the_weeks_make_the_ratio_of_a_pair_no_less_sure(weeks in weeks()) {
        let width = |rounds| {
            let found = pair(&told(&weeks, rounds), &name("squat"), &name("press"), monday(14), None).unwrap();
            (found.own.interval.width() / found.own.ratio, found.own.own_weight)
        };
        let (once, twice) = (width(1), width(2));
        no_wider(once.0, twice.0)?;
        prop_assert!(twice.1 >= once.1, "{once:?} {twice:?}");
    }

    #[test]
    fn twice_the_days_make_the_verdicts_no_less_sure(weeks in weeks()) {
        let widths = |rounds| {
            let found = verdicts(&told(&weeks, rounds), monday(14)).unwrap().calibration;
            found.map(|found| [found.right, found.caught, found.wrongly_called].map(|one| one.map(|one| one.width())))
        };
        let (Some(once), Some(twice)) = (widths(1), widths(2)) else { return Ok(()) };
        for (once, twice) in once.into_iter().zip(twice) {
            if let (Some(once), Some(twice)) = (once, twice) {
                no_wider(once, twice)?;
            }
            prop_assert!(once.is_none() || twice.is_some());
        }
    }

    #[test]
    fn twice_the_marks_make_the_agreement_no_less_sure(weeks in weeks()) {
        let found = |rounds| {
            let found = raters(&told(&weeks, rounds), None, monday(14)).unwrap();
            found.pairs[0].all.agreement.clone().map(|one| (one.kappa, one.interval.width()))
        };
        if let (Some(once), Some(twice)) = (found(1), found(2)) {
            prop_assert!((once.0 - twice.0).abs() < 1e-12);
            no_wider(once.1, twice.1)?;
        }
    }

    /// The usual is read from the twelve newest days, of which six once more are the same.
    #[test]
    fn twice_the_days_make_the_usual_no_wider(values in prop::collection::vec(3_u8..10, 6)) {
        let spread = |rounds: usize| {
            let report = |value: &u8| {
                let marker = MarkerAnswer::new(MarkerKind::Recovery, f64::from(*value)).with_conditions(Conditions::default());
                EventKind::DayReport(DayReport::default().with_markers(vec![marker]))
            };
            let all = values.iter().cycle().take(6 * rounds);
            let log = log_of(parameters(), (0..).zip(all).map(|(at, value)| (monday(at), report(value))));
            let given = DayAnswers::default()
                .with_markers(vec![MarkerAnswer::new(MarkerKind::Recovery, 5.0).with_conditions(Conditions::default())])
                .with_technique(WarmUpTechnique::NotScored);
            of_day(&log, monday(14), Some(&given)).unwrap().verdict.unwrap().votes[0].baseline.unwrap().spread
        };
        no_wider(spread(1), spread(2))?;
    }

    /// Asked on the same day, no door misses more for weeks that were told beside the others: what is counted as missing becomes no
    /// more, only the usable sets of a curve that cannot be told yet do.
    #[test]
    fn more_that_is_told_is_never_more_that_is_missing(weeks in weeks()) {
        let today = monday(12).to_string();
        let asked = |rounds| {
            asked_all(&told(&weeks, rounds), &Plan::of([name("squat"), name("press")]), &today)
        };
        let count = |one: &Value, kind: &str, of: &str| match one.field(kind)?.field(of) {
            Some(Value::Number(number)) => Some(*number),
            _ => None,
        };
        let no_more = |before: &Value, now: &Value| {
            for (kind, of) in [("weeks", "weeks"), ("session_rating", "sessions")] {
                if let (Some(before), Some(now)) = (count(before, kind, of), count(now, kind, of)) {
                    return now <= before;
                }
            }
            let sets = |one: &Value| count(one, "sets_for_curve", "usable").is_some();
            before == now || (sets(before) && sets(now))
        };
        let known = |answer: &Value, now: &Value| missing(answer).iter().any(|before| no_more(before, now));
        for ((key, once), (_, twice)) in asked(1).into_iter().zip(asked(2)) {
            let (once, twice) = (once.unwrap(), twice.unwrap());
            for lacking in missing(&twice) {
                prop_assert!(known(&once, lacking), "{key}: {lacking:?} was not missing: {:?}", missing(&once));
            }
        }
    }
}
