//! Canonical bytes: what every value of the small world is kept as, and back.
//!
//! A structure is taken apart field by field, so that a new field does not compile before it is kept, cut or said to be
//! compared by no rule.

use std::boxed::Box;
use std::vec::Vec;

use super::world::{REGIONS, any_day, kg, mm, name};
use crate::quantity::{Day, Length, Mass, Name, Pain};

/// More days than any rule of this world compares, into the past and into the future.
pub(super) const FAR: i32 = 7;

/// Bytes being written, as of a day.
pub(super) struct Written {
    pub(super) all: Vec<u8>,
    pub(super) on: Day,
    /// The last day on which anything was trained, of which the next morning may speak however long ago it is.
    pub(super) trained: Option<Day>,
}

impl Written {
    pub(super) fn on(on: Day, trained: Option<Day>) -> Written {
        Written { all: Vec::with_capacity(320), on, trained }
    }

    /// Days since that one, cut at those that count.
    pub(super) fn ago(&self, day: Day) -> i32 {
        self.on.since(day).clamp(-FAR, FAR)
    }
}

/// Bytes being read; days are counted back from [`any_day`].
pub(super) struct Read<'a>(pub(super) &'a [u8]);

impl Read<'_> {
    pub(super) fn byte(&mut self) -> u8 {
        let (first, rest) = self.0.split_first().unwrap();
        self.0 = rest;
        *first
    }
}

/// Kept in canonical bytes.
pub(super) trait Kept: Sized {
    fn put(&self, out: &mut Written);
    fn get(from: &mut Read<'_>) -> Self;
}

impl Kept for u8 {
    fn put(&self, out: &mut Written) {
        out.all.push(*self);
    }

    fn get(from: &mut Read<'_>) -> u8 {
        from.byte()
    }
}

impl Kept for u16 {
    fn put(&self, out: &mut Written) {
        out.all.push(u8::try_from(*self).unwrap());
    }

    fn get(from: &mut Read<'_>) -> u16 {
        u16::from(from.byte())
    }
}

impl Kept for u32 {
    fn put(&self, out: &mut Written) {
        out.all.push(u8::try_from(*self).unwrap());
    }

    fn get(from: &mut Read<'_>) -> u32 {
        u32::from(from.byte())
    }
}

impl Kept for i8 {
    fn put(&self, out: &mut Written) {
        out.all.push(self.cast_unsigned());
    }

    fn get(from: &mut Read<'_>) -> i8 {
        from.byte().cast_signed()
    }
}

impl Kept for bool {
    fn put(&self, out: &mut Written) {
        out.all.push(u8::from(*self));
    }

    fn get(from: &mut Read<'_>) -> bool {
        from.byte() != 0
    }
}

impl Kept for Day {
    fn put(&self, out: &mut Written) {
        let far = FAR + i32::from(out.trained != Some(*self));
        let ago = if out.ago(*self) < FAR { out.ago(*self) } else { far };
        out.all.push((ago + FAR) as u8);
    }

    fn get(from: &mut Read<'_>) -> Day {
        any_day().plus(FAR - i32::from(from.byte())).unwrap()
    }
}

/// Loads are whole kilograms here.
impl Kept for Mass {
    fn put(&self, out: &mut Written) {
        let whole = self.kg() as u8;
        assert!(kg(f64::from(whole)) == *self, "{self:?}");
        out.all.push(whole);
    }

    fn get(from: &mut Read<'_>) -> Mass {
        kg(f64::from(from.byte()))
    }
}

/// Lengths are whole decimetres.
impl Kept for Length {
    fn put(&self, out: &mut Written) {
        out.all.push((self.mm() / 100.0) as u8);
    }

    fn get(from: &mut Read<'_>) -> Length {
        mm(f64::from(from.byte()) * 100.0)
    }
}

impl Kept for Pain {
    fn put(&self, out: &mut Written) {
        out.all.push(self.score());
    }

    fn get(from: &mut Read<'_>) -> Pain {
        Pain::new(from.byte()).unwrap()
    }
}

/// The names of this world that a rule may compare.
const NAMES: [&str; 5] = [REGIONS[0], REGIONS[1], REGIONS[2], "brace", "belt"];

impl Kept for Name {
    fn put(&self, out: &mut Written) {
        out.all.push(NAMES.iter().position(|known| *known == self.as_str()).unwrap() as u8);
    }

    fn get(from: &mut Read<'_>) -> Name {
        name(NAMES[usize::from(from.byte())])
    }
}

impl<T: Kept> Kept for Option<T> {
    fn put(&self, out: &mut Written) {
        out.all.push(u8::from(self.is_some()));
        self.iter().for_each(|value| value.put(out));
    }

    fn get(from: &mut Read<'_>) -> Option<T> {
        (from.byte() == 1).then(|| T::get(from))
    }
}

impl<T: Kept> Kept for Box<T> {
    fn put(&self, out: &mut Written) {
        self.as_ref().put(out);
    }

    fn get(from: &mut Read<'_>) -> Box<T> {
        Box::new(T::get(from))
    }
}

impl<T: Kept> Kept for Vec<T> {
    fn put(&self, out: &mut Written) {
        out.all.push(u8::try_from(self.len()).unwrap());
        self.iter().for_each(|value| value.put(out));
    }

    fn get(from: &mut Read<'_>) -> Vec<T> {
        (0..from.byte()).map(|_| T::get(from)).collect()
    }
}

impl<T: Kept, const COUNT: usize> Kept for [T; COUNT] {
    fn put(&self, out: &mut Written) {
        self.iter().for_each(|value| value.put(out));
    }

    fn get(from: &mut Read<'_>) -> [T; COUNT] {
        core::array::from_fn(|_| T::get(from))
    }
}

impl<A: Kept, B: Kept> Kept for (A, B) {
    fn put(&self, out: &mut Written) {
        self.0.put(out);
        self.1.put(out);
    }

    fn get(from: &mut Read<'_>) -> (A, B) {
        (A::get(from), B::get(from))
    }
}

impl<A: Kept, B: Kept, C: Kept> Kept for (A, B, C) {
    fn put(&self, out: &mut Written) {
        self.0.put(out);
        self.1.put(out);
        self.2.put(out);
    }

    fn get(from: &mut Read<'_>) -> (A, B, C) {
        (A::get(from), B::get(from), C::get(from))
    }
}

/// Keeps a structure: fields whole, fields cut to what rules compare, and fields that are only ever said.
macro_rules! keep {
    ($type:ident { $($whole:ident),* $(,)? }
        $(cut |$out:ident| { $($cut:ident: $to:expr),* $(,)? })?
        $(said { $($said:ident: $as:expr),* $(,)? })?
    ) => {
        impl $crate::progression::exploration::bytes::Kept for $type {
            fn put(&self, written: &mut $crate::progression::exploration::bytes::Written) {
                let $type { $($whole,)* $($($cut,)*)? $($($said: _,)*)? } = self;
                $($whole.put(written);)*
                $($({ #[allow(unused_variables, reason = "not every cut asks for the day")] let $out = &*written; let kept = $to; kept.put(written); })*)?
            }

            fn get(from: &mut $crate::progression::exploration::bytes::Read<'_>) -> Self {
                use $crate::progression::exploration::bytes::Kept;
                // Evaluated in the order in which they were put.
                $(let $whole = Kept::get(from);)*
                $($(let $cut = Kept::get(from);)*)?
                $type { $($whole,)* $($($cut,)*)? $($($said: $as,)*)? }
            }
        }
    };
}

/// Keeps one of a list of values by its place in it.
macro_rules! keep_one_of {
    ($type:ty: $all:expr) => {
        impl $crate::progression::exploration::bytes::Kept for $type {
            fn put(&self, written: &mut $crate::progression::exploration::bytes::Written) {
                written.all.push($all.iter().position(|one| one == self).unwrap() as u8);
            }

            fn get(from: &mut $crate::progression::exploration::bytes::Read<'_>) -> Self {
                $all[usize::from(from.byte())]
            }
        }
    };
}

pub(super) use {keep, keep_one_of};
