//! What a correction, an undo, something brought back or a file would open: what is in force before it and not after it.

use std::collections::BTreeSet;

use bismar::Error;
use bismar::prescription::{LiftToday, SessionPlan, Verdict};
use bismar::progression::{Purpose, State};
use bismar::quantity::{Day, Mass, Unit};
use bismar::reason::Reason;
use bismar::record::{ClearanceLimits, EventKind, Log};
use bismar::text::{self, Words};
use serde::{Deserialize, Serialize};

use crate::opened::Which;
use crate::stops::{self, InForce};
use crate::words::spoken;

/// The question.
#[derive(Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename = "OpensAsked"))]
#[serde(deny_unknown_fields)]
pub(crate) struct Asked {
    log: Which,
    today: Day,
    /// In which unit the sentences name loads.
    unit: Unit,
    /// What if this were written down that day: one kind of event.
    #[serde(default)]
    suppose: Option<EventKind>,
    /// What if that log stood in its place.
    #[serde(default)]
    instead: Option<Which>,
}

/// The answer.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename = "OpensAnswer"))]
pub(crate) struct Answer {
    /// Stops that would no longer be in force.
    stops: Vec<InForce>,
    /// Whatever else narrows a lift now and would not then, and each load of today that would be higher.
    less: Vec<Less>,
    /// It takes the last settings back.
    unsets: bool,
}

/// One thing that keeps a lift below what it would be without it.
#[derive(PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub(crate) struct Less {
    /// Name of its kind: limit, word (of the coach, until a day), ceiling, break, rest, work (working load) or load (today).
    kind: &'static str,
    /// What it is, in words.
    what: String,
    /// What becomes of it, as a sentence.
    says: String,
}

impl Less {
    fn gone(kind: &'static str, what: String) -> Less {
        let mut letters = what.chars();
        let capital = letters.next().map(|first| first.to_uppercase().chain(letters).collect::<String>());
        Less { kind, says: format!("{} is no longer in force then.", capital.unwrap_or_default()), what }
    }
}

/// The parts of a limit, each as a limit of its own.
fn parts(limit: &ClearanceLimits) -> Vec<ClearanceLimits> {
    let none = ClearanceLimits::default().with_region(limit.region.clone());
    let mut all = Vec::new();
    all.extend(limit.load.map(|load| none.clone().with_load(Some(load))));
    all.extend(limit.effort.map(|effort| none.clone().with_effort(Some(effort))));
    all.extend(limit.range.map(|range| none.clone().with_range(Some(range))));
    all.extend(limit.no_loaded_flexion.then(|| none.clone().with_no_loaded_flexion(true)));
    all.extend(limit.no_breath_hold.then(|| none.clone().with_no_breath_hold(true)));
    all
}

/// Whether a limit holds all that one part of another says.
fn holds(limit: &ClearanceLimits, part: &ClearanceLimits) -> bool {
    limit.region.as_ref().is_none_or(|region| part.region.as_ref() == Some(region))
        && part.load.is_none_or(|most| limit.load.is_some_and(|load| load <= most))
        && part.effort.is_none_or(|most| limit.effort.is_some_and(|effort| effort <= most))
        // How deep a range goes, the lift's own list of ranges says: only the same is known to be as careful.
        && part.range.is_none_or(|range| limit.range == Some(range))
        && (!part.no_loaded_flexion || limit.no_loaded_flexion)
        && (!part.no_breath_hold || limit.no_breath_hold)
}

fn part_words(words: &Words<'_>, part: &ClearanceLimits) -> String {
    let what = if let Some(load) = part.load {
        format!("of {}", words.at_most(load))
    } else if let Some(effort) = part.effort {
        format!("of effort {effort} of 10")
    } else if let Some(range) = part.range {
        format!("of range, {range},")
    } else if part.no_loaded_flexion {
        "of no loaded bending of the spine".to_string()
    } else {
        "of no long breath-holding".to_string()
    };
    let whom = part.region.as_ref().map_or_else(
        || "every lift".to_string(),
        |region| {
            let name = words.region_name(region);
            if name.starts_with("the ") { name.to_string() } else { format!("the {name}") }
        },
    );
    format!("a limit {what} for {whom}")
}

fn limits(state: &State) -> &[ClearanceLimits] {
    state.clearance().map(|clearance| clearance.limits.as_slice()).unwrap_or_default()
}

/// What rests, what the coach's ceilings are, and what was said of a day: each as it narrows, whatever is planned.
fn narrowing(state: &State, words: &Words<'_>, sessions: &[Option<SessionPlan>]) -> BTreeSet<Less> {
    let mut all = BTreeSet::new();
    for lift in state.lifts() {
        let name = words.lift_name(lift.id());
        if matches!(lift.purpose(), Purpose::Rest | Purpose::Retire) {
            all.insert(Less::gone("rest", format!("the rest of {name}")));
        }
    }
    for lift in sessions.iter().flatten().flat_map(|session| &session.lifts) {
        let name = words.lift_name(&lift.lift);
        for reason in &lift.reasons {
            match reason {
                Reason::OverrideInForce { load, who, .. } if *load < lift.granted.load() => {
                    let what = format!("the word of {who} for {name}, {},", words.at_most(*load));
                    all.insert(Less::gone("word", what));
                }
                Reason::PlannedBreak { until: Some(until) } => {
                    all.insert(Less::gone("break", format!("the planned break until {}", text::day(*until))));
                }
                Reason::PlannedBreak { until: None } => {
                    all.insert(Less::gone("break", "the planned break without a last day".to_string()));
                }
                Reason::IllUntil { until } => {
                    all.insert(Less::gone("break", format!("the illness noted until {}", text::day(*until))));
                }
                _ => {}
            }
        }
    }
    all
}

/// The ceilings that are gone or higher.
fn ceilings(before: &State, after: &State, words: &Words<'_>) -> Vec<Less> {
    let gone = before.lifts().filter_map(|lift| {
        let was = lift.parameters().ceiling?;
        let now = after.lift_state(lift.id())?.parameters().ceiling;
        let name = words.lift_name(lift.id());
        let what = || format!("the ceiling of {} for {name}", words.at_most(was));
        now.is_none_or(|now| now > was).then(|| Less::gone("ceiling", what()))
    });
    gone.collect()
}

/// The load of a lift that is trained that day.
fn load(lift: &LiftToday) -> Option<Mass> {
    lift.load.filter(|_| lift.sets > 0)
}

/// The loads of a day that are higher, and working loads. What a stop kept at nothing is told by the stop.
fn higher(before: &SessionPlan, after: &SessionPlan, words: &Words<'_>) -> Vec<Less> {
    let of = |then: &LiftToday| {
        let now = before.lifts.iter().find(|own| own.lift == then.lift)?;
        let name = words.lift_name(&then.lift);
        let (at, was) = (then.granted.load(), now.granted.load());
        let work = (at > was).then(|| Less {
            kind: "work",
            what: format!("a working load of {} for {name}", words.mass(was)),
            says: format!("{name}: a working load of {} then, and not {}.", words.mass(at), words.mass(was)),
        });
        let (to, from) = (load(then), load(now));
        let more = to > from
            && now.verdict != Verdict::Stop
            && (work.is_none() || (to, from) != (Some(at), Some(was)));
        let said = |load: Option<Mass>| load.map_or_else(|| "nothing".to_string(), |load| words.mass(load));
        let today = more.then(|| Less {
            kind: "load",
            what: format!("{} today for {name}", said(from)),
            says: match from {
                Some(_) => format!("{name}: {} today then, and not {}.", said(to), said(from)),
                None => format!("{name}: {} today then; now it is left out.", said(to)),
            },
        });
        Some(work.into_iter().chain(today))
    };
    after.lifts.iter().filter_map(of).flatten().collect()
}

/// The first day of each break noted for later.
fn to_come(log: &Log, today: Day) -> Result<BTreeSet<Day>, Error> {
    let events = log.effective()?;
    let from = events.iter().filter_map(|event| match &event.kind {
        EventKind::LayoffNoted(layoff) => Some(layoff.from),
        _ => None,
    });
    Ok(from.filter(|from| *from > today).collect())
}

/// The sessions of these days; none where no session can be worked out, which keeps nothing else from being compared.
fn sessions(state: &State, days: &[Day]) -> Vec<Option<SessionPlan>> {
    days.iter().map(|day| stops::session(state, *day).ok()).collect()
}

/// What narrows in one state and not in the other.
fn less(log: &Log, before: &State, after: &State, today: Day, unit: Unit) -> Result<Vec<Less>, Error> {
    let words = spoken(before, unit);
    let days: Vec<Day> = std::iter::once(today).chain(to_come(log, today)?).collect();
    let (now, then) = (sessions(before, &days), sessions(after, &days));
    let still = limits(after);
    let parts = limits(before).iter().flat_map(parts);
    let gone = parts.filter(|part| !still.iter().any(|limit| holds(limit, part)));
    let mut all: Vec<Less> = gone.map(|part| Less::gone("limit", part_words(&words, &part))).collect();
    let kept = narrowing(after, &words, &then);
    all.extend(narrowing(before, &words, &now).into_iter().filter(|one| !kept.contains(one)));
    all.extend(ceilings(before, after, &words));
    if let (Some(Some(now)), Some(Some(then))) = (now.first(), then.first()) {
        all.extend(higher(now, then, &words));
    }
    Ok(all)
}

/// What would open.
pub(crate) fn opens(asked: Asked) -> Result<Answer, Error> {
    let before = asked.log.open()?;
    let own = before.state.last().map_or(asked.today, |(last, _)| asked.today.max(last));
    let other = asked.instead.map(|one| one.open()).transpose()?;
    let supposed = asked.suppose.map(|kind| before.supposing(vec![(own, kind)])).transpose()?;
    let after = supposed.as_ref().or_else(|| other.as_ref().map(|one| &one.state)).unwrap_or(&before.state);
    let today = after.last().map_or(own, |(last, _)| own.max(last));
    Ok(Answer {
        stops: stops::opened(&before.state, after, today),
        less: less(&before.log, &before.state, after, today, asked.unit)?,
        unsets: before.state.parameters().is_some() && after.parameters().is_none(),
    })
}
