//! A stop comes first in every form of the answer.

use bismar::caution::Caution;
use bismar::condition::DayClass;
use bismar::prescription::{Change, SessionPlan, Verdict, next_session};
use bismar::progression::MoveOutlook;
use bismar::reason::Reason;
use bismar::record::{DayReport, Event, EventKind, Lifter, Log, Plan, SymptomReport};
use bismar::sign::{Ask, StopSign};
use bismar::text::{self, Words};

use crate::careful::is_careful;
use crate::gym::{day, kg, name, parameters, session, today};

const EMERGENCY: [StopSign; 5] = [
    StopSign::ChestPain,
    StopSign::Breathlessness,
    StopSign::Headache,
    StopSign::OneSidedWeakness,
    StopSign::SaddleNumbness,
];
const RACK: &str = "ack the weight, sit down, end the session, and call for help if it does not pass in minutes or comes back.";

fn symptom(sign: StopSign) -> Reason {
    Reason::SymptomStop { signs: vec![sign], since: day() }
}

/// A session as wrong as one can be made: good news before, between and after the stop, and everything said twice.
fn badly_ordered(stop: Reason) -> SessionPlan {
    let stopped = |id: &str| {
        let mut lift = today(id, Verdict::Stop);
        lift.reasons = vec![Reason::DayAbove, Reason::Holding { sessions: 9 }, Reason::Stopped, stop.clone()];
        lift.outlook = MoveOutlook::Blocked { by: vec![stop.clone(), Reason::Stopped], to: None };
        lift.would_change = vec![Change::ClearanceAndSignOff];
        lift.cautions = vec![Caution::SeeClinicianFirst, Caution::GatesUnproven];
        lift
    };
    let mut other = today("dp", Verdict::Train);
    other.reasons = vec![Reason::DayAbove, Reason::Holding { sessions: 3 }];
    let mut session = session(vec![other, stopped("sq"), stopped("dl")]);
    session.day = DayClass::Above;
    session.cautions = vec![
        Caution::HoldingIsGood,
        Caution::ExaminesNobody,
        Caution::SeeClinicianFirst,
        Caution::EmergencySigns,
    ];
    session
}

fn good_news(said: &str) -> bool {
    let lower = said.to_lowercase();
    ["the work itself", "staying is as good", "good result", "planned load"]
        .iter()
        .any(|good| lower.contains(good))
}

#[test]
fn a_session_with_a_stop_begins_with_it_and_has_no_good_news() {
    let all = parameters();
    for words in [Words::plain(), Words::of(&all)] {
        let sheet = words.session(&badly_ordered(symptom(StopSign::ChestPain)));
        assert_eq!(sheet.stop[0], "Stop: chest pain or pressure, reported on 27 Aug 2026.");
        assert_eq!(sheet.stop[1], "Call emergency help now.");
        let said = sheet.to_string();
        assert!(said.starts_with(&sheet.stop[0]), "{said}");
        assert!(!good_news(&said), "{said}");
        for once in [
            "a clinician has cleared it",
            "See a clinician before lifting again",
            "chest pain or pressure, reported",
        ] {
            assert_eq!(said.matches(once).count(), 1, "{once}: {said}");
        }
        // The lists that a page shows by itself hold none of it either.
        assert!(
            !sheet
                .mind
                .iter()
                .chain(sheet.lifts.iter().flat_map(|lift| &lift.mind))
                .any(|line| good_news(line))
        );
        for stopped in sheet.lifts.iter().filter(|lift| lift.lift != name("dp")) {
            assert!(stopped.line.ends_with(": stop"), "{stopped:?}");
            assert!(stopped.step.is_none() && stopped.against.is_empty() && stopped.changes.is_empty());
            assert!(stopped.loading.is_none() && stopped.warm_up.is_none() && stopped.missing.is_empty());
        }
        // The signs of an emergency come before the one paragraph on the clinician.
        let clinician: Vec<usize> =
            (0..sheet.stop.len()).filter(|at| sheet.stop[*at].contains("linician")).collect();
        assert_eq!(clinician, [sheet.stop.len() - 1], "{:?}", sheet.stop);
        is_careful(&sheet.stop.join(" "));
    }
}

#[test]
fn a_session_without_a_stop_keeps_its_good_news() {
    let mut calm = session(vec![today("sq", Verdict::Train)]);
    calm.cautions = vec![Caution::HoldingIsGood];
    let sheet = Words::plain().session(&calm);
    assert!(sheet.stop.is_empty());
    assert!(sheet.to_string().starts_with("27 Aug 2026, a day within the usual\n"));
    assert!(good_news(&sheet.to_string()));
}

/// Beside a stop nothing is said of lowering, of practice or of the planned work.
#[test]
fn a_stopped_lift_is_asked_for_nothing() {
    let knee = || name("knee");
    let mut lift = today("sq", Verdict::Stop);
    lift.reasons = vec![
        Reason::PainStop { region: knee(), since: day(), features: Vec::new() },
        Reason::PainBlock { region: knee(), clear_sessions: 2, score: 4 },
        Reason::PainMissingAfterHigh { region: knee() },
        Reason::DayUnknown,
        Reason::EasyWeek,
        Reason::ClearanceExpired { on: day() },
    ];
    let sheet = Words::plain().session(&session(vec![lift]));
    assert_eq!(sheet.lifts[0].why, ["The clearance ran out on 27 Aug 2026."]);
}

/// A stop of a region whose lifts are not planned today still heads the session.
#[test]
fn a_stop_outside_the_session_is_said_too() {
    let mut other = session(vec![today("dp", Verdict::Train)]);
    other.cautions = vec![Caution::EmergencySigns, Caution::SeeClinicianFirst, Caution::HoldingIsGood];
    let sheet = Words::plain().session(&other);
    assert_eq!(sheet.stop[0], "Stop: a stop is in force that no lift of this session names.");
    assert!(!good_news(&sheet.to_string()));
}

/// Every single line about a stopped lift begins with the stop, names the sign, and says what to do at once.
#[test]
fn a_line_about_a_stopped_lift_begins_with_the_sign() {
    let line = |reason: Reason| {
        let mut lift = today("sq", Verdict::Stop);
        lift.reasons = vec![Reason::DayAbove, reason];
        assert_eq!(text::one_line(&lift), text::lift_line(&lift));
        text::lift_line(&lift)
    };
    for sign in EMERGENCY {
        let said = line(symptom(sign));
        assert!(
            said.starts_with(&format!("Stop: {}, reported on 27 Aug 2026.", text::stop_sign(sign))),
            "{said}"
        );
        assert!(said.contains("call emergency help now") && !said.contains(RACK), "{said}");
    }
    for sign in [StopSign::Heartbeat, StopSign::Vision] {
        let said = line(symptom(sign));
        assert!(said.contains(&format!("R{RACK}")) && !said.contains("emergency"), "{said}");
    }
    let faint = line(symptom(StopSign::Faint));
    assert!(
        faint.contains("call emergency help now") && faint.contains(&format!("near-faint only: r{RACK}")),
        "{faint}"
    );
    let pain = line(Reason::PainStop { region: name("knee"), since: day(), features: Vec::new() });
    assert!(pain.starts_with("Stop: pain in the knee, reported on 27 Aug 2026."), "{pain}");
    assert!(!pain.contains("emergency") && !good_news(&pain), "{pain}");
    // Beside its sign, the bare word that it is stopped is not said.
    assert_eq!(pain.matches("Stop:").count(), 1);
}

#[test]
fn the_gravest_stop_is_named_first() {
    let mut lift = today("sq", Verdict::Stop);
    lift.reasons = vec![
        Reason::AsksFirst { ask: Ask::Fever, since: day() },
        Reason::PainStop { region: name("knee"), since: day(), features: Vec::new() },
        symptom(StopSign::ChestPain),
    ];
    let said = text::lift_line(&lift);
    let at = |what: &str| said.find(what).unwrap_or_else(|| panic!("no {what} in {said}"));
    assert!(at("chest pain") < at("call emergency help"));
    assert!(at("call emergency help") < at("pain in the knee"));
    assert!(at("pain in the knee") < at("fever"));
    assert_eq!(said.matches("signed off").count(), 1);
}

fn log_with(kinds: Vec<EventKind>) -> Log {
    let mut log = Log::new(Lifter::new(name("invented")).with_invented(true));
    for (sequence, kind) in (1..).zip(kinds) {
        log.events.push(Event::new(sequence, day(), kind));
    }
    log
}

/// The same through the whole library: reported today, and a week later.
#[test]
fn a_sign_reported_in_a_log_heads_the_session_until_it_is_lifted() {
    let mut all = parameters();
    // Only what every equipment makes is of interest here.
    all.lifts.retain(|lift| lift.id == name("sq"));
    all.lifts[0].start.work.load = kg(60.0);
    all.pairs.clear();
    let report = SymptomReport::new(vec![StopSign::ChestPain]);
    let log = log_with(vec![
        EventKind::ParametersChanged(Box::new(all.clone())),
        EventKind::DayReport(DayReport::all_well(DayClass::Above)),
        EventKind::SymptomReport(report),
    ]);
    let plan = Plan::of([name("sq")]);
    let words = Words::of(&all);
    let first = words.session(&next_session(&log, &plan, day()).unwrap()).to_string();
    assert!(
        first.starts_with(
            "Stop: chest pain or pressure, reported on 27 Aug 2026.\nCall emergency help now.\n"
        ),
        "{first}"
    );
    assert!(!good_news(&first), "{first}");
    let later = words.session(&next_session(&log, &plan, day().plus(7).unwrap()).unwrap()).to_string();
    assert!(
        later.starts_with(
            "Stop: chest pain or pressure, reported on 27 Aug 2026.\nIf nobody has examined it yet"
        ),
        "{later}"
    );
}
