//! An invented lifter of whom everything is told, so that every door of the log has something to answer in the corpus.

use serde_json::{Value as Json, json};

/// The last day of the log; it is asked two days later.
const WEEKS: u32 = 12;

/// A day so many days after the first Monday, 5 January 2026, within the first half of that year.
fn day(after: u32) -> String {
    const BEFORE: [u32; 6] = [0, 31, 59, 90, 120, 151];
    let of_year = 5 + after;
    let month = BEFORE.iter().rposition(|before| *before < of_year).unwrap_or(0);
    let before = BEFORE.get(month).copied().unwrap_or(0);
    format!("2026-{:02}-{:02}", month + 1, of_year - before)
}

/// The day on which everything is asked.
pub(crate) fn today() -> String {
    day(7 * (WEEKS - 1) + 4)
}

/// The points by which the demo lifter's two squats are marked; the first is the critical one.
const FRONT: [&str; 3] = ["brace held", "depth reached", "knees track feet"];
const BOX: [&str; 2] = ["brace held", "even left and right"];

/// A set with its marks, which a second person marked too: now and then one of the two saw the last point lost.
fn set(points: &[&str], load: f64, reps: u32, week: u32, more: &Json) -> Json {
    let marked = |rater: &str, lost: bool| {
        let mark = |at: usize| if lost && at + 1 == points.len() { "not_met" } else { "met" };
        let marks: Vec<Json> = points
            .iter()
            .enumerate()
            .map(|(at, point)| json!({ "criterion": point, "mark": mark(at) }))
            .collect();
        json!({ "reps": reps, "acceptable": reps, "marks": marks, "rater": "coach", "rater_id": rater })
    };
    let mut set = json!({
        "load": { "kg": load }, "reps": reps, "marks": marked("Ann", week.is_multiple_of(6)),
        "also_marked": [marked("Bob", week.is_multiple_of(3))],
    });
    if let (Some(set), Some(more)) = (set.as_object_mut(), more.as_object()) {
        set.extend(more.clone());
    }
    set
}

/// Two lifts of a pair, once a week: the strict one at a velocity, at 4, 6 and 10 repetitions of a curve that loses 4 % each;
/// a set of the forgiving one is missed in every second week. Before it how the day is, and what marks it.
fn week(week: u32) -> Vec<(u32, Json)> {
    let on = 7 * week;
    let short = week.is_multiple_of(2);
    let scatter = f64::from(week * 5 % 4);
    let markers = [("recovery", 6.0), ("sleep", 7.0), ("stress", 3.0)]
        .map(|(kind, usual)| json!({ "kind": kind, "value": usual + scatter / 2.0 }));
    let class = if week.is_multiple_of(4) || week == 3 { "below" } else { "within" };
    let report = json!({ "class": class, "pain": [], "asks": [], "markers": markers });
    let curve = [(88.69, 4), (81.87, 6), (69.77, 10)].map(|(load, reps)| {
        set(
            &FRONT,
            load,
            reps,
            week,
            &json!({ "effort": { "rir": 0 }, "velocity": 0.3 + 0.01 * f64::from(week) }),
        )
    });
    let forgiving = [set(&BOX, 120.0, 3, week, &json!({ "effort": { "rir": 1 }, "failed": short }))];
    let lifts = json!([{ "lift": "front squat", "sets": curve }, { "lift": "box squat", "sets": forgiving }]);
    let session = json!({ "lifts": lifts, "pain": [], "effort": 6.5 + scatter / 2.0, "minutes": 50 + week });
    // Asked the morning after about the event before it.
    let morning = json!({ "next_day_report": { "session": null, "pain": [] } });
    let recorded = json!({ "session_recorded": session });
    let mut told = vec![(on, json!({ "day_report": report })), (on, recorded), (on + 1, morning.clone())];
    // At what is granted, so that something was shown there: as heavy as is lifted otherwise, nobody may yet.
    if week < 2 {
        let sets = [(); 3].map(|()| set(&FRONT, 30.0, 5, 1, &json!({ "effort": { "rir": 4 } })));
        let granted = json!({ "lifts": [{ "lift": "front squat", "sets": sets }], "pain": [], "effort": 5, "minutes": 40 });
        told.extend([(on + 3, json!({ "session_recorded": granted })), (on + 4, morning)]);
    }
    told
}

/// The log, with what the demo lifter's log sets for the two lifts.
pub(crate) fn log(parameters: &Json) -> Json {
    let mut parameters = parameters.clone();
    if let Some(lifts) = parameters.pointer_mut("/parameters_changed/lifts").and_then(Json::as_array_mut) {
        lifts.retain(|lift| lift.get("id").is_some_and(|id| id == "front squat" || id == "box squat"));
    }
    let cleared = json!({
        "status": "cleared_with_limits", "who": "invented clinic", "expires": "2026-12-31",
        "limits": [{ "no_breath_hold": true }],
    });
    let mut told = vec![
        (0, parameters),
        (0, json!({ "clearance_recorded": cleared })),
        (0, json!({ "body_mass_recorded": { "kg": 78 } })),
        (0, json!({ "function_tested": { "test": "grip", "result": 24 } })),
        (0, json!({ "block_started": "spring" })),
    ];
    told.extend((0..WEEKS).flat_map(week));
    told.push((7 * (WEEKS - 1) + 2, json!({ "session_missed": { "reason": "travel" } })));
    let numbered = (1_u32..).zip(told).map(|(sequence, (on, mut kind))| {
        if let Some(session) = kind.pointer_mut("/next_day_report/session") {
            *session = json!(sequence - 1);
        }
        json!({ "sequence": sequence, "day": day(on), "kind": kind })
    });
    let events: Vec<Json> = numbered.collect();
    let lifter = json!({ "id": "told lifter", "born": "1970-03-01", "invented": true });
    json!({ "format": "bismar-log", "version": 1, "lifter": lifter, "events": events })
}

/// Both lifts, and a load to keep.
pub(crate) fn plan() -> Json {
    let keep = json!([{ "lift": "front squat", "name": "the sack", "load": { "kg": 30 }, "at_age": 75 }]);
    json!({
        "format": "bismar-plan", "version": 1, "lifts": [{ "lift": "front squat" }, { "lift": "box squat" }],
        "years": { "keep": keep },
    })
}

/// What may be left out when a door is asked, told here.
pub(crate) fn also(argument: &str) -> Option<Json> {
    Some(match argument {
        "answers" => json!({
            "markers": [{ "kind": "recovery", "value": 3 }, { "kind": "sleep", "value": 7 }, { "kind": "stress", "value": 8 }],
            "technique": "not_scored",
        }),
        "done" => {
            let effort = json!({ "effort": { "rpe": 9 } });
            let sets = [
                set(&FRONT, 60.0, 5, 1, &json!({ "effort": { "rir": 2 } })),
                set(&FRONT, 60.0, 5, 1, &effort),
            ];
            json!({ "lift": "front squat", "sets": sets, "pain": [] })
        }
        "loads" => json!({ "strict": { "kg": 62.5 }, "forgiving": { "kg": 100 } }),
        "name" => json!("spring"),
        "next" => json!({ "day": day(7 * WEEKS), "lifts": ["front squat"] }),
        "since" => json!(day(14)),
        "suppose" => {
            json!({ "clearance_recorded": { "status": "cleared", "who": "invented clinic" } })
        }
        "weeks" => json!(10),
        _ => return None,
    })
}
