//! The equations by name: which one is used is visible at the call.

use super::curve::{Curve, answered_reps, positive, positive_maximum};
use super::{chart, classic, cummings_finn, older_adults, reynolds};
use crate::error::{Allowed, Code, Error};
use crate::quantity::{Fraction, Kilograms, Mass, Reps};

/// An equation whose kilograms do not cancel: twice the load is not twice the maximum.
pub(super) struct LoadBound {
    pub(super) highest: f64,
    pub(super) measured: (f64, f64),
    pub(super) one_rm: fn(load: f64, reps: f64) -> Result<f64, Error>,
    pub(super) load: fn(one_rm: f64, reps: f64) -> Result<f64, Error>,
    pub(super) reps: fn(load: f64, one_rm: f64) -> Result<f64, Error>,
}

enum Shape {
    ScaleFree(&'static Curve),
    LoadBound(&'static LoadBound),
}

const CUMMINGS_FINN: LoadBound = LoadBound {
    highest: cummings_finn::HIGHEST,
    measured: cummings_finn::MEASURED,
    one_rm: cummings_finn::one_rm_at,
    load: cummings_finn::load_at,
    reps: cummings_finn::reps_at,
};

macro_rules! equations {
    ($($variant:ident $name:literal $shape:ident($model:expr) $meaning:literal),+ $(,)?) => {
        /// A published relation between load, repetitions to failure and the one-repetition maximum.
        ///
        /// ```
        /// use bismar::one_rm::Equation;
        /// use bismar::quantity::{Mass, Reps};
        ///
        /// let (load, reps) = (Mass::from_kg(80.0)?, Reps::whole(10)?);
        /// let [classic, older] = [Equation::Epley1985, Equation::Kemmler2006].map(|e| e.one_rm(load, reps));
        /// assert!((classic?.value() - 106.67).abs() < 0.01);
        /// assert!((older?.value() - 97.89).abs() < 0.01); // measured on older women: eight percent lower
        /// # Ok::<(), bismar::Error>(())
        /// ```
        #[non_exhaustive]
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        #[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
        #[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
        pub enum Equation {
            $(#[doc = $meaning] #[cfg_attr(feature = "serde", serde(rename = $name))] $variant,)+
        }

        impl Equation {
            /// Every equation of this version.
            pub const ALL: &'static [Equation] = &[$(Equation::$variant,)+];

            /// Its name in the registry, without the module.
            #[must_use]
            pub const fn name(self) -> &'static str {
                match self { $(Equation::$variant => $name,)+ }
            }

            const fn shape(self) -> Shape {
                match self { $(Equation::$variant => Shape::$shape(&$model),)+ }
            }
        }
    };
}

equations! {
    Epley1985 "epley_1985" ScaleFree(classic::EPLEY) "Epley 1985: a coach's chart.",
    Brzycki1993 "brzycki_1993" ScaleFree(classic::BRZYCKI) "Brzycki 1993, form with 36 and 37.",
    Brzycki1993Decimal "brzycki_1993_decimal" ScaleFree(classic::BRZYCKI_DECIMAL) "Brzycki 1993, form with 1.0278.",
    Lander1985 "lander_1985" ScaleFree(classic::LANDER) "Lander 1985: a handbook chart.",
    Lombardi1989 "lombardi_1989" ScaleFree(classic::LOMBARDI) "Lombardi 1989: a power of the repetitions.",
    Mayhew1992 "mayhew_1992" ScaleFree(classic::MAYHEW) "Mayhew et al. 1992: students, bench press, one minute.",
    OConner1989 "oconner_1989" ScaleFree(classic::OCONNER) "O'Conner et al. 1989: a textbook rule.",
    Wathan1994 "wathan_1994" ScaleFree(classic::WATHAN) "Wathan 1994: a refitted chart.",
    Brown1992 "brown_1992" ScaleFree(classic::BROWN) "Brown 1992: a textbook rule.",
    Adams1998 "adams_1998" ScaleFree(classic::ADAMS) "Adams 1998: two percent a repetition.",
    Berger1961 "berger_1961" ScaleFree(classic::BERGER) "Berger 1961: college men, bench press.",
    CummingsFinn1998 "cummings_finn_1998" LoadBound(CUMMINGS_FINN) "Cummings & Finn 1998: untrained college women, bench press.",
    Kemmler2006 "kemmler_2006" ScaleFree(older_adults::KEMMLER_CURVE) "Kemmler et al. 2006: trained women of about 57 years, machines.",
    Osteopenia2024LatPull "osteopenia_2024_lat_pull" ScaleFree(older_adults::LAT_PULL_CURVE) "Trained adults of about 73 years with osteopenia, 2024, lat pull.",
    Osteopenia2024TricepsDip "osteopenia_2024_triceps_dip" ScaleFree(older_adults::TRICEPS_DIP_CURVE) "The same study, triceps dip.",
    Osteopenia2024TrunkFlexion "osteopenia_2024_trunk_flexion" ScaleFree(older_adults::TRUNK_FLEXION_CURVE) "The same study, trunk flexion.",
    Osteopenia2024LegExtension "osteopenia_2024_leg_extension" ScaleFree(older_adults::LEG_EXTENSION_CURVE) "The same study, leg extension.",
    Reynolds2006ChestPress "reynolds_2006_chest_press" ScaleFree(reynolds::CHEST_CURVE) "Reynolds et al. 2006: curve through mean 5, 10 and 20RM, bench press.",
    Reynolds2006LegPress "reynolds_2006_leg_press" ScaleFree(reynolds::LEG_CURVE) "The same study, leg press.",
    PercentChart "percent_chart" ScaleFree(chart::ONE_PAGE_CURVE) "The one-page chart, up to 12 repetitions.",
    TextbookChart "textbook_chart" ScaleFree(chart::TEXTBOOK_CURVE) "The textbook table, up to 15 repetitions.",
}

impl Equation {
    /// The estimate in kg from a load and repetitions to failure.
    ///
    /// # Errors
    /// `load_out_of_domain`, `reps_out_of_domain`.
    pub fn one_rm(self, load: Mass, reps: Reps) -> Result<Kilograms, Error> {
        self.one_rm_at(positive(load)?, reps.value()).and_then(Kilograms::new)
    }

    /// The load in kg for that many repetitions to failure.
    ///
    /// # Errors
    /// `load_out_of_domain`, `reps_out_of_domain`.
    pub fn load(self, one_rm: Kilograms, reps: Reps) -> Result<Kilograms, Error> {
        self.load_at(positive_maximum(one_rm)?, reps.value()).and_then(Kilograms::new)
    }

    /// The repetitions to failure with that load.
    ///
    /// # Errors
    /// `load_out_of_domain`; `percent_out_of_domain` where there is no answer.
    pub fn reps(self, load: Mass, one_rm: Kilograms) -> Result<f64, Error> {
        let (load, one_rm) = (positive(load)?, positive_maximum(one_rm)?);
        match self.shape() {
            Shape::ScaleFree(curve) => answered_reps((curve.reps)(one_rm / load), load / one_rm),
            Shape::LoadBound(bound) => (bound.reps)(load, one_rm),
        }
    }

    /// The part of the maximum that allows this many repetitions to failure.
    ///
    /// # Errors
    /// `reps_out_of_domain`; `not_scale_free` where the part depends on the load.
    pub fn fraction(self, reps: Reps) -> Result<Fraction, Error> {
        Fraction::new(1.0 / self.multiplier_at(reps.value())?)
    }

    /// Whether the part of the maximum depends on the repetitions alone.
    #[must_use]
    pub const fn is_scale_free(self) -> bool {
        matches!(self.shape(), Shape::ScaleFree(_))
    }

    /// The repetitions that were measured, or that the author spoke of; lowest and highest.
    #[must_use]
    pub const fn measured_reps(self) -> (f64, f64) {
        match self.shape() {
            Shape::ScaleFree(curve) => curve.measured,
            Shape::LoadBound(bound) => bound.measured,
        }
    }

    /// The most repetitions at which the equation means anything; above it is an error.
    #[must_use]
    pub const fn highest_reps(self) -> f64 {
        match self.shape() {
            Shape::ScaleFree(curve) => curve.highest,
            Shape::LoadBound(bound) => bound.highest,
        }
    }

    /// Whether that many repetitions were measured.
    #[must_use]
    pub fn was_measured_at(self, reps: f64) -> bool {
        let (low, high) = self.measured_reps();
        low <= reps && reps <= high
    }

    pub(super) fn one_rm_at(self, load: f64, reps: f64) -> Result<f64, Error> {
        match self.shape() {
            Shape::ScaleFree(curve) => Ok(load * curve.at(reps)?),
            Shape::LoadBound(bound) => (bound.one_rm)(load, reps),
        }
    }

    pub(super) fn load_at(self, one_rm: f64, reps: f64) -> Result<f64, Error> {
        match self.shape() {
            Shape::ScaleFree(curve) => Ok(one_rm / curve.at(reps)?),
            Shape::LoadBound(bound) => (bound.load)(one_rm, reps),
        }
    }

    pub(super) fn multiplier_at(self, reps: f64) -> Result<f64, Error> {
        self.scale_free_curve()?.at(reps)
    }

    pub(super) fn reps_at(self, fraction: Fraction) -> Result<f64, Error> {
        self.scale_free_curve()?.reps(fraction)
    }

    fn scale_free_curve(self) -> Result<&'static Curve, Error> {
        match self.shape() {
            Shape::ScaleFree(curve) => Ok(curve),
            Shape::LoadBound(_) => {
                let rule = Allowed::rule("an equation without kilograms in it");
                Err(Error::new(Code::NotScaleFree, "equation", self.name(), rule))
            }
        }
    }
}
