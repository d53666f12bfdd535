//! What looks odd in this log?

use alloc::vec::Vec;

use super::diary::Diary;
use super::lacking::Lacking;
use super::load_slip::load_slip;
use super::oddity::{Odd, Oddity, Slip};
use crate::caution::Caution;
use crate::error::Error;
use crate::gate::{Mark, Rater, SetMarks};
use crate::loading::Implement;
use crate::numeric;
use crate::progression::{FALL_DAYS, FALL_PART};
use crate::quantity::{Day, Mass, Name, Reserve};
use crate::reason::Reason;
use crate::record::{
    Effective, Effort, Event, EventKind, LiftSession, Log, Override, Parameters, Session, WorkSet,
};

/// Sessions in a row without one doubtful mark, from which a gate is said to tell nothing (our choice).
const PERFECT_SESSIONS: usize = 20;
/// A difference between two weighings of the first over this is a likely slip of the pen: a tenth (our choice).
const MASS_JUMP: u64 = 10;
/// Sessions of a lift over which a habit is looked for, and from how often it is one (our choice).
const LAST: usize = 20;
const OFTEN: usize = 5;

/// One session of a lift, as far as its marks go.
struct Looked {
    day: Day,
    scored: bool,
    own: bool,
    perfect: bool,
}

/// What is kept of one lift on the way through the log.
struct LiftLook {
    lift: Name,
    /// The load that the next one is held against.
    expected: Option<Mass>,
    /// The kind of its implement, and of those before it what was expected there.
    kind: Option<&'static str>,
    left: Vec<(Option<&'static str>, Option<Mass>)>,
    /// A load that looked like a slip in the session before: twice in a row it is what was lifted.
    doubted: Option<Mass>,
    sessions: Vec<Looked>,
    overrides: Vec<(Day, bool)>,
}

/// The walk through the log.
#[derive(Default)]
struct Looking<'e> {
    found: Vec<Oddity>,
    lifts: Vec<LiftLook>,
    masses: Vec<(Day, Mass)>,
    sessions: u32,
    unknown: u32,
    same_day: Vec<(Day, u32, &'e Session)>,
}

impl Looked {
    fn at(done: &LiftSession, day: Day) -> Looked {
        let marks: Vec<&SetMarks> = done.sets.iter().flat_map(WorkSet::all_marks).collect();
        let counted: Vec<&&SetMarks> = marks.iter().filter(|set| set.acceptable.is_some()).collect();
        let doubtful = |set: &&SetMarks| {
            set.misses().is_some_and(|misses| misses > 0)
                || set.first_failing_rep.is_some()
                || set.marks.iter().any(|each| matches!(each.mark, Mark::Borderline | Mark::NotMet))
        };
        Looked {
            day,
            scored: !counted.is_empty(),
            own: counted.iter().all(|set| set.rater == Rater::Lifter),
            perfect: !marks.iter().any(doubtful) && !done.sets.iter().any(|set| set.failed),
        }
    }
}

impl<'e> Looking<'e> {
    fn lift(&mut self, id: &Name) -> Option<&mut LiftLook> {
        if !self.lifts.iter().any(|look| look.lift == *id) {
            let new = LiftLook {
                lift: id.clone(),
                expected: None,
                kind: None,
                left: Vec::new(),
                doubted: None,
                sessions: Vec::new(),
                overrides: Vec::new(),
            };
            self.lifts.push(new);
        }
        self.lifts.iter_mut().find(|look| look.lift == *id)
    }

    fn find(&mut self, event: &Event, lift: Option<&Name>, what: Odd) {
        let found = Oddity::new(event.day, what);
        self.found.push(Oddity { event: Some(event.sequence), lift: lift.cloned(), ..found });
    }

    /// Looks at the next event in order.
    fn look(&mut self, event: &'e Event) {
        match &event.kind {
            EventKind::SessionRecorded(session) => self.session(event, session),
            EventKind::BodyMassRecorded(mass) => self.weighed(event, *mass),
            EventKind::CoachOverride(given) => self.overruled(event, given),
            EventKind::ClearanceRecorded(given) => self.ends(event, given.expires),
            EventKind::ParametersChanged(all) => self.parameters(all),
            EventKind::Unknown(_) => self.unknown += 1,
            _ => {}
        }
    }

    fn parameters(&mut self, all: &Parameters) {
        for set in &all.lifts {
            let kind = all.implement(&set.implement).map(Implement::kind);
            if let Some(look) = self.lift(&set.id) {
                look.take_up(kind);
                look.expected = look.expected.or(Some(set.start.load()));
            }
        }
    }

    fn ends(&mut self, event: &Event, end: Option<Day>) {
        if let Some(end) = end.filter(|end| *end < event.day) {
            self.find(event, None, Odd::EndsBeforeItBegins { end });
        }
    }

    fn weighed(&mut self, event: &Event, to: Mass) {
        if let Some((since, from)) = self.masses.last().copied() {
            let part = to.kg() / from.kg() - 1.0;
            let moved = to.nanograms().abs_diff(from.nanograms());
            if moved >= from.nanograms().unsigned_abs() / MASS_JUMP {
                let slip = load_slip(from, to);
                self.find(event, None, Odd::MassJump { from, since, to, part: numeric::tidy(part), slip });
            }
        }
        self.masses.push((event.day, to));
    }

    fn overruled(&mut self, event: &Event, given: &Override) {
        self.ends(event, given.expires);
        let Some(look) = self.lift(&given.lift) else { return };
        look.overrides.push((event.day, given.expires.is_none()));
        if let Some((expected, slip)) =
            look.expected.and_then(|last| Some((last, load_slip(last, given.load)?)))
        {
            self.find(event, Some(&given.lift), Odd::LoadSlip { load: given.load, expected, slip });
        }
    }

    fn session(&mut self, event: &'e Event, session: &'e Session) {
        self.sessions = self.sessions.saturating_add(1);
        self.same_day.retain(|(day, ..)| *day == event.day);
        if let Some((_, other, _)) = self.same_day.iter().find(|(.., earlier)| *earlier == session) {
            let other = *other;
            self.find(event, None, Odd::SameSessionTwice { other });
        }
        self.same_day.push((event.day, event.sequence, session));
        for done in &session.lifts {
            self.done(event, done);
        }
    }

    fn done(&mut self, event: &Event, done: &LiftSession) {
        for effort in done.sets.iter().filter_map(contradiction) {
            self.find(event, Some(&done.lift), Odd::MissedWithReserve { effort });
        }
        let Some(look) = self.lift(&done.lift) else { return };
        look.sessions.push(Looked::at(done, event.day));
        for (load, expected, slip) in look.loads(done) {
            self.find(event, Some(&done.lift), Odd::LoadSlip { load, expected, slip });
        }
    }
}

impl Looking<'_> {
    /// The fall of body mass that stands on that day, by the rule of the caution beside every session.
    fn falling(&self, today: Day) -> Option<Oddity> {
        let known = || self.masses.iter().filter(|(day, _)| *day <= today);
        let (day, to) = *known().next_back()?;
        let recent = known().filter(|(day, _)| today.since(*day) <= FALL_DAYS);
        let (since, from) = recent.copied().reduce(|most, next| if next.1 > most.1 { next } else { most })?;
        let part = 1.0 - to.kg() / from.kg();
        let what = Odd::MassFalling { from, since, to, part: numeric::tidy(part) };
        (part >= FALL_PART).then_some(Oddity::new(day, what))
    }

    /// Everything, the newest first.
    fn finish(mut self, today: Day) -> Vec<Oddity> {
        self.found.extend(self.falling(today));
        for look in &self.lifts {
            let oddity = |(day, what)| Oddity { lift: Some(look.lift.clone()), ..Oddity::new(day, what) };
            self.found.extend(look.habits().into_iter().map(oddity));
        }
        self.found.sort_by_key(|oddity| core::cmp::Reverse(oddity.day));
        self.found
    }
}

impl LiftLook {
    /// A load of one kind of implement says nothing about one of another: there it is as it was left, or at the start.
    fn take_up(&mut self, kind: Option<&'static str>) {
        if self.kind == kind || self.kind.is_none() {
            self.kind = kind;
            return;
        }
        let left = (self.kind.take(), self.expected.take());
        self.left.retain(|(known, _)| *known != left.0);
        self.left.push(left);
        (self.kind, self.doubted) = (kind, None);
        self.expected = self.left.iter().find(|(known, _)| *known == kind).and_then(|(_, load)| *load);
    }

    /// Loads of a session that look like slips, each once.
    fn loads(&mut self, done: &LiftSession) -> Vec<(Mass, Mass, Slip)> {
        let mut slips: Vec<(Mass, Mass, Slip)> = Vec::new();
        let mut plain: Option<Mass> = None;
        for load in done.sets.iter().map(|set| set.load) {
            match self.expected.and_then(|expected| Some((load, expected, load_slip(expected, load)?))) {
                Some(found) if !slips.contains(&found) => slips.push(found),
                Some(_) => {}
                None => plain = Some(plain.map_or(load, |heaviest| heaviest.max(load))),
            }
        }
        let top = slips.iter().map(|(load, ..)| *load).max();
        let again = plain.is_none() && top.is_some() && self.doubted == top;
        self.doubted = if again { None } else { top };
        self.expected = if again { top } else { plain.or(self.expected) };
        if again { Vec::new() } else { slips }
    }

    /// What the last sessions show as a habit.
    fn habits(&self) -> Vec<(Day, Odd)> {
        let Some(last) = self.sessions.last() else { return Vec::new() };
        let recent = self.sessions.get(self.sessions.len().saturating_sub(LAST)..).unwrap_or_default();
        let since = recent.first().map_or(last.day, |first| first.day);
        let count = |number: usize| u32::try_from(number).unwrap_or(u32::MAX);
        let mut odd = Vec::new();
        let unscored = recent.iter().filter(|session| !session.scored).count();
        if unscored >= OFTEN {
            odd.push(Odd::Unscored { unscored: count(unscored), sessions: count(recent.len()), since });
        }
        let given = self.overrides.iter().filter(|(day, _)| *day >= since);
        let (overrides, without_end) = (given.clone().count(), given.filter(|(_, open)| *open).count());
        if overrides >= OFTEN {
            odd.push(Odd::ManyOverrides {
                overrides: count(overrides),
                without_end: count(without_end),
                sessions: count(recent.len()),
                since,
            });
        }
        let run = |holds: fn(&Looked) -> bool| {
            let scored = self.sessions.iter().rev().filter(|session| session.scored);
            let run: Vec<&Looked> = scored.take_while(|session| holds(session)).collect();
            (run.len(), run.last().map_or(last.day, |first| first.day))
        };
        let (sessions, since) = run(|session| session.own);
        if sessions >= OFTEN {
            odd.push(Odd::OnlyOwnMarks { sessions: count(sessions), since });
        }
        let (sessions, since) = run(|session| session.perfect);
        if sessions >= PERFECT_SESSIONS {
            odd.push(Odd::PerfectScores { sessions: count(sessions), since });
        }
        odd.into_iter().map(|odd| (last.day, odd)).collect()
    }
}

/// The effort of a set with a missed repetition that is said to have left two or more.
fn contradiction(set: &WorkSet) -> Option<Effort> {
    let left = match set.effort? {
        Effort::Rir(left) => left.halves(),
        Effort::Rpe(rating) => match rating.reserve() {
            Reserve::Exactly(left) | Reserve::Between(left, _) => left.halves(),
            Reserve::NotAReserve => u16::MAX,
            Reserve::MoreLoadOnly => 0,
        },
    };
    (set.failed && left >= 4).then_some(set.effort?)
}

/// What looks odd in a log. Each finding is a question to the coach; nothing is corrected and nothing is blocked by it.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Review {
    /// Every stop of the lifter, whatever is asked about, as far as the log can be read; empty where nothing is stopped. Shown
    /// before anything else.
    pub stops: Vec<Reason>,
    /// The day it was made for.
    pub today: Day,
    /// Sessions looked at.
    pub sessions: u32,
    /// What was found, the newest first.
    pub findings: Vec<Oddity>,
    /// What nobody wrote down, so that nothing could be looked at.
    pub missing: Vec<Lacking>,
    /// What to show beside it.
    pub cautions: Vec<Caution>,
}

/// What looks odd in this log: body mass, units, marks, overrides, dates?
///
/// # Rules
/// Body mass: a twentieth lost within half a year; a tenth between two weighings. Loads: 2.2, 0.45, 10 or 0.1 times what
/// was expected, within 3 %. Marks: 20 sessions in a row without one in doubt; 5 of the last 20 without any; the last 5
/// marked by the lifter alone. Overrides: 5 within the last 20 sessions of a lift. Days: after today, 31 days off those
/// written down around them, three years apart. All numbers are our choice.
///
/// # Errors
/// What [`Log::check`] and [`Log::effective`] report.
///
/// # Examples
/// ```
/// use bismar::answers::{Odd, review};
/// use bismar::quantity::{Mass, Name};
/// use bismar::record::{Event, EventKind, Lifter, Log};
///
/// let mut log = Log::new(Lifter::new(Name::new("A")?));
/// for (sequence, day, kg) in [(1, "2026-01-05", 80.0), (2, "2026-03-02", 76.0)] {
///     let kind = EventKind::BodyMassRecorded(Mass::from_kg(kg)?);
///     log.events.push(Event::new(sequence, day.parse()?, kind));
/// }
/// let review = review(&log, "2026-03-03".parse()?)?;
/// assert!(matches!(review.findings[0].what, Odd::MassFalling { .. }));
/// # Ok::<(), bismar::Error>(())
/// ```
pub fn review(log: &Log, today: Day) -> Result<Review, Error> {
    log.check()?;
    let told = log.as_told()?;
    let stops = super::standing::stops_as_far_as_read(log, today);
    Ok(look_through(&told, log, stops, today))
}

impl Diary<'_> {
    /// What looks odd in this log? See [`review`].
    #[must_use]
    pub fn review(&self, today: Day) -> Review {
        look_through(&self.told(), self.head(), self.state().stops_on(today), today)
    }
}

/// What counts of a log, with what its corrections told of it; of the log itself only whose it is.
fn look_through(told: &Effective<'_>, log: &Log, stops: Vec<Reason>, today: Day) -> Review {
    let events: Vec<&Event> = told.events.iter().map(AsRef::as_ref).collect();
    let mut looking = Looking { unknown: told.corrected.unread(), ..Looking::default() };
    events.iter().for_each(|event| looking.look(event));
    looking.found.extend(super::dates::odd_days(&events, &log.lifter, today));
    if let (true, Some(last)) = (looking.unknown > 0, events.last()) {
        let what = Odd::UnknownEvents { count: looking.unknown };
        looking.found.push(Oddity::new(last.day, what));
    }
    let mut missing = Vec::new();
    if looking.sessions == 0 {
        missing.push(Lacking::Session);
    }
    if looking.masses.is_empty() {
        missing.push(Lacking::BodyMass);
    }
    let (sessions, unknown) = (looking.sessions, looking.unknown);
    super::followed::follow(&mut looking.found, log, told);
    let findings = looking.finish(today);
    let mut cautions = alloc::vec![Caution::ExaminesNobody];
    if findings.iter().any(|oddity| matches!(oddity.what, Odd::MassFalling { .. })) {
        cautions.push(Caution::MassFalling);
    }
    if unknown > 0 {
        cautions.push(Caution::UnknownEvents);
    }
    Review { stops, today, sessions, findings, missing, cautions }
}
