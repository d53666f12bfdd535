//! A log while it grows, with the state after each event.

use std::cell::RefCell;
use std::collections::BTreeMap;
use std::ops::Deref;
use std::rc::Rc;

use bismar::condition::DayClass;
use bismar::error::Code;
use bismar::gate::{Criterion, Gate, Mark, PassRun, Rater, Requirement, SetMarks};
use bismar::loading::{AtHeight, Bar, Disc, Implement, Prepared, Stock};
use bismar::progression::{MoveOutlook, Now, State, Status, fold};
use bismar::quantity::{Day, Mass, Name, Pain, Reps};
use bismar::record::*;

pub use super::step::*;
pub use super::world::*;

/// Sessions in a row that the gates of these courses ask for.
pub const RUN: usize = 2;
pub const STRICT: usize = 0;
pub const FORGIVING: usize = 1;
pub const PRESS: usize = 2;

/// Names of the states, for cases that ask where a lift stands and not what its state carries.
pub const LEARNING: &str = Status::NAMES[0];
pub const HOLDING: &str = Status::NAMES[1];
pub const READY: &str = Status::NAMES[2];
pub const CONSOLIDATING: &str = Status::NAMES[3];
pub const STEPPING_BACK: &str = Status::NAMES[4];
pub const RESTING: &str = Status::NAMES[5];
pub const RETURNING: &str = Status::NAMES[6];
pub const MAINTAINING: &str = Status::NAMES[7];
pub const STOPPED: &str = Status::NAMES[8];
pub const RETIRED: &str = Status::NAMES[9];

pub fn name(text: &str) -> Name {
    Name::new(text).unwrap()
}

pub fn kg(value: f64) -> Mass {
    Mass::from_kg(value).unwrap()
}

/// The same with something changed.
pub fn with<T: Clone>(from: &T, change: impl FnOnce(&mut T)) -> T {
    let mut changed = from.clone();
    change(&mut changed);
    changed
}

/// Heaviest load that the tests look at, as high as any lift here could go.
pub const HEAVIEST_KG: f64 = 500.0;

pub fn lift_set(id: &str, body: Body, region: &str, load: Mass) -> LiftParameters {
    let rung =
        |text: &str, below: &[&str]| Rung::new(name(text), below.iter().map(|text| name(text)).collect());
    LiftParameters::new(
        name(id),
        body,
        name("bar"),
        Grant::new(Work::new(2, 5, load)).with_place(Place::at_rung(1)),
        Gate::new(Requirement::PassRun(PassRun::new(9, 10, RUN as u8).unwrap())).unwrap(),
    )
    .with_regions(vec![name(region)])
    .with_rungs(vec![rung("easy", &[]), rung("middle", &["easy"]), rung("hard", &["middle"])])
    .with_criteria(vec![Criterion::critical("brace").unwrap(), Criterion::ordinary("depth").unwrap()])
    .with_step_cap(0.10)
    .with_reps_top(8)
    .with_sets_top(4)
    .with_learning_sessions(2)
    .with_over_the_body(true)
}

/// Regions of these ids.
pub fn regions(ids: &[&str]) -> Vec<Region> {
    ids.iter().map(|id| Region::new(name(id))).collect()
}

/// A pair of the hip, a press of the shoulder, and a knee that no lift loads. Masses multiplied by `scale`: bar, discs
/// and loads alike.
pub fn parameters(scale: u32) -> Parameters {
    let times = |value: f64| kg(value).times(scale).unwrap();
    let disc = |value: f64, count: u16| Disc::new(times(value), count).unwrap();
    let bar = Bar::new(name("bar"), times(20.0), Mass::ZERO).unwrap();
    let discs = vec![disc(20.0, 4), disc(10.0, 4), disc(5.0, 2), disc(2.5, 2), disc(1.25, 2), disc(0.5, 4)];
    Parameters::new(
        regions(&["hip", "shoulder", "knee"]),
        vec![
            lift_set("strict", Body::Lower, "hip", times(50.0)),
            lift_set("forgiving", Body::Lower, "hip", times(60.0)),
            lift_set("press", Body::Upper, "shoulder", times(40.0)),
        ],
        vec![Implement::Bar(bar)],
        Stock::new(discs).unwrap(),
    )
    .with_pairs(vec![Pair::new(name("strict"), name("forgiving"))])
}

/// The smallest discs of the gym are lost. A start that is made of them is the next lighter load from then on.
pub fn lose_smallest_discs(course: &mut Course) {
    let mut all = course.set().clone();
    let smallest = all.stock.discs().iter().map(Disc::nominal).min().unwrap();
    let left = all.stock.discs().iter().filter(|disc| disc.nominal() > smallest).copied();
    all.stock = Stock::new(left.collect()).unwrap();
    for at in 0..all.lifts.len() {
        let set = &all.lifts[at];
        let made = loads(&all, set, set.start.place);
        let start = made.iter().rev().find(|load| **load <= set.start.load()).unwrap_or(&made[0]);
        all.lifts[at].start.work.load = *start;
    }
    course.add(EventKind::ParametersChanged(Box::new(all)));
}

/// Every load that a lift can have at a place, rising; worked out with the loading module alone.
pub fn loads(all: &Parameters, set: &LiftParameters, place: Place) -> Vec<Mass> {
    let implement = all.implement(&set.implement).unwrap();
    let highest = kg(HEAVIEST_KG);
    if let (Implement::Bar(bar), StartsFrom::Floor) = (implement, set.starts_from) {
        let height = set.start_height(place).unwrap();
        return AtHeight::new(bar, &all.stock, &all.blocks, height, highest).unwrap().totals().collect();
    }
    let prepared = Prepared::new(implement, &all.stock, highest).unwrap();
    prepared.totals(prepared.lightest().unwrap(), highest).collect()
}

/// How a lift stands, in plain values; everything else that is known of it is [`Now`].
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stands<'a> {
    pub status: &'static str,
    pub now: &'a Now,
    /// Sessions of calibration: done, and asked for.
    pub learned: (u8, u8),
}

impl Deref for Stands<'_> {
    type Target = Now;

    fn deref(&self) -> &Now {
        self.now
    }
}

impl Stands<'_> {
    /// Passes of a step back or of a return.
    pub fn passes(&self) -> u8 {
        match self.now.status {
            Status::SteppingBack { passes, .. } | Status::Returning { passes, .. } => passes,
            _ => 0,
        }
    }

    /// Load before a break or a stop, on the way back from it.
    pub fn cap(&self) -> Option<Mass> {
        self.now.status.way_back().map(|way| way.cap)
    }

    /// Row of the layoff table with which a way back began.
    pub fn row(&self) -> Option<u8> {
        self.now.status.way_back().map(|way| way.row)
    }

    /// Load before a step back that lowered it.
    pub fn stepped_from(&self) -> Option<Mass> {
        match self.now.status {
            Status::SteppingBack { from, .. } => from,
            _ => None,
        }
    }

    /// Last session that earned the move on offer.
    pub fn offered(&self) -> Option<Day> {
        match self.now.status {
            Status::ReadyToAdvance { since } => Some(since),
            _ => None,
        }
    }
}

/// How the lift with that number stands in a state.
pub fn stands(state: &State, at: usize) -> Stands<'_> {
    let now = state.lifts().nth(at).expect("a lift with that number").now();
    Stands { status: now.status.as_str(), now, learned: (now.calibration.done, now.calibration.needed) }
}

/// Whether a region is declared.
pub fn declares(all: &Parameters, region: &Name) -> bool {
    all.regions.iter().any(|declared| declared.id == *region)
}

/// The number of the lift with that id, where the parameters in force have it.
pub fn place_of(state: &State, id: &Name) -> Option<usize> {
    state.lifts().position(|lift| lift.id() == id)
}

/// How the lift with that id stands, in force or set aside.
pub fn stands_of<'a>(state: &'a State, id: &Name) -> Option<Stands<'a>> {
    let mut known = state.lifts().chain(state.set_aside());
    let now = known.find(|lift| lift.id() == id)?.now();
    Some(Stands { status: now.status.as_str(), now, learned: (now.calibration.done, now.calibration.needed) })
}

/// How every lift stands.
pub fn all_stand(state: &State) -> Vec<Stands<'_>> {
    (0..state.lifts().len()).map(|at| stands(state, at)).collect()
}

/// Loads by parameters, lift and range, so that each is worked out once.
type Known = BTreeMap<(String, usize, u8), Rc<Vec<Mass>>>;

thread_local! {
    static KNOWN: RefCell<Known> = const { RefCell::new(BTreeMap::new()) };
}

fn known(state: &State, at: usize, place: Place) -> Rc<Vec<Mass>> {
    let all = state.parameters().unwrap();
    let key = (state.digest().to_owned(), at, place.range);
    KNOWN.with_borrow_mut(|known| {
        Rc::clone(known.entry(key).or_insert_with(|| Rc::new(loads(all, &all.lifts[at], place))))
    })
}

/// A log while it grows.
#[derive(Clone)]
pub struct Course {
    pub log: Log,
    pub day: Day,
    /// The state after each event of the log; as the fold of the log up to it leaves it.
    pub states: Vec<State>,
    /// What every mass of this world is multiplied by.
    pub scale: u32,
}

impl Course {
    pub fn new(parameters: Parameters) -> Course {
        Course::of_lifter_born(parameters, Some("1966-03-01"))
    }

    /// The first two events of a lifter who was born on that day: parameters, and a clearance.
    pub fn of_lifter_born(parameters: Parameters, born: Option<&str>) -> Course {
        let lifter =
            Lifter::new(name("invented")).with_born(born.map(|day| day.parse().unwrap())).with_invented(true);
        let mut course = Course::empty(lifter);
        course.add(EventKind::ParametersChanged(Box::new(parameters)));
        course.clear(true);
        course
    }

    /// A log without events. It says that it is of a newer version, so that an event of an unknown kind may stand in it.
    pub fn empty(lifter: Lifter) -> Course {
        let log = Log::new(lifter).with_version(VERSION + 1);
        Course { log, day: "2025-01-06".parse().unwrap(), states: Vec::new(), scale: 1 }
    }

    pub fn play(steps: &[Step]) -> Course {
        Course::play_with(parameters(1), steps)
    }

    pub fn play_with(parameters: Parameters, steps: &[Step]) -> Course {
        let mut course = Course::new(parameters);
        steps.iter().for_each(|step| course.step(step));
        course
    }

    pub fn state(&self) -> &State {
        self.states.last().unwrap()
    }

    /// The parameters in force.
    pub fn set(&self) -> &Parameters {
        self.state().parameters().unwrap()
    }

    /// How that lift stands.
    pub fn stands(&self, at: usize) -> Stands<'_> {
        stands(self.state(), at)
    }

    /// How every lift stands.
    pub fn all_stand(&self) -> Vec<Stands<'_>> {
        all_stand(self.state())
    }

    /// So many kilograms in the scale of this world.
    pub fn scaled(&self, kilograms: f64) -> Mass {
        kg(kilograms).times(self.scale).unwrap()
    }

    /// Number of lifts.
    pub fn count(&self) -> usize {
        self.state().lifts().len()
    }

    pub fn next_number(&self) -> u32 {
        self.log.events.len() as u32 + 1
    }

    /// An event that the log takes; whoever expects that one is turned away asks `turned_away`.
    pub fn add(&mut self, kind: EventKind) {
        let event = Event::new(self.next_number(), self.day, kind);
        let mut state = self.states.last().cloned().unwrap_or_else(|| State::before(&self.log));
        let applied = state.apply(&event);
        self.log.events.push(event);
        match applied {
            Ok(()) => self.states.push(state),
            Err(error) if error.code() == Code::NeedsRefold => self.states.push(fold(&self.log).unwrap()),
            Err(error) => panic!("turned away: {error} {:?}", self.log.events.last()),
        }
    }

    /// An event that the log takes, or that leaves it as it was: whether it was taken.
    pub fn try_add(&mut self, kind: EventKind) -> bool {
        let event = Event::new(self.next_number(), self.day, kind);
        match self.state().clone().apply(&event) {
            Err(error) if error.code() != Code::NeedsRefold => false,
            _ => {
                self.add(event.kind);
                true
            }
        }
    }

    pub fn clear(&mut self, cleared: bool) {
        let status = if cleared { ClearanceStatus::Cleared } else { ClearanceStatus::NotCleared };
        self.add(EventKind::ClearanceRecorded(Clearance::new(status, name("clinic"))));
    }

    pub fn lift_name(&self, at: u8) -> Name {
        let lifts = &self.set().lifts;
        lifts[usize::from(at) % lifts.len()].id.clone()
    }

    pub fn limit(&self, at: usize) -> Mass {
        self.state().decide(self.day).unwrap()[at].limit
    }

    /// The loads of that lift at a place.
    pub fn loads(&self, at: usize, place: Place) -> Rc<Vec<Mass>> {
        known(self.state(), at, place)
    }

    /// The loads of that lift at a place, after that event.
    pub fn loads_at(&self, event: usize, at: usize, place: Place) -> Rc<Vec<Mass>> {
        known(&self.states[event], at, place)
    }

    /// What a coach puts on the bar for the highest load allowed: that load, or the next below it that can be made.
    pub fn printed(&self, at: usize) -> Mass {
        let decision = self.state().decide(self.day).unwrap().swap_remove(at);
        let loads = self.loads(at, decision.grant.place);
        loads.iter().copied().rfind(|load| *load <= decision.limit).unwrap_or(loads[0])
    }

    pub fn pain(region: &str, score: u8) -> PainAnswer {
        PainAnswer::plain(name(region), Pain::new(score).unwrap())
    }

    pub fn set_of(load: Mass, reps: u8, quality: Quality) -> WorkSet {
        let but_one = reps.saturating_sub(1);
        let (acceptable, first) = match quality {
            Quality::Clean | Quality::CriticalLost => (Some(reps), None),
            Quality::OneMiss => (Some(but_one), Some(reps.min(4))),
            Quality::ManyMisses => (Some(but_one.min(2)), Some(1)),
            Quality::Unscored => (None, None),
        };
        let marks = acceptable.map(|acceptable| {
            let brace = if quality == Quality::CriticalLost { Mark::NotMet } else { Mark::Met };
            let mut marks = SetMarks::scored(u16::from(reps), u16::from(acceptable), Rater::Coach);
            marks.first_failing_rep = first.map(u16::from);
            marks.with("brace", brace).unwrap().with("depth", Mark::Met).unwrap()
        });
        let effort = Some(Effort::Rir(bismar::quantity::Rir::whole(3)));
        WorkSet::done(load, Reps::whole(u16::from(reps)).unwrap()).with_marks(marks).with_effort(effort)
    }

    /// The sets of that lift as they are granted, at a load near the highest allowed.
    pub fn lift(&self, at: usize, quality: Quality, weight: Weight) -> LiftSession {
        let printed = self.printed(at);
        let step = part(self.set().lifts[at].start.load(), 0.1);
        let load = match weight {
            Weight::AtLimit => printed,
            Weight::Lighter => self.with_sign(at, printed.minus(step).unwrap()),
            Weight::Heavier => self.with_sign(at, printed.plus(step).unwrap()),
        };
        let work = self.stands(at).grant.work;
        // A single miss belongs to the last set only.
        let before = if quality == Quality::OneMiss { Quality::Clean } else { quality };
        let quality_of = |set: u8| if set + 1 == work.sets { quality } else { before };
        let mut sets: Vec<WorkSet> =
            (0..work.sets).map(|set| Course::set_of(load, work.reps, quality_of(set))).collect();
        if self.set().lifts[at].criteria.iter().any(|criterion| criterion.id == name("feet")) {
            for marks in sets.iter_mut().filter_map(|set| set.marks.as_mut()) {
                *marks = marks.clone().with("feet", Mark::Met).unwrap();
            }
        }
        let spotted = Setup::default().with_company(ByTheBar::Spotter);
        let setup = self.set().lifts[at].over_the_body.then_some(spotted);
        LiftSession::as_granted(self.lift_name(at as u8), sets).with_setup(setup)
    }

    /// Whether the implement of that lift helps, so that its loads count below zero.
    pub fn helps(&self, at: usize) -> bool {
        let implement = self.set().implement(&self.set().lifts[at].implement);
        matches!(implement, Some(Implement::Assistance(_)))
    }

    /// The load, or none where it has the wrong sign for the implement.
    pub fn with_sign(&self, at: usize, load: Mass) -> Mass {
        if self.helps(at) { load.min(Mass::ZERO) } else { load.max(Mass::ZERO) }
    }

    /// The lifts that a set of bits names.
    pub fn chosen(&self, lifts: u8) -> Vec<usize> {
        let chosen: Vec<usize> = (0..self.count()).filter(|at| lifts >> at & 1 == 1).collect();
        if chosen.is_empty() { vec![usize::from(lifts) % self.count()] } else { chosen }
    }

    /// Pain, where it is asked about, is in the first region of the last of the lifts.
    pub fn session(&mut self, lifts: u8, quality: Quality, weight: Weight, pain: Option<u8>) {
        let chosen = self.chosen(lifts);
        let lifts: Vec<LiftSession> = chosen.iter().map(|at| self.lift(*at, quality, weight)).collect();
        let last = &self.set().lifts[*chosen.last().unwrap()];
        let region = last.regions[0].as_str();
        let pain = pain.map(|score| if score == 0 { Vec::new() } else { vec![Course::pain(region, score)] });
        self.train(lifts, pain);
    }

    pub fn train(&mut self, lifts: Vec<LiftSession>, pain: Option<Vec<PainAnswer>>) {
        self.add(EventKind::SessionRecorded(Session::new(lifts).with_pain(pain)));
    }

    /// The day's questions: every one asked and nothing found, or only the class known.
    pub fn day_report(&mut self, class: DayClass, asked: bool) {
        let class_alone = DayReport::default().with_class(class);
        self.add(EventKind::DayReport(if asked { DayReport::all_well(class) } else { class_alone }));
    }

    /// Number of the last session, if there was one.
    pub fn last_session(&self) -> Option<u32> {
        let session = |event: &&Event| matches!(event.kind, EventKind::SessionRecorded(_));
        self.log.events.iter().rev().find(session).map(|event| event.sequence)
    }

    /// The morning after the last session: nothing hurts, or more than before it everywhere.
    pub fn morning(&mut self, flare: bool) {
        let pain = if flare { self.pain_everywhere(2) } else { Vec::new() };
        self.next_day(Some(pain));
    }

    /// Pain of that much in hip and shoulder, where they are declared.
    pub fn pain_everywhere(&self, score: u8) -> Vec<PainAnswer> {
        // Everywhere that some lift loads, wherever the parameters of the course have moved the lifts to.
        let loaded = |id: &&str| self.set().lifts.iter().any(|lift| lift.regions.contains(&name(id)));
        REGIONS.into_iter().filter(loaded).map(|id| Course::pain(id, score)).collect()
    }

    pub fn next_day(&mut self, pain: Option<Vec<PainAnswer>>) {
        let Some(session) = self.last_session() else { return };
        self.day = self.day.plus(1).unwrap();
        self.add(EventKind::NextDayReport(NextDayReport::new(session).with_pain(pain)));
    }

    pub fn accept(&mut self, at: u8) {
        let advance = Advance::new(self.lift_name(at), name("coach"));
        self.add(EventKind::AdvanceAccepted(advance));
    }

    /// Takes every move on offer.
    pub fn accept_offers(&mut self) {
        for at in 0..self.count() {
            let outlook = self.state().decide(self.day).unwrap().swap_remove(at).outlook;
            if matches!(outlook, MoveOutlook::OnOffer { .. }) {
                self.accept(at as u8);
            }
        }
    }

    pub fn clean_week(&mut self) {
        self.day_report(DayClass::Within, true);
        self.accept_offers();
        self.session(u8::MAX, Quality::Clean, Weight::AtLimit, Some(0));
        self.morning(false);
        self.day = self.day.plus(6).unwrap();
    }

    /// Every upward move: number of the event that made it (as a place in the log), lift, grant before and after. Going
    /// back to the load before a short break is a return, not a move.
    pub fn upward(&self) -> Vec<(usize, usize, Grant, Grant)> {
        let mut found = Vec::new();
        for at in 1..self.states.len() {
            let (before, after) = (&self.states[at - 1], &self.states[at]);
            for lift in 0..after.lifts().len() {
                let is = stands(after, lift);
                let id = after.lifts().nth(lift).unwrap().id();
                let Some(was) = place_of(before, id).map(|at| stands(before, at)) else { continue };
                let set = &after.parameters().unwrap().lifts[lift];
                // A fold that takes a pass back may change a past grant; that is no move of this event.
                let moved = is.moves.last() != was.moves.last()
                    && is.moves.last().is_some_and(|(day, _)| *day == self.log.events[at].day);
                if moved && !set.harder_in(&was.grant, &is.grant).is_empty() {
                    found.push((at, lift, was.grant, is.grant));
                }
            }
        }
        found
    }
}

/// A part of a load, without its sign.
pub fn part(load: Mass, part: f64) -> Mass {
    Mass::from_nanograms(load.nanograms().abs()).unwrap().scaled_down(part).unwrap()
}
