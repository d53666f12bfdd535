//! Findings of the plan check as sentences.

use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use super::counted;
use super::mass::face;
use super::words::Words;
use crate::numeric;
use crate::quantity::{Mass, Name};
use crate::record::{Dimension, LiftParameters};
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

/// [`Words::finding`] in kilograms and with ids.
#[must_use]
pub fn finding(finding: &Finding) -> String {
    Words::plain().finding(finding)
}

/// [`Words::found`] in kilograms and with ids.
#[must_use]
pub fn found(found: &Found) -> String {
    Words::plain().found(found)
}

impl Words<'_> {
    /// A finding as one or two sentences, with the lift in front; where they name its load, with the place of its start.
    #[must_use]
    pub fn finding(&self, finding: &Finding) -> String {
        let said = self.found(&finding.what);
        let Some(lift) = &finding.lift else { return said };
        let name = self.lift_name(lift);
        let place = self.lift(lift).filter(|set| names_a_load_of_the_start(&finding.what, set));
        match place.map(|set| self.place(lift, set.start.place)).filter(|place| !place.is_empty()) {
            Some(place) => format!("{name}, {place}: {said}"),
            None => format!("{name}: {said}"),
        }
    }

    /// What was found, without the lift.
    #[must_use]
    pub fn found(&self, found: &Found) -> String {
        self.of_loads(found).or_else(|| self.of_pairs(found)).unwrap_or_else(|| plain(found))
    }

    /// Findings that name loads, or in what a lift moves.
    fn of_loads(&self, found: &Found) -> Option<String> {
        let (mass, at_most) = (|load: &Mass| self.mass(*load), |load: &Mass| self.at_most(*load));
        Some(match found {
            Found::ReferenceNotLighter { reference, start } => format!(
                "The reference set at {} is not lighter than the start load of {}.",
                mass(reference),
                mass(start)
            ),
            Found::StartNotLoadable { load, below, above } => format!(
                "The equipment does not make the start load of {}{}: no log takes these parameters.",
                mass(load),
                self.beside(*below, *above)
            ),
            Found::StuckAtStart { load, cap, next, discs } => {
                format!("From the start on, {}", self.stuck(*load, *cap, *next, discs))
            }
            Found::StuckLater { load, cap, next, discs } => {
                format!("Later on, {}", self.stuck(*load, *cap, *next, discs))
            }
            Found::CeilingBelowStart { ceiling, start } => {
                format!("The ceiling of {} lies below the start load of {}.", at_most(ceiling), mass(start))
            }
            Found::StepAboveCap { wanted, cap } => {
                format!("The step to {} is cut to its cap, {}.", mass(wanted), at_most(cap))
            }
            Found::WindowBelowStep { load, to, window } => format!(
                "The step from {} to {} is more than the weeks' window allows, {}.",
                mass(load),
                mass(to),
                at_most(window)
            ),
            Found::PairStartAboveCap { start, cap } => format!(
                "It starts at {}; its partner's start load allows {}. It waits until the partner has shown more.",
                mass(start),
                at_most(cap)
            ),
            Found::ClearanceBelowStart { limit, start } => {
                format!(
                    "The clearance allows {}, less than the start load of {}.",
                    at_most(limit),
                    mass(start)
                )
            }
            Found::NothingToMove { moving } => {
                format!("Set to move in {}, and there is no further place.", self.dimension(*moving))
            }
            _ => return None,
        })
    }

    /// Findings about pairs, regions and the days of the week.
    fn of_pairs(&self, found: &Found) -> Option<String> {
        Some(match found {
            Found::RegionShared { region, lifts } => format!(
                "{} are all set to move and load the {}. They take turns; set all but one to stay.",
                self.listed(lifts),
                self.region_name(region)
            ),
            Found::RegionWithoutLift { region } => {
                format!("No lift loads the {}: a stop there halts every lift.", self.region_name(region))
            }
            Found::UnknownPairLift { lift } => format!("A pair names {lift}, which is no lift here."),
            Found::PairBothMove { partner } => {
                format!("It and {} are both set to move; they take turns.", self.lift_name(partner))
            }
            Found::PairInOneSession { forgiving } => {
                format!("It stands in one session with {}.", self.lift_name(forgiving))
            }
            Found::StrictAfterHeavy { forgiving } => {
                format!("It comes on the day after {}.", self.lift_name(forgiving))
            }
            Found::PairTooClose { partner, days, needed } => format!(
                "{} between it and {}; {needed} asked for.",
                counted(u32::from(*days), "rest day"),
                self.lift_name(partner)
            ),
            _ => return None,
        })
    }

    fn stuck(&self, load: Mass, cap: Mass, next: Option<Mass>, discs: &[Mass]) -> String {
        let next = next.map_or_else(
            || "nothing heavier can be made".to_string(),
            |next| format!("the next load is {}", self.mass(next)),
        );
        let help = if discs.is_empty() {
            String::new()
        } else {
            let pairs: Vec<String> = discs.iter().map(|disc| face(*disc)).collect();
            format!(" A pair would help of: {}.", pairs.join(", "))
        };
        let (load, cap) = (self.mass(load), self.cap(cap, Some(load)));
        format!("no step up from {load} can be loaded: the cap is {cap}, and {next}.{help}")
    }

    fn beside(&self, below: Option<Mass>, above: Option<Mass>) -> String {
        match (below, above) {
            (None, None) => String::new(),
            (Some(below), None) => format!("; the heaviest is {}", self.mass(below)),
            (None, Some(above)) => format!("; the lightest is {}", self.mass(above)),
            (Some(below), Some(above)) => {
                format!("; it makes {} and {}", self.mass(below), self.mass(above))
            }
        }
    }

    fn listed(&self, lifts: &[Name]) -> String {
        let names: Vec<&str> = lifts.iter().map(|lift| self.lift_name(lift)).collect();
        names.join(", ")
    }
}

/// Whether a finding names a load as it is where the lift starts. Further up only a lift whose load moves is still there.
fn names_a_load_of_the_start(found: &Found, set: &LiftParameters) -> bool {
    match found {
        Found::ReferenceNotLighter { .. }
        | Found::StartNotLoadable { .. }
        | Found::StuckAtStart { .. }
        | Found::CeilingBelowStart { .. }
        | Found::StepAboveCap { .. }
        | Found::PairStartAboveCap { .. }
        | Found::ClearanceBelowStart { .. } => true,
        Found::StuckLater { .. } | Found::WindowBelowStep { .. } => set.moving == Dimension::Load,
        _ => false,
    }
}

/// Findings without a load or a partner; every code left over must be named here.
fn plain(found: &Found) -> String {
    match found {
        Found::ParametersRefused { error, field } => {
            format!("The parameters are refused: {error} in {field}.")
        }
        Found::UnknownImplement { implement } => format!("The equipment has no {implement}."),
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
            "The plan asks for {sets} x {reps}; the lift allows {granted_sets} x {granted_reps}, and the plan can \
             only ask for less."
        ),
        Found::PlanNeverPasses { sets, reps, granted_sets, granted_reps } => format!(
            "The plan asks for {sets} x {reps} of the {granted_sets} x {granted_reps} that the lift has: no such \
             session counts as a pass. Lower the work of the lift instead."
        ),
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
        Found::HeightOff { height, mm } => format!(
            "Nothing holds the bar at a height of {height}: the nearest way lies {} mm {} it.",
            numeric::round(mm.abs()),
            if *mm > 0.0 { "above" } else { "below" }
        ),
        Found::HeightUnknown => {
            "No disc tells its diameter, so nobody knows how high the bar begins. Measure the discs."
                .to_string()
        }
        Found::NotCleared => "Not cleared: nobody trains.".to_string(),
        Found::GateNeverOpens { .. }
        | Found::GateTooLong { .. }
        | Found::GateOpensForAnyone { .. }
        | Found::GateRarelyOpens { .. }
        | Found::GateNeedsNoTechnique
        | Found::ReserveBelowGate { .. } => of_gates(found),
        // Named in the groups that come first.
        Found::NothingToMove { .. }
        | Found::ReferenceNotLighter { .. }
        | Found::StartNotLoadable { .. }
        | Found::RegionWithoutLift { .. }
        | Found::StuckAtStart { .. }
        | Found::StuckLater { .. }
        | Found::CeilingBelowStart { .. }
        | Found::StepAboveCap { .. }
        | Found::WindowBelowStep { .. }
        | Found::PairStartAboveCap { .. }
        | Found::ClearanceBelowStart { .. }
        | Found::RegionShared { .. }
        | Found::UnknownPairLift { .. }
        | Found::PairBothMove { .. }
        | Found::PairInOneSession { .. }
        | Found::StrictAfterHeavy { .. }
        | Found::PairTooClose { .. } => String::new(),
    }
}

fn of_gates(found: &Found) -> String {
    match found {
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
        Found::ReserveBelowGate { plan, asks } => {
            format!("The plan leaves {plan} in reserve, and the gate asks for {asks}: it can never open.")
        }
        _ => "The gate can open without a look at any repetition.".to_string(),
    }
}

fn percent(part: f64) -> String {
    format!("{} %", numeric::round(part * 100.0))
}
