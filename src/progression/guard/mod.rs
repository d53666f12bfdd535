//! Guards: everything that must hold for a move upward, as entries of one table.
//!
//! Uses condition, gate, quantity, reason and record.

mod windows;

use alloc::vec;
use alloc::vec::Vec;

use self::windows::{cooled_off, pair_allows, pair_rested, region_window, window_cap};
use super::lift::Now;
use super::pain::STEADY_SESSIONS;
use super::sitting::Sitting;
use super::status::{Purpose, Status};
use super::view::View;
use crate::condition::DayClass;
use crate::gate::Outcome;
use crate::reason::{Reason, Unasked};
use crate::record::{ClearanceStatus, Dimension, Grant};

/// Of the last so many sessions two with too little in reserve hold the lift (our choice).
const RESERVE_SESSIONS: usize = 3;
const RESERVE_SHORT: usize = 2;

/// A move that is asked for: from what, on which day, and to where, or why there is nowhere to go.
pub(crate) struct Situation<'a> {
    pub(crate) view: View<'a>,
    to: Result<Grant, Reason>,
}

/// One guard: its name, and the reasons it has against a move.
pub(crate) struct Guard {
    pub(crate) name: &'static str,
    check: fn(&Situation<'_>) -> Vec<Reason>,
}

macro_rules! guards {
    ($($name:ident),+ $(,)?) => {
        /// Every guard, in the order in which reasons are listed.
        static GUARDS: &[Guard] = &[$(Guard { name: stringify!($name), check: $name }),+];

        /// The names of all guards.
        pub const GUARD_NAMES: &[&str] = &[$(stringify!($name)),+];
    };
}

guards![
    no_stop,
    clearance_in_force,
    pain_clear,
    pain_asked,
    state_allows,
    gate_open,
    reserve_held,
    not_overruled,
    day_allows,
    asked_first,
    qualified_on_usual_days,
    fresh,
    cooled_off,
    region_window,
    pair_allows,
    pair_rested,
    step_fits,
    one_dimension,
    window_cap,
    ceiling,
    guarded_when_alone,
    known_events,
];

impl<'a> Situation<'a> {
    /// A move on that day: to the given grant, or to the one on offer.
    pub(crate) fn new(view: View<'a>, to: Option<Grant>) -> Situation<'a> {
        Situation { view, to: to.map_or_else(|| view.next_grant(), Ok) }
    }

    /// Every reason against it. `without` leaves a guard out, for the test that each of them is needed.
    pub(crate) fn blockers(&self, without: Option<&str>) -> Vec<Reason> {
        let asked = GUARDS.iter().filter(|guard| without != Some(guard.name));
        asked.flat_map(|guard| (guard.check)(self)).collect()
    }

    /// Whether it must wait for its turn: for a window of days that counts moves.
    pub(crate) fn waits(&self) -> bool {
        let pair = || pair_allows(self).iter().any(|reason| matches!(reason, Reason::PairWindow { .. }));
        let windows = [cooled_off, region_window, window_cap];
        windows.iter().any(|guard| !guard(self).is_empty()) || pair()
    }

    fn now(&self) -> &Now {
        &self.view.lift.now
    }

    /// Where the move goes, at the place that the lift is on its way to.
    fn to(&self) -> Option<&Grant> {
        self.to.as_ref().ok()
    }
}

fn no_stop(s: &Situation<'_>) -> Vec<Reason> {
    super::stop::reasons(&s.view)
}

fn clearance_in_force(s: &Situation<'_>) -> Vec<Reason> {
    let (view, mut reasons) = (&s.view, Vec::new());
    if view.shared.ill_since.is_some() {
        reasons.push(Reason::ClearanceAfterIllness);
    }
    match &view.shared.clearance {
        Some(clearance) if clearance.status == ClearanceStatus::NotCleared => {
            reasons.push(Reason::NotCleared)
        }
        Some(clearance) if clearance.expires < view.on => {
            reasons.push(Reason::ClearanceExpired { on: clearance.expires })
        }
        None if view.policy().clearance_required => reasons.push(Reason::ClearanceMissing),
        _ => {}
    }
    if let (Some(load), Some(to)) = (view.clearance_load(), s.to())
        && to.load() > load
    {
        reasons.push(Reason::ClearanceLimit { load });
    }
    // A lift that stands deeper already does not move up either: what it shows now is shown short of its place.
    let range = s.to().unwrap_or(&s.now().grant).place.range;
    if view.range_limited() && (view.lift.set.ranges.is_empty() || view.range_allowed(range) != Some(range)) {
        reasons.push(Reason::ClearanceRange);
    }
    reasons
}

fn pain_clear(s: &Situation<'_>) -> Vec<Reason> {
    let (view, mut reasons) = (&s.view, Vec::new());
    for region in view.regions() {
        let name = || region.id.clone();
        if region.clear_needed > 0 {
            reasons.push(region.block());
        }
        let hurts = region.last.is_some_and(|(_, score)| score.score() > 0);
        let review = region.review_due(view.on, view.policy().usual_review_days);
        if let Some(agreed) = review.filter(|_| hurts) {
            reasons.push(Reason::UsualPainReview { region: name(), agreed });
        }
        let steady = region.usual.map(|(_, _, steady)| steady);
        if let Some(steady) = steady.filter(|steady| hurts && *steady < STEADY_SESSIONS) {
            reasons
                .push(Reason::UsualPainUnsteady { region: name(), clear_sessions: STEADY_SESSIONS - steady });
        }
        if region.persists(view.policy(), view.on) {
            reasons.push(Reason::PainPersists { region: name() });
        }
    }
    reasons.extend(super::pair::strict_hurt(view));
    reasons
}

/// Asked in the last session, and today before the next one.
fn pain_asked(s: &Situation<'_>) -> Vec<Reason> {
    let shared = s.view.shared;
    let when = match (shared.pain_asked, shared.pain_on == Some(s.view.on)) {
        (Some(true), true) => return Vec::new(),
        (Some(true), false) => Unasked::Today,
        (Some(false), true) => Unasked::LastSession,
        (Some(false), false) => Unasked::LastSessionAndToday,
        (None, _) => Unasked::NoSessionYet,
    };
    vec![Reason::PainNotAsked { when }]
}

fn state_allows(s: &Situation<'_>) -> Vec<Reason> {
    let now = s.now();
    let away = s.view.shared.away_on(s.view.on);
    let mut reasons: Vec<Reason> = away.map(super::away::Away::reason).into_iter().collect();
    // What a lift is kept for stands against a step from the start, whatever it first has to get through.
    let kept = matches!(now.purpose, Purpose::Maintain { .. });
    let kept = kept && now.status != Status::Maintaining && now.status.is_trained();
    reasons.extend(kept.then_some(Reason::Maintaining));
    let reason = match &now.status {
        Status::Holding | Status::ReadyToAdvance { .. } => return reasons,
        Status::Learning => {
            Reason::LearningNotDone { done: now.calibration.done, needed: now.calibration.needed }
        }
        Status::Consolidating => Reason::Consolidating,
        Status::SteppingBack { .. } => Reason::SteppingBack,
        Status::Resting { .. } if now.purpose == Purpose::Rest => Reason::Resting,
        Status::Resting { .. } if away.is_some() => return reasons,
        Status::Resting { .. } => Reason::AfterBreak,
        Status::Returning { way, .. } => Reason::Returning { at_most: way.cap },
        Status::Maintaining => Reason::Maintaining,
        Status::StoppedRefer { .. } => Reason::Stopped,
        Status::Retired => Reason::Retired,
    };
    reasons.push(reason);
    reasons
}

fn gate_open(s: &Situation<'_>) -> Vec<Reason> {
    let mut reasons = Vec::new();
    // A run outlasts a session that nobody marked, but no move is taken on it.
    if !super::offer::gate_is_open(&s.view) || !s.now().last_passed() {
        reasons.push(Reason::GateNotOpen);
    }
    // Whatever the last session came to: a worse one never permits what a better one would have to wait for.
    let last = s.now().sittings.last().filter(|last| !last.confirmed).map(|last| last.session);
    let waits = s.now().unanswered.map(|(session, _)| session).or(last);
    reasons.extend(waits.map(|session| Reason::PassProvisional { session }));
    if let Some(short) = s.now().short {
        reasons.push(Reason::NotAtGrant { short });
    }
    reasons
}

/// Effort of which nothing was said may have been too much.
fn reserve_held(s: &Situation<'_>) -> Vec<Reason> {
    // One that was not the work granted says nothing of the effort of it, unless even that was too much.
    let counts = |sitting: &&Sitting| sitting.at_grant || sitting.short_of_reserve || sitting.asked_first;
    let last = || s.now().sittings.iter().rev().filter(counts).take(RESERVE_SESSIONS);
    let short = last().filter(|sitting| sitting.short_of_reserve).count();
    let unsaid = last().filter(|sitting| sitting.effort_unsaid && !sitting.short_of_reserve).count();
    let mut reasons = Vec::new();
    // One more session pushes the oldest of the three out.
    let newest =
        last().take(RESERVE_SHORT).filter(|sitting| sitting.short_of_reserve || sitting.effort_unsaid);
    let more = if newest.count() < RESERVE_SHORT { 1 } else { 2 };
    if short >= RESERVE_SHORT {
        reasons.push(Reason::ReserveShort { sessions: short as u8, more });
    }
    if unsaid > 0 && short + unsaid >= RESERVE_SHORT {
        reasons.push(Reason::EffortNotSaid { sessions: unsaid as u8, more });
    }
    reasons
}

/// While the coach's word for another load stands, what a step would start from is not what is done.
fn not_overruled(s: &Situation<'_>) -> Vec<Reason> {
    s.view.override_in_force().into_iter().collect()
}

fn day_allows(s: &Situation<'_>) -> Vec<Reason> {
    match s.view.shared.class_on(s.view.on) {
        DayClass::Within | DayClass::Above => Vec::new(),
        DayClass::Below => vec![Reason::DayBelow],
        DayClass::BelowSingle => vec![Reason::DayBelowSingle],
        DayClass::Unknown => vec![Reason::DayUnknown],
    }
}

/// Fever, dizziness, palpitations, a fall or a new medicine: an answer comes first. Nobody asked is no answer.
fn asked_first(s: &Situation<'_>) -> Vec<Reason> {
    let open = s.view.shared.asks.iter();
    let mut reasons: Vec<Reason> =
        open.map(|open| Reason::AsksFirst { ask: open.ask, since: open.since }).collect();
    if !s.view.shared.report_on(s.view.on).is_some_and(|report| report.asks_asked) {
        reasons.push(Reason::AsksNotAsked);
    }
    // Answered or not, what was said today is no ground for a step today.
    let answered = s.view.shared.asked_and_answered(s.view.on);
    reasons.extend(answered.map(|ask| Reason::AskOfToday { ask }));
    reasons
}

/// Of the passes in a row one at least was on a day within the usual or above. A fail ends the row, unless the day
/// excuses it.
fn qualified_on_usual_days(s: &Situation<'_>) -> Vec<Reason> {
    let (mut passes, mut usual, mut excused) = (0, false, 0);
    for sitting in &s.now().sittings {
        match sitting.outcome {
            Outcome::Pass => (passes, usual, excused) = (passes + 1, usual || !sitting.below_usual, 0),
            Outcome::NotScored => {}
            Outcome::Fail
                if sitting.below_usual && !sitting.critical && excused < s.view.policy().neutral_fails =>
            {
                excused += 1;
            }
            Outcome::Fail => (passes, usual, excused) = (0, false, 0),
        }
    }
    if passes > 0 && !usual { vec![Reason::QualifiedBelowUsual] } else { Vec::new() }
}

fn fresh(s: &Situation<'_>) -> Vec<Reason> {
    let allowed = s.view.policy().freshness_days;
    let Some(last) = s.now().last_session else { return vec![Reason::NeverTrained] };
    let days = s.view.on.since(last);
    if days <= i32::from(allowed) {
        return Vec::new();
    }
    vec![Reason::Stale { days: u16::try_from(days).unwrap_or(u16::MAX), allowed }]
}

/// A step of load within its cap, and only from a height that is made to one that is made.
fn step_fits(s: &Situation<'_>) -> Vec<Reason> {
    let place = s.now().grant.place;
    let mut reasons: Vec<Reason> = s.view.height_not_made(place).into_iter().collect();
    let to = match &s.to {
        Err(reason) => {
            reasons.push(reason.clone());
            return reasons;
        }
        Ok(to) => to,
    };
    if to.place.range != place.range {
        reasons.extend(s.view.height_not_made(to.place));
    }
    let lift = s.view.lift;
    // A load that stays need not be made. One that rises is counted from what is loaded.
    if to.load() <= s.now().grant.load() {
        return reasons;
    }
    let (from, loads) = (lift.granted_as_loaded(), lift.loadable.at(to.place));
    let cap = loads.grown(from, lift.set.cap());
    if to.load() > cap || loads.not_above(to.load()) != Some(to.load()) {
        reasons.push(Reason::NoLoadableStep { cap, next: loads.above(from) });
    }
    reasons
}

/// Exactly one dimension goes up; rung and range and tempo never together with load.
fn one_dimension(s: &Situation<'_>) -> Vec<Reason> {
    let Some(to) = s.to() else { return Vec::new() };
    let (lift, from) = (s.view.lift, s.now().grant);
    let harder = lift.set.harder_in(&from, to);
    let one = |from: u8, to: u8| to <= from.saturating_add(1);
    let one_place = one(from.place.range, to.place.range)
        && one(from.place.tempo, to.place.tempo)
        && one(from.work.sets, to.work.sets)
        && one(from.work.reps, to.work.reps);
    let variant = harder.contains(&Dimension::Variant);
    let next_rung = !variant || lift.set.easier_rungs(to.place.rung).any(|easier| easier == from.place.rung);
    // A harder rung starts no higher than the rule for rungs says, however it is asked for.
    let heaviest = super::moves::rung_load(lift, to.place.rung, s.view.policy().rung_load);
    let rung_fits = !variant || to.load() <= heaviest;
    if harder.len() <= 1 && one_place && next_rung && rung_fits {
        Vec::new()
    } else {
        vec![Reason::NotOneStep]
    }
}

fn ceiling(s: &Situation<'_>) -> Vec<Reason> {
    match (s.view.lift.set.ceiling, s.to()) {
        (Some(load), Some(to)) if to.load() > load => vec![Reason::Ceiling { load }],
        _ => Vec::new(),
    }
}

fn guarded_when_alone(s: &Situation<'_>) -> Vec<Reason> {
    s.view.alone().into_iter().collect()
}

fn known_events(s: &Situation<'_>) -> Vec<Reason> {
    match s.view.shared.unknown {
        0 => Vec::new(),
        count => vec![Reason::UnknownEventPresent { count }],
    }
}
