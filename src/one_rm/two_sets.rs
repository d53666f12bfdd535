//! The lifter's own straight line through two sets to failure.

use super::curve::{answered_reps, positive};
use crate::error::{Allowed, Code, Error};
use crate::quantity::{Kilograms, Mass, Reps};
use crate::source::{Source, formula, rows};

const BRZYCKI_2000: Source = Source {
    id: "brzycki-2000",
    citation: "Brzycki M. Assessing strength. Fitness Management 2000;16(7):34-37",
    doi: None,
};

/// Most repetitions of either set, the load at one repetition being far away from longer ones.
const HIGHEST: f64 = 10.0;

/// Load falling with repetitions, from the heavier set on.
struct Line {
    heavy: f64,
    heavy_reps: f64,
    /// Kilograms lost with each repetition; above 0.
    step: f64,
}

impl Line {
    fn through(heavier: Mass, fewer_reps: Reps, lighter: Mass, more_reps: Reps) -> Result<Line, Error> {
        let (heavy, light) = (positive(heavier)?, positive(lighter).map_err(|error| error.named("lighter"))?);
        let (few, many) = (fewer_reps.value(), more_reps.value());
        if few < 1.0 || many > HIGHEST || many <= few {
            let rule = Allowed::rule("1 <= fewer_reps < more_reps <= 10");
            return Err(Error::new(Code::RepsOutOfDomain, "more_reps", many, rule));
        }
        if heavy <= light {
            let rule = Allowed::rule("the set of fewer repetitions is the heavier one");
            return Err(Error::new(Code::LoadOutOfDomain, "heavier", heavy, rule));
        }
        Ok(Line { heavy, heavy_reps: few, step: (heavy - light) / (many - few) })
    }

    fn load(&self, reps: f64) -> f64 {
        self.heavy - self.step * (reps - self.heavy_reps)
    }
}

formula! {
    "one_rm.brzycki_2000",
    /// What could be lifted once, from two sets to failure of the same lifter?
    ///
    /// # Formula
    /// `E = w1 + (w1 - w2) / (r2 - r1) (r1 - 1)`; `w1` the heavier load with `r1` repetitions, `w2` the lighter with
    /// `r2`, loads in kg. A set of one repetition gives its load.
    ///
    /// # Domain
    /// Both sets to failure, up to 10 repetitions: the line is straight, the lifter is not.
    ///
    /// # Errors
    /// `reps_out_of_domain` unless `1 <= r1 < r2 <= 10`; `load_out_of_domain` unless `w1 > w2 > 0`.
    ///
    /// # Source
    /// Brzycki 2000 (row `one_rm.brzycki_2000`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::brzycki_2000;
    /// use bismar::quantity::{Mass, Reps};
    ///
    /// let (heavier, lighter) = (Mass::from_kg(90.0)?, Mass::from_kg(80.0)?);
    /// let estimate = brzycki_2000(heavier, Reps::whole(4)?, lighter, Reps::whole(9)?)?;
    /// assert_eq!(estimate.value(), 96.0);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn brzycki_2000(heavier: Mass, fewer_reps: Reps, lighter: Mass, more_reps: Reps) -> Result<Kilograms, Error> {
        Kilograms::new(Line::through(heavier, fewer_reps, lighter, more_reps)?.load(1.0))
    }
    source: BRZYCKI_2000, place: "p 34-37", standing: Published, seen: Secondary,
    copies: "one public code file",
    population: "the lifter's own two sets", domain: "two sets to failure of up to 10 repetitions",
}

formula! {
    "one_rm.brzycki_2000_load",
    /// What load would be lifted this often to failure, by the line through two sets?
    ///
    /// # Formula
    /// `w = w1 - (w1 - w2) / (r2 - r1) (r - r1)`.
    ///
    /// # Domain
    /// As [`brzycki_2000`], from 1 to 10 repetitions.
    ///
    /// # Errors
    /// As [`brzycki_2000`]; `reps_out_of_domain` outside 1 to 10; `load_out_of_domain` where the line has run out of
    /// load.
    ///
    /// # Source
    /// Brzycki 2000, the same line (row `one_rm.brzycki_2000_load`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::brzycki_2000_load;
    /// use bismar::quantity::{Mass, Reps};
    ///
    /// let (heavier, lighter) = (Mass::from_kg(90.0)?, Mass::from_kg(80.0)?);
    /// let load = brzycki_2000_load(heavier, Reps::whole(4)?, lighter, Reps::whole(9)?, Reps::whole(6)?)?;
    /// assert_eq!(load.value(), 86.0);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn brzycki_2000_load(
        heavier: Mass, fewer_reps: Reps, lighter: Mass, more_reps: Reps, reps: Reps
    ) -> Result<Kilograms, Error> {
        let line = Line::through(heavier, fewer_reps, lighter, more_reps)?;
        let reps = crate::numeric::within(Code::RepsOutOfDomain, "reps", reps.value(), 1.0, HIGHEST, "")?;
        let load = line.load(reps);
        if load > 0.0 {
            Kilograms::new(load)
        } else {
            Err(Error::new(Code::LoadOutOfDomain, "load", load, Allowed::rule("a load above 0 kg on the line")))
        }
    }
    source: BRZYCKI_2000, place: "p 34-37", standing: Published, seen: Secondary,
    copies: "one public code file",
    population: "the lifter's own two sets", domain: "1 to 10 repetitions",
}

formula! {
    "one_rm.brzycki_2000_reps",
    /// How many repetitions to failure does a load allow, by the line through two sets?
    ///
    /// # Formula
    /// `r = r1 + (w1 - w) (r2 - r1) / (w1 - w2)`.
    ///
    /// # Domain
    /// As [`brzycki_2000`]; answers above 10 repetitions lie outside it and are given up to 200.
    ///
    /// # Errors
    /// As [`brzycki_2000`]; `percent_out_of_domain` where there is no answer from 1 to 200 repetitions.
    ///
    /// # Source
    /// Brzycki 2000, the same line (row `one_rm.brzycki_2000_reps`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::brzycki_2000_reps;
    /// use bismar::quantity::{Mass, Reps};
    ///
    /// let (heavier, lighter) = (Mass::from_kg(90.0)?, Mass::from_kg(80.0)?);
    /// let reps = brzycki_2000_reps(heavier, Reps::whole(4)?, lighter, Reps::whole(9)?, Mass::from_kg(86.0)?)?;
    /// assert_eq!(reps, 6.0);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn brzycki_2000_reps(
        heavier: Mass, fewer_reps: Reps, lighter: Mass, more_reps: Reps, load: Mass
    ) -> Result<f64, Error> {
        let line = Line::through(heavier, fewer_reps, lighter, more_reps)?;
        let load = positive(load)?;
        answered_reps(line.heavy_reps + (line.heavy - load) / line.step, load / line.load(1.0))
    }
    source: BRZYCKI_2000, place: "p 34-37", standing: Published, seen: Secondary,
    copies: "one public code file",
    population: "the lifter's own two sets", domain: "where the answer lies from 1 to 200 repetitions",
}

rows![brzycki_2000, brzycki_2000_load, brzycki_2000_reps];
