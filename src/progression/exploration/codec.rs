//! Canonical bytes of a state of the small world, and back. Days are kept as days before today, cut at [`FAR`].

use std::vec::Vec;

use super::super::state::{
    ClearanceInForce, LiftState, OverrideInForce, RegionState, Sitting, State, Stop, TodayReport,
};
use super::super::status::Status;
use super::alphabet::{kg, today};
use crate::condition::DayClass;
use crate::gate::Outcome;
use crate::quantity::{Day, Mass, Name, Pain};
use crate::record::{ClearanceLimits, ClearanceStatus, Role, Tuple};

/// More days than any rule of this world compares.
const FAR: i32 = 7;
/// More sessions at one place than any rule of this world counts.
const MANY: u16 = 3;
/// Sessions kept: more than the gate's run, neutral fails included.
const KEPT: usize = 4;

/// Lets days pass: everything moves into the past.
pub(super) fn wait(state: &mut State, days: i32) {
    let moved = |day: &mut Day| *day = day.plus(-days).unwrap();
    for lift in &mut state.lifts {
        moved(&mut lift.since);
        moved(&mut lift.here.1);
        lift.sittings.iter_mut().for_each(|sitting| moved(&mut sitting.day));
        lift.last_session.iter_mut().for_each(moved);
        lift.moves.iter_mut().for_each(|(day, _)| moved(day));
        lift.offered.iter_mut().for_each(moved);
        lift.proven.iter_mut().for_each(|(day, _)| moved(day));
        lift.overruled.iter_mut().for_each(|overruled| moved(&mut overruled.expires));
    }
    for region in &mut state.regions {
        region.loaded.iter_mut().for_each(moved);
        region.last.iter_mut().for_each(|(day, _)| moved(day));
        region.flared.iter_mut().for_each(moved);
        region.usual.iter_mut().for_each(|(_, agreed, _)| moved(agreed));
        region.stop.iter_mut().for_each(|stop| moved(&mut stop.since));
        region.moves.iter_mut().for_each(moved);
    }
    state.stop.iter_mut().for_each(|stop| moved(&mut stop.since));
    state.clearance.iter_mut().for_each(|clearance| {
        moved(&mut clearance.given);
        moved(&mut clearance.expires);
    });
    state.today.iter_mut().for_each(|report| moved(&mut report.day));
    state.last.iter_mut().for_each(|(day, _)| moved(day));
    state.expire(today());
}

const STATUSES: [Status; 10] = Status::ALL;
const ROLES: [Role; 4] = [Role::Train, Role::Maintain, Role::Rest, Role::Retire];
const OUTCOMES: [Outcome; 3] = [Outcome::Pass, Outcome::Fail, Outcome::NotScored];
const LOADS: [f64; 5] = [18.0, 20.0, 22.0, 24.0, 30.0];

fn place<T: PartialEq>(all: &[T], one: &T) -> u8 {
    all.iter().position(|each| each == one).unwrap() as u8
}

struct Out(Vec<u8>);

impl Out {
    fn day(&mut self, day: Day) {
        self.0.push((today().since(day).clamp(-FAR, FAR) + FAR) as u8);
    }

    fn maybe<T>(&mut self, value: Option<T>, write: impl FnOnce(&mut Out, T)) {
        self.0.push(u8::from(value.is_some()));
        if let Some(value) = value {
            write(self, value);
        }
    }

    fn load(&mut self, load: Mass) {
        self.0.push(place(&LOADS.map(kg), &load));
    }

    fn stop(&mut self, stop: Stop) {
        self.0.push(u8::from(stop.cleared) | u8::from(stop.signed) << 1);
    }
}

struct In<'a>(&'a [u8]);

impl In<'_> {
    fn byte(&mut self) -> u8 {
        let (first, rest) = self.0.split_first().unwrap();
        self.0 = rest;
        *first
    }

    fn day(&mut self) -> Day {
        today().plus(FAR - i32::from(self.byte())).unwrap()
    }

    fn maybe<T>(&mut self, read: impl FnOnce(&mut Self) -> T) -> Option<T> {
        (self.byte() == 1).then(|| read(self))
    }

    fn load(&mut self) -> Mass {
        kg(LOADS[usize::from(self.byte())])
    }

    fn stop(&mut self) -> Stop {
        let flags = self.byte();
        Stop { since: today(), event: 1, cleared: flags & 1 != 0, signed: flags & 2 != 0 }
    }
}

pub(super) fn encode(state: &State) -> Vec<u8> {
    let mut out = Out(Vec::with_capacity(96));
    state.lifts.iter().for_each(|lift| encode_lift(lift, &mut out));
    state.regions.iter().for_each(|region| encode_region(region, &mut out));
    out.maybe(state.stop, Out::stop);
    out.maybe(state.clearance.as_ref(), |out, clearance| {
        let status =
            [ClearanceStatus::Cleared, ClearanceStatus::ClearedWithLimits, ClearanceStatus::NotCleared];
        out.0.push(place(&status, &clearance.status));
        out.day(clearance.expires);
    });
    // Of breaks only illness makes a difference, and each lift keeps its own.
    out.0.push(u8::from(state.ill_since.is_some()));
    out.0.push(u8::from(state.asks_first()));
    // Of an earlier day's report only what it asks first still counts.
    let report = state.today.as_ref().filter(|report| report.day == today());
    out.maybe(report, |out, report| {
        out.0.push(place(&DayClass::ALL, &report.class) << 1 | u8::from(report.pain_asked))
    });
    out.0.push(match state.pain_asked {
        None => 0,
        Some(asked) => 1 + u8::from(asked),
    });
    out.0.push(state.unknown.min(1) as u8);
    out.0
}

fn encode_lift(lift: &LiftState, out: &mut Out) {
    out.0.push(place(&STATUSES, &lift.status));
    out.load(lift.tuple.load);
    out.0.push(lift.tuple.rung | lift.tuple.range << 1);
    out.0.push(place(&ROLES, &lift.role));
    out.0.extend([
        lift.learned.0.min(3),
        lift.learned.1.min(3),
        lift.passes.min(2),
        lift.fails.min(2),
        lift.neutral.min(2),
    ]);
    out.0.push(lift.here.0.min(MANY) as u8);
    let kept = lift.sittings.len().min(KEPT);
    let recent = &lift.sittings[lift.sittings.len() - kept..];
    out.0.push(kept as u8);
    let newest = recent.last().map(|last| last.day);
    for sitting in recent {
        out.0.push(
            place(&OUTCOMES, &sitting.outcome)
                | u8::from(sitting.critical) << 2
                | u8::from(sitting.bad_day) << 3
                | u8::from(sitting.confirmed) << 4
                | u8::from(Some(sitting.day) == newest) << 5,
        );
        out.day(sitting.day);
    }
    out.maybe(lift.last_session, Out::day);
    let recent_moves: Vec<&(Day, Mass)> =
        lift.moves.iter().filter(|(day, _)| today().since(*day) < FAR).collect();
    out.0.push(recent_moves.len() as u8);
    for (day, load) in recent_moves {
        out.day(*day);
        out.load(*load);
    }
    out.maybe(lift.offered, Out::day);
    out.maybe(lift.return_cap, Out::load);
    out.0.extend([lift.return_row, lift.half_sessions]);
    out.maybe(lift.proven, |out, (day, load)| {
        out.day(day);
        out.load(load);
    });
    out.maybe(lift.overruled.as_ref(), |out, overruled| {
        out.load(overruled.load);
        out.day(overruled.expires);
    });
    out.maybe(lift.not_below, Out::load);
    let flags = [lift.partner_pain, lift.unguarded, lift.fault.is_some(), lift.ill];
    out.0.push(flags.iter().enumerate().map(|(at, flag)| u8::from(*flag) << at).sum());
}

fn decode_lift(bytes: &mut In<'_>, like: &LiftState) -> LiftState {
    let status = STATUSES[usize::from(bytes.byte())];
    let load = bytes.load();
    let place = bytes.byte();
    let role = ROLES[usize::from(bytes.byte())];
    let [done, needed, passes, fails, neutral, here] = [(); 6].map(|()| bytes.byte());
    let count = bytes.byte();
    let sittings = (0..count)
        .map(|number| {
            let flags = bytes.byte();
            let day = bytes.day();
            Sitting {
                session: u32::from(number) + 1,
                day,
                outcome: OUTCOMES[usize::from(flags & 3)],
                critical: flags & 4 != 0,
                bad_day: flags & 8 != 0,
                at_grant: flags & 3 == 0,
                confirmed: flags & 16 != 0,
                scored: 3,
                acceptable: if flags & 3 == 0 { 3 } else { 1 },
            }
        })
        .collect();
    let last_session = bytes.maybe(In::day);
    let moves = (0..bytes.byte()).map(|_| (bytes.day(), bytes.load())).collect();
    let offered = bytes.maybe(In::day);
    let return_cap = bytes.maybe(In::load);
    let [return_row, half_sessions] = [(); 2].map(|()| bytes.byte());
    let proven = bytes.maybe(|bytes| (bytes.day(), bytes.load()));
    let overruled = bytes.maybe(|bytes| {
        let load = bytes.load();
        OverrideInForce { load, expires: bytes.day(), who: Name::new("coach").unwrap(), event: 1 }
    });
    let not_below = bytes.maybe(In::load);
    let flags = bytes.byte();
    LiftState {
        status,
        since: today(),
        tuple: Tuple { load, rung: place & 1, range: place >> 1, ..like.tuple },
        role,
        learned: (done, needed),
        passes,
        fails,
        neutral,
        here: (u16::from(here), today()),
        sittings,
        earlier: (0, 0),
        last_session,
        moves,
        offered,
        return_cap,
        return_row,
        half_sessions,
        peak: like.peak,
        proven,
        overruled,
        signed_off: false,
        partner_pain: flags & 1 != 0,
        ill: flags & 8 != 0,
        unguarded: flags & 2 != 0,
        fault: (flags & 4 != 0).then(|| Name::new("brace").unwrap()),
        weak: None,
        watched: None,
        not_below,
        stepped_from: None,
        closed_since: None,
        reserve: None,
    }
}

fn encode_region(region: &RegionState, out: &mut Out) {
    out.maybe(region.loaded, Out::day);
    out.maybe(region.last, |out, (_, score)| out.0.push(score.score()));
    // Only one level is ever agreed here.
    out.maybe(region.usual, |out, (_, agreed, steady)| {
        out.day(agreed);
        out.0.push(steady);
    });
    out.0.extend([region.clear_needed, region.flares.min(2)]);
    out.maybe(region.flared, Out::day);
    out.maybe(region.stop, Out::stop);
    let recent: Vec<&Day> = region.moves.iter().filter(|day| today().since(**day) < FAR).collect();
    out.0.push(recent.len() as u8);
    recent.into_iter().for_each(|day| out.day(*day));
}

fn decode_region(bytes: &mut In<'_>, like: &RegionState) -> RegionState {
    let loaded = bytes.maybe(In::day);
    let last = bytes.maybe(|bytes| (today(), Pain::new(bytes.byte()).unwrap()));
    let usual = bytes.maybe(|bytes| (Pain::new(2).unwrap(), bytes.day(), bytes.byte()));
    let [clear_needed, flares] = [(); 2].map(|()| bytes.byte());
    let flared = bytes.maybe(In::day);
    let stop = bytes.maybe(In::stop);
    let moves = (0..bytes.byte()).map(|_| bytes.day()).collect();
    let name = like.name.clone();
    RegionState { name, loaded, last, usual, clear_needed, flares, flared, stop, moves }
}

/// A state with these bytes; what the bytes leave out is taken from the start of the world.
pub(super) fn decode(bytes: &[u8], start: &State) -> State {
    let mut bytes = In(bytes);
    let mut state = start.clone();
    state.lifts = start.lifts.iter().map(|lift| decode_lift(&mut bytes, lift)).collect();
    state.regions = start.regions.iter().map(|region| decode_region(&mut bytes, region)).collect();
    state.stop = bytes.maybe(In::stop);
    state.clearance = bytes.maybe(|bytes| {
        let limit = ClearanceLimits { load: Some(kg(20.0)), ..ClearanceLimits::default() };
        let (status, limits) = match bytes.byte() {
            0 => (ClearanceStatus::Cleared, Vec::new()),
            1 => (ClearanceStatus::ClearedWithLimits, std::vec![limit]),
            _ => (ClearanceStatus::NotCleared, Vec::new()),
        };
        ClearanceInForce { status, given: today(), expires: bytes.day(), limits }
    });
    state.layoff = None;
    state.ill_since = (bytes.byte() != 0).then(today);
    let asks_first = bytes.byte() == 1;
    let report = bytes.maybe(In::byte);
    let earlier = TodayReport {
        day: today().plus(-1).unwrap(),
        class: DayClass::Unknown,
        asks_first,
        pain_asked: false,
        minutes: None,
    };
    state.today = match report {
        Some(flags) => {
            let class = DayClass::ALL[usize::from(flags >> 1)];
            Some(TodayReport { day: today(), class, pain_asked: flags & 1 != 0, ..earlier })
        }
        None => asks_first.then_some(earlier),
    };
    state.pain_asked = match bytes.byte() {
        0 => None,
        asked => Some(asked == 2),
    };
    state.unknown = u32::from(bytes.byte());
    state.last = Some((today(), 9));
    state.refused = None;
    state
}
