//! The two-component response as a model to fit: linear in baseline and gains, curved in the two times.

use alloc::vec::Vec;

use super::impulse::{Fade, InitialState, ResponseForm};
use crate::numeric::separable::Separable;

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

    fn at_measured(&self, trace: &[TracePoint], take: impl Fn(&TracePoint) -> f64) -> Vec<f64> {
        self.measured.iter().filter_map(|day| trace.get(*day)).map(take).collect()
    }
}

/// Two components: columns of ones, fitness, and fatigue with its sign turned, so that both gains are positive.
pub(super) struct TwoComponents<'a>(pub(super) ResponseModel<'a>);

impl Separable for TwoComponents<'_> {
    fn columns(&self, shape: &[f64]) -> Option<Vec<Vec<f64>>> {
        let [fitness_days, fatigue_days] = shape else { return None };
        if *fitness_days < fatigue_days + SMALLEST_GAP {
            return None;
        }
        let (fitness, fatigue) = (self.0.trace(*fitness_days, true), self.0.trace(*fatigue_days, false));
        let ones = alloc::vec![1.0; self.0.measured.len()];
        Some(alloc::vec![
            ones,
            self.0.at_measured(&fitness, |point| point.value),
            self.0.at_measured(&fatigue, |point| -point.value),
        ])
    }

    fn derivatives(&self, shape: &[f64], coefficients: &[f64]) -> Vec<Vec<f64>> {
        let ([fitness_days, fatigue_days], [_, fitness_gain, fatigue_gain]) = (shape, coefficients) else {
            return Vec::new();
        };
        let (fitness, fatigue) = (self.0.trace(*fitness_days, true), self.0.trace(*fatigue_days, false));
        alloc::vec![
            self.0.at_measured(&fitness, |point| fitness_gain * point.slope),
            self.0.at_measured(&fatigue, |point| -fatigue_gain * point.slope),
        ]
    }
}

/// One component of either sign: what the second has to beat.
pub(super) struct OneComponent<'a>(pub(super) ResponseModel<'a>);

impl Separable for OneComponent<'_> {
    fn columns(&self, shape: &[f64]) -> Option<Vec<Vec<f64>>> {
        let trace = self.0.trace(*shape.first()?, true);
        let ones = alloc::vec![1.0; self.0.measured.len()];
        Some(alloc::vec![ones, self.0.at_measured(&trace, |point| point.value)])
    }

    fn derivatives(&self, shape: &[f64], coefficients: &[f64]) -> Vec<Vec<f64>> {
        let ([days], [_, gain]) = (shape, coefficients) else { return Vec::new() };
        let trace = self.0.trace(*days, true);
        alloc::vec![self.0.at_measured(&trace, |point| gain * point.slope)]
    }
}
