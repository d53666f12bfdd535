//! Trend, own curve and pair.

use bismar::answers::{
    EstimatedBy, Lacking, LiftCurve, PairAnswer, PairLoads, PairPlace, Trend, TrendScale, curve, pair, trend,
};
use bismar::condition::TrendVerdict;
use bismar::one_rm::SetRefusal;
use bismar::quantity::Day;
use bismar::record::*;
use bismar::text::Words;

use crate::made::{
    all_careful, day, log_of, monday, of, session, sets, single, to_failure, with_helped_pull_up,
};
use crate::world::{kg, name, parameters};

fn moved(log: &Log, lift: &str, today: Day) -> Trend {
    let found = trend(log, &name(lift), today, None).unwrap();
    all_careful(&Words::of(&parameters()).trend(&found));
    found
}

fn own(log: &Log, today: Day) -> LiftCurve {
    let found = curve(log, &name("squat"), today).unwrap();
    all_careful(&Words::of(&parameters()).curve(&found));
    found
}

fn paired(log: &Log, today: Day, loads: Option<&PairLoads>) -> PairAnswer {
    let found = pair(log, &name("squat"), &name("press"), today, loads).unwrap();
    all_careful(&Words::of(&parameters()).pair_answer(&found));
    found
}

/// One single a week, of which the load is the maximum.
fn singles(loads: impl IntoIterator<Item = f64>) -> Log {
    log_of(parameters(), (0..).zip(loads).map(|(week, load)| (monday(week), of("squat", vec![single(load)]))))
}

#[test]
fn without_a_session_there_is_no_trend_no_curve_and_only_the_prior_of_a_pair() {
    let empty = Log::new(Lifter::new(name("invented")));
    let today = day("2026-03-02");
    let found = moved(&empty, "squat", today);
    assert!(found.report.is_none() && found.points.is_empty());
    assert_eq!(found.missing, [Lacking::SessionOf(name("squat"))]);
    assert_eq!(own(&empty, today).missing, [Lacking::SessionOf(name("squat"))]);
    let found = paired(&empty, today, None);
    assert_eq!((found.own.pairs, found.own.own_weight, found.replaces_prior), (0, 0.0, false));
    assert_eq!((found.ratio, found.place), (None, PairPlace::Unknown));
    assert_eq!(found.missing, ["squat", "press"].map(|lift| Lacking::SessionOf(name(lift))));
    assert!(trend(&singles([60.0]), &name("bench"), today, None).is_err());
}

/// Nine Mondays, 100 to 108 kg in steps of 1: each estimate is the load itself, and the line through them rises 1 kg a week.
#[test]
fn a_steady_rise_is_rising_by_its_own_slope() {
    let found = moved(&singles((0..9).map(|week| 100.0 + f64::from(week))), "squat", monday(8));
    let values: Vec<f64> = found.points.iter().map(|point| (point.value * 1e6).round() / 1e6).collect();
    assert_eq!(values, (0..9).map(|week| 100.0 + f64::from(week)).collect::<Vec<_>>());
    assert_eq!((found.scale, found.estimated_by), (TrendScale::Load, EstimatedBy::Equations));
    let report = found.report.unwrap();
    assert_eq!(report.verdict, TrendVerdict::Rising);
    let slope = report.slope.unwrap();
    assert!((slope.kg_per_week - 1.0).abs() < 0.05, "{}", slope.kg_per_week);
    assert!(slope.interval.contains(1.0));
}

#[test]
fn the_same_load_for_weeks_is_within_noise() {
    let found =
        moved(&singles([100.0, 101.0, 99.0, 100.0, 101.0, 99.0, 100.0, 100.0, 100.0]), "squat", monday(8));
    assert_eq!(found.report.unwrap().verdict, TrendVerdict::WithinNoise);
    let few = moved(&singles([100.0, 101.0, 102.0]), "squat", monday(2));
    assert_eq!(few.report.unwrap().verdict, TrendVerdict::NotEnoughHistory);
}

/// 80 kg of body, 30 kg of help: 50 kg; help that falls by 1 kg a week is a rise of 1 kg a week.
#[test]
fn a_helped_lift_is_read_as_the_body_less_the_help() {
    let pulls = |week: i32| (monday(week), of("pull-up", vec![single(f64::from(week) - 30.0)]));
    let weighed = (day("2026-01-11"), EventKind::BodyMassRecorded(kg(80.0)));
    let log = log_of(with_helped_pull_up(), core::iter::once(weighed).chain((0..9).map(pulls)));
    let found = moved(&log, "pull-up", monday(8));
    assert_eq!(found.scale, TrendScale::BodyLessHelp);
    assert!((found.points[0].value - 50.0).abs() < 1e-9 && (found.points[8].value - 58.0).abs() < 1e-9);
    assert_eq!(found.report.unwrap().verdict, TrendVerdict::Rising);

    let nobody_weighed = moved(&log_of(with_helped_pull_up(), (0..9).map(pulls)), "pull-up", monday(8));
    assert!(nobody_weighed.report.is_none());
    assert_eq!(nobody_weighed.missing, [Lacking::UsableSet(name("pull-up")), Lacking::BodyMass]);
}

#[test]
fn sessions_on_another_rung_say_nothing_about_this_one() {
    let at = |rung, load| {
        let mut done = LiftSession::as_granted(name("squat"), vec![single(load)]);
        done.place = Some(Place::at_rung(rung));
        EventKind::SessionRecorded(Session::new(vec![done]).with_pain(Vec::new()))
    };
    let easier = (0..4).map(|week| (monday(week), at(0, 120.0)));
    let log = log_of(parameters(), easier.chain((4..8).map(|week| (monday(week), at(1, 100.0)))));
    let found = moved(&log, "squat", monday(8));
    assert_eq!((found.elsewhere, found.points.len()), (4, 4));
    assert!(found.points.iter().all(|point| (point.value - 100.0).abs() < 1e-9));
}

/// 0.50 to 0.54 m/s at 60 kg on five Mondays: every pair of sessions rises 0.01 m/s a week. Velocities at 50 kg are fewer.
#[test]
fn velocities_are_compared_at_one_load() {
    let set = |load, velocity| sets(1, load, 3, 3).remove(0).with_velocity(velocity);
    let one = |week: i32| {
        let velocity = 0.50 + 0.01 * f64::from(week);
        (monday(week), of("squat", vec![set(60.0, velocity - 0.05), set(60.0, velocity)]))
    };
    let lighter = (monday(0).plus(2).unwrap(), of("squat", vec![set(50.0, 0.9)]));
    let log = log_of(parameters(), core::iter::once(lighter).chain((0..5).map(one)));
    let found = moved(&log, "squat", monday(5)).velocity.unwrap();
    assert_eq!((found.load, found.sessions), (kg(60.0), 5));
    assert!((found.per_week - 0.01).abs() < 1e-12);
    assert_eq!(found.verdict, TrendVerdict::Rising);
    let mut wrong = log.clone();
    wrong.events.push(Event::new(99, monday(5), of("squat", vec![set(60.0, 11.0)])));
    assert!(trend(&wrong, &name("squat"), monday(5), None).is_err());
}

/// Sets of a lifter of 100 kg at one repetition and 4 % a repetition, 100 e^(-0.04 (r - 1)): 92.31, 81.87 and 69.77 kg for 3, 6
/// and 10.
fn curved(weeks: i32) -> Log {
    let one = |week| {
        (monday(week), of("squat", vec![to_failure(92.31, 3), to_failure(81.87, 6), to_failure(69.77, 10)]))
    };
    log_of(parameters(), (0..weeks).map(one))
}

#[test]
fn an_own_curve_is_found_and_used_where_it_is_surer() {
    let found = own(&curved(10), monday(9));
    let curve = found.curve.clone().unwrap();
    assert!((curve.slope - 0.04).abs() < 0.002, "{}", curve.slope);
    assert!(curve.slope_interval.contains(0.04));
    assert_eq!((found.enough, found.sets, found.usable), (true, 30, 30));
    assert!(found.refused.is_empty() && found.missing.is_empty());
    let moved = moved(&curved(10), "squat", monday(9));
    assert_eq!(moved.estimated_by, EstimatedBy::OwnCurve);
    assert_eq!(moved.report.unwrap().verdict, TrendVerdict::WithinNoise);
}

/// More sets of the same lifter never make the slope less sure.
#[test]
fn more_sets_never_widen_the_slope() {
    let widths: Vec<f64> =
        (1..8).map(|weeks| own(&curved(weeks), monday(8)).curve.unwrap().slope_interval.width()).collect();
    assert!(widths.windows(2).all(|pair| pair[1] <= pair[0] + 1e-12), "{widths:?}");
}

#[test]
fn too_few_sets_make_no_curve_and_say_why() {
    let easy = sets(3, 60.0, 5, 3);
    let log = log_of(parameters(), [(monday(0), of("squat", [vec![to_failure(80.0, 6)], easy].concat()))]);
    let found = own(&log, monday(1));
    assert!(found.curve.is_none() && !found.enough);
    assert_eq!((found.sets, found.usable), (4, 1));
    assert_eq!((found.refused[0].why, found.refused[0].sets), (SetRefusal::TechniqueNotScored, 3));
    assert_eq!(found.missing, [Lacking::SetsForCurve { lift: name("squat"), usable: 1 }]);
}

/// Ten Mondays, strict 60 and forgiving 72, each a single after which a second was missed: every ratio is 1.2. Such a
/// single's logarithm has the variance 0.042^2 + 0.01^2 = 0.001864, a pair's 0.003728, ten pairs' 0.0003728; the prior's ((ln 2.5 - ln 0.9) / 3.92)^2 = 0.06792
/// about ln 1.5. Own weight 0.06792 / (0.06792 + 0.0003728) = 0.99454; ratio exp(ln 1.5 + 0.99454 (ln 1.2 - ln 1.5)) = 1.2015.
#[test]
fn an_own_ratio_takes_the_place_of_the_prior_from_eight_pairs_on() {
    let limit = |load| vec![single(load).with_failed(true)];
    let one = |week| (monday(week), session(&[("squat", limit(60.0)), ("press", limit(72.0))], None));
    let log = |weeks| log_of(parameters(), (0..weeks).map(one));
    let found = paired(&log(10), monday(9), None);
    assert_eq!(found.own.pairs, 10);
    assert!((found.own.ratio - 1.2015).abs() < 0.0002, "{}", found.own.ratio);
    assert!((found.own.own_weight - 0.9945).abs() < 0.0005, "{}", found.own.own_weight);
    assert!(found.replaces_prior && found.own.interval.contains(1.2));
    let band = found.band.unwrap();
    assert!((band.low() - 1.2).abs() < 1e-9 && (band.high() - 1.2).abs() < 1e-9);
    assert_eq!((found.ratio, found.place), (Some(1.2), PairPlace::Usual));
    let few = paired(&log(4), monday(3), None);
    assert!(!few.replaces_prior && few.band.is_none());
    assert!(few.own.interval.width() > found.own.interval.width());
    let ahead = PairLoads::default().with_strict(kg(60.0)).with_forgiving(kg(90.0));
    assert_eq!(paired(&log(10), monday(9), Some(&ahead)).place, PairPlace::ForgivingAhead);
    let closer = PairLoads::default().with_strict(kg(60.0)).with_forgiving(kg(63.0));
    assert_eq!(paired(&log(10), monday(9), Some(&closer)).place, PairPlace::StrictHigher);
}
