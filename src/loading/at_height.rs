//! What can be loaded with the bar's centre at one height, and how.

use alloc::format;
use alloc::vec::Vec;
use core::cmp::{Ordering, Reverse};

use super::bar::Bar;
use super::disc::{Disc, Stock, between};
use super::ends::{prepare, prepare_with};
use super::height::{SAME_DIAMETER, only};
use super::implement::Implement;
use super::loaded::{Loaded, Rounding};
use super::prepared::Prepared;
use super::table::{Counts, Entry};
use crate::error::{Code, Error};
use crate::quantity::{Length, Mass};

/// One load at its height.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct LoadAtHeight {
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
/// use bismar::loading::{AtHeight, Bar, Disc, Rounding, Stock};
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
/// let kept = blocks.load(Mass::from_kg(50.0)?, Rounding::Below)?;
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
    /// `below_lightest` or `above_heaviest` where the policy leaves nothing; `not_loadable` for [`Rounding::Exact`];
    /// `out_of_range` for a target above the load this was prepared for.
    pub fn load(&self, target: Mass, policy: Rounding) -> Result<LoadAtHeight, Error> {
        let chosen = self.loads.choose(target, policy)?;
        let way = self.ways.get(chosen.counts.as_index());
        let found = way.and_then(|way| Some((way, self.starts.get(way.start)?)));
        let (way, start) = found.ok_or_else(|| Error::plain(Code::NotLoadable, "target"))?;
        let mut loaded = start.prepared.answer(&way.entry, start.prepared.placed(&way.entry), target)?;
        (loaded.next_below, loaded.next_above) = self.loads.neighbours(loaded.total);
        Ok(LoadAtHeight { loaded, blocks: start.blocks, off_by_mm: millimetres_off(start.off) })
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
mod tests;
