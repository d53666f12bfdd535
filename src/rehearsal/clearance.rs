//! A clearance against the start of each lift.

use alloc::vec::Vec;

use super::finding::{Finding, Found};
use crate::error::Error;
use crate::record::{Clearance, ClearanceStatus, LiftParameters, Parameters};
use crate::source::{ARITHMETIC, formula, rows};

formula! {
    "rehearsal.check_clearance",
    /// Does what this clearance allows reach the start loads?
    ///
    /// # Domain
    /// Limits of load only; a limit on effort, range or breathing is kept by the decisions themselves.
    ///
    /// # Errors
    /// What a log says of the clearance: `empty_list`, `missing_field`, `too_many` and `unknown_region` for its limits.
    ///
    /// # Source
    /// Arithmetic over the rules in force (row `rehearsal.check_clearance`).
    ///
    /// # Examples
    /// ```
    /// # use bismar::{gate::*, loading::*, quantity::*, record::*};
    /// # let parameters = Parameters::new(vec![], vec![], vec![], Stock::default());
    /// use bismar::rehearsal::check_clearance;
    ///
    /// let status = ClearanceStatus::NotCleared;
    /// let clearance = Clearance::new(status, Name::new("clinic")?);
    /// assert_eq!(check_clearance(&parameters, &clearance)?[0].code(), "not_cleared");
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn check_clearance(parameters: &Parameters, clearance: &Clearance) -> Result<Vec<Finding>, Error> {
        refused(parameters, clearance)?;
        if clearance.status == ClearanceStatus::NotCleared {
            return Ok(Vec::from([Finding::whole(Found::NotCleared)]));
        }
        Ok(parameters.lifts.iter().filter_map(|lift| below_start(lift, clearance)).collect())
    }
    source: ARITHMETIC, place: "the rules in force", standing: Derived, seen: NotApplicable,
    domain: "limits of load",
}

/// As the log refuses it.
fn refused(parameters: &Parameters, clearance: &Clearance) -> Result<(), Error> {
    clearance.check()?;
    for (at, limit) in clearance.limits.iter().enumerate() {
        let known = limit.region.as_ref().map_or(Ok(()), |region| parameters.check_region("region", region));
        known.map_err(|error| error.within(&alloc::format!("limits[{at}]")))?;
    }
    Ok(())
}

fn below_start(lift: &LiftParameters, clearance: &Clearance) -> Option<Finding> {
    let here = clearance
        .limits
        .iter()
        .filter(|limit| limit.region.as_ref().is_none_or(|region| lift.regions.contains(region)));
    let (limit, start) = (here.filter_map(|limit| limit.load).min()?, lift.start.load());
    (limit < start).then(|| Finding::about(&lift.id, Found::ClearanceBelowStart { limit, start }))
}

rows![check_clearance];
