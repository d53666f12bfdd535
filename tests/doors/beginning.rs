//! Somebody new, asked by name as every language asks: which lifts, which bar, a log that begins, the first session; then
//! another bar, other equipment, a longer range. Bars and loads are worked out beside each.

use bismar::answers::OF_BEGINNINGS;
use bismar::prescription::{SessionPlan, next_session};
use bismar::record::{EventKind, Log, Parameters, Plan};
use bismar::value::Value;
use bismar::{Code, Error};

fn ask(key: &str, given: &str) -> Result<Value, Error> {
    let door = OF_BEGINNINGS.iter().find(|door| door.key == key).unwrap();
    (door.call)(&Value::from_json(given).unwrap())
}

const GYM: &str = r#""implements":[
    {"bar":{"id":"bar 20","mass":{"kg":20},"collar":{"kg":0},"kind":"straight"}},
    {"bar":{"id":"bar 8","mass":{"kg":8},"collar":{"kg":0},"kind":"straight"}},
    {"bar":{"id":"frame","mass":{"kg":25},"collar":{"kg":0},"kind":{"hex":{"low_handle":{"mm":0}}}}}],
  "stock":{"discs":[
    {"nominal":{"kg":10},"diameter":{"mm":450},"count":2},
    {"nominal":{"kg":2.5},"diameter":{"mm":200},"count":2}]},"blocks":[]"#;

/// Implement and load of each offer.
fn offers(answer: &Value) -> Vec<(String, String)> {
    let Value::List(offers) = answer else { panic!("{answer:?}") };
    let text = |offer: &Value, field: &str| offer.field(field).unwrap().to_json().replace('"', "");
    offers.iter().map(|offer| (text(offer, "implement"), text(offer, "load"))).collect()
}

fn row(implement: &str, kg: &str) -> (String, String) {
    (implement.to_string(), format!("{{kg:{kg}}}"))
}

fn begun(lifts: &str) -> Result<(Log, Plan), Error> {
    let given = format!(
        r#"{{"lifter":{{"id":"New","invented":true}},"day":"2026-01-05","lifts":{lifts},{GYM},"cleared_by":"clinic"}}"#
    );
    let answer = ask("prescription.begin", &given)?;
    Ok((answer.field("log").unwrap().read()?, answer.field("plan").unwrap().read()?))
}

fn first(log: &Log, plan: &Plan) -> SessionPlan {
    next_session(log, plan, "2026-01-05".parse().unwrap()).unwrap()
}

#[test]
fn somebody_new_is_led_to_a_first_session_by_name() {
    let Value::List(lifts) = ask("prescription.first_lifts", "{}").unwrap() else { panic!() };
    assert_eq!(lifts.len(), 8);
    // The pair of 450 mm holds a bar at 225 mm: 8 + 2 x 10 and 20 + 2 x 10.
    let bars = |lift: &str| {
        offers(&ask("prescription.first_bars", &format!(r#"{{"lift":"{lift}",{GYM}}}"#)).unwrap())
    };
    assert_eq!(bars("box squat"), [row("bar 8", "8"), row("bar 20", "20")]);
    assert_eq!(bars("straight-bar pull"), [row("bar 8", "28"), row("bar 20", "40")]);
    assert_eq!(bars("hex-bar pull"), [row("frame", "45")]);
    for lift in &lifts {
        let lift = lift.to_json().replace('"', "");
        let (implement, load) = bars(&lift).swap_remove(0);
        let load = load.replace("kg", "\"kg\"");
        let own = format!(r#"[{{"lift":"{lift}","implement":"{implement}","load":{load}}}]"#);
        let (log, plan) = begun(&own).unwrap();
        let today = first(&log, &plan);
        let one = &today.lifts[0];
        assert_eq!((one.lift.as_str(), one.sets), (lift.as_str(), 3), "{today:?}");
    }
}

#[test]
fn another_bar_and_other_equipment_come_as_settings_to_record() {
    let (log, _) = begun(r#"[{"lift":"box squat","implement":"bar 20","load":{"kg":25}}]"#).unwrap();
    let kept = Value::write(&log).unwrap().to_json();
    let other = ask("prescription.other_bars", &format!(r#"{{"log":{kept},"lift":"box squat"}}"#)).unwrap();
    assert_eq!(offers(&other), [row("bar 8", "8"), row("bar 20", "20")]);
    let with = |bar: &str| {
        ask("prescription.with_bar", &format!(r#"{{"log":{kept},"lift":"box squat","implement":"{bar}"}}"#))
    };
    // 25 on the bar of 8 cannot be made (8, 13, 28, 33): the next lighter is 13.
    let set: Parameters = with("bar 8").unwrap().read().unwrap();
    assert_eq!((set.lifts[0].implement.as_str(), set.lifts[0].start.load().kg()), ("bar 8", 13.0));
    assert_eq!(with("frame").unwrap_err().code(), Code::NotLoadable);
    let kit = format!(r#"{{"log":{kept},"implements":[],"stock":{{"discs":[]}},"blocks":[{{"mm":100}}]}}"#);
    let set: Parameters = ask("prescription.with_kit", &kit).unwrap().read().unwrap();
    // No disc is left: the start of 25 becomes the empty bar.
    assert_eq!((set.lifts[0].start.load().kg(), set.blocks.len(), set.implements.len()), (20.0, 1, 3));
    let mut log = log;
    log.events.push(bismar::record::Event::new(
        3,
        "2026-01-06".parse().unwrap(),
        EventKind::ParametersChanged(Box::new(set)),
    ));
    assert!(log.check().is_ok());
}

#[test]
fn one_more_lift_and_a_longer_range_are_asked_by_name() {
    let lift = ask("prescription.first_lift", r#"{"id":"seated press","implement":"bar 8","load":{"kg":8}}"#)
        .unwrap();
    assert_eq!(lift.field("id").unwrap().to_json(), "\"seated press\"");
    let bar = r#"{"bar":{"id":"bar 20","mass":{"kg":20},"collar":{"kg":0},"kind":"straight"}}"#;
    let given = format!(
        r#"{{"implement":{bar},"stock":{{"discs":[]}},"load":{{"kg":20}},"from":{{"mm":100}},"to":{{"mm":50}}}}"#
    );
    let longer = ask("prescription.longer_range", &given).unwrap();
    // Never heavier than before; one passing session settles it.
    assert_eq!(
        (longer.field("load").unwrap().to_json(), longer.field("settle").unwrap().to_json()),
        ("{\"kg\":20}".into(), "1".into())
    );
}

#[test]
fn what_cannot_begin_is_told_with_its_place() {
    let refused = |lifts: &str| begun(lifts).unwrap_err();
    let error = refused(r#"[{"lift":"curl","implement":"bar 8","load":{"kg":8}}]"#);
    assert_eq!((error.code(), error.field()), (Code::UnknownName, "lifts[0].lift"));
    // 9 kg cannot be made of 8 and pairs of 2.5 and 10.
    let error = refused(r#"[{"lift":"box squat","implement":"bar 8","load":{"kg":9}}]"#);
    assert_eq!(error.code(), Code::NotLoadable, "{error:?}");
    let error = ask("prescription.first_bars", r#"{"lift":"box squat"}"#).unwrap_err();
    assert_eq!((error.code(), error.field()), (Code::MissingField, "implements"));
}
