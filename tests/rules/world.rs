//! A gym, a few lifts and a lifter, all invented: 20 kg bar, discs of 450 mm and smaller, dumbbells, a pair.

use bismar::Error;
use bismar::condition::DayClass;
use bismar::gate::{Criterion, Gate, Mark, PassRun, Rater, Requirement, SetMarks};
use bismar::loading::{Bar, Disc, Implement, Pieces, Stock};
use bismar::prescription::{LiftToday, next_session_from};
use bismar::progression::{MoveOutlook, State, fold};
use bismar::quantity::{Day, Length, Mass, Name, Pain, Reps, Rir};
use bismar::reason::Reason;
use bismar::record::*;

pub fn name(text: &str) -> Name {
    Name::new(text).unwrap()
}

pub fn kg(value: f64) -> Mass {
    Mass::from_kg(value).unwrap()
}

pub fn mm(value: f64) -> Length {
    Length::from_mm(value).unwrap()
}

pub fn lift(id: &str, region: &str, load: f64) -> LiftParameters {
    LiftParameters::new(
        name(id),
        Body::Lower,
        name("bar"),
        Grant::new(Work::new(2, 5, kg(load))).with_place(Place::at_rung(1)),
        Gate::new(Requirement::PassRun(PassRun::new(9, 10, 2).unwrap())).unwrap(),
    )
    .with_regions(vec![name(region)])
    .with_rungs(vec![Rung::new(name("easier"), vec![]), Rung::new(name("full"), vec![name("easier")])])
    .with_criteria(vec![Criterion::critical("brace").unwrap()])
    .with_step_cap(0.10)
    .with_learning_sessions(1)
}

/// A squat and a press of two regions; the neck is declared and no lift loads it.
pub fn parameters() -> Parameters {
    let disc = |mass: f64, count: u16, across: f64| {
        Disc::new(kg(mass), count).unwrap().with_diameter(mm(across)).unwrap()
    };
    let region = |id: &str| Region::new(name(id));
    Parameters::new(
        ["knee", "back", "shoulder", "neck"].map(region).to_vec(),
        vec![lift("squat", "knee", 60.0), lift("press", "shoulder", 40.0)],
        vec![
            Implement::Bar(Bar::new(name("bar"), kg(20.0), Mass::ZERO).unwrap()),
            Implement::Pieces(
                Pieces::new(name("bells"), [4.0, 6.0, 8.0, 10.0, 12.0].map(kg).to_vec()).unwrap(),
            ),
        ],
        Stock::new(vec![
            disc(20.0, 4, 450.0),
            disc(10.0, 4, 325.0),
            disc(5.0, 2, 228.0),
            disc(2.5, 2, 190.0),
            disc(2.0, 4, 170.0),
            disc(1.0, 4, 160.0),
        ])
        .unwrap(),
    )
}

#[derive(Clone)]
pub struct World {
    pub log: Log,
    pub day: Day,
}

impl World {
    pub fn new(parameters: Parameters) -> World {
        let mut lifter = Lifter::new(name("invented"));
        lifter.born = Some("1980-03-01".parse().unwrap());
        lifter.invented = true;
        World::of(lifter, parameters)
    }

    /// Parameters and a clearance with a limit of effort on record.
    pub fn of(lifter: Lifter, parameters: Parameters) -> World {
        let mut world = World { log: Log::new(lifter), day: "2026-01-05".parse().unwrap() };
        world.add(EventKind::ParametersChanged(Box::new(parameters)));
        world.clear();
        world
    }

    /// The squat is granted 61 kg, and the discs of 1 kg are lost: 60 kg and 63 kg are what is still made. It would begin at
    /// 60 kg now.
    pub fn granted_what_is_no_longer_made() -> World {
        let mut all = parameters();
        all.lifts[0].start.work.load = kg(61.0);
        let mut world = World::new(all.clone());
        let left: Vec<Disc> =
            all.stock.discs().iter().filter(|disc| disc.nominal() > kg(1.0)).copied().collect();
        all.stock = Stock::new(left).unwrap();
        all.lifts[0].start.work.load = kg(60.0);
        world.add(EventKind::ParametersChanged(Box::new(all)));
        world
    }

    pub fn try_add(&mut self, kind: EventKind) -> Result<(), Error> {
        let sequence = self.log.events.iter().map(|event| event.sequence).max().unwrap_or(0) + 1;
        let mut log = self.log.clone();
        log.events.push(Event::new(sequence, self.day, kind));
        fold(&log)?;
        self.log = log;
        Ok(())
    }

    pub fn add(&mut self, kind: EventKind) {
        self.try_add(kind).unwrap();
    }

    /// What is turned away leaves the log as it was.
    pub fn turned_away(&mut self, kind: EventKind) -> Error {
        let before = self.log.clone();
        let error = self.try_add(kind).unwrap_err();
        assert_eq!(self.log, before);
        error
    }

    pub fn wait(&mut self, days: i32) -> &mut World {
        self.day = self.day.plus(days).unwrap();
        self
    }

    pub fn clear(&mut self) {
        self.add(EventKind::ClearanceRecorded(
            Clearance::new(ClearanceStatus::Cleared, name("clinic"))
                .with_expires(self.day.plus(900).unwrap()),
        ));
    }

    pub fn sign_off(&mut self, scope: SignOffScope) {
        self.add(EventKind::CoachSignOff(SignOff::new(name("coach"), scope)));
    }

    pub fn day_report(&mut self, class: DayClass) {
        self.add(EventKind::DayReport(DayReport::all_well(class)));
    }

    pub fn pain(&mut self, region: &str, score: u8) {
        let answer = PainAnswer::plain(name(region), Pain::new(score).unwrap());
        self.add(EventKind::PainReport(answer));
    }

    /// The state after the last event, which comes back from what is stored of it.
    pub fn state(&self) -> State {
        let state = fold(&self.log).unwrap();
        assert_eq!(State::from_json(&state.to_json().unwrap()).as_ref(), Ok(&state));
        state
    }

    /// Work sets at that load: clean, or with the critical point lost.
    pub fn sets(load: Mass, count: u8, clean: bool) -> Vec<WorkSet> {
        let mark = if clean { Mark::Met } else { Mark::NotMet };
        let marks = SetMarks::scored(5, if clean { 5 } else { 2 }, Rater::Coach).with("brace", mark).unwrap();
        let reps = Reps::whole(5).unwrap();
        let effort = Some(Effort::Rir(Rir::whole(3)));
        (0..count).map(|_| WorkSet::done(load, reps).with_effort(effort).with_marks(marks.clone())).collect()
    }

    /// What the session of that lift is today, in a plan of its own.
    pub fn today(&self, id: &str) -> LiftToday {
        self.planned(Plan::of([name(id)]))
    }

    pub fn planned(&self, plan: Plan) -> LiftToday {
        next_session_from(&self.state(), &plan, self.day).unwrap().lifts.remove(0)
    }

    /// Trains that lift as prescribed, with as much in reserve, pain asked and none.
    pub fn train(&mut self, id: &str, clean: bool) {
        let today = self.today(id);
        let load = today.load.unwrap();
        let left = |set: WorkSet| set.with_effort(Effort::Rir(today.reserve));
        let sets = World::sets(load, today.sets, clean).into_iter().map(left).collect();
        self.train_with(LiftSession::as_granted(name(id), sets));
    }

    pub fn train_with(&mut self, done: LiftSession) {
        self.train_all(vec![done], Some(Vec::new()));
    }

    pub fn train_all(&mut self, lifts: Vec<LiftSession>, pain: Option<Vec<PainAnswer>>) {
        self.add(EventKind::SessionRecorded(Session::new(lifts).with_pain(pain)));
    }

    /// The morning after, with no more pain.
    pub fn morning(&mut self) {
        let last = self.log.events.iter().rev();
        let session =
            last.clone().find(|event| matches!(event.kind, EventKind::SessionRecorded(_))).unwrap().sequence;
        self.wait(1);
        self.add(EventKind::NextDayReport(NextDayReport::new(session).with_pain(Vec::new())));
    }

    /// The morning after of every session that nobody has answered for, told today.
    pub fn every_morning(&mut self) {
        self.wait(1);
        let events = self.log.events.iter();
        let answered: Vec<u32> = events
            .clone()
            .filter_map(|event| match &event.kind {
                EventKind::NextDayReport(report) => Some(report.session),
                _ => None,
            })
            .collect();
        let sessions = events.filter(|event| matches!(event.kind, EventKind::SessionRecorded(_)));
        let open: Vec<u32> =
            sessions.map(|event| event.sequence).filter(|session| !answered.contains(session)).collect();
        for session in open {
            let report = NextDayReport::new(session).with_pain(Vec::new());
            self.add(EventKind::NextDayReport(report));
        }
    }

    /// A day of training at its usual, done well, with the morning after; three days pass.
    pub fn passing_day(&mut self, id: &str) {
        self.day_report(DayClass::Within);
        self.train(id, true);
        self.morning();
        self.wait(2);
    }

    /// Calibrated, with the gate open: a step is on offer today.
    pub fn on_offer(id: &str) -> World {
        let mut world = World::new(parameters());
        (0..4).for_each(|_| world.passing_day(id));
        world.day_report(DayClass::Within);
        assert!(world.is_offered(id), "{:?}", world.today(id).outlook);
        world
    }

    pub fn is_offered(&self, id: &str) -> bool {
        matches!(self.today(id).outlook, MoveOutlook::OnOffer { .. })
    }

    pub fn against(&self, id: &str) -> Vec<Reason> {
        match self.today(id).outlook {
            MoveOutlook::OnOffer { .. } => Vec::new(),
            MoveOutlook::Blocked { by, .. } => by,
        }
    }

    pub fn override_to(&mut self, id: &str, load: f64, days: i32) {
        let expires = Some(self.day.plus(days).unwrap());
        self.add(EventKind::CoachOverride(
            Override::new(name(id), kg(load), name("coach"))
                .with_why(Some("to look at one set".into()))
                .with_expires(expires),
        ));
    }
}

pub fn says(today: &LiftToday, code: &str) -> bool {
    today.reasons.iter().any(|reason| reason.code() == code)
}

pub fn blocked_by(reasons: &[Reason], code: &str) -> bool {
    reasons.iter().any(|reason| reason.code() == code)
}
