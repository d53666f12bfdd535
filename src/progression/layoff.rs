//! Coming back after a break: the layoff table.

use super::loadable::Loadable;
use super::state::{State, TrackState};
use super::status::Status;
use crate::quantity::Day;
use crate::record::{LayoffRow, Parameters, Policy, Role, Tuple};

/// Rows further down after an illness in bed, a hospital stay or an operation (our choice).
const ROWS_AFTER_ILLNESS: usize = 2;
/// First sessions after a break with half the sets (our choice).
const HALF_SESSIONS: u8 = 2;

impl State {
    /// Age in whole years on that day.
    pub(crate) fn age(&self, on: Day) -> Option<i32> {
        self.born.map(|born| {
            let ((year, month, day), (then, born_month, born_day)) = (on.calendar(), born.calendar());
            year - then - i32::from((month, day) < (born_month, born_day))
        })
    }

    /// Days since any region of the lift was loaded; none before its first session.
    pub(crate) fn gap(&self, at: usize, on: Day) -> Option<i32> {
        let regions = &self.parameters.as_ref()?.tracks.get(at)?.regions;
        let own = self.tracks.get(at).and_then(|track| track.last_session);
        let loaded = self
            .regions
            .iter()
            .filter(|region| regions.contains(&region.name))
            .filter_map(|region| region.loaded);
        // The region that has waited longest counts; a lift that has never been trained has nothing to come back to.
        let last = loaded.min().or(own)?;
        own.map(|_| on.since(last))
    }

    /// Row of the layoff table for that gap, 1 being the shortest; 0 for none.
    fn layoff_row(&self, policy: &Policy, gap: i32, ill: bool, on: Day) -> usize {
        let row = policy.layoff.iter().filter(|row| gap >= i32::from(row.from_days)).count();
        // An illness makes a break of any gap, so that age counts on top of it too.
        let older =
            (row > 0 || ill) && self.age(on).is_some_and(|age| age >= i32::from(policy.older_from_years));
        let further = if ill { ROWS_AFTER_ILLNESS } else { 0 } + usize::from(older);
        (row + further).min(policy.layoff.len())
    }

    /// The lift as it comes back on that day, where the gap asks for it.
    pub(crate) fn returned(&self, at: usize, on: Day, loadable: &Loadable) -> Option<TrackState> {
        let parameters = self.parameters.as_deref()?;
        let track = self.tracks.get(at)?;
        let row = self.layoff_row(&parameters.policy, self.gap(at, on)?, track.ill, on);
        if row == 0 || !track.status.is_trained() {
            return None;
        }
        Some(come_back(track, at, row, on, parameters, loadable))
    }
}

/// What is left after that row: the least of its own rule and of all rows above it.
fn come_back(
    before: &TrackState,
    at: usize,
    row: usize,
    on: Day,
    parameters: &Parameters,
    loadable: &Loadable,
) -> TrackState {
    let rows: &[LayoffRow] = parameters.policy.layoff.get(..row).unwrap_or_default();
    let left = rows.iter().fold(1.0, |left, row| crate::numeric::smaller(left, row.load_left));
    let load = before.tuple.load;
    let one_back = super::moves::one_step_back(before.tuple, at, parameters, loadable).load;
    let mut returned = loadable.share(load, left).min(one_back);
    if rows.iter().any(|row| row.restart) {
        returned = loadable.lightest().unwrap_or(returned).min(returned);
    }
    let mut tuple = Tuple { load: loadable.rounded_down(returned).min(load), ..before.tuple };
    if rows.iter().any(|row| row.easier_rung) && is_strict(at, parameters) {
        tuple.rung = easier_rung(tuple.rung, at, parameters);
    }
    let mut track = before.clone();
    track.stand_at(tuple, on);
    track.enter(Status::Returning, on);
    track.return_cap = Some(before.return_cap.map_or(load, |cap| cap.max(load)));
    // On its way back already, resting on it, or stepping back: the longer break counts, and one pass does not give
    // back what was lost before this break. Nought where no return is under way.
    track.return_row = before.return_row.max(row as u8);
    if before.return_cap.is_some() || before.status == Status::SteppingBack {
        track.forgo_restoring();
    }
    track.half_sessions = HALF_SESSIONS;
    track.keep_easing_only();
    track
}

fn is_strict(at: usize, parameters: &Parameters) -> bool {
    parameters
        .tracks
        .get(at)
        .is_some_and(|track| parameters.pairs.iter().any(|pair| pair.strict == track.name))
}

/// The rung below, or the same where there is none.
pub(crate) fn easier_rung(rung: u8, at: usize, parameters: &Parameters) -> u8 {
    parameters.tracks.get(at).and_then(|track| track.easier_rungs(rung).next()).unwrap_or(rung)
}

impl TrackState {
    /// Ends a return whose sessions have passed: after the shortest break back to the load before it, after a
    /// longer one onward from where the lift stands.
    pub(crate) fn finish_return(&mut self, at: usize, on: Day, parameters: &Parameters, may_restore: bool) {
        let policy = &parameters.policy;
        let mut rows = policy.layoff.iter().take(usize::from(self.return_row));
        let short = self.return_row == 1;
        let needed = if short { 1 } else { policy.return_passes.max(policy.step_back_passes) };
        if self.passes < needed || (short && !may_restore) {
            return;
        }
        if let (true, Some(cap)) = (short, self.return_cap) {
            let tuple = Tuple { load: cap, ..self.tuple };
            self.stand_at(tuple, on);
        }
        self.return_cap = None;
        self.return_row = 0;
        if rows.any(|row| row.relearn) {
            let needed = parameters.tracks.get(at).map_or(0, |set| set.relearning(policy));
            self.learned = (0, needed.max(self.learned.1.saturating_sub(self.learned.0)));
        }
        self.lead_on(on);
        if self.role == Role::Rest {
            self.role = Role::Train;
        }
    }
}
