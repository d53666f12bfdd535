//! Laws of the day and of the trend.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::disallowed_methods,
    reason = "a test may panic, and its simulator shares no code with the crate"
)]

use bismar::condition::*;
use bismar::quantity::Day;
use bismar::statistics::Side;
use proptest::prelude::*;

fn day(number: i32) -> Day {
    Day::from_number(number).unwrap()
}

const KINDS: [MarkerKind; 5] =
    [MarkerKind::Recovery, MarkerKind::Sleep, MarkerKind::Mood, MarkerKind::Soreness, MarkerKind::Stress];

fn marker(kind: MarkerKind, today: Option<f64>, history: &[f64]) -> Marker {
    let reading = |(at, value): (i32, &f64)| MarkerReading::new(day(100 + at), *value);
    Marker::new(kind, (0..).zip(history).map(reading).collect()).with_today(today)
}

fn judged(markers: &[Marker]) -> DayVerdict {
    judge_day(day(200), markers, WarmUpTechnique::AsUsual, DayOptions::STANDARD).unwrap()
}

fn markers() -> impl Strategy<Value = Vec<Marker>> {
    prop::collection::vec(
        (prop::option::of(0.0..10.0_f64), prop::collection::vec(0.0..10.0_f64, 0..14)),
        0..5,
    )
    .prop_map(|rows| {
        rows.into_iter().zip(KINDS).map(|((today, past), kind)| marker(kind, today, &past)).collect()
    })
}

/// Worst first; unknown allows no more than an ordinary day.
fn rank(class: DayClass) -> u8 {
    match class {
        DayClass::Below => 0,
        DayClass::BelowSingle => 1,
        DayClass::Unknown => 2,
        DayClass::Within => 3,
        _ => 4,
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn a_missing_answer_never_counts_as_good(markers in markers(), extra in prop::collection::vec(0.0..10.0_f64, 0..14)) {
        let before = judged(&markers).class;
        let mut more = markers.clone();
        more.push(marker(MarkerKind::Freshness, None, &extra));
        prop_assert!(rank(judged(&more).class) <= rank(before).max(rank(DayClass::Unknown)));
        prop_assert!(judged(&more).class != DayClass::Above || before == DayClass::Above);
    }

    #[test]
    fn silence_is_no_better_than_an_ordinary_answer(markers in markers(), history in prop::collection::vec(0.0..10.0_f64, 4..12)) {
        let centre = bismar::statistics::median(&history).unwrap();
        let with = |today| {
            let mut all = markers.clone();
            all.push(marker(MarkerKind::Freshness, today, &history));
            rank(judged(&all).class)
        };
        prop_assert!(with(None) <= with(Some(centre)));
    }

    #[test]
    fn a_worse_answer_never_makes_a_better_day(markers in markers(), history in prop::collection::vec(0.0..10.0_f64, 4..12), a in 0.0..10.0_f64, b in 0.0..10.0_f64) {
        let with = |today| {
            let mut all = markers.clone();
            all.push(marker(MarkerKind::Freshness, Some(today), &history));
            rank(judged(&all).class)
        };
        let (worse, better) = if a < b { (a, b) } else { (b, a) };
        prop_assert!(with(worse) <= with(better));
    }

    #[test]
    fn votes_do_not_move_with_shift_scale_or_day_origin(
        history in prop::collection::vec(1.0..9.0_f64, 4..12), today in 0.0..10.0_f64, shift in -5.0..5.0_f64, scale in 0.5..4.0_f64, origin in -99..99_i32,
    ) {
        let plain = marker(MarkerKind::WarmUpVelocity, Some(today), &history).with_least_spread(0.3);
        let mut moved = plain.clone();
        moved.today = Some(scale * today + shift);
        moved.least_spread = Some(0.3 * scale);
        for reading in &mut moved.history {
            reading.value = scale * reading.value + shift;
            reading.day = reading.day.plus(origin).unwrap();
        }
        let a = judged(&[plain]);
        let b = judge_day(day(200 + origin), &[moved], WarmUpTechnique::AsUsual, DayOptions::STANDARD).unwrap();
        prop_assert_eq!(a.class, b.class);
        prop_assert!((a.votes[0].score.unwrap() - b.votes[0].score.unwrap()).abs() < 1e-6);
    }

    #[test]
    fn no_day_adds_load(markers in markers()) {
        let verdict = judged(&markers);
        prop_assert!(verdict.class != DayClass::Above || verdict.advice == DayAdvice::QualitySetAllowed);
        prop_assert!(verdict.class != DayClass::Unknown || !verdict.class.allows_advance());
        prop_assert!(verdict.false_alarms.agreeing <= verdict.false_alarms.any + 1e-12);
    }
}

#[test]
fn a_critical_drop_in_technique_decides_whatever_the_markers_say() {
    let history = [6.0, 7.0, 6.0, 7.0, 6.5];
    let best =
        [marker(MarkerKind::Recovery, Some(10.0), &history), marker(MarkerKind::Sleep, Some(10.0), &history)];
    let verdict = judge_day(day(200), &best, WarmUpTechnique::CriticalDrop, DayOptions::STANDARD).unwrap();
    assert_eq!(verdict.class, DayClass::Below);
    assert!(verdict.technique_decided);
}

/// A jump varies by four parts in a hundred of its height, whichever unit and sign it was written in.
#[test]
fn the_least_spread_of_a_jump_is_a_part_of_its_height() {
    for (centre, expected) in [(50.0, 2.0), (-50.0, 2.0), (0.5, 0.02)] {
        assert!((MarkerKind::JumpHeight.least_spread(centre) - expected).abs() < 1e-12);
    }
}

#[test]
fn short_and_spreadless_histories_answer_not_enough() {
    let short = judged(&[marker(MarkerKind::Recovery, Some(1.0), &[7.0, 7.0, 7.0])]);
    assert_eq!((short.class, short.votes[0].vote), (DayClass::Unknown, Vote::NotEnoughHistory));
    let flat = marker(MarkerKind::Recovery, Some(1.0), &[7.0; 8]).with_least_spread(0.0);
    assert_eq!(judged(&[flat]).votes[0].vote, Vote::NotEnoughHistory);
    let none = trend(&[], day(0), &TrendOptions::default()).unwrap();
    assert_eq!(none.verdict, TrendVerdict::NotEnoughHistory);
    let one = trend(&[estimate(0, 100.0, 3.0)], day(0), &TrendOptions::default()).unwrap();
    assert!(one.slope.is_none() && one.level_now.is_some() && one.verdict == TrendVerdict::NotEnoughHistory);
}

fn estimate(number: i32, estimate: f64, standard_error: f64) -> StrengthEvidence {
    StrengthEvidence::new(day(number), estimate, standard_error, EvidenceKind::RepsAndEffort)
}

/// A lifter who holds the same estimate for a block has not changed: noise, not a made-up slope.
#[test]
fn holding_is_within_noise() {
    let held: Vec<_> = (0..16).map(|at| estimate(3 * at, 80.0, 2.5)).collect();
    let report = trend(&held, day(46), &TrendOptions::default()).unwrap();
    assert_eq!(report.verdict, TrendVerdict::WithinNoise);
    assert!(report.slope.unwrap().kg_per_week.abs() < 1e-6);
}

#[test]
fn a_trend_moves_with_units_and_day_origin() {
    let values = [100.0, 101.0, 99.5, 103.0, 102.0, 104.5, 103.0, 106.0];
    let plain: Vec<_> = (0..).zip(values).map(|(at, value)| estimate(6 * at, value, 2.0)).collect();
    let pounds: Vec<_> =
        (0..).zip(values).map(|(at, value)| estimate(5000 + 6 * at, 2.2 * value, 4.4)).collect();
    let a = trend(&plain, day(44), &TrendOptions::default()).unwrap();
    let b = trend(&pounds, day(5044), &TrendOptions::default()).unwrap();
    let (a_slope, b_slope) = (a.slope.unwrap(), b.slope.unwrap());
    assert!((2.2 * a_slope.kg_per_week - b_slope.kg_per_week).abs() < 1e-9);
    assert!((2.2 * a_slope.interval.low() - b_slope.interval.low()).abs() < 1e-6);
    assert_eq!(a.verdict, b.verdict);
    let mut shuffled = plain.clone();
    shuffled.reverse();
    assert_eq!(trend(&shuffled, day(44), &TrendOptions::default()).unwrap(), a);
}

#[test]
fn bands_widen_with_the_days() {
    let values = [100.0, 101.0, 99.5, 103.0, 102.0, 104.5, 103.0, 106.0];
    let evidence: Vec<_> = (0..).zip(values).map(|(at, value)| estimate(6 * at, value, 2.0)).collect();
    let options = TrendOptions::default().with_forecast_days(vec![0, 7, 28, 56, 112]);
    let report = trend(&evidence, day(44), &options).unwrap();
    let widths: Vec<f64> = report.forecast.iter().map(|one| one.band.width()).collect();
    assert!(widths.windows(2).all(|pair| pair[0] < pair[1]), "{widths:?}");
}

#[test]
fn one_wild_estimate_moves_the_level_little() {
    let mut evidence: Vec<_> = (0..20).map(|at| estimate(3 * at, 100.0 + f64::from(at % 3), 3.0)).collect();
    let last = |evidence: &[StrengthEvidence]| {
        trend(evidence, day(80), &TrendOptions::default()).unwrap().path.last().unwrap().level
    };
    let before = last(&evidence);
    let slope = |evidence: &[StrengthEvidence]| {
        trend(evidence, day(80), &TrendOptions::default()).unwrap().slope.unwrap().kg_per_week
    };
    let slope_before = slope(&evidence);
    for at in [0, 10, 19] {
        let right = evidence[at].estimate;
        evidence[at].estimate = 310.0;
        assert!((last(&evidence) - before).abs() < if at == 19 { 9.0 } else { 3.0 });
        assert!((slope(&evidence) - slope_before).abs() < 2.0);
        assert_eq!(trend(&evidence, day(80), &TrendOptions::default()).unwrap().outliers, 1);
        evidence[at].estimate = right;
    }
}

#[test]
fn a_sudden_drop_rings_and_a_steady_lifter_does_not() {
    let form = |at: i32| if at < 30 { 0.2 * f64::from(at % 3 - 1) } else { -1.5 };
    let sessions: Vec<_> = (0..40).map(|at| SessionForm::new(day(2 * at), form(at))).collect();
    let quiet = drift(&sessions[..30], DriftOptions::STANDARD).unwrap();
    assert!(quiet.alarms.is_empty());
    let report = drift(&sessions, DriftOptions::STANDARD).unwrap();
    let first = report.alarms.first().unwrap();
    assert_eq!(first.side, Side::Down);
    assert!(first.since >= day(60) || first.kind == DriftKind::Slow);
    assert!(report.sessions_to_see_sudden < report.sessions_to_see_slow);
}

/// Verdicts drawn without looking at the day are not called better than chance more often than they should be.
#[test]
fn verdicts_at_random_are_called_chance() {
    let mut generator = Lifters(9);
    let mut called = 0;
    for _ in 0..400 {
        let past: Vec<_> = (0..40)
            .map(|_| {
                PastVerdict::new(
                    if generator.uniform() < 0.3 { DayClass::BelowSingle } else { DayClass::Within },
                    generator.uniform() < 0.3,
                )
            })
            .collect();
        called += u32::from(calibration(&past).unwrap().skill == VerdictSkill::BetterThanChance);
    }
    assert!(called <= 32, "{called} of 400"); // 5 % and three standard errors
}

/// A simulator of its own: a linear congruential generator and the polar method, nothing of the crate.
struct Lifters(u64);

impl Lifters {
    fn uniform(&mut self) -> f64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        ((self.0 >> 11) as f64 + 0.5) / 9_007_199_254_740_992.0
    }

    fn normal(&mut self) -> f64 {
        loop {
            let (a, b) = (2.0 * self.uniform() - 1.0, 2.0 * self.uniform() - 1.0);
            let square = a * a + b * b;
            if square > 0.0 && square < 1.0 {
                return a * (-2.0 * square.ln() / square).sqrt();
            }
        }
    }

    /// Eight weeks of one lifter: true weekly gain, and estimates.
    ///
    /// 60 to 160 kg; gain -0.5 to 1 kg a week; 1 to 3 sessions a week, some missed; an equation that is wrong for this
    /// lifter by about 4 % throughout; day-to-day scatter of 1 to 3 %; the level also wanders (half of the lifters not,
    /// the others by 0.5 to 1.5 kg over the block); a tenth of the lifters type one estimate wrongly by 5 %.
    fn block(&mut self) -> (f64, Vec<StrengthEvidence>) {
        let level = 60.0 + 100.0 * self.uniform();
        let gain = -0.5 + 1.5 * self.uniform();
        let gap = [7, 4, 3, 2][(4.0 * self.uniform()) as usize];
        let wrong = 1.0 + 0.04 * self.normal();
        let scatter = level * (0.01 + 0.02 * self.uniform());
        let wander = if self.uniform() < 0.5 { 0.0 } else { 0.5 + self.uniform() };
        let mut wandered = 0.0;
        let mut evidence = Vec::new();
        for number in (0..=56).step_by(gap) {
            wandered += wander * (gap as f64 / 56.0).sqrt() * self.normal();
            if self.uniform() < 0.1 {
                continue;
            }
            let truth = level + gain * f64::from(number) / 7.0 + wandered;
            let seen = wrong * truth + scatter * self.normal();
            evidence.push(estimate(number, seen, 0.045 * level));
        }
        if self.uniform() < 0.1 {
            let at = (self.uniform() * evidence.len() as f64) as usize;
            evidence[at].estimate *= 1.05;
        }
        (wrong * gain, evidence)
    }
}

/// Part of the slopes whose interval holds the truth, and part called the wrong way.
fn coverage(lifters: u32, seed: u64) -> (f64, f64) {
    let mut simulator = Lifters(seed);
    let (mut judged, mut covered, mut wrong_way) = (0.0, 0.0, 0.0);
    for _ in 0..lifters {
        let (gain, evidence) = simulator.block();
        let report = trend(&evidence, day(56), &TrendOptions::default()).unwrap();
        let Some(slope) = report.slope else { continue };
        judged += 1.0;
        covered += f64::from(u8::from(slope.interval.contains(gain)));
        let wrong = (report.verdict == TrendVerdict::Rising && gain < 0.0)
            || (report.verdict == TrendVerdict::Falling && gain > 0.0);
        wrong_way += f64::from(u8::from(wrong));
    }
    (covered / judged, wrong_way / judged)
}

#[test]
fn intervals_of_the_slope_cover_as_stated() {
    let (covered, wrong_way) = coverage(400, 3);
    println!("slope coverage {covered:.3}, wrong way {wrong_way:.3} (400 lifters)");
    assert!((0.90..=0.99).contains(&covered), "{covered}");
}

#[test]
#[ignore = "slow: 5000 simulated lifters"]
fn intervals_of_the_slope_cover_between_92_and_97_percent() {
    let (covered, wrong_way) = coverage(5000, 1);
    println!("slope coverage {covered:.4}, wrong way {wrong_way:.4} (5000 lifters)");
    assert!((0.92..=0.97).contains(&covered), "{covered}");
    assert!(wrong_way < 0.025, "{wrong_way}");
}

/// Steady lifters over years: the alarms ring about as rarely as was asked.
#[test]
#[ignore = "slow: 600000 simulated sessions"]
fn false_alarms_are_as_rare_as_the_coach_asked() {
    let mut simulator = Lifters(5);
    let count = 20_000;
    let (mut alarms, mut sessions) = (0.0, 0.0);
    for _ in 0..30 {
        let forms: Vec<_> = (0..count).map(|at| SessionForm::new(day(at), simulator.normal())).collect();
        alarms += drift(&forms, DriftOptions::STANDARD).unwrap().alarms.len() as f64;
        sessions += f64::from(count);
    }
    let between = sessions / alarms;
    println!("sessions between false alarms: {between:.1}, asked {SESSIONS_BETWEEN_FALSE_ALARMS}");
    assert!((140.0..175.0).contains(&between), "{between}");
}
