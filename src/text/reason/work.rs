//! Loads, breaks and what the day leaves; every code left over must be named here.

use alloc::format;
use alloc::string::{String, ToString};

use super::Telling;
use crate::numeric;
use crate::quantity::{Mass, Name};
use crate::reason::Reason;
use crate::text::counted;
use crate::text::day::day;
use crate::text::place::with_place;

impl Telling<'_> {
    pub(super) fn work(&self, reason: &Reason) -> String {
        match reason {
            Reason::NoLoadableStep { cap, next } => self.no_loadable_step(*cap, *next),
            // Set by the coach for the lift, wherever it is done.
            Reason::Ceiling { load } => {
                format!("The coach's ceiling for every place is {}.", self.below(*load))
            }
            Reason::AtTop => "What moves in this block has reached its top.".to_string(),
            Reason::NotOneStep => "That would be more than one step at once.".to_string(),
            Reason::UnknownEventPresent { count } => format!(
                "The log holds {} of a kind this version does not know; a newer stop may be among them.",
                counted(*count, "event")
            ),
            Reason::AloneWithoutPins => {
                "Alone under a bar without pins: no step up, and more in reserve.".to_string()
            }
            Reason::RackNotAsked => {
                "Nobody said who or what would take the bar: as if alone without pins, so no step up, and more in reserve."
                    .to_string()
            }
            Reason::PlannedBreak { until: Some(until) } => format!("A planned break until {}.", day(*until)),
            Reason::PlannedBreak { until: None } => "A planned break without a last day noted.".to_string(),
            Reason::IllUntil { until } => format!("An illness is noted until {}: rest until then.", day(*until)),
            Reason::AfterBreak => "The planned break is over: a session comes before a step.".to_string(),
            Reason::HalfForLighter => {
                "Easier work is asked for and nothing lighter can be done at this place: half of the work or less instead."
                    .to_string()
            }
            Reason::LeastThereIs => {
                "Easier work is asked for, and one repetition at the lightest load is the least there is of this lift: that one \
                 alone, and only if it feels easy today."
                    .to_string()
            }
            Reason::Layoff { gap, row, load } => self.layoff(*gap, *row, *load),
            Reason::HeldLower { days, load, .. } => format!(
                "For {} no more than easier work was done in this lift: the working load is {} for now.",
                counted(u32::from(*days), "day"),
                self.standing(*load)
            ),
            Reason::HalfSets { sessions } => {
                format!("{} for {} after the break.", self.half(), counted(u32::from(*sessions), "session"))
            }
            Reason::EasyWeek => "A planned easy week: less work, and more in reserve.".to_string(),
            Reason::BreakCounts { days } => {
                format!("{} off already made this an easy week.", counted(u32::from(*days), "day"))
            }
            Reason::ReserveFloor { reserve } => format!("Leave at least {reserve} in reserve."),
            Reason::ImplementUnavailable { implement } => {
                format!("The {implement} is taken or missing today.")
            }
            Reason::ShortOfTime => {
                "Left out for lack of time; nothing is added elsewhere to make up for it.".to_string()
            }
            Reason::FewerSets { sets } => format!("Time for {}.", counted(u32::from(*sets), "set")),
            Reason::BodyMassMissing => {
                "No body mass is on record, so a step of this helped lift cannot be measured.".to_string()
            }
            Reason::PlanAsksLess => "The plan asks for less today than the lift allows.".to_string(),
            Reason::OverrideInForce { .. }
            | Reason::OverrideSuspended { .. }
            | Reason::OverrideEnded { .. }
            | Reason::RoundedDown { .. }
            | Reason::NothingLoadable { .. }
            | Reason::NothingEasier
            | Reason::EasierRung { .. }
            | Reason::HeightOff { .. }
            | Reason::HeightNotMade { .. }
            | Reason::OtherImplement { .. }
            | Reason::HeightUnknown => self.load(reason),
            // Named in the groups that come first.
            Reason::SymptomStop { .. }
            | Reason::PainStop { .. }
            | Reason::Stopped
            | Reason::SignOffRefused { .. }
            | Reason::NoLoadedFlexion
            | Reason::NotCleared
            | Reason::ClearanceMissing
            | Reason::ClearanceExpired { .. }
            | Reason::ClearanceAfterIllness
            | Reason::ClearanceLimit { .. }
            | Reason::ClearanceRange
            | Reason::NoLimitsOnRecord
            | Reason::AsksFirst { .. }
            | Reason::AsksNotAsked
            | Reason::AskOfToday { .. }
            | Reason::LimitWithoutLift { .. }
            | Reason::PainBlock { .. }
            | Reason::UsualPainUnsteady { .. }
            | Reason::UsualPainReview { .. }
            | Reason::PainNotAsked { .. }
            | Reason::PainMissingAfterHigh { .. }
            | Reason::PainPersists { .. }
            | Reason::PassProvisional { .. }
            | Reason::PairPain { .. }
            | Reason::DayBelow
            | Reason::DayBelowSingle
            | Reason::DayUnknown
            | Reason::DayAbove
            | Reason::QualifiedBelowUsual
            | Reason::GateNotOpen
            | Reason::LearningNotDone { .. }
            | Reason::Consolidating
            | Reason::SteppingBack
            | Reason::SteppedBack { .. }
            | Reason::Resting
            | Reason::Returning { .. }
            | Reason::Maintaining
            | Reason::MaintainingBand { .. }
            | Reason::ProbeDue { .. }
            | Reason::ProbeOverdue { .. }
            | Reason::BelowBand { .. }
            | Reason::CountedAnew { .. }
            | Reason::MissNotPlaced
            | Reason::PinsMoved { .. }
            | Reason::OverridePast { .. }
            | Reason::Retired
            | Reason::Holding { .. }
            | Reason::MoveOnOffer { .. }
            | Reason::MoveRefused { .. }
            | Reason::OverrideRefused { .. }
            | Reason::StopLifted { .. }
            | Reason::AfterIllness
            | Reason::AgeUnknown
            | Reason::NotScored
            | Reason::NotAtGrant { .. }
            | Reason::SetupChanged { .. }
            | Reason::ReserveShort { .. }
            | Reason::EffortNotSaid { .. }
            | Reason::NeverTrained
            | Reason::Stale { .. }
            | Reason::CoolingOff { .. }
            | Reason::RegionWindow { .. }
            | Reason::WindowCap { .. }
            | Reason::PairCap { .. }
            | Reason::PairProofMissing
            | Reason::PairWindow { .. }
            | Reason::PairFault
            | Reason::PairRest { .. }
            | Reason::PairTogether { .. }
            | Reason::PairReview => String::new(),
        }
    }

    /// How the load of today comes about.
    fn load(&self, reason: &Reason) -> String {
        match reason {
            Reason::OverrideInForce { load, who, until } => {
                let until = until.map(|until| format!(" until {}", day(until))).unwrap_or_default();
                format!("{who} overruled the gate: {}{until}.", self.written(*load))
            }
            Reason::OverrideSuspended { load } => format!(
                "The coach's word for {} waits: not on the way back from a break, a stop or a step back, nor with pain, \
                 an open or unasked question, a day not known or below the usual, easing, without a clearance, or alone without pins.",
                self.written(*load)
            ),
            Reason::OverrideEnded { load, by, place } => format!(
                "The coach's word for {} no longer counts: {}.",
                with_place(self.load_of(reason, "load", *load), &self.place(place)),
                self.words.override_end(*by)
            ),
            Reason::RoundedDown { from, to } => {
                let from = self.rounded_from(*from);
                format!("Rounded down from {from} to what can be loaded: {}.", self.today(*to))
            }
            Reason::NothingLoadable { lightest } => format!(
                "Nothing loadable is that light; the lightest is {}. Practise it without load.",
                self.today(*lightest)
            ),
            Reason::NothingEasier => {
                "Nothing lighter can be done at this place, and there is no easier rung: left out today."
                    .to_string()
            }
            Reason::EasierRung { rung } => format!(
                "Nothing lighter can be loaded at the usual place: today's work is on the easier rung, {}.",
                self.rung(rung)
            ),
            Reason::HeightOff { mm } => format!(
                "The bar starts {} mm too {} at the nearest way to load it.",
                numeric::round(numeric::fabs(*mm)),
                if *mm < 0.0 { "low" } else { "high" }
            ),
            Reason::HeightNotMade { height, off_mm } => format!(
                "No discs and blocks here start the bar at {} mm: the nearest way starts it at {} mm, {} mm too {}.",
                numeric::round(height.mm()),
                numeric::round(height.mm() + off_mm),
                numeric::round(numeric::fabs(*off_mm)),
                if *off_mm < 0.0 { "low" } else { "high" }
            ),
            Reason::OtherImplement { implement, load } => format!(
                "The implement is now another kind, {implement}, and the numbers of the one before say nothing on it: it \
                 begins at {} and is learned anew.",
                self.today(*load)
            ),
            _ => "No disc here has a known diameter, so nobody knows at which height the bar starts."
                .to_string(),
        }
    }

    fn rung(&self, id: &Name) -> String {
        self.lift.map_or_else(|| id.to_string(), |lift| self.words.rung_called(lift.id, id))
    }

    fn no_loadable_step(&self, cap: Mass, next: Option<Mass>) -> String {
        let cap = self.cap(cap);
        match next {
            Some(next) => format!(
                "No loadable step: up to {cap} is allowed, and the next that can be loaded is {}. More repetitions \
                 first, or something smaller to load.",
                self.alone(next)
            ),
            None => format!("No loadable step: up to {cap} is allowed, and nothing heavier can be loaded."),
        }
    }

    /// Whether the least there is of the lift is asked for, and nothing is less than before.
    fn is_least(&self) -> bool {
        self.lift.is_some_and(|lift| lift.has(|reason| *reason == Reason::LeastThereIs))
    }

    /// What half the sets are: of one set there is no half.
    fn half(&self) -> &'static str {
        match self.lift {
            _ if self.is_least() => "As little as can be",
            Some(lift) if lift.granted.work.sets == 1 => "Easier work",
            _ => "Half the sets",
        }
    }

    fn layoff(&self, gap: u16, row: u8, load: Mass) -> String {
        let gap = counted(u32::from(gap), "day");
        match row {
            // The same work is not called lower.
            _ if self.lift.is_some_and(|lift| lift.has(|reason| *reason == Reason::HalfForLighter)) => {
                format!("{gap} without this work: less than before is asked for.")
            }
            _ if self.is_least() => format!("{gap} without this work: as little as can be is asked for."),
            // The row asked for no less; two fails since took the rest, and say so themselves.
            _ if self.lift.is_some_and(|lift| lift.has(is_step_back)) => {
                format!(
                    "{gap} without this work, and a step back since: the working load is {} for now.",
                    self.standing(load)
                )
            }
            // The load is as it was, or what the row left of it for good; the sets are not.
            _ if self.lift.is_some_and(|lift| lift.reasons.is_some() && !lift.has(is_returning)) => format!(
                "{gap} without this work: the way back is over but for the sets, and the working load is {}.",
                self.standing(load)
            ),
            1 => format!("{gap} without this work: the first session is one step down."),
            _ => format!("{gap} without this work: the working load is {} for now.", self.standing(load)),
        }
    }
}

const fn is_returning(reason: &Reason) -> bool {
    matches!(reason, Reason::Returning { .. })
}

const fn is_step_back(reason: &Reason) -> bool {
    matches!(reason, Reason::SteppedBack { .. })
}
