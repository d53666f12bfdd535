//! What must hold for every record of loads, whatever its numbers.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::disallowed_methods,
    reason = "a test may panic"
)]

use bismar::dose::*;
use bismar::quantity::{Fraction, Mass, Reps};
use proptest::prelude::*;

fn close(a: f64, b: f64, relative: f64) -> bool {
    (a - b).abs() <= relative * a.abs().max(b.abs()).max(1e-300)
}

fn set_done() -> impl Strategy<Value = SetDone> {
    (0_i64..400_000, 0_u16..40, 0_u16..8).prop_map(|(grams, reps, sets)| {
        SetDone::new(Mass::from_kg(grams as f64 / 1000.0).unwrap(), Reps::from_halves(reps).unwrap())
            .times(sets)
    })
}

fn sets() -> impl Strategy<Value = Vec<SetDone>> {
    prop::collection::vec(set_done(), 0..20)
}

fn load() -> impl Strategy<Value = DailyLoad> {
    prop_oneof![
        3 => (1_u32..100_000).prop_map(|load| DailyLoad::recorded(f64::from(load) / 10.0).unwrap()),
        2 => Just(DailyLoad::Rested),
    ]
}

fn days(most: usize) -> impl Strategy<Value = Vec<DailyLoad>> {
    prop::collection::vec(load(), 0..most)
}

fn days_with_gaps(most: usize) -> impl Strategy<Value = Vec<DailyLoad>> {
    prop::collection::vec(prop_oneof![9 => load(), 1 => Just(DailyLoad::NotRecorded)], 0..most)
}

fn scaled(days: &[DailyLoad], by: f64) -> Vec<DailyLoad> {
    days.iter()
        .map(|day| match day {
            DailyLoad::Recorded(load) => DailyLoad::recorded(load.value() * by).unwrap(),
            other => *other,
        })
        .collect()
}

fn response() -> impl Strategy<Value = ImpulseResponse> {
    (0.01_f64..2.0, 1.05_f64..4.0, 10.0_f64..90.0, 0.1_f64..0.8).prop_map(|(gain, times, slow, share)| {
        ImpulseResponse::new(100.0, gain, gain * times, slow, slow * share).unwrap()
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(128))]

    #[test]
    fn volume_adds_up(one in sets(), other in sets()) {
        let both: Vec<SetDone> = one.iter().chain(&other).copied().collect();
        let sum = volume_load(&one).unwrap().value() + volume_load(&other).unwrap().value();
        prop_assert!(close(volume_load(&both).unwrap().value(), sum, 1e-14));
        let reps = total_repetitions(&one).unwrap() + total_repetitions(&other).unwrap();
        prop_assert_eq!(total_repetitions(&both).unwrap().to_bits(), reps.to_bits());
    }

    #[test]
    fn the_order_of_sets_changes_no_bit(sets in sets()) {
        let turned: Vec<SetDone> = sets.iter().rev().copied().collect();
        prop_assert_eq!(volume_load(&sets).unwrap(), volume_load(&turned).unwrap());
    }

    #[test]
    fn pounds_and_kilograms_give_the_same_volume(quarter_pounds in 1_u32..3000, reps in 1_u16..30) {
        let pounds = f64::from(quarter_pounds) / 4.0;
        let in_pounds = SetDone::new(Mass::from_lb(pounds).unwrap(), Reps::whole(reps).unwrap());
        let in_kilograms = SetDone::new(Mass::from_kg(pounds * 0.45359237).unwrap(), Reps::whole(reps).unwrap());
        let (a, b) = (volume_load(&[in_pounds]).unwrap().value(), volume_load(&[in_kilograms]).unwrap().value());
        // One nanogram of rounding for each repetition at most.
        prop_assert!((a - b).abs() <= 1e-12 * f64::from(reps));
        prop_assert!(close(a, pounds * 0.45359237 * f64::from(reps), 1e-11));
    }

    #[test]
    fn relative_volume_is_volume_over_the_maximum(percent in 1_u32..100, reps in 1_u16..20, maximum in 20_u32..300) {
        let fraction = f64::from(percent) / 100.0;
        let load = Mass::from_kg(f64::from(maximum) * fraction).unwrap();
        let reps = Reps::whole(reps).unwrap();
        let relative = relative_volume(&[RelativeSet::new(Fraction::new(fraction).unwrap(), reps)]).unwrap();
        let one_rm = Mass::from_kg(f64::from(maximum)).unwrap();
        let by_load = relative_volume_load(&[SetDone::new(load, reps)], one_rm).unwrap();
        prop_assert!(close(relative, by_load, 1e-9));
    }

    #[test]
    fn a_body_that_stays_down_adds_nothing(sets in sets(), body in 40_u32..150) {
        let body = Mass::from_kg(f64::from(body)).unwrap();
        let all_still = maximum_dynamic_strength_volume_load(&sets, body, 1.0).unwrap();
        prop_assert_eq!(all_still, volume_load(&sets).unwrap());
    }

    #[test]
    fn monotony_is_blind_to_order_and_unit(week in prop::collection::vec(load(), 7), by in 0.01_f64..100.0) {
        let plain = week_monotony(&week, Deviation::Population).unwrap();
        let turned: Vec<DailyLoad> = week.iter().rev().copied().collect();
        let (turned, larger) = (
            week_monotony(&turned, Deviation::Population).unwrap(),
            week_monotony(&scaled(&week, by), Deviation::Population).unwrap(),
        );
        match (plain.monotony, turned.monotony, larger.monotony) {
            (Monotony::Value(a), Monotony::Value(b), Monotony::Value(c)) => {
                prop_assert!(close(a, b, 1e-12) && close(a, c, 1e-9));
                prop_assert!(close(larger.strain.unwrap(), plain.strain.unwrap() * by, 1e-9));
            }
            (a, b, c) => prop_assert!(a == Monotony::UndefinedAllEqual && b == a && c == a),
        }
    }

    #[test]
    fn monotony_stays_below_its_structural_limit(week in prop::collection::vec(load(), 7)) {
        for kind in [Deviation::Population, Deviation::Sample] {
            let answer = week_monotony(&week, kind).unwrap();
            if let (Monotony::Value(value), Some(limit)) = (answer.monotony, answer.largest_possible) {
                prop_assert!(value <= limit * (1.0 + 1e-12), "{value} above {limit}");
            }
        }
    }

    #[test]
    fn rolling_means_are_those_of_plain_sums(days in days_with_gaps(120), window in 1_u16..40) {
        let means = rolling_load(&days, window).unwrap();
        prop_assert_eq!(means.len(), days.len());
        for (at, mean) in means.iter().enumerate() {
            let first = (at + 1).checked_sub(usize::from(window));
            let known = first.and_then(|first| {
                days[first..=at].iter().map(|day| day.value()).collect::<Option<Vec<f64>>>()
            });
            match (mean, known) {
                (Some(mean), Some(loads)) => {
                    let plain = loads.iter().sum::<f64>() / f64::from(window);
                    prop_assert!(close(*mean, plain, 1e-12), "{mean} {plain}");
                }
                (mean, known) => prop_assert!(mean.is_none() && known.is_none()),
            }
        }
    }

    #[test]
    fn a_huge_day_leaves_no_trace_in_a_rolling_mean(after in prop::collection::vec(1_u32..1000, 20)) {
        let mut days = vec![DailyLoad::recorded(1e9).unwrap(); 7];
        days.extend(after.iter().map(|load| DailyLoad::recorded(f64::from(*load) / 1000.0).unwrap()));
        let plain: f64 = after[13..].iter().map(|load| f64::from(*load) / 1000.0).sum::<f64>() / 7.0;
        let last = rolling_load(&days, 7).unwrap()[26].unwrap();
        prop_assert!(close(last, plain, 1e-12), "{last} {plain}");
    }

    #[test]
    fn order_inside_the_window_counts_only_for_fading_means(loads in prop::collection::vec(0_u32..1000, 7)) {
        let days: Vec<DailyLoad> = loads.iter().map(|load| DailyLoad::recorded(f64::from(*load)).unwrap()).collect();
        let turned: Vec<DailyLoad> = days.iter().rev().copied().collect();
        let last = |days: &[DailyLoad]| rolling_load(days, 7).unwrap()[6].unwrap();
        prop_assert!(close(last(&days), last(&turned), 1e-12));
        let fading = |days: &[DailyLoad]| {
            weighted_load(days, Fading::Span(7), WeightedStart::Zero).unwrap()[6].unwrap()
        };
        if loads.windows(2).all(|pair| pair[0] < pair[1]) {
            prop_assert!(fading(&days) > fading(&turned));
        }
    }

    #[test]
    fn coupled_and_uncoupled_say_the_same(days in prop::collection::vec(load(), 28)) {
        let ratio = |options| match recent_versus_usual(&days, options).unwrap().ratio {
            RatioAnswer::Value(value) => Some(value),
            RatioAnswer::Undefined(_) => None,
        };
        let (coupled, uncoupled) = (ratio(RatioOptions::rolling_coupled()), ratio(RatioOptions::rolling_uncoupled()));
        if let (Some(coupled), Some(uncoupled)) = (coupled, uncoupled) {
            prop_assert!(coupled <= 4.0 + 1e-12);
            prop_assert!(close(uncoupled_from_coupled(coupled, 7, 28).unwrap(), uncoupled, 1e-9));
            prop_assert!(close(coupled_from_uncoupled(uncoupled, 7, 28).unwrap(), coupled, 1e-9));
        }
    }

    #[test]
    fn a_ratio_is_blind_to_the_unit(days in prop::collection::vec(load(), 40), by in 0.01_f64..100.0) {
        for options in [RatioOptions::rolling_uncoupled(), RatioOptions::weighted_williams_2017()] {
            let plain = recent_versus_usual(&days, options).unwrap().ratio;
            let larger = recent_versus_usual(&scaled(&days, by), options).unwrap().ratio;
            match (plain, larger) {
                (RatioAnswer::Value(a), RatioAnswer::Value(b)) => prop_assert!(close(a, b, 1e-9)),
                // On the edge of the guard rounding may decide; nothing else may.
                (a, b) => prop_assert_eq!(core::mem::discriminant(&a), core::mem::discriminant(&b)),
            }
        }
    }

    #[test]
    fn before_is_after_of_the_day_before(days in days(60), response in response()) {
        let before = impulse_response_before_session(&days, response, InitialState::NoHistory).unwrap();
        let after = impulse_response_after_session(&days, response, InitialState::NoHistory).unwrap();
        let left = (-1.0 / response.times().fitness_days()).exp();
        for (at, day) in before.iter().enumerate() {
            let earlier = if at == 0 { 0.0 } else { after[at - 1].fitness };
            prop_assert!(close(day.fitness, earlier * left, 1e-12));
            prop_assert!(close(day.fitness + days[at].value().unwrap(), after[at].fitness, 1e-12));
            if days[at] == DailyLoad::Rested {
                prop_assert_eq!(day.performance.to_bits(), after[at].performance.to_bits());
            }
        }
    }

    #[test]
    fn responses_add_up(one in prop::collection::vec(load(), 30), other in prop::collection::vec(load(), 30), response in response()) {
        let sum: Vec<DailyLoad> = one.iter().zip(&other)
            .map(|(a, b)| DailyLoad::recorded(a.value().unwrap() + b.value().unwrap()).unwrap()).collect();
        let last = |days: &[DailyLoad]| {
            impulse_response_after_session(days, response, InitialState::NoHistory).unwrap()[29]
        };
        prop_assert!(close(last(&one).fitness + last(&other).fitness, last(&sum).fitness, 1e-12));
        prop_assert!(close(last(&one).fatigue + last(&other).fatigue, last(&sum).fatigue, 1e-12));
    }

    #[test]
    fn a_steady_lifter_stays(load in 1.0_f64..1000.0, response in response()) {
        let start = InitialState::SteadyLoad(LoadTotal::new(load).unwrap());
        let days = vec![DailyLoad::recorded(load).unwrap(); 50];
        let curve = impulse_response_after_session(&days, response, start).unwrap();
        prop_assert!(close(curve[0].fitness, curve[49].fitness, 1e-10));
    }

    #[test]
    fn the_peak_is_the_highest_point(response in response()) {
        let (recovery, peak) = (days_to_recovery(response).unwrap(), days_to_peak(response).unwrap());
        let (slow, quick) = (response.times().fitness_days(), response.times().fatigue_days());
        let between = slow * quick / (slow - quick) * (slow / quick).ln();
        prop_assert!(close(peak - recovery, between, 1e-9));
        let height = |days: f64| {
            response.fitness_gain() * (-days / slow).exp() - response.fatigue_gain() * (-days / quick).exp()
        };
        let best = peak_gain(response).unwrap();
        prop_assert!(height(recovery).abs() < 1e-9 * response.fatigue_gain());
        prop_assert!(height(peak - 0.5) < best && height(peak + 0.5) < best);
    }

    #[test]
    fn with_one_load_a_variable_response_is_a_plain_one(load in 1.0_f64..500.0) {
        // A single session: its fatigue gain is the rate times its own load.
        let times = TimeConstants::new(40.0, 10.0).unwrap();
        let mut days = vec![DailyLoad::Rested; 30];
        days[0] = DailyLoad::recorded(load).unwrap();
        let variable = VariableResponse::new(50.0, 0.05, 0.001, times, 2.0).unwrap();
        let plain = ImpulseResponse::new(50.0, 0.05, 0.001 * load, 40.0, 10.0).unwrap();
        let one = variable_response_busso_2003(&days, variable).unwrap();
        let other = impulse_response_before_session(&days, plain, InitialState::NoHistory).unwrap();
        for (a, b) in one.iter().zip(&other) {
            prop_assert!((a.performance - b.performance).abs() < 1e-10);
        }
    }

    #[test]
    fn short_and_empty_logs_give_answers_or_errors(days in days_with_gaps(3), week in prop_oneof![load(), Just(DailyLoad::NotRecorded)]) {
        let _ = weekly_load(&days);
        let _ = week_monotony(&days, Deviation::Sample);
        for options in [RatioOptions::rolling_coupled(), RatioOptions::rolling_uncoupled(), RatioOptions::weighted_williams_2017()] {
            let answer = recent_versus_usual(&days, options).unwrap();
            prop_assert!(matches!(answer.ratio, RatioAnswer::Undefined(_)));
        }
        let change = week_change(&days, week, BandOptions::default()).unwrap();
        prop_assert!(matches!(change.verdict, WeekVerdict::Quiet(_)));
        let _ = easy_week_status(&days, None, EasyWeekOptions::default()).unwrap();
        let options = FitOptions::our_choice(ResponseForm::AfterSession, InitialState::NoHistory);
        if let Ok(answer) = fit_impulse_response(&days, &[], &options) {
            prop_assert!(matches!(answer, FitAnswer::Refused(_)));
        }
    }

    #[test]
    fn a_return_never_allows_more_than_the_highest_volume(highest in 0.0_f64..1e6, week in 1_u16..60) {
        for group in [ReturnGroup::AfterBreak, ReturnGroup::New] {
            let limit = return_volume_limit_caterisano_2019(LoadTotal::new(highest).unwrap(), week, group).unwrap();
            let next = return_volume_limit_caterisano_2019(LoadTotal::new(highest).unwrap(), week + 1, group).unwrap();
            prop_assert!(limit <= next && next.value() <= highest);
        }
    }

    #[test]
    fn tapers_fall_to_their_cut(days in 1_u16..90, cut in 0.0_f64..0.99) {
        for shape in [TaperShape::Step, TaperShape::Linear, TaperShape::Exponential] {
            let shares: Vec<f64> = (1..=days).map(|day| taper_share(shape, day, days, cut).unwrap()).collect();
            prop_assert!(shares.windows(2).all(|pair| pair[1] <= pair[0] + 1e-15));
            prop_assert!(close(*shares.last().unwrap(), 1.0 - cut, 1e-12));
        }
    }
}

/// Noise that is the same everywhere: a small multiplicative generator, its top bits added twelve times.
struct Noise(u64);

impl Noise {
    fn uniform(&mut self) -> f64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 11) as f64 / (1_u64 << 53) as f64
    }

    fn normal(&mut self) -> f64 {
        (0..12).map(|_| self.uniform()).sum::<f64>() - 6.0
    }
}

/// An invented year of loads: two or three sessions in four days, one holiday, one hard month.
fn year(noise: &mut Noise, length: usize) -> Vec<DailyLoad> {
    let day = |at: usize| {
        let hard = if at / 30 % 3 == 1 { 1.8 } else { 1.0 };
        let holiday = (at / 14) % 9 == 4;
        if holiday || noise.uniform() < 0.4 {
            DailyLoad::Rested
        } else {
            DailyLoad::recorded((20.0 + 100.0 * noise.uniform()) * hard).unwrap()
        }
    };
    (0..length).map(day).collect()
}

fn measure(
    days: &[DailyLoad],
    truth: ImpulseResponse,
    form: ResponseForm,
    spread: f64,
    noise: &mut Noise,
) -> Vec<MeasuredDay> {
    let curve = match form {
        ResponseForm::BeforeSession => impulse_response_before_session(days, truth, InitialState::NoHistory),
        ResponseForm::AfterSession => impulse_response_after_session(days, truth, InitialState::NoHistory),
    };
    let points = curve.unwrap();
    (1..)
        .zip(points)
        .map(|(day, point)| MeasuredDay::new(day, point.performance + spread * noise.normal()))
        .collect()
}

fn fitted(answer: FitAnswer) -> ResponseFit {
    match answer {
        FitAnswer::Fitted(fit) => *fit,
        FitAnswer::Refused(reasons) => panic!("{reasons:?}"),
    }
}

#[test]
fn a_fit_finds_the_truth_without_noise() {
    for (seed, form) in [(1, ResponseForm::BeforeSession), (2, ResponseForm::AfterSession)] {
        let mut noise = Noise(seed);
        let days = year(&mut noise, 200);
        let truth = ImpulseResponse::new(120.0, 0.05, 0.09, 42.0, 9.0).unwrap();
        let measured = measure(&days, truth, form, 0.0, &mut noise);
        let fit = fitted(
            fit_impulse_response(&days, &measured, &FitOptions::our_choice(form, InitialState::NoHistory))
                .unwrap(),
        );
        let times = fit.response.times();
        assert!(close(times.fitness_days(), 42.0, 1e-6) && close(times.fatigue_days(), 9.0, 1e-6), "{fit:?}");
        assert!(close(fit.response.fitness_gain(), 0.05, 1e-6) && fit.explained > 0.999_999);
        assert!(close(fit.response.baseline(), 120.0, 1e-6));
        // A start of the caller's own leads to the same place.
        let mut own = FitOptions::our_choice(form, InitialState::NoHistory);
        own.starts = vec![TimeConstants::new(30.0, 12.0).unwrap()];
        let again = fitted(fit_impulse_response(&days, &measured, &own).unwrap());
        assert!(close(again.response.times().fatigue_days(), 9.0, 1e-6));
    }
}

#[test]
fn a_fit_is_blind_to_the_unit_of_load() {
    let mut noise = Noise(5);
    let days = year(&mut noise, 250);
    let truth = ImpulseResponse::new(120.0, 0.05, 0.09, 42.0, 9.0).unwrap();
    let form = ResponseForm::BeforeSession;
    let measured = measure(&days, truth, form, 1.0, &mut noise);
    let options = FitOptions::our_choice(form, InitialState::NoHistory);
    let plain = fitted(fit_impulse_response(&days, &measured, &options).unwrap());
    let larger = fitted(fit_impulse_response(&scaled(&days, 25.0), &measured, &options).unwrap());
    assert!(close(plain.response.times().fitness_days(), larger.response.times().fitness_days(), 1e-6));
    assert!(close(plain.response.fitness_gain(), 25.0 * larger.response.fitness_gain(), 1e-6));
    assert!(close(plain.residual_squares, larger.residual_squares, 1e-9));
}

#[test]
fn noise_alone_is_refused() {
    for seed in 0..12 {
        let mut noise = Noise(seed);
        let days = year(&mut noise, 150);
        let measured: Vec<MeasuredDay> =
            (1..=150).map(|day| MeasuredDay::new(day, 100.0 + 3.0 * noise.normal())).collect();
        let options = FitOptions::our_choice(ResponseForm::BeforeSession, InitialState::NoHistory);
        let answer = fit_impulse_response(&days, &measured, &options).unwrap();
        assert!(matches!(answer, FitAnswer::Refused(_)), "seed {seed}: {answer:?}");
    }
}

#[test]
fn fitness_alone_does_not_carry_two_components() {
    for seed in 0..6 {
        let mut noise = Noise(seed);
        let days = year(&mut noise, 200);
        let curve = impulse_response_before_session(
            &days,
            ImpulseResponse::new(100.0, 0.05, 0.05, 30.0, 10.0).unwrap(),
            InitialState::NoHistory,
        )
        .unwrap();
        let measured: Vec<MeasuredDay> = (1..)
            .zip(&curve)
            .map(|(day, point)| MeasuredDay::new(day, 100.0 + 0.05 * point.fitness + 2.0 * noise.normal()))
            .collect();
        let options = FitOptions::our_choice(ResponseForm::BeforeSession, InitialState::NoHistory);
        let answer = fit_impulse_response(&days, &measured, &options).unwrap();
        assert!(matches!(answer, FitAnswer::Refused(_)), "seed {seed}: {answer:?}");
    }
}

/// Intervals for measurements to come must hold about as many as they say.
#[test]
#[ignore = "slow: 200 fits"]
fn prediction_intervals_hold_what_they_say() {
    let truth = ImpulseResponse::new(120.0, 0.05, 0.09, 42.0, 9.0).unwrap();
    let form = ResponseForm::BeforeSession;
    let (mut inside, mut all) = (0_u32, 0_u32);
    for seed in 0..200 {
        let mut noise = Noise(1000 + seed);
        let days = year(&mut noise, 240);
        let measured = measure(&days, truth, form, 1.5, &mut noise);
        let options = FitOptions::our_choice(form, InitialState::NoHistory);
        let FitAnswer::Fitted(fit) = fit_impulse_response(&days, &measured[..200], &options).unwrap() else {
            continue;
        };
        for (day, to_come) in fit.curve[200..].iter().zip(&measured[200..]) {
            all += 1;
            inside += u32::from(day.interval.contains(to_come.value));
        }
    }
    let share = f64::from(inside) / f64::from(all);
    println!("{inside} of {all} measurements to come inside 95 % intervals: {share:.4}");
    assert!(all > 4000 && (0.93..=0.97).contains(&share), "{share}");
}

#[cfg(feature = "serde")]
#[test]
fn answers_read_back_as_they_were_written() {
    use bismar::value::Value;
    let mut noise = Noise(3);
    let days = year(&mut noise, 120);
    let truth = ImpulseResponse::new(120.0, 0.05, 0.09, 42.0, 9.0).unwrap();
    let form = ResponseForm::AfterSession;
    let measured = measure(&days, truth, form, 0.5, &mut noise);
    let answer =
        fit_impulse_response(&days, &measured, &FitOptions::our_choice(form, InitialState::NoHistory))
            .unwrap();
    assert_eq!(Value::write(&answer).unwrap().read::<FitAnswer>().unwrap(), answer);
    let ratio = recent_versus_usual(&days, RatioOptions::default()).unwrap();
    assert_eq!(Value::write(&ratio).unwrap().read::<RecentVersusUsual>().unwrap(), ratio);
    assert_eq!(Value::write(&days).unwrap().read::<Vec<DailyLoad>>().unwrap(), days);
}

#[test]
fn a_day_not_recorded_is_not_a_rest_day() {
    let rest = [DailyLoad::recorded(100.0).unwrap(), DailyLoad::Rested];
    let gap = [DailyLoad::recorded(100.0).unwrap(), DailyLoad::NotRecorded];
    assert_eq!(weekly_load(&rest).unwrap(), LoadTotal::new(100.0).unwrap());
    let error = weekly_load(&gap).unwrap_err();
    assert_eq!((error.code(), error.field()), (bismar::Code::DayNotRecorded, "days[1]"));
}
