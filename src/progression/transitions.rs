//! Every state with every event: the table in the documentation is made by this test, so that it cannot drift.

use std::fmt::Write as _;
use std::path::PathBuf;
use std::string::{String, ToString};
use std::vec::Vec;

use super::exploration::{Act, settled, statuses, world_at};
use super::status::Status;

/// The acts of the table, in its order.
fn acts() -> impl Iterator<Item = Act> {
    let elsewhere = |act: &Act| {
        matches!(
            act,
            Act::WaitThree
                | Act::TwoUp
                | Act::RungUpLighter
                | Act::RangeUpHeavier
                | Act::ForgivingFail
                | Act::PainBack
        )
    };
    Act::ALL.into_iter().filter(move |act| !elsewhere(act))
}

/// What becomes of the strict lift; an event that is turned away changes nothing.
fn after(status: &Status, act: Act) -> &'static str {
    let point = world_at(status);
    settled(&point.after(act).unwrap_or(point).state)
}

/// Days without training that make a break of the second row.
const GAP: i32 = 30;

/// What time alone makes of the strict lift in so many days without training.
fn after_days(status: &Status, days: i32) -> &'static str {
    let point = world_at(status);
    settled(&point.state.as_of(point.on.plus(days).unwrap()))
}

/// What becomes of the strict lift in each state, with pain and clearance in order unless the act says otherwise.
fn table() -> String {
    let mut text = String::from(
        "What becomes of a lift, by its state and what happens. The lift has a partner, one fail behind it where that \
         matters, an open gate where it is ready to advance, and nothing that blocks. An empty cell means that the \
         state stays. Made by a test from the code itself.\n\n| what happens |",
    );
    for name in Status::NAMES {
        let _ = write!(text, " {name} |");
    }
    text.push_str("\n|---|");
    text.push_str(&"---|".repeat(Status::NAMES.len()));
    text.push('\n');
    for act in acts() {
        let _ = write!(text, "| {act} |");
        for status in statuses() {
            let after = after(&status, act);
            let cell = if after == status.as_str() { "" } else { after };
            let _ = write!(text, " {cell} |");
        }
        text.push('\n');
    }
    let _ = write!(text, "| {GAP} days without training, before the next session |");
    for status in statuses() {
        let after = after_days(&status, GAP);
        let cell = if after == status.as_str() { "" } else { after };
        let _ = write!(text, " {cell} |");
    }
    text.push('\n');
    text
}

#[test]
fn the_transition_table_is_what_the_code_does() {
    let path: PathBuf = [env!("CARGO_MANIFEST_DIR"), "src", "guide", "transitions.md"].iter().collect();
    let made = table();
    if std::env::var_os("BISMAR_UPDATE").is_some() {
        std::fs::create_dir_all(path.parent().unwrap()).unwrap();
        std::fs::write(&path, &made).unwrap();
    }
    let kept = std::fs::read_to_string(&path).unwrap_or_default();
    assert!(kept == made, "src/guide/transitions.md is out of date; run with BISMAR_UPDATE=1");
}

fn at(name: &str) -> Status {
    statuses().into_iter().find(|status| status.as_str() == name).unwrap()
}

#[test]
fn nothing_but_a_sign_off_leaves_a_stop() {
    let leaves = |act: &Act| matches!(act, Act::SignOff | Act::StrictLeftOut);
    for act in acts().filter(|act| !leaves(act)) {
        assert_eq!(after(&at("stopped_refer"), act), "stopped_refer", "{act}");
    }
}

#[test]
fn the_table_shows_the_ways_on() {
    for (status, act, then) in [
        ("ready_to_advance", Act::AcceptStrict, "consolidating"),
        ("ready_to_advance", Act::OneUp, "consolidating"),
        ("stopped_refer", Act::SignOff, "returning"),
        ("holding", Act::OtherImplement, "learning"),
        ("holding", Act::StrictLeftOut, "set aside"),
    ] {
        let point = world_at(&at(status));
        let id = crate::quantity::Name::new("strict").unwrap();
        assert_eq!(after(&at(status), act), then, "{act}: {:?}", point.state.blockers(&id, None, point.on));
    }
}

/// A stop, a lift that is given up and one that the coach rests stay what they are; any other comes back lower.
#[test]
fn a_gap_of_days_leads_to_a_way_back() {
    for status in statuses() {
        let rests = matches!(status, Status::Resting { .. });
        let stays = rests || matches!(status, Status::StoppedRefer { .. } | Status::Retired);
        let then = if stays { status.as_str() } else { "returning" };
        assert_eq!(after_days(&status, GAP), then, "{}", status.as_str());
    }
}

#[test]
fn every_kind_of_event_is_among_the_acts() {
    let point = world_at(&Status::Holding);
    let played: Vec<&str> = Act::ALL.into_iter().filter_map(|act| act.kind_name(&point.state)).collect();
    for kind in crate::record::EventKind::NAMES {
        assert!(played.contains(kind), "{kind}");
    }
    assert!(played.contains(&"unknown"));
}

#[test]
fn every_state_takes_every_act() {
    let names: Vec<String> = acts().map(|act| act.to_string()).collect();
    assert!(names.len() >= 90 && statuses().len() == 10);
    for status in statuses() {
        for act in Act::ALL {
            let point = world_at(&status);
            let state = point.after(act).unwrap_or(point).state;
            assert!(state.lifts.iter().all(|lift| lift.now.grant.load().is_positive()), "{act}");
        }
    }
}
