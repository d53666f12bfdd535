//! Worse is never better: where a report says something worse, a fact is missing, an event of a day is told twice or in
//! another order, a session is told in two parts, names differ or discs are fewer, nothing more is granted or asked for on
//! that day or any later one.
//!
//! Two logs are compared that are the same but for one thing. What a coach does later answers to what stood in the better
//! one, so that acts which name a place or a load by hand are left out; the rest happens in both.

mod held;
mod told;

use std::collections::BTreeMap;

use super::course::*;
use super::drawn::variant;
use super::hand::press_week;
use super::moves::crate_cases;
use bismar::condition::DayClass;
use bismar::loading::{Disc, Stock};
use bismar::progression::{Decision, State, fold};
use bismar::quantity::{Day, Pain};
use bismar::record::*;
use held::{Answers, Excuse, Held};
use proptest::prelude::*;
use proptest::strategy::ValueTree;
use proptest::test_runner::{Config, RngAlgorithm, TestRng, TestRunner};
use told::{Case, Worse, any_case, both};

/// What may happen in both courses: not what a coach names by hand, which answers to what stood in the better one.
fn happens(step: &Step) -> bool {
    let by_hand = matches!(
        step,
        Step::Override { up: true, .. } | Step::Decline(_) | Step::Rung { .. } | Step::ByHand { .. }
    );
    !by_hand
}

/// What happens in both. Where the rule itself takes moves, it takes one at the report that allows it, and what is told
/// after that comes too late: the order in which a day is told is compared where a coach takes them.
fn course(case: &Case) -> Course {
    let steps = case.drawn.steps.iter().filter(|step| happens(step)).cloned().collect();
    let world = case.drawn.world.clone();
    let automatic = world.automatic && case.worse != Worse::Swapped;
    Course::of(&Drawn { world: World { automatic, ..world }, steps })
}

/// Holds the worse log against the better one after each event (or each day) from that place on, and for half a year after
/// the last.
fn hold(better: Log, worse: Log, from: usize, told: Worse) -> Result<(), TestCaseError> {
    held(better, worse, from, told).map(drop)
}

/// What a comparison came to.
struct Compared {
    /// What was excused on the way.
    met: BTreeMap<Excuse, usize>,
    /// The worse log could be read to its end.
    read: bool,
    /// Lifts that were held against each other, each time.
    lifts: usize,
}

/// The same, with what was excused on the way, and how much was compared at all.
fn held(better: Log, worse: Log, from: usize, told: Worse) -> Result<Compared, TestCaseError> {
    // Within a day the parts of what is told otherwise are not all there yet.
    let whole_days = matches!(
        told,
        Worse::Twice
            | Worse::Swapped
            | Worse::Split { .. }
            | Worse::Late
            | Worse::MixedKit
            | Worse::OfEarlier { .. }
    );
    let keys: Vec<(Day, u32)> = better.events.iter().map(|event| (event.day, event.sequence)).collect();
    let mut held = Held::new(better, worse);
    for (at, (day, number)) in keys.iter().enumerate() {
        let next = keys.get(at + 1).map(|(day, _)| *day);
        if whole_days && next == Some(*day) {
            continue;
        }
        let key = if whole_days { (*day, u32::MAX) } else { (*day, *number) };
        if held.up_to(key, told)?.is_none() {
            return Ok(Compared { met: held.met, read: false, lifts: held.lifts });
        }
        if at < from {
            continue;
        }
        held.compare(*day, next != Some(*day), told)?;
        let until = next.unwrap_or(day.plus(200).unwrap());
        for days in [1, 3, 12, 30, 60, 199] {
            let later = day.plus(days).unwrap();
            if later < until {
                held.compare(later, days == 1, told)?;
            }
        }
    }
    Ok(Compared { met: held.met, read: true, lifts: held.lifts })
}

proptest! {
    #![proptest_config(ProptestConfig { max_global_rejects: 1024 + 4 * crate_cases(), ..ProptestConfig::with_cases(crate_cases()) })]

    #[test]
    fn worse_is_never_better(case in any_case()) {
        let course = course(&case);
        let pair = both(&course.log, case.from, case.worse);
        prop_assume!(pair.is_some());
        let (better, told, at) = pair.unwrap();
        hold(better, told, at, case.worse)?;
    }

    /// Plain pain told between two parts of a day.
    #[test]
    fn plain_pain_between_two_parts_of_a_day_grants_nothing_more(
        drawn in any_course(), from in 1_usize..60, region in 0_u8..3, score in 1_u8..4,
    ) {
        let case = Case { drawn, from, worse: Worse::PainBetween { region, score } };
        let pair = both(&course(&case).log, case.from, case.worse);
        prop_assume!(pair.is_some());
        let (better, told, at) = pair.unwrap();
        hold(better, told, at, case.worse)?;
    }

    /// Half of the discs of each kind, in every set of parameters.
    #[test]
    fn fewer_discs_grant_nothing_more(drawn in any_course(), kept in 1_u16..4) {
        let case = Case { drawn, from: 0, worse: Worse::Discs };
        let better = course(&case).log;
        let mut fewer = better.clone();
        for_parameters(&mut fewer, |all| {
            let count = |disc: &Disc| disc.count().min(2 * kept).max(disc.count() / 4 * 2);
            let discs = all.stock.discs().iter().map(|disc| (*disc).counted(count(disc)).unwrap());
            all.stock = Stock::new(discs.filter(|disc| disc.count() > 0).collect()).unwrap();
        });
        hold(better, fewer, 0, Worse::Discs)?;
    }

    /// Nobody knows the lifter's age.
    #[test]
    fn an_unknown_age_grants_nothing_more(drawn in any_course()) {
        let case = Case { drawn, from: 0, worse: Worse::Age };
        let better = course(&case).log;
        let lifter = better.lifter.clone().with_born(None).with_age(None);
        let unknown = better.clone().with_lifter(lifter);
        hold(better, unknown, 0, Worse::Age)?;
    }

    /// The same course of somebody older.
    #[test]
    fn an_older_lifter_is_granted_nothing_more(drawn in any_course(), years in 1_u8..40) {
        let case = Case { drawn, from: 0, worse: Worse::Age };
        let better = course(&case).log;
        let born = better.lifter.born.map(|day| day.plus(-366 * i32::from(years)).unwrap());
        let older = |band: AgeBand| band.with_from(band.from + years).with_to(band.to + years);
        let lifter = better.lifter.clone().with_born(born).with_age(better.lifter.age.map(older));
        hold(better.clone(), better.with_lifter(lifter), 0, Worse::Age)?;
    }

    /// Other names for lifts, regions and rungs, and ids as they were: every answer is the same.
    #[test]
    fn names_change_no_answer(drawn in any_course(), days in 0_i32..100) {
        let course = Course::of(&drawn);
        let mut renamed = course.log.clone();
        for_parameters(&mut renamed, rename);
        let (one, other) = (fold(&course.log).unwrap(), fold(&renamed).unwrap());
        let today = course.day.plus(days).unwrap();
        let mut again = course.set().clone();
        rename(&mut again);
        let renamed_before = again == *course.set();
        prop_assert_eq!(one.digest() == other.digest(), renamed_before);
        let plain = |mut decision: Decision| {
            decision.parameters = String::new();
            decision
        };
        let decisions = |state: &State| state.decide(today).unwrap().into_iter().map(plain).collect::<Vec<_>>();
        prop_assert_eq!(decisions(&one), decisions(&other));
        prop_assert_eq!(Answers::of(&one, today, true).session, Answers::of(&other, today, true).session);
        prop_assert_eq!(one.regions(), other.regions());
    }
}

/// Courses that are looked through for every exception, at the most.
const EXCUSED_COURSES: usize = 3_000;

/// Every way in which something may be told worse.
const WAYS: [&str; 33] = [
    "Pain",
    "Feature",
    "Class",
    "Asked",
    "Missed",
    "Lost",
    "FewerReps",
    "AnotherSaw",
    "EffortUnsaid",
    "LessLeft",
    "LessReached",
    "Easier",
    "LowerLimit",
    "ToldBetween",
    "NoPain",
    "NoFeatures",
    "NoAsks",
    "NoClass",
    "NoMarks",
    "NoCompany",
    "NotTold",
    "Twice",
    "Swapped",
    "Split",
    "Late",
    "OfEarlier",
    "Symptom",
    "Ill",
    "Refused",
    "Shorter",
    "LimitsEffort",
    "LimitsRange",
    "MixedKit",
];

/// A way that is never drawn, or that finds nothing to make worse, shows nothing.
#[test]
fn every_way_to_tell_it_worse_is_drawn_and_finds_something() {
    let rng = TestRng::deterministic_rng(RngAlgorithm::ChaCha);
    let mut runner = TestRunner::new_with_rng(Config::default(), rng);
    let mut found: BTreeMap<String, Found> = BTreeMap::new();
    for _ in 0..DRAWN {
        let enough = |way: &&str| found.get(*way).is_some_and(|found| found.compared >= FOUND);
        if WAYS.iter().all(enough) {
            break;
        }
        let case = any_case().new_tree(&mut runner).unwrap().current();
        let Some((better, worse, at)) = both(&course(&case).log, case.from, case.worse) else { continue };
        let found = found.entry(variant(&case.worse)).or_default();
        found.drawn += 1;
        // A log that cannot be read, or of which every lift is excused, shows nothing.
        if found.compared < FOUND {
            let compared = held(better, worse, at, case.worse).unwrap();
            found.unread += usize::from(!compared.read);
            found.compared += usize::from(compared.read && compared.lifts > 0);
        }
    }
    let compared = |way: &str| found.get(way).map_or(0, |found| found.compared);
    let rare: Vec<&str> = WAYS.into_iter().filter(|way| compared(way) < FOUND).collect();
    assert!(rare.is_empty(), "{rare:?} of {found:?}");
    assert_eq!(found.len(), WAYS.len(), "{found:?}");
    let unread: usize = found.values().map(|found| found.unread).sum();
    let all: usize = found.values().map(|found| found.compared).sum();
    assert!(unread * 4 <= all, "{unread} logs could not be read beside {all}: {found:?}");
}

/// Of one way to tell it worse: how often it found something, how many of those logs were compared to their end, and how many
/// could not be read.
#[derive(Debug, Default)]
struct Found {
    drawn: usize,
    compared: usize,
    unread: usize,
}

/// Cases drawn at the most, and logs of each way that have to be compared.
const DRAWN: usize = 6_000;
const FOUND: usize = 3;

/// Pain of 1, 2 and 3 in three sessions, which rises; and the same with 4 in the first of them, which does not.
fn without_its_rise() -> (Log, Log) {
    let mut course = Course::new(parameters(1));
    (0..4).for_each(|_| press_week(&mut course));
    let first = course.next_number() + 1;
    for score in 1..=3 {
        course.day_report(DayClass::Within, false);
        course.session(4, Quality::Clean, Weight::AtLimit, Some(score));
        course.day = course.day.plus(3).unwrap();
    }
    let (better, mut worse) = (course.log.clone(), course.log);
    for event in worse.events.iter_mut().filter(|event| event.sequence == first) {
        let EventKind::SessionRecorded(session) = &mut event.kind else { panic!("{event:?}") };
        session.pain.iter_mut().flatten().for_each(|answer| answer.score = Pain::new(4).unwrap());
    }
    assert_ne!(better, worse);
    (better, worse)
}

fn trained(lifts: u8, quality: Quality) -> Step {
    Step::Session { lifts, quality, weight: Weight::AtLimit, pain: Some(0) }
}

/// Two weeks under a limit, and a month of nothing: the better course is let go of what its limit left, the other's limit is lower.
fn still_kept() -> Case {
    let clean = trained(1, Quality::Clean);
    let steps = vec![Step::Limit { everywhere: false }, Step::CleanWeek, Step::CleanWeek, clean];
    Case { drawn: Drawn { world: World::default(), steps }, from: 1, worse: Worse::LowerLimit }
}

/// A lift with help fails twice before the first weighing where marks are lost, and after it where they are not.
fn weighed_since() -> Case {
    let clean = |lifts| trained(lifts, Quality::Clean);
    let steps = vec![
        trained(8, Quality::ManyMisses),
        Step::Ask(0),
        Step::Parameters(Change::Names),
        Step::CleanWeek,
        clean(1),
        Step::CleanWeek,
        clean(1),
        clean(1),
        Step::CleanWeek,
        Step::CleanWeek,
        clean(16),
        Step::Split { lifts: 1, quality: Quality::Clean },
        Step::CleanWeek,
        Step::CleanWeek,
        Step::Weigh(87),
        Step::Between { change: Change::Names, quality: Quality::ManyMisses },
    ];
    Case {
        drawn: Drawn { world: World { helped: Some(false), ..World::default() }, steps },
        from: 14,
        worse: Worse::Lost,
    }
}

/// A day with new discs between a good part and a bad one; and the same with the discs of before.
fn parted_alone() -> (Log, Log) {
    let mut course = Course::new(parameters(1));
    for _ in 0..3 {
        course.session(u8::MAX, Quality::Clean, Weight::AtLimit, Some(0));
    }
    let mut more = course.set().clone();
    let discs = more.stock.discs().iter().map(|disc| (*disc).counted(2 * disc.count()).unwrap());
    more.stock = Stock::new(discs.collect()).unwrap();
    course.add(EventKind::ParametersChanged(Box::new(more)));
    course.session(1, Quality::ManyMisses, Weight::AtLimit, Some(0));
    let mut worse = course.log.clone();
    let before = parameters(1).stock;
    for_parameters(&mut worse, |all| all.stock = before.clone());
    (course.log, worse)
}

/// An exception that no course ever needs is a hole in the rule, and nothing else.
#[test]
fn every_exception_from_worse_is_never_better_is_met() {
    let rng = TestRng::deterministic_rng(RngAlgorithm::ChaCha);
    let mut runner = TestRunner::new_with_rng(Config::default(), rng);
    let (better, worse) = without_its_rise();
    let mut met = held(better, worse, 0, Worse::Pain { region: 0, more: 3 }).unwrap().met;
    assert!(met.contains_key(&Excuse::NoRise), "{met:?}");
    for case in [still_kept(), weighed_since()] {
        let (better, told, at) = both(&course(&case).log, case.from, case.worse).unwrap();
        met.extend(held(better, told, at, case.worse).unwrap().met);
    }
    let (better, worse) = parted_alone();
    met.extend(held(better, worse, 0, Worse::Discs).unwrap().met);
    for rare in [Excuse::StillKept, Excuse::WeighedSince, Excuse::PartedAlone] {
        assert!(met.contains_key(&rare), "{rare:?} of {met:?}");
    }
    for _ in 0..EXCUSED_COURSES {
        if Excuse::ALL.iter().all(|excuse| met.contains_key(excuse)) {
            break;
        }
        let case = any_case().new_tree(&mut runner).unwrap().current();
        // What is rare is looked for where it can be: told in the way that leads to it.
        let rare = [
            (Excuse::DayBelow, Worse::Class(DayClass::Below)),
            (Excuse::OneBreakOfTwo, Worse::NotTold),
            (Excuse::GivenBack, Worse::NoAsks),
            (Excuse::GivenBack, Worse::NoPain),
        ];
        let missing = rare.into_iter().filter(|(excuse, _)| !met.contains_key(excuse));
        let ways: Vec<Worse> = core::iter::once(case.worse).chain(missing.map(|(_, way)| way)).collect();
        for worse in ways {
            let case = Case { worse, ..case.clone() };
            let Some((better, told, at)) = both(&course(&case).log, case.from, worse) else { continue };
            for (excuse, count) in
                held(better, told, at, worse).unwrap_or_else(|error| panic!("{case:?}: {error}")).met
            {
                *met.entry(excuse).or_default() += count;
            }
        }
    }
    let never: Vec<Excuse> = Excuse::ALL.into_iter().filter(|excuse| !met.contains_key(excuse)).collect();
    assert!(never.is_empty(), "{never:?} never, of {met:?}");
}

fn for_parameters(log: &mut Log, change: impl Fn(&mut Parameters)) {
    for event in &mut log.events {
        if let EventKind::ParametersChanged(all) = &mut event.kind {
            change(all);
        }
    }
}
