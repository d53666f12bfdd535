//! Reasons as sentences, in groups that take turns: a stop, pain and the day, the course of the lift, its work.
//!
//! Uses reason, prescription, quantity, record, and the words of the module above.

mod course;
mod pain;
mod work;

use alloc::string::{String, ToString};
use alloc::vec::Vec;

use super::place::with_place;
use super::words::Words;
use crate::prescription::LiftToday;
use crate::quantity::{Mass, Name};
use crate::reason::{Reason, Told};
use crate::record::Place;

impl Words<'_> {
    /// A reason as one plain sentence; a stop with what to do now.
    ///
    /// ```
    /// use bismar::{reason::Reason, text::Words};
    ///
    /// let said = Words::plain().reason(&Reason::CoolingOff { days_left: 3 });
    /// assert_eq!(said, "The last step was recent: 3 more days.");
    /// ```
    #[must_use]
    pub fn reason(&self, reason: &Reason) -> String {
        self.own_reason(reason).unwrap_or_else(|| Telling { words: *self, lift: None }.reason(reason))
    }

    /// The same beside its lift: a load is named with its place, and what the lift's answer says is not contradicted.
    #[must_use]
    pub fn reason_for(&self, lift: &LiftToday, reason: &Reason) -> String {
        let words = self.for_lift(&lift.lift);
        words.own_reason(reason).unwrap_or_else(|| Telling { words, lift: Some(lift) }.reason(reason))
    }
}

impl Words<'_> {
    /// A reason in the words of the translation, where it has them.
    fn own_reason(&self, reason: &Reason) -> Option<String> {
        let key = alloc::format!("reason.{}", reason.code());
        self.translates(&key).then(|| {
            let values = reason.values().into_iter();
            let said: Vec<(&str, String)> =
                values.map(|(name, told)| (name, self.told(name, told))).collect();
            self.say(&key, &said)
        })
    }

    /// A value of a reason as it is said.
    fn told(&self, name: &str, told: Told<'_>) -> String {
        match told {
            Told::Mass(mass) if name == "cap" => self.cap(mass, None),
            Told::Mass(mass) => self.at_most(mass),
            Told::Day(on) => super::day(on),
            Told::Name(id) if name == "region" => self.region_name(id).to_string(),
            Told::Name(name) => name.to_string(),
            Told::Count(count) => count.to_string(),
            Told::Number(number) => number.to_string(),
            Told::Reserve(reserve) => reserve.to_string(),
            Told::Ask(ask) => super::ask(ask).to_string(),
            Told::Signs(signs) => {
                signs.iter().map(|sign| super::stop_sign(*sign)).collect::<Vec<_>>().join("; ")
            }
            Told::Features(features) => {
                features.iter().map(|one| super::sign::pain_feature(*one)).collect::<Vec<_>>().join("; ")
            }
            Told::End(by) => course::override_end(by).to_string(),
            Told::Restart(why) => course::restart(why).to_string(),
            Told::Short(short) => course::shortfall(short).to_string(),
            _ => String::new(),
        }
    }
}

/// What a sentence may refer to.
#[derive(Clone, Copy)]
struct Telling<'a> {
    words: Words<'a>,
    lift: Option<&'a LiftToday>,
}

impl Telling<'_> {
    fn reason(&self, reason: &Reason) -> String {
        self.words
            .stop_reason(reason)
            .or_else(|| self.pain(reason))
            .or_else(|| self.course(reason))
            .unwrap_or_else(|| self.work(reason))
    }

    /// A load with the place of today's work.
    fn today(&self, load: Mass) -> String {
        self.with_place(self.words.mass(load), |lift| lift.place)
    }

    /// A load with the place at which the lift stands.
    fn standing(&self, load: Mass) -> String {
        self.with_place(self.words.mass(load), |lift| lift.granted.place)
    }

    /// A load that no step may pass, with the place at which the lift stands.
    fn cap(&self, cap: Mass) -> String {
        let loaded = self.lift.map(|lift| lift.granted.load());
        self.with_place(self.words.cap(cap, loaded), |lift| lift.granted.place)
    }

    fn with_place(&self, said: String, place: impl Fn(&LiftToday) -> Place) -> String {
        match self.lift {
            Some(lift) => {
                let said = self.words.one_by_one(&lift.lift, said);
                with_place(said, &self.words.place(&lift.lift, place(lift)))
            }
            None => said,
        }
    }

    fn region(&self, id: &Name) -> String {
        self.words.region_name(id).to_string()
    }

    /// The strict and the forgiving lift of the pair, by name where it is known.
    fn pair(&self) -> (String, String) {
        let pair = self.lift.and_then(|lift| self.words.pair(&lift.lift));
        match pair {
            Some(pair) => {
                let name = |id| self.words.lift_name(id).to_string();
                (name(&pair.strict), name(&pair.forgiving))
            }
            None => ("the strict lift".to_string(), "the forgiving lift".to_string()),
        }
    }
}
