//! What would change an answer, as sentences: each true by itself, and each saying who does what.

use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use super::counted;
use super::sign::ask;
use super::words::Words;
use crate::prescription::{Change, LiftToday};
use crate::quantity::Mass;
use crate::sign::Ask;

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
        self.change_at(change, |load| self.at_most(load))
    }

    /// Everything that would change the answer for a lift, loads with their place.
    #[must_use]
    pub fn changes(&self, lift: &LiftToday) -> Vec<String> {
        let at =
            |load| super::place::with_place(self.at_most(load), &self.place(&lift.lift, lift.granted.place));
        lift.would_change.iter().map(|change| self.change_at(change, at)).collect()
    }

    fn change_at(&self, change: &Change, at: impl Fn(Mass) -> String) -> String {
        match change {
            Change::ClearSessions { region, count } => format!(
                "A step needs the lifter to train {} without more pain in the {} than usual.",
                more_sessions(u32::from(*count)),
                self.region_name(region)
            ),
            Change::SmallerDiscs { up_to } => format!(
                "A step needs the coach to find discs or dumbbells for a smaller one, up to {}.",
                at(*up_to)
            ),
            Change::Implement { implement } => {
                format!("A step needs the coach to have the {implement} there.")
            }
            Change::UsualPainAgreed { region } => format!(
                "A step needs the coach and the lifter to agree anew on the usual level of pain in the {}.",
                self.region_name(region)
            ),
            Change::AskAnswered { ask } => asked(*ask),
            _ => counted_change(change).unwrap_or_else(|| plain(change).to_string()),
        }
    }
}

fn asked(asked: Ask) -> String {
    let what = ask(asked);
    if asked.needs_clinician() {
        format!(
            "Training needs the lifter to ask a clinician about {what}, and the coach to record the answer."
        )
    } else {
        format!("Training needs the coach to ask about {what} again, and to record that it is over.")
    }
}

fn more_sessions(count: u32) -> String {
    counted(count, "more session")
}

/// Those with a number.
fn counted_change(change: &Change) -> Option<String> {
    Some(match change {
        Change::PassingSessions { count: 1 } => {
            "A step needs the lifter to pass 1 more session, on another day.".to_string()
        }
        Change::PassingSessions { count } => {
            format!("A step needs the lifter to pass {count} more sessions in a row, each on another day.")
        }
        Change::LearningSessions { count } => {
            format!(
                "A step needs the lifter to train {}, to learn the lift.",
                more_sessions(u32::from(*count))
            )
        }
        Change::Days { count } => {
            format!("A step needs the coach to wait {}.", counted(u32::from((*count).max(1)), "more day"))
        }
        Change::Sessions { count } => {
            format!("A step needs the lifter to train this lift in {}.", more_sessions(u32::from(*count)))
        }
        _ => return None,
    })
}

/// Those without; every one left over must be named here.
fn plain(change: &Change) -> &'static str {
    match change {
        Change::CoachAccepts => "A step is taken only if the coach takes it.",
        Change::GateOpens => {
            "A step needs the lifter and the coach to meet the other conditions of the gate."
        }
        Change::NextMorningAnswer => "A step needs the lifter to answer the question of the morning after.",
        Change::PainAnswer => "A step needs the lifter to answer the question about pain.",
        Change::Clearance => "A step needs a clinician to give a new clearance, and the coach to record it.",
        Change::ClearanceAndSignOff => {
            "Training needs a clinician to give a clearance, and then the coach to sign off."
        }
        Change::DayReport => "A step needs the lifter to answer the questions of the day.",
        Change::SessionAsGranted => "A step needs the lifter to do all the work of a session at its place.",
        Change::MoreInReserve => "A step needs the lifter to end the sets with as much in reserve as asked.",
        Change::OrdinaryDay => {
            "A step needs the lifter to pass a session on a day within or above the usual."
        }
        Change::RecentSession => "A step needs the lifter to train this lift.",
        Change::ForgivingProof => {
            "A step needs the lifter to pass a session of the forgiving lift that is heavy enough for it."
        }
        Change::MoreRepetitions => {
            "A step in load may come later: the coach can let the lifter build repetitions at the same load first."
        }
        Change::BodyMass => "A step needs the coach to record the lifter's body mass.",
        Change::EasyWeekOver => "A step needs the coach to let the easy week end first.",
        Change::MoreTime => "A step needs the coach and the lifter to find more time for the session.",
        Change::PinsOrSpotter => "A step needs the coach to set pins or to find a spotter.",
        Change::CoachSetsOtherwise => "A step needs the coach to set something else for this lift.",
        Change::NewerLibrary => {
            "A step needs the coach to read the log with a newer version, which knows every event in it."
        }
        Change::PassingSessions { .. }
        | Change::LearningSessions { .. }
        | Change::Days { .. }
        | Change::ClearSessions { .. }
        | Change::AskAnswered { .. }
        | Change::UsualPainAgreed { .. }
        | Change::SmallerDiscs { .. }
        | Change::Sessions { .. }
        | Change::Implement { .. } => "",
    }
}
