//! A strict lift and the forgiving one beside it: who the partner is, and when the pair is to be looked at.

use super::state::State;
use super::status::Status;
use crate::quantity::{Day, Name};
use crate::record::{Pair, Parameters};

impl State {
    /// The other lift of the pair, strict or forgiving.
    pub(crate) fn partner(&self, at: usize) -> Option<usize> {
        let parameters = self.parameters.as_ref()?;
        let name = &parameters.tracks.get(at)?.name;
        let pair = pair_of(parameters, name)?;
        parameters.track_at(if pair.strict == *name { &pair.forgiving } else { &pair.strict })
    }

    /// Notes since when the gate of each strict lift has been closed at its place, and what its forgiving lift had
    /// shown by then.
    pub(crate) fn note_pairs(&mut self, on: Day) {
        let Some(parameters) = self.parameters.clone() else { return };
        for pair in &parameters.pairs {
            let places = (parameters.track_at(&pair.strict), parameters.track_at(&pair.forgiving));
            let (Some(strict), Some(forgiving)) = places else { continue };
            let proven = self.tracks.get(forgiving).and_then(|track| track.proven);
            let Some(track) = self.tracks.get_mut(strict) else { continue };
            if !track.status.is_trained() || track.status == Status::ReadyToAdvance {
                track.closed_since = None;
            } else if track.closed_since.is_none() {
                track.closed_since = proven.map(|(_, load)| (on, load));
            }
        }
    }

    /// Whether the forgiving lift of this lift's pair has run far ahead while the strict one's gate stayed closed.
    pub(crate) fn pair_review(&self, at: usize, on: Day) -> bool {
        let review = || {
            let parameters = self.parameters.as_ref()?;
            let pair = pair_of(parameters, &parameters.tracks.get(at)?.name)?;
            let (since, load) = self.tracks.get(parameters.track_at(&pair.strict)?)?.closed_since?;
            let forgiving = parameters.track_at(&pair.forgiving)?;
            let (_, proven) = self.tracks.get(forgiving)?.proven?;
            let policy = &parameters.policy;
            let long = on.since(since) > i32::from(policy.pair_review_days);
            Some(long && proven > self.loadable(forgiving).grown(load, policy.pair_review_growth))
        };
        review().unwrap_or(false)
    }
}

fn pair_of<'a>(parameters: &'a Parameters, name: &Name) -> Option<&'a Pair> {
    parameters.pairs.iter().find(|pair| pair.strict == *name || pair.forgiving == *name)
}
