//! A diary that is kept: it owns what it read, and grows with its log.

use bismar::Code;
use bismar::answers::{Diary, SetsToday};
use bismar::quantity::Day;
use bismar::record::{Log, Plan};

const LOG: &str = include_str!("../../examples/data/demo-log.json");

/// Every door that reads a diary, whole, for every lift.
fn all(diary: &Diary<'_>, plan: &Plan, today: Day) -> String {
    let lifts: Vec<_> = diary.state().lifts().map(|lift| lift.id().clone()).collect();
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
        diary.opens(diary, today),
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
    let (mut grown, mut anew) = (0, 0);
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
        assert!(all(&kept, &plan, event.day) == all(&read, &plan, event.day), "{event:?}");
    }
    println!("{grown} grown, {anew} read anew");
    assert!(grown > LAST / 2);
}

/// What is refused leaves it as it was.
#[test]
fn what_a_kept_diary_refuses_changes_nothing() {
    let log = Log::from_json(LOG).unwrap();
    let mut kept = Diary::of(&log).unwrap().into_owned();
    let (today, _) = kept.state().last().unwrap();
    let plan = Plan::of(kept.state().lifts().map(|lift| lift.id().clone()).collect::<Vec<_>>());
    let before = all(&kept, &plan, today);
    let again = log.events.iter().rfind(|event| event.kind.name() == "session_recorded").unwrap();
    assert_eq!(kept.add(again).unwrap_err().code(), Code::NeedsRefold);
    assert!(all(&kept, &plan, today) == before);
}
