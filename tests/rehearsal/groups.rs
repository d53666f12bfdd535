//! Gates of several ways, weeks and milestones: what the check says of them, and what the rehearsal makes of them.

use super::*;

fn run(acceptable: u16, of: u16, sessions: u8) -> Requirement {
    Requirement::PassRun(PassRun::new(acceptable, of, sessions).unwrap())
}

fn at_least(count: u8, of: Vec<Requirement>) -> Requirement {
    Requirement::AtLeast { count, of }
}

/// Codes that the check says of the squat with this gate, of those that are about gates.
fn said(gate: Requirement) -> Vec<&'static str> {
    let mut setup = clean();
    setup.squat().gate = Gate::new(gate).unwrap();
    setup.plan.lifts[0].reserve = Some(Rir::whole(1));
    codes(&check(&setup.parameters, Some(&setup.plan)))
}

/// Ten repetitions a session; a run over 15 never opens, a wait of four sessions looks at none.
#[test]
fn of_several_ways_the_quickest_ones_that_are_needed_count() {
    let wait = || Requirement::DwellSessions(4);
    assert_eq!(said(at_least(1, vec![run(13, 15, 2), wait()])), ["gate_needs_no_technique"]);
    assert_eq!(said(at_least(2, vec![run(13, 15, 2), wait()])), ["gate_never_opens"]);
    assert_eq!(said(at_least(2, vec![run(9, 10, 2), wait()])), [""; 0]);
    assert_eq!(said(at_least(1, vec![wait(), Requirement::DwellSessions(12)])), ["gate_needs_no_technique"]);
    assert_eq!(
        said(at_least(2, vec![wait(), Requirement::DwellSessions(12)])),
        ["gate_too_long", "gate_needs_no_technique"]
    );
}

/// Ten clean sessions in a row are rare even for the skilled; with another way beside them they are not needed.
#[test]
fn of_several_ways_the_likeliest_ones_that_are_needed_decide() {
    let (fair, rare) = (|| run(9, 10, 2), || run(10, 10, 10));
    assert_eq!(said(Requirement::Any(vec![fair(), rare()])), [""; 0]);
    assert_eq!(said(at_least(1, vec![rare(), fair()])), [""; 0]);
    assert_eq!(said(at_least(2, vec![rare(), fair()])), ["gate_rarely_opens"]);
    assert_eq!(said(Requirement::All(vec![rare(), fair()])), ["gate_rarely_opens"]);
}

/// The plan leaves one in reserve and the cap asks for two: it matters only where no way leaves the cap out.
#[test]
fn a_cap_on_effort_that_can_be_left_out_blocks_nothing() {
    let (fair, cap) = (|| run(9, 10, 2), || Requirement::EffortCap);
    for needed in [
        Requirement::All(vec![fair(), cap()]),
        at_least(2, vec![fair(), cap()]),
        Requirement::Any(vec![
            Requirement::All(vec![fair(), cap()]),
            Requirement::All(vec![run(9, 10, 3), cap()]),
        ]),
    ] {
        assert_eq!(said(needed.clone()), ["reserve_below_gate"], "{needed:?}");
    }
    let either = vec![Requirement::All(vec![fair(), cap()]), run(9, 10, 3)];
    assert_eq!(said(Requirement::Any(either.clone())), [""; 0]);
    assert_eq!(said(at_least(1, either)), [""; 0]);
}

/// From 40 kg at 5 % the cap is 42 kg.
#[test]
fn a_fixed_step_is_held_against_its_cap() {
    let with = |step: StepPolicy| {
        let mut setup = clean();
        setup.squat().step = Some(step);
        let findings = check(&setup.parameters, Some(&setup.plan));
        findings.into_iter().map(|finding| finding.what).collect::<Vec<_>>()
    };
    assert_eq!(with(StepPolicy::Fixed(kg(2.5))), [Found::StepAboveCap { wanted: kg(42.5), cap: kg(42.0) }]);
    assert_eq!(with(StepPolicy::Fixed(kg(2.0))), []);
    assert_eq!(with(StepPolicy::SmallestLoadable), []);
}

#[test]
fn a_week_names_lifts_that_there_are_each_once_a_day() {
    let setup = clean();
    let refused = |lifts: &[&str]| {
        let mut week = setup.week.clone();
        week[1].lifts = lifts.iter().map(|label| name(label)).collect();
        let error = check_week(&setup.parameters, &week).unwrap_err();
        (error.code(), error.field().to_string())
    };
    assert_eq!(refused(&["squat", "ghost"]), (Code::UnknownLift, "week[1].lifts".into()));
    assert_eq!(refused(&["squat", "squat"]), (Code::DuplicateLift, "week[1].lifts".into()));
    let mut ghost = model(0.9);
    ghost.lifts[0].lift = name("ghost");
    let error = simulate(&setup.parameters, &setup.plan, &ghost, 1, 1, 1).unwrap_err();
    assert_eq!(error.code(), Code::UnknownLift);
    let mut left_out = setup.plan.clone();
    left_out.lifts.pop();
    let error = simulate(&setup.parameters, &left_out, &model(0.9), 1, 1, 1).unwrap_err();
    assert_eq!((error.code(), error.field()), (Code::UnknownLift, "week"));
}

/// A lifter who never misses, with nothing left to chance.
fn faultless(milestone: Milestone) -> SkillModel {
    let mut all = model(1.0);
    (all.below_usual, all.missed_session) = (0.0, 0.0);
    all.lifts = vec![LiftSkill::of(name("squat"), 1.0).with_milestone(milestone)];
    all.lifts.push(LiftSkill::of(name("press"), 1.0));
    all
}

#[test]
fn a_rung_is_reached_on_it_or_above_it() {
    let mut setup = clean();
    setup.squat().moving = Dimension::Variant;
    let reached = |setup: &Setup, rung: &str| {
        let model = faultless(Milestone::Rung(name(rung)));
        simulate(&setup.parameters, &setup.plan, &model, 12, 2, 1).unwrap().lifts[0].clone()
    };
    // It stands on the easy rung from the start, and the harder one comes through the gate.
    let (easy, full) = (reached(&setup, "easy"), reached(&setup, "full"));
    assert_eq!((easy.reached, full.reached), (Some(1.0), Some(1.0)));
    assert!(easy.days.half.unwrap() < full.days.half.unwrap());
    setup.squat().start.place.rung = 1;
    assert_eq!(reached(&setup, "easy").reached, Some(1.0), "above it");
    let mut still = clean();
    still.squat().moving = Dimension::Load;
    assert_eq!(reached(&still, "full").reached, Some(0.0));
}

#[test]
fn a_clearance_that_runs_out_is_given_anew() {
    let mut setup = clean();
    let moves = |setup: &Setup| {
        let model = faultless(Milestone::Load(kg(46.0)));
        simulate(&setup.parameters, &setup.plan, &model, 26, 1, 1).unwrap().lifts[0].moves.half
    };
    let all_year = moves(&setup);
    assert!(all_year.unwrap() >= 3);
    setup.parameters.policy.clearance_days = 10;
    assert_eq!(moves(&setup), all_year);
}

/// Squat and press of one region, or of one pair, on two days of the week; the press cannot pass the squat.
fn moves_of(paired: bool, days: [u8; 2]) -> [u32; 2] {
    let mut setup = clean();
    setup.parameters.lifts[1].regions = vec![name("knee")];
    if paired {
        pair(&mut setup, "press", "squat");
    }
    let mut model = model(1.0);
    (model.below_usual, model.missed_session) = (0.0, 0.0);
    model.lifts = ["squat", "press"].map(|label| LiftSkill::of(name(label), 1.0)).to_vec();
    model.week = [(days[0], "squat"), (days[1], "press")]
        .map(|(weekday, label)| TrainingDay::new(weekday, vec![name(label)]))
        .to_vec();
    let played = simulate(&setup.parameters, &setup.plan, &model, 40, 1, 1).unwrap();
    [0, 1].map(|at: usize| played.lifts[at].moves.half.unwrap())
}

/// A step of one closes the weeks of both, and the day on which they open again is always the same lift's: it leaves
/// that one to the lift that has waited longer.
#[test]
fn lifts_that_share_a_window_take_turns() {
    for paired in [false, true] {
        for days in [[0, 3], [3, 0], [1, 5]] {
            let [squat, press] = moves_of(paired, days);
            assert!(
                squat >= 5 && press >= 5 && squat.abs_diff(press) <= 2,
                "{paired} {days:?}: {squat}, {press}"
            );
        }
    }
}

/// A lift that cannot use its turn keeps nobody waiting for ever: the press is trained on the day after the squat, too
/// soon for a step in its pair.
#[test]
fn a_turn_that_is_not_used_goes_on() {
    let [squat, press] = moves_of(true, [3, 4]);
    assert!(squat >= 5 && press == 0, "{squat}, {press}");
}
