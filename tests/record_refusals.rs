//! What a log and a plan may not hold: each refusal has its code, the path to the field, and the number of the event.

#![allow(clippy::unwrap_used, clippy::panic, reason = "a test may panic")]

use bismar::Code::{self, *};
use bismar::condition::{DayClass, MarkerKind};
use bismar::error::{Error, Given};
use bismar::record::{Log, Plan};
use bismar::value::Value;
use serde_json::{Value as Json, json};

/// Every part that has rules of its own, once. Invented throughout.
fn log() -> Json {
    let lift = |id: &str| {
        json!({
            "id": id, "body": "lower", "regions": ["knee"], "implement": "bar",
            "rungs": [{"id": "to a box"}, {"id": "free", "harder_than": ["to a box"], "own_ratio": 0.9}],
            "starts_from": "pins", "ranges": [{"mm": 400}, {"mm": 350}],
            "start": {"place": {"rung": 0, "range": 0}, "work": {"sets": 3, "reps": 5, "load": {"kg": 30}}},
            "criteria": [{"id": "brace held", "critical": true}, {"id": "depth", "critical": false, "sets": [1]}],
            "gate": {"pass_run": {"acceptable": 9, "of": 10, "sessions": 2}},
            "step": {"fixed": {"kg": 1}}, "step_cap": 0.05
        })
    };
    let set = json!({"load": {"kg": 30}, "reps": 5});
    let kinds = [
        json!({"parameters_changed": {
            "regions": [{"id": "knee"}, {"id": "hip", "name": "left hip"}],
            "lifts": [lift("strict"), lift("forgiving")],
            "pairs": [{"strict": "strict", "forgiving": "forgiving"}],
            "implements": [{"bar": {"id": "bar", "mass": {"kg": 20}, "collar": {"kg": 0}}}],
            "stock": {"discs": [{"nominal": {"kg": 5}, "count": 2}]},
            "blocks": [{"mm": 50}],
            "policy": {"layoff": [
                {"from_days": 11, "load_left": 1, "easier_rung": false, "relearn": false, "restart": false},
                {"from_days": 42, "load_left": 0.8, "easier_rung": true, "relearn": false, "restart": false}
            ]}
        }}),
        json!({"day_report": {
            "pain": [{"region": "knee", "score": 1}, {"region": "hip", "score": 0}],
            "markers": [{"kind": "recovery", "value": 7}, {"kind": "warm_up_technique", "value": 1}]
        }}),
        json!({"session_recorded": {"lifts": [
            {"lift": "strict", "sets": [set, set]}, {"lift": "forgiving", "sets": [set]}
        ]}}),
        json!({"symptom_report": {"signs": ["faint"]}}),
        json!({"layoff_noted": {"from": "2026-01-10", "to": "2026-01-12", "reason": "well"}}),
        json!({"correction": {"replaces": 2, "with": {"body_mass_recorded": {"kg": 80}}}}),
        json!({"usual_pain_agreed": {"region": "knee", "level": 2, "who": "invented coach"}}),
        json!({"body_mass_recorded": {"kg": 80}}),
        json!({"function_tested": {"test": "grip", "result": 40}}),
    ];
    let event = |(at, kind)| json!({"sequence": 10 + at, "day": "2026-02-01", "kind": kind});
    let events: Vec<Json> = kinds.into_iter().enumerate().map(event).collect();
    json!({"format": "bismar-log", "version": 1, "lifter": {"id": "invented"}, "events": events})
}

fn plan() -> Json {
    let lift = |lift: &str| json!({"lift": lift, "reserve": 3, "sets": 3, "reps": 5});
    json!({"format": "bismar-plan", "version": 1, "lifts": [lift("strict"), lift("forgiving")]})
}

/// The document with another value at one place.
fn with(mut document: Json, pointer: &str, value: Json) -> String {
    *document.pointer_mut(pointer).unwrap_or_else(|| panic!("{pointer}")) = value;
    document.to_string()
}

fn told(error: &Error) -> (Code, &str) {
    (error.code(), error.field())
}

#[test]
fn the_documents_themselves_are_accepted() {
    let log = Log::from_json(&log().to_string()).unwrap();
    assert_eq!(Log::from_json(&Value::write(&log).unwrap().to_json()), Ok(log));
    let plan = Plan::from_json(&plan().to_string()).unwrap();
    assert_eq!(Plan::from_json(&Value::write(&plan).unwrap().to_json()), Ok(plan));
}

/// Where in the event, what instead; then the code and the path within the event: to the field, or to the list in which a
/// name stands twice.
type Refusal = (&'static str, Json, Code, &'static str);

fn check(at: usize, kind: &str, refusals: Vec<Refusal>) {
    for (inside, value, code, field) in refusals {
        let text = with(log(), &format!("/events/{at}/kind/{kind}{inside}"), value);
        let error = Log::from_json(&text).unwrap_err();
        let path =
            format!("events[{at}].kind.{}{field}", kind.replace("/lifts/0", ".lifts[0]").replace('/', "."));
        assert_eq!(told(&error), (code, path.as_str()));
        assert_eq!(error.event(), Some(10 + at as u32), "{inside}");
    }
}

#[test]
fn parameters_that_cannot_be() {
    check(
        0,
        "parameters_changed",
        vec![
            ("/lifts", json!([]), EmptyList, ".lifts"),
            ("/lifts/1/id", json!("strict"), DuplicateName, ".lifts"),
            ("/regions/1/id", json!("knee"), DuplicateName, ".regions"),
            ("/lifts/0/regions/0", json!("neck"), UnknownRegion, ".lifts[0].regions"),
            ("/blocks/0/mm", json!(0), OutOfRange, ".blocks[0].height"),
            ("/blocks/0/mm", json!(501), OutOfRange, ".blocks[0].height"),
            ("/lifts/1/implement", json!("hex"), UnknownName, ".lifts[1].implement"),
            ("/pairs/0/strict", json!("ghost"), UnknownName, ".pairs[0].strict"),
            ("/pairs/0/forgiving", json!("ghost"), UnknownName, ".pairs[0].forgiving"),
            ("/pairs/0/forgiving", json!("strict"), DuplicateName, ".pairs[0].forgiving"),
        ],
    );
    let row = |from_days: u16, load_left: f64| json!({"from_days": from_days, "load_left": load_left, "easier_rung": false, "relearn": false, "restart": false});
    check(
        0,
        "parameters_changed/policy/layoff",
        vec![
            ("/0", row(1, 1.0), OutOfRange, "[0].from_days"),
            ("/1", row(11, 0.8), OutOfRange, "[1].from_days"),
            ("/1", row(42, 1.1), OutOfRange, "[1].load_left"),
        ],
    );
}

#[test]
fn lifts_that_cannot_be() {
    let rungs = Json::from(vec![json!({"id": "rung"}); 25]);
    check(
        0,
        "parameters_changed/lifts/0",
        vec![
            ("/rungs", json!([]), EmptyList, ".rungs"),
            ("/rungs", rungs, TooMany, ".rungs"),
            ("/rungs/0/id", json!("free"), DuplicateName, ".rungs"),
            ("/rungs/1/harder_than", json!(["sky"]), UnknownName, ".rungs[1].harder_than"),
            ("/rungs/1/harder_than", json!(["free"]), LadderCycle, ".rungs"),
            ("/rungs/1/own_ratio", json!(21), OutOfRange, ".rungs[1].own_ratio"),
            ("/regions", json!(["knee", "knee"]), DuplicateName, ".regions"),
            ("/start/place/rung", json!(2), OutOfRange, ".start.place.rung"),
            ("/start/place/range", json!(2), OutOfRange, ".start.place.range"),
            ("/start/work/sets", json!(0), OutOfRange, ".start.work.sets"),
            ("/start/work/reps", json!(31), OutOfRange, ".start.work.reps"),
            ("/start/work/load/kg", json!(-1), NegativeLoad, ".start.work.load"),
            ("/ranges", json!([]), EmptyList, ".ranges"),
            ("/ranges", json!([{"mm": 350}, {"mm": 400}]), OutOfRange, ".ranges[1].height"),
            ("/ranges", json!([{"mm": 350}, {"mm": 350}]), OutOfRange, ".ranges[1].height"),
            ("/ranges/0/mm", json!(501), OutOfRange, ".ranges[0].height"),
            ("/ranges/1/mm", json!(0), OutOfRange, ".ranges[1].height"),
            ("/criteria/1/sets", json!([0]), OutOfRange, ".criteria[1].sets"),
            ("/criteria/1/id", json!("brace held"), DuplicateCriterion, ".criteria"),
            ("/step", json!({"part": 0}), OutOfRange, ".step"),
            ("/step", json!({"fixed": {"kg": 0}}), OutOfRange, ".step"),
            ("/step_cap", json!(0), OutOfRange, ".step_cap"),
            ("/step_cap", json!(0.11), OutOfRange, ".step_cap"),
        ],
    );
}

#[test]
fn what_people_did_and_said_that_cannot_be() {
    check(
        1,
        "day_report",
        vec![
            ("/pain/1/region", json!("knee"), DuplicateName, ".pain"),
            ("/markers/1/kind", json!("recovery"), DuplicateName, ".markers"),
            ("/markers/0/value", json!(10.5), OutOfRange, ".markers[0].value"),
            ("/markers/1/value", json!(1.5), OutOfRange, ".markers[1].value"),
        ],
    );
    check(
        2,
        "session_recorded",
        vec![
            ("/lifts", json!([]), EmptyList, ".lifts"),
            ("/lifts/0/sets", json!([]), EmptyList, ".lifts[0].sets"),
            ("/lifts/1/lift", json!("strict"), DuplicateLift, ".lifts[1].lift"),
            ("/lifts/0/sets/1/reps", json!(4.5), NotWhole, ".lifts[0].sets[1].reps"),
        ],
    );
    check(3, "symptom_report", vec![("/signs", json!([]), EmptyList, ".signs")]);
    check(4, "layoff_noted", vec![("/to", json!("2026-01-09"), IntervalReversed, ".to")]);
    let corrected = json!({"correction": {"replaces": 3}});
    let no_sign = json!({"symptom_report": {"signs": []}});
    check(5, "correction", vec![("/with", corrected, CorrectionCycle, ".with")]);
    check(5, "correction", vec![("/with", no_sign, EmptyList, ".with.symptom_report.signs")]);
    check(6, "usual_pain_agreed", vec![("/level", json!(3), OutOfRange, ".level")]);
    check(7, "body_mass_recorded", vec![("/kg", json!(19), OutOfRange, "")]);
    check(8, "function_tested", vec![("/result", json!(-1), OutOfRange, ".result")]);
}

/// Marks are of the set that they stand beside, whoever gave them: of fewer repetitions they would pass for it, of more they
/// would count for more than was done.
#[test]
fn marks_of_more_or_fewer_repetitions_than_the_set_has() {
    let marks = |reps: u16| json!({"reps": reps, "acceptable": reps, "rater": "coach"});
    let video = |reps: u16| json!([{"reps": 5, "rater": "video"}, {"reps": reps, "rater": "lifter"}]);
    for reps in [0, 1, 4, 6, 30, 200] {
        let own = json!({"load": {"kg": 30}, "reps": 5, "marks": marks(reps)});
        let further = json!({"load": {"kg": 30}, "reps": 5, "marks": marks(5), "also_marked": video(reps)});
        for (set, field) in [(own, "marks.reps"), (further, "also_marked[1].reps")] {
            let field = format!("events[2].kind.session_recorded.lifts[0].sets[1].{field}");
            let pointer = "/events/2/kind/session_recorded/lifts/0/sets/1";
            let error = Log::from_json(&with(log(), pointer, set)).unwrap_err();
            assert_eq!((error.code(), error.field()), (MarksOfOtherReps, field.as_str()));
            // Both numbers are named.
            assert_eq!(error.given(), &Given::Number(f64::from(reps)));
            assert_eq!(error.allowed().to_string(), "5, the repetitions of the set");
            assert_eq!(error.event(), Some(12));
        }
    }
    // The repetition that was missed is none of those done.
    let missed = json!({"load": {"kg": 30}, "reps": 0, "failed": true, "marks": marks(0), "also_marked": []});
    let kept = json!({"load": {"kg": 30}, "reps": 5, "marks": marks(5), "also_marked": video(5)});
    for set in [missed, kept] {
        let read = Log::from_json(&with(log(), "/events/2/kind/session_recorded/lifts/0/sets/1", set));
        assert!(read.is_ok(), "{read:?}");
    }
}

#[test]
fn plans_that_cannot_be() {
    let refused = |pointer, value| Plan::from_json(&with(plan(), pointer, value)).unwrap_err();
    let error = refused("/format", json!("bismar-log"));
    assert_eq!(told(&error), (Code::WrongFormat, "format"));
    assert_eq!(error.allowed().to_string(), "bismar-plan");
    assert_eq!(told(&refused("/version", json!(0))), (Code::WrongFormat, "version"));
    let newer = refused("/version", json!(2));
    assert_eq!(told(&newer), (Code::NewerVersion, "version"));
    assert_eq!(newer.allowed().to_string(), "1 to 1");
    assert_eq!(told(&refused("/lifts/1/lift", json!("strict"))), (Code::DuplicateLift, "lifts[1].lift"));
    for (pointer, field) in [("/lifts/1/sets", "lifts[1].sets"), ("/lifts/0/reps", "lifts[0].reps")] {
        for count in [0, 31] {
            let error = refused(pointer, json!(count));
            assert_eq!(told(&error), (Code::OutOfRange, field));
            assert_eq!(error.allowed().to_string(), "1 to 30");
        }
        assert!(Plan::from_json(&with(plan(), pointer, json!(30))).is_ok());
    }
    for (days, allowed) in
        [(json!([0, 6]), true), (json!([]), true), (json!([7]), false), (json!([2, 2]), false)]
    {
        let plan = Plan::from_json(&with(plan(), "/lifts/1", json!({"lift": "forgiving", "days": days})));
        assert_eq!(plan.is_ok(), allowed);
        if let Err(error) = plan {
            assert_eq!(told(&error), (Code::OutOfRange, "lifts[1].days"));
        }
    }
    let many: Vec<Json> = (0..17).map(|at| json!({"lift": format!("lift {at}")})).collect();
    assert_eq!(told(&refused("/lifts", Json::from(many))), (Code::TooMany, "lifts"));
}

#[test]
fn markers_lie_within_what_a_body_does() {
    let ends = [
        (MarkerKind::WarmUpVelocity, 5.0),
        (MarkerKind::JumpHeight, 150.0),
        (MarkerKind::WarmUpTechnique, 1.0),
        (MarkerKind::Recovery, 10.0),
    ];
    for (kind, highest) in ends {
        assert_eq!(kind.check(0.0), Ok(()));
        assert_eq!(kind.check(highest), Ok(()));
        for outside in [-0.001, highest + 0.001] {
            assert_eq!(kind.check(outside).unwrap_err().code(), Code::OutOfRange, "{kind:?} {outside}");
        }
        assert_eq!(kind.check(f64::NAN).unwrap_err().code(), Code::NotFinite);
    }
}

#[test]
fn a_class_of_the_day_is_written_by_its_name() {
    for class in DayClass::ALL {
        assert_eq!(Value::write(&class), Ok(Value::Text(class.as_str().into())));
    }
}
