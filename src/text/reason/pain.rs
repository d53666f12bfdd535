//! Pain, the day, and what a clearance allows.

use alloc::format;
use alloc::string::{String, ToString};

use super::Telling;
use crate::reason::Reason;
use crate::record::Policy;
use crate::text::day::day;
use crate::text::{capital, counted};

impl Telling<'_> {
    pub(super) fn pain(&self, reason: &Reason) -> Option<String> {
        Some(match reason {
            Reason::PainBlock { region, clear_sessions } => {
                self.pain_block(&self.region(region), *clear_sessions)
            }
            Reason::UsualPainUnsteady { region } => format!(
                "The usual level of pain in the {} has not been steady for three sessions yet.",
                self.region(region)
            ),
            Reason::UsualPainReview { region, agreed } => format!(
                "The usual level of pain in the {} was agreed on {}: time to look at it again. Until then it allows \
                 no step up.",
                self.region(region),
                day(*agreed)
            ),
            Reason::PainNotAsked => {
                "Nobody asked about pain last time, and no answer is not the same as none.".to_string()
            }
            Reason::PainMissingAfterHigh { region } => format!(
                "The last report for the {} was high and today's is missing: technique work only.",
                self.region(region)
            ),
            Reason::PainPersists { region } => format!(
                "Pain in the {} has risen over three sessions, or stood high for three: a clinician should look at \
                 it.",
                self.region(region)
            ),
            Reason::PairPain => {
                format!("{} hurt: this lift holds and starts one step down.", capital(&self.pair().0))
            }
            _ => return self.day(reason).or_else(|| self.clearance(reason)),
        })
    }

    /// Pain from 3 to 5: as much as the table of pain says, and no more.
    fn pain_block(&self, region: &str, clear_sessions: u8) -> String {
        let all = self.words.parameters();
        let from = all.map_or_else(|| Policy::default().pain_block_from, |all| all.policy.pain_block_from);
        let calm = from.saturating_sub(1);
        let lower = format!("Pain in the {region}: lower until {calm} or less, else stop this lift.");
        match clear_sessions {
            0 => lower,
            count => format!(
                "{lower} A step up comes after {} without more of it than usual.",
                counted(u32::from(count), "session")
            ),
        }
    }

    fn day(&self, reason: &Reason) -> Option<String> {
        let said = match reason {
            Reason::BadDay => {
                "Today lies below the usual, by signs that agree: lighter or easier work, and less of it."
            }
            Reason::BadDaySingle => {
                "One sign today lies below the usual: go on, and look again after the first work set."
            }
            Reason::DayUnknown => {
                "Whether today lies below, within or above the usual is not known: the planned work, and no step up."
            }
            Reason::GoodDay => "Today lies above the usual: the planned load is the load all the same.",
            Reason::QualifiedOnBadDays => {
                "Every pass behind this gate came on a day below the usual: one on a day within or above it first."
            }
            Reason::AsksNotAsked => {
                "Nobody asked today about fever, dizziness, palpitations, a fall or a new medicine, and no answer is \
                 not the same as none."
            }
            _ => return None,
        };
        Some(said.to_string())
    }

    fn clearance(&self, reason: &Reason) -> Option<String> {
        Some(match reason {
            Reason::NoLoadedFlexion => "The clearance allows no loaded bending of the spine.".to_string(),
            Reason::NotCleared => "The last clearance says not to train.".to_string(),
            Reason::ClearanceMissing => "No clearance is on record.".to_string(),
            Reason::ClearanceExpired { on } => format!("The clearance ran out on {}.", day(*on)),
            // It holds wherever the lift is done.
            Reason::ClearanceLimit { load } => {
                format!("The clearance limits the load to {} at every place.", self.words.at_most(*load))
            }
            Reason::ClearanceRange => "The clearance limits the range.".to_string(),
            Reason::NoLimitsOnRecord => {
                "No limit for blood pressure, breathing or effort is on record.".to_string()
            }
            _ => return None,
        })
    }
}
