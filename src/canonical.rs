//! Canonical bytes (private): what a digest is taken over.
//!
//! Uses `numeric`. The same with every set of features and on every machine: whole numbers little-endian, other numbers
//! as the bits of `f64`, lengths as `u32`, fields in the order in which their type lists them, a tag byte for each
//! variant. Names of fields and of variants are no part of it, nor is the text of any format.
//!
//! A type's own list of fields stands beside it and names every one, so that a field that is added does not compile
//! until it is listed.

use alloc::boxed::Box;
use alloc::string::String;
use alloc::vec::Vec;

use crate::numeric;

/// A value as bytes. Two values of one type have equal bytes only if they are equal.
pub(crate) trait Canonical {
    /// Appends the bytes.
    fn put(&self, out: &mut Vec<u8>);
}

/// Bytes of a structure: its fields in the order given.
macro_rules! canonical_fields {
    ($name:ident: $($field:ident),+ $(,)?) => {
        impl $crate::canonical::Canonical for $name {
            fn put(&self, out: &mut ::alloc::vec::Vec<u8>) {
                let $name { $($field),+ } = self;
                $($crate::canonical::Canonical::put($field, out);)+
            }
        }
    };
}

/// Bytes of a choice: the tag of the variant, then what it holds. A tag is never used again for another variant.
macro_rules! canonical_kinds {
    ($name:ident: $($tag:literal $variant:ident $(($($inner:ident),+))? $({$($field:ident),+ $(,)?})?),+ $(,)?) => {
        impl $crate::canonical::Canonical for $name {
            fn put(&self, out: &mut ::alloc::vec::Vec<u8>) {
                match self {
                    $($name::$variant $(($($inner),+))? $({$($field),+})? => {
                        out.push($tag);
                        $($($crate::canonical::Canonical::put($inner, out);)+)?
                        $($($crate::canonical::Canonical::put($field, out);)+)?
                    })+
                }
            }
        }

        // A tag given twice does not compile.
        #[deny(unreachable_patterns)]
        const _: () = match 0_u8 {
            $($tag => (),)+
            _ => (),
        };
    };
}

pub(crate) use {canonical_fields, canonical_kinds};

/// The offset basis and the prime of the 64-bit hash (Fowler, Noll and Vo; from memory).
const BASIS: u64 = 0xcbf2_9ce4_8422_2325;
const PRIME: u64 = 0x0000_0100_0000_01b3;

/// 64-bit FNV-1a over the canonical bytes.
pub(crate) fn hash(value: &impl Canonical) -> u64 {
    let mut bytes = Vec::new();
    value.put(&mut bytes);
    hash_bytes(&bytes)
}

/// The same over bytes that are canonical already.
pub(crate) fn hash_bytes(bytes: &[u8]) -> u64 {
    bytes.iter().fold(BASIS, |hash, byte| (hash ^ u64::from(*byte)).wrapping_mul(PRIME))
}

/// How many words are mixed side by side, so that no multiplication waits for the one before it.
const LANES: usize = 4;

/// What was mixed before, and one value more: a digest over values one by one, each counted in its place. Eight bytes at a time
/// in lanes side by side, since a log of decades is gone through whenever a stored state is held against it (our choice of
/// mixing; it keeps no secret).
pub(crate) fn mixed(before: u64, value: &impl Canonical) -> u64 {
    let mut bytes = Vec::with_capacity(8_192);
    value.put(&mut bytes);
    let mix = |hash: u64, word: u64| {
        let product = (hash ^ word).wrapping_mul(PRIME);
        product ^ (product >> 32)
    };
    let word = |chunk: &[u8]| chunk.iter().rev().fold(0, |word, byte| word << 8 | u64::from(*byte));
    // Each lane begins elsewhere, so that the same words in other lanes give another digest.
    let mut lanes = [before ^ BASIS; LANES];
    for (lane, at) in lanes.iter_mut().zip(0..) {
        *lane = mix(*lane, at);
    }
    let mut rows = bytes.chunks_exact(8 * LANES);
    for row in &mut rows {
        for (lane, chunk) in lanes.iter_mut().zip(row.chunks_exact(8)) {
            *lane = mix(*lane, word(chunk));
        }
    }
    let whole = lanes.into_iter().chain(rows.remainder().chunks(8).map(word)).reduce(mix).unwrap_or(before);
    mix(whole, bytes.len() as u64)
}

macro_rules! whole_numbers {
    ($($whole:ty),+) => {$(
        impl Canonical for $whole {
            fn put(&self, out: &mut Vec<u8>) {
                out.extend(self.to_le_bytes());
            }
        }
    )+};
}

whole_numbers!(u8, u16, u32, i32, i64);

impl Canonical for bool {
    fn put(&self, out: &mut Vec<u8>) {
        out.push(u8::from(*self));
    }
}

impl Canonical for f64 {
    fn put(&self, out: &mut Vec<u8>) {
        // Zeros compare equal, and formats do not keep their sign.
        out.extend(numeric::tidy(*self).to_bits().to_le_bytes());
    }
}

/// The bytes of a text.
pub(crate) fn put_text(text: &[u8], out: &mut Vec<u8>) {
    out.extend((text.len() as u32).to_le_bytes());
    out.extend_from_slice(text);
}

impl Canonical for str {
    fn put(&self, out: &mut Vec<u8>) {
        put_text(self.as_bytes(), out);
    }
}

impl Canonical for String {
    fn put(&self, out: &mut Vec<u8>) {
        self.as_str().put(out);
    }
}

impl<T: Canonical> Canonical for Box<T> {
    fn put(&self, out: &mut Vec<u8>) {
        T::put(self, out);
    }
}

impl<T: Canonical> Canonical for [T] {
    fn put(&self, out: &mut Vec<u8>) {
        // Every list that is digested has a stated limit far below this.
        out.extend((self.len() as u32).to_le_bytes());
        self.iter().for_each(|item| item.put(out));
    }
}

impl<T: Canonical> Canonical for Vec<T> {
    fn put(&self, out: &mut Vec<u8>) {
        self.as_slice().put(out);
    }
}

impl<T: Canonical> Canonical for Option<T> {
    fn put(&self, out: &mut Vec<u8>) {
        match self {
            None => out.push(0),
            Some(value) => {
                out.push(1);
                value.put(out);
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn bytes(value: &(impl Canonical + ?Sized)) -> Vec<u8> {
        let mut out = Vec::new();
        value.put(&mut out);
        out
    }

    /// One value more or less, another one, or the same in another order: another digest.
    #[test]
    fn what_is_mixed_counts_in_its_place() {
        let of = |values: &[u16]| values.iter().fold(0, mixed);
        let all = [
            of(&[]),
            of(&[1]),
            of(&[2]),
            of(&[1, 2]),
            of(&[2, 1]),
            of(&[1, 2, 0]),
            of(&[0, 1, 2]),
            of(&[513]),
        ];
        for (at, one) in all.iter().enumerate() {
            assert!(all.iter().skip(at + 1).all(|other| one != other), "{at} of {all:x?}");
        }
        let long = |last: u8| mixed(0, &[&[7; 40][..], &[last]].concat());
        assert_ne!(long(1), long(2));
        // Ten words, two rows of lanes and a rest: any two of them exchanged, and any one other, give another digest.
        let words: Vec<u64> = (1..=10).map(|at: u64| at.wrapping_mul(0x9e37_79b9_7f4a_7c15)).collect();
        let of =
            |words: &[u64]| mixed(7, &words.iter().flat_map(|word| word.to_le_bytes()).collect::<Vec<u8>>());
        let mut seen = Vec::from([of(&words)]);
        for one in 0..words.len() {
            let mut other = words.clone();
            other[one] ^= 1 << 63;
            seen.push(of(&other));
            for two in 0..one {
                let mut swapped = words.clone();
                swapped.swap(one, two);
                seen.push(of(&swapped));
            }
        }
        let count = seen.len();
        seen.sort_unstable();
        seen.dedup();
        assert_eq!((seen.len(), count), (56, 56));
    }

    struct Pair {
        first: u16,
        second: Option<f64>,
    }
    canonical_fields!(Pair: first, second);

    enum Kind {
        Bare,
        Holds(Vec<u8>, bool),
        Named { low: i32, high: i64 },
    }
    canonical_kinds!(Kind: 0 Bare, 1 Holds(list, flag), 7 Named { low, high });

    /// Written down by hand from the rules of this module.
    #[test]
    fn a_tiny_type_byte_for_byte() {
        assert_eq!(bytes(&Pair { first: 0x0102, second: None }), [2, 1, 0]);
        // 1.5 is 0x3ff8_0000_0000_0000.
        let half_more = [2, 1, 1, 0, 0, 0, 0, 0, 0, 0xf8, 0x3f];
        assert_eq!(bytes(&Pair { first: 0x0102, second: Some(1.5) }), half_more);
        assert_eq!(bytes(&Kind::Bare), [0]);
        assert_eq!(bytes(&Kind::Holds(alloc::vec![9, 8], true)), [1, 2, 0, 0, 0, 9, 8, 1]);
        let minus_two = [7, 0xfe, 0xff, 0xff, 0xff, 3, 0, 0, 0, 0, 0, 0, 0];
        assert_eq!(bytes(&Kind::Named { low: -2, high: 3 }), minus_two);
        assert_eq!(bytes("hü"), [3, 0, 0, 0, b'h', 0xc3, 0xbc]);
    }

    #[test]
    fn equal_numbers_have_equal_bytes() {
        assert_eq!(bytes(&-0.0_f64), bytes(&0.0_f64));
        assert_eq!(bytes(&0.0_f64), [0; 8]);
    }

    /// Two texts cannot borrow from each other, nor a list from the next.
    #[test]
    fn where_one_value_ends_is_part_of_the_bytes() {
        let two = |a: &[u8], b: &[u8]| bytes(&[a.to_vec(), b.to_vec()][..]);
        assert_ne!(two(b"ab", b"c"), two(b"a", b"bc"));
        assert_ne!(two(b"", b"a"), two(b"a", b""));
        assert_ne!(bytes(&[None, Some(0_u8)][..]), bytes(&[Some(0_u8), None][..]));
    }

    /// The published test values of the hash: no byte, "a", "foobar".
    #[test]
    fn the_hash_gives_its_published_values() {
        struct Raw(&'static [u8]);
        impl Canonical for Raw {
            fn put(&self, out: &mut Vec<u8>) {
                out.extend(self.0);
            }
        }
        assert_eq!(hash(&Raw(b"")), 0xcbf2_9ce4_8422_2325);
        assert_eq!(hash(&Raw(b"a")), 0xaf63_dc4c_8601_ec8c);
        assert_eq!(hash(&Raw(b"foobar")), 0x8594_4171_f739_67e8);
    }
}
