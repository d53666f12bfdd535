//! Stop signs and what is asked first, in words.

use alloc::string::String;

use super::phrases::{Phrases, english_in};
use super::words::Words;
use crate::sign::{Ask, PainFeature, StopSign};

/// Signs, what is asked, and what came with pain, by key.
pub(super) const SIGNS: Phrases = &[
    ("sign.chest_pain", "chest pain or pressure"),
    ("sign.faint", "fainting or near-fainting"),
    ("sign.breathlessness", "sudden severe breathlessness"),
    ("sign.headache", "sudden worst-ever headache"),
    ("sign.one_sided_weakness", "new weakness or numbness on one side, or trouble speaking"),
    ("sign.heartbeat", "a racing or irregular heart"),
    ("sign.vision", "a sudden change in vision"),
    ("sign.saddle_numbness", "new bladder or bowel trouble, or numbness between the legs"),
    ("ask.fever", "fever"),
    ("ask.dizziness", "dizziness"),
    ("ask.palpitations", "palpitations"),
    ("ask.fall", "a fall"),
    ("ask.new_medicine", "a new or changed medicine"),
    ("pain.new", "new"),
    ("pain.rising", "rising"),
    ("pain.sharp", "sharp"),
    ("pain.radiating", "spreading down an arm or a leg"),
    ("pain.locking", "the joint locks"),
    ("pain.numbness", "numbness or weakness"),
    ("pain.pop", "a pop with swelling or loss of strength"),
];

const fn sign_key(sign: StopSign) -> &'static str {
    match sign {
        StopSign::ChestPain => "sign.chest_pain",
        StopSign::Faint => "sign.faint",
        StopSign::Breathlessness => "sign.breathlessness",
        StopSign::Headache => "sign.headache",
        StopSign::OneSidedWeakness => "sign.one_sided_weakness",
        StopSign::Heartbeat => "sign.heartbeat",
        StopSign::Vision => "sign.vision",
        StopSign::SaddleNumbness => "sign.saddle_numbness",
    }
}

const fn ask_key(ask: Ask) -> &'static str {
    match ask {
        Ask::Fever => "ask.fever",
        Ask::Dizziness => "ask.dizziness",
        Ask::Palpitations => "ask.palpitations",
        Ask::Fall => "ask.fall",
        Ask::NewMedicine => "ask.new_medicine",
    }
}

const fn feature_key(feature: PainFeature) -> &'static str {
    match feature {
        PainFeature::New => "pain.new",
        PainFeature::Rising => "pain.rising",
        PainFeature::Sharp => "pain.sharp",
        PainFeature::Radiating => "pain.radiating",
        PainFeature::Locking => "pain.locking",
        PainFeature::Numbness => "pain.numbness",
        PainFeature::Pop => "pain.pop",
    }
}

/// A stop sign as it is said.
#[must_use]
pub fn stop_sign(sign: StopSign) -> &'static str {
    english_in(SIGNS, sign_key(sign))
}

/// What was asked, as it is said.
#[must_use]
pub fn ask(ask: Ask) -> &'static str {
    english_in(SIGNS, ask_key(ask))
}

impl Words<'_> {
    /// What was asked, as it is said.
    #[must_use]
    pub fn ask(&self, ask: Ask) -> String {
        self.say(ask_key(ask), &[])
    }

    /// Stop signs, one after the other.
    pub(super) fn stop_signs(&self, signs: &[StopSign]) -> String {
        let said = signs.iter().map(|sign| self.say(sign_key(*sign), &[]));
        said.collect::<alloc::vec::Vec<_>>().join("; ")
    }

    /// What came with pain, one after the other.
    pub(super) fn pain_features(&self, features: &[PainFeature]) -> String {
        let said = features.iter().map(|feature| self.say(feature_key(*feature), &[]));
        said.collect::<alloc::vec::Vec<_>>().join("; ")
    }
}
