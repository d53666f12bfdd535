//! The doors in sentences, called by name: the very sentences that `Show` has, refused as the door itself refuses.

use bismar::answers::{self, Door, SetsTable, SetsToday, Sharing, doors};
use bismar::caution::Caution;
use bismar::error::{Code, Error};
use bismar::prescription::{SessionPlan, Verdict, next_session};
use bismar::progression::{MoveOutlook, fold};
use bismar::quantity::{Day, Reps, Unit};
use bismar::record::*;
use bismar::sign::StopSign;
use bismar::text::{OF_WORDS, Show, Translation, Words};
use bismar::value::Value;

use crate::made::all_careful;
use crate::world::{World, kg, name, parameters};

pub type Given = Vec<(&'static str, Value)>;

/// The demo lifter, all lifts and regions with names that are not their ids, and the day of the last session.
pub fn demo() -> (Log, Plan, Day) {
    let file = |name: &str| std::fs::read_to_string(format!("examples/data/demo-{name}.json")).unwrap();
    let mut log = Log::from_json(&file("log")).unwrap();
    for event in &mut log.events {
        if let EventKind::ParametersChanged(all) = &mut event.kind {
            all.lifts.iter_mut().for_each(|lift| lift.name = Some(name(&format!("{} by name", lift.id))));
            all.regions
                .iter_mut()
                .for_each(|region| region.name = Some(name(&format!("{} by name", region.id))));
        }
    }
    (log, Plan::from_json(&file("plan")).unwrap(), "2026-08-27".parse().unwrap())
}

fn map(fields: &[(&'static str, Value)]) -> Value {
    Value::Map(fields.iter().map(|(key, value)| ((*key).into(), value.clone())).collect())
}

fn text(text: &str) -> Value {
    Value::Text(text.to_string().into())
}

fn door_of_words(key: &str) -> &'static Door {
    OF_WORDS.iter().find(|door| door.key == key).unwrap_or_else(|| panic!("no {key}"))
}

fn call(key: &str, given: &[(&'static str, Value)]) -> Result<Value, Error> {
    (door_of_words(key).call)(&map(given))
}

fn with(given: &[(&'static str, Value)], more: &[(&'static str, Value)]) -> Given {
    given.iter().chain(more).cloned().collect()
}

fn list(lines: &[String]) -> Value {
    Value::List(lines.iter().map(|line| text(line)).collect())
}

fn field<'v>(value: &'v Value, name: &str) -> &'v Value {
    value.field(name).unwrap_or_else(|| panic!("no {name} in {value:?}"))
}

fn items(value: &Value) -> &[Value] {
    let Value::List(items) = value else { panic!("{value:?} is no list") };
    items
}

/// What every door of the log is asked here, with the answer itself.
pub fn questions(log: &Log, plan: &Plan, today: Day) -> Vec<(&'static str, Given, Box<dyn Show>)> {
    let value = |written: Result<Value, Error>| written.unwrap();
    let (a_log, a_plan, day) = (
        ("log", value(Value::write(log))),
        ("plan", value(Value::write(plan))),
        ("today", value(Value::write(&today))),
    );
    let lift = name("box squat");
    let a_lift = ("lift", text("box squat"));
    let (strict, forgiving) = (name("front squat"), name("box squat"));
    let to = Grant::new(Work::new(2, 5, kg(30.0)));
    let done = SetsToday::new(lift.clone(), vec![WorkSet::done(kg(40.0), Reps::whole(5).unwrap())]);
    let sharing = vec![Sharing::new(log.clone(), plan.clone(), lift.clone())];
    let table = SetsTable::Csv(
        "Date;Exercise;Weight;Reps;Mood\n2026-08-27;Box Squat;40;5;\n2026-08-27;Bicycle;0;1;\n".into(),
    );
    let reading = answers::TableReading::default().with_unit(Unit::Kg);
    let since: Day = "2026-06-01".parse().unwrap();
    let cleared = EventKind::ClearanceRecorded(Clearance::new(ClearanceStatus::Cleared, name("clinic")));
    macro_rules! asked {
        ($($question:ident[$($given:expr),*] = $answer:expr;)*) => {
            vec![$((concat!("answers.", stringify!($question)), vec![$($given.clone()),*], Box::new($answer.unwrap()) as Box<dyn Show>)),*]
        };
    }
    asked! {
        compare[a_log, a_lift, day, ("to", value(Value::write(&to)))] = answers::compare(log, &lift, today, &to, None);
        handover[a_log, day, ("since", value(Value::write(&since)))] = answers::handover(log, today, since);
        missed[a_log, a_plan, day] = answers::missed(log, plan, today, None);
        next_set[a_log, a_plan, day, ("done", value(Value::write(&done)))] = answers::next_set(log, plan, today, &done);
        rack[a_log, a_plan, a_lift, day] = answers::rack(log, plan, &lift, today, None);
        share[("lifters", value(Value::write(&sharing))), day] = answers::share(&sharing, today);
        raters[a_log, day] = answers::raters(log, None, today);
        review[a_log, day] = answers::review(log, today);
        block_review[a_log, day] = answers::block_review(log, today, None);
        curve[a_log, a_lift, day] = answers::curve(log, &lift, today);
        day[a_log, day] = answers::day(log, today, None);
        easy_week[a_log, day] = answers::easy_week(log, None, today);
        pair[a_log, ("strict", text("front squat")), ("forgiving", text("box squat")), day] = answers::pair(log, &strict, &forgiving, today, None);
        trend[a_log, a_lift, day, ("weeks", Value::Number(20.0))] = answers::trend(log, &lift, today, Some(20));
        verdicts[a_log, day] = answers::verdicts(log, today);
        week[a_log, day] = answers::week(log, today);
        year[a_log, a_plan, day] = answers::year(log, plan, today, None, None);
        sets_to_log[("table", value(Value::write(&table))), a_log, ("reading", value(Value::write(&reading)))] = answers::sets_to_log(&table, log, Some(&reading));
        history[a_log, a_lift, day] = answers::history(log, Some(&lift), today);
        in_force[a_log, day] = answers::in_force(log, today);
        opens[a_log, day, ("suppose", value(Value::write(&cleared)))] = answers::opens(log, today, Some(&cleared), None);
    }
}

fn of_words(key: &str) -> String {
    key.replace("answers.", "text.")
}

/// Nobody adds a door that cannot be said: each is there, takes what the door takes, then the unit and phrases.
#[test]
fn every_door_of_the_log_is_told_in_sentences() {
    let spelled = |door: &Door| -> Vec<(String, String)> {
        door.arguments.iter().map(|one| (one.name.to_string(), one.r#type.replace(' ', ""))).collect()
    };
    let last = [("unit", "Unit"), ("phrases", "Option<&Translation>")]
        .map(|(name, kind)| (name.to_string(), kind.to_string()));
    for door in doors() {
        let said = door_of_words(&of_words(door.key));
        assert_eq!(spelled(said), [spelled(door), last.to_vec()].concat(), "{}", door.key);
        assert_eq!(said.result.replace(' ', ""), "Vec<String>");
    }
    let others = ["text.session", "text.session_from", "text.error", "text.phrases"];
    assert_eq!(OF_WORDS.len(), doors().count() + others.len());
    assert!(others.iter().all(|key| OF_WORDS.iter().any(|door| door.key == *key)));
}

/// The same sentences as `Show` has with the words of the log in that unit, for every door.
#[test]
fn the_sentences_are_those_of_the_answer() {
    let (log, plan, today) = demo();
    let state = fold(&log).unwrap();
    let asked = questions(&log, &plan, today);
    let mut keys: Vec<_> = asked.iter().map(|(key, ..)| *key).collect();
    keys.sort_unstable();
    let mut all: Vec<_> = doors().map(|door| door.key).collect();
    all.sort_unstable();
    assert_eq!(keys, all);
    let mut named = 0;
    for (key, given, answer) in &asked {
        let mut both = Vec::new();
        for (unit, symbol) in [(Unit::Kg, "kg"), (Unit::Lb, "lb")] {
            let wanted = answer.show(&Words::of(state.parameters().unwrap()).in_unit(unit));
            let told = call(&of_words(key), &with(given, &[("unit", text(symbol))])).unwrap();
            assert_eq!(told, list(&wanted), "{key} in {symbol}");
            assert!(!wanted.is_empty(), "{key}");
            all_careful(&wanted);
            named += usize::from(wanted.iter().any(|line| line.contains("by name")));
            both.push(wanted);
        }
    }
    assert!(named > 2 * 8, "{named} of {} answers name a lift or a region", 2 * asked.len());
}

/// What a door refuses is refused in the same words here: each argument in turn left out, and of another kind.
#[test]
fn what_is_given_is_read_as_strictly_as_by_the_door() {
    let (log, plan, today) = demo();
    let unit = ("unit", text("kg"));
    for (key, given, _) in questions(&log, &plan, today) {
        let door = doors().find(|door| door.key == key).unwrap();
        for at in 0..given.len() {
            let mut less = given.clone();
            less.remove(at);
            let mut other = given.clone();
            other[at].1 = Value::Bool(true);
            for changed in [less, other] {
                let said = call(&of_words(key), &with(&changed, core::slice::from_ref(&unit)));
                match (door.call)(&map(&changed)) {
                    Err(error) => assert_eq!(said.unwrap_err(), error, "{key}"),
                    Ok(_) => assert!(said.is_ok(), "{key}"),
                }
            }
        }
        let refused = |more: &[(&'static str, Value)]| call(&of_words(key), &with(&given, more)).unwrap_err();
        let told = |error: &Error| (error.code(), error.field().to_string());
        assert_eq!(told(&refused(&[])), (Code::MissingField, "unit".into()), "{key}");
        let stone = refused(&[("unit", text("stone"))]);
        assert_eq!(told(&stone), (Code::UnknownVariant, "unit".into()), "{key}");
        assert_eq!(stone.allowed().to_string(), "kg, lb");
        let nobody = refused(&[unit.clone(), ("nobody", Value::Null)]);
        assert_eq!(told(&nobody), (Code::UnknownField, "nobody".into()), "{key}");
    }
}

#[test]
fn a_phrase_stands_in_its_place_and_a_wrong_one_is_refused() {
    let (log, plan, today) = demo();
    let (key, given, _) = questions(&log, &plan, today).swap_remove(15);
    assert_eq!(key, "answers.week");
    let told = |phrases: &[(&'static str, Value)]| {
        let more = [("unit", text("kg")), ("phrases", map(phrases))];
        call("text.week", &with(&given, &more))
    };
    let english = told(&[]).unwrap();
    let german = told(&[
        ("week.less_than_usual", text("Weniger als sonst.")),
        ("week.band", text("{high} bis {low}, {weeks}.")),
    ])
    .unwrap();
    assert_eq!(items(&english).len(), items(&german).len());
    assert!(items(&german).contains(&text("Weniger als sonst.")), "{german:?}");
    let other = items(&english).iter().zip(items(&german)).filter(|(one, other)| one != other).count();
    assert_eq!(other, 2, "what the translation does not say is said in English");
    let unknown = told(&[("week.nothing", text("x"))]).unwrap_err();
    assert_eq!((unknown.code(), unknown.field()), (Code::UnknownName, "phrases.key"));
    let hidden = told(&[("week.band", text("von {low} an"))]).unwrap_err();
    assert_eq!((hidden.code(), hidden.field()), (Code::WrongFormat, "phrases.week.band.text"));
    let number = told(&[("week.less_than_usual", Value::Number(1.0))]).unwrap_err();
    assert_eq!((number.code(), number.field()), (Code::WrongType, "phrases.week.less_than_usual"));
}

/// A gym of pounds: a bar of 45 lb and discs of pounds.
fn pounds_gym() -> World {
    use bismar::loading::{Bar, Disc, Implement, Stock};
    use bismar::quantity::Mass;
    let lb = |mass: f64| Mass::from_lb(mass).unwrap();
    let mut all = parameters();
    all.implements = vec![Implement::Bar(Bar::new(name("bar"), lb(45.0), Mass::ZERO).unwrap())];
    let disc = |mass: f64| Disc::new(lb(mass), 8).unwrap();
    all.stock = Stock::new([45.0, 25.0, 10.0, 5.0, 2.5].map(disc).to_vec()).unwrap();
    for lift in &mut all.lifts {
        lift.start.work.load = lb(135.0);
    }
    World::new(all)
}

#[test]
fn nothing_is_said_in_kilograms_in_a_gym_of_pounds() {
    let mut world = pounds_gym();
    world.add(EventKind::BodyMassRecorded(bismar::quantity::Mass::from_lb(180.0).unwrap()));
    let plan = Plan::of([name("squat"), name("press")]);
    let given = [
        ("log", Value::write(&world.log).unwrap()),
        ("plan", Value::write(&plan).unwrap()),
        ("today", Value::write(&world.day).unwrap()),
        ("unit", text("lb")),
    ];
    let session = call("text.session", &given).unwrap().to_json();
    assert!(session.contains("135 lb") && !session.contains(" kg"), "{session}");
    let rack = call("text.rack", &with(&given, &[("lift", text("squat"))])).unwrap().to_json();
    assert!(rack.contains("135 lb") && !rack.contains(" kg"), "{rack}");
}

/// Every list beside the sheet has the sentence of each object of the plan, in its order.
#[test]
fn a_session_has_a_sentence_for_everything_in_its_plan() {
    let (log, plan, today) = demo();
    let day = text(&today.to_string());
    let given = [
        ("log", Value::write(&log).unwrap()),
        ("plan", Value::write(&plan).unwrap()),
        ("today", day.clone()),
        ("unit", text("kg")),
    ];
    let state = fold(&log).unwrap();
    let words = Words::of(state.parameters().unwrap()).in_unit(Unit::Kg);
    let session: SessionPlan = next_session(&log, &plan, today).unwrap();
    let said = call("text.session", &given).unwrap();
    assert_eq!(field(&said, "sheet"), &Value::write(&words.session(&session)).unwrap());
    let all = |lines: Vec<String>| list(&lines);
    let cautions = |all: &[Caution]| list(&all.iter().map(|one| words.caution(*one)).collect::<Vec<_>>());
    assert_eq!(field(&said, "cautions"), &cautions(&session.cautions));
    let lifts = items(field(&said, "lifts"));
    assert_eq!(lifts.len(), session.lifts.len());
    let mut counted = 0;
    for (told, lift) in lifts.iter().zip(&session.lifts) {
        let reasons = |reasons: &[bismar::reason::Reason]| {
            all(reasons.iter().map(|one| words.reason_for(lift, one)).collect())
        };
        assert_eq!(field(told, "name"), &text(&format!("{} by name", lift.lift)));
        assert_eq!(field(told, "reasons"), &reasons(&lift.reasons));
        assert_eq!(field(told, "would_change"), &all(words.changes(lift)));
        assert_eq!(field(told, "cautions"), &cautions(&lift.cautions));
        assert_eq!(items(field(told, "missing")).len(), lift.gate.missing.len());
        let by: &[_] = if let MoveOutlook::Blocked { by, .. } = &lift.outlook { by } else { &[] };
        assert_eq!(field(told, "by"), &reasons(by));
        counted += lift.reasons.len() + lift.would_change.len() + by.len() + lift.gate.missing.len();
    }
    assert!(counted > 10, "{counted}");
    // By the state the same, which stands in the place of the log.
    let mut kept = given.clone();
    kept[0] = ("state", Value::write(&state).unwrap());
    assert_eq!(call("text.session_from", &kept).unwrap(), said);
    kept[0].1 = Value::Number(1.0);
    assert_eq!(call("text.session_from", &kept).unwrap_err().field(), "state");
}

/// A stop comes before everything: first in the sheet, in the words of the translation too, and nothing good is said beside it.
#[test]
fn a_stop_comes_first_and_cautions_are_said_by_their_translation() {
    let mut world = World::new(parameters());
    let given = |world: &World, own: &[(&'static str, Value)]| {
        [
            ("log", Value::write(&world.log).unwrap()),
            ("plan", Value::write(&Plan::of([name("squat")])).unwrap()),
            ("today", Value::write(&world.day).unwrap()),
            ("unit", text("kg")),
            ("phrases", map(own)),
        ]
    };
    let own = [
        ("caution.examines_nobody", text("Untersucht niemanden.")),
        ("caution.see_clinician_first", text("Erst zum Arzt.")),
    ];
    let well = call("text.session", &given(&world, &own)).unwrap();
    assert_eq!(items(field(field(&well, "sheet"), "stop")), []);
    assert!(items(field(field(&well, "sheet"), "mind")).contains(&text("Untersucht niemanden.")), "{well:?}");
    world.add(EventKind::SymptomReport(SymptomReport::new(vec![StopSign::ChestPain])));
    let stopped = call("text.session", &given(&world, &own)).unwrap();
    let Value::Map(fields) = &stopped else { panic!() };
    assert_eq!(&*fields[0].0, "sheet");
    let Value::Map(sheet) = &fields[0].1 else { panic!() };
    assert_eq!(&*sheet[0].0, "stop");
    let Value::Text(first) = &items(&sheet[0].1)[0] else { panic!() };
    assert!(first.starts_with("Stop: "), "{first}");
    assert_eq!(items(field(&stopped, "stops")).len(), 1);
    assert!(items(&sheet[0].1).last().unwrap().to_json().contains("Erst zum Arzt."), "{sheet:?}");
    assert_eq!(field(&items(field(&stopped, "lifts"))[0], "verdict"), &text("stop"));
    assert_eq!(Verdict::Stop.as_str(), "stop");
}

/// The names are those that the log declares last, wherever in the list that stands.
#[test]
fn the_names_are_those_in_force() {
    let mut world = World::new(parameters());
    let mut all = parameters();
    all.lifts[0].name = Some(name("Back squat"));
    world.add(EventKind::ParametersChanged(Box::new(all)));
    world.log.events.reverse();
    let given = [
        ("log", Value::write(&world.log).unwrap()),
        ("today", Value::write(&world.day).unwrap()),
        ("since", Value::write(&world.day).unwrap()),
        ("unit", text("kg")),
    ];
    let said = call("text.handover", &given).unwrap().to_json();
    assert!(said.contains("Back squat") && !said.contains("\"Squat"), "{said}");
}

/// Two lifters who call one lift by two names: each is told by the own.
#[test]
fn who_share_a_bar_are_told_by_the_names_of_their_own_logs() {
    let of = |lifter: &str, called: &str| {
        let mut all = parameters();
        all.lifts[0].name = Some(name(called));
        let world = World::of(Lifter::new(name(lifter)), all);
        (Sharing::new(world.log, Plan::of([name("squat")]), name("squat")), world.day)
    };
    let ((one, today), (other, _)) = (of("ann", "Back squat"), of("ben", "Kniebeuge"));
    let given = [
        ("lifters", Value::write(&vec![one, other]).unwrap()),
        ("today", Value::write(&today).unwrap()),
        ("unit", text("kg")),
    ];
    let said: Vec<String> = items(&call("text.share", &given).unwrap()).iter().map(Value::to_json).collect();
    for (lifter, own, foreign) in [("Ann", "Back squat", "Kniebeuge"), ("Ben", "Kniebeuge", "Back squat")] {
        let turns: Vec<_> = said
            .iter()
            .filter(|line| line.contains(&format!("{lifter}:")) || line.contains(&format!("{lifter} ")))
            .collect();
        assert!(
            !turns.is_empty() && turns.iter().all(|line| line.contains(own) && !line.contains(foreign)),
            "{said:?}"
        );
    }
}

#[test]
fn the_phrases_are_told_with_their_keys_and_taken_back_as_they_are() {
    let all = call("text.phrases", &[]).unwrap();
    let pairs: Vec<(String, String)> = items(&all)
        .iter()
        .map(|one| match (field(one, "key"), field(one, "text")) {
            (Value::Text(key), Value::Text(text)) => (key.to_string(), text.to_string()),
            other => panic!("{other:?}"),
        })
        .collect();
    assert_eq!(pairs, bismar::text::phrases());
    let own = Translation::new(pairs.iter().map(|(key, text)| (key.as_str(), text.as_str()))).unwrap();
    assert!(own.missing().is_empty());
    assert_eq!(call("text.phrases", &[("unit", text("kg"))]).unwrap_err().code(), Code::UnknownField);
}
