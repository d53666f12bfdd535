//! The two-component response as a model to fit: linear in baseline and gains, curved in the two times.

use alloc::vec::Vec;

use super::impulse::{Fade, InitialState, ResponseForm};
use crate::numeric::separable::{Bend, Expansion, Separable};

/// Fitness must fade at least one day more slowly than fatigue, or the two are one (our choice).
const SMALLEST_GAP: f64 = 1.0;

/// A trace and its derivative by its time constant, on one day.
#[derive(Clone, Copy)]
pub(super) struct TracePoint {
    pub(super) value: f64,
    pub(super) slope: f64,
}

/// What the fit looks at: loads of every day, and the days measured.
pub(super) struct ResponseModel<'a> {
    pub(super) loads: &'a [f64],
    /// Places of the measured days, first day 0.
    pub(super) measured: &'a [usize],
    pub(super) form: ResponseForm,
    pub(super) start: InitialState,
}

impl ResponseModel<'_> {
    /// The trace of one time constant over all days.
    pub(super) fn trace(&self, days: f64, is_fitness: bool) -> Vec<TracePoint> {
        let fade = Fade::over(days);
        let (left, left_slope) = (fade.left(), fade.left() / (days * days));
        let (fitness, fatigue) = self.start.traces(&fade, &fade);
        let mut value = if is_fitness { fitness } else { fatigue };
        let mut slope = match self.start {
            InitialState::SteadyLoad(_) => value * left_slope / (1.0 - left),
            _ => 0.0,
        };
        let day = |load: &f64| {
            let before = TracePoint { value: value * left, slope: left_slope * value + left * slope };
            (value, slope) = (before.value + load, before.slope);
            let after = TracePoint { value, slope };
            if self.form == ResponseForm::BeforeSession { before } else { after }
        };
        self.loads.iter().map(day).collect()
    }

    /// Values and slopes of a trace on the measured days, times `sign`.
    fn measured(&self, days: f64, is_fitness: bool, sign: f64) -> (Vec<f64>, Vec<f64>) {
        let trace = self.trace(days, is_fitness);
        let points = self.measured.iter().filter_map(|day| trace.get(*day));
        points.map(|point| (sign * point.value, sign * point.slope)).unzip()
    }

    fn ones(&self) -> Vec<f64> {
        alloc::vec![1.0; self.measured.len()]
    }
}

/// Two components: columns of ones, fitness, and fatigue with its sign turned, so that both gains are positive.
pub(super) struct TwoComponents<'a>(pub(super) ResponseModel<'a>);

impl Separable for TwoComponents<'_> {
    fn expand(&self, shape: &[f64]) -> Option<Expansion> {
        let [fitness_days, fatigue_days] = shape else { return None };
        if *fitness_days < fatigue_days + SMALLEST_GAP {
            return None;
        }
        let (fitness, fitness_slope) = self.0.measured(*fitness_days, true, 1.0);
        let (fatigue, fatigue_slope) = self.0.measured(*fatigue_days, false, -1.0);
        Some(Expansion {
            columns: alloc::vec![self.0.ones(), fitness, fatigue],
            bends: alloc::vec![
                Bend { parameter: 0, column: 1, values: fitness_slope },
                Bend { parameter: 1, column: 2, values: fatigue_slope },
            ],
        })
    }
}

/// One component of either sign: what the second has to beat.
pub(super) struct OneComponent<'a>(pub(super) ResponseModel<'a>);

impl Separable for OneComponent<'_> {
    fn expand(&self, shape: &[f64]) -> Option<Expansion> {
        let (trace, slope) = self.0.measured(*shape.first()?, true, 1.0);
        let bend = Bend { parameter: 0, column: 1, values: slope };
        Some(Expansion { columns: alloc::vec![self.0.ones(), trace], bends: alloc::vec![bend] })
    }
}
