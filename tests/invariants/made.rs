//! What is granted can be made: from these discs, alike on both ends, at the height of its place or with word of it.

use super::course::*;
use super::moves::crate_cases;
use super::prescription::whole_plan;
use bismar::loading::{Bar, Implement, PlacedDisc, Setting};
use bismar::prescription::{LiftToday, next_session_from};
use bismar::quantity::{Length, Mass};
use bismar::reason::Reason;
use bismar::record::*;
use proptest::prelude::*;

/// A millimetre, which a tape does not tell.
const WITHIN_MM: f64 = 1.0 + 1e-9;

/// The sum of bar, collars and the discs on both ends.
fn mass_of(bar: &Bar, side: &[PlacedDisc]) -> Mass {
    let end = side.iter().fold(bar.collar(), |sum, disc| sum.plus(disc.mass).unwrap());
    bar.mass().plus(end.times(2).unwrap()).unwrap()
}

/// Whether one end takes no more of any kind than there are pairs, and says of each what the stock says.
fn in_stock(all: &Parameters, side: &[PlacedDisc]) -> bool {
    all.stock.discs().iter().enumerate().all(|(kind, disc)| {
        let mut own = side.iter().filter(|placed| usize::from(placed.kind) == kind);
        let count = own.clone().count();
        count <= usize::from(disc.pairs())
            && own.all(|placed| placed.mass == disc.mass() && placed.diameter == disc.diameter())
    })
}

/// How far the bar's centre lies off its height, above positive; none where no disc says how large it is.
fn off_height(side: &[PlacedDisc], blocks: Option<Length>, height: Length) -> Option<f64> {
    let largest = side.iter().filter_map(|disc| disc.diameter).max()?;
    Some(largest.mm() / 2.0 + blocks.map_or(0.0, Length::mm) - height.mm())
}

fn check(course: &Course, set: &LiftParameters, lift: &LiftToday) -> Result<(), TestCaseError> {
    let (Some(load), Some(loaded)) = (lift.load, &lift.loaded) else {
        prop_assert!(lift.load.is_none() && lift.loaded.is_none());
        return Ok(());
    };
    let all = course.set();
    prop_assert_eq!(loaded.total, load);
    prop_assert!(load <= lift.limit);
    prop_assert!(lift.blocks.is_none_or(|blocks| all.blocks.contains(&blocks)));
    match (all.implement(&set.implement).unwrap(), &loaded.setting) {
        (Implement::Bar(bar), Setting::Discs(side)) => {
            prop_assert_eq!(mass_of(bar, side), load, "bar, collars and twice one end");
            prop_assert!(in_stock(all, side), "{:?}", side);
            let said = |reason: &Reason| lift.reasons.contains(reason);
            let off = lift.height.and_then(|height| off_height(side, lift.blocks, height));
            match (set.starts_from, off) {
                (StartsFrom::Floor, None) => prop_assert!(said(&Reason::HeightUnknown)),
                (StartsFrom::Floor, Some(mm)) if mm.abs() > WITHIN_MM => {
                    let told = lift.reasons.iter().any(|reason| {
                        matches!(reason, Reason::HeightOff { mm: told } | Reason::HeightNotMade { off_mm: told, .. }
                            if (told - mm).abs() <= WITHIN_MM)
                    });
                    prop_assert!(told, "{mm} mm off and not said: {:?}", lift.reasons);
                }
                (StartsFrom::Floor, Some(_)) => {
                    let told = lift.reasons.iter().any(|reason| matches!(reason, Reason::HeightOff { .. }));
                    prop_assert!(!told, "at its height, and said to be off: {:?}", lift.reasons);
                }
                _ => prop_assert!(lift.height.is_none() && lift.blocks.is_none()),
            }
        }
        (Implement::Assistance(_), Setting::Selected { plates, add_ons }) => {
            // A stack of plates of 5 kg, of which those above the selector help.
            prop_assert!(add_ons.is_empty());
            prop_assert_eq!(load.nanograms(), -kg(5.0).times(u32::from(*plates)).unwrap().nanograms());
        }
        (Implement::Pieces(pieces), Setting::Piece(piece)) => {
            prop_assert!(*piece == load && pieces.masses().contains(piece), "{piece:?}");
        }
        (implement, setting) => prop_assert!(false, "{implement:?} set by {setting:?}"),
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(crate_cases()))]

    #[test]
    fn invariant_09_loadability(drawn in any_course(), days in 0_i32..60) {
        let course = Course::of(&drawn);
        for (at, lift, from, to) in course.upward() {
            let loads = course.loads_at(at, lift, to.place);
            prop_assert!(to.load() <= from.load() || loads.contains(&to.load()), "{:?}", to);
        }
        for today in [course.day, course.day.plus(days).unwrap()] {
            let session = next_session_from(course.state(), &whole_plan(&course), today).unwrap();
            for (set, lift) in course.set().lifts.iter().zip(&session.lifts) {
                check(&course, set, lift)?;
            }
        }
    }
}
