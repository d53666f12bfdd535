//! The plan for coming sessions: it follows the log and never decides anything that is past.

use alloc::string::String;
use alloc::vec::Vec;

use derive_setters::Setters;

use super::identity::declared;
use super::parameters::Parameters;
use super::session::at_most;
use super::set_rule::SetRule;
use super::years::YearsAhead;
use crate::error::{Allowed, Code, Error};
use crate::loading::Implement;
use crate::quantity::{Mass, Name, Rir};

/// The format name that every plan carries.
pub const PLAN_FORMAT: &str = "bismar-plan";
/// The version of plans that this library writes and reads.
pub const PLAN_VERSION: u32 = 1;

/// What the coach intends for the coming sessions.
#[derive(Clone, Debug, PartialEq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct Plan {
    /// Always `bismar-plan`.
    pub format: String,
    /// Version of the format.
    pub version: u32,
    /// The lifts of the next session in their order.
    pub lifts: Vec<LiftPlan>,
    /// Ids of implements that are taken or missing today.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub unavailable: Vec<Name>,
    /// Minutes there are; absent means enough. Where the day's report says fewer, those count.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub minutes: Option<u16>,
    /// This is a planned easy week.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "core::ops::Not::not"))]
    pub easy_week: bool,
    /// What is planned beyond the coming sessions.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub years: Option<YearsAhead>,
}

/// One lift of the plan. Sets, repetitions and load come from the grant; the plan can only ask for less.
#[derive(Clone, Debug, PartialEq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct LiftPlan {
    /// Id of the lift.
    pub lift: Name,
    /// Repetitions to leave in reserve; absent means 3.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub reserve: Option<Rir>,
    /// Fewer sets than granted.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub sets: Option<u8>,
    /// Fewer repetitions than granted.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub reps: Option<u8>,
    /// The warm-up load that is done every session in the same way, as the day's measurement.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub reference: Option<Mass>,
    /// The lift that the coach would keep when time is short.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "core::ops::Not::not"))]
    pub keep: bool,
    /// By which rule one set follows another; absent means the lifter's own curve.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub rule: Option<SetRule>,
    /// Days of the week on which the lift is meant, 0 to 6 from the host's first day; empty means any. Kept for the host and
    /// for a check of the week: no session is decided by it.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub days: Vec<u8>,
}

/// Days of a week.
const WEEK: u8 = 7;

impl LiftPlan {
    /// That lift as it is granted.
    #[must_use]
    pub const fn new(lift: Name) -> LiftPlan {
        LiftPlan {
            lift,
            reserve: None,
            sets: None,
            reps: None,
            reference: None,
            keep: false,
            rule: None,
            days: Vec::new(),
        }
    }
}

impl Plan {
    /// A plan of these lifts in this order, as they are granted.
    #[must_use]
    pub fn of(lifts: impl IntoIterator<Item = Name>) -> Plan {
        Plan {
            format: PLAN_FORMAT.into(),
            version: PLAN_VERSION,
            lifts: lifts.into_iter().map(LiftPlan::new).collect(),
            unavailable: Vec::new(),
            minutes: None,
            easy_week: false,
            years: None,
        }
    }

    /// Checks format, version and list lengths.
    ///
    /// # Errors
    /// `wrong_format`, `newer_version`, `too_many`, `duplicate_lift`, `out_of_range`.
    pub fn check(&self) -> Result<(), Error> {
        check_header(&self.format, PLAN_FORMAT, self.version, PLAN_VERSION)?;
        at_most("lifts", self.lifts.len(), super::parameters::MAX_LIFTS)?;
        if let Some(years) = &self.years {
            years.check().map_err(|error| error.within("years"))?;
        }
        for (at, lift) in self.lifts.iter().enumerate() {
            if let Some(rule) = &lift.rule {
                rule.check().map_err(|error| error.within(&alloc::format!("lifts[{at}].rule")))?;
            }
            if self.lifts.iter().take(at).any(|earlier| earlier.lift == lift.lift) {
                return Err(Error::new(Code::DuplicateLift, "lift", lift.lift.as_str(), Allowed::Unstated)
                    .within(&alloc::format!("lifts[{at}]")));
            }
            for (place, day) in lift.days.iter().enumerate() {
                if *day >= WEEK || lift.days.iter().take(place).any(|earlier| earlier == day) {
                    let highest = f64::from(WEEK - 1);
                    return Err(Error::range(Code::OutOfRange, "days", *day, 0.0, highest, "once")
                        .within(&alloc::format!("lifts[{at}]")));
                }
            }
            for (field, count) in [("sets", lift.sets), ("reps", lift.reps)] {
                if count.is_some_and(|count| !(1..=30).contains(&count)) {
                    return Err(Error::range(
                        Code::OutOfRange,
                        field,
                        count.unwrap_or_default(),
                        1.0,
                        30.0,
                        "",
                    )
                    .within(&alloc::format!("lifts[{at}]")));
                }
            }
        }
        Ok(())
    }

    /// Refuses what a plan says of equipment that these parameters do not have.
    ///
    /// # Errors
    /// `unknown_name` for an implement called unavailable that is not declared, with those that are.
    pub(crate) fn check_against(&self, all: &Parameters) -> Result<(), Error> {
        for (at, id) in self.unavailable.iter().enumerate() {
            let known = all.implements.iter().map(Implement::id);
            declared(Code::UnknownName, "implement", id, known)
                .map_err(|error| error.within(&alloc::format!("unavailable[{at}]")))?;
        }
        Ok(())
    }

    /// Reads a plan from JSON text and checks it.
    ///
    /// # Errors
    /// What reading and checking report, with the path to the field.
    #[cfg(feature = "json")]
    pub fn from_json(text: &str) -> Result<Plan, Error> {
        let plan: Plan = crate::value::Value::from_json(text)?.read()?;
        plan.check()?;
        Ok(plan)
    }

    /// Writes the plan as JSON text that [`Plan::from_json`] reads.
    ///
    /// # Errors
    /// None in practice: everything in a plan can be written.
    #[cfg(feature = "json")]
    pub fn to_json(&self) -> Result<alloc::string::String, Error> {
        Ok(crate::value::Value::write(self)?.to_json())
    }
}

/// The format must be ours and have a version.
pub(crate) fn check_format(format: &str, wanted: &'static str, version: u32) -> Result<(), Error> {
    if format != wanted {
        return Err(Error::new(Code::WrongFormat, "format", format, Allowed::rule(wanted)));
    }
    if version == 0 {
        return Err(Error::range(Code::WrongFormat, "version", version, 1.0, f64::from(u32::MAX), ""));
    }
    Ok(())
}

/// The same, with a version that we know.
pub(crate) fn check_header(
    format: &str,
    wanted: &'static str,
    version: u32,
    known: u32,
) -> Result<(), Error> {
    check_format(format, wanted, version)?;
    if version > known {
        return Err(Error::range(Code::NewerVersion, "version", version, 1.0, f64::from(known), ""));
    }
    Ok(())
}
