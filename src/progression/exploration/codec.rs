//! Canonical bytes of a state of the small world, and back.

use std::boxed::Box;
use std::sync::Arc;
use std::vec::Vec;

use super::super::asks::OpenAsk;
use super::super::day_report::TodayReport;
use super::super::day_start::DayStart;
use super::super::held::Held;
use super::super::lift::{Lift, Now};
use super::super::region::RegionState;
use super::super::setup::SetupSeen;
use super::super::shared::{ClearanceInForce, Shared};
use super::super::sitting::{SITTINGS, Sitting};
use super::super::state::State;
use super::super::status::{Calibration, OverrideInForce, Purpose, Status, Stop, WayBack};
use super::bytes::{FAR, Kept, Read, Written, keep, keep_one_of};
use super::world::{COOLING_OFF, GROWTH_WINDOW, LIFTS, REGION_WINDOW, REVIEW, Set, any_day, name};
use crate::condition::DayClass;
use crate::gate::Outcome;
use crate::quantity::{Day, Mass};
use crate::reason::Shortfall;
use crate::record::{ClearanceLimits, ClearanceStatus, Grant, Layoff, LayoffReason, Place, Work};
use crate::sign::Ask;

keep_one_of!(Outcome: [Outcome::Pass, Outcome::Fail, Outcome::NotScored]);
keep_one_of!(DayClass: DayClass::ALL);
keep_one_of!(Ask: Ask::ALL);
keep_one_of!(ClearanceStatus: [
    ClearanceStatus::Cleared,
    ClearanceStatus::ClearedWithLimits,
    ClearanceStatus::NotCleared,
]);
keep_one_of!(Shortfall: [
    Shortfall::Rung,
    Shortfall::Range,
    Shortfall::Tempo,
    Shortfall::Load,
    Shortfall::Sets,
    Shortfall::Reps,
    Shortfall::Limit,
]);

keep!(Place { rung, range, tempo });
keep!(Work { sets, reps, load });
keep!(Grant { place, work });

keep!(WayBack { cap, row } cut |out| {
    no_restoring: *no_restoring && *row == 1,
} said {
    gap: 0,
    held: false,
    stepped_from: None,
    reopened: None,
    after_illness: false,
});

impl Kept for Status {
    fn put(&self, out: &mut Written) {
        out.all.push(Status::NAMES.iter().position(|known| *known == self.as_str()).unwrap() as u8);
        match self {
            Status::ReadyToAdvance { since } => since.put(out),
            Status::SteppingBack { from: _, passes } => (*passes).min(FEW).put(out),
            Status::Returning { way, passes } => (*way, (*passes).min(FEW)).put(out),
            Status::Resting { way } | Status::StoppedRefer { way } => way.put(out),
            Status::Learning
            | Status::Holding
            | Status::Consolidating
            | Status::Maintaining
            | Status::Retired => {}
        }
    }

    fn get(from: &mut Read<'_>) -> Status {
        match Status::NAMES[usize::from(from.byte())] {
            "learning" => Status::Learning,
            "holding" => Status::Holding,
            "ready_to_advance" => Status::ReadyToAdvance { since: Kept::get(from) },
            "consolidating" => Status::Consolidating,
            "stepping_back" => Status::SteppingBack { from: None, passes: Kept::get(from) },
            "resting" => Status::Resting { way: Kept::get(from) },
            "returning" => {
                let (way, passes) = Kept::get(from);
                Status::Returning { way, passes }
            }
            "maintaining" => Status::Maintaining,
            "stopped_refer" => Status::StoppedRefer { way: Kept::get(from) },
            _ => Status::Retired,
        }
    }
}

/// More passes in a row than any return or step back of this world asks for.
const FEW: u8 = 2;

impl Kept for Purpose {
    fn put(&self, out: &mut Written) {
        match self {
            Purpose::Train => out.all.push(0),
            Purpose::Rest => out.all.push(1),
            Purpose::Retire => out.all.push(2),
            Purpose::Maintain { not_below } => {
                out.all.push(3);
                not_below.put(out);
            }
        }
    }

    fn get(from: &mut Read<'_>) -> Purpose {
        match from.byte() {
            0 => Purpose::Train,
            1 => Purpose::Rest,
            2 => Purpose::Retire,
            _ => Purpose::Maintain { not_below: Kept::get(from) },
        }
    }
}

keep!(Held { load, stretch, goes_on, lifted, before, whole } cut |out| { days: (*days).min(FAR as u16) });
keep!(Calibration { needed } cut |out| { done: *done.min(needed) });
keep!(OverrideInForce { load, expires, eases } said { who: name("coach"), event: 1 });
keep!(SetupSeen { kit } said { height: None, changed: None, pins: None, pins_moved: None });

/// Repetitions that the gates of this world ask to be scored.
const SCORED: u16 = 3;

/// Number of a session that is not listed: its day is all that is looked at.
const UNTOLD: u32 = 1;

/// Number of the sessions of that day: two of one day are told apart by nothing.
fn number_of(day: Day) -> u32 {
    (FAR + 1 - any_day().since(day)).unsigned_abs()
}

impl Kept for Sitting {
    fn put(&self, out: &mut Written) {
        let Sitting {
            session: _,
            day,
            outcome,
            critical,
            below_usual,
            at_grant,
            confirmed,
            short_of_reserve,
            effort_unsaid,
            other_rater,
            miss_unplaced: _,
            asked_first,
            scored,
            acceptable,
        } = *self;
        // One repetition missed is as much as two, and one set scored as much as two.
        (day, outcome, scored.min(SCORED)).put(out);
        let missed = acceptable < scored;
        let flags = [
            critical,
            below_usual,
            at_grant,
            confirmed,
            short_of_reserve,
            effort_unsaid,
            other_rater,
            missed,
        ];
        out.all.push(flags.into_iter().fold(0, |bits, flag| 2 * bits + u8::from(flag)));
        out.all.push(u8::from(asked_first));
    }

    fn get(from: &mut Read<'_>) -> Sitting {
        let (day, outcome, scored): (Day, Outcome, u16) = Kept::get(from);
        let flags = from.byte();
        let flag = |at: u8| flags & 1 << at != 0;
        Sitting {
            session: number_of(day),
            day,
            outcome,
            critical: flag(7),
            below_usual: flag(6),
            at_grant: flag(5),
            confirmed: flag(4),
            short_of_reserve: flag(3),
            effort_unsaid: flag(2),
            other_rater: flag(1),
            miss_unplaced: false,
            asked_first: from.byte() != 0,
            scored,
            acceptable: scored - u16::from(flag(0)),
        }
    }
}

/// Sessions looked at one by one, whatever they came to.
const LAST: usize = 3;
/// Of earlier ones, those that a run may still count: as many as are remembered one by one.
const EARLIER: usize = SITTINGS - LAST;

/// The sessions that a rule may still look at.
fn that_count(sittings: &[Sitting]) -> Vec<Sitting> {
    let (earlier, last) = sittings.split_at(sittings.len().saturating_sub(LAST));
    let scored = earlier.iter().rev().filter(|sitting| sitting.outcome != Outcome::NotScored);
    let mut kept: Vec<Sitting> = scored.take(EARLIER).copied().collect();
    kept.reverse();
    kept.extend(last);
    kept
}

/// A day that counts only for so long.
fn within(day: Day, most: i32, out: &Written) -> Day {
    if out.ago(day) > most { out.on.plus(-most).unwrap() } else { day }
}

/// Today, or any day before it.
fn today_or_earlier(day: Day, out: &Written) -> Day {
    within(day, 1, out)
}

/// Since when the lift stands there is compared where it stands lower and has not been trained there: with the day of a
/// session of today.
fn stands_since(here: (u16, Day), status: &Status, out: &Written) -> (u16, Day) {
    let lowered = matches!(status, Status::SteppingBack { .. } | Status::Returning { .. });
    let day = if lowered && here.0 == 0 { here.1 } else { out.on };
    (here.0.min(1), today_or_earlier(day, out))
}

keep!(Now {
    status, grant, purpose, calibration, last_session, short, stepped, half_sessions, proven, overruled, signed_off,
    partner_pain, ill, held, unguarded, rack_said, nothing_easier, setup, other_rater, fault, former,
} cut |out| {
    since: if purpose.is_unused() { *since } else { out.on },
    fails: (*fails).min(FEW),
    neutral: (*neutral).min(FEW),
    here: stands_since(*here, status, out),
    here_on: here_on.filter(|day| *day == out.on),
    unanswered: unanswered.map(|(_, day)| (UNTOLD, day)),
    sittings: that_count(sittings),
    moves: moves.iter().filter(|(day, _)| out.ago(*day) < GROWTH_WINDOW).copied().collect::<Vec<_>>(),
    missed: (*missed).min(FAR as u16),
} said {
    earlier: (0, 0),
    half_after: None,
    peak: Mass::ZERO,
    weak: None,
    watched: None,
    closed_since: None,
    reserve: None,
    refused: None, override_refused: false,
    override_ended: None, other_implement: false, left: Vec::new(), begun_anew: false,
    override_past: None, restarted: None, below_band: None,
    last_place: None, moved: None,
    day_start: DayStart::default(),
});

keep!(Stop { cleared, signed } said {
    since: any_day(), told: 1, signs: Vec::new(), features: Vec::new(), refused: None,
});

keep!(RegionState { id, lifted, loaded, clear_needed, stop } cut |out| {
    last: last.map(|(day, score)| (today_or_earlier(day, out), score)),
    unclear: unclear.filter(|day| *day == out.on),
    cleared: cleared.filter(|day| *day == out.on),
    lowered: lowered.filter(|day| *day == out.on),
    scores: scores.iter().map(|(day, score)| (today_or_earlier(*day, out), *score)).collect::<Vec<_>>(),
    usual: usual.map(|(level, agreed, steady)| (level, within(agreed, REVIEW + 1, out), steady)),
    flares: (*flares).min(FEW),
    flared: *flared,
    moves: moves.iter().copied().filter(|day| out.ago(*day) < REGION_WINDOW).collect::<Vec<_>>(),
});

keep!(ClearanceLimits { region, load, range } said {
    effort: None, no_loaded_flexion: false, no_breath_hold: false,
});
keep!(ClearanceInForce { status, limits } cut |out| { expires: (*expires).max(out.on.plus(-1).unwrap()) } said {
    given: any_day(), told: 1,
});
keep!(OpenAsk { ask } said { since: any_day(), told: 1 });
keep!(TodayReport { day, class, asks_asked, pain_asked, raised } said { minutes: None });

impl Kept for Shared {
    fn put(&self, out: &mut Written) {
        let Shared {
            lifter: _,
            regions,
            stop,
            clearance,
            ill_since,
            ill_ahead: _,
            asks,
            layoffs: _,
            today,
            body_masses: _,
            pain_asked,
            pain_on,
            answered,
            sessions,
            laid_by: _,
            unknown,
        } = self;
        regions.put(out);
        stop.put(out);
        clearance.put(out);
        ill_since.is_some().put(out);
        let mut open: Vec<OpenAsk> = asks.clone();
        open.sort_by_key(|open| Ask::ALL.iter().position(|ask| *ask == open.ask));
        open.put(out);
        today.as_ref().filter(|report| report.day == out.on).cloned().put(out);
        pain_asked.put(out);
        (*pain_on == Some(out.on)).put(out);
        answered.map(|day| today_or_earlier(day, out)).put(out);
        // The breaks of this world have no end but the next session.
        self.away_on(out.on).is_some().put(out);
        // An answer names the last session.
        sessions.last().map(|(_, day)| *day).put(out);
        (*unknown > 0).put(out);
    }

    fn get(from: &mut Read<'_>) -> Shared {
        let (regions, stop, clearance) = Kept::get(from);
        let ill_since = bool::get(from).then(|| (any_day(), 1));
        let asks = Kept::get(from);
        let today = Kept::get(from);
        let pain_asked = Kept::get(from);
        let pain_on = bool::get(from).then(any_day);
        let answered = Kept::get(from);
        let away = Layoff { from: any_day(), to: None, reason: LayoffReason::Planned };
        let layoffs = bool::get(from).then_some(away).into_iter().collect();
        let last: Option<Day> = Kept::get(from);
        let sessions = last.map(|day| (number_of(day), day)).into_iter().collect();
        let unknown = u32::from(bool::get(from));
        let lifter = super::play::lifter();
        Shared {
            regions,
            stop,
            clearance,
            ill_since,
            asks,
            layoffs,
            today,
            pain_asked,
            pain_on,
            answered,
            sessions,
            unknown,
            ..Shared::new(lifter)
        }
    }
}

/// A lift that the parameters in force leave out.
struct SetAside {
    set: Set,
    id: &'static str,
    now: Box<Now>,
}

keep_one_of!(Set: Set::ALL);
keep_one_of!(&'static str: LIFTS);
keep!(SetAside { set, id, now });

/// The worlds as each set of parameters leaves a new one, so that reading makes nothing anew.
pub(super) struct Worlds(Vec<State>);

impl Worlds {
    pub(super) fn new(without: Option<&'static str>) -> Worlds {
        Worlds(Set::ALL.iter().map(|set| super::play::new_state(*set, any_day(), without)).collect())
    }

    /// Reads a state; what the bytes leave out is as in a new world.
    pub(super) fn read(&self, from: &mut Read<'_>) -> State {
        let set = Set::get(from);
        let mut state = self.0[set as usize].clone();
        state.lifts.iter_mut().for_each(|lift| lift.now = Now::get(from));
        state.set_aside = Vec::<SetAside>::get(from).into_iter().map(aside).collect();
        state.shared = Shared::get(from);
        // Numbers of earlier events are below.
        state.last = Some((any_day(), 1_000));
        state
    }
}

fn aside(aside: SetAside) -> Lift {
    let set = Arc::new(aside.set.lift(aside.id).unwrap().clone());
    Lift { set, now: *aside.now, loadable: Arc::default() }
}

/// Writes a state as of a day.
pub(super) fn write(state: &State, out: &mut Written) {
    Set::with_digest(state.digest()).put(out);
    state.lifts.iter().for_each(|lift| lift.now.put(out));
    let aside = |lift: &Lift| SetAside {
        set: Set::with_lift(&lift.set),
        id: LIFTS.into_iter().find(|id| *id == lift.set.id.as_str()).unwrap(),
        now: Box::new(lift.now.clone()),
    };
    state.set_aside.iter().map(aside).collect::<Vec<_>>().put(out);
    state.shared.put(out);
}

const _: () = assert!(COOLING_OFF < GROWTH_WINDOW && GROWTH_WINDOW <= FAR);
