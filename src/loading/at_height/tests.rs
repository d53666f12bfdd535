//! Loads at one height, worked by hand.

use super::*;
use crate::quantity::Name;
use alloc::vec;

fn kg(value: f64) -> Mass {
    Mass::from_kg(value).unwrap()
}

fn mm(value: f64) -> Length {
    Length::from_mm(value).unwrap()
}

fn bar() -> Bar {
    Bar::new(Name::new("bar 20").unwrap(), kg(20.0), Mass::ZERO).unwrap()
}

/// `(kg, number, mm)`; 0 mm is a diameter that nobody measured.
fn stock(discs: &[(f64, u16, f64)]) -> Stock {
    let disc = |(mass, count, size): &(f64, u16, f64)| {
        let disc = Disc::new(kg(*mass), *count).unwrap();
        if *size > 0.0 { disc.with_diameter(mm(*size)).unwrap() } else { disc }
    };
    Stock::new(discs.iter().map(disc).collect()).unwrap()
}

/// Discs of this mass, number and size that take so much room on the sleeve.
fn thick(mass: f64, count: u16, size: f64, room: f64) -> Disc {
    let disc = Disc::new(kg(mass), count).unwrap().with_diameter(mm(size)).unwrap();
    disc.with_thickness(mm(room)).unwrap()
}

fn at(discs: &[(f64, u16, f64)], blocks: &[f64], height: f64) -> AtHeight {
    let blocks: Vec<Length> = blocks.iter().copied().map(mm).collect();
    AtHeight::new(&bar(), &stock(discs), &blocks, mm(height), kg(500.0)).unwrap()
}

fn totals(at: &AtHeight) -> Vec<f64> {
    at.totals().map(Mass::kg).collect()
}

/// The discs on each end, the blocks in mm (0 for none) and how far off.
fn made(at: &AtHeight, target: f64) -> (Vec<f64>, f64, f64) {
    let kept = at.load(kg(target), Rounding::Exact).unwrap();
    let side = kept.loaded.side().iter().map(|disc| disc.nominal.kg()).collect();
    (side, kept.blocks.map_or(0.0, Length::mm), kept.off_by_mm)
}

const MIXED: [(f64, u16, f64); 3] = [(5.0, 2, 450.0), (20.0, 2, 450.0), (10.0, 2, 325.0)];

/// 450 mm / 2 = 225 mm on the floor: 5, 20 or both on each end, with or without the 10 beside them:
/// 20 + 2 x (5, 15, 20, 25, 30, 35) kg. 62.5 mm + 325 mm / 2 = 225 mm on the blocks: 20 + 2 x 10 kg.
#[test]
fn discs_hold_the_height_and_so_do_smaller_ones_on_blocks() {
    let floor = at(&MIXED, &[], 225.0);
    assert_eq!(totals(&floor), [30.0, 50.0, 60.0, 70.0, 80.0, 90.0]);
    let blocks = at(&MIXED, &[62.5], 225.0);
    assert_eq!(totals(&blocks), [30.0, 40.0, 50.0, 60.0, 70.0, 80.0, 90.0]);
    assert!(blocks.height_known());
    assert_eq!(blocks.lightest(), Some(kg(30.0)));
    assert_eq!(blocks.off_by_mm().to_bits(), 0);
    assert_eq!(made(&blocks, 40.0), (vec![10.0], 62.5, 0.0));
    assert_eq!(made(&blocks, 50.0), (vec![5.0, 10.0], 0.0, 0.0));
    assert_eq!(made(&blocks, 90.0), (vec![20.0, 5.0, 10.0], 0.0, 0.0));
}

/// The neighbours of 40 kg are made with other discs, on the floor.
#[test]
fn the_policy_and_the_neighbours_look_at_every_way() {
    let at = at(&MIXED, &[62.5], 225.0);
    let below = at.load(kg(48.0), Rounding::Below).unwrap().loaded;
    assert_eq!((below.total, below.difference), (kg(40.0), kg(-8.0)));
    assert_eq!((below.next_below, below.next_above), (Some(kg(30.0)), Some(kg(50.0))));
    // 40 and 50 are equally near 45: the lighter.
    for (policy, total) in [(Rounding::Above, 50.0), (Rounding::Nearest, 40.0)] {
        assert_eq!(at.load(kg(45.0), policy).unwrap().loaded.total, kg(total));
    }
    let refusals = [
        (29.0, Rounding::Below, Code::BelowLightest),
        (45.0, Rounding::Exact, Code::NotLoadable),
        (91.0, Rounding::Above, Code::AboveHeaviest),
        (501.0, Rounding::Below, Code::OutOfRange),
    ];
    for (target, policy, code) in refusals {
        let refusal = at.load(kg(target), policy).unwrap_err();
        assert_eq!((refusal.code(), refusal.field()), (code, "target"));
    }
}

/// 40 kg each time: 10 kg on each end.
#[test]
fn of_equal_loads_the_floor_then_low_blocks_then_few_discs_then_large_ones() {
    // 5 + 5 of 450 mm on the floor, or a single 10 of 325 mm on blocks of 62.5 mm.
    let floor = at(&[(5.0, 4, 450.0), (10.0, 2, 325.0)], &[62.5], 225.0);
    assert_eq!(made(&floor, 40.0), (vec![5.0, 5.0], 0.0, 0.0));
    // 225 mm = 62.5 mm + 325 mm / 2 = 110 mm + 230 mm / 2; on the lower blocks it takes two discs.
    let low = at(&[(10.0, 2, 230.0), (5.0, 4, 325.0)], &[110.0, 62.5], 225.0);
    assert_eq!(made(&low, 40.0), (vec![5.0, 5.0], 62.5, 0.0));
    // 449 mm stands as high as 450 mm: one disc instead of two.
    let few = at(&[(5.0, 4, 450.0), (10.0, 2, 449.0)], &[], 225.0);
    assert_eq!(made(&few, 40.0), (vec![10.0], 0.0, 0.0));
    // Where the sleeve ends, thin and thick discs of 450 mm make 20 kg in two ways; one of 449 mm is fewer still.
    let discs = vec![thick(10.0, 4, 450.0, 60.0), thick(5.0, 8, 450.0, 10.0), thick(20.0, 2, 449.0, 90.0)];
    let (stock, bar) = (Stock::new(discs).unwrap(), bar().with_sleeve(mm(200.0)).unwrap());
    let sleeve = AtHeight::new(&bar, &stock, &[], mm(225.0), kg(500.0)).unwrap();
    assert_eq!(made(&sleeve, 60.0), (vec![20.0], 0.0, 0.0));
    let large = at(&[(10.0, 2, 449.0), (10.0, 2, 450.0)], &[], 225.0);
    let kept = large.load(kg(40.0), Rounding::Exact).unwrap();
    assert_eq!(kept.loaded.centre_height, Some(mm(225.0)));
}

/// 325 mm / 2 = 162.5 mm, 62.5 mm too low; on 100 mm it is 262.5 mm, 37.5 mm too high.
#[test]
fn where_nothing_keeps_the_height_the_nearest_counts() {
    let discs = [(10.0, 2, 325.0)];
    let floor = at(&discs, &[], 225.0);
    assert_eq!(floor.off_by_mm().to_bits(), (-62.5_f64).to_bits());
    assert_eq!((totals(&floor), made(&floor, 40.0)), (vec![40.0], (vec![10.0], 0.0, -62.5)));
    let blocks = at(&discs, &[100.0], 225.0);
    assert_eq!(made(&blocks, 40.0), (vec![10.0], 100.0, 37.5));
    assert_eq!(blocks.off_by_mm().to_bits(), 37.5_f64.to_bits());
}

/// 400 mm / 2 = 200 mm and 500 mm / 2 = 250 mm lie 25 mm from 225 mm, and so does 200 mm on 50 mm blocks.
#[test]
fn of_two_equally_far_the_higher_start_counts() {
    let discs = [(10.0, 2, 400.0), (15.0, 2, 500.0)];
    let floor = at(&discs, &[], 225.0);
    assert_eq!(totals(&floor), [50.0, 70.0]);
    assert_eq!(made(&floor, 70.0), (vec![15.0, 10.0], 0.0, 25.0));
    let blocks = at(&discs, &[50.0], 225.0);
    assert_eq!(totals(&blocks), [40.0, 50.0, 70.0]);
    assert_eq!(made(&blocks, 40.0), (vec![10.0], 50.0, 25.0));
}

/// 448 mm / 2 is 1 mm below 225 mm and keeps it; 447 mm / 2 is 1.5 mm below and does not.
#[test]
fn discs_that_stand_equally_high_count_together() {
    let same = at(&[(5.0, 2, 448.0), (10.0, 2, 447.0), (20.0, 2, 452.0)], &[], 225.0);
    assert_eq!(same.off_by_mm().to_bits(), 0);
    assert_eq!(totals(&same), [30.0, 50.0, 60.0, 70.0, 80.0, 90.0]);
    // At 240 mm: 15 mm, 15.5 mm and 16.5 mm too low; the last 1.5 mm lower than the first.
    let near = at(&[(5.0, 2, 450.0), (10.0, 2, 449.0), (20.0, 2, 447.0)], &[], 240.0);
    assert_eq!(near.off_by_mm().to_bits(), (-15.0_f64).to_bits());
    assert_eq!(totals(&near), [30.0, 40.0, 50.0, 70.0, 80.0, 90.0]);
    assert_eq!(made(&near, 40.0), (vec![10.0], 0.0, -15.5));
    assert_eq!(made(&near, 30.0), (vec![5.0], 0.0, -15.0));
}

#[test]
fn without_a_known_diameter_the_height_is_unknown_and_any_disc_counts() {
    let unknown = at(&[(5.0, 2, 0.0), (10.0, 1, 450.0)], &[62.5], 225.0);
    assert!(!unknown.height_known());
    assert_eq!((unknown.off_by_mm().to_bits(), totals(&unknown)), (0, vec![20.0, 30.0]));
    assert_eq!(made(&unknown, 30.0), (vec![5.0], 0.0, 0.0));
    assert_eq!(totals(&at(&[], &[], 225.0)), [20.0]);
    // One known pair: the unknown might lift it, so it stays on the floor.
    let known = at(&[(5.0, 2, 0.0), (10.0, 2, 450.0)], &[], 225.0);
    assert_eq!((known.height_known(), totals(&known)), (true, vec![40.0]));
}

/// At 162.5 mm the discs of 450 mm would lift the bar.
#[test]
fn larger_discs_stay_off() {
    assert_eq!(totals(&at(&MIXED, &[], 162.5)), [40.0]);
}

/// What does not go on the bar, or is too heavy to be looked at, reaches no height.
#[test]
fn discs_that_cannot_be_loaded_do_not_count() {
    let stock = Stock::new(vec![thick(20.0, 2, 450.0, 60.0), thick(10.0, 2, 325.0, 30.0)]).unwrap();
    let on = |bar: &Bar, highest: f64| {
        let at = AtHeight::new(bar, &stock, &[], mm(225.0), kg(highest)).unwrap();
        (totals(&at), at.off_by_mm(), at.height_known())
    };
    assert_eq!(on(&bar(), 500.0), (vec![60.0, 80.0], 0.0, true));
    assert_eq!(on(&bar().with_sleeve(mm(60.0)).unwrap(), 500.0), (vec![60.0], 0.0, true));
    assert_eq!(on(&bar().with_sleeve(mm(59.0)).unwrap(), 500.0), (vec![40.0], -62.5, true));
    assert_eq!(on(&bar().with_sleeve(mm(29.0)).unwrap(), 500.0), (vec![20.0], 0.0, false));
    assert_eq!(on(&bar(), 60.0), (vec![60.0], 0.0, true));
    assert_eq!(on(&bar(), 59.0), (vec![40.0], -62.5, true));
    assert_eq!(on(&bar(), 20.0), (vec![20.0], 0.0, false));
}

#[test]
fn what_is_out_of_range_is_refused() {
    let new = |blocks: &[f64], height: f64, highest: f64| {
        let blocks: Vec<Length> = blocks.iter().copied().map(mm).collect();
        AtHeight::new(&bar(), &stock(&MIXED), &blocks, mm(height), kg(highest))
    };
    assert!(new(&[2_000.0], 2_000.0, 20.0).is_ok());
    let refused = [
        (new(&[], 0.0, 100.0), "height"),
        (new(&[], 2_000.5, 100.0), "height"),
        (new(&[50.0, 0.0], 225.0, 100.0), "blocks[1]"),
        (new(&[2_000.5], 225.0, 100.0), "blocks[0]"),
        (new(&[], 225.0, 19.5), "highest"),
    ];
    for (answer, field) in refused {
        let error = answer.unwrap_err();
        assert_eq!((error.code(), error.field()), (Code::OutOfRange, field));
    }
}
