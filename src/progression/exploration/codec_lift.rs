//! The bytes of one lift.

use std::boxed::Box;
use std::vec::Vec;

use super::super::lift::{Now, SetupSeen};
use super::super::sitting::Sitting;
use super::super::status::{Calibration, OverrideInForce, Purpose, Status};
use super::codec::{FAR, In, Out, place};
use super::small_world::{name, today};
use crate::gate::Outcome;
use crate::quantity::{Day, Mass};
use crate::reason::Shortfall;
use crate::record::{Grant, Place};

/// More sessions at one place than any rule of this world counts.
const MANY: u16 = 3;
/// Sessions kept: more than the gate's run, neutral fails included.
const KEPT: usize = 4;

const OUTCOMES: [Outcome; 3] = [Outcome::Pass, Outcome::Fail, Outcome::NotScored];
const SHORT: [Shortfall; 7] = [
    Shortfall::Rung,
    Shortfall::Range,
    Shortfall::Tempo,
    Shortfall::Load,
    Shortfall::Sets,
    Shortfall::Reps,
    Shortfall::Limit,
];
fn encode_status(status: &Status, out: &mut Out) {
    out.0.push(place(&Status::NAMES, &status.as_str()));
    match status {
        Status::ReadyToAdvance { since } => out.day(*since),
        Status::SteppingBack { passes, .. } => out.0.push((*passes).min(2)),
        Status::Returning { way, passes } => {
            out.way(*way);
            out.0.push((*passes).min(2));
        }
        Status::Resting { way } | Status::StoppedRefer { way } => out.maybe(*way, Out::way),
        _ => {}
    }
}

fn decode_status(bytes: &mut In<'_>) -> Status {
    match Status::NAMES[usize::from(bytes.byte())] {
        "learning" => Status::Learning,
        "holding" => Status::Holding,
        "ready_to_advance" => Status::ReadyToAdvance { since: bytes.day() },
        "consolidating" => Status::Consolidating,
        "stepping_back" => Status::SteppingBack { from: None, passes: bytes.byte() },
        "resting" => Status::Resting { way: bytes.maybe(In::way) },
        "returning" => Status::Returning { way: bytes.way(), passes: bytes.byte() },
        "maintaining" => Status::Maintaining,
        "stopped_refer" => Status::StoppedRefer { way: bytes.maybe(In::way) },
        _ => Status::Retired,
    }
}

pub(super) fn encode_now(now: &Now, out: &mut Out) {
    encode_status(&now.status, out);
    out.load(now.grant.load());
    out.0.push(now.grant.place.rung | now.grant.place.range << 1);
    match now.purpose {
        Purpose::Train => out.0.push(0),
        Purpose::Maintain { not_below } => {
            out.0.push(1);
            out.maybe(not_below, Out::load);
        }
        Purpose::Rest => out.0.push(2),
        Purpose::Retire => out.0.push(3),
    }
    out.0.extend([
        now.calibration.done.min(3),
        now.calibration.needed.min(3),
        now.fails.min(2),
        now.neutral.min(2),
        now.here.0.min(MANY) as u8,
    ]);
    let kept = now.sittings.len().min(KEPT);
    let recent = &now.sittings[now.sittings.len() - kept..];
    out.0.push(kept as u8);
    for sitting in recent {
        let flags = [
            sitting.critical,
            sitting.bad_day,
            sitting.confirmed,
            sitting.short_of_reserve,
            sitting.other_rater,
            sitting.at_grant,
        ];
        let flags: u8 = flags.iter().enumerate().map(|(at, flag)| u8::from(*flag) << (at + 2)).sum();
        out.0.push(place(&OUTCOMES, &sitting.outcome) | flags);
        out.day(sitting.day);
    }
    out.maybe(now.last_session, Out::day);
    out.maybe(now.short, |out, short| out.0.push(place(&SHORT, &short)));
    let recent_moves: Vec<&(Day, Mass)> =
        now.moves.iter().filter(|(day, _)| today().since(*day) < FAR).collect();
    out.0.push(recent_moves.len() as u8);
    for (day, load) in recent_moves {
        out.day(*day);
        out.load(*load);
    }
    out.0.extend([now.missed.min(FAR as u16) as u8, now.half_sessions]);
    out.maybe(now.proven, |out, (day, load)| {
        out.day(day);
        out.load(load);
    });
    out.maybe(now.overruled.as_ref(), |out, overruled| {
        out.load(overruled.load);
        out.day(overruled.expires);
    });
    out.maybe(now.setup.as_ref().and_then(|seen| seen.kit.as_ref()), |out, kit| {
        out.0.push(kit.len() as u8);
    });
    let flags = [now.partner_pain, now.unguarded, now.fault.is_some(), now.ill, now.other_rater];
    let former = ["hip", "back"].map(|id| now.former.iter().any(|region| region.as_str() == id));
    let flags = flags.into_iter().chain(former).enumerate();
    out.0.push(flags.map(|(at, flag)| u8::from(flag) << at).sum());
}

pub(super) fn decode_now(bytes: &mut In<'_>, like: &Now) -> Now {
    let status = decode_status(bytes);
    let load = bytes.load();
    let at = bytes.byte();
    let purpose = match bytes.byte() {
        0 => Purpose::Train,
        1 => Purpose::Maintain { not_below: bytes.maybe(In::load) },
        2 => Purpose::Rest,
        _ => Purpose::Retire,
    };
    let [done, needed, fails, neutral, here] = [(); 5].map(|()| bytes.byte());
    let count = bytes.byte();
    let sittings = (0..count)
        .map(|number| {
            let flags = bytes.byte();
            let flag = |at: u8| flags & 1 << (at + 2) != 0;
            Sitting {
                session: u32::from(number) + 1,
                day: bytes.day(),
                outcome: OUTCOMES[usize::from(flags & 3)],
                critical: flag(0),
                bad_day: flag(1),
                confirmed: flag(2),
                short_of_reserve: flag(3),
                other_rater: flag(4),
                at_grant: flag(5),
                scored: 3,
                acceptable: if flags & 3 == 0 { 3 } else { 1 },
            }
        })
        .collect();
    let last_session = bytes.maybe(In::day);
    let short = bytes.maybe(|bytes| SHORT[usize::from(bytes.byte())]);
    let moves = (0..bytes.byte()).map(|_| (bytes.day(), bytes.load())).collect();
    let [missed, half_sessions] = [(); 2].map(|()| bytes.byte());
    let proven = bytes.maybe(|bytes| (bytes.day(), bytes.load()));
    let overruled = bytes.maybe(|bytes| {
        let load = bytes.load();
        OverrideInForce { load, expires: bytes.day(), who: name("coach"), event: 1 }
    });
    let kit = bytes.maybe(|bytes| (0..bytes.byte()).map(|_| name("belt")).collect());
    let flags = bytes.byte();
    let flag = |at: u8| flags & 1 << at != 0;
    let former = ["hip", "back"].into_iter().enumerate().filter(|(at, _)| flag(*at as u8 + 5));
    let place = Place { rung: at & 1, range: at >> 1, ..like.grant.place };
    Now {
        status,
        grant: Grant { place, ..like.grant.with_load(load) },
        purpose,
        calibration: Calibration { done, needed },
        fails,
        neutral,
        here: (u16::from(here), today()),
        sittings,
        last_session,
        short,
        moves,
        missed: u16::from(missed),
        half_sessions,
        proven,
        overruled,
        partner_pain: flag(0),
        unguarded: flag(1),
        fault: flag(2).then(|| name("brace")),
        ill: flag(3),
        other_rater: flag(4),
        setup: kit.map(|kit| Box::new(SetupSeen { kit: Some(kit), ..SetupSeen::default() })),
        former: former.map(|(_, id)| name(id)).collect(),
        ..Now::new(like.grant, today(), 1)
    }
}
