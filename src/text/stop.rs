//! Stops, which come first in every answer: the sign by its name, what to do at once, and then the clinician, once.

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use super::phrases::Phrases;
use super::words::Words;
use crate::caution::Caution;
use crate::prescription::{LiftToday, SessionPlan, Verdict};
use crate::quantity::{Day, Name};
use crate::reason::{Reason, SignOffRefusal};
use crate::sign::StopSign;

/// What stops, what to do at once, and who has to say so before it goes on, by key.
pub(super) const STOPS: Phrases = &[
    ("stop.signs", "Stop: {signs}, reported on {day}."),
    ("stop.not_to_train", "Stop: on {day} the answer about clearance was not to train."),
    ("stop.pain", "Stop: pain in the {region}, reported on {day}."),
    ("stop.pain_with", "Stop: pain in the {region} ({features}), reported on {day}."),
    ("stop.earlier", "Stop: this lift was stopped earlier."),
    ("stop.after_illness", "Stop: after an illness or operation a clinician's new clearance comes first."),
    (
        "stop.ask_clinician",
        "Stop: {ask}, reported on {day}. A clinician's word about it comes before training.",
    ),
    (
        "stop.ask_coach",
        "Stop: {ask}, reported on {day}. The coach's word that it is over comes before training.",
    ),
    (
        "stop.limit_without_lift",
        "Stop: a clearance limits the {region}, which no lift here loads any more, so nobody can tell what it still \
         concerns. A clinician's new clearance comes first.",
    ),
    // Where what is stopped is no part of the session.
    ("stop.elsewhere", "Stop: a stop is in force that no lift of this session names."),
    ("stop.call_now", "Call emergency help now."),
    (
        "stop.call_unless_examined",
        "If nobody has examined it yet, or it comes back: call emergency help now.",
    ),
    // For signs that pass or come back: the wording of the caution `emergency_signs`.
    (
        "stop.rack_and_sit",
        "Rack the weight, sit down, end the session, and call for help if it does not pass in minutes or comes back.",
    ),
    // A near-faint is recorded as a faint, so that one asks for both.
    (
        "stop.near_faint",
        "{call} After a near-faint only: rack the weight, sit down, end the session, and call for help if it does not pass \
         in minutes or comes back.",
    ),
    (
        "stop.every_lift",
        "Every lift stays stopped until a clinician has cleared it and the coach has signed off.",
    ),
    (
        "stop.these_lifts",
        "The lifts that this concerns stay stopped until a clinician has cleared it and the coach has signed off.",
    ),
    ("stop.line", "{stop} Stopped: {lift}."),
    ("stop.line_alone", "Stop: {lift}."),
    ("stop.heading", "{lift}: stop"),
];

/// Why a sign-off lifted no stop, by key.
pub(super) const SIGN_OFFS: Phrases = &[
    ("sign_off.no_clearance", "no clearance that allows training had been given by then"),
    ("sign_off.not_cleared", "the clearance said not to train"),
    ("sign_off.clearance_expired", "the clearance had run out"),
    ("sign_off.names_no_region", "it names no region, and what is stopped is one"),
    ("sign_off.told_later", "what stops was told only after it was given"),
];

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
            lines.push(self.say("stop.elsewhere", &[]));
        }
        let (first, last): (Vec<Caution>, Vec<Caution>) =
            cautions.into_iter().partition(|caution| *caution != Caution::SeeClinicianFirst);
        lines.extend(first.into_iter().map(|caution| self.caution(caution)));
        let see = last.into_iter().map(|caution| self.caution(caution));
        let paragraph: Vec<String> = self.clinician(stops).into_iter().chain(see).collect();
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
                lines.extend(self.at_once(signs, today == Some(*since)));
            }
        }
        lines
    }

    /// The same in one paragraph, and then the clinician.
    fn halt_line<'a>(&self, reasons: impl Iterator<Item = &'a Reason>) -> String {
        let stops = in_order(reasons);
        let mut lines = self.halts("", &stops, None);
        lines.extend(self.clinician(&stops));
        lines.join(" ")
    }

    /// A stop alone, in one paragraph.
    pub(super) fn stop_reason(&self, reason: &Reason) -> Option<String> {
        is_stop(reason).then(|| self.halt_line(core::iter::once(reason)))
    }

    /// What stops, and since when.
    fn stopped_by(&self, reason: &Reason) -> Option<String> {
        let on = |day: &Day| ("day", self.day(*day));
        let region = |region: &Name| ("region", self.region_name(region).into());
        Some(match reason {
            Reason::SymptomStop { signs, since } if signs.is_empty() => {
                self.say("stop.not_to_train", &[on(since)])
            }
            Reason::SymptomStop { signs, since } => {
                self.say("stop.signs", &[("signs", self.stop_signs(signs)), on(since)])
            }
            Reason::PainStop { region: at, since, features } if features.is_empty() => {
                self.say("stop.pain", &[region(at), on(since)])
            }
            Reason::PainStop { region: at, since, features } => {
                let features = ("features", self.pain_features(features));
                self.say("stop.pain_with", &[region(at), features, on(since)])
            }
            Reason::Stopped => self.say("stop.earlier", &[]),
            Reason::ClearanceAfterIllness => self.say("stop.after_illness", &[]),
            Reason::AsksFirst { ask, since } => {
                let key = if ask.needs_clinician() { "stop.ask_clinician" } else { "stop.ask_coach" };
                self.say(key, &[("ask", self.ask(*ask)), on(since)])
            }
            Reason::LimitWithoutLift { region: at } => self.say("stop.limit_without_lift", &[region(at)]),
            _ => return None,
        })
    }

    /// What to do at once. A near-faint is recorded as a faint, so that one asks for both.
    fn at_once(&self, signs: &[StopSign], today: bool) -> Option<String> {
        let passing = |sign: &StopSign| matches!(sign, StopSign::Heartbeat | StopSign::Vision);
        let emergency = signs.iter().any(|sign| !passing(sign) && *sign != StopSign::Faint);
        let call = || self.say(if today { "stop.call_now" } else { "stop.call_unless_examined" }, &[]);
        match (emergency, signs.contains(&StopSign::Faint)) {
            (true, _) => Some(call()),
            (false, true) => Some(self.say("stop.near_faint", &[("call", call())])),
            (false, false) => signs.iter().any(passing).then(|| self.say("stop.rack_and_sit", &[])),
        }
    }

    /// Who has to say so before what is stopped goes on.
    pub(super) fn clinician(&self, stops: &[&Reason]) -> Option<String> {
        match stops.iter().filter_map(|reason| halt(reason)).min()? {
            Halt::Symptom => Some(self.say("stop.every_lift", &[])),
            Halt::Pain | Halt::Unnamed => Some(self.say("stop.these_lifts", &[])),
            // These say themselves whose word it takes.
            Halt::First => None,
        }
    }

    /// Why a sign-off lifted no stop.
    pub(super) fn sign_off_refusal(&self, why: SignOffRefusal) -> String {
        let key = match why {
            SignOffRefusal::NoClearance => "sign_off.no_clearance",
            SignOffRefusal::NotCleared => "sign_off.not_cleared",
            SignOffRefusal::ClearanceExpired => "sign_off.clearance_expired",
            SignOffRefusal::NamesNoRegion => "sign_off.names_no_region",
            SignOffRefusal::ToldLater => "sign_off.told_later",
        };
        self.say(key, &[])
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
