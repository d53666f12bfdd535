//! Reasons and cautions: a careful sentence for each, with its numbers.

use std::collections::BTreeSet;

use bismar::caution::Caution;
use bismar::quantity::{Mass, Name, Rir};
use bismar::reason::{NamedPlace, OverrideEnd, Reason, Restart, Shortfall, Unasked};
use bismar::sign::{Ask, PainFeature, StopSign};
use bismar::text::{self, Words};
use bismar::value::Value;

use crate::careful::is_careful;
use crate::gym::{DAY, day, kg, name, parameters, today};

/// Every reason, with what its sentence must tell: the numbers that it carries, or the rule that it stands for.
pub fn reasons() -> Vec<(Reason, Vec<&'static str>)> {
    let load = kg(52.5);
    let mut all = of_stops(name("left knee"));
    all.extend(of_pain(name("left knee"), load));
    all.extend(of_the_course(load));
    all.extend(of_waiting(name("left knee"), load));
    all.extend(of_the_work(load));
    all
}

fn of_stops(region: Name) -> Vec<(Reason, Vec<&'static str>)> {
    let since = day();
    let signs = |signs: &[StopSign]| Reason::SymptomStop { signs: signs.to_vec(), since };
    vec![
        (
            signs(&[StopSign::ChestPain]),
            vec![
                "stop: chest pain or pressure",
                DAY,
                "emergency help now",
                "every lift",
                "clinician",
                "signed off",
            ],
        ),
        (
            signs(&[StopSign::Vision]),
            vec![
                "stop: a sudden change in vision",
                "rack the weight, sit down, end the session, and call for help if it does not pass in minutes or comes back",
            ],
        ),
        (signs(&[]), vec!["stop", DAY, "not to train", "clinician"]),
        (
            Reason::PainStop { region: region.clone(), since, features: Vec::new() },
            vec!["stop: pain in the left knee", DAY, "clinician", "signed off"],
        ),
        (
            Reason::PainStop { region: region.clone(), since, features: vec![PainFeature::Numbness] },
            vec!["pain in the left knee (numbness or weakness)", DAY],
        ),
        (Reason::Stopped, vec!["stop", "clinician", "signed off"]),
        (Reason::LimitWithoutLift { region }, vec!["stop", "left knee", "clinician's new clearance"]),
        (Reason::ClearanceAfterIllness, vec!["stop", "illness", "clearance"]),
        (Reason::AsksFirst { ask: Ask::Fever, since }, vec!["stop: fever", DAY, "the coach's word"]),
        (Reason::AsksFirst { ask: Ask::Fall, since }, vec!["stop: a fall", DAY, "a clinician's word"]),
    ]
}

fn of_pain(region: Name, load: Mass) -> Vec<(Reason, Vec<&'static str>)> {
    let region = || region.clone();
    let lower = "lower until 2 or less, else stop this lift";
    vec![
        (
            Reason::PainBlock { region: region(), clear_sessions: 2, score: 5 },
            vec!["left knee", lower, "2 sessions"],
        ),
        (
            Reason::PainBlock { region: region(), clear_sessions: 1, score: 3 },
            vec!["left knee", lower, "1 session "],
        ),
        (Reason::PainBlock { region: region(), clear_sessions: 0, score: 3 }, vec!["left knee", lower]),
        (
            Reason::PainBlock { region: region(), clear_sessions: 2, score: 2 },
            vec!["left knee", "easier work, and if it goes above 2, stop this lift", "2 sessions"],
        ),
        (
            Reason::SignOffRefused {
                region: Some(region()),
                on: day(),
                why: bismar::reason::SignOffRefusal::NoClearance,
            },
            vec!["sign-off", DAY, "left knee", "no clearance"],
        ),
        (
            Reason::SignOffRefused {
                region: None,
                on: day(),
                why: bismar::reason::SignOffRefusal::ClearanceExpired,
            },
            vec!["sign-off", DAY, "had run out"],
        ),
        (Reason::PainPersists { region: region() }, vec!["left knee", "a clinician should look at it"]),
        (
            Reason::UsualPainUnsteady { region: region(), clear_sessions: 2 },
            vec!["left knee", "three sessions"],
        ),
        (Reason::UsualPainReview { region: region(), agreed: day() }, vec!["left knee", DAY]),
        (Reason::PainNotAsked { when: Unasked::NoSessionYet }, vec!["no session has asked about pain yet"]),
        (
            Reason::PainNotAsked { when: Unasked::LastSession },
            vec!["pain in the last session, and", "not the same as none"],
        ),
        (Reason::PainNotAsked { when: Unasked::Today }, vec!["pain today, and", "not the same as none"]),
        (
            Reason::PainNotAsked { when: Unasked::LastSessionAndToday },
            vec!["pain, in the last session or today", "not the same as none"],
        ),
        (Reason::PainMissingAfterHigh { region: region() }, vec!["left knee", "technique work only"]),
        (
            Reason::PairPain { region: Some(region()), score: Some(4), on: Some(day()) },
            vec!["pain of 4 in the left knee", DAY, "holds", "one step down"],
        ),
        (Reason::PairPain { region: None, score: None, on: None }, vec!["holds", "one step down"]),
        (Reason::AsksNotAsked, vec!["fever", "dizziness", "not the same as none"]),
        (Reason::NoLoadedFlexion, vec!["clearance", "spine"]),
        (Reason::NotCleared, vec!["clearance", "not to train"]),
        (Reason::ClearanceMissing, vec!["no clearance"]),
        (Reason::ClearanceExpired { on: day() }, vec!["clearance", DAY]),
        (Reason::ClearanceLimit { load }, vec!["clearance", "52.5 kg"]),
        (Reason::ClearanceRange, vec!["clearance", "range"]),
        (Reason::NoLimitsOnRecord, vec!["blood pressure"]),
        (Reason::DayBelow, vec!["below the usual", "signs that agree"]),
        (Reason::DayBelowSingle, vec!["below the usual", "first work set"]),
        (Reason::DayUnknown, vec!["below, within or above the usual", "no step up"]),
        (Reason::DayAbove, vec!["above the usual", "planned load"]),
        (Reason::QualifiedBelowUsual, vec!["below the usual", "within or above"]),
    ]
}

fn counted_anew(why: Restart) -> Reason {
    Reason::CountedAnew { since: day(), why }
}

fn of_the_course(load: Mass) -> Vec<(Reason, Vec<&'static str>)> {
    let criterion = Some(name("brace held"));
    vec![
        (Reason::PassProvisional { session: 41 }, vec!["morning after"]),
        (Reason::GateNotOpen, vec!["gate"]),
        (Reason::LearningNotDone { done: 2, needed: 6 }, vec!["2 of 6"]),
        (Reason::Consolidating, vec!["settling in"]),
        (Reason::SteppingBack, vec!["easier"]),
        (Reason::SteppedBack { from: load }, vec!["52.5 kg"]),
        (Reason::Resting, vec!["planned"]),
        (Reason::Returning { at_most: load }, vec!["break", "the 52.5 kg of before it"]),
        (Reason::Maintaining, vec!["on purpose"]),
        (Reason::MaintainingBand { not_below: load }, vec!["52.5 kg", "on plan"]),
        (Reason::ProbeDue { by: day(), criterion: None }, vec![DAY]),
        (Reason::ProbeDue { by: day(), criterion }, vec![DAY, "brace held"]),
        (Reason::ProbeOverdue { since: day(), criterion: None }, vec!["overdue since", DAY]),
        (
            Reason::ProbeOverdue { since: day(), criterion: Some(name("brace held")) },
            vec!["overdue since", DAY, "brace held"],
        ),
        (Reason::BelowBand { load: kg(45.0), not_below: load }, vec!["45 kg", "below the band", "52.5 kg"]),
        (Reason::Retired, vec!["no longer used"]),
        (Reason::Holding { sessions: 9 }, vec!["9 sessions", "the work itself"]),
        (counted_anew(Restart::Declined), vec![DAY, "declined"]),
        (counted_anew(Restart::OfferEnded), vec![DAY, "not taken in time"]),
        (counted_anew(Restart::BarChanged), vec![DAY, "the bar"]),
        (counted_anew(Restart::RaterChanged), vec![DAY, "another person"]),
        (counted_anew(Restart::SetupChanged), vec![DAY, "shoes"]),
        (counted_anew(Restart::GateChanged), vec![DAY, "the gate"]),
        (counted_anew(Restart::EquipmentChanged), vec![DAY, "the implement"]),
        (Reason::MoveOnOffer { until: day() }, vec![DAY, "taken or not"]),
        (Reason::MoveRefused { event: 77 }, vec!["refused"]),
        (Reason::OverrideRefused { event: 77 }, vec!["refused", "a reason and a last day"]),
        (Reason::OverridePast { last_day: day() }, vec!["refused", DAY, "was past"]),
        (Reason::StopLifted { on: day() }, vec!["a stop was lifted", DAY, "sign-off"]),
        (Reason::AfterIllness, vec!["illness", "easier"]),
        (Reason::AgeUnknown, vec!["age is not known"]),
        (Reason::EffortNotSaid { sessions: 2, more: 1 }, vec!["nobody said", "2 of the last three"]),
        (Reason::PairTogether { partner: name("deadlift") }, vec!["deadlift", "same day"]),
        (Reason::NotScored, vec!["marked"]),
        (Reason::MissNotPlaced, vec!["which repetition", "first set", "not known"]),
        (
            Reason::PinsMoved { from_mm: 500.0, to_mm: 400.4, on: day() },
            vec!["pins", "at 400 mm", DAY, "500 mm before"],
        ),
        (Reason::NotAtGrant { short: Shortfall::Rung }, vec!["another rung"]),
        (Reason::NotAtGrant { short: Shortfall::Range }, vec!["another range"]),
        (Reason::NotAtGrant { short: Shortfall::Tempo }, vec!["another tempo"]),
        (Reason::NotAtGrant { short: Shortfall::Load }, vec!["another load"]),
        (Reason::NotAtGrant { short: Shortfall::Sets }, vec!["fewer sets"]),
        (Reason::NotAtGrant { short: Shortfall::Reps }, vec!["fewer repetitions"]),
        (Reason::NotAtGrant { short: Shortfall::Limit }, vec!["less than the working load"]),
        (Reason::SetupChanged { since: day() }, vec![DAY, "not compared"]),
        (Reason::ReserveShort { sessions: 2, more: 1 }, vec!["reserve", "2 of the last three"]),
        (Reason::NeverTrained, vec!["not been trained yet"]),
        (Reason::Stale { days: 23, allowed: 21 }, vec!["23 days", "21"]),
    ]
}

fn of_waiting(region: Name, load: Mass) -> Vec<(Reason, Vec<&'static str>)> {
    vec![
        (Reason::CoolingOff { days_left: 1 }, vec!["1 more day."]),
        (Reason::CoolingOff { days_left: 4 }, vec!["4 more days."]),
        (Reason::RegionWindow { region, days_left: 3 }, vec!["left knee", "3 more days"]),
        (Reason::WindowCap { load, days_left: Some(6) }, vec!["52.5 kg", "6 more days"]),
        (Reason::WindowCap { load, days_left: None }, vec!["52.5 kg", "smaller step may fit"]),
        (Reason::PairCap { load }, vec!["52.5 kg", "forgiving"]),
        (Reason::PairProofMissing, vec!["forgiving"]),
        (Reason::PairWindow { days_left: 5 }, vec!["partner", "5 more days"]),
        (Reason::PairFault, vec!["same critical fault", "both"]),
        (Reason::PairRest { days: 0, needed: 2 }, vec!["0 full rest days", "2"]),
        (Reason::PairReview, vec!["nothing is blocked"]),
    ]
}

fn of_the_work(load: Mass) -> Vec<(Reason, Vec<&'static str>)> {
    let who = name("invented coach");
    let ended = |by| Reason::OverrideEnded { load, by, place: NamedPlace::default() };
    vec![
        (Reason::NoLoadableStep { cap: load, next: Some(kg(55.0)) }, vec!["52.5 kg", "55 kg"]),
        (Reason::NoLoadableStep { cap: load, next: None }, vec!["52.5 kg"]),
        (Reason::Ceiling { load }, vec!["52.5 kg"]),
        (Reason::BodyMassMissing, vec!["body mass"]),
        (Reason::AtTop, vec!["top"]),
        (Reason::NotOneStep, vec!["one step"]),
        (Reason::UnknownEventPresent { count: 1 }, vec!["1 event of", "stop"]),
        (Reason::UnknownEventPresent { count: 2 }, vec!["2 events", "stop"]),
        (Reason::AloneWithoutPins, vec!["pins", "no step up", "reserve"]),
        (Reason::RackNotAsked, vec!["nobody said", "no step up", "reserve"]),
        (Reason::PlannedBreak { until: Some(day()) }, vec!["planned break", DAY]),
        (Reason::PlannedBreak { until: None }, vec!["planned break", "last day"]),
        (Reason::IllUntil { until: day() }, vec!["illness", DAY]),
        (Reason::AfterBreak, vec!["planned break is over"]),
        (Reason::AskOfToday { ask: Ask::Fever }, vec!["fever", "answered", "no step"]),
        (Reason::HalfForLighter, vec!["nothing lighter", "half"]),
        (Reason::LeastThereIs, vec!["one repetition", "the least there is", "only if it feels easy"]),
        (ended(OverrideEnd::Break), vec!["52.5 kg", "no longer counts", "a break"]),
        (ended(OverrideEnd::Illness), vec!["52.5 kg", "an illness"]),
        (ended(OverrideEnd::Stop), vec!["52.5 kg", "a stop"]),
        (ended(OverrideEnd::StepBack), vec!["52.5 kg", "a step back"]),
        (ended(OverrideEnd::Step), vec!["52.5 kg", "the step up"]),
        (ended(OverrideEnd::Move), vec!["52.5 kg", "moved the lift"]),
        (ended(OverrideEnd::OtherImplement), vec!["52.5 kg", "another kind"]),
        (ended(OverrideEnd::PlaceGone), vec!["52.5 kg", "no longer there"]),
        (Reason::Layoff { gap: 12, row: 1, load }, vec!["12 days", "one step down"]),
        (Reason::Layoff { gap: 30, row: 2, load }, vec!["30 days", "working load is 52.5 kg"]),
        (
            Reason::HeldLower { days: 120, row: 4, load },
            vec!["120 days", "easier", "working load is 52.5 kg"],
        ),
        (Reason::HalfSets { sessions: 2 }, vec!["half the sets", "2 sessions"]),
        (Reason::OverrideInForce { load, who: who.clone(), until: None }, vec!["invented coach", "52.5 kg"]),
        (Reason::OverrideInForce { load, who, until: Some(day()) }, vec!["invented coach", "52.5 kg", DAY]),
        (Reason::OverrideSuspended { load }, vec!["52.5 kg", "waits", "pain"]),
        (Reason::EasyWeek, vec!["easy week"]),
        (Reason::BreakCounts { days: 8 }, vec!["8 days"]),
        (Reason::ReserveFloor { reserve: Rir::whole(4) }, vec!["4 in reserve"]),
        (Reason::RoundedDown { from: kg(53.25), to: load }, vec!["53.25 kg", "52.5 kg"]),
        (Reason::NothingLoadable { lightest: kg(20.0) }, vec!["20 kg"]),
        (Reason::NothingEasier, vec!["no easier rung", "left out today"]),
        (Reason::EasierRung { rung: name("high box") }, vec!["easier rung, high box"]),
        (Reason::HeightOff { mm: -62.4 }, vec!["62 mm too low"]),
        (Reason::HeightOff { mm: 37.0 }, vec!["37 mm too high"]),
        (
            Reason::HeightNotMade {
                height: bismar::quantity::Length::from_mm(325.0).unwrap(),
                off_mm: -100.0,
            },
            vec!["325 mm", "225 mm", "100 mm too low"],
        ),
        (
            Reason::OtherImplement { implement: name("bells"), load },
            vec!["another kind", "bells", "52.5 kg", "learned anew"],
        ),
        (Reason::HeightUnknown, vec!["height", "diameter"]),
        (Reason::ImplementUnavailable { implement: name("hex bar") }, vec!["hex bar"]),
        (Reason::ShortOfTime, vec!["nothing is added"]),
        (Reason::FewerSets { sets: 1 }, vec!["1 set."]),
        (Reason::PlanAsksLess, vec!["asks for less"]),
    ]
}

#[test]
fn every_reason_is_a_careful_sentence_with_its_numbers() {
    let reasons = reasons();
    let codes: BTreeSet<&str> = reasons.iter().map(|(reason, _)| reason.code()).collect();
    assert_eq!(codes, Reason::CODES.iter().copied().collect());
    let mut sentences = BTreeSet::new();
    for (reason, tells) in reasons {
        let said = text::reason(&reason);
        // A sentence begins with a capital, a number, or the name of who overruled.
        let overruled = matches!(reason, Reason::OverrideInForce { .. });
        assert!(said.ends_with('.') && (overruled || !said.starts_with(char::is_lowercase)), "{said}");
        for told in tells {
            assert!(said.to_lowercase().contains(told), "{told:?} is not in {said:?}");
        }
        is_careful(&said);
        assert!(sentences.insert(said), "{} says what another says", reason.code());
    }
}

/// A number that only the log knows says nothing to a person.
#[test]
fn no_sentence_shows_the_number_of_an_event() {
    for (reason, number) in
        [(Reason::PassProvisional { session: 41 }, "41"), (Reason::MoveRefused { event: 77 }, "77")]
    {
        assert!(!text::reason(&reason).contains(number), "{}", text::reason(&reason));
    }
}

#[test]
fn a_reason_is_written_under_its_code_and_read_again() {
    for (reason, _) in reasons() {
        let written = Value::write(&reason).unwrap();
        let bare = written == Value::Text(reason.code().into());
        assert!(bare || written.field(reason.code()).is_some(), "{written:?}");
        assert_eq!(written.read::<Reason>(), Ok(reason));
    }
}

#[test]
fn people_read_names_where_there_are_any() {
    let (all, lift) = (parameters(), today("sq", bismar::prescription::Verdict::Train));
    let words = Words::of(&all);
    let said = |reason: Reason| words.reason_for(&lift, &reason);
    let knee = said(Reason::PainPersists { region: name("knee-l") });
    assert!(knee.contains("left knee") && !knee.contains("knee-l"), "{knee}");
    let rung = said(Reason::EasierRung { rung: name("r0") });
    assert!(rung.contains("easier rung, high box"), "{rung}");
    assert_eq!(
        said(Reason::PairPain { region: Some(name("knee-l")), score: Some(4), on: Some(day()) }),
        "Pain of 4 in the left knee, which Back squat loads, was said on 27 Aug 2026: this lift holds and starts one step down."
    );
    assert_eq!(
        said(Reason::PairPain { region: None, score: None, on: None }),
        "Something that Back squat loads hurt: this lift holds and starts one step down."
    );
    assert_eq!(said(Reason::PairProofMissing), "Deadlift has no recent pass to lean on.");
    assert_eq!(words.lift_name(&name("dl")), "Deadlift");
    // Without parameters there is nothing but the id.
    assert_eq!(Words::plain().lift_name(&name("dl")), "dl");
}

#[test]
fn every_caution_is_one_sentence_of_its_own() {
    let said: BTreeSet<&str> = Caution::ALL.iter().map(|caution| text::caution(*caution)).collect();
    assert_eq!(said.len(), Caution::ALL.len());
    assert!(said.iter().all(|said| said.ends_with('.') && said.starts_with(char::is_uppercase)));
    said.iter().for_each(|said| is_careful(said));
    assert!(text::caution(Caution::HoldingIsGood).contains("nobody has to add weight"));
}

/// What is printed is never above a limit that stands beside it.
#[test]
fn a_load_that_is_rounded_down_is_not_printed_above_what_it_was() {
    let from = bismar::quantity::Mass::from_kg(50.4).unwrap();
    let reason = Reason::RoundedDown { from, to: bismar::quantity::Mass::from_kg(50.0).unwrap() };
    let said = text::reason(&reason);
    assert!(said.contains("50.25 kg") && !said.contains("50.5"), "{said}");
}
