//! A state as it is stored, and the one way back in.

#[cfg(feature = "serde")]
use alloc::borrow::Cow;
use alloc::string::String;
use alloc::sync::Arc;
use alloc::vec::Vec;

use super::digest::digest;
use super::lift::{Lift, Now};
use super::loadable::Loadable;
use super::shared::Shared;
use super::state::{InForce, LIBRARY_VERSION, State, Told};
use crate::error::{Allowed, Code, Error};
use crate::quantity::{Day, Name};
use crate::record::{LiftParameters, Parameters};
#[cfg(feature = "serde")]
use crate::{
    record::{Effective, Event, Log},
    value::Value,
};

/// The format name that every stored state carries.
pub const STATE_FORMAT: &str = "bismar-state";

/// A state as it is stored: bounded in size, checked on its way in. The host keeps the log; a state of another version of
/// the library is not used, but folded anew from it.
///
/// # What is checked
/// Format and version; the digest of the parameters, and the parameters themselves; that each lift of them is there once, by its
/// id; that grant and last place are on its lists; that no list is longer than the fold makes it and nothing named twice; that no
/// day lies after the last event and no list of days is out of order; that no counter goes beyond what any policy may ask for;
/// that a status goes with what the lift is for and with its own numbers (no return past the load before it, no more granted
/// than ever was); that what a stop in force concerns is stopped; and, last, the seal over all of it, which a slip of the pen or
/// of a disk breaks. Whether the state is the one after a log only [`State::from_value_or_fold`] can tell, and what somebody
/// writes who makes the seal anew only the log itself.
///
/// # The seal
/// The 64-bit FNV-1a hash, in hexadecimal, of [`Value::canonical_bytes`](crate::value::Value::canonical_bytes) of the document
/// without the field `seal`. It keeps no secret and proves nobody's word.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct StoredState {
    format: String,
    version: String,
    log_version: u32,
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    last: Option<(Day, u32)>,
    /// How many different events the log told, corrections too.
    told: u32,
    /// Digest of the events that were folded, in hexadecimal.
    events: String,
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    parameters: Option<Arc<Parameters>>,
    digest: String,
    shared: Shared,
    /// Each lift of the parameters by its id.
    lifts: Vec<(Name, Now)>,
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    set_aside: Vec<(Arc<LiftParameters>, Now)>,
    /// Over everything else in this form.
    #[cfg(feature = "serde")]
    #[serde(default, skip_serializing_if = "String::is_empty")]
    seal: String,
}

impl From<&State> for StoredState {
    fn from(state: &State) -> StoredState {
        let stored = StoredState {
            format: STATE_FORMAT.into(),
            version: LIBRARY_VERSION.into(),
            log_version: state.log_version,
            last: state.last,
            told: state.told.count,
            events: alloc::format!("{:016x}", state.told.events),
            parameters: state.in_force.as_ref().map(|in_force| Arc::clone(&in_force.parameters)),
            digest: state.digest().into(),
            shared: state.shared.clone(),
            lifts: state.lifts.iter().map(|lift| (lift.set.id.clone(), lift.now.clone())).collect(),
            set_aside: state.set_aside.iter().map(|lift| (Arc::clone(&lift.set), lift.now.clone())).collect(),
            #[cfg(feature = "serde")]
            seal: String::new(),
        };
        #[cfg(feature = "serde")]
        let stored = StoredState { seal: stored.seal_of_the_rest(), ..stored };
        stored
    }
}

impl StoredState {
    /// The seal of what is written, without one.
    #[cfg(feature = "serde")]
    fn seal_of_the_rest(&self) -> String {
        let bytes = Value::write(self).map(|written| written.canonical_bytes()).unwrap_or_default();
        alloc::format!("{:016x}", crate::canonical::hash_bytes(&bytes))
    }

    /// Refuses what was altered since it was made.
    #[cfg(feature = "serde")]
    fn check_seal(&mut self) -> Result<(), Error> {
        let given = core::mem::take(&mut self.seal);
        if given == self.seal_of_the_rest() {
            return Ok(());
        }
        Err(Error::new(Code::StateAltered, "seal", given, Allowed::rule("the seal of this state")))
    }

    /// What is known of each lift, in the order of the parameters.
    fn take_lifts(&mut self) -> Result<Vec<Now>, Error> {
        let sets = self.parameters.as_ref().map_or(&[][..], |all| all.lifts.as_slice());
        let mut given = core::mem::take(&mut self.lifts);
        for (at, (id, _)) in given.iter().enumerate() {
            let inside = |error: Error| error.within(&alloc::format!("lifts[{at}]"));
            crate::record::declared(Code::UnknownLift, "lift", id, sets.iter().map(|set| &set.id))
                .map_err(inside)?;
            if given.iter().take(at).any(|(earlier, _)| earlier == id) {
                let rule = Allowed::rule("each lift once");
                return Err(inside(Error::new(Code::DuplicateLift, "lift", id.as_str(), rule)));
            }
        }
        if given.len() != sets.len() {
            let count = sets.len() as f64;
            return Err(Error::range(Code::OutOfRange, "lifts", given.len(), count, count, "lifts"));
        }
        let place = |id: &Name| sets.iter().position(|set| set.id == *id);
        given.sort_by_key(|(id, _)| place(id));
        Ok(given.into_iter().map(|(_, now)| now).collect())
    }
}

impl TryFrom<StoredState> for State {
    type Error = Error;

    /// # Errors
    /// `wrong_format`; `other_version` for a state that another version of the library made; `parameters_altered` where
    /// the digest is not that of the parameters; `unknown_lift`, `duplicate_lift` and `out_of_range` where lifts and parameters
    /// do not fit together; `out_of_range` where a lift is at work that a stop in force halts, and for what no course of events
    /// leaves behind; `too_many` and `duplicate_name` where a list holds more than the fold puts into it; `state_altered` where
    /// the seal is not that of the rest; what [`Parameters::check`] and [`LiftParameters::check_grant`] report.
    fn try_from(mut stored: StoredState) -> Result<State, Error> {
        check_header(&stored.format, &stored.version)?;
        #[cfg(feature = "serde")]
        let sealed = stored.check_seal();
        #[cfg(not(feature = "serde"))]
        let sealed: Result<(), Error> = Ok(());
        let lifts = stored.take_lifts()?;
        let mut state = State {
            log_version: stored.log_version,
            last: stored.last,
            told: Told { count: stored.told, events: read_digest(&stored.events)? },
            ..State::new(stored.shared.lifter.clone())
        };
        state.shared = stored.shared;
        let Some(parameters) = stored.parameters else {
            check_digest("", &stored.digest)?;
            return state.check_bounds().and(sealed).map(|()| state);
        };
        parameters.check().map_err(|error| error.within("parameters"))?;
        check_digest(&digest(&parameters), &stored.digest)?;
        let body = state.shared.body_mass().map(|(_, mass)| mass);
        for (at, (set, now)) in parameters.lifts.iter().zip(lifts).enumerate() {
            let inside = |error: Error| error.within(&alloc::format!("lifts[{at}]"));
            let loadable = match state.lifts.iter().find(|lift| lift.loads_like(set)) {
                Some(lift) => Arc::clone(&lift.loadable),
                None => Arc::new(Loadable::of(set, &parameters, body).map_err(inside)?),
            };
            state.lifts.push(Lift { set: Arc::new(set.clone()), now, loadable });
        }
        for (at, (set, now)) in stored.set_aside.into_iter().enumerate() {
            let inside = |error: Error| error.within(&alloc::format!("set_aside[{at}]"));
            set.check().map_err(inside)?;
            state.set_aside.push(Lift { set, now, loadable: Arc::default() });
        }
        state.in_force = Some(InForce { digest: stored.digest.into(), parameters });
        // What is told of a wrong seal says less than what is found wrong itself.
        state.check_bounds().and(sealed).map(|()| state)
    }
}

fn check_header(format: &str, version: &str) -> Result<(), Error> {
    if format != STATE_FORMAT {
        return Err(Error::new(Code::WrongFormat, "format", format, Allowed::rule(STATE_FORMAT)));
    }
    if version != LIBRARY_VERSION {
        return Err(Error::new(Code::OtherVersion, "version", version, Allowed::rule(LIBRARY_VERSION)));
    }
    Ok(())
}

/// The digest of events, as it is written.
fn read_digest(stored: &str) -> Result<u64, Error> {
    let read = u64::from_str_radix(stored, 16).ok().filter(|read| alloc::format!("{read:016x}") == stored);
    read.ok_or_else(|| {
        Error::new(
            Code::WrongFormat,
            "events",
            stored,
            Allowed::rule("16 hexadecimal digits, as the state was written"),
        )
    })
}

fn check_digest(own: &str, stored: &str) -> Result<(), Error> {
    if own == stored {
        return Ok(());
    }
    let rule = Allowed::rule("the digest of the parameters");
    Err(Error::new(Code::ParametersAltered, "digest", stored, rule))
}

#[cfg(feature = "schema")]
impl schemars::JsonSchema for State {
    fn schema_name() -> Cow<'static, str> {
        "State".into()
    }

    fn json_schema(generator: &mut schemars::SchemaGenerator) -> schemars::Schema {
        let mut schema = generator.subschema_for::<StoredState>();
        let told = "Everything the fold knows after the last event. The host keeps the log; this can always be made again.";
        schema.insert("description".into(), told.into());
        schema
    }
}

#[cfg(feature = "serde")]
impl serde::Serialize for State {
    fn serialize<S: serde::Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        StoredState::from(self).serialize(to)
    }
}

#[cfg(feature = "serde")]
impl<'de> serde::Deserialize<'de> for State {
    fn deserialize<D: serde::Deserializer<'de>>(from: D) -> Result<State, D::Error> {
        StoredState::deserialize(from)?.try_into().map_err(serde::de::Error::custom)
    }
}

#[cfg(feature = "serde")]
impl State {
    /// Reads a state that this version of the library stored, from a tree of values.
    ///
    /// # Errors
    /// What reading reports, and what the conversion of a [`StoredState`] reports: `other_version` for one of another
    /// version, which is to be folded anew.
    pub fn from_value(stored: &Value) -> Result<State, Error> {
        // One of another version may have another shape, so its header is looked at before the rest.
        if let (Some(Value::Text(format)), Some(Value::Text(version))) =
            (stored.field("format"), stored.field("version"))
        {
            check_header(format, version)?;
        }
        stored.read::<StoredState>()?.try_into()
    }

    /// Reads a stored state where it is of use, and folds the log anew where it is of another version or altered, where the
    /// log has told more since (a later event, a late one, a correction), or where any of its events is another one: of two logs
    /// of one lifter that were kept apart neither takes the state of the other.
    ///
    /// # Errors
    /// What [`fold`](super::fold()) reports of the log.
    pub fn from_value_or_fold(stored: &Value, log: &Log) -> Result<State, Error> {
        log.check()?;
        let told = log.as_told()?;
        match State::from_value(stored) {
            Ok(state) if state.is_after(log, &told) => Ok(state),
            _ => super::fold(log),
        }
    }

    fn is_after(&self, log: &Log, told: &Effective<'_>) -> bool {
        let last = told.events.last().map(|event| (event.day, event.sequence));
        let same_log = self.log_version == log.version && self.shared.lifter == log.lifter;
        same_log && self.last == last && self.told.count == told.count && self.told.events == digest_of(told)
    }
}

/// The digest that a fold of these events leaves.
#[cfg(feature = "serde")]
fn digest_of(told: &Effective<'_>) -> u64 {
    let corrected = &told.corrected;
    let and = |before: Told, event: &Cow<'_, Event>| {
        before.and(event, corrected.told(event.sequence), corrected.is_unread(event.sequence))
    };
    told.events.iter().fold(Told::default(), and).events
}

#[cfg(feature = "json")]
impl State {
    /// Writes the state as JSON text that [`State::from_json`] reads.
    ///
    /// # Errors
    /// None in practice.
    pub fn to_json(&self) -> Result<String, Error> {
        Ok(Value::write(self)?.to_json())
    }

    /// Reads a state that this version of the library stored.
    ///
    /// # Errors
    /// What reading reports, and what [`State::from_value`] reports.
    pub fn from_json(text: &str) -> Result<State, Error> {
        State::from_value(&Value::from_json(text)?)
    }

    /// Reads a stored state where it is of use, and else folds the log anew, as [`State::from_value_or_fold`] does; text
    /// that is no JSON is of no use either.
    ///
    /// # Errors
    /// What [`fold`](super::fold()) reports of the log.
    pub fn from_json_or_fold(text: &str, log: &Log) -> Result<State, Error> {
        State::from_value_or_fold(&Value::from_json(text).unwrap_or_default(), log)
    }
}
