//! Properties of the loading module: the search against plain enumeration, and the invariants of an answer.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test may panic"
)]

use bismar::Code;
use bismar::error::Allowed;
use bismar::loading::*;
use bismar::quantity::{Length, Mass, Name, Reps};
use proptest::prelude::*;
use proptest::test_runner::TestRunner;
use std::cell::Cell;
use std::collections::BTreeMap;

fn id() -> Name {
    Name::new("bar").unwrap()
}

fn mass(nanograms: i64) -> Mass {
    Mass::from_nanograms(nanograms).unwrap()
}

/// A disc mass as people own them: quarter kilograms, or quarter pounds.
fn disc_mass() -> impl Strategy<Value = Mass> {
    prop_oneof![
        (1..=40_u32).prop_map(|quarters| Mass::from_kg(f64::from(quarters) / 4.0).unwrap()),
        (1..=80_u32).prop_map(|quarters| Mass::from_lb(f64::from(quarters) / 4.0).unwrap()),
    ]
}

fn disc() -> impl Strategy<Value = Disc> {
    (disc_mass(), 0..=6_u16, proptest::option::of(10..=60_i16)).prop_map(|(mass, count, thickness)| {
        let disc = Disc::new(mass, count).unwrap();
        thickness.map_or(disc, |mm| disc.with_thickness(Length::millimetres(mm)).unwrap())
    })
}

fn stock(kinds: usize) -> impl Strategy<Value = Stock> {
    proptest::collection::vec(disc(), 0..=kinds).prop_map(|discs| Stock::new(discs).unwrap())
}

fn bar() -> impl Strategy<Value = Bar> {
    (8_u32..=80, 0_u32..=10, proptest::option::of(40..=200_i16)).prop_map(|(mass, collar, sleeve)| {
        let quarters = |count| Mass::from_kg(f64::from(count) / 4.0).unwrap();
        let bar = Bar::new(id(), quarters(mass), quarters(collar)).unwrap();
        sleeve.map_or(bar.clone(), |mm| bar.with_sleeve(Length::millimetres(mm)).unwrap())
    })
}

fn target() -> impl Strategy<Value = Mass> {
    prop_oneof![
        (0..=400_u32).prop_map(|quarters| Mass::from_kg(f64::from(quarters) / 4.0).unwrap()),
        (0..=400_u32).prop_map(|halves| Mass::from_lb(f64::from(halves) / 2.0).unwrap()),
    ]
}

/// Kinds from the heaviest; of equal mass the larger, then the earlier: the order inside out.
fn inside_out(stock: &Stock) -> Vec<usize> {
    let mut kinds: Vec<usize> = (0..stock.discs().len()).collect();
    kinds.sort_by_key(|kind| {
        let disc = stock.discs()[*kind];
        (std::cmp::Reverse(disc.mass()), std::cmp::Reverse(disc.diameter()), *kind)
    });
    kinds
}

/// Every stack with the heavier disc inside that the stock has in pairs and the sleeve takes, as kinds.
fn all_sides(bar: &Bar, stock: &Stock) -> Vec<Vec<u16>> {
    let mut sides = vec![Vec::new()];
    for kind in inside_out(stock) {
        let mut longer = Vec::new();
        for side in &sides {
            for count in 0..=stock.discs()[kind].pairs() {
                let mut next: Vec<u16> = side.clone();
                next.extend(std::iter::repeat_n(kind as u16, usize::from(count)));
                longer.push(next);
            }
        }
        sides = longer;
    }
    sides.retain(|side| {
        let thickness =
            |kind: &u16| stock.discs()[usize::from(*kind)].thickness().map_or(0, |t| t.micrometres());
        bar.sleeve().is_none_or(|room| side.iter().map(thickness).sum::<i32>() <= room.micrometres())
    });
    sides
}

fn total(bar: &Bar, stock: &Stock, side: &[u16]) -> i64 {
    let discs: i64 = side.iter().map(|kind| stock.discs()[usize::from(*kind)].mass().nanograms()).sum();
    bar.empty().unwrap().nanograms() + 2 * discs
}

/// Larger discs first in the comparison: the ranks of the kinds from the inside out, negated.
fn largest(stock: &Stock, side: &[u16]) -> Vec<usize> {
    let order = inside_out(stock);
    let mut ranks: Vec<usize> =
        side.iter().map(|kind| order.iter().position(|k| *k == usize::from(*kind)).unwrap()).collect();
    ranks.sort_unstable();
    ranks
}

fn common(a: &[u16], b: &[u16]) -> usize {
    a.iter().zip(b).take_while(|(a, b)| a == b).count()
}

fn kinds(side: &[PlacedDisc]) -> Vec<u16> {
    side.iter().map(|disc| disc.kind).collect()
}

/// What plain enumeration takes: difference, then discs, then the larger.
fn expected(bar: &Bar, stock: &Stock, target: Mass, policy: Rounding) -> Option<(i64, Vec<u16>)> {
    let aim = target.nanograms();
    all_sides(bar, stock)
        .into_iter()
        .map(|side| (total(bar, stock, &side), side))
        .filter(|(total, _)| match policy {
            Rounding::Exact => *total == aim,
            Rounding::Below => *total <= aim,
            Rounding::Above => *total >= aim,
            _ => true,
        })
        .min_by_key(|(total, side)| ((total - aim).abs(), *total > aim, side.len(), largest(stock, side)))
}

const POLICIES: [Rounding; 4] = [Rounding::Exact, Rounding::Below, Rounding::Nearest, Rounding::Above];

proptest! {
    #![proptest_config(ProptestConfig { cases: 300, ..ProptestConfig::default() })]

    #[test]
    fn the_search_equals_plain_enumeration(bar in bar(), stock in stock(5), target in target()) {
        for policy in POLICIES {
            let wanted = expected(&bar, &stock, target, policy);
            match (load(&bar, &stock, target, policy), wanted) {
                (Ok(loaded), Some((total, side))) => {
                    prop_assert_eq!(loaded.total.nanograms(), total);
                    prop_assert_eq!(kinds(loaded.side()), side);
                }
                (Err(error), None) => {
                    let codes = [Code::BelowLightest, Code::AboveHeaviest, Code::NotLoadable];
                    prop_assert!(codes.contains(&error.code()), "{error}");
                }
                (found, wanted) => prop_assert!(false, "{policy:?}: {found:?} instead of {wanted:?}"),
            }
        }
    }

    #[test]
    fn the_next_loads_are_the_neighbours_in_the_list(bar in bar(), stock in stock(4), target in target()) {
        let mut totals: Vec<i64> = all_sides(&bar, &stock).iter().map(|side| total(&bar, &stock, side)).collect();
        totals.sort_unstable();
        totals.dedup();
        let implement = Implement::Bar(bar.clone());
        let listed = reachable(&implement, &stock, Mass::ZERO, Mass::MAX).unwrap();
        prop_assert_eq!(listed.totals.iter().map(|m| m.nanograms()).collect::<Vec<_>>(), totals.clone());
        if let Ok(loaded) = load(&bar, &stock, target, Rounding::Nearest) {
            let at = totals.binary_search(&loaded.total.nanograms()).unwrap();
            let near = |at: Option<usize>| at.and_then(|at| totals.get(at)).map(|t| mass(*t));
            prop_assert_eq!(loaded.next_below, near(at.checked_sub(1)));
            prop_assert_eq!(loaded.next_above, near(Some(at + 1)));
            let up = step_up(&implement, &stock, loaded.total).map(|up| up.total).ok();
            prop_assert_eq!(up, loaded.next_above);
        }
    }

    #[test]
    fn the_largest_gap_is_the_largest_difference_of_neighbours(bar in bar(), stock in stock(5)) {
        let found = reachable(&Implement::Bar(bar), &stock, Mass::ZERO, mass(60_000_000_000_000)).unwrap();
        let gaps = found.totals.windows(2).map(|pair| pair[1].nanograms() - pair[0].nanograms());
        prop_assert_eq!(found.largest_gap.map(|gap| gap.size.nanograms()), gaps.max());
    }

    #[test]
    fn policies_are_monotone(bar in bar(), stock in stock(6), a in target(), b in target()) {
        let prepared = Prepared::new(&Implement::Bar(bar), &stock, Mass::MAX).unwrap();
        let (low, high) = (a.min(b), a.max(b));
        for policy in [Rounding::Below, Rounding::Nearest, Rounding::Above] {
            if let (Ok(low), Ok(high)) = (prepared.load(low, policy), prepared.load(high, policy)) {
                prop_assert!(low.total <= high.total, "{policy:?}");
            }
        }
        if let (Ok(below), Ok(above)) = (prepared.load(a, Rounding::Below), prepared.load(a, Rounding::Above)) {
            let nearest = prepared.load(a, Rounding::Nearest).unwrap();
            prop_assert!(below.total <= a && a <= above.total);
            prop_assert!(nearest.total == below.total || nearest.total == above.total);
        }
    }

    #[test]
    fn preparing_further_changes_no_answer(bar in bar(), stock in stock(6), target in target()) {
        let prepared = Prepared::new(&Implement::Bar(bar.clone()), &stock, Mass::MAX).unwrap();
        for policy in POLICIES {
            prop_assert_eq!(prepared.load(target, policy).ok(), load(&bar, &stock, target, policy).ok());
        }
    }

    /// More discs of a kind never make the answer worse.
    #[test]
    fn a_larger_stock_is_never_further_off(bar in bar(), stock in stock(5), extra in disc(), target in target()) {
        let mut discs = stock.discs().to_vec();
        discs.push(extra);
        let larger = Stock::new(discs).unwrap();
        for policy in POLICIES {
            if let Ok(small) = load(&bar, &stock, target, policy) {
                let large = load(&bar, &larger, target, policy).unwrap();
                prop_assert!(large.difference.nanograms().abs() <= small.difference.nanograms().abs());
            }
        }
    }

    /// The same masses read in pounds or in kilograms are the same masses, and so is the answer.
    #[test]
    fn the_unit_that_was_typed_does_not_matter(bar in bar(), stock in stock(5), target in target()) {
        let again = |mass: Mass| Mass::from_lb(mass.lb()).unwrap();
        prop_assert_eq!(again(target), target);
        let retyped: Vec<Disc> = stock.discs().iter().map(|disc| {
            let copy = Disc::new(again(disc.nominal()), disc.count()).unwrap();
            disc.thickness().map_or(copy, |room| copy.with_thickness(room).unwrap())
        }).collect();
        let retyped = Stock::new(retyped).unwrap();
        prop_assert_eq!(load(&bar, &stock, target, Rounding::Below).ok(), load(&bar, &retyped, again(target), Rounding::Below).ok());
    }

    /// Everything twice or three times as heavy: the same discs.
    #[test]
    fn scale_does_not_matter(bar in bar(), stock in stock(5), target in target(), factor in 2..=3_u32) {
        let times = |mass: Mass| mass.times(factor).unwrap();
        let discs: Vec<Disc> = stock.discs().iter().map(|disc| {
            let copy = Disc::new(times(disc.nominal()), disc.count()).unwrap();
            disc.thickness().map_or(copy, |room| copy.with_thickness(room).unwrap())
        }).collect();
        let scaled_stock = Stock::new(discs).unwrap();
        let scaled_bar = Bar::new(id(), times(bar.mass()), times(bar.collar())).unwrap();
        let scaled_bar = bar.sleeve().map_or(scaled_bar.clone(), |room| scaled_bar.with_sleeve(room).unwrap());
        for policy in POLICIES {
            let plain = load(&bar, &stock, target, policy).map(|loaded| kinds(loaded.side())).ok();
            let scaled = load(&scaled_bar, &scaled_stock, times(target), policy).map(|loaded| kinds(loaded.side())).ok();
            prop_assert_eq!(plain, scaled);
        }
    }

    /// Discs that can stay, stay; load and number of discs are those of the plain answer.
    #[test]
    fn the_fewest_changes_are_found(bar in bar(), stock in stock(4), target in target(), pick in any::<prop::sample::Index>()) {
        let sides = all_sides(&bar, &stock);
        let on_bar = sides[pick.index(sides.len())].clone();
        let implement = Implement::Bar(bar.clone());
        if let Ok(change) = load_from(&implement, &stock, target, Rounding::Below, &on_bar) {
            let plain = load(&bar, &stock, target, Rounding::Below).unwrap();
            let side = kinds(change.loaded.side());
            prop_assert_eq!(change.loaded.total, plain.total);
            prop_assert_eq!(side.len(), plain.side().len());
            prop_assert!(change.proved);
            // Any order of the rest is allowed outside the discs that stay, so the multiset decides.
            let most = sides.iter()
                .filter(|other| other.len() == side.len() && total(&bar, &stock, other) == plain.total.nanograms())
                .map(|other| kept_of(&on_bar, other))
                .max()
                .unwrap();
            prop_assert_eq!(common(&on_bar, &side), most);
            prop_assert_eq!(change.off.len() + most, on_bar.len());
            prop_assert_eq!(change.on.len() + most, side.len());
        }
    }

    #[test]
    fn warm_ups_take_the_fewest_moves(
        mass in 10..=20_u32, stock in stock(4), work in 20..=120_u32,
        steps in proptest::collection::btree_map(15..=110_u32, 0..=8_u32, 0..=3),
    ) {
        let bar = Bar::new(id(), Mass::from_kg(f64::from(mass)).unwrap(), Mass::ZERO).unwrap();
        let kg = |value: &u32| Mass::from_kg(f64::from(*value)).unwrap();
        let wanted: Vec<WarmUpStep> = steps.iter().map(|(target, tolerance)| WarmUpStep::new(kg(target), kg(tolerance), Reps::whole(3).unwrap(), false)).collect();
        let Ok(found) = warm_up(&bar, &stock, kg(&work), &wanted) else { return Ok(()) };
        let work_total = load(&bar, &stock, kg(&work), Rounding::Below).unwrap().total;
        let sides = all_sides(&bar, &stock);
        let mut rows: Vec<Vec<&Vec<u16>>> = Vec::new();
        let mut left_out = Vec::new();
        for (index, step) in wanted.iter().enumerate() {
            let before = index.checked_sub(1).map(|at| wanted[at].target.nanograms());
            let after = wanted.get(index + 1).map_or(work_total, |next| next.target.min(work_total)).nanograms();
            let aim = step.target.nanograms();
            let fits = |side: &&Vec<u16>| {
                let made = total(&bar, &stock, side);
                aim < work_total.nanograms()
                    && made < work_total.nanograms()
                    && (made - aim).abs() <= step.tolerance.nanograms()
                    && 2 * made <= aim + after
                    && before.is_none_or(|before| 2 * made > before + aim)
            };
            let row: Vec<_> = sides.iter().filter(fits).collect();
            if row.is_empty() { left_out.push(index as u16) } else { rows.push(row) }
        }
        rows.push(sides.iter().filter(|side| total(&bar, &stock, side) == work_total.nanograms()).collect());
        prop_assert_eq!(&found.left_out, &left_out);
        prop_assert!(found.proved);
        prop_assert_eq!(found.moves_each_end as usize, exhaustive(&rows, &[]));
        let totals: Vec<Mass> = found.sets.iter().map(|set| set.moves.total).collect();
        prop_assert!(totals.windows(2).all(|pair| pair[0] < pair[1]), "{totals:?}");
        let handled: usize = found.sets.iter().map(|set| set.moves.off.len() + set.moves.on.len()).sum();
        prop_assert_eq!(handled, found.moves_each_end as usize);
    }

    #[test]
    fn a_shared_bar_takes_the_fewest_moves(stock in stock(4), picks in proptest::collection::vec(any::<prop::sample::Index>(), 2..=6)) {
        let bar = Bar::new(id(), Mass::from_kg(15.0).unwrap(), Mass::ZERO).unwrap();
        let sides = all_sides(&bar, &stock);
        let loads: Vec<Mass> = picks.iter().map(|pick| mass(total(&bar, &stock, &sides[pick.index(sides.len())]))).collect();
        let (first, second) = loads.split_at(loads.len() / 2);
        let sets = |loads: &[Mass]| SharedLifter::new(loads.iter().map(|load| SharedSet::new(*load, Mass::ZERO)).collect());
        let found = shared_bar(&bar, &stock, &[sets(first), sets(second)]).unwrap();
        let row = |load: &Mass| -> Vec<&Vec<u16>> {
            sides.iter().filter(|side| total(&bar, &stock, side) == load.nanograms()).collect()
        };
        let alternate = |leading: &[Mass], following: &[Mass]| {
            let mut rows = Vec::new();
            for round in 0..leading.len().max(following.len()) {
                rows.extend(leading.get(round).map(row));
                rows.extend(following.get(round).map(row));
            }
            exhaustive(&rows, &[])
        };
        let best = alternate(first, second).min(alternate(second, first));
        prop_assert!(found.proved);
        prop_assert_eq!(found.moves_each_end as usize, best);
    }

    /// What was loaded reads back as what was loaded.
    #[test]
    fn a_loaded_bar_reads_back(bar in bar(), stock in stock(5), target in target()) {
        let Ok(loaded) = load(&bar, &stock, target, Rounding::Below) else { return Ok(()) };
        let side = kinds(loaded.side());
        let reading = read_bar(&bar, &stock, &side, &side, false, Tolerance::Powerlifting).unwrap();
        prop_assert_eq!(reading.total, loaded.total);
        prop_assert_eq!(reading.left_over_right, Mass::ZERO);
        prop_assert!(reading.band.low <= reading.total && reading.total <= reading.band.high);
        let back = step_down_to(&bar, &stock, loaded.next_above);
        prop_assert!(back.is_none_or(|back| back == loaded.total));
    }

    #[test]
    fn the_height_is_held_by_the_best_load_there_is(
        stock in stock_of_sizes(), target in target(), half in 100..=230_i16,
    ) {
        let bar = Bar::new(id(), Mass::grams(15_000), Mass::ZERO).unwrap();
        let height = Length::millimetres(half);
        let Ok(plan) = keep_height(&bar, &stock, target, Rounding::Below, height) else { return Ok(()) };
        let largest = |side: &[u16]| -> Option<i32> {
            side.iter().map(|kind| stock.discs()[usize::from(*kind)].diameter().map(|d| d.micrometres())).try_fold(0, |a, b| Some(a.max(b?)))
        };
        let wanted = 2 * height.micrometres();
        let holds = |side: &&Vec<u16>| largest(side).is_some_and(|largest| (largest - wanted).abs() <= 2_000);
        let sides = all_sides(&bar, &stock);
        let totals = || sides.iter().filter(holds).map(|side| total(&bar, &stock, side));
        prop_assert_eq!(plan.lightest_held.map(Mass::nanograms), totals().min());
        let best = totals().filter(|total| *total <= target.nanograms()).max();
        prop_assert_eq!(plan.held.as_ref().map(|held| held.total.nanograms()), best);
        if let Some(held) = plan.held {
            prop_assert!(holds(&&kinds(held.side())));
        }
        if let (Some(blocks), Some(centre)) = (plan.blocks, plan.plain.centre_height) {
            prop_assert!((blocks.plus(centre).unwrap().micrometres() - height.micrometres()).abs() <= 1_000);
        }
    }

    #[test]
    fn the_pair_to_buy_leaves_the_smallest_gap(stock in stock(4), offered in proptest::collection::vec(disc_mass(), 1..=4)) {
        let implement = Implement::Bar(Bar::new(id(), Mass::grams(20_000), Mass::ZERO).unwrap());
        let (low, high) = (Mass::grams(20_000), Mass::grams(60_000));
        let advice = buy(&implement, &stock, low, high, &offered).unwrap();
        let gap = |stock: &Stock| {
            let mut totals = reachable(&implement, stock, low, high).unwrap().totals;
            totals.push(high);
            totals.windows(2).map(|pair| pair[1].nanograms() - pair[0].nanograms()).max().unwrap_or(0)
        };
        let with = |mass: &Mass| {
            let mut discs = stock.discs().to_vec();
            discs.push(Disc::new(*mass, 2).unwrap());
            gap(&Stock::new(discs).unwrap())
        };
        prop_assert_eq!(advice.now.map_or(0, |gap| gap.size.nanograms()), gap(&stock));
        let best = offered.iter().map(|mass| (with(mass), mass)).min().unwrap();
        let helps = best.0 < gap(&stock);
        prop_assert_eq!(advice.best.map(|offer| offer.disc), helps.then_some(*best.1));
    }

    /// The ends in turn: no order of the same stacks ever has one end less far ahead of the other.
    #[test]
    fn no_order_of_loading_tips_less(stock in stock(4), pick in any::<prop::sample::Index>()) {
        let bar = Bar::new(id(), Mass::grams(20_000), Mass::ZERO).unwrap();
        let sides = all_sides(&bar, &stock);
        let side = &sides[pick.index(sides.len())];
        let plan = handling_order(&stock, &[], side, Mass::MAX).unwrap();
        let mut heights = vec![0_i64];
        for kind in side {
            heights.push(heights[heights.len() - 1] + stock.discs()[usize::from(*kind)].mass().nanograms());
        }
        // Least worst imbalance over all ways through the grid of (discs left, discs right).
        let n = heights.len();
        let mut least = vec![vec![i64::MAX; n]; n];
        for i in 0..n {
            for j in 0..n {
                let before = match (i, j) {
                    (0, 0) => 0,
                    (0, _) => least[0][j - 1],
                    (_, 0) => least[i - 1][0],
                    _ => least[i - 1][j].min(least[i][j - 1]),
                };
                least[i][j] = before.max((heights[i] - heights[j]).abs());
            }
        }
        prop_assert_eq!(plan.most_imbalance.nanograms(), least[n - 1][n - 1]);
        prop_assert_eq!(plan.order.len(), 2 * side.len());
        prop_assert_eq!(plan.one_end_first.nanograms(), heights[n - 1]);
    }

    /// The reference set is the same load on every day, whatever the work set.
    #[test]
    fn the_reference_set_is_kept(
        stock in stock(4), pick in any::<prop::sample::Index>(), work in 20..=120_u32, tolerance in 0..=8_u32,
    ) {
        let bar = Bar::new(id(), Mass::grams(15_000), Mass::ZERO).unwrap();
        let sides = all_sides(&bar, &stock);
        let target = mass(total(&bar, &stock, &sides[pick.index(sides.len())]));
        let work = Mass::from_kg(f64::from(work)).unwrap();
        let reference = WarmUpStep::new(target, Mass::from_kg(f64::from(tolerance)).unwrap(), Reps::whole(3).unwrap(), true);
        let Ok(heaviest) = load(&bar, &stock, work, Rounding::Below) else { return Ok(()) };
        let steps = match warm_up_steps(bar.empty().unwrap(), work, Some(reference)) {
            Ok(steps) => steps,
            Err(error) => { prop_assert_eq!(error.code(), Code::AboveWorkSet); return Ok(()) }
        };
        match warm_up(&bar, &stock, work, &steps) {
            Ok(found) => {
                let is_reference = |set: &LoadedWarmUpSet| {
                    set.moves.total == target && set.step.is_some_and(|step| steps[usize::from(step)].reference)
                };
                let kept = found.sets.iter().any(is_reference);
                prop_assert!(kept, "{found:?}");
            }
            Err(error) => {
                prop_assert_eq!(error.code(), Code::AboveWorkSet);
                prop_assert!(target >= heaviest.total);
            }
        }
    }

    /// A pin counts odd discs, two handles need four of a kind.
    #[test]
    fn other_ends_use_what_they_can(stock in stock(3), target in target()) {
        let pin = Implement::Pin(Pin::new(id(), Mass::grams(1_000), Mass::ZERO, None).unwrap());
        let handles = Implement::Handle(Handle::new(id(), Mass::grams(2_000), Mass::ZERO, None, 2).unwrap());
        for (implement, base, ends, alike) in [(pin, 1_000_000_000_000, 1, 1), (handles, 2_000_000_000_000, 2, 4)] {
            let mut sums = vec![base];
            for disc in stock.discs() {
                let more = |sum: &i64| {
                    let mass = disc.mass().nanograms();
                    (0..=i64::from(disc.count() / alike)).map(|count| sum + ends * count * mass).collect::<Vec<_>>()
                };
                sums = sums.iter().flat_map(more).collect();
            }
            let best = sums.into_iter().filter(|sum| *sum <= target.nanograms()).max();
            let found = load_on(&implement, &stock, target, Rounding::Below).ok();
            prop_assert_eq!(found.map(|loaded| loaded.total.nanograms()), best);
        }
    }
}

proptest! {
    // A refusal takes longer than an answer: fewer of these.
    #![proptest_config(ProptestConfig { cases: 24, ..ProptestConfig::default() })]

    /// Whatever the stock, an answer or a typed refusal, never more work than the bound.
    #[test]
    fn coprime_masses_end_in_an_answer_or_a_refusal(
        grams in proptest::collection::vec(1..=25_000_000_000_i64, 8..=25), counts in 2..=30_u16,
    ) {
        let discs = grams.iter().map(|g| Disc::new(mass(*g * 997 % 25_000_000_000 + 1), counts).unwrap()).collect();
        let stock = Stock::new(discs).unwrap();
        let bar = Bar::new(id(), Mass::grams(20_000), Mass::ZERO).unwrap();
        match Prepared::new(&Implement::Bar(bar), &stock, Mass::grams(30_000)) {
            Ok(prepared) => prop_assert!(prepared.load(Mass::grams(30_000), Rounding::Below).is_ok()),
            Err(error) => prop_assert_eq!(error.code(), Code::StockTooLarge),
        }
    }
}

/// The load below `from`, if there is such a load.
fn step_down_to(bar: &Bar, stock: &Stock, from: Option<Mass>) -> Option<Mass> {
    let from = from?;
    let prepared = Prepared::new(&Implement::Bar(bar.clone()), stock, from).unwrap();
    prepared.step_down(from).ok().map(|loaded| loaded.total)
}

/// Discs of few different sizes, some of unknown size.
fn stock_of_sizes() -> impl Strategy<Value = Stock> {
    let size =
        prop_oneof![Just(None), Just(Some(450_i16)), Just(Some(449)), Just(Some(325)), Just(Some(230))];
    let disc = (disc_mass(), 0..=4_u16, size).prop_map(|(mass, count, size)| {
        let disc = Disc::new(mass, count).unwrap();
        size.map_or(disc, |mm| disc.with_diameter(Length::millimetres(mm)).unwrap())
    });
    proptest::collection::vec(disc, 0..=4).prop_map(|discs| Stock::new(discs).unwrap())
}

/// A place to lift from: bar, discs of few sizes (some unknown) and thicknesses, blocks, the height, what is looked at.
#[derive(Clone, Debug)]
struct Lift {
    bar: Bar,
    stock: Stock,
    blocks: Vec<Length>,
    height: Length,
    highest: Mass,
}

impl Lift {
    fn at(&self) -> AtHeight {
        AtHeight::new(&self.bar, &self.stock, &self.blocks, self.height, self.highest).unwrap()
    }
}

fn sized_disc() -> impl Strategy<Value = Disc> {
    const SIZES: [i16; 6] = [450, 449, 447, 400, 325, 230];
    let size = prop_oneof![1 => Just(None), 4 => proptest::sample::select(&SIZES[..]).prop_map(Some)];
    (disc(), size)
        .prop_map(|(disc, size)| size.map_or(disc, |mm| disc.with_diameter(Length::millimetres(mm)).unwrap()))
}

/// Some blocks that bring one of the sizes to 225 mm, and any others.
fn block() -> impl Strategy<Value = Length> {
    prop_oneof![
        2 => proptest::sample::select(&[25.0, 62.5, 110.0][..]).prop_map(|mm| Length::from_mm(mm).unwrap()),
        1 => (1..=200_i16).prop_map(Length::millimetres),
    ]
}

fn lift() -> impl Strategy<Value = Lift> {
    let stock = proptest::collection::vec(sized_disc(), 0..=5).prop_map(|discs| Stock::new(discs).unwrap());
    let blocks = proptest::collection::vec(block(), 0..=3);
    let height = prop_oneof![
        4 => Just(Length::millimetres(225)),
        1 => proptest::sample::select(&[162.5, 200.0, 287.5][..]).prop_map(|mm| Length::from_mm(mm).unwrap()),
        3 => (100..=350_i16).prop_map(Length::millimetres),
    ];
    let highest = prop_oneof![3 => Just(Mass::MAX), 1 => (25_000..=100_000_i32).prop_map(Mass::grams)];
    (bar(), stock, blocks, height, highest).prop_map(|(bar, stock, blocks, height, highest)| Lift {
        bar,
        stock,
        blocks,
        height,
        highest,
    })
}

/// Where one stack of discs comes to lie, in micrometres from the height: by the geometry of the largest disc, on the
/// support that brings it nearest (within 1 mm all are equally near), then the lowest.
#[derive(Clone, Debug)]
struct Lying {
    side: Vec<u16>,
    blocks: i32,
    off: i32,
}

fn away(off: i32) -> i32 {
    if off.abs() <= 1_000 { 0 } else { off.abs() }
}

/// Every stack that may be looked at, of known diameters and not empty, on the floor and on each pair of blocks.
fn all_lying(lift: &Lift) -> Vec<Lying> {
    let mut found = Vec::new();
    for side in looked_at(lift) {
        let sizes: Option<Vec<Length>> =
            side.iter().map(|kind| lift.stock.discs()[usize::from(*kind)].diameter()).collect();
        let Some(centre) = sizes.and_then(|sizes| centre_height(&sizes, &sizes).ok()) else { continue };
        for blocks in std::iter::once(0).chain(lift.blocks.iter().map(|blocks| blocks.micrometres())) {
            let off = blocks + centre.micrometres() - lift.height.micrometres();
            found.push(Lying { side: side.clone(), blocks, off });
        }
    }
    found
}

fn looked_at(lift: &Lift) -> impl Iterator<Item = Vec<u16>> {
    all_sides(&lift.bar, &lift.stock)
        .into_iter()
        .filter(|side| total(&lift.bar, &lift.stock, side) <= lift.highest.nanograms())
}

/// For each total in nanograms the blocks in micrometres and the number of discs on an end.
type Ways = BTreeMap<i64, (i32, usize)>;

/// Every load at the height with the best way to make it (blocks, then discs), and how far off the nearest way is; none
/// where no height is known.
fn by_enumeration(lift: &Lift) -> Option<(Ways, i32)> {
    let all = all_lying(lift);
    let best = all.iter().map(|lying| lying.off).min_by_key(|off| (away(*off), -off))?;
    let level = |off: i32| if away(best) == 0 { away(off) == 0 } else { (off - best).abs() <= 1_000 };
    let mut ways = Ways::new();
    for lying in all.iter().filter(|lying| level(lying.off)) {
        let of_same = all.iter().filter(|other| other.side == lying.side && level(other.off));
        let nearest = of_same.min_by_key(|other| (away(other.off), other.blocks)).unwrap();
        let way = (nearest.blocks, nearest.side.len());
        let entry = ways.entry(total(&lift.bar, &lift.stock, &lying.side)).or_insert(way);
        *entry = way.min(*entry);
    }
    Some((ways, if away(best) == 0 { 0 } else { best }))
}

/// Runs so many lifts and gives back how often each thing that was counted came up.
fn counted<S: Strategy>(
    cases: u32,
    drawn: &S,
    names: &[&'static str],
    check: impl Fn(S::Value, &dyn Fn(&'static str)) -> Result<(), TestCaseError>,
) -> BTreeMap<&'static str, u32> {
    let counts: BTreeMap<&'static str, Cell<u32>> = names.iter().map(|name| (*name, Cell::new(0))).collect();
    let count = |name: &'static str| counts[name].set(counts[name].get() + 1);
    let mut runner =
        TestRunner::new(ProptestConfig { cases, failure_persistence: None, ..ProptestConfig::default() });
    runner.run(drawn, |value| check(value, &count)).unwrap_or_else(|error| panic!("{error}"));
    counts.into_iter().map(|(name, cell)| (name, cell.get())).collect()
}

/// Loads at one height against plain enumeration of stacks and supports. Each kind of lift must have come up: the floor
/// and blocks, kept and not, too high and too low, no height known, equal loads on several supports.
#[test]
fn loads_at_a_height_are_those_of_plain_enumeration() {
    let names = ["unknown", "kept", "too low", "too high", "on blocks", "on the floor", "both"];
    let drawn = counted(5_000, &lift(), &names, |lift, count| {
        let at = lift.at();
        let totals: Vec<i64> = at.totals().map(Mass::nanograms).collect();
        prop_assert_eq!(at.lightest().map(Mass::nanograms), totals.first().copied());
        let Some((ways, off)) = by_enumeration(&lift) else {
            count("unknown");
            prop_assert!(!at.height_known());
            prop_assert_eq!(at.off_by_mm().to_bits(), 0);
            let mut plain: Vec<i64> =
                looked_at(&lift).map(|side| total(&lift.bar, &lift.stock, &side)).collect();
            plain.sort_unstable();
            plain.dedup();
            prop_assert_eq!(totals, plain);
            return Ok(());
        };
        count(if off == 0 {
            "kept"
        } else if off < 0 {
            "too low"
        } else {
            "too high"
        });
        prop_assert!(at.height_known());
        prop_assert_eq!(at.off_by_mm().to_bits(), (f64::from(off) / 1_000.0).to_bits());
        prop_assert_eq!(&totals, &ways.keys().copied().collect::<Vec<_>>());
        let supports: std::collections::BTreeSet<bool> =
            ways.values().map(|(blocks, _)| *blocks > 0).collect();
        let on = |blocks| supports.contains(&blocks);
        count(if on(true) && on(false) {
            "both"
        } else if on(true) {
            "on blocks"
        } else {
            "on the floor"
        });
        for (made, (blocks, discs)) in ways {
            let kept = at.load(mass(made), Rounding::Exact).unwrap();
            let found = kept.blocks.map_or(0, Length::micrometres);
            prop_assert_eq!(
                (kept.loaded.total.nanograms(), found, kept.loaded.side().len()),
                (made, blocks, discs)
            );
        }
        Ok(())
    });
    println!("{drawn:?}");
    assert!(drawn.values().all(|count| *count >= 100), "{drawn:?}");
}

/// Whatever is asked: the discs make the load, lie at the height it says, and the policy is kept over the totals.
#[test]
fn every_load_at_a_height_lies_where_it_says() {
    let names = ["loaded", "on blocks", "off", "refused"];
    let drawn = counted(5_000, &(lift(), target()), &names, |(lift, target), count| {
        let at = lift.at();
        let target = target.min(lift.highest);
        let totals: Vec<Mass> = at.totals().collect();
        let below = totals.iter().copied().filter(|total| *total <= target).max();
        let above = totals.iter().copied().filter(|total| *total >= target).min();
        let gap = |total: &Mass| (total.nanograms() - target.nanograms()).abs();
        let nearest = [below, above].into_iter().flatten().min_by_key(gap);
        let exact = below.filter(|total| *total == target);
        for (policy, wanted) in POLICIES.into_iter().zip([exact, below, nearest, above]) {
            let Ok(kept) = at.load(target, policy) else {
                count("refused");
                prop_assert_eq!(None, wanted);
                continue;
            };
            count("loaded");
            let loaded = &kept.loaded;
            prop_assert_eq!(Some(loaded.total), wanted);
            prop_assert!(policy != Rounding::Below || loaded.total <= target);
            let side = kinds(loaded.side());
            prop_assert_eq!(total(&lift.bar, &lift.stock, &side), loaded.total.nanograms());
            prop_assert!(
                all_sides(&lift.bar, &lift.stock)
                    .iter()
                    .any(|other| largest(&lift.stock, other) == largest(&lift.stock, &side))
            );
            let place = totals.binary_search(&loaded.total).unwrap();
            let near = |place: Option<usize>| place.and_then(|place| totals.get(place)).copied();
            prop_assert_eq!(loaded.next_below, near(place.checked_sub(1)));
            prop_assert_eq!(loaded.next_above, near(Some(place + 1)));
            if !at.height_known() {
                prop_assert_eq!((kept.blocks, kept.off_by_mm.to_bits()), (None, 0));
                continue;
            }
            let sizes: Vec<Length> =
                side.iter().map(|kind| lift.stock.discs()[usize::from(*kind)].diameter().unwrap()).collect();
            let centre = centre_height(&sizes, &sizes).unwrap();
            prop_assert!(kept.blocks.is_none_or(|blocks| lift.blocks.contains(&blocks)));
            let off = kept.blocks.map_or(0.0, Length::mm) + centre.mm() - lift.height.mm();
            let claimed = if off.abs() <= 1.0 { 0.0 } else { off };
            prop_assert!((kept.off_by_mm - claimed).abs() < 1e-9, "{} instead of {claimed}", kept.off_by_mm);
            prop_assert!(kept.off_by_mm.abs() >= at.off_by_mm().abs());
            prop_assert!((kept.off_by_mm - at.off_by_mm()).abs() <= 1.0);
            if kept.blocks.is_some() {
                count("on blocks")
            }
            if kept.off_by_mm != 0.0 {
                count("off")
            }
        }
        Ok(())
    });
    println!("{drawn:?}");
    assert!(drawn.values().all(|count| *count >= 100), "{drawn:?}");
}

/// More discs or blocks never lie further off, and take away no load unless they lie nearer.
#[test]
fn more_discs_and_blocks_are_never_further_off() {
    let more = (proptest::option::of(sized_disc()), proptest::option::of(block()));
    let names = ["nearer", "as near", "more loads", "unknown before"];
    let drawn = counted(5_000, &(lift(), more), &names, |(lift, (disc, block)), count| {
        let mut larger = lift.clone();
        let discs = lift.stock.discs().iter().copied().chain(disc);
        larger.stock = Stock::new(discs.collect()).unwrap();
        larger.blocks.extend(block);
        let (small, large) = (lift.at(), larger.at());
        if !small.height_known() {
            count("unknown before");
            return Ok(());
        }
        prop_assert!(large.height_known());
        prop_assert!(large.off_by_mm().abs() <= small.off_by_mm().abs());
        if large.off_by_mm().to_bits() != small.off_by_mm().to_bits() {
            count("nearer");
            return Ok(());
        }
        count("as near");
        let (small, large): (Vec<Mass>, Vec<Mass>) = (small.totals().collect(), large.totals().collect());
        prop_assert!(small.iter().all(|total| large.contains(total)), "{small:?} {large:?}");
        if large.len() > small.len() {
            count("more loads")
        }
        Ok(())
    });
    println!("{drawn:?}");
    assert!(drawn.values().all(|count| *count >= 100), "{drawn:?}");
}

#[cfg(feature = "serde")]
mod wire {
    use super::*;
    use bismar::value::Value;

    proptest! {
        #![proptest_config(ProptestConfig { cases: 100, ..ProptestConfig::default() })]

        #[test]
        fn bars_stocks_and_answers_survive_writing_and_reading(bar in bar(), stock in stock(5), target in target()) {
            prop_assert_eq!(&Value::write(&bar).unwrap().read::<Bar>().unwrap(), &bar);
            prop_assert_eq!(&Value::write(&stock).unwrap().read::<Stock>().unwrap(), &stock);
            if let Ok(loaded) = load(&bar, &stock, target, Rounding::Nearest) {
                prop_assert_eq!(Value::write(&loaded).unwrap().read::<Loaded>().unwrap(), loaded);
            }
            let implement = Implement::Bar(bar);
            prop_assert_eq!(&Value::write(&implement).unwrap().read::<Implement>().unwrap(), &implement);
        }
    }

    proptest! {
        #[test]
        fn loads_at_a_height_survive_writing_and_reading(lift in lift(), target in target()) {
            if let Ok(kept) = lift.at().load(target, Rounding::Nearest) {
                prop_assert_eq!(Value::write(&kept).unwrap().read::<LoadAtHeight>().unwrap(), kept);
            }
        }
    }

    #[test]
    fn every_implement_survives_writing_and_reading() {
        let kg = |value| Mass::from_kg(value).unwrap();
        let stack = MachineStack::new(id(), kg(5.0), vec![kg(5.0); 4], vec![kg(2.5)], 0.5).unwrap();
        let hex = BarKind::Hex { low_handle: Length::ZERO, high_handle: Some(Length::millimetres(130)) };
        let all = [
            Implement::Bar(Bar::new(id(), kg(24.0), Mass::ZERO).unwrap().shaped(hex).unwrap()),
            Implement::Handle(
                Handle::new(id(), kg(2.0), kg(0.25), Some(Length::millimetres(100)), 2).unwrap(),
            ),
            Implement::Pieces(Pieces::new(id(), vec![kg(8.0), kg(12.0)]).unwrap()),
            Implement::Machine(stack.clone()),
            Implement::Assistance(stack),
            Implement::Pin(Pin::new(id(), kg(1.0), Mass::ZERO, None).unwrap()),
        ];
        for implement in all {
            let written = Value::write(&implement).unwrap();
            assert_eq!(written.read::<Implement>().unwrap(), implement);
        }
    }
}

/// The longest run of `on_bar`, from the inside, whose discs are all in `side`.
fn kept_of(on_bar: &[u16], side: &[u16]) -> usize {
    let mut left = side.to_vec();
    on_bar
        .iter()
        .take_while(|kind| match left.iter().position(|other| other == *kind) {
            Some(at) => {
                left.swap_remove(at);
                true
            }
            None => false,
        })
        .count()
}

/// Every choice of one stack a load, one after the other.
fn exhaustive(rows: &[Vec<&Vec<u16>>], before: &[u16]) -> usize {
    let Some((row, rest)) = rows.split_first() else { return 0 };
    let moves = |side: &[u16]| before.len() + side.len() - 2 * common(before, side);
    row.iter().map(|side| moves(side) + exhaustive(rest, side)).min().unwrap()
}

/// Loads above what was prepared may exist and were not looked at: refused, not answered from half a table.
#[test]
fn nothing_is_answered_above_the_load_prepared_for() {
    let kg = |kilograms| Mass::from_kg(kilograms).unwrap();
    let bar = Bar::new(id(), kg(20.0), Mass::ZERO).unwrap();
    let discs = [10.0, 20.0].map(|kilograms| Disc::new(kg(kilograms), 4).unwrap());
    let stock = Stock::new(discs.to_vec()).unwrap();
    let prepared = Prepared::new(&Implement::Bar(bar), &stock, kg(60.0)).unwrap();
    assert_eq!(prepared.load(kg(60.0), Rounding::Exact).unwrap().total, kg(60.0));
    let refusals = [
        prepared.load(kg(80.0), Rounding::Below).unwrap_err(),
        prepared.step_up(kg(80.0)).unwrap_err(),
        prepared.step_down(kg(80.0)).unwrap_err(),
    ];
    for refusal in refusals {
        assert_eq!((refusal.code(), refusal.field()), (Code::OutOfRange, "target"));
        let unit = "kg, as prepared".into();
        assert_eq!(refusal.allowed(), &Allowed::Between { low: 20.0, high: 60.0, unit });
    }
}

/// A handle may lie above or below the line through the sleeves, by a metre at most.
#[test]
fn handles_lie_within_a_metre_and_the_high_one_above_the_low_one() {
    let bar = || Bar::new(id(), mass(20_000_000_000_000), Mass::ZERO).unwrap();
    let hex = |low, high| {
        let [low_handle, high] = [low, high].map(Length::millimetres);
        bar().shaped(BarKind::Hex { low_handle, high_handle: Some(high) })
    };
    assert!(hex(-1_000, 1_000).is_ok() && hex(130, 130).is_ok());
    assert_eq!(hex(130, 129).unwrap_err().code(), Code::IntervalReversed);
    for (refused, field) in [(hex(-1_001, 0), "low_handle"), (hex(0, 1_001), "high_handle")] {
        let error = refused.unwrap_err();
        assert_eq!((error.code(), error.field()), (Code::OutOfRange, field));
        assert_eq!(error.allowed(), &Allowed::Between { low: -1000.0, high: 1000.0, unit: "mm".into() });
    }
}
