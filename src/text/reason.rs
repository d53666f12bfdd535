//! Reasons as sentences.

use alloc::format;
use alloc::string::{String, ToString};

use super::sign::{ask, stop_sign};
use super::{capital, counted, listed, mass};
use crate::reason::{Reason, Shortfall};

/// A reason as one plain sentence.
///
/// ```
/// use bismar::{reason::Reason, text};
///
/// assert_eq!(text::reason(&Reason::CoolingOff { days_left: 3 }), "The last step was recent: 3 more days.");
/// ```
#[must_use]
pub fn reason(reason: &Reason) -> String {
    stops(reason).or_else(|| pain(reason)).or_else(|| course(reason)).unwrap_or_else(|| rest(reason))
}

/// Stops and clearances.
fn stops(reason: &Reason) -> Option<String> {
    Some(match reason {
        Reason::SymptomStop { signs, since } if !signs.is_empty() => format!(
            "{} was reported on {since}. Every lift is stopped until a clinician has cleared it and the coach has signed off.",
            capital(&listed(signs.iter().map(|sign| stop_sign(*sign))))
        ),
        Reason::SymptomStop { since, .. } => format!(
            "A stop was called on {since}. Every lift is stopped until a clinician has cleared it and the coach has signed off."
        ),
        Reason::PainStop { region, since } => format!(
            "Pain in the {region} stopped its lifts on {since}. They stay stopped until a clinician has cleared it and the coach has signed off."
        ),
        Reason::Stopped => {
            "Stopped until a clinician has cleared it and the coach has signed off.".to_string()
        }
        Reason::NoLoadedFlexion => "The clearance allows no loaded bending of the spine.".to_string(),
        Reason::NotCleared => "The last clearance says not to train.".to_string(),
        Reason::ClearanceMissing => "No clearance is on record.".to_string(),
        Reason::ClearanceExpired { on } => format!("The clearance ran out on {on}."),
        Reason::ClearanceAfterIllness => {
            "After an illness or operation a new clearance comes first.".to_string()
        }
        Reason::ClearanceLimit { load } => format!("The clearance limits the load to {}.", mass(*load)),
        Reason::ClearanceRange => "The clearance limits the range.".to_string(),
        Reason::NoLimitsOnRecord => {
            "No limit for blood pressure, breathing or effort is on record.".to_string()
        }
        Reason::AsksFirst { ask: asked, since } if asked.needs_clinician() => {
            format!("{} was reported on {since}: a clinician's word comes before training.", capital(ask(*asked)))
        }
        Reason::AsksFirst { ask: asked, since } => {
            format!("{} was reported on {since}: the coach's word that it is over comes before training.", capital(ask(*asked)))
        }
        Reason::AsksNotAsked => {
            "Nobody asked today about fever, dizziness, palpitations, a fall or a new medicine, and no answer is not the same as none."
                .to_string()
        }
        Reason::LimitWithoutLift { region } => format!(
            "A clearance limits the {region}, which no lift here loads any more, so nobody can tell what it still concerns. Ask for a new clearance."
        ),
        _ => return None,
    })
}

/// Pain and the day.
fn pain(reason: &Reason) -> Option<String> {
    Some(match reason {
        Reason::PainBlock { region, clear_sessions } => {
            format!(
                "Pain in the {region}: {} without it before a step up.",
                counted(u32::from(*clear_sessions), "session")
            )
        }
        Reason::UsualPainUnsteady { region } => {
            format!("The usual level of pain in the {region} has not been steady for three sessions yet.")
        }
        Reason::UsualPainReview { region, agreed } => format!(
            "The usual level of pain in the {region} was agreed on {agreed}: time to look at it again. Until then it allows no step up."
        ),
        Reason::PainNotAsked => {
            "Nobody asked about pain last time, and no answer is not the same as none.".to_string()
        }
        Reason::PainMissingAfterHigh { region } => {
            format!("The last report for the {region} was high and today's is missing: technique work only.")
        }
        Reason::PassProvisional { session } => {
            format!("The pass of session {session} waits for the answer of the morning after.")
        }
        Reason::PainPersists { region } => {
            format!(
                "Pain in the {region} has risen over three sessions, or stood high for three: a clinician should look at it."
            )
        }
        Reason::PairPain => {
            "The strict lift of the pair hurt: this one holds and starts one step down.".to_string()
        }
        Reason::BadDay => "Today reads as a bad day by agreeing signs: less load, fewer sets.".to_string(),
        Reason::BadDaySingle => {
            "One sign says a bad day: go on, and look again after the first work set.".to_string()
        }
        Reason::DayUnknown => {
            "How good a day this is, is not known: the planned work, and no step up.".to_string()
        }
        Reason::GoodDay => "A good day: enjoy it at the planned load.".to_string(),
        Reason::QualifiedOnBadDays => {
            "Every pass behind this gate was on a bad day: one on an ordinary day first.".to_string()
        }
        _ => return None,
    })
}

/// Where the lift stands.
fn course(reason: &Reason) -> Option<String> {
    Some(match reason {
        Reason::GateNotOpen => "The technique gate is not open yet.".to_string(),
        Reason::LearningNotDone { done, needed } => {
            format!("Learning the lift: {done} of {needed} sessions so far.")
        }
        Reason::Consolidating => "Just stepped up: settling in at the new place.".to_string(),
        Reason::SteppingBack => "One step easier, to look again.".to_string(),
        Reason::Resting => "Resting, as planned.".to_string(),
        Reason::Returning { at_most } => {
            format!("Coming back after a break, and not above {} for now.", mass(*at_most))
        }
        Reason::Maintaining => "Kept where it is on purpose.".to_string(),
        Reason::MaintainingBand { not_below } => {
            format!("Kept on purpose; down to {} it is on plan.", mass(*not_below))
        }
        Reason::ProbeDue { by, criterion: None } => {
            format!("A marked session at this place is due by {by}, to see that it is kept.")
        }
        Reason::ProbeDue { by, criterion: Some(criterion) } => {
            format!("Was weak before the last step, to be looked at again by {by}: {criterion}.")
        }
        Reason::Retired => "No longer used.".to_string(),
        Reason::Holding { sessions } => {
            format!(
                "Holding, which is the work itself: {} at this place.",
                counted(u32::from(*sessions), "session")
            )
        }
        Reason::MoveOnOffer { until } => {
            format!("The gate is open; a step may be taken until {until}, or not at all.")
        }
        Reason::NeverTrained => "This lift has not been trained yet.".to_string(),
        Reason::Stale { days, allowed } => {
            format!("The last session was {days} days ago; a step asks for one within {allowed}.")
        }
        Reason::CoolingOff { days_left } => {
            format!("The last step was recent: {}.", counted(u32::from(*days_left), "more day"))
        }
        Reason::RegionWindow { region, days_left } => format!(
            "Another lift stepped up on the {region} recently: {}.",
            counted(u32::from(*days_left), "more day")
        ),
        Reason::WindowCap { load, days_left } => format!(
            "Enough growth for these weeks, up to {}: {}.",
            mass(*load),
            counted(u32::from(*days_left), "more day")
        ),
        Reason::PairCap { load } => {
            format!("The strict lift stays at or below what the forgiving one has shown: {}.", mass(*load))
        }
        Reason::PairProofMissing => "The forgiving lift has no recent pass to lean on.".to_string(),
        Reason::PairWindow { days_left } => {
            format!("Its partner stepped up recently: {}.", counted(u32::from(*days_left), "more day"))
        }
        Reason::PairFault => "The same critical fault in both lifts of the pair holds both.".to_string(),
        Reason::PairRest { days, needed } => format!(
            "Only {} since its partner; {needed} would be better.",
            counted(u32::from(*days), "full rest day")
        ),
        Reason::PairReview => {
            "The forgiving lift has run far ahead: look at the pair, nothing is blocked.".to_string()
        }
        _ => return None,
    })
}

/// Loads, breaks and what the day leaves; every code left over must be named here.
fn rest(reason: &Reason) -> String {
    match reason {
        Reason::NoLoadableStep { cap, next: Some(next) } => format!(
            "No loadable step: up to {} is allowed, and the discs make {} next. More repetitions or smaller discs first.",
            mass(*cap),
            mass(*next)
        ),
        Reason::NoLoadableStep { cap, next: None } => {
            format!("No loadable step: up to {} is allowed, and the discs end here.", mass(*cap))
        }
        Reason::Ceiling { load } => format!("The coach's ceiling is {}.", mass(*load)),
        Reason::AtTop => "What moves in this block has reached its top.".to_string(),
        Reason::NotOneStep => "That would be more than one step at once.".to_string(),
        Reason::UnknownEventPresent { count } => format!(
            "The log holds {} of a kind this version does not know; a newer stop may be among them.",
            counted(*count, "event")
        ),
        Reason::AloneWithoutPins => {
            "Alone under a bar without pins: no step up, and more in reserve.".to_string()
        }
        Reason::NotScored => "Nobody who counts marked the whole of the last session.".to_string(),
        Reason::NotAtGrant { short } => {
            format!("The last session was training, and shows nothing about a step: {}.", shortfall(*short))
        }
        Reason::SetupChanged { since } => format!(
            "Height, stance, box, shoes, belt or straps changed on {since}, so sessions before it are not compared."
        ),
        Reason::ReserveShort { sessions } => {
            format!("Less than asked was left in reserve in {sessions} of the last three sessions.")
        }
        Reason::NothingEasier => {
            "Nothing lighter can be done at this place, and there is no easier rung: left out today."
                .to_string()
        }
        Reason::EasierRung { rung } => {
            format!(
                "Nothing lighter can be loaded at this place: today's work is on the easier rung, {rung}."
            )
        }
        Reason::OverrideSuspended { load } => format!(
            "The coach's word for {} waits while there is pain, a day below the usual, an open question or easing.",
            mass(*load)
        ),
        Reason::HeightOff { mm } => format!(
            "The bar starts {} mm too {} at the nearest way to load it.",
            crate::numeric::round(mm.abs()),
            if *mm < 0.0 { "low" } else { "high" }
        ),
        Reason::HeightUnknown => {
            "No disc here has a known diameter, so nobody knows at which height the bar starts.".to_string()
        }
        Reason::Layoff { gap, row: 1, .. } => {
            format!("{gap} days without this region: the first session is one step down.")
        }
        Reason::Layoff { gap, load, .. } => {
            format!("{gap} days without this region: start at {}.", mass(*load))
        }
        Reason::HalfSets { sessions } => {
            format!("Half the sets for {} after the break.", counted(u32::from(*sessions), "session"))
        }
        Reason::OverrideInForce { load, who, until: Some(until) } => {
            format!("{who} overruled the gate: {} until {until}.", mass(*load))
        }
        Reason::OverrideInForce { load, who, until: None } => {
            format!("{who} overruled the gate: {}.", mass(*load))
        }
        Reason::EasyWeek => "A planned easy week: half the sets, more in reserve.".to_string(),
        Reason::BreakCounts { days } => format!("{days} days off already made this an easy week."),
        Reason::ReserveFloor { reserve } => format!("Leave at least {reserve} in reserve."),
        Reason::RoundedDown { from, to } => {
            format!("Rounded down from {} to what the discs make: {}.", mass(*from), mass(*to))
        }
        Reason::NothingLoadable { lightest } => {
            format!(
                "Nothing loadable is that light; the lightest is {}. Practise it without the bar.",
                mass(*lightest)
            )
        }
        Reason::ImplementUnavailable { implement } => format!("The {implement} is taken or missing today."),
        Reason::ShortOfTime => {
            "Left out for lack of time; nothing is added elsewhere to make up for it.".to_string()
        }
        Reason::FewerSets { sets } => format!("Time for {}.", counted(u32::from(*sets), "set")),
        Reason::BodyMassMissing => {
            "No body mass is on record, so a step of this helped lift cannot be measured.".to_string()
        }
        Reason::PlanAsksLess => "The plan asks for less than granted.".to_string(),
        Reason::MoveRefused { event } => {
            format!("The move of event {event} was refused, for the reasons listed.")
        }
        Reason::SteppedBack { from } => format!("One step easier than {}.", mass(*from)),
        // Named above, in the groups that come first.
        Reason::SymptomStop { .. }
        | Reason::PainStop { .. }
        | Reason::Stopped
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
        | Reason::LimitWithoutLift { .. }
        | Reason::PainPersists { .. }
        | Reason::NeverTrained
        | Reason::PainBlock { .. }
        | Reason::UsualPainUnsteady { .. }
        | Reason::UsualPainReview { .. }
        | Reason::PainNotAsked
        | Reason::PainMissingAfterHigh { .. }
        | Reason::PassProvisional { .. }
        | Reason::PairPain
        | Reason::BadDay
        | Reason::BadDaySingle
        | Reason::DayUnknown
        | Reason::GoodDay
        | Reason::QualifiedOnBadDays
        | Reason::GateNotOpen
        | Reason::LearningNotDone { .. }
        | Reason::Consolidating
        | Reason::SteppingBack
        | Reason::Resting
        | Reason::Returning { .. }
        | Reason::Maintaining
        | Reason::MaintainingBand { .. }
        | Reason::ProbeDue { .. }
        | Reason::Retired
        | Reason::Holding { .. }
        | Reason::MoveOnOffer { .. }
        | Reason::Stale { .. }
        | Reason::CoolingOff { .. }
        | Reason::RegionWindow { .. }
        | Reason::WindowCap { .. }
        | Reason::PairCap { .. }
        | Reason::PairProofMissing
        | Reason::PairWindow { .. }
        | Reason::PairFault
        | Reason::PairRest { .. }
        | Reason::PairReview => String::new(),
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
