//! What looks odd in a log.

use bismar::answers::{Lacking, Odd, Oddity, Review, Slip, review};
use bismar::caution::Caution;
use bismar::gate::{Mark, Rater, SetMarks};
use bismar::prescription::next_session;
use bismar::quantity::{Day, Reps, Rir, Rpe};
use bismar::record::*;
use bismar::text::{Translation, Words};

use crate::careful::is_careful;
use crate::world::{World, kg, name, parameters};

fn day(text: &str) -> Day {
    text.parse().unwrap()
}

fn looked(log: &Log, today: &str) -> Review {
    let review = review(log, day(today)).unwrap();
    for said in Words::of(&parameters()).review(&review) {
        is_careful(&said);
        assert!(!said.contains(['{', '}']), "{said}");
    }
    review
}

fn log_of(events: impl IntoIterator<Item = (&'static str, EventKind)>) -> Log {
    let mut log = Log::new(Lifter::new(name("invented")));
    for (sequence, (on, kind)) in (1..).zip(events) {
        log.events.push(Event::new(sequence, day(on), kind));
    }
    log
}

fn weighed(mass: f64) -> EventKind {
    EventKind::BodyMassRecorded(kg(mass))
}

fn set(load: f64) -> WorkSet {
    let marks = SetMarks::scored(5, 4, Rater::Coach).with("brace", Mark::Met).unwrap();
    WorkSet::done(kg(load), Reps::whole(5).unwrap()).with_marks(marks)
}

fn squat(sets: Vec<WorkSet>) -> EventKind {
    let lifts = vec![LiftSession::as_granted(name("squat"), sets)];
    EventKind::SessionRecorded(Session::new(lifts).with_pain(Vec::new()))
}

/// A squat that starts at 60 kg.
fn start() -> EventKind {
    EventKind::ParametersChanged(Box::new(parameters()))
}

/// `count` squats at 60 kg, two days apart, each set as made.
fn squats(count: usize, made: impl Fn(usize) -> WorkSet) -> Log {
    let mut log = log_of([("2026-01-01", start())]);
    for at in 0..count {
        let on = day("2026-01-02").plus(2 * at as i32).unwrap();
        let kind = squat(vec![made(at)]);
        log.events.push(Event::new(at as u32 + 2, on, kind));
    }
    log
}

fn kinds(review: &Review) -> Vec<&'static str> {
    review.findings.iter().map(|oddity| oddity.what.code()).collect()
}

#[test]
fn an_empty_log_says_what_is_missing_and_finds_nothing() {
    let review = looked(&log_of([]), "2026-01-05");
    assert_eq!(review.missing, [Lacking::Session, Lacking::BodyMass]);
    assert!(review.findings.is_empty());
    let said = Words::plain().review(&review).join(" ");
    assert!(said.contains("No session is in the log.") && !said.contains("Nothing looks odd"), "{said}");
}

/// 80 kg to 76 kg is exactly a twentieth; 183 days lie between 5 January and 7 July.
#[test]
fn a_twentieth_of_body_mass_within_half_a_year_is_found_and_not_a_day_later() {
    let log = log_of([("2026-01-05", weighed(80.0)), ("2026-06-01", weighed(76.0))]);
    let review = looked(&log, "2026-07-07");
    let Odd::MassFalling { part, .. } = review.findings[0].what else { panic!() };
    assert!((part - 0.05).abs() < 1e-12);
    let what = Odd::MassFalling { from: kg(80.0), since: day("2026-01-05"), to: kg(76.0), part };
    let oddity = Oddity::new(day("2026-06-01"), what);
    assert_eq!(review.findings, [oddity]);
    assert!(review.cautions.contains(&Caution::MassFalling));
    assert!(looked(&log, "2026-07-08").findings.is_empty());
    // 80 kg to 76.01 kg is less than a twentieth.
    let log = log_of([("2026-01-05", weighed(80.0)), ("2026-06-01", weighed(76.01))]);
    assert!(looked(&log, "2026-06-02").findings.is_empty());
}

/// The caution stands beside today's answer exactly where the review finds the fall.
#[test]
fn the_caution_beside_todays_answer_is_that_of_the_review() {
    for (mass, falls) in [(76.0, true), (76.01, false), (84.0, false), (70.0, true)] {
        let mut world = World::new(parameters());
        world.add(weighed(80.0));
        world.wait(60).add(weighed(mass));
        let plan = Plan::of([name("squat")]);
        let session = next_session(&world.log, &plan, world.day).unwrap();
        let review = review(&world.log, world.day).unwrap();
        assert_eq!(session.cautions.contains(&Caution::MassFalling), falls, "{mass}");
        assert_eq!(review.cautions.contains(&Caution::MassFalling), falls, "{mass}");
    }
}

/// 80 to 72 kg is a tenth less, 80 to 88 kg a tenth more; 80 kg typed as pounds of itself is 176.4.
#[test]
fn a_tenth_between_two_weighings_is_a_likely_slip() {
    for (mass, part, slip) in [
        (72.0, -0.10, None),
        (88.0, 0.10, None),
        (176.4, 1.205, Some(Slip::PoundsAsKilograms)),
        (36.3, -0.54625, Some(Slip::KilogramsAsPounds)),
    ] {
        let log = log_of([("2026-01-05", weighed(80.0)), ("2026-01-12", weighed(mass))]);
        let review = looked(&log, "2026-01-12");
        let jump = review.findings.iter().find(|oddity| oddity.what.code() == "mass_jump").unwrap();
        assert_eq!(jump.event, Some(2));
        let Odd::MassJump { part: found, slip: told, .. } = jump.what else { panic!() };
        assert!((found - part).abs() < 1e-9, "{found}");
        assert_eq!(told, slip);
    }
    let log = log_of([("2026-01-05", weighed(80.0)), ("2026-01-12", weighed(87.9))]);
    assert!(looked(&log, "2026-01-12").findings.is_empty());
}

/// 60 kg written as pounds is 132.3: within 3 % of 2.2046 lie 60 x 2.1385 = 128.3 to 60 x 2.2707 = 136.2 kg.
#[test]
fn a_load_in_the_other_unit_is_asked_about_once() {
    let one = |load: f64| {
        log_of([("2026-01-01", start()), ("2026-01-02", squat(vec![set(60.0), set(load), set(load)]))])
    };
    for (load, slip) in [
        (132.5, Slip::PoundsAsKilograms),
        (128.5, Slip::PoundsAsKilograms),
        (27.5, Slip::KilogramsAsPounds),
        (600.0, Slip::DecimalPoint),
        (6.0, Slip::DecimalPoint),
    ] {
        let review = looked(&one(load), "2026-01-03");
        assert_eq!(review.findings.len(), 1, "{load}");
        assert_eq!(review.findings[0].what, Odd::LoadSlip { load: kg(load), expected: kg(60.0), slip });
        assert_eq!(review.findings[0].lift, Some(name("squat")));
    }
    for load in [128.0, 136.5, 62.5, 120.0, 30.0] {
        assert!(looked(&one(load), "2026-01-03").findings.is_empty(), "{load}");
    }
}

#[test]
fn a_load_that_stays_is_what_was_lifted() {
    let at = |loads: [f64; 4]| squats(4, move |session| set(loads[session]));
    assert_eq!(kinds(&looked(&at([60.0, 132.5, 60.0, 60.0]), "2026-02-01")), ["load_slip"]);
    assert_eq!(kinds(&looked(&at([60.0, 132.5, 132.5, 132.5]), "2026-02-01")), ["load_slip"]);
}

#[test]
fn an_override_to_the_other_unit_is_asked_about() {
    let given = |load| {
        EventKind::CoachOverride(
            Override::new(name("squat"), kg(load), name("coach"))
                .with_why(Some("one set".into()))
                .with_expires(day("2026-02-01")),
        )
    };
    let log = log_of([("2026-01-01", start()), ("2026-01-02", given(132.5))]);
    assert_eq!(kinds(&looked(&log, "2026-01-03")), ["load_slip"]);
    let log = log_of([("2026-01-01", start()), ("2026-01-02", given(62.5))]);
    assert!(looked(&log, "2026-01-03").findings.is_empty());
}

#[test]
fn twenty_sessions_without_a_doubt_tell_nothing_and_nineteen_are_not_asked_about() {
    let perfect = |_| {
        let marks = SetMarks::scored(5, 5, Rater::Coach).with("brace", Mark::Met).unwrap();
        set(60.0).with_marks(marks)
    };
    assert!(looked(&squats(19, perfect), "2026-06-01").findings.is_empty());
    let review = looked(&squats(20, perfect), "2026-06-01");
    assert_eq!(review.findings[0].what, Odd::PerfectScores { sessions: 20, since: day("2026-01-02") });
    // One mark in doubt, and they tell something again.
    let doubt = |at| if at == 10 { set(60.0) } else { perfect(at) };
    assert!(looked(&squats(25, doubt), "2026-06-01").findings.is_empty());
    // A second person who saw a fault is a doubt as well.
    let other = |at| {
        let seen = SetMarks::scored(5, 4, Rater::Video).with_rater_id(name("second"));
        perfect(at).with_also_marked(if at == 10 { vec![seen] } else { Vec::new() })
    };
    assert!(looked(&squats(25, other), "2026-06-01").findings.is_empty());
}

#[test]
fn sessions_that_nobody_marked_and_marks_of_the_lifter_alone_are_counted() {
    let unmarked = |number| move |at| set(60.0).with_marks(if at < number { None } else { set(60.0).marks });
    assert!(looked(&squats(20, unmarked(4)), "2026-06-01").findings.is_empty());
    let review = looked(&squats(20, unmarked(5)), "2026-06-01");
    let since = day("2026-01-02");
    assert_eq!(review.findings[0].what, Odd::Unscored { unscored: 5, sessions: 20, since });
    let own = |number| {
        move |at| {
            let marks = SetMarks::scored(5, 4, if at >= number { Rater::Lifter } else { Rater::Coach });
            set(60.0).with_marks(marks)
        }
    };
    // Sessions 7 to 11 of eleven are the lifter's own; the seventh is of 14 January.
    let review = looked(&squats(11, own(6)), "2026-06-01");
    assert_eq!(review.findings[0].what, Odd::OnlyOwnMarks { sessions: 5, since: day("2026-01-14") });
    assert!(looked(&squats(10, own(6)), "2026-06-01").findings.is_empty());
}

#[test]
fn five_overrides_in_twenty_sessions_are_many() {
    let log = |overrides: i32| {
        let mut log = squats(20, |_| set(60.0));
        for at in 0..overrides {
            let kind = EventKind::CoachOverride(
                Override::new(name("squat"), kg(59.0), name("coach")).with_expires(if at == 0 {
                    None
                } else {
                    Some(day("2026-03-01"))
                }),
            );
            let on = day("2026-01-05").plus(at).unwrap();
            log.events.push(Event::new(100 + at as u32, on, kind));
        }
        log
    };
    assert!(kinds(&looked(&log(4), "2026-06-01")).iter().all(|code| *code == "out_of_line"));
    let review = looked(&log(5), "2026-06-01");
    let since = day("2026-01-02");
    let many = Odd::ManyOverrides { overrides: 5, without_end: 1, sessions: 20, since };
    assert!(review.findings.iter().any(|oddity| oddity.what == many), "{review:?}");
}

#[test]
fn a_missed_repetition_with_much_in_reserve_is_asked_about() {
    let set = |effort, failed| squats(1, move |_| set(60.0).with_effort(effort).with_failed(failed));
    let rir = |reps| Effort::Rir(Rir::whole(reps));
    let rpe = |rating| Effort::Rpe(Rpe::new(rating).unwrap());
    for effort in [rir(2), rir(8), rpe(8.0), rpe(2.0)] {
        assert_eq!(kinds(&looked(&set(effort, true), "2026-02-01")), ["missed_with_reserve"]);
        assert!(looked(&set(effort, false), "2026-02-01").findings.is_empty());
    }
    for effort in [rir(0), rir(1), rpe(9.0), rpe(9.5), rpe(10.0)] {
        assert!(looked(&set(effort, true), "2026-02-01").findings.is_empty(), "{effort:?}");
    }
}

#[test]
fn the_same_session_twice_on_one_day_is_asked_about() {
    let squat = || squat(vec![set(60.0)]);
    let log = log_of([("2026-01-01", start()), ("2026-01-02", squat()), ("2026-01-02", squat())]);
    let review = looked(&log, "2026-01-02");
    assert_eq!(review.findings[0].what, Odd::SameSessionTwice { other: 2 });
    let log = log_of([("2026-01-01", start()), ("2026-01-02", squat()), ("2026-01-03", squat())]);
    assert!(looked(&log, "2026-01-03").findings.is_empty());
}

/// 12 January 2026 to 12 January 2029: 365 + 365 + 366 = 1 096 days, 2028 having a leap day.
#[test]
fn odd_days_are_asked_about() {
    let at = |days: [&'static str; 3]| log_of(days.map(|on| (on, weighed(80.0))));
    let one = |days, today| {
        let review = looked(&at(days), today);
        assert_eq!(review.findings.len(), 1, "{review:?}");
        (review.findings[0].event, review.findings[0].what.clone())
    };
    let after = one(["2026-01-05", "2026-01-12", "2026-01-20"], "2026-01-18");
    assert_eq!(after, (Some(3), Odd::AfterToday { days: 2 }));
    // The second was written down between two of January, and says March: 8 March is 47 days after 20 January.
    let out = one(["2026-01-05", "2026-03-08", "2026-01-20"], "2026-04-01");
    assert_eq!(out, (Some(2), Odd::OutOfLine { beside: day("2026-01-20"), days: 47 }));
    let out = one(["2026-01-05", "2026-01-12", "2025-11-20"], "2026-04-01");
    assert_eq!(out, (Some(3), Odd::OutOfLine { beside: day("2026-01-12"), days: 53 }));
    let gap = one(["2026-01-05", "2026-01-12", "2029-01-12"], "2029-04-01");
    assert_eq!(gap, (Some(3), Odd::LongGap { since: day("2026-01-12"), days: 1_096 }));
    assert!(looked(&at(["2026-01-05", "2026-01-12", "2029-01-11"]), "2029-04-01").findings.is_empty());
}

#[test]
fn what_ends_before_it_begins_and_an_odd_age_are_asked_about() {
    let clearance = EventKind::ClearanceRecorded(
        Clearance::new(ClearanceStatus::Cleared, name("clinic")).with_expires(day("2025-12-31")),
    );
    let review = looked(&log_of([("2026-01-05", clearance)]), "2026-01-05");
    assert_eq!(review.findings[0].what, Odd::EndsBeforeItBegins { end: day("2025-12-31") });
    for (born, years) in
        [("1925-01-04", Some(101)), ("1925-01-06", None), ("2008-01-05", None), ("2008-01-06", Some(17))]
    {
        let mut log = log_of([("2026-01-05", weighed(80.0))]);
        log.lifter.born = Some(day(born));
        let found = looked(&log, "2026-01-05").findings.first().map(|oddity| oddity.what.clone());
        assert_eq!(found, years.map(|years| Odd::OddAge { years }), "{born}");
    }
}

/// An answer is kept whatever it answers, so the review says of one that closed nothing.
#[test]
fn an_answer_without_a_question_is_asked_about() {
    let answer = || EventKind::AskAnswered(AskAnswered::new(Ask::Fall, name("clinic"), true));
    let fell = EventKind::DayReport(DayReport::default().with_asks(vec![Ask::Fall]));
    let on = ["2026-01-05", "2026-01-06", "2026-01-07", "2026-01-08"];
    let mut log = log_of(on.into_iter().zip([start(), fell, answer(), answer()]));
    let unasked = |log: &Log| {
        let found = looked(log, "2026-01-08").findings;
        let of_asks = found.into_iter().filter(|odd| odd.what.code() == "answer_without_question");
        of_asks.map(|odd| (odd.event, odd.what)).collect::<Vec<_>>()
    };
    let what = Odd::AnswerWithoutQuestion { ask: Ask::Fall };
    assert_eq!(unasked(&log), [(Some(4), what.clone())]);
    // The report is taken back: nothing was asked at all.
    log.events.push(Event::new(5, day("2026-01-08"), EventKind::Correction(Correction::new(2))));
    assert_eq!(unasked(&log), [(Some(4), what.clone()), (Some(3), what)]);
    let said = Words::plain().oddity(&looked(&log, "2026-01-08").findings[0]);
    assert!(said.contains("a fall") && said.contains("closed nothing"), "{said}");
}

#[test]
fn the_demo_log_is_looked_through() {
    let log = Log::from_json(include_str!("../../examples/data/demo-log.json")).unwrap();
    let review = review(&log, day("2026-08-28")).unwrap();
    assert_eq!(review.sessions, 196);
    assert!(review.missing.is_empty());
    let said = Words::plain().review(&review);
    said.iter().for_each(|said| is_careful(said));
    assert_eq!(kinds(&review), Vec::<&str>::new(), "{said:#?}");
}

/// Pounds stay pounds in what is said.
#[test]
fn a_review_is_said_in_the_unit_that_is_stated_and_in_another_language() {
    let log = log_of([("2026-01-05", weighed(80.0)), ("2026-01-12", weighed(88.0))]);
    let review = looked(&log, "2026-01-12");
    let words = Words::plain().in_unit(bismar::quantity::Unit::Lb);
    // 88 kg are 194.007 lb, 80 kg 176.370 lb.
    assert_eq!(
        words.oddity(&review.findings[0]),
        "Body mass on 12 Jan 2026 is 194 lb, 10 % off the 176.5 lb of 5 Jan 2026. Is it written as it was weighed?"
    );
    let own = Translation::new([("odd.mass_jump", "{day}: {to} statt {from} ({since}, {part})")]).unwrap();
    let said = Words::plain().translated(&own).oddity(&review.findings[0]);
    assert_eq!(said, "12 Jan 2026: 88 kg statt 80 kg (5 Jan 2026, 10 %)");
    assert!(Translation::new([("odd.mass_jump", "{day}: {to}")]).is_err());
    assert!(Translation::new([("odd.no_such", "?")]).is_err());
}

#[test]
fn every_kind_has_its_phrase() {
    let phrases = bismar::text::phrases();
    for code in Odd::CODES {
        assert!(phrases.iter().any(|(key, _)| *key == format!("odd.{code}")), "{code}");
    }
    let mut keys: Vec<&str> = phrases.iter().map(|(key, _)| key.as_str()).collect();
    keys.sort_unstable();
    keys.dedup();
    assert_eq!(keys.len(), phrases.len());
}
