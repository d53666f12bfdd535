//! Guards: everything that must hold for a move upward, as entries of one table.

use alloc::vec::Vec;

use super::moves::next_tuple;
use super::pain::STEADY_SESSIONS;
use super::state::{State, TrackState};
use super::status::Status;
use crate::condition::DayClass;
use crate::gate::Outcome;
use crate::quantity::Day;
use crate::reason::Reason;
use crate::record::{ClearanceStatus, Dimension, Parameters, Policy, TrackParameters, Tuple};

/// What a guard looks at.
pub(crate) struct Situation<'a> {
    state: &'a State,
    parameters: &'a Parameters,
    policy: &'a Policy,
    set: &'a TrackParameters,
    track: &'a TrackState,
    at: usize,
    on: Day,
    to: Result<Tuple, Reason>,
}

/// One guard: its name, and the reasons it has against a move.
pub(crate) struct Guard {
    #[cfg(test)]
    pub(crate) name: &'static str,
    check: fn(&Situation<'_>) -> Vec<Reason>,
}

macro_rules! guards {
    ($($name:ident),+ $(,)?) => {
        /// Every guard, in the order in which reasons are listed.
        static GUARDS: &[Guard] = &[$(Guard { #[cfg(test)] name: stringify!($name), check: $name }),+];

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
    day_allows,
    asked_first,
    qualified_on_ordinary_days,
    fresh,
    cooled_off,
    region_window,
    pair_allows,
    step_fits,
    one_dimension,
    window_cap,
    ceiling,
    guarded_when_alone,
    known_events,
];

impl State {
    /// Every reason against a move of that lift on that day: to the given place, or to the one on offer.
    pub(crate) fn blockers(&self, at: usize, to: Option<Tuple>, on: Day) -> Vec<Reason> {
        let Some(situation) = Situation::of(self, at, to, on) else { return Vec::new() };
        let asked = GUARDS.iter();
        #[cfg(test)]
        let asked = asked.filter(|guard| self.taken_out != Some(guard.name));
        asked.flat_map(|guard| (guard.check)(&situation)).collect()
    }
}

impl<'a> Situation<'a> {
    /// A move of that lift on that day: to the given place, or to the one on offer.
    pub(crate) fn of(state: &'a State, at: usize, to: Option<Tuple>, on: Day) -> Option<Situation<'a>> {
        let (parameters, track) = (state.parameters.as_deref()?, state.tracks.get(at)?);
        let set = parameters.tracks.get(at)?;
        let policy = &parameters.policy;
        let offered = || next_tuple(set, policy.rung_load, track.tuple, &state.loadable(at));
        let to = to.map_or_else(offered, Ok);
        Some(Situation { state, parameters, policy, set, track, at, on, to })
    }

    /// Whether it must wait for its turn: for a window of days that counts moves.
    pub(crate) fn waits(&self) -> bool {
        let pair = || pair_allows(self).iter().any(|reason| matches!(reason, Reason::PairWindow { .. }));
        let windows = [cooled_off, region_window, window_cap];
        windows.iter().any(|guard| !guard(self).is_empty()) || pair()
    }
}

fn no_stop(s: &Situation<'_>) -> Vec<Reason> {
    let mut reasons = Vec::new();
    if let Some(stop) = s.state.stop {
        reasons.push(Reason::SymptomStop { since: stop.since });
    }
    for region in s.state.regions.iter().filter(|region| s.set.regions.contains(&region.name)) {
        if let Some(stop) = region.stop {
            reasons.push(Reason::PainStop { region: region.name.clone(), since: stop.since });
        }
    }
    reasons
}

fn clearance_in_force(s: &Situation<'_>) -> Vec<Reason> {
    let mut reasons = Vec::new();
    if s.state.ill_since.is_some() {
        reasons.push(Reason::ClearanceAfterIllness);
    }
    match &s.state.clearance {
        Some(clearance) if clearance.status == ClearanceStatus::NotCleared => {
            reasons.push(Reason::NotCleared)
        }
        Some(clearance) if clearance.expires < s.on => {
            reasons.push(Reason::ClearanceExpired { on: clearance.expires })
        }
        None if s.policy.clearance_required => reasons.push(Reason::ClearanceMissing),
        _ => {}
    }
    if let (Some(load), Ok(to)) = (s.state.clearance_load(s.at), &s.to)
        && to.load > load
    {
        reasons.push(Reason::ClearanceLimit { load });
    }
    // A lift that stands deeper already does not move up either: what it shows now is shown short of its place.
    if let Ok(to) = &s.to
        && s.state.range_limited(s.at)
        && (s.set.ranges.is_empty() || s.state.range_allowed(s.at, to.range) != Some(to.range))
    {
        reasons.push(Reason::ClearanceRange);
    }
    reasons
}

fn pain_clear(s: &Situation<'_>) -> Vec<Reason> {
    let mut reasons = Vec::new();
    for region in s.state.regions.iter().filter(|region| s.set.regions.contains(&region.name)) {
        if region.clear_needed > 0 {
            reasons
                .push(Reason::PainBlock { region: region.name.clone(), clear_sessions: region.clear_needed });
        }
        let hurts = region.last.is_some_and(|(_, score)| score.score() > 0);
        if let Some(agreed) = region.review_due(s.on, s.policy.usual_review_days).filter(|_| hurts) {
            reasons.push(Reason::UsualPainReview { region: region.name.clone(), agreed });
        }
        if hurts && region.usual.is_some_and(|(_, _, steady)| steady < STEADY_SESSIONS) {
            reasons.push(Reason::UsualPainUnsteady { region: region.name.clone() });
        }
    }
    if s.track.partner_pain {
        reasons.push(Reason::PairPain);
    }
    reasons
}

fn pain_asked(s: &Situation<'_>) -> Vec<Reason> {
    if s.state.pain_asked == Some(true) { Vec::new() } else { alloc::vec![Reason::PainNotAsked] }
}

fn state_allows(s: &Situation<'_>) -> Vec<Reason> {
    let track = s.track;
    let reason = match track.status {
        Status::Holding | Status::ReadyToAdvance => return Vec::new(),
        Status::Learning => Reason::LearningNotDone { done: track.learned.0, needed: track.learned.1 },
        Status::Consolidating => Reason::Consolidating,
        Status::SteppingBack => Reason::SteppingBack,
        Status::Resting => Reason::Resting,
        Status::Returning => Reason::Returning { at_most: track.return_cap.unwrap_or(track.tuple.load) },
        Status::Maintaining => Reason::Maintaining,
        Status::StoppedRefer => Reason::Stopped,
        Status::Retired => Reason::Retired,
    };
    alloc::vec![reason]
}

fn gate_open(s: &Situation<'_>) -> Vec<Reason> {
    let mut reasons = Vec::new();
    if !s.state.gate_is_open(s.at, s.on) {
        reasons.push(Reason::GateNotOpen);
    }
    if let Some(last) = s.track.sittings.last()
        && last.outcome == Outcome::Pass
        && !last.confirmed
    {
        reasons.push(Reason::PassProvisional { session: last.session });
    }
    reasons
}

fn day_allows(s: &Situation<'_>) -> Vec<Reason> {
    match s.state.class_on(s.on) {
        DayClass::Ordinary | DayClass::Good => Vec::new(),
        DayClass::BadAgreeing => alloc::vec![Reason::BadDay],
        DayClass::BadSingle => alloc::vec![Reason::BadDaySingle],
        DayClass::Unknown => alloc::vec![Reason::DayUnknown],
    }
}

/// Fever, dizziness, palpitations, a fall or a new medicine: a clinician's word comes first.
fn asked_first(s: &Situation<'_>) -> Vec<Reason> {
    if s.state.asks_first() { alloc::vec![Reason::AsksFirst] } else { Vec::new() }
}

fn qualified_on_ordinary_days(s: &Situation<'_>) -> Vec<Reason> {
    let mut passes = s.track.sittings.iter().filter(|sitting| sitting.outcome == Outcome::Pass).peekable();
    let any = passes.peek().is_some();
    if any && passes.all(|sitting| sitting.bad_day) {
        alloc::vec![Reason::QualifiedOnBadDays]
    } else {
        Vec::new()
    }
}

fn fresh(s: &Situation<'_>) -> Vec<Reason> {
    let allowed = s.policy.freshness_days;
    let days = s.track.last_session.map_or(i32::MAX, |last| s.on.since(last));
    if days <= i32::from(allowed) {
        return Vec::new();
    }
    alloc::vec![Reason::Stale { days: u16::try_from(days).unwrap_or(u16::MAX), allowed }]
}

/// Days still to wait after that day, if any.
fn days_left(since: Day, on: Day, wait: u16) -> Option<u16> {
    u16::try_from(i32::from(wait) - on.since(since)).ok().filter(|left| *left > 0)
}

fn cooled_off(s: &Situation<'_>) -> Vec<Reason> {
    let left = s.track.moves.last().and_then(|(day, _)| days_left(*day, s.on, s.policy.cooling_off_days));
    left.map(|days_left| Reason::CoolingOff { days_left }).into_iter().collect()
}

fn region_window(s: &Situation<'_>) -> Vec<Reason> {
    let window = s.policy.region_window_days;
    let mut reasons = Vec::new();
    for region in s.state.regions.iter().filter(|region| s.set.regions.contains(&region.name)) {
        let recent = region.moves.iter().filter_map(|day| days_left(*day, s.on, window));
        let waits: Vec<u16> = recent.collect();
        if waits.len() >= usize::from(s.policy.region_moves)
            && let Some(days_left) = waits.first().copied()
        {
            reasons.push(Reason::RegionWindow { region: region.name.clone(), days_left });
        }
    }
    reasons
}

fn pair_allows(s: &Situation<'_>) -> Vec<Reason> {
    let mut reasons = Vec::new();
    let Some(partner) = s.state.partner(s.at) else { return reasons };
    let Some(other) = s.state.tracks.get(partner) else { return reasons };
    if s.track.fault.is_some() && s.track.fault == other.fault {
        reasons.push(Reason::PairFault);
    }
    let window = other.moves.last().and_then(|(day, _)| days_left(*day, s.on, s.policy.region_window_days));
    if let Some(days_left) = window {
        reasons.push(Reason::PairWindow { days_left });
    }
    let pair = s.parameters.pairs.iter().find(|pair| pair.strict == s.set.name);
    let Some(pair) = pair else { return reasons };
    match other.proven.filter(|(day, _)| s.on.since(*day) <= i32::from(s.policy.proof_days)) {
        None => reasons.push(Reason::PairProofMissing),
        Some((_, proven)) => {
            let cap = s.state.loadable(partner).share(proven, pair.ratio_cap);
            if s.to.as_ref().is_ok_and(|to| to.load > cap) {
                reasons.push(Reason::PairCap { load: cap });
            }
        }
    }
    reasons
}

fn step_fits(s: &Situation<'_>) -> Vec<Reason> {
    let to = match &s.to {
        Err(reason) => return alloc::vec![reason.clone()],
        Ok(to) => to,
    };
    let loadable = s.state.loadable(s.at);
    let cap = loadable.grown(s.track.tuple.load, s.set.cap());
    if to.load > cap || (to.load > s.track.tuple.load && loadable.not_above(to.load) != Some(to.load)) {
        return alloc::vec![Reason::NoLoadableStep { cap, next: loadable.above(s.track.tuple.load) }];
    }
    Vec::new()
}

/// Exactly one dimension goes up; rung and range and tempo never together with load.
fn one_dimension(s: &Situation<'_>) -> Vec<Reason> {
    let Ok(to) = &s.to else { return Vec::new() };
    let from = &s.track.tuple;
    let harder = s.set.harder_in(from, to);
    let one_place = to.range <= from.range.saturating_add(1)
        && to.tempo <= from.tempo.saturating_add(1)
        && to.sets <= from.sets.saturating_add(1)
        && to.reps <= from.reps.saturating_add(1);
    let next_rung = !harder.contains(&Dimension::Variant)
        || s.set.easier_rungs(to.rung).any(|easier| easier == from.rung);
    // A harder rung starts no higher than the rule for rungs says, however it is asked for.
    let heaviest =
        super::moves::rung_load(s.set, to.rung, from.load, s.policy.rung_load, &s.state.loadable(s.at));
    let rung_fits = !harder.contains(&Dimension::Variant) || to.load <= heaviest;
    if harder.len() <= 1 && one_place && next_rung && rung_fits {
        Vec::new()
    } else {
        alloc::vec![Reason::NotOneStep]
    }
}

fn window_cap(s: &Situation<'_>) -> Vec<Reason> {
    let Ok(to) = &s.to else { return Vec::new() };
    let before = s.track.load_before_window(s.on, s.policy.window_days);
    let load = s.state.loadable(s.at).grown(before, s.policy.window_cap);
    // A load that stays is no growth, though a shorter window or an easier start would not allow it any more.
    if to.load > load && to.load > s.track.tuple.load {
        alloc::vec![Reason::WindowCap { load }]
    } else {
        Vec::new()
    }
}

fn ceiling(s: &Situation<'_>) -> Vec<Reason> {
    match (s.set.ceiling, &s.to) {
        (Some(load), Ok(to)) if to.load > load => alloc::vec![Reason::Ceiling { load }],
        _ => Vec::new(),
    }
}

fn guarded_when_alone(s: &Situation<'_>) -> Vec<Reason> {
    if s.track.unguarded { alloc::vec![Reason::AloneWithoutPins] } else { Vec::new() }
}

fn known_events(s: &Situation<'_>) -> Vec<Reason> {
    match s.state.unknown {
        0 => Vec::new(),
        count => alloc::vec![Reason::UnknownEventPresent { count }],
    }
}
