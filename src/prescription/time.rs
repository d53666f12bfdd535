//! Short of time: what stays and what goes. Nothing is ever added to make up for it.

use super::draft::Draft;
use super::lift::Verdict;
use crate::reason::Reason;

/// Minutes that a work set takes with its rest, and a lift before its first work set (our choice).
const MINUTES_A_SET: u16 = 4;
const MINUTES_A_LIFT: u16 = 6;

/// Cuts sets, then lifts, from the end of the list, those to be kept last.
pub(super) fn fit(drafts: &mut [(Draft, bool)], minutes: u16) {
    let needed = |drafts: &[(Draft, bool)]| -> u16 {
        let trained = drafts.iter().filter(|(draft, _)| draft.verdict < Verdict::Rest);
        trained.map(|(draft, _)| MINUTES_A_LIFT + MINUTES_A_SET * u16::from(draft.sets)).sum()
    };
    if minutes == 0 {
        for (draft, _) in drafts.iter_mut().filter(|(draft, _)| draft.verdict < Verdict::Rest) {
            draft.at_least(Verdict::Rest, Reason::ShortOfTime);
        }
    }
    for keep in [false, true] {
        for at in (0..drafts.len()).rev() {
            while needed(drafts) > minutes
                && drafts.get(at).is_some_and(|(draft, kept)| *kept == keep && draft.sets > 1)
            {
                if let Some((draft, _)) = drafts.get_mut(at) {
                    draft.sets -= 1;
                    let sets = draft.sets;
                    draft.reasons.retain(|reason| !matches!(reason, Reason::FewerSets { .. }));
                    draft.against.retain(|reason| !matches!(reason, Reason::FewerSets { .. }));
                    draft.no_step(Reason::FewerSets { sets });
                }
            }
        }
        for at in (0..drafts.len()).rev() {
            let more = needed(drafts) > minutes;
            let several = drafts.iter().filter(|(draft, _)| draft.verdict < Verdict::Rest).count() > 1;
            if let Some((draft, _)) =
                drafts.get_mut(at).filter(|(draft, kept)| *kept == keep && draft.verdict < Verdict::Rest)
                && more
                && several
            {
                draft.reasons.retain(|reason| !matches!(reason, Reason::FewerSets { .. }));
                draft.against.retain(|reason| !matches!(reason, Reason::FewerSets { .. }));
                draft.at_least(Verdict::Rest, Reason::ShortOfTime);
            }
        }
    }
}
