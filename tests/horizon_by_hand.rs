//! Single answers about the years, worked out by hand.

#![allow(clippy::unwrap_used, clippy::panic, reason = "a test may panic")]

use bismar::Code;
use bismar::horizon::{
    Age, AgePoint, AnnualLoss, Crossing, Curve, Outlook, OwnOutlook, Person, Phase, ScenarioBands,
    ScenarioSettings, Spread, Training, floor_crossing, projection, scenario,
};
use bismar::quantity::{Day, Name};

fn age(years: f64) -> Age {
    Age::new(years).unwrap()
}

/// An invented outlook of one curve.
fn own(curve: Curve) -> Outlook {
    Outlook::Own(OwnOutlook::new(Name::new("invented").unwrap(), "nobody".into(), curve.clone(), curve))
}

/// A twentieth of the strength at 60 each year: all of it is gone at 80.
fn line() -> Outlook {
    own(Curve::Line { from: age(60.0), to: age(100.0), loss: AnnualLoss::new(0.05).unwrap() })
}

fn played(phases: &[Phase], outlook: &Outlook) -> ScenarioBands {
    let mut settings = ScenarioSettings::default();
    settings.courses = 10;
    scenario(100.0, age(60.0), phases, outlook, None, &settings).unwrap()
}

/// The strength at an age; all courses agree where nothing is left to chance.
fn at(bands: &ScenarioBands, years: f64) -> f64 {
    let year = bands.years.iter().find(|year| year.age == age(years)).unwrap();
    assert!(year.interval.width() < 1e-9);
    year.median
}

fn close(a: f64, b: f64) -> bool {
    (a - b).abs() < 1e-9 * (1.0 + b.abs())
}

#[test]
fn a_gain_compounds_and_is_held() {
    let phases = Phase::gain_then_hold(Spread::known(0.02).unwrap(), age(62.0), age(64.0));
    let bands = played(&phases, &Outlook::Planning(Training::Consistent));
    for (years, strength) in [(61.0, 102.0), (62.0, 104.04), (63.0, 104.04), (64.0, 104.04)] {
        assert!(close(at(&bands, years), strength), "{years}");
    }
    assert_eq!(Spread::known(1.0).unwrap_err().code(), Code::OutOfRange);
}

/// The small dose holds for the 32 weeks of the study; from there the outlook takes its part.
#[test]
fn a_small_dose_holds_for_as_long_as_it_was_studied() {
    let bands = played(&Phase::maintenance_dose(age(62.0)), &line());
    let studied = 60.0 + 32.0 * 7.0 / 365.2425;
    let left = |years: f64| 1.0 - 0.05 * (years - 60.0);
    for years in [61.0, 62.0] {
        let strength = at(&bands, years);
        assert!((strength - 100.0 * left(years) / left(studied)).abs() < 0.01, "{years}: {strength}");
    }
}

#[test]
fn a_line_that_runs_out_has_passed_every_floor_before() {
    let lifter = Person::new("1966-01-01".parse().unwrap());
    let today: Day = "2026-01-01".parse().unwrap();
    let crossed = |floor: f64| floor_crossing(100.0, floor, &lifter, today, &line()).unwrap().earliest;
    // A tenth is left after 18 of the 20 years.
    let Crossing::At { age: met, year } = crossed(10.0) else { panic!("it runs out at 80") };
    assert!((met.years() - 78.0).abs() < 0.01, "{met}");
    assert_eq!(met.to_string(), met.years().to_string());
    assert!((2043..=2044).contains(&year));
    // A ten-thousandth is left shortly before all is gone.
    assert!(matches!(crossed(0.01), Crossing::At { age, .. } if (age.years() - 79.998).abs() < 0.002));
    assert_eq!(crossed(100.0), Crossing::AtOrBelow);
    let error = projection(100.0, age(60.0), age(81.0), &line(), None).unwrap_err();
    assert_eq!((error.code(), error.field()), (Code::StrengthUsedUp, "to"));
}

#[test]
fn points_that_go_back_in_years_are_no_curve() {
    let point = |years, strength| AgePoint::new(age(years), strength);
    let strength = |points: &[AgePoint]| {
        projection(100.0, age(60.0), age(65.0), &own(Curve::Points(points.to_vec())), None)
            .map(|answer| answer.strength.low())
            .map_err(|error| error.code())
    };
    // Halfway between 100 and 80 at half of the years.
    let fallen = strength(&[point(60.0, 100.0), point(70.0, 80.0), point(80.0, 70.0)]).unwrap();
    assert!(close(fallen, 90.0));
    for points in [
        vec![point(60.0, 100.0), point(75.0, 80.0), point(70.0, 75.0), point(80.0, 70.0)],
        vec![point(60.0, 100.0), point(70.0, 80.0), point(70.0, 75.0), point(80.0, 70.0)],
    ] {
        assert_eq!(strength(&points), Err(Code::CurveBroken));
    }
}
