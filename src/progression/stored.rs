//! A state that comes from outside: whether this library may go on from it.

use alloc::format;

use super::fold::{LIBRARY_VERSION, digest};
use super::state::{SITTINGS, State};
use crate::error::{Allowed, Code, Error};
use crate::record::{MOST_LIMITS, Parameters, at_most};

impl State {
    /// Checks what the types alone cannot: a stored state may be newer than this library, or altered. Applying an
    /// event and deciding look by themselves at a state that has been read.
    ///
    /// # Errors
    /// `newer_version` and `wrong_format` for the version; `parameters_altered` where the digest is not that of
    /// the parameters, for a state of this version; `out_of_range` where lifts and parameters do not fit together;
    /// `too_many` limits or sessions; what [`Parameters::check`] and
    /// [`TrackParameters::check_tuple`](crate::record::TrackParameters::check_tuple) report.
    pub fn check(&self) -> Result<(), Error> {
        self.check_version()?;
        let lifts = self.parameters.as_deref().map_or(0, |parameters| parameters.tracks.len());
        if self.tracks.len() != lifts {
            let count = lifts as f64;
            return Err(Error::range(Code::OutOfRange, "tracks", self.tracks.len(), count, count, "lifts"));
        }
        let limits = self.clearance.as_ref().map_or(0, |clearance| clearance.limits.len());
        at_most("limits", limits, MOST_LIMITS).map_err(|error| error.within("clearance"))?;
        match self.parameters.as_deref() {
            Some(parameters) => self.check_parameters(parameters),
            None => Ok(()),
        }
    }

    /// The whole check for a state that has been read, which shows in that nothing was prepared for it yet.
    pub(crate) fn check_if_read(&self) -> Result<(), Error> {
        let made_here = self.parameters.is_some() && self.loadables.len() == self.tracks.len();
        if made_here { self.check_version() } else { self.check() }
    }

    fn check_version(&self) -> Result<(), Error> {
        let rule = |text| Allowed::rule(text);
        match (numbers(&self.version), numbers(LIBRARY_VERSION)) {
            _ if self.version == LIBRARY_VERSION => Ok(()),
            (Some(made), Some(own)) if made <= own => Ok(()),
            (Some(_), _) => {
                Err(Error::new(Code::NewerVersion, "version", self.version.as_str(), rule(LIBRARY_VERSION)))
            }
            (None, _) => {
                Err(Error::new(Code::WrongFormat, "version", self.version.as_str(), rule("like 0.1.0")))
            }
        }
    }

    fn check_parameters(&self, parameters: &Parameters) -> Result<(), Error> {
        parameters.check().map_err(|error| error.within("parameters"))?;
        // An older version may not have known every number, so its digest cannot be made again.
        if self.version == LIBRARY_VERSION && digest(parameters) != self.digest {
            let rule = Allowed::rule("the digest of the parameters");
            return Err(Error::new(Code::ParametersAltered, "digest", self.digest.as_str(), rule));
        }
        for (at, (set, track)) in parameters.tracks.iter().zip(&self.tracks).enumerate() {
            let inside = |error: Error| error.within(&format!("tracks[{at}]"));
            set.check_tuple(&track.tuple).map_err(|error| inside(error.within("tuple")))?;
            at_most("sittings", track.sittings.len(), SITTINGS).map_err(inside)?;
        }
        Ok(())
    }
}

/// The three numbers of a version.
fn numbers(version: &str) -> Option<(u32, u32, u32)> {
    let mut parts = version.split('.').map(|part| part.parse::<u32>().ok());
    let three = (parts.next()??, parts.next()??, parts.next()??);
    parts.next().is_none().then_some(three)
}
