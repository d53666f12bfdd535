//! Several lifters, one bar: who goes first, and which discs move between the sets?

use alloc::format;
use alloc::vec::Vec;

use derive_setters::Setters;

use crate::caution::Caution;
use crate::error::{Allowed, Code, Error};
use crate::loading::{
    Bar, Implement, Loaded, SharedBar, SharedLifter, Stock, shared_bar, shared_bar_as_loaded,
};
use crate::prescription::{Equipment, next_session_from};
use crate::progression::fold;
use crate::quantity::{Day, Length, Mass, Name};
use crate::reason::{NamedPlace, Reason};
use crate::record::{Log, Plan, StartsFrom};

/// One of several who share a bar today.
#[derive(Clone, Debug, PartialEq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct Sharing {
    /// The log.
    pub log: Log,
    /// The plan of today.
    pub plan: Plan,
    /// Id of the lift.
    pub lift: Name,
    /// Work sets of it done today that the log does not tell yet. Whoever has begun has warmed up.
    #[cfg_attr(feature = "serde", serde(default))]
    pub done: u8,
}

impl Sharing {
    /// That lift of that lifter.
    #[must_use]
    pub fn new(log: Log, plan: Plan, lift: Name) -> Sharing {
        Sharing { log, plan, lift, done: 0 }
    }
}

/// The work of one lifter at the bar.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct SharedLoads {
    /// Every stop of the lifter, whatever is planned; empty where nothing is stopped. Shown before anything else.
    pub stops: Vec<Reason>,
    /// Id of the lifter.
    pub lifter: Name,
    /// Id of the lift.
    pub lift: Name,
    /// Where it is done today, by the ids of the own log.
    pub place: NamedPlace,
    /// Warm-up and work sets that are left, in order; empty where nothing is lifted today, or nothing is left.
    pub loads: Vec<Mass>,
    /// Blocks under each end of the bar for each of these loads, 0 on the floor; empty where none needs any.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Vec::is_empty"))]
    pub blocks: Vec<Length>,
}

/// One bar for several, today.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Share {
    /// The day it was made for.
    pub today: Day,
    /// The lifters in the order given.
    pub lifters: Vec<SharedLoads>,
    /// Turn by turn, each lifter by the place in the list given; absent where nobody lifts.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub bar: Option<SharedBar>,
    /// Rows of the registry that the numbers come from.
    pub sources: Vec<&'static str>,
    /// What to show beside it.
    pub cautions: Vec<Caution>,
}

/// Several lifters share a bar today: in which order do they lift, and which discs move between the sets?
///
/// Each lifts what the own log and plan give; nobody's load changes for another's sake. Who rests, is stopped or is done has no turn.
/// Where a lift starts from the floor its discs carry the bar at its height, so that the discs of each load are those of the
/// lifter's own day and only the order is looked for.
///
/// # Errors
/// What [`next_session_from`] and [`shared_bar`] report, with the place in the list; `unknown_lift` for a lift that is not in
/// its plan; `not_loadable` for one that is not done with a bar; `not_in_stock` where the
/// logs do not name the same bar and discs.
pub fn share(lifters: &[Sharing], today: Day) -> Result<Share, Error> {
    let mut answer = Share {
        today,
        lifters: Vec::new(),
        bar: None,
        sources: alloc::vec!["loading.shared_bar"],
        cautions: Vec::new(),
    };
    let mut rack: Option<(Bar, Stock)> = None;
    let (mut all, mut carried) = (Vec::new(), false);
    for (at, one) in (0_u16..).zip(lifters) {
        let inside = |error: Error| error.within(&format!("lifters[{at}]"));
        let part = part(one, today).map_err(inside)?;
        let same = rack.get_or_insert_with(|| part.rack.clone());
        if *same != part.rack {
            let rule = Allowed::rule("the bar and the discs of the first lifter");
            return Err(inside(Error::new(Code::NotInStock, "implement", part.rack.0.id().as_str(), rule)));
        }
        for caution in part.cautions {
            if !answer.cautions.contains(&caution) {
                answer.cautions.push(caution);
            }
        }
        answer.lifters.push(part.loads);
        if !part.made.is_empty() {
            carried |= part.carried;
            all.push((at, part.made));
        }
    }
    if let Some((bar, stock)) = rack.filter(|_| !all.is_empty()) {
        let (places, made): (Vec<u16>, Vec<Vec<Loaded>>) = all.into_iter().unzip();
        let mut bar = if carried {
            shared_bar_as_loaded(&made)?
        } else {
            let wanted: Vec<SharedLifter> = made.iter().map(|own| SharedLifter::of_loads(own)).collect();
            shared_bar(&bar, &stock, &wanted)?
        };
        for turn in &mut bar.turns {
            turn.lifter = places.get(usize::from(turn.lifter)).copied().unwrap_or(turn.lifter);
        }
        answer.bar = Some(bar);
    }
    Ok(answer)
}

/// What one of them lifts, with which bar and discs, and what to show beside it.
struct Part {
    loads: SharedLoads,
    /// How each of the loads is made.
    made: Vec<Loaded>,
    /// The discs carry the bar at its height.
    carried: bool,
    rack: (Bar, Stock),
    cautions: Vec<Caution>,
}

fn part(one: &Sharing, today: Day) -> Result<Part, Error> {
    let state = fold(&one.log)?;
    let session = next_session_from(&state, &one.plan, today)?;
    let of_today = session.lifts.iter().find(|lift| lift.lift == one.lift);
    let of_today = of_today.ok_or_else(|| super::not_in_plan(&one.lift))?;
    let then = state.as_of(today);
    let view = then.view(&one.lift, today)?;
    let Some(Implement::Bar(bar)) = view.all.implement(&view.lift.set.implement) else {
        let rule = Allowed::rule("a lift with a bar");
        return Err(Error::new(Code::NotLoadable, "lift", one.lift.as_str(), rule));
    };
    let work = of_today.load.map(|load| alloc::vec![load; usize::from(of_today.sets)]);
    let work = work.unwrap_or_default();
    let warm = of_today
        .warm_up
        .iter()
        .map(|set| set.load)
        .filter(|load| one.done == 0 && work.first().is_some_and(|work| load < work));
    let loads: Vec<Mass> = warm.chain(work.iter().copied().skip(usize::from(one.done))).collect();
    let (mut made, mut blocks) = (Vec::new(), Vec::new());
    let equipment = Equipment::of(&view, of_today.place)?;
    for load in &loads {
        let unmade = || Error::new(Code::NotLoadable, "load", load.kg(), Allowed::Unstated);
        let one = equipment.load(*load).ok_or_else(unmade)?;
        blocks.push(one.blocks.unwrap_or(Length::ZERO));
        made.push(one.loaded);
    }
    if blocks.iter().all(|height| *height == Length::ZERO) {
        blocks.clear();
    }
    let place = view.lift.set.named_place(of_today.place);
    let cautions = super::cautions_of_lift(&state, of_today, today);
    let (stops, lifter, lift) = (session.stops.clone(), one.log.lifter.id.clone(), one.lift.clone());
    let loads = SharedLoads { stops, lifter, lift, place, loads, blocks };
    let carried = view.lift.set.starts_from == StartsFrom::Floor;
    Ok(Part { loads, made, carried, rack: (bar.clone(), view.all.stock.clone()), cautions })
}
