//! Heights that nothing reaches: the start of a lift from the floor, range by range.

use alloc::vec::Vec;

use super::finding::{Finding, Found};
use crate::progression::Loadable;
use crate::record::{LiftParameters, Parameters, Place, StartsFrom};

pub(super) fn look(parameters: &Parameters, set: &LiftParameters, findings: &mut Vec<Finding>) {
    if set.starts_from != StartsFrom::Floor {
        return;
    }
    let Ok(loadable) = Loadable::of(set, parameters, None) else { return };
    for (range, height) in (0..=u8::MAX).zip(&set.ranges) {
        let place = Place { range, ..set.start.place };
        if loadable.at(place).lightest().is_none() {
            continue;
        }
        match loadable.off_by_mm(place) {
            // The discs are the same at every height: once is enough.
            None => return findings.push(Finding::about(&set.id, Found::HeightUnknown)),
            Some(mm) if mm.abs() > 0.0 => {
                findings.push(Finding::about(&set.id, Found::HeightOff { height: *height, mm }));
            }
            Some(_) => {}
        }
    }
}
