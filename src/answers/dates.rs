//! Days of a log that look odd: after today, out of line, years apart, an age that no rule was made for.

use alloc::vec::Vec;

use super::oddity::{Odd, Oddity};
use crate::quantity::Day;
use crate::record::{Event, Lifter};

/// Days between two events from which a year may be mistyped, and days off its neighbours from which a date may be (our
/// choice).
const YEARS: i32 = 1_096;
const OUT_OF_LINE: i32 = 31;
/// Ages that the rules here were made for.
const AGES: core::ops::RangeInclusive<i32> = 18..=100;

fn at(event: &Event, what: Odd) -> Oddity {
    Oddity { event: Some(event.sequence), ..Oddity::new(event.day, what) }
}

/// Odd days of events, which are given in order of day.
pub(super) fn odd_days(events: &[&Event], lifter: &Lifter, today: Day) -> Vec<Oddity> {
    let mut odd = Vec::new();
    for event in events.iter().filter(|event| event.day > today) {
        odd.push(at(event, Odd::AfterToday { days: event.day.since(today).unsigned_abs() }));
    }
    for pair in events.windows(2) {
        if let [before, event] = pair
            && event.day.since(before.day) >= YEARS
        {
            let days = event.day.since(before.day).unsigned_abs();
            odd.push(at(event, Odd::LongGap { since: before.day, days }));
        }
    }
    odd.extend(out_of_line(events));
    let last = events.iter().rev().find(|event| event.day <= today);
    odd.extend(last.and_then(|event| {
        let years = lifter.oldest_on(event.day).filter(|years| !AGES.contains(years))?;
        Some(Oddity { event: None, ..at(event, Odd::OddAge { years }) })
    }));
    odd
}

/// Events whose day lies well before those written down around them, or well after.
fn out_of_line(events: &[&Event]) -> Vec<Oddity> {
    let mut written: Vec<&Event> = events.to_vec();
    crate::numeric::sort::sort_by_key(&mut written, |event| event.sequence);
    let (mut odd, mut in_line) = (Vec::new(), None);
    for (place, event) in written.iter().enumerate() {
        match beside(in_line, event.day, written.get(place + 1).map(|event| event.day)) {
            Some(beside) => {
                odd.push(at(event, Odd::OutOfLine { beside, days: event.day.since(beside).unsigned_abs() }));
            }
            None => in_line = Some(event.day),
        }
    }
    odd
}

/// The neighbour that a day lies off, where the two neighbours themselves are in order.
fn beside(before: Option<Day>, day: Day, after: Option<Day>) -> Option<Day> {
    match (before, after) {
        (Some(before), Some(after)) if before > after => None,
        (Some(before), _) if before.since(day) > OUT_OF_LINE => Some(before),
        (_, Some(after)) if day.since(after) > OUT_OF_LINE => Some(after),
        _ => None,
    }
}
