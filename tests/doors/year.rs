//! The yearly card of a log.

use bismar::answers::{Lacking, Year, year};
use bismar::caution::Caution;
use bismar::condition::DayClass;
use bismar::horizon::{
    Age, CardItem, CardLine, CardNote, CardState, FloorPlace, FunctionTest, Phase, PhaseCourse, Sex, Spread,
};
use bismar::quantity::Day;
use bismar::record::{self, *};
use bismar::sign::Ask;
use bismar::text::Words;

use crate::careful::is_careful;
use crate::world::{World, kg, mm, name, parameters};

fn asked(world: &World, years: YearsAhead, sex: Option<Sex>) -> (Year, Vec<String>) {
    let plan = Plan::of([]).with_years(years);
    let answer = year(&world.log, &plan, world.day, sex, None).unwrap();
    let said = Words::of(&parameters()).year(&answer);
    for said in &said {
        is_careful(said);
        assert!(!said.contains(['{', '}']), "{said}");
    }
    (answer, said)
}

fn line<'a>(year: &'a Year, item: &CardItem) -> &'a CardLine {
    year.card.lines.iter().find(|line| line.item == *item).unwrap()
}

fn day(text: &str) -> Day {
    text.parse().unwrap()
}

fn tested(test: record::EverydayTest, result: f64) -> EventKind {
    EventKind::FunctionTested(Measurement::new(test, result))
}

/// Clearance of 5 January 2026 for 900 days, as the world gives it: due on 23 June 2028 (366 + 365 + 169 days on).
#[test]
fn the_year_says_what_is_due_and_by_when() {
    let mut world = World::new(parameters());
    world.add(EventKind::BodyMassRecorded(kg(80.0)));
    world.add(tested(record::EverydayTest::Grip, 24.0));
    world.wait(400);
    let swap = LiftSwap::new(name("squat"), world.day.plus(20).unwrap()).with_replacement(name("press"));
    let gap = PlannedGap::new(name("journey"), world.day.plus(-2).unwrap(), world.day.plus(5).unwrap());
    let weighed = Weighing::new(name("bar")).with_on(world.day.plus(-100).unwrap());
    let years = YearsAhead::default().with_swaps(vec![swap]).with_gaps(vec![gap]).with_weighed(vec![weighed]);
    let (answer, said) = asked(&world, years, None);

    let clearance = line(&answer, &CardItem::Clearance);
    assert_eq!((clearance.due, clearance.days_left), (day("2026-01-05").plus(900).unwrap(), 500));
    assert_eq!(clearance.state, CardState::Later);
    // Body mass and grip are 400 days old, 35 more than a year.
    assert_eq!(line(&answer, &CardItem::BodyMass).days_left, -35);
    assert_eq!(line(&answer, &CardItem::Test(FunctionTest::Grip)).state, CardState::Overdue);
    assert_eq!(line(&answer, &CardItem::Test(FunctionTest::GaitSpeed)).state, CardState::Never);
    let swap = CardItem::Swap { lift: name("squat"), replacement: Some(name("press")) };
    assert_eq!((line(&answer, &swap).days_left, line(&answer, &swap).state), (20, CardState::Soon));
    assert!(answer.card.lines.iter().any(|line| line.state == CardState::Running));
    // The bar was weighed 100 days ago, dumbbells and discs never.
    assert_eq!(line(&answer, &CardItem::Weigh(name("bar"))).days_left, 265);
    for never in ["bells", "discs"] {
        assert_eq!(line(&answer, &CardItem::Weigh(name(never))).state, CardState::Never);
    }
    let all = said.join("\n");
    for part in
        ["Leave squat for press: due by", "Planned gap, journey: goes on until", "Weigh discs: never done"]
    {
        assert!(all.contains(part), "{part:?} in\n{all}");
    }
}

/// Grip of 24 kg: above the 16 kg for women by 8, below the 27 kg for men by 3, between them where the sex is not known.
#[test]
fn row_69_function_tests_are_held_against_their_floors() {
    let mut world = World::new(parameters());
    world.add(tested(record::EverydayTest::Grip, 20.0));
    world.wait(10).add(tested(record::EverydayTest::Grip, 24.0));
    world.add(tested(record::EverydayTest::ChairRiseSeconds, 16.0));
    world.add(tested(record::EverydayTest::FloorRise, 6.0));
    let grip = |sex| {
        let (answer, _) = asked(&world, YearsAhead::default(), sex);
        let grip = answer.tests.iter().find(|tested| tested.test == FunctionTest::Grip).unwrap().clone();
        let margin = grip.margin.unwrap();
        (grip.result, margin.place, margin.margin.low(), margin.margin.high())
    };
    assert_eq!(grip(Some(Sex::Female)), (24.0, FloorPlace::Above, 8.0, 8.0));
    assert_eq!(grip(Some(Sex::Male)), (24.0, FloorPlace::Below, -3.0, -3.0));
    assert_eq!(grip(None).1, FloorPlace::Between);
    let (answer, said) = asked(&world, YearsAhead::default(), None);
    // Grip was 20 kg ten days before; the rises were never counted before.
    let grip = answer.tests.iter().find(|tested| tested.written == record::EverydayTest::Grip).unwrap();
    assert_eq!(grip.before, Some((day("2026-01-05"), 20.0)));
    let rise = answer.tests.iter().find(|tested| tested.test == FunctionTest::FiveChairRises).unwrap();
    assert_eq!(rise.before, None);
    assert_eq!(rise.margin.as_ref().unwrap().place, FloorPlace::Below);
    assert!(answer.cautions.contains(&Caution::TalkToClinician));
    // No floor is published here for rising from the floor: told, and not judged.
    let floor = answer.tests.iter().find(|tested| tested.test == FunctionTest::FloorRise).unwrap();
    assert!(floor.floor.is_none() && floor.margin.is_none());
    assert!(said.contains(&"Down to the floor and up again, 15 Jan 2026: 6 s.".to_string()), "{said:?}");
}

/// Born in March 1980: 45 years old on the days of these sessions. By the slowest planning band nothing is lost until 70
/// by people who keep training, so that at 60 the 50 kg are needed now too; by the fastest 1.2 % a year to 50 and 1.7 % to
/// 60, more.
#[test]
fn row_68_a_load_to_keep_is_held_against_what_was_shown() {
    let mut world = World::new(parameters());
    (0..3).for_each(|_| world.passing_day("squat"));
    let planned = LoadToKeep::new(name("squat"), name("the sack"), kg(50.0), 60);
    let years = || YearsAhead::default().with_keep(vec![planned.clone()]);
    let (answer, said) = asked(&world, years(), None);
    let kept = &answer.keep[0];
    assert_eq!(kept.shown.unwrap().1, kg(60.0));
    let plan = kept.plan.as_ref().unwrap();
    assert!((plan.needed_now.low() - 50.0).abs() < 1e-9);
    // 45.86 years old on 14 January 2026: 4.14 years at 1.2 % and ten at 1.7 %: 50 / (0.988^4.14 x 0.983^10) = 62.4.
    assert!((plan.needed_now.high() - 62.4).abs() < 0.1, "{:?}", plan.needed_now);
    assert!(answer.cautions.contains(&Caution::NotAPrognosis));
    assert!(
        said.iter().any(|line| line.starts_with("The sack, 50 kg with squat at 60: 50 kg to 62.")),
        "{said:?}"
    );
    // In pounds what is to be there, and what would be needed now, is not said to be less: 50 kg are 110.231 lb.
    let pounds = Words::of(&parameters()).in_unit(bismar::quantity::Unit::Lb).year(&answer).join(" ");
    assert!(pounds.contains("The sack, 110.5 lb with squat at 60: 110.5 lb to 138"), "{pounds}");
    // Nothing shown, or no birthday: missing, and no number.
    let (answer, _) = asked(&World::new(parameters()), years(), None);
    assert!(answer.keep[0].plan.is_none() && answer.missing.contains(&Lacking::PassOf(name("squat"))));
    world.log.lifter.born = None;
    let (answer, _) = asked(&world, years(), None);
    assert!(answer.keep[0].plan.is_none() && answer.missing.contains(&Lacking::Birthday));
}

/// 60 kg shown at the age of 45.87, on 14 January 2026. Held they are 60 at 60; gained by 2 % a year up to 50, 60 x 1.02^4.13 =
/// 65.1; a third lost by 50 and then held, 40, below the 50 kg that are wanted.
#[test]
fn row_70_what_if_it_is_held_raised_or_lapses() {
    let mut world = World::new(parameters());
    (0..3).for_each(|_| world.passing_day("squat"));
    let planned = LoadToKeep::new(name("squat"), name("the sack"), kg(50.0), 60);
    let plan = Plan::of([]).with_years(YearsAhead::default().with_keep(vec![planned]));
    let age = |years: f64| Age::new(years).unwrap();
    let known = |part: f64| Spread::known(part).unwrap();
    let lapse = vec![
        Phase::new(age(50.0), PhaseCourse::Lapse(known(1.0 / 3.0))),
        Phase::new(age(60.0), PhaseCourse::Hold),
    ];
    let raise = Phase::gain_then_hold(known(0.02), age(50.0), age(60.0));
    let at_sixty = |phases: Vec<Phase>| {
        let answer = year(&world.log, &plan, world.day, None, Some(&phases)).unwrap();
        let said = Words::of(&parameters()).year(&answer);
        said.iter().for_each(|said| is_careful(said));
        assert!(said.iter().any(|said| said.starts_with("The sack, if it goes as asked: ")), "{said:?}");
        assert!(answer.cautions.contains(&Caution::ProjectJudgement));
        let last = answer.keep[0].what_if.as_ref().unwrap().years.last().copied().unwrap();
        (last.median, last.share_above_floor.unwrap())
    };
    let [held, raised, lapsed] = [Phase::hold(age(60.0)), raise, lapse].map(at_sixty);
    assert!((held.0 - 60.0).abs() < 1e-9 && held.1 == 1.0, "{held:?}");
    assert!((raised.0 - 65.1).abs() < 0.1 && raised.1 == 1.0, "{raised:?}");
    assert!((lapsed.0 - 40.0).abs() < 1e-9 && lapsed.1 == 0.0, "{lapsed:?}");
    // Not asked, no number.
    assert!(year(&world.log, &plan, world.day, None, None).unwrap().keep[0].what_if.is_none());
}

#[test]
fn an_empty_log_has_everything_due_and_no_number() {
    let log = Log::new(Lifter::new(name("invented")));
    let answer = year(&log, &Plan::of([]), day("2026-01-05"), None, None).unwrap();
    assert_eq!(answer.missing, [Lacking::Clearance, Lacking::BodyMass, Lacking::FunctionTest]);
    assert!(answer.card.lines.iter().all(|line| line.state == CardState::Never));
    assert!(answer.tests.is_empty() && answer.card.notes.is_empty());
}

/// 80 to 75 kg is 6.25 % within 100 days. A fall that is a year and a day ago is no longer told.
#[test]
fn loss_of_body_mass_falls_and_new_medicines_are_worth_a_talk() {
    let mut world = World::new(parameters());
    world.add(EventKind::BodyMassRecorded(kg(80.0)));
    let asks = Some(vec![Ask::Fall, Ask::NewMedicine]);
    world.add(EventKind::DayReport(DayReport::default().with_asks(asks)));
    world.wait(100).add(EventKind::BodyMassRecorded(kg(75.0)));
    let (answer, _) = asked(&world, YearsAhead::default(), None);
    assert_eq!(answer.card.notes.len(), 3);
    let Some(CardNote::MassLost { part, days }) =
        answer.card.notes.iter().find(|note| matches!(note, CardNote::MassLost { .. }))
    else {
        panic!()
    };
    assert!((part - 0.0625).abs() < 1e-12 && *days == 100);
    let meant = YearsAhead::default().with_mass_loss_intended(true);
    assert_eq!(asked(&world, meant, None).0.card.notes, [CardNote::Fall, CardNote::NewMedicine]);
    world.wait(265);
    assert!(asked(&world, YearsAhead::default(), None).0.card.notes.contains(&CardNote::Fall));
    world.wait(1);
    assert!(!asked(&world, YearsAhead::default(), None).0.card.notes.contains(&CardNote::Fall));
}

/// A second session of the day, after a clearance that leaves less of the range, is another one: what passed went through the
/// whole of it.
#[test]
fn row_68_a_load_shown_on_a_day_of_two_sessions_has_the_place_of_the_one_that_passed() {
    let mut all = parameters();
    all.lifts[0].ranges = vec![mm(300.0), mm(400.0)];
    all.lifts[0].start.place = Place::at_rung(1).with_range(1);
    let mut world = World::new(all);
    (0..2).for_each(|_| world.passing_day("squat"));
    world.day_report(DayClass::Within);
    world.train("squat", true);
    let first = world.log.events.last().unwrap().sequence;
    let limits = vec![ClearanceLimits::default().with_range(mm(350.0))];
    world.add(EventKind::ClearanceRecorded(
        Clearance::new(ClearanceStatus::ClearedWithLimits, name("clinic"))
            .with_expires(world.day.plus(100).unwrap())
            .with_limits(limits),
    ));
    assert_eq!(world.today("squat").place.range, 0);
    world.train_with(LiftSession::as_granted(name("squat"), World::sets(kg(60.0), 2, true)));
    let day = world.day;
    world.wait(1);
    world.add(EventKind::NextDayReport(NextDayReport::new(first).with_pain(Vec::new())));
    let planned = LoadToKeep::new(name("squat"), name("the sack"), kg(50.0), 60);
    let (answer, _) = asked(&world, YearsAhead::default().with_keep(vec![planned]), None);
    let kept = &answer.keep[0];
    assert_eq!(kept.shown, Some((day, kg(60.0))));
    assert_eq!(kept.place.as_ref().unwrap().range, Some(mm(400.0)));
}
