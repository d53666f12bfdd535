//! What can be loaded with the bar's centre at one height, and how.

use alloc::format;
use alloc::vec::Vec;
use core::cmp::{Ordering, Reverse};

use super::bar::Bar;
use super::disc::{Disc, Stock, between};
use super::ends::{prepare, prepare_with};
use super::height::{SAME_DIAMETER, only};
use super::implement::Implement;
use super::loaded::{Loaded, Policy};
use super::prepared::Prepared;
use super::table::{Counts, Entry};
use crate::error::{Code, Error};
use crate::quantity::{Length, Mass};

/// One load at its height.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct KeptLoad {
    /// The load; its `centre_height` is counted from what the discs stand on, its neighbours are the next loads at
    /// the same height.
    pub loaded: Loaded,
    /// Blocks under each end; absent where the discs hold the height by themselves.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub blocks: Option<Length>,
    /// How far the bar's centre lies from the height asked for, in mm, above it positive; 0 within the tolerance of
    /// [`SAME_DIAMETER`], and where no height is known.
    pub off_by_mm: f64,
}

/// Every load that can be made with the bar's centre at one height, with discs of that radius or on blocks.
///
/// The centre stands on half the largest diameter, plus the blocks where there are some. A way keeps the height if
/// that sum is the height within half of [`SAME_DIAMETER`]; all ways that keep it count. Where none does, those count
/// that come nearest (of two equally far the higher, which is the easier start; with them all that stand equally
/// high). The empty bar has no radius and discs of unknown diameter might lift it: neither counts.
///
/// Invariant: holds at least one load. At most one table for each diameter is worked out.
///
/// ```
/// use bismar::loading::{AtHeight, Bar, Disc, Policy, Stock};
/// use bismar::quantity::{Length, Mass, Name};
///
/// let bar = Bar::new(Name::new("bar 20")?, Mass::from_kg(20.0)?, Mass::ZERO)?;
/// let disc = |kg: f64, mm: f64| -> Result<Disc, bismar::Error> {
///     Disc::new(Mass::from_kg(kg)?, 2)?.with_diameter(Length::from_mm(mm)?)
/// };
/// let stock = Stock::new(vec![disc(20.0, 450.0)?, disc(10.0, 325.0)?])?;
/// let (height, highest) = (Length::from_mm(225.0)?, Mass::from_kg(200.0)?);
///
/// // On the floor only the 20 kg discs reach it: 60 kg, and 80 kg with the smaller ones beside them.
/// let floor = AtHeight::new(&bar, &stock, &[], height, highest)?;
/// assert_eq!(floor.totals().map(Mass::kg).collect::<Vec<_>>(), [60.0, 80.0]);
///
/// // On blocks of 62.5 mm the 10 kg discs do as well: 62.5 mm + 325 mm / 2.
/// let blocks = AtHeight::new(&bar, &stock, &[Length::from_mm(62.5)?], height, highest)?;
/// let kept = blocks.load(Mass::from_kg(50.0)?, Policy::Below)?;
/// assert_eq!((kept.loaded.total.kg(), kept.blocks.map(Length::mm)), (40.0, Some(62.5)));
/// # Ok::<(), bismar::Error>(())
/// ```
#[derive(Clone, Debug)]
pub struct AtHeight {
    starts: Vec<Start>,
    ways: Vec<Way>,
    /// The totals alone; an entry counts in `ways`.
    loads: Prepared,
    off: i32,
    known: bool,
}

/// Loads whose largest discs have one diameter, on one pair of blocks.
#[derive(Clone, Debug)]
struct Start {
    blocks: Option<Length>,
    off: i32,
    prepared: Prepared,
}

/// One load made from one start.
#[derive(Clone, Copy, Debug)]
struct Way {
    start: usize,
    blocks: Option<Length>,
    entry: Entry,
}

impl AtHeight {
    /// The highest centre and the highest blocks accepted: above what anyone pulls from (our choice).
    pub const HIGHEST: Length = Length::millimetres(2_000);

    /// Works out every load at this height. `blocks` are the heights of the pairs of blocks, each usable alone (of
    /// stacked ones list the sums); loads above `highest` are not looked at.
    ///
    /// # Errors
    /// `out_of_range` for a height or blocks at or below 0 mm or above 2 m, and for a `highest` below the empty bar;
    /// `stock_too_large`.
    pub fn new(
        bar: &Bar,
        stock: &Stock,
        blocks: &[Length],
        height: Length,
        highest: Mass,
    ) -> Result<AtHeight, Error> {
        let height = between("height", height, AtHeight::HIGHEST)?;
        let empty = bar.empty()?;
        if highest < empty {
            let (given, low, high) = (highest.kg(), empty.kg(), Mass::MAX.kg());
            return Err(Error::range(Code::OutOfRange, "highest", given, low, high, "kg"));
        }
        let under = supports(blocks)?;
        let places = level(&diameters(bar, stock, highest), &under, height);
        if places.is_empty() {
            let prepared = prepare(&Implement::Bar(bar.clone()), stock, highest, 0)?;
            let plain = Start { blocks: None, off: 0, prepared };
            return Ok(AtHeight::of(alloc::vec![plain], false, highest));
        }
        let starts = places.iter().map(|place| place.start(bar, stock, highest));
        Ok(AtHeight::of(starts.collect::<Result<_, Error>>()?, true, highest))
    }

    fn of(starts: Vec<Start>, known: bool, highest: Mass) -> AtHeight {
        let ways = starts.iter().enumerate().map(|(at, start)| start.ways(at));
        let ways = ways.reduce(|left, right| merged(&left, &right)).unwrap_or_default();
        let (base, ends) = starts.first().map_or((0, 1), |start| (start.prepared.base, start.prepared.ends));
        let total = |(at, way): (usize, &Way)| Entry { counts: Counts::index(at), ..way.entry };
        let table = ways.iter().enumerate().map(total).collect();
        let (lines, discs, settings) = (Vec::new(), Vec::new(), Vec::new());
        let loads = Prepared { base, ends, table, lines, discs, settings, room: None, highest };
        let off = starts.iter().map(|start| start.off).min_by_key(|off| off.abs()).unwrap_or(0);
        AtHeight { starts, ways, loads, off, known }
    }

    /// Whether heights are known at all. Where no disc that can be loaded has a known diameter they are not: the
    /// loads are then those of the bar with any discs, and nothing is said about how far off they lie.
    #[must_use]
    pub const fn height_known(&self) -> bool {
        self.known
    }

    /// Every total that can be made at the height (or, where nothing can, at the nearest height that anything
    /// reaches), rising, each once.
    pub fn totals(&self) -> impl Iterator<Item = Mass> + '_ {
        self.loads.totals(Mass::ZERO, self.loads.highest)
    }

    /// The lightest load.
    #[must_use]
    pub fn lightest(&self) -> Option<Mass> {
        self.loads.lightest()
    }

    /// How far off the nearest way lies, in mm, above the height positive; 0 where the height is kept, and where no
    /// height is known.
    #[must_use]
    pub fn off_by_mm(&self) -> f64 {
        millimetres_off(self.off)
    }

    /// How is this load made? Of equal loads the one without blocks, then on the lowest, then with the fewest and
    /// the largest discs.
    ///
    /// # Errors
    /// `below_lightest` or `above_heaviest` where the policy leaves nothing; `not_loadable` for [`Policy::Exact`];
    /// `out_of_range` for a target above the load this was prepared for.
    pub fn load(&self, target: Mass, policy: Policy) -> Result<KeptLoad, Error> {
        let chosen = self.loads.choose(target, policy)?;
        let way = self.ways.get(chosen.counts.as_index());
        let found = way.and_then(|way| Some((way, self.starts.get(way.start)?)));
        let (way, start) = found.ok_or_else(|| Error::plain(Code::NotLoadable, "target"))?;
        let mut loaded = start.prepared.answer(&way.entry, start.prepared.placed(&way.entry), target)?;
        (loaded.next_below, loaded.next_above) = self.loads.neighbours(loaded.total);
        Ok(KeptLoad { loaded, blocks: start.blocks, off_by_mm: millimetres_off(start.off) })
    }
}

impl Start {
    /// Its loads, rising. Within a sum the best entry comes last.
    fn ways(&self, start: usize) -> Vec<Way> {
        let table = &self.prepared.table;
        let later = table.iter().skip(1).map(|entry| Some(entry.sum)).chain([None]);
        let best = table.iter().zip(later).filter(|(entry, later)| *later != Some(entry.sum));
        best.map(|(entry, _)| Way { start, blocks: self.blocks, entry: *entry }).collect()
    }
}

/// Both lists in one, rising; of equal loads the better, of equally good ones the left.
fn merged(left: &[Way], right: &[Way]) -> Vec<Way> {
    let mut out = Vec::with_capacity(left.len() + right.len());
    let (mut left, mut right) = (left.iter().peekable(), right.iter().peekable());
    while let (Some(a), Some(b)) = (left.peek(), right.peek()) {
        let quality = |way: &Way| (way.blocks, way.entry.discs);
        let order = a.entry.sum.cmp(&b.entry.sum);
        let left_is_better = quality(a) <= quality(b);
        let from_left = if order.is_le() { left.next() } else { None };
        let from_right = if order.is_ge() { right.next() } else { None };
        out.extend(if order == Ordering::Equal && !left_is_better {
            from_right
        } else {
            from_left.or(from_right)
        });
    }
    out.extend(left);
    out.extend(right);
    out
}

/// Where one diameter comes to lie.
#[derive(Clone, Copy, Debug)]
struct Place {
    diameter: Length,
    under: Length,
    off: i32,
}

impl Place {
    fn start(&self, bar: &Bar, stock: &Stock, highest: Mass) -> Result<Start, Error> {
        let (stock, _) = only(stock, |own| own <= self.diameter)?;
        let largest = |disc: &Disc| disc.pairs() > 0 && disc.diameter() == Some(self.diameter);
        let prepared = prepare_with(bar, &stock, highest, 0, largest)?;
        let blocks = (self.under > Length::ZERO).then_some(self.under);
        Ok(Start { blocks, off: self.off, prepared })
    }

    /// How far off, in the tolerance nothing.
    const fn distance(&self) -> i32 {
        if self.keeps() { 0 } else { self.off.abs() }
    }

    const fn keeps(&self) -> bool {
        self.off.abs() <= SAME_DIAMETER.micrometres()
    }

    /// Whether it may stand in for the best place: both keep the height, or both are as high.
    const fn is_level_with(&self, best: &Place) -> bool {
        if best.keeps() { self.keeps() } else { (self.off - best.off).abs() <= SAME_DIAMETER.micrometres() }
    }
}

/// Known diameters of discs of which a pair alone can be loaded, the largest first, each once.
fn diameters(bar: &Bar, stock: &Stock, highest: Mass) -> Vec<Length> {
    let room = |disc: &Disc| bar.sleeve().zip(disc.thickness()).is_none_or(|(room, own)| own <= room);
    let light = |disc: &Disc| {
        let pair = disc.mass().times(2).and_then(|pair| bar.empty()?.plus(pair));
        pair.is_ok_and(|total| total <= highest)
    };
    let usable = stock.discs().iter().filter(|disc| disc.pairs() > 0 && room(disc) && light(disc));
    let mut found: Vec<Length> = usable.filter_map(Disc::diameter).collect();
    crate::numeric::sort::sort_by_key(&mut found, |diameter| Reverse(*diameter));
    found.dedup();
    found
}

/// What the discs may stand on, rising: the floor, then the blocks.
fn supports(blocks: &[Length]) -> Result<Vec<Length>, Error> {
    let mut under = alloc::vec![Length::ZERO];
    for (at, block) in blocks.iter().enumerate() {
        let block = between("", *block, AtHeight::HIGHEST);
        under.push(block.map_err(|error| error.within(&format!("blocks[{at}]")))?);
    }
    crate::numeric::sort::sort(&mut under);
    under.dedup();
    Ok(under)
}

/// One place for each diameter that can be as high as the best of all: on nothing, then on the lowest blocks, then the
/// larger diameter.
fn level(diameters: &[Length], under: &[Length], height: Length) -> Vec<Place> {
    let places = |diameter: Length| {
        // Twice the distance: half an odd diameter stays whole.
        let off =
            move |under: &Length| diameter.micrometres() + 2 * under.micrometres() - 2 * height.micrometres();
        under.iter().map(move |under| Place { diameter, under: *under, off: off(under) })
    };
    let all = diameters.iter().flat_map(|diameter| places(*diameter));
    let Some(best) = all.min_by_key(|place| (place.distance(), Reverse(place.off))) else {
        return Vec::new();
    };
    let nearest = |diameter: &Length| {
        let level = places(*diameter).filter(|place| place.is_level_with(&best));
        level.min_by_key(|place| (place.distance(), place.under))
    };
    let mut found: Vec<Place> = diameters.iter().filter_map(nearest).collect();
    crate::numeric::sort::sort_by_key(&mut found, |place| place.under);
    found
}

/// Millimetres of twice a distance in micrometres.
fn millimetres_off(twice: i32) -> f64 {
    if twice.abs() <= SAME_DIAMETER.micrometres() { 0.0 } else { f64::from(twice) / 2_000.0 }
}

#[cfg(test)]
mod tests {
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
        let kept = at.load(kg(target), Policy::Exact).unwrap();
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
        let below = at.load(kg(48.0), Policy::Below).unwrap().loaded;
        assert_eq!((below.total, below.difference), (kg(40.0), kg(-8.0)));
        assert_eq!((below.next_below, below.next_above), (Some(kg(30.0)), Some(kg(50.0))));
        // 40 and 50 are equally near 45: the lighter.
        for (policy, total) in [(Policy::Above, 50.0), (Policy::Nearest, 40.0)] {
            assert_eq!(at.load(kg(45.0), policy).unwrap().loaded.total, kg(total));
        }
        let refusals = [
            (29.0, Policy::Below, Code::BelowLightest),
            (45.0, Policy::Exact, Code::NotLoadable),
            (91.0, Policy::Above, Code::AboveHeaviest),
            (501.0, Policy::Below, Code::OutOfRange),
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
        let discs =
            vec![thick(10.0, 4, 450.0, 60.0), thick(5.0, 8, 450.0, 10.0), thick(20.0, 2, 449.0, 90.0)];
        let (stock, bar) = (Stock::new(discs).unwrap(), bar().with_sleeve(mm(200.0)).unwrap());
        let sleeve = AtHeight::new(&bar, &stock, &[], mm(225.0), kg(500.0)).unwrap();
        assert_eq!(made(&sleeve, 60.0), (vec![20.0], 0.0, 0.0));
        let large = at(&[(10.0, 2, 449.0), (10.0, 2, 450.0)], &[], 225.0);
        let kept = large.load(kg(40.0), Policy::Exact).unwrap();
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
}
