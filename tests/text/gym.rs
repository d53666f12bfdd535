//! An invented gym, lifter and session, for what the sentences are made of.

use bismar::gate::{Criterion, Gate, GateState, PassRules, PassRun, Requirement};
use bismar::loading::{Bar, Disc, Implement, MachineStack, Pieces, Stock};
use bismar::prescription::{LiftToday, SessionPlan, Verdict};
use bismar::progression::{MoveOutlook, Status};
use bismar::quantity::{Day, Length, Mass, Name, Rir};
use bismar::record::*;

pub fn kg(value: f64) -> Mass {
    Mass::from_kg(value).unwrap()
}

pub fn lb(value: f64) -> Mass {
    Mass::from_lb(value).unwrap()
}

pub fn mm(value: f64) -> Length {
    Length::from_mm(value).unwrap()
}

pub fn name(text: &str) -> Name {
    Name::new(text).unwrap()
}

/// 27 August 2026, a Thursday.
pub fn day() -> Day {
    "2026-08-27".parse().unwrap()
}

pub const DAY: &str = "27 aug 2026";

fn rung(id: &str, people: &str, harder_than: &[&str]) -> Rung {
    let below = harder_than.iter().map(|id| name(id)).collect();
    Rung { name: Some(name(people)), ..Rung::new(name(id), below) }
}

fn lift(id: &str, people: &str, implement: &str) -> LiftParameters {
    LiftParameters {
        id: name(id),
        name: Some(name(people)),
        body: Body::Lower,
        regions: vec![name("knee-l")],
        implement: name(implement),
        rungs: vec![rung("r0", "high box", &[]), rung("r1", "lower box", &["r0"])],
        starts_from: StartsFrom::Rack,
        ranges: Vec::new(),
        tempos: Vec::new(),
        start: Grant { place: Place::default(), work: Work::new(3, 5, kg(60.0)) },
        moving: Dimension::Load,
        criteria: vec![Criterion::critical("brace held").unwrap()],
        pass: PassRules::default(),
        gate: Gate::new(Requirement::PassRun(PassRun::new(9, 10, 2).unwrap())).unwrap(),
        step: None,
        step_cap: None,
        ceiling: None,
        reps_top: None,
        sets_top: None,
        learning_sessions: None,
        over_the_body: false,
    }
}

/// A squat of two rungs with ranges and tempos, a pull from the floor, a press with dumbbells and a helped pull-up.
pub fn parameters() -> Parameters {
    let region = |id: &str, people: &str| Region { id: name(id), name: Some(name(people)) };
    let tempo = |down, hold, up| Tempo { down, hold, up };
    let stack = MachineStack::new(name("help"), Mass::ZERO, vec![kg(5.0); 10], Vec::new(), 1.0).unwrap();
    Parameters {
        regions: vec![region("knee-l", "left knee"), region("back-l", "lower back")],
        lifts: vec![
            LiftParameters {
                ranges: vec![mm(450.0), mm(350.0)],
                tempos: vec![tempo(3, 1, 1), tempo(4, 0, 1)],
                ..lift("sq", "Back squat", "bar")
            },
            LiftParameters {
                starts_from: StartsFrom::Floor,
                ranges: vec![mm(300.0), mm(225.0)],
                ..lift("dl", "Deadlift", "bar")
            },
            lift("dp", "Dumbbell press", "bells"),
            LiftParameters { rungs: vec![rung("r0", "Pull-up", &[])], ..lift("pu", "Pull-up", "help") },
        ],
        pairs: vec![Pair { strict: name("sq"), forgiving: name("dl"), ratio_cap: 1.0 }],
        implements: vec![
            Implement::Bar(Bar::new(name("bar"), kg(20.0), Mass::ZERO).unwrap()),
            Implement::Pieces(Pieces::new(name("bells"), vec![kg(10.0), kg(12.0)]).unwrap()),
            Implement::Assistance(stack),
        ],
        stock: discs(&[kg(20.0), kg(5.0), kg(1.25)]),
        blocks: Vec::new(),
        policy: Policy::default(),
    }
}

pub fn discs(faces: &[Mass]) -> Stock {
    Stock::new(faces.iter().map(|face| Disc::new(*face, 4).unwrap()).collect()).unwrap()
}

pub fn grant(rung: u8, load: Mass) -> Grant {
    Grant { place: Place::at_rung(rung), work: Work::new(3, 5, load) }
}

/// A lift of today at 60 kg on its first place, a step of 2.5 kg on offer.
pub fn today(id: &str, verdict: Verdict) -> LiftToday {
    LiftToday {
        lift: name(id),
        verdict,
        status: Status::ReadyToAdvance { since: day() },
        granted: grant(0, kg(60.0)),
        limit: kg(60.0),
        place: Place::default(),
        height: None,
        load: Some(kg(60.0)),
        loaded: None,
        blocks: None,
        sets: 3,
        reps: 5,
        reserve: Rir::whole(3),
        warm_up: Vec::new(),
        reasons: Vec::new(),
        outlook: MoveOutlook::OnOffer { to: grant(0, kg(62.5)) },
        gate: GateState::default(),
        would_change: Vec::new(),
        evidence: Vec::new(),
        cautions: Vec::new(),
    }
}

pub fn session(lifts: Vec<LiftToday>) -> SessionPlan {
    SessionPlan {
        stops: Vec::new(),
        today: day(),
        day: bismar::condition::DayClass::Within,
        lifts,
        cautions: Vec::new(),
        version: String::new(),
        parameters: String::new(),
    }
}
