//! The small world: two lifts, a few loads, short windows, and what the coach may set instead.

use std::sync::OnceLock;
use std::vec;
use std::vec::Vec;

use super::super::lift::Lift;
use super::super::state::State;
use crate::gate::{Criterion, Gate, PassRules, PassRun, Requirement};
use crate::loading::{Bar, Disc, Implement, Pieces, Stock};
use crate::quantity::{Day, Length, Mass, Name};
use crate::record::*;

pub(super) const STRICT: &str = "strict";
pub(super) const FORGIVING: &str = "forgiving";
pub(super) const LIFTS: [&str; 2] = [STRICT, FORGIVING];
/// No lift ever loads the last.
pub(super) const REGIONS: [&str; 3] = ["hip", "back", "neck"];
/// Pieces of equipment, in kg.
const PIECES: [f64; 6] = [16.0, 19.0, 20.0, 22.0, 24.0, 30.0];

/// Days of the windows of this world, each as short as its rule can be told apart from the others.
pub(super) const COOLING_OFF: i32 = 3;
pub(super) const REGION_WINDOW: i32 = 2;
pub(super) const GROWTH_WINDOW: i32 = 7;
pub(super) const FRESH: i32 = 3;
pub(super) const PROOF: i32 = 4;
pub(super) const REVIEW: i32 = 4;
pub(super) const CLEARANCE: i32 = 4;
/// From the first row on a break counts.
pub(super) const BREAK: i32 = 4;
const LONG_BREAK: i32 = 6;
/// Growth allowed at a step, and over the window.
pub(super) const STEP_CAP: f64 = 0.10;
pub(super) const WINDOW_CAP: f64 = 0.18;
/// Part of the load with which a harder rung begins.
pub(super) const RUNG_PART: f64 = 0.80;
/// Clear training days after pain of 3 or more.
pub(super) const CLEAR_SESSIONS: u8 = 2;
/// The highest load that the limited clearance of this world allows.
pub(super) const LIMIT: f64 = 20.0;

/// The day on which every state is kept. Only days between one thing and another count.
pub(super) fn any_day() -> Day {
    Day::from_number(20_000).unwrap()
}

pub(super) fn name(text: &str) -> Name {
    Name::new(text).unwrap()
}

pub(super) fn kg(value: f64) -> Mass {
    Mass::from_kg(value).unwrap()
}

pub(super) fn mm(value: f64) -> Length {
    Length::from_mm(value).unwrap()
}

/// The lift of that id, where the parameters in force have it.
pub(super) fn find<'a>(state: &'a State, id: &str) -> Option<&'a Lift> {
    state.lifts.iter().find(|lift| lift.set.id.as_str() == id)
}

fn run(sessions: u8, restarts: bool) -> Requirement {
    let run = PassRun::new(3, 3, sessions).unwrap().with_neutral_fails(1).unwrap();
    Requirement::PassRun(run.restarted_by_another_rater(restarts))
}

fn lift(id: &str, restarts: bool) -> LiftParameters {
    let above_easy = |id| Rung::new(name(id), vec![name("easy")]);
    LiftParameters {
        id: name(id),
        name: None,
        body: Body::Lower,
        regions: vec![name("hip")],
        implement: name("bells"),
        rungs: vec![Rung::new(name("easy"), vec![]), above_easy("full"), above_easy("beside")],
        starts_from: StartsFrom::Rack,
        ranges: vec![mm(300.0), mm(400.0)],
        tempos: vec![Tempo { down: 2, hold: 0, up: 1 }, Tempo { down: 3, hold: 1, up: 1 }],
        start: Grant { place: Place { rung: 1, range: 1, tempo: 0 }, work: Work::new(2, 3, kg(20.0)) },
        moving: Dimension::Load,
        criteria: vec![Criterion::critical("brace").unwrap()],
        pass: PassRules::default(),
        gate: Gate::new(run(2, restarts)).unwrap(),
        step: Some(StepPolicy::SmallestLoadable),
        step_cap: Some(STEP_CAP),
        ceiling: Some(kg(24.0)),
        reps_top: Some(4),
        sets_top: None,
        learning_sessions: Some(1),
        over_the_body: true,
    }
}

fn first() -> Parameters {
    let row = |from_days: i32, load_left, easier_rung, relearn| LayoffRow {
        from_days: from_days as u16,
        load_left,
        easier_rung,
        relearn,
        restart: false,
    };
    Parameters {
        regions: REGIONS.map(|id| Region::new(name(id))).to_vec(),
        lifts: vec![lift(STRICT, true), lift(FORGIVING, false)],
        pairs: vec![Pair { strict: name(STRICT), forgiving: name(FORGIVING), ratio_cap: 1.0 }],
        implements: vec![
            Implement::Pieces(Pieces::new(name("bells"), PIECES.map(kg).to_vec()).unwrap()),
            Implement::Bar(Bar::new(name("bar"), kg(16.0), Mass::ZERO).unwrap()),
        ],
        stock: Stock::new(vec![Disc::new(kg(1.0), 8).unwrap()]).unwrap(),
        blocks: vec![],
        policy: Policy {
            cooling_off_days: COOLING_OFF as u16,
            region_window_days: REGION_WINDOW as u16,
            window_days: GROWTH_WINDOW as u16,
            window_cap: WINDOW_CAP,
            freshness_days: FRESH as u16,
            offer_days: 4,
            learning_sessions: 1,
            clear_sessions: CLEAR_SESSIONS,
            neutral_fails: 1,
            proof_days: PROOF as u16,
            clearance_days: CLEARANCE as u16,
            usual_review_days: REVIEW as u16,
            rung_load: RUNG_PART,
            layoff: vec![row(BREAK, 1.0, false, false), row(LONG_BREAK, 0.9, true, true)],
            ..Policy::default()
        },
    }
}

/// What the coach may set, by its place in the list of sets.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(in super::super) enum Set {
    First,
    StrictLeftOut,
    OtherRegion,
    OtherImplement,
    Apart,
    NoPair,
    LowCeiling,
    ByTempo,
    ByRung,
    ByReps,
    OtherGate,
    Automatic,
}

impl Set {
    pub(super) const ALL: [Set; 12] = [
        Set::First,
        Set::StrictLeftOut,
        Set::OtherRegion,
        Set::OtherImplement,
        Set::Apart,
        Set::NoPair,
        Set::LowCeiling,
        Set::ByTempo,
        Set::ByRung,
        Set::ByReps,
        Set::OtherGate,
        Set::Automatic,
    ];

    fn made(self) -> Parameters {
        let mut all = first();
        match self {
            Set::First => {}
            Set::StrictLeftOut => {
                all.lifts.remove(0);
                all.pairs.clear();
            }
            Set::OtherRegion => all.lifts.iter_mut().for_each(|lift| lift.regions = vec![name("back")]),
            Set::OtherImplement => all.lifts[0].implement = name("bar"),
            Set::Apart => all.lifts[0].regions = vec![name("back")],
            Set::NoPair => all.pairs.clear(),
            Set::LowCeiling => all.lifts.iter_mut().for_each(|lift| lift.ceiling = Some(kg(20.0))),
            Set::ByTempo => all.lifts[0].moving = Dimension::Tempo,
            Set::ByRung => all.lifts[0].moving = Dimension::Variant,
            Set::ByReps => all.lifts[0].moving = Dimension::Reps,
            Set::OtherGate => {
                let both = Requirement::All(vec![run(3, true), Requirement::SignOff]);
                all.lifts[0].gate = Gate::new(both).unwrap();
            }
            Set::Automatic => all.policy.automatic_acceptance = true,
        }
        all
    }

    /// The whole set of parameters, made once.
    pub(super) fn parameters(self) -> &'static Parameters {
        static MADE: OnceLock<Vec<Parameters>> = OnceLock::new();
        &MADE.get_or_init(|| Set::ALL.into_iter().map(Set::made).collect())[self as usize]
    }

    /// The set that has this digest.
    pub(super) fn with_digest(digest: &str) -> Set {
        static DIGESTS: OnceLock<Vec<std::string::String>> = OnceLock::new();
        let made = || {
            let all: Vec<_> =
                Set::ALL.iter().map(|set| super::super::digest::digest(set.parameters())).collect();
            let once = all.iter().enumerate().all(|(at, one)| !all[..at].contains(one));
            assert!(once, "two sets of parameters with one digest");
            all
        };
        let at = DIGESTS.get_or_init(made).iter().position(|known| known == digest).unwrap();
        Set::ALL[at]
    }

    /// The first set in which the lift is set as here.
    pub(super) fn with_lift(lift: &LiftParameters) -> Set {
        let same = |set: &Set| set.parameters().lifts.contains(lift);
        Set::ALL.into_iter().find(same).unwrap()
    }

    /// What the lift is set to.
    pub(super) fn lift(self, id: &str) -> Option<&'static LiftParameters> {
        self.parameters().lifts.iter().find(|lift| lift.id.as_str() == id)
    }

    /// Whether the two lifts belong together.
    pub(super) fn pairs(self) -> bool {
        !self.parameters().pairs.is_empty()
    }
}

/// Loads that the lift can have, rising.
pub(super) fn loads_of(lift: &LiftParameters) -> &'static [f64] {
    if lift.implement.as_str() == "bar" { &[16.0, 18.0, 20.0, 22.0, 24.0] } else { &PIECES }
}
