//! Working out every total of an implement.

use alloc::vec::Vec;

use super::bar::Bar;
use super::disc::{Disc, Stock};
use super::implement::{Implement, MachineStack};
use super::loaded::Setting;
use super::prepared::Prepared;
use super::table::{Counts, Entry, Limits, Line, all_sums};
use crate::error::{Allowed, Code, Error};
use crate::quantity::{Length, Mass};

/// How far beyond the highest target the table must reach, in heaviest discs: the next load above a target
/// needs one (taking any disc off the lightest load above it leads below it), the one after that two.
pub(super) const MARGIN_IN_DISCS: i64 = 2;

/// Every total of the implement up to `highest`, and so many heaviest discs further.
pub(super) fn prepare(
    implement: &Implement,
    stock: &Stock,
    highest: Mass,
    margin: i64,
) -> Result<Prepared, Error> {
    let ends = match implement {
        Implement::Bar(bar) => Ends::of_bar(bar)?,
        Implement::Handle(handle) => {
            Ends { base: handle.empty()?, ends: 2, alike: handle.ends(), room: handle.sleeve() }
        }
        Implement::Pin(pin) => Ends { base: pin.empty()?, ends: 1, alike: 1, room: pin.room() },
        Implement::Pieces(pieces) => {
            let settings = pieces.masses().iter().map(|mass| (Setting::Piece(*mass), *mass));
            return Ok(listed(settings.collect()));
        }
        Implement::Machine(stack) => return Ok(listed(selected(stack, 1)?)),
        Implement::Assistance(stack) => return Ok(listed(selected(stack, -1)?)),
    };
    ends.prepare(stock, highest, margin, |_| false)
}

/// The same of a bar with at least one of the discs that `needed` names on each end.
pub(super) fn prepare_with(
    bar: &Bar,
    stock: &Stock,
    highest: Mass,
    margin: i64,
    needed: impl Fn(&Disc) -> bool,
) -> Result<Prepared, Error> {
    Ends::of_bar(bar)?.prepare(stock, highest, margin, needed)
}

/// A list of settings with their loads; of equal loads the first named is kept.
fn listed(mut settings: Vec<(Setting, Mass)>) -> Prepared {
    crate::numeric::sort::sort_by_key(&mut settings, |(_, load)| *load);
    settings.dedup_by_key(|(_, load)| *load);
    let entry = |(index, (_, load)): (usize, &(Setting, Mass))| Entry {
        sum: load.nanograms(),
        counts: Counts::index(index),
        ..Entry::default()
    };
    Prepared {
        base: 0,
        ends: 1,
        table: settings.iter().enumerate().map(entry).collect(),
        lines: Vec::new(),
        discs: Vec::new(),
        settings: settings.into_iter().map(|(setting, _)| setting).collect(),
        room: None,
        highest: Mass::MAX,
    }
}

/// What carries discs: its own mass, how many ends one load has, how many ends are loaded alike.
struct Ends {
    base: Mass,
    ends: i64,
    alike: u16,
    room: Option<Length>,
}

impl Ends {
    fn of_bar(bar: &Bar) -> Result<Ends, Error> {
        Ok(Ends { base: bar.empty()?, ends: 2, alike: 2, room: bar.sleeve() })
    }

    fn prepare(
        &self,
        stock: &Stock,
        highest: Mass,
        margin: i64,
        needed: impl Fn(&Disc) -> bool,
    ) -> Result<Prepared, Error> {
        let mut lines = self.lines(stock);
        let is_needed = |line: &Line| stock.discs().get(line.kind).is_some_and(&needed);
        // The sort is stable: heaviest first within both parts.
        crate::numeric::sort::sort_by_key(&mut lines, |line| !is_needed(line));
        let needed = lines.iter().filter(|line| is_needed(line)).count();
        let heaviest = lines.iter().map(|line| line.mass).max().unwrap_or(0);
        let per_end = highest.nanograms().saturating_sub(self.base.nanograms()).div_euclid(self.ends);
        let limits = Limits {
            highest: per_end.max(0).saturating_add(heaviest.saturating_mul(margin)),
            room: self.room.map_or(i32::MAX, Length::micrometres),
        };
        Ok(Prepared {
            base: self.base.nanograms(),
            ends: self.ends,
            table: all_sums(&lines, needed, limits)?,
            lines,
            discs: stock.discs().to_vec(),
            settings: Vec::new(),
            room: self.room,
            highest,
        })
    }

    /// The kinds from the heaviest; of equal mass the larger first, then in the order of the stock.
    fn lines(&self, stock: &Stock) -> Vec<Line> {
        let limited = self.room.is_some();
        let line = |(kind, disc): (usize, &Disc)| Line {
            mass: disc.mass().nanograms(),
            thickness: disc.thickness().filter(|_| limited).map_or(0, Length::micrometres),
            available: disc.count() / self.alike,
            kind,
        };
        let mut lines: Vec<Line> = stock.discs().iter().enumerate().map(line).collect();
        let diameter = |line: &Line| stock.discs().get(line.kind).and_then(Disc::diameter);
        crate::numeric::sort::sort_by(&mut lines, |a, b| {
            b.mass.cmp(&a.mass).then_with(|| diameter(b).cmp(&diameter(a))).then(a.kind.cmp(&b.kind))
        });
        lines
    }
}

/// The loads of a stack; `sign` is -1 where the stack helps. A machine that moves nothing has no load.
fn selected(stack: &MachineStack, sign: i64) -> Result<Vec<(Setting, Mass)>, Error> {
    let mut loads = Vec::new();
    for (plates, add_ons, moving) in stack.settings()? {
        let load = Mass::from_nanograms(sign * moving.nanograms())
            .ok_or_else(|| Error::new(Code::Overflow, "plates", moving.kg(), Allowed::Unstated))?;
        if sign < 0 || load.is_positive() {
            loads.push((Setting::Selected { plates, add_ons }, load));
        }
    }
    Ok(loads)
}
