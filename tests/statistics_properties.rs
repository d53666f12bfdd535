//! Laws of the statistics that no single example shows.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::disallowed_methods,
    reason = "a test may panic, and reckons apart from the crate"
)]

use bismar::Code;
use bismar::quantity::Day;
use bismar::statistics::*;
use proptest::prelude::*;

fn day(number: i32) -> Day {
    Day::from_number(number).unwrap()
}

fn close(a: f64, b: f64, tolerance: f64) -> bool {
    (a - b).abs() <= tolerance * (1.0 + a.abs().max(b.abs()))
}

/// Readings on increasing days, some days with several.
fn readings() -> impl Strategy<Value = Vec<Reading>> {
    prop::collection::vec((0..9_i32, 50.0..150.0_f64, 0.5..20.0_f64), 4..30).prop_map(|rows| {
        let mut number = 1000;
        rows.into_iter()
            .map(|(gap, value, variance)| {
                number += gap;
                Reading::new(day(number), value, variance)
            })
            .collect()
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn intervals_contain_the_observed_rate_and_mirror(trials in 1..400_u32, part in 0.0..=1.0_f64, level in 0.5..0.999_f64) {
        let successes = (part * f64::from(trials)) as u32;
        let rate = f64::from(successes) / f64::from(trials);
        type Method = fn(u32, u32, f64) -> Result<bismar::quantity::Interval, bismar::Error>;
        let methods: [Method; 5] =
            [wilson_interval, wilson_corrected_interval, clopper_pearson_interval, jeffreys_interval, mid_p_interval];
        for method in methods {
            let found = method(successes, trials, level).unwrap();
            let other = method(trials - successes, trials, level).unwrap();
            prop_assert!(found.low() <= rate + 1e-12 && rate <= found.high() + 1e-12);
            prop_assert!(found.low() >= 0.0 && found.high() <= 1.0);
            prop_assert!((found.low() - (1.0 - other.high())).abs() < 1e-9);
        }
        let exact = clopper_pearson_interval(successes, trials, level).unwrap();
        let half = mid_p_interval(successes, trials, level).unwrap();
        prop_assert!(exact.low() <= half.low() + 1e-12 && half.high() <= exact.high() + 1e-12);
        let wilson = wilson_interval(successes, trials, level).unwrap();
        prop_assert!(agresti_coull_interval(successes, trials, level).unwrap().width() >= wilson.width() - 1e-12);
    }

    #[test]
    fn a_success_raises_belief_and_a_failure_lowers_it(successes in 0..50_u32, failures in 0..50_u32, rate in 0.05..0.95_f64) {
        let belief = |s, n| probability_rate_at_least(BetaPrior::UNIFORM, s, n, rate).unwrap();
        let now = belief(successes, successes + failures);
        prop_assert!(belief(successes + 1, successes + failures + 1) >= now - 1e-12);
        prop_assert!(belief(successes, successes + failures + 1) <= now + 1e-12);
    }

    #[test]
    fn sequential_counts_agree_with_the_likelihood_ratio(
        low in 0.01..0.4_f64, gap in 0.05..0.5_f64, alpha in 0.01..0.3_f64, beta in 0.01..0.3_f64,
        trials in 1..200_u32, part in 0.0..=1.0_f64,
    ) {
        let high = low + gap;
        let test = SequentialTest::new(low, high, alpha, beta).unwrap();
        let faults = (part * f64::from(trials)) as u32;
        let (d, n) = (f64::from(faults), f64::from(trials));
        let ratio = d * (high / low).ln() + (n - d) * ((1.0 - high) / (1.0 - low)).ln();
        let (accept, reject) = ((beta / (1.0 - alpha)).ln(), ((1.0 - beta) / alpha).ln());
        prop_assume!((ratio - accept).abs() > 1e-6 && (ratio - reject).abs() > 1e-6);
        let expected = if ratio <= accept {
            SequentialDecision::Accept
        } else if ratio >= reject {
            SequentialDecision::Reject
        } else {
            SequentialDecision::Continue
        };
        prop_assert_eq!(sequential_decision(test, faults, trials).unwrap(), expected);
    }

    #[test]
    fn acceptance_falls_as_the_fault_rate_rises(low in 0.01..0.4_f64, gap in 0.05..0.5_f64, a in 0.0..=1.0_f64, b in 0.0..=1.0_f64) {
        let test = SequentialTest::new(low, low + gap, 0.05, 0.10).unwrap();
        let accepted = |rate| sequential_acceptance(test, rate).unwrap();
        let (better, worse) = if a < b { (a, b) } else { (b, a) };
        prop_assert!(accepted(better) >= accepted(worse) - 1e-9);
        prop_assert!(sequential_average_trials(test, a).unwrap() >= 0.0);
    }

    #[test]
    fn a_level_path_moves_with_shift_scale_and_day_origin(
        readings in readings(), drift in 0.0..2.0_f64, shift in -50.0..50.0_f64, scale in 0.1..5.0_f64, origin in -900..900_i32,
    ) {
        let plain = local_level(&readings, drift, Outliers::Clipped { at: 1.345 }, &[]).unwrap();
        let moved: Vec<Reading> = readings
            .iter()
            .map(|one| Reading::new(one.day.plus(origin).unwrap(), scale * one.value + shift, scale * scale * one.variance))
            .collect();
        let other = local_level(&moved, scale * scale * drift, Outliers::Clipped { at: 1.345 }, &[]).unwrap();
        for (a, b) in plain.stops.iter().zip(&other.stops) {
            prop_assert!(close(scale * a.smoothed + shift, b.smoothed, 1e-9));
            prop_assert!(close(scale * scale * a.smoothed_variance, b.smoothed_variance, 1e-9));
            prop_assert_eq!(a.day.plus(origin).unwrap(), b.day);
        }
    }

    #[test]
    fn asking_for_more_days_changes_no_answer(readings in readings(), drift in 0.01..2.0_f64, slope_drift in 0.0001..0.1_f64) {
        let also: Vec<Day> = (990..1200).step_by(7).map(day).collect();
        let plain = local_level(&readings, drift, Outliers::Trusted, &[]).unwrap();
        let asked = local_level(&readings, drift, Outliers::Trusted, &also).unwrap();
        let read: Vec<_> = asked.stops.iter().filter(|stop| stop.reading.is_some()).collect();
        for (a, b) in plain.stops.iter().zip(read) {
            prop_assert!(close(a.smoothed, b.smoothed, 1e-9) && close(a.smoothed_variance, b.smoothed_variance, 1e-8));
        }
        prop_assume!(readings.iter().any(|one| one.day != readings[0].day));
        let plain = local_trend(&readings, drift, slope_drift, &[]).unwrap();
        let asked = local_trend(&readings, drift, slope_drift, &also).unwrap();
        prop_assert!(close(plain.log_likelihood, asked.log_likelihood, 1e-8));
        let read: Vec<_> = asked.stops.iter().filter(|stop| stop.reading.is_some()).collect();
        for (a, b) in plain.stops.iter().zip(read) {
            prop_assert!(close(a.smoothed.level, b.smoothed.level, 1e-6), "{:?} {:?}", a.smoothed, b.smoothed);
            prop_assert!(close(a.smoothed.slope, b.smoothed.slope, 1e-6));
        }
    }

    /// The stated bound: a single reading, however wrong, moves the level by less than the threshold times the root
    /// of the variance of the prediction.
    #[test]
    fn a_gross_outlier_moves_the_clipped_level_less_than_its_bound(readings in readings(), drift in 0.01..2.0_f64, wild in -1e6..1e6_f64) {
        let last = readings.last().unwrap().day.plus(1).unwrap();
        let outliers = Outliers::Clipped { at: CLIP_AT };
        let before = local_level(&readings, drift, outliers, &[last]).unwrap().stops.last().unwrap().filtered.unwrap();
        let mut with = readings.clone();
        with.push(Reading::new(last, wild, 4.0));
        let after = *local_level(&with, drift, outliers, &[]).unwrap().stops.last().unwrap();
        let bound = CLIP_AT * after.predicted_variance.unwrap().sqrt();
        prop_assert!((after.filtered.unwrap() - before).abs() < bound);
    }

    #[test]
    fn robust_centre_and_spread_move_with_shift_and_scale(
        values in prop::collection::vec(-100.0..100.0_f64, 2..40), shift in -50.0..50.0_f64, scale in 0.1..10.0_f64,
    ) {
        let moved: Vec<f64> = values.iter().map(|value| scale * value + shift).collect();
        prop_assert!(close(scale * median(&values).unwrap() + shift, median(&moved).unwrap(), 1e-10));
        prop_assert!(close(scale * robust_spread(&values).unwrap(), robust_spread(&moved).unwrap(), 1e-9));
        let mut reversed = values.clone();
        reversed.reverse();
        prop_assert_eq!(median(&values).unwrap().to_bits(), median(&reversed).unwrap().to_bits());
    }

    #[test]
    fn a_line_moves_with_shift_and_scale(
        points in prop::collection::vec((-100.0..100.0_f64, -100.0..100.0_f64), 3..30), shift in -50.0..50.0_f64, scale in 0.1..10.0_f64,
    ) {
        let (x, y): (Vec<f64>, Vec<f64>) = points.into_iter().unzip();
        let moved: Vec<f64> = y.iter().map(|value| scale * value + shift).collect();
        let (Ok(a), Ok(b)) = (linear_fit(&x, &y), linear_fit(&x, &moved)) else { return Ok(()) };
        prop_assert!(close(scale * a.slope, b.slope, 1e-8));
        let (a, b) = (robust_line(&x, &y, 0.95).unwrap(), robust_line(&x, &moved, 0.95).unwrap());
        prop_assert!(close(scale * a.slope, b.slope, 1e-8));
    }

    #[test]
    fn chances_of_a_change_add_to_one(change in -20.0..20.0_f64, error in 0.1..10.0_f64, worthwhile in 0.0..10.0_f64) {
        let chances = change_chances(change, error, worthwhile, None).unwrap();
        prop_assert!((chances.benefit + chances.trivial + chances.harm - 1.0).abs() < 1e-12);
        let mirrored = change_chances(-change, error, worthwhile, None).unwrap();
        prop_assert!((chances.benefit - mirrored.harm).abs() < 1e-12);
    }

    #[test]
    fn nothing_leaves_as_nan_or_infinity(values in prop::collection::vec(prop::num::f64::ANY, 0..12)) {
        let finite = |value: f64| value.is_finite();
        prop_assert!(summary(&values).map_or(true, |s| finite(s.mean) && finite(s.standard_deviation)));
        prop_assert!(median(&values).map_or(true, finite));
        prop_assert!(robust_spread(&values).map_or(true, finite));
        prop_assert!(compensated_sum(&values).map_or(true, finite));
        prop_assert!(lag_one_correlation(&values).map_or(true, finite));
        prop_assert!(individuals_chart(&values).map_or(true, |chart| finite(chart.high) && finite(chart.low)));
        prop_assert!(linear_fit(&values, &values).map_or(true, |fit| finite(fit.slope) && finite(fit.residual_squares)));
    }
}

#[test]
fn longer_runs_want_wider_limits() {
    let mut before = 0.0;
    for run in [20.0, 50.0, 156.0, 370.0, 1000.0] {
        let threshold = cusum_threshold_for(0.5, run).unwrap();
        assert!(threshold > before);
        let design = CusumDesign::STANDARD.with_threshold(threshold);
        assert!((cusum_run_length(design, 0.0).unwrap() / run - 1.0).abs() < 1e-6);
        before = threshold;
    }
}

#[test]
fn maximum_likelihood_is_a_maximum() {
    let values = [100.0, 103.0, 101.0, 106.0, 104.0, 109.0, 111.0, 108.0, 113.0, 116.0, 112.0, 118.0];
    let readings: Vec<Reading> =
        (0..).zip(values).map(|(at, value)| Reading::new(day(3 * at), value, 4.0)).collect();
    let likelihood =
        |drift| local_level(&readings, drift, Outliers::Trusted, &[]).unwrap().log_likelihood.unwrap();
    let fit = local_level_drift(&readings).unwrap();
    for factor in [0.5, 0.9, 1.1, 2.0] {
        assert!(likelihood(factor * fit.drift) <= fit.log_likelihood + 1e-12);
    }
}

proptest! {
    /// Another unit changes the sums and no signal.
    #[test]
    fn a_cumulative_sum_does_not_know_the_unit(
        values in prop::collection::vec(-4.0..4.0_f64, 1..60), scale in 0.01..100.0_f64, head in 0.0..5.0_f64,
    ) {
        let design = CusumDesign::STANDARD.with_head_start(head);
        let scaled: Vec<f64> = values.iter().map(|value| (value + 2.0) * scale).collect();
        let plain = cusum_chart(&values, 0.0, 1.0, design).unwrap();
        let other = cusum_chart(&scaled, 2.0 * scale, scale, design).unwrap();
        for (plain, other) in plain.iter().zip(&other) {
            prop_assert!(close(plain.up * scale, other.up, 1e-9) && close(plain.down * scale, other.down, 1e-9));
            // A sum at the threshold itself may fall to either side by rounding.
            let clear = |sum: f64| (sum - CUSUM_THRESHOLD).abs() > 1e-9;
            if clear(plain.up) && clear(plain.down) {
                prop_assert_eq!(plain.signal, other.signal);
            }
        }
    }
}

/// A life of daily readings is a third of what one call takes; one value more is refused.
#[test]
fn a_hundred_thousand_values_are_taken_and_one_more_is_not() {
    let values = vec![1.0; 100_001];
    assert_eq!(compensated_sum(&values[1..]), Ok(100_000.0));
    let error = compensated_sum(&values).unwrap_err();
    assert_eq!((error.code(), error.field()), (Code::OutOfRange, "values"));
}

/// Two-sided sums with a head start, run until a signal: 20,000 runs of each design, normal values (by Box & Muller) from
/// proptest's seeded generator.
#[test]
fn a_head_start_is_exact_for_both_sides_together() {
    let mut dice = proptest::test_runner::TestRng::deterministic_rng(prop::test_runner::RngAlgorithm::ChaCha);
    let mut even = || (f64::from(dice.next_u32()) + 0.5) / 4_294_967_296.0;
    let mut bell = || (-2.0 * even().ln()).sqrt() * (core::f64::consts::TAU * even()).cos();
    for (head_start, shift) in [(0.0, 0.5), (2.0, 0.0), (2.0, 0.5), (2.0, 1.0), (2.5, 0.0)] {
        let design =
            CusumDesign::default().with_reference(0.5).with_threshold(4.0).with_head_start(head_start);
        let (mut sum, mut squares, runs) = (0.0_f64, 0.0_f64, 20_000.0_f64);
        for _ in 0..20_000 {
            let (mut up, mut down, mut length) = (head_start, head_start, 0.0);
            while up <= 4.0 && down <= 4.0 {
                let value = bell() + shift;
                (up, down) = ((up + value - 0.5).max(0.0), (down - value - 0.5).max(0.0));
                length += 1.0;
            }
            sum += length;
            squares += length * length;
        }
        let mean = sum / runs;
        let error = ((squares / runs - mean * mean) / runs).sqrt();
        let exact = cusum_run_length(design, shift).unwrap();
        assert!((mean - exact).abs() < 4.0 * error, "{design:?}: {mean} against {exact}");
    }
}

proptest! {
    /// Slacks from 0.2 to 1, thresholds from 1 to 8, shifts up to 2 either way.
    #[test]
    fn without_a_head_start_the_sides_add_their_rates(
        reference in 0.2..1.0_f64, threshold in 1.0..8.0_f64, shift in -2.0..2.0_f64,
    ) {
        let design = CusumDesign::default().with_reference(reference).with_threshold(threshold).with_head_start(0.0);
        let side = |shift| cusum_run_length_one_sided(design, shift);
        if let (Ok(up), Ok(down)) = (side(shift), side(-shift)) {
            prop_assert!(close(cusum_run_length(design, shift).unwrap(), 1.0 / (1.0 / up + 1.0 / down), 1e-9));
        }
    }
}
