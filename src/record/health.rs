//! Pain, symptoms, the day's answers and clearance: what the person or a clinician said.

use alloc::vec::Vec;

use derive_setters::Setters;

use crate::canonical::{canonical_fields, canonical_kinds};
use crate::error::{Allowed, Code, Error, Given};
use crate::quantity::{Day, Length, Mass, Name, Pain, Rpe};
use crate::sign::StopSign;

pub use crate::sign::PainFeature;

/// Joint, tendon or spine pain in one region. Muscle soreness is recorded apart.
#[derive(Clone, Debug, PartialEq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct PainAnswer {
    /// Id of the region.
    pub region: Name,
    /// How much.
    pub score: Pain,
    /// What came with it. Absent means not asked, and pain of which that is not known is taken as new; an empty list
    /// means asked, and nothing of the kind.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub features: Option<Vec<PainFeature>>,
}

canonical_fields!(PainAnswer: region, score, features);

impl PainAnswer {
    /// Pain of that much, with nothing that came with it.
    #[must_use]
    pub const fn plain(region: Name, score: Pain) -> PainAnswer {
        PainAnswer { region, score, features: Some(Vec::new()) }
    }

    /// Whether any feature alone stops the region.
    #[must_use]
    pub fn stops(&self) -> bool {
        self.features.iter().flatten().any(|feature| feature.stops())
    }

    /// What came with it joins what is known already: not said again is not none.
    pub(crate) fn join_features(&self, known: &mut Vec<PainFeature>) {
        for feature in self.features.iter().flatten() {
            if !known.contains(feature) {
                known.push(*feature);
            }
        }
    }

    /// Whether it is new or rising, or may be since nobody asked.
    #[must_use]
    pub fn is_unusual(&self) -> bool {
        let unusual = |feature: &PainFeature| matches!(feature, PainFeature::New | PainFeature::Rising);
        self.score > Pain::NONE && self.features.as_ref().is_none_or(|all| all.iter().any(unusual))
    }
}

/// The most answers about pain in one report: as many as a lifter has regions.
const MOST_ANSWERS: usize = 96;

/// Refuses two answers about one region: it cannot be told which of them holds.
pub(crate) fn one_answer_a_region(answers: &[PainAnswer]) -> Result<(), Error> {
    super::session::at_most("pain", answers.len(), MOST_ANSWERS)?;
    for (at, answer) in answers.iter().enumerate() {
        if answers.iter().take(at).any(|earlier| earlier.region == answer.region) {
            let rule = Allowed::rule("each region once");
            return Err(Error::new(Code::DuplicateName, "pain", answer.region.as_str(), rule));
        }
    }
    Ok(())
}

/// An agreed usual level of pain in a region, below which work may go on.
#[derive(Clone, Debug, PartialEq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct UsualPain {
    /// Id of the region.
    pub region: Name,
    /// The agreed level, at most 3.
    pub level: Pain,
    /// Who agreed it.
    pub who: Name,
    /// A clinician agreed it; needed above 2.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "core::ops::Not::not"))]
    pub clinician: bool,
}

canonical_fields!(UsualPain: region, level, who, clinician);

impl UsualPain {
    /// That level in that region, agreed with somebody who is no clinician.
    #[must_use]
    pub fn new(region: Name, level: Pain, who: Name) -> UsualPain {
        UsualPain { region, level, who, clinician: false }
    }
}

/// Answers of the morning after a session.
#[derive(Clone, Debug, PartialEq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct NextDayReport {
    /// Sequence number of the session asked about.
    pub session: u32,
    /// Pain now. Absent means not asked; a list means asked, and regions not named have none.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub pain: Option<Vec<PainAnswer>>,
    /// Muscle soreness from 0 to 10, for the record only.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub soreness: Option<Pain>,
}

canonical_fields!(NextDayReport: session, pain, soreness);

impl NextDayReport {
    /// The morning after the session of that event, with nothing asked yet.
    #[must_use]
    pub fn new(session: u32) -> NextDayReport {
        NextDayReport { session, pain: None, soreness: None }
    }
}

/// Symptoms that stop everything.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct SymptomReport {
    /// Which signs; at least one.
    pub signs: Vec<StopSign>,
}

canonical_fields!(SymptomReport: signs);

impl SymptomReport {
    /// These signs.
    #[must_use]
    pub fn new(signs: Vec<StopSign>) -> SymptomReport {
        SymptomReport { signs }
    }
}

/// What a clinician, or a screening answer, allows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum ClearanceStatus {
    /// Cleared.
    Cleared,
    /// Cleared within limits.
    ClearedWithLimits,
    /// Not cleared: every lift stops.
    NotCleared,
}

canonical_kinds!(ClearanceStatus: 0 Cleared, 1 ClearedWithLimits, 2 NotCleared);

/// The result of a clearance, which a clinician gives and a coach records; the library stores it and examines nobody.
///
/// With the coach's sign-off it lifts stops, and alone it answers an illness and a fever. What else was said when asked before
/// training (a fall, palpitations) is closed by its own answer only, which says whether it is a clinician's.
#[derive(Clone, Debug, PartialEq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct Clearance {
    /// What was said.
    pub status: ClearanceStatus,
    /// Who said it.
    pub who: Name,
    /// Last day it holds; absent means the policy's number of days from the event.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub expires: Option<Day>,
    /// Limits, each a guard on every decision until a newer clearance; at most 64. A clearance with limits says at least one,
    /// and each limits something.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub limits: Vec<ClearanceLimits>,
}

canonical_fields!(Clearance: status, who, expires, limits);

impl Clearance {
    /// What that person said of the lifter, without an end and without limits.
    #[must_use]
    pub fn new(status: ClearanceStatus, who: Name) -> Clearance {
        Clearance { status, who, expires: None, limits: Vec::new() }
    }

    /// A newer clearance takes the place of the limits before it, so that limits which were meant and not written down would
    /// be limits lost.
    pub(crate) fn check(&self) -> Result<(), Error> {
        super::session::at_most("limits", self.limits.len(), MOST_LIMITS)?;
        if self.status == ClearanceStatus::ClearedWithLimits && self.limits.is_empty() {
            return Err(Error::plain(Code::EmptyList, "limits"));
        }
        match self.limits.iter().position(ClearanceLimits::limits_nothing) {
            Some(at) => {
                let named = "load, effort, range, no_loaded_flexion or no_breath_hold";
                let error = Error::new(Code::MissingField, "", Given::Nothing, Allowed::rule(named));
                Err(error.within(&alloc::format!("limits[{at}]")))
            }
            None => Ok(()),
        }
    }
}

/// The most limits of one clearance, and of a state: one or two for each region that anyone names.
pub(crate) const MOST_LIMITS: usize = 64;

/// One set of limits, for one region or for the whole body.
#[derive(Clone, Debug, Default, PartialEq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct ClearanceLimits {
    /// Id of the region where it holds; absent means everywhere.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub region: Option<Name>,
    /// Highest load.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub load: Option<Mass>,
    /// Highest effort rating.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub effort: Option<Rpe>,
    /// Deepest range, measured as the lift's own list of ranges is: that list, easiest first, says whether deeper is
    /// longer or shorter. A lift that declares no ranges rests under it: nobody can tell whether it keeps the limit.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub range: Option<Length>,
    /// No loaded bending of the spine.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "core::ops::Not::not"))]
    pub no_loaded_flexion: bool,
    /// No long breath-hold.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "core::ops::Not::not"))]
    pub no_breath_hold: bool,
}

canonical_fields!(ClearanceLimits: region, load, effort, range, no_loaded_flexion, no_breath_hold);

impl ClearanceLimits {
    /// Whether it names no more than where it would hold.
    fn limits_nothing(&self) -> bool {
        let measured = self.load.is_some() || self.effort.is_some() || self.range.is_some();
        !(measured || self.no_loaded_flexion || self.no_breath_hold)
    }
}
