//! A value of a reason, whatever its type: what a sentence in any language is made with.

use super::{NamedPlace, OverrideEnd, Restart, Shortfall, SignOffRefusal, Unasked};
use crate::quantity::{Day, Length, Mass, Name, Rir};
use crate::sign::{Ask, PainFeature, StopSign};

/// A value of a reason.
#[non_exhaustive]
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Told<'a> {
    /// A load.
    Mass(Mass),
    /// A place.
    Place(&'a NamedPlace),
    /// A day.
    Day(Day),
    /// A region, a rung, an implement, a criterion or a person.
    Name(&'a Name),
    /// A count.
    Count(u32),
    /// A number.
    Number(f64),
    /// Repetitions in reserve.
    Reserve(Rir),
    /// What was asked.
    Ask(Ask),
    /// Stop signs.
    Signs(&'a [StopSign]),
    /// What came with pain.
    Features(&'a [PainFeature]),
    /// In what a session fell short.
    Short(Shortfall),
    /// When nobody asked about pain.
    Unasked(Unasked),
    /// What ended an override.
    End(OverrideEnd),
    /// Why sessions are counted anew.
    Restart(Restart),
    /// Why a sign-off lifted no stop.
    SignOff(SignOffRefusal),
    /// Nothing.
    Nothing,
}

macro_rules! told {
    ($($type:ty: $value:ident => $told:expr;)+) => {
        $(impl<'a> From<&'a $type> for Told<'a> {
            fn from($value: &'a $type) -> Told<'a> {
                $told
            }
        })+
    };
}

told! {
    Mass: value => Told::Mass(*value);
    Day: value => Told::Day(*value);
    Length: value => Told::Number(value.mm());
    Name: value => Told::Name(value);
    NamedPlace: value => Told::Place(value);
    u8: value => Told::Count(u32::from(*value));
    u16: value => Told::Count(u32::from(*value));
    u32: value => Told::Count(*value);
    f64: value => Told::Number(*value);
    Rir: value => Told::Reserve(*value);
    Ask: value => Told::Ask(*value);
    Shortfall: value => Told::Short(*value);
    Unasked: value => Told::Unasked(*value);
    OverrideEnd: value => Told::End(*value);
    Restart: value => Told::Restart(*value);
    SignOffRefusal: value => Told::SignOff(*value);
    alloc::vec::Vec<StopSign>: value => Told::Signs(value);
    alloc::vec::Vec<PainFeature>: value => Told::Features(value);
    Option<u8>: value => value.map_or(Told::Nothing, |count| Told::Count(u32::from(count)));
    Option<u16>: value => value.map_or(Told::Nothing, |count| Told::Count(u32::from(count)));
    Option<Mass>: value => value.map_or(Told::Nothing, Told::Mass);
    Option<Day>: value => value.map_or(Told::Nothing, Told::Day);
    Option<Name>: value => value.as_ref().map_or(Told::Nothing, Told::Name);
}
