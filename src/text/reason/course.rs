//! Where the lift stands, and what stands between it and a step.

use alloc::format;
use alloc::string::{String, ToString};

use super::Telling;
use crate::numeric;
use crate::progression::MoveOutlook;
use crate::quantity::Day;
use crate::reason::{OverrideEnd, Reason, Restart, Shortfall};
use crate::text::day::day;
use crate::text::phrases::Phrases;
use crate::text::words::Words;
use crate::text::{capital, counted};

/// Why sessions are counted anew, by key.
pub(in crate::text) const RESTARTS: Phrases = &[
    ("restart.declined", "the coach declined the step on offer"),
    ("restart.offer_ended", "the step on offer was not taken in time"),
    ("restart.bar_changed", "the bar or the discs changed"),
    ("restart.rater_changed", "another person gives the marks"),
    ("restart.setup_changed", "height, stance, box, shoes, belt or straps changed"),
    ("restart.gate_changed", "the gate or what it judges changed"),
    ("restart.equipment_changed", "the implement, or where the lift starts from, changed"),
];

/// What ended the coach's word for more, by key.
pub(in crate::text) const OVERRIDE_ENDS: Phrases = &[
    ("override_end.break", "a break ended it"),
    ("override_end.held_lower", "the time of easier work before it ended it"),
    ("override_end.illness", "an illness ended it"),
    ("override_end.stop", "a stop ended it"),
    ("override_end.step_back", "a step back ended it"),
    ("override_end.step", "the step up that was taken ended it"),
    ("override_end.move", "the coach has since moved the lift"),
    ("override_end.place_gone", "the place it was given for is no longer there"),
    ("override_end.other_implement", "the implement is now of another kind"),
];

/// In what a session fell short, by key.
pub(in crate::text) const SHORTFALLS: Phrases = &[
    ("shortfall.rung", "it was on another rung"),
    ("shortfall.range", "it had another range"),
    ("shortfall.tempo", "it had another tempo"),
    ("shortfall.load", "it had another load"),
    ("shortfall.sets", "it had fewer sets"),
    ("shortfall.reps", "it had fewer repetitions"),
    ("shortfall.limit", "the day allowed less than the working load"),
];

impl Telling<'_> {
    /// Time under a limit was no break.
    fn after_what(&self) -> &'static str {
        let held = |reason: &Reason| matches!(reason, Reason::HeldLower { .. });
        let held = self.lift.is_some_and(|lift| lift.has(held));
        if held { " from easier work" } else { " after a break" }
    }

    pub(super) fn course(&self, reason: &Reason) -> Option<String> {
        Some(match reason {
            Reason::GateNotOpen => self.gate_not_open(),
            Reason::LearningNotDone { done, needed } if done >= needed => {
                "Learning the lift: its sessions are done, and one that passes ends it.".to_string()
            }
            Reason::LearningNotDone { done, needed } => {
                format!("Learning the lift: {done} of {needed} sessions so far.")
            }
            Reason::Consolidating => "Just stepped up: settling in at the new place.".to_string(),
            Reason::SteppingBack => "One step easier, to look again.".to_string(),
            Reason::Resting => "Resting, as planned.".to_string(),
            // The load before the break may have been at another place, and the way back may end below it. Where the lift stands
            // at it, as on an implement that it begins anew on, no other load was before.
            Reason::Returning { at_most } if self.lift.is_some_and(|lift| *at_most <= lift.granted.load()) => {
                format!("Coming back{}, step by step.", self.after_what())
            }
            Reason::Returning { at_most } => format!(
                "Coming back{}, step by step, and at no place past the {} of before it.",
                self.after_what(),
                self.below(*at_most)
            ),
            Reason::StopLifted { on } => format!(
                "A stop was lifted on {} by a clearance and the coach's sign-off: easier than before it.",
                day(*on)
            ),
            Reason::AfterIllness => "After an illness: easier than after another break so long.".to_string(),
            Reason::AgeUnknown => {
                "The lifter's age is not known, so a break counts as it does for an older one.".to_string()
            }
            Reason::Maintaining => "Kept where it is on purpose.".to_string(),
            Reason::MaintainingBand { not_below } => {
                format!("Kept on purpose; down to {} it is on plan.", self.not_below(*not_below))
            }
            Reason::ProbeDue { by, criterion: None } => {
                format!("A marked session at this place is due by {}, to see that it is kept.", day(*by))
            }
            Reason::ProbeDue { by, criterion: Some(criterion) } => {
                format!("Was weak before the last step, to be looked at again by {}: {criterion}.", day(*by))
            }
            Reason::ProbeOverdue { since, criterion: None } => format!(
                "A marked session at this place, to see that it is kept, has been overdue since {}.",
                day(*since)
            ),
            Reason::ProbeOverdue { since, criterion: Some(criterion) } => {
                format!("Was weak before the last step, and a look at it has been overdue since {}: {criterion}.", day(*since))
            }
            Reason::BelowBand { load, not_below } => format!(
                "Kept on purpose; the last session, at {}, lay below the band, which ends at {}.",
                self.alone(*load),
                self.not_below(*not_below)
            ),
            Reason::Retired => "No longer used.".to_string(),
            Reason::Holding { sessions } => format!(
                "Holding, which is the work itself: {} at this place{}.",
                counted(u32::from(*sessions), "session"),
                if self.counts_anew() { " since the count began anew" } else { "" }
            ),
            Reason::CountedAnew { since, why } => {
                format!("Sessions are counted anew since {}: {}.", day(*since), self.words.restart(*why))
            }
            Reason::MoveOnOffer { until } => self.move_on_offer(*until),
            Reason::MoveRefused { .. } => {
                "The step that was last asked for was refused: a rule stood in its way on that day.".to_string()
            }
            Reason::OverrideRefused { .. } => {
                "The coach's last word for another load was refused: more than the working load needs a reason and a last day, \
                 and passes no stop, no ceiling and no limit."
                    .to_string()
            }
            Reason::OverridePast { last_day } => format!(
                "The coach's last word for another load was refused: its last day, {}, was past when it was given.",
                day(*last_day)
            ),
            Reason::SteppedBack { from } => format!("One step easier than {}.", self.standing(*from)),
            _ => {
                return self.session(reason).or_else(|| self.waiting(reason)).or_else(|| self.paired(reason));
            }
        })
    }

    /// Whether the sessions that are counted are fewer than those done at the place.
    fn counts_anew(&self) -> bool {
        let anew =
            |reason: &Reason| matches!(reason, Reason::CountedAnew { .. } | Reason::SetupChanged { .. });
        self.lift.is_some_and(|lift| lift.has(anew))
    }

    /// A gate may be open by its count while the last session did not pass: the offer follows the next pass.
    fn gate_not_open(&self) -> String {
        let open = self.lift.is_some_and(|lift| lift.open);
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
        match self.lift.map(|lift| lift.outlook) {
            Some(MoveOutlook::Blocked { .. }) => {
                format!("A step was earned; it is not for today, and is kept until {until}.")
            }
            _ => format!("The gate is open; the step that it earned waits until {until}, taken or not."),
        }
    }

    /// What the last sessions came to.
    fn session(&self, reason: &Reason) -> Option<String> {
        Some(match reason {
            Reason::PassProvisional { .. } => {
                "The answer of the morning after the last session is still to come.".to_string()
            }
            Reason::NotScored => "Nobody who counts marked the whole of the last session.".to_string(),
            Reason::MissNotPlaced => {
                "Nobody said which repetition of the first set was missed, so whether the last session passed is not known."
                    .to_string()
            }
            Reason::NotAtGrant { short } => {
                format!("The last session was training and counts toward no step: {}.", self.words.shortfall(*short))
            }
            Reason::SetupChanged { since } => format!(
                "Height, stance, box, shoes, belt or straps changed on {}, so sessions before it are not compared.",
                day(*since)
            ),
            Reason::PinsMoved { from_mm, to_mm, on } => format!(
                "The pins stood at {} mm on {}, and at {} mm before.",
                numeric::round(*to_mm),
                day(*on),
                numeric::round(*from_mm)
            ),
            Reason::ReserveShort { sessions, .. } => format!(
                "Less was left in reserve than was asked for, or than a step needs at the least, in {sessions} of the last \
                 three sessions."
            ),
            Reason::EffortNotSaid { sessions, .. } => format!(
                "Nobody said how much the sets left in reserve in {sessions} of the last three sessions, and no answer is \
                 not the same as enough."
            ),
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
                "A step was taken on the {} recently: {}.",
                self.region(region),
                counted(u32::from(*days_left), "more day")
            ),
            Reason::WindowCap { load, days_left: Some(days_left) } => format!(
                "The load has grown enough for these weeks: no step goes past {} for {}.",
                self.cap(*load),
                counted(u32::from((*days_left).max(1)), "more day")
            ),
            Reason::WindowCap { load, days_left: None } => format!(
                "The next load is more than these weeks allow, which is up to {}. A smaller step may fit; staying is as good.",
                self.cap(*load)
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
                self.cap(*load)
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
            Reason::PairTogether { partner } => format!(
                "{} is planned for the same day, which leaves no rest between them.",
                capital(self.words.lift_name(partner))
            ),
            Reason::PairReview => {
                format!("{} has run far ahead: look at the pair, nothing is blocked.", capital(&forgiving))
            }
            _ => return None,
        })
    }
}

impl Words<'_> {
    /// Why sessions are counted anew.
    pub(super) fn restart(&self, why: Restart) -> String {
        let key = match why {
            Restart::Declined => "restart.declined",
            Restart::OfferEnded => "restart.offer_ended",
            Restart::BarChanged => "restart.bar_changed",
            Restart::RaterChanged => "restart.rater_changed",
            Restart::SetupChanged => "restart.setup_changed",
            Restart::GateChanged => "restart.gate_changed",
            Restart::EquipmentChanged => "restart.equipment_changed",
        };
        self.say(key, &[])
    }

    /// What ended the coach's word for more.
    pub(super) fn override_end(&self, by: OverrideEnd) -> String {
        let key = match by {
            OverrideEnd::Break => "override_end.break",
            OverrideEnd::HeldLower => "override_end.held_lower",
            OverrideEnd::Illness => "override_end.illness",
            OverrideEnd::Stop => "override_end.stop",
            OverrideEnd::StepBack => "override_end.step_back",
            OverrideEnd::Step => "override_end.step",
            OverrideEnd::Move => "override_end.move",
            OverrideEnd::PlaceGone => "override_end.place_gone",
            OverrideEnd::OtherImplement => "override_end.other_implement",
        };
        self.say(key, &[])
    }

    /// In what a session fell short.
    pub(super) fn shortfall(&self, short: Shortfall) -> String {
        let key = match short {
            Shortfall::Rung => "shortfall.rung",
            Shortfall::Range => "shortfall.range",
            Shortfall::Tempo => "shortfall.tempo",
            Shortfall::Load => "shortfall.load",
            Shortfall::Sets => "shortfall.sets",
            Shortfall::Reps => "shortfall.reps",
            Shortfall::Limit => "shortfall.limit",
        };
        self.say(key, &[])
    }
}
