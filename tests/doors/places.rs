//! Rule 14: every line that names a load names the place, in the text of every door.
//!
//! A line names a load where a number stands before the unit of masses. It names the place where it holds the place of the lift
//! that it is about in words: rung, range and tempo, as far as the lift has them. That is the lift that the line names, or that
//! heads what it stands below, or that was asked about; the rungs of no two lifts are called alike here, so that the place of another lift
//! is none. The only lines that need none:
//!
//! - those of [`OTHER_MASSES`], whose masses are no load of a lift at a place: of a body, of all work of a week, of a
//!   difference, of a goal for later years, or of a limit that says itself that it holds at every place;
//! - the warm-up sets and the discs that are moved, where the line above all of them carries the place: the heading, or the
//!   load that is made of the discs.

use bismar::answers::{
    Diary, PairLoads, SetsToday, Sharing, block_review, compare, curve, day as day_door, easy_week, handover,
    history, in_force, missed, next_set, opens, pair, rack, raters, review, share, trend, verdicts, week,
    year,
};
use bismar::condition::DayClass;
use bismar::horizon::{Age, Phase};
use bismar::loading::{Disc, Stock, Tolerance};
use bismar::prescription::next_session;
use bismar::progression::{MoveOutlook, fold};
use bismar::quantity::{Day, Name, Rir, Unit};
use bismar::reason::{Reason, Told};
use bismar::record::*;
use bismar::text::{Show, Translation, Words, phrases};
use bismar::value::Value;

use crate::made::{day, log_of, monday, of, session, sets, with_helped_pull_up};
use crate::world::{World, kg, lift, mm, name, parameters};

/// What a line says whose masses are no load of a lift at a place.
const OTHER_MASSES: &[&str] = &[
    "Body mass ",
    " in all.",
    "more than usual, ",
    "less than usual, ",
    "Usual is ",
    " a week, ",
    "Two estimates closer than ",
    " heavier.",
    "By the table of repetitions",
    " at 70.",
    "if it goes as asked",
    "at every place",
    "whatever the rung, range or tempo",
    "at no place past",
    "for every place",
];
/// Lines that stand below their heading or their load.
const UNDER_A_HEADING: &[&str] = &["Warm-up ", " on at each end.", " off at each end."];

/// A number before a unit of masses.
fn names_a_mass(line: &str) -> bool {
    [" kg", " lb"].iter().any(|unit| {
        line.match_indices(unit).any(|(at, _)| line[..at].ends_with(|letter: char| letter.is_ascii_digit()))
    })
}

fn has_one_of(line: &str, parts: &[&str]) -> bool {
    parts.iter().any(|part| line.contains(part))
}

/// What was seen in all texts, so that nobody can pass by saying nothing.
#[derive(Default)]
struct Seen {
    placed: usize,
    headed: usize,
    others: Vec<&'static str>,
}

impl Seen {
    /// Holds every line to the rule. `about` is the lift asked about, where it is one.
    fn look(&mut self, door: &str, said: &[String], lifts: &[Placed], about: Option<&Name>) {
        let mut headed = false;
        let mut headed_by = lifts.iter().find(|lift| Some(&lift.id) == about);
        for line in said.iter().flat_map(|said| said.lines()).map(str::trim) {
            let mut about = named_in(line, lifts);
            let heads = |lift: &&&Placed| {
                let after =
                    line.to_lowercase().strip_prefix(&lift.called).map(|rest| rest.starts_with([',', ':']));
                after == Some(true)
            };
            headed_by = about.iter().find(heads).copied().or(headed_by);
            about.extend(headed_by);
            let places: Vec<&String> = about.iter().flat_map(|lift| &lift.places).collect();
            let placed = places.iter().any(|place| line.contains(place.as_str()));
            let below = has_one_of(line, UNDER_A_HEADING);
            if !below {
                headed = placed;
            }
            if !names_a_mass(line) {
                continue;
            }
            if placed {
                let most = places.iter().map(|place| line.matches(place.as_str()).count()).max();
                assert!(most <= Some(2), "{door}: the place again and again in {line:?}");
                self.placed += 1;
            } else if below {
                assert!(headed, "{door}: no heading above {line:?} in {said:#?}");
                self.headed += 1;
            } else {
                let other = OTHER_MASSES.iter().find(|part| line.contains(**part));
                let about: Vec<&Name> = about.iter().map(|lift| &lift.id).collect();
                self.others.push(
                    other.unwrap_or_else(|| panic!("{door}: no place of {about:?} in {line:?} of {said:#?}")),
                );
            }
        }
    }

    /// All doors of a log on a day, with a plan of all lifts.
    fn all_doors(&mut self, log: &Log, plan: Option<&Plan>, today: Day, unit: Unit) {
        let log = &with_rungs_apart(log);
        let diary = Diary::of(log).unwrap();
        let all = diary.state().parameters().unwrap().clone();
        let plain = Plan::of(all.lifts.iter().map(|lift| lift.id.clone()));
        let plan = plan.unwrap_or(&plain);
        let planned: Vec<&Name> = plan.lifts.iter().map(|lift| &lift.lift).collect();
        {
            let words = Words::of(&all).in_unit(unit);
            let places = places(&all, &words);
            let mut look =
                |door: &str, answer: &dyn Show| self.look(door, &answer.show(&words), &places, None);
            look("next_session", &next_session(log, plan, today).unwrap());
            let easy = plan.clone().with_easy_week(true);
            look("next_session", &next_session(log, &easy, today).unwrap());
            look("day", &day_door(log, today, None).unwrap());
            look("verdicts", &verdicts(log, today).unwrap());
            look("week", &week(log, today).unwrap());
            look("easy_week", &easy_week(log, Some(plan), today).unwrap());
            look("missed", &missed(log, plan, today, None).unwrap());
            look("raters", &raters(log, None, today).unwrap());
            look("review", &review(log, today).unwrap());
            look("block_review", &block_review(log, today, None).unwrap());
            look("handover", &handover(log, today, today.plus(-60).unwrap()).unwrap());
            look("history", &history(log, None, today).unwrap());
            look("in_force", &in_force(log, today).unwrap());
            // Whatever a coach or a clinician wrote down last, taken back.
            if let Some(last) = log.events.last().filter(|_| log.events.len() > 1) {
                let undo = EventKind::Correction(Correction::new(last.sequence));
                let _ = opens(log, today, Some(&undo), None).map(|found| look("opens", &found));
            }
            look("year", &year(log, plan, today, None, None).unwrap());
            let phases = Phase::hold(Age::new(70.0).unwrap());
            look("year", &year(log, plan, today, None, Some(&phases)).unwrap());
            for id in planned.iter().copied() {
                let mut look =
                    |door: &str, answer: &dyn Show| self.look(door, &answer.show(&words), &places, Some(id));
                look("trend", &trend(log, id, today, None).unwrap());
                look("curve", &curve(log, id, today).unwrap());
                let granted = fold(log).unwrap().lift_state(id).unwrap().grant();
                let eased = granted.on_rung(0).with_load(kg(granted.load().kg() / 2.0));
                look("compare", &compare(log, id, today, &eased, None).unwrap());
                look("rack", &rack(log, plan, id, today, Some(&Tolerance::Iwf)).unwrap());
                let sharing = Sharing::new(log.clone(), plan.clone(), id.clone());
                if let Ok(shared) = share(&[sharing], today) {
                    look("share", &shared);
                }
                let load = fold(log).unwrap().lift_state(id).unwrap().grant().load();
                for (load, left) in [(load, 3), (load, 0), (kg(load.kg() / 2.0), 5)] {
                    let sets = sets(1, load.kg(), 5, left);
                    for sets in [sets, Vec::new()] {
                        let done = SetsToday::new(id.clone(), sets).with_pain(Vec::new());
                        look("next_set", &next_set(log, plan, today, &done).unwrap());
                        let mut by_table = plan.clone();
                        for lift in &mut by_table.lifts {
                            lift.rule = Some(SetRule::RepetitionTable);
                        }
                        look("next_set", &next_set(log, &by_table, today, &done).unwrap());
                    }
                }
            }
            for both in &all.pairs {
                let mut look =
                    |door: &str, answer: &dyn Show| self.look(door, &answer.show(&words), &places, None);
                let loads = None::<&PairLoads>;
                look("pair", &pair(log, &both.strict, &both.forgiving, today, loads).unwrap());
            }
        }
        self.translated(log, plan, today);
    }

    /// Reasons by a translation: each of its loads has the place as well, where it does not hold at every place.
    fn translated(&mut self, log: &Log, plan: &Plan, today: Day) {
        let all = fold(log).unwrap().parameters().unwrap().clone();
        let texts = phrases();
        let reasons = texts.iter().filter(|(key, _)| key.starts_with("reason."));
        let own = Translation::new(reasons.map(|(key, text)| (key.as_str(), text.as_str()))).unwrap();
        let words = Words::of(&all).translated(&own);
        for lift in next_session(log, plan, today).unwrap().lifts {
            let by = match &lift.outlook {
                MoveOutlook::Blocked { by, .. } => by.as_slice(),
                _ => &[],
            };
            let everywhere = |reason: &&Reason| {
                matches!(
                    reason,
                    Reason::Ceiling { .. } | Reason::ClearanceLimit { .. } | Reason::Returning { .. }
                )
            };
            for reason in lift.reasons.iter().chain(by).filter(|reason| !everywhere(reason)) {
                if reason.values().iter().any(|(_, told)| matches!(told, Told::Mass(_))) {
                    let said = words.reason_for(&lift, reason);
                    let places = places(&all, &words);
                    // What caps a lift may be what another one has shown.
                    let named = named_in(&said, &places);
                    let own = |placed: &&Placed| {
                        placed.id == lift.lift || named.iter().any(|one| one.id == placed.id)
                    };
                    let mut own = places.iter().filter(own).flat_map(|lift| &lift.places);
                    assert!(own.any(|place| said.contains(place.as_str())), "{said:?} of {}", lift.lift);
                    self.placed += 1;
                }
            }
        }
    }
}

/// A lift: what it is called, and every place of it in words, in parentheses or behind its name.
struct Placed {
    id: Name,
    called: String,
    places: Vec<String>,
}

fn places(all: &Parameters, words: &Words<'_>) -> Vec<Placed> {
    let numbers = |entries: usize| 0..u8::try_from(entries.max(1)).unwrap();
    let of = |set: &LiftParameters| {
        let mut places = Vec::new();
        for rung in numbers(set.rungs.len()) {
            for range in numbers(set.ranges.len()) {
                for tempo in numbers(set.tempos.len()) {
                    let place = Place::at_rung(rung).with_range(range).with_tempo(tempo);
                    let said = words.place(&set.id, place);
                    assert!(!said.is_empty(), "{} has no place to tell", set.id);
                    places.extend([format!("({said}"), format!(", {said}")]);
                }
            }
        }
        Placed { id: set.id.clone(), called: words.lift_name(&set.id).to_lowercase(), places }
    };
    all.lifts.iter().map(of).collect()
}

/// The lifts that a line names; of two names of which one holds the other, the longer.
fn named_in<'a>(line: &str, lifts: &'a [Placed]) -> Vec<&'a Placed> {
    let mut line = line.to_lowercase();
    let mut longest: Vec<&Placed> = lifts.iter().collect();
    longest.sort_by_key(|lift| std::cmp::Reverse(lift.called.len()));
    longest
        .into_iter()
        .filter(|lift| {
            let named = line.contains(&lift.called);
            line = line.replace(&lift.called, "");
            named
        })
        .collect()
}

/// The same log with rungs that are called after the number of their lift: no two lifts have a place in common.
fn with_rungs_apart(log: &Log) -> Log {
    let mut log = log.clone();
    let mut seen: Vec<Name> = Vec::new();
    for event in &mut log.events {
        let EventKind::ParametersChanged(all) = &mut event.kind else { continue };
        for set in &mut all.lifts {
            if !seen.contains(&set.id) {
                seen.push(set.id.clone());
            }
            let number = seen.iter().position(|id| *id == set.id).unwrap();
            for rung in &mut set.rungs {
                rung.name = Some(name(&format!("{} no. {number}", rung.id)));
            }
        }
    }
    log
}

fn step_down(world: &mut World, id: &str) {
    world.day_report(DayClass::Within);
    world.train(id, false);
    world.morning();
    world.wait(2);
}

/// Worlds in which loads are named for many reasons.
fn worlds() -> Vec<World> {
    let offered = || World::on_offer("squat");
    let with = |change: fn(&mut World)| {
        let mut world = offered();
        change(&mut world);
        world
    };
    let coarse = || {
        let mut all = parameters();
        let disc =
            |mass: f64, across: f64| Disc::new(kg(mass), 4).unwrap().with_diameter(mm(across)).unwrap();
        all.stock = Stock::new(vec![disc(20.0, 450.0), disc(10.0, 325.0)]).unwrap();
        let mut world = World::new(all);
        (0..4).for_each(|_| world.passing_day("squat"));
        world
    };
    let measured = || {
        let mut all = parameters();
        let squat = &mut all.lifts[0];
        (squat.ranges, squat.moving) = (vec![mm(450.0), mm(350.0)], Dimension::Range);
        squat.tempos = vec![Tempo::new(3, 1, 1)];
        all.lifts[1] = lift("pull", "back", 60.0).with_starts_from(StartsFrom::Floor);
        all.lifts[1].ranges = vec![mm(225.0)];
        let mut world = World::new(all);
        (0..4).for_each(|_| world.passing_day("squat"));
        world
    };
    let belled = || {
        let mut all = parameters();
        (all.lifts[1].implement, all.lifts[1].start.work.load) = (name("bells"), kg(8.0));
        all.pairs = vec![Pair::new(name("squat"), name("press")).with_ratio_cap(2.0)];
        let mut world = World::new(all);
        (0..4).for_each(|_| world.passing_day("press"));
        world
    };
    let moved = Grant::new(Work::new(2, 5, kg(50.0))).with_place(Place::at_rung(0));
    let mut ended = with(|world| world.override_to("squat", 80.0, 90));
    ended.add(EventKind::VariantChanged(Move::new(name("squat"), moved, name("coach"))));
    vec![
        World::new(parameters()),
        offered(),
        coarse(),
        measured(),
        belled(),
        ended,
        World::granted_what_is_no_longer_made(),
        with(|world| world.override_to("squat", 80.0, 90)),
        with(|world| {
            world.override_to("squat", 80.0, 90);
            world.wait(45).day_report(DayClass::Within);
        }),
        with(|world| world.pain("knee", 4)),
        with(|world| world.pain("knee", 7)),
        with(|world| world.day_report(DayClass::Below)),
        with(|world| {
            world.wait(45).day_report(DayClass::Within);
        }),
        with(|world| (0..2).for_each(|_| step_down(world, "squat"))),
        with(|world| {
            world.wait(45).day_report(DayClass::Within);
            (0..2).for_each(|_| step_down(world, "squat"));
        }),
        with(|world| {
            world.add(EventKind::AdvanceAccepted(Advance::new(name("squat"), name("coach"))));
            (0..6).for_each(|_| world.passing_day("squat"));
            world.day_report(DayClass::Within);
        }),
        with(|world| {
            let role = RoleSet::new(name("squat"), Role::Maintain).with_not_below(Some(kg(50.0)));
            world.add(EventKind::RoleSet(role));
        }),
        with(|world| {
            let role = RoleSet::new(name("squat"), Role::Maintain).with_not_below(Some(kg(50.0)));
            world.add(EventKind::RoleSet(role));
            world.train_with(LiftSession::as_granted(name("squat"), World::sets(kg(44.0), 2, true)));
        }),
        with(|world| {
            let limits = vec![ClearanceLimits::default().with_load(kg(42.5))];
            let given = Clearance::new(ClearanceStatus::ClearedWithLimits, name("clinic"))
                .with_expires(world.day.plus(100).unwrap())
                .with_limits(limits);
            world.add(EventKind::ClearanceRecorded(given));
        }),
        // 132 where 60 was meant; and the same by the coach's word.
        with(|world| {
            world.train_with(LiftSession::as_granted(name("squat"), World::sets(kg(132.25), 2, true)));
            world.override_to("squat", 132.25, 3);
        }),
        with(|world| world.add(EventKind::BodyMassRecorded(kg(80.0)))),
        with(|world| {
            let mut all = parameters();
            all.lifts[0].ceiling = Some(kg(50.0));
            world.add(EventKind::ParametersChanged(Box::new(all)));
        }),
    ]
}

fn last_day(log: &Log) -> Day {
    log.events.iter().map(|event| event.day).max().unwrap()
}

/// Logs as the other tests of doors make them: weeks of squats and presses, velocities at one load, help, a block.
fn logs() -> Vec<Log> {
    let week = |squat: usize, load: f64| {
        session(&[("squat", sets(squat, load, 5, 3)), ("press", sets(2, 30.0, 5, 1))], Some((5.0, 60)))
    };
    let weeks =
        |sets| (0..9).map(move |at| (monday(at), week(3, 60.0))).chain([(monday(9), week(sets, 60.0))]);
    let fast = |at: i32| {
        let set = |velocity| sets(1, 60.0, 3, 3).remove(0).with_velocity(velocity);
        (monday(at), of("squat", vec![set(0.50 + 0.01 * f64::from(at))]))
    };
    let pulls = |at: i32| (monday(at), of("pull-up", sets(2, f64::from(at) - 30.0, 5, 3)));
    let weighed = (day("2026-01-11"), EventKind::BodyMassRecorded(kg(80.0)));
    let block = [(day("2026-01-10"), EventKind::BlockStarted(name("spring")))];
    vec![
        log_of(parameters(), block.into_iter().chain(weeks(6))),
        log_of(parameters(), weeks(1)),
        log_of(parameters(), (0..5).map(fast)),
        log_of(with_helped_pull_up(), core::iter::once(weighed).chain((0..9).map(pulls))),
    ]
}

/// Singles near enough to failure, for a trend and what is kept for years.
fn years() -> (Log, Plan) {
    let mut world = World::on_offer("squat");
    for _ in 0..9 {
        let mut set = World::sets(kg(60.0), 2, true);
        set.iter_mut().for_each(|set| set.effort = Some(Effort::Rir(Rir::whole(1))));
        world.train_with(LiftSession::as_granted(name("squat"), set));
        world.morning();
        world.wait(4);
    }
    let keep = |id: &str| LoadToKeep::new(name(id), name("the sack"), kg(50.0), 70);
    let years = YearsAhead::default().with_keep(vec![keep("squat"), keep("press")]);
    (world.log, Plan::of([name("squat"), name("press")]).with_years(years))
}

#[test]
fn rule_14_every_line_of_every_door_that_names_a_load_names_the_place() {
    let mut seen = Seen::default();
    for world in worlds() {
        seen.all_doors(&world.log, None, world.day, Unit::Kg);
    }
    for log in logs() {
        seen.all_doors(&log, None, last_day(&log), Unit::Kg);
    }
    let (log, plan) = years();
    seen.all_doors(&log, Some(&plan), last_day(&log).plus(1).unwrap(), Unit::Kg);
    assert!(seen.placed > 500 && seen.headed > 50, "{} {}", seen.placed, seen.headed);
    // What no line says is no exception.
    for other in OTHER_MASSES {
        assert!(seen.others.contains(other), "no line has {other:?}");
    }
}

/// The demo log on its last day, and on days before, as it was then.
#[test]
fn rule_14_every_line_about_the_demo_log_that_names_a_load_names_the_place() {
    let whole = Log::from_json(include_str!("../../examples/data/demo-log.json")).unwrap();
    let plan = Plan::from_json(include_str!("../../examples/data/demo-plan.json")).unwrap();
    let mut seen = Seen::default();
    let first = whole.events[0].day;
    let last = last_day(&whole);
    let days = last.since(first);
    for (part, unit) in [(30, Unit::Kg), (60, Unit::Lb), (100, Unit::Kg)] {
        let until = first.plus(days * part / 100).unwrap();
        let mut log = whole.clone();
        log.events.retain(|event| event.day <= until);
        seen.all_doors(&log, (part == 100).then_some(&plan), until, unit);
    }
    assert!(seen.placed > 150, "{}", seen.placed);
}

/// Where the coach's word for more has ended, its load is named with the place that it was for, whatever the lists of the
/// lift hold by then.
#[test]
fn an_override_that_ended_names_the_place_that_it_was_for() {
    let mut world = World::on_offer("squat");
    world.override_to("squat", 80.0, 90);
    let lighter = Grant::new(Work::new(2, 5, kg(50.0))).with_place(Place::at_rung(0));
    world.add(EventKind::VariantChanged(Move::new(name("squat"), lighter, name("coach"))));
    let said = |world: &World| {
        let all = fold(&world.log).unwrap().parameters().unwrap().clone();
        let plan = Plan::of([name("squat")]);
        next_session(&world.log, &plan, world.day).unwrap().show(&Words::of(&all)).join("\n")
    };
    let before = said(&world);
    assert!(before.contains("The coach's word for 80 kg (full) no longer counts"), "{before}");
    let mut all = parameters();
    all.lifts[0].rungs.truncate(1);
    all.lifts[0].start.place = Place::at_rung(0);
    world.add(EventKind::ParametersChanged(Box::new(all)));
    let after = said(&world);
    assert!(after.contains("The coach's word for 80 kg (full) no longer counts"), "{after}");
}

/// Sets of another place are handed over with theirs, not with that at which the lift stands.
#[test]
fn what_was_last_done_is_handed_over_with_its_own_place() {
    let mut world = World::on_offer("squat");
    let sets = World::sets(kg(50.0), 1, true);
    let elsewhere = LiftSession::as_granted(name("squat"), sets).with_place(Place::at_rung(0));
    world.train_with(elsewhere);
    let answer = handover(&world.log, world.day, world.day).unwrap();
    let all = parameters();
    let said = answer.show(&Words::of(&all)).join("\n");
    assert!(said.contains(" (easier): 50 kg x 5; "), "{said}");
}

/// A place by what it is has its tempo as every other tempo is written.
#[test]
fn a_tempo_is_written_in_one_form() {
    let mut all = parameters();
    all.lifts[0].tempos = vec![Tempo::new(3, 1, 2)];
    let mut world = World::new(all.clone());
    world.passing_day("squat");
    let tempo = Value::write(&all.lifts[0].tempos[0]).unwrap().to_json();
    assert_eq!(tempo, r#"{"down":3,"hold":1,"up":2}"#);
    let answer = handover(&world.log, world.day, world.day).unwrap();
    let place = answer.lifts[0].last.as_ref().unwrap().place.as_ref().unwrap();
    let json = Value::write(place).unwrap().to_json();
    assert!(json.contains(&format!(r#""tempo":{tempo}"#)), "{json}");
    assert_eq!(Value::from_json(&json).unwrap().read::<bismar::reason::NamedPlace>().unwrap(), *place);
}
