//! Canonical bytes of a state of the small world, and back. Days are kept as days before today, cut at [`FAR`].

use std::sync::Arc;
use std::vec::Vec;

use super::super::lift::Lift;
use super::super::region::RegionState;
use super::super::shared::{ClearanceInForce, OpenAsk, TodayReport};
use super::super::state::State;
use super::super::status::{Status, Stop, WayBack};
use super::codec_lift::{decode_now, encode_now};
use super::small_world::{LIFTS, SETS, kg, name, parameters_of, today};
use crate::condition::DayClass;
use crate::quantity::{Day, Mass, Pain};
use crate::record::{ClearanceLimits, ClearanceStatus};
use crate::sign::Ask;

/// More days than any rule of this world compares.
pub(super) const FAR: i32 = 7;
/// Lets days pass: everything moves into the past.
pub(super) fn wait(state: &mut State, days: i32) {
    let moved = |day: &mut Day| *day = day.plus(-days).unwrap();
    for lift in state.lifts.iter_mut().chain(&mut state.set_aside) {
        let now = &mut lift.now;
        moved(&mut now.since);
        moved(&mut now.here.1);
        if let Status::ReadyToAdvance { since } = &mut now.status {
            moved(since);
        }
        now.sittings.iter_mut().for_each(|sitting| moved(&mut sitting.day));
        now.last_session.iter_mut().for_each(moved);
        now.moves.iter_mut().for_each(|(day, _)| moved(day));
        now.proven.iter_mut().for_each(|(day, _)| moved(day));
        now.overruled.iter_mut().for_each(|overruled| moved(&mut overruled.expires));
        now.setup.iter_mut().for_each(|seen| seen.changed.iter_mut().for_each(moved));
    }
    let shared = &mut state.shared;
    for region in &mut shared.regions {
        region.loaded.iter_mut().for_each(moved);
        region.last.iter_mut().for_each(|(day, _)| moved(day));
        region.scores.iter_mut().for_each(|(day, _)| moved(day));
        region.flared.iter_mut().for_each(moved);
        region.usual.iter_mut().for_each(|(_, agreed, _)| moved(agreed));
        region.stop.iter_mut().for_each(|stop| moved(&mut stop.since));
        region.moves.iter_mut().for_each(moved);
    }
    shared.stop.iter_mut().for_each(|stop| moved(&mut stop.since));
    shared.clearance.iter_mut().for_each(|clearance| {
        moved(&mut clearance.given);
        moved(&mut clearance.expires);
    });
    shared.asks.iter_mut().for_each(|open| moved(&mut open.since));
    shared.today.iter_mut().for_each(|report| moved(&mut report.day));
    shared.sessions.iter_mut().for_each(|(_, day)| moved(day));
    state.last.iter_mut().for_each(|(day, _)| moved(day));
    state.expire(today());
}

const LOADS: [f64; 5] = [18.0, 20.0, 22.0, 24.0, 30.0];
const ASKS: [Ask; 2] = [Ask::Fever, Ask::Fall];

pub(super) fn place<T: PartialEq>(all: &[T], one: &T) -> u8 {
    all.iter().position(|each| each == one).unwrap() as u8
}

pub(super) struct Out(pub(super) Vec<u8>);

impl Out {
    pub(super) fn day(&mut self, day: Day) {
        self.0.push((today().since(day).clamp(-FAR, FAR) + FAR) as u8);
    }

    pub(super) fn maybe<T>(&mut self, value: Option<T>, write: impl FnOnce(&mut Out, T)) {
        self.0.push(u8::from(value.is_some()));
        if let Some(value) = value {
            write(self, value);
        }
    }

    pub(super) fn load(&mut self, load: Mass) {
        self.0.push(place(&LOADS.map(kg), &load));
    }

    fn stop(&mut self, stop: &Stop) {
        self.0.push(u8::from(stop.cleared) | u8::from(stop.signed) << 1);
    }

    pub(super) fn way(&mut self, way: WayBack) {
        self.load(way.cap);
        // Whether there was a gap at all is only said, never compared.
        self.0.push(way.row.min(3) << 1 | u8::from(way.gap > 0));
    }
}

pub(super) struct In<'a>(&'a [u8]);

impl In<'_> {
    pub(super) fn byte(&mut self) -> u8 {
        let (first, rest) = self.0.split_first().unwrap();
        self.0 = rest;
        *first
    }

    pub(super) fn day(&mut self) -> Day {
        today().plus(FAR - i32::from(self.byte())).unwrap()
    }

    pub(super) fn maybe<T>(&mut self, read: impl FnOnce(&mut Self) -> T) -> Option<T> {
        (self.byte() == 1).then(|| read(self))
    }

    pub(super) fn load(&mut self) -> Mass {
        kg(LOADS[usize::from(self.byte())])
    }

    fn stop(&mut self) -> Stop {
        let flags = self.byte();
        let stop = Stop::new(today(), 1, Vec::new());
        Stop { cleared: flags & 1 != 0, signed: flags & 2 != 0, ..stop }
    }

    pub(super) fn way(&mut self) -> WayBack {
        let cap = self.load();
        let byte = self.byte();
        WayBack { cap, row: byte >> 1, gap: u16::from(byte & 1) * 6 }
    }
}

/// Which of the sets of parameters is in force.
fn set_of(state: &State) -> usize {
    let all = state.parameters().unwrap();
    (0..SETS).find(|set| parameters_of(*set) == *all).unwrap()
}

pub(super) fn encode(state: &State) -> Vec<u8> {
    let mut out = Out(Vec::with_capacity(128));
    out.0.push(in_force(state));
    for id in LIFTS {
        let of = |lifts: &[Lift]| lifts.iter().find(|lift| lift.set.id.as_str() == id).cloned();
        match (of(&state.lifts), of(&state.set_aside)) {
            (Some(lift), _) => encode_now(&lift.now, &mut out),
            (None, Some(lift)) => {
                // Which set it had when it was left out.
                let other = lift.set.regions.iter().any(|region| region.as_str() == "back");
                out.0.push(u8::from(other) | u8::from(lift.set.implement.as_str() == "bar") << 1);
                encode_now(&lift.now, &mut out);
            }
            (None, None) => out.0.push(u8::MAX),
        }
    }
    let shared = &state.shared;
    shared.regions.iter().for_each(|region| encode_region(region, &mut out));
    out.maybe(shared.stop.as_ref(), Out::stop);
    out.maybe(shared.clearance.as_ref(), |out, clearance| {
        let status =
            [ClearanceStatus::Cleared, ClearanceStatus::ClearedWithLimits, ClearanceStatus::NotCleared];
        out.0.push(place(&status, &clearance.status) | u8::from(!clearance.limits.is_empty()) << 2);
        out.day(clearance.expires);
    });
    // Of breaks only illness makes a difference, and each lift keeps its own.
    out.0.push(u8::from(shared.ill_since.is_some()));
    out.0.push(shared.asks.iter().map(|open| 1 << place(&ASKS, &open.ask)).sum());
    out.maybe(shared.report_on(today()), |out, report| {
        let asked = u8::from(report.pain_asked) | u8::from(report.asks_asked) << 1;
        out.0.push(place(&DayClass::ALL, &report.class) << 2 | asked);
    });
    out.0.push(match shared.pain_asked {
        None => 0,
        Some(asked) => 1 + u8::from(asked),
    });
    out.0.push(shared.unknown.min(1) as u8);
    out.0
}

/// The set in force, told by what differs, since comparing whole sets at every state is slow.
fn in_force(state: &State) -> u8 {
    let all = state.parameters().unwrap();
    match (all.lifts.len(), &all.lifts[0]) {
        (1, _) => 1,
        (_, strict) if strict.regions[0].as_str() == "back" => 2,
        (_, strict) if strict.implement.as_str() == "bar" => 3,
        _ => 0,
    }
}

fn encode_region(region: &RegionState, out: &mut Out) {
    out.0.push(u8::from(region.lifted));
    out.maybe(region.loaded, Out::day);
    out.maybe(region.last, |out, (day, score)| out.0.push(score.score() << 1 | u8::from(day == today())));
    out.0.push(region.scores.len() as u8);
    for (day, score) in &region.scores {
        out.0.push(score.score() << 1 | u8::from(*day == today()));
    }
    // Only one level is ever agreed here.
    out.maybe(region.usual, |out, (_, agreed, steady)| {
        out.day(agreed);
        out.0.push(steady);
    });
    out.0.extend([region.clear_needed, region.flares.min(2)]);
    out.maybe(region.flared, Out::day);
    out.maybe(region.stop.as_ref(), Out::stop);
    let recent: Vec<&Day> = region.moves.iter().filter(|day| today().since(**day) < FAR).collect();
    out.0.push(recent.len() as u8);
    recent.into_iter().for_each(|day| out.day(*day));
}

fn decode_region(bytes: &mut In<'_>, like: &RegionState) -> RegionState {
    let score = |bytes: &mut In<'_>| {
        let byte = bytes.byte();
        let day = if byte & 1 == 1 { today() } else { today().plus(-1).unwrap() };
        (day, Pain::new(byte >> 1).unwrap())
    };
    let lifted = bytes.byte() == 1;
    let loaded = bytes.maybe(In::day);
    let last = bytes.maybe(score);
    let scores = (0..bytes.byte()).map(|_| score(bytes)).collect();
    let usual = bytes.maybe(|bytes| (Pain::new(2).unwrap(), bytes.day(), bytes.byte()));
    let [clear_needed, flares] = [(); 2].map(|()| bytes.byte());
    let flared = bytes.maybe(In::day);
    let stop = bytes.maybe(In::stop);
    let moves = (0..bytes.byte()).map(|_| bytes.day()).collect();
    let id = like.id.clone();
    RegionState { id, lifted, loaded, last, scores, usual, clear_needed, flares, flared, stop, moves }
}

/// The worlds as each set of parameters leaves a new one, so that decoding makes nothing anew.
pub(super) struct Worlds([State; SETS]);

impl Worlds {
    pub(super) fn new(start: &State) -> Worlds {
        Worlds(std::array::from_fn(|set| {
            let mut state = start.clone();
            state.take_parameters(&parameters_of(set), today()).unwrap();
            state.set_aside.clear();
            assert_eq!(set_of(&state), set);
            state
        }))
    }

    /// A state with these bytes; what the bytes leave out is taken from the start of the world.
    pub(super) fn decode(&self, bytes: &[u8]) -> State {
        let mut bytes = In(bytes);
        let set = usize::from(bytes.byte());
        let mut state = self.0[set].clone();
        for id in LIFTS {
            if let Some(lift) = state.lifts.iter_mut().find(|lift| lift.set.id.as_str() == id) {
                lift.now = decode_now(&mut bytes, &lift.now);
                continue;
            }
            let variant = bytes.byte();
            if variant != u8::MAX {
                let from = if variant & 1 != 0 { 2 } else { usize::from(variant >> 1) * 3 };
                let like = self.0[from].lifts.iter().find(|lift| lift.set.id.as_str() == id).unwrap();
                let now = decode_now(&mut bytes, &like.now);
                state.set_aside.push(Lift {
                    now,
                    set: Arc::clone(&like.set),
                    loadable: Arc::clone(&like.loadable),
                });
            }
        }
        let shared = &mut state.shared;
        shared.regions =
            self.0[0].shared.regions.iter().map(|region| decode_region(&mut bytes, region)).collect();
        shared.stop = bytes.maybe(In::stop);
        shared.clearance = bytes.maybe(|bytes| {
            let (region, load) = (Some(name("hip")), Some(kg(20.0)));
            let limit = ClearanceLimits { region, load, ..ClearanceLimits::default() };
            let flags = bytes.byte();
            let status = match flags & 3 {
                0 => ClearanceStatus::Cleared,
                1 => ClearanceStatus::ClearedWithLimits,
                _ => ClearanceStatus::NotCleared,
            };
            let limits = if flags & 4 != 0 { std::vec![limit] } else { Vec::new() };
            ClearanceInForce { status, given: today(), expires: bytes.day(), limits }
        });
        shared.layoff = None;
        shared.ill_since = (bytes.byte() != 0).then(today);
        let asks = bytes.byte();
        let open = ASKS.into_iter().enumerate().filter(|(at, _)| asks & 1 << at != 0);
        shared.asks = open.map(|(_, ask)| OpenAsk { ask, since: today() }).collect();
        shared.today = bytes.maybe(|bytes| {
            let flags = bytes.byte();
            TodayReport {
                day: today(),
                class: DayClass::ALL[usize::from(flags >> 2)],
                pain_asked: flags & 1 != 0,
                asks_asked: flags & 2 != 0,
                minutes: None,
            }
        });
        shared.pain_asked = match bytes.byte() {
            0 => None,
            asked => Some(asked == 2),
        };
        shared.unknown = u32::from(bytes.byte());
        state.last = Some((today(), 9));
        state
    }
}
