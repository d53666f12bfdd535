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
    let mut log = Log::new(Lifter::new(name("invented")).with_invented(true));
    let kinds = [
        EventKind::ParametersChanged(Box::new(parameters(&mut Bytes::new(&[])))),
        EventKind::ClearanceRecorded(Clearance::new(ClearanceStatus::Cleared, name("clinic"))),
    ];
    for (sequence, kind) in (1..).zip(kinds) {
        log.events.push(Event::new(sequence, first_day(), kind));
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
        let event = Event::new(sequence, on, kind);
        state = take(&mut log, state, event);
        promises(&state, &mut bytes);
    }
    stored(&state, &log);
}

/// Born on some day of which a few lie after the log, in an age band, or of unknown age.
fn lifter(bytes: &mut Bytes<'_>) -> Lifter {
    let mut lifter = Lifter::new(name("invented")).with_invented(true);
    match bytes.below(4) {
        0 | 1 => lifter.born = Day::from_calendar(1940 + i32::from(bytes.below(100)), 3, 1).ok(),
        2 => {
            let from = 40 + bytes.below(50);
            lifter.age = Some(AgeBand::new(from, from + bytes.below(10), first_day()));
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
        12 | 13 => EventKind::NextDayReport(
            NextDayReport::new((number - 1).saturating_sub(u32::from(bytes.below(3))) * 4).with_pain(
                (!bytes.rarely(6)).then(|| if bytes.rarely(3) { vec![pain(bytes)] } else { Vec::new() }),
            ),
        ),
        14..=17 => EventKind::DayReport(
            DayReport::default()
                .with_class(bytes.flag().then(|| bytes.pick(&DayClass::ALL)))
                .with_pain(bytes.flag().then(|| if bytes.rarely(4) { vec![pain(bytes)] } else { Vec::new() }))
                .with_asks(
                    bytes
                        .flag()
                        .then(|| if bytes.rarely(4) { vec![bytes.pick(&Ask::ALL)] } else { Vec::new() }),
                )
                .with_minutes(bytes.rarely(6).then(|| bytes.u16())),
        ),
        18..=21 => EventKind::AdvanceAccepted(Advance::new(lift(bytes), who())),
        22 => EventKind::AdvanceDeclined(Advance::new(lift(bytes), who())),
        23 => EventKind::PainReport(pain(bytes)),
        24 => EventKind::UsualPainAgreed(
            UsualPain::new(region(bytes), Pain::new(bytes.below(5)).expect("a score"), who())
                .with_clinician(bytes.flag()),
        ),
        25 if bytes.rarely(2) => EventKind::SymptomReport(SymptomReport::new(vec![StopSign::ChestPain])),
        25..=27 => EventKind::ClearanceRecorded(clearance(bytes, near)),
        28 | 29 => EventKind::CoachSignOff(SignOff::new(
            who(),
            match bytes.below(3) {
                0 => SignOffScope::Everything,
                1 => SignOffScope::Region(region(bytes)),
                _ => SignOffScope::Gate(lift(bytes)),
            },
        )),
        30 => EventKind::CoachOverride(
            Override::new(lift(bytes), load(bytes), who())
                .with_why(bytes.flag().then(|| String::from("to see how it moves")))
                .with_expires(bytes.flag().then(|| near(bytes))),
        ),
        31 => {
            let (from, to) = (near(bytes), bytes.rarely(3).then(|| near(bytes)));
            let reason = bytes.pick(&[LayoffReason::Well, LayoffReason::Planned, LayoffReason::Ill]);
            EventKind::LayoffNoted(Layoff::new(from, reason).with_to(to))
        }
        32 => {
            let load = load(bytes);
            let to = grant(bytes, load);
            let moved = Move::new(lift(bytes), to, who());
            if bytes.flag() { EventKind::VariantChanged(moved) } else { EventKind::RangeChanged(moved) }
        }
        33 => {
            let lift = bytes.flag().then(|| lift(bytes));
            let changed = BarChanged::new(name("another")).with_lift(lift);
            if bytes.flag() {
                EventKind::RaterChanged(changed)
            } else {
                EventKind::BarOrDiscsChanged(changed)
            }
        }
        34 => EventKind::RoleSet(
            RoleSet::new(lift(bytes), bytes.pick(&[Role::Train, Role::Maintain, Role::Rest, Role::Retire]))
                .with_not_below(bytes.rarely(4).then(|| load(bytes))),
        ),
        35 | 36 => EventKind::ParametersChanged(Box::new(parameters(bytes))),
        37 => {
            let replaces = u32::from(bytes.below(MOST_EVENTS as u8)) * 4;
            let with = (bytes.flag() && number > 1).then(|| Box::new(kind(bytes, state, on, 1)));
            EventKind::Correction(
                Correction::new(replaces).with_day(bytes.rarely(3).then(|| near(bytes))).with_kind(with),
            )
        }
        38 => match bytes.below(6) {
            0 | 1 => EventKind::AskAnswered(AskAnswered::new(bytes.pick(&Ask::ALL), who(), bytes.flag())),
            2 => EventKind::BodyMassRecorded(load(bytes)),
            3 => EventKind::ClearanceExpired(name("clinic")),
            4 => EventKind::BlockStarted(name("block")),
            _ => EventKind::FunctionTested(Measurement::new(EverydayTest::Grip, f64::from(bytes.u16()))),
        },
        _ => match bytes.below(6) {
            0 => EventKind::Unknown(UnknownEvent::new("of_a_newer_version".into(), Value::Null)),
            _ => EventKind::SessionMissed(SessionMissed::new(name("work"))),
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
    PainAnswer::plain(region(bytes), score).with_features(features)
}

fn clearance(bytes: &mut Bytes<'_>, near: impl Fn(&mut Bytes<'_>) -> Day) -> Clearance {
    let status = match bytes.below(8) {
        0 => ClearanceStatus::NotCleared,
        1 => ClearanceStatus::ClearedWithLimits,
        _ => ClearanceStatus::Cleared,
    };
    let limits = if bytes.rarely(3) {
        vec![
            ClearanceLimits::default()
                .with_region(bytes.flag().then(|| region(bytes)))
                .with_load(bytes.flag().then(|| load(bytes)))
                .with_effort(bytes.flag().then(|| Rpe::new(f64::from(bytes.below(11))).ok()).flatten())
                .with_range(bytes.rarely(4).then(|| Length::millimetres(300))),
        ]
    } else {
        Vec::new()
    };
    Clearance::new(status, name("clinic")).with_expires(bytes.flag().then(|| near(bytes))).with_limits(limits)
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
    Place::default().with_rung(at(bytes)).with_range(at(bytes)).with_tempo(at(bytes))
}

fn grant(bytes: &mut Bytes<'_>, load: Mass) -> Grant {
    let place = place(bytes);
    Grant::new(Work::new(1 + bytes.below(4), 1 + bytes.below(8), load)).with_place(place)
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
    Session::new(lifts).with_pain(asked.then_some(answers))
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
        WorkSet::done(weight, Reps::whole(made).expect("a count"))
            .with_effort(effort)
            .with_failed(bytes.rarely(20))
            .with_marks((quality % 8 != 1).then(|| marks(bytes, made, quality)))
    };
    let height = |bytes: &mut Bytes<'_>| Length::millimetres(HEIGHTS[usize::from(bytes.below(3))]);
    let place = bytes.rarely(6).then(|| place(bytes));
    let (started, reached) = (bytes.rarely(6).then(|| height(bytes)), bytes.rarely(8).then(|| height(bytes)));
    LiftSession::as_granted(name(label), (0..sets).map(|_| set(bytes)).collect())
        .with_place(place)
        .with_height(started)
        .with_reached(reached)
        .with_setup(setup(bytes))
}

fn setup(bytes: &mut Bytes<'_>) -> Option<Setup> {
    bytes.rarely(4).then(|| {
        Setup::default()
            .with_pins(bytes.rarely(3).then(|| Length::millimetres(400)))
            .with_company(
                bytes.flag().then(|| bytes.pick(&[ByTheBar::Alone, ByTheBar::Others, ByTheBar::Spotter])),
            )
            .with_kit(bytes.rarely(3).then(|| vec![name(bytes.pick(&["belt", "shoes"]))]))
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
        marks.marks.push(CriterionMark::new(name(criterion), mark));
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
    let pairs = vec![Pair::new(name("strict"), name("forgiving"))];
    let mut lifts = vec![
        lift(bytes, "strict", Body::Lower, 50.0),
        lift(bytes, "forgiving", Body::Lower, 60.0),
        lift(bytes, "press", Body::Upper, 40.0),
    ];
    if bytes.rarely(8) {
        lifts.truncate(1 + usize::from(bytes.below(2)));
    }
    let blocks =
        if bytes.rarely(3) { vec![Length::millimetres(50), Length::millimetres(110)] } else { Vec::new() };
    let pairs = if bytes.rarely(4) || lifts.len() < 2 { Vec::new() } else { pairs };
    Parameters::new(
        REGIONS.iter().take(4).map(|id| Region::new(name(id))).collect(),
        lifts,
        vec![
            Implement::Bar(bar),
            Implement::Pieces(pieces),
            Implement::Machine(stack("machine")),
            Implement::Assistance(stack("assistance")),
        ],
        Stock::new(discs).expect("a stock"),
    )
    .with_blocks(blocks)
    .with_pairs(pairs)
    .with_policy(policy(bytes))
}

fn lift(bytes: &mut Bytes<'_>, label: &str, body: Body, load_kg: f64) -> LiftParameters {
    let rung = |text: &str, below: &[&str], own_ratio| {
        Rung::new(name(text), below.iter().map(|text| name(text)).collect()).with_own_ratio(own_ratio)
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
    let start = if bytes.rarely(6) { grant(bytes, starts) } else { Grant::new(Work::new(2, 5, starts)) };
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
    // Drawn in this order, so that a kept input means what it meant when it was kept.
    let said = bytes.rarely(8).then(|| name("what people say"));
    let implement = name(if bytes.rarely(5) { bytes.pick(IMPLEMENTS) } else { "bar" });
    let ranges =
        HEIGHTS.iter().skip(usize::from(bytes.below(4))).map(|mm| Length::millimetres(*mm)).collect();
    let tempos = (0..bytes.below(3)).map(|at| Tempo::new(2 + at, 0, 1)).collect();
    let moving = if bytes.rarely(3) { bytes.pick(&moving) } else { Dimension::Load };
    let pass = PassRules::default().with_miss_percent(10 + bytes.below(4) * 10);
    LiftParameters::new(name(label), body, implement, start, gate(bytes))
        .with_name(said)
        .with_regions(regions)
        .with_rungs(rungs)
        .with_starts_from(starts_from)
        .with_ranges(ranges)
        .with_tempos(tempos)
        .with_moving(moving)
        .with_criteria(vec![
            Criterion::critical("brace").expect("a name"),
            Criterion::ordinary("depth").expect("a name"),
        ])
        .with_pass(pass)
        .with_step(match bytes.below(5) {
            1 => Some(StepPolicy::SmallestLoadable),
            2 => Some(StepPolicy::Fixed(kg(2.5))),
            3 => Some(StepPolicy::Part(f64::from(1 + bytes.below(10)) / 100.0)),
            _ => None,
        })
        .with_step_cap(f64::from(10 - bytes.below(8)) / 100.0)
        .with_ceiling(bytes.rarely(6).then(|| load(bytes)))
        .with_reps_top(8)
        .with_sets_top(4)
        .with_learning_sessions(1 + bytes.below(3))
        .with_over_the_body(bytes.rarely(3))
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
    let mut policy = Policy::default().with_automatic_acceptance(bytes.rarely(3));
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
