//! Fitting a response to one lifter's own loads and measurements.

use alloc::boxed::Box;
use alloc::vec::Vec;

use super::daily::{DailyLoad, complete};
use super::impulse::{BUSSO_1991, ImpulseResponse};
use super::response_answer::{
    FitAnswer, FitOptions, MeasuredDay, ParameterCorrelation, RefusalReason, ResponseErrors, ResponseFit,
    ResponseParameter, SimulatedDay,
};
use super::response_model::{OneComponent, ResponseModel, TwoComponents};
use crate::caution::Caution;
use crate::error::{Allowed, Code, Error};
use crate::numeric;
use crate::numeric::beta::beta_cdf;
use crate::numeric::fit::{Bound, Certainty};
use crate::numeric::separable::{Separable, SeparableFit, fit_separable};
use crate::numeric::student::student_quantile;
use crate::quantity::Interval;
use crate::source::{formula, rows};

/// Loads and measurements, checked.
struct Record {
    loads: Vec<f64>,
    places: Vec<usize>,
    values: Vec<f64>,
}

/// Largest measurement taken either way.
const LARGEST_VALUE: f64 = 1e9;

impl Record {
    fn new(days: &[DailyLoad], measured: &[MeasuredDay]) -> Result<Record, Error> {
        let loads = complete(days)?;
        let place = |(at, measured): (usize, &MeasuredDay)| {
            let within = |error: Error| error.within(&alloc::format!("measured[{at}]"));
            let value =
                numeric::within(Code::OutOfRange, "value", measured.value, -LARGEST_VALUE, LARGEST_VALUE, "");
            let day = usize::try_from(measured.day).ok().and_then(|day| day.checked_sub(1));
            let day = day.filter(|day| *day < loads.len()).ok_or_else(|| {
                let rule = Allowed::rule("a day of the loads, the first being 1");
                within(Error::new(Code::OutOfRange, "day", measured.day, rule))
            })?;
            Ok((day, value.map_err(within)?))
        };
        let pairs = measured.iter().enumerate().map(place).collect::<Result<Vec<_>, Error>>()?;
        let (places, values) = pairs.into_iter().unzip();
        Ok(Record { loads, places, values })
    }

    fn model<'a>(&'a self, options: &FitOptions) -> ResponseModel<'a> {
        ResponseModel { loads: &self.loads, measured: &self.places, form: options.form, start: options.start }
    }

    fn nothing_varies(&self) -> bool {
        let equal = |values: &[f64]| {
            values.iter().all(|value| Some(value.to_bits()) == values.first().map(|first| first.to_bits()))
        };
        equal(&self.loads) || equal(&self.values)
    }

    fn total_squares(&self) -> f64 {
        let mean = self.values.iter().sum::<f64>() / self.values.len() as f64;
        self.values.iter().map(|value| (value - mean) * (value - mean)).sum()
    }
}

/// Points of a grid along a range, evenly spaced by ratio.
fn along(low: f64, high: f64) -> [f64; 3] {
    let ratio = high / low;
    [0.2, 0.5, 0.8].map(|share| low * numeric::pow(ratio, share))
}

fn starts(options: &FitOptions) -> Vec<[f64; 2]> {
    if !options.starts.is_empty() {
        return options.starts.iter().map(|times| [times.fitness_days(), times.fatigue_days()]).collect();
    }
    let fatigue = along(options.fatigue_days.low, options.fatigue_days.high);
    let fitness = along(options.fitness_days.low, options.fitness_days.high);
    let pairs = fitness.iter().flat_map(|slow| fatigue.iter().map(move |quick| [*slow, *quick]));
    pairs.filter(|[slow, quick]| *slow > 1.5 * quick).collect()
}

/// The best fit over the starts; none where no start leads anywhere.
fn best<M: Separable>(
    model: &M,
    values: &[f64],
    signs: &[bool],
    starts: &[&[f64]],
    bounds: &[Bound],
) -> Option<SeparableFit> {
    let fits = starts.iter().filter_map(|start| fit_separable(model, values, signs, start, bounds).ok());
    fits.min_by(|one, other| one.minimum.squares.total_cmp(&other.minimum.squares))
}

fn two_components(model: &TwoComponents<'_>, values: &[f64], options: &FitOptions) -> Option<SeparableFit> {
    let starts = starts(options);
    let starts: Vec<&[f64]> = starts.iter().map(<[f64; 2]>::as_slice).collect();
    let bounds = [options.fitness_days, options.fatigue_days].map(|range| (range.low, range.high));
    best(model, values, &[false, true, true], &starts, &bounds)
}

/// Squares left by one component of either sign, or by a constant where none can be fitted.
fn one_component_squares(record: &Record, options: &FitOptions) -> f64 {
    let low = numeric::smaller(options.fitness_days.low, options.fatigue_days.low);
    let high = numeric::larger(options.fitness_days.high, options.fatigue_days.high);
    let model = OneComponent(record.model(options));
    let points = along(low, high);
    let starts: Vec<&[f64]> = points.iter().map(core::slice::from_ref).collect();
    let fit = best(&model, &record.values, &[false, false], &starts, &[(low, high)]);
    fit.map_or_else(|| record.total_squares(), |fit| fit.minimum.squares)
}

/// Upper tail of F with 2 and `degrees` degrees of freedom, for two more parameters.
fn second_component_p(one: f64, two: f64, degrees: u32) -> Result<f64, Error> {
    const MORE_PARAMETERS: f64 = 2.0;
    let degrees = f64::from(degrees);
    if two <= 0.0 {
        return Ok(0.0);
    }
    let f = numeric::larger((one - two) / MORE_PARAMETERS / (two / degrees), 0.0);
    beta_cdf(degrees / 2.0, MORE_PARAMETERS / 2.0, degrees / (degrees + MORE_PARAMETERS * f))
}

/// All five parameters in their order.
fn parameters(fit: &SeparableFit) -> Vec<f64> {
    fit.coefficients.iter().chain(&fit.minimum.parameters).copied().collect()
}

/// What is wrong with a fit as it stands, before asking how well it is known.
fn misplaced(fit: &SeparableFit) -> Vec<RefusalReason> {
    let [_, gains @ .., _, _] = &ResponseParameter::ALL;
    let [.., fitness_days, fatigue_days] = ResponseParameter::ALL;
    let absent = gains.iter().zip(fit.coefficients.iter().skip(1)).filter(|(_, gain)| **gain <= 0.0);
    let absent = absent.map(|(parameter, _)| RefusalReason::NoSuchComponent { parameter: *parameter });
    let times = [fitness_days, fatigue_days].into_iter().zip(&fit.minimum.parameters);
    let edges = times.zip(&fit.minimum.on_bound).filter(|(_, on_bound)| **on_bound);
    absent
        .chain(edges.map(|((parameter, value), _)| RefusalReason::OnEdge { parameter, value: *value }))
        .collect()
}

fn uncertain(fit: &SeparableFit, errors: &[f64], options: &FitOptions) -> Vec<RefusalReason> {
    let known = ResponseParameter::ALL.into_iter().zip(parameters(fit)).zip(errors).skip(1);
    let hardly = known.filter(|((_, value), error)| **error > options.largest_relative_error * value);
    hardly
        .map(|((parameter, value), error)| RefusalReason::TooUncertain {
            parameter,
            value,
            standard_error: *error,
        })
        .collect()
}

fn named_correlation(certainty: &Certainty) -> Option<ParameterCorrelation> {
    let (first, second, correlation) = certainty.strongest_correlation()?;
    let name = |at: usize| ResponseParameter::ALL.get(at).copied();
    Some(ParameterCorrelation { first: name(first)?, second: name(second)?, correlation })
}

/// The curve over all days, with prediction intervals.
fn curve(
    model: &ResponseModel<'_>,
    fit: &SeparableFit,
    certainty: &Certainty,
    level: f64,
) -> Result<Vec<SimulatedDay>, Error> {
    let ([baseline, k1, k2], [slow, quick]) =
        (fit.coefficients.as_slice(), fit.minimum.parameters.as_slice())
    else {
        return Ok(Vec::new());
    };
    let reach = student_quantile((1.0 + level) / 2.0, f64::from(certainty.degrees))?;
    let days = model.trace(*slow, true).into_iter().zip(model.trace(*quick, false));
    let day = |(day, (fitness, fatigue)): (u32, (super::response_model::TracePoint, _))| {
        let fatigue: super::response_model::TracePoint = fatigue;
        let value = numeric::finite("curve", baseline + k1 * fitness.value - k2 * fatigue.value)?;
        let gradient = [1.0, fitness.value, -fatigue.value, k1 * fitness.slope, -k2 * fatigue.slope];
        let spread = reach * numeric::sqrt(certainty.variance + certainty.variance_along(&gradient));
        Ok(SimulatedDay { day, value, interval: Interval::new(value - spread, value + spread, level)? })
    };
    (1_u32..).zip(days).map(day).collect()
}

/// A fit that is where it should be, or all reasons against it.
fn judge(record: &Record, options: &FitOptions) -> Result<FitAnswer, Error> {
    let model = TwoComponents(record.model(options));
    let Some(fit) = two_components(&model, &record.values, options) else {
        return Ok(FitAnswer::Refused(alloc::vec![RefusalReason::NoAnswerFound]));
    };
    let mut reasons = misplaced(&fit);
    let Ok(certainty) = fit.certainty(&model, record.values.len()) else {
        if reasons.is_empty() {
            reasons.push(RefusalReason::NoAnswerFound);
        }
        return Ok(FitAnswer::Refused(reasons));
    };
    let errors = certainty.standard_errors();
    let one = one_component_squares(record, options);
    let p_value = second_component_p(one, fit.minimum.squares, certainty.degrees)?;
    if p_value > options.largest_p_value {
        reasons.push(RefusalReason::OneComponentSuffices { p_value });
    }
    reasons.extend(uncertain(&fit, &errors, options));
    let correlation = named_correlation(&certainty);
    if let Some(pair) =
        correlation.filter(|pair| numeric::fabs(pair.correlation) > options.largest_correlation)
    {
        let ParameterCorrelation { first, second, correlation } = pair;
        reasons.push(RefusalReason::Inseparable { first, second, correlation });
    }
    match (correlation, reasons.is_empty()) {
        (Some(correlation), true) => {
            let fit = report(record, options, &model.0, &fit, &certainty, &errors, (p_value, correlation))?;
            Ok(FitAnswer::Fitted(Box::new(fit)))
        }
        _ => Ok(FitAnswer::Refused(reasons)),
    }
}

fn report(
    record: &Record,
    options: &FitOptions,
    model: &ResponseModel<'_>,
    fit: &SeparableFit,
    certainty: &Certainty,
    errors: &[f64],
    (one_component_p_value, strongest_correlation): (f64, ParameterCorrelation),
) -> Result<ResponseFit, Error> {
    let (five, errors) = (parameters(fit), errors.to_vec());
    let ([baseline, k1, k2, slow, quick], [e0, e1, e2, e3, e4]) = (five.as_slice(), errors.as_slice()) else {
        return Err(Error::plain(Code::NotIdentified, "parameters"));
    };
    Ok(ResponseFit {
        response: ImpulseResponse::new(*baseline, *k1, *k2, *slow, *quick)?,
        standard_errors: ResponseErrors {
            baseline: *e0,
            fitness_gain: *e1,
            fatigue_gain: *e2,
            fitness_days: *e3,
            fatigue_days: *e4,
        },
        residual_squares: fit.minimum.squares,
        residual_deviation: numeric::sqrt(certainty.variance),
        degrees: certainty.degrees,
        explained: 1.0 - fit.minimum.squares / record.total_squares(),
        one_component_p_value,
        strongest_correlation,
        curve: curve(model, fit, certainty, options.level)?,
        cautions: alloc::vec![Caution::TeachingSimulation],
    })
}

formula! {
    "dose.fit_impulse_response",
    /// Which two-component response runs closest to what this lifter measured, and do the data carry it at all?
    ///
    /// # Formula
    /// Least squares over baseline, two gains of 0 or more and two time constants within bounds. For any two time
    /// constants the rest is linear and solved exactly; only the two are searched, from every start. Standard
    /// errors from the derivatives at the answer; prediction intervals by Student's t.
    ///
    /// # Domain
    /// Complete days; days after the last measurement give the curve to come. Refused, with every reason, where
    /// there are too few measurements, where the best answer lies on an edge or drops a component, where one
    /// component does as well (F test, approximate), or where a parameter is hardly known. A simulation for
    /// teaching ([`Caution::TeachingSimulation`](crate::caution::Caution)), never a predicted maximum: in nine
    /// swimmers measured for years the intervals of the time constants ran from half to one and a half of the
    /// value.
    ///
    /// # Errors
    /// `day_not_recorded`; `out_of_range` for days, values and options; `interval_reversed` for a range.
    ///
    /// # Source
    /// The model of Busso, Carasso and Lacour 1991, its form recalled; limits of refusal are our choice.
    ///
    /// # Examples
    /// ```
    /// use bismar::dose::*;
    ///
    /// let days: Vec<_> = (0..120).map(|day| DailyLoad::recorded(f64::from(day * 37 % 11 * 10))).collect::<Result<_, _>>()?;
    /// let truth = ImpulseResponse::new(100.0, 0.05, 0.08, 40.0, 8.0)?;
    /// let curve = impulse_response_before_session(&days, truth, InitialState::NoHistory)?;
    /// let measured: Vec<_> =
    ///     (1..).zip(&curve).map(|(day, point)| MeasuredDay::new(day, point.performance)).collect();
    /// let options = FitOptions::our_choice(ResponseForm::BeforeSession, InitialState::NoHistory);
    /// let FitAnswer::Fitted(fit) = fit_impulse_response(&days, &measured, &options)? else { panic!() };
    /// assert!((fit.response.times().fitness_days() - 40.0).abs() < 1e-4);
    ///
    /// let few = fit_impulse_response(&days, &measured[..5], &options)?;
    /// assert!(matches!(few, FitAnswer::Refused(_)));
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn fit_impulse_response(
        days: &[DailyLoad], measured: &[MeasuredDay], options: &FitOptions
    ) -> Result<FitAnswer, Error> {
        options.check()?;
        let record = Record::new(days, measured)?;
        let (given, needed) = (u32::try_from(measured.len()).unwrap_or(u32::MAX), options.fewest_measurements);
        if given < needed {
            return Ok(FitAnswer::Refused(alloc::vec![RefusalReason::TooFewMeasurements { given, needed }]));
        }
        if record.nothing_varies() {
            return Ok(FitAnswer::Refused(alloc::vec![RefusalReason::NothingVaries]));
        }
        judge(&record, options)
    }
    source: BUSSO_1991, place: "least squares of the model; limits of refusal our choice", standing: Derived, seen: NotApplicable,
    population: "8 untrained people, endurance", domain: "teaching; at least 25 measurements by default",
}

rows![fit_impulse_response];
