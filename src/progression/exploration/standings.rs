//! The states of the transition table, each with what belongs to it.

use std::vec;

use super::super::sitting::Sitting;
use super::super::state::State;
use super::super::status::{Calibration, Purpose, Status, Stop, WayBack};
use super::acts::Act;
use super::play::Point;
use super::world::{FORGIVING, STRICT, any_day, find, kg, name};
use crate::gate::Outcome;
use crate::quantity::Day;

/// One of each.
pub(in super::super) fn statuses() -> [Status; 10] {
    let way = WayBack::new(kg(20.0), 2, 6);
    [
        Status::Learning,
        Status::Holding,
        Status::ReadyToAdvance { since: any_day() },
        Status::Consolidating,
        Status::SteppingBack { from: None, passes: 0 },
        Status::Resting { way: None },
        Status::Returning { way, passes: 0 },
        Status::Maintaining,
        Status::StoppedRefer { way: None },
        Status::Retired,
    ]
}

/// The world with the strict lift in that state, one fail behind it, pain answered and a clearance in force.
pub(in super::super) fn world_at(status: &Status) -> Point {
    let before = [
        Act::Cleared,
        Act::DayWithin,
        Act::BothClean,
        Act::Morning,
        Act::WaitThree,
        Act::WaitThree,
        Act::Cleared,
        Act::ForgivingClean,
        Act::WaitOne,
        Act::Morning,
        Act::WaitOne,
        Act::DayWithin,
    ];
    let mut point = before.iter().fold(Point::first(None), |point, act| point.after(*act).unwrap());
    let today = point.on;
    let ago = |days: i32| today.plus(-days).unwrap();
    let state = &mut point.state;
    for region in state.shared.regions.iter_mut().filter(|region| region.id.as_str() == "hip") {
        region.loaded = Some(ago(2));
    }
    // The forgiving lift is far enough ahead for a step of the strict one.
    let forgiving = &mut state.lift_mut(&name(FORGIVING)).unwrap().now;
    forgiving.grant = forgiving.grant.with_load(kg(22.0));
    forgiving.proven = Some((today, kg(22.0)));
    let status = match status {
        Status::ReadyToAdvance { .. } => Status::ReadyToAdvance { since: ago(2) },
        other => other.clone(),
    };
    let now = &mut state.lift_mut(&name(STRICT)).unwrap().now;
    now.grant = now.grant.on_rung(1).with_load(kg(20.0));
    now.enter(status.clone(), today);
    now.last_session = Some(ago(2));
    now.missed = 0;
    now.fails = u8::from(!status.is_ready());
    now.half_sessions = 0;
    now.calibration = Calibration { done: 1, needed: 1 };
    match status {
        Status::Learning => now.calibration = Calibration { done: 0, needed: 1 },
        Status::ReadyToAdvance { .. } => now.sittings = [3, 2].map(|days| confirmed_pass(ago(days))).into(),
        Status::Maintaining => now.purpose = Purpose::Maintain { not_below: None },
        Status::Resting { .. } => now.purpose = Purpose::Rest,
        Status::Retired => now.purpose = Purpose::Retire,
        Status::StoppedRefer { .. } => stop(state, today),
        _ => {}
    }
    point
}

/// The next sign-off is all that is missing.
fn stop(state: &mut State, today: Day) {
    let stop = Stop::new(today, 1, vec![crate::sign::StopSign::Faint]);
    state.shared.stop = Some(Stop { cleared: true, ..stop });
    let forgiving = &mut state.lift_mut(&name(FORGIVING)).unwrap().now;
    forgiving.enter(Status::StoppedRefer { way: None }, today);
}

fn confirmed_pass(day: Day) -> Sitting {
    Sitting {
        session: 1,
        day,
        outcome: Outcome::Pass,
        critical: false,
        below_usual: false,
        at_grant: true,
        asked_first: false,
        confirmed: true,
        short_of_reserve: false,
        effort_unsaid: false,
        other_rater: false,
        miss_unplaced: false,
        scored: 6,
        acceptable: 6,
    }
}

/// State of the strict lift; that it was set aside where it was left out.
pub(in super::super) fn settled(state: &State) -> &'static str {
    find(state, STRICT).map_or("set aside", |lift| lift.now.status.as_str())
}
