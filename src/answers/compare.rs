//! How does one place and its work compare with another?

use alloc::vec::Vec;

use super::diary::Diary;
use crate::caution::Caution;
use crate::error::{Code, Error};
use crate::quantity::{Day, Name};
use crate::reason::Reason;
use crate::record::{Dimension, Grant, Log};

/// In what one place and its work is harder than another, and in what easier.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Comparison {
    /// Every stop of the lifter, whatever is asked about; empty where nothing is stopped. Shown before anything else.
    pub stops: Vec<Reason>,
    /// The day it was made for.
    pub today: Day,
    /// Id of the lift.
    pub lift: Name,
    /// What it is compared with.
    pub from: Grant,
    /// What is compared.
    pub to: Grant,
    /// In what `to` is harder than `from`.
    pub harder: Vec<Dimension>,
    /// In what it is easier.
    pub easier: Vec<Dimension>,
    /// It is another rung, and no chain of harder rungs connects the two.
    pub sideways: bool,
    /// What to show beside it.
    pub cautions: Vec<Caution>,
}

/// In what is that place and work of a lift harder or easier than what it is granted now, or than another?
///
/// # Rules
/// Rungs are ordered by what each is declared harder than; ranges and tempos by their lists, easiest first; sets, repetitions
/// and load by number. What is not ordered is neither: a rung that no chain connects is a step sideways.
///
/// # Errors
/// What [`fold`](crate::progression::fold) reports; `before_last_event`; `no_parameters`; `unknown_lift`; `out_of_range` for
/// a rung, range or tempo that the lift does not have, and for sets or repetitions outside 1 to 30.
pub fn compare(
    log: &Log,
    lift: &Name,
    today: Day,
    to: &Grant,
    from: Option<&Grant>,
) -> Result<Comparison, Error> {
    Diary::of(log)?.compare(lift, today, to, from)
}

impl Diary<'_> {
    /// In what is that place and work harder or easier than what is granted now, or than another? See [`compare`].
    ///
    /// # Errors
    /// `before_last_event`; `no_parameters`; `unknown_lift`; `out_of_range`.
    pub fn compare(
        &self,
        lift: &Name,
        today: Day,
        to: &Grant,
        from: Option<&Grant>,
    ) -> Result<Comparison, Error> {
        self.check_today(today)?;
        let all = self.state().parameters().ok_or_else(|| Error::plain(Code::NoParameters, "parameters"))?;
        all.check_id(lift)?;
        let known = self.state().lift_state(lift).ok_or_else(|| Error::plain(Code::UnknownLift, "lift"))?;
        let set = known.parameters();
        let from = from.copied().unwrap_or_else(|| known.grant());
        set.check_grant(&from).map_err(|error| error.within("from"))?;
        set.check_grant(to).map_err(|error| error.within("to"))?;
        let (harder, easier) = (set.harder_in(&from, to), set.harder_in(to, &from));
        // Another rung, and neither stands above the other.
        let ordered = harder.iter().chain(&easier).any(|dimension| *dimension == Dimension::Variant);
        let sideways = from.place.rung != to.place.rung && !ordered;
        Ok(Comparison {
            stops: self.state().stops_on(today),
            today,
            lift: lift.clone(),
            from,
            to: *to,
            harder,
            easier,
            sideways,
            cautions: self.cautions(today),
        })
    }
}
