//! Lifts to begin with: what is set for each until a coach sets it otherwise, and a log that begins with them.

use alloc::boxed::Box;
use alloc::vec::Vec;

use crate::error::{Allowed, Code, Error};
use crate::gate::{Criterion, Gate, PassRun, Requirement};
use crate::loading::{Implement, Stock};
use crate::quantity::{Day, Length, Mass, Name, Rir};
use crate::record::{
    Body, Clearance, ClearanceStatus, Event, EventKind, Grant, LiftParameters, LiftPlan, Lifter, Log, Pair,
    Parameters, Plan, Region, Rung, StartsFrom, StepPolicy, Work,
};

/// One of them.
struct Beginning {
    id: &'static str,
    body: Body,
    regions: &'static [&'static str],
    /// Each harder than the one before.
    rungs: &'static [&'static str],
    /// The first is critical.
    criteria: &'static [&'static str],
    starts_from: StartsFrom,
    over_the_body: bool,
}

/// Sets and repetitions with which every lift begins, those left in reserve, and the gate of every lift: 9 of 10 repetitions
/// on three days (our choice).
const SETS: u8 = 3;
const REPS: u8 = 5;
const RESERVE: u8 = 4;
const ACCEPTABLE: u16 = 9;
const OF: u16 = 10;
const SESSIONS: u8 = 3;
/// Largest steps as a part of the load: that of the lower body lets a small gym have a step at all (our choice).
const STEP_LOWER: f64 = 0.06;
const STEP_UPPER: f64 = 0.05;
/// The centre of a bar on discs of full size: half of 450 mm.
const FULL_SIZE: Length = Length::millimetres(225);

const LIFTS: [Beginning; 8] = [
    Beginning {
        id: "front squat",
        body: Body::Lower,
        regions: &["knee", "hip", "lower back", "ankle", "upper back", "wrist"],
        rungs: &["to a high box", "to a parallel box", "free"],
        criteria: &["brace held", "depth reached", "knees track feet"],
        starts_from: StartsFrom::Rack,
        over_the_body: true,
    },
    Beginning {
        id: "box squat",
        body: Body::Lower,
        regions: &["knee", "hip", "lower back"],
        rungs: &["high box", "parallel box"],
        criteria: &["brace held", "even left and right"],
        starts_from: StartsFrom::Rack,
        over_the_body: true,
    },
    Beginning {
        id: "straight-bar pull",
        body: Body::Lower,
        regions: &["lower back", "hip", "knee"],
        rungs: &["hip width"],
        criteria: &["back held flat", "bar close to the legs", "hips and shoulders rise together"],
        starts_from: StartsFrom::Floor,
        over_the_body: false,
    },
    Beginning {
        id: HEX,
        body: Body::Lower,
        regions: &["lower back", "hip", "knee"],
        rungs: &["high handles", "low handles"],
        criteria: &["back held flat", "whole foot on the floor"],
        starts_from: StartsFrom::Floor,
        over_the_body: false,
    },
    Beginning {
        id: "strict press",
        body: Body::Upper,
        regions: &["shoulder", "elbow", "wrist", "lower back"],
        rungs: &["standing"],
        criteria: &["ribs down", "bar path over mid-foot"],
        starts_from: StartsFrom::Rack,
        over_the_body: false,
    },
    Beginning {
        id: "seated press",
        body: Body::Upper,
        regions: &["shoulder", "elbow", "wrist"],
        rungs: &["back supported"],
        criteria: &["ribs down", "even left and right"],
        starts_from: StartsFrom::Rack,
        over_the_body: false,
    },
    Beginning {
        id: "bench press",
        body: Body::Upper,
        regions: &["shoulder", "elbow", "wrist"],
        rungs: &["from pins", "full range"],
        criteria: &["shoulder blades set", "touches one place"],
        starts_from: StartsFrom::Rack,
        over_the_body: true,
    },
    Beginning {
        id: "supported row",
        body: Body::Upper,
        regions: &["shoulder", "elbow", "lower back"],
        rungs: &["chest supported"],
        criteria: &["back held flat", "elbows finish"],
        starts_from: StartsFrom::Rack,
        over_the_body: false,
    },
];

/// The lift that is done inside a frame.
pub(super) const HEX: &str = "hex-bar pull";

/// A strict lift and the forgiving one beside it.
const PAIRS: [(&str, &str); 2] = [("front squat", "box squat"), ("strict press", "seated press")];

/// Regions that a report can name although none of the lifts above loads them.
const OTHER_REGIONS: [&str; 6] = ["neck", "upper back", "elbow", "wrist", "ankle", "groin"];

/// Ids of the lifts to begin with.
///
/// ```
/// use bismar::prescription::first_lifts;
///
/// assert!(first_lifts().any(|id| id == "front squat"));
/// ```
pub fn first_lifts() -> impl Iterator<Item = &'static str> {
    LIFTS.iter().map(|lift| lift.id)
}

fn beginning(id: &str) -> Result<&'static Beginning, Error> {
    LIFTS.iter().find(|lift| lift.id == id).ok_or_else(|| {
        Error::new(Code::UnknownName, "lift", id, Allowed::one_of(&first_lifts().collect::<Vec<_>>()))
    })
}

fn names(all: &[&str]) -> Result<Vec<Name>, Error> {
    all.iter().map(|name| Name::new(name)).collect()
}

/// A lift to begin with, on that implement from that load: three sets of five on its easiest rung, a gate of 9 in 10
/// repetitions on three days with nothing open, the smallest step that can be loaded. All of it is our choice, for a
/// coach to set otherwise.
///
/// # Errors
/// `unknown_name` for a lift that is not one of [`first_lifts`].
///
/// ```
/// use bismar::prescription::first_lift;
/// use bismar::quantity::{Mass, Name};
///
/// let squat = first_lift("box squat", Name::new("bar 15")?, Mass::from_kg(15.0)?)?;
/// assert_eq!((squat.start.work.sets, squat.start.work.reps), (3, 5));
/// # Ok::<(), bismar::Error>(())
/// ```
pub fn first_lift(id: &str, implement: Name, load: Mass) -> Result<LiftParameters, Error> {
    let own = beginning(id)?;
    let run = PassRun::new(ACCEPTABLE, OF, SESSIONS)?;
    let gate = Gate::new(Requirement::All(Vec::from([Requirement::PassRun(run), Requirement::NoOpenBlock])))?;
    let start = Grant::new(Work::new(SETS, REPS, load));
    let ids = names(own.rungs)?;
    let below = core::iter::once(Vec::new()).chain(ids.iter().map(|id| Vec::from([id.clone()])));
    let criteria = own.criteria.iter().enumerate();
    let criteria = criteria.map(|(at, name)| match at {
        0 => Criterion::critical(name),
        _ => Criterion::ordinary(name),
    });
    let from_floor = own.starts_from == StartsFrom::Floor;
    Ok(LiftParameters::new(Name::new(own.id)?, own.body, implement, start, gate)
        .with_regions(names(own.regions)?)
        .with_rungs(ids.iter().cloned().zip(below).map(|(id, below)| Rung::new(id, below)).collect())
        .with_starts_from(own.starts_from)
        .with_ranges(if from_floor { Vec::from([FULL_SIZE]) } else { Vec::new() })
        .with_criteria(criteria.collect::<Result<Vec<_>, _>>()?)
        .with_step(StepPolicy::SmallestLoadable)
        .with_step_cap(match own.body {
            Body::Lower => STEP_LOWER,
            Body::Upper => STEP_UPPER,
        })
        .with_over_the_body(own.over_the_body))
}

/// What is set for these lifts together: their regions and those that a report may name besides, and which of them are
/// the strict and the forgiving one of a pair.
///
/// # Errors
/// None in practice; as [`Name::new`].
///
/// ```
/// use bismar::loading::{Bar, Implement, Stock};
/// use bismar::prescription::{first_lift, first_settings};
/// use bismar::quantity::{Mass, Name};
///
/// let (name, load) = (Name::new("bar")?, Mass::from_kg(20.0)?);
/// let bar = Implement::Bar(Bar::new(name.clone(), load, Mass::ZERO)?);
/// let lifts = ["front squat", "box squat"].map(|id| first_lift(id, name.clone(), load));
/// let lifts = lifts.into_iter().collect::<Result<Vec<_>, _>>()?;
/// let set = first_settings(lifts, vec![bar], Stock::new(Vec::new())?)?;
/// assert_eq!(set.pairs.len(), 1);
/// # Ok::<(), bismar::Error>(())
/// ```
pub fn first_settings(
    lifts: Vec<LiftParameters>,
    implements: Vec<Implement>,
    stock: Stock,
) -> Result<Parameters, Error> {
    let mut regions: Vec<Name> = Vec::new();
    let others = names(&OTHER_REGIONS)?;
    for id in lifts.iter().flat_map(|lift| lift.regions.iter()).chain(&others) {
        if !regions.contains(id) {
            regions.push(id.clone());
        }
    }
    let has = |name: &str| lifts.iter().any(|lift| lift.id.as_str() == name);
    let both = PAIRS.iter().filter(|(strict, forgiving)| has(strict) && has(forgiving));
    let pairs = both.map(|(strict, forgiving)| Ok(Pair::new(Name::new(strict)?, Name::new(forgiving)?)));
    let pairs = pairs.collect::<Result<Vec<_>, Error>>()?;
    Ok(Parameters::new(regions.into_iter().map(Region::new).collect(), lifts, implements, stock)
        .with_pairs(pairs))
}

/// A log that begins with these settings, and the plan for the first session: every lift, with four repetitions left in
/// reserve. Who said that training may begin is written down where somebody did; else the first answer asks for it.
///
/// # Errors
/// What [`Log::check`] and [`fold`](crate::progression::fold) report.
///
/// ```
/// use bismar::loading::{Bar, Implement, Stock};
/// use bismar::prescription::{begin, first_lift, first_settings, next_session};
/// use bismar::quantity::{Mass, Name};
/// use bismar::record::Lifter;
///
/// let (name, load) = (Name::new("bar")?, Mass::from_kg(20.0)?);
/// let bar = Implement::Bar(Bar::new(name.clone(), load, Mass::ZERO)?);
/// let lifts = vec![first_lift("seated press", name, load)?];
/// let set = first_settings(lifts, vec![bar], Stock::new(Vec::new())?)?;
/// let today = "2026-01-05".parse()?;
/// let (log, plan) = begin(Lifter::new(Name::new("A")?), today, set, Some(Name::new("clinic")?))?;
/// assert_eq!(next_session(&log, &plan, today)?.lifts.len(), 1);
/// # Ok::<(), bismar::Error>(())
/// ```
pub fn begin(
    lifter: Lifter,
    day: Day,
    settings: Parameters,
    cleared_by: Option<Name>,
) -> Result<(Log, Plan), Error> {
    let planned = settings.lifts.iter();
    let planned = planned.map(|lift| LiftPlan::new(lift.id.clone()).with_reserve(Rir::whole(RESERVE)));
    let plan = Plan::of([]).with_lifts(planned.collect());
    let mut kinds = Vec::from([EventKind::ParametersChanged(Box::new(settings))]);
    kinds.extend(
        cleared_by.map(|who| EventKind::ClearanceRecorded(Clearance::new(ClearanceStatus::Cleared, who))),
    );
    let mut log = Log::new(lifter);
    log.events.extend((1..).zip(kinds).map(|(sequence, kind)| Event::new(sequence, day, kind)));
    crate::progression::fold(&log)?;
    Ok((log, plan))
}
