//! A handover in words: what stops comes first, then each lift, then what changed.

use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use super::gate::listed;
use crate::answers::{ActSince, ChangedSince, Handover, LastDone, LiftHandover, LiftMoved, PainNow, StopNow};
use crate::gate::Outcome;
use crate::progression::{MoveOutlook, Purpose};
use crate::quantity::{Day, Name};
use crate::reason::Reason;
use crate::record::{ClearanceLimits, ClearanceStatus, Grant};
use crate::text::capital;
use crate::text::phrases::Phrases;
use crate::text::place::with_place;
use crate::text::session::status_beside;
use crate::text::stop::{cautions_beside, in_order, says_already};
use crate::text::words::Words;

pub(in crate::text) const HANDOVER: Phrases = &[
    ("handover.heading", "{lifter}, {day}."),
    ("handover.heading_age", "{lifter}, {age} years old, {day}."),
    ("handover.cleared_stop", "A clearance for it is there; the coach's sign-off is not."),
    ("handover.signed_stop", "The coach's sign-off is there; a clearance is not."),
    ("handover.ill", "Ill since {day}: a new clearance comes before training."),
    ("handover.clearance", "Clearance of {day}: {status}, until {until}."),
    ("handover.clearance_over", "Clearance of {day}: {status}, over since {until}."),
    ("clearance.cleared", "cleared"),
    ("clearance.cleared_with_limits", "cleared within limits"),
    ("clearance.not_cleared", "not cleared"),
    ("limit.everywhere", "Limit: {limit}."),
    ("limit.region", "Limit for the {region}: {limit}."),
    ("limit.load", "no load above {load}, whatever the rung, range or tempo"),
    ("limit.effort", "no rating above {rating}"),
    ("limit.range", "no deeper than {range}"),
    ("limit.no_loaded_flexion", "no loaded bending of the spine"),
    ("limit.no_breath_hold", "no long breath-hold"),
    ("handover.body_mass", "Body mass {mass} on {day}."),
    ("handover.pain", "Pain in the {region}: {score} of 10 on {day}."),
    ("handover.pain_usual", "Agreed as usual since {day}: {score} of 10."),
    ("handover.pain_clear", "{sessions} without more than usual are needed before a step."),
    ("handover.pain_persists", "It rises or stands high over three sessions: a clinician should look at it."),
    ("handover.lift", "{lift}: {status}, {sets} x {reps} at {load}."),
    ("handover.lift_limit", "Today at most {load}."),
    ("handover.ceiling", "The coach allows no load above {load}, whatever the rung, range or tempo."),
    ("handover.height", "The bar starts at {height}."),
    ("handover.maintained", "Kept on purpose."),
    ("handover.maintained_band", "Kept on purpose; down to {load} it is on plan."),
    ("handover.gate", "Gate: {gate}."),
    ("handover.gate_missing", "Still missing: {missing}."),
    (
        "handover.on_offer",
        "The gate is open: a step to {to} is earned, and whether it is for today, the session of today says; staying is as \
         good.",
    ),
    ("handover.criteria", "Looked at: {criteria}."),
    ("handover.no_criteria", "Nothing is named that technique is judged by."),
    ("criterion.critical", "{criterion} (must hold in every repetition)"),
    ("handover.override", "Overruled by {who} until {until}, to {load}."),
    ("handover.override_why", "Overruled by {who} until {until}, to {load}: {why}"),
    ("handover.unguarded", "Last said to be alone under the bar without pins."),
    ("handover.kit", "Set up with: {kit}."),
    ("handover.last", "Last on {day}: {sets}; {outcome}."),
    ("outcome.pass", "passed"),
    ("outcome.fail", "not passed"),
    ("outcome.not_scored", "too little was seen to say"),
    ("outcome.none", "counted toward nothing"),
    ("handover.cue", "Said last: {cue}."),
    ("handover.note", "Written beside it: {note}"),
    ("handover.changed", "Since {day}: {sessions}."),
    ("handover.moved", "{lift}: {before} then, {after} now."),
    ("handover.new_lift", "{lift}: new, {after} now."),
    ("handover.stands", "{sets} x {reps} at {load}, {status}"),
    ("handover.act", "{day}: {act}"),
    ("act.advance_accepted", "step taken"),
    ("act.advance_declined", "step declined"),
    ("act.ask_answered", "what was asked before training is answered"),
    ("act.bar_or_discs_changed", "other bar or discs"),
    ("act.block_ended", "block ended"),
    ("act.block_started", "block begun"),
    ("act.clearance_expired", "clearance ended"),
    ("act.clearance_recorded", "clearance recorded"),
    ("act.coach_override", "override by the coach"),
    ("act.coach_sign_off", "the coach signed off"),
    ("act.function_tested", "test of everyday function"),
    ("act.layoff_noted", "break noted"),
    ("act.parameters_changed", "parameters changed"),
    ("act.range_changed", "moved to another range by the coach"),
    ("act.rater_changed", "somebody else marks"),
    ("act.role_set", "other role"),
    ("act.session_missed", "session missed"),
    ("act.symptom_report", "stop sign reported"),
    ("act.unknown", "entry of a newer version"),
    ("act.usual_pain_agreed", "usual level of pain agreed"),
    ("act.variant_changed", "moved to another rung by the coach"),
];

/// Whether that reason is the stop.
fn is_of(now: &StopNow, reason: &Reason) -> bool {
    match reason {
        Reason::SymptomStop { .. } => now.region.is_none(),
        Reason::PainStop { region, .. } => now.region.as_ref() == Some(region),
        _ => false,
    }
}

/// What of its reopening is there, where one of two is.
const fn reopening_key(now: &StopNow) -> Option<&'static str> {
    match (now.cleared, now.signed) {
        (true, false) => Some("handover.cleared_stop"),
        (false, true) => Some("handover.signed_stop"),
        _ => None,
    }
}

impl Words<'_> {
    /// A handover in sentences.
    #[must_use]
    pub fn handover(&self, handover: &Handover) -> Vec<String> {
        let mut said = self.stops_and_reopening(handover);
        let stopped = !said.is_empty();
        said.extend(handover.ill_since.map(|since| self.say("handover.ill", &[("day", self.day(since))])));
        said.push(self.heading(handover));
        said.extend(self.clearance_now(handover));
        said.extend(handover.pain.iter().map(|pain| self.pain_now(pain)));
        for lift in &handover.lifts {
            said.extend(self.for_lift(&lift.lift).lift_handover(lift, stopped, &handover.stops));
        }
        said.extend(self.changed_since(&handover.changed, &handover.lifts));
        said.extend(handover.missing.iter().map(|lacking| self.lacking(lacking)));
        said.extend(cautions_beside(&handover.cautions, stopped).map(|caution| self.caution(caution)));
        said
    }

    fn heading(&self, handover: &Handover) -> String {
        let mut with =
            alloc::vec![("lifter", handover.lifter.to_string()), ("day", self.day(handover.today))];
        let body = handover.body_mass.map(|(on, mass)| {
            format!(
                " {}",
                self.say("handover.body_mass", &[("mass", self.mass(mass)), ("day", self.day(on))])
            )
        });
        let key = match handover.age {
            Some(age) => {
                with.push(("age", age.to_string()));
                "handover.heading_age"
            }
            None => "handover.heading",
        };
        format!("{}{}", self.say(key, &with), body.unwrap_or_default())
    }

    /// Each stop with what to do now, and what of its reopening is there; then the clinician, once.
    fn stops_and_reopening(&self, handover: &Handover) -> Vec<String> {
        let (stops, mut said) = (in_order(handover.stops.iter()), Vec::new());
        for stop in &stops {
            let now = handover.reopening.iter().find(|now| is_of(now, stop));
            // Who has cleared it has examined it.
            let today = Some(handover.today).filter(|_| !now.is_some_and(|now| now.cleared));
            said.extend(self.halts("", &[*stop], today));
            let key = now.and_then(reopening_key);
            said.extend(key.map(|key| self.say(key, &[])));
        }
        let unnamed = said.is_empty();
        said.extend(self.end_of_stops(&stops, &handover.cautions, unnamed));
        said
    }

    fn clearance_now(&self, handover: &Handover) -> Vec<String> {
        let Some(given) = &handover.clearance else { return Vec::new() };
        let status = match given.status {
            ClearanceStatus::Cleared => "clearance.cleared",
            ClearanceStatus::ClearedWithLimits => "clearance.cleared_with_limits",
            ClearanceStatus::NotCleared => "clearance.not_cleared",
        };
        let over = given.expires < handover.today;
        let key = if over { "handover.clearance_over" } else { "handover.clearance" };
        let with = [
            ("day", self.day(given.given)),
            ("status", self.say(status, &[])),
            ("until", self.day(given.expires)),
        ];
        let limits = given.limits.iter().map(|limit| self.limit(limit));
        core::iter::once(self.say(key, &with)).chain(limits).collect()
    }

    /// A limit of a clearance in plain words.
    #[must_use]
    pub fn limit(&self, limit: &ClearanceLimits) -> String {
        let mut parts = Vec::new();
        parts.extend(limit.load.map(|load| self.say("limit.load", &[("load", self.at_most(load))])));
        parts.extend(limit.effort.map(|most| self.say("limit.effort", &[("rating", most.to_string())])));
        parts.extend(limit.range.map(|range| self.say("limit.range", &[("range", self.range(range))])));
        if limit.no_loaded_flexion {
            parts.push(self.say("limit.no_loaded_flexion", &[]));
        }
        if limit.no_breath_hold {
            parts.push(self.say("limit.no_breath_hold", &[]));
        }
        let with = ("limit", parts.join(", "));
        match &limit.region {
            Some(region) => {
                self.say("limit.region", &[("region", self.region_name(region).to_string()), with])
            }
            None => self.say("limit.everywhere", &[with]),
        }
    }

    fn pain_now(&self, pain: &PainNow) -> String {
        let score = |key, on: Day, score: crate::quantity::Pain| {
            let region = self.region_name(&pain.region).to_string();
            self.say(key, &[("region", region), ("day", self.day(on)), ("score", score.score().to_string())])
        };
        let mut said = alloc::vec![score("handover.pain", pain.last.0, pain.last.1)];
        said.extend(pain.usual.map(|(agreed, level)| score("handover.pain_usual", agreed, level)));
        if pain.clear_needed > 0 {
            let sessions = self.count("session", u32::from(pain.clear_needed));
            said.push(capital(&self.say("handover.pain_clear", &[("sessions", sessions)])));
        }
        if pain.persists {
            said.push(self.say("handover.pain_persists", &[]));
        }
        said.join(" ")
    }

    fn lift_handover(&self, lift: &LiftHandover, stopped: bool, stops: &[Reason]) -> Vec<String> {
        let name = capital(self.lift_name(&lift.lift));
        let mut with = self.work(lift, lift.granted, status_beside(&lift.status, &lift.outlook));
        with.push(("lift", name));
        let place = self.place(&lift.lift, lift.granted.place);
        let each = |load| self.one_by_one(&lift.lift, self.at_most(load));
        let mut said = alloc::vec![self.say("handover.lift", &with)];
        if lift.limit != lift.granted.load() {
            let limit = with_place(each(lift.limit), &place);
            said.push(self.say("handover.lift_limit", &[("load", limit)]));
        }
        said.extend(lift.ceiling.map(|load| self.say("handover.ceiling", &[("load", each(load))])));
        said.extend(lift.height.map(|height| self.say("handover.height", &[("height", self.range(height))])));
        if let Purpose::Maintain { not_below } = lift.purpose {
            said.push(match not_below {
                Some(load) => {
                    let least = with_place(self.one_by_one(&lift.lift, self.at_least(load)), &place);
                    self.say("handover.maintained_band", &[("load", least)])
                }
                None => self.say("handover.maintained", &[]),
            });
        }
        said.extend(self.gate_now(lift, stopped, stops));
        said.push(self.criteria_said(lift));
        if let Some(given) = &lift.overruled {
            let mut with = alloc::vec![
                ("who", given.who.to_string()),
                ("until", self.day(given.until)),
                ("load", self.written_at(&lift.lift, lift.granted.place, given.load)),
            ];
            let key = if given.why.is_some() { "handover.override_why" } else { "handover.override" };
            with.extend(given.why.clone().map(|why| ("why", why)));
            said.push(self.say(key, &with));
            let waits = given.waits.then_some(Reason::OverrideSuspended { load: given.load });
            said.extend(waits.map(|waits| self.reason_handed_over(lift, &waits)));
        }
        said.extend(lift.limits.iter().map(|limit| self.limit(limit)));
        if lift.unguarded {
            said.push(self.say("handover.unguarded", &[]));
        }
        let kit = lift.setup.as_ref().and_then(|seen| seen.kit.as_ref()).filter(|kit| !kit.is_empty());
        said.extend(kit.map(|kit| {
            let kit = listed(kit.iter().map(ToString::to_string));
            self.say("handover.kit", &[("kit", kit)])
        }));
        said.extend(lift.last.as_ref().into_iter().flat_map(|last| self.last_done(&lift.lift, last)));
        said
    }

    /// Sets, repetitions, load with its place, status.
    fn work(
        &self,
        lift: &LiftHandover,
        grant: Grant,
        stands: &crate::progression::Status,
    ) -> Vec<(&'static str, String)> {
        self.grant_said(&lift.lift, grant, stands)
    }

    fn grant_said(
        &self,
        lift: &crate::quantity::Name,
        grant: Grant,
        stands: &crate::progression::Status,
    ) -> Vec<(&'static str, String)> {
        alloc::vec![
            ("status", self.status(stands)),
            ("sets", grant.work.sets.to_string()),
            ("reps", grant.work.reps.to_string()),
            ("load", self.load_at(lift, grant.place, grant.load())),
        ]
    }

    fn gate_now(&self, lift: &LiftHandover, stopped: bool, stops: &[Reason]) -> Vec<String> {
        let mut said =
            alloc::vec![self.say("handover.gate", &[("gate", self.requirement(lift.gate.requirement()))])];
        let missing = listed(lift.gate_state.missing.iter().map(|missing| self.missing(missing)));
        if !missing.is_empty() {
            said.push(self.say("handover.gate_missing", &[("missing", missing)]));
        }
        match &lift.outlook {
            MoveOutlook::OnOffer { to } if !stopped => {
                let to = self.step_from(&lift.lift, lift.granted, *to);
                said.push(self.say("handover.on_offer", &[("to", to)]));
            }
            MoveOutlook::OnOffer { .. } => {}
            MoveOutlook::Blocked { by, .. } => {
                // What stops is said above all lifts; what is not said there is said here.
                let by = by.iter().filter(|reason| !says_already(stops, reason));
                said.extend(by.map(|reason| self.reason_handed_over(lift, reason)));
            }
        }
        said
    }

    fn criteria_said(&self, lift: &LiftHandover) -> String {
        let criterion = |criterion: &crate::gate::Criterion| match criterion.critical {
            true => self.say("criterion.critical", &[("criterion", criterion.id.to_string())]),
            false => criterion.id.to_string(),
        };
        if lift.criteria.is_empty() {
            return self.say("handover.no_criteria", &[]);
        }
        self.say("handover.criteria", &[("criteria", listed(lift.criteria.iter().map(criterion)))])
    }

    fn last_done(&self, lift: &Name, last: &LastDone) -> Vec<String> {
        let outcome = match last.outcome {
            Some(Outcome::Pass) => "outcome.pass",
            Some(Outcome::Fail) => "outcome.fail",
            Some(Outcome::NotScored) => "outcome.not_scored",
            None => "outcome.none",
        };
        let load = |load| self.one_by_one(lift, self.mass(load));
        let sets = listed(last.sets.iter().map(|set| format!("{} x {}", load(set.load), set.reps)));
        let place = last.place.as_ref().map(|place| self.named_place(Some(lift), place));
        let on = with_place(self.day(last.day), &place.unwrap_or_default());
        let with = [("day", on), ("sets", sets), ("outcome", self.say(outcome, &[]))];
        let mut said = alloc::vec![self.say("handover.last", &with)];
        said.extend(last.cue.as_ref().map(|cue| self.say("handover.cue", &[("cue", cue.to_string())])));
        said.extend(last.note.as_ref().map(|note| self.say("handover.note", &[("note", note.clone())])));
        said
    }

    fn changed_since(&self, changed: &ChangedSince, lifts: &[LiftHandover]) -> Vec<String> {
        let with = [("day", self.day(changed.since)), ("sessions", self.count("session", changed.sessions))];
        let mut said = alloc::vec![self.say("handover.changed", &with)];
        said.extend(changed.lifts.iter().map(|moved| self.moved(moved, lifts)));
        said.extend(changed.acts.iter().map(|act| self.act_since(act)));
        said
    }

    fn moved(&self, moved: &LiftMoved, lifts: &[LiftHandover]) -> String {
        let stands = |(grant, stands): &(Grant, crate::progression::Status)| {
            self.say("handover.stands", &self.grant_said(&moved.lift, *grant, stands))
        };
        let lift = ("lift", capital(self.lift_name(&moved.lift)));
        let outlook = lifts.iter().find(|lift| lift.lift == moved.lift).map(|lift| &lift.outlook);
        let (grant, status) = &moved.to;
        let status = outlook.map_or(status, |outlook| status_beside(status, outlook));
        let after = stands(&(*grant, status.clone()));
        match &moved.from {
            Some(from) => self.say("handover.moved", &[lift, ("before", stands(from)), ("after", after)]),
            None => self.say("handover.new_lift", &[lift, ("after", after)]),
        }
    }

    fn act_since(&self, act: &ActSince) -> String {
        let what = self.say(&format!("act.{}", act.kind), &[]);
        let lift = act.lift.as_ref().map(|lift| format!(", {}", self.lift_name(lift))).unwrap_or_default();
        let note = act.note.as_ref().map(|note| format!(" ({note})")).unwrap_or_default();
        self.say("handover.act", &[("day", self.day(act.day)), ("act", format!("{what}{lift}{note}."))])
    }
}
