//! The strict reader and writer: with types of a host, which take forms that the crate's own types do not, and with
//! events of a newer version.

#![allow(clippy::unwrap_used, clippy::panic, reason = "a test may panic")]

use std::collections::BTreeMap;
use std::fmt::Debug;

use bismar::Code;
use bismar::error::{Allowed, Error, Given};
use bismar::record::{EventKind, Log, VERSION};
use bismar::value::{Arguments, Key, Value};
use serde::de::value::BytesDeserializer;
use serde::de::{DeserializeOwned, IgnoredAny};
use serde::{Deserialize, Serialize};

#[derive(Debug, PartialEq, Serialize, Deserialize)]
struct Unit;

#[derive(Debug, PartialEq, Serialize, Deserialize)]
struct Wrapped(u32);

#[derive(Debug, PartialEq, Serialize, Deserialize)]
struct Two(u8, String);

#[derive(Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
enum Kind {
    Bare,
    Holds(i64),
    Spans(i16, f32),
    Named { low: i8, high: u64 },
}

/// The kind is named by a field beside the others.
#[derive(Debug, PartialEq, Deserialize)]
#[serde(tag = "what", rename_all = "snake_case")]
enum Beside {
    Load { kg: f64, sure: bool },
}

#[derive(Debug, PartialEq, Serialize, Deserialize)]
struct Host {
    wrapped: Wrapped,
    two: Two,
    letter: char,
    kinds: Vec<Kind>,
    pair: (i32, u16),
    #[serde(default)]
    absent: Option<u8>,
    present: Option<f64>,
    map: BTreeMap<String, i8>,
}

fn host() -> Host {
    Host {
        wrapped: Wrapped(7),
        two: Two(2, "text".into()),
        letter: 'ü',
        kinds: vec![Kind::Bare, Kind::Holds(-9), Kind::Spans(-3, 0.5), Kind::Named { low: -1, high: 1 }],
        pair: (-4, 5),
        absent: None,
        present: Some(0.25),
        map: BTreeMap::from([("a".into(), 1)]),
    }
}

fn json(text: &str) -> Value {
    Value::from_json(text).unwrap()
}

/// Code, path, what was given, what is allowed.
fn refused<T: DeserializeOwned + Debug>(value: &Value) -> (Code, String, Given, String) {
    parts(&value.read::<T>().unwrap_err())
}

fn parts(error: &Error) -> (Code, String, Given, String) {
    (error.code(), error.field().into(), error.given().clone(), error.allowed().to_string())
}

fn told(code: Code, field: &str, given: Given, allowed: &str) -> (Code, String, Given, String) {
    (code, field.into(), given, allowed.into())
}

fn text(given: &str) -> Given {
    Given::Text(given.into())
}

#[test]
fn a_host_type_is_written_in_plain_forms_and_read_again() {
    let written = Value::write(&host()).unwrap();
    // A wrapper is its content, an absent value leaves no field, a variant with content is a map of one.
    let plain = r#"{"wrapped":7,"two":[2,"text"],"letter":"ü",
        "kinds":["bare",{"holds":-9},{"spans":[-3,0.5]},{"named":{"low":-1,"high":1}}],
        "pair":[-4,5],"present":0.25,"map":{"a":1}}"#;
    assert_eq!(written, json(plain));
    assert_eq!(written.read::<Host>(), Ok(host()));
    assert_eq!(Value::write(&Unit), Ok(Value::Null));
    assert_eq!(Value::write(&()), Ok(Value::Null));
    assert_eq!(Value::Null.read::<Unit>(), Ok(Unit));
    let load = json(r#"{"what":"load","kg":62.5,"sure":true}"#);
    assert_eq!(load.read::<Beside>(), Ok(Beside::Load { kg: 62.5, sure: true }));
    assert!(json(r#"[null,{"a":1}]"#).read::<Vec<IgnoredAny>>().is_ok_and(|items| items.len() == 2));
}

#[test]
fn no_value_is_taken_for_another_type() {
    let wrong = |given, allowed: &str| told(Code::WrongType, "", given, allowed);
    assert_eq!(refused::<bool>(&json("1")), wrong(Given::Number(1.0), "true or false"));
    assert_eq!(refused::<f32>(&json("\"1\"")), wrong(text("1"), "a number"));
    assert_eq!(refused::<i64>(&json("true")), wrong(text("true"), "a whole number"));
    assert_eq!(refused::<String>(&json("[]")), wrong(text("a list"), "a text"));
    assert_eq!(refused::<Unit>(&json("{}")), wrong(text("a map"), "nothing"));
    assert_eq!(refused::<Vec<u8>>(&json("{}")), wrong(text("a map"), "a list"));
    assert_eq!(refused::<char>(&json("\"ab\"")), wrong(text("ab"), "a character"));
    assert_eq!(refused::<u8>(&json("300")), wrong(Given::Number(300.0), "u8"));
    assert_eq!(refused::<i16>(&json("-40000")), wrong(Given::Number(-40_000.0), "i16"));
    assert_eq!(
        refused::<(i32, u16)>(&json("[1,2,3]")),
        told(Code::WrongType, "", Given::Number(3.0), "a shorter list")
    );
    assert_eq!(
        refused::<Two>(&json("[1,2]")),
        told(Code::WrongType, "[1]", Given::Number(2.0), "a text"),
        "no number for a text"
    );
}

#[test]
fn whole_numbers_are_read_and_written_exactly_or_not_at_all() {
    const EXACT: i64 = 1 << 53;
    assert_eq!(Value::write(&EXACT).unwrap().read::<i64>(), Ok(EXACT));
    assert_eq!(Value::write(&-EXACT).unwrap().read::<i64>(), Ok(-EXACT));
    for beyond in [Value::write(&(EXACT + 1)), Value::write(&(-EXACT - 1)), Value::write(&u64::MAX)] {
        assert_eq!(beyond.unwrap_err().code(), Code::Overflow);
    }
    assert_eq!(refused::<u64>(&Value::Number(2.0 * EXACT as f64)).0, Code::NotWhole);
    assert_eq!(
        refused::<Wrapped>(&json("1.5")),
        told(Code::NotWhole, "", Given::Number(1.5), "a whole number")
    );
}

#[test]
fn null_stands_for_nothing_where_a_value_is_wanted() {
    let null = Value::Null;
    assert_eq!(
        refused::<Option<u8>>(&null),
        told(Code::NullNotAllowed, "", Given::Nothing, "a value, or leave the field out")
    );
    assert_eq!(refused::<f64>(&null), told(Code::NullNotAllowed, "", Given::Nothing, "a number"));
    let Value::Map(mut fields) = Value::write(&host()).unwrap() else { panic!("a map") };
    fields.push(("absent".into(), Value::Null));
    assert_eq!(refused::<Host>(&Value::Map(fields)).1, "absent");
}

#[test]
fn a_kind_is_named_once_and_has_its_own_content() {
    let kind = |text| refused::<Kind>(&json(text));
    assert_eq!(kind(r#"{"bare":1}"#), told(Code::WrongType, "bare", Given::Number(1.0), "the bare name"));
    assert_eq!(kind(r#""holds""#), told(Code::MissingField, "holds", Given::Nothing, ""));
    assert_eq!(kind(r#"{"spans":[1,true]}"#), told(Code::WrongType, "spans[1]", text("true"), "a number"));
    assert_eq!(
        kind(r#"{"named":{"low":1,"high":2,"more":3}}"#),
        told(Code::UnknownField, "named.more", Given::Nothing, "low, high")
    );
    assert_eq!(
        kind(r#""other""#),
        told(Code::UnknownVariant, "", text("other"), "bare, holds, spans, named")
    );
    assert_eq!(
        kind(r#"{"bare":1,"holds":2}"#),
        told(Code::WrongType, "", text("a map"), "exactly one named kind")
    );
    // Where the kind stands beside the fields, serde looks at the content first; the answer is as strict.
    let beside = |text| refused::<Beside>(&json(text));
    assert_eq!(beside(r#"{"what":"load","kg":"heavy","sure":true}"#).2, text("heavy"));
    assert_eq!(beside(r#"{"what":"load","kg":1,"sure":2.5}"#).2, Given::Number(2.5));
    assert_eq!(beside(r#"{"what":1,"kg":1,"sure":true}"#).1, "what");
    assert_eq!(beside(r#"{"what":"load","kg":true,"sure":true}"#).0, Code::WrongType);
    assert_eq!(beside(r#"{"what":"load","kg":1}"#), told(Code::MissingField, "sure", Given::Nothing, ""));
}

#[test]
fn a_field_given_twice_is_refused_in_short_and_in_long_maps() {
    let numbered = |count: usize| -> Vec<(Key, Value)> {
        (0..count).map(|at| (format!("field {at}").into(), Value::Number(1.0))).collect()
    };
    for count in [2, 32, 33, 100] {
        let mut fields = numbered(count);
        let whole = Value::Map(fields.clone());
        assert!(whole.read::<BTreeMap<String, u8>>().is_ok_and(|map| map.len() == count));
        assert!(Arguments::new(&whole).is_ok());
        fields.push(("field 1".into(), Value::Number(2.0)));
        let twice = Value::Map(fields);
        let expected = told(Code::DuplicateField, "field 1", Given::Nothing, "");
        assert_eq!(refused::<BTreeMap<String, u8>>(&twice), expected);
        assert_eq!(parts(&Arguments::new(&twice).unwrap_err()), expected);
        assert_eq!(parts(&Value::from_json(&twice.to_json()).unwrap_err()), expected);
    }
    let low = |value| ("low".into(), Value::Number(value));
    let twice = Value::Map(vec![("named".into(), Value::Map(vec![low(1.0), low(2.0)]))]);
    assert_eq!(refused::<Kind>(&twice), told(Code::DuplicateField, "named.low", Given::Nothing, ""));
    // The sign that parts an error carried as text is no part of a name.
    let error = Value::from_json(r#"{"a\u001fb":1,"a\u001fb":2}"#).unwrap_err();
    assert_eq!((error.code(), error.field()), (Code::DuplicateField, "a b"));
}

#[test]
fn no_number_that_is_none_goes_in_or_out() {
    assert_eq!(refused::<Value>(&Value::Number(f64::NAN)).0, Code::NotFinite);
    let broken = Host { present: Some(f64::INFINITY), ..host() };
    let error = Value::write(&broken).unwrap_err();
    assert_eq!((error.code(), error.field()), (Code::NotFinite, "present"));
    assert_eq!(error.given(), &Given::Number(f64::INFINITY));
    assert_eq!(Value::write(&-0.0_f64).unwrap().to_json(), "0");
    // As a refused number it keeps its sign through JSON.
    let text = Value::Number(-0.0).to_json();
    assert_eq!(text, "-0.0");
    let Value::Number(read) = Value::from_json(&text).unwrap() else { panic!("{text}") };
    assert_eq!(read.to_bits(), (-0.0_f64).to_bits());
}

/// Bytes, a key that is no text, and a type that does not want to be written.
struct Bytes;

struct Unwilling(Error);

impl Serialize for Bytes {
    fn serialize<S: serde::Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.serialize_bytes(&[0, 255])
    }
}

impl<'de> Deserialize<'de> for Bytes {
    fn deserialize<D: serde::Deserializer<'de>>(from: D) -> Result<Bytes, D::Error> {
        from.deserialize_byte_buf(IgnoredAny).map(|_| Bytes)
    }
}

impl Serialize for Unwilling {
    fn serialize<S: serde::Serializer>(&self, _to: S) -> Result<S::Ok, S::Error> {
        Err(serde::ser::Error::custom(&self.0))
    }
}

#[test]
fn what_json_does_not_know_is_a_list_or_refused() {
    assert_eq!(Value::write(&Bytes), Ok(json("[0,255]")));
    let error = json("\"AP8=\"").read::<Bytes>().err().unwrap();
    assert_eq!(parts(&error), told(Code::WrongType, "", text("AP8="), "a type without bytes"));
    let error = Value::deserialize(BytesDeserializer::<Error>::new(b"AP8=")).unwrap_err();
    assert_eq!((error.code(), error.allowed()), (Code::WrongType, &Allowed::rule("any value")));
    let error = Value::write(&BTreeMap::from([(1_u8, 2_u8)])).unwrap_err();
    assert_eq!(parts(&error), told(Code::WrongType, "", text("a key"), "a text"));
    // A host's own refusal comes back as it was.
    let own = Error::range(Code::TooMany, "sets", 31_u8, 0.0, 30.0, "");
    assert_eq!(Value::write(&Unwilling(own.clone())), Err(own));
}

#[test]
fn canonical_bytes_are_tagged_and_counted() {
    let tree = json(r#"[null,true,1,"ab",{"k":[]}]"#);
    #[rustfmt::skip]
    let bytes = [
        4, 5, 0, 0, 0,
        0,
        1, 1,
        2, 0, 0, 0, 0, 0, 0, 0xf0, 0x3f, // 1.0 is 0x3ff0_0000_0000_0000
        3, 2, 0, 0, 0, b'a', b'b',
        5, 1, 0, 0, 0, 1, 0, 0, 0, b'k', 4, 0, 0, 0, 0,
    ];
    assert_eq!(tree.canonical_bytes(), bytes);
}

fn log_with(version: u32, kind: &str) -> String {
    format!(
        r#"{{"format":"bismar-log","version":{version},"lifter":{{"id":"invented"}},"events":[{{"sequence":7,"day":"2026-01-05","kind":{kind}}}]}}"#
    )
}

#[test]
fn an_unknown_event_is_kept_whole() {
    for body in ["null", r#"{"a":null,"b":{"c":null}}"#, r#"[null,{"a":null}]"#, "true", r#"{"a":[1,"two"]}"#]
    {
        let text = log_with(VERSION + 1, &format!(r#"{{"of_a_newer_version":{body}}}"#));
        let log = Log::from_json(&text).unwrap();
        assert_eq!(Value::write(&log).unwrap().to_json(), text);
    }
}

#[test]
fn an_event_has_exactly_one_kind() {
    for kind in ["{}", r#"{"symptom_report":{"signs":["faint"]},"block_ended":"one"}"#, "3"] {
        let error = Log::from_json(&log_with(VERSION, kind)).unwrap_err();
        assert_eq!((error.code(), error.field()), (Code::WrongType, "events[0].kind"), "{kind}");
        assert_eq!(error.event(), Some(7));
    }
    let other_reader = serde_json::from_str::<EventKind>("3").unwrap_err().to_string();
    assert!(other_reader.contains("a map with one named kind of event"), "{other_reader}");
}
