//! Reasons as sentences, in groups that take turns: a stop, pain and the day, the course of the lift, its work.
//!
//! Uses reason, prescription, quantity, record, and the words of the module above.

mod course;
mod pain;
mod work;

use alloc::string::{String, ToString};

use super::place::with_place;
use super::words::Words;
use crate::prescription::LiftToday;
use crate::quantity::{Mass, Name};
use crate::reason::Reason;
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
        Telling { words: *self, lift: None }.reason(reason)
    }

    /// The same beside its lift: a load is named with its place, and what the lift's answer says is not contradicted.
    #[must_use]
    pub fn reason_for(&self, lift: &LiftToday, reason: &Reason) -> String {
        Telling { words: *self, lift: Some(lift) }.reason(reason)
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

    /// A load that is not to be passed, with the place at which the lift stands.
    fn at_most(&self, load: Mass) -> String {
        self.with_place(self.words.at_most(load), |lift| lift.granted.place)
    }

    fn with_place(&self, said: String, place: impl Fn(&LiftToday) -> Place) -> String {
        match self.lift {
            Some(lift) => with_place(said, &self.words.place(&lift.lift, place(lift))),
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
