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
    /// Everything is printed at the nearest step, a cap too.
    nearest: bool,
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
        Step { unit, thousandths, nearest: false }
    }

    /// Hundredths of a kilogram or tenths of a pound, whatever the discs.
    pub(super) const fn fine(unit: Unit) -> Step {
        let thousandths = match unit {
            Unit::Lb => FINE_POUNDS,
            Unit::Kg => FINE_KILOGRAMS,
        };
        Step { unit, thousandths, nearest: true }
    }

    pub(super) const fn unit(self) -> Unit {
        self.unit
    }

    /// The nearest step, halves away from zero.
    pub(super) fn nearest(self, mass: Mass) -> Printed {
        let (mass, step) = (mass.nanograms(), self.nanograms());
        let half = if mass < 0 { -step / 2 } else { step / 2 };
        self.print(steps_in(mass.saturating_add(half), step))
    }

    /// A load that a person wrote: as written where that is whole in the finest step, else the nearest step.
    pub(super) fn written(self, mass: Mass) -> Printed {
        let finest = Step { thousandths: FINEST, ..self };
        let whole = mass.nanograms().checked_rem(finest.nanograms()) == Some(0);
        if whole { finest.nearest(mass) } else { self.nearest(mass) }
    }

    /// The step at or below: no more load, or no less help.
    pub(super) fn below(self, mass: Mass) -> Printed {
        if self.nearest {
            return self.nearest(mass);
        }
        self.print(mass.nanograms().div_euclid(self.nanograms()))
    }

    /// The step at or below where that is still more than the other mass, which is loaded; else exact to the finest step, so
    /// that what may be loaded is never printed as what is.
    pub(super) fn below_but_above(self, mass: Mass, loaded: Option<Mass>) -> Printed {
        if self.nearest {
            let apart =
                loaded.is_none_or(|loaded| loaded >= mass || self.nearest(loaded) != self.nearest(mass));
            return if apart {
                self.nearest(mass)
            } else {
                Step { thousandths: FINEST, ..self }.nearest(mass)
            };
        }
        let printed = mass.nanograms().div_euclid(self.nanograms()).saturating_mul(self.nanograms());
        let told_apart = |loaded: Mass| loaded >= mass || printed > loaded.nanograms();
        if loaded.is_some_and(told_apart) {
            return self.below(mass);
        }
        Step { thousandths: FINEST, ..self }.below(mass)
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
