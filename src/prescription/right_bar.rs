//! Which bars are right for a lift, and the lightest load of each at the lift's height.

use alloc::vec::Vec;

use super::first_lifts::{HEX, first_lift};
use crate::error::{Allowed, Code, Error};
use crate::loading::{AtHeight, Bar, BarKind, Implement, Loaded, Prepared, Rounding, Stock};
use crate::progression::{HEAVIEST, Loadable, State};
use crate::quantity::{Length, Mass, Name};
use crate::record::{ClearanceLimits, LiftParameters, Parameters, StartsFrom};

/// A bar that is right for a lift.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct BarOffer {
    /// Id of the bar.
    pub implement: Name,
    /// Its lightest load at the height of the lift.
    pub load: Mass,
    /// How that load is made.
    pub loaded: Loaded,
    /// Blocks under each end that bring it to its height.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub blocks: Option<Length>,
    /// How far from its height the bar lies, mm; 0 where it is kept, or no part of the lift.
    pub off_by_mm: f64,
    /// Its lightest load is not above the working load of the lift, nor above a limit of the clearance in force.
    pub fits: bool,
    /// The lift is done with it now.
    pub now: bool,
}

const fn is_hex(bar: &Bar) -> bool {
    matches!(bar.kind(), BarKind::Hex { .. })
}

/// The height at which the lift starts, where it does from the floor.
fn height(set: &LiftParameters, range: u8) -> Option<Length> {
    let floor = set.starts_from == StartsFrom::Floor;
    set.ranges.get(usize::from(range)).copied().filter(|_| floor)
}

fn offer(bar: &Bar, stock: &Stock, blocks: &[Length], height: Option<Length>) -> Result<BarOffer, Error> {
    let none = || Error::plain(Code::NotLoadable, "implement");
    let (loaded, blocks, off_by_mm) = if let Some(height) = height {
        let all = AtHeight::new(bar, stock, blocks, height, HEAVIEST)?;
        let kept = all.load(all.lightest().ok_or_else(none)?, Rounding::Exact)?;
        (kept.loaded, kept.blocks, kept.off_by_mm)
    } else {
        let all = Prepared::new(&Implement::Bar(bar.clone()), stock, HEAVIEST)?;
        (all.load(all.lightest().ok_or_else(none)?, Rounding::Exact)?, None, 0.0)
    };
    let load = loaded.total;
    Ok(BarOffer { implement: bar.id().clone(), load, loaded, blocks, off_by_mm, fits: true, now: false })
}

/// Those at the height before those that cannot be brought there; of these the lightest first.
fn offers(
    implements: &[Implement],
    right: impl Fn(&Bar) -> bool,
    of: impl Fn(&Bar) -> Result<BarOffer, Error>,
) -> Result<Vec<BarOffer>, Error> {
    let bars = implements.iter().filter_map(|implement| match implement {
        Implement::Bar(bar) if right(bar) => Some(bar),
        _ => None,
    });
    let mut offers = bars.map(of).collect::<Result<Vec<BarOffer>, Error>>()?;
    offers.sort_by(|one, other| {
        let off = |offer: &BarOffer| offer.off_by_mm.abs();
        off(one).total_cmp(&off(other)).then(one.load.cmp(&other.load))
    });
    Ok(offers)
}

/// With which bar, and which load, does a lift of [`first_lifts`](super::first_lifts()) begin? The lightest right bar
/// first; one that cannot be brought to the height of the lift comes after those that can.
///
/// # Errors
/// `unknown_name` for another lift; `stock_too_large`.
///
/// ```
/// use bismar::loading::{Bar, Implement, Stock};
/// use bismar::prescription::first_bars;
/// use bismar::quantity::{Mass, Name};
///
/// let bar = |id: &str, kg: f64| -> Result<Implement, bismar::Error> {
///     Ok(Implement::Bar(Bar::new(Name::new(id)?, Mass::from_kg(kg)?, Mass::ZERO)?))
/// };
/// let bars = [bar("bar 20", 20.0)?, bar("bar 8", 8.0)?];
/// let offers = first_bars("box squat", &bars, &Stock::new(Vec::new())?, &[])?;
/// assert_eq!(offers[0].implement.as_str(), "bar 8");
/// # Ok::<(), bismar::Error>(())
/// ```
pub fn first_bars(
    lift: &str,
    implements: &[Implement],
    stock: &Stock,
    blocks: &[Length],
) -> Result<Vec<BarOffer>, Error> {
    let set = first_lift(lift, Name::new("bar")?, Mass::ZERO)?;
    let height = height(&set, set.start.place.range);
    offers(implements, |bar| is_hex(bar) == (lift == HEX), |bar| offer(bar, stock, blocks, height))
}

/// The limits of the clearance in force that concern a lift: one of the log, or one to begin with by the regions that it
/// would load. All of them where nobody knows which regions those are.
///
/// ```
/// use bismar::prescription::limits_for;
/// use bismar::progression::State;
/// use bismar::quantity::Name;
/// use bismar::record::Lifter;
///
/// let nothing_limited = State::new(Lifter::new(Name::new("A")?));
/// assert!(limits_for(&nothing_limited, &Name::new("box squat")?).is_empty());
/// # Ok::<(), bismar::Error>(())
/// ```
#[must_use]
pub fn limits_for(state: &State, lift: &Name) -> Vec<ClearanceLimits> {
    state.limits_of(lift).unwrap_or_else(|| {
        let set = Name::new("bar").and_then(|bar| first_lift(lift.as_str(), bar, Mass::ZERO)).ok();
        let here = |limit: &&ClearanceLimits| match (&set, &limit.region) {
            (Some(set), Some(region)) => set.regions.contains(region),
            _ => true,
        };
        let all = state.clearance().map(|given| given.limits.as_slice()).unwrap_or_default();
        all.iter().filter(here).cloned().collect()
    })
}

/// [`first_bars`] for somebody whose log tells of limits: a bar whose lightest load is above one of them does not fit.
///
/// # Errors
/// As [`first_bars`].
///
/// ```
/// use bismar::loading::Stock;
/// use bismar::prescription::first_bars_of;
/// use bismar::progression::State;
/// use bismar::quantity::Name;
/// use bismar::record::Lifter;
///
/// let nothing_limited = State::new(Lifter::new(Name::new("A")?));
/// assert!(first_bars_of(&nothing_limited, "box squat", &[], &Stock::new(Vec::new())?, &[])?.is_empty());
/// # Ok::<(), bismar::Error>(())
/// ```
pub fn first_bars_of(
    state: &State,
    lift: &str,
    implements: &[Implement],
    stock: &Stock,
    blocks: &[Length],
) -> Result<Vec<BarOffer>, Error> {
    let mut offers = first_bars(lift, implements, stock, blocks)?;
    let most = limits_for(state, &Name::new(lift)?).iter().filter_map(|limit| limit.load).min();
    for offer in &mut offers {
        offer.fits = most.is_none_or(|most| offer.load <= most);
    }
    Ok(offers)
}

/// With which other bar may a lift be done? One of the same kind; none raises the working load.
///
/// # Errors
/// `no_parameters`; `unknown_lift`; `stock_too_large`.
///
/// ```
/// use bismar::prescription::other_bars;
/// use bismar::progression::State;
/// use bismar::quantity::Name;
/// use bismar::record::Lifter;
///
/// let nothing_set = State::new(Lifter::new(Name::new("A")?));
/// assert!(other_bars(&nothing_set, &Name::new("squat")?).is_err());
/// # Ok::<(), bismar::Error>(())
/// ```
pub fn other_bars(state: &State, lift: &Name) -> Result<Vec<BarOffer>, Error> {
    let all = state.parameters().ok_or_else(|| Error::plain(Code::NoParameters, "parameters"))?;
    let known = state.lift_state(lift).ok_or_else(|| Error::plain(Code::UnknownLift, "lift"))?;
    let (set, grant) = (known.parameters(), known.grant());
    let hex = matches!(all.implement(&set.implement), Some(Implement::Bar(bar)) if is_hex(bar));
    let height = height(set, grant.place.range);
    offers(
        &all.implements,
        |bar| is_hex(bar) == hex,
        |bar| {
            let made = offer(bar, &all.stock, &all.blocks, height)?;
            let (fits, now) = (made.load <= grant.load(), made.implement == set.implement);
            Ok(BarOffer { fits, now, ..made })
        },
    )
}

/// What is set, with another bar for one lift: one of [`other_bars`] that fits. A start that the bar does not make becomes
/// the next lighter load, or its lightest; where the lift has got to stays.
///
/// # Errors
/// As [`other_bars`]; `not_loadable` for a bar that does not fit the lift.
pub fn with_bar(state: &State, lift: &Name, implement: &Name) -> Result<Parameters, Error> {
    let bars = other_bars(state, lift)?;
    if !bars.iter().any(|offer| offer.implement == *implement && offer.fits) {
        let rule = Allowed::rule("a bar that fits the lift");
        return Err(Error::new(Code::NotLoadable, "implement", implement.as_str(), rule));
    }
    let mut all =
        state.parameters().cloned().ok_or_else(|| Error::plain(Code::NoParameters, "parameters"))?;
    for set in all.lifts.iter_mut().filter(|set| set.id == *lift) {
        set.implement = implement.clone();
    }
    make_starts(&mut all, |set| set.id == *lift)?;
    Ok(all)
}

/// What is set, with these bars, discs and blocks. Bars that are not among them stay on the list, since a lift may still be
/// done with one; a start that is not made any more becomes the next lighter load.
///
/// # Errors
/// `no_parameters`; `stock_too_large`.
pub fn with_kit(
    state: &State,
    implements: Vec<Implement>,
    stock: Stock,
    blocks: Vec<Length>,
) -> Result<Parameters, Error> {
    let mut all =
        state.parameters().cloned().ok_or_else(|| Error::plain(Code::NoParameters, "parameters"))?;
    let named = |one: &&Implement| implements.iter().any(|other| other.id() == one.id());
    let kept: Vec<Implement> = all.implements.iter().filter(|one| !named(one)).cloned().collect();
    all.implements = implements.into_iter().chain(kept).collect();
    all.stock = stock;
    all.blocks = blocks;
    make_starts(&mut all, |_| true)?;
    Ok(all)
}

/// Has those lifts begin at a load that the equipment makes, since parameters whose start cannot be loaded are refused: the
/// same where it is made, else the next lighter one at its height, else the lightest. Where nothing is made it stays.
fn make_starts(all: &mut Parameters, which: impl Fn(&LiftParameters) -> bool) -> Result<(), Error> {
    let made = all.lifts.iter().map(|set| Ok(Loadable::of(set, all, None)?.start_made(set)));
    let made = made.collect::<Result<Vec<Option<Mass>>, Error>>()?;
    for (set, made) in all.lifts.iter_mut().zip(made).filter(|(set, _)| which(set)) {
        set.start.work.load = made.unwrap_or(set.start.work.load);
    }
    Ok(())
}
