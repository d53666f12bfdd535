//! What the sessions of a lift have shown, counted apart from the progression.

use std::vec::Vec;

use super::super::sitting::SITTINGS;
use super::notes::{LiftNotes, SessionNote, Verdict};

/// More fails in a row than any step back of this world asks for.
const FEW: u8 = 2;

impl LiftNotes {
    /// What was shown no longer compares with what is to come; fails go on counting.
    pub(super) fn begin_anew(&mut self) {
        self.earlier = self.fails_so_far();
        self.sessions.clear();
        self.waits = None;
    }

    /// Another grant, or one from which it comes back: nothing that was shown speaks of it.
    pub(super) fn forget(&mut self) {
        self.begin_anew();
        self.earlier = (0, false);
    }

    /// Keeps a session, and of earlier ones what a run or the last three may still need.
    pub(super) fn keep(&mut self, session: SessionNote) {
        self.sessions.push(session);
        self.waits = None;
        let (earlier, mut at) = (self.sessions.len().saturating_sub(3), 0);
        self.sessions.retain(|each| {
            at += 1;
            at > earlier || each.verdict != Verdict::Nothing
        });
        if self.sessions.len() > SITTINGS {
            self.sessions.remove(0);
        }
    }

    /// The passes in a row, the oldest first. A fail of a day below the usual changes nothing, once in a row; a critical
    /// fail always counts.
    pub(super) fn run(&self) -> Vec<SessionNote> {
        let mut run = Vec::new();
        let mut excused = false;
        for session in &self.sessions {
            match session.verdict {
                Verdict::Pass => {
                    excused = false;
                    run.push(*session);
                }
                Verdict::Fail if session.below_usual && !excused => excused = true,
                Verdict::Fail | Verdict::Critical | Verdict::TakenBack => {
                    excused = false;
                    run.clear();
                }
                Verdict::Nothing | Verdict::Unheard => {}
            }
        }
        run
    }

    /// How many of the passes in a row a good morning confirmed.
    pub(super) fn confirmed(&self) -> usize {
        self.run().iter().filter(|session| session.answered).count()
    }

    /// Fails in a row up to now.
    pub(super) fn fails(&self) -> u8 {
        self.fails_so_far().0
    }

    fn fails_so_far(&self) -> (u8, bool) {
        let (mut fails, mut excused) = self.earlier;
        for session in &self.sessions {
            match session.verdict {
                Verdict::Pass => (fails, excused) = (0, false),
                Verdict::Fail if session.below_usual && !excused => excused = true,
                Verdict::Fail | Verdict::Critical | Verdict::TakenBack => {
                    (fails, excused) = (fails + 1, false)
                }
                Verdict::Nothing | Verdict::Unheard => {}
            }
        }
        (fails.min(FEW), excused)
    }

    /// Of the last three sessions, those with too little in reserve.
    pub(super) fn hard(&self) -> usize {
        self.sessions.iter().rev().take(3).filter(|session| session.hard).count()
    }
}
