//! Stop signs and what is asked first, in words.

use crate::sign::{Ask, PainFeature, StopSign};

/// A stop sign as it is said.
#[must_use]
pub fn stop_sign(sign: StopSign) -> &'static str {
    match sign {
        StopSign::ChestPain => "chest pain or pressure",
        StopSign::Faint => "fainting or near-fainting",
        StopSign::Breathlessness => "sudden severe breathlessness",
        StopSign::Headache => "sudden worst-ever headache",
        StopSign::OneSidedWeakness => "new weakness or numbness on one side, or trouble speaking",
        StopSign::Heartbeat => "a racing or irregular heart",
        StopSign::Vision => "a sudden change in vision",
        StopSign::SaddleNumbness => "new bladder or bowel trouble, or numbness between the legs",
    }
}

/// What was asked, as it is said.
#[must_use]
pub fn ask(ask: Ask) -> &'static str {
    match ask {
        Ask::Fever => "fever",
        Ask::Dizziness => "dizziness",
        Ask::Palpitations => "palpitations",
        Ask::Fall => "a fall",
        Ask::NewMedicine => "a new or changed medicine",
    }
}

/// What came with pain, as it is said.
pub(super) fn pain_feature(feature: PainFeature) -> &'static str {
    match feature {
        PainFeature::New => "new",
        PainFeature::Rising => "rising",
        PainFeature::Sharp => "sharp",
        PainFeature::Radiating => "spreading down an arm or a leg",
        PainFeature::Locking => "the joint locks",
        PainFeature::Numbness => "numbness or weakness",
        PainFeature::Pop => "a pop with swelling or loss of strength",
    }
}
