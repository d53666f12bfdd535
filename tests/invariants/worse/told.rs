//! What is told worse: one thing of one event, one event of a day, or one fact throughout.

use super::super::course::*;
use bismar::condition::DayClass;
use bismar::gate::{Mark, Rater, SetMarks};
use bismar::quantity::{Day, Length, Pain, Rir, Rpe};
use bismar::record::*;
use proptest::prelude::*;

/// What is worse about one log.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Worse {
    /// More pain in one region, in any answer about pain.
    Pain {
        region: u8,
        more: u8,
    },
    /// Something came with a pain.
    Feature(PainFeature),
    /// A worse class of the day.
    Class(DayClass),
    /// Something more was said when asked.
    Asked(u8),
    /// A set that failed, marks that were lost, or fewer repetitions.
    Missed,
    Lost,
    FewerReps,
    /// Another person saw the critical point lost in a set that somebody marked.
    AnotherSaw,
    /// Nothing is said of the effort of a set, or less was left than was said.
    EffortUnsaid,
    LessLeft,
    /// Less range was reached than what is left out: less deep, or less low.
    LessReached {
        low: bool,
    },
    /// Where nothing is said of the place, it was the first of every list.
    Easier,
    /// A clearance limits the load further.
    LowerLimit,
    /// Chest pain between two parts of a day.
    ToldBetween,
    /// Plain pain in one region between two parts of a day.
    PainBetween {
        region: u8,
        score: u8,
    },
    /// What was asked and answered well was not asked: pain, what came with it, the asks, the class, marks, company.
    NoPain,
    NoFeatures,
    NoAsks,
    NoClass,
    NoMarks,
    NoCompany,
    /// A good event did not happen: a clean session, a day without anything to say, a quiet morning, an answer, a clearance,
    /// a sign-off, a move that was taken.
    NotTold,
    /// The event is told twice.
    Twice,
    /// The event is told after the next one of its day.
    Swapped,
    /// The session is told in two: some sets of each lift first, or some of the lifts.
    Split {
        sets: bool,
    },
    /// The last event of a day is written down after all the others.
    Late,
    /// Chest pain or a fall is told on the last day, of that day or of an earlier one: no word that was given before closes it.
    OfEarlier {
        fall: bool,
    },
    /// Chest pain, or an illness, at the end of a day.
    Symptom,
    Ill,
    /// A clearance is refused, or its last day is the day on which it is given, or it limits the effort or the range as well.
    Refused,
    Shorter,
    LimitsEffort,
    LimitsRange,
    /// A session with a belt is told in two, of which the second was without.
    MixedKit,
    /// Fewer discs throughout.
    Discs,
    /// The lifter's age is not known.
    Age,
}

pub fn any_worse() -> impl Strategy<Value = Worse> {
    let feature = prop::sample::select(vec![PainFeature::New, PainFeature::Rising, PainFeature::Sharp]);
    let class = prop::sample::select(vec![DayClass::Below, DayClass::BelowSingle, DayClass::Unknown]);
    prop_oneof![
        3 => (0_u8..3, 1_u8..8).prop_map(|(region, more)| Worse::Pain { region, more }),
        1 => feature.prop_map(Worse::Feature),
        1 => class.prop_map(Worse::Class),
        1 => (0_u8..5).prop_map(Worse::Asked),
        3 => prop::sample::select(vec![Worse::Missed, Worse::Lost, Worse::FewerReps, Worse::AnotherSaw]),
        2 => prop::sample::select(vec![Worse::EffortUnsaid, Worse::LessLeft, Worse::Easier]),
        1 => any::<bool>().prop_map(|low| Worse::LessReached { low }),
        1 => prop::sample::select(vec![Worse::LowerLimit, Worse::ToldBetween]),
        3 => Just(Worse::Late),
        1 => any::<bool>().prop_map(|fall| Worse::OfEarlier { fall }),
        2 => prop::sample::select(vec![Worse::Symptom, Worse::Ill, Worse::MixedKit]),
        2 => prop::sample::select(vec![
            Worse::Refused, Worse::Shorter, Worse::LimitsEffort, Worse::LimitsRange,
        ]),
        3 => prop::sample::select(vec![
            Worse::NoPain, Worse::NoFeatures, Worse::NoAsks, Worse::NoClass, Worse::NoMarks, Worse::NoCompany,
        ]),
        1 => Just(Worse::NotTold),
        2 => Just(Worse::Twice),
        2 => Just(Worse::Swapped),
        2 => any::<bool>().prop_map(|sets| Worse::Split { sets }),
    ]
}

/// What happens, and what of it is told worse: the first such thing from that event on.
#[derive(Clone)]
pub struct Case {
    pub drawn: Drawn,
    pub from: usize,
    pub worse: Worse,
}

impl std::fmt::Debug for Case {
    fn fmt(&self, to: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(to, "{:?} from {}: {:?}", self.worse, self.from, self.drawn)
    }
}

pub fn any_case() -> impl Strategy<Value = Case> {
    (any_course(), 1_usize..60, any_worse()).prop_map(|(drawn, from, worse)| Case { drawn, from, worse })
}

/// Where a list of answers stands in an event.
pub fn answers(kind: &mut EventKind) -> Option<&mut Option<Vec<PainAnswer>>> {
    match kind {
        EventKind::SessionRecorded(session) => Some(&mut session.pain),
        EventKind::DayReport(report) => Some(&mut report.pain),
        EventKind::NextDayReport(report) => Some(&mut report.pain),
        _ => None,
    }
}

fn session(kind: &mut EventKind) -> Option<&mut Session> {
    match kind {
        EventKind::SessionRecorded(session) => Some(session),
        _ => None,
    }
}

fn day(kind: &mut EventKind) -> Option<&mut DayReport> {
    match kind {
        EventKind::DayReport(report) => Some(report),
        _ => None,
    }
}

fn hurt_more(answer: &mut PainAnswer, more: u8) {
    answer.score = Pain::new((answer.score.score() + more).min(10)).unwrap();
}

/// The kind of event with that thing worse; none where it has no such thing.
fn worsened(kind: &EventKind, on: Day, worse: Worse) -> Option<EventKind> {
    let mut kind = kind.clone();
    let done = match worse {
        Worse::Pain { region, more } => {
            let id = name(REGIONS[usize::from(region)]);
            if let EventKind::PainReport(answer) = &mut kind {
                hurt_more(answer, more);
                return Some(kind);
            }
            let all = answers(&mut kind)?.as_mut()?;
            match all.iter_mut().find(|answer| answer.region == id) {
                Some(answer) => hurt_more(answer, more),
                None => all.push(Course::pain(REGIONS[usize::from(region)], more)),
            }
            true
        }
        Worse::Feature(feature) => {
            let answer = match &mut kind {
                EventKind::PainReport(answer) => Some(answer),
                kind => answers(kind)?.as_mut()?.first_mut(),
            };
            let features = answer?.features.get_or_insert_with(Vec::new);
            let new = !features.contains(&feature);
            features.push(feature);
            new
        }
        Worse::Class(class) => {
            let report = day(&mut kind)?;
            let rank = |class: Option<DayClass>| match class {
                Some(DayClass::Below) => 0,
                Some(DayClass::BelowSingle) => 1,
                Some(DayClass::Within | DayClass::Above) => 3,
                _ => 2,
            };
            let is_worse = rank(Some(class)) < rank(report.class);
            report.class = Some(class);
            is_worse
        }
        Worse::Asked(ask) => {
            let asks = day(&mut kind)?.asks.get_or_insert_with(Vec::new);
            let ask = Ask::ALL[usize::from(ask)];
            let new = !asks.contains(&ask);
            asks.push(ask);
            new
        }
        Worse::Missed => {
            let set = &mut session(&mut kind)?.lifts.first_mut()?.sets[0];
            !std::mem::replace(&mut set.failed, true)
        }
        Worse::Lost => {
            let set = &mut session(&mut kind)?.lifts.last_mut()?.sets[0];
            let brace =
                set.marks.as_mut()?.marks.iter_mut().find(|mark| mark.criterion.as_str() == "brace")?;
            std::mem::replace(&mut brace.mark, Mark::NotMet) != Mark::NotMet
        }
        Worse::FewerReps => {
            let set = &mut session(&mut kind)?.lifts.first_mut()?.sets[0];
            let clean = set.marks.as_ref()?.acceptable == Some(set.marks.as_ref()?.reps);
            let reps = u8::try_from(set.reps.halves() / 2).ok().filter(|reps| clean && *reps > 1)?;
            let fewer = Course::set_of(set.load, reps - 1, Quality::Clean);
            (set.reps, set.marks) = (fewer.reps, fewer.marks);
            true
        }
        Worse::AnotherSaw => {
            let set = &mut session(&mut kind)?.lifts.first_mut()?.sets[0];
            set.marks.as_ref()?;
            let reps = set.reps.halves() / 2;
            let marks = SetMarks::scored(reps, reps, Rater::Coach).with("brace", Mark::NotMet).unwrap();
            set.also_marked.push(marks.with_rater_id(name("another")));
            true
        }
        Worse::EffortUnsaid => {
            let lift = session(&mut kind)?.lifts.first_mut()?;
            lift.sets[0].effort.take().is_some()
        }
        Worse::LessLeft => {
            let set = &mut session(&mut kind)?.lifts.first_mut()?.sets[0];
            let Some(Effort::Rir(left)) = set.effort else { return None };
            set.effort = Some(Effort::Rir(Rir::whole(0)));
            left > Rir::whole(0)
        }
        Worse::LessReached { low } => {
            let lift = session(&mut kind)?.lifts.first_mut()?;
            let less = if low { 1.0 } else { 1_900.0 };
            lift.reached.replace(Length::from_mm(less).unwrap()).is_none()
        }
        Worse::Easier => {
            let lift = session(&mut kind)?.lifts.first_mut()?;
            lift.place.replace(Place::default()).is_none()
        }
        Worse::LowerLimit => {
            let EventKind::ClearanceRecorded(clearance) = &mut kind else { return None };
            let load = clearance.limits.iter_mut().find_map(|limit| limit.load.as_mut())?;
            *load = load.minus(kg(10.0)).ok()?;
            true
        }
        Worse::Refused | Worse::Shorter | Worse::LimitsEffort | Worse::LimitsRange => {
            let EventKind::ClearanceRecorded(clearance) = &mut kind else { return None };
            let limit = ClearanceLimits::default();
            match worse {
                Worse::Refused => clearance.status = ClearanceStatus::NotCleared,
                Worse::Shorter => clearance.expires = Some(on),
                Worse::LimitsEffort => clearance.limits.push(limit.with_effort(Rpe::new(5.0).unwrap())),
                _ => clearance.limits.push(limit.with_range(Length::from_mm(400.0).unwrap())),
            }
            true
        }
        _ => return forgotten(kind, worse),
    };
    done.then_some(kind)
}

/// The kind of event with something that was answered well not asked.
fn forgotten(mut kind: EventKind, worse: Worse) -> Option<EventKind> {
    match worse {
        Worse::NoPain => {
            let pain = answers(&mut kind)?;
            let none = pain.take()?.iter().all(|answer| answer.score == Pain::NONE && !answer.stops());
            none.then_some(kind)
        }
        Worse::NoFeatures => {
            let answer = match &mut kind {
                EventKind::PainReport(answer) => answer,
                kind => answers(kind)?.as_mut()?.first_mut()?,
            };
            let none = answer.features.take()?.is_empty();
            none.then_some(kind)
        }
        Worse::NoAsks => {
            let none = day(&mut kind)?.asks.take()?.is_empty();
            none.then_some(kind)
        }
        Worse::NoClass => {
            let class = day(&mut kind)?.class.take()?;
            matches!(class, DayClass::Within | DayClass::Above).then_some(kind)
        }
        Worse::NoMarks => {
            let lift = session(&mut kind)?.lifts.first_mut()?;
            let clean = lift.sets.iter().all(|set| {
                let lost =
                    |marks: &bismar::gate::SetMarks| marks.marks.iter().any(|mark| mark.mark != Mark::Met);
                set.marks.as_ref().is_some_and(|marks| marks.acceptable == Some(marks.reps) && !lost(marks))
            });
            lift.sets[0].marks = None;
            clean.then_some(kind)
        }
        _ => None,
    }
}

/// Whether an event takes something bad away or opens something, so that it is worse without it.
fn is_good_news(kind: &EventKind) -> bool {
    let none = |pain: &Option<Vec<PainAnswer>>| pain.as_ref().is_none_or(Vec::is_empty);
    let asked = |pain: &Option<Vec<PainAnswer>>| pain.as_ref().is_some_and(Vec::is_empty);
    match kind {
        EventKind::SessionRecorded(session) => asked(&session.pain) && session.lifts.iter().all(is_clean),
        EventKind::DayReport(report) => {
            let well = matches!(report.class, Some(DayClass::Within | DayClass::Above));
            none(&report.pain) && well && report.asks.as_ref().is_none_or(Vec::is_empty)
        }
        EventKind::NextDayReport(report) => none(&report.pain),
        EventKind::ClearanceRecorded(clearance) => {
            clearance.status == ClearanceStatus::Cleared && clearance.limits.is_empty()
        }
        EventKind::CoachSignOff(_) | EventKind::AskAnswered(_) | EventKind::AdvanceAccepted(_) => true,
        _ => false,
    }
}

/// Whether it is training on a day on which pain was told: that the strict lift of a pair was trained then eases the other one, so
/// that it is no good news.
fn is_trained_in_pain(events: &[Event], at: usize) -> bool {
    let hurts = |event: &Event| {
        let mut kind = event.kind.clone();
        let told = match &kind {
            EventKind::PainReport(answer) => Some(vec![answer.clone()]),
            _ => answers(&mut kind).and_then(|all| all.clone()),
        };
        told.is_some_and(|all| all.iter().any(|answer| answer.score > Pain::NONE))
    };
    let day = events[at].day;
    let trained = matches!(events[at].kind, EventKind::SessionRecorded(_));
    trained && events.iter().any(|event| event.day == day && hurts(event))
}

/// Whether every set was done, and whoever saw it lost nothing.
fn is_clean(lift: &LiftSession) -> bool {
    let clean = |marks: &SetMarks| {
        marks.acceptable == Some(marks.reps) && marks.marks.iter().all(|mark| mark.mark == Mark::Met)
    };
    lift.sets
        .iter()
        .all(|set| !set.failed && set.marks.as_ref().is_some_and(clean) && set.also_marked.iter().all(clean))
}

/// Events of which two of one day may be told in either order: what is said, and not what is done about it. The level of
/// pain before training is told before it, and an answer closes what was asked before it.
fn is_said(kind: &EventKind) -> bool {
    matches!(
        kind,
        EventKind::PainReport(_)
            | EventKind::DayReport(_)
            | EventKind::SessionMissed(_)
            | EventKind::SymptomReport(_)
            | EventKind::BodyMassRecorded(_)
            | EventKind::Unknown(_)
    )
}

/// Both logs, the worse with one thing worse at or after that place, and the place in the better one where it begins;
/// none where the log has no such thing.
pub fn both(log: &Log, from: usize, worse: Worse) -> Option<(Log, Log, usize)> {
    let mut better = log.clone();
    // Room for one more event after each.
    for event in &mut better.events {
        event.sequence *= 10;
        if let EventKind::NextDayReport(report) = &mut event.kind {
            report.session *= 10;
        }
    }
    let at = (0..log.events.len()).map(|at| (at + from) % log.events.len());
    for at in at.filter(|at| *at > 0) {
        let mut events = better.events.clone();
        let changed = match worse {
            Worse::NoCompany => accompanied(&events[at].kind).map(|kind| better.events[at].kind = kind),
            Worse::NotTold => {
                let good = is_good_news(&events[at].kind) && !is_trained_in_pain(&events, at);
                good.then(|| drop(events.remove(at)))
            }
            Worse::Twice => twice(&mut events, at),
            Worse::Swapped => swapped(&mut events, at),
            Worse::Split { sets } => split(&mut events, at, sets),
            Worse::ToldBetween => {
                let sign = SymptomReport::new(vec![StopSign::ChestPain]);
                told_between(&mut events, at, EventKind::SymptomReport(sign))
            }
            Worse::PainBetween { region, score } => {
                let pain = Course::pain(REGIONS[usize::from(region)], score);
                told_between(&mut events, at, EventKind::PainReport(pain))
            }
            Worse::Late => late(&mut events, at),
            Worse::OfEarlier { fall } => of_earlier(&mut better.events, &mut events, at, fall),
            Worse::Symptom | Worse::Ill => told_at_night(&mut events, at, worse),
            Worse::MixedKit => {
                belted(&mut better.events);
                let mut both = better.events.clone();
                mixed_kit(&mut both, &mut better.events, at).map(|()| events = both)
            }
            _ => worsened(&events[at].kind, events[at].day, worse).map(|kind| events[at].kind = kind),
        };
        // What is told last is compared from then on.
        let at = if matches!(worse, Worse::OfEarlier { .. }) { better.events.len() - 1 } else { at };
        if changed.is_some() {
            let log = better.clone().with_events(events);
            return Some((better, log, at));
        }
    }
    None
}

/// A session of which somebody says that others were by the bar, where nothing was said of its first lift: the better one.
fn accompanied(kind: &EventKind) -> Option<EventKind> {
    let mut kind = kind.clone();
    let setup = &mut session(&mut kind)?.lifts.first_mut()?.setup;
    setup.is_none().then(|| *setup = Some(Setup::default().with_company(ByTheBar::Others)))?;
    Some(kind)
}

/// Told twice. A session told twice is two sessions, whose sets add up; that another person marks, told twice, is that
/// the first one marks again.
fn twice(events: &mut Vec<Event>, at: usize) -> Option<()> {
    let again = events[at].clone().with_sequence(events[at].sequence + 1);
    let adds_up = matches!(again.kind, EventKind::SessionRecorded(_) | EventKind::RaterChanged(_));
    (!adds_up).then(|| events.insert(at + 1, again))
}

fn swapped(events: &mut [Event], at: usize) -> Option<()> {
    let (first, second) = (events.get(at)?, events.get(at + 1)?);
    // Of two body masses the later one stands.
    let masses = |event: &Event| matches!(event.kind, EventKind::BodyMassRecorded(_));
    let may = first.day == second.day && is_said(&first.kind) && is_said(&second.kind);
    let may = may && !(masses(first) && masses(second));
    may.then(|| {
        let (one, other) = (events[at].sequence, events[at + 1].sequence);
        (events[at].sequence, events[at + 1].sequence) = (other, one);
        events.swap(at, at + 1);
    })
}

/// Whether nothing else is told on the day of that event after it.
fn is_last_of_its_day(events: &[Event], at: usize) -> bool {
    events.get(at + 1).is_none_or(|next| next.day > events[at].day)
}

/// The same event under a number above all others. What a word closes was told before it either way, and so was a session before
/// what is asked of it.
fn late(events: &mut [Event], at: usize) -> Option<()> {
    let told = |kind: &EventKind| !matches!(kind, EventKind::ParametersChanged(_) | EventKind::Correction(_));
    let may = is_last_of_its_day(events, at) && told(&events[at].kind) && at + 1 < events.len();
    may.then(|| {
        let number = events[at].sequence;
        let last = events.iter().map(|event| event.sequence).max().unwrap() + 1;
        events[at].sequence = last;
        for event in events.iter_mut() {
            if let EventKind::NextDayReport(report) = &mut event.kind
                && report.session == number
            {
                report.session = last;
            }
        }
    })
}

/// Told last, of the last day, and of the day of that event.
fn of_earlier(better: &mut Vec<Event>, worse: &mut Vec<Event>, at: usize, fall: bool) -> Option<()> {
    let (day, today) = (worse[at].day, worse.last()?.day);
    let number = worse.iter().map(|event| event.sequence).max()? + 1;
    let kind = if fall {
        EventKind::DayReport(DayReport::default().with_asks(vec![Ask::Fall]))
    } else {
        EventKind::SymptomReport(SymptomReport::new(vec![StopSign::ChestPain]))
    };
    let may = is_last_of_its_day(worse, at) && day < today;
    may.then(|| {
        better.push(Event::new(number, today, kind.clone()));
        worse.insert(at + 1, Event::new(number, day, kind));
    })
}

fn told_at_night(events: &mut Vec<Event>, at: usize, worse: Worse) -> Option<()> {
    let day = events[at].day;
    let kind = match worse {
        Worse::Symptom => EventKind::SymptomReport(SymptomReport::new(vec![StopSign::ChestPain])),
        _ => EventKind::LayoffNoted(Layoff::new(day, LayoffReason::Ill)),
    };
    let told = Event::new(events[at].sequence + 1, day, kind);
    is_last_of_its_day(events, at).then(|| events.insert(at + 1, told))
}

fn worn(words: &[&str]) -> Setup {
    Setup::default().with_kit(words.iter().map(|word| name(word)).collect::<Vec<_>>())
}

/// In every session it is said that no kit was worn.
fn belted(events: &mut [Event]) {
    for lift in events.iter_mut().filter_map(|event| session(&mut event.kind)).flat_map(|all| &mut all.lifts)
    {
        let setup = lift.setup.take().unwrap_or_default();
        lift.setup = Some(setup.with_kit(worn(&[]).kit));
    }
}

/// The session was done with a belt: all of it in the better one, and its first sets in the other.
fn mixed_kit(worse: &mut Vec<Event>, better: &mut [Event], at: usize) -> Option<()> {
    let wear = |event: &mut Event| {
        for lift in &mut session(&mut event.kind)?.lifts {
            let setup = lift.setup.take().unwrap_or_default();
            lift.setup = Some(setup.with_kit(worn(&["belt"]).kit));
        }
        Some(())
    };
    wear(&mut better[at])?;
    wear(&mut worse[at])?;
    split(worse, at, true)?;
    for lift in &mut session(&mut worse[at + 1].kind)?.lifts {
        let setup = lift.setup.take().unwrap_or_default();
        lift.setup = Some(setup.with_kit(worn(&[]).kit));
    }
    Some(())
}

/// Told after the first of two sessions of a day in which one lift was trained twice.
fn told_between(events: &mut Vec<Event>, at: usize, told: EventKind) -> Option<()> {
    let of = |at: usize| match &events.get(at)?.kind {
        EventKind::SessionRecorded(session) => Some((events[at].day, session)),
        _ => None,
    };
    let ((day, first), (same, second)) = (of(at)?, of(at + 1)?);
    let again = second.lifts.iter().any(|lift| first.lifts.iter().any(|done| done.lift == lift.lift));
    let between = Event::new(events[at].sequence + 1, day, told);
    (again && day == same).then(|| events.insert(at + 1, between))
}

/// The same session in two parts, with what was said of pain in both.
fn split(events: &mut Vec<Event>, at: usize, sets: bool) -> Option<()> {
    let event = events[at].clone();
    let EventKind::SessionRecorded(whole) = &event.kind else { return None };
    let (first, second): (Vec<LiftSession>, Vec<LiftSession>) = if sets {
        let part = |lift: &LiftSession| {
            let (one, other) = lift.sets.split_at(lift.sets.len().div_ceil(2));
            let of = |sets: &[WorkSet]| lift.clone().with_sets(sets.to_vec());
            (of(one), of(other))
        };
        let (first, second): (Vec<_>, Vec<_>) = whole.lifts.iter().map(part).unzip();
        (first, second.into_iter().filter(|lift| !lift.sets.is_empty()).collect())
    } else {
        let (one, other) = whole.lifts.split_at(whole.lifts.len() / 2);
        (one.to_vec(), other.to_vec())
    };
    if first.is_empty() || second.is_empty() {
        return None;
    }
    let part = |lifts| EventKind::SessionRecorded(whole.clone().with_lifts(lifts));
    events[at].kind = part(first);
    let later = event.clone().with_sequence(event.sequence + 1).with_kind(part(second));
    events.insert(at + 1, later);
    Some(())
}
