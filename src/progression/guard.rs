//! Guards: everything that must hold for a move upward, as entries of one table.

use alloc::vec;
use alloc::vec::Vec;

use super::lift::Now;
use super::pain::STEADY_SESSIONS;
use super::status::Status;
use super::view::View;
use crate::condition::DayClass;
use crate::gate::Outcome;
use crate::quantity::{Day, Mass};
use crate::reason::Reason;
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
    day_allows,
    asked_first,
    qualified_on_ordinary_days,
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
    if let Some(to) = s.to()
        && view.range_limited()
        && (view.lift.set.ranges.is_empty() || view.range_allowed(to.place.range) != Some(to.place.range))
    {
        reasons.push(Reason::ClearanceRange);
    }
    reasons
}

fn pain_clear(s: &Situation<'_>) -> Vec<Reason> {
    let (view, mut reasons) = (&s.view, Vec::new());
    for region in view.regions() {
        let name = || region.id.clone();
        if region.clear_needed > 0 {
            reasons.push(Reason::PainBlock { region: name(), clear_sessions: region.clear_needed });
        }
        let hurts = region.last.is_some_and(|(_, score)| score.score() > 0);
        let review = region.review_due(view.on, view.policy().usual_review_days);
        if let Some(agreed) = review.filter(|_| hurts) {
            reasons.push(Reason::UsualPainReview { region: name(), agreed });
        }
        if hurts && region.usual.is_some_and(|(_, _, steady)| steady < STEADY_SESSIONS) {
            reasons.push(Reason::UsualPainUnsteady { region: name() });
        }
        if region.persists(view.policy().pain_block_from) {
            reasons.push(Reason::PainPersists { region: name() });
        }
    }
    if s.now().partner_pain {
        reasons.push(Reason::PairPain);
    }
    reasons
}

fn pain_asked(s: &Situation<'_>) -> Vec<Reason> {
    if s.view.shared.pain_asked == Some(true) { Vec::new() } else { vec![Reason::PainNotAsked] }
}

fn state_allows(s: &Situation<'_>) -> Vec<Reason> {
    let now = s.now();
    let reason = match &now.status {
        Status::Holding | Status::ReadyToAdvance { .. } => return Vec::new(),
        Status::Learning => {
            Reason::LearningNotDone { done: now.calibration.done, needed: now.calibration.needed }
        }
        Status::Consolidating => Reason::Consolidating,
        Status::SteppingBack { .. } => Reason::SteppingBack,
        Status::Resting { .. } => Reason::Resting,
        Status::Returning { way, .. } => Reason::Returning { at_most: way.cap },
        Status::Maintaining => Reason::Maintaining,
        Status::StoppedRefer { .. } => Reason::Stopped,
        Status::Retired => Reason::Retired,
    };
    vec![reason]
}

fn gate_open(s: &Situation<'_>) -> Vec<Reason> {
    let mut reasons = Vec::new();
    // A run outlasts a session that nobody marked, but no move is taken on it.
    if !super::offer::gate_is_open(&s.view) || !s.now().last_passed() {
        reasons.push(Reason::GateNotOpen);
    }
    // Whatever the last session came to: a worse one never permits what a better one would have to wait for.
    match s.now().sittings.last() {
        Some(last) if !last.confirmed => reasons.push(Reason::PassProvisional { session: last.session }),
        _ => {}
    }
    if let Some(short) = s.now().short {
        reasons.push(Reason::NotAtGrant { short });
    }
    reasons
}

fn reserve_held(s: &Situation<'_>) -> Vec<Reason> {
    let last = s.now().sittings.iter().rev().take(RESERVE_SESSIONS);
    let short = last.filter(|sitting| sitting.short_of_reserve).count();
    if short < RESERVE_SHORT { Vec::new() } else { vec![Reason::ReserveShort { sessions: short as u8 }] }
}

fn day_allows(s: &Situation<'_>) -> Vec<Reason> {
    match s.view.shared.class_on(s.view.on) {
        DayClass::Ordinary | DayClass::Good => Vec::new(),
        DayClass::BadAgreeing => vec![Reason::BadDay],
        DayClass::BadSingle => vec![Reason::BadDaySingle],
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
    reasons
}

fn qualified_on_ordinary_days(s: &Situation<'_>) -> Vec<Reason> {
    let mut passes = s.now().sittings.iter().filter(|sitting| sitting.outcome == Outcome::Pass).peekable();
    let any = passes.peek().is_some();
    if any && passes.all(|sitting| sitting.bad_day) { vec![Reason::QualifiedOnBadDays] } else { Vec::new() }
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

/// Days still to wait after that day, if any.
fn days_left(since: Day, on: Day, wait: u16) -> Option<u16> {
    u16::try_from(i32::from(wait) - on.since(since)).ok().filter(|left| *left > 0)
}

fn cooled_off(s: &Situation<'_>) -> Vec<Reason> {
    let wait = s.view.policy().cooling_off_days;
    let left = s.now().moves.last().and_then(|(day, _)| days_left(*day, s.view.on, wait));
    left.map(|days_left| Reason::CoolingOff { days_left }).into_iter().collect()
}

fn region_window(s: &Situation<'_>) -> Vec<Reason> {
    let policy = s.view.policy();
    let mut reasons = Vec::new();
    for region in s.view.regions() {
        let recent = region.moves.iter();
        let waits: Vec<u16> =
            recent.filter_map(|day| days_left(*day, s.view.on, policy.region_window_days)).collect();
        if let (true, Some(days_left)) =
            (waits.len() >= usize::from(policy.region_moves), waits.first().copied())
        {
            reasons.push(Reason::RegionWindow { region: region.id.clone(), days_left });
        }
    }
    reasons
}

fn pair_allows(s: &Situation<'_>) -> Vec<Reason> {
    let (view, mut reasons) = (&s.view, Vec::new());
    let Some(partner) = view.partner else { return reasons };
    let other = &partner.lift.now;
    if s.now().fault.is_some() && s.now().fault == other.fault {
        reasons.push(Reason::PairFault);
    }
    let wait = view.policy().region_window_days;
    if let Some(days_left) = other.moves.last().and_then(|(day, _)| days_left(*day, view.on, wait)) {
        reasons.push(Reason::PairWindow { days_left });
    }
    if !view.is_strict() {
        return reasons;
    }
    match other.proven.filter(|(day, _)| view.on.since(*day) <= i32::from(view.policy().proof_days)) {
        None => reasons.push(Reason::PairProofMissing),
        Some((_, proven)) => {
            let loads = partner.lift.loadable.at(other.grant.place);
            let cap = loads.share(proven, partner.pair.ratio_cap);
            if s.to().is_some_and(|to| to.load() > cap) {
                reasons.push(Reason::PairCap { load: cap });
            }
        }
    }
    reasons
}

/// A pair on one day, or with too little rest between its lifts.
fn pair_rested(s: &Situation<'_>) -> Vec<Reason> {
    super::pair::rest_missing(&s.view).into_iter().collect()
}

fn step_fits(s: &Situation<'_>) -> Vec<Reason> {
    let to = match &s.to {
        Err(reason) => return vec![reason.clone()],
        Ok(to) => to,
    };
    let (lift, from) = (s.view.lift, s.now().grant.load());
    let loads = lift.loadable.at(to.place);
    let cap = loads.grown(from, lift.set.cap());
    if to.load() > cap || (to.load() > from && loads.not_above(to.load()) != Some(to.load())) {
        return vec![Reason::NoLoadableStep { cap, next: loads.above(from) }];
    }
    Vec::new()
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

fn window_cap(s: &Situation<'_>) -> Vec<Reason> {
    let Some(to) = s.to() else { return Vec::new() };
    let policy = s.view.policy();
    let loads = s.view.lift.loadable.at(to.place);
    let cap_on =
        |day: Day| loads.grown(load_before_window(s.now(), day, policy.window_days), policy.window_cap);
    let load = cap_on(s.view.on);
    // A load that stays is no growth, though a shorter window or an easier start would not allow it any more.
    if to.load() <= load || to.load() <= s.now().grant.load() {
        return Vec::new();
    }
    // The window opens as its moves fall out of it, the oldest first.
    let ends = s.now().moves.iter().filter_map(|(day, _)| day.plus(i32::from(policy.window_days)).ok());
    let free = ends.filter(|day| *day > s.view.on).find(|day| cap_on(*day) >= to.load());
    let days = free.map_or(i32::from(policy.window_days), |day| day.since(s.view.on));
    vec![Reason::WindowCap { load, days_left: u16::try_from(days).unwrap_or(policy.window_days) }]
}

/// The load of which the growth over the window is counted.
fn load_before_window(now: &Now, on: Day, window: u16) -> Mass {
    let recent = now.moves.iter().filter(|(day, _)| on.since(*day) < i32::from(window));
    let granted = now.grant.load();
    recent.map(|(_, load)| *load).min().unwrap_or(granted).min(granted)
}

fn ceiling(s: &Situation<'_>) -> Vec<Reason> {
    match (s.view.lift.set.ceiling, s.to()) {
        (Some(load), Some(to)) if to.load() > load => vec![Reason::Ceiling { load }],
        _ => Vec::new(),
    }
}

fn guarded_when_alone(s: &Situation<'_>) -> Vec<Reason> {
    if s.now().unguarded { vec![Reason::AloneWithoutPins] } else { Vec::new() }
}

fn known_events(s: &Situation<'_>) -> Vec<Reason> {
    match s.view.shared.unknown {
        0 => Vec::new(),
        count => vec![Reason::UnknownEventPresent { count }],
    }
}
