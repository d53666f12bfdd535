//! The load that keeps the volume of a set when its repetitions change.

use crate::error::{Allowed, Code, Error};
use crate::quantity::{Kilograms, Mass, Reps};
use crate::source::{ARITHMETIC, formula, rows};

formula! {
    "dose.same_volume_load",
    /// Which load at other repetitions lifts as much in all?
    ///
    /// # Formula
    /// `w2 = w1 r1 / r2`; loads in kg. It says nothing about whether that load can be lifted so often.
    ///
    /// # Domain
    /// Any load; new repetitions above 0.
    ///
    /// # Errors
    /// `reps_out_of_domain` for no new repetitions.
    ///
    /// # Source
    /// Follows from volume load as load times repetitions.
    ///
    /// # Examples
    /// ```
    /// use bismar::dose::same_volume_load;
    /// use bismar::quantity::{Mass, Reps};
    ///
    /// // 60 kg for 5 is 300 kg in all; so is 37.5 kg for 8.
    /// let load = same_volume_load(Mass::from_kg(60.0)?, Reps::whole(5)?, Reps::whole(8)?)?;
    /// assert_eq!(load.value(), 37.5);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn same_volume_load(load: Mass, reps: Reps, new_reps: Reps) -> Result<Kilograms, Error> {
        if new_reps.value() == 0.0 {
            let allowed = Allowed::rule("repetitions above 0");
            return Err(Error::new(Code::RepsOutOfDomain, "new_reps", 0, allowed));
        }
        Kilograms::new(load.kg() * reps.value() / new_reps.value())
    }
    source: ARITHMETIC, place: "volume load", standing: Derived, seen: NotApplicable,
    domain: "new repetitions above 0",
}

rows![same_volume_load];
