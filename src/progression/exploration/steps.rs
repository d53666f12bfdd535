//! The rules over a step from one state to the next: what a grant may do, and by what.

use std::format;
use std::string::String;

use super::super::lift::Lift;
use super::super::state::State;
use super::super::status::Status;
use super::notes::{Notes, Verdict};
use super::oracle::{growth_cap, passes_needed, share, within};
use super::telling::{Standing, Standings};
use super::world::{
    COOLING_OFF, FRESH, LIFTS, PROOF, REGION_WINDOW, REGIONS, RUNG_PART, STEP_CAP, Set, kg, loads_of,
};
use crate::condition::DayClass;
use crate::quantity::Mass;
use crate::record::{Dimension, EventKind, Grant};

/// What became of a grant.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Change {
    None,
    /// Easier, or beside.
    Down,
    /// Back to the load before a break.
    Restored,
    /// Another kind of implement begins at its start, or easier where a stop was signed off before it.
    Restarted,
    Up,
}

/// In what the one is harder than the other: two rungs above the easy one are beside each other.
fn harder(from: &Grant, to: &Grant) -> impl Iterator<Item = Dimension> {
    let (at, then) = (from.place, to.place);
    [
        (Dimension::Variant, at.rung == 0 && then.rung > 0),
        (Dimension::Range, then.range > at.range),
        (Dimension::Tempo, then.tempo > at.tempo),
        (Dimension::Sets, to.work.sets > from.work.sets),
        (Dimension::Reps, to.work.reps > from.work.reps),
        (Dimension::Load, to.work.load > from.work.load),
    ]
    .into_iter()
    .filter_map(|(dimension, is_harder)| is_harder.then_some(dimension))
}

fn change(was: &Standing, is: &Lift, kind: Option<&EventKind>) -> Change {
    let (from, to) = (&was.grant, &is.now.grant);
    let session = matches!(kind, Some(EventKind::SessionRecorded(_)));
    let returns = was.status.way_back().is_some_and(|way| to.load() <= way.cap);
    let other_implement = was.bar != (is.set.implement.as_str() == "bar");
    if from == to {
        Change::None
    } else if other_implement && harder(&is.set.start, to).next().is_none() {
        Change::Restarted
    } else if harder(from, to).next().is_none() {
        Change::Down
    } else if session && returns && from.with_load(to.load()) == *to {
        Change::Restored
    } else {
        Change::Up
    }
}

/// Both lifts after an event, set aside or not, with what they were told to do before.
fn both<'a>(
    before: &'a Standings,
    after: &'a State,
) -> impl Iterator<Item = (usize, &'a Standing, &'a Lift)> {
    let known = || after.lifts.iter().chain(&after.set_aside);
    before.iter().enumerate().filter_map(move |(number, was)| {
        let lift = known().find(|lift| lift.set.id.as_str() == LIFTS[number])?;
        Some((number, was.as_ref()?, lift))
    })
}

/// The rule that a step breaks, if it breaks one.
pub(super) fn step(
    before: &Standings,
    notes: &Notes,
    kind: Option<&EventKind>,
    after: &State,
) -> Option<String> {
    both(before, after).find_map(|(number, was, is)| {
        let rule = match change(was, is, kind) {
            Change::None | Change::Restarted => None,
            Change::Up if kind.is_none() => Some("time alone raised it"),
            Change::Up => move_rule(notes, number, was, is, kind),
            Change::Restored => restore_rule(notes, number),
            Change::Down => down_rule(notes, number, was, is, kind),
        };
        let offered = is.now.status.is_ready() && !was.status.is_ready();
        let by_time = (kind.is_none() && offered).then_some("time alone put a move on offer");
        let by = kind.map_or("waiting", EventKind::name);
        rule.or(by_time).map(|rule| format!("{}: {rule} (by: {by})", LIFTS[number]))
    })
}

/// Notes what became of the grants.
pub(super) fn settle(notes: &mut Notes, before: &Standings, kind: Option<&EventKind>, after: &State) {
    for (number, was, is) in both(before, after) {
        let change = change(was, is, kind);
        let lift = &mut notes.lifts[number];
        // What the progression no longer counts, nobody need count.
        if change != Change::None || was.status.is_stopped() != is.now.status.is_stopped() {
            lift.forget();
        } else if is.now.sittings.is_empty() {
            lift.begin_anew();
        }
        lift.signed &= change == Change::None;
        // What was shown at another place proves nothing here; on the way up it was shown on the way.
        if change != Change::Up && was.grant.place != is.now.grant.place {
            lift.proven = None;
        }
        // What is more than is granted now is no easing any more.
        lift.eased.take_if(|(load, _)| *load > is.now.grant.load());
        if change == Change::Up {
            lift.moves.push((0, was.grant.load()));
            let own =
                is.set.regions.iter().filter_map(|id| REGIONS.iter().position(|known| *known == id.as_str()));
            own.for_each(|region| notes.regions[region].moved = Some(0));
        }
    }
    for region in notes.regions.iter_mut().filter(|region| region.flares >= 2) {
        region.flares = 0;
    }
}

/// The first thing that stands in the way of a move that was made.
fn move_rule(
    notes: &Notes,
    number: usize,
    was: &Standing,
    is: &Lift,
    kind: Option<&EventKind>,
) -> Option<&'static str> {
    let (from, to) = (&was.grant, &is.now.grant);
    size_rule(notes, number, from, to, is)
        .or_else(|| notes.lifts[number].is_eased(from.load()).then_some("moved beside an override"))
        .or_else(|| evidence_rule(notes, number))
        .or_else(|| standing_rule(was, kind, notes.set))
        .or_else(|| health_rule(notes, number))
        .or_else(|| spacing_rule(notes, number, to))
}

fn first_broken(checks: &[(bool, &'static str)]) -> Option<&'static str> {
    checks.iter().find(|(holds, _)| !holds).map(|(_, rule)| *rule)
}

/// One dimension by one step, within every cap, on loads that there are.
fn size_rule(notes: &Notes, number: usize, from: &Grant, to: &Grant, is: &Lift) -> Option<&'static str> {
    let set = &is.set;
    let up = harder(from, to).count();
    let rises = to.load() > from.load();
    let loads = || loads_of(set).iter().map(|load| kg(*load));
    let lightest = loads().min().unwrap_or(Mass::ZERO);
    let rung_up = harder(from, to).any(|dimension| dimension == Dimension::Variant);
    let begins = share(from.load(), RUNG_PART).max(lightest);
    first_broken(&[
        (up == 1, "moved in two dimensions at once"),
        (to.work.reps <= from.work.reps + 1 && to.work.sets <= from.work.sets + 1, "moved by two steps"),
        (!rung_up || to.load() <= begins, "moved to a harder rung with too much load"),
        (!rises || to.load() <= share(from.load(), 1.0 + STEP_CAP), "moved by more than its step"),
        (!rises || loads().any(|load| load == to.load()), "moved to a load that nothing makes"),
        (
            !rises || to.load() <= growth_cap(&notes.lifts[number], from.load()),
            "moved further than its window allows",
        ),
        (set.ceiling.is_none_or(|ceiling| to.load() <= ceiling), "moved above its ceiling"),
        (notes.limit(number).is_none_or(|limit| to.load() <= limit), "moved above a clearance's limit"),
        (
            !notes.range_is_limited(number) || to.place.range == 0,
            "moved in a range that a clearance rules out",
        ),
    ])
}

/// The gate at the place just left, shown as granted, on days that say something.
fn evidence_rule(notes: &Notes, number: usize) -> Option<&'static str> {
    let lift = &notes.lifts[number];
    let (run, last) = (lift.run(), lift.sessions.last());
    let longer = passes_needed(notes, number) > 2;
    first_broken(&[
        (lift.confirmed() >= passes_needed(notes, number), "moved without its gate"),
        (!longer || lift.signed, "moved without the sign-off of its gate"),
        (last.is_some_and(|last| last.verdict == Verdict::Pass), "moved after a session that did not pass"),
        (!lift.elsewise, "moved after work that was not the work granted"),
        (last.is_some_and(|last| last.answered) && lift.waits.is_none(), "moved before the morning after"),
        (run.iter().any(|session| !session.below_usual), "moved on days below the usual alone"),
        (lift.hard() < 2, "moved with too little in reserve"),
        (lift.last.is_some_and(|ago| within(ago, FRESH + 1)), "moved on old evidence"),
    ])
}

/// By whom, and from which state.
fn standing_rule(was: &Standing, kind: Option<&EventKind>, set: Set) -> Option<&'static str> {
    let coach = matches!(
        kind,
        Some(EventKind::AdvanceAccepted(_) | EventKind::VariantChanged(_) | EventKind::RangeChanged(_))
    );
    let holds = matches!(was.status, Status::Holding | Status::ReadyToAdvance { .. });
    first_broken(&[
        (holds, "moved from a state that does not move"),
        (coach || set == Set::Automatic, "moved by nobody"),
    ])
}

/// Stops, clearance, pain, the day, what was asked, who is by the bar.
fn health_rule(notes: &Notes, number: usize) -> Option<&'static str> {
    let lift = &notes.lifts[number];
    let own = || notes.regions_of(number);
    let usual = matches!(notes.class(), DayClass::Within | DayClass::Above);
    first_broken(&[
        (notes.symptom.is_none() && !notes.pain_stops(number), "moved under a stop"),
        (!notes.limit_is_lost(), "moved under a limit that no lift has any more"),
        (notes.is_cleared(), "moved without a clearance"),
        (!notes.ill, "moved after an illness without a clearance"),
        (own().all(|region| region.due == 0), "moved before the clear sessions after pain"),
        (own().all(|region| !region.persists()), "moved with pain that stays"),
        (own().all(|region| region.is_calm()), "moved with pain that is no steady usual"),
        (!lift.held, "moved while the strict lift's pain holds it"),
        (notes.pain_asked == Some(true), "moved without an answer about pain"),
        (usual, "moved on a day below the usual or unknown"),
        (notes.day.as_ref().is_some_and(|day| day.asks_asked), "moved on a day on which nobody asked"),
        (!notes.asks.contains(&true), "moved before what was asked is answered"),
        (!notes.comes_first(), "moved on the day of something that comes first"),
        (notes.pain_today, "moved without pain asked today"),
        (!notes.away, "moved in a planned break"),
        (!lift.alone, "moved alone without pins"),
        (!notes.unknown, "moved with something on record that is not understood"),
    ])
}

/// Days since other moves, and the other lift of the pair.
fn spacing_rule(notes: &Notes, number: usize, to: &Grant) -> Option<&'static str> {
    let lift = &notes.lifts[number];
    let moved = |moves: &[(u8, Mass)], window| moves.last().is_some_and(|(ago, _)| within(*ago, window));
    let alone = first_broken(&[
        (!moved(&lift.moves, COOLING_OFF), "moved too soon after its last move"),
        (notes.regions_of(number).all(|region| region.moved.is_none()), "moved too soon in its region"),
    ]);
    let Some(other) = notes.partner(number).filter(|_| alone.is_none()) else { return alone };
    let proven = other.proven.filter(|(ago, _)| within(*ago, PROOF + 1));
    first_broken(&[
        (!moved(&other.moves, REGION_WINDOW), "moved too soon in its pair"),
        (other.last.is_none_or(|ago| !within(ago, 2)), "moved without a day of rest in its pair"),
        (!(lift.fault && other.fault), "moved with the fault of its pair"),
        (number == 1 || proven.is_some(), "moved without proof of the forgiving lift"),
        (number == 1 || proven.is_some_and(|(_, load)| to.load() <= load), "moved above the forgiving lift"),
    ])
}

/// A short break gives its load back to a session that passed with nothing in the way.
fn restore_rule(notes: &Notes, number: usize) -> Option<&'static str> {
    let lift = &notes.lifts[number];
    let passed = lift.sessions.last().is_some_and(|last| last.ago == 0 && last.verdict == Verdict::Pass);
    let quiet = notes.symptom.is_none() && !notes.pain_stops(number) && !notes.asks.contains(&true);
    first_broken(&[
        (passed, "got its load back without a pass"),
        (notes.regions_of(number).all(|region| region.due == 0), "got its load back with pain"),
        (notes.pain_asked == Some(true), "got its load back without an answer about pain"),
        (notes.is_cleared() && !notes.ill, "got its load back without a clearance"),
        (quiet && !notes.class().is_below(), "got its load back on a day below the usual"),
        (!lift.alone && !notes.unknown, "got its load back alone or with something not understood"),
    ])
}

/// Nothing steps back for one fail, nor by more than the largest step.
fn down_rule(
    notes: &Notes,
    number: usize,
    was: &Standing,
    is: &Lift,
    kind: Option<&EventKind>,
) -> Option<&'static str> {
    let lift = &notes.lifts[number];
    let hurts =
        notes.regions_of(number).any(|region| region.last.is_some_and(|(score, today)| today && score > 0));
    let critical = lift.sessions.last().is_some_and(|last| last.verdict == Verdict::Critical);
    let flared = notes.regions_of(number).any(|region| region.flares >= 2);
    let twice = lift.fails() >= 2;
    let cause = match kind? {
        EventKind::SessionRecorded(_) => twice || (critical && hurts && was.status == Status::Consolidating),
        EventKind::NextDayReport(_) | EventKind::DayReport(_) | EventKind::PainReport(_) => flared,
        EventKind::CoachOverride(_)
        | EventKind::VariantChanged(_)
        | EventKind::RangeChanged(_)
        | EventKind::CoachSignOff(_) => return None,
        // A stop may have been signed off while the lift was set aside.
        EventKind::ParametersChanged(_) => {
            return (!was.status.is_stopped()).then_some("lowered by new parameters");
        }
        _ => false,
    };
    let (from, to) = (was.grant.load(), is.now.grant.load());
    let below = loads_of(&is.set).iter().map(|load| kg(*load)).rfind(|load| *load < from).unwrap_or(from);
    first_broken(&[
        (cause, "stepped back without a cause"),
        (to >= share(from, 0.85).min(below), "stepped back by more than the largest step"),
    ])
}
