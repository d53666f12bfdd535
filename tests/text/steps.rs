//! A lift in one line, and the one verdict about a step.

use bismar::prescription::{Change, Verdict};
use bismar::progression::MoveOutlook;
use bismar::quantity::Mass;
use bismar::reason::Reason;
use bismar::text::{self, Words};
use bismar::value::Value;

use crate::gym::{changed, day, kg, parameters, session, today};

#[test]
fn a_lift_is_one_line_and_nothing_to_lift_stands_beside_rest_and_stop() {
    let line = |verdict, load| text::lift_line(&changed(today("squat", verdict), |lift| lift.load = load));
    assert_eq!(line(Verdict::Train, Some(kg(50.0))), "squat, rung 1: train, 50 kg, 3 x 5, leave 3");
    assert_eq!(
        line(Verdict::EaseOff, Some(kg(-20.5))),
        "squat, rung 1: ease off, 20.5 kg of help, 3 x 5, leave 3"
    );
    for load in [None, Some(Mass::ZERO)] {
        assert_eq!(
            line(Verdict::TechniqueOnly, load),
            "squat, rung 1: technique only, no load, 3 x 5, leave 3"
        );
    }
    // Even a load left in the answer is not shown where nobody is to lift.
    assert_eq!(line(Verdict::Rest, Some(kg(50.0))), "squat: rest");
    assert_eq!(line(Verdict::Stop, Some(kg(50.0))), "Stop: squat.");
    for verdict in [Verdict::Train, Verdict::EaseOff, Verdict::TechniqueOnly, Verdict::Rest, Verdict::Stop] {
        // The stable name is the one that is written, and people read it without its line.
        assert_eq!(Value::write(&verdict), Ok(Value::Text(verdict.as_str().into())));
        assert_eq!(verdict.as_str().replace('_', " "), text::verdict(verdict));
    }
}

#[test]
fn dumbbells_count_one_by_one_and_a_lift_that_is_its_only_rung_is_named_once() {
    let all = parameters();
    let line = |id: &str, load| {
        Words::of(&all).lift_line(&changed(today(id, Verdict::Train), |lift| lift.load = Some(load)))
    };
    assert_eq!(line("dp", kg(12.0)), "Dumbbell press, high box: train, 12 kg each, 3 x 5, leave 3");
    assert_eq!(line("pu", kg(-25.0)), "Pull-up: train, 25 kg of help, 3 x 5, leave 3");
}

#[test]
fn a_step_on_offer_is_not_urged_and_a_blocked_one_names_every_reason() {
    let mut lift = today("squat", Verdict::Train);
    lift.reasons = vec![Reason::MoveOnOffer { until: day() }];
    assert_eq!(
        text::one_line(&lift),
        "A step to 62.5 kg (rung 1) is on offer until 27 Aug 2026; staying is as good."
    );
    let by = vec![Reason::GateNotOpen, Reason::CoolingOff { days_left: 2 }];
    lift.outlook = MoveOutlook::Blocked { by, to: None };
    lift.would_change = vec![Change::GateOpens, Change::Days { count: 2 }];
    assert_eq!(
        text::one_line(&lift),
        "No step today. The technique gate is not open yet. The last step was recent: 2 more days. A step needs the \
         lifter and the coach to meet the other conditions of the gate. A step needs the coach to wait 2 more days."
    );
}

/// Whatever is said of a step in one answer, it is said once: on offer, or not today.
#[test]
fn there_is_one_verdict_about_a_step() {
    let all = parameters();
    let words = Words::of(&all);
    let blocked = MoveOutlook::Blocked { by: vec![Reason::DayUnknown], to: None };
    let offered = MoveOutlook::OnOffer { to: crate::gym::grant(0, kg(62.5)) };
    for verdict in [Verdict::Train, Verdict::EaseOff, Verdict::TechniqueOnly, Verdict::Rest] {
        for outlook in [&blocked, &offered] {
            let mut lift = changed(today("sq", verdict), |lift| lift.outlook = outlook.clone());
            lift.reasons = vec![Reason::MoveOnOffer { until: day() }];
            let said = words.session(&session(vec![lift.clone()])).to_string();
            let (on_offer, not_today) =
                (said.matches("on offer").count(), said.matches("No step today").count());
            assert_eq!(on_offer + not_today, 1, "{said}");
            assert!(!said.contains("may be taken"), "{said}");
            // The reason alone says what the whole says.
            let alone = words.reason_for(&lift, &Reason::MoveOnOffer { until: day() });
            let blocked = matches!(outlook, MoveOutlook::Blocked { .. });
            assert_eq!(alone.contains("not for today"), blocked, "{alone}");
            assert!(!alone.contains("may be taken") && !alone.contains("on offer"), "{alone}");
        }
    }
}

/// 60 kg was the load before the break; today is 54 kg, and 60 kg is no limit of today.
#[test]
fn a_load_that_is_not_for_today_is_not_said_as_if_it_were() {
    let all = parameters();
    let mut lift = today("dp", Verdict::EaseOff);
    (lift.load, lift.limit) = (Some(kg(54.0)), kg(54.0));
    lift.granted = crate::gym::grant(0, kg(54.0));
    lift.reasons =
        vec![Reason::Layoff { gap: 30, row: 2, load: kg(54.0) }, Reason::Returning { at_most: kg(60.0) }];
    lift.outlook = MoveOutlook::Blocked { by: vec![Reason::Returning { at_most: kg(60.0) }], to: None };
    let said = Words::of(&all).session(&session(vec![lift])).to_string();
    let with_sixty: Vec<&str> = said.lines().filter(|line| line.contains("60 kg")).collect();
    assert!(!with_sixty.is_empty(), "{said}");
    for line in with_sixty {
        assert!(line.contains("of before it") && !line.contains("not above"), "{line}");
    }
}

/// A gate may be open by its count while the last session did not pass; then it is not called closed.
#[test]
fn an_open_gate_is_not_called_closed() {
    let mut lift = today("squat", Verdict::Train);
    assert!(Words::plain().reason_for(&lift, &Reason::GateNotOpen).contains("not open"));
    lift.gate.open = true;
    assert_eq!(
        Words::plain().reason_for(&lift, &Reason::GateNotOpen),
        "A step waits for the next passing session."
    );
}

/// Pain of today closes what the gate asks of a region: where the step is not for today, the gate is not called open.
#[test]
fn a_step_that_is_not_for_today_is_said_without_an_open_gate() {
    let mut lift = today("squat", Verdict::Train);
    let region = bismar::quantity::Name::new("left knee").unwrap();
    let by = vec![Reason::PainBlock { region, clear_sessions: 2, score: 4 }];
    lift.outlook = MoveOutlook::Blocked { by, to: None };
    let said = Words::plain().reason_for(&lift, &Reason::MoveOnOffer { until: day() });
    assert!(!said.contains("gate") && !said.contains("may be taken"), "{said}");
    assert!(said.contains("not for today") && said.contains("27 Aug 2026"), "{said}");
}

/// The step that closed the window may have been the lift's own.
#[test]
fn a_region_that_had_its_step_is_said_whichever_lift_took_it() {
    let region = bismar::quantity::Name::new("shoulder").unwrap();
    let said = Words::plain().reason(&Reason::RegionWindow { region, days_left: 6 });
    assert!(!said.to_lowercase().contains("another lift"), "{said}");
    assert!(said.contains("shoulder") && said.contains("6 more days"), "{said}");
}
