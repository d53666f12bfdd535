//! From one set to the next: never above what the day granted.

use bismar::loading::{Implement, Loaded, Policy, Prepared, Stock};
use bismar::one_rm::Equation;
use bismar::prescription::{TechniqueStop, next_set_by_curve, technique_stop};
use bismar::quantity::{Mass, Reps, Rir};
use bismar::record::Policy as Rules;
use bismar::{Code, Error};
use serde::{Deserialize, Serialize};

/// The question: a set left fewer in reserve than wanted, or more.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Asked {
    implement: Implement,
    stock: Stock,
    load: Mass,
    reps: Reps,
    /// Repetitions in reserve as felt.
    felt: Rir,
    /// Repetitions in reserve as planned.
    wanted: Rir,
}

/// The answer.
#[derive(Serialize)]
pub(crate) struct Answer {
    /// The same load or a lower one; a set that was easier than wanted raises nothing.
    lower: bool,
    /// What the relation alone says, kg.
    by_relation: f64,
    percent: f64,
    #[serde(skip_serializing_if = "Option::is_none")]
    loaded: Option<Loaded>,
}

/// The load of the next set, by the reserve that was missed.
pub(crate) fn next_set(asked: Asked) -> Result<Answer, Error> {
    let Asked { load, reps, felt, wanted, .. } = asked;
    // What was lifted is the limit: within a session nothing goes up.
    let by_relation = next_set_by_curve(load, reps, felt, wanted, Equation::Epley1985, load)?;
    let target = by_relation.to_mass()?;
    let lower = target < load;
    let prepared = Prepared::new(&asked.implement, &asked.stock, load)?;
    Ok(Answer {
        lower,
        by_relation: by_relation.value(),
        percent: (by_relation.value() / load.kg() - 1.0) * 100.0,
        loaded: prepared.load(target, Policy::Below).ok(),
    })
}

/// The question: a set whose technique fell apart.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Ugly {
    implement: Implement,
    stock: Stock,
    load: Mass,
    /// Ugly sets of this lift today, this one included.
    ugly_sets: u8,
    /// It hurt.
    pain: bool,
}

/// What to do.
#[derive(Serialize)]
#[serde(rename_all = "snake_case")]
enum Then {
    AskAboutPain,
    EndTheLift,
    StepDown(Box<Loaded>),
    NothingLighter,
}

/// Work sets of a lift on one day.
const MOST_UGLY_SETS: u8 = 30;

#[derive(Serialize)]
pub(crate) struct UglyAnswer {
    then: Then,
}

/// What to do after an ugly set.
pub(crate) fn ugly_set(asked: Ugly) -> Result<UglyAnswer, Error> {
    if asked.pain {
        return Ok(UglyAnswer { then: Then::AskAboutPain });
    }
    if asked.ugly_sets > MOST_UGLY_SETS {
        return Err(Error::range(
            Code::OutOfRange,
            "ugly_sets",
            asked.ugly_sets,
            0.0,
            f64::from(MOST_UGLY_SETS),
            "",
        ));
    }
    // An ugly set counts as one that lost a critical point, whichever point it was.
    if technique_stop(&vec![true; usize::from(asked.ugly_sets)])? == TechniqueStop::EndLift {
        return Ok(UglyAnswer { then: Then::EndTheLift });
    }
    let prepared = Prepared::new(&asked.implement, &asked.stock, asked.load)?;
    // One loadable step, but no more than the largest automatic step back.
    let lowest = asked.load.scaled_down(1.0 - Rules::default().step_back_cap)?;
    let then = match prepared.step_down(asked.load) {
        Ok(loaded) if loaded.total >= lowest => Then::StepDown(Box::new(loaded)),
        _ => Then::NothingLighter,
    };
    Ok(UglyAnswer { then })
}
