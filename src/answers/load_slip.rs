//! Does this one load look mistyped?

use super::oddity::Slip;
use crate::loading::unit_slip;
use crate::numeric;
use crate::quantity::Mass;

/// A ratio this near to 10 or a tenth looks like a decimal point one place off.
const DECIMAL_WITHIN: f64 = 0.03;

/// How a load may have been mistyped beside the one that was expected; nothing where it does not look like a slip.
///
/// The number of the other unit (see [`unit_slip`]), or a decimal point one place off: within 3 % of ten times or a tenth
/// (our choice). Of a lift that is helped, by the help. [`review`](super::review()) looks at every load of a log so; before a set is saved it is
/// asked here. To be asked about, never corrected in silence.
///
/// ```
/// use bismar::answers::{Slip, load_slip};
/// use bismar::quantity::Mass;
///
/// let expected = Mass::from_kg(47.5)?;
/// assert_eq!(load_slip(expected, Mass::from_kg(105.0)?), Some(Slip::PoundsAsKilograms));
/// assert_eq!(load_slip(expected, Mass::from_kg(475.0)?), Some(Slip::DecimalPoint));
/// assert_eq!(load_slip(expected, Mass::from_kg(50.0)?), None);
/// # Ok::<(), bismar::Error>(())
/// ```
#[must_use]
pub fn load_slip(expected: Mass, now: Mass) -> Option<Slip> {
    // Help is negative on both sides, or the two cannot be held against each other.
    let size = |load: Mass| Mass::from_nanograms(load.nanograms().abs());
    if (expected.nanograms() < 0) != (now.nanograms() < 0) {
        return None;
    }
    let (expected, now) = (size(expected)?, size(now)?);
    let unit = unit_slip(expected, now).ok()?;
    let ratio = now.kg() / expected.kg();
    let near = |wanted: f64| numeric::fabs(ratio / wanted - 1.0) <= DECIMAL_WITHIN;
    unit.map(Slip::from).or_else(|| (near(10.0) || near(0.1)).then_some(Slip::DecimalPoint))
}
