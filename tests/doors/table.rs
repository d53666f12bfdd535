//! A table of sets becomes sessions of a log: what is taken, guessed, asked for and left out.

use bismar::answers::{
    DayOrder, LiftSpelling, SetsTable, SetsToLog, TableGuess, TableReading, TableRows, sets_to_log,
};
use bismar::quantity::{Mass, Name, Reps, Rir, Unit};
use bismar::record::{Effort, EventKind, Log, Session};
use bismar::{Code, Error};

/// An invented lifter with two lifts.
fn log() -> Log {
    let lift = |id: &str, name: &str| {
        format!(
            r#"{{"id":"{id}","name":"{name}","body":"lower","regions":["knee"],"implement":"bar","rungs":[{{"id":"usual"}}],
            "start":{{"work":{{"sets":3,"reps":5,"load":{{"kg":30}}}}}},"criteria":[{{"id":"braced","critical":true}}],
            "gate":{{"pass_run":{{"acceptable":9,"of":10,"sessions":2}}}}}}"#
        )
    };
    let text = format!(
        r#"{{"format":"bismar-log","version":1,"lifter":{{"id":"invented","invented":true}},"events":[
        {{"sequence":7,"day":"2026-01-01","kind":{{"parameters_changed":{{
        "implements":[{{"bar":{{"id":"bar","mass":{{"kg":20}},"collar":{{"kg":0}}}}}}],
        "stock":{{"discs":[{{"nominal":{{"kg":5}},"count":8}}]}},"regions":[{{"id":"knee"}}],
        "lifts":[{},{}]}}}}}}]}}"#,
        lift("squat", "Box squat"),
        lift("hinge", "Hinge")
    );
    Log::from_json(&text).unwrap()
}

fn read(text: &str) -> Result<SetsToLog, Error> {
    sets_to_log(&SetsTable::Csv(text.into()), &log(), None)
}

fn known(text: &str, reading: &TableReading) -> Result<SetsToLog, Error> {
    sets_to_log(&SetsTable::Csv(text.into()), &log(), Some(reading))
}

fn sessions(told: &SetsToLog) -> Vec<(u32, String, &Session)> {
    let session = |event: &'_ bismar::record::Event| (event.sequence, event.day.to_string());
    told.log
        .events
        .iter()
        .filter_map(|event| match &event.kind {
            EventKind::SessionRecorded(recorded) => {
                let (sequence, day) = session(event);
                Some((sequence, day, recorded))
            }
            _ => None,
        })
        .collect()
}

fn left_out(told: &SetsToLog) -> Vec<(u32, &str, &str)> {
    told.left_out.iter().map(|row| (row.line, row.why, row.field.as_str())).collect()
}

#[test]
fn rows_of_a_day_are_a_session_in_the_order_of_the_table() {
    let told = read(
        "day,lift,load_kg,reps,reps_in_reserve,missed,cue,sets\n\
         2026-01-08,hinge,60,5,,,,\n\
         2026-01-05,squat,40,5,2.5,,chest up,3\n\
         2026-01-05,hinge,50,6,,1,,\n\
         2026-01-05,squat,42.5,4,,,knees out,\n",
    )
    .unwrap();
    assert_eq!((told.rows, told.taken, told.sessions), (4, 4, 2));
    let sessions = sessions(&told);
    assert_eq!(
        sessions.iter().map(|(at, day, _)| (*at, day.as_str())).collect::<Vec<_>>(),
        [(8, "2026-01-05"), (9, "2026-01-08")]
    );
    let lifts = &sessions[0].2.lifts;
    assert_eq!(
        lifts.iter().map(|lift| (lift.lift.as_str(), lift.sets.len())).collect::<Vec<_>>(),
        [("squat", 4), ("hinge", 1)]
    );
    assert_eq!(lifts[0].cue.as_ref().map(Name::as_str), Some("knees out"));
    let first = &lifts[0].sets[0];
    assert_eq!((first.load, first.reps), (Mass::from_kg(40.0).unwrap(), Reps::whole(5).unwrap()));
    assert_eq!(first.effort, Some(Effort::Rir(Rir::new(2.5).unwrap())));
    assert!(lifts[1].sets[0].failed && !first.failed);
    // Nobody was asked about pain, and no technique was marked: neither is made up.
    assert!(sessions.iter().all(|(_, _, session)| session.pain.is_none()));
    assert!(lifts.iter().flat_map(|lift| &lift.sets).all(|set| set.marks.is_none()));
    assert_eq!(
        told.guesses,
        [TableGuess::OneSessionADay, TableGuess::EveryRowAWorkSet, TableGuess::PlaceAsGranted]
    );
}

#[test]
fn every_guess_is_listed() {
    let told = read(
        "Date;Exercise;Weight (lbs);Repetitions;RPE;Mood\n\
         13/1/2026 18:30;box squat;137,5;5;7,5;good\n\
         2/1/2026;hinge;100;5;;\n",
    )
    .unwrap();
    assert_eq!((told.taken, told.left_out.len()), (2, 0));
    let read_as = |column: &str, field| TableGuess::ColumnReadAs { column: column.into(), field };
    for guess in [
        TableGuess::Separator(";".into()),
        read_as("Date", "day"),
        read_as("Exercise", "lift"),
        read_as("Weight (lbs)", "load_lb"),
        read_as("Repetitions", "reps"),
        read_as("RPE", "rating"),
        TableGuess::DayOrder { order: DayOrder::DayFirst, rows: 1 },
        TableGuess::TimeLeftOut(1),
        TableGuess::DecimalComma(1),
        TableGuess::Pounds(2),
        TableGuess::LiftReadAs { text: "box squat".into(), lift: Name::new("squat").unwrap() },
        TableGuess::OneSessionADay,
        TableGuess::EveryRowAWorkSet,
        TableGuess::PlaceAsGranted,
    ] {
        assert!(told.guesses.contains(&guess), "{guess:?} in {:?}", told.guesses);
    }
    assert_eq!(told.guesses.len(), 14);
    assert_eq!(told.columns_left_out, ["Mood"]);
    let sessions = sessions(&told);
    assert_eq!((sessions[0].1.as_str(), sessions[1].1.as_str()), ("2026-01-02", "2026-01-13"));
    assert_eq!(sessions[1].2.lifts[0].sets[0].load, Mass::from_lb(137.5).unwrap());
}

#[test]
fn rows_that_are_refused_are_listed_and_lose_no_other() {
    let told = read(
        "day,lift,load_kg,reps,rating,reps_in_reserve,warm_up\n\
         2026-01-05,squat,40,5,,,\n\
         2026-01-05,bicycle,40,5,,,\n\
         2026-02-30,squat,40,5,,,\n\
         2025-12-31,squat,40,5,,,\n\
         2026-01-05,squat,40 stone,5,,,\n\
         2026-01-05,squat,-5,5,,,\n\
         2026-01-05,squat,2500,5,,,\n\
         2026-01-05,squat,40,5.5,,,\n\
         2026-01-05,squat,40,,,,\n\
         2026-01-05,squat,40,5,11,,\n\
         2026-01-05,squat,40,5,8,2,\n\
         2026-01-05,squat,20,5,,,yes\n\
         2026-01-05,squat,40,5,,,perhaps\n\
         2026-01-05,squat,\"62,500\",5,,,\n\
         2026-01-05,squat,40,5\n\
         \n\
         2026-01-06,squat,41,5,,,no\n",
    )
    .unwrap();
    assert_eq!((told.rows, told.taken, told.sessions), (16, 2, 2));
    assert_eq!(
        left_out(&told),
        [
            (3, "unknown_lift", "lift"),
            (4, "not_a_date", "day"),
            (5, "no_parameters", "day"),
            (6, "unknown_unit", "load_kg"),
            (7, "negative_load", "load"),
            (8, "out_of_range", "load_kg"),
            (9, "not_whole", "reps"),
            (10, "missing_field", "reps"),
            (11, "out_of_range", "rating"),
            (12, "duplicate_field", "rating"),
            (13, "warm_up", "warm_up"),
            (14, "wrong_type", "warm_up"),
            (15, "not_a_number", "load_kg"),
            (16, "wrong_length", "row"),
        ]
    );
    assert_eq!(told.taken as usize + told.left_out.len(), told.rows as usize);
    assert_eq!(told.left_out[0].given, "bicycle");
}

#[test]
fn what_nothing_shows_is_asked_for() {
    let refused = |error: Error| (error.code(), error.field().to_string());
    let unit = "day,lift,load,reps\n2026-01-05,squat,40,5\n";
    assert_eq!(refused(read(unit).unwrap_err()), (Code::MissingField, "reading.unit".into()));
    let pounds = TableReading::default().with_unit(Unit::Lb);
    let told = known(unit, &pounds).unwrap();
    assert_eq!(sessions(&told)[0].2.lifts[0].sets[0].load, Mass::from_lb(40.0).unwrap());
    assert!(told.guesses.contains(&TableGuess::Pounds(1)));
    assert_eq!(read("day,lift,load,reps\n2026-01-05,squat,40 kg,5\n").unwrap().taken, 1);

    let order = "day,lift,load_kg,reps\n3/1/2026,squat,40,5\n";
    assert_eq!(refused(read(order).unwrap_err()), (Code::MissingField, "reading.day_order".into()));
    let both = "day,lift,load_kg,reps\n13/1/2026,squat,40,5\n1/13/2026,squat,40,5\n";
    assert_eq!(refused(read(both).unwrap_err()), (Code::MissingField, "reading.day_order".into()));
    for (day_order, day) in [(DayOrder::DayFirst, "2026-01-03"), (DayOrder::MonthFirst, "2026-03-01")] {
        let told = known(order, &TableReading::default().with_day_order(day_order)).unwrap();
        assert_eq!(sessions(&told)[0].1, day);
    }
    let told = known(both, &TableReading::default().with_day_order(DayOrder::DayFirst));
    assert_eq!(left_out(&told.unwrap()), [(3, "not_a_date", "day")]);
}

#[test]
fn a_table_that_cannot_be_read_is_refused_whole() {
    for (text, code, field) in [
        ("", Code::EmptyList, "table"),
        ("\n\n", Code::EmptyList, "table"),
        ("day,lift,load_kg,reps\n", Code::EmptyList, "table.rows"),
        ("lift,load_kg,reps\nsquat,40,5\n", Code::MissingField, "table.day"),
        ("day,load_kg,reps\n2026-01-05,40,5\n", Code::MissingField, "table.lift"),
        ("day,lift,reps\n2026-01-05,squat,5\n", Code::MissingField, "table.load_kg"),
        ("day,lift,load_kg\n2026-01-05,squat,40\n", Code::MissingField, "table.reps"),
        ("day,date,lift,load_kg,reps\n", Code::DuplicateField, "table.day"),
        ("day,lift,load_kg,reps\n2026-01-05,\"squat,40,5\n", Code::WrongFormat, "table.line"),
    ] {
        let error = read(text).unwrap_err();
        assert_eq!((error.code(), error.field()), (code, field), "{text:?}");
    }
    let broken = log().with_version(0);
    assert!(sets_to_log(&SetsTable::Csv("day".into()), &broken, None).is_err());
}

#[test]
fn spellings_that_the_host_knows_are_taken_and_an_ambiguous_one_is_not() {
    let text =
        "day,lift,load_kg,reps\n2026-01-05,Squats!,40,5\n2026-01-05,SQUAT,40,5\n2026-01-05,press,40,5\n";
    let lifts = vec![
        LiftSpelling::new("Squats!".into(), Name::new("squat").unwrap()),
        LiftSpelling::new("press".into(), Name::new("nobody").unwrap()),
    ];
    let told = known(text, &TableReading::default().with_lifts(lifts)).unwrap();
    assert_eq!((told.taken, left_out(&told)), (2, vec![(4, "unknown_lift", "lift")]));
    let lift = Name::new("squat").unwrap();
    assert!(told.guesses.contains(&TableGuess::LiftReadAs { text: "SQUAT".into(), lift }));
    assert!(
        !told
            .guesses
            .iter()
            .any(|guess| matches!(guess, TableGuess::LiftReadAs { text, .. } if text == "Squats!"))
    );
}

#[test]
fn the_same_table_again_adds_nothing() {
    let table =
        SetsTable::Csv("day,lift,load_kg,reps\n2026-01-05,squat,40,5\n2026-01-05,squat,40,5\n".into());
    let once = sets_to_log(&table, &log(), None).unwrap();
    let again = sets_to_log(&table, &once.log, None).unwrap();
    assert_eq!((again.taken, again.sessions), (0, 0));
    assert_eq!(left_out(&again), [(2, "already_there", "session"), (3, "already_there", "session")]);
    assert_eq!(again.log, once.log);
}

#[test]
fn a_session_of_more_sets_than_a_lift_may_have_is_left_out_whole() {
    let table = "day,lift,load_kg,reps,sets\n2026-01-05,squat,40,5,30\n2026-01-05,squat,40,5,1\n2026-01-06,squat,40,5,31\n";
    let told = read(table).unwrap();
    assert_eq!(
        left_out(&told),
        [(2, "too_many", "lifts[0].sets"), (3, "too_many", "lifts[0].sets"), (4, "out_of_range", "sets")]
    );
    assert_eq!((told.taken, told.sessions), (0, 0));
}

#[test]
fn sessions_of_one_day_are_told_apart_where_a_column_does() {
    let told = read(
        "day,session,lift,load_kg,load_lb,reps\n\
         2026-01-05,12,squat,62.369,137.500,5\n\
         2026-01-05,12,'=hinge,60.000,132.277,5\n\
         2026-01-05,13,squat,40.000,88.185,5\n\
         2026-01-05,13,squat,40.000,90.000,5\n",
    )
    .unwrap();
    let sessions = sessions(&told);
    assert_eq!(sessions.len(), 2);
    // Of two printed forms, the one in whole quarters: 137.5 lb and 40 kg exactly.
    assert_eq!(sessions[0].2.lifts[0].sets[0].load, Mass::from_lb(137.5).unwrap());
    assert_eq!(sessions[1].2.lifts[0].sets[0].load, Mass::from_kg(40.0).unwrap());
    assert_eq!(left_out(&told), [(3, "unknown_lift", "lift"), (5, "out_of_range", "load_lb")]);
    assert_eq!(told.left_out[0].given, "=hinge");
    assert!(!told.guesses.contains(&TableGuess::OneSessionADay));
}

#[test]
fn a_table_of_cells_is_read_as_its_text_would_be() {
    let text = |cells: &[&str]| cells.iter().map(|cell| (*cell).to_string()).collect::<Vec<_>>();
    let rows = TableRows::new(
        text(&["day", "lift", "load_kg", "reps"]),
        vec![text(&["2026-01-05", "squat", "40", "5"]), text(&["2026-01-05", "squat"])],
    );
    let told = sets_to_log(&SetsTable::Rows(rows), &log(), None).unwrap();
    assert_eq!((told.taken, left_out(&told)), (1, vec![(3, "wrong_length", "row")]));
    let same = read("day,lift,load_kg,reps\n2026-01-05,squat,40,5\n2026-01-05,squat\n").unwrap();
    assert_eq!(told, same);
}
