//! A diary that is kept: it owns what it read, and grows with its log.

use bismar::Code;
use bismar::answers::{Diary, SetsToday};
use bismar::quantity::{Day, Mass, Name};
use bismar::record::{Event, EventKind, Log, Override, Plan};

const LOG: &str = include_str!("../../examples/data/demo-log.json");

/// The log with the coach's word for a higher load of each lift on that day, which opens something unless everything is stopped.
fn with_words(log: &Log, today: Day) -> Log {
    let mut log = log.clone();
    let diary = Diary::of(&log).unwrap().into_owned();
    for lift in diary.state().lifts() {
        let load = Mass::from_kg(lift.grant().load().kg() + 2.5).unwrap();
        let given = Override::new(lift.id().clone(), load, Name::new("invented").unwrap());
        let given = given.with_why(Some("invented".into())).with_expires(today);
        let number = log.events.iter().map(|event| event.sequence).max().unwrap() + 1;
        log.events.push(Event::new(number, today, EventKind::CoachOverride(given)));
    }
    log
}

/// Every door that reads a diary, whole, for every lift; what would open with that other log in its place.
fn all(diary: &Diary<'_>, other: &Log, plan: &Plan, today: Day) -> String {
    let lifts: Vec<_> = diary.state().lifts().map(|lift| lift.id().clone()).collect();
    let opens = diary.opens(&Diary::of(other).unwrap(), today).unwrap();
    let mut said = format!(
        "{:?} {:?} {:?} {:?} {:?} {:?} {:?} {:?} {:?} {:?} {:?}",
        diary.week(today),
        diary.day(today, None),
        diary.easy_week(Some(plan), today),
        diary.missed(plan, today, None),
        diary.verdicts(today),
        diary.raters(None, today),
        diary.handover(today, today.plus(-60).unwrap()),
        diary.review(today),
        diary.in_force(today),
        diary.history(None, today),
        opens,
    );
    for lift in &lifts {
        let done = SetsToday::new(lift.clone(), Vec::new()).with_pain(Vec::new());
        said += &format!(
            "{:?} {:?} {:?} {:?}",
            diary.trend(lift, today, None),
            diary.curve(lift, today),
            diary.next_set(plan, today, &done),
            diary.pair(lift, &lifts[0], today, None),
        );
    }
    said
}

/// One event after the other of the last weeks of two years: what is kept says what the log read anew says.
#[test]
fn a_kept_diary_that_grows_says_what_the_log_says_that_is_read_anew() {
    const LAST: usize = 40;
    let whole = Log::from_json(LOG).unwrap();
    let whole = whole
        .clone()
        .with_events(whole.effective().unwrap().into_iter().map(|one| one.into_owned()).collect());
    let mut log = whole.clone().with_events(whole.events[..whole.events.len() - LAST].to_vec());
    let mut kept = Diary::of(&log).unwrap().into_owned();
    let (mut grown, mut anew, mut opened) = (0, 0, 0);
    for event in &whole.events[whole.events.len() - LAST..] {
        log.events.push(event.clone());
        match kept.add(event) {
            Ok(()) => grown += 1,
            Err(error) => {
                assert_eq!(error.code(), Code::NeedsRefold, "{error:?}");
                kept = Diary::of(&log).unwrap().into_owned();
                anew += 1;
            }
        }
        let read = Diary::of(&log).unwrap();
        let plan = Plan::of(read.state().lifts().map(|lift| lift.id().clone()).collect::<Vec<_>>());
        assert!(kept.state() == read.state(), "{event:?}");
        let other = with_words(&log, event.day);
        let opens = read.opens(&Diary::of(&other).unwrap(), event.day).unwrap();
        opened += usize::from(!opens.is_empty());
        assert!(all(&kept, &other, &plan, event.day) == all(&read, &other, &plan, event.day), "{event:?}");
    }
    println!("{grown} grown, {anew} read anew, {opened} opened");
    assert!(grown > LAST / 2 && opened > LAST / 2);
}

/// What is refused leaves it as it was.
#[test]
fn what_a_kept_diary_refuses_changes_nothing() {
    let log = Log::from_json(LOG).unwrap();
    let mut kept = Diary::of(&log).unwrap().into_owned();
    let (today, _) = kept.state().last().unwrap();
    let plan = Plan::of(kept.state().lifts().map(|lift| lift.id().clone()).collect::<Vec<_>>());
    let other = with_words(&log, today);
    let before = all(&kept, &other, &plan, today);
    let again = log.events.iter().rfind(|event| event.kind.name() == "session_recorded").unwrap();
    assert_eq!(kept.add(again).unwrap_err().code(), Code::NeedsRefold);
    assert!(all(&kept, &other, &plan, today) == before);
}
