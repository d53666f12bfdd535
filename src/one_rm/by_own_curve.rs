//! The maximum by the lifter's own curve, as [`estimate`](super::estimate()) has it by published equations.

use super::evidence::SetEvidence;
use super::from_sets::{combined, sort};
use super::options::EstimateOptions;
use super::own_curve_fit::OwnCurve;
use super::own_curve_form::{FIRST_REPETITION_SPREAD, FIRST_REPETITION_STEP};
use super::set_row::rows;
use crate::error::{Code, Error};
use crate::numeric;
use crate::quantity::{Interval, Kilograms};

/// The maximum and its interval, where the lifter's own slope and how sure it is stand in place of the equations and of the
/// spread between people.
pub(crate) fn estimate_by_own_curve(
    evidence: &[SetEvidence],
    curve: &OwnCurve,
    options: &EstimateOptions,
) -> Result<(Kilograms, Interval), Error> {
    let (_, sets) = sort(evidence, options)?;
    if sets.is_empty() {
        return Err(Error::plain(Code::NoUsableSet, "evidence"));
    }
    let (mut rows, days) = rows(&sets, options)?;
    let reach = numeric::normal::normal_reach(curve.slope_interval.level());
    let slope_deviation = curve.slope_interval.width() / (2.0 * reach);
    for (row, set) in rows.iter_mut().zip(&sets).filter(|(_, set)| !set.is_maximum) {
        row.ln_maximum =
            numeric::ln(set.load) + curve.form.drop(set.to_failure, curve.slope) + FIRST_REPETITION_STEP;
        row.slope = curve.form.pull(set.to_failure, curve.slope) * slope_deviation;
        row.between = FIRST_REPETITION_SPREAD;
    }
    let found = combined(&rows, days, options.day_to_day_cv)?;
    let half = numeric::normal::normal_reach(options.level) * found.deviation;
    // What is left without saying so lies above, as with published equations.
    let unsaid = rows.iter().zip(&found.weights).map(|(row, weight)| weight * row.unsaid).sum::<f64>();
    let high = numeric::exp(found.mean + half + numeric::larger(unsaid, 0.0));
    let interval = Interval::new(numeric::exp(found.mean - half), high, options.level)?;
    Ok((Kilograms::new(numeric::exp(found.mean))?, interval))
}
