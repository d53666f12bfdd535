//! The rules, written apart from the guards, over the notes: what must hold of every state.

use std::format;
use std::string::String;
use std::vec::Vec;

use super::super::layoff::returned;
use super::super::status::Status;
use super::super::view::View;
use super::notes::{LiftNotes, Notes, RegionNotes, Verdict};
use super::play::Point;
use super::telling::number_of;
use super::world::{
    COOLING_OFF, FRESH, GROWTH_WINDOW, LIFTS, LIMIT, PROOF, REGION_WINDOW, REGIONS, REVIEW, STEP_CAP,
    WINDOW_CAP, kg, loads_of,
};
use crate::condition::DayClass;
use crate::quantity::Mass;
use crate::record::{ClearanceStatus, Dimension, Grant, LiftParameters};

pub(super) use super::steps::{settle, step};

/// Passes in a row that the gate of the lift asks for.
pub(super) fn passes_needed(notes: &Notes, number: usize) -> usize {
    let longer = notes.set == super::world::Set::OtherGate && number == 0;
    if longer { 3 } else { 2 }
}

impl Notes {
    /// The regions that concern a lift.
    pub(super) fn regions_of(&self, number: usize) -> impl Iterator<Item = &RegionNotes> {
        let own = move |region: &usize| self.concerns(number, *region);
        (0..REGIONS.len()).filter(own).map(|region| &self.regions[region])
    }

    /// A pain stop of a region of the lift, or of one that no lift loads: nobody can tell whom that still concerns.
    pub(super) fn pain_stops(&self, number: usize) -> bool {
        let lost = |region: usize| self.regions[region].stop.is_some() && !self.is_loaded(region);
        self.regions_of(number).any(|region| region.stop.is_some()) || (0..REGIONS.len()).any(lost)
    }

    /// A clearance limits the hip.
    pub(super) fn hip_is_limited(&self) -> bool {
        self.clearance.as_ref().is_some_and(|given| given.load || given.range)
    }

    /// A limit names the hip, and no lift loads it any more.
    pub(super) fn limit_is_lost(&self) -> bool {
        self.hip_is_limited() && self.regions[0].lifted && !self.is_loaded(0)
    }

    /// The load that a clearance limits the lift to.
    pub(super) fn limit(&self, number: usize) -> Option<Mass> {
        let given = self.clearance.as_ref().filter(|given| given.load);
        given.filter(|_| self.concerns(number, 0)).map(|_| kg(LIMIT))
    }

    /// Whether a clearance limits the lift to the shorter range.
    pub(super) fn range_is_limited(&self, number: usize) -> bool {
        self.clearance.as_ref().is_some_and(|given| given.range) && self.concerns(number, 0)
    }

    /// The other lift of the pair.
    pub(super) fn partner(&self, number: usize) -> Option<&LiftNotes> {
        self.set.pairs().then(|| &self.lifts[1 - number])
    }
}

/// Whether that many days ago lies within a window.
pub(super) fn within(ago: u8, window: i32) -> bool {
    i32::from(ago) < window
}

/// The highest load to which the moves of the window let the lift grow.
pub(super) fn growth_cap(lift: &LiftNotes, from: Mass) -> Mass {
    let recent = lift.moves.iter().filter(|(ago, _)| within(*ago, GROWTH_WINDOW));
    let lowest = recent.map(|(_, load)| *load).min().unwrap_or(from).min(from);
    share(lowest, 1.0 + WINDOW_CAP)
}

pub(super) fn share(load: Mass, part: f64) -> Mass {
    kg((load.kg() * part * 1000.0 + 1e-6).floor() / 1000.0)
}

/// The next load within the step of the lift.
fn next_load(set: &LiftParameters, from: Mass) -> Option<Mass> {
    let above = loads_of(set).iter().map(|load| kg(*load)).find(|load| *load > from);
    above.filter(|load| *load <= share(from, 1.0 + STEP_CAP))
}

/// Where the lift stands as of the day: a break that is long enough is over with the next session.
struct Today {
    grant: Grant,
    status: Status,
    limit: Mass,
    anew: bool,
}

fn today(view: &View<'_>) -> Today {
    let back = returned(view).map(|now| view.lift.standing(now));
    let then = View { lift: back.as_ref().unwrap_or(view.lift), ..*view };
    let now = &then.lift.now;
    Today { grant: now.grant, status: now.status.clone(), limit: then.limit(), anew: back.is_some() }
}

/// The first of what must be said about a lift, by the plain reading of the rules, and is not.
fn unsaid(
    notes: &Notes,
    number: usize,
    set: &LiftParameters,
    today: &Today,
    said: &[&str],
) -> Option<&'static str> {
    let mut unsaid = None;
    let mut say = |holds: bool, code: &'static str| {
        if holds && !said.contains(&code) {
            unsaid = unsaid.or(Some(code));
        }
    };
    say_of_health(notes, number, &mut say);
    say_of_the_day(notes, &mut say);
    say_of_status(&today.status, &mut say);
    say_of_evidence(notes, number, today.anew, &mut say);
    say_of_spacing(notes, number, &mut say);
    say_of_load(notes, number, set, &today.grant, &mut say);
    say(notes.lifts[number].is_eased(today.grant.load()), "override_in_force");
    unsaid
}

type Say<'a> = &'a mut dyn FnMut(bool, &'static str);

fn say_of_health(notes: &Notes, number: usize, say: Say<'_>) {
    say(notes.symptom.is_some(), "symptom_stop");
    say(notes.pain_stops(number), "pain_stop");
    say(notes.limit_is_lost(), "limit_without_lift");
    say(notes.ill, "clearance_after_illness");
    match &notes.clearance {
        None => say(true, "clearance_missing"),
        Some(given) if given.status == ClearanceStatus::NotCleared => say(true, "not_cleared"),
        Some(given) => say(given.left < 0, "clearance_expired"),
    }
    for region in notes.regions_of(number) {
        say(region.due > 0, "pain_block");
        say(region.persists(), "pain_persists");
        let hurts = region.last.is_some_and(|(score, _)| score > 0);
        let (age, steady) = region.usual.filter(|_| hurts).unwrap_or((0, u8::MAX));
        say(steady < 3, "usual_pain_unsteady");
        say(i32::from(age) > REVIEW, "usual_pain_review");
    }
    say(notes.lifts[number].held, "pair_pain");
    say(notes.pain_asked != Some(true), "pain_not_asked");
    say(!notes.pain_today, "pain_not_asked");
    say(notes.away, "planned_break");
    say(notes.lifts[number].alone, "alone_without_pins");
    say(notes.unknown, "unknown_event_present");
}

fn say_of_the_day(notes: &Notes, say: Say<'_>) {
    say(notes.class() == DayClass::Unknown, "day_unknown");
    say(notes.class() == DayClass::Below, "day_below");
    say(notes.class() == DayClass::BelowSingle, "day_below_single");
    say(notes.asks.contains(&true), "asks_first");
    say(notes.comes_first() && !notes.asks.contains(&true), "ask_of_today");
    say(notes.day.as_ref().is_none_or(|day| !day.asks_asked), "asks_not_asked");
}

fn say_of_status(status: &Status, say: Say<'_>) {
    let code = match status {
        Status::Holding | Status::ReadyToAdvance { .. } => return,
        Status::Learning => "learning_not_done",
        Status::StoppedRefer { .. } => "stopped",
        // A planned break names itself, and so does its end.
        Status::Resting { .. } => return,
        other => other.as_str(),
    };
    say(true, code);
}

fn say_of_evidence(notes: &Notes, number: usize, anew: bool, say: Say<'_>) {
    let lift = &notes.lifts[number];
    let run = lift.run();
    say(anew || lift.confirmed() < passes_needed(notes, number), "gate_not_open");
    say(lift.elsewise, "not_at_grant");
    say(lift.last.is_none(), "never_trained");
    say(lift.last.is_some_and(|ago| !within(ago, FRESH + 1)), "stale");
    if anew {
        return;
    }
    let unanswered = lift.waits.is_some() || lift.sessions.last().is_some_and(|last| !last.answered);
    say(unanswered, "pass_provisional");
    say(lift.sessions.last().is_some_and(|last| last.verdict != Verdict::Pass), "gate_not_open");
    say(lift.hard() >= 2, "reserve_short");
    say(!run.is_empty() && run.iter().all(|session| session.below_usual), "qualified_below_usual");
}

fn say_of_spacing(notes: &Notes, number: usize, say: Say<'_>) {
    let lift = &notes.lifts[number];
    let moved = |lift: &LiftNotes, window| lift.moves.last().is_some_and(|(ago, _)| within(*ago, window));
    say(moved(lift, COOLING_OFF), "cooling_off");
    say(notes.regions_of(number).any(|region| region.moved.is_some()), "region_window");
    let Some(other) = notes.partner(number) else { return };
    say(moved(other, REGION_WINDOW), "pair_window");
    say(lift.fault && other.fault, "pair_fault");
    // One full day of rest between the lifts of a pair.
    say(other.last.is_some_and(|ago| within(ago, 2)), "pair_rest");
    let old = |(ago, _): (u8, Mass)| !within(ago, PROOF + 1);
    say(number == 0 && other.proven.is_none_or(old), "pair_proof_missing");
}

fn say_of_load(notes: &Notes, number: usize, set: &LiftParameters, grant: &Grant, say: Say<'_>) {
    let lift = &notes.lifts[number];
    let (place, work) = (grant.place, grant.work);
    say(notes.range_is_limited(number) && place.range > 0, "clearance_range");
    match set.moving {
        Dimension::Tempo => say(place.tempo == 1, "at_top"),
        Dimension::Variant => say(place.rung > 0, "at_top"),
        Dimension::Reps => say(work.reps >= 4, "at_top"),
        _ => match next_load(set, work.load) {
            None => say(true, "no_loadable_step"),
            Some(next) => {
                say(set.ceiling.is_some_and(|ceiling| next > ceiling), "ceiling");
                say(notes.limit(number).is_some_and(|limit| next > limit), "clearance_limit");
                say(next > growth_cap(lift, work.load), "window_cap");
                let partner = notes.partner(number).filter(|_| number == 0);
                let proven =
                    partner.and_then(|other| other.proven.filter(|(ago, _)| within(*ago, PROOF + 1)));
                say(proven.is_some_and(|(_, proven)| next > proven), "pair_cap");
            }
        },
    }
}

/// What must hold of a point of a course: all that stands in the way is said, and no more is allowed than the rules do.
pub(super) fn state_rule(point: &Point) -> Option<String> {
    let Point { state, notes, on, .. } = point;
    state.views(*on).find_map(|view| {
        let id = view.lift.set.id.as_str();
        let (number, today) = (number_of(id), today(&view));
        let blockers = state.blockers(&view.lift.set.id, None, *on).unwrap();
        let said: Vec<&str> = blockers.iter().map(|reason| reason.code()).collect();
        status_rule(notes, number, &today)
            .or_else(|| limit_rule(notes, number, &view.lift.set, &today))
            .map(|rule| format!("{id}: {rule}"))
            .or_else(|| {
                let code = unsaid(notes, number, &view.lift.set, &today, &said)?;
                Some(format!("{id}: {code} holds and is not said"))
            })
    })
}

fn status_rule(notes: &Notes, number: usize, today: &Today) -> Option<&'static str> {
    let lift = &notes.lifts[number];
    let stopped = notes.symptom.is_some() || notes.pain_stops(number);
    let passed = lift.sessions.last().is_some_and(|last| last.verdict == Verdict::Pass);
    match &today.status {
        status if stopped && !status.is_stopped() => Some("goes on under a stop"),
        Status::StoppedRefer { .. } if !stopped => Some("is stopped by nothing"),
        Status::Returning { way, .. } if today.grant.load() > way.cap => {
            Some("comes back above the load before")
        }
        Status::ReadyToAdvance { .. } if !passed || lift.elsewise => {
            Some("is offered a move after a session that was not the work granted, or did not pass")
        }
        Status::ReadyToAdvance { .. } if lift.confirmed() < passes_needed(notes, number) => {
            Some("is offered a move that its gate does not allow")
        }
        _ => None,
    }
}

/// No load above what is granted without an override that is in force, and none above a ceiling at all.
fn limit_rule(notes: &Notes, number: usize, set: &LiftParameters, today: &Today) -> Option<&'static str> {
    let hurts = notes
        .regions_of(number)
        .any(|region| region.due > 0 || region.last.is_some_and(|(score, of_today)| of_today && score > 0));
    let allowed = notes.lifts[number].allowed.is_some_and(|(load, left)| left >= 0 && load >= today.limit);
    let usual = matches!(notes.class(), DayClass::Within | DayClass::Above);
    let asked = notes.day.as_ref().is_some_and(|day| day.asks_asked) && !notes.comes_first();
    let waits = hurts || !usual || !asked || notes.ill || notes.unknown || notes.lifts[number].alone;
    let back = matches!(
        today.status,
        Status::Returning { .. } | Status::SteppingBack { .. } | Status::Resting { .. } | Status::Retired
    );
    let above = today.limit > today.grant.load();
    let checks = [
        (set.ceiling.is_none_or(|ceiling| today.limit <= ceiling), "may be loaded above its ceiling"),
        (
            notes.limit(number).is_none_or(|limit| today.limit <= limit),
            "may be loaded above a clearance's limit",
        ),
        (!above || allowed, "may be loaded above its grant without an override"),
        (
            !above || !waits,
            "may be loaded above its grant on a day that hurts, is below the usual or is unknown",
        ),
        (!above || !back, "may be loaded above its grant on its way back"),
        (!above || !today.status.is_stopped(), "may be loaded above its grant under a stop"),
    ];
    checks.iter().find(|(holds, _)| !holds).map(|(_, rule)| *rule)
}

const _: () = assert!(LIFTS.len() == 2);
