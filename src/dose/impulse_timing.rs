//! After one session: when fatigue has given way to fitness, and when the gain is greatest.

use super::impulse::ImpulseResponse;
use crate::error::{Allowed, Code, Error, Given};
use crate::numeric;
use crate::source::{Source, formula, rows};

const FITZ_CLARKE_1991: Source = Source {
    id: "fitz-clarke-1991",
    citation: "Fitz-Clarke JR, Morton RH, Banister EW. Optimizing athletic performance by influence curves. J Appl Physiol 1991;71:1151-1158",
    doi: None,
};

/// `tau1 tau2 / (tau1 - tau2) * ln(ratio)`, where the ratio is above 1.
fn crossing(response: &ImpulseResponse, ratio: f64) -> Result<f64, Error> {
    let (slow, quick) = (response.times().fitness_days(), response.times().fatigue_days());
    if ratio > 1.0 {
        return numeric::finite("response", slow * quick / (slow - quick) * numeric::ln(ratio));
    }
    let rule = Allowed::rule("a fatigue gain large enough for the curve to turn");
    Err(Error::new(Code::NeverCrosses, "fatigue_gain", Given::Number(response.fatigue_gain()), rule))
}

formula! {
    "dose.days_to_recovery",
    /// How many days after a session is simulated performance back at where it was without it?
    ///
    /// # Formula
    /// `t_n = tau1 tau2 / (tau1 - tau2) * ln(k2 / k1)`. Read backwards: the last day on which training still pays
    /// off by an event.
    ///
    /// # Domain
    /// `k2 > k1`: otherwise the session never costs anything.
    ///
    /// # Errors
    /// `never_crosses` where `k2 <= k1`.
    ///
    /// # Source
    /// Fitz-Clarke, Morton and Banister 1991, recalled; it follows from the response by setting it, or its slope, to 0.
    ///
    /// # Examples
    /// ```
    /// use bismar::dose::{ImpulseResponse, days_to_recovery};
    ///
    /// let response = ImpulseResponse::new(0.0, 1.0, 2.0, 42.0, 7.0)?;
    /// assert!((days_to_recovery(response)? - 5.8224).abs() < 5e-5);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn days_to_recovery(response: ImpulseResponse) -> Result<f64, Error> {
        crossing(&response, response.fatigue_gain() / response.fitness_gain())
    }
    source: FITZ_CLARKE_1991, place: "influence curves", standing: Published, seen: Memory,
}

formula! {
    "dose.days_to_peak",
    /// How many days after a session is its simulated gain greatest?
    ///
    /// # Formula
    /// `t_g = tau1 tau2 / (tau1 - tau2) * ln(k2 tau1 / (k1 tau2))`. It follows recovery by
    /// `tau1 tau2 / (tau1 - tau2) * ln(tau1 / tau2)`, whatever the gains.
    ///
    /// # Domain
    /// `k2 tau1 > k1 tau2`: otherwise the gain is greatest at once.
    ///
    /// # Errors
    /// `never_crosses`.
    ///
    /// # Source
    /// Fitz-Clarke, Morton and Banister 1991, recalled; it follows from the response by setting it, or its slope, to 0.
    ///
    /// # Examples
    /// ```
    /// use bismar::dose::{ImpulseResponse, days_to_peak};
    ///
    /// let response = ImpulseResponse::new(0.0, 1.0, 2.0, 42.0, 7.0)?;
    /// assert!((days_to_peak(response)? - 20.8732).abs() < 5e-5);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn days_to_peak(response: ImpulseResponse) -> Result<f64, Error> {
        let times = response.times();
        let gains = response.fatigue_gain() / response.fitness_gain();
        crossing(&response, gains * times.fitness_days() / times.fatigue_days())
    }
    source: FITZ_CLARKE_1991, place: "influence curves", standing: Published, seen: Memory,
}

formula! {
    "dose.peak_gain",
    /// How much simulated performance does one unit of load bring at its best?
    ///
    /// # Formula
    /// `k1 e^(-t/tau1) - k2 e^(-t/tau2)` at `t = t_g`.
    ///
    /// # Domain
    /// As [`days_to_peak`].
    ///
    /// # Errors
    /// `never_crosses`.
    ///
    /// # Source
    /// Fitz-Clarke, Morton and Banister 1991, recalled; it follows from the response by setting it, or its slope, to 0.
    ///
    /// # Examples
    /// ```
    /// use bismar::dose::{ImpulseResponse, peak_gain};
    ///
    /// let response = ImpulseResponse::new(0.0, 1.0, 2.0, 42.0, 7.0)?;
    /// assert!((peak_gain(response)? - 0.506970).abs() < 5e-7);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn peak_gain(response: ImpulseResponse) -> Result<f64, Error> {
        let (days, times) = (days_to_peak(response)?, response.times());
        let fitness = response.fitness_gain() * numeric::exp(-days / times.fitness_days());
        let fatigue = response.fatigue_gain() * numeric::exp(-days / times.fatigue_days());
        numeric::finite("response", fitness - fatigue)
    }
    source: FITZ_CLARKE_1991, place: "influence curves", standing: Published, seen: Memory,
}

rows![days_to_recovery, days_to_peak, peak_gain];
