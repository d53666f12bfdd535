//! What is in force, and what a change of the log would open.

use bismar::answers::{
    Diary, HigherLoad, InForce, Lacking, Opens, Restriction, StopGone, in_force, in_force_from, opens,
};
use bismar::condition::DayClass;
use bismar::error::Code;
use bismar::prescription::{LiftToday, SessionPlan, Verdict, next_session};
use bismar::quantity::{Day, Pain, Rpe, Tempo};
use bismar::record::*;
use bismar::sign::{Ask, StopSign};
use bismar::text::{Show, Words};
use proptest::prelude::*;

use crate::made::all_careful;
use crate::world::{World, kg, mm, name, parameters};

fn limited(limits: Vec<ClearanceLimits>) -> EventKind {
    let given = Clearance::new(ClearanceStatus::ClearedWithLimits, name("clinic"));
    EventKind::ClearanceRecorded(given.with_limits(limits))
}

fn to_region(region: &str) -> ClearanceLimits {
    ClearanceLimits::default().with_region(name(region))
}

fn symptom(signs: &[StopSign]) -> EventKind {
    EventKind::SymptomReport(SymptomReport::new(signs.to_vec()))
}

fn pain(region: &str, score: u8) -> EventKind {
    EventKind::PainReport(PainAnswer::plain(name(region), Pain::new(score).unwrap()))
}

fn asked(ask: Ask) -> EventKind {
    EventKind::DayReport(DayReport::default().with_asks(vec![ask]))
}

fn away(from: Day, to: Option<Day>, reason: LayoffReason) -> EventKind {
    EventKind::LayoffNoted(Layoff::new(from, reason).with_to(to))
}

fn word(load: f64) -> EventKind {
    EventKind::CoachOverride(Override::new(name("squat"), kg(load), name("coach")))
}

fn rest() -> EventKind {
    EventKind::RoleSet(RoleSet::new(name("squat"), Role::Rest))
}

fn ceiling(load: f64) -> EventKind {
    let mut all = parameters();
    all.lifts[0].ceiling = Some(kg(load));
    EventKind::ParametersChanged(Box::new(all))
}

/// A squat at 60 kg and a press at 40 kg, cleared without limits.
fn world() -> World {
    World::new(parameters())
}

fn with(kinds: &[EventKind]) -> World {
    let mut world = world();
    kinds.iter().for_each(|kind| world.add(kind.clone()));
    world
}

fn last(world: &World) -> u32 {
    world.log.events.last().unwrap().sequence
}

fn found(world: &World) -> InForce {
    let found = in_force(&world.log, world.day).unwrap();
    all_careful(&found.show(&Words::of(&parameters())));
    assert_eq!(found, in_force_from(&world.state(), world.day).unwrap());
    assert_eq!(found, Diary::of(&world.log).unwrap().in_force(world.day).unwrap());
    found
}

fn supposing(world: &World, kind: &EventKind) -> Opens {
    let found = opens(&world.log, world.day, Some(kind), None).unwrap();
    all_careful(&found.show(&Words::of(&parameters())));
    found
}

/// What taking the last event back would open.
fn undone(world: &World) -> Opens {
    supposing(world, &EventKind::Correction(Correction::new(last(world))))
}

/// Stops that would be gone, and whether they would be taken back.
fn told(found: &Opens) -> Vec<(Restriction, bool)> {
    found.stops_gone.iter().map(|gone| (gone.stop.clone(), gone.taken_back)).collect()
}

#[test]
fn an_empty_log_names_what_is_missing_and_opens_nothing() {
    let log = Log::new(Lifter::new(name("invented")));
    let today = world().day;
    let found = in_force(&log, today).unwrap();
    assert!(found.restrictions.is_empty() && found.stops.is_empty());
    assert_eq!(found.missing, [Lacking::Parameters, Lacking::Clearance]);
    let found = opens(&log, today, None, None).unwrap();
    assert!(found.is_empty());
    assert_eq!(found.missing, [Lacking::Parameters, Lacking::Clearance]);
    assert!(in_force(&world().log, today).unwrap().restrictions.is_empty());
}

/// Each by itself: told while it is in force, and told by the undo that would end it.
#[test]
fn each_stop_is_in_force_and_taken_back_by_its_undo() {
    let since = world().day;
    for (kind, stops) in [
        (
            symptom(&[StopSign::Faint, StopSign::Headache]),
            vec![
                Restriction::Sign { sign: StopSign::Faint, since },
                Restriction::Sign { sign: StopSign::Headache, since },
            ],
        ),
        (pain("knee", 8), vec![Restriction::Pain { region: name("knee"), since }]),
        (asked(Ask::Fall), vec![Restriction::Asked { ask: Ask::Fall, since }]),
        (away(since, None, LayoffReason::Ill), vec![Restriction::Illness { since }]),
        (
            EventKind::ClearanceRecorded(Clearance::new(ClearanceStatus::NotCleared, name("clinic"))),
            vec![Restriction::NotToTrain { since }],
        ),
    ] {
        let world = with(core::slice::from_ref(&kind));
        assert_eq!(found(&world).restrictions, stops);
        let gone: Vec<StopGone> = undone(&world).stops_gone;
        assert!(gone.iter().all(|gone| gone.taken_back), "{kind:?}");
        assert_eq!(gone.into_iter().map(|gone| gone.stop).collect::<Vec<_>>(), stops);
    }
}

#[test]
fn what_is_lifted_by_a_word_is_not_taken_back() {
    let mut world = with(&[symptom(&[StopSign::Faint])]);
    world.clear();
    let signed = SignOff::new(name("coach"), SignOffScope::Everything);
    let found = supposing(&world, &EventKind::CoachSignOff(signed));
    let stop = Restriction::Sign { sign: StopSign::Faint, since: world.day };
    assert_eq!(told(&found), [(stop, false)]);
    let said = found.show(&Words::of(&parameters()));
    assert!(
        said.iter().any(|line| line.starts_with("A stop would no longer be in force: fainting")),
        "{said:?}"
    );
}

/// A sign stays in force where one of two reports of it is taken back; the same of an illness told of another first day.
#[test]
fn what_is_told_twice_stays_where_one_is_taken_back() {
    let mut world = with(&[symptom(&[StopSign::Faint]), symptom(&[StopSign::Faint, StopSign::Vision])]);
    let gone = undone(&world).stops_gone;
    assert_eq!(gone[0].stop, Restriction::Sign { sign: StopSign::Vision, since: world.day });
    assert_eq!(gone.len(), 1);
    let ill = |day| away(day, None, LayoffReason::Ill);
    world = with(&[ill(world.day)]);
    let earlier = Correction::new(last(&world)).with_kind(Box::new(ill(world.day.plus(-1).unwrap())));
    assert!(supposing(&world, &EventKind::Correction(earlier)).stops_gone.is_empty());
}

/// A sign that is told after a refusal takes nothing of it back, and its undo leaves the refusal.
#[test]
fn a_refusal_stays_beside_a_sign() {
    let refused =
        || EventKind::ClearanceRecorded(Clearance::new(ClearanceStatus::NotCleared, name("clinic")));
    let since = world().day;
    let (sign, not_to_train) =
        (Restriction::Sign { sign: StopSign::Faint, since }, Restriction::NotToTrain { since });
    let world = with(&[refused(), symptom(&[StopSign::Faint])]);
    assert_eq!(found(&world).restrictions, [sign.clone(), not_to_train.clone()]);
    assert_eq!(told(&undone(&world)), [(sign.clone(), true)]);
    let undo = Correction::new(last(&world) - 1);
    assert_eq!(told(&supposing(&world, &EventKind::Correction(undo))), [(not_to_train, true)]);
    // A newer clearance answers the refusal; the sign stops on.
    let mut cleared = with(&[refused()]);
    cleared.clear();
    assert!(supposing(&cleared, &symptom(&[StopSign::Faint])).is_empty());
}

/// An operation noted for next month stops nothing yet, and whoever takes it back is told.
#[test]
fn an_illness_noted_in_advance_is_told_when_it_is_taken_back() {
    let from = world().day.plus(30).unwrap();
    let world = with(&[away(from, None, LayoffReason::Ill)]);
    let stop = Restriction::Illness { since: from };
    let now = found(&world);
    assert_eq!((now.restrictions.as_slice(), now.stops.len()), ([stop.clone()].as_slice(), 0));
    let said = now.show(&Words::of(&parameters()));
    assert_eq!(said[0], "From 4 Feb 2026 on: an illness or operation, with no new clearance yet.");
    assert_eq!(told(&undone(&world)), [(stop, true)]);
}

/// A limit of the knee stops every lift once no lift loads the knee; giving it back to one opens them.
#[test]
fn a_limit_without_a_lift_stops_and_opens() {
    let mut elsewhere = parameters();
    elsewhere.lifts[0].regions = vec![name("back")];
    let mut world = with(&[limited(vec![to_region("knee").with_load(kg(30.0))])]);
    world.add(EventKind::ParametersChanged(Box::new(elsewhere)));
    // The lift keeps the region that is limited, so the lift itself has to go.
    let mut gone = parameters();
    gone.lifts.remove(0);
    world.add(EventKind::ParametersChanged(Box::new(gone)));
    let stop = Restriction::LimitWithoutLift { region: name("knee"), since: world.day };
    assert!(found(&world).restrictions.contains(&stop));
    let back = supposing(&world, &EventKind::ParametersChanged(Box::new(parameters())));
    assert_eq!(told(&back), [(stop, false)]);
}

#[test]
fn each_part_of_a_limit_is_one_and_stays_where_another_holds_it() {
    let first = limited(vec![
        to_region("knee").with_load(kg(30.0)).with_range(mm(400.0)),
        ClearanceLimits::default().with_effort(Rpe::new(6.0).unwrap()).with_no_breath_hold(true),
        to_region("back").with_no_loaded_flexion(true),
    ]);
    let world = with(&[first]);
    let part = |limit: ClearanceLimits| Restriction::Limit { limit };
    let parts = [
        part(to_region("knee").with_load(kg(30.0))),
        part(to_region("knee").with_range(mm(400.0))),
        part(ClearanceLimits::default().with_effort(Rpe::new(6.0).unwrap())),
        part(ClearanceLimits::default().with_no_breath_hold(true)),
        part(to_region("back").with_no_loaded_flexion(true)),
    ];
    assert_eq!(found(&world).restrictions, parts);
    assert_eq!(undone(&world).gone, parts);
    // 25 kg everywhere holds 30 kg of the knee; a rating of 7 does not hold 6; another range holds none.
    let everywhere = ClearanceLimits::default().with_load(kg(25.0)).with_effort(Rpe::new(7.0).unwrap());
    let newer = limited(vec![
        everywhere.with_no_breath_hold(true),
        to_region("knee").with_range(mm(300.0)),
        to_region("knee").with_no_loaded_flexion(true),
    ]);
    assert_eq!(supposing(&world, &newer).gone, [parts[1].clone(), parts[2].clone(), parts[4].clone()]);
    let said = found(&world).show(&Words::of(&parameters()));
    assert_eq!(said[0], "In force: a limit of 30 kg for the knee at every place.");
    assert_eq!(said[2], "In force: a limit of effort 6 of 10 for every lift.");
}

#[test]
fn a_break_a_rest_a_word_and_a_ceiling_are_in_force_and_end_by_their_undo() {
    let today = world().day;
    let (from, until) = (today.plus(5).unwrap(), today.plus(9).unwrap());
    let granted = world().state().lift_state(&name("squat")).unwrap().grant();
    for (kind, restriction) in [
        (away(today, None, LayoffReason::Planned), Restriction::PlannedBreak { until: None }),
        (away(from, Some(until), LayoffReason::Planned), Restriction::PlannedBreak { until: Some(until) }),
        (
            EventKind::CoachOverride(
                Override::new(name("squat"), kg(40.0), name("coach"))
                    .with_why(Some("to look at one set".into()))
                    .with_expires(until),
            ),
            Restriction::Word {
                who: name("coach"),
                lift: name("squat"),
                place: granted.place,
                load: kg(40.0),
                until: Some(until),
            },
        ),
        (rest(), Restriction::Rest { lift: name("squat") }),
        (ceiling(70.0), Restriction::Ceiling { lift: name("squat"), load: kg(70.0) }),
    ] {
        let world = with(&[kind]);
        assert_eq!(found(&world).restrictions, core::slice::from_ref(&restriction));
        let opens = undone(&world);
        assert_eq!((opens.gone, opens.stops_gone), (vec![restriction], vec![]));
    }
    // A word without an end takes the place of the grant, so the granted load is what opens.
    let opens = undone(&with(&[word(40.0)]));
    let [HigherLoad::Granted { lift, from, to }] = opens.higher.as_slice() else { panic!("{opens:?}") };
    assert_eq!((lift, from.load(), to), (&name("squat"), kg(40.0), &granted));
    // A higher ceiling opens as well, a lower one does not.
    let world = with(&[ceiling(70.0)]);
    let one = Restriction::Ceiling { lift: name("squat"), load: kg(70.0) };
    assert_eq!(supposing(&world, &ceiling(75.0)).gone, [one]);
    assert!(supposing(&world, &ceiling(65.0)).is_empty());
}

/// Two breaks that end on one day: without the longer one its first days open, whatever the other still says of the last ones.
#[test]
fn breaks_are_compared_day_by_day() {
    let on = |days: i32| world().day.plus(days).unwrap();
    for (reason, gone) in [
        (LayoffReason::Planned, Restriction::PlannedBreak { until: Some(on(24)) }),
        (LayoffReason::Ill, Restriction::IllUntil { until: on(24) }),
    ] {
        let world = with(&[away(on(5), Some(on(24)), reason), away(on(19), Some(on(24)), reason)]);
        let undo = |sequence| supposing(&world, &EventKind::Correction(Correction::new(sequence))).gone;
        assert_eq!(undo(last(&world) - 1), [gone], "{reason:?}");
        assert_eq!(undo(last(&world)), [], "the first holds all of the second");
    }
}

/// As a ceiling or a limit, whatever is followed by something no less careful is not gone.
#[test]
fn a_lower_word_and_a_longer_break_open_nothing() {
    let on = |days: i32| world().day.plus(days).unwrap();
    let until = |load: f64, days: i32| {
        let given = Override::new(name("squat"), kg(load), name("coach"));
        EventKind::CoachOverride(given.with_why(Some("to look at one set".into())).with_expires(on(days)))
    };
    let kinds = |world: &World, kind: &EventKind| -> Vec<&str> {
        supposing(world, kind).gone.iter().map(Restriction::kind).collect()
    };
    let told = with(&[until(40.0, 9)]);
    assert!(supposing(&told, &until(30.0, 9)).is_empty());
    assert!(supposing(&told, &word(30.0)).is_empty(), "it is what is granted then");
    assert_eq!(kinds(&told, &until(30.0, 5)), ["word"], "it ends earlier");
    assert_eq!(kinds(&told, &until(45.0, 9)), ["word"]);
    let planned = |to: Option<i32>| away(world().day, to.map(on), LayoffReason::Planned);
    let told = with(&[planned(Some(9))]);
    assert!(supposing(&told, &planned(Some(15))).is_empty());
    assert!(supposing(&told, &planned(None)).is_empty());
    assert!(supposing(&told, &away(world().day, Some(on(12)), LayoffReason::Ill)).is_empty());
    assert_eq!(kinds(&told, &planned(Some(5))), ["planned_break"]);
    assert_eq!(kinds(&with(&[planned(None)]), &planned(Some(5))), ["planned_break"]);
}

/// Invented settings that ask for more at one load: each way is told, and the other way round opens nothing.
#[test]
fn more_than_load_is_told() {
    type Change = fn(&mut LiftParameters);
    let places: Change = |lift| {
        lift.ranges = vec![mm(300.0), mm(500.0)];
        lift.tempos = vec![Tempo::new(2, 0, 1), Tempo::new(4, 0, 1)];
    };
    let ways: [(Change, &str); 5] = [
        (|lift| lift.start.work.sets = 3, "Squat: work of 3 x 5 at 60 kg (full, "),
        (|lift| lift.start.work.reps = 6, "Squat: work of 2 x 6 at 60 kg (full"),
        (|lift| lift.start.place.range = 1, "Squat: a working load of 60 kg (full, range 500 mm"),
        (|lift| lift.start.place.tempo = 1, "Squat: a working load of 60 kg (full, range 300 mm"),
        (|lift| lift.start.place.rung = 1, "Squat: a working load of 60 kg (full, range 300 mm"),
    ];
    for (at, (more, says)) in ways.into_iter().enumerate() {
        let (mut less, mut all) = (parameters(), parameters());
        for all in [&mut less, &mut all] {
            places(&mut all.lifts[0]);
        }
        more(&mut all.lifts[0]);
        if at == 4 {
            less.lifts[0].start.place.rung = 0;
        }
        let mut worlds = [less, all.clone()].map(World::new);
        worlds.iter_mut().for_each(|world| world.day_report(DayClass::Within));
        let [less, more] = &worlds;
        let found = opens(&less.log, less.day, None, Some(&more.log)).unwrap();
        let [HigherLoad::Granted { lift, from, to }] = found.higher.as_slice() else {
            panic!("{at}: {found:?}")
        };
        assert!(*lift == name("squat") && from != to, "{at}");
        let said = found.show(&Words::of(&all));
        assert!(said[0].starts_with(says), "{said:?}");
        assert!(opens(&more.log, more.day, None, Some(&less.log)).unwrap().is_empty(), "{at}");
    }
}

/// Nobody can tell whether a lift without ranges keeps a limit of range, so that it is left out: whoever ends the limit is told what opens.
#[test]
fn a_lift_that_is_left_out_and_would_be_trained_is_told() {
    let world = with(&[limited(vec![to_region("knee").with_range(mm(400.0))])]);
    assert_eq!(world.today("squat").verdict, Verdict::Rest);
    let cleared = EventKind::ClearanceRecorded(Clearance::new(ClearanceStatus::Cleared, name("clinic")));
    let found = supposing(&world, &cleared);
    assert!(found.stops_gone.is_empty());
    let [HigherLoad::Today { lift, from: None, to }] = found.higher.as_slice() else { panic!("{found:?}") };
    assert_eq!((lift, to.load()), (&name("squat"), kg(60.0)));
}

/// Entries of a newer version hold every step, so that it is not said that nothing narrows.
#[test]
fn entries_that_cannot_be_read_are_in_force() {
    let unread = UnknownEvent::new("of_a_newer_version".into(), bismar::value::Value::Bool(true));
    let mut world = world();
    world.log.version += 1;
    world.add(EventKind::Unknown(unread));
    let kinds = |all: &[Restriction]| all.iter().map(Restriction::kind).collect::<Vec<_>>();
    let now = found(&world);
    assert_eq!(kinds(&now.restrictions), ["unknown_events"]);
    let said = now.show(&Words::of(&parameters()));
    assert!(said[0].starts_with("In force: entries of a newer version"), "{said:?}");
    assert_eq!(kinds(&undone(&world).gone), ["unknown_events"]);
}

/// Some call a region with its article.
#[test]
fn a_region_with_its_article_has_one() {
    let mut all = parameters();
    all.regions[0].name = Some(name("the left knee"));
    let words = Words::of(&all);
    let region = name("knee");
    let since = world().day;
    for (restriction, said) in [
        (Restriction::Pain { region: region.clone(), since }, "pain in the left knee"),
        (
            Restriction::LimitWithoutLift { region, since },
            "a limit for the left knee, which no lift here loads",
        ),
        (Restriction::Pain { region: name("back"), since }, "pain in the back"),
    ] {
        assert_eq!(words.restriction(&restriction), said);
    }
}

/// 60 kg are granted, and a limit of 30 kg holds: without it today's squat is at 60 kg, whatever is granted.
#[test]
fn a_load_of_today_that_goes_up_is_told_once() {
    let mut world = with(&[limited(vec![to_region("knee").with_load(kg(30.0))])]);
    world.day_report(DayClass::Within);
    let mut freed = world.clone();
    freed.clear();
    let found = supposing(&world, &freed.log.events.last().unwrap().kind);
    let [HigherLoad::Today { lift, from: Some(from), to }] = found.higher.as_slice() else {
        panic!("{found:?}")
    };
    assert_eq!((lift, from.load(), to.load()), (&name("squat"), kg(30.0), kg(60.0)));
    let said = found.show(&Words::of(&parameters()));
    assert_eq!(said[0], "A limit of 30 kg for the knee at every place is no longer in force then.");
    assert_eq!(said[1], "Squat: 60 kg (full) today then, and not 30 kg (full).");
    // The other way round the limit opens nothing.
    let back = opens(&freed.log, freed.day, None, Some(&world.log)).unwrap();
    assert!(back.is_empty());
    assert_eq!(opens(&world.log, world.day, None, Some(&freed.log)).unwrap().higher, found.higher);
}

#[test]
fn taking_the_settings_back_is_told() {
    let mut log = Log::new(Lifter::new(name("invented")));
    let day = world().day;
    log.events.push(Event::new(1, day, EventKind::ParametersChanged(Box::new(parameters()))));
    let found = opens(&log, day, Some(&EventKind::Correction(Correction::new(1))), None).unwrap();
    assert!(found.unsets && !found.is_empty());
}

#[test]
fn a_day_before_the_last_event_of_either_log_is_refused() {
    let (world, mut later) = (world(), world());
    later.wait(3).day_report(DayClass::Within);
    let code = |refused: Result<Opens, bismar::Error>| refused.unwrap_err().code();
    assert_eq!(code(opens(&world.log, world.day, None, Some(&later.log))), Code::BeforeLastEvent);
    assert_eq!(code(opens(&later.log, world.day, None, Some(&world.log))), Code::BeforeLastEvent);
    assert_eq!(in_force(&later.log, world.day).unwrap_err().code(), Code::BeforeLastEvent);
    let nobody = EventKind::RoleSet(RoleSet::new(name("lunge"), Role::Rest));
    assert_eq!(code(opens(&world.log, world.day, Some(&nobody), None)), Code::UnknownLift);
}

/// What is worse opens nothing.
fn worse() -> impl Strategy<Value = EventKind> {
    let sign = prop::sample::select(StopSign::ALL.to_vec()).prop_map(|sign| symptom(&[sign]));
    let ask = prop::sample::select(Ask::ALL.to_vec()).prop_map(asked);
    let region = prop::sample::select(vec!["knee", "back", "shoulder", "neck"]);
    let hurts = (region, 5_u8..=10).prop_map(|(region, score)| pain(region, score));
    prop_oneof![sign, ask, hurts, Just(rest())]
}

fn any_event() -> impl Strategy<Value = EventKind> {
    let today = world().day;
    let ahead = |reason| {
        (0..20_i32, prop::option::of(0..20_i32)).prop_map(move |(from, long)| {
            let from = today.plus(from).unwrap();
            away(from, long.map(|long| from.plus(long).unwrap()), reason)
        })
    };
    let limit = (prop::option::of(prop::sample::select(vec!["knee", "shoulder"])), 20..60_u8, 4..9_u8)
        .prop_map(|(region, load, effort)| {
            let limit = region.map_or_else(ClearanceLimits::default, to_region);
            limited(vec![
                limit.with_load(kg(f64::from(load))).with_effort(Rpe::new(f64::from(effort)).unwrap()),
            ])
        });
    let cleared = Clearance::new(ClearanceStatus::Cleared, name("clinic"));
    let refused = Clearance::new(ClearanceStatus::NotCleared, name("clinic"));
    prop_oneof![
        3 => worse(),
        1 => limit,
        1 => ahead(LayoffReason::Planned),
        1 => ahead(LayoffReason::Ill),
        1 => (20..60_u8).prop_map(|load| word(f64::from(load))),
        1 => (1..3_u8, 0..2_u8).prop_map(|(sets, rung)| {
            let to = Grant::new(Work::new(sets, 5, kg(60.0))).with_place(Place::at_rung(rung));
            EventKind::VariantChanged(Move::new(name("squat"), to, name("coach")))
        }),
        1 => (40..90_u8).prop_map(|load| ceiling(f64::from(load))),
        1 => Just(EventKind::ClearanceRecorded(cleared)),
        1 => Just(EventKind::ClearanceRecorded(refused)),
        1 => Just(EventKind::DayReport(DayReport::all_well(DayClass::Within))),
        1 => Just(EventKind::CoachSignOff(SignOff::new(name("coach"), SignOffScope::Everything))),
        1 => Just(EventKind::CoachSignOff(SignOff::new(name("coach"), SignOffScope::Region(name("knee"))))),
    ]
}

fn of_all(log: &Log, on: Day) -> SessionPlan {
    next_session(log, &Plan::of([name("squat"), name("press")]), on).unwrap()
}

/// A lift that was stopped or left out and is not, or is done with more: load, a harder place, or sets or repetitions at no less load.
fn does_more(now: &SessionPlan, then: &SessionPlan) -> bool {
    let all = parameters();
    now.lifts.iter().zip(&then.lifts).any(|(now, then)| {
        let freed = now.verdict >= Verdict::Rest && then.verdict < now.verdict;
        let done = |lift: &LiftToday| {
            let load = lift.load.filter(|_| lift.sets > 0)?;
            Some(Grant::new(Work::new(lift.sets, lift.reps, load)).with_place(lift.place))
        };
        let more = |from: Grant, to: Grant| {
            let harder = all.lift(&now.lift).unwrap().harder_in(&from, &to);
            harder.into_iter().any(|what| match what {
                Dimension::Sets | Dimension::Reps => to.load() >= from.load(),
                _ => true,
            })
        };
        freed
            || more(now.granted, then.granted)
            || done(then).is_some_and(|to| done(now).is_none_or(|from| more(from, to)))
    })
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(160) })]

    #[test]
    fn what_is_worse_opens_nothing(events in prop::collection::vec(any_event(), 0..6), one in worse()) {
        let mut world = world();
        for kind in events {
            let _ = world.try_add(kind);
        }
        let found = opens(&world.log, world.day, Some(&one), None).unwrap();
        prop_assert!(found.stops_gone.is_empty() && found.gone.is_empty() && found.higher.is_empty(), "{found:?}");
    }

    /// Whatever is taken back: where a lift would do more, or what was in force is not, today or on a day to come, it is told.
    #[test]
    fn nothing_opens_in_silence(events in prop::collection::vec(any_event(), 1..7), which in any::<prop::sample::Index>()) {
        let mut world = world();
        for kind in events {
            let _ = world.try_add(kind);
        }
        let told: Vec<u32> = world.log.events.iter().skip(1).map(|event| event.sequence).collect();
        let undo = EventKind::Correction(Correction::new(told[which.index(told.len())]));
        let mut then = world.clone();
        prop_assume!(then.try_add(undo.clone()).is_ok());
        let found = opens(&world.log, world.day, Some(&undo), None).unwrap();
        prop_assert_eq!(&found, &opens(&world.log, world.day, None, Some(&then.log)).unwrap());
        let more = (0..25).step_by(6).any(|ahead| {
            let on = world.day.plus(ahead).unwrap();
            does_more(&of_all(&world.log, on), &of_all(&then.log, on))
        });
        if more {
            prop_assert!(!found.is_empty(), "{undo:?} of {:?}", world.log.events);
        }
        let (now, later) = (in_force(&world.log, world.day).unwrap(), in_force(&then.log, world.day).unwrap());
        for one in now.restrictions {
            // A stop is the same whenever it was told, and a limit may be held by another: both have tests of their own.
            let same = |other: &Restriction| {
                other == &one
                    || (one.kind() == other.kind()
                        && (one.stops_since().is_some() || matches!(one, Restriction::Limit { .. } | Restriction::Ceiling { .. })))
            };
            let told = found.gone.contains(&one) || found.stops_gone.iter().any(|gone| gone.stop == one);
            prop_assert!(told || later.restrictions.iter().any(same), "{one:?}");
        }
    }
}
