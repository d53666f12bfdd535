//! Worse is never better: where a report says something worse, a fact is missing, an event of a day is told twice or in
//! another order, a session is told in two parts, names differ or discs are fewer, nothing more is granted or asked for on
//! that day or any later one.
//!
//! Two logs are compared that are the same but for one thing. What a coach does later answers to what stood in the better
//! one, so that acts which name a place or a load by hand are left out; the rest happens in both.

use super::compare::*;
use super::course::*;
use super::moves::crate_cases;
use bismar::condition::DayClass;
use bismar::error::Code;
use bismar::gate::{Mark, Outcome};
use bismar::prescription::{LiftToday, next_session_from};
use bismar::progression::{Decision, MoveOutlook, Sitting, State, fold};
use bismar::quantity::{Day, Name, Pain};
use bismar::reason::Reason;
use bismar::record::*;
use proptest::prelude::*;

/// Why a lift is no longer held against the better course, once and for the rest of it. Each is a rule that is stated
/// elsewhere, and not a fault.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Excuse {
    /// It passed at its grant where the better course did not pass at the same one: from here on it is granted what it has
    /// shown itself.
    ShownItself,
    /// One move at a time in a region, in a pair and in a window of weeks: where a worse report holds one, its turn goes to
    /// another, or to a later day.
    ItsTurn,
    /// The better course alone went to a harder rung, which costs load: back on the rung that both had, it stands lower.
    HarderRung,
    /// It was trained while the worse course was stopped: that is against the stop and is not judged, so that it costs no
    /// step back either. The stop has cost one.
    TrainedDuringAStop,
    /// A fail on a confirmed bad day says nothing, and the worse day is confirmed.
    BadDay,
    /// A pass whose morning nobody asked about keeps the run shut until it is answered; a session that does not count toward
    /// the run waits for no answer.
    Unanswered,
    /// Where nobody asked before training, the level that is agreed to be usual stands for what hurt then.
    UsualLevel,
    /// What hurts before training is the level that the morning after is held against, so that more of it before makes a
    /// flare of less.
    LevelBefore,
}

/// One log, event by event.
#[derive(Clone)]
struct Told {
    log: Log,
    state: State,
    /// Number of events taken.
    taken: usize,
}

impl Told {
    fn new(log: Log) -> Told {
        let state = State::before(&log);
        Told { log, state, taken: 0 }
    }

    /// Takes every event up to that day and number. An event that is turned away makes the log unreadable.
    fn up_to(&mut self, key: (Day, u32)) -> Result<(), Code> {
        while let Some(event) =
            self.log.events.get(self.taken).filter(|event| (event.day, event.sequence) <= key)
        {
            let applied = self.state.apply(event);
            self.taken += 1;
            match applied {
                Err(error) if error.code() == Code::NeedsRefold => {
                    let events = self.log.events[..self.taken].to_vec();
                    self.state = fold(&Log { events, ..self.log.clone() }).map_err(|error| error.code())?;
                }
                other => other.map_err(|error| error.code())?,
            }
        }
        Ok(())
    }
}

/// What is worse about one log.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Worse {
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
    /// What was asked and answered well was not asked: pain, what came with it, the asks, the class, marks, company.
    NoPain,
    NoFeatures,
    NoAsks,
    NoClass,
    NoMarks,
    NoCompany,
    /// A good event did not happen: an answer, a clearance, a sign-off, a body mass.
    NotTold,
    /// The event is told twice.
    Twice,
    /// The event is told after the next one of its day.
    Swapped,
    /// The session is told in two: some sets of each lift first, or some of the lifts.
    Split {
        sets: bool,
    },
}

fn any_worse() -> impl Strategy<Value = Worse> {
    let feature = prop::sample::select(vec![PainFeature::New, PainFeature::Rising, PainFeature::Sharp]);
    let class = prop::sample::select(vec![DayClass::BadAgreeing, DayClass::BadSingle, DayClass::Unknown]);
    prop_oneof![
        3 => (0_u8..3, 1_u8..8).prop_map(|(region, more)| Worse::Pain { region, more }),
        1 => feature.prop_map(Worse::Feature),
        1 => class.prop_map(Worse::Class),
        1 => (0_u8..5).prop_map(Worse::Asked),
        3 => prop::sample::select(vec![Worse::Missed, Worse::Lost, Worse::FewerReps]),
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
struct Case {
    drawn: Drawn,
    from: usize,
    worse: Worse,
}

impl std::fmt::Debug for Case {
    fn fmt(&self, to: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(to, "{:?} from {}: {:?}", self.worse, self.from, self.drawn)
    }
}

fn any_case() -> impl Strategy<Value = Case> {
    (any_course(), 1_usize..60, any_worse()).prop_map(|(drawn, from, worse)| Case { drawn, from, worse })
}

/// Where a list of answers stands in an event.
fn answers(kind: &mut EventKind) -> Option<&mut Option<Vec<PainAnswer>>> {
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
fn worsened(kind: &EventKind, worse: Worse) -> Option<EventKind> {
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
                Some(DayClass::BadAgreeing) => 0,
                Some(DayClass::BadSingle) => 1,
                Some(DayClass::Ordinary | DayClass::Good) => 3,
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
            matches!(class, DayClass::Ordinary | DayClass::Good).then_some(kind)
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
        Worse::NoCompany => {
            let setup = session(&mut kind)?.lifts.first_mut()?.setup.take()?;
            (setup.is_unguarded() == Some(false)).then_some(kind)
        }
        _ => None,
    }
}

/// Whether an event takes something bad away or opens something, so that it is worse without it.
fn is_good_news(kind: &EventKind) -> bool {
    let none = |pain: &Option<Vec<PainAnswer>>| pain.as_ref().is_none_or(Vec::is_empty);
    match kind {
        EventKind::NextDayReport(report) => none(&report.pain),
        EventKind::ClearanceRecorded(clearance) => {
            clearance.status == ClearanceStatus::Cleared && clearance.limits.is_empty()
        }
        EventKind::CoachSignOff(_) | EventKind::AskAnswered(_) | EventKind::AdvanceAccepted(_) => true,
        _ => false,
    }
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
fn both(log: &Log, from: usize, worse: Worse) -> Option<(Log, Log, usize)> {
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
            Worse::NotTold => is_good_news(&events[at].kind).then(|| drop(events.remove(at))),
            Worse::Twice => twice(&mut events, at),
            Worse::Swapped => swapped(&mut events, at),
            Worse::Split { sets } => split(&mut events, at, sets),
            _ => worsened(&events[at].kind, worse).map(|kind| events[at].kind = kind),
        };
        if changed.is_some() {
            let log = Log { events, ..better.clone() };
            return Some((better, log, at));
        }
    }
    None
}

/// Told twice. A session told twice is two sessions, whose sets add up; that another person marks, told twice, is that
/// the first one marks again.
fn twice(events: &mut Vec<Event>, at: usize) -> Option<()> {
    let again = Event { sequence: events[at].sequence + 1, ..events[at].clone() };
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

/// The same session in two parts, with what was said of pain in both.
fn split(events: &mut Vec<Event>, at: usize, sets: bool) -> Option<()> {
    let event = events[at].clone();
    let EventKind::SessionRecorded(whole) = &event.kind else { return None };
    let (first, second): (Vec<LiftSession>, Vec<LiftSession>) = if sets {
        let part = |lift: &LiftSession| {
            let (one, other) = lift.sets.split_at(lift.sets.len().div_ceil(2));
            let of = |sets: &[WorkSet]| LiftSession { sets: sets.to_vec(), ..lift.clone() };
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
    let part = |lifts| EventKind::SessionRecorded(Session { lifts, ..whole.clone() });
    events[at].kind = part(first);
    let later = Event { sequence: event.sequence + 1, kind: part(second), ..event.clone() };
    events.insert(at + 1, later);
    Some(())
}

/// Both courses side by side, lift by lift.
struct Held {
    better: Told,
    worse: Told,
    excuses: Vec<Option<Excuse>>,
    /// What became of every lift so far, to be read where something was found.
    story: Vec<String>,
}

impl Held {
    fn new(better: Log, worse: Log) -> Held {
        Held { better: Told::new(better), worse: Told::new(worse), excuses: Vec::new(), story: Vec::new() }
    }

    fn tell(&mut self, key: (Day, u32)) {
        let kind = |told: &Told| told.log.events[..told.taken].last().map_or("", |event| event.kind.name());
        let mut line = format!("{} {} {} / {}", key.0, key.1, kind(&self.better), kind(&self.worse));
        for (one, other) in all_stand(&self.better.state).iter().zip(all_stand(&self.worse.state)) {
            let of = |lift: &Stands<'_>| {
                let grant = lift.grant;
                let sitting = lift.sittings.last().map(|last| (last.session, last.outcome, last.confirmed));
                let (place, work) = (grant.place, grant.work);
                format!(
                    "{} r{}{}{} {}x{}x{} f{} p{} h{} {sitting:?}",
                    lift.status,
                    place.rung,
                    place.range,
                    place.tempo,
                    work.sets,
                    work.reps,
                    work.load.kg(),
                    lift.fails,
                    lift.passes(),
                    lift.half_sessions
                )
            };
            line += &format!("\n    {} | {}", of(one), of(&other));
        }
        self.story.push(line);
    }

    /// Takes what happens up to then; none where the worse log cannot be read.
    fn up_to(&mut self, key: (Day, u32), worse: Worse) -> Result<Option<()>, TestCaseError> {
        let before = (self.better.clone(), self.worse.clone());
        self.better.up_to(key).expect("the better log can be read");
        if self.worse.up_to(key).is_err() {
            return Ok(None);
        }
        self.excuses.resize(self.better.state.lifts().len(), None);
        self.tell(key);
        for at in 0..before.0.state.lifts().len() {
            if self.excuses[at].is_none() {
                self.excuses[at] = self.excuse(at, &before, key.0, worse)?;
            }
        }
        Ok(Some(()))
    }

    fn excuse(
        &self,
        at: usize,
        before: &(Told, Told),
        on: Day,
        worse: Worse,
    ) -> Result<Option<Excuse>, TestCaseError> {
        let (one, other) = (stands(&self.worse.state, at), stands(&self.better.state, at));
        let (then, other_then) = (stands(&before.1.state, at), stands(&before.0.state, at));
        let set = &self.worse.state.parameters().unwrap().lifts[at];
        let trained = one.last_session == Some(on) && then.last_session != Some(on);
        // A pass that gave back the load before a short break leaves no sitting behind.
        let restored =
            |lift: &Stands<'_>| lift.here.0 == 0 && [HOLDING, LEARNING, MAINTAINING].contains(&lift.status);
        let passed = |lift: &Stands<'_>| {
            restored(lift) || lift.sittings.last().is_some_and(|last| last.outcome == Outcome::Pass)
        };
        if trained && then.status == STOPPED && other_then.status != STOPPED {
            return Ok(Some(Excuse::TrainedDuringAStop));
        }
        let same = then.grant == other_then.grant;
        if trained && passed(&one) && !(same && passed(&other)) {
            return Ok(Some(Excuse::ShownItself));
        }
        let usual = |id: &Name| self.worse.state.region(id).is_some_and(|region| region.usual.is_some());
        if matches!(worse, Worse::NoPain | Worse::NotTold) && trained && set.regions.iter().any(usual) {
            return Ok(Some(Excuse::UsualLevel));
        }
        if matches!(worse, Worse::Pain { .. }) && trained && self.hurt_before(at, on) {
            return Ok(Some(Excuse::LevelBefore));
        }
        if worse == Worse::Class(DayClass::BadAgreeing) && one.neutral > other.neutral {
            return Ok(Some(Excuse::BadDay));
        }
        let open = |sitting: &&Sitting| sitting.outcome == Outcome::Pass && !sitting.confirmed;
        let mut unanswered = other.now.sittings.iter().filter(open);
        let counts =
            |session: u32| one.sittings.iter().filter(open).any(|sitting| sitting.session == session);
        if unanswered.any(|sitting| !counts(sitting.session)) {
            return Ok(Some(Excuse::Unanswered));
        }
        if set.is_harder(other.grant.place.rung, one.grant.place.rung)
            && other.moves.last() != other_then.moves.last()
        {
            return Ok(Some(Excuse::HarderRung));
        }
        let moved = |now: &Stands<'_>, before: &Stands<'_>| now.moves.last() != before.moves.last();
        if !moved(&one, &then) || moved(&other, &other_then) {
            return Ok(None);
        }
        // It moved where the better course did not: it catches up, or the better one only waits for its turn.
        let decision = self.better.state.decide(on).unwrap().swap_remove(at);
        let after = with(&decision, |decision| decision.grant = one.grant);
        if granted_more(set, &with(&after, |after| after.limit = one.grant.load()), &decision).is_none() {
            return Ok(None);
        }
        let MoveOutlook::Blocked { by, .. } = &decision.outlook else { return Ok(Some(Excuse::ItsTurn)) };
        let story = self.story.join("\n");
        prop_assert!(
            by.iter().all(only_waits),
            "{} moved, where better was held by {by:?}\n{story}",
            set.id.as_str()
        );
        Ok(Some(Excuse::ItsTurn))
    }

    /// Whether more pain in a region of the lift was told on that day outside training in the worse course.
    fn hurt_before(&self, at: usize, on: Day) -> bool {
        let said = |log: &Log| -> Vec<PainAnswer> {
            let today = log.events.iter().filter(|event| event.day == on);
            let reports = today.filter(|event| !matches!(event.kind, EventKind::SessionRecorded(_)));
            let mut all = Vec::new();
            for event in reports {
                let mut kind = event.kind.clone();
                match &mut kind {
                    EventKind::PainReport(answer) => all.push(answer.clone()),
                    kind => all.extend(answers(kind).and_then(|pain| pain.take()).unwrap_or_default()),
                }
            }
            all
        };
        let (worse, better) = (said(&self.worse.log), said(&self.better.log));
        let set = &self.worse.state.parameters().unwrap().lifts[at];
        worse.iter().any(|answer| set.regions.contains(&answer.region) && !better.contains(answer))
    }

    /// Nothing more is granted, asked or on offer on that day.
    fn compare(&self, today: Day) -> Result<(), TestCaseError> {
        let (worse, better) = (Day1::of(&self.worse.state, today), Day1::of(&self.better.state, today));
        let sets = &self.worse.state.parameters().unwrap().lifts;
        for (at, set) in sets.iter().enumerate().filter(|(at, _)| self.excuses[*at].is_none()) {
            let (one, other) = (&worse.decisions[at], &better.decisions[at]);
            let more = granted_more(set, one, other)
                .or_else(|| asked_more(set, &worse.session[at], &better.session[at]));
            prop_assert!(
                more.is_none(),
                "{} on {today}: {}\n{}",
                set.id.as_str(),
                more.unwrap(),
                self.story.join("\n")
            );
            offers_more(set, one, other, &self.story)?;
        }
        Ok(())
    }
}

/// What is decided and prescribed on one day.
struct Day1 {
    decisions: Vec<Decision>,
    session: Vec<LiftToday>,
}

impl Day1 {
    fn of(state: &State, today: Day) -> Day1 {
        let plan = Plan::of(state.parameters().unwrap().lifts.iter().map(|lift| lift.id.clone()));
        let session = next_session_from(state, &plan, today).unwrap().lifts;
        Day1 { decisions: state.decide(today).unwrap(), session }
    }
}

/// Reasons that end by waiting for a turn.
fn only_waits(reason: &Reason) -> bool {
    matches!(
        reason,
        Reason::CoolingOff { .. }
            | Reason::RegionWindow { .. }
            | Reason::PairWindow { .. }
            | Reason::WindowCap { .. }
    )
}

/// A move on offer in the worse course alone leads no further than the better one stands, or the better one waits for its
/// turn.
fn offers_more(
    set: &LiftParameters,
    worse: &Decision,
    better: &Decision,
    story: &[String],
) -> Result<(), TestCaseError> {
    let (MoveOutlook::OnOffer { to }, MoveOutlook::Blocked { by, .. }) = (&worse.outlook, &better.outlook)
    else {
        return Ok(());
    };
    let there = with(worse, |there| (there.grant, there.limit) = (*to, better.limit));
    let catches_up = granted_more(set, &there, better).is_none();
    prop_assert!(
        catches_up || by.iter().all(only_waits),
        "{}: {to:?} on offer, where better is held by {by:?}\n{}",
        set.id.as_str(),
        story.join("\n")
    );
    Ok(())
}

/// What may happen in both courses: not what a coach names by hand, which answers to what stood in the better one.
fn happens(step: &Step) -> bool {
    let by_hand = matches!(
        step,
        Step::Override { up: true, .. } | Step::Decline(_) | Step::Rung { .. } | Step::ByHand { .. }
    );
    !by_hand && !matches!(step, Step::Parameters(_))
}

/// What happens in both. Where the rule itself takes moves, it takes one at the report that allows it, and what is told
/// after that comes too late: the order in which a day is told is compared where a coach takes them.
fn course(case: &Case) -> Course {
    let steps = case.drawn.steps.iter().filter(|step| happens(step)).cloned().collect();
    let world = case.drawn.world.clone();
    let automatic = world.automatic && case.worse != Worse::Swapped;
    Course::of(&Drawn { world: World { automatic, ..world }, steps })
}

/// Holds the worse log against the better one after each event (or each day) from that place on, and for half a year after
/// the last.
fn hold(better: Log, worse: Log, from: usize, told: Worse) -> Result<(), TestCaseError> {
    // Within a day the parts of what is told otherwise are not all there yet.
    let whole_days = matches!(told, Worse::Twice | Worse::Swapped | Worse::Split { .. });
    let keys: Vec<(Day, u32)> = better.events.iter().map(|event| (event.day, event.sequence)).collect();
    let mut held = Held::new(better, worse);
    for (at, (day, number)) in keys.iter().enumerate() {
        let next = keys.get(at + 1).map(|(day, _)| *day);
        if whole_days && next == Some(*day) {
            continue;
        }
        let key = if whole_days { (*day, u32::MAX) } else { (*day, *number) };
        if held.up_to(key, told)?.is_none() {
            return Ok(());
        }
        if at < from {
            continue;
        }
        held.compare(*day)?;
        let until = next.unwrap_or(day.plus(200).unwrap());
        for days in [1, 3, 12, 30, 60, 199] {
            let later = day.plus(days).unwrap();
            if later < until {
                held.compare(later)?;
            }
        }
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig { max_global_rejects: 1024 + 4 * crate_cases(), ..ProptestConfig::with_cases(crate_cases()) })]

    #[test]
    fn worse_is_never_better(case in any_case()) {
        let course = course(&case);
        let pair = both(&course.log, case.from, case.worse);
        prop_assume!(pair.is_some());
        let (better, told, at) = pair.unwrap();
        hold(better, told, at, case.worse)?;
    }
}
