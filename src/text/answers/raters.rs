//! How those who mark agree, in words.

use alloc::string::{String, ToString};
use alloc::vec::Vec;

use crate::answers::{Alike, Raters, WhoMarks};
use crate::gate::Rater;
use crate::numeric;
use crate::text::capital;
use crate::text::phrases::Phrases;
use crate::text::words::Words;

pub(in crate::text) const RATERS: Phrases = &[
    ("rater.coach", "the coach"),
    ("rater.lifter", "the lifter"),
    ("rater.video", "whoever watched the video"),
    ("rater.named", "{who} ({name})"),
    ("raters.pair", "{first} and {second}, {sets}: {alike}"),
    ("raters.criterion", "{criterion}: {alike}"),
    (
        "raters.alike",
        "{same} of {pairs} marks are the same; agreement beyond chance {kappa}, {low} to {high}.",
    ),
    (
        "raters.no_kappa",
        "{same} of {pairs} marks are the same; with one kind of mark only, habit and agreement look alike.",
    ),
    ("raters.none", "they marked nothing in common."),
    ("raters.counts", "They counted as many acceptable repetitions in {same} of {sets}."),
];

/// Two decimals.
pub(super) fn hundredths(value: f64) -> String {
    numeric::tidy(numeric::round(value * 100.0) / 100.0).to_string()
}

impl Words<'_> {
    /// Who marks, as a person says it.
    fn who_marks(&self, who: &WhoMarks) -> String {
        let role = self.say(
            match who.rater {
                Rater::Coach => "rater.coach",
                Rater::Lifter => "rater.lifter",
                Rater::Video => "rater.video",
            },
            &[],
        );
        match &who.id {
            Some(name) => self.say("rater.named", &[("who", role), ("name", name.to_string())]),
            None => role,
        }
    }

    fn alike(&self, alike: &Alike) -> String {
        let mut with = alloc::vec![("same", alike.same.to_string()), ("pairs", alike.pairs.to_string())];
        match &alike.agreement {
            _ if alike.pairs == 0 => self.say("raters.none", &[]),
            Some(agreement) => {
                with.push(("kappa", hundredths(agreement.kappa)));
                with.push(("low", hundredths(agreement.interval.low())));
                with.push(("high", hundredths(agreement.interval.high())));
                self.say("raters.alike", &with)
            }
            None => self.say("raters.no_kappa", &with),
        }
    }

    /// How those who mark agree, in sentences.
    #[must_use]
    pub fn raters(&self, raters: &Raters) -> Vec<String> {
        let mut said = Vec::new();
        for pair in &raters.pairs {
            let with = [
                ("first", capital(&self.who_marks(&pair.first))),
                ("second", self.who_marks(&pair.second)),
                ("sets", self.count("set", pair.sets)),
                ("alike", self.alike(&pair.all)),
            ];
            said.push(self.say("raters.pair", &with));
            if pair.counted > 0 {
                let with = [("same", pair.same_count.to_string()), ("sets", self.count("set", pair.counted))];
                said.push(self.say("raters.counts", &with));
            }
            for (criterion, alike) in &pair.criteria {
                let with = [("criterion", capital(criterion.as_str())), ("alike", self.alike(alike))];
                said.push(self.say("raters.criterion", &with));
            }
        }
        self.end(&mut said, (&raters.stops, raters.today), &raters.missing, &raters.cautions);
        said
    }
}
