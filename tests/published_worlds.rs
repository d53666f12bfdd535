//! Worlds made of what studies printed: means, standard deviations, correlations. Lifters are drawn from them, the
//! crate reckons what the study reckoned, and what the study printed has to lie where 95 of 100 such studies would.
//!
//! The draws are those of proptest's seeded generator, normal by Box & Muller. Nothing is fitted: a world takes its
//! numbers from one place of a study and is held against another. Where the world of this library is too narrow for what
//! was printed, that is said and held too.
//!
//! The short form draws 2,000 studies each; `cargo test --release --all-features --test published_worlds -- --ignored
//! --nocapture` draws 20,000.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::disallowed_methods,
    reason = "a test may panic, and a simulator may use the standard library's mathematics"
)]

use bismar::one_rm::{
    BANYARD_2017_CV, Equation, EstimateOptions, HALPERIN_2022_UNDER_CALL, MITTER_2022_REPETITION_SEM,
    PERSONAL_SLOPE_CV, Practice, REFALO_2024_RESERVE_ERROR, RESERVE_ERROR_PER_REPETITION, SetEffort,
    SetEvidence, TechniqueVerdict, braith_1993, estimate, newcomers_gain, zourdos_2021_reserve_error,
};
use bismar::quantity::{Kilograms, Mass, Reps, Rir};
use bismar::statistics::{intraclass_correlation, test_retest, typical_error_percent};
use proptest::prelude::Rng;
use proptest::test_runner::{RngAlgorithm, TestRng};

struct Dice(TestRng);

impl Dice {
    fn new() -> Dice {
        Dice(TestRng::deterministic_rng(RngAlgorithm::ChaCha))
    }

    fn even(&mut self) -> f64 {
        (f64::from(self.0.next_u32()) + 0.5) / 4_294_967_296.0
    }

    fn bell(&mut self) -> f64 {
        (-2.0 * self.even().ln()).sqrt() * (core::f64::consts::TAU * self.even()).cos()
    }

    fn normal(&mut self, mean: f64, deviation: f64) -> f64 {
        mean + deviation * self.bell()
    }

    /// A normal number that is drawn again until it lies within.
    fn normal_within(&mut self, mean: f64, deviation: f64, low: f64, high: f64) -> f64 {
        loop {
            let value = self.normal(mean, deviation);
            if (low..=high).contains(&value) {
                return value;
            }
        }
    }
}

fn mean(values: &[f64]) -> f64 {
    values.iter().sum::<f64>() / values.len() as f64
}

fn deviation(values: &[f64]) -> f64 {
    let centre = mean(values);
    (values.iter().map(|value| (value - centre).powi(2)).sum::<f64>() / (values.len() - 1) as f64).sqrt()
}

/// Standard error of estimate of a straight line of `y` on `x`.
fn error_of_estimate(x: &[f64], y: &[f64]) -> f64 {
    let (mx, my) = (mean(x), mean(y));
    let sxx: f64 = x.iter().map(|x| (x - mx).powi(2)).sum();
    let sxy: f64 = x.iter().zip(y).map(|(x, y)| (x - mx) * (y - my)).sum();
    let syy: f64 = y.iter().map(|y| (y - my).powi(2)).sum();
    ((syy - sxy * sxy / sxx) / (x.len() - 2) as f64).sqrt()
}

/// One printed number, and what the drawn studies say of it.
struct Printed {
    what: &'static str,
    value: f64,
    drawn: Vec<f64>,
}

impl Printed {
    /// What 95 of 100 studies would have printed.
    fn interval(&self) -> (f64, f64) {
        let mut sorted = self.drawn.clone();
        sorted.sort_by(f64::total_cmp);
        let at = |part: f64| sorted[((sorted.len() - 1) as f64 * part).round() as usize];
        (at(0.025), at(0.975))
    }
}

/// Draws studies of a world; each gives its numbers in the order of `printed`.
fn draw(
    studies: u32,
    printed: &[(&'static str, f64)],
    mut study: impl FnMut(&mut Dice) -> Vec<f64>,
) -> Vec<Printed> {
    let mut dice = Dice::new();
    let mut all: Vec<Printed> =
        printed.iter().map(|(what, value)| Printed { what, value: *value, drawn: Vec::new() }).collect();
    for _ in 0..studies {
        for (printed, value) in all.iter_mut().zip(study(&mut dice)) {
            printed.drawn.push(value);
        }
    }
    all
}

fn hold(name: &str, all: &[Printed]) {
    for printed in all {
        let (low, high) = printed.interval();
        println!("{name}: {} printed {}, drawn {low:.3} to {high:.3}", printed.what, printed.value);
        assert!((low..=high).contains(&printed.value), "{name}: {}", printed.what);
    }
}

fn kg(value: f64) -> Mass {
    Mass::from_kg(value).unwrap()
}

/// Pounds of the estimate from 225 pounds.
fn from_225(equation: Equation, reps: f64) -> f64 {
    equation.one_rm(Mass::from_lb(225.0).unwrap(), Reps::new(reps).unwrap()).unwrap().value() / 0.453_592_37
}

/// 51 college players, 225 pounds to failure (meeting abstract, number 47): maxima 310.0 +- 41.6 lb, 12.3 +- 5.5
/// repetitions, correlation 0.945. Whole repetitions from 1 to 30, as far as
/// Epley goes here. Held against the printed estimates, and against the
/// standard error of Mayhew et al. 2004 in 61 other players.
fn players(studies: u32) -> Vec<Printed> {
    let printed = [
        ("Epley less measured, lb", 6.3),
        ("standard deviation of Epley, lb", 41.1),
        ("Brzycki less measured, lb", 35.8),
        ("standard deviation of Brzycki, lb", 85.0),
        ("standard error of maxima from repetitions (Mayhew et al. 2004), lb", 12.3),
    ];
    draw(studies, &printed, |dice| {
        let (mut maxima, mut reps) = (Vec::new(), Vec::new());
        while maxima.len() < 51 {
            let shared = dice.bell();
            let own = (0.945 * shared + (1.0_f64 - 0.945 * 0.945).sqrt() * dice.bell()) * 5.5 + 12.3;
            if (0.5..30.5).contains(&own) {
                maxima.push(310.0 + 41.6 * shared);
                reps.push(own.round());
            }
        }
        let estimates = |equation| reps.iter().map(|reps| from_225(equation, *reps)).collect::<Vec<f64>>();
        let (epley, brzycki) = (estimates(Equation::Epley1985), estimates(Equation::Brzycki1993));
        vec![
            mean(&epley) - mean(&maxima),
            deviation(&epley),
            mean(&brzycki) - mean(&maxima),
            deviation(&brzycki),
            error_of_estimate(&reps, &maxima),
        ]
    })
}

/// One set to failure at 85 % by 27 lifters: the maxima as printed by Hutchins & Gearhart 2010, repetitions with the
/// spread of the slope between people, of sets and of days that this library takes from elsewhere
/// ([`PERSONAL_SLOPE_CV`], [`MITTER_2022_REPETITION_SEM`], [`BANYARD_2017_CV`]) around what Epley gives on average.
fn sets_at_85(studies: u32, maximum: (f64, f64), printed: [(&'static str, f64); 3]) -> Vec<Printed> {
    draw(studies, &printed, |dice| {
        let (mut maxima, mut estimates) = (Vec::new(), Vec::new());
        for _ in 0..27 {
            let most = dice.normal_within(maximum.0, maximum.1, 20.0, 250.0);
            // Tested on one day, the set done on another.
            let days = [dice.normal(1.0, BANYARD_2017_CV), dice.normal(1.0, BANYARD_2017_CV)];
            let load = 0.85 * most * days[0];
            let beyond = 30.0 * (most * days[1] / load - 1.0) - 1.0;
            let reps = 1.0 + beyond * dice.normal_within(1.0, PERSONAL_SLOPE_CV, 0.1, 3.0);
            let reps = dice.normal(reps, MITTER_2022_REPETITION_SEM).round().max(1.0);
            let equation = Equation::Epley1985;
            estimates.push(equation.one_rm(kg(load), Reps::new(reps).unwrap()).unwrap().value());
            maxima.push(most * days[0]);
        }
        let error = error_of_estimate(&estimates, &maxima);
        vec![mean(&estimates) - mean(&maxima), error, error]
    })
}

fn bench_at_85(studies: u32) -> Vec<Printed> {
    let errors = [("bench, smaller error, kg", 5.4), ("bench, larger error, kg", 6.8)];
    sets_at_85(studies, (95.5, 26.5), [("bench, estimate less measured, kg", -0.6), errors[0], errors[1]])
}

fn curl_at_85(studies: u32) -> Vec<Printed> {
    let errors = [("curl, smaller error, kg", 5.3), ("curl, larger error, kg", 6.9)];
    sets_at_85(studies, (49.4, 11.8), [("curl, estimate less measured, kg", 1.7), errors[0], errors[1]])
}

/// Knee extension before and after eighteen weeks (Braith et al. 1993). From the printed parts (68.4 and 79.1 % of the
/// maximum), gains (31.7 and 51.4 %), standard errors and R2 follow mean and spread of the 7-10RM: 56.3 +- 17.0 kg in 58
/// people before, 85.3 +- 26.9 kg in 47 after; loads below 15 kg are drawn again.
fn knee_extension(studies: u32) -> Vec<Printed> {
    let printed = [
        ("first line less measured, trained, kg", 21.2),
        ("7-10RM as part of the maximum before, %", 68.4),
        ("7-10RM as part of the maximum after, %", 79.1),
        ("gain of the maximum, by what is left of the gain of the 7-10RM, %", 31.7),
    ];
    draw(studies, &printed, |dice| {
        let mut group = |count: u32, load: (f64, f64), practice, error: f64| {
            let mut rows = Vec::new();
            for _ in 0..count {
                let load = dice.normal_within(load.0, load.1, 15.0, 200.0);
                let line = braith_1993(kg(load), practice).unwrap().value();
                rows.push((load, dice.normal_within(line, error, 10.0, 400.0)));
            }
            rows
        };
        let before = group(58, (56.3, 17.0), Practice::Untrained, 9.3);
        let after = group(47, (85.3, 26.9), Practice::EighteenWeeks, 9.9);
        let too_much: Vec<f64> = after
            .iter()
            .map(|(load, most)| braith_1993(kg(*load), Practice::Untrained).unwrap().value() - most)
            .collect();
        let mean_of = |rows: &[(f64, f64)], of: fn(&(f64, f64)) -> f64| {
            mean(&rows.iter().map(of).collect::<Vec<f64>>())
        };
        let part = |rows: &[(f64, f64)]| 100.0 * mean_of(rows, |row| row.0) / mean_of(rows, |row| row.1);
        let loads = |rows: &[(f64, f64)]| Kilograms::new(mean_of(rows, |row| row.0)).unwrap();
        let gain = newcomers_gain(loads(&before), loads(&after)).unwrap();
        vec![mean(&too_much), part(&before), part(&after), gain.of_strength]
    })
}

/// A tested squat of 17 trained men on three days (Banyard et al. 2017): 140.3 +- 27.2 kg, CV 2.1 %. Held also against the
/// largest fall and rise that one of them showed, taken from one day to the next.
fn tested_squat(studies: u32) -> Vec<Printed> {
    let printed = [
        ("standard error of measurement, kg", 2.9),
        ("intraclass correlation", 0.99),
        ("largest fall of one man, %", 5.6),
        ("largest rise of one man, %", 4.8),
    ];
    draw(studies, &printed, |dice| {
        let people: Vec<f64> = (0..17).map(|_| dice.normal_within(140.3, 27.2, 60.0, 260.0)).collect();
        let day = |dice: &mut Dice| {
            people.iter().map(|most| dice.normal(*most, BANYARD_2017_CV * 140.3)).collect::<Vec<f64>>()
        };
        let days = [day(dice), day(dice), day(dice)];
        let found = intraclass_correlation(&days).unwrap();
        let changes = days[0].iter().zip(&days[1]).map(|(first, next)| 100.0 * (next / first - 1.0));
        let (fall, rise) =
            changes.fold((0.0_f64, 0.0_f64), |(fall, rise), change| (fall.max(-change), rise.max(change)));
        vec![found.residual.sqrt(), found.two_way_mixed, fall, rise]
    })
}

/// Repetitions at 70 and 90 % on the bench, done by 24 trained people on two days (Mitter et al. 2022). Nothing of that study is
/// put in: people differ by [`PERSONAL_SLOPE_CV`] (squat and leg press), days by [`BANYARD_2017_CV`] (tested squats), around Epley.
fn bench_twice(studies: u32) -> Vec<Printed> {
    let printed = [
        ("standard error at 70 %, repetitions", 1.1),
        ("intraclass correlation at 70 %", 0.86),
        ("standard error at 90 %, repetitions", 0.7),
        ("intraclass correlation at 90 %", 0.65),
    ];
    draw(studies, &printed, |dice| {
        let slopes: Vec<f64> =
            (0..24).map(|_| dice.normal_within(1.0, PERSONAL_SLOPE_CV, 0.1, 3.0)).collect();
        let mut numbers = Vec::new();
        for part in [0.7, 0.9] {
            let mut day = || {
                let reps = |slope: &f64| {
                    let beyond = 30.0 * (dice.normal(1.0, BANYARD_2017_CV) / part - 1.0) - 1.0;
                    (1.0 + beyond * slope).round().max(0.0)
                };
                slopes.iter().map(reps).collect::<Vec<f64>>()
            };
            let found = intraclass_correlation(&[day(), day()]).unwrap();
            numbers.extend([found.residual.sqrt(), found.two_way_mixed]);
        }
        numbers
    })
}

/// A set of ten in 70 trained women of about 57 years, read by the equation made from them (Kemmler et al. 2006), if they differed
/// as the people of this library do.
fn kemmlers_women(studies: u32) -> Vec<Printed> {
    draw(studies, &[("mean absolute difference, %", 3.1), ("standard deviation of it, %", 3.3)], |dice| {
        let equation = Equation::Kemmler2006;
        let load = equation.load(Kilograms::new(100.0).unwrap(), Reps::whole(10).unwrap()).unwrap().value();
        let differences: Vec<f64> = (0..70)
            .map(|_| {
                let reps = 1.0 + 9.0 * dice.normal_within(1.0, PERSONAL_SLOPE_CV, 0.1, 2.1);
                100.0 - equation.one_rm(kg(load), Reps::new(reps.round()).unwrap()).unwrap().value()
            })
            .collect();
        vec![
            mean(&differences.iter().map(|value| value.abs()).collect::<Vec<f64>>()),
            deviation(&differences),
        ]
    })
}

/// A chest press of 23 older women, tested twice (Infante et al. 2021): standard error 0.97 kg, correlation 0.974; so
/// people differ by 6.0 kg; the mean, 18.4 kg, follows from the printed coefficient of variation.
fn older_women(studies: u32) -> Vec<Printed> {
    draw(studies, &[("typical error, kg", 0.97), ("coefficient of variation, %", 5.28)], |dice| {
        let people: Vec<f64> = (0..23).map(|_| dice.normal_within(18.4, 6.0, 6.0, 40.0)).collect();
        let day = |dice: &mut Dice| people.iter().map(|most| dice.normal(*most, 0.97)).collect::<Vec<f64>>();
        let (first, second) = (day(dice), day(dice));
        vec![
            test_retest(&first, &second).unwrap().typical_error,
            typical_error_percent(&first, &second).unwrap(),
        ]
    })
}

/// Calls of 24 trained people at 1 and at 3 in reserve (Refalo et al. 2024): 0.17 more left than called, standard
/// deviation 1.00, whole repetitions. Held against the printed absolute error.
fn calls(studies: u32) -> Vec<Printed> {
    let printed = [("absolute error, repetitions", 0.65), ("its standard deviation", 0.78)];
    draw(studies, &printed, |dice| {
        let errors: Vec<f64> =
            (0..48).map(|_| dice.normal(0.17, REFALO_2024_RESERVE_ERROR).round().abs()).collect();
        vec![mean(&errors), deviation(&errors)]
    })
}

/// What the world of this library does not reach: it is said here, and found if it changes.
fn hold_as_wider(name: &str, all: &[Printed]) {
    for printed in all {
        let (low, high) = printed.interval();
        println!("{name}: {} printed {}, drawn {low:.3} to {high:.3}: above", printed.what, printed.value);
        assert!(printed.value > high, "{name}: {} has come within what is drawn", printed.what);
    }
}

/// The same where what was printed is less.
fn hold_as_narrower(name: &str, all: &[Printed]) {
    for printed in all {
        let (low, high) = printed.interval();
        println!("{name}: {} printed {}, drawn {low:.3} to {high:.3}: below", printed.what, printed.value);
        assert!(printed.value < low, "{name}: {} has come within what is drawn", printed.what);
    }
}

fn all(studies: u32) {
    hold("players", &players(studies));
    hold("knee extension", &knee_extension(studies));
    hold("squat", &tested_squat(studies));
    hold("older women", &older_women(studies));
    hold("calls", &calls(studies));
    hold("bench, two days", &bench_twice(studies));
    // An equation fits those it was made from better than it will fit anybody else.
    hold_as_narrower("Kemmler's women", &kemmlers_women(studies));
    let (bench, curl) = (bench_at_85(studies), curl_at_85(studies));
    hold("sets at 85 %", &bench[..2]);
    // How people differ explains the better of two equations on the bench, not the worse, and neither on the arm curl:
    // there the estimates were also too high by more than chance.
    hold_as_wider("sets at 85 %", &bench[2..]);
    hold_as_wider("sets at 85 %", &curl);
}

/// Standard deviation of an estimate from one set to failure, as a part of the maximum.
fn own_error(reps: f64) -> f64 {
    let answer =
        estimate(&[set(100.0, reps, SetEffort::Failure).unwrap()], &EstimateOptions::default()).unwrap();
    (answer.interval.high() / answer.interval.low()).ln() / (2.0 * 1.959_964)
}

/// The width of an estimate beside errors that studies printed for one set, as parts of the mean maximum.
#[test]
fn the_estimates_own_error_is_about_what_was_printed() {
    let printed: [(&str, f64, f64, f64); 4] = [
        ("bench at 85 % (Hutchins & Gearhart 2010), 5.4 to 6.8 of 95.5 kg", 6.0, 5.4 / 95.5, 6.8 / 95.5),
        ("225 pounds (Mayhew et al. 2004), 12.2 to 14.1 of 310 lb", 12.0, 12.2 / 310.0, 14.1 / 310.0),
        ("7-10RM after training (Braith et al. 1993), 9.9 of 108 kg", 8.5, 9.9 / 108.0, 9.9 / 108.0),
        ("arm curl at 85 % (Hutchins & Gearhart 2010), 5.3 to 6.9 of 49.4 kg", 6.0, 5.3 / 49.4, 6.9 / 49.4),
    ];
    for (what, reps, low, high) in printed {
        println!("{what}: printed {low:.3} to {high:.3}, estimate {:.3}", own_error(reps));
    }
    // Bench press and trained knee extension: within a factor of 1.3. Players in one test and one lift are more alike.
    assert!((1.0 / 1.3..1.3).contains(&(own_error(6.0) / printed[0].3)));
    assert!((1.0 / 1.3..1.3).contains(&(own_error(8.5) / printed[2].2)));
    assert!(own_error(12.0) > printed[1].3);
    // The arm curl is wider than any width here.
    assert!(own_error(6.0) < printed[3].2);
}

/// 225 pounds in 260 players: within 4.5 kg for 52 and 51 % by two lines made for that test and lift (Mayhew et al. 2002). An
/// interval of that level for anybody on any lift is wider by more than a factor of 1.3: it is said here, and found if it changes.
#[test]
fn an_estimate_from_a_long_set_is_wider_than_a_line_made_for_its_test() {
    for reps in [10.0, 12.0, 15.0] {
        let mut options = EstimateOptions::default();
        options.level = 0.52;
        let answer = estimate(&[set(102.058_283_25, reps, SetEffort::Failure).unwrap()], &options).unwrap();
        let half = (answer.interval.high() - answer.interval.low()) / 2.0;
        println!("225 lb for {reps}: half width {half:.2} kg at 52 %, printed 4.5");
        assert!(half > 1.3 * 4.5, "{reps}: {half}");
    }
}

/// What is not explained of a maximum, the root of one less R2, grew from the 5RM to the 10RM by 1.61 on the leg press (R2 0.974 and
/// 0.933) and by 1.85 on the chest press (0.993 and 0.976): Reynolds et al. 2006. The estimate grows like the first, within a factor
/// of 1.3, and less than the second.
#[test]
fn an_estimate_gets_wider_with_repetitions_but_less_than_on_a_chest_press() {
    let unexplained = |r2: f64| (1.0 - r2).sqrt();
    let (leg, chest) = (unexplained(0.933) / unexplained(0.974), unexplained(0.976) / unexplained(0.993));
    let grown = own_error(10.0) / own_error(5.0);
    println!("from 5 to 10 repetitions wider by {grown:.2}, printed {leg:.2} and {chest:.2}");
    assert!((1.0 / 1.3..1.3).contains(&(grown / leg)));
    assert!(grown * 1.3 < chest);
    // Sets of 3 to 5 repetitions predicted better than longer ones (Brechue & Mayhew 2009).
    assert!(own_error(3.0) < own_error(5.0) && own_error(5.0) < own_error(7.0));
}

/// Errors of calls were above 2 repetitions where 7 to 10 were left (Hackett et al. 2017, 81 adults): the error of a call, carried
/// on from 1 to 3 in reserve by what long sets showed, has to reach that. Normal errors.
#[test]
fn calls_far_from_failure_are_off_by_as_much_as_printed() {
    let off = |left: f64| {
        let deviation = REFALO_2024_RESERVE_ERROR + RESERVE_ERROR_PER_REPETITION * (left - 2.0);
        deviation * (2.0 / core::f64::consts::PI).sqrt()
    };
    let middle = (off(7.0) + off(8.0) + off(9.0) + off(10.0)) / 4.0;
    println!("7 to 10 in reserve: off by {middle:.2}");
    assert!(middle > 2.0, "{middle}");
}

/// Eight untrained men took half of their body mass to failure, 25.0 repetitions, then the maximum that Mayhew's equation made of
/// it, 4.8 +- 1.9 repetitions (Bianco et al. 2015). Two sets of one person have one maximum: an equation with the shape of both
/// gives the second back from the first, here at the means, within the 95 % sampling error. The first sets of the women, 11.0 +-
/// 10.6, differed too much for a reading at the mean.
#[test]
fn two_sets_of_the_same_men_have_one_maximum() {
    use Equation::{
        Adams1998, Berger1961, Brown1992, Brzycki1993, Brzycki1993Decimal, Epley1985, Lander1985,
        Lombardi1989, Mayhew1992, OConner1989, Reynolds2006ChestPress, Wathan1994,
    };
    let (load, reps) = (kg(50.0), Reps::new(25.0).unwrap());
    let loaded = kg(Mayhew1992.one_rm(load, reps).unwrap().value());
    // Nothing where less than one repetition would be left.
    let again = |equation: Equation| {
        let left = equation.reps(loaded, equation.one_rm(load, reps).unwrap()).unwrap_or(0.0);
        println!("{}: {left:.1} repetitions, printed 4.8", equation.name());
        left
    };
    let error = 2.365 * 1.9 / 8.0_f64.sqrt();
    for equation in [Epley1985, Wathan1994, Brown1992, Reynolds2006ChestPress] {
        assert!((again(equation) - 4.8).abs() <= error, "{equation:?}");
    }
    // Too much from 25 repetitions, so too many afterwards; too little, so none.
    for equation in [Brzycki1993, Brzycki1993Decimal, Lander1985, Adams1998, Berger1961] {
        assert!(again(equation) > 4.8 + error, "{equation:?}");
    }
    for equation in [Lombardi1989, Mayhew1992, OConner1989] {
        assert!(again(equation) < 4.8 - error, "{equation:?}");
    }
}

#[test]
fn printed_errors_lie_where_the_printed_worlds_put_them() {
    all(2_000);
}

#[test]
#[ignore = "slow: 20,000 studies each"]
fn printed_errors_lie_where_many_draws_of_the_printed_worlds_put_them() {
    all(20_000);
}

/// How often the interval holds the maximum at a level, and how often that lies above or below.
#[derive(Default)]
struct Tally {
    asked: f64,
    none: f64,
    held: f64,
    above: f64,
    error: f64,
}

impl Tally {
    fn take(&mut self, set: Option<SetEvidence>, most: f64, options: &EstimateOptions) {
        let answer = set.and_then(|set| estimate(&[set], options).ok());
        let Some(answer) = answer else {
            self.none += 1.0;
            return;
        };
        self.asked += 1.0;
        self.held += f64::from(u8::from(answer.interval.contains(most)));
        self.above += f64::from(u8::from(answer.interval.high() < most));
        self.error += (answer.value.value() / most).ln();
    }

    fn coverage(&self) -> f64 {
        self.held / self.asked
    }
}

/// A set of whole repetitions, if any were done.
fn set(load: f64, reps: f64, effort: SetEffort) -> Option<SetEvidence> {
    let done = reps.round();
    (done >= 1.0)
        .then(|| SetEvidence::new(kg(load), Reps::new(done).unwrap(), effort, TechniqueVerdict::Passed))
}

fn called(reserve: u8) -> SetEffort {
    SetEffort::Rir(Rir::whole(reserve))
}

/// One world: draws a set and the maximum it has to be held against, on a day of its own.
type Draw = fn(&mut Dice) -> (Option<SetEvidence>, f64);

/// Zourdos et al. 2021: squat at 70 %, 16 +- 4 repetitions, called at 1 in reserve, off as printed.
fn long_called_at_one(dice: &mut Dice) -> (Option<SetEvidence>, f64) {
    long_set(dice, 1)
}

/// The same, called at 3.
fn long_called_at_three(dice: &mut Dice) -> (Option<SetEvidence>, f64) {
    long_set(dice, 3)
}

fn long_set(dice: &mut Dice, reserve: u8) -> (Option<SetEvidence>, f64) {
    let error = zourdos_2021_reserve_error(Rir::whole(reserve)).unwrap();
    let most = dice.normal_within(16.0, 4.0, 5.0, 30.0).round();
    let left = f64::from(reserve) + dice.normal(error.mean, error.standard_deviation);
    (set(70.0, most - left, called(reserve)), dice.normal(100.0, 100.0 * BANYARD_2017_CV))
}

/// How studies of calls differ: the printed 95 % interval of their mean, 0.17 to 1.73 over 12 studies (Halperin et al.
/// 2022), over the t of 11 degrees, times the root of 12.
const BETWEEN_STUDIES: f64 = 1.23;

/// Weightlifters at 80 % (11.8 +- 2.7: Richens & Cleather 2014) called at 1 to 3, with the average under-call, habits as
/// different as studies are, and errors of single calls (Halperin et al. 2022, Refalo et al. 2024).
fn shorter_set(dice: &mut Dice) -> (Option<SetEvidence>, f64) {
    let reserve = 1 + (3.0 * dice.even()) as u8;
    let most = dice.normal_within(11.8, 2.7, 4.0, 24.0).round();
    let habit = dice.normal(HALPERIN_2022_UNDER_CALL, BETWEEN_STUDIES);
    let left = (f64::from(reserve) + dice.normal(habit, REFALO_2024_RESERVE_ERROR)).round().max(0.0);
    (set(80.0, most - left, called(reserve)), dice.normal(100.0, 100.0 * BANYARD_2017_CV))
}

/// Untrained people's 7-10RM (Braith et al. 1993), to failure.
fn untrained(dice: &mut Dice) -> (Option<SetEvidence>, f64) {
    ten_rm(dice, (56.3, 17.0), Practice::Untrained, 9.3)
}

/// The same people after eighteen weeks.
fn trained(dice: &mut Dice) -> (Option<SetEvidence>, f64) {
    ten_rm(dice, (85.3, 26.9), Practice::EighteenWeeks, 9.9)
}

fn ten_rm(dice: &mut Dice, load: (f64, f64), practice: Practice, error: f64) -> (Option<SetEvidence>, f64) {
    let load = dice.normal_within(load.0, load.1, 25.0, 200.0);
    let line = braith_1993(kg(load), practice).unwrap().value();
    let reps = 7.0 + (4.0 * dice.even()).floor();
    (set(load, reps, SetEffort::Failure), dice.normal_within(line, error, 0.9 * load, 400.0))
}

/// What a single set's interval holds, nominal against reached, in worlds of printed numbers. Each world may be worse or
/// better than the interval says; the table is the point, the bounds keep it from slipping.
#[test]
fn intervals_hold_the_maximum_in_printed_worlds() {
    let plain = EstimateOptions::default;
    let mut new = plain();
    new.new_to_lift = true;
    let worlds: [(&str, Draw, EstimateOptions, (f64, f64)); 8] = [
        ("long sets, called at 1", long_called_at_one, plain(), (0.90, 0.97)),
        ("the same, bias by length", long_called_at_one, EstimateOptions::by_length_of_set(), (0.80, 0.97)),
        ("long sets, called at 3", long_called_at_three, plain(), (0.86, 0.97)),
        ("the same, pooled bias", long_called_at_three, EstimateOptions::halperin_2022(), (0.86, 0.97)),
        ("leg press at 80 %", shorter_set, plain(), (0.93, 1.00)),
        ("untrained, not said", untrained, plain(), (0.30, 0.70)),
        ("untrained, said", untrained, new, (0.90, 0.99)),
        ("the same after 18 weeks", trained, plain(), (0.80, 1.00)),
    ];
    println!(
        "{:26} {:>8} {:>8} {:>8} {:>8} {:>8}",
        "world", "nominal", "reached", "above", "no number", "mean ln"
    );
    for (name, draw, options, bounds) in worlds {
        for level in [0.80, 0.90, 0.95] {
            let mut options = options.clone();
            options.level = level;
            let (mut dice, mut tally) = (Dice::new(), Tally::default());
            for _ in 0..4_000 {
                let (set, most) = draw(&mut dice);
                tally.take(set, most, &options);
            }
            let reached = tally.coverage();
            println!(
                "{name:26} {level:8.2} {reached:8.3} {:8.3} {:8.3} {:+8.3}",
                tally.above / tally.asked,
                tally.none / (tally.none + tally.asked),
                tally.error / tally.asked
            );
            if level > 0.94 {
                assert!((bounds.0..=bounds.1).contains(&reached), "{name}: {reached}");
            }
        }
    }
}
