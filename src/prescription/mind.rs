//! What to mind beside a lift because of what its reasons say.

use alloc::vec::Vec;

use super::draft::Draft;
use super::lift::Verdict;
use crate::caution::Caution;
use crate::progression::View;
use crate::reason::Reason;

/// Part of the working load above which the coach's word for more gets a caution (our choice: more than three of the largest
/// steps that a lower-body lift takes by itself).
const LARGE_OVERRIDE: f64 = 0.20;

/// Cautions for safety pins that stand elsewhere, and for far more than the working load.
pub(super) fn of_reasons(view: &View<'_>, draft: &Draft) -> Vec<Caution> {
    let mut cautions = Vec::new();
    if draft.verdict >= Verdict::Rest {
        return cautions;
    }
    if draft.reasons.iter().any(|reason| matches!(reason, Reason::PinsMoved { .. })) {
        cautions.push(Caution::PinsMoved);
    }
    let loads = view.lift.loadable.at(view.place());
    if draft.load > loads.grown(view.lift.now.grant.load(), LARGE_OVERRIDE) {
        cautions.push(Caution::LargeOverride);
    }
    cautions
}
