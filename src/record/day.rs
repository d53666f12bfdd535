//! The day's questions before training. Each is answered, not asked, or open; nothing stands for "none" by itself.

use alloc::vec::Vec;

use derive_setters::Setters;

use super::health::{PainAnswer, one_answer_a_region};
use super::session::at_most;
use crate::canonical::canonical_fields;
use crate::condition::{Conditions, DayClass, MarkerKind};
use crate::error::{Allowed, Code, Error};
use crate::quantity::{Name, Pain};
use crate::sign::Ask;

/// The answer that closes what was asked on an earlier day.
#[derive(Clone, Debug, PartialEq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct AskAnswered {
    /// Which.
    pub ask: Ask,
    /// Who says that training may go on.
    pub who: Name,
    /// A clinician says so; needed for all but a fever that is over.
    pub clinician: bool,
}

canonical_fields!(AskAnswered: ask, who, clinician);

impl AskAnswered {
    /// That question, answered by that person.
    #[must_use]
    pub fn new(ask: Ask, who: Name, clinician: bool) -> AskAnswered {
        AskAnswered { ask, who, clinician }
    }
}

impl AskAnswered {
    pub(super) fn check(&self) -> Result<(), Error> {
        if self.ask.needs_clinician() && !self.clinician {
            let rule = Allowed::rule("a clinician's word, so clinician: true");
            return Err(Error::new(Code::NeedsClinician, "clinician", "false", rule));
        }
        Ok(())
    }
}

/// The day's questions before training.
#[derive(Clone, Debug, Default, PartialEq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct DayReport {
    /// Class of the day from the lifter's own baseline. Absent is the same as unknown.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub class: Option<DayClass>,
    /// Pain now, before training. Absent means not asked; regions not named have none.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub pain: Option<Vec<PainAnswer>>,
    /// Fever, dizziness, palpitations, a fall or a new medicine since last time. Absent means not asked; an empty list,
    /// that none of them is so. Each stays open until the answer that closes it, whatever later reports leave out.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub asks: Option<Vec<Ask>>,
    /// Muscle soreness from 0 to 10, for the record only.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub soreness: Option<Pain>,
    /// Minutes available today.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub minutes: Option<u16>,
    /// What the class was read from, each kept for the baseline of later days. The fold reads only the class.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub markers: Vec<MarkerAnswer>,
}

canonical_fields!(DayReport: class, pain, asks, soreness, minutes, markers);

impl DayReport {
    /// Every question asked, and nothing found: no pain, none of the asks.
    #[must_use]
    pub fn all_well(class: DayClass) -> DayReport {
        DayReport {
            class: Some(class),
            pain: Some(Vec::new()),
            asks: Some(Vec::new()),
            ..DayReport::default()
        }
    }
}

/// One marker of a day as it was answered or measured.
#[derive(Clone, Debug, PartialEq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct MarkerAnswer {
    /// What was asked.
    pub kind: MarkerKind,
    /// The answer, in the unit of the marker.
    pub value: f64,
    /// Under what conditions; only answers under equal ones are compared. Absent means that nobody said.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Conditions::are_unsaid"))]
    pub conditions: Conditions,
}

canonical_fields!(MarkerAnswer: kind, value, conditions);

impl MarkerAnswer {
    /// That value of that marker, under conditions nobody wrote down.
    #[must_use]
    pub fn new(kind: MarkerKind, value: f64) -> MarkerAnswer {
        MarkerAnswer { kind, value, conditions: Conditions::default() }
    }
}

/// More markers than this library knows are a mistake.
const MOST_MARKERS: usize = 16;

impl DayReport {
    /// Checks what the parts alone cannot.
    ///
    /// # Errors
    /// `too_many` markers; `duplicate_name` where one is named twice; `out_of_range` for its value.
    pub(super) fn check(&self) -> Result<(), Error> {
        one_answer_a_region(self.pain.as_deref().unwrap_or_default())?;
        at_most("asks", self.asks.as_ref().map_or(0, Vec::len), Ask::ALL.len())?;
        MarkerAnswer::check_all(&self.markers)
    }
}

impl MarkerAnswer {
    /// Checks a list of answers.
    pub(crate) fn check_all(markers: &[MarkerAnswer]) -> Result<(), Error> {
        at_most("markers", markers.len(), MOST_MARKERS)?;
        for (at, marker) in markers.iter().enumerate() {
            at_most("other", marker.conditions.other.len(), MOST_MARKERS)?;
            if markers.iter().take(at).any(|earlier| earlier.kind == marker.kind) {
                let rule = Allowed::rule("each marker once");
                return Err(Error::new(Code::DuplicateName, "markers", at, rule));
            }
            marker
                .kind
                .check(marker.value)
                .map_err(|error| error.within(&alloc::format!("markers[{at}]")))?;
        }
        Ok(())
    }
}
