//! What a stored state may hold: lists no longer than the fold makes them, each thing once, and no lift at work that a
//! stop in force halts.

use super::away::MOST_LAYOFFS;
use super::lift::Lift;
use super::region::{LAST_SCORES, RegionState};
use super::set_aside::{MOST_LAID_BY, MOST_SET_ASIDE};
use super::shared::{MOST_MASSES, MOST_SESSIONS, Shared};
use super::sitting::SITTINGS;
use super::state::State;
use super::stop::is_halted;
use crate::error::{Allowed, Code, Error};
use crate::quantity::Name;
use crate::record::{MOST_KIT, MOST_LIMITS, at_most};
use crate::sign::{Ask, StopSign};

/// The most regions of one lifter, declared now or earlier.
pub(crate) const MOST_REGIONS: usize = 96;
/// The most moves kept: one a day over the longest window that any rules may have.
const MOST_MOVES: usize = 366;

impl State {
    /// Refuses what no fold would have made.
    ///
    /// # Errors
    /// `too_many`, `duplicate_name`, `out_of_range`, `unknown_region`, and what the lifter's own check reports.
    pub(super) fn check_bounds(&self) -> Result<(), Error> {
        self.shared.check(self.last).map_err(|error| error.within("shared"))?;
        at_most("set_aside", self.set_aside.len(), MOST_SET_ASIDE)?;
        let laid_by = self.shared.laid_by.iter().map(|kept| kept.id.as_str());
        let known = self.set_aside.iter().chain(&self.lifts).map(|lift| lift.set.id.as_str());
        each_once("set_aside", known.chain(laid_by))?;
        self.check_regions()?;
        for (list, lifts) in [("lifts", &self.lifts), ("set_aside", &self.set_aside)] {
            for (at, lift) in lifts.iter().enumerate() {
                let checked = lift.check().and_then(|()| self.check_halted(lift));
                checked.map_err(|error| error.within(&alloc::format!("{list}[{at}]")))?;
            }
        }
        for (at, lift) in self.lifts.iter().enumerate() {
            self.check_at_work(lift).map_err(|error| error.within(&alloc::format!("lifts[{at}]")))?;
        }
        self.check_possible()
    }

    /// A stop in force holds every lift that it concerns.
    fn check_halted(&self, lift: &Lift) -> Result<(), Error> {
        let status = &lift.now.status;
        let halted = self.parameters().is_some_and(|all| is_halted(lift, &self.shared, all));
        if halted && !status.is_stopped() {
            let rule = Allowed::rule("stopped, as long as a stop is in force");
            return Err(Error::new(Code::OutOfRange, "status", status.as_str(), rule));
        }
        Ok(())
    }

    /// A lift under the parameters in force stands stopped for a stop in force only, and at a load that its implement has; one
    /// that is set aside is looked at when it is taken back.
    fn check_at_work(&self, lift: &Lift) -> Result<(), Error> {
        let Some(all) = self.parameters() else { return Ok(()) };
        all.check_load(&lift.set, lift.now.grant.load())
            .map_err(|error| error.within("work").within("grant"))?;
        if lift.now.status.is_stopped() && !is_halted(lift, &self.shared, all) {
            let rule = Allowed::rule("not stopped without a stop in force");
            return Err(Error::new(Code::OutOfRange, "status", lift.now.status.as_str(), rule));
        }
        Ok(())
    }

    /// Of every region that the parameters declare or a clearance limits something is known, be it that nothing was said; and of
    /// those that a lift loads, that one does.
    fn check_regions(&self) -> Result<(), Error> {
        let unknown = |field, id: &str, rule| {
            let error = Error::new(Code::UnknownRegion, field, id, Allowed::rule(rule));
            Err(error.within("shared"))
        };
        let shared = &self.shared;
        let mut declared = self.parameters().into_iter().flat_map(|all| &all.regions);
        if let Some(region) = declared.find(|region| shared.region(&region.id).is_none()) {
            return unknown("regions", region.id.as_str(), "every region that the parameters declare");
        }
        let mut limited = shared.limits().iter().filter_map(|limit| limit.region.as_ref());
        if let Some(id) = limited.find(|id| shared.region(id).is_none()) {
            return unknown("clearance.limits", id.as_str(), "a region that was declared");
        }
        let mut loaded = self.lifts.iter().flat_map(|lift| &lift.set.regions);
        let is_marked = |id: &&Name| shared.region(id).is_some_and(|region| region.lifted);
        match loaded.find(|id| !is_marked(id)) {
            Some(id) => {
                let rule = Allowed::rule("lifted where a lift loads it");
                Err(Error::new(Code::OutOfRange, "regions", id.as_str(), rule).within("shared"))
            }
            None => Ok(()),
        }
    }
}

impl Shared {
    fn check(&self, last: Option<(crate::quantity::Day, u32)>) -> Result<(), Error> {
        self.lifter.check()?;
        if let Some((day, _)) = last {
            self.lifter.check_born_by(day)?;
        }
        at_most("limits", self.limits().len(), MOST_LIMITS).map_err(|error| error.within("clearance"))?;
        at_most("asks", self.asks.len(), Ask::ALL.len())?;
        each_once("asks", self.asks.iter().map(|open| open.ask.as_str()))?;
        at_most("laid_by", self.laid_by.len(), MOST_LAID_BY)?;
        for (at, kept) in self.laid_by.iter().enumerate() {
            let inside = |error: Error| error.within(&alloc::format!("laid_by[{at}]"));
            at_most("regions", kept.regions.len(), MOST_REGIONS).map_err(inside)?;
            each_once("regions", kept.regions.iter().map(Name::as_str)).map_err(inside)?;
        }
        at_most("sessions", self.sessions.len(), MOST_SESSIONS)?;
        at_most("body_masses", self.body_masses.len(), MOST_MASSES)?;
        at_most("layoffs", self.layoffs.len(), MOST_LAYOFFS)?;
        at_most("ill_ahead", self.ill_ahead.len(), MOST_LAYOFFS)?;
        at_most("regions", self.regions.len(), MOST_REGIONS)?;
        each_once("regions", self.regions.iter().map(|region| region.id.as_str()))?;
        for (at, region) in self.regions.iter().enumerate() {
            region.check().map_err(|error| error.within(&alloc::format!("regions[{at}]")))?;
        }
        let signs = self.stop.as_ref().map_or(0, |stop| stop.signs.len());
        at_most("signs", signs, StopSign::ALL.len()).map_err(|error| error.within("stop"))
    }
}

impl RegionState {
    fn check(&self) -> Result<(), Error> {
        at_most("scores", self.scores.len(), LAST_SCORES)?;
        at_most("moves", self.moves.len(), MOST_MOVES)?;
        let signs = self.stop.as_ref().map_or(0, |stop| stop.signs.len());
        at_most("signs", signs, 0).map_err(|error| error.within("stop"))
    }
}

impl Lift {
    fn check(&self) -> Result<(), Error> {
        let now = &self.now;
        self.set.check_grant(&now.grant).map_err(|error| error.within("grant"))?;
        at_most("sittings", now.sittings.len(), SITTINGS)?;
        at_most("moves", now.moves.len(), MOST_MOVES)?;
        at_most("former", now.former.len(), MOST_REGIONS)?;
        each_once("former", now.former.iter().map(crate::quantity::Name::as_str))?;
        let kit = now.setup.as_ref().and_then(|seen| seen.kit.as_ref());
        at_most("kit", kit.map_or(0, alloc::vec::Vec::len), MOST_KIT).map_err(|error| error.within("setup"))
    }
}

fn each_once<'a>(field: &'static str, names: impl Iterator<Item = &'a str> + Clone) -> Result<(), Error> {
    for (at, name) in names.clone().enumerate() {
        if names.clone().take(at).any(|earlier| earlier == name) {
            return Err(Error::new(Code::DuplicateName, field, name, Allowed::rule("each once")));
        }
    }
    Ok(())
}
