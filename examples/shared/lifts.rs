//! What the invented lifter trains: five lifts on a small set of bars, discs and blocks.

use bismar::error::Error;
use bismar::gate::{Criterion, Gate, PassRun, Requirement};
use bismar::loading::{Bar, Disc, Implement, Stock};
use bismar::quantity::{Length, Mass, Name, Rir};
use bismar::record::{
    Body, Dimension, Grant, LiftParameters, LiftPlan, Pair, Parameters, Plan, Region, Rung, StartsFrom,
    StepPolicy, Work,
};

pub fn name(text: &str) -> Result<Name, Error> {
    Name::new(text)
}

pub fn kg(value: f64) -> Result<Mass, Error> {
    Mass::from_kg(value)
}

fn mm(value: f64) -> Result<Length, Error> {
    Length::from_mm(value)
}

/// On which of the two training days of a week a lift is trained.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum Days {
    First,
    Second,
    Both,
}

impl Days {
    pub fn include(self, session: usize) -> bool {
        match self {
            Days::First => session == 0,
            Days::Second => session == 1,
            Days::Both => true,
        }
    }
}

/// One lift of the scenario. Heights in mm, loads in kg.
pub struct Kind {
    pub id: &'static str,
    body: Body,
    regions: &'static [&'static str],
    implement: &'static str,
    rungs: &'static [(&'static str, &'static [&'static str])],
    /// Heights of the bar's centre, where it starts from the floor.
    heights: &'static [f64],
    criteria: &'static [(&'static str, bool)],
    load: f64,
    /// Sessions that its gate asks for.
    sessions: u8,
    over_the_body: bool,
    /// A set at this load before the work sets, always the same.
    reference: Option<f64>,
    pub days: Days,
    /// Chance that a repetition is acceptable at first, and how much it grows in a week.
    pub skill: (f64, f64),
}

pub const FRONT_SQUAT: &str = "front squat";
pub const BOX_SQUAT: &str = "box squat";
pub const STRICT_PRESS: &str = "strict press";
pub const SUPPORTED_ROW: &str = "supported row";
pub const DEADLIFT: &str = "deadlift";

/// The lifts of the scenario; more than five repeat them under another id.
pub const KINDS: [Kind; 5] = [
    Kind {
        id: FRONT_SQUAT,
        body: Body::Lower,
        regions: &["knee", "back"],
        implement: "bar 20",
        rungs: &[
            ("to a high box", &[]),
            ("to a parallel box", &["to a high box"]),
            ("free", &["to a parallel box"]),
        ],
        heights: &[],
        criteria: &[("brace held", true), ("depth reached", false), ("knees track feet", false)],
        load: 30.0,
        sessions: 3,
        over_the_body: true,
        reference: Some(20.0),
        days: Days::First,
        skill: (0.93, 0.0004),
    },
    Kind {
        id: BOX_SQUAT,
        body: Body::Lower,
        regions: &["knee", "back"],
        implement: "bar 20",
        rungs: &[("high box", &[]), ("parallel box", &["high box"])],
        heights: &[],
        criteria: &[("brace held", true), ("even left and right", false)],
        load: 40.0,
        sessions: 2,
        over_the_body: true,
        reference: Some(20.0),
        days: Days::Second,
        skill: (0.965, 0.0002),
    },
    Kind {
        id: STRICT_PRESS,
        body: Body::Upper,
        regions: &["shoulder"],
        implement: "bar 15",
        rungs: &[("standing", &[])],
        heights: &[],
        criteria: &[("ribs down", true), ("bar path over mid-foot", false)],
        load: 18.5,
        sessions: 2,
        over_the_body: false,
        reference: Some(15.0),
        days: Days::Both,
        skill: (0.955, 0.0002),
    },
    Kind {
        id: SUPPORTED_ROW,
        body: Body::Upper,
        regions: &["elbow"],
        implement: "bar 15",
        rungs: &[("chest on the bench", &[])],
        heights: &[],
        criteria: &[("chest stays down", true), ("pause at the top", false)],
        load: 25.0,
        sessions: 2,
        over_the_body: false,
        reference: Some(15.0),
        days: Days::Second,
        skill: (0.96, 0.0002),
    },
    Kind {
        id: DEADLIFT,
        body: Body::Lower,
        regions: &["hip", "back"],
        implement: "bar 20",
        rungs: &[("hip width", &[])],
        heights: &[325.0, 275.0, 225.0],
        criteria: &[("back stays flat", true), ("bar close to the leg", false)],
        load: 60.0,
        sessions: 2,
        over_the_body: false,
        reference: None,
        days: Days::Second,
        skill: (0.965, 0.0002),
    },
];

/// The kind of a lift by its number in the list of lifts.
pub fn kind(at: usize) -> &'static Kind {
    // The list is never empty, so the remainder always names one of it.
    KINDS.get(at % KINDS.len()).unwrap_or(&KINDS[0])
}

/// Equipment of a small room: two bars, discs of both units with few small ones.
pub fn equipment() -> Result<(Vec<Implement>, Stock), Error> {
    let bar = |id: &str, mass: f64| -> Result<Implement, Error> {
        Ok(Implement::Bar(Bar::new(name(id)?, kg(mass)?, Mass::ZERO)?))
    };
    let disc = |mass: Mass, count: u16, diameter: f64, thickness: f64| -> Result<Disc, Error> {
        Disc::new(mass, count)?.with_diameter(mm(diameter)?)?.with_thickness(mm(thickness)?)
    };
    let stock = Stock::new(vec![
        disc(kg(20.0)?, 2, 450.0, 54.0)?,
        disc(kg(10.0)?, 4, 450.0, 33.0)?,
        disc(kg(5.0)?, 2, 230.0, 26.0)?,
        disc(Mass::from_lb(5.0)?, 2, 200.0, 20.0)?,
        disc(kg(1.25)?, 2, 160.0, 12.0)?,
        disc(kg(0.5)?, 2, 130.0, 10.0)?,
        disc(kg(0.25)?, 2, 110.0, 8.0)?,
    ])?;
    Ok((vec![bar("bar 20", 20.0)?, bar("bar 15", 15.0)?], stock))
}

fn rung(id: &str, harder_than: &[&str]) -> Result<Rung, Error> {
    Ok(Rung::new(name(id)?, harder_than.iter().map(|id| name(id)).collect::<Result<_, _>>()?))
}

fn lift(kind: &Kind, id: &str) -> Result<LiftParameters, Error> {
    let criterion = |(text, critical): &(&str, bool)| {
        if *critical { Criterion::critical(text) } else { Criterion::ordinary(text) }
    };
    let run = Requirement::PassRun(PassRun::new(9, 10, kind.sessions)?);
    let from_the_floor = !kind.heights.is_empty();
    Ok(LiftParameters::new(
        name(id)?,
        kind.body,
        name(kind.implement)?,
        Grant::new(Work::new(3, 5, kg(kind.load)?)),
        Gate::new(Requirement::All(vec![run, Requirement::NoOpenBlock]))?,
    )
    .with_regions(kind.regions.iter().map(|id| name(id)).collect::<Result<_, _>>()?)
    .with_rungs(kind.rungs.iter().map(|(id, below)| rung(id, below)).collect::<Result<_, _>>()?)
    .with_starts_from(if from_the_floor { StartsFrom::Floor } else { StartsFrom::Rack })
    .with_ranges(kind.heights.iter().map(|height| mm(*height)).collect::<Result<_, _>>()?)
    // From the floor the way down comes first; the load moves once the bar lies there.
    .with_moving(if from_the_floor { Dimension::Range } else { Dimension::Load })
    .with_criteria(kind.criteria.iter().map(criterion).collect::<Result<_, _>>()?)
    .with_step(StepPolicy::SmallestLoadable)
    .with_step_cap(if kind.body == Body::Upper { 0.05 } else { 0.06 })
    .with_over_the_body(kind.over_the_body))
}

/// The parameters of the scenario with so many lifts.
pub fn parameters(lifts: u32) -> Result<Parameters, Error> {
    let (implements, stock) = equipment()?;
    let lifts = (0..lifts.clamp(1, 16) as usize)
        .map(|at| match at / KINDS.len() {
            0 => lift(kind(at), kind(at).id),
            round => lift(kind(at), &format!("{} {}", kind(at).id, round + 1)),
        })
        .collect::<Result<Vec<_>, _>>()?;
    let pair = Pair::new(name(FRONT_SQUAT)?, name(BOX_SQUAT)?);
    let loaded = |region: &Region| lifts.iter().any(|lift| lift.regions.contains(&region.id));
    let regions = regions()?.into_iter().filter(loaded).collect();
    let pairs = if lifts.len() >= 2 { vec![pair] } else { Vec::new() };
    let blocks = vec![mm(50.0)?, mm(100.0)?];
    Ok(Parameters::new(regions, lifts, implements, stock).with_pairs(pairs).with_blocks(blocks))
}

fn regions() -> Result<Vec<Region>, Error> {
    let mut regions =
        ["knee", "back", "shoulder", "elbow", "hip"].map(|id| name(id).map(Region::new)).into_iter();
    let mut regions = regions.by_ref().collect::<Result<Vec<_>, _>>()?;
    for region in regions.iter_mut().filter(|region| region.id.as_str() == "back") {
        region.name = Some(name("lower back")?);
    }
    Ok(regions)
}

/// A plan of these lifts.
fn planned<'a>(lifts: impl Iterator<Item = (usize, &'a LiftParameters)>) -> Result<Plan, Error> {
    let planned = |(at, lift): (usize, &LiftParameters)| {
        let reference = kind(at).reference.map(kg).transpose()?;
        let (lift, reserve) = (lift.id.clone(), Some(Rir::whole(3)));
        Ok(LiftPlan::new(lift).with_reserve(reserve).with_reference(reference))
    };
    Ok(Plan::of([]).with_lifts(lifts.map(planned).collect::<Result<_, Error>>()?))
}

/// A plan of every lift.
pub fn plan(parameters: &Parameters) -> Result<Plan, Error> {
    planned(parameters.lifts.iter().enumerate())
}

/// The plan of one of the two training days of a week.
pub fn plan_of_day(parameters: &Parameters, session: usize) -> Result<Plan, Error> {
    planned(parameters.lifts.iter().enumerate().filter(|(at, _)| kind(*at).days.include(session)))
}
