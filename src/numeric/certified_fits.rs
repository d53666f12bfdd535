//! Certified nonlinear fits (tests only). Source: NIST Statistical Reference Datasets, nonlinear regression.

use super::fit::{Certainty, Linearised, Problem, minimise};
use super::separable::{Bend, Expansion, Separable, fit_separable};
use super::{exp, fabs, ln, log10, pow};
use alloc::vec::Vec;

type Shape = fn(f64, f64) -> (f64, f64);

/// `y = b1 f(b2, x)`; the function and its derivative by b2.
struct Set {
    name: &'static str,
    rows: &'static [(f64, f64)],
    shape: Shape,
    starts: [[f64; 2]; 2],
    certified: [f64; 2],
    errors: [f64; 2],
    squares: f64,
    deviation: f64,
}

fn saturating(b: f64, x: f64) -> (f64, f64) {
    (1.0 - exp(-b * x), x * exp(-b * x))
}

fn power(b: f64, x: f64) -> (f64, f64) {
    (pow(x, b), ln(x) * pow(x, b))
}

const SETS: [Set; 3] = [
    Set {
        name: "Misra1a",
        rows: &[
            (77.6, 10.07),
            (114.9, 14.73),
            (141.1, 17.94),
            (190.8, 23.93),
            (239.9, 29.61),
            (289.0, 35.18),
            (332.8, 40.02),
            (378.4, 44.82),
            (434.8, 50.76),
            (477.3, 55.05),
            (536.8, 61.01),
            (593.1, 66.4),
            (689.1, 75.47),
            (760.0, 81.78),
        ],
        shape: saturating,
        starts: [[500.0, 1e-4], [250.0, 5e-4]],
        certified: [2.3894212918E+02, 5.5015643181E-04],
        errors: [2.7070075241E+00, 7.2668688436E-06],
        squares: 1.2455138894E-01,
        deviation: 1.0187876330E-01,
    },
    Set {
        name: "BoxBOD",
        rows: &[(1.0, 109.0), (2.0, 149.0), (3.0, 149.0), (5.0, 191.0), (7.0, 213.0), (10.0, 224.0)],
        shape: saturating,
        starts: [[1.0, 1.0], [100.0, 0.75]],
        certified: [2.1380940889E+02, 5.4723748542E-01],
        errors: [1.2354515176E+01, 1.0455993237E-01],
        squares: 1.1680088766E+03,
        deviation: 1.7088072423E+01,
    },
    Set {
        name: "DanWood",
        rows: &[(1.309, 2.138), (1.471, 3.421), (1.49, 3.597), (1.565, 4.34), (1.611, 4.882), (1.68, 5.66)],
        shape: power,
        starts: [[1.0, 5.0], [0.7, 4.0]],
        certified: [7.6886226176E-01, 3.8604055871E+00],
        errors: [1.8281973860E-02, 5.1726610913E-02],
        squares: 4.3173084083E-03,
        deviation: 3.2853114039E-02,
    },
];

impl Problem for Set {
    fn linearise(&self, b: &[f64]) -> Option<Linearised> {
        let at = |(x, y): &(f64, f64)| {
            let (value, slope) = (self.shape)(b[1], *x);
            (b[0] * value - y, value, b[0] * slope)
        };
        let rows: Vec<_> = self.rows.iter().map(at).collect();
        rows.iter().all(|row| row.0.is_finite()).then(|| Linearised {
            residuals: rows.iter().map(|row| row.0).collect(),
            derivatives: alloc::vec![
                rows.iter().map(|row| row.1).collect(),
                rows.iter().map(|row| row.2).collect()
            ],
        })
    }
}

impl Separable for Set {
    fn expand(&self, shape: &[f64]) -> Option<Expansion> {
        let at = self.rows.iter().map(|(x, _)| (self.shape)(shape[0], *x));
        let (column, values): (Vec<f64>, Vec<f64>) = at.unzip();
        Some(Expansion {
            columns: alloc::vec![column],
            bends: alloc::vec![Bend { parameter: 0, column: 0, values }],
        })
    }
}

/// Digits that agree: log relative error.
fn digits(got: f64, certified: f64) -> f64 {
    let relative = fabs((got - certified) / certified);
    if relative > 0.0 { -log10(relative) } else { 11.0 }
}

fn check(set: &Set, how: &str, parameters: &[f64], squares: f64, certainty: &Certainty) {
    let errors = certainty.standard_errors();
    let deviation = super::sqrt(certainty.variance);
    let pairs = parameters.iter().zip(&set.certified).chain(errors.iter().zip(&set.errors));
    let pairs = pairs.chain([(&squares, &set.squares), (&deviation, &set.deviation)]);
    let least = pairs.map(|(got, certified)| digits(*got, *certified)).fold(20.0, super::smaller);
    std::println!("{} {how}: fewest digits that agree {least:.1}", set.name);
    assert!(least >= 6.0, "{} {how}: {least}", set.name);
}

const OPEN: (f64, f64) = (-1e6, 1e6);

#[test]
fn the_fitter_reaches_the_certified_values() {
    for set in &SETS {
        for start in &set.starts {
            let minimum = minimise(set, start, &[OPEN, OPEN]).unwrap();
            let point = set.linearise(&minimum.parameters).unwrap();
            let certainty = Certainty::new(point.derivatives, set.rows.len(), minimum.squares).unwrap();
            check(set, "in full", &minimum.parameters, minimum.squares, &certainty);
        }
    }
}

#[test]
fn so_does_the_separable_form() {
    for set in &SETS {
        let y: Vec<f64> = set.rows.iter().map(|row| row.1).collect();
        for start in &set.starts {
            let fit = fit_separable(set, &y, &[false], &start[1..], &[OPEN]).unwrap();
            let certainty = fit.certainty(set, y.len()).unwrap();
            let parameters = [fit.coefficients[0], fit.minimum.parameters[0]];
            check(set, "separated", &parameters, fit.minimum.squares, &certainty);
        }
    }
}

#[test]
fn a_bound_that_keeps_the_minimum_out_is_reported() {
    let set = &SETS[1];
    let minimum = minimise(set, &[100.0, 0.75], &[(0.0, 200.0), (0.0, 10.0)]).unwrap();
    assert_eq!(minimum.on_bound, [true, false]);
    assert!((minimum.parameters[0] - 200.0).abs() < 1e-9);
    // With b1 held at 200 the slope by b2 must vanish.
    let point = set.linearise(&minimum.parameters).unwrap();
    let slope: f64 = point.derivatives[1].iter().zip(&point.residuals).map(|(d, r)| d * r).sum();
    assert!(slope.abs() < 1e-4, "{slope}");
}
