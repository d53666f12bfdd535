//! How one place and its work compare with another.

use bismar::answers::{Comparison, compare};
use bismar::error::Code;
use bismar::quantity::Tempo;
use bismar::record::*;
use bismar::text::{Show, Words};

use crate::careful::is_careful;
use crate::world::{World, kg, mm, name, parameters};

/// A squat with three rungs, of which the box stands beside the other two, two ranges and two tempos.
fn ladder() -> World {
    let mut all = parameters();
    let squat = &mut all.lifts[0];
    squat.rungs.push(Rung::new(name("box"), vec![]));
    squat.ranges = vec![mm(300.0), mm(400.0)];
    squat.tempos = vec![Tempo::new(2, 0, 1), Tempo::new(4, 1, 1)];
    World::new(all)
}

/// Rung, range, tempo, sets, repetitions, load.
fn grant(place: (u8, u8, u8), work: (u8, u8, f64)) -> Grant {
    let place = Place::at_rung(place.0).with_range(place.1).with_tempo(place.2);
    Grant::new(Work::new(work.0, work.1, kg(work.2))).with_place(place)
}

fn asked(world: &World, to: Grant, from: Option<Grant>) -> Comparison {
    let answer = compare(&world.log, &name("squat"), world.day, &to, from.as_ref()).unwrap();
    for said in answer.show(&Words::of(&parameters())) {
        is_careful(&said);
        assert!(!said.contains(['{', '}']), "{said}");
    }
    answer
}

/// Granted are 2 x 5 at 60 kg on the second rung, "full", which is harder than "easier".
#[test]
fn row_45_what_is_harder_and_what_is_easier_than_what_is_granted() {
    use Dimension::*;
    let world = ladder();
    for (to, harder, easier, sideways) in [
        (grant((1, 0, 0), (2, 5, 60.0)), vec![], vec![], false),
        (grant((0, 0, 0), (2, 5, 60.0)), vec![], vec![Variant], false),
        (grant((1, 1, 0), (2, 5, 50.0)), vec![Range], vec![Load], false),
        (grant((1, 0, 1), (3, 4, 62.0)), vec![Tempo, Sets, Load], vec![Reps], false),
        (grant((2, 0, 0), (2, 5, 60.0)), vec![], vec![], true),
    ] {
        let answer = asked(&world, to, None);
        assert_eq!(answer.from, grant((1, 0, 0), (2, 5, 60.0)));
        assert_eq!((answer.harder, answer.easier, answer.sideways), (harder, easier, sideways), "{to:?}");
    }
}

#[test]
fn what_is_harder_one_way_is_easier_the_other_way() {
    let world = ladder();
    let (one, other) = (grant((0, 1, 0), (3, 5, 40.0)), grant((1, 0, 1), (2, 6, 40.0)));
    let (there, back) = (asked(&world, other, Some(one)), asked(&world, one, Some(other)));
    assert_eq!((there.harder, there.easier), (back.easier, back.harder));
    assert_eq!((there.from, there.to), (back.to, back.from));
}

#[test]
fn it_says_so_in_words_with_the_place_of_every_load() {
    let mut all = parameters();
    all.lifts[0].name = Some(name("squat to the box"));
    let world = World::new(all.clone());
    let said = asked(&world, grant((0, 0, 0), (3, 5, 62.0)), None).show(&Words::of(&all));
    assert_eq!(said[0], "Squat to the box: from 2 x 5 at 60 kg (full) to 3 x 5 at 62 kg (easier).");
    assert_eq!(
        said[1..4],
        ["Harder: sets; load.", "Easier: rung.", "More than one thing gets harder; a step changes one."]
    );
}

#[test]
fn a_place_that_there_is_not_and_a_lift_that_nobody_declared_are_refused() {
    let world = ladder();
    let of = |lift: &str, to: Grant, from: Option<Grant>| {
        let error = compare(&world.log, &name(lift), world.day, &to, from.as_ref()).unwrap_err();
        (error.code(), error.field().to_string())
    };
    let fine = grant((1, 0, 0), (2, 5, 60.0));
    assert_eq!(of("lunge", fine, None).0, Code::UnknownLift);
    assert_eq!(of("squat", grant((3, 0, 0), (2, 5, 60.0)), None), (Code::OutOfRange, "to.place.rung".into()));
    let no_sets = grant((1, 0, 0), (0, 5, 60.0));
    assert_eq!(of("squat", fine, Some(no_sets)), (Code::OutOfRange, "from.work.sets".into()));
    let empty = Log::new(Lifter::new(name("invented")));
    let error = compare(&empty, &name("squat"), world.day, &fine, None).unwrap_err();
    assert_eq!(error.code(), Code::NoParameters);
}
