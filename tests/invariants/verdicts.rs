//! One verdict about a step, in whatever is said of a lift on one day: it is on offer, or there is none today. Held against the
//! sentences of every answer, over courses at random.

use super::course::*;
use super::moves::crate_cases;
use bismar::answers::Diary;
use bismar::condition::DayClass;
use bismar::prescription::{LiftToday, Verdict, next_session_from};
use bismar::record::Plan;
use bismar::text::Words;
use proptest::strategy::{Strategy, ValueTree};
use proptest::test_runner::{Config, RngAlgorithm, TestRng, TestRunner};

const ON_OFFER: &str = "is on offer";
const NOT_TODAY: [&str; 3] = ["No step today", "not for today", "not today"];
/// Words for a load as if it were today's limit, or for a step as if it were free to take.
const NEVER: [&str; 3] = ["may be taken", "not above", "up to today"];

/// What is wrong with texts that are read beside each other about one lift on one day; `verdicts` are those of them that give
/// the verdict, each by itself.
fn wrong(texts: &[String], verdicts: &[String]) -> Option<String> {
    let holds = |text: &String, words: &[&str]| words.iter().any(|one| text.contains(one));
    let offered = texts.iter().find(|text| holds(text, &[ON_OFFER]));
    let refused = texts.iter().find(|text| holds(text, &NOT_TODAY));
    if let (Some(offered), Some(refused)) = (offered, refused) {
        return Some(format!("both {offered:?} and {refused:?}"));
    }
    if let Some(text) = texts.iter().find(|text| holds(text, &NEVER)) {
        return Some(format!("as if it were free: {text:?}"));
    }
    let count = |text: &String| text.matches(ON_OFFER).count() + text.matches(NOT_TODAY[0]).count();
    verdicts.iter().find(|text| count(text) != 1).map(|text| format!("{} verdicts: {text:?}", count(text)))
}

/// A load from before a break or a stop that is heavier than today's is called so.
fn wrong_load(words: &Words<'_>, lift: &LiftToday) -> Option<String> {
    let told = |reason| words.reason_for(lift, reason);
    let (limit, back) = (lift.load?, lift.reasons.iter().filter(|reason| reason.code() == "returning"));
    let heavier = |said: &String| said.contains(" past the ") && !said.contains("of before it");
    back.map(told).find(heavier).map(|said| format!("{limit:?} beside {said:?}"))
}

/// Everything that is said of that lift on that day, and those that hold the verdict.
fn said(course: &Course, at: usize) -> (Vec<String>, Vec<String>, Option<String>) {
    let (state, today) = (course.state(), course.day);
    let id = course.set().lifts[at].id.clone();
    let plan = Plan::of([id]);
    let words = Words::of(course.set());
    let session = next_session_from(state, &plan, today).unwrap();
    let lift = &session.lifts[0];
    let (sheet, line) = (words.session(&session).to_string(), words.one_line(lift));
    let verdicts = match lift.verdict {
        Verdict::Stop => Vec::new(),
        _ => vec![sheet.clone(), line.clone()],
    };
    let mut texts = vec![sheet, line, words.lift_line(lift)];
    texts.extend(lift.reasons.iter().map(|reason| words.reason_for(lift, reason)));
    texts.extend(words.changes(lift));
    let load = wrong_load(&words, lift);
    (texts, verdicts, load)
}

/// What other answers about the whole log say beside it.
fn beside(course: &Course) -> Vec<String> {
    let (words, today) = (Words::of(course.set()), course.day);
    let diary = Diary::of(&course.log).unwrap();
    let plan = Plan::of(course.set().lifts.iter().map(|lift| lift.id.clone()));
    let mut texts = words.missed(&diary.missed(&plan, today, None).unwrap());
    texts.extend(words.easy_week(&diary.easy_week(Some(&plan), today).unwrap()));
    texts.extend(words.review(&diary.review(today)));
    texts.extend(words.block_review(&diary.block_review(today, None).unwrap()));
    texts.extend(words.day_answer(&diary.day(today, None).unwrap()));
    for pair in &course.set().pairs {
        let answer = diary.pair(&pair.strict, &pair.forgiving, today, None).unwrap();
        texts.extend(words.pair_answer(&answer));
    }
    texts
}

#[test]
fn one_verdict_about_a_step_and_no_load_that_is_not_for_today() {
    let mut runner =
        TestRunner::new_with_rng(Config::default(), TestRng::deterministic_rng(RngAlgorithm::ChaCha));
    let (mut offered, mut refused, mut found) = (0, 0, Vec::new());
    for case in 0..crate_cases().max(100) {
        let drawn = any_course().new_tree(&mut runner).unwrap().current();
        let mut course = Course::of(&drawn);
        let asked_about = |course: &Course| format!("case {case} on {}", course.day);
        // As it stands, on the next day, and once the questions of that day were asked and nothing speaks against it.
        for (days, asked) in [(0, false), (1, false), (0, true)] {
            course.day = course.day.plus(days).unwrap();
            if asked {
                course.day_report(DayClass::Within, true);
            }
            let others = beside(&course);
            if let Some(text) = others.iter().find(|text| NEVER.iter().any(|word| text.contains(word))) {
                found.push(format!("{}: {text:?}", asked_about(&course)));
            }
            for at in 0..course.set().lifts.len() {
                let (texts, verdicts, load) = said(&course, at);
                offered += usize::from(texts[1].contains(ON_OFFER));
                refused += usize::from(texts[1].contains(NOT_TODAY[0]));
                let what = wrong(&texts, &verdicts).or(load);
                found.extend(what.map(|what| format!("{} lift {at}: {what}", asked_about(&course))));
            }
        }
    }
    assert!(found.is_empty(), "{} wrong\n{}", found.len(), found.join("\n"));
    assert!(offered > 5 && refused > 50, "{offered} on offer, {refused} not today");
}

/// The check itself finds two verdicts, a step that is free to take beside one, and none at all.
#[test]
fn the_check_of_one_verdict_finds_what_is_wrong() {
    let texts = |all: &[&str]| all.iter().map(|text| (*text).to_owned()).collect::<Vec<_>>();
    let check = |all: &[&str]| wrong(&texts(all), &texts(&all[..1]));
    assert_eq!(check(&["No step today. The gate is not open yet."]), None);
    assert_eq!(check(&["A step to 62.5 kg is on offer; staying is as good."]), None);
    for all in [
        ["No step today.", "A step to 62.5 kg is on offer."],
        ["A step to 62.5 kg is on offer.", "It is not for today."],
        ["No step today.", "A step may be taken."],
        ["No step today.", "Coming back, not above 60 kg."],
        ["No step today. No step today.", ""],
        ["Nothing is said.", ""],
    ] {
        assert!(check(&all).is_some(), "{all:?}");
    }
}
