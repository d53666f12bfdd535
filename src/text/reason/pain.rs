//! Pain, the day, and what a clearance allows.

use alloc::format;
use alloc::string::{String, ToString};

use super::Telling;
use crate::quantity::{Day, Name};
use crate::reason::{Reason, Unasked};
use crate::record::Policy;
use crate::text::counted;
use crate::text::day::day;
use crate::text::phrases::Phrases;
use crate::text::words::Words;

/// When nobody asked about pain, by key.
pub(in crate::text) const UNASKED: Phrases = &[
    ("unasked.no_session_yet", "No session has asked about pain yet"),
    ("unasked.last_session", "Nobody asked about pain in the last session"),
    ("unasked.today", "Nobody has asked about pain today"),
    ("unasked.last_session_and_today", "Nobody asked about pain, in the last session or today"),
];

impl Telling<'_> {
    pub(super) fn pain(&self, reason: &Reason) -> Option<String> {
        Some(match reason {
            Reason::PainBlock { region, clear_sessions, score } => {
                let same =
                    |said: &Reason| matches!(said, Reason::PainBlock { region: at, .. } if at == region);
                let eased = self.lift.is_none_or(|lift| lift.reasons.is_none() || lift.has(same));
                self.pain_block(&self.region(region), *clear_sessions, *score, eased)
            }
            Reason::UsualPainUnsteady { region, .. } => format!(
                "The usual level of pain in the {} has not been steady for three sessions yet.",
                self.region(region)
            ),
            Reason::UsualPainReview { region, agreed } => format!(
                "The usual level of pain in the {} was agreed on {}: time to look at it again. Until then it allows \
                 no step up.",
                self.region(region),
                day(*agreed)
            ),
            Reason::PainNotAsked { when } => {
                format!("{}, and no answer is not the same as none.", self.words.unasked(*when))
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
            Reason::PairPain { region, score, on } => self.strict_hurt(
                region.as_ref().zip(*score).zip(*on).map(|((region, score), on)| (region, score, on)),
            ),
            _ => return self.day(reason).or_else(|| self.clearance(reason)),
        })
    }

    /// Pain in a region of the strict lift, by whomever and whenever it was said.
    fn strict_hurt(&self, said: Option<(&Name, u8, Day)>) -> String {
        let strict = self.pair().0;
        let what = match said {
            Some((region, score, on)) => {
                let region = self.region(region);
                format!("Pain of {score} in the {region}, which {strict} loads, was said on {}", day(on))
            }
            None => format!("Something that {strict} loads hurt"),
        };
        format!("{what}: this lift holds and starts one step down.")
    }

    /// Pain from 3 to 5, new or rising: as much as the table of pain says, and no more. Where it asks for nothing today, what
    /// it asks for before a step.
    fn pain_block(&self, region: &str, clear_sessions: u8, score: u8, eased: bool) -> String {
        let calm = self.words.calm();
        // Of a lift that is left out nothing is lowered, and what is that low already is not lowered further.
        let lower = if self.lift.is_some_and(|lift| lift.left_out) {
            format!("Pain in the {region}: this lift is left out today.")
        } else if score > calm {
            format!("Pain in the {region}: lower until {calm} or less, else stop this lift.")
        } else {
            format!("Pain in the {region}: easier work, and if it goes above {calm}, stop this lift.")
        };
        match clear_sessions {
            count if !eased => format!(
                "A step up comes after {} without more pain in the {region} than usual.",
                counted(u32::from(count), "session")
            ),
            0 => lower,
            count => format!(
                "{lower} A step up comes after {} without more of it than usual.",
                counted(u32::from(count), "session")
            ),
        }
    }

    fn day(&self, reason: &Reason) -> Option<String> {
        let said = match reason {
            Reason::DayBelow => {
                "Today lies below the usual, by signs that agree: lighter or easier work, and less of it."
            }
            Reason::DayBelowSingle => {
                "One sign today lies below the usual: go on, and look again after the first work set."
            }
            Reason::DayUnknown => {
                "Whether today lies below, within or above the usual is not known: the planned work, and no step up."
            }
            Reason::DayAbove => "Today lies above the usual: the planned load is the load all the same.",
            Reason::QualifiedBelowUsual => {
                "Every pass behind this gate came on a day below the usual: one on a day within or above it first."
            }
            Reason::AsksNotAsked => {
                "Nobody asked today about fever, dizziness, palpitations, a fall or a new medicine, and no answer is \
                 not the same as none."
            }
            Reason::AskOfToday { ask } => {
                return Some(format!(
                    "Today there was {}, answered since: no step on the same day.",
                    self.words.ask(*ask)
                ));
            }
            _ => return None,
        };
        Some(said.to_string())
    }

    /// Whether the parameters at hand say so.
    fn declares_no_ranges(&self) -> bool {
        let lift = self.lift.and_then(|lift| self.words.lift(lift.id));
        lift.is_some_and(|lift| lift.ranges.is_empty())
    }

    fn clearance(&self, reason: &Reason) -> Option<String> {
        Some(match reason {
            Reason::SignOffRefused { region, on, why } => format!(
                "The coach's sign-off of {}{} does not count: {}. It takes another, after a clearance that allows training.",
                day(*on),
                region
                    .as_ref()
                    .map_or_else(String::new, |region| format!(" for the {}", self.region(region))),
                self.words.sign_off_refusal(*why)
            ),
            Reason::NoLoadedFlexion => "The clearance allows no loaded bending of the spine.".to_string(),
            Reason::NotCleared => "The last clearance says not to train.".to_string(),
            Reason::ClearanceMissing => "No clearance is on record.".to_string(),
            Reason::ClearanceExpired { on } => format!("The clearance ran out on {}.", day(*on)),
            // It holds wherever the lift is done.
            Reason::ClearanceLimit { load } => {
                format!("The clearance limits the load to {} at every place.", self.below(*load))
            }
            Reason::ClearanceRange if self.declares_no_ranges() => {
                "The clearance limits the range, and this lift declares no ranges: nobody can tell whether it keeps the \
                 limit, so that it rests."
                    .to_string()
            }
            Reason::ClearanceRange => "The clearance limits the range.".to_string(),
            Reason::NoLimitsOnRecord => {
                "No limit for blood pressure, breathing or effort is on record.".to_string()
            }
            _ => return None,
        })
    }
}

impl Words<'_> {
    /// The score down to which pain is to be lowered.
    pub(in crate::text) fn calm(&self) -> u8 {
        let from = self
            .parameters()
            .map_or_else(|| Policy::default().pain_block_from, |all| all.policy.pain_block_from);
        from.saturating_sub(1)
    }

    /// When nobody asked about pain.
    pub(super) fn unasked(&self, when: Unasked) -> String {
        let key = match when {
            Unasked::NoSessionYet => "unasked.no_session_yet",
            Unasked::LastSession => "unasked.last_session",
            Unasked::Today => "unasked.today",
            Unasked::LastSessionAndToday => "unasked.last_session_and_today",
        };
        self.say(key, &[])
    }
}
