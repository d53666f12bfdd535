//! Sessions of the small world: done as prescribed that day, but for one thing.

use std::vec;
use std::vec::Vec;

use super::super::layoff::returned;
use super::super::state::State;
use super::super::view::View;
use super::world::{kg, mm, name};
use crate::gate::{Mark, Rater, SetMarks};
use crate::quantity::{Day, Mass, Reps, Rir};
use crate::record::*;

/// In what a session is not what was prescribed, all well.
#[derive(Clone, Copy, PartialEq)]
pub(super) enum Quality {
    Clean,
    Fails,
    Misses,
    Unscored,
    LosesCritical,
    Alone,
    EasierRung,
    OtherTempo,
    OtherRange,
    PlaceUnsaid,
    LessRange,
    Lighter,
    OneSet,
    FewerReps,
    Belt,
    NoBelt,
    NoReserve,
}

/// A session of these lifts.
pub(super) fn session(
    (state, on): (&State, Day),
    lifts: &[&str],
    quality: Quality,
    pain: Option<Vec<PainAnswer>>,
) -> EventKind {
    let lifts = lifts.iter().map(|id| done(state, on, id, quality)).collect();
    EventKind::SessionRecorded(Session { lifts, pain, minutes: None, effort: None })
}

fn done(state: &State, on: Day, id: &str, quality: Quality) -> LiftSession {
    let (Grant { place, work }, lighter) = prescribed(state, on, id);
    let load = if quality == Quality::Lighter { lighter } else { work.load };
    let sets = if quality == Quality::OneSet { 1 } else { work.sets };
    let there = match quality {
        Quality::EasierRung => Place { rung: 0, ..place },
        Quality::OtherTempo => Place { tempo: 1 - place.tempo, ..place },
        Quality::OtherRange => Place { range: 1 - place.range, ..place },
        _ => place,
    };
    let company = Some(if quality == Quality::Alone { ByTheBar::Alone } else { ByTheBar::Others });
    let kit = match quality {
        Quality::Belt => Some(vec![name("belt")]),
        Quality::NoBelt => Some(vec![]),
        _ => None,
    };
    LiftSession {
        place: (quality != Quality::PlaceUnsaid).then_some(there),
        reached: (quality == Quality::LessRange).then(|| mm(200.0)),
        setup: Some(Setup { company, kit, pins: None }),
        ..LiftSession::as_granted(name(id), vec![set(load, work.reps, quality); usize::from(sets)])
    }
}

fn set(load: Mass, reps: u8, quality: Quality) -> WorkSet {
    let reps = u16::from(if quality == Quality::FewerReps { reps - 1 } else { reps });
    let acceptable = if quality == Quality::Fails { 1 } else { reps };
    let brace = if quality == Quality::LosesCritical { Mark::NotMet } else { Mark::Met };
    let mut marks = SetMarks::scored(reps, acceptable, Rater::Coach);
    marks.first_failing_rep = (quality == Quality::Fails).then_some(2);
    let marks = (quality != Quality::Unscored).then(|| marks.with("brace", brace).unwrap());
    let effort = Some(Effort::Rir(Rir::whole(if quality == Quality::NoReserve { 0 } else { 3 })));
    let failed = quality == Quality::Misses;
    WorkSet { effort, failed, marks, ..WorkSet::done(load, Reps::whole(reps).unwrap()) }
}

/// What the lift is told to do that day, and the next lighter load there. A lift that is not there is told nothing, and
/// its session is turned away.
fn prescribed(state: &State, on: Day, id: &str) -> (Grant, Mass) {
    let Ok(view) = state.view(&name(id), on) else {
        return (Grant { place: Place::default(), work: Work::new(1, 3, kg(20.0)) }, kg(20.0));
    };
    let back = returned(&view).map(|now| view.lift.standing(now));
    let view = View { lift: back.as_ref().unwrap_or(view.lift), ..view };
    let (place, work, loads) = (view.place(), view.lift.now.grant.work, view.lift.loadable.at(view.place()));
    let load = loads.rounded_down(view.limit());
    let sets = if view.lift.now.half_sessions > 0 { work.sets.div_ceil(2) } else { work.sets };
    (Grant { place, work: Work { sets, load, ..work } }, loads.below(load).unwrap_or(load))
}
