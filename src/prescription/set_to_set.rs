//! From one set to the next: load by how hard the last set was, and when to stop.

use crate::error::{Code, Error};
use crate::numeric;
use crate::one_rm::{CurveForm, Equation, load_for, own_curve_load, own_curve_one_rm};
use crate::quantity::{Kilograms, Mass, Reps, Rir, Rpe};
use crate::source::{OURS, Source, constant, formula, rows};

const HELMS_2018_RPE: Source = Source {
    id: "helms-2018-rpe",
    citation: "Helms ER, Byrnes RK, Cooke DM, et al. RPE vs. percentage 1RM loading in periodized programs matched for \
               sets and repetitions. Frontiers in Physiology 9:247, 2018",
    doi: Some("10.3389/fphys.2018.00247"),
};

const HELMS_2018_STOP: Source = Source {
    id: "helms-2018-stop",
    citation: "Helms ER, Cross MR, Brown SR, et al. Rating of perceived exertion as a method of volume autoregulation \
               within a periodized program. Journal of Strength and Conditioning Research 32(6):1627-1636, 2018",
    doi: Some("10.1519/JSC.0000000000002032"),
};

constant! {
    "prescription.part_per_point",
    /// Part of the load by which the next set differs for each point of rating missed.
    ///
    /// # Domain
    /// Somewhat more than one repetition is worth on the reps-load curves (2.4 to 3.7 %).
    ///
    /// # Source
    /// Helms et al. 2018, Frontiers in Physiology, as a digest quotes it: 2 % for every half point outside a target
    /// range of ratings, and more after missed repetitions. This row has one target in place of a range.
    pub const PART_PER_POINT: f64 = 0.04;
    source: HELMS_2018_RPE, place: "methods, load adjustment", standing: Published, seen: Secondary, copies: "one public digest",
    population: "trained young men; squat and bench press",
}

constant! {
    "prescription.largest_adjustment",
    /// Largest change of load from one set to the next, as a part of the load.
    pub const LARGEST_ADJUSTMENT: f64 = 0.10;
    source: OURS, place: "set-to-set adjustment", standing: OurChoice, seen: NotApplicable,
}

formula! {
    "prescription.next_set_fixed",
    /// That set was harder or easier than wanted: what load for the next one?
    ///
    /// # Formula
    /// `next = load (1 - k (done - target))`; `k` part of the load for each point of rating. Never more than
    /// 10 % away, and never above `limit`, the load granted for today.
    ///
    /// # Domain
    /// `k` above 0 and at most 0.1.
    ///
    /// # Errors
    /// `out_of_range` for `k`; `load_out_of_domain` at or below 0 kg.
    ///
    /// # Source
    /// Helms et al. 2018, Frontiers in Physiology 9:247, as a digest quotes it (row `prescription.next_set_fixed`). The
    /// source changed the load only outside a range of ratings, and more after missed repetitions; the limit of 10 %
    /// and the limit of the granted load are our choice.
    ///
    /// # Examples
    /// ```
    /// use bismar::prescription::{PART_PER_POINT, next_set_fixed};
    /// use bismar::quantity::{Mass, Rpe};
    ///
    /// let (load, limit) = (Mass::from_kg(80.0)?, Mass::from_kg(80.0)?);
    /// let next = next_set_fixed(load, Rpe::new(8.5)?, Rpe::new(7.0)?, PART_PER_POINT, limit)?;
    /// assert!((next.value() - 75.2).abs() < 1e-9);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn next_set_fixed(load: Mass, done: Rpe, target: Rpe, part_per_point: f64, limit: Mass) -> Result<Kilograms, Error> {
        let part = numeric::within(Code::OutOfRange, "part_per_point", part_per_point, 0.0, LARGEST_ADJUSTMENT, "of the load")?;
        capped(load, 1.0 - part * (done.value() - target.value()), limit)
    }
    source: HELMS_2018_RPE, place: "methods, load adjustment", standing: Published, seen: Secondary, copies: "one public digest",
    population: "trained young men; squat and bench press", domain: "ratings from 0 to 10",
}

formula! {
    "prescription.next_set_by_curve",
    /// The same by the reps-load curve: one repetition in reserve is one repetition on the curve.
    ///
    /// # Formula
    /// `next = E(load, reps + reserve done) * part(reps + reserve wanted)` with the chosen equation. Never more than
    /// 10 % away, and never above `limit`, the load granted for today.
    ///
    /// # Errors
    /// `reps_out_of_domain` where the equation has no value; `load_out_of_domain` at or below 0 kg.
    ///
    /// # Source
    /// Arithmetic over the equation chosen (row `prescription.next_set_by_curve`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::Equation;
    /// use bismar::prescription::next_set_by_curve;
    /// use bismar::quantity::{Mass, Reps, Rir};
    ///
    /// let (load, limit) = (Mass::from_kg(80.0)?, Mass::from_kg(80.0)?);
    /// let (done, wanted) = (Rir::whole(1), Rir::whole(3));
    /// let next = next_set_by_curve(load, Reps::whole(5)?, done, wanted, Equation::Epley1985, limit)?;
    /// assert!((next.value() - 75.789).abs() < 0.001);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn next_set_by_curve(
        load: Mass,
        reps: Reps,
        done: Rir,
        target: Rir,
        equation: Equation,
        limit: Mass,
    ) -> Result<Kilograms, Error> {
        positive(load)?;
        let to_failure = Reps::from_halves(reps.halves() + done.halves())?;
        let strength = equation.one_rm(load, to_failure)?;
        let next = load_for(strength, reps, target, equation)?;
        capped(load, next.value() / load.kg(), limit)
    }
    source: crate::source::ARITHMETIC, place: "definition", standing: Derived, seen: NotApplicable,
}

formula! {
    "prescription.back_off_load",
    /// What load for the back-off sets after a top set?
    ///
    /// # Formula
    /// `back-off = top (1 - reduction)`
    ///
    /// # Domain
    /// Reductions of 0.02, 0.04 and 0.06 were studied; up to 0.5 is taken. A larger reduction gives more sets
    /// before the target effort is reached again.
    ///
    /// # Errors
    /// `out_of_range`, `load_out_of_domain`.
    ///
    /// # Source
    /// Helms et al. 2018, J Strength Cond Res 32(6):1627-1636 (row `prescription.back_off_load`).
    ///
    /// # Examples
    /// ```
    /// use bismar::{prescription::back_off_load, quantity::Mass};
    ///
    /// assert!((back_off_load(Mass::from_kg(100.0)?, 0.04)?.value() - 96.0).abs() < 1e-9);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn back_off_load(top: Mass, reduction: f64) -> Result<Kilograms, Error> {
        let reduction = numeric::within(Code::OutOfRange, "reduction", reduction, 0.0, 0.5, "of the load")?;
        Kilograms::new(positive(top)? * (1.0 - reduction))
    }
    source: HELMS_2018_STOP, place: "abstract", standing: Published, seen: Read,
    population: "trained powerlifters", domain: "reductions of 2, 4 and 6 %",
}

formula! {
    "prescription.stop_at_target_effort",
    /// Is this the last back-off set? Back-off sets end when the target effort is reached again.
    ///
    /// # Formula
    /// `stop = done >= target`
    ///
    /// # Errors
    /// None beyond those of building the ratings.
    ///
    /// # Source
    /// Helms et al. 2018, J Strength Cond Res 32(6):1627-1636 (row `prescription.stop_at_target_effort`).
    ///
    /// # Examples
    /// ```
    /// use bismar::{prescription::stop_at_target_effort, quantity::Rpe};
    ///
    /// assert!(stop_at_target_effort(Rpe::new(9.0)?, Rpe::new(9.0)?)?);
    /// assert!(!stop_at_target_effort(Rpe::new(8.5)?, Rpe::new(9.0)?)?);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn stop_at_target_effort(done: Rpe, target: Rpe) -> Result<bool, Error> {
        Ok(done >= target)
    }
    source: HELMS_2018_STOP, place: "abstract", standing: Published, seen: Read,
    population: "trained powerlifters",
}

/// The same by the lifter's own curve, of that form and slope.
pub(crate) fn next_set_by_own_curve(
    load: Mass,
    reps: Reps,
    done: Rir,
    target: Rir,
    (form, slope): (CurveForm, f64),
    limit: Mass,
) -> Result<Kilograms, Error> {
    positive(load)?;
    let left = |reserve: Rir| Reps::from_halves(reps.halves() + reserve.halves());
    let strength = own_curve_one_rm(form, slope, load, left(done)?)?;
    let next = own_curve_load(form, slope, strength, left(target)?)?;
    capped(load, next.value() / load.kg(), limit)
}

fn positive(load: Mass) -> Result<f64, Error> {
    if load.is_positive() {
        Ok(load.kg())
    } else {
        Err(Error::range(Code::LoadOutOfDomain, "load", load.kg(), 0.0, Mass::MAX.kg(), "kg, above 0"))
    }
}

/// The load times a factor that is cut to 10 % either way, and never above the limit.
fn capped(load: Mass, factor: f64, limit: Mass) -> Result<Kilograms, Error> {
    let load = positive(load)?;
    let factor =
        numeric::smaller(numeric::larger(factor, 1.0 - LARGEST_ADJUSTMENT), 1.0 + LARGEST_ADJUSTMENT);
    Kilograms::new(numeric::smaller(load * factor, limit.kg()))
}

rows![
    PART_PER_POINT,
    LARGEST_ADJUSTMENT,
    next_set_fixed,
    next_set_by_curve,
    back_off_load,
    stop_at_target_effort
];
