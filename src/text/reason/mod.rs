//! Reasons as sentences, in groups that take turns: a stop, pain and the day, the course of the lift, its work.
//!
//! Uses answers, reason, prescription, progression, quantity, record, and the words of the module above.

mod course;
mod pain;
mod work;

pub(super) use course::{OVERRIDE_ENDS, RESTARTS, SHORTFALLS};
pub(super) use pain::UNASKED;

use alloc::string::{String, ToString};
use alloc::vec::Vec;

use super::place::with_place;
use super::words::Words;
use crate::answers::LiftHandover;
use crate::prescription::LiftToday;
use crate::progression::MoveOutlook;
use crate::quantity::{Mass, Name};
use crate::reason::{NamedPlace, OverrideEnd, Reason, Told};
use crate::record::{Grant, Place};

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
        Telling { words: *self, lift: None }.reason(reason)
    }

    /// The same beside its lift: a load is named with its place, and what the lift's answer says is not contradicted.
    #[must_use]
    pub fn reason_for(&self, lift: &LiftToday, reason: &Reason) -> String {
        self.reason_beside(Beside::today(lift), reason)
    }

    /// The same beside a lift that is handed over.
    pub(super) fn reason_handed_over(&self, lift: &LiftHandover, reason: &Reason) -> String {
        self.reason_beside(Beside::handed_over(lift), reason)
    }

    fn reason_beside(&self, lift: Beside<'_>, reason: &Reason) -> String {
        Telling { words: self.for_lift(lift.id), lift: Some(lift) }.reason(reason)
    }
}

/// The lift beside which a reason is told.
#[derive(Clone, Copy)]
struct Beside<'a> {
    id: &'a Name,
    /// Where today's work is.
    today: Place,
    granted: Grant,
    outlook: &'a MoveOutlook,
    /// Whether the gate is open by its count.
    open: bool,
    /// Nothing of it is done today.
    left_out: bool,
    /// The other reasons, where they are told as well.
    reasons: Option<&'a [Reason]>,
}

impl<'a> Beside<'a> {
    fn today(lift: &'a LiftToday) -> Beside<'a> {
        Beside {
            id: &lift.lift,
            today: lift.place,
            granted: lift.granted,
            outlook: &lift.outlook,
            open: lift.gate.open,
            left_out: lift.sets == 0,
            reasons: Some(&lift.reasons),
        }
    }

    fn handed_over(lift: &'a LiftHandover) -> Beside<'a> {
        Beside {
            id: &lift.lift,
            today: lift.granted.place,
            granted: lift.granted,
            outlook: &lift.outlook,
            open: lift.gate_state.open,
            left_out: false,
            reasons: None,
        }
    }

    /// Whether one of the other reasons is such a one.
    fn has(&self, such: impl Fn(&Reason) -> bool) -> bool {
        self.reasons.is_some_and(|reasons| reasons.iter().any(such))
    }
}

/// What a sentence may refer to.
#[derive(Clone, Copy)]
struct Telling<'a> {
    words: Words<'a>,
    lift: Option<Beside<'a>>,
}

impl Telling<'_> {
    fn reason(&self, reason: &Reason) -> String {
        self.own(reason)
            .or_else(|| self.words.stop_reason(reason))
            .or_else(|| self.pain(reason))
            .or_else(|| self.course(reason))
            .unwrap_or_else(|| self.work(reason))
    }

    /// A reason in the words of the translation, where it has them.
    fn own(&self, reason: &Reason) -> Option<String> {
        let key = alloc::format!("reason.{}", reason.code());
        self.words.translates(&key).then(|| {
            let values = reason.values().into_iter();
            let said: Vec<(&str, String)> =
                values.map(|(name, told)| (name, self.told(reason, name, told))).collect();
            self.words.say(&key, &said)
        })
    }

    /// A value of a reason as it is said; a load with its place, as in English.
    fn told(&self, reason: &Reason, name: &str, told: Told<'_>) -> String {
        match told {
            Told::Mass(load) => self.load_of(reason, name, load),
            Told::Place(place) => self.place(place),
            Told::Day(on) => self.words.day(on),
            Told::Name(id) if name == "region" => self.region(id),
            Told::Name(name) => name.to_string(),
            Told::Count(count) => count.to_string(),
            Told::Number(number) => number.to_string(),
            Told::Reserve(reserve) => reserve.to_string(),
            Told::Ask(ask) => self.words.ask(ask),
            Told::Signs(signs) => self.words.stop_signs(signs),
            Told::Features(features) => self.words.pain_features(features),
            Told::End(by) => self.words.override_end(by),
            Told::Restart(why) => self.words.restart(why),
            Told::SignOff(why) => self.words.sign_off_refusal(why),
            Told::Unasked(when) => self.words.unasked(when),
            Told::Short(short) => self.words.shortfall(short),
            Told::Nothing => String::new(),
        }
    }

    /// A load of a reason: with the place that it is for, but where it holds at every place, or its sentence names the place
    /// beside another load.
    fn load_of(&self, reason: &Reason, name: &str, load: Mass) -> String {
        match (reason, name) {
            (Reason::Ceiling { .. } | Reason::ClearanceLimit { .. } | Reason::Returning { .. }, _) => {
                self.below(load)
            }
            (Reason::RoundedDown { .. }, "from") => self.rounded_from(load),
            (Reason::OverrideInForce { .. } | Reason::OverrideSuspended { .. }, _) => self.written(load),
            // It was for another kind, of which it is not known whether it came in pairs.
            (Reason::OverrideEnded { by: OverrideEnd::OtherImplement, .. }, _) => self.words.written(load),
            (Reason::OverrideEnded { .. }, _) => self.one_by_one(self.words.written(load)),
            (Reason::MaintainingBand { .. } | Reason::BelowBand { .. }, "not_below") => self.not_below(load),
            (Reason::BelowBand { .. }, "load") | (Reason::NoLoadableStep { .. }, "next") => self.alone(load),
            (Reason::RoundedDown { .. } | Reason::NothingLoadable { .. }, _) => self.today(load),
            (Reason::NoLoadableStep { .. } | Reason::WindowCap { .. } | Reason::PairCap { .. }, _) => {
                self.cap(load)
            }
            _ => self.standing(load),
        }
    }

    /// A load whose place its sentence names elsewhere.
    fn alone(&self, load: Mass) -> String {
        self.one_by_one(self.words.mass(load))
    }

    /// The same of a load that nothing printed may pass.
    fn below(&self, load: Mass) -> String {
        self.one_by_one(self.words.at_most(load))
    }

    /// The load of an override as the coach wrote it, with the place at which the lift stands.
    fn written(&self, load: Mass) -> String {
        self.with_place(self.words.written(load), |lift| lift.granted.place)
    }

    /// What was rounded down: as it was written, where that is the coach's own word.
    fn rounded_from(&self, load: Mass) -> String {
        let word =
            |reason: &Reason| matches!(reason, Reason::OverrideInForce { load: own, .. } if *own == load);
        match self.lift.is_some_and(|lift| lift.has(word)) {
            true => self.one_by_one(self.words.written(load)),
            false => self.below(load),
        }
    }

    /// A load in words, each where the lift is done with one in each hand.
    fn one_by_one(&self, said: String) -> String {
        match self.lift {
            Some(lift) => self.words.one_by_one(lift.id, said),
            None => said,
        }
    }

    /// A load with the place of today's work.
    fn today(&self, load: Mass) -> String {
        self.with_place(self.words.mass(load), |lift| lift.today)
    }

    /// A load with the place at which the lift stands.
    fn standing(&self, load: Mass) -> String {
        self.with_place(self.words.mass(load), |lift| lift.granted.place)
    }

    /// A load that is to be kept at the least, with the place at which the lift stands.
    fn not_below(&self, least: Mass) -> String {
        self.with_place(self.words.at_least(least), |lift| lift.granted.place)
    }

    /// A load that no step may pass, with the place at which the lift stands.
    fn cap(&self, cap: Mass) -> String {
        let loaded = self.lift.map(|lift| lift.granted.load());
        self.with_place(self.words.cap(cap, loaded), |lift| lift.granted.place)
    }

    fn with_place(&self, said: String, place: impl Fn(&Beside<'_>) -> Place) -> String {
        match &self.lift {
            Some(lift) => {
                with_place(self.words.one_by_one(lift.id, said), &self.words.place(lift.id, place(lift)))
            }
            None => said,
        }
    }

    /// A place that is told by what it is.
    fn place(&self, place: &NamedPlace) -> String {
        self.words.named_place(self.lift.map(|lift| lift.id), place)
    }

    fn region(&self, id: &Name) -> String {
        self.words.region_name(id).to_string()
    }

    /// The strict and the forgiving lift of the pair, by name where it is known.
    fn pair(&self) -> (String, String) {
        let pair = self.lift.and_then(|lift| self.words.pair(lift.id));
        match pair {
            Some(pair) => {
                let name = |id| self.words.lift_name(id).to_string();
                (name(&pair.strict), name(&pair.forgiving))
            }
            None => ("the strict lift".to_string(), "the forgiving lift".to_string()),
        }
    }
}
