//! Was this week a jump?

use bismar::answers::{Lacking, Week, WeekMeasure, week};
use bismar::dose::{EffortZones, Monotony, QuietReason, WeekVerdict};
use bismar::quantity::Day;
use bismar::record::*;
use bismar::text::Words;

use crate::made::{all_careful, day, log_of, session, sets, with_helped_pull_up};
use crate::world::{kg, name, parameters};

/// Asks, and holds every sentence to the rules of words.
fn asked(log: &Log, today: Day) -> Week {
    let week = week(log, today).unwrap();
    all_careful(&Words::of(&parameters()).week(&week));
    week
}

/// `weeks` weeks of one session each, on Mondays from 12 January: squat 3 x 5 at 60 (900 kg), press 2 x 5 at 30 (300 kg),
/// rated 5 over 60 minutes (300).
fn steady(weeks: i32) -> Vec<(Day, EventKind)> {
    let one = || session(&[("squat", sets(3, 60.0, 5, 3)), ("press", sets(2, 30.0, 5, 1))], Some((5.0, 60)));
    (0..weeks).map(|week| (day("2026-01-12").plus(7 * week).unwrap(), one())).collect()
}

#[test]
fn an_empty_log_has_no_week() {
    let week = asked(&Log::new(Lifter::new(name("invented"))), day("2026-03-02"));
    assert_eq!(week.total, None);
    assert!(week.weeks.is_empty() && week.lifts.is_empty() && week.regions.is_empty());
    assert_eq!(week.missing, [Lacking::Session]);
    assert_eq!(week.felt.load, None);
    assert!(Words::plain().week(&week)[0].contains("No session"));
}

/// Six past weeks of 1200 kg and 5 sets; this week squat 4 x 5 at 60 (1200 kg) and press 5 x 5 at 30 (750 kg).
///
/// Band of the whole: centre 1200, scatter 0, so the deviation is 0.1 x 1200 and the band 1200 -+ 240, 960 to 1440. This week
/// 1950 kg: above, 1.625 times. Squat: 900 -+ 180, 720 to 1080; 1200 lies above. Sets of the shoulder: 2 -+ 0.4; 5 above. Of
/// the knee: 3 -+ 0.6; 4 above.
#[test]
fn a_week_is_held_against_the_own_weeks_by_lift_and_region() {
    let mut events = steady(6);
    let now = session(&[("squat", sets(4, 60.0, 5, 3)), ("press", sets(5, 30.0, 5, 1))], Some((7.0, 80)));
    events.push((day("2026-02-23"), now));
    let week = asked(&log_of(parameters(), events), day("2026-03-01"));
    let total = week.total.as_ref().unwrap();
    assert_eq!((total.from, total.to), (day("2026-02-23"), day("2026-03-01")));
    assert_eq!((total.sets, total.helped_sets, total.training_days), (9, 0, 1));
    assert_eq!(total.repetitions, 45.0);
    assert_eq!(total.volume_load.unwrap().value(), 1950.0);
    let effort = EffortZones::default().with_below_2_left(5).with_from_2_left(4);
    assert_eq!(total.effort, effort);
    assert_eq!(week.measure, WeekMeasure::VolumeLoad);
    assert_eq!(week.change.verdict, WeekVerdict::MoreThanUsual);
    assert_eq!((week.change.low, week.change.high), (Some(960.0), Some(1440.0)));
    assert_eq!(week.change.times_usual, Some(1.625));
    let part = |parts: &[bismar::answers::WeekPart], id: &str| {
        parts.iter().find(|part| part.id == name(id)).cloned().unwrap()
    };
    let squat = part(&week.lifts, "squat");
    assert_eq!((squat.change.low, squat.change.high), (Some(720.0), Some(1080.0)));
    assert_eq!(squat.change.verdict, WeekVerdict::MoreThanUsual);
    let shoulder = part(&week.regions, "shoulder");
    assert_eq!((shoulder.measure, shoulder.sets), (WeekMeasure::Sets, 5));
    assert_eq!((shoulder.change.low, shoulder.change.high), (Some(1.6), Some(2.4)));
    assert_eq!(part(&week.regions, "knee").change.verdict, WeekVerdict::MoreThanUsual);
    assert!(week.missing.is_empty());
    let said = Words::of(&parameters()).week(&week);
    assert_eq!(said[0], "More than this lifter's usual week.");
    assert_eq!(said[1], "9 sets and 45 repetitions on 1 day since 23 Feb 2026, 1950 kg in all.");
    assert_eq!(said[2], "Usual is 960 kg to 1440 kg, over 6 weeks.");
}

/// Monday 5 x 60 = 300, Thursday 4 x 75 = 300, five days of rest. Total 600, mean 600/7, deviation
/// sqrt((2 x 300^2)/7 - (600/7)^2) = 135.526; monotony 0.632456 = sqrt(2/5); strain 600 x 0.632456 = 379.47.
#[test]
fn sessions_that_are_rated_make_load_monotony_and_strain() {
    let rated = |rating, minutes| session(&[("squat", sets(3, 60.0, 5, 3))], Some((rating, minutes)));
    let events = [(day("2026-02-23"), rated(5.0, 60)), (day("2026-02-26"), rated(4.0, 75))];
    let week = asked(&log_of(parameters(), events), day("2026-03-01"));
    let felt = week.felt.load.unwrap();
    assert_eq!(felt.total, 600.0);
    assert!(matches!(felt.monotony, Monotony::Value(value) if (value - 0.632_455_532).abs() < 1e-9));
    assert!((felt.strain.unwrap() - 379.473_319).abs() < 1e-6);
    assert_eq!(week.change.verdict, WeekVerdict::Quiet(QuietReason::ShortHistory));
}

#[test]
fn a_session_that_nobody_rated_leaves_the_week_unfelt_and_is_named() {
    let events = [
        (day("2026-02-23"), session(&[("squat", sets(3, 60.0, 5, 3))], Some((5.0, 60)))),
        (day("2026-02-26"), session(&[("squat", sets(3, 60.0, 5, 3))], None)),
    ];
    let week = asked(&log_of(parameters(), events), day("2026-03-01"));
    assert_eq!(week.felt.load, None);
    assert_eq!(week.missing, [Lacking::SessionRating { sessions: 1 }]);
}

/// Eight weeks, two of holiday, one of return: any week looks like a jump then, so nothing is said.
#[test]
fn after_a_holiday_nothing_is_said() {
    let mut events = steady(8);
    let back = session(&[("squat", sets(5, 60.0, 5, 3))], Some((5.0, 60)));
    events.push((day("2026-01-12").plus(7 * 10).unwrap(), back));
    let week = asked(&log_of(parameters(), events), day("2026-01-18").plus(7 * 10).unwrap());
    assert_eq!(week.change.verdict, WeekVerdict::Quiet(QuietReason::AfterBreak));
    assert!(week.missing.contains(&Lacking::Weeks { weeks: 2 }));
}

/// 80 kg of body less 30 kg of help is 50 kg; 3 sets of 6 are 900 kg.
#[test]
fn helped_sets_count_with_the_body_less_the_help() {
    let pulls = session(&[("pull-up", sets(3, -30.0, 6, 3))], None);
    let weighed = EventKind::BodyMassRecorded(kg(80.0));
    let events = [(day("2026-02-22"), weighed), (day("2026-02-23"), pulls.clone())];
    let week = asked(&log_of(with_helped_pull_up(), events), day("2026-03-01"));
    let total = week.total.unwrap();
    assert_eq!((total.sets, total.helped_sets), (3, 3));
    assert_eq!(total.volume_load.unwrap().value(), 900.0);

    let nobody_weighed =
        asked(&log_of(with_helped_pull_up(), [(day("2026-02-23"), pulls)]), day("2026-03-01"));
    let total = nobody_weighed.total.as_ref().unwrap();
    assert_eq!((total.sets, total.helped_sets, total.repetitions), (3, 3, 18.0));
    assert_eq!(total.volume_load, None);
    assert_eq!(nobody_weighed.measure, WeekMeasure::Sets);
    assert!(nobody_weighed.missing.contains(&Lacking::BodyMass));
}

/// More weeks of the same never widen the band, and turn "too few" into an answer.
#[test]
fn more_weeks_of_the_same_never_widen_the_band() {
    let mut widths = Vec::new();
    for weeks in 1..=14 {
        let today = day("2026-01-18").plus(7 * (weeks - 1)).unwrap();
        let found = asked(&log_of(parameters(), steady(weeks)), today);
        widths.extend(found.change.low.zip(found.change.high).map(|(low, high)| high - low));
        assert_eq!(
            found.change.verdict == WeekVerdict::Quiet(QuietReason::ShortHistory),
            weeks <= 6,
            "{weeks}"
        );
    }
    assert_eq!(widths.len(), 8);
    assert!(widths.windows(2).all(|pair| pair[1] <= pair[0]), "{widths:?}");
}

#[test]
fn a_stop_comes_first_and_nobody_looks_back_past_it() {
    let mut events = steady(3);
    let stop = SymptomReport::new(vec![StopSign::ChestPain]);
    events.push((day("2026-02-01"), EventKind::SymptomReport(stop)));
    let log = log_of(parameters(), events);
    let found = asked(&log, day("2026-02-01"));
    assert_eq!(found.cautions[0], bismar::caution::Caution::EmergencySigns);
    assert!(week(&log, day("2026-01-31")).is_err());
}
