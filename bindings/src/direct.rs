//! An answer written straight into the bytes that cross, without a tree of values in between: the very bytes that
//! [`parcel::write`](crate::parcel::write) writes of the tree.

use std::fmt::{self, Display, Write as _};

use bismar::value::{Key, Value};
use bismar::{Code, Error};
use serde::ser::{self, Serialize};

use crate::parcel::{LIST, MAP, NULL, NamesWritten, TEXT, write, write_key};

/// Writes one value, keys in JavaScript's spelling. Of what is refused nothing is left, no name either.
///
/// # Errors
/// Those of [`Value::write`].
pub fn write_answer<T: Serialize + ?Sized>(
    value: &T,
    names: &mut NamesWritten,
    into: &mut Vec<u8>,
) -> Result<(), Error> {
    let (start, known) = (into.len(), names.count());
    let written = value.serialize(Direct { names, into });
    if written.is_err() {
        into.truncate(start);
        names.forget_from(known);
    }
    written
}

/// Where the bytes go, and the names that the other side knows.
struct Direct<'a> {
    names: &'a mut NamesWritten,
    into: &'a mut Vec<u8>,
}

impl<'a> Direct<'a> {
    fn again(&mut self) -> Direct<'_> {
        Direct { names: self.names, into: self.into }
    }

    /// A plain value, by the rules of the tree: numbers are finite, and zero has no sign.
    fn plain(self, value: Result<Value, Error>) -> Result<(), Error> {
        write(&value?, self.names, self.into);
        Ok(())
    }

    fn text(self, text: &str) {
        self.into.push(TEXT);
        self.into.extend((text.len() as u32).to_le_bytes());
        self.into.extend(text.as_bytes());
    }

    /// The name of a kind before what it carries.
    fn kind(&mut self, name: &'static str) {
        self.into.push(MAP);
        self.into.extend(1_u32.to_le_bytes());
        write_key(&Key::Borrowed(name), self.names, self.into);
    }

    /// The tag of a list or a map, and room for the count.
    fn counted(self, tag: u8, keeps_null: bool) -> Counted<'a> {
        self.into.push(tag);
        let at = self.into.len();
        self.into.extend(0_u32.to_le_bytes());
        Counted { out: self, at, count: 0, key: None, keeps_null }
    }
}

macro_rules! plain {
    ($($method:ident $type:ty),+) => {$(
        fn $method(self, value: $type) -> Result<(), Error> {
            self.plain(Value::write(&value))
        }
    )+};
}

impl<'a> ser::Serializer for Direct<'a> {
    type Ok = ();
    type Error = Error;
    type SerializeSeq = Counted<'a>;
    type SerializeTuple = Counted<'a>;
    type SerializeTupleStruct = Counted<'a>;
    type SerializeTupleVariant = Counted<'a>;
    type SerializeMap = Counted<'a>;
    type SerializeStruct = Counted<'a>;
    type SerializeStructVariant = Counted<'a>;

    plain! {
        serialize_bool bool, serialize_char char,
        serialize_i8 i8, serialize_i16 i16, serialize_i32 i32, serialize_i64 i64,
        serialize_u8 u8, serialize_u16 u16, serialize_u32 u32, serialize_u64 u64,
        serialize_f32 f32, serialize_f64 f64
    }

    fn serialize_str(self, value: &str) -> Result<(), Error> {
        self.text(value);
        Ok(())
    }

    fn collect_str<T: Display + ?Sized>(self, value: &T) -> Result<(), Error> {
        let mut text = Shown(String::new());
        match write!(text, "{value}") {
            Ok(()) => self.serialize_str(&text.0),
            // Only a value that cannot be shown; there is none.
            Err(fmt::Error) => Err(Error::plain(Code::WrongType, "")),
        }
    }

    fn serialize_bytes(self, value: &[u8]) -> Result<(), Error> {
        self.collect_seq(value)
    }

    fn serialize_none(self) -> Result<(), Error> {
        self.serialize_unit()
    }

    fn serialize_some<T: Serialize + ?Sized>(self, value: &T) -> Result<(), Error> {
        value.serialize(self)
    }

    fn serialize_unit(self) -> Result<(), Error> {
        self.into.push(NULL);
        Ok(())
    }

    fn serialize_unit_struct(self, _name: &'static str) -> Result<(), Error> {
        self.serialize_unit()
    }

    fn serialize_unit_variant(self, _: &'static str, _: u32, variant: &'static str) -> Result<(), Error> {
        self.serialize_str(variant)
    }

    fn serialize_newtype_struct<T: Serialize + ?Sized>(
        self,
        _: &'static str,
        value: &T,
    ) -> Result<(), Error> {
        value.serialize(self)
    }

    fn serialize_newtype_variant<T: Serialize + ?Sized>(
        mut self,
        _: &'static str,
        _: u32,
        variant: &'static str,
        value: &T,
    ) -> Result<(), Error> {
        self.kind(variant);
        value.serialize(self)
    }

    fn serialize_seq(self, _: Option<usize>) -> Result<Counted<'a>, Error> {
        Ok(self.counted(LIST, true))
    }

    fn serialize_tuple(self, _: usize) -> Result<Counted<'a>, Error> {
        Ok(self.counted(LIST, true))
    }

    fn serialize_tuple_struct(self, _: &'static str, _: usize) -> Result<Counted<'a>, Error> {
        Ok(self.counted(LIST, true))
    }

    fn serialize_tuple_variant(
        mut self,
        _: &'static str,
        _: u32,
        variant: &'static str,
        _: usize,
    ) -> Result<Counted<'a>, Error> {
        self.kind(variant);
        Ok(self.counted(LIST, true))
    }

    fn serialize_map(self, _: Option<usize>) -> Result<Counted<'a>, Error> {
        Ok(self.counted(MAP, true))
    }

    fn serialize_struct(self, _: &'static str, _: usize) -> Result<Counted<'a>, Error> {
        Ok(self.counted(MAP, false))
    }

    fn serialize_struct_variant(
        mut self,
        _: &'static str,
        _: u32,
        variant: &'static str,
        _: usize,
    ) -> Result<Counted<'a>, Error> {
        self.kind(variant);
        Ok(self.counted(MAP, false))
    }
}

/// What is collected of a value that shows itself.
struct Shown(String);

impl fmt::Write for Shown {
    fn write_str(&mut self, text: &str) -> fmt::Result {
        self.0.push_str(text);
        Ok(())
    }
}

/// A list or a map whose items are being written.
struct Counted<'a> {
    out: Direct<'a>,
    /// Where the count goes.
    at: usize,
    count: u32,
    key: Option<Key>,
    keeps_null: bool,
}

impl Counted<'_> {
    fn item<T: Serialize + ?Sized>(&mut self, value: &T) -> Result<(), Error> {
        self.count += 1;
        value.serialize(self.out.again())
    }

    fn field<T: Serialize + ?Sized>(&mut self, key: &Key, value: &T) -> Result<(), Error> {
        let before = self.begin(key);
        let written = value.serialize(self.out.again());
        self.keep(key, before, written)
    }

    /// The key; where it begins, how many names there were before it, and where its value begins.
    fn begin(&mut self, key: &Key) -> (usize, usize, usize) {
        let Direct { names, into } = self.out.again();
        let (start, known) = (into.len(), names.count());
        write_key(key, names, into);
        (start, known, into.len())
    }

    /// Apart from `field` and never copied into it: one for all types instead of one a type.
    #[inline(never)]
    fn keep(
        &mut self,
        key: &Key,
        (start, known, value): (usize, usize, usize),
        written: Result<(), Error>,
    ) -> Result<(), Error> {
        written.map_err(|error| error.within(key))?;
        // An absent value is an absent field, and the other side never hears its name.
        if !self.keeps_null && self.out.into.get(value..) == Some(&[NULL]) {
            self.out.into.truncate(start);
            self.out.names.forget_from(known);
        } else {
            self.count += 1;
        }
        Ok(())
    }

    fn close(self) -> Result<(), Error> {
        let place = self.at..self.at + 4;
        if let Some(bytes) = self.out.into.get_mut(place) {
            bytes.copy_from_slice(&self.count.to_le_bytes());
        }
        Ok(())
    }
}

macro_rules! items {
    ($($trait:ident $method:ident),+) => {$(
        impl ser::$trait for Counted<'_> {
            type Ok = ();
            type Error = Error;

            fn $method<T: Serialize + ?Sized>(&mut self, value: &T) -> Result<(), Error> {
                self.item(value)
            }

            fn end(self) -> Result<(), Error> {
                self.close()
            }
        }
    )+};
}
items! {
    SerializeSeq serialize_element, SerializeTuple serialize_element,
    SerializeTupleStruct serialize_field, SerializeTupleVariant serialize_field
}

macro_rules! fields {
    ($($trait:ident),+) => {$(
        impl ser::$trait for Counted<'_> {
            type Ok = ();
            type Error = Error;

            fn serialize_field<T: Serialize + ?Sized>(&mut self, key: &'static str, value: &T) -> Result<(), Error> {
                self.field(&Key::Borrowed(key), value)
            }

            fn end(self) -> Result<(), Error> {
                self.close()
            }
        }
    )+};
}
fields! { SerializeStruct, SerializeStructVariant }

impl ser::SerializeMap for Counted<'_> {
    type Ok = ();
    type Error = Error;

    fn serialize_key<T: Serialize + ?Sized>(&mut self, key: &T) -> Result<(), Error> {
        match Value::write(key)? {
            Value::Text(text) => self.key = Some(text),
            _ => {
                let allowed = bismar::error::Allowed::rule("a text");
                return Err(Error::new(Code::WrongType, "", "a key", allowed));
            }
        }
        Ok(())
    }

    fn serialize_value<T: Serialize + ?Sized>(&mut self, value: &T) -> Result<(), Error> {
        let key = self.key.take().unwrap_or_default();
        self.field(&key, value)
    }

    fn end(self) -> Result<(), Error> {
        self.close()
    }
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeMap;

    use super::*;
    use bismar::prescription::next_session;
    use bismar::record::{Log, Plan};
    use serde::Serialize;

    #[derive(Serialize)]
    #[serde(rename_all = "snake_case")]
    enum Kind {
        Plain,
        One(Option<f64>),
        Two(i64, &'static str),
        Fields { rest_seconds: u16, none: Option<u8> },
    }

    #[derive(Serialize)]
    struct All {
        first: Option<u8>,
        kinds: Vec<Kind>,
        maps: BTreeMap<String, Option<bool>>,
        pair: (char, f32),
        last: Option<i64>,
        unit: (),
    }

    fn all() -> All {
        All {
            first: None,
            kinds: vec![
                Kind::Plain,
                Kind::One(None),
                Kind::One(Some(-0.0)),
                Kind::Two(-7, "h\u{f6}her"),
                Kind::Fields { rest_seconds: 90, none: None },
            ],
            maps: [("a_b".to_string(), None), ("c".to_string(), Some(true))].into(),
            pair: ('x', 0.5),
            last: Some(3),
            unit: (),
        }
    }

    /// Bytes of the tree, and bytes written straight, one value after another into one table of names each.
    fn both<T: Serialize>(values: &[T]) -> (Vec<u8>, Vec<u8>) {
        let (mut tree, mut straight) =
            ((NamesWritten::default(), Vec::new()), (NamesWritten::default(), Vec::new()));
        for value in values {
            write(&Value::write(value).unwrap(), &mut tree.0, &mut tree.1);
            write_answer(value, &mut straight.0, &mut straight.1).unwrap();
        }
        (tree.1, straight.1)
    }

    #[test]
    fn the_bytes_are_those_of_the_tree() {
        let (tree, straight) = both(&[all(), all()]);
        assert_eq!(tree, straight);
    }

    #[test]
    fn a_session_is_written_as_by_its_tree() {
        let file = |name: &str| {
            std::fs::read_to_string(format!(
                "{}/../examples/data/demo-{name}.json",
                env!("CARGO_MANIFEST_DIR")
            ))
            .unwrap()
        };
        let log = Value::from_json(&file("log")).unwrap().read::<Log>().unwrap();
        let plan = Value::from_json(&file("plan")).unwrap().read::<Plan>().unwrap();
        let session = next_session(&log, &plan, log.events.last().unwrap().day).unwrap();
        let (tree, straight) = both(&[session.clone(), session]);
        assert!(tree.len() > 2_000 && tree == straight);
    }

    /// The other side has read none of it, so that it must hear every name again.
    #[test]
    fn of_what_is_refused_nothing_is_left() {
        #[derive(Serialize)]
        struct Bad {
            new_name: u8,
            load: f64,
        }
        let (mut names, mut bytes) = (NamesWritten::default(), vec![7]);
        write_answer(&all(), &mut names, &mut bytes).unwrap();
        let (known, length) = (names.count(), bytes.len());
        let error =
            write_answer(&Bad { new_name: 1, load: f64::INFINITY }, &mut names, &mut bytes).unwrap_err();
        assert_eq!(error, Value::write(&Bad { new_name: 1, load: f64::INFINITY }).unwrap_err());
        assert_eq!((names.count(), bytes.len()), (known, length));
        let mut told = Vec::new();
        write_answer(&Bad { new_name: 1, load: 2.0 }, &mut names, &mut told).unwrap();
        assert!(String::from_utf8_lossy(&told).contains("newName"));
        let large = Value::write(&u64::MAX).unwrap_err();
        assert_eq!(write_answer(&u64::MAX, &mut names, &mut told).unwrap_err(), large);
    }
}
