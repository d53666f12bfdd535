//! Loads, places and days as a coach says them.

use bismar::loading::{Loaded, PlacedDisc, Setting};
use bismar::prescription::Verdict;
use bismar::progression::MoveOutlook;
use bismar::quantity::{Mass, Unit};
use bismar::reason::Reason;
use bismar::record::{Grant, Parameters, Place, Work};
use bismar::text::{self, Words};
use bismar::value::Value;
use proptest::prelude::*;

use crate::gym::{day, discs, grant, kg, lb, loaded_today, mm, name, parameters, today};

fn in_pounds() -> Parameters {
    parameters().with_stock(discs(&[lb(45.0), lb(10.0), lb(5.0), lb(2.5)]))
}

#[test]
fn the_unit_is_that_of_most_discs_and_can_be_chosen() {
    let (kilograms, pounds) = (parameters(), in_pounds());
    assert_eq!((Words::of(&kilograms).unit(), Words::of(&pounds).unit()), (Unit::Kg, Unit::Lb));
    // 45 + 2 x 45 lb.
    assert_eq!(Words::of(&pounds).mass(lb(145.0)), "145 lb");
    assert_eq!(Words::of(&pounds).in_unit(Unit::Kg).mass(lb(145.0)), "65.75 kg");
    assert_eq!(Words::of(&kilograms).in_unit(Unit::Lb).mass(kg(60.0)), "132.5 lb");
}

/// No coarser than half of what a pair of the lightest disc changes, and evenly into every disc.
#[test]
fn a_mass_is_printed_no_finer_than_the_gym_can_tell() {
    let with = |faces: &[Mass]| parameters().with_stock(discs(faces));
    let printed = |faces: &[Mass], mass: Mass, unit| Words::of(&with(faces)).in_unit(unit).mass(mass);
    assert_eq!(printed(&[kg(1.25)], kg(53.111), Unit::Kg), "53 kg");
    assert_eq!(printed(&[kg(1.25)], kg(21.25), Unit::Kg), "21.25 kg");
    // 20 + 2 x (10 kg + 5 lb + 1.25 kg + 0.25 kg) with discs of both kinds.
    let both = [kg(10.0), lb(5.0), kg(1.25), kg(0.25)];
    assert_eq!(printed(&both, kg(47.535_923_7), Unit::Kg), "47.5 kg");
    assert_eq!(printed(&[kg(0.125)], kg(21.375), Unit::Kg), "21.375 kg");
    assert_eq!(printed(&[kg(5.0), kg(0.5)], kg(53.13), Unit::Kg), "53.25 kg");
    assert_eq!(printed(&[lb(2.5)], lb(100.3), Unit::Lb), "100.5 lb");
    // 1.25 lb is two and a half times 0.5 lb, so the step is 0.25 lb.
    assert_eq!(printed(&[lb(1.25)], lb(101.25), Unit::Lb), "101.25 lb");
    assert_eq!(text::mass(kg(60.823_313_3)), "60.75 kg");
    assert_eq!(text::mass(kg(-25.0)), "25 kg of help");
    assert_eq!(text::mass(kg(-0.1)), "0 kg");
}

#[test]
fn what_is_not_to_be_passed_is_rounded_down() {
    let words = Words::plain();
    assert_eq!((words.mass(kg(52.49)), words.at_most(kg(52.49))), ("52.5 kg".into(), "52.25 kg".into()));
    // Less help is more load.
    assert_eq!(words.at_most(kg(-20.1)), "20.25 kg of help");
    let said = text::reason(&Reason::ClearanceLimit { load: kg(49.9) });
    assert!(said.contains("49.75 kg"), "{said}");
}

proptest! {
    /// Any mass, in either unit, with 1 to 6 kinds of disc of 0.25 to 50 kg or lb. What is printed reads back within the
    /// 0.25 kg in which a load counts as the one written; a limit never reads back above itself.
    #[test]
    fn a_printed_load_reads_back_as_itself(
        mass in -200_000_000_000_000_i64..=500_000_000_000_000,
        pounds in any::<bool>(),
        quarters in prop::collection::vec(1_u16..=200, 1..=6),
    ) {
        let face = |quarter: &u16| {
            let number = f64::from(*quarter) / 4.0;
            if pounds { lb(number) } else { kg(number) }
        };
        let all = parameters().with_stock(discs(&quarters.iter().map(face).collect::<Vec<_>>()));
        let words = Words::of(&all);
        let mass = Mass::from_nanograms(mass).unwrap();
        let read = |said: String| {
            let help = said.ends_with(" of help");
            let load: Mass = said.trim_end_matches(" of help").parse().unwrap();
            if help { Mass::ZERO.minus(load).unwrap() } else { load }
        };
        let off = read(words.mass(mass)).nanograms() - mass.nanograms();
        prop_assert!(off.abs() <= kg(0.125).nanograms(), "{} for {mass}", words.mass(mass));
        prop_assert!(read(words.at_most(mass)) <= mass, "{} for {mass}", words.at_most(mass));
        for quarter in &quarters {
            prop_assert_eq!(read(words.mass(face(quarter))), face(quarter));
        }
    }
}

fn placed(nominal: Mass) -> PlacedDisc {
    let Setting::Discs(side) = loaded_today().setting else { panic!("a bar is loaded today") };
    let mut placed = side[0];
    (placed.kind, placed.nominal, placed.mass, placed.diameter) = (0, nominal, nominal, None);
    placed
}

fn loaded(setting: Setting, total: Mass) -> Loaded {
    let mut loaded = loaded_today();
    (loaded.setting, loaded.total, loaded.nominal) = (setting, total, total);
    (loaded.difference, loaded.difference_percent) = (Mass::ZERO, None);
    (loaded.centre_height, loaded.fit_checked) = (None, true);
    (loaded.next_below, loaded.next_above) = (None, None);
    loaded
}

#[test]
fn a_disc_is_called_by_the_face_it_carries_and_written_so() {
    assert_eq!(placed(lb(5.0)).unit(), Unit::Lb);
    assert_eq!((text::face(lb(2.5)), text::face(kg(1.25))), ("2.5 lb".into(), "1.25 kg".into()));
    for (face, unit) in [(lb(5.0), "lb"), (kg(5.0), "kg")] {
        let written = Value::write(&placed(face)).unwrap();
        let number = written.field("nominal").and_then(|nominal| nominal.field(unit));
        assert_eq!(number, Some(&Value::Number(5.0)), "{written:?}");
        assert_eq!(written.read::<PlacedDisc>(), Ok(placed(face)));
        let stock = discs(&[face]);
        let written = Value::write(&stock).unwrap();
        assert_eq!(written.read::<bismar::loading::Stock>(), Ok(stock));
    }
    let all = parameters();
    let mut lift = today("sq", Verdict::Train);
    lift.loaded = Some(loaded(Setting::Discs(vec![placed(kg(20.0)), placed(lb(5.0))]), kg(64.5)));
    assert_eq!(
        Words::of(&all).loading(&lift).unwrap(),
        "Each side, from the inside: 20 kg, 5 lb; 64.5 kg (high box, range 450 mm, 3 s down, 1 s hold, 1 s up) in all"
    );
}

/// Never as the code would print it.
#[test]
fn dumbbells_stacks_and_blocks_are_called_what_they_are() {
    let all = parameters();
    let said = |id: &str, setting: Setting, total: Mass| {
        let mut lift = today(id, Verdict::Train);
        lift.loaded = Some(loaded(setting, total));
        Words::of(&all).loading(&lift).unwrap()
    };
    assert_eq!(said("dp", Setting::Piece(kg(12.0)), kg(12.0)), "Bells, 12 kg each (high box)");
    let mut unnamed = today("dp", Verdict::Train);
    unnamed.loaded = Some(loaded(Setting::Piece(kg(12.0)), kg(12.0)));
    assert_eq!(Words::plain().loading(&unnamed).unwrap(), "Dumbbells, 12 kg each (rung 1)");
    assert_eq!(
        said("pu", Setting::Selected { plates: 5, add_ons: Vec::new() }, kg(-25.0)),
        "The first 5 plates of the stack; 25 kg of help in all"
    );
    let hung = Setting::Selected { plates: 1, add_ons: vec![kg(2.5)] };
    assert!(said("pu", hung, kg(-7.5)).starts_with("The first plate of the stack, with 2.5 kg hung on;"));
    let mut pull = today("dl", Verdict::Train);
    pull.loaded = Some(loaded(Setting::Discs(Vec::new()), kg(20.0)));
    pull.blocks = Some(mm(62.5));
    let pull = Words::of(&all).loading(&pull).unwrap();
    assert_eq!(pull, "The empty bar; 20 kg (high box, bar at 300 mm) in all; on blocks of 62.5 mm");
}

#[test]
fn days_are_written_as_people_write_them() {
    assert_eq!(text::day(day()), "27 Aug 2026");
    assert_eq!(text::day("2027-01-03".parse().unwrap()), "3 Jan 2027");
    assert_eq!(text::day("1999-12-31".parse().unwrap()), "31 Dec 1999");
}

/// The line of a lift and every line below it: where there is a load there is the rung, the range and the tempo.
#[test]
fn every_line_that_names_a_load_names_the_place() {
    let all = parameters();
    let mut squat = today("sq", Verdict::Train);
    squat.loaded = Some(loaded(Setting::Discs(vec![placed(kg(20.0))]), kg(60.0)));
    squat.warm_up = vec![bismar::prescription::WarmUpSet::new(kg(25.0), 5, false)];
    squat.reasons = vec![
        Reason::RoundedDown { from: kg(61.0), to: kg(60.0) },
        Reason::MaintainingBand { not_below: kg(50.0) },
        Reason::Layoff { gap: 30, row: 2, load: kg(60.0) },
        Reason::OverrideInForce { load: kg(65.0), who: name("invented coach"), until: None },
        Reason::SteppedBack { from: kg(70.0) },
        Reason::NothingLoadable { lightest: kg(20.0) },
    ];
    squat.outlook = MoveOutlook::Blocked {
        by: vec![
            Reason::NoLoadableStep { cap: kg(63.0), next: Some(kg(65.0)) },
            Reason::PairCap { load: kg(61.0) },
        ],
        to: None,
    };
    squat.would_change = vec![bismar::prescription::Change::SmallerDiscs { up_to: kg(63.0) }];
    let said = Words::of(&all).session(&crate::gym::session(vec![squat.clone()])).to_string();
    let with_load: Vec<&str> = said.lines().filter(|line| line.contains(" kg")).collect();
    assert_eq!(with_load.len(), 12, "{said}");
    let place = "high box, range 450 mm, 3 s down, 1 s hold, 1 s up";
    assert!(with_load.iter().all(|line| line.contains(place)), "{said}");
    let line = Words::of(&all).lift_line(&squat);
    assert_eq!(line, format!("Back squat, {place}: train, 60 kg, 3 x 5, leave 3"));
    // Without names the places are counted.
    assert_eq!(text::lift_line(&squat), "sq, rung 1: train, 60 kg, 3 x 5, leave 3");
}

/// Less load on a harder rung is a step; so the rung stands before the load, and no load stands alone.
#[test]
fn an_offer_says_what_it_changes() {
    let all = parameters();
    let to = |id: &str, to: Grant| Words::of(&all).step_to(&today(id, Verdict::Train), to);
    let at = |place: Place| Grant::new(Work::new(3, 5, kg(60.0))).with_place(place);
    assert_eq!(to("dp", grant(1, kg(35.0))), "the next rung (lower box) at 35 kg each");
    assert_eq!(to("dp", grant(0, kg(62.5))), "62.5 kg each (high box)");
    assert_eq!(
        to("sq", at(Place::default().with_range(1))),
        "a longer range (high box, range 350 mm, 3 s down, 1 s hold, 1 s up) at 60 kg"
    );
    assert_eq!(
        to("sq", at(Place::default().with_tempo(1))),
        "another tempo (high box, range 450 mm, 4 s down, 1 s up) at 60 kg"
    );
    assert_eq!(
        to("dl", at(Place::default().with_range(1))),
        "a lower start (high box, bar at 225 mm) at 60 kg"
    );
    let more = grant(0, kg(60.0)).with_work(Work::new(3, 6, kg(60.0)));
    assert_eq!(to("dp", more), "3 x 6 at 60 kg each (high box)");
    assert_eq!(
        to("dp", grant(1, kg(35.0)).with_work(Work::new(2, 5, kg(35.0)))),
        "the next rung (lower box) at 35 kg each, 2 x 5"
    );
    let unnamed = Words::plain().step_to(&today("dp", Verdict::Train), grant(1, kg(35.0)));
    assert_eq!(unnamed, "another rung (rung 2) at 35 kg");
}
