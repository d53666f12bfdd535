//! Masses in steps that a gym can tell apart, worked out in whole numbers.

use alloc::format;
use alloc::string::{String, ToString};

use crate::loading::{Stock, face_unit};
use crate::quantity::{Mass, Unit};

/// Steps in which masses are printed, in thousandths of the unit, coarsest first (our choice).
const KILOGRAM_STEPS: [i64; 6] = [250, 100, 50, 25, 10, 5];
const POUND_STEPS: [i64; 7] = [500, 250, 100, 50, 25, 10, 5];
/// Where no step goes evenly into every disc.
const FINEST: i64 = 1;
/// Steps fine enough to print a load of discs by, whatever they are (our choice).
const FINE_KILOGRAMS: i64 = 10;
const FINE_POUNDS: i64 = 100;
/// Thousandths of a whole.
const WHOLE: i64 = 1_000;

/// A mass as it is printed, and whether it is help.
#[derive(PartialEq, Eq)]
pub(super) struct Printed {
    pub(super) said: String,
    pub(super) help: bool,
}

/// The step in which masses are printed.
#[derive(Clone, Copy, Debug)]
pub(super) struct Step {
    unit: Unit,
    thousandths: i64,
    /// A bound that is whole in thousandths is printed as it is.
    exact: bool,
}

impl Step {
    /// Half of what a pair of the lightest discs changes, or finer, going evenly into every disc that is marked in the unit.
    pub(super) fn of(unit: Unit, stock: Option<&Stock>) -> Step {
        let discs = stock.map(Stock::discs).unwrap_or_default();
        let fits = |thousandths: i64| {
            let step = thousandths.saturating_mul(thousandth(unit));
            discs.iter().filter(|disc| disc.count() > 0).all(|disc| {
                let face = disc.nominal().nanograms();
                step <= face && (disc.unit() != unit || face % step == 0)
            })
        };
        let steps: &[i64] = if unit == Unit::Lb { &POUND_STEPS } else { &KILOGRAM_STEPS };
        let thousandths = steps.iter().copied().find(|step| fits(*step)).unwrap_or(FINEST);
        Step { unit, thousandths, exact: false }
    }

    /// Hundredths of a kilogram or tenths of a pound, whatever the discs.
    pub(super) const fn fine(unit: Unit) -> Step {
        let thousandths = match unit {
            Unit::Lb => FINE_POUNDS,
            Unit::Kg => FINE_KILOGRAMS,
        };
        Step { unit, thousandths, exact: true }
    }

    pub(super) const fn unit(self) -> Unit {
        self.unit
    }

    /// The nearest step, halves away from zero.
    pub(super) fn nearest(self, mass: Mass) -> Printed {
        self.print(self.steps_near(mass))
    }

    /// A bound that a person wrote: as written where that is whole in the finest step, else rounded down.
    pub(super) fn written(self, mass: Mass) -> Printed {
        let finest = self.finest();
        if finest.makes(mass) { finest.nearest(mass) } else { self.below(mass) }
    }

    /// The step at or below: no more load, or no less help.
    pub(super) fn below(self, mass: Mass) -> Printed {
        let step = self.of_bound(mass);
        step.print(step.steps_below(mass))
    }

    /// The step at or above: no less load, or no more help.
    pub(super) fn above(self, mass: Mass) -> Printed {
        let step = self.of_bound(mass);
        let over = i64::from(!step.makes(mass));
        step.print(step.steps_below(mass).saturating_add(over))
    }

    /// The step at or below where that is still more than the other mass as printed, which is loaded; else exact to the
    /// finest step, so that what may be loaded is never printed as what is.
    pub(super) fn below_but_above(self, mass: Mass, loaded: Option<Mass>) -> Printed {
        let told_apart = |loaded: Mass| loaded >= mass || self.steps_below(mass) > self.steps_near(loaded);
        if loaded.is_some_and(told_apart) { self.below(mass) } else { self.finest().below(mass) }
    }

    const fn finest(self) -> Step {
        Step { thousandths: FINEST, ..self }
    }

    /// The step in which a bound is printed: the finest, where that prints it as it is.
    fn of_bound(self, mass: Mass) -> Step {
        if self.exact && self.finest().makes(mass) { self.finest() } else { self }
    }

    /// Whether a mass is whole in this step.
    fn makes(self, mass: Mass) -> bool {
        mass.nanograms().checked_rem(self.nanograms()) == Some(0)
    }

    fn steps_below(self, mass: Mass) -> i64 {
        mass.nanograms().checked_div_euclid(self.nanograms()).unwrap_or_default()
    }

    fn steps_near(self, mass: Mass) -> i64 {
        let (mass, step) = (mass.nanograms(), self.nanograms());
        let half = if mass < 0 { -step / 2 } else { step / 2 };
        steps_in(mass.saturating_add(half), step)
    }

    fn nanograms(self) -> i64 {
        self.thousandths.saturating_mul(thousandth(self.unit))
    }

    fn print(self, steps: i64) -> Printed {
        let thousandths = steps.saturating_mul(self.thousandths);
        let (number, unit) = (decimal(thousandths.abs()), self.unit.symbol());
        Printed { said: format!("{number} {unit}"), help: thousandths < 0 }
    }
}

/// How many whole steps lie in a mass. No step is nought, and the division says so without a panic.
fn steps_in(nanograms: i64, step: i64) -> i64 {
    nanograms.checked_div(step).unwrap_or_default()
}

/// Nanograms in a thousandth of the unit: a gram, or the thousandth of a pound, both whole.
fn thousandth(unit: Unit) -> i64 {
    Mass::from_unit(1.0, unit).unwrap_or(Mass::grams(1_000)).nanograms() / WHOLE
}

/// Thousandths as a decimal number without trailing zeros.
fn decimal(thousandths: i64) -> String {
    let (whole, rest) = (thousandths / WHOLE, thousandths % WHOLE);
    if rest == 0 {
        return whole.to_string();
    }
    format!("{whole}.{rest:03}").trim_end_matches('0').to_string()
}

/// What is written on a disc, a dumbbell or a plate, in the unit in which it is marked.
#[must_use]
pub fn face(face: Mass) -> String {
    let unit = face_unit(face);
    let thousandth = thousandth(unit);
    let half = thousandth / 2;
    let number = decimal(steps_in(face.nanograms().abs().saturating_add(half), thousandth));
    format!("{number} {}", unit.symbol())
}
