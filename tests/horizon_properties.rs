//! What holds for every decline, floor, scenario and score, whatever the numbers.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test may panic"
)]
#![allow(clippy::disallowed_methods, reason = "an independent check may use the standard library's maths")]

use bismar::caution::Caution;
use bismar::horizon::*;
use bismar::quantity::{Day, Mass, Name};
use bismar::{Code, Error};
use proptest::prelude::*;

fn age(years: f64) -> Age {
    Age::new(years).unwrap()
}

fn loss(part: f64) -> AnnualLoss {
    AnnualLoss::new(part).unwrap()
}

/// Every shape, from 30 to 90 or beyond, falling.
fn curve() -> impl Strategy<Value = Curve> {
    let bands = prop::collection::vec(0.0..0.1, 6).prop_map(|losses| {
        let band = |(index, part): (usize, &f64)| {
            LossBand::new(age(30.0 + 10.0 * index as f64), age(40.0 + 10.0 * index as f64), loss(*part))
        };
        Curve::Compound(losses.iter().enumerate().map(band).collect())
    });
    let rising = (0.0..0.05, 0.0..0.1).prop_map(|(from, more)| Curve::RisingLoss {
        from: age(30.0),
        from_loss: loss(from),
        to: age(90.0),
        to_loss: loss(from + more),
    });
    let line = (0.0..0.016).prop_map(|part| Curve::Line { from: age(30.0), to: age(90.0), loss: loss(part) });
    let quadratic = (0.0..0.005, 0.0..0.0001).prop_map(|(linear, square)| Curve::Quadratic {
        from: age(30.0),
        to: age(90.0),
        linear,
        square,
    });
    let saturating = (91.0..120.0, 3.0..60.0).prop_map(|(zero, time_constant)| Curve::Saturating {
        from: age(30.0),
        zero: age(zero),
        time_constant,
    });
    let points = prop::collection::vec(0.5..1.0, 6).prop_map(|factors| {
        let mut strength = 100.0;
        let mut points = vec![AgePoint::new(age(30.0), strength)];
        for (index, factor) in factors.iter().enumerate() {
            strength *= factor;
            points.push(AgePoint::new(age(40.0 + 10.0 * index as f64), strength));
        }
        Curve::Points(points)
    });
    prop_oneof![bands, rising, line, quadratic, saturating, points]
}

fn outlook() -> impl Strategy<Value = Outlook> {
    prop_oneof![
        Just(Outlook::Planning(Training::Untrained)),
        Just(Outlook::Planning(Training::Consistent)),
        prop::sample::select(Study::ALL).prop_map(Outlook::Study),
        (curve(), curve()).prop_map(|(slowest, fastest)| Outlook::Own(OwnOutlook::new(
            Name::new("own").unwrap(),
            "an example".into(),
            slowest,
            fastest
        ))),
    ]
}

fn sex() -> impl Strategy<Value = Option<Sex>> {
    prop_oneof![Just(None), Just(Some(Sex::Female)), Just(Some(Sex::Male))]
}

/// Codes with which a well-formed question may be refused: never a silent number.
fn refused_for_a_reason(error: &Error) -> bool {
    matches!(error.code(), Code::AgeOutOfDomain | Code::SexNeeded | Code::NotMeasuredInSex)
}

fn close(a: f64, b: f64) -> bool {
    (a - b).abs() <= 1e-12 * a.abs().max(b.abs())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(256))]

    #[test]
    fn forward_and_back_are_inverse(curve in curve(), a in 30.0..90.0, b in 30.0..90.0, strength in 0.1..1e3) {
        let (earlier, later) = if a < b { (age(a), age(b)) } else { (age(b), age(a)) };
        let there = carried_forward(strength, earlier, later, &curve).unwrap();
        let back = carried_back(there.strength, earlier, later, &curve).unwrap();
        prop_assert!(close(back.strength, strength), "{} {}", back.strength, strength);
        let before = carried_back(strength, earlier, later, &curve).unwrap();
        let again = carried_forward(before.strength, earlier, later, &curve).unwrap();
        prop_assert!(close(again.strength, strength));
    }

    #[test]
    fn strength_never_rises_with_age(curve in curve(), a in 30.0..90.0, b in 30.0..90.0, c in 30.0..90.0) {
        let mut ages = [a, b, c];
        ages.sort_by(f64::total_cmp);
        let [first, second, third] = ages.map(age);
        let near = carried_forward(100.0, first, second, &curve).unwrap().strength;
        let far = carried_forward(100.0, first, third, &curve).unwrap().strength;
        prop_assert!(far <= near * (1.0 + 1e-12) && near <= 100.0 * (1.0 + 1e-12));
    }

    #[test]
    fn a_faster_rate_never_leaves_more(slow in 0.0..0.3, more in 0.0..0.3, years in 0.0..60.0) {
        let left = |part: f64| {
            let bands = vec![LossBand::new(age(30.0), age(90.0), loss(part))];
            carried_forward(100.0, age(30.0), age(30.0 + years), &Curve::Compound(bands)).unwrap().strength
        };
        prop_assert!(left(slow + more) <= left(slow) * (1.0 + 1e-12));
    }

    #[test]
    fn a_higher_floor_is_met_sooner(strength in 1.0..1e3_f64, low in 0.1..0.9_f64, more in 0.0..0.09, rate in 0.001..0.2) {
        let years = |floor: f64| match years_to_floor(strength, floor, rate).unwrap().years {
            YearsToFloor::InYears(years) => years,
            _ => 0.0,
        };
        prop_assert!(years(strength * (low + more)) <= years(strength * low) + 1e-9);
        // The answer, put back in, gives the floor.
        let left = (1.0 - rate).powf(years(strength * low)) * strength;
        prop_assert!((left - strength * low).abs() < 1e-9 * strength);
    }

    #[test]
    fn a_yearly_loss_rebuilds_its_total(total in 0.0..0.95, years in 1.0..60.0) {
        let yearly = annual_loss_compound(total, years).unwrap().value();
        prop_assert!((1.0 - (1.0 - yearly).powf(years) - total).abs() < 1e-12);
        let straight = annual_loss_linear(total, years).unwrap().value();
        prop_assert!((straight * years - total).abs() < 1e-12);
        prop_assert!(yearly >= straight - 1e-15);
    }

    #[test]
    fn an_unknown_sex_covers_both_or_is_refused(outlook in outlook(), a in 30.0..90.0, b in 30.0..90.0) {
        let of = |sex| projection(100.0, age(a), age(b), &outlook, sex);
        match of(None) {
            Ok(both) => for sex in [Sex::Female, Sex::Male] {
                let one = of(Some(sex)).unwrap();
                prop_assert!(both.strength.low() <= one.strength.low());
                prop_assert!(both.strength.high() >= one.strength.high());
            },
            Err(error) => prop_assert!(refused_for_a_reason(&error), "{error}"),
        }
    }

    #[test]
    fn every_projection_names_its_people_and_is_no_prognosis(
        outlook in outlook(), sex in sex(), a in 30.0..90.0, b in 30.0..90.0,
    ) {
        match projection(100.0, age(a), age(b), &outlook, sex) {
            Ok(answer) => {
                prop_assert!(answer.cautions.contains(&Caution::NotAPrognosis));
                prop_assert!(!answer.population.is_empty() && !answer.model.is_empty());
                let band = answer.strength;
                prop_assert!(band.low() > 0.0 && band.low() <= band.high());
                prop_assert!(band.middle().is_none_or(|middle| band.low() <= middle && middle <= band.high()));
            }
            Err(error) => prop_assert!(refused_for_a_reason(&error), "{error}"),
        }
    }

    #[test]
    fn a_crossing_lies_on_the_curve(curve in curve(), now in 30.0..60.0, part in 0.2..0.99_f64) {
        let own = Outlook::Own(OwnOutlook::new(Name::new("own").unwrap(), "an example".into(), curve.clone(), curve.clone()));
        let today: Day = "2026-03-29".parse().unwrap();
        let born = today.plus(-((now * 365.2425) as i32)).unwrap();
        let lifter = Person::new(born);
        let now = lifter.age_on(today).unwrap();
        let met = floor_crossing(100.0, 100.0 * part, &lifter, today, &own).unwrap();
        match met.earliest {
            Crossing::At { age, .. } => {
                let left = carried_forward(100.0, now, age, &curve).unwrap().strength;
                prop_assert!((left - 100.0 * part).abs() < 1e-6, "{left}");
            }
            Crossing::NotBefore { age, .. } => match carried_forward(100.0, now, age, &curve) {
                Ok(left) => prop_assert!(left.strength > 100.0 * part - 1e-9),
                Err(error) => prop_assert_eq!(error.code(), Code::StrengthUsedUp),
            },
            Crossing::AtOrBelow => prop_assert!(false, "100 is above the floor"),
        }
        prop_assert_eq!(met.earliest, met.latest);
    }

    #[test]
    fn what_is_needed_now_leaves_the_floor(floor in 1.0..100.0, at in 61.0..90.0, capacity in 1.0..300.0) {
        let lifter = Person::new("1966-03-29".parse().unwrap());
        let today = "2026-03-29".parse().unwrap();
        let outlook = Outlook::Planning(Training::Consistent);
        let dated = DatedFloor::new(Name::new("lift").unwrap(), floor, age(at), capacity);
        let plan = long_plan(&[dated], &lifter, today, &outlook, Some(0.03)).unwrap().remove(0);
        // Who has the highest need today has at least the floor then, whichever curve holds.
        let left = projection(plan.needed_now.high(), age(60.0), age(at), &outlook, None).unwrap();
        prop_assert!(left.strength.low() >= floor * (1.0 - 1e-12));
        let least = projection(plan.needed_now.low(), age(60.0), age(at), &outlook, None).unwrap();
        prop_assert!(least.strength.high() <= floor * (1.0 + 1e-12));
        prop_assert_eq!(plan.place == FloorPlace::Above, capacity >= plan.needed_now.high());
        let fastest = plan.deadlines.map(|deadlines| deadlines.fastest_fall);
        if let Some(Deadline::Gain { complete, latest_start, .. }) = fastest {
            prop_assert!(complete.years() >= 60.0 && complete.years() <= at);
            prop_assert!(latest_start.years() >= 60.0 && latest_start.years() <= at);
        }
    }

    #[test]
    fn a_higher_floor_asks_for_more(floor in 1.0..100.0, more in 0.0..50.0, at in 61.0..90.0) {
        let lifter = Person::new("1966-03-29".parse().unwrap()).with_sex(Sex::Male);
        let today = "2026-03-29".parse().unwrap();
        let needed = |floor: f64| {
            let dated = DatedFloor::new(Name::new("lift").unwrap(), floor, age(at), 60.0);
            let outlook = Outlook::Planning(Training::Untrained);
            long_plan(&[dated], &lifter, today, &outlook, None).unwrap().remove(0).needed_now
        };
        prop_assert!(needed(floor + more).low() >= needed(floor).low());
        prop_assert!(needed(floor + more).high() >= needed(floor).high());
    }

    #[test]
    fn a_coefficient_falls_as_body_mass_rises(lighter in 40.0..150.0, more in 0.1..50.0) {
        let coefficients = |kg: f64, sex: Sex| {
            let (total, mass) = (Mass::from_kg(300.0).unwrap(), Mass::from_kg(kg).unwrap());
            let contest = Contest::ThreeLifts;
            [
                sinclair(total, mass, sex, Olympiad::From2021),
                ipf_gl_2020(total, mass, sex, Equipment::Classic, contest),
                ipf_gl_2020(total, mass, sex, Equipment::Equipped, Contest::BenchPress),
                dots_2019(total, mass, sex),
                wilks_1994(total, mass, sex),
                wilks_2020(total, mass, sex),
            ]
        };
        for sex in [Sex::Female, Sex::Male] {
            let light = coefficients(lighter, sex);
            let heavy = coefficients(lighter + more, sex);
            for (light, heavy) in light.into_iter().zip(heavy) {
                if let (Ok(light), Ok(heavy)) = (light, heavy) {
                    prop_assert!(light.coefficient >= heavy.coefficient);
                    prop_assert!(heavy.points.is_finite() && heavy.points > 0.0);
                }
            }
        }
    }

    #[test]
    fn carrying_by_coefficients_and_back_changes_nothing(load in 1.0..400.0, a in 40_u8..=90, b in 40_u8..=90) {
        for rule in [AgeRule::Mcculloch, AgeRule::MeltzerFaber, AgeRule::AllRoundInternational] {
            let there = carried_by_coefficients(Mass::from_kg(load).unwrap(), a, b, rule).unwrap().load;
            let back = carried_by_coefficients(there.to_mass().unwrap(), b, a, rule).unwrap().load;
            // Once through whole nanograms, which a coefficient of up to 4.5 may enlarge.
            prop_assert!((back.value() - load).abs() < 1e-11);
        }
    }

    #[test]
    fn an_equivalent_load_goes_back(load in 1.0..400.0, a in 40.0..200.0, b in 40.0..200.0, exponent in 0.0..1.0) {
        let (load, a, b) = (Mass::from_kg(load), Mass::from_kg(a), Mass::from_kg(b));
        let (load, a, b) = (load.unwrap(), a.unwrap(), b.unwrap());
        let there = equivalent_load(load, a, b, exponent).unwrap();
        let back = equivalent_load(there.to_mass().unwrap(), b, a, exponent).unwrap();
        prop_assert!((back.value() - load.kg()).abs() < 1e-10);
    }

    #[test]
    fn sides_change_sign_when_swapped(right in 0.0..500.0, left in 0.1..500.0) {
        for test in [SideTest::Together, SideTest::Apart] {
            let there = side_difference(right, left, test, None).unwrap();
            let swapped = side_difference(left, right, test, None).unwrap();
            let sum = there.recommended.percent + swapped.recommended.percent;
            prop_assert!(sum.abs() < 1e-9);
            prop_assert!(there.recommended.percent.abs() <= 100.0);
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    #[test]
    fn a_scenario_is_the_same_for_the_same_seed(seed: u32, strength in 1.0..500.0) {
        let spread = Spread::new(0.05, 0.1, 0.3).unwrap();
        let phases = Phase::lapse_and_return(age(61.0), age(61.5), spread, spread, age(66.0));
        let mut settings = ScenarioSettings::default();
        settings.seed = seed;
        settings.courses = 40;
        settings.floor = Some(strength);
        let outlook = Outlook::Planning(Training::Consistent);
        let run = || scenario(strength, age(60.0), &phases, &outlook, None, &settings).unwrap();
        let bands = run();
        prop_assert_eq!(&bands, &run());
        prop_assert!(bands.cautions.contains(&Caution::NotAPrognosis));
        for year in &bands.years {
            prop_assert!(year.interval.contains(year.median) && year.interval.low() > 0.0);
            prop_assert!((0.0..=1.0).contains(&year.share_above_floor.unwrap()));
            // A return never overshoots what was there before the break.
            prop_assert!(year.interval.high() <= strength * (1.0 + 1e-12));
        }
    }

    #[test]
    fn a_declining_scenario_stays_inside_the_projection(seed: u32, now in 31.0..80.0, years in 1.0..9.0) {
        let mut settings = ScenarioSettings::default();
        settings.seed = seed;
        settings.courses = 30;
        let outlook = Outlook::Planning(Training::Untrained);
        let phases = Phase::decline(age(now + years));
        let bands = scenario(100.0, age(now), &phases, &outlook, None, &settings).unwrap();
        for year in &bands.years {
            let band = projection(100.0, age(now), year.age, &outlook, None).unwrap().strength;
            prop_assert!(year.interval.low() >= band.low() * (1.0 - 1e-9));
            prop_assert!(year.interval.high() <= band.high() * (1.0 + 1e-9));
        }
    }

    #[test]
    fn the_card_is_in_order_and_complete(days in prop::collection::vec(-2_000_i32..0, 0..20)) {
        let today: Day = "2026-03-29".parse().unwrap();
        let equipment: Vec<Weighing> = days.iter().enumerate().map(|(index, days)| Weighing::new(Name::new(&format!("disc {index}")).unwrap()).with_on(today.plus(*days).unwrap())).collect();
        let facts = YearlyFacts::default().with_equipment(equipment);
        let card = yearly_card(&facts, today, &CardSettings::default()).unwrap();
        prop_assert!(card.lines.windows(2).all(|pair| pair[0].due <= pair[1].due));
        let weighings = card.lines.iter().filter(|line| matches!(line.item, CardItem::Weigh(_))).count();
        prop_assert_eq!(weighings, days.len());
        for line in &card.lines {
            prop_assert_eq!(line.days_left < 0, line.state == CardState::Overdue);
        }
    }
}

/// Written and read back, an answer is the same: nothing is lost on the way to another program.
#[test]
fn answers_survive_being_written() {
    use bismar::value::Value;
    let outlook = Outlook::Study(Study::Goodpaster2006);
    let answer = projection(100.0, age(70.0), age(75.0), &outlook, None).unwrap();
    assert_eq!(Value::write(&answer).unwrap().read::<Projection>().unwrap(), answer);
    let settings = ScenarioSettings::default();
    let bands = scenario(100.0, age(70.0), &Phase::hold(age(72.0)), &outlook, None, &settings).unwrap();
    assert_eq!(Value::write(&bands).unwrap().read::<ScenarioBands>().unwrap(), bands);
    let card = yearly_card(&YearlyFacts::default(), "2026-03-29".parse().unwrap(), &CardSettings::default())
        .unwrap();
    assert_eq!(Value::write(&card).unwrap().read::<YearlyCard>().unwrap(), card);
    let floor = ewgsop2_floor(FunctionTest::Grip, None).unwrap();
    assert_eq!(Value::write(&floor).unwrap().read::<Floor>().unwrap(), floor);
    for lines in [trainability(), maintenance_dose(), published_declines()] {
        let lines = lines.unwrap();
        assert_eq!(Value::write(&lines).unwrap().read::<Vec<PublishedFigure>>().unwrap(), lines);
        assert!(lines.iter().all(|line| line.cautions.contains(&Caution::NotAPrognosis)));
        assert!(lines.iter().all(|line| !line.population.is_empty() && !line.citation.is_empty()));
    }
}

/// What was read and what was only recalled is not left to the reader to guess.
#[test]
fn a_line_from_a_work_that_was_not_read_says_so() {
    let not_read = |lines: Vec<PublishedFigure>, source: &str| -> Vec<bool> {
        let of_source = lines.iter().filter(|line| line.source == source);
        of_source.map(|line| line.cautions.contains(&Caution::SourceNotRead)).collect()
    };
    assert_eq!(not_read(trainability().unwrap(), "peterson-2010"), [false; 5]);
    let recalled = not_read(maintenance_dose().unwrap(), "fiatarone-1990");
    assert!(!recalled.is_empty() && recalled.iter().all(|said| *said));
}

/// No argument of the module asks for ethnicity, in whatever word.
#[test]
fn no_function_takes_ethnicity() {
    for row in bismar::registry::rows().filter(|row| row.key.starts_with("horizon.")) {
        for argument in row.arguments {
            let text = format!("{} {}", argument.name, argument.r#type).to_lowercase();
            assert!(
                !["ethnic", "race", "black", "white"].iter().any(|word| text.contains(word)),
                "{}",
                row.key
            );
        }
    }
}

/// Text keys of tests stay readable: digits stand apart.
#[test]
fn keys_of_tests_are_snake_case() {
    use bismar::value::Value;
    let written = Value::write(&FunctionTest::ChairStandsIn30Seconds).unwrap();
    assert_eq!(written, Value::Text("chair_stands_in_30_seconds".into()));
}
