//! The small world: two lifts of a pair, a few pieces to lift, short windows.

use std::vec;

use super::super::lift::Lift;
use super::super::state::State;
use crate::gate::{Criterion, Gate, PassRules, PassRun, Requirement};
use crate::loading::{Bar, Disc, Implement, Pieces, Stock};
use crate::quantity::{Day, Length, Mass, Name};
use crate::record::*;

pub(super) const STRICT: &str = "strict";
pub(super) const FORGIVING: &str = "forgiving";
pub(super) const LIFTS: [&str; 2] = [STRICT, FORGIVING];

/// Today, always: waiting moves everything else into the past instead.
pub(super) fn today() -> Day {
    Day::from_number(20_000).unwrap()
}

pub(super) fn name(text: &str) -> Name {
    Name::new(text).unwrap()
}

pub(super) fn kg(value: f64) -> Mass {
    Mass::from_kg(value).unwrap()
}

/// The lift of that id, where the parameters in force have it.
pub(super) fn find<'a>(state: &'a State, id: &str) -> Option<&'a Lift> {
    state.lifts.iter().find(|lift| lift.set.id.as_str() == id)
}

fn lift(label: &str, load: f64, ceiling: f64) -> LiftParameters {
    LiftParameters {
        id: name(label),
        name: None,
        body: Body::Lower,
        regions: vec![name("hip")],
        implement: name("bells"),
        rungs: vec![Rung::new(name("easy"), vec![]), Rung::new(name("full"), vec![name("easy")])],
        starts_from: StartsFrom::Rack,
        ranges: vec![Length::from_mm(300.0).unwrap(), Length::from_mm(400.0).unwrap()],
        tempos: vec![],
        start: Grant { place: Place { rung: 1, range: 1, tempo: 0 }, work: Work::new(1, 3, kg(load)) },
        moving: Dimension::Load,
        criteria: vec![Criterion::critical("brace").unwrap()],
        pass: PassRules::default(),
        gate: Gate::new(Requirement::PassRun(PassRun::new(3, 3, 2).unwrap().with_neutral_fails(1).unwrap()))
            .unwrap(),
        step: Some(StepPolicy::SmallestLoadable),
        step_cap: Some(0.10),
        ceiling: Some(kg(ceiling)),
        reps_top: None,
        sets_top: None,
        learning_sessions: Some(1),
        over_the_body: true,
    }
}

/// What the coach may set instead: the same, the strict lift left out, both lifts on another region, another kind of
/// implement for the strict one.
pub(super) const SETS: usize = 4;

/// One of the sets of parameters of this world.
pub(super) fn parameters_of(set: usize) -> Parameters {
    let mut all = parameters();
    match set {
        1 => {
            all.lifts.remove(0);
            all.pairs.clear();
        }
        2 => all.lifts.iter_mut().for_each(|lift| lift.regions = vec![name("back")]),
        3 => all.lifts[0].implement = name("bar"),
        _ => {}
    }
    all
}

pub(super) fn parameters() -> Parameters {
    let row = |from_days, load_left, easier_rung| LayoffRow {
        from_days,
        load_left,
        easier_rung,
        relearn: false,
        restart: false,
    };
    Parameters {
        regions: ["hip", "back", "neck"].map(|id| Region::new(name(id))).to_vec(),
        lifts: vec![lift("strict", 20.0, 22.0), lift("forgiving", 20.0, 24.0)],
        pairs: vec![Pair { strict: name("strict"), forgiving: name("forgiving"), ratio_cap: 1.0 }],
        implements: vec![
            Implement::Pieces(
                Pieces::new(name("bells"), [18.0, 20.0, 22.0, 24.0, 30.0].map(kg).to_vec()).unwrap(),
            ),
            Implement::Bar(Bar::new(name("bar"), kg(18.0), Mass::ZERO).unwrap()),
        ],
        stock: Stock::new(vec![Disc::new(kg(1.0), 6).unwrap()]).unwrap(),
        blocks: vec![],
        policy: Policy {
            cooling_off_days: 3,
            region_window_days: 2,
            window_days: 4,
            freshness_days: 3,
            offer_days: 4,
            learning_sessions: 1,
            clear_sessions: 1,
            return_passes: 1,
            neutral_fails: 1,
            proof_days: 4,
            clearance_days: 4,
            usual_review_days: 4,
            layoff: vec![row(4, 1.0, false), row(6, 0.9, true)],
            ..Policy::default()
        },
    }
}
