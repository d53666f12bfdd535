//! Findings of the plan check as sentences.

use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use super::{counted, mass};
use crate::numeric;
use crate::quantity::{Mass, Name};
use crate::record::Dimension;
use crate::rehearsal::{Finding, Found, Severity};

/// How much a finding matters, in a word or two.
#[must_use]
pub fn severity(severity: Severity) -> &'static str {
    match severity {
        Severity::Blocks => "cannot work",
        Severity::Warns => "look again",
        Severity::Notes => "note",
    }
}

/// A finding as one or two sentences, with the lift in front.
#[must_use]
pub fn finding(finding: &Finding) -> String {
    let said = found(&finding.what);
    match &finding.lift {
        Some(lift) => format!("{lift}: {said}"),
        None => said,
    }
}

/// What was found, without the lift.
#[must_use]
pub fn found(found: &Found) -> String {
    match found {
        Found::ParametersRefused { error, field } => {
            format!("The parameters are refused: {error} in {field}.")
        }
        Found::UnknownImplement { implement } => format!("The equipment has no {implement}."),
        Found::UnknownPairLift { lift } => format!("A pair names {lift}, which is no lift here."),
        Found::TooManyCritical { count, most } => {
            format!("{count} criteria are critical; a lift may have {most}.")
        }
        Found::NoCriticalCriterion => "No criterion is critical.".to_string(),
        Found::LearningNone => "No sessions are set aside to learn it.".to_string(),
        Found::PlanRefused { error, field } => format!("The plan is refused: {error} in {field}."),
        Found::UnavailableUnknown { implement } => {
            format!("The plan calls {implement} missing, and the equipment has none of that name.")
        }
        Found::UnknownLift => "The plan names it, and there is no such lift.".to_string(),
        Found::NotPlanned => "The plan leaves it out.".to_string(),
        Found::PlanAsksMore { sets, reps, granted_sets, granted_reps } => format!(
            "The plan asks for {sets} x {reps}; {granted_sets} x {granted_reps} is granted, and the plan can \
             only ask for less."
        ),
        Found::PlanNeverPasses { sets, reps, granted_sets, granted_reps } => format!(
            "The plan asks for {sets} x {reps} of the {granted_sets} x {granted_reps} granted: no such session \
             counts as a pass. Lower what is granted instead."
        ),
        Found::ReferenceNotLighter { reference, start } => format!(
            "The reference set at {} is not lighter than the start load of {}.",
            mass(*reference),
            mass(*start)
        ),
        Found::RegionShared { region, lifts } => format!(
            "{} are all set to move and load the {region}. They take turns; set all but one to stay.",
            listed(lifts)
        ),
        Found::RegionWithoutLift { region } => {
            format!("No lift loads the {region}: a stop there halts every lift.")
        }
        Found::PairBothMove { partner } => format!("It and {partner} are both set to move; they take turns."),
        Found::PairInOneSession { forgiving } => format!("It stands in one session with {forgiving}."),
        Found::StrictAfterHeavy { forgiving } => format!("It comes on the day after {forgiving}."),
        Found::PairTooClose { partner, days, needed } => {
            format!("{} between it and {partner}; {needed} asked for.", counted(u32::from(*days), "rest day"))
        }
        Found::StaleBetweenSessions { gap, allowed } => format!(
            "{gap} days between two sessions, and an open gate stays fresh for {allowed}: no move can be taken \
             on a training day."
        ),
        Found::ProbeBeforeSession { gap, due } => format!(
            "{gap} days between two sessions, and a look at what is kept is due after {due}: it is always late."
        ),
        Found::HelpNeedsBodyMass => {
            "Steps of a helped lift are measured against the body mass: record it, or no step is taken."
                .to_string()
        }
        Found::NoDay => "The week has no day for it.".to_string(),
        Found::NotCleared => "Not cleared: nobody trains.".to_string(),
        Found::GateNeverOpens { asks, session } => format!(
            "The gate asks for {asks} scored repetitions a session, and a session has {session}: it can never \
             open."
        ),
        Found::GateTooLong { sessions, long_from } => format!(
            "Even without a single miss the gate takes {sessions} sessions ({long_from} or more is long)."
        ),
        Found::GateOpensForAnyone { rate, sessions, chance } => format!(
            "With {} of repetitions acceptable the gate still opens within {sessions} sessions in {} of cases.",
            percent(*rate),
            percent(*chance)
        ),
        Found::GateRarelyOpens { rate, sessions, chance } => format!(
            "With {} of repetitions acceptable the gate opens within {sessions} sessions in only {} of cases.",
            percent(*rate),
            percent(*chance)
        ),
        Found::GateNeedsNoTechnique => "The gate can open without a look at any repetition.".to_string(),
        Found::ReserveBelowGate { plan, asks } => {
            format!("The plan leaves {plan} in reserve, and the gate asks for {asks}: it can never open.")
        }
        Found::StartNotLoadable { load, below, above } => format!(
            "The equipment does not make the start load of {}{}: no log takes these parameters.",
            mass(*load),
            beside(*below, *above)
        ),
        Found::StartRoundedDown { load, to } => format!(
            "The equipment does not make the start load of {}. The next lighter one is done, {}.",
            mass(*load),
            mass(*to)
        ),
        Found::HeightOff { height, mm } => format!(
            "Nothing holds the bar at a height of {height}: the nearest way lies {} mm {} it.",
            numeric::round(mm.abs()),
            if *mm > 0.0 { "above" } else { "below" }
        ),
        Found::HeightUnknown => {
            "No disc tells its diameter, so nobody knows how high the bar begins. Measure the discs."
                .to_string()
        }
        Found::StuckAtStart { load, cap, next, discs } => {
            format!("From the start on, {}", stuck(*load, *cap, *next, discs))
        }
        Found::StuckLater { load, cap, next, discs } => {
            format!("Later on, {}", stuck(*load, *cap, *next, discs))
        }
        Found::NothingToMove { moving } => {
            format!("Set to move in {}, and there is no further place.", dimension(*moving))
        }
        Found::CeilingBelowStart { ceiling, start } => {
            format!("The ceiling of {} lies below the start load of {}.", mass(*ceiling), mass(*start))
        }
        Found::StepAboveCap { wanted, cap } => {
            format!("The step to {} is cut to its cap, {}.", mass(*wanted), mass(*cap))
        }
        Found::WindowBelowStep { load, to, window } => format!(
            "The step from {} to {} is more than the weeks' window allows, {}.",
            mass(*load),
            mass(*to),
            mass(*window)
        ),
        Found::PairStartAboveCap { start, cap } => format!(
            "It starts at {}; its partner's start load allows {}. It waits until the partner has shown more.",
            mass(*start),
            mass(*cap)
        ),
        Found::ClearanceBelowStart { limit, start } => {
            format!("The clearance allows {}, less than the start load of {}.", mass(*limit), mass(*start))
        }
    }
}

fn stuck(load: Mass, cap: Mass, next: Option<Mass>, discs: &[Mass]) -> String {
    let next = next.map_or_else(
        || "nothing heavier can be made".to_string(),
        |next| format!("the next load is {}", mass(next)),
    );
    let help = if discs.is_empty() {
        String::new()
    } else {
        let pairs: Vec<String> = discs.iter().map(|disc| mass(*disc)).collect();
        format!(" A pair would help of: {}.", pairs.join(", "))
    };
    format!("no step up from {} can be loaded: the cap is {}, and {next}.{help}", mass(load), mass(cap))
}

fn beside(below: Option<Mass>, above: Option<Mass>) -> String {
    match (below, above) {
        (None, None) => String::new(),
        (Some(below), None) => format!("; the heaviest is {}", mass(below)),
        (None, Some(above)) => format!("; the lightest is {}", mass(above)),
        (Some(below), Some(above)) => format!("; it makes {} and {}", mass(below), mass(above)),
    }
}

fn dimension(dimension: Dimension) -> &'static str {
    match dimension {
        Dimension::Variant => "rung",
        Dimension::Range => "range",
        Dimension::Tempo => "tempo",
        Dimension::Sets => "sets",
        Dimension::Reps => "repetitions",
        Dimension::Load => "load",
    }
}

fn percent(part: f64) -> String {
    format!("{} %", numeric::round(part * 100.0))
}

fn listed(names: &[Name]) -> String {
    let names: Vec<&str> = names.iter().map(Name::as_str).collect();
    names.join(", ")
}
