//! An invented gym, lifter and session, for what the sentences are made of.

use std::sync::LazyLock;

use bismar::gate::{Criterion, Gate, GateState, PassRun, Requirement};
use bismar::loading::{Bar, Disc, Implement, Loaded, MachineStack, Pieces, Setting, Stock};
use bismar::prescription::{LiftToday, SessionPlan, Verdict, next_session};
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
    Rung::new(name(id), below).with_name(name(people))
}

fn lift(id: &str, people: &str, implement: &str) -> LiftParameters {
    LiftParameters::new(
        name(id),
        Body::Lower,
        name(implement),
        Grant::new(Work::new(3, 5, kg(60.0))),
        Gate::new(Requirement::PassRun(PassRun::new(9, 10, 2).unwrap())).unwrap(),
    )
    .with_name(name(people))
    .with_regions(vec![name("knee-l")])
    .with_rungs(vec![rung("r0", "high box", &[]), rung("r1", "lower box", &["r0"])])
    .with_criteria(vec![Criterion::critical("brace held").unwrap()])
}

/// A squat of two rungs with ranges and tempos, a pull from the floor, a press with dumbbells and a helped pull-up.
pub fn parameters() -> Parameters {
    let region = |id: &str, people: &str| Region::new(name(id)).with_name(name(people));
    let tempo = |down, hold, up| Tempo::new(down, hold, up);
    let stack = MachineStack::new(name("help"), Mass::ZERO, vec![kg(5.0); 10], Vec::new(), 1.0).unwrap();
    Parameters::new(
        vec![region("knee-l", "left knee"), region("back-l", "lower back")],
        vec![
            lift("sq", "Back squat", "bar")
                .with_ranges(vec![mm(450.0), mm(350.0)])
                .with_tempos(vec![tempo(3, 1, 1), tempo(4, 0, 1)]),
            lift("dl", "Deadlift", "bar")
                .with_starts_from(StartsFrom::Floor)
                .with_ranges(vec![mm(300.0), mm(225.0)]),
            lift("dp", "Dumbbell press", "bells"),
            lift("pu", "Pull-up", "help").with_rungs(vec![rung("r0", "Pull-up", &[])]),
        ],
        vec![
            Implement::Bar(Bar::new(name("bar"), kg(20.0), Mass::ZERO).unwrap()),
            Implement::Pieces(Pieces::new(name("bells"), vec![kg(10.0), kg(12.0)]).unwrap()),
            Implement::Assistance(stack),
        ],
        discs(&[kg(20.0), kg(5.0), kg(1.25)]),
    )
    .with_pairs(vec![Pair::new(name("sq"), name("dl"))])
}

pub fn discs(faces: &[Mass]) -> Stock {
    Stock::new(faces.iter().map(|face| Disc::new(*face, 4).unwrap()).collect()).unwrap()
}

pub fn grant(rung: u8, load: Mass) -> Grant {
    Grant::new(Work::new(3, 5, load)).with_place(Place::at_rung(rung))
}

/// A lift of today at 60 kg on its first place, a step of 2.5 kg on offer.
pub fn today(id: &str, verdict: Verdict) -> LiftToday {
    let mut lift = DEMO.lifts[0].clone();
    (lift.lift, lift.verdict, lift.status) = (name(id), verdict, Status::ReadyToAdvance { since: day() });
    (lift.granted, lift.limit, lift.place) = (grant(0, kg(60.0)), kg(60.0), Place::default());
    (lift.height, lift.load, lift.loaded, lift.blocks) = (None, Some(kg(60.0)), None, None);
    (lift.sets, lift.reps, lift.reserve) = (3, 5, Rir::whole(3));
    (lift.warm_up, lift.reasons) = (Vec::new(), Vec::new());
    lift.outlook = MoveOutlook::OnOffer { to: grant(0, kg(62.5)) };
    (lift.gate, lift.would_change) = (GateState::default(), Vec::new());
    (lift.evidence, lift.cautions) = (Vec::new(), Vec::new());
    lift
}

/// That lift with something changed.
pub fn changed(mut lift: LiftToday, change: impl FnOnce(&mut LiftToday)) -> LiftToday {
    change(&mut lift);
    lift
}

/// A day of the demo log. Only the library makes answers, so a test takes one and says what is different.
static DEMO: LazyLock<SessionPlan> = LazyLock::new(|| {
    let log = Log::from_json(include_str!("../../examples/data/demo-log.json")).unwrap();
    let plan = Plan::from_json(include_str!("../../examples/data/demo-plan.json")).unwrap();
    next_session(&log, &plan, "2026-08-27".parse().unwrap()).unwrap()
});

/// What a bar is loaded with in the demo log.
pub fn loaded_today() -> Loaded {
    let bar = |loaded: &Loaded| matches!(&loaded.setting, Setting::Discs(side) if !side.is_empty());
    DEMO.lifts.iter().filter_map(|lift| lift.loaded.clone()).find(bar).unwrap()
}

pub fn session(lifts: Vec<LiftToday>) -> SessionPlan {
    let mut plan = DEMO.clone();
    (plan.stops, plan.lifts, plan.cautions) = (Vec::new(), lifts, Vec::new());
    (plan.today, plan.day) = (day(), bismar::condition::DayClass::Within);
    (plan.version, plan.parameters) = (String::new(), String::new());
    plan
}
