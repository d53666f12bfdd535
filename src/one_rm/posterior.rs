//! Unknowns with normal priors, observed through straight lines with normal noise.

use alloc::vec::Vec;

use crate::error::Error;
use crate::numeric::qr::Qr;

/// What is believed of one unknown beforehand: mean and standard deviation, or nothing.
pub(super) type Prior = Option<(f64, f64)>;

/// Rows of a weighted least-squares problem, the priors being rows of their own.
pub(super) struct Observations {
    columns: Vec<Vec<f64>>,
    response: Vec<f64>,
    deviations: Vec<f64>,
    prior_rows: usize,
}

/// What is believed afterwards.
pub(super) struct Posterior {
    qr: Qr,
    deviations: Vec<f64>,
    prior_rows: usize,
    /// Mean of each unknown.
    pub(super) means: Vec<f64>,
    /// Variance of each unknown.
    pub(super) variances: Vec<f64>,
}

impl Observations {
    pub(super) fn new(priors: &[Prior]) -> Observations {
        let columns = priors.iter().map(|_| Vec::new()).collect();
        let mut rows = Observations { columns, response: Vec::new(), deviations: Vec::new(), prior_rows: 0 };
        for (at, prior) in priors.iter().enumerate() {
            if let Some((mean, deviation)) = prior {
                rows.push(|column| if column == at { 1.0 } else { 0.0 }, *mean, *deviation);
            }
        }
        rows.prior_rows = rows.response.len();
        rows.deviations.clear();
        rows
    }

    /// One observation: the sum of coefficients times unknowns, seen with that standard deviation.
    pub(super) fn observe(&mut self, coefficients: &[f64], value: f64, deviation: f64) {
        self.push(|column| coefficients.get(column).copied().unwrap_or(0.0), value, deviation);
    }

    fn push(&mut self, coefficient: impl Fn(usize) -> f64, value: f64, deviation: f64) {
        for (at, column) in self.columns.iter_mut().enumerate() {
            column.push(coefficient(at) / deviation);
        }
        self.response.push(value / deviation);
        self.deviations.push(deviation);
    }

    /// # Errors
    /// `not_identified` where rows and priors together leave an unknown open.
    pub(super) fn posterior(self) -> Result<Posterior, Error> {
        let qr = Qr::new(self.columns)?;
        let means = qr.solve(self.response);
        let variances = qr.inverse_diagonal();
        Ok(Posterior { qr, deviations: self.deviations, prior_rows: self.prior_rows, means, variances })
    }
}

impl Posterior {
    /// How the first unknown's mean moves with each observation.
    pub(super) fn weights_of_first(&self) -> Vec<f64> {
        let unit = |at: usize| {
            let mut rows = alloc::vec![0.0; self.prior_rows + self.deviations.len()];
            if let (Some(row), Some(deviation)) =
                (rows.get_mut(self.prior_rows + at), self.deviations.get(at))
            {
                *row = 1.0 / deviation;
            }
            self.qr.solve(rows).first().copied().unwrap_or(0.0)
        };
        (0..self.deviations.len()).map(unit).collect()
    }
}
