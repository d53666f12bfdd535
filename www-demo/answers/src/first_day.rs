//! A first day, and another bar: which bars are right for a lift, and the lightest load of each at the lift's height.

use bismar::error::Allowed;
use bismar::loading::{AtHeight, Bar, BarKind, Implement, Loaded, Prepared, Rounding, Stock};
use bismar::quantity::{Length, Mass, Name};
use bismar::record::{LiftParameters, Parameters, StartsFrom};
use bismar::{Code, Error};
use serde::{Deserialize, Serialize};

use crate::beginning::standard_lift;
use crate::opened::Which;

/// The question for a lift of the first list.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct First {
    lift: String,
    implements: Vec<Implement>,
    stock: Stock,
    #[serde(default)]
    blocks: Vec<Length>,
}

/// The question for a lift of a log.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Another {
    log: Which,
    lift: Name,
}

/// A bar that is right for the lift.
#[derive(Serialize)]
pub(crate) struct Offer {
    implement: Name,
    /// Its lightest load at the height of the lift.
    load: Mass,
    loaded: Loaded,
    /// Blocks under each end that bring it to its height.
    #[serde(skip_serializing_if = "Option::is_none")]
    blocks: Option<Length>,
    /// How far from its height the bar lies, mm; 0 where it is kept, or no part of the lift.
    off_by_mm: f64,
    /// Its lightest load is not above the working load of the lift.
    fits: bool,
    /// The lift is done with it now.
    now: bool,
}

/// The answer: the lightest first; those at the height before those that cannot be brought there.
#[derive(Serialize)]
pub(crate) struct Bars {
    offers: Vec<Offer>,
}

/// A bar for heavier work than this has no use on a first day (the limit of `first_load`).
const HEAVIEST: Mass = Mass::grams(500_000);
/// The lift that is done inside a frame.
const HEX: &str = "hex-bar pull";

const fn is_hex(bar: &Bar) -> bool {
    matches!(bar.kind(), BarKind::Hex { .. })
}

fn offer(bar: &Bar, stock: &Stock, blocks: &[Length], height: Option<Length>) -> Result<Offer, Error> {
    let (loaded, blocks, off_by_mm) = if let Some(height) = height {
        let all = AtHeight::new(bar, stock, blocks, height, HEAVIEST)?;
        let lightest = all.lightest().ok_or_else(|| Error::plain(Code::NotLoadable, "implement"))?;
        let kept = all.load(lightest, Rounding::Exact)?;
        (kept.loaded, kept.blocks, kept.off_by_mm)
    } else {
        let all = Prepared::new(&Implement::Bar(bar.clone()), stock, HEAVIEST)?;
        let lightest = all.lightest().ok_or_else(|| Error::plain(Code::NotLoadable, "implement"))?;
        (all.load(lightest, Rounding::Exact)?, None, 0.0)
    };
    let load = loaded.total;
    Ok(Offer { implement: bar.id().clone(), load, loaded, blocks, off_by_mm, fits: true, now: false })
}

/// Offers of all bars of that kind, sorted.
fn offers(
    implements: &[Implement],
    hex: bool,
    of: impl Fn(&Bar) -> Result<Offer, Error>,
) -> Result<Bars, Error> {
    let bars = implements.iter().filter_map(|implement| match implement {
        Implement::Bar(bar) if is_hex(bar) == hex => Some(bar),
        _ => None,
    });
    let mut offers = bars.map(of).collect::<Result<Vec<Offer>, Error>>()?;
    offers.sort_by(|one, other| {
        let off = |offer: &Offer| offer.off_by_mm.abs();
        off(one).total_cmp(&off(other)).then(one.load.cmp(&other.load))
    });
    Ok(Bars { offers })
}

/// The height at which the lift starts, where it does from the floor.
fn height(set: &LiftParameters, range: u8) -> Option<Length> {
    let floor = set.starts_from == StartsFrom::Floor;
    set.ranges.get(usize::from(range)).copied().filter(|_| floor)
}

/// With which bar, and which load, does a lift begin? The lightest right bar first.
pub(crate) fn first_bars(asked: First) -> Result<Bars, Error> {
    let set = standard_lift(&asked.lift)?;
    let height = height(&set, set.start.place.range);
    offers(&asked.implements, asked.lift == HEX, |bar| offer(bar, &asked.stock, &asked.blocks, height))
}

/// Which other bar may a lift be done with? One of the same kind; none raises the working load.
pub(crate) fn other_bars(asked: Another) -> Result<Bars, Error> {
    let opened = asked.log.open()?;
    let unknown = || Error::plain(Code::UnknownLift, "lift");
    let all = opened.state.parameters().ok_or_else(unknown)?;
    let lift = opened.state.lifts().find(|lift| *lift.id() == asked.lift).ok_or_else(unknown)?;
    let (set, grant) = (lift.parameters(), lift.grant());
    let hex = matches!(all.implement(&set.implement), Some(Implement::Bar(bar)) if is_hex(bar));
    let height = height(set, grant.place.range);
    offers(&all.implements, hex, |bar| {
        let made = offer(bar, &all.stock, &all.blocks, height)?;
        let (fits, now) = (made.load <= grant.load(), made.implement == set.implement);
        Ok(Offer { fits, now, ..made })
    })
}

/// The question: what is set, with another bar for one lift.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct WithBar {
    log: Which,
    lift: Name,
    implement: Name,
}

/// What is set, with that bar for that lift. A start that the bar does not make becomes the next lighter load, or its lightest;
/// where the lift has got to stays.
pub(crate) fn with_bar(asked: WithBar) -> Result<Parameters, Error> {
    let WithBar { log, lift, implement } = asked;
    let bars = other_bars(Another { log: log.clone(), lift: lift.clone() })?;
    let rule = || {
        Error::new(
            Code::NotLoadable,
            "implement",
            implement.as_str(),
            Allowed::rule("a bar that fits the lift"),
        )
    };
    if !bars.offers.iter().any(|offer| offer.implement == implement && offer.fits) {
        return Err(rule());
    }
    let opened = log.open()?;
    let mut all =
        opened.state.parameters().cloned().ok_or_else(|| Error::plain(Code::UnknownLift, "lift"))?;
    for set in all.lifts.iter_mut().filter(|set| set.id == lift) {
        set.implement = implement.clone();
    }
    make_starts(&mut all, |set| set.id == lift);
    Ok(all)
}

/// The question: what is set, with other bars, discs and blocks.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct WithKit {
    log: Which,
    implements: Vec<Implement>,
    stock: Stock,
    #[serde(default)]
    blocks: Vec<Length>,
}

/// What is set, with these bars, discs and blocks. Bars that a lift may still be done with stay on the list; a start that is not
/// made any more becomes the next lighter load.
pub(crate) fn with_kit(asked: WithKit) -> Result<Parameters, Error> {
    let WithKit { log, implements, stock, blocks } = asked;
    let opened = log.open()?;
    let mut all =
        opened.state.parameters().cloned().ok_or_else(|| Error::plain(Code::NoParameters, "log"))?;
    let named = |one: &&Implement| implements.iter().any(|other| other.id() == one.id());
    let kept: Vec<Implement> = all.implements.iter().filter(|one| !named(one)).cloned().collect();
    all.implements = implements.into_iter().chain(kept).collect();
    all.stock = stock;
    all.blocks = blocks;
    make_starts(&mut all, |_| true);
    Ok(all)
}

/// Has those lifts begin at a load that the equipment makes, since parameters whose start cannot be loaded are refused.
fn make_starts(all: &mut Parameters, which: impl Fn(&LiftParameters) -> bool) {
    let made: Vec<Option<Mass>> = all.lifts.iter().map(|set| start_made(all, set)).collect();
    for (set, made) in all.lifts.iter_mut().zip(made).filter(|(set, _)| which(set)) {
        set.start.work.load = made.unwrap_or(set.start.work.load);
    }
}

/// The start of a lift on other equipment: the same where that is made, as written down to a tenth of a kilogram, else the next
/// lighter load at its height, else the lightest; none where nothing is made.
fn start_made(all: &Parameters, set: &LiftParameters) -> Option<Mass> {
    let (implement, load) = (all.implement(&set.implement)?, set.start.load());
    let totals: Vec<Mass> = match (implement, height(set, set.start.place.range)) {
        (Implement::Bar(bar), Some(height)) => {
            AtHeight::new(bar, &all.stock, &all.blocks, height, HEAVIEST).ok()?.totals().collect()
        }
        _ => {
            let prepared = Prepared::new(implement, &all.stock, HEAVIEST).ok()?;
            prepared.totals(prepared.lightest()?, HEAVIEST).collect()
        }
    };
    let written = |made: &&Mass| made.minus(load).is_ok_and(|gap| gap.kg().abs() <= 0.05);
    if totals.iter().any(|made| written(&made)) {
        return Some(load);
    }
    totals.iter().rev().find(|made| **made <= load).or_else(|| totals.first()).copied()
}
