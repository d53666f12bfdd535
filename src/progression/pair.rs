//! A strict lift and the forgiving one beside it: rest between them, and when the pair is to be looked at.

use super::state::State;
use super::view::View;
use crate::quantity::Day;
use crate::reason::Reason;

/// Too few full rest days since the other lift of the pair; from an age on one more. A lift that is to be trained with
/// its partner on one day has none at all.
pub(crate) fn rest_missing(view: &View<'_>) -> Option<Reason> {
    let other = view.partner?.lift.now.last_session?;
    let policy = view.policy();
    let older = view.shared.is_older(policy.older_from_years, view.on);
    let needed = u16::from(policy.pair_rest_days) + u16::from(older);
    let days = u16::try_from((view.on.since(other) - 1).max(0)).ok()?;
    (days < needed).then_some(Reason::PairRest { days, needed })
}

/// Why a forgiving lift holds and starts one step down, where its strict lift hurt: with the last pain that was said of a
/// region of that lift, where its last report still says some.
pub(crate) fn strict_hurt(view: &View<'_>) -> Option<Reason> {
    if !view.lift.now.partner_pain {
        return None;
    }
    let strict = view.partner.map(|partner| partner.lift);
    let concerned =
        view.shared.regions.iter().filter(|region| strict.is_some_and(|lift| lift.has_region(&region.id)));
    let said =
        concerned.filter_map(|region| Some((region, region.last.filter(|(_, score)| score.score() > 0)?)));
    let last = said.max_by_key(|(_, last)| *last);
    Some(Reason::PairPain {
        region: last.map(|(region, _)| region.id.clone()),
        score: last.map(|(_, (_, score))| score.score()),
        on: last.map(|(_, (on, _))| on),
    })
}

/// Whether the forgiving lift of this lift's pair has run far ahead while the strict one's gate stayed closed.
pub(crate) fn review_due(view: &View<'_>) -> bool {
    let review = || {
        let partner = view.partner?;
        let (strict, forgiving) =
            if view.is_strict() { (view.lift, partner.lift) } else { (partner.lift, view.lift) };
        let (since, load) = strict.now.closed_since?;
        let (_, proven) = forgiving.now.proven?;
        let policy = view.policy();
        let long = view.on.since(since) > i32::from(policy.pair_review_days);
        let loads = forgiving.loadable.at(forgiving.now.grant.place);
        Some(long && proven > loads.grown(load, policy.pair_review_growth))
    };
    review().unwrap_or(false)
}

impl State {
    /// Notes since when the gate of each strict lift has been closed at its place, and what its forgiving lift had
    /// shown by then.
    pub(crate) fn note_pairs(&mut self, on: Day) {
        let Some(in_force) = self.in_force.clone() else { return };
        for pair in &in_force.parameters.pairs {
            let proven =
                self.lifts.iter().find(|lift| lift.set.id == pair.forgiving).and_then(|lift| lift.now.proven);
            for lift in self.lifts.iter_mut().filter(|lift| lift.set.id == pair.strict) {
                let now = &mut lift.now;
                if !now.status.is_trained() || now.status.is_ready() {
                    now.closed_since = None;
                } else if now.closed_since.is_none() {
                    now.closed_since = proven.map(|(_, load)| (on, load));
                }
            }
        }
    }
}
