//! One course through the phases of a scenario, piece by piece.

use alloc::vec::Vec;

use super::carried::in_order;
use super::outlook::Course;
use super::what_if::{MAINTENANCE_WEEKS, MOST_PHASES, Phase, PhaseCourse, Spread};
use super::{Age, Band};
use crate::error::{Code, Error};
use crate::numeric;

/// Mean number of weeks in a year of the calendar.
const WEEKS_IN_A_YEAR: f64 = 365.2425 / 7.0;

/// What one piece does to the logarithm of strength.
#[derive(Clone, Copy)]
pub(super) enum Effect {
    /// Nothing.
    Kept,
    /// The outlook's change, slowest, middle and fastest.
    Aged(Band),
    /// Years of gain.
    Gained(Spread, f64),
    /// A share of a total loss; the first piece of a lapse remembers the strength before it.
    Lost { loss: Spread, share: f64, first: bool },
    /// Years of gain up to the strength before the last lapse.
    Regained(Spread, f64),
}

/// A piece of a phase, short enough to end at a reported age or where the phase changes.
pub(super) struct Segment {
    pub(super) to: Age,
    pub(super) effect: Effect,
    /// Whether the age at its end belongs to the answer.
    pub(super) reported: bool,
}

/// One course: its places in the spreads, and how far it has come.
pub(super) struct Drawn {
    decline: f64,
    gain: f64,
    loss: f64,
    log: f64,
    before_lapse: f64,
}

impl Drawn {
    /// Three places between 0 and 1.
    pub(super) fn new(decline: f64, gain: f64, loss: f64) -> Drawn {
        Drawn { decline, gain, loss, log: 0.0, before_lapse: 0.0 }
    }

    /// Natural logarithm of strength over strength at the start.
    pub(super) fn log(&self) -> f64 {
        self.log
    }

    pub(super) fn advance(&mut self, segment: &Segment) {
        match segment.effect {
            Effect::Kept => {}
            Effect::Aged(change) => self.log += aged(&change, self.decline),
            Effect::Gained(gain, years) => self.log += years * numeric::ln_1p(gain.at(self.gain)),
            Effect::Lost { loss, share, first } => {
                if first {
                    self.before_lapse = self.log;
                }
                self.log += share * numeric::ln_1p(-loss.at(self.loss));
            }
            Effect::Regained(gain, years) => {
                let grown = self.log + years * numeric::ln_1p(gain.at(self.gain));
                let ceiling = numeric::larger(self.log, self.before_lapse);
                self.log = numeric::smaller(grown, ceiling);
            }
        }
    }
}

/// The change at a place between the slowest fall (0) and the fastest (1), by a triangle around the middle one.
fn aged(change: &Band, place: f64) -> f64 {
    let middle = change.middle().unwrap_or((change.low() + change.high()) / 2.0);
    if place < 0.5 {
        // 1 at place 0, 0 at the middle.
        let toward_slowest = 1.0 - numeric::sqrt(2.0 * place);
        middle + toward_slowest * (change.high() - middle)
    } else {
        let toward_fastest = 1.0 - numeric::sqrt(2.0 * (1.0 - place));
        middle + toward_fastest * (change.low() - middle)
    }
}

/// All pieces of a scenario, in order.
pub(super) fn segments(now: Age, phases: &[Phase], course: &Course) -> Result<Vec<Segment>, Error> {
    numeric::within(Code::OutOfRange, "phases", phases.len() as f64, 0.0, f64::from(MOST_PHASES), "phases")?;
    let Some(last) = phases.last() else { return Err(Error::plain(Code::NotEnoughData, "phases")) };
    let mut pieces = Vec::new();
    let mut from = now;
    for (index, phase) in phases.iter().enumerate() {
        let end = Ends { now, from, to: phase.until, last: last.until };
        in_order(from, phase.until)
            .and_then(|()| end.cut(phase.course, course, &mut pieces))
            .map_err(|error| error.within(&alloc::format!("phases[{index}]")))?;
        from = phase.until;
    }
    Ok(pieces)
}

/// Ages that bound a phase.
struct Ends {
    now: Age,
    from: Age,
    to: Age,
    last: Age,
}

impl Ends {
    /// Where the phase is cut: at whole years from now, at the end of the studied weeks, and at its own end.
    fn cuts(&self, course: PhaseCourse) -> Vec<f64> {
        let (from, to) = (self.from.years(), self.to.years());
        let first = numeric::floor(from - self.now.years()) as u32;
        let whole = (first..=first + 120).map(|year| self.now.years() + f64::from(year));
        let mut cuts: Vec<f64> = whole.filter(|age| from < *age && *age < to).collect();
        let studied = from + MAINTENANCE_WEEKS / WEEKS_IN_A_YEAR;
        if course == PhaseCourse::MaintenanceDose && studied < to {
            cuts.push(studied);
        }
        if from < to {
            cuts.push(to);
        }
        crate::numeric::sort::sort_numbers(&mut cuts);
        cuts.dedup_by(|a, b| a.total_cmp(b).is_eq());
        cuts
    }

    /// Whether an age lies a whole number of years from now, or is the last of all.
    fn reported(&self, age: f64) -> bool {
        let years = numeric::round(age - self.now.years());
        (self.now.years() + years).total_cmp(&age).is_eq() || age >= self.last.years()
    }

    fn cut(&self, phase: PhaseCourse, course: &Course, pieces: &mut Vec<Segment>) -> Result<(), Error> {
        let mut before = self.from;
        for (index, cut) in self.cuts(phase).into_iter().enumerate() {
            let to = Age::new(cut)?;
            let effect = self.effect(phase, before, to, index == 0, course)?;
            pieces.push(Segment { to, effect, reported: self.reported(cut) });
            before = to;
        }
        Ok(())
    }

    fn effect(
        &self,
        phase: PhaseCourse,
        from: Age,
        to: Age,
        first: bool,
        course: &Course,
    ) -> Result<Effect, Error> {
        let years = to.years() - from.years();
        let studied = self.from.years() + MAINTENANCE_WEEKS / WEEKS_IN_A_YEAR;
        Ok(match phase {
            PhaseCourse::Hold => Effect::Kept,
            PhaseCourse::MaintenanceDose if from.years() < studied => Effect::Kept,
            PhaseCourse::MaintenanceDose | PhaseCourse::Decline => Effect::Aged(course.log_change(from, to)?),
            PhaseCourse::Gain(gain) => Effect::Gained(gain, years),
            PhaseCourse::Lapse(loss) => {
                Effect::Lost { loss, share: years / (self.to.years() - self.from.years()), first }
            }
            PhaseCourse::Return(gain) => Effect::Regained(gain, years),
        })
    }
}
