//! What must hold of the relations, the estimate and the lifter's own curve, whatever the numbers.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::disallowed_methods,
    clippy::float_cmp,
    reason = "a test may panic, and these compare bits on purpose"
)]

use bismar::Code;
use bismar::one_rm::*;
use bismar::quantity::{Day, Fraction, Kilograms, Mass, Reps, Rir, Rpe};
use proptest::prelude::*;

fn kg(value: f64) -> Mass {
    Mass::from_kg(value).unwrap()
}

fn reps(value: f64) -> Reps {
    Reps::new(value).unwrap()
}

fn any_equation() -> impl Strategy<Value = Equation> {
    prop::sample::select(Equation::ALL)
}

/// Half repetitions at which the equation answers.
fn halves(equation: Equation) -> std::ops::RangeInclusive<u16> {
    2..=(equation.highest_reps() * 2.0) as u16
}

fn close(a: f64, b: f64, relative: f64) -> bool {
    (a - b).abs() <= relative * a.abs().max(b.abs())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(300))]

    #[test]
    fn load_and_repetitions_come_back(equation in any_equation(), load in 10.0..400.0_f64, pick in 0.0..1.0_f64) {
        let range = halves(equation);
        let span = f64::from(range.end() - range.start());
        let reps = Reps::from_halves(range.start() + (pick * span) as u16).unwrap();
        let load = kg(load);
        let Ok(one_rm) = equation.one_rm(load, reps) else {
            prop_assert!(!equation.is_scale_free());
            return Ok(());
        };
        prop_assert!(close(equation.load(one_rm, reps).unwrap().value(), load.kg(), 1e-12));
        prop_assert!((equation.reps(load, one_rm).unwrap() - reps.value()).abs() < 1e-6);
    }

    #[test]
    fn more_repetitions_or_more_load_mean_more(equation in any_equation(), load in 10.0..400.0_f64) {
        let mut before = 0.0;
        for half in halves(equation) {
            let one_rm = equation.one_rm(kg(load), Reps::from_halves(half).unwrap()).unwrap().value();
            prop_assert!(one_rm > before, "{equation:?} at {half} half repetitions");
            let heavier = equation.one_rm(kg(load + 1.0), Reps::from_halves(half).unwrap()).unwrap().value();
            prop_assert!(heavier > one_rm);
            before = one_rm;
        }
    }

    #[test]
    fn twice_the_load_is_twice_the_maximum(equation in any_equation(), load in 10.0..400.0_f64, half in 2_u16..24) {
        let reps = Reps::from_halves(half).unwrap();
        let one = equation.one_rm(kg(load), reps).unwrap().value();
        let two = equation.one_rm(kg(load).times(2).unwrap(), reps).unwrap().value();
        prop_assert_eq!((two - 2.0 * one).abs() < 1e-9, equation.is_scale_free());
    }

    #[test]
    fn outside_the_domain_is_an_error(equation in any_equation(), beyond in 1_u16..60) {
        let above = Reps::from_halves(*halves(equation).end() + beyond).unwrap();
        for wrong in [reps(0.0), reps(0.5), above] {
            let code = equation.one_rm(kg(100.0), wrong).unwrap_err().code();
            prop_assert_eq!(code, Code::RepsOutOfDomain);
            let one_rm = Kilograms::new(100.0).unwrap();
            prop_assert_eq!(equation.load(one_rm, wrong).unwrap_err().code(), Code::RepsOutOfDomain);
        }
        for wrong in [kg(0.0), kg(-20.0)] {
            prop_assert_eq!(equation.one_rm(wrong, reps(5.0)).unwrap_err().code(), Code::LoadOutOfDomain);
        }
    }

    #[test]
    fn epley_and_brzycki_cross_at_ten_and_nowhere_else(load in 10.0..400.0_f64, half in 2_u16..60) {
        let at = |half| {
            let reps = Reps::from_halves(half).unwrap();
            (epley_1985(kg(load), reps).unwrap().value(), brzycki_1993(kg(load), reps).unwrap().value())
        };
        let (epley, brzycki) = at(20);
        prop_assert!(close(epley, brzycki, 4e-16) && close(epley, kg(load).kg() * 4.0 / 3.0, 4e-16));
        let (epley, brzycki) = at(half);
        match half.cmp(&20) {
            std::cmp::Ordering::Less => prop_assert!(epley > brzycki),
            std::cmp::Ordering::Equal => {}
            std::cmp::Ordering::Greater => prop_assert!(brzycki > epley),
        }
    }

    #[test]
    fn a_batch_has_the_bits_of_one_by_one(
        equation in any_equation(),
        sets in prop::collection::vec((10.0..400.0_f64, 0.0..1.0_f64), 0..3000),
    ) {
        let loads: Vec<f64> = sets.iter().map(|set| kg(set.0).kg()).collect();
        let (low, high) = (*halves(equation).start(), *halves(equation).end());
        let half_reps: Vec<u8> =
            sets.iter().map(|set| (f64::from(low) + set.1 * f64::from(high - low)) as u8).collect();
        let mut estimates = vec![0.0; loads.len()];
        one_rm_batch(equation, &loads, &half_reps, &mut estimates).unwrap();
        for ((load, half), estimate) in loads.iter().zip(&half_reps).zip(&estimates) {
            let one = equation.one_rm(kg(*load), Reps::from_halves(u16::from(*half)).unwrap()).unwrap();
            prop_assert_eq!(one.value().to_bits(), estimate.to_bits());
        }
    }

    #[test]
    fn a_bad_set_in_a_batch_is_named_and_its_block_not_written(
        equation in any_equation(), bad in 0_usize..2500, kind in 0_usize..6,
    ) {
        let (mut loads, mut half_reps) = (vec![60.0; 2500], vec![12_u8; 2500]);
        let code = match kind {
            0 => { loads[bad] = f64::NAN; Code::NotFinite }
            1 => { loads[bad] = 0.0; Code::LoadOutOfDomain }
            2 => { loads[bad] = -3.0; Code::LoadOutOfDomain }
            3 => { half_reps[bad] = 255; Code::RepsOutOfDomain }
            4 => { half_reps[bad] = 1; Code::RepsOutOfDomain }
            _ => { loads[bad] = 2001.0; Code::OutOfRange }
        };
        let mut estimates = vec![-1.0; 2500];
        let error = one_rm_batch(equation, &loads, &half_reps, &mut estimates).unwrap_err();
        prop_assert_eq!(error.code(), code);
        let named = error.field().starts_with(&format!("[{bad}]"));
        prop_assert!(named, "{}", error.field());
        let block = bad / 16 * 16;
        prop_assert!(estimates[..block].iter().all(|one| *one > 0.0));
        prop_assert!(estimates[block..].iter().all(|one| *one == -1.0));
    }

    #[test]
    fn more_repetitions_or_more_reserve_mean_a_smaller_part(equation in any_equation()) {
        prop_assume!(equation.is_scale_free());
        let grid = effort_grid(equation, reps(12.0), Rir::whole(6)).unwrap();
        let cell = |row: usize, column: usize| grid[row].cells[column].fraction.map(Fraction::value);
        for row in 0..12 {
            for column in 0..7 {
                let Some(here) = cell(row, column) else { continue };
                // Repetitions and reserve count alike.
                if row > 0 && column < 6 {
                    prop_assert_eq!(Some(here), cell(row - 1, column + 1));
                }
                if column < 6 {
                    prop_assert!(cell(row, column + 1).is_none_or(|next| next < here));
                }
            }
        }
    }
}

#[test]
fn one_repetition_gives_the_load_only_where_the_sheet_of_each_equation_says_so() {
    use Equation::*;
    let exact = [Brzycki1993, Lombardi1989, PercentChart, TextbookChart];
    let printed = [
        (Epley1985, 1.03333),
        (Lander1985, 1.01390),
        (Mayhew1992, 1.08864),
        (OConner1989, 1.025),
        (Wathan1994, 1.01304),
        (Brown1992, 1.0187),
        (Adams1998, 1.0204),
        (Berger1961, 1.00043),
        (Kemmler2006, 1.00024),
    ];
    for equation in exact {
        assert_eq!(equation.one_rm(kg(82.5), reps(1.0)).unwrap().value(), 82.5, "{equation:?}");
    }
    assert!(close(Brzycki1993Decimal.one_rm(kg(82.5), reps(1.0)).unwrap().value(), 82.5, 1e-15));
    for (equation, multiplier) in printed {
        let got = equation.one_rm(kg(1.0), reps(1.0)).unwrap().value();
        assert!((got - multiplier).abs() < 0.00005, "{equation:?}: {got}");
    }
}

#[test]
fn lists_of_unequal_length_are_refused() {
    let mut estimates = [0.0; 2];
    for (loads, halves) in [(&[60.0][..], &[10_u8, 12][..]), (&[60.0, 70.0], &[10]), (&[60.0; 3], &[10; 3])] {
        let error = one_rm_batch(Equation::Epley1985, loads, halves, &mut estimates).unwrap_err();
        assert_eq!(error.code(), Code::WrongLength);
    }
}

fn any_effort() -> impl Strategy<Value = SetEffort> {
    prop_oneof![
        Just(SetEffort::Failure),
        Just(SetEffort::NotReported),
        (0_u16..=12).prop_map(|half| SetEffort::Rir(Rir::new(f64::from(half) / 2.0).unwrap())),
        (0_u16..=20).prop_map(|half| SetEffort::Rpe(Rpe::new(f64::from(half) / 2.0).unwrap())),
    ]
}

fn any_technique() -> impl Strategy<Value = TechniqueVerdict> {
    use TechniqueVerdict::{Failed, NotScored, Passed};
    prop_oneof![6 => Just(Passed), 1 => Just(Failed), 1 => Just(NotScored)]
}

fn any_set() -> impl Strategy<Value = SetEvidence> {
    (20.0..200.0_f64, 0_u16..20, any_effort(), any_technique(), prop::option::of(20_000..20_010_i32))
        .prop_map(|(load, count, effort, technique, day)| {
            SetEvidence::new(kg(load), Reps::whole(count).unwrap(), effort, technique)
                .with_day(day.map(|day| Day::from_number(day).unwrap()))
        })
}

fn usable(sets: &[SetEvidence], options: &EstimateOptions) -> bool {
    usable_sets(sets, options).unwrap().iter().any(|set| set.refusals.is_empty())
}

fn set(load: f64, count: u16, effort: SetEffort) -> SetEvidence {
    let technique = TechniqueVerdict::Passed;
    SetEvidence::new(kg(load), Reps::whole(count).unwrap(), effort, technique)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(300))]

    #[test]
    fn an_estimate_adds_up(sets in prop::collection::vec(any_set(), 0..12), corrected in any::<bool>()) {
        let options = if corrected { EstimateOptions::halperin_2022() } else { EstimateOptions::default() };
        let answer = estimate(&sets, &options);
        if !usable(&sets, &options) {
            prop_assert_eq!(answer.unwrap_err().code(), Code::NoUsableSet);
            return Ok(());
        }
        let answer = answer.unwrap();
        prop_assert!(answer.interval.contains(answer.value.value()));
        let parts = answer.parts;
        prop_assert!((parts.equation + parts.reserve + parts.day_to_day - 1.0).abs() < 1e-9);
        prop_assert!(parts.equation >= 0.0 && parts.reserve >= 0.0 && parts.day_to_day > 0.0);
        prop_assert!((answer.sets.iter().map(|set| set.weight).sum::<f64>() - 1.0).abs() < 1e-9);
        for report in &answer.sets {
            prop_assert!(report.refusals.is_empty() || report.weight == 0.0);
        }
        prop_assert_eq!(answer.by_equation.len(), options.equations.len());
    }

    #[test]
    fn refused_sets_and_the_order_of_sets_change_nothing(
        sets in prop::collection::vec(any_set(), 1..8), extra in any_set(),
    ) {
        let options = EstimateOptions::default();
        prop_assume!(usable(&sets, &options));
        let answer = estimate(&sets, &options).unwrap();
        let mut more = sets.clone();
        more.insert(0, extra.with_technique(TechniqueVerdict::Failed));
        more.reverse();
        let other = estimate(&more, &options).unwrap();
        prop_assert!(close(answer.value.value(), other.value.value(), 1e-9));
        prop_assert!(close(answer.interval.high(), other.interval.high(), 1e-9));
    }

    #[test]
    fn the_value_of_one_set_lies_among_its_equations(load in 20.0..200.0_f64, count in 2_u16..10, left in 0_u8..4) {
        let one = set(load, count, SetEffort::Rir(Rir::whole(left)));
        let answer = estimate(&[one], &EstimateOptions::default()).unwrap();
        let values: Vec<f64> = answer.by_equation.iter().filter_map(|one| one.value).map(Kilograms::value).collect();
        let lowest = values.iter().copied().fold(f64::MAX, f64::min);
        let highest = values.iter().copied().fold(0.0, f64::max);
        prop_assert!(lowest <= answer.value.value() && answer.value.value() <= highest);
        prop_assert!(lowest < highest, "disagreement is shown");
    }

    #[test]
    fn further_from_failure_is_less_sure(load in 20.0..200.0_f64, total in 6_u16..10) {
        let width = |left: u16| {
            let one = set(load, total - left, SetEffort::Rir(Rir::whole(left as u8)));
            let answer = estimate(&[one], &EstimateOptions::default()).unwrap();
            (answer.interval.high() / answer.interval.low(), answer.parts.reserve)
        };
        for left in 1..4 {
            prop_assert!(width(left).0 > width(left - 1).0);
            prop_assert!(width(left).1 > width(left - 1).1);
        }
        let failed = estimate(&[set(load, total, SetEffort::Failure)], &EstimateOptions::default()).unwrap();
        prop_assert_eq!(failed.parts.reserve, 0.0);
        prop_assert!(failed.interval.high() / failed.interval.low() < width(0).0);
    }

    #[test]
    fn the_published_bias_raises_what_reported_sets_say(load in 20.0..200.0_f64, count in 3_u16..8, left in 0_u8..4) {
        let reported = set(load, count, SetEffort::Rir(Rir::whole(left)));
        let value = |set, options: EstimateOptions| estimate(&[set], &options).unwrap().value.value();
        prop_assert!(value(reported, EstimateOptions::halperin_2022()) > value(reported, EstimateOptions::default()));
        let failed = set(load, count, SetEffort::Failure);
        prop_assert_eq!(value(failed, EstimateOptions::halperin_2022()), value(failed, EstimateOptions::default()));
    }

    #[test]
    fn other_days_make_it_surer_than_more_sets_of_one_day(load in 40.0..200.0_f64, count in 2_u16..9) {
        let day = |number| Some(Day::from_number(number).unwrap());
        let one = set(load, count, SetEffort::Rir(Rir::whole(1)));
        let width = |days: [i32; 3]| {
            let sets = days.map(|number| one.with_day(day(number)));
            estimate(&sets, &EstimateOptions::default()).unwrap().interval.width()
        };
        let single = estimate(&[one], &EstimateOptions::default()).unwrap().interval.width();
        prop_assert!(width([1, 2, 3]) < width([1, 1, 1]) && width([1, 1, 1]) < single);
    }

    #[test]
    fn an_own_curve_finds_its_way_back(
        maximum in 50.0..250.0_f64, slope in 0.02..0.04_f64, exponential in any::<bool>(),
    ) {
        let form = if exponential { CurveForm::Exponential } else { CurveForm::AnchoredLine };
        let one_rm = Kilograms::new(maximum).unwrap();
        let exact = |count: u16| {
            let load = own_curve_load(form, slope, one_rm, Reps::whole(count).unwrap()).unwrap();
            set(load.value(), count, SetEffort::Failure)
        };
        let sets = [2, 3, 5, 8, 10, 12].map(exact);
        // A prior that knows nothing much leaves the sets to speak.
        let prior = CurvePrior::new(0.03, 10.0);
        let curve = own_curve(&sets, form, prior, &EstimateOptions::default()).unwrap();
        prop_assert!(close(curve.slope, slope, 1e-3));
        prop_assert!(close(curve.anchor.value(), maximum, 1e-3));
        prop_assert!(curve.learned > 0.99 && curve.one_rm_interval.contains(maximum));
        // The default prior draws towards itself, by less than its distance.
        let drawn = own_curve(&sets, form, form.prior(), &EstimateOptions::default()).unwrap();
        prop_assert!((drawn.slope - slope).abs() <= (form.prior().slope - slope).abs() + 1e-9);
    }

    #[test]
    fn one_wild_set_moves_an_own_curve_little(at in 0_usize..8, wild in prop_oneof![0.4..0.8_f64, 1.25..2.2_f64]) {
        let form = CurveForm::Exponential;
        let exact = |count: u16| {
            let load = own_curve_load(form, 0.027, Kilograms::new(100.0).unwrap(), Reps::whole(count).unwrap());
            set(load.unwrap().value(), count, SetEffort::Failure)
        };
        let mut sets = [2, 3, 5, 6, 8, 9, 10, 12].map(exact);
        // As after a typing error: each set on a day of its own would hide it in the day.
        sets[at].load = kg(sets[at].load.kg() * wild);
        let curve = own_curve(&sets, form, form.prior(), &EstimateOptions::default()).unwrap();
        prop_assert!((curve.anchor.value() - 100.0).abs() < 2.5, "{}", curve.anchor.value());
        let lightest = curve.sets.iter().map(|set| set.weight).fold(1.0, f64::min);
        prop_assert!(curve.sets[at].weight == lightest && lightest < 0.5);
    }

    #[test]
    fn two_points_and_many_on_one_line_agree(
        intercept in 1.0..1.6_f64, at_maximum in 0.15..0.35_f64, maximum in 60.0..250.0_f64,
    ) {
        let slope = (at_maximum - intercept) / maximum;
        let point = |part: f64| {
            let load = kg(maximum * part);
            LoadVelocity::new(load, intercept + slope * load.kg())
        };
        let two = garcia_ramos_2018(point(0.4), point(0.9), at_maximum).unwrap();
        let points = [point(0.4), point(0.6), point(0.75), point(0.9)];
        let many = velocity_profile(&points, at_maximum, 0.95).unwrap();
        prop_assert!(close(two.one_rm.value(), maximum, 1e-9) && close(many.one_rm.value(), maximum, 1e-9));
        prop_assert!(two.load_at_no_velocity.value() > two.one_rm.value());
    }

    #[test]
    fn critical_loads_come_back(critical in 20.0..150.0_f64, store in 20.0..400.0_f64, half in 2_u16..60) {
        let (critical_kg, reps) = (Kilograms::new(critical).unwrap(), Reps::from_halves(half).unwrap());
        let load = bergstrom_2021_load(critical_kg, store, reps).unwrap().to_mass().unwrap();
        let back = bergstrom_2021_reps(critical_kg, store, load).unwrap();
        prop_assert!(close(back, reps.value(), 1e-6));
        let one_rm = Kilograms::new(critical + 60.0).unwrap();
        let load = morton_2014_load(critical_kg, store, one_rm, reps).unwrap().to_mass().unwrap();
        prop_assert!((morton_2014_reps(critical_kg, store, one_rm, load).unwrap() - reps.value()).abs() < 1e-6);
        prop_assert!(close(morton_2014(critical_kg, store, load, reps).unwrap().value(), one_rm.value(), 1e-6));
    }
}

/// Three standard deviations are the limit: a tenth more than the others is a day above the usual, half as much again is not.
#[test]
fn a_set_far_from_the_others_is_flagged_and_no_other() {
    let flagged = |odd: f64| -> Vec<bool> {
        let sets = [100.0, 100.0, 100.0, odd].map(|load| set(load, 5, SetEffort::Rir(Rir::whole(1))));
        let answer = estimate(&sets, &EstimateOptions::default()).unwrap();
        answer.sets.iter().map(|set| set.flags.contains(&SetFlag::DisagreesWithTheRest)).collect()
    };
    assert_eq!(flagged(110.0), [false; 4]);
    assert_eq!(flagged(150.0), [false, false, false, true]);
}

#[test]
fn one_equation_alone_is_asked_alone() {
    let sets = [set(100.0, 5, SetEffort::Failure)];
    let answer = estimate(&sets, &EstimateOptions::only(Equation::Epley1985)).unwrap();
    let asked: Vec<Equation> = answer.by_equation.iter().map(|one| one.equation).collect();
    assert_eq!(asked, [Equation::Epley1985]);
}

#[test]
fn the_documentation_tells_the_most_repetitions_that_are_taken() {
    let mut seen = 0;
    for equation in Equation::ALL {
        let Some(row) = bismar::registry::row(&format!("one_rm.{}", equation.name())) else { continue };
        let refused = format!("`reps_out_of_domain` below 1 and above {} ", equation.highest_reps());
        assert!(row.doc.contains(&refused), "{}: {refused}", row.key);
        seen += 1;
    }
    assert!(seen > 12, "{seen} equations have a row of their own name");
}
