//! Lists and numbers at their stated limits, across the modules: the last one that is taken, and the first that is not.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::float_cmp,
    reason = "a test may panic, and these numbers are exact"
)]

use bismar::Code;
use bismar::condition::{DayOptions, DriftOptions, Marker, MarkerKind, WarmUpTechnique, judge_day};
use bismar::dose::{FitOptions, InitialState, RelativeSet, ResponseForm, TimeConstants};
use bismar::dose::{RegionSets, SetCounting, fit_impulse_response, fractional_sets};
use bismar::error::Error;
use bismar::gate::{AgreementWeights, Mark, rater_agreement};
use bismar::loading::{
    Bar, BridgeOptions, Disc, Handle, Implement, MachineStack, Pieces, Pin, Prepared, SharedLifter,
    SharedSet, Stock, WarmUpStep, buy, handling_order, rep_bridge, shared_bar, step_reality, warm_up,
};
use bismar::one_rm::{CriticalLoadDoubt, Equation, EstimateOptions, SetToFailure, bergstrom_2021_fit};
use bismar::prescription::first_rung;
use bismar::quantity::{Day, Fraction, Mass, Name, Reps};
use bismar::record::Rung;
use bismar::statistics::*;
use bismar::value::Value;

fn kg(value: f64) -> Mass {
    Mass::from_kg(value).unwrap()
}

fn name(text: &str) -> Name {
    Name::new(text).unwrap()
}

fn day(number: i32) -> Day {
    Day::from_number(number).unwrap()
}

/// Code and field of what was refused.
fn told<T: std::fmt::Debug>(answer: Result<T, Error>) -> (Code, String) {
    let error = answer.unwrap_err();
    (error.code(), error.field().into())
}

fn refused(field: &str) -> (Code, String) {
    (Code::OutOfRange, field.into())
}

fn bar() -> Implement {
    Implement::Bar(Bar::new(name("bar"), kg(20.0), Mass::ZERO).unwrap())
}

fn stock() -> Stock {
    Stock::new(vec![Disc::new(kg(10.0), 4).unwrap(), Disc::new(kg(2.5), 2).unwrap()]).unwrap()
}

#[test]
fn implements_up_to_their_number_of_parts() {
    let pieces = |count: u32| Pieces::new(name("rack"), (1..=count).map(|at| kg(f64::from(at))).collect());
    assert!(pieces(100).is_ok_and(|rack| rack.masses().len() == 100));
    assert_eq!(told(pieces(101)), refused("masses"));
    assert_eq!(told(pieces(0)), refused("masses"));
    let stack = |add_ons: usize, ratio: f64| {
        MachineStack::new(name("pulley"), Mass::ZERO, vec![kg(5.0); 10], vec![kg(1.0); add_ons], ratio)
    };
    assert!(stack(4, 4.0).is_ok());
    assert_eq!(told(stack(5, 1.0)), refused("add_ons"));
    for ratio in [0.0, -0.5, 4.001] {
        assert_eq!(told(stack(0, ratio)), refused("ratio"), "{ratio}");
    }
    let kinds =
        |count: u32| Stock::new((1..=count).map(|at| Disc::new(kg(f64::from(at)), 2).unwrap()).collect());
    assert!(kinds(25).is_ok());
    assert_eq!(told(kinds(26)), (Code::StockTooLarge, "discs".into()));
}

#[test]
fn every_implement_says_its_name_and_what_is_bought_for_its_ends() {
    let handle = Handle::new(name("handle"), kg(2.0), Mass::ZERO, None, 1).unwrap();
    let pin = Pin::new(name("pin"), kg(1.0), Mass::ZERO, None).unwrap();
    let none = Stock::new(Vec::new()).unwrap();
    // With 5 kg discs a handle of 2 kg takes one on each end, 12 kg, which leaves 2 to 12; a pin of 1 kg takes one on its
    // only end, 6 kg, which leaves 6 to 20.
    for (implement, id, gap) in
        [(Implement::Handle(handle), "handle", 10.0), (Implement::Pin(pin), "pin", 14.0)]
    {
        assert_eq!(implement.id().as_str(), id);
        let bought = buy(&implement, &none, kg(1.0), kg(20.0), &[kg(5.0)]).unwrap();
        assert_eq!(bought.best.unwrap().largest_gap.unwrap().size, kg(gap), "{id}");
    }
}

#[test]
fn questions_about_loading_up_to_their_length() {
    let (bar, stock) = (bar(), stock());
    let Implement::Bar(plain) = &bar else { panic!("a bar") };
    let offered = |count: usize| buy(&bar, &stock, kg(20.0), kg(60.0), &vec![kg(1.25); count]);
    assert_eq!(offered(20).unwrap().offers.len(), 20);
    assert_eq!(told(offered(21)), refused("offered"));

    let set = SharedSet::new(kg(40.0), Mass::ZERO);
    let shared = |sets: usize| shared_bar(plain, &stock, &[SharedLifter::new(vec![set; sets])]);
    assert_eq!(shared(12).unwrap().turns.len(), 12);
    assert_eq!(told(shared(13)), refused("lifters[0].sets"));
    assert_eq!(told(shared(0)), refused("lifters[0].sets"));

    let step = |discs: usize| {
        let options = BridgeOptions::default().with_discs(vec![kg(1.25); discs]);
        step_reality(&bar, &stock, kg(40.0), &options)
    };
    assert!(step(20).is_ok());
    assert_eq!(told(step(21)), refused("discs"));

    let capacity = |count: u32| (0..count).map(|at| 1.0 - 0.001 * f64::from(at)).collect::<Vec<f64>>();
    let bridge = |count| rep_bridge(kg(40.0), kg(41.0), Reps::whole(3).unwrap(), &capacity(count));
    // Three repetitions at 41 kg ask for a maximum of 41 / 0.998 = 41.08 kg; 40 / 0.973, at 28 repetitions, shows it.
    assert_eq!(bridge(100).unwrap(), Some(Reps::whole(28).unwrap()));
    assert_eq!(told(bridge(101)), refused("capacity"));
    assert_eq!(told(bridge(0)), refused("capacity"));

    let order = |count: usize| handling_order(&stock, &[], &vec![0; count], kg(25.0));
    assert_eq!(order(2).unwrap().order.len(), 4);
    assert_eq!(told(order(31)), refused("after"));

    let steps = |count: i32| -> Vec<WarmUpStep> {
        let at = |at: i32| kg(20.0 + f64::from(at));
        (0..count).map(|step| WarmUpStep::new(at(step), Mass::ZERO, Reps::whole(3).unwrap(), false)).collect()
    };
    assert!(warm_up(plain, &stock, kg(60.0), &steps(12)).is_ok());
    assert_eq!(told(warm_up(plain, &stock, kg(60.0), &steps(13))), refused("steps"));
}

#[test]
fn below_the_lightest_there_is_no_step_down() {
    let prepared = Prepared::new(&bar(), &stock(), kg(60.0)).unwrap();
    assert_eq!(prepared.step_down(kg(25.0)).unwrap().total, kg(20.0));
    for from in [20.0, 15.0] {
        let error = prepared.step_down(kg(from)).unwrap_err();
        assert_eq!((error.code(), error.field()), (Code::BelowLightest, "target"));
    }
    // By face value a weighed disc counts as it is marked.
    let weighed = Stock::new(vec![Disc::new(kg(10.0), 2).unwrap().weighed(kg(10.2)).unwrap()]).unwrap();
    let heaviest =
        |stock: &Stock| Prepared::new(&bar(), stock, kg(60.0)).unwrap().step_up(kg(20.0)).unwrap().total;
    assert_eq!((heaviest(&weighed), heaviest(&weighed.by_face_value())), (kg(40.4), kg(40.0)));
}

#[test]
fn lists_of_numbers_up_to_their_length() {
    let x = |count: u32| (0..count).map(f64::from).collect::<Vec<f64>>();
    let line = |count| robust_line(&x(count), &x(count), 0.95);
    assert_eq!(line(1000).unwrap().slope, 1.0);
    assert_eq!(told(line(1001)), refused("x"));
    let model = |count: u32| linear_model(&vec![x(40); count as usize], &x(40));
    assert_eq!(told(model(32)).0, Code::NotIdentified, "they repeat each other");
    assert_eq!(told(model(33)), refused("predictors"));
    assert_eq!(told(median(&x(100_001))), refused("values"));
    let readings: Vec<Reading> = (0..100_001).map(|at| Reading::new(day(at / 2), 1.0, 1.0)).collect();
    assert_eq!(told(local_level(&readings, 1.0, Outliers::Trusted, &[])), refused("readings"));
    let days: Vec<Day> = (0..100_001).map(|at| day(at / 2)).collect();
    assert_eq!(told(local_level(&readings[..3], 1.0, Outliers::Trusted, &days)), refused("also"));
    let now = TrendState::default()
        .with_level(100.0)
        .with_slope(0.1)
        .with_level_variance(1.0)
        .with_slope_variance(0.0)
        .with_covariance(0.0);
    assert!(trend_forecast(now, 0.0, 0.0, 36_525, 0.0, 0.95).is_ok());
    assert_eq!(told(trend_forecast(now, 0.0, 0.0, 36_526, 0.0, 0.95)), refused("days"));
    let marks = vec![Mark::Met; 100_001];
    assert_eq!(told(rater_agreement(&marks, &marks, AgreementWeights::None, 0.95)), refused("first"));
    let markers = |count: usize| -> Vec<Marker> {
        let marker = Marker::new(MarkerKind::Mood, Vec::new()).with_conditions(Default::default());
        vec![marker; count]
    };
    let judged = |count| judge_day(day(1), &markers(count), WarmUpTechnique::AsUsual, DayOptions::STANDARD);
    assert_eq!(told(judged(21)), refused("markers"));
    assert_eq!(told(judged(20)).0, Code::DuplicateField, "one marker twice");
    let set = SetToFailure::new(kg(60.0), Reps::whole(10).unwrap());
    assert_eq!(told(bergstrom_2021_fit(&vec![set; 1001])), refused("sets"));
    assert_eq!(told(bergstrom_2021_fit(&vec![set; 1000])).0, Code::NotEnoughData);
}

#[test]
fn what_is_stated_is_kept() {
    let test = SequentialTest::new(0.1, 0.3, 0.05, 0.2).unwrap();
    assert_eq!(
        (test.acceptable_rate(), test.unacceptable_rate(), test.false_rejection(), test.false_acceptance()),
        (0.1, 0.3, 0.05, 0.2)
    );
    // Chances of error that add to 1 leave nothing to decide.
    assert_eq!(told(SequentialTest::new(0.1, 0.3, 0.5, 0.5)), refused("false_acceptance"));
    assert!(SequentialTest::new(0.1, 0.3, 0.5, 0.499).is_ok());
    let prior = BetaPrior::new(2.0, 3.5).unwrap();
    assert_eq!((prior.successes(), prior.failures()), (2.0, 3.5));
    let rarely = DriftOptions::once_a_year(2.0).unwrap();
    assert_eq!(rarely.sessions_between_false_alarms, 104.0);
    assert_eq!(rarely.weight, DriftOptions::STANDARD.weight);
    for outside in [0.4, 14.1] {
        assert_eq!(told(DriftOptions::once_a_year(outside)), refused("sessions_a_week"));
    }
    // A jump of 30 cm varies by 4 % of itself; a technique score by 0.05.
    assert_eq!(MarkerKind::JumpHeight.least_spread(30.0), 1.2);
    assert_eq!(MarkerKind::WarmUpTechnique.least_spread(0.9), 0.05);
}

#[test]
fn equations_say_what_part_their_repetitions_allow() {
    // 1 + reps / 30 of the load is the maximum: five repetitions allow 30 / 35 of it.
    let part = Equation::Epley1985.fraction(Reps::whole(5).unwrap()).unwrap();
    assert!((part.value() - 30.0 / 35.0).abs() < 1e-15);
    let bound = Equation::ALL.iter().copied().find(|each| !each.is_scale_free()).unwrap();
    assert_eq!(told(bound.fraction(Reps::whole(5).unwrap())).0, Code::NotScaleFree);
    let (low, high) = bound.measured_reps();
    assert!(bound.was_measured_at(low) && bound.was_measured_at(high) && !bound.was_measured_at(high + 1.0));
    let only = EstimateOptions::only(Equation::Brzycki1993);
    assert_eq!(only.equations, [Equation::Brzycki1993]);
    assert_eq!(only.level, EstimateOptions::default().level);
}

/// Work of 300, 480 and 1060 kg repetitions at 5, 10 and 20: the line through it rises by 51.7 kg, above the 48 kg of the
/// second set, which nobody could then have lifted to failure.
#[test]
fn a_load_below_the_critical_one_is_doubted() {
    let set = |load, reps| SetToFailure::new(kg(load), Reps::whole(reps).unwrap());
    let fit = bergstrom_2021_fit(&[set(60.0, 5), set(48.0, 10), set(53.0, 20)]).unwrap();
    assert!((fit.critical_load.value() - 18_100.0 / 350.0).abs() < 1e-6);
    assert_eq!(fit.doubts, [CriticalLoadDoubt::FewerThanFourLoads, CriticalLoadDoubt::LoadNotAboveCritical]);
}

#[test]
fn helpers_count_in_full_or_not_at_all() {
    let row = RegionSets::new(4, vec!["back".into()]).with_indirect(vec!["biceps".into()]);
    let biceps = |counting| {
        let counts = fractional_sets(std::slice::from_ref(&row), counting).unwrap();
        counts.iter().find(|count| count.region == "biceps").unwrap().sets
    };
    assert_eq!(biceps(SetCounting::total()), 4.0);
    assert_eq!(biceps(SetCounting::fractional()), 2.0);
    assert_eq!(biceps(SetCounting::direct_only()), 0.0);
    let set = RelativeSet::new(Fraction::new(0.8).unwrap(), Reps::whole(5).unwrap());
    assert_eq!((set.repetitions(), set.times(3).repetitions()), (5.0, 15.0));
}

#[test]
fn a_fit_of_the_response_is_asked_for_within_bounds() {
    let standard = FitOptions::our_choice(ResponseForm::BeforeSession, InitialState::NoHistory);
    let asked = |change: &dyn Fn(&mut FitOptions)| {
        let mut options = standard.clone();
        change(&mut options);
        told(fit_impulse_response(&[], &[], &options))
    };
    assert_eq!(asked(&|options| options.fewest_measurements = 5), refused("fewest_measurements"));
    let times = TimeConstants::new(45.0, 15.0).unwrap();
    assert_eq!(asked(&|options| options.starts = vec![times; 65]), refused("starts"));
    assert_eq!(asked(&|options| options.largest_relative_error = -1.0), refused("largest_relative_error"));
    assert_eq!(asked(&|options| options.largest_p_value = 1.1), refused("largest_p_value"));
    let wrong = Value::from_json(r#"{"fitness_days":15,"fatigue_days":45}"#).unwrap();
    assert_eq!(wrong.read::<TimeConstants>().unwrap_err().code(), Code::TimeConstantsOutOfOrder);
    assert_eq!(Value::write(&times).unwrap().read::<TimeConstants>(), Ok(times));
}

#[test]
fn the_first_rung_is_sought_on_a_ladder() {
    assert_eq!(told(first_rung(&[], &[])), (Code::EmptyList, "rungs".into()));
    let rung = Rung::new(name("box"), Vec::new());
    assert_eq!(told(first_rung(&[rung], &[])), (Code::NotEnoughData, "passed".into()));
}
