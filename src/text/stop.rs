//! Stops, which come first in every answer: the sign by its name, what to do at once, and then the clinician, once.

use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use super::day::day;
use super::sign::{ask, pain_feature, stop_sign};
use super::words::Words;
use crate::caution::Caution;
use crate::prescription::{LiftToday, SessionPlan, Verdict};
use crate::quantity::Day;
use crate::reason::{Reason, SignOffRefusal};
use crate::sign::{Ask, StopSign};

/// For signs that pass or come back: the wording of the caution `emergency_signs`.
const RACK_AND_SIT: &str = "Rack the weight, sit down, end the session, and call for help if it does not pass in minutes or comes back.";
const EVERY_LIFT: &str =
    "Every lift stays stopped until a clinician has cleared it and the coach has signed off.";
const THESE_LIFTS: &str = "The lifts that this concerns stay stopped until a clinician has cleared it and the coach has signed off.";

/// Where what is stopped is no part of the session.
const ELSEWHERE: &str = "Stop: a stop is in force that no lift of this session names.";

/// What a reason does to the session.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Halt {
    Symptom,
    Pain,
    Unnamed,
    First,
}

const fn halt(reason: &Reason) -> Option<Halt> {
    match reason {
        Reason::SymptomStop { .. } => Some(Halt::Symptom),
        Reason::PainStop { .. } => Some(Halt::Pain),
        Reason::Stopped => Some(Halt::Unnamed),
        Reason::ClearanceAfterIllness | Reason::AsksFirst { .. } | Reason::LimitWithoutLift { .. } => {
            Some(Halt::First)
        }
        _ => None,
    }
}

/// Whether a reason stops a lift.
pub(super) const fn is_stop(reason: &Reason) -> bool {
    halt(reason).is_some()
}

/// Whether these stops say it already: itself, or by a graver one that the bare word stands for.
pub(super) fn says_already(stops: &[Reason], reason: &Reason) -> bool {
    let named = |stop: &Reason| halt(stop).is_some_and(|halt| halt < Halt::Unnamed);
    stops.contains(reason) || (*reason == Reason::Stopped && stops.iter().any(named))
}

/// Each stop once, the gravest first; the bare word that a lift is stopped is left out beside what stops it.
pub(super) fn in_order<'a>(reasons: impl Iterator<Item = &'a Reason>) -> Vec<&'a Reason> {
    let mut stops: Vec<&Reason> = Vec::new();
    for reason in reasons.filter(|reason| is_stop(reason)) {
        if !stops.contains(&reason) {
            stops.push(reason);
        }
    }
    crate::numeric::sort::sort_by_key(&mut stops, |reason| halt(reason));
    if stops.first().is_some_and(|reason| halt(reason) < Some(Halt::Unnamed)) {
        stops.retain(|reason| halt(reason) != Some(Halt::Unnamed));
    }
    stops
}

impl Words<'_> {
    /// Why a lift is stopped and what to do now; none where it is not.
    #[must_use]
    pub fn stop(&self, lift: &LiftToday) -> Option<String> {
        (lift.verdict == Verdict::Stop).then(|| self.halt_line(lift.reasons.iter()))
    }

    /// What stands above everything else where these stop: each stop with what to do at once, then the signs of an emergency,
    /// then one paragraph on the clinician. Empty where nothing stops.
    ///
    /// A sign reported on `today` asks for help now; without the day, or on a later one, only where nobody has examined it yet.
    #[must_use]
    pub fn stops(&self, stops: &[Reason], today: Option<Day>) -> Vec<String> {
        self.stops_of("", stops, &[], today)
    }

    /// The same with the cautions beside the answer, and the name of the lifter where there are several.
    pub(super) fn stops_of(
        &self,
        whose: &str,
        stops: &[Reason],
        cautions: &[Caution],
        today: Option<Day>,
    ) -> Vec<String> {
        let stops = in_order(stops.iter());
        let mut lines = self.halts(whose, &stops, today);
        lines.extend(self.end_of_stops(&stops, cautions, lines.is_empty()));
        lines
    }

    /// What stands above everything else in a session with a stop; empty in one without.
    pub(super) fn session_stops(&self, session: &SessionPlan) -> Vec<String> {
        let stopped = session.lifts.iter().filter(|lift| lift.verdict == Verdict::Stop);
        let of_lifts = stopped.clone().flat_map(|lift| &lift.reasons);
        let stops: Vec<Reason> = session.stops.iter().chain(of_lifts).cloned().collect();
        let beside = stopped.flat_map(|lift| &lift.cautions);
        let cautions: Vec<Caution> = session.cautions.iter().chain(beside).copied().collect();
        self.stops_of("", &stops, &cautions, Some(session.today))
    }

    /// Behind the stops: the signs of an emergency, then one paragraph on the clinician. Of a stop that is not named itself, so
    /// much is said first; a clinician's word that is advised where nothing is stopped is no stop.
    pub(super) fn end_of_stops(&self, stops: &[&Reason], cautions: &[Caution], unnamed: bool) -> Vec<String> {
        let mut cautions: Vec<Caution> = cautions.iter().copied().chain(of_stops(stops)).collect();
        cautions.retain(|caution| Caution::OF_A_STOP.contains(caution));
        crate::numeric::sort::sort(&mut cautions);
        cautions.dedup();
        let mut lines = Vec::new();
        if unnamed {
            if !cautions.contains(&Caution::EmergencySigns) {
                return lines;
            }
            lines.push(ELSEWHERE.to_string());
        }
        let (first, last): (Vec<Caution>, Vec<Caution>) =
            cautions.into_iter().partition(|caution| *caution != Caution::SeeClinicianFirst);
        lines.extend(first.into_iter().map(|caution| self.caution(caution)));
        let see = last.into_iter().map(|caution| self.caution(caution));
        let paragraph: Vec<String> = clinician(stops).map(String::from).into_iter().chain(see).collect();
        if !paragraph.is_empty() {
            lines.push(paragraph.join(" "));
        }
        lines
    }

    /// Each stop, with what to do at once.
    pub(super) fn halts(&self, whose: &str, stops: &[&Reason], today: Option<Day>) -> Vec<String> {
        let mut lines = Vec::new();
        for reason in stops {
            lines.extend(self.stopped_by(reason).map(|line| format!("{whose}{line}")));
            if let Reason::SymptomStop { signs, since } = reason {
                lines.extend(at_once(signs, today == Some(*since)));
            }
        }
        lines
    }

    /// The same in one paragraph, and then the clinician.
    fn halt_line<'a>(&self, reasons: impl Iterator<Item = &'a Reason>) -> String {
        let stops = in_order(reasons);
        let mut lines = self.halts("", &stops, None);
        lines.extend(clinician(&stops).map(String::from));
        lines.join(" ")
    }

    /// A stop alone, in one paragraph.
    pub(super) fn stop_reason(&self, reason: &Reason) -> Option<String> {
        is_stop(reason).then(|| self.halt_line(core::iter::once(reason)))
    }

    /// What stops, and since when.
    fn stopped_by(&self, reason: &Reason) -> Option<String> {
        Some(match reason {
            Reason::SymptomStop { signs, since } if signs.is_empty() => {
                format!("Stop: on {} the answer about clearance was not to train.", day(*since))
            }
            Reason::SymptomStop { signs, since } => {
                let signs: Vec<&str> = signs.iter().map(|sign| stop_sign(*sign)).collect();
                format!("Stop: {}, reported on {}.", signs.join("; "), day(*since))
            }
            Reason::PainStop { region, since, features } => {
                let said: Vec<&str> = features.iter().map(|feature| pain_feature(*feature)).collect();
                let with = if said.is_empty() { String::new() } else { format!(" ({})", said.join("; ")) };
                format!("Stop: pain in the {}{with}, reported on {}.", self.region_name(region), day(*since))
            }
            Reason::Stopped => "Stop: this lift was stopped earlier.".to_string(),
            Reason::ClearanceAfterIllness => {
                "Stop: after an illness or operation a clinician's new clearance comes first.".to_string()
            }
            Reason::AsksFirst { ask, since } => asked_first(*ask, *since),
            Reason::LimitWithoutLift { region } => format!(
                "Stop: a clearance limits the {}, which no lift here loads any more, so nobody can tell what it \
                 still concerns. A clinician's new clearance comes first.",
                self.region_name(region)
            ),
            _ => return None,
        })
    }
}

fn asked_first(asked: Ask, since: Day) -> String {
    let (what, since) = (ask(asked), day(since));
    if asked.needs_clinician() {
        format!("Stop: {what}, reported on {since}. A clinician's word about it comes before training.")
    } else {
        format!("Stop: {what}, reported on {since}. The coach's word that it is over comes before training.")
    }
}

/// Why a sign-off lifted no stop.
pub(super) const fn sign_off_refusal(why: SignOffRefusal) -> &'static str {
    match why {
        SignOffRefusal::NoClearance => "no clearance that allows training had been given by then",
        SignOffRefusal::NotCleared => "the clearance said not to train",
        SignOffRefusal::ClearanceExpired => "the clearance had run out",
        SignOffRefusal::NamesNoRegion => "it names no region, and what is stopped is one",
        SignOffRefusal::ToldLater => "what stops was told only after it was given",
    }
}

/// What to do at once. A near-faint is recorded as a faint, so that one asks for both.
fn at_once(signs: &[StopSign], today: bool) -> Option<String> {
    let passing = |sign: &StopSign| matches!(sign, StopSign::Heartbeat | StopSign::Vision);
    let emergency = signs.iter().any(|sign| !passing(sign) && *sign != StopSign::Faint);
    let now = if today {
        "Call emergency help now."
    } else {
        "If nobody has examined it yet, or it comes back: call emergency help now."
    };
    match (emergency, signs.contains(&StopSign::Faint)) {
        (true, _) => Some(now.to_string()),
        (false, true) => Some(format!("{now} After a near-faint only: {}", lower_first(RACK_AND_SIT))),
        (false, false) => signs.iter().any(passing).then(|| RACK_AND_SIT.to_string()),
    }
}

fn lower_first(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map(|first| first.to_lowercase().chain(letters).collect()).unwrap_or_default()
}

/// Who has to say so before what is stopped goes on.
pub(super) fn clinician(stops: &[&Reason]) -> Option<&'static str> {
    match stops.iter().filter_map(|reason| halt(reason)).min()? {
        Halt::Symptom => Some(EVERY_LIFT),
        Halt::Pain | Halt::Unnamed => Some(THESE_LIFTS),
        // These say themselves whose word it takes.
        Halt::First => None,
    }
}

/// What to show beside these stops.
pub(super) fn of_stops(stops: &[&Reason]) -> Vec<Caution> {
    // A fever that is over is the coach's word.
    let coach = |reason: &Reason| matches!(reason, Reason::AsksFirst { ask, .. } if !ask.needs_clinician());
    match stops.iter().filter_map(|reason| halt(reason)).min() {
        Some(Halt::Symptom | Halt::Pain) => Caution::OF_A_STOP.to_vec(),
        Some(_) if stops.iter().any(|reason| !coach(reason)) => alloc::vec![Caution::SeeClinicianFirst],
        _ => Vec::new(),
    }
}

/// Cautions beside a session or a lift that a stop has not said already; after one, nothing of good results.
pub(super) fn cautions_beside(cautions: &[Caution], stopped: bool) -> impl Iterator<Item = Caution> {
    let said = move |caution: &Caution| {
        stopped && (Caution::OF_A_STOP.contains(caution) || *caution == Caution::HoldingIsGood)
    };
    cautions.iter().copied().filter(move |caution| !said(caution))
}
