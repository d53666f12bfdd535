//! A tree of values as bytes: what crosses the boundary, in one piece each way.
//!
//! | tag | then |
//! |---|---|
//! | 0 null, 1 false, 2 true | nothing |
//! | 3 number | 8 bytes of the bits |
//! | 4 text | `u32` length, UTF-8 |
//! | 5 list | `u32` count, the items |
//! | 6 map | `u32` count, then key and value in turn |
//! | 7 column | `u32` count, 8 bytes a number |
//!
//! Little-endian throughout. A key is a `u16`: the place of its name in a table that both sides keep. A place
//! just behind the table's end means that the name follows and joins the table; `0xFFFF`, that it follows and
//! does not. Field names come again and again, so that after the first call hardly a name crosses.

use std::collections::BTreeMap;

use bismar::error::{Allowed, Given};
use bismar::value::{Key, Value};
use bismar::{Code, Error};

use crate::names::{camel, snake};

/// Key that is followed by a name which does not join the table.
const LOOSE: u16 = 0xFFFF;
/// Names kept at most; more than the crate has fields, and a bound on what odd keys can take up.
const MOST_NAMES: usize = 2_048;
/// Deeper nesting than any type of the crate has.
const DEEPEST: usize = 64;

pub(crate) const NULL: u8 = 0;
const FALSE: u8 = 1;
const TRUE: u8 = 2;
const NUMBER: u8 = 3;
pub(crate) const TEXT: u8 = 4;
pub(crate) const LIST: u8 = 5;
pub(crate) const MAP: u8 = 6;
const COLUMN: u8 = 7;

/// Names the other side has sent, in Rust's spelling. Kept for the life of the instance, so that no field of no
/// later call needs a copy of its name; their number is bounded.
#[derive(Debug, Default)]
pub struct NamesRead(Vec<&'static str>);

/// Names this side has sent, by Rust's spelling.
#[derive(Debug, Default)]
pub struct NamesWritten {
    places: BTreeMap<String, u16>,
    /// Names that the program has lie where they lie, so that one that was found before is known again by that alone.
    lying: Vec<Lying>,
}

/// Where a name of the program lies, how long it is, and its place in the table.
#[derive(Clone, Copy, Debug, Default)]
struct Lying {
    address: usize,
    length: usize,
    place: u16,
}

/// More than the crate has names of fields, a power of two.
const SLOTS: usize = 2_048;

impl NamesWritten {
    /// How many there are.
    pub(crate) fn count(&self) -> usize {
        self.places.len()
    }

    /// Takes the names back from that place on: what they were in never crossed.
    pub(crate) fn forget_from(&mut self, known: usize) {
        if self.places.len() > known {
            self.places.retain(|_, place| usize::from(*place) < known);
            self.lying.clear();
        }
    }

    /// The place of a name that was sent.
    fn place(&mut self, name: &Key) -> Option<u16> {
        let Key::Borrowed(fixed) = name else { return self.places.get(&**name).copied() };
        let (address, length) = (fixed.as_ptr() as usize, fixed.len());
        // Multiplied by an odd number, so that neighbours do not share a slot.
        let slot = address.wrapping_mul(0x9E37_79B1) >> 12 & (SLOTS - 1);
        if let Some(found) = self.lying.get(slot)
            && (found.address, found.length) == (address, length)
        {
            return Some(found.place);
        }
        let place = *self.places.get(*fixed)?;
        if self.lying.is_empty() {
            self.lying.resize(SLOTS, Lying::default());
        }
        if let Some(free) = self.lying.get_mut(slot) {
            *free = Lying { address, length, place };
        }
        Some(place)
    }
}

/// Reads one value, keys into Rust's spelling.
///
/// # Errors
/// `wrong_type` if the bytes are not such a value; the package never sends those.
pub fn read(bytes: &[u8], names: &mut NamesRead) -> Result<Value, Error> {
    Unpacking { bytes, names }.value(0).ok_or_else(|| {
        Error::new(Code::WrongType, "", Given::Nothing, Allowed::rule("bytes packed by the package"))
    })
}

struct Unpacking<'a> {
    bytes: &'a [u8],
    names: &'a mut NamesRead,
}

impl Unpacking<'_> {
    fn take<const N: usize>(&mut self) -> Option<[u8; N]> {
        let (first, rest) = self.bytes.split_first_chunk::<N>()?;
        self.bytes = rest;
        Some(*first)
    }

    fn count(&mut self) -> Option<usize> {
        let count = usize::try_from(u32::from_le_bytes(self.take()?)).ok()?;
        // Every item takes a byte at least, so that a wrong count cannot ask for much memory.
        (count <= self.bytes.len()).then_some(count)
    }

    fn text(&mut self) -> Option<String> {
        let length = self.count()?;
        let (text, rest) = self.bytes.split_at_checked(length)?;
        self.bytes = rest;
        String::from_utf8(text.to_vec()).ok()
    }

    fn number(&mut self) -> Option<Value> {
        self.take().map(|bits| Value::Number(f64::from_le_bytes(bits)))
    }

    fn value(&mut self, depth: usize) -> Option<Value> {
        if depth > DEEPEST {
            return None;
        }
        match self.take::<1>()? {
            [NULL] => Some(Value::Null),
            [FALSE] => Some(Value::Bool(false)),
            [TRUE] => Some(Value::Bool(true)),
            [NUMBER] => self.number(),
            [TEXT] => self.text().map(|text| Value::Text(text.into())),
            [LIST] => {
                let count = self.count()?;
                (0..count).map(|_| self.value(depth + 1)).collect::<Option<_>>().map(Value::List)
            }
            [MAP] => {
                let count = self.count()?;
                (0..count).map(|_| self.field(depth)).collect::<Option<_>>().map(Value::Map)
            }
            [COLUMN] => {
                let count = self.count()?;
                (0..count).map(|_| self.number()).collect::<Option<_>>().map(Value::List)
            }
            _ => None,
        }
    }

    fn field(&mut self, depth: usize) -> Option<(Key, Value)> {
        let place = u16::from_le_bytes(self.take()?);
        let name = match self.names.0.get(usize::from(place)) {
            Some(name) => Key::Borrowed(name),
            None => self.new_name(place != LOOSE)?,
        };
        Some((name, self.value(depth + 1)?))
    }

    fn new_name(&mut self, joins: bool) -> Option<Key> {
        let name = snake(&self.text()?)?;
        if !joins || self.names.0.len() >= MOST_NAMES {
            return Some(Key::Owned(name));
        }
        let name: &'static str = name.leak();
        self.names.0.push(name);
        Some(Key::Borrowed(name))
    }
}

/// Writes one value, keys in JavaScript's spelling.
pub fn write(value: &Value, names: &mut NamesWritten, into: &mut Vec<u8>) {
    match value {
        Value::Null => into.push(NULL),
        Value::Bool(flag) => into.push(if *flag { TRUE } else { FALSE }),
        Value::Number(number) => {
            into.push(NUMBER);
            into.extend(number.to_le_bytes());
        }
        Value::Text(text) => {
            into.push(TEXT);
            write_text(text, into);
        }
        Value::List(items) => {
            into.push(LIST);
            write_count(items.len(), into);
            for item in items {
                write(item, names, into);
            }
        }
        Value::Map(fields) => {
            into.push(MAP);
            write_count(fields.len(), into);
            for (name, value) in fields {
                write_key(name, names, into);
                write(value, names, into);
            }
        }
    }
}

fn write_count(count: usize, into: &mut Vec<u8>) {
    // Memory is 32 bits wide: a larger count cannot come about.
    into.extend((count as u32).to_le_bytes());
}

fn write_text(text: &str, into: &mut Vec<u8>) {
    write_count(text.len(), into);
    into.extend(text.as_bytes());
}

/// Writes the key of a field.
pub(crate) fn write_key(name: &Key, names: &mut NamesWritten, into: &mut Vec<u8>) {
    if let Some(place) = names.place(name) {
        into.extend(place.to_le_bytes());
        return;
    }
    let place = names.count();
    if place < MOST_NAMES {
        names.places.insert(name.to_string(), place as u16);
        into.extend((place as u16).to_le_bytes());
    } else {
        into.extend(LOOSE.to_le_bytes());
    }
    write_text(&camel(name), into);
}

#[cfg(test)]
mod tests {
    use super::*;

    fn tree() -> Value {
        let set = Value::Map(vec![
            ("rest_seconds".into(), Value::Number(-0.5)),
            ("done".into(), Value::Bool(true)),
        ]);
        Value::Map(vec![
            ("sets".into(), Value::List(vec![set.clone(), set, Value::Null])),
            ("note".into(), Value::Text("höher".into())),
        ])
    }

    #[test]
    fn what_is_written_reads_back() {
        let (mut written, mut read_names) = (NamesWritten::default(), NamesRead::default());
        for _ in 0..2 {
            let mut bytes = Vec::new();
            write(&tree(), &mut written, &mut bytes);
            assert_eq!(read(&bytes, &mut read_names).unwrap(), tree());
        }
        assert_eq!(read_names.0, ["sets", "rest_seconds", "done", "note"]);
    }

    #[test]
    fn cut_bytes_are_an_error() {
        let mut bytes = Vec::new();
        write(&tree(), &mut NamesWritten::default(), &mut bytes);
        for length in 0..bytes.len() {
            assert!(read(&bytes[..length], &mut NamesRead::default()).is_err(), "{length}");
        }
        assert!(read(&[LIST, 255, 255, 255, 255], &mut NamesRead::default()).is_err());
    }
}
