//! Properties of marks, passes and gates, over generated sessions.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test may panic"
)]

use bismar::condition::DayClass;
use bismar::gate::{
    Criterion, CriterionMark, Evidence, EvidenceRule, Gate, GateFacts, GateState, Mark, Missing,
    NamedCondition, Outcome, PassRules, PassRun, Rater, Requirement, SessionFact, SetMarks, Skill,
    cohen_kappa, operating_characteristic, session_chance, session_pass, set_pass,
};
use bismar::quantity::{Day, Name};
use bismar::value::Value;
use proptest::collection::vec;
use proptest::prelude::*;

// ---------------------------------------------------------------- generators

fn criteria() -> Vec<Criterion> {
    vec![
        Criterion::critical("brace held").unwrap(),
        Criterion::critical("knees track feet").unwrap().in_sets(&[1, 2]),
        Criterion::ordinary("tempo as planned").unwrap(),
    ]
}

/// Mostly good marks, since all-bad sessions say little about gates.
fn mark() -> impl Strategy<Value = Mark> {
    prop_oneof![
        12 => Just(Mark::Met),
        1 => Just(Mark::Borderline),
        1 => Just(Mark::NotMet),
        1 => Just(Mark::NotSeen),
    ]
}

fn rater() -> impl Strategy<Value = Rater> {
    prop_oneof![6 => Just(Rater::Coach), 2 => Just(Rater::Video), 1 => Just(Rater::Lifter)]
}

/// A set as the sum of its repetitions, so that counts and first failing repetition agree.
fn set() -> impl Strategy<Value = SetMarks> {
    let reps = vec(prop::bool::weighted(0.93), 1..9);
    let scored = prop::bool::weighted(0.93);
    let placed = prop::bool::weighted(0.9);
    (reps, scored, placed, vec(mark(), 3), rater()).prop_map(|(reps, scored, placed, marks, rater)| {
        let mut set = SetMarks::unscored(reps.len() as u16, rater);
        if scored {
            set.acceptable = Some(reps.iter().filter(|good| **good).count() as u16);
        }
        if placed {
            set.first_failing_rep = reps.iter().position(|good| !good).map(|at| at as u16 + 1);
        }
        set.marks = criteria()
            .into_iter()
            .zip(marks)
            .map(|(criterion, mark)| CriterionMark::new(criterion.id, mark))
            .collect();
        set
    })
}

fn sets() -> impl Strategy<Value = Vec<SetMarks>> {
    vec(set(), 1..5)
}

fn rules() -> impl Strategy<Value = PassRules> {
    let flags = (any::<bool>(), any::<bool>(), any::<bool>(), any::<bool>());
    (0_u8..=50, 0_u16..4, 0_u16..4, 0_u8..3, flags).prop_map(
        |(miss_percent, misses_at_least, clean_first_reps, unscored_sets_allowed, flags)| {
            PassRules::default()
                .with_miss_percent(miss_percent)
                .with_misses_at_least(misses_at_least)
                .with_clean_first_reps(clean_first_reps)
                .with_unscored_sets_allowed(unscored_sets_allowed)
                .with_first_set_must_pass(flags.0)
                .with_every_criterion_seen(flags.1)
                .with_critical_borderline_passes(flags.2)
                .with_lifter_marks_count(flags.3)
        },
    )
}

fn day_class() -> impl Strategy<Value = DayClass> {
    prop_oneof![
        5 => Just(DayClass::Within),
        3 => Just(DayClass::Below),
        1 => Just(DayClass::BelowSingle),
        1 => Just(DayClass::Above),
        1 => Just(DayClass::Unknown),
    ]
}

/// A session of ten or so scored repetitions with a verdict that its numbers allow.
fn session() -> impl Strategy<Value = (i32, SessionFact)> {
    let misses = prop_oneof![6 => 0_u32..=1, 1 => 2_u32..=6];
    (0_i32..=3, 6_u32..=14, misses, 0_u8..12, day_class()).prop_map(|(gap, scored, misses, kind, class)| {
        let misses = misses.min(scored);
        let (passed, critical) = match kind {
            0 => (Outcome::NotScored, false),
            1 => (Outcome::Fail, false),
            2 => (Outcome::Fail, true),
            _ if misses <= 1 => (Outcome::Pass, false),
            _ => (Outcome::Fail, false),
        };
        let fact = SessionFact::of(Day::from_number(0).unwrap(), passed, class)
            .with_critical_fail(critical)
            .with_acceptable(scored - misses)
            .with_scored(scored);
        (gap, fact)
    })
}

/// Sessions in order of day, some of them on the same day.
fn sessions() -> impl Strategy<Value = Vec<SessionFact>> {
    vec(session(), 0..10).prop_map(|sessions| {
        let mut day = 20_000;
        sessions
            .into_iter()
            .map(|(gap, mut session)| {
                day += gap;
                session.day = Day::from_number(day).unwrap();
                session
            })
            .collect()
    })
}

fn pass_run() -> impl Strategy<Value = Requirement> {
    (6_u16..=9, 6_u16..=10, 1_u8..=4, 0_u8..=3).prop_map(|(k, n, sessions, neutral)| {
        let run = PassRun::new(k.min(n), n, sessions).unwrap();
        Requirement::PassRun(run.with_neutral_fails(neutral).unwrap())
    })
}

fn evidence() -> impl Strategy<Value = Requirement> {
    let sequential = (0.5_f64..0.75, 0.8_f64..0.97).prop_map(|(poor, good)| EvidenceRule::Sequential {
        poor,
        good,
        false_open: 0.05,
        false_shut: 0.1,
    });
    let posterior = (0.5_f64..0.8, 0.6_f64..0.95).prop_map(|(rate, level)| EvidenceRule::Posterior {
        rate,
        level,
        prior_acceptable: 1.0,
        prior_missed: 1.0,
    });
    (prop_oneof![sequential, posterior], 60_u16..100, 1_u8..4)
        .prop_map(|(rule, most, days)| Requirement::Evidence(Evidence::new(rule, most, days).unwrap()))
}

fn requirement() -> impl Strategy<Value = Requirement> {
    let leaf = prop_oneof![
        4 => pass_run(),
        2 => evidence(),
        1 => Just(Requirement::EffortCap),
        1 => Just(Requirement::NoOpenBlock),
        1 => (1_u16..9).prop_map(Requirement::DwellSessions),
        1 => (1_u16..30).prop_map(Requirement::DwellDays),
        1 => (1_u16..15).prop_map(Requirement::Spacing),
        1 => Just(Requirement::SignOff),
        1 => Just(Requirement::Pair),
        1 => Just(Requirement::Region),
    ];
    leaf.prop_recursive(2, 10, 3, |part| {
        prop_oneof![
            vec(part.clone(), 1..4).prop_map(Requirement::All),
            vec(part.clone(), 1..4).prop_map(Requirement::Any),
            (vec(part, 1..4), 1_u8..4).prop_map(|(of, count)| {
                let count = count.min(of.len() as u8);
                Requirement::AtLeast { count, of }
            }),
        ]
    })
}

fn gate() -> impl Strategy<Value = Gate> {
    requirement().prop_map(|requirement| Gate::new(requirement).unwrap())
}

fn facts() -> impl Strategy<Value = GateFacts> {
    let named = |name: &'static str| {
        vec(any::<bool>(), 0..3).prop_map(move |all| {
            let name = Name::new(name).unwrap();
            all.into_iter().map(|holds| NamedCondition::new(name.clone(), holds)).collect::<Vec<_>>()
        })
    };
    let counts = (0_u32..12, 0_u32..40, prop::option::of(0_u32..20));
    let flags = (any::<bool>(), any::<bool>(), prop::option::of(any::<bool>()));
    (sessions(), counts, flags, named("pin press"), named("knee")).prop_map(
        |(sessions, counts, flags, pair, region)| {
            GateFacts::default()
                .with_sessions(sessions)
                .with_dwell_sessions(counts.0)
                .with_dwell_days(counts.1)
                .with_days_since_move(counts.2)
                .with_open_blocks(if flags.0 { vec![Name::new("knee").unwrap()] } else { vec![] })
                .with_signed_off(flags.1)
                .with_effort_cap_met(flags.2)
                .with_pair(pair)
                .with_region(region)
        },
    )
}

fn open(gate: &Gate, facts: &GateFacts) -> bool {
    gate.check(facts).unwrap().open
}

/// From worse to better.
fn rank(outcome: Outcome) -> u8 {
    match outcome {
        Outcome::Fail => 0,
        Outcome::NotScored => 1,
        Outcome::Pass => 2,
    }
}

/// A session made strictly worse: which way depends on `how`.
fn worsen(session: &mut SessionFact, how: u8, by: u32) {
    let by = by.min(session.acceptable);
    match how % 5 {
        0 => {
            session.acceptable -= by;
            session.passed = if session.passed == Outcome::Pass { Outcome::Fail } else { session.passed };
        }
        1 => {
            session.critical_fail = true;
            session.passed = Outcome::Fail;
        }
        2 if session.passed == Outcome::Pass => session.passed = Outcome::Fail,
        3 if session.passed == Outcome::Pass => session.passed = Outcome::NotScored,
        4 => {
            // Fewer repetitions, the misses staying.
            session.acceptable -= by;
            session.scored -= by;
        }
        _ => {}
    }
}

// ---------------------------------------------------------------- passes

proptest! {
    #![proptest_config(ProptestConfig::with_cases(2000))]

    /// A mark that was not seen never makes a session pass that did not pass, and never saves one from failing
    /// by being better than what it hides.
    #[test]
    fn not_seen_never_helps(rules in rules(), sets in sets(), at in any::<prop::sample::Index>(), which in 0_usize..3) {
        let before = session_pass(&rules, &criteria(), &sets).unwrap();
        let mut hidden = sets.clone();
        let set = at.index(hidden.len());
        // Rules that let a set go unscored let a loss in it go unseen too; that is what they are for.
        if rules.unscored_sets_allowed > 0 && sets[set].marks[which].mark != Mark::Met {
            return Ok(());
        }
        hidden[set].marks[which].mark = Mark::NotSeen;
        let after = session_pass(&rules, &criteria(), &hidden).unwrap();
        prop_assert!(after.passed != Outcome::Pass || before.passed == Outcome::Pass);
    }

    /// Leaving a set unscored never makes a session pass, unless the rules allow unscored sets.
    #[test]
    fn an_unscored_set_never_helps(rules in rules(), sets in sets(), at in any::<prop::sample::Index>()) {
        let rules = rules.with_unscored_sets_allowed(0);
        let mut unscored = sets.clone();
        let set = at.index(unscored.len());
        unscored[set].acceptable = None;
        let after = session_pass(&rules, &criteria(), &unscored).unwrap();
        prop_assert!(after.passed != Outcome::Pass);
        prop_assert!(set_pass(&rules, &criteria(), 1, &unscored[set]).unwrap().passed != Outcome::Pass);
    }

    /// One more miss, at the end of a set, never betters a verdict.
    #[test]
    fn one_more_miss_never_helps(rules in rules(), sets in sets(), at in any::<prop::sample::Index>()) {
        let before = session_pass(&rules, &criteria(), &sets).unwrap();
        let mut worse = sets.clone();
        let set = &mut worse[at.index(sets.len())];
        let placed = set.first_failing_rep.is_some() || set.acceptable == Some(set.reps);
        let Some(acceptable) = set.acceptable.filter(|acceptable| *acceptable > 0 && placed) else { return Ok(()) };
        set.acceptable = Some(acceptable - 1);
        set.first_failing_rep = set.first_failing_rep.or(Some(set.reps));
        if set.check(&criteria()).is_err() {
            return Ok(());
        }
        let after = session_pass(&rules, &criteria(), &worse).unwrap();
        prop_assert!(rank(after.passed) <= rank(before.passed), "{:?} {:?}", before, after);
    }

    /// A worse mark on any criterion never betters a verdict.
    #[test]
    fn a_worse_mark_never_helps(rules in rules(), sets in sets(), at in any::<prop::sample::Index>(), which in 0_usize..3) {
        let before = session_pass(&rules, &criteria(), &sets).unwrap();
        let mut worse = sets.clone();
        let set = at.index(worse.len());
        let mark = &mut worse[set].marks[which].mark;
        *mark = match *mark {
            Mark::Met => Mark::Borderline,
            Mark::NotSeen => Mark::NotSeen,
            _ => Mark::NotMet,
        };
        let after = session_pass(&rules, &criteria(), &worse).unwrap();
        prop_assert!(after.passed != Outcome::Pass || before.passed == Outcome::Pass);
        prop_assert!(!before.critical_fail || after.critical_fail);
    }

    /// A critical loss fails the session under any rules, whoever marked it and whatever was scored.
    #[test]
    fn a_critical_loss_always_fails(rules in rules(), sets in sets(), at in any::<prop::sample::Index>()) {
        let mut worse = sets.clone();
        let set = at.index(worse.len());
        worse[set].marks[0].mark = Mark::NotMet;
        let after = session_pass(&rules, &criteria(), &worse).unwrap();
        prop_assert!(after.passed == Outcome::Fail && after.critical_fail);
    }

    /// With the default rules the lifter's own marks never make a pass.
    #[test]
    fn the_lifters_own_marks_do_not_pass(sets in sets(), at in any::<prop::sample::Index>()) {
        let mut own = sets;
        let set = at.index(own.len());
        own[set].rater = Rater::Lifter;
        prop_assert!(session_pass(&PassRules::default(), &criteria(), &own).unwrap().passed != Outcome::Pass);
    }

    /// The verdict explains itself: a pass has no reason against it, anything else has one, and the reasons
    /// say which of the two it is.
    #[test]
    fn a_verdict_gives_its_reasons(rules in rules(), sets in sets()) {
        let verdict = session_pass(&rules, &criteria(), &sets).unwrap();
        prop_assert_eq!(verdict.passed == Outcome::Pass, verdict.reasons.is_empty());
        let failing = verdict.reasons.iter().any(|reason| reason.outcome() == Outcome::Fail);
        prop_assert_eq!(verdict.passed == Outcome::Fail, failing);
        prop_assert!(verdict.acceptable <= verdict.scored);
        prop_assert!(verdict.passed != Outcome::Pass || verdict.scored - verdict.acceptable <= verdict.misses_allowed);
    }

    /// A flare the next morning makes the session a fail, once and for all, and changes no count.
    #[test]
    fn a_flare_takes_the_pass_back(sets in sets()) {
        let verdict = session_pass(&PassRules::default(), &criteria(), &sets).unwrap();
        let back = verdict.clone().retracted();
        prop_assert_eq!(back.passed, Outcome::Fail);
        prop_assert_eq!((back.acceptable, back.scored), (verdict.acceptable, verdict.scored));
        prop_assert_eq!(back.clone().retracted(), back);
    }

    /// What is written is read back the same.
    #[test]
    fn marks_and_verdicts_survive_writing(rules in rules(), sets in sets()) {
        let verdict = session_pass(&rules, &criteria(), &sets).unwrap();
        prop_assert_eq!(&Value::write(&verdict).unwrap().read::<bismar::gate::SessionVerdict>().unwrap(), &verdict);
        prop_assert_eq!(&Value::write(&sets).unwrap().read::<Vec<SetMarks>>().unwrap(), &sets);
        prop_assert_eq!(&Value::write(&rules).unwrap().read::<PassRules>().unwrap(), &rules);
    }
}

// ---------------------------------------------------------------- gates

proptest! {
    #![proptest_config(ProptestConfig::with_cases(4000))]

    /// A session made worse never opens a gate that was shut.
    #[test]
    fn a_worse_session_never_opens_a_gate(gate in gate(), facts in facts(), at in any::<prop::sample::Index>(), how in 0_u8..5, by in 1_u32..4) {
        if facts.sessions.is_empty() {
            return Ok(());
        }
        let mut worse = facts.clone();
        let place = at.index(worse.sessions.len());
        worsen(&mut worse.sessions[place], how, by);
        prop_assert!(!open(&gate, &worse) || open(&gate, &facts), "{:?}", worse);
    }

    /// The same for the part of a gate that looks at repetitions, alone: nothing else hides it.
    #[test]
    fn a_worse_session_never_completes_a_run_or_a_test(
        requirement in prop_oneof![pass_run(), evidence()], sessions in sessions(),
        at in any::<prop::sample::Index>(), how in 0_u8..5, by in 1_u32..4,
    ) {
        if sessions.is_empty() {
            return Ok(());
        }
        let gate = Gate::new(requirement).unwrap();
        let facts = GateFacts::default().with_sessions(sessions);
        let mut worse = facts.clone();
        let place = at.index(worse.sessions.len());
        worsen(&mut worse.sessions[place], how, by);
        prop_assert!(!open(&gate, &worse) || open(&gate, &facts), "{:?}", worse);
    }

    /// One more passing day never shuts a pass-run, and one more unscored session changes nothing.
    #[test]
    fn a_run_grows_by_passes_only(run in pass_run(), sessions in sessions(), gap in 1_i32..5) {
        let gate = Gate::new(run).unwrap();
        let facts = GateFacts::default().with_sessions(sessions);
        let last = facts.sessions.last().map_or(20_000, |last| last.day.number());
        let next = |passed, day_class| {
            let day = Day::from_number(last + gap).unwrap();
            let (acceptable, scored) = (10, 10);
            let mut more = facts.clone();
            more.sessions.push(SessionFact::of(day, passed, day_class).with_acceptable(acceptable).with_scored(scored));
            more
        };
        prop_assert!(!open(&gate, &facts) || open(&gate, &next(Outcome::Pass, DayClass::Within)));
        prop_assert_eq!(open(&gate, &facts), open(&gate, &next(Outcome::NotScored, DayClass::Within)));
        prop_assert!(!open(&gate, &next(Outcome::Fail, DayClass::Within)));
    }

    /// Open and missing nothing are one and the same.
    #[test]
    fn open_means_nothing_missing(gate in gate(), facts in facts()) {
        let state = gate.check(&facts).unwrap();
        prop_assert_eq!(state.open, state.missing.is_empty());
        prop_assert!(!state.open || !state.met.is_empty());
    }

    /// The missing number of passing sessions is the truth: so many clean days more complete the run, one
    /// fewer does not.
    #[test]
    fn the_missing_sessions_are_the_ones_missing(run in pass_run(), sessions in sessions()) {
        let gate = Gate::new(run).unwrap();
        let mut facts = GateFacts::default().with_sessions(sessions);
        let state = gate.check(&facts).unwrap();
        let Some(Missing::PassingSessions { have, need, .. }) = state.missing.first().cloned() else { return Ok(()) };
        for more in 1..=need - have {
            add_clean_day(&mut facts, 10);
            prop_assert_eq!(open(&gate, &facts), more == need - have);
        }
    }

    /// The missing number of acceptable repetitions is the truth as well.
    #[test]
    fn the_missing_repetitions_are_the_ones_missing(test in evidence(), sessions in sessions()) {
        let gate = Gate::new(test).unwrap();
        let facts = GateFacts::default().with_sessions(sessions);
        let state = gate.check(&facts).unwrap();
        let missing = state.missing.iter().find_map(|missing| match missing {
            Missing::Evidence { clean_reps, .. } => Some(*clean_reps),
            _ => None,
        });
        let Some(clean_reps) = missing else { return Ok(()) };
        let lacks = |reps: u32| {
            let mut facts = facts.clone();
            add_clean_day(&mut facts, reps);
            let missing = gate.check(&facts).unwrap().missing;
            missing.iter().any(|missing| matches!(missing, Missing::Evidence { .. } | Missing::EvidenceAgainst { .. }))
        };
        match clean_reps {
            Some(reps) => {
                prop_assert!(!lacks(reps));
                prop_assert!(reps == 1 || lacks(reps - 1));
            }
            None => prop_assert!(lacks(500)),
        }
    }

    /// Moving all days by the same number changes no answer but the dates.
    #[test]
    fn only_differences_of_days_matter(gate in gate(), facts in facts(), by in -1000_i32..1000) {
        let mut moved = facts.clone();
        for session in &mut moved.sessions {
            session.day = session.day.plus(by).unwrap();
        }
        prop_assert_eq!(open(&gate, &facts), open(&gate, &moved));
    }

    /// All is no easier than any, and at-least lies between.
    #[test]
    fn groups_are_ordered(parts in vec(requirement(), 1..4), facts in facts()) {
        let of = |requirement| open(&Gate::new(requirement).unwrap(), &facts);
        let opens: Vec<bool> = (1..=parts.len() as u8)
            .map(|count| of(Requirement::AtLeast { count, of: parts.clone() }))
            .collect();
        prop_assert!(opens.windows(2).all(|pair| pair[0] || !pair[1]));
        prop_assert_eq!(opens.first().copied(), Some(of(Requirement::Any(parts.clone()))));
        prop_assert_eq!(opens.last().copied(), Some(of(Requirement::All(parts))));
    }

    /// Gates, facts and states survive writing.
    #[test]
    fn gates_survive_writing(gate in gate(), facts in facts()) {
        let state = gate.check(&facts).unwrap();
        prop_assert_eq!(&Value::write(&gate).unwrap().read::<Gate>().unwrap(), &gate);
        prop_assert_eq!(&Value::write(&facts).unwrap().read::<GateFacts>().unwrap(), &facts);
        prop_assert_eq!(&Value::write(&state).unwrap().read::<GateState>().unwrap(), &state);
    }
}

/// One more day of clean repetitions, after all others.
fn add_clean_day(facts: &mut GateFacts, reps: u32) {
    let last = facts.sessions.last().map_or(20_000, |last| last.day.number());
    facts.sessions.push(
        SessionFact::of(Day::from_number(last + 1).unwrap(), Outcome::Pass, DayClass::Within)
            .with_acceptable(reps)
            .with_scored(reps),
    );
}

#[test]
fn a_gate_that_is_always_open_or_never_opens_is_refused() {
    let code = |result: Result<Gate, bismar::Error>| result.unwrap_err().code().as_str();
    let at_least = |count, of| Gate::new(Requirement::AtLeast { count, of });
    assert_eq!(code(Gate::new(Requirement::All(vec![]))), "gate_always_open");
    assert_eq!(code(Gate::new(Requirement::Any(vec![]))), "gate_always_open");
    assert_eq!(code(at_least(0, vec![Requirement::SignOff])), "gate_always_open");
    assert_eq!(code(at_least(2, vec![Requirement::SignOff])), "gate_never_opens");
    assert_eq!(code(Gate::new(Requirement::DwellDays(0))), "gate_always_open");
    let mut deep = Requirement::SignOff;
    for _ in 0..10 {
        deep = Requirement::All(vec![deep]);
    }
    assert_eq!(code(Gate::new(deep)), "gate_too_large");
    let wide = Requirement::All(vec![Requirement::SignOff; 100]);
    assert_eq!(code(Gate::new(wide)), "gate_too_large");
}

#[test]
fn a_change_of_rater_is_flagged_or_starts_again() {
    let run = PassRun::new(9, 10, 2).unwrap();
    let mut facts = GateFacts::default();
    for rater in ["Ann (invented)", "Ben (invented)"] {
        add_clean_day(&mut facts, 10);
        facts.sessions.last_mut().unwrap().rater = Some(Name::new(rater).unwrap());
    }
    let flagged = Gate::new(Requirement::PassRun(run.clone())).unwrap().check(&facts).unwrap();
    assert!(flagged.open && flagged.notes.len() == 1, "{flagged:?}");
    let strict = Requirement::PassRun(run.restarted_by_another_rater(true));
    assert!(!Gate::new(strict).unwrap().check(&facts).unwrap().open);
}

// ---------------------------------------------------------------- operating characteristics

/// Every sequence of sessions of three repetitions, each with its chance, held against the gate itself: the
/// chance that it has opened by the last one.
fn by_enumeration(gate: &Gate, sessions: u32, rate: f64) -> f64 {
    let chances: Vec<f64> = (0..=3).map(|good| at_least(good, rate) - at_least(good + 1, rate)).collect();
    let mut total = 0.0;
    for code in 0..4_u32.pow(sessions) {
        let (mut facts, mut chance, mut left, mut opened) = (GateFacts::default(), 1.0, code, false);
        for _ in 0..sessions {
            let good = left % 4;
            left /= 4;
            chance *= chances[good as usize];
            add_clean_day(&mut facts, 3);
            let session = facts.sessions.last_mut().unwrap();
            session.acceptable = good;
            session.passed = if good >= 2 { Outcome::Pass } else { Outcome::Fail };
            opened = opened || open(gate, &facts);
        }
        if opened {
            total += chance;
        }
    }
    total
}

fn at_least(good: u32, rate: f64) -> f64 {
    match good {
        0 => 1.0,
        4.. => 0.0,
        good => session_chance(good as u16, 3, rate, 0.0).unwrap(),
    }
}

/// The calculator and the gate are the same machine.
#[test]
fn the_characteristic_is_that_of_the_gate_itself() {
    let run = Gate::new(Requirement::PassRun(PassRun::new(2, 3, 2).unwrap())).unwrap();
    for rate in [0.3, 0.6, 0.9] {
        let held = operating_characteristic(&run, &Skill::of(rate), 6).unwrap();
        let counted = by_enumeration(&run, 6, rate);
        assert!((held.within - counted).abs() < 1e-12, "{rate}: {} {counted}", held.within);
    }
    let rule = EvidenceRule::Sequential { poor: 0.4, good: 0.8, false_open: 0.1, false_shut: 0.2 };
    let test = Gate::new(Requirement::Evidence(Evidence::new(rule, 12, 2).unwrap())).unwrap();
    for rate in [0.3, 0.6, 0.9] {
        let skill = Skill::of(rate).with_reps(3);
        // One try of at most twelve repetitions cannot outlast seven sessions.
        let held = operating_characteristic(&test, &skill, 1).unwrap();
        let counted = by_enumeration(&test, 7, rate);
        assert!((held.one_try - counted).abs() < 1e-12, "{rate}: {} {counted}", held.one_try);
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    /// More skill never waits longer; a stricter gate never opens sooner; more sessions never lower the chance.
    #[test]
    fn the_characteristic_is_monotone(
        of in 2_u16..20, misses in 0_u16..3, sessions in 1_u8..6,
        rate in 0.05_f64..0.95, more in 0.0_f64..0.05, correlation in prop_oneof![Just(0.0), 0.0_f64..0.9], horizon in 1_u32..60,
    ) {
        let acceptable = of.saturating_sub(misses).max(1);
        let run = |acceptable, sessions| {
            Gate::new(Requirement::PassRun(PassRun::new(acceptable, of, sessions).unwrap())).unwrap()
        };
        let skill = |rate| Skill::of(rate).with_correlation(correlation);
        let held = |gate: &Gate, rate, horizon| operating_characteristic(gate, &skill(rate), horizon).unwrap();
        let gate = run(acceptable, sessions);
        let now = held(&gate, rate, horizon);
        let (better, later) = (held(&gate, rate + more, horizon), held(&gate, rate, horizon + 1));
        let slack = 1e-12;
        prop_assert!(better.within >= now.within - slack && better.one_try >= now.one_try - slack);
        prop_assert!(later.within >= now.within - slack);
        prop_assert!(held(&run(acceptable, sessions + 1), rate, horizon).within <= now.within + slack);
        if acceptable < of {
            prop_assert!(held(&run(acceptable + 1, sessions), rate, horizon).within <= now.within + slack);
        }
        prop_assert!((0.0..=1.0).contains(&now.within) && (0.0..=1.0).contains(&now.session));
        if let (Some(now), Some(better)) = (now.mean_sessions, better.mean_sessions) {
            prop_assert!(better <= now * (1.0 + 1e-9));
        }
    }

    /// A try of evidence opens or ends: its chances add up, so its mean length is finite and bounded.
    #[test]
    fn a_test_of_evidence_always_ends(test in evidence(), rate in 0.0_f64..=1.0, reps in 1_u16..15, clean in 0_u16..3) {
        let Requirement::Evidence(evidence) = &test else { panic!("an evidence gate") };
        let longest = f64::from(evidence.most_reps()) * 2.0 + f64::from(evidence.days()) + 2.0;
        let gate = Gate::new(test.clone()).unwrap();
        let skill = Skill::of(rate).with_reps(reps).with_clean_first_reps(clean);
        let held = operating_characteristic(&gate, &skill, 10).unwrap();
        prop_assert!(held.mean_try >= 1.0 - 1e-9 && held.mean_try <= longest);
        prop_assert!((0.0..=1.0).contains(&held.one_try));
        prop_assert!(rate < 1.0 || (held.one_try - 1.0).abs() < 1e-12);
    }

    /// Kappa does not depend on who is called first, is 1 for full agreement and never above.
    #[test]
    fn kappa_is_symmetric(cells in vec(0_u32..30, 9), weights in prop_oneof![Just(bismar::gate::AgreementWeights::None), Just(bismar::gate::AgreementWeights::Quadratic)]) {
        let table: Vec<Vec<u32>> = cells.chunks(3).map(<[u32]>::to_vec).collect();
        let turned: Vec<Vec<u32>> = (0..3).map(|at| table.iter().map(|row| row[at]).collect()).collect();
        let (Ok(one), Ok(other)) = (cohen_kappa(&table, weights, 0.95), cohen_kappa(&turned, weights, 0.95)) else { return Ok(()) };
        prop_assert!((one.kappa - other.kappa).abs() < 1e-9 && (one.standard_error - other.standard_error).abs() < 1e-9);
        prop_assert!(one.kappa <= 1.0 + 1e-12);
        let diagonal = vec![vec![5, 0, 0], vec![0, 3, 0], vec![0, 0, 1]];
        prop_assert!((cohen_kappa(&diagonal, weights, 0.95).unwrap().kappa - 1.0).abs() < 1e-12);
    }
}
