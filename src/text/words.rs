//! What sentences are made with: the unit, and the names that people use.

use alloc::string::{String, ToString};

use super::mass::{Printed, Step};
use super::phrases::Translation;
use crate::quantity::{Mass, Name, Unit};
use crate::record::{LiftParameters, Pair, Parameters};

/// The unit of loads, and the names for people: what every sentence is made with.
///
/// Without parameters ids stand for names, and places are counted.
///
/// ```
/// use bismar::quantity::{Mass, Unit};
/// use bismar::text::Words;
///
/// let words = Words::plain();
/// assert_eq!(words.mass(Mass::from_kg(62.5)?), "62.5 kg");
/// assert_eq!(words.mass(Mass::from_kg(-25.0)?), "25 kg of help");
/// assert_eq!(words.in_unit(Unit::Lb).mass(Mass::from_lb(137.5)?), "137.5 lb");
/// # Ok::<(), bismar::Error>(())
/// ```
#[derive(Clone, Copy, Debug)]
pub struct Words<'a> {
    parameters: Option<&'a Parameters>,
    step: Step,
    /// The host chose the unit, for every implement.
    chosen: bool,
    translation: Option<&'a Translation>,
}

impl<'a> Words<'a> {
    /// Kilograms, and ids.
    #[must_use]
    pub fn plain() -> Words<'a> {
        Words { parameters: None, step: Step::of(Unit::Kg, None), chosen: false, translation: None }
    }

    /// The names of these parameters, in the unit that most kinds of their discs are marked in; kilograms where neither
    /// is more. A load on a stack or on pieces is told in the unit of most of its own plates or pieces.
    #[must_use]
    pub fn of(parameters: &'a Parameters) -> Words<'a> {
        let discs = parameters.stock.discs();
        let pounds = discs.iter().filter(|disc| disc.unit() == Unit::Lb).count();
        let unit = if 2 * pounds > discs.len() { Unit::Lb } else { Unit::Kg };
        Words {
            parameters: Some(parameters),
            step: Step::of(unit, Some(&parameters.stock)),
            chosen: false,
            translation: None,
        }
    }

    /// The same words with loads in that unit, whatever they are loaded on.
    #[must_use]
    pub fn in_unit(self, unit: Unit) -> Words<'a> {
        Words { step: Step::of(unit, self.parameters.map(|all| &all.stock)), chosen: true, ..self }
    }

    /// The same words with every load at the nearest hundredth of a kilogram or tenth of a pound, whatever the discs: for a
    /// host that shows loads so beside the sentences, so that one load is printed in one way. What is not to be passed is
    /// printed as it is where that is whole in thousandths, else rounded down; what is to be kept at the least, up.
    ///
    /// ```
    /// use bismar::quantity::{Mass, Unit};
    /// use bismar::text::Words;
    ///
    /// let words = Words::plain().in_unit(Unit::Kg);
    /// assert_eq!(words.mass(Mass::from_kg(44.536)?), "44.5 kg");
    /// assert_eq!(words.finely().mass(Mass::from_kg(44.536)?), "44.54 kg");
    /// assert_eq!(words.finely().at_most(Mass::from_kg(44.536)?), "44.536 kg");
    /// let pounds = words.in_unit(Unit::Lb).finely();
    /// assert_eq!(pounds.mass(Mass::from_kg(7.03)?), "15.5 lb");
    /// assert_eq!(pounds.at_most(Mass::from_kg(7.03)?), "15.4 lb");
    /// # Ok::<(), bismar::Error>(())
    /// ```
    #[must_use]
    pub fn finely(self) -> Words<'a> {
        Words { step: Step::fine(self.unit()), chosen: true, ..self }
    }

    /// The same words for the loads of one lift: in the unit of its implement, where that has one of its own and the host has
    /// chosen none.
    pub(super) fn for_lift(&self, lift: &Name) -> Words<'a> {
        let own = || {
            let set = self.lift(lift)?;
            self.parameters?.implement(&set.implement)?.own_unit()
        };
        match own().filter(|unit| !self.chosen && *unit != self.unit()) {
            Some(unit) => Words { step: Step::of(unit, None), ..*self },
            None => *self,
        }
    }

    /// A cap, rounded down and yet above what is loaded, where it is above it.
    pub(super) fn cap(&self, cap: Mass, loaded: Option<Mass>) -> String {
        self.printed(self.step.below_but_above(cap, loaded))
    }

    fn printed(&self, mass: Printed) -> String {
        if mass.help { self.say("mass.help", &[("mass", mass.said)]) } else { mass.said }
    }

    /// A load that is not to be passed, as a person wrote it; in another unit rounded down.
    pub(super) fn written(&self, load: Mass) -> String {
        self.printed(self.step.written(load))
    }

    /// The same words with the phrases of a translation.
    #[must_use]
    pub const fn translated(self, translation: &'a Translation) -> Words<'a> {
        Words { translation: Some(translation), ..self }
    }

    /// The phrases that stand in the place of the English ones.
    pub(super) const fn translation(&self) -> Option<&'a Translation> {
        self.translation
    }

    /// The unit of loads.
    #[must_use]
    pub const fn unit(&self) -> Unit {
        self.step.unit()
    }

    /// A load as a coach says it: `62.5 kg`, `25 kg of help`.
    ///
    /// Printed in steps of 0.25 kg or 0.5 lb, or finer: the coarsest of 0.25 (0.5 lb), 0.1, 0.05, 0.025, 0.01 and
    /// 0.005 that is at most the lightest disc in the stock, half of what a pair of it changes, and goes evenly into every
    /// disc marked in the unit (our choice). No step is coarser than the 0.25 kg within which a load counts as the one written.
    #[must_use]
    pub fn mass(&self, mass: Mass) -> String {
        self.printed(self.step.nearest(mass))
    }

    /// A load that is not to be passed, rounded down: what is printed is never above it.
    #[must_use]
    pub fn at_most(&self, mass: Mass) -> String {
        self.printed(self.step.below(mass))
    }

    /// A load that is to be kept, rounded up: what is printed is never below it.
    pub(super) fn at_least(&self, mass: Mass) -> String {
        self.printed(self.step.above(mass))
    }

    /// The name of a lift.
    #[must_use]
    pub fn lift_name<'b>(&self, id: &'b Name) -> &'b str
    where
        'a: 'b,
    {
        self.lift(id).map_or(id, LiftParameters::label).as_str()
    }

    /// The name of a region.
    #[must_use]
    pub fn region_name<'b>(&self, id: &'b Name) -> &'b str
    where
        'a: 'b,
    {
        let region = self.parameters.and_then(|all| all.region(id));
        region.map_or(id, |region| region.label()).as_str()
    }

    /// The name of a rung of a lift; counted from 1 where the lift is not known.
    #[must_use]
    pub fn rung_name(&self, lift: &Name, rung: u8) -> String {
        let rungs = self.lift(lift).map(|lift| lift.rungs.as_slice()).unwrap_or_default();
        match rungs.get(usize::from(rung)) {
            Some(rung) => rung.label().as_str().into(),
            None => self.say("place.rung", &[("number", (u16::from(rung) + 1).to_string())]),
        }
    }

    /// The parameters that the names are from.
    #[must_use]
    pub const fn parameters(&self) -> Option<&'a Parameters> {
        self.parameters
    }

    /// What was set for a lift.
    pub(super) fn lift(&self, id: &Name) -> Option<&'a LiftParameters> {
        self.parameters.and_then(|all| all.lift(id))
    }

    /// The pair that a lift belongs to.
    pub(super) fn pair(&self, lift: &Name) -> Option<&'a Pair> {
        self.parameters.and_then(|all| all.pair_of(lift))
    }
}
