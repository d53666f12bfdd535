//! Sequences of events: one by one they give what the whole log gives, nothing panics, and no session ever holds a
//! number above its grant.

use bismar::Code;
use bismar::condition::DayClass;
use bismar::gate::{
    Criterion, CriterionMark, Evidence, EvidenceRule, Gate, Mark, PassRules, PassRun, Rater, Requirement,
    SetMarks,
};
use bismar::loading::{Bar, Disc, Implement, MachineStack, Pieces, Stock};
use bismar::progression::{Decision, State, fold};
use bismar::quantity::{Day, Length, Mass, Name, Pain, Reps, Rir, Rpe};
use bismar::record::*;
use bismar::value::Value;

use super::bytes::Bytes;
use super::session::{below_the_grant, plan_of, spoken};

/// Events of one script; each is folded whole, so the work grows with the square.
const MOST_EVENTS: usize = 48;
/// The neck is declared and no lift loads it; nobody declares the elbow.
const REGIONS: &[&str] = &["hip", "knee", "shoulder", "neck", "elbow"];
/// Nobody declares the last.
const LIFTS: &[&str] = &["strict", "forgiving", "press", "nothing"];
/// Heights of starts, the highest first: the discs stand 225 mm high, the blocks add to smaller ones.
const HEIGHTS: [i16; 3] = [325, 275, 225];
const IMPLEMENTS: &[&str] = &["bar", "pieces", "machine", "assistance"];

fn name(text: &str) -> Name {
    Name::new(text).expect("a name")
}

fn kg(value: f64) -> Mass {
    Mass::from_kg(value).expect("within range")
}

fn first_day() -> Day {
    Day::from_calendar(2025, 1, 6).expect("a day")
}

/// A lifter who has started: the state that plans are asked on.
pub fn started() -> (State, Day) {
    let mut log = Log::new(Lifter { invented: true, ..Lifter::new(name("invented")) });
    let kinds = [
        EventKind::ParametersChanged(Box::new(parameters(&mut Bytes::new(&[])))),
        EventKind::ClearanceRecorded(Clearance {
            status: ClearanceStatus::Cleared,
            who: name("clinic"),
            expires: None,
            limits: Vec::new(),
        }),
    ];
    for (sequence, kind) in (1..).zip(kinds) {
        log.events.push(Event { sequence, day: first_day(), kind, note: None });
    }
    (fold(&log).expect("a good log"), first_day())
}

/// Plays the bytes as a script of events.
pub fn check(data: &[u8]) {
    let mut bytes = Bytes::new(data);
    let mut log = Log::new(lifter(&mut bytes));
    if bytes.rarely(6) {
        log.version = VERSION + 1;
    }
    let mut state = State::before(&log);
    let mut day = first_day();
    for number in 1..=MOST_EVENTS as u32 {
        if bytes.is_empty() {
            break;
        }
        let forward = match bytes.below(8) {
            0..=3 => bytes.below(4),
            4 | 5 => 7,
            6 => bytes.byte(),
            _ => 0,
        };
        day = day.plus(i32::from(forward)).unwrap_or(day);
        let late = if bytes.rarely(24) { -i32::from(bytes.below(40)) } else { 0 };
        let on = day.plus(late).unwrap_or(day);
        let sequence = if bytes.rarely(40) { bytes.u32() } else { number * 4 };
        let kind = if number == 1 && !bytes.rarely(20) {
            EventKind::ParametersChanged(Box::new(parameters(&mut bytes)))
        } else {
            kind(&mut bytes, &state, on, number)
        };
        let event = Event { sequence, day: on, kind, note: None };
        state = take(&mut log, state, event);
        promises(&state, &mut bytes);
    }
    stored(&state, &log);
}

/// Born on some day of which a few lie after the log, in an age band, or of unknown age.
fn lifter(bytes: &mut Bytes<'_>) -> Lifter {
    let mut lifter = Lifter { invented: true, ..Lifter::new(name("invented")) };
    match bytes.below(4) {
        0 | 1 => lifter.born = Day::from_calendar(1940 + i32::from(bytes.below(100)), 3, 1).ok(),
        2 => {
            let from = 40 + bytes.below(50);
            lifter.age = Some(AgeBand { from, to: from + bytes.below(10), on: first_day() });
        }
        _ => {}
    }
    lifter
}

/// One more event, by itself and with the whole log.
fn take(log: &mut Log, state: State, event: Event) -> State {
    let mut next = state.clone();
    let applied = next.apply(&event);
    let repeated = log.events.contains(&event);
    let reused = log.events.iter().any(|earlier| earlier.sequence == event.sequence);
    log.events.push(event);
    let folded = fold(log);
    match (applied, folded) {
        // A state knows the number of the last event only.
        (Ok(()), Err(error)) if reused && error.code() == Code::SequenceReused => {
            log.events.pop();
            state
        }
        (Ok(()), folded) => {
            assert_eq!(folded.as_ref(), Ok(&next), "apply and fold agree");
            next
        }
        (Err(error), folded) => {
            spoken(&error);
            assert_eq!(next, state, "an error changes nothing");
            match folded {
                Ok(whole) => {
                    assert!(error.code() == Code::NeedsRefold, "only apply refused: {error}");
                    if repeated {
                        log.events.pop();
                    }
                    whole
                }
                Err(error) => {
                    spoken(&error);
                    log.events.pop();
                    state
                }
            }
        }
    }
}

fn promises(state: &State, bytes: &mut Bytes<'_>) {
    let Some((last, _)) = state.last() else { return };
    let mut plan = plan_of(state);
    plan.easy_week = bytes.rarely(8);
    plan.minutes = bytes.rarely(8).then(|| u16::from(bytes.byte()));
    if bytes.rarely(8) {
        plan.unavailable.push(name(bytes.pick(IMPLEMENTS)));
    }
    let later = if bytes.rarely(4) { i32::from(bytes.byte()) } else { 0 };
    let Ok(today) = last.plus(later) else { return };
    below_the_grant(state, &plan, today);
    let Ok(decisions) = state.decide(today) else { return };
    for (decision, lift) in decisions.iter().zip(state.lifts()) {
        let now = lift.now();
        let overruled = now.overruled.as_ref().map_or(Mass::ZERO, |overruled| overruled.load);
        let earned = now.peak.max(overruled);
        assert!(decision.limit <= earned, "{}: {} was never granted", decision.lift, decision.limit);
        let ceiling = lift.parameters().ceiling.unwrap_or(Mass::MAX);
        assert!(
            decision.limit <= ceiling,
            "{}: {} is above the coach's ceiling",
            decision.lift,
            decision.limit
        );
    }
    halted(state, &decisions);
}

/// A stop of everything, or of a region that no lift loads, halts every lift; one of a region every lift of it.
fn halted(state: &State, decisions: &[Decision]) {
    let stopped = |lift: &LiftParameters| {
        let all = || state.parameters().into_iter().flat_map(|all| &all.lifts);
        let open = state.regions().iter().filter(|region| region.stop.is_some());
        let mut open = open.map(|region| &region.id);
        let concerns =
            |id: &Name| lift.regions.contains(id) || !all().any(|other| other.regions.contains(id));
        state.stop().is_some() || open.any(concerns)
    };
    for (decision, lift) in decisions.iter().zip(state.lifts()) {
        if stopped(lift.parameters()) {
            assert!(
                decision.status.is_stopped(),
                "{}: {} under a stop",
                decision.lift,
                decision.status.as_str()
            );
        }
    }
}

/// Written and read back it is the same state, and one of its log.
fn stored(state: &State, log: &Log) {
    let text = state.to_json().expect("a state holds no NaN");
    assert!(State::from_json(&text).expect("what is written is read") == *state);
    assert!(State::from_json_or_fold(&text, log).expect("a good log") == *state);
}

fn kind(bytes: &mut Bytes<'_>, state: &State, on: Day, number: u32) -> EventKind {
    let who = || name("coach");
    let lift =
        |bytes: &mut Bytes<'_>| name(LIFTS[usize::from(if bytes.rarely(30) { 3 } else { bytes.below(3) })]);
    let near = |bytes: &mut Bytes<'_>| on.plus(i32::from(bytes.byte()) - 40).unwrap_or(on);
    match bytes.below(40) {
        0..=11 => EventKind::SessionRecorded(session(bytes, state)),
        12 | 13 => EventKind::NextDayReport(NextDayReport {
            session: (number - 1).saturating_sub(u32::from(bytes.below(3))) * 4,
            pain: (!bytes.rarely(6)).then(|| if bytes.rarely(3) { vec![pain(bytes)] } else { Vec::new() }),
            soreness: None,
        }),
        14..=17 => EventKind::DayReport(DayReport {
            class: bytes.flag().then(|| bytes.pick(&DayClass::ALL)),
            pain: bytes.flag().then(|| if bytes.rarely(4) { vec![pain(bytes)] } else { Vec::new() }),
            asks: bytes
                .flag()
                .then(|| if bytes.rarely(4) { vec![bytes.pick(&Ask::ALL)] } else { Vec::new() }),
            minutes: bytes.rarely(6).then(|| bytes.u16()),
            ..DayReport::default()
        }),
        18..=21 => EventKind::AdvanceAccepted(Advance { lift: lift(bytes), who: who() }),
        22 => EventKind::AdvanceDeclined(Advance { lift: lift(bytes), who: who() }),
        23 => EventKind::PainReport(pain(bytes)),
        24 => EventKind::UsualPainAgreed(UsualPain {
            region: region(bytes),
            level: Pain::new(bytes.below(5)).expect("a score"),
            who: who(),
            clinician: bytes.flag(),
        }),
        25 if bytes.rarely(2) => EventKind::SymptomReport(SymptomReport { signs: vec![StopSign::ChestPain] }),
        25..=27 => EventKind::ClearanceRecorded(clearance(bytes, near)),
        28 | 29 => EventKind::CoachSignOff(SignOff {
            who: who(),
            scope: match bytes.below(3) {
                0 => SignOffScope::Everything,
                1 => SignOffScope::Region(region(bytes)),
                _ => SignOffScope::Gate(lift(bytes)),
            },
        }),
        30 => EventKind::CoachOverride(Override {
            lift: lift(bytes),
            load: load(bytes),
            who: who(),
            why: bytes.flag().then(|| String::from("to see how it moves")),
            expires: bytes.flag().then(|| near(bytes)),
        }),
        31 => EventKind::LayoffNoted(Layoff {
            from: near(bytes),
            to: bytes.rarely(3).then(|| near(bytes)),
            reason: bytes.pick(&[LayoffReason::Well, LayoffReason::Planned, LayoffReason::Ill]),
        }),
        32 => {
            let load = load(bytes);
            let to = grant(bytes, load);
            let moved = Move { lift: lift(bytes), to, who: who() };
            if bytes.flag() { EventKind::VariantChanged(moved) } else { EventKind::RangeChanged(moved) }
        }
        33 => {
            let lift = bytes.flag().then(|| lift(bytes));
            let changed = BarChanged { lift, now: name("another") };
            if bytes.flag() {
                EventKind::RaterChanged(changed)
            } else {
                EventKind::BarOrDiscsChanged(changed)
            }
        }
        34 => EventKind::RoleSet(RoleSet {
            lift: lift(bytes),
            role: bytes.pick(&[Role::Train, Role::Maintain, Role::Rest, Role::Retire]),
            not_below: bytes.rarely(4).then(|| load(bytes)),
        }),
        35 | 36 => EventKind::ParametersChanged(Box::new(parameters(bytes))),
        37 => {
            let replaces = u32::from(bytes.below(MOST_EVENTS as u8)) * 4;
            let with = (bytes.flag() && number > 1).then(|| Box::new(kind(bytes, state, on, 1)));
            EventKind::Correction(Correction { replaces, day: bytes.rarely(3).then(|| near(bytes)), with })
        }
        38 => match bytes.below(6) {
            0 | 1 => EventKind::AskAnswered(AskAnswered {
                ask: bytes.pick(&Ask::ALL),
                who: who(),
                clinician: bytes.flag(),
            }),
            2 => EventKind::BodyMassRecorded(load(bytes)),
            3 => EventKind::ClearanceExpired(name("clinic")),
            4 => EventKind::BlockStarted(name("block")),
            _ => EventKind::FunctionTested(Measurement {
                test: FunctionTest::Grip,
                result: f64::from(bytes.u16()),
            }),
        },
        _ => match bytes.below(6) {
            0 => EventKind::Unknown(UnknownEvent { kind: "of_a_newer_version".into(), body: Value::Null }),
            _ => EventKind::SessionMissed(SessionMissed { reason: name("work") }),
        },
    }
}

/// A region, now and then one that nobody declares.
fn region(bytes: &mut Bytes<'_>) -> Name {
    let known = if bytes.rarely(30) { REGIONS.len() } else { REGIONS.len() - 1 };
    name(REGIONS[usize::from(bytes.byte()) % known])
}

fn pain(bytes: &mut Bytes<'_>) -> PainAnswer {
    let features = match bytes.below(6) {
        0 => None,
        1 => Some(vec![bytes.pick(&[PainFeature::Sharp, PainFeature::New, PainFeature::Rising])]),
        _ => Some(Vec::new()),
    };
    let score = Pain::new(if bytes.rarely(4) { bytes.below(11) } else { bytes.below(4) }).expect("a score");
    PainAnswer { region: region(bytes), score, features }
}

fn clearance(bytes: &mut Bytes<'_>, near: impl Fn(&mut Bytes<'_>) -> Day) -> Clearance {
    let status = match bytes.below(8) {
        0 => ClearanceStatus::NotCleared,
        1 => ClearanceStatus::ClearedWithLimits,
        _ => ClearanceStatus::Cleared,
    };
    let limits = if bytes.rarely(3) {
        vec![ClearanceLimits {
            region: bytes.flag().then(|| region(bytes)),
            load: bytes.flag().then(|| load(bytes)),
            effort: bytes.flag().then(|| Rpe::new(f64::from(bytes.below(11))).ok()).flatten(),
            range: bytes.rarely(4).then(|| Length::millimetres(300)),
            ..ClearanceLimits::default()
        }]
    } else {
        Vec::new()
    };
    Clearance { status, who: name("clinic"), expires: bytes.flag().then(|| near(bytes)), limits }
}

fn load(bytes: &mut Bytes<'_>) -> Mass {
    match bytes.below(8) {
        0 => Mass::ZERO,
        1 => Mass::MAX,
        2 => kg(-f64::from(bytes.byte())),
        3 => Mass::from_nanograms(i64::from(bytes.u32()) * 1_000).unwrap_or(Mass::ZERO),
        _ => kg(f64::from(bytes.byte()) / 2.0),
    }
}

/// A place, now and then one that does not exist.
fn place(bytes: &mut Bytes<'_>) -> Place {
    let at = |bytes: &mut Bytes<'_>| if bytes.rarely(3) { bytes.below(4) } else { 0 };
    Place { rung: at(bytes), range: at(bytes), tempo: at(bytes) }
}

fn grant(bytes: &mut Bytes<'_>, load: Mass) -> Grant {
    Grant { place: place(bytes), work: Work { sets: 1 + bytes.below(4), reps: 1 + bytes.below(8), load } }
}

fn session(bytes: &mut Bytes<'_>, state: &State) -> Session {
    let which = bytes.byte();
    let mut lifts = Vec::new();
    for (at, label) in LIFTS.iter().take(3).enumerate() {
        if which >> at & 1 == 1 {
            lifts.push(done(bytes, state, at, label));
        }
    }
    let asked = !bytes.rarely(8);
    let answers = if bytes.rarely(5) { vec![pain(bytes)] } else { Vec::new() };
    Session { lifts, pain: asked.then_some(answers), minutes: None, effort: None }
}

fn done(bytes: &mut Bytes<'_>, state: &State, at: usize, label: &str) -> LiftSession {
    let granted = state.lifts().nth(at).map(|lift| lift.grant());
    let (mut sets, reps) = granted.map_or((2, 5), |grant| (grant.work.sets, u16::from(grant.work.reps)));
    if bytes.rarely(10) {
        sets = 1 + bytes.below(5);
    }
    let at_grant = granted.map_or(Mass::ZERO, |grant| grant.load());
    let weight = if bytes.rarely(8) { load(bytes) } else { at_grant };
    let quality = bytes.byte();
    let set = |bytes: &mut Bytes<'_>| {
        let made = if bytes.rarely(16) { u16::from(bytes.below(12)) } else { reps };
        let effort = match bytes.below(6) {
            0 => Rpe::new(f64::from(bytes.below(21)) / 2.0).ok().map(Effort::Rpe),
            1 => None,
            _ => Some(Effort::Rir(Rir::whole(bytes.below(5)))),
        };
        WorkSet {
            effort,
            failed: bytes.rarely(20),
            marks: (quality % 8 != 1).then(|| marks(bytes, made, quality)),
            ..WorkSet::done(weight, Reps::whole(made).expect("a count"))
        }
    };
    let height = |bytes: &mut Bytes<'_>| Length::millimetres(HEIGHTS[usize::from(bytes.below(3))]);
    LiftSession {
        lift: name(label),
        place: bytes.rarely(6).then(|| place(bytes)),
        height: bytes.rarely(6).then(|| height(bytes)),
        reached: bytes.rarely(8).then(|| height(bytes)),
        sets: (0..sets).map(|_| set(bytes)).collect(),
        setup: setup(bytes),
        cue: None,
    }
}

fn setup(bytes: &mut Bytes<'_>) -> Option<Setup> {
    bytes.rarely(4).then(|| Setup {
        pins: bytes.rarely(3).then(|| Length::millimetres(400)),
        company: bytes.flag().then(|| bytes.pick(&[ByTheBar::Alone, ByTheBar::Others, ByTheBar::Spotter])),
        kit: bytes.rarely(3).then(|| vec![name(bytes.pick(&["belt", "shoes"]))]),
    })
}

fn marks(bytes: &mut Bytes<'_>, reps: u16, quality: u8) -> SetMarks {
    let acceptable = match quality % 8 {
        2 => reps.saturating_sub(u16::from(bytes.below(4))),
        3 => u16::from(bytes.below(8)),
        _ => reps,
    };
    let rater = if bytes.rarely(16) { Rater::Lifter } else { Rater::Coach };
    let mut marks = SetMarks::scored(reps, acceptable, rater);
    if acceptable < reps {
        marks.first_failing_rep = Some(acceptable + 1);
    }
    let brace = if quality % 16 == 4 { Mark::NotMet } else { Mark::Met };
    for (criterion, mark) in [("brace", brace), ("depth", Mark::Met)] {
        marks.marks.push(CriterionMark { criterion: name(criterion), mark });
    }
    marks
}

/// A set of parameters; no bytes give a plain one.
fn parameters(bytes: &mut Bytes<'_>) -> Parameters {
    let bar = Bar::new(name("bar"), kg(20.0), Mass::ZERO).expect("a bar");
    let pieces =
        Pieces::new(name("pieces"), (1..12).map(|at| kg(f64::from(at) * 4.0)).collect()).expect("pieces");
    let stack = |id: &str| {
        MachineStack::new(name(id), kg(5.0), vec![kg(5.0); 16], vec![kg(2.5)], 1.0).expect("a stack")
    };
    let small = kg(bytes.pick(&[0.5, 0.25, 1.25, 2.0]));
    let faces = [(kg(20.0), 4), (kg(10.0), 4), (kg(5.0), 2), (kg(2.5), 2), (kg(1.25), 2), (small, 4)];
    let across = |mass: Mass| Length::millimetres(if mass >= kg(10.0) { 450 } else { 230 });
    let told = !bytes.rarely(8);
    let disc = |(mass, count): &(Mass, u16)| {
        let disc = Disc::new(*mass, *count).expect("a disc");
        if told { disc.with_diameter(across(*mass)).expect("a diameter") } else { disc }
    };
    let discs = faces.iter().map(disc).collect();
    let pairs = vec![Pair { strict: name("strict"), forgiving: name("forgiving"), ratio_cap: 1.0 }];
    let mut lifts = vec![
        lift(bytes, "strict", Body::Lower, 50.0),
        lift(bytes, "forgiving", Body::Lower, 60.0),
        lift(bytes, "press", Body::Upper, 40.0),
    ];
    if bytes.rarely(8) {
        lifts.truncate(1 + usize::from(bytes.below(2)));
    }
    Parameters {
        regions: REGIONS.iter().take(4).map(|id| Region::new(name(id))).collect(),
        blocks: if bytes.rarely(3) {
            vec![Length::millimetres(50), Length::millimetres(110)]
        } else {
            Vec::new()
        },
        pairs: if bytes.rarely(4) || lifts.len() < 2 { Vec::new() } else { pairs },
        lifts,
        implements: vec![
            Implement::Bar(bar),
            Implement::Pieces(pieces),
            Implement::Machine(stack("machine")),
            Implement::Assistance(stack("assistance")),
        ],
        stock: Stock::new(discs).expect("a stock"),
        policy: policy(bytes),
    }
}

fn lift(bytes: &mut Bytes<'_>, label: &str, body: Body, load_kg: f64) -> LiftParameters {
    let rung = |text: &str, below: &[&str], own_ratio| Rung {
        own_ratio,
        ..Rung::new(name(text), below.iter().map(|text| name(text)).collect())
    };
    let own = bytes.rarely(6).then(|| f64::from(bytes.byte()) / 100.0);
    let rungs = match bytes.below(4) {
        // Two ways up, and a rung beside them.
        1 => vec![
            rung("easy", &[], None),
            rung("a", &["easy"], own),
            rung("b", &["easy"], None),
            rung("hard", &["a", "b"], own),
        ],
        2 => vec![rung("only", &[], None)],
        _ => vec![rung("easy", &[], None), rung("middle", &["easy"], own), rung("hard", &["middle"], own)],
    };
    let starts = if bytes.rarely(6) { load(bytes) } else { kg(load_kg) };
    let regions = if body == Body::Lower { vec![name("hip"), name("knee")] } else { vec![name("shoulder")] };
    let start = if bytes.rarely(6) {
        grant(bytes, starts)
    } else {
        Grant { place: Place::default(), work: Work::new(2, 5, starts) }
    };
    let moving = [
        Dimension::Load,
        Dimension::Variant,
        Dimension::Range,
        Dimension::Tempo,
        Dimension::Sets,
        Dimension::Reps,
    ];
    let starts_from = match bytes.below(6) {
        1 => StartsFrom::Floor,
        2 => StartsFrom::Pins,
        _ => StartsFrom::Rack,
    };
    LiftParameters {
        id: name(label),
        name: bytes.rarely(8).then(|| name("what people say")),
        body,
        regions,
        implement: name(if bytes.rarely(5) { bytes.pick(IMPLEMENTS) } else { "bar" }),
        rungs,
        starts_from,
        ranges: HEIGHTS.iter().skip(usize::from(bytes.below(4))).map(|mm| Length::millimetres(*mm)).collect(),
        tempos: (0..bytes.below(3)).map(|at| Tempo { down: 2 + at, hold: 0, up: 1 }).collect(),
        start,
        moving: if bytes.rarely(3) { bytes.pick(&moving) } else { Dimension::Load },
        criteria: vec![
            Criterion::critical("brace").expect("a name"),
            Criterion::ordinary("depth").expect("a name"),
        ],
        pass: PassRules { miss_percent: 10 + bytes.below(4) * 10, ..PassRules::default() },
        gate: gate(bytes),
        step: match bytes.below(5) {
            1 => Some(StepPolicy::SmallestLoadable),
            2 => Some(StepPolicy::Fixed(kg(2.5))),
            3 => Some(StepPolicy::Part(f64::from(1 + bytes.below(10)) / 100.0)),
            _ => None,
        },
        step_cap: Some(f64::from(10 - bytes.below(8)) / 100.0),
        ceiling: bytes.rarely(6).then(|| load(bytes)),
        reps_top: Some(8),
        sets_top: Some(4),
        learning_sessions: Some(1 + bytes.below(3)),
        over_the_body: bytes.rarely(3),
    }
}

fn gate(bytes: &mut Bytes<'_>) -> Gate {
    let run = PassRun::new(9, 10, 1 + bytes.below(3)).expect("a run");
    let first = match bytes.below(4) {
        1 => {
            let rule = EvidenceRule::Sequential { poor: 0.7, good: 0.9, false_open: 0.05, false_shut: 0.1 };
            Requirement::Evidence(Evidence::new(rule, 60, 2).expect("a test"))
        }
        _ => Requirement::PassRun(run),
    };
    let more = [
        Requirement::EffortCap,
        Requirement::NoOpenBlock,
        Requirement::DwellSessions(2),
        Requirement::DwellDays(10),
        Requirement::Spacing(7),
        Requirement::SignOff,
        Requirement::Pair,
        Requirement::Region,
    ];
    let mut all = vec![first];
    all.extend((0..bytes.below(3)).map(|_| bytes.pick(&more)));
    Gate::new(Requirement::All(all)).expect("a gate")
}

fn policy(bytes: &mut Bytes<'_>) -> Policy {
    let mut policy = Policy { automatic_acceptance: bytes.rarely(3), ..Policy::default() };
    if bytes.rarely(3) {
        policy.cooling_off_days = 1 + u16::from(bytes.byte());
        policy.region_window_days = 1 + u16::from(bytes.byte());
        policy.region_moves = 1 + bytes.below(10);
        policy.window_days = 7 + u16::from(bytes.byte());
        policy.window_cap = f64::from(1 + bytes.below(20)) / 100.0;
        policy.clearance_required = bytes.flag();
        policy.step_back_cap = f64::from(1 + bytes.below(50)) / 100.0;
        policy.fails_to_step_back = 1 + bytes.below(3);
        policy.neutral_fails = bytes.below(5);
        policy.rung_load = f64::from(10 + bytes.below(91)) / 100.0;
    }
    if bytes.rarely(6) {
        policy.layoff.truncate(usize::from(bytes.below(6)));
    }
    policy
}
