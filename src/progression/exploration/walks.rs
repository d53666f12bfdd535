//! Long walks: what breadth does not come to in a few acts.

use std::collections::BTreeSet;
use std::println;
use std::string::{String, ToString};
use std::vec::Vec;

use super::acts::Act;
use super::codec::Worlds;
use super::courses::{BROKEN_ONCE, COURSES};
use super::oracle::state_rule;
use super::play::Point;

/// Numbers of a plain congruential generator, so that a walk is the same everywhere.
struct Numbers(u64);

impl Numbers {
    fn below(&mut self, most: usize) -> usize {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) as usize % most
    }
}

/// What an ordinary day brings; a walk that draws from all acts alike never trains twice in a row.
const ORDINARY: [Act; 12] = [
    Act::DayWithin,
    Act::DayWithin,
    Act::DayWithin,
    Act::StrictClean,
    Act::ForgivingClean,
    Act::BothClean,
    Act::Morning,
    Act::WaitOne,
    Act::WaitOne,
    Act::Cleared,
    Act::AcceptStrict,
    Act::AcceptForgiving,
];

/// Two acts in three are ordinary.
fn walk(seed: usize, length: usize) -> impl Iterator<Item = Act> {
    let mut numbers = Numbers(seed as u64);
    numbers.below(2);
    (0..length).map(move |_| match numbers.below(3) {
        0 => Act::ALL[numbers.below(Act::ALL.len())],
        _ => ORDINARY[numbers.below(ORDINARY.len())],
    })
}

/// The first rule that a course breaks, with the number of its act.
fn breaks(acts: &[Act]) -> Option<(usize, String)> {
    let mut point = Point::first(None);
    for (at, act) in acts.iter().enumerate() {
        let Some(next) = point.after(*act) else { continue };
        point = next;
        if let Some(rule) = point.broken.clone().or_else(|| state_rule(&point)) {
            return Some((at, rule));
        }
    }
    None
}

/// The same without the acts that it does not need.
fn shortened(acts: &[Act], at: usize) -> Vec<Act> {
    let mut kept = acts[..=at].to_vec();
    for number in (0..=at).rev() {
        let mut fewer = kept.clone();
        fewer.remove(number);
        if breaks(&fewer).is_some() {
            kept = fewer;
        }
    }
    kept
}

fn no_walk_breaks_a_rule(seeds: core::ops::Range<usize>) {
    let mut rules = BTreeSet::new();
    for seed in seeds {
        let acts: Vec<Act> = walk(seed, 160).collect();
        if let Some((at, _)) = breaks(&acts) {
            let acts = shortened(&acts, at);
            let rule = breaks(&acts).unwrap().1;
            let names: Vec<String> = acts.iter().map(Act::to_string).collect();
            if rules.insert(rule.clone()) {
                println!("{rule}\n  by: {}", names.join(", "));
            }
        }
    }
    assert!(rules.is_empty());
}

#[test]
fn no_long_walk_breaks_a_rule() {
    no_walk_breaks_a_rule(0..400);
}

#[test]
#[ignore = "slow: a minute; long walks by the thousand"]
fn no_long_walk_of_many_breaks_a_rule() {
    let most = std::env::var("BISMAR_WALKS").ok().and_then(|most| most.parse().ok()).unwrap_or(50_000);
    no_walk_breaks_a_rule(0..most);
}

#[test]
fn what_once_broke_a_rule_breaks_none() {
    for acts in BROKEN_ONCE {
        assert_eq!(breaks(acts), None, "{acts:?}");
    }
}

/// What the bytes leave out no rule may compare: a state that was written and read again must go on as the one that was
/// not, on real days and through every act.
#[test]
fn what_is_read_again_goes_on_as_what_was_never_written() {
    let worlds = Worlds::new(None);
    for (number, course) in COURSES.iter().enumerate() {
        let mut point = Point::first(None);
        for act in course.iter().copied().chain(walk(number, 60)) {
            let Some(next) = point.after(act) else { continue };
            point = next;
            let again = Point::read(&point.write(), &worlds);
            assert_eq!(said(&again), said(&point), "course {number}: {act}");
            for then in Act::ALL {
                let bytes = |point: Option<Point>| point.as_ref().map(Point::write);
                assert_eq!(
                    bytes(point.after(then)),
                    bytes(again.after(then)),
                    "course {number}: {act}, {then}"
                );
            }
        }
    }
}

/// The reasons against a move of each lift, by their codes.
fn said(point: &Point) -> Vec<Vec<&'static str>> {
    let ids: Vec<_> = point.state.lifts().map(|lift| lift.id().clone()).collect();
    let codes = |id| {
        let blockers = point.state.blockers(id, None, point.on).unwrap();
        blockers.iter().map(|reason| reason.code()).collect()
    };
    ids.iter().map(codes).collect()
}
