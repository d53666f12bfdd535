//! What one usable set contributes to an estimate: the logarithm of its maximum, and how far each unknown moves it.

use alloc::vec::Vec;

use super::equation::Equation;
use super::evidence::UsableSet;
use super::options::{EstimateOptions, MITTER_2022_REPETITION_SEM, TYPICAL_SLOPE};
use super::reserve_error::reserve_error;
use crate::error::Error;
use crate::numeric;
use crate::quantity::Day;

/// A single that is taken as the maximum could have been heavier by about one small step (our choice).
const SINGLE_STEP: f64 = 0.01;

/// What one usable set contributes: logarithm of its maximum, and how shared unknowns move it.
pub(super) struct Row {
    pub(super) ln_maximum: f64,
    pub(super) slope: f64,
    pub(super) between: f64,
    pub(super) habit: f64,
    /// Repetitions left without saying so, on average, as a change of the logarithm.
    pub(super) unsaid: f64,
    pub(super) misjudged: f64,
    pub(super) scatter: f64,
    pub(super) day: usize,
}

impl Row {
    pub(super) fn own_deviation(&self) -> f64 {
        numeric::sqrt(self.misjudged * self.misjudged + self.scatter * self.scatter)
    }

    pub(super) fn coefficients(&self, days: usize, day_cv: f64) -> Vec<f64> {
        let mut all = alloc::vec![1.0, self.slope, self.between, self.habit];
        all.extend((0..days).map(|day| if day == self.day { day_cv } else { 0.0 }));
        all
    }

    pub(super) fn whole_deviation(&self, day_cv: f64) -> f64 {
        let own = self.own_deviation();
        let parts = [self.slope, self.between, self.habit, day_cv, own];
        numeric::sqrt(parts.iter().map(|part| part * part).sum())
    }
}

/// Change of the logarithm of the maximum with one repetition, for a typical lifter.
fn gain(to_failure: f64) -> f64 {
    TYPICAL_SLOPE / (1.0 + TYPICAL_SLOPE * (to_failure - 1.0))
}

/// Mean and standard deviation of the logarithms that the equations give.
fn logarithms(set: &UsableSet) -> Result<(f64, f64), Error> {
    if set.is_maximum {
        return Ok((numeric::ln(set.load), 0.0));
    }
    let logarithm = |equation: &Equation| equation.one_rm_at(set.load, set.to_failure).map(numeric::ln);
    let all = set.equations.iter().map(logarithm).collect::<Result<Vec<f64>, Error>>()?;
    let count = all.len() as f64;
    let mean = all.iter().sum::<f64>() / count;
    let squares: f64 = all.iter().map(|one| (one - mean) * (one - mean)).sum();
    Ok((mean, if all.len() < 2 { 0.0 } else { numeric::sqrt(squares / (count - 1.0)) }))
}

/// How far a call may be off, in repetitions; nothing where the set failed.
struct Call {
    habit: f64,
    unsaid: f64,
    misjudged: f64,
}

impl Call {
    fn of(set: &UsableSet, options: &EstimateOptions) -> Call {
        let reserve = &set.reserve;
        if reserve.failed {
            return Call { habit: 0.0, unsaid: 0.0, misjudged: 0.0 };
        }
        let error = reserve_error(set.done, reserve.rir, options.new_to_lift);
        let (called, half) = (error.standard_deviation, reserve.half_band);
        Call {
            habit: options.habit_spread,
            unsaid: numeric::larger(error.mean - options.bias.added(set.done, reserve.rir), 0.0),
            // A band is even over its width: variance one third of the half width squared.
            misjudged: numeric::sqrt(called * called + half * half / 3.0),
        }
    }
}

fn row(set: &UsableSet, day: usize, options: &EstimateOptions) -> Result<Row, Error> {
    let (ln_maximum, between) = logarithms(set)?;
    let gain = gain(set.to_failure);
    let call = Call::of(set, options);
    let scatter = if set.is_maximum { SINGLE_STEP } else { MITTER_2022_REPETITION_SEM * gain };
    Ok(Row {
        ln_maximum,
        slope: options.slope_cv() * (set.to_failure - 1.0) * gain,
        between,
        habit: call.habit * gain,
        unsaid: call.unsaid * gain,
        misjudged: call.misjudged * gain,
        scatter,
        day,
    })
}

pub(super) fn rows(sets: &[UsableSet], options: &EstimateOptions) -> Result<(Vec<Row>, usize), Error> {
    let mut days: Vec<Option<Day>> = sets.iter().map(|set| set.day).collect();
    crate::numeric::sort::sort(&mut days);
    days.dedup();
    let day_of = |set: &UsableSet| days.iter().position(|day| *day == set.day).unwrap_or(0);
    let rows = sets.iter().map(|set| row(set, day_of(set), options)).collect::<Result<Vec<Row>, Error>>()?;
    Ok((rows, days.len()))
}
