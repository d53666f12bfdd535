//! New sets of parameters: what a coach may change between two sessions.

use bismar::gate::Criterion;
use bismar::loading::{Bar, Disc, Implement, MachineStack, Pieces, Stock};
use bismar::quantity::{Length, Mass};
use bismar::record::*;
use proptest::prelude::*;

use super::course::*;

/// A new set of parameters.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Change {
    /// Other names for people; ids stay.
    Names,
    /// Another list of regions for one lift.
    Regions { lift: u8, regions: u8 },
    /// Another dimension moves in one lift.
    Moving { lift: u8, moving: u8 },
    /// Two thirds of the discs, or all of them again.
    Discs { fewer: bool },
    /// A ceiling for one lift, or none.
    Ceiling { lift: u8, set: bool },
    /// One lift left out, with the pair that it was in.
    LeaveOut { lift: u8 },
    /// Every lift that was left out, and the pair, again.
    TakeBack,
    /// One region no longer declared; lifts that loaded nothing else load the first that is left.
    Undeclare { region: u8 },
    /// Every region again.
    Declare,
    /// Another implement for one lift: a lighter bar, dumbbells, help; from any of them back to the bar, or to help.
    Implement { lift: u8, to: u8 },
    /// Another ladder for one lift: the first one, an easier rung below it, without the last rung, all rungs by other ids.
    Rungs { lift: u8, list: u8 },
    /// Another list of ranges for one lift.
    Ranges { lift: u8, list: u8 },
    /// Another list of tempos for one lift.
    Tempos { lift: u8, list: u8 },
    /// One more critical point for one lift, or not that one.
    Criteria { lift: u8, more: bool },
}

pub fn any_change() -> impl Strategy<Value = Change> {
    let list = || (0_u8..5, 0_u8..4);
    prop_oneof![
        1 => Just(Change::Names),
        1 => (0_u8..5, 0_u8..3).prop_map(|(lift, regions)| Change::Regions { lift, regions }),
        1 => (0_u8..5, 0_u8..6).prop_map(|(lift, moving)| Change::Moving { lift, moving }),
        1 => any::<bool>().prop_map(|fewer| Change::Discs { fewer }),
        1 => (0_u8..5, any::<bool>()).prop_map(|(lift, set)| Change::Ceiling { lift, set }),
        1 => (0_u8..5).prop_map(|lift| Change::LeaveOut { lift }),
        2 => Just(Change::TakeBack),
        1 => (0_u8..3).prop_map(|region| Change::Undeclare { region }),
        1 => Just(Change::Declare),
        2 => list().prop_map(|(lift, to)| Change::Implement { lift, to }),
        1 => list().prop_map(|(lift, list)| Change::Rungs { lift, list }),
        1 => list().prop_map(|(lift, list)| Change::Ranges { lift, list }),
        1 => list().prop_map(|(lift, list)| Change::Tempos { lift, list }),
        1 => (0_u8..5, any::<bool>()).prop_map(|(lift, more)| Change::Criteria { lift, more }),
    ]
}

/// Names of the implements that a lift may be given.
const IMPLEMENTS: [&str; 4] = ["bar", "lighter bar", "dumbbells", "helper"];

impl Course {
    /// The parameters in force with that change.
    pub fn changed(&self, change: Change) -> Parameters {
        let mut all = self.set().clone();
        match change {
            Change::Names => rename(&mut all),
            Change::Regions { lift, regions } => {
                let lists: [&[&str]; 3] = [&["hip"], &["shoulder"], &["shoulder", "hip"]];
                let chosen = lists[usize::from(regions)].iter().map(|id| name(id)).collect();
                all.lifts[self.number(lift)].regions = chosen;
            }
            Change::Moving { lift, moving } => {
                all.lifts[self.number(lift)].moving = DIMENSIONS[usize::from(moving)];
            }
            Change::Discs { fewer } => {
                // Where some were taken away before, all are there again.
                let count = |disc: &Disc| if fewer { disc.count().min(2) } else { disc.count().max(4) };
                let discs = all.stock.discs().iter().map(|disc| (*disc).counted(count(disc)).unwrap());
                all.stock = Stock::new(discs.collect()).unwrap();
            }
            Change::Ceiling { lift, set } => {
                let at = self.number(lift);
                let start = all.lifts[at].start.load();
                let ceiling = start.plus(part(start, 0.05)).unwrap();
                all.lifts[at].ceiling = set.then(|| self.with_sign(at, ceiling));
            }
            Change::Undeclare { region } => undeclare(&mut all, REGIONS[usize::from(region)]),
            Change::Declare => {
                let missing = REGIONS.into_iter().filter(|id| !declares(&all, &name(id)));
                let missing: Vec<Region> = missing.map(|id| Region::new(name(id))).collect();
                all.regions.extend(missing);
            }
            Change::LeaveOut { lift } => {
                let left = all.lifts.remove(self.number(lift)).id;
                all.pairs.retain(|pair| pair.strict != left && pair.forgiving != left);
            }
            Change::TakeBack => self.take_back(&mut all),
            Change::Implement { lift, to } => {
                self.give_implement(&mut all, self.number(lift), usize::from(to))
            }
            Change::Rungs { lift, list } => {
                let set = &mut all.lifts[self.number(lift)];
                set.rungs = rungs(list);
                set.start.place.rung = set.start.place.rung.min(set.rungs.len() as u8 - 1);
            }
            Change::Ranges { lift, list } => {
                let set = &mut all.lifts[self.number(lift)];
                set.ranges = ranges(set.starts_from, list);
                set.start.place.range = set.start.place.range.min((set.ranges.len() as u8).max(1) - 1);
            }
            Change::Tempos { lift, list } => {
                let set = &mut all.lifts[self.number(lift)];
                let lists: [&[u8]; 4] = [&[], &[2, 3, 4], &[3, 4], &[1, 2, 3, 4]];
                let tempo = |down: &u8| Tempo::new(*down, 0, 1);
                set.tempos = lists[usize::from(list)].iter().map(tempo).collect();
                set.start.place.tempo = set.start.place.tempo.min((set.tempos.len() as u8).max(1) - 1);
            }
            Change::Criteria { lift, more } => {
                let criteria = &mut all.lifts[self.number(lift)].criteria;
                criteria.retain(|criterion| criterion.id != name("feet"));
                if more {
                    criteria.push(Criterion::critical("feet").unwrap());
                }
            }
        }
        all
    }

    /// Lifts that were left out, where what they name is still there, and the pair with which the log began.
    fn take_back(&self, all: &mut Parameters) {
        for lift in self.state().set_aside() {
            let mut set = lift.parameters().clone();
            set.regions.retain(|region| declares(all, region));
            if set.regions.is_empty() {
                set.regions.push(all.regions[0].id.clone());
            }
            all.lifts.push(set);
        }
        let EventKind::ParametersChanged(first) = &self.log.events[0].kind else {
            panic!("parameters first")
        };
        let there = |id: &bismar::quantity::Name| all.lifts.iter().any(|lift| lift.id == *id);
        all.pairs = first
            .pairs
            .iter()
            .filter(|pair| there(&pair.strict) && there(&pair.forgiving))
            .cloned()
            .collect();
    }

    fn give_implement(&self, all: &mut Parameters, at: usize, to: usize) {
        let has_bar = all.lifts[at].implement == name(IMPLEMENTS[0]);
        let to = if has_bar { to.max(1) } else { to / 3 * 3 };
        let id = name(IMPLEMENTS[to]);
        let masses =
            |from: u32, to: u32| (from..=to).map(|at| self.scaled(2.0 * f64::from(at))).collect::<Vec<_>>();
        let implement = match to {
            0 => None,
            1 => Some(Implement::Bar(Bar::new(id.clone(), self.scaled(15.0), Mass::ZERO).unwrap())),
            2 => Some(Implement::Pieces(Pieces::new(id.clone(), masses(2, 40)).unwrap())),
            _ => {
                let plates = vec![self.scaled(5.0); 12];
                Some(Implement::Assistance(
                    MachineStack::new(id.clone(), Mass::ZERO, plates, Vec::new(), 1.0).unwrap(),
                ))
            }
        };
        if all.implement(&id).is_none() {
            all.implements.extend(implement);
        }
        let set = &mut all.lifts[at];
        let helps = set.start.load() < Mass::ZERO;
        if helps != (to == 3) {
            let load = self.scaled(20.0);
            set.start.work.load = if helps { load } else { Mass::from_nanograms(-load.nanograms()).unwrap() };
            set.ceiling = None;
        }
        set.implement = id;
    }
}

fn undeclare(all: &mut Parameters, region: &str) {
    let left = name(region);
    all.regions.retain(|region| region.id != left);
    let Some(first) = all.regions.first().map(|region| region.id.clone()) else { return };
    for lift in &mut all.lifts {
        lift.regions.retain(|region| *region != left);
        if lift.regions.is_empty() {
            lift.regions.push(first.clone());
        }
    }
}

fn rungs(list: u8) -> Vec<Rung> {
    let lists: [&[&str]; 4] = [
        &["easy", "middle", "hard"],
        &["gentle", "easy", "middle", "hard"],
        &["easy", "middle"],
        &["other easy", "other middle", "other hard"],
    ];
    let ids = lists[usize::from(list)];
    let below = |at: usize| ids[..at].last().map(|id| name(id)).into_iter().collect();
    ids.iter().enumerate().map(|(at, id)| Rung::new(name(id), below(at))).collect()
}

/// From easiest to full: heights above the floor where the bar starts from it, else depths or heights.
fn ranges(starts_from: StartsFrom, list: u8) -> Vec<Length> {
    let lists: [&[f64]; 4] = if starts_from == StartsFrom::Rack {
        [&[], &[300.0, 400.0, 500.0], &[500.0, 400.0, 300.0], &[400.0, 500.0]]
    } else {
        [&[300.0, 225.0], &[400.0, 300.0, 225.0], &[300.0], &[250.0, 225.0]]
    };
    lists[usize::from(list)].iter().map(|height| Length::from_mm(*height).unwrap()).collect()
}

/// Other names for lifts, regions and rungs; ids stay.
pub fn rename(all: &mut Parameters) {
    let other = |id: &bismar::quantity::Name| Some(name(&format!("{} by another name", id.as_str())));
    for region in &mut all.regions {
        region.name = other(&region.id);
    }
    for lift in &mut all.lifts {
        lift.name = other(&lift.id);
        for rung in &mut lift.rungs {
            rung.name = other(&rung.id);
        }
    }
}
