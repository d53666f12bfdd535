//! The digest of one set of parameters, its bytes written down by hand. This file is compiled twice: with every feature,
//! and in `tests/without_features` with none, so that the digest is the same in both.

#![allow(clippy::unwrap_used, reason = "a test may panic")]

use bismar::gate::{Criterion, Gate, PassRun, Requirement};
use bismar::loading::{Bar, Disc, Implement, Stock};
use bismar::progression::fold;
use bismar::quantity::{Day, Length, Mass, Name};
use bismar::record::{
    Body, Event, EventKind, Grant, LiftParameters, Lifter, Log, Parameters, Region, Rung, StartsFrom,
    StepPolicy, Work,
};

fn name(text: &str) -> Name {
    Name::new(text).unwrap()
}

/// One lift from the floor. Invented throughout.
fn parameters() -> Parameters {
    let bar = Bar::new(name("bar"), Mass::grams(20_000), Mass::ZERO).unwrap();
    let disc = Disc::new(Mass::grams(10_000), 2).unwrap().with_diameter(Length::millimetres(450)).unwrap();
    Parameters::new(
        vec![Region::new(name("hip")).with_name(name("hüfte"))],
        vec![
            LiftParameters::new(
                name("pull"),
                Body::Lower,
                name("bar"),
                Grant::new(Work::new(2, 5, Mass::grams(40_000))),
                Gate::new(Requirement::PassRun(PassRun::new(9, 10, 2).unwrap())).unwrap(),
            )
            .with_regions(vec![name("hip")])
            .with_rungs(vec![Rung::new(name("one"), Vec::new())])
            .with_starts_from(StartsFrom::Floor)
            .with_ranges(vec![Length::millimetres(225)])
            .with_criteria(vec![Criterion::critical("back").unwrap()])
            .with_step(StepPolicy::Part(0.025))
            .with_ceiling(Mass::grams(90_000))
            .with_learning_sessions(4),
        ],
        vec![Implement::Bar(bar)],
        Stock::new(vec![disc]).unwrap(),
    )
    .with_blocks(vec![Length::millimetres(50)])
}

/// Bytes as the rules of canonical bytes say, written without them.
#[derive(Default)]
struct Bytes(Vec<u8>);

impl Bytes {
    fn raw(mut self, bytes: &[u8]) -> Bytes {
        self.0.extend(bytes);
        self
    }

    fn count(self, length: u32) -> Bytes {
        self.raw(&length.to_le_bytes())
    }

    fn text(self, text: &str) -> Bytes {
        self.count(text.len() as u32).raw(text.as_bytes())
    }

    fn number(self, number: f64) -> Bytes {
        self.raw(&number.to_bits().to_le_bytes())
    }

    fn days(self, days: u16) -> Bytes {
        self.raw(&days.to_le_bytes())
    }

    fn grams(self, grams: i64) -> Bytes {
        self.raw(&(grams * 1_000_000_000).to_le_bytes())
    }

    fn millimetres(self, millimetres: i32) -> Bytes {
        self.raw(&(millimetres * 1_000).to_le_bytes())
    }

    fn none(self) -> Bytes {
        self.raw(&[0])
    }

    fn some(self) -> Bytes {
        self.raw(&[1])
    }
}

/// Every field in the order in which its type declares it.
fn by_hand() -> Vec<u8> {
    let lists = Bytes::default().count(1).text("hip").some().text("hüfte").count(1);
    let lift = lists
        .text("pull")
        .none()
        .raw(&[1]) // the lower body
        .count(1)
        .text("hip")
        .text("bar");
    let places = lift
        .count(1)
        .text("one")
        .none()
        .count(0) // harder than nothing
        .none()
        .raw(&[1]) // from the floor
        .count(1)
        .millimetres(225)
        .count(0); // tempos
    let start = places.raw(&[0, 0, 0]).raw(&[2, 5]).grams(40_000);
    let judged = start
        .raw(&[5]) // load moves
        .count(1)
        .text("back")
        .raw(&[1]) // critical
        .count(0) // in every set
        .raw(&[10]) // percent missed
        .raw(&1_u16.to_le_bytes())
        .raw(&2_u16.to_le_bytes())
        .raw(&[1, 0, 1, 0, 0]);
    let gate = judged
        .raw(&[0]) // a run of passes
        .raw(&9_u16.to_le_bytes())
        .raw(&10_u16.to_le_bytes())
        .raw(&[2, 2, 0]);
    let steps = gate.some().raw(&[0]).number(0.025).none().some().grams(90_000).none().none();
    let lift = steps.some().raw(&[4]).raw(&[0]);
    let kit = lift
        .count(0) // pairs
        .count(1)
        .raw(&[0]) // a bar
        .text("bar")
        .grams(20_000)
        .grams(0)
        .none()
        .raw(&[0]) // straight
        .count(1)
        .grams(10_000)
        .none()
        .some()
        .millimetres(450)
        .none()
        .days(2)
        .count(1)
        .millimetres(50);
    policy(kit).0
}

/// The defaults, as the documentation of `Policy` gives them.
fn policy(before: Bytes) -> Bytes {
    let moves = before.days(7).days(14).raw(&[1]).days(56).number(0.1).days(21).days(21).raw(&[6]);
    let pain = moves.raw(&[3, 5, 2]);
    let back = pain.raw(&[2]).number(0.15).raw(&[1, 2]).number(0.8).raw(&[2]);
    let pairs = back.days(42).raw(&[1]).raw(&[1]).days(365).days(90).days(28).days(84).number(0.2);
    // Reserve in halves of a repetition.
    let effort = pairs.raw(&4_u16.to_le_bytes()).raw(&2_u16.to_le_bytes()).raw(&[0]);
    let rows = [(11, 1.0, [0; 3]), (21, 0.9, [0; 3]), (42, 0.8, [1, 0, 0]), (84, 0.65, [1, 1, 0])];
    let layoff = rows
        .iter()
        .fold(effort.count(5), |bytes, (days, left, answers)| bytes.days(*days).number(*left).raw(answers));
    layoff.days(182).number(0.65).raw(&[1, 1, 1]).raw(&[70])
}

/// 64-bit FNV-1a.
fn hash(bytes: &[u8]) -> u64 {
    bytes.iter().fold(0xcbf2_9ce4_8422_2325, |hash, byte| {
        (hash ^ u64::from(*byte)).wrapping_mul(0x0000_0100_0000_01b3)
    })
}

#[test]
fn the_digest_is_taken_over_bytes_that_can_be_written_by_hand() {
    let mut log = Log::new(Lifter::new(name("invented")));
    log.events.push(Event::new(
        1,
        Day::from_calendar(2026, 1, 5).unwrap(),
        EventKind::ParametersChanged(Box::new(parameters())),
    ));
    let state = fold(&log).unwrap();
    assert_eq!(state.digest(), format!("{:016x}", hash(&by_hand())));
    // The same from a program in another language, so that a change of both sides here is seen.
    assert_eq!(state.digest(), "64b73263c7faa752");
}
