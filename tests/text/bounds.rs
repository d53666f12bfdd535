//! No bound is printed past what it is: what may be loaded at the most rounded down, what is to be kept at the least up.

use bismar::caution::Caution;
use bismar::prescription::{Change, Verdict};
use bismar::quantity::{Mass, Unit};
use bismar::reason::Reason;
use bismar::record::{ClearanceLimits, Place};
use bismar::text::Words;
use proptest::prelude::*;
use serde::{Serialize, de::DeserializeOwned};
use serde_json::Value;

use crate::findings::findings;
use crate::gym::{discs, kg, lb, mm, name, parameters, today};
use crate::reasons::reasons;

const UNITS: [Unit; 2] = [Unit::Kg, Unit::Lb];

/// The last mass in a sentence, read back.
fn read(said: &str) -> Mass {
    let words: Vec<&str> = said.split_whitespace().collect();
    let tidy = |word: &str| word.trim_end_matches([',', ';', ':', '.']).to_string();
    let at = (1..words.len()).rev().find(|at| ["kg", "lb"].contains(&tidy(words[*at]).as_str())).unwrap();
    let load: Mass = format!("{} {}", words[at - 1], tidy(words[at])).parse().unwrap();
    let help = words
        .get(at + 1)
        .zip(words.get(at + 2))
        .is_some_and(|(of, help)| *of == "of" && tidy(help) == "help");
    if help { Mass::ZERO.minus(load).unwrap() } else { load }
}

/// Everything that says how much there may be at the most.
fn upper(words: &Words<'_>, cap: Mass) -> Vec<String> {
    let mut lift = today("sq", Verdict::Train);
    lift.would_change = vec![Change::SmallerDiscs { up_to: cap }, Change::MoreToLoad { up_to: cap }];
    let reasons = [
        Reason::NoLoadableStep { cap, next: None },
        Reason::Ceiling { load: cap },
        Reason::ClearanceLimit { load: cap },
        Reason::WindowCap { load: cap, days_left: Some(3) },
        Reason::WindowCap { load: cap, days_left: None },
        Reason::PairCap { load: cap },
        Reason::Returning { at_most: cap },
    ];
    let mut said: Vec<String> = reasons.iter().map(|reason| words.reason(reason)).collect();
    // Beside a lift that stands as high, the way back names no load.
    said.extend(reasons[..6].iter().map(|reason| words.reason_for(&lift, reason)));
    said.extend(words.changes(&lift));
    said.extend(lift.would_change.iter().map(|change| words.change(change)));
    said.push(words.limit(&ClearanceLimits::default().with_load(cap)));
    said.push(words.at_most(cap));
    said
}

/// Everything that says how much there has to be at the least.
fn lower(words: &Words<'_>, least: Mass) -> Vec<String> {
    let lift = today("sq", Verdict::Train);
    let reasons =
        [Reason::MaintainingBand { not_below: least }, Reason::BelowBand { load: kg(1.0), not_below: least }];
    let said = reasons.iter().map(|reason| words.reason(reason));
    said.chain(reasons.iter().map(|reason| words.reason_for(&lift, reason))).collect()
}

#[test]
fn a_cap_is_never_printed_above_what_it_is() {
    let pounds = Words::plain().in_unit(Unit::Lb).finely();
    let kilograms = Words::plain().in_unit(Unit::Kg).finely();
    // As exactly as it was written, where that is a thousandth.
    assert_eq!(pounds.at_most(lb(15.75)), "15.75 lb");
    assert_eq!(kilograms.at_most(kg(44.536)), "44.536 kg");
    assert_eq!(pounds.at_most(lb(45.0)), "45 lb");
    // 7.03 kg are 15.498 lb, and 30.3 lb are 13.7438 kg.
    assert_eq!((pounds.mass(kg(7.03)), pounds.at_most(kg(7.03))), ("15.5 lb".into(), "15.4 lb".into()));
    assert_eq!(kilograms.at_most(lb(30.3)), "13.74 kg");
    assert_eq!(
        (kilograms.mass(lb(31.3)), kilograms.at_most(lb(31.3))),
        ("14.2 kg".into(), "14.19 kg".into())
    );
    // Less help is more load.
    assert_eq!(pounds.at_most(kg(-7.03)), "15.5 lb of help");
    let said = pounds.reason(&Reason::NoLoadableStep { cap: lb(15.75), next: Some(lb(20.0)) });
    assert!(said.contains("up to 15.75 lb is allowed"), "{said}");
    // A load on the bar keeps its way.
    assert_eq!((pounds.mass(lb(15.75)), kilograms.mass(kg(44.536))), ("15.8 lb".into(), "44.54 kg".into()));
}

#[test]
fn what_is_to_be_kept_is_never_printed_below_what_it_is() {
    let pounds = Words::plain().in_unit(Unit::Lb).finely();
    let said = |words: &Words<'_>, least| words.reason(&Reason::MaintainingBand { not_below: least });
    // 15.432 lb, and 52.3 kg in quarters.
    assert!(said(&pounds, kg(7.0)).contains("down to 15.5 lb"), "{}", said(&pounds, kg(7.0)));
    assert!(said(&pounds, lb(15.72)).contains("down to 15.72 lb"), "{}", said(&pounds, lb(15.72)));
    let coarse = Words::plain();
    assert!(said(&coarse, kg(52.3)).contains("down to 52.5 kg"), "{}", said(&coarse, kg(52.3)));
}

/// Deeper may be longer or shorter, so that a limit of range is rounded nowhere; neither is a range that is printed beside it.
#[test]
fn how_far_one_may_go_is_printed_as_it_was_told() {
    let words = Words::plain();
    for (told, printed) in
        [(400.6, "400.6 mm"), (400.65, "400.65 mm"), (400.649, "400.649 mm"), (400.0, "400 mm")]
    {
        let limit = words.limit(&ClearanceLimits::default().with_range(mm(told)));
        assert!(limit.contains(&format!("no deeper than {printed}")), "{limit}");
        let mut all = parameters();
        all.lifts[0].ranges = vec![mm(450.0), mm(told)];
        all.lifts[1].ranges = vec![mm(450.0), mm(told)];
        let words = Words::of(&all);
        let place = |lift| words.place(&name(lift), Place::default().with_range(1));
        assert!(place("sq").contains(&format!("range {printed}")), "{}", place("sq"));
        assert!(place("dl").contains(&format!("bar at {printed}")), "{}", place("dl"));
    }
}

/// The limit of the day's answer is a load on the bar, and is printed as that is printed beside it.
#[test]
fn the_load_of_today_is_printed_in_one_way() {
    use bismar::answers::SetReason;
    for unit in UNITS {
        for words in [Words::plain().in_unit(unit), Words::plain().in_unit(unit).finely()] {
            let load = lb(138.3);
            let said = words.set_reason(&SetReason::Limited { to: load });
            assert_eq!(said, format!("Nothing goes above today's load, {}.", words.mass(load)));
        }
    }
}

/// What a load of a sentence is.
#[derive(Clone, Copy, PartialEq)]
enum Said {
    /// Not to be passed.
    AtMost,
    /// To be kept.
    AtLeast,
    /// Lifted, or to be: the nearest.
    Lifted,
}

/// Of every load that a reason or a finding names, whether it is a bound; a new one has to be put here.
fn of_field(code: &str, field: &str) -> Said {
    match (code, field) {
        ("returning", "at_most")
        | ("window_cap" | "pair_cap" | "ceiling" | "clearance_limit", "load")
        | (
            "no_loadable_step" | "stuck_at_start" | "stuck_later" | "step_above_cap" | "pair_start_above_cap",
            "cap",
        )
        | ("override_in_force" | "override_suspended" | "override_ended", "load")
        | ("rounded_down", "from")
        | ("ceiling_below_start", "ceiling")
        | ("window_below_step", "window")
        | ("clearance_below_start", "limit") => Said::AtMost,
        ("maintaining_band" | "below_band", "not_below") => Said::AtLeast,
        ("below_band" | "layoff" | "held_lower" | "other_implement", "load")
        | ("stepped_back", "from")
        | ("no_loadable_step" | "stuck_at_start" | "stuck_later", "next")
        | ("rounded_down" | "window_below_step", "to")
        | ("nothing_loadable", "lightest")
        | ("start_not_loadable", "load" | "below" | "above")
        | ("stuck_at_start" | "stuck_later", "load" | "discs")
        | ("window_below_step", "load")
        | ("step_above_cap", "wanted")
        | (
            "ceiling_below_start"
            | "pair_start_above_cap"
            | "clearance_below_start"
            | "reference_not_lighter",
            "start",
        )
        | ("reference_not_lighter", "reference") => Said::Lifted,
        _ => panic!("{code}: is {field} a bound, or a load that is lifted?"),
    }
}

fn is_mass(value: &Value) -> bool {
    value.as_object().is_some_and(|all| all.len() == 1 && all.contains_key("kg"))
}

/// Each bound of something that is written as an object by its code: the same with `mass` there and `other` in place of every
/// other load.
fn with_each_bound<T: Serialize + DeserializeOwned>(of: &T, mass: Mass, other: Mass) -> Vec<(Said, T)> {
    let written = serde_json::to_value(of).unwrap();
    let Some((code, fields)) = written.as_object().and_then(|all| all.iter().next()) else {
        return Vec::new();
    };
    let fields = fields.as_object().unwrap();
    let loads: Vec<&String> =
        fields.iter().filter(|(_, value)| is_mass(value)).map(|(field, _)| field).collect();
    let bounds =
        loads.iter().map(|field| (*field, of_field(code, field))).filter(|(_, said)| *said != Said::Lifted);
    let changed = |bound: &String| {
        let mut all = fields.clone();
        for field in &loads {
            all[field.as_str()] = serde_json::to_value(if *field == bound { mass } else { other }).unwrap();
        }
        serde_json::from_value(serde_json::json!({ code: all })).unwrap()
    };
    bounds.map(|(field, said)| (said, changed(field))).collect()
}

/// The loads of a sentence that stand for this one, the others being far away.
fn near(said: &str, mass: Mass) -> Vec<Mass> {
    let words: Vec<&str> = said.split_whitespace().collect();
    let tidy = |word: &str| word.trim_end_matches([',', ';', ':', '.']).to_string();
    let unit = |at: &usize| ["kg", "lb"].contains(&tidy(words[*at]).as_str());
    let all = (1..words.len())
        .filter(unit)
        .filter_map(|at| format!("{} {}", words[at - 1], tidy(words[at])).parse::<Mass>().ok());
    all.filter(|one| (one.kg() - mass.kg()).abs() < 1.0).collect()
}

/// Every reason and every finding, in a pound gym and in one of kilograms: no bound stands past what it is. Cautions name no load.
#[test]
fn no_reason_and_no_finding_prints_a_bound_past_itself() {
    assert!(Caution::ALL.iter().all(|caution| !caution.meaning().contains(['{', '}'])));
    let all = parameters();
    let mut lift = today("sq", Verdict::Train);
    let mut seen = std::collections::BTreeSet::new();
    // 30.3 kg are 66.8 lb and 66.8 lb are 30.3 kg, each with something behind it; and what is whole in a unit.
    for mass in
        [kg(30.3), kg(31.49), kg(45.0), kg(7.03), lb(66.8), lb(132.3), lb(155.0), lb(31.3), kg(44.53592)]
    {
        let other = kg(mass.kg() + 150.0);
        lift.granted.work.load = other;
        for unit in UNITS {
            let gym = Words::of(&all).in_unit(unit);
            for words in
                [gym, gym.finely(), Words::plain().in_unit(unit), Words::plain().in_unit(unit).finely()]
            {
                let reasons =
                    reasons().into_iter().flat_map(|(reason, _)| with_each_bound(&reason, mass, other));
                let said_reasons = reasons.flat_map(|(said, reason)| {
                    let both = [words.reason(&reason), words.reason_for(&lift, &reason)];
                    both.map(|text| (said, reason.code(), text))
                });
                let findings =
                    findings().into_iter().flat_map(|(found, _)| with_each_bound(&found, mass, other));
                let said_findings = findings.map(|(said, found)| (said, found.code(), words.found(&found)));
                for (said, code, text) in said_reasons.chain(said_findings) {
                    let printed = near(&text, mass);
                    // Beside a lift that stands as high, the way back names no load.
                    assert!(!printed.is_empty() || code == "returning", "{code}: no {mass} in {text}");
                    for one in printed {
                        let past = if said == Said::AtMost { one > mass } else { one < mass };
                        assert!(!past, "{code}: {text} for {mass}, which is {}", mass.lb());
                    }
                    seen.insert(code);
                }
            }
        }
    }
    assert_eq!(seen.len(), 19, "{seen:?}");
}

proptest! {
    /// Any mass and a load below it, in either unit, finely and in the steps of a gym.
    #[test]
    fn no_bound_is_printed_past_itself(
        mass in -200_000_000_000_000_i64..=500_000_000_000_000,
        pounds in any::<bool>(),
        quarters in prop::collection::vec(1_u16..=200, 1..=4),
    ) {
        let face = |quarter: &u16| {
            let number = f64::from(*quarter) / 4.0;
            if pounds { lb(number) } else { kg(number) }
        };
        let all = parameters().with_stock(discs(&quarters.iter().map(face).collect::<Vec<_>>()));
        let mass = Mass::from_nanograms(mass).unwrap();
        for unit in UNITS {
            let gym = Words::of(&all).in_unit(unit);
            for words in [gym, gym.finely(), Words::plain().in_unit(unit)] {
                for said in upper(&words, mass) {
                    prop_assert!(read(&said) <= mass, "{said} for {mass}");
                }
                for said in lower(&words, mass) {
                    prop_assert!(read(&said) >= mass, "{said} for {mass}");
                }
            }
        }
    }

    /// What is written to the thousandth is printed as it was written, and any other cap within one fine step of it.
    #[test]
    fn a_cap_is_printed_as_written_where_that_can_be(thousandths in 1_i64..=400_000, more in 1_i64..=9) {
        for unit in UNITS {
            let words = Words::plain().in_unit(unit).finely();
            let whole = Mass::from_unit(1.0, unit).unwrap().nanograms() / 1_000;
            let written = Mass::from_nanograms(thousandths * whole).unwrap();
            let uneven = Mass::from_nanograms(thousandths * whole + more).unwrap();
            let step = if unit == Unit::Lb { lb(0.1) } else { kg(0.01) };
            prop_assert_eq!(read(&words.at_most(written)), written);
            prop_assert_eq!(read(&words.at_most(uneven)).nanograms() / whole, {
                let step = step.nanograms() / whole;
                thousandths / step * step
            });
        }
    }

    /// What may be loaded is more than what is loaded by more than half of a step, and is printed as more.
    #[test]
    fn a_cap_above_what_is_loaded_is_printed_above_it(over in 0_i64..=4_000, more in 126_i64..=5_000) {
        let gram = 1_000_000_000;
        let mut lift = today("sq", Verdict::Train);
        lift.granted.work.load = Mass::from_nanograms((60_000 + over) * gram).unwrap();
        let loaded = lift.granted.load();
        let cap = Mass::from_nanograms(loaded.nanograms() + more * gram).unwrap();
        for unit in UNITS {
            for words in [Words::plain().in_unit(unit), Words::plain().in_unit(unit).finely()] {
                let said = words.reason_for(&lift, &Reason::PairCap { load: cap });
                prop_assert!(read(&said) > read(&words.mass(loaded)), "{said}");
            }
        }
    }
}
