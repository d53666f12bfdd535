//! What would change an answer, as sentences: each true by itself, and each saying who does what.

use alloc::string::{String, ToString};
use alloc::vec::Vec;

use super::phrases::Phrases;
use super::words::Words;
use crate::prescription::{Change, LiftToday};
use crate::quantity::{Mass, Name};

/// What would change an answer, by key.
pub(super) const CHANGES: Phrases = &[
    ("count.more_day.one", "1 more day"),
    ("count.more_day.other", "{count} more days"),
    ("count.more_session.one", "1 more session"),
    ("count.more_session.other", "{count} more sessions"),
    ("count.more_session_in_a_row.one", "1 more session"),
    ("count.more_session_in_a_row.other", "{count} more sessions in a row"),
    ("change.coach_accepts", "A step is taken only if the coach takes it."),
    ("change.passing_session", "A step needs the lifter to pass 1 more session, on another day."),
    (
        "change.passing_sessions",
        "A step needs the lifter to pass {count} more sessions in a row, each on another day.",
    ),
    ("change.gate_opens", "A step needs the lifter and the coach to meet the other conditions of the gate."),
    ("change.learning_sessions", "A step needs the lifter to train {sessions}, to learn the lift."),
    ("change.next_morning_answer", "A step needs the lifter to answer the question of the morning after."),
    ("change.days", "A step needs the coach to wait {days}."),
    (
        "change.clear_sessions",
        "A step needs the lifter to train {sessions} without more pain in the {region} than usual.",
    ),
    (
        "change.steady_sessions",
        "A step needs the lifter to train {sessions} with pain in the {region} no more than the agreed usual level, and no \
         answer about it higher than the one before.",
    ),
    ("change.pain_answer", "A step needs the lifter to answer the question about pain."),
    ("change.clearance", "A step needs a clinician to give a new clearance, and the coach to record it."),
    (
        "change.clearance_or_ranges",
        "A step needs the coach to declare the ranges of this lift, one of them within the clearance, or a clinician to give a \
         new clearance.",
    ),
    (
        "change.clearance_and_sign_off",
        "Training needs a clinician to give a clearance, and then the coach to sign off.",
    ),
    ("change.day_report", "A step needs the lifter to answer the questions of the day."),
    (
        "change.ask_clinician",
        "Training needs the lifter to ask a clinician about {ask}, and the coach to record the answer.",
    ),
    ("change.ask_over", "Training needs the coach to ask about {ask} again, and to record that it is over."),
    ("change.session_as_granted", "A step needs the lifter to do all the work of a session at its place."),
    (
        "change.more_in_reserve",
        "A step needs the lifter to end the sets of {sessions} with as much in reserve as asked.",
    ),
    (
        "change.effort_said",
        "A step needs the lifter to say in {sessions} after each set how much was left in reserve.",
    ),
    (
        "change.override_ends",
        "A step needs the coach to end the override first: one to the working load, without a last day, ends it.",
    ),
    ("change.leave_out_partner", "A step needs the coach to leave {lift} out of this day's plan."),
    ("change.break_over", "Training needs the coach and the lifter to let the noted break end, with {day}."),
    ("change.day_within", "A step needs the coach to wait for a day within or above the usual."),
    (
        "change.pass_on_day_within",
        "A step needs the lifter to pass a session on a day within or above the usual.",
    ),
    ("change.recent_session", "A step needs the lifter to train this lift."),
    (
        "change.forgiving_proof",
        "A step needs the lifter to pass a session of the forgiving lift that is heavy enough for it.",
    ),
    (
        "change.smaller_discs",
        "A step needs the coach to find discs or dumbbells for a smaller one, up to {load}.",
    ),
    ("change.more_to_load", "A step needs the coach to find something heavier to load, up to {load}."),
    (
        "change.blocks_or_discs",
        "A step needs the coach to find blocks or discs that start the bar at {height}.",
    ),
    (
        "change.more_repetitions",
        "A step in load may come later: the coach can let the lifter build repetitions at the same load first.",
    ),
    (
        "change.usual_pain_agreed",
        "A step needs the coach and the lifter to agree anew on the usual level of pain in the {region}.",
    ),
    ("change.body_mass", "A step needs the coach to record the lifter's body mass."),
    ("change.easy_week_over", "A step needs the coach to let the easy week end first."),
    ("change.sessions", "A step needs the lifter to train this lift in {sessions}."),
    ("change.whole_work", "A step needs the coach to plan the whole of the work."),
    ("change.more_time", "A step needs the coach and the lifter to find more time for the session."),
    ("change.implement", "A step needs the coach to have the {implement} there."),
    ("change.pins_or_spotter", "A step needs the coach to set pins or to find a spotter."),
    ("change.coach_sets_otherwise", "A step needs the coach to set something else for this lift."),
    (
        "change.newer_library",
        "A step needs the coach to read the log with a newer version, which knows every event in it.",
    ),
];

impl Words<'_> {
    /// One thing that would change the answer. Each is needed; where there are several, none of them is enough alone.
    ///
    /// ```
    /// use bismar::{prescription::Change, text::Words};
    ///
    /// let said = Words::plain().change(&Change::PassingSessions { count: 1 });
    /// assert_eq!(said, "A step needs the lifter to pass 1 more session, on another day.");
    /// ```
    #[must_use]
    pub fn change(&self, change: &Change) -> String {
        self.change_at(change, |load| self.cap(load, None))
    }

    /// Everything that would change the answer for a lift, loads with their place.
    #[must_use]
    pub fn changes(&self, lift: &LiftToday) -> Vec<String> {
        let words = self.for_lift(&lift.lift);
        let at = |load| {
            let said = words.cap(load, Some(lift.granted.load()));
            let said = words.one_by_one(&lift.lift, said);
            super::place::with_place(said, &words.place(&lift.lift, lift.granted.place))
        };
        lift.would_change.iter().map(|change| self.change_at(change, at)).collect()
    }

    fn change_at(&self, change: &Change, at: impl Fn(Mass) -> String) -> String {
        let sessions =
            |key, count: u8| self.say(key, &[("sessions", self.count("more_session", u32::from(count)))]);
        let region = |region: &Name| ("region", self.region_name(region).to_string());
        match change {
            Change::PassingSessions { count: 1 } => self.say("change.passing_session", &[]),
            Change::PassingSessions { count } => {
                self.say("change.passing_sessions", &[("count", count.to_string())])
            }
            Change::LearningSessions { count } => sessions("change.learning_sessions", *count),
            Change::MoreInReserve { count } => sessions("change.more_in_reserve", *count),
            Change::EffortSaid { count } => sessions("change.effort_said", *count),
            Change::Sessions { count } => sessions("change.sessions", *count),
            Change::Days { count } => {
                self.say("change.days", &[("days", self.count("more_day", u32::from((*count).max(1))))])
            }
            Change::ClearSessions { region: at, count } => {
                let sessions = ("sessions", self.count("more_session", u32::from(*count)));
                self.say("change.clear_sessions", &[sessions, region(at)])
            }
            Change::SteadySessions { region: at, count } => {
                let sessions = ("sessions", self.count("more_session_in_a_row", u32::from(*count)));
                self.say("change.steady_sessions", &[sessions, region(at)])
            }
            Change::UsualPainAgreed { region: at } => self.say("change.usual_pain_agreed", &[region(at)]),
            Change::SmallerDiscs { up_to } => self.say("change.smaller_discs", &[("load", at(*up_to))]),
            Change::MoreToLoad { up_to } => self.say("change.more_to_load", &[("load", at(*up_to))]),
            Change::BlocksOrDiscs { height } => {
                self.say("change.blocks_or_discs", &[("height", height.to_string())])
            }
            Change::Implement { implement } => {
                self.say("change.implement", &[("implement", implement.to_string())])
            }
            Change::LeaveOutPartner { partner } => {
                self.say("change.leave_out_partner", &[("lift", self.lift_name(partner).to_string())])
            }
            Change::BreakOver { until } => self.say("change.break_over", &[("day", self.day(*until))]),
            Change::AskAnswered { ask: asked } => {
                let key = if asked.needs_clinician() { "change.ask_clinician" } else { "change.ask_over" };
                self.say(key, &[("ask", self.ask(*asked))])
            }
            _ => self.say(plain(change), &[]),
        }
    }
}

/// Keys of those without a value; every one left over must be named here.
const fn plain(change: &Change) -> &'static str {
    match change {
        Change::CoachAccepts => "change.coach_accepts",
        Change::GateOpens => "change.gate_opens",
        Change::NextMorningAnswer => "change.next_morning_answer",
        Change::PainAnswer => "change.pain_answer",
        Change::Clearance => "change.clearance",
        Change::ClearanceAndSignOff => "change.clearance_and_sign_off",
        Change::ClearanceOrRanges => "change.clearance_or_ranges",
        Change::DayReport => "change.day_report",
        Change::SessionAsGranted => "change.session_as_granted",
        Change::OverrideEnds => "change.override_ends",
        Change::DayWithin => "change.day_within",
        Change::PassOnDayWithin => "change.pass_on_day_within",
        Change::RecentSession => "change.recent_session",
        Change::ForgivingProof => "change.forgiving_proof",
        Change::MoreRepetitions => "change.more_repetitions",
        Change::BodyMass => "change.body_mass",
        Change::EasyWeekOver => "change.easy_week_over",
        Change::WholeWork => "change.whole_work",
        Change::MoreTime => "change.more_time",
        Change::PinsOrSpotter => "change.pins_or_spotter",
        Change::CoachSetsOtherwise => "change.coach_sets_otherwise",
        Change::NewerLibrary => "change.newer_library",
        Change::PassingSessions { .. }
        | Change::LearningSessions { .. }
        | Change::Days { .. }
        | Change::ClearSessions { .. }
        | Change::SteadySessions { .. }
        | Change::AskAnswered { .. }
        | Change::UsualPainAgreed { .. }
        | Change::SmallerDiscs { .. }
        | Change::MoreToLoad { .. }
        | Change::BlocksOrDiscs { .. }
        | Change::Sessions { .. }
        | Change::Implement { .. }
        | Change::LeaveOutPartner { .. }
        | Change::MoreInReserve { .. }
        | Change::EffortSaid { .. }
        | Change::BreakOver { .. } => "",
    }
}
