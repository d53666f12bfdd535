//! Where the lift stands, and what stands between it and a step.

use alloc::format;
use alloc::string::{String, ToString};

use super::Telling;
use crate::progression::MoveOutlook;
use crate::quantity::Day;
use crate::reason::{Reason, Shortfall};
use crate::text::day::day;
use crate::text::{capital, counted};

impl Telling<'_> {
    pub(super) fn course(&self, reason: &Reason) -> Option<String> {
        Some(match reason {
            Reason::GateNotOpen => self.gate_not_open(),
            Reason::LearningNotDone { done, needed } => {
                format!("Learning the lift: {done} of {needed} sessions so far.")
            }
            Reason::Consolidating => "Just stepped up: settling in at the new place.".to_string(),
            Reason::SteppingBack => "One step easier, to look again.".to_string(),
            Reason::Resting => "Resting, as planned.".to_string(),
            // The load before the break is where the way back ends, not what is asked today.
            Reason::Returning { at_most } => format!(
                "Coming back after a break, step by step; the way back ends at the {} of before it.",
                self.words.at_most(*at_most)
            ),
            Reason::Maintaining => "Kept where it is on purpose.".to_string(),
            Reason::MaintainingBand { not_below } => {
                format!("Kept on purpose; down to {} it is on plan.", self.standing(*not_below))
            }
            Reason::ProbeDue { by, criterion: None } => {
                format!("A marked session at this place is due by {}, to see that it is kept.", day(*by))
            }
            Reason::ProbeDue { by, criterion: Some(criterion) } => {
                format!("Was weak before the last step, to be looked at again by {}: {criterion}.", day(*by))
            }
            Reason::Retired => "No longer used.".to_string(),
            Reason::Holding { sessions } => format!(
                "Holding, which is the work itself: {} at this place.",
                counted(u32::from(*sessions), "session")
            ),
            Reason::MoveOnOffer { until } => self.move_on_offer(*until),
            Reason::MoveRefused { .. } => {
                "The step that was last asked for was refused, for the reasons listed.".to_string()
            }
            Reason::SteppedBack { from } => format!("One step easier than {}.", self.standing(*from)),
            _ => {
                return self.session(reason).or_else(|| self.waiting(reason)).or_else(|| self.paired(reason));
            }
        })
    }

    /// A gate may be open by its count while the last session did not pass: the offer follows the next pass.
    fn gate_not_open(&self) -> String {
        let open = self.lift.is_some_and(|lift| lift.gate.open);
        if open {
            "A step waits for the next passing session."
        } else {
            "The technique gate is not open yet."
        }
        .to_string()
    }

    /// One verdict about a step: what is not on offer today is not called so.
    fn move_on_offer(&self, until: Day) -> String {
        let until = day(until);
        match self.lift.map(|lift| &lift.outlook) {
            Some(MoveOutlook::Blocked { .. }) => {
                format!(
                    "The gate is open; the step that it earned is not for today, and waits until {until}."
                )
            }
            _ => format!("The gate is open; the step that it earned waits until {until}, taken or not."),
        }
    }

    /// What the last sessions came to.
    fn session(&self, reason: &Reason) -> Option<String> {
        Some(match reason {
            Reason::PassProvisional { .. } => {
                "The last pass waits for the answer of the morning after.".to_string()
            }
            Reason::NotScored => "Nobody who counts marked the whole of the last session.".to_string(),
            Reason::NotAtGrant { short } => {
                format!("The last session was training and counts toward no step: {}.", shortfall(*short))
            }
            Reason::SetupChanged { since } => format!(
                "Height, stance, box, shoes, belt or straps changed on {}, so sessions before it are not compared.",
                day(*since)
            ),
            Reason::ReserveShort { sessions } => {
                format!("Less than asked was left in reserve in {sessions} of the last three sessions.")
            }
            Reason::NeverTrained => "This lift has not been trained yet.".to_string(),
            Reason::Stale { days, allowed } => {
                format!("The last session was {days} days ago; a step asks for one within {allowed}.")
            }
            _ => return None,
        })
    }

    /// Days and weeks between steps.
    fn waiting(&self, reason: &Reason) -> Option<String> {
        Some(match reason {
            Reason::CoolingOff { days_left } => {
                format!("The last step was recent: {}.", counted(u32::from(*days_left), "more day"))
            }
            Reason::RegionWindow { region, days_left } => format!(
                "Another lift stepped up on the {} recently: {}.",
                self.region(region),
                counted(u32::from(*days_left), "more day")
            ),
            Reason::WindowCap { load, days_left } => format!(
                "The load has grown enough for these weeks: no step goes past {} for {}.",
                self.at_most(*load),
                counted(u32::from((*days_left).max(1)), "more day")
            ),
            _ => return None,
        })
    }

    /// The other lift of the pair.
    fn paired(&self, reason: &Reason) -> Option<String> {
        let (strict, forgiving) = self.pair();
        Some(match reason {
            Reason::PairCap { load } => format!(
                "No step of {strict} goes past what {forgiving} has shown for it: {}.",
                self.at_most(*load)
            ),
            Reason::PairProofMissing => {
                format!("{} has no recent pass to lean on.", capital(&forgiving))
            }
            Reason::PairWindow { days_left } => {
                format!("Its partner stepped up recently: {}.", counted(u32::from(*days_left), "more day"))
            }
            Reason::PairFault => "The same critical fault in both lifts of the pair holds both.".to_string(),
            Reason::PairRest { days, needed } => format!(
                "Only {} since its partner; {needed} would be better.",
                counted(u32::from(*days), "full rest day")
            ),
            Reason::PairReview => {
                format!("{} has run far ahead: look at the pair, nothing is blocked.", capital(&forgiving))
            }
            _ => return None,
        })
    }
}

/// In what a session fell short.
fn shortfall(short: Shortfall) -> &'static str {
    match short {
        Shortfall::Rung => "it was on another rung",
        Shortfall::Range => "it had less range",
        Shortfall::Tempo => "it had another tempo",
        Shortfall::Load => "it had another load",
        Shortfall::Sets => "it had fewer sets",
        Shortfall::Reps => "it had fewer repetitions",
        Shortfall::Limit => "the day allowed less than the working load",
    }
}
