// The capabilities in the npm package, a test for each that is named after it: every one works from a log, by the public calls.
// Where a Rust test of the same row (tests/rows, tests/doors) has a number that was worked out by hand, over the demo log or
// over the small world of rows_world.mjs, the number here is the same.
import assert from "node:assert/strict";
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import test from "node:test";
import * as bismar from "../pkg/node.js";
import { keys, pkg, registry, root } from "./files.mjs";
import { allWell, bar, code, copy, demo, disc, done, gym, kg, kindOf, lb, lift, logOf, marks, mm, parameters, planOf, plus, session, sets, work, World } from "./rows_world.mjs";

const { answers, BismarError, fromJson, gate, loading, oneRm, prescription, progression, Progress, quantity, rehearsal, toJson } = bismar;

const near = (found, expected, by, what) => assert.ok(Math.abs(found - expected) <= by, `${what ?? ""} ${found}, not ${expected}`);
const codes = (reasons) => reasons.map(code);
const squatOf = (all) => new World(all).well().today("squat");
/** The world's squat, held down to that load for a week. */
const squatAtMost = (load) => new World().well().overruled("squat", load, 7).today("squat");
const faces = (today) => today.loaded.setting.discs.map((one) => one.nominal.kg);
const refusal = (run) => {
  try {
    run();
  } catch (error) {
    assert.ok(error instanceof BismarError, String(error));
    return error;
  }
  assert.fail("nothing was refused");
};
const start = (all = parameters()) => ["2026-01-05", { parametersChanged: all }];
const monday = (week) => plus("2026-01-05", 7 * week);
const missedAfter = (load, reps) => done(load, reps, { failed: true, marks: marks(reps, reps, "met") });
/** One session a week of these sets. */
const weekly = (weeks, of) => logOf([start(), ...Array.from({ length: weeks }, (_, week) => [monday(week), session(of(week))])]);
const atTheRack = (world, id) => answers.rack({ log: world.log, plan: planOf([id]), lift: id, today: world.day, tolerance: "iwf" });

test("row_01: pounds and kilograms are exact", () => {
  // 155 lb are 155 x 0.45359237 = 70.30681735 kg, five of them 351.53408675 kg.
  const week = (load) => answers.week({ log: logOf([start(), ["2026-02-03", session({ squat: [{ load, reps: 5 }] })]]), today: "2026-02-03" });
  assert.deepEqual(week(lb(155)), week(kg(70.30681735)));
  near(week(lb(155)).total.volumeLoad.kg, 351.53408675, 1e-9);
  assert.equal(quantity.massInPounds({ mass: kg(70.30681735) }), 155);
});

test("row_02: masses are whole numbers, so that sums are exact", () => {
  assert.notEqual(20.1 + 20.1 + 20.1, 60.3);
  const log = logOf([start(), ["2026-02-02", session({ squat: sets(3, 1, 20.1) })]]);
  assert.equal(answers.week({ log, today: "2026-02-02" }).total.volumeLoad.kg, 60.3);
});

test("row_03: the total is read from the discs on the bar", () => {
  const today = squatAtMost(57);
  assert.deepEqual(faces(today), [10, 5, 2.5, 1]);
  const { implements: [{ bar: own }], stock } = parameters();
  const kinds = today.loaded.setting.discs.map((one) => one.kind);
  assert.deepEqual(loading.readBar({ bar: own, stock, left: kinds, right: kinds, uneven: false, tolerance: "iwf" }).total, kg(57));
});

test("row_04: discs are chosen from the pairs there are", () => {
  const discs = [disc(10, 2), disc(5, 3), disc(2.5, 2)];
  const today = squatOf(gym(bar(20), discs, 55));
  assert.deepEqual(faces(today), [10, 5, 2.5]);
  assert.equal(today.loaded.nextAbove, undefined);
  assert.deepEqual(faces(squatOf(gym(bar(20), discs, 45))), [10, 2.5]);
});

test("row_05: a load that cannot be made is rounded down", () => {
  const today = squatAtMost(58.6);
  assert.deepEqual([today.limit, today.load, today.loaded.difference, today.loaded.nextAbove], [kg(58.6), kg(58), kg(-0.6), kg(59)]);
  assert.deepEqual(today.reasons.find((one) => one.roundedDown).roundedDown, { from: kg(58.6), to: kg(58) });
});

test("row_06: kilograms and pounds on one bar", () => {
  // 45 lb are 20.41165665 kg: 20 + 2 (20.41165665 + 2.5) = 65.8233133 kg.
  const today = squatOf(gym(bar(20), [disc(lb(45), 2), disc(20, 2), disc(2.5, 2), disc(lb(5), 2)], 65.8233133));
  assert.deepEqual(today.load, kg(65.8233133));
  assert.deepEqual(today.loaded.setting.discs.map((one) => code(one.nominal)), ["lb", "kg"]);
});

test("row_07: weighed discs count as weighed", () => {
  const all = gym(bar(20), [{ ...disc(20, 2), measured: kg(20.1) }], 60.2);
  const { loaded } = squatOf(all);
  assert.deepEqual([loaded.total, loaded.nominal], [kg(60.2), kg(60)]);
  const { band } = loading.readBar({ bar: all.implements[0].bar, stock: all.stock, left: [0], right: [0], uneven: false, tolerance: "iwf" });
  // Of the bar alone 0.05 % less and 0.1 % more; with discs that nobody weighed of all 60 kg.
  assert.deepEqual(band, { low: kg(60.19), high: kg(60.22) });
  const unweighed = loading.readBar({ bar: all.implements[0].bar, stock: { discs: [disc(20, 2)] }, left: [0], right: [0], uneven: false, tolerance: "iwf" });
  assert.deepEqual(unweighed.band, { low: kg(59.97), high: kg(60.06) });
});

test("row_08: collars and kinds of bar count", () => {
  const discs = [disc(20, 2), disc(10, 2)];
  assert.deepEqual(faces(squatOf(gym(bar(20, 2.5), discs, 65))), [20]);
  assert.deepEqual(faces(squatOf(gym(bar(15), discs, 55))), [20]);
  // Each kind of bar with 20 kg on each end: the bar, two collars, 40 kg.
  const hex = { hex: { lowHandle: mm(0) } };
  for (const [mass, collar, kind, total] of [[20, 0, "straight", 60], [20, 2.5, "straight", 65], [15, 0, "straight", 55], [15, 0.25, "straight", 55.5], [7.5, 0, "straight", 47.5], [25, 0, hex, 65], [32, 2.5, hex, 77]]) {
    const own = { bar: { ...bar(mass, collar).bar, kind } };
    const today = squatOf(gym(own, discs, total));
    assert.deepEqual([faces(today), today.load], [[20], kg(total)], `${mass} ${collar}`);
    assert.deepEqual(loading.readBar({ bar: own.bar, stock: { discs }, left: [0], right: [0], uneven: false, tolerance: "iwf" }).total, kg(total));
  }
});

test("row_09: the loads that can be made, and their largest gap", () => {
  const all = gym(bar(20), [disc(10, 2), disc(2.5, 2)], 25);
  const made = loading.reachable({ implement: all.implements[0], stock: all.stock, low: kg(0), high: kg(100) });
  assert.deepEqual(made.totals, [20, 25, 40, 45].map(kg));
  assert.deepEqual(made.largestGap, { from: kg(25), to: kg(40), size: kg(15) });
  const { loaded } = squatOf(all);
  assert.deepEqual([loaded.nextBelow, loaded.nextAbove], [kg(20), kg(40)]);
});

/** A squat that stands on the floor at 225 mm. */
const pull = (discs, blocks, load, implement = bar(20)) => {
  const all = gym(implement, discs, load);
  Object.assign(all.lifts[0], { startsFrom: "floor", ranges: [mm(225)] });
  all.blocks = blocks.map(mm);
  return all;
};

test("row_10: the height of the bar follows from its discs", () => {
  const today = squatOf(pull([disc(20, 2, 450)], [], 60));
  assert.deepEqual([today.height, today.loaded.centreHeight], [mm(225), mm(225)]);
});

test("row_11: blocks keep the height of a lighter load", () => {
  // Discs of 325 mm carry the bar 162.5 mm high: 62.5 mm of blocks hold 225 mm; of 60 mm it is 2.5 mm too low, and said.
  const held = (blocks) => new World(pull([disc(20, 2, 450), disc(10, 4, 325)], blocks, 60)).well().overruled("squat", 40, 7).today("squat");
  const exact = held([30, 62.5]);
  assert.deepEqual([exact.load, exact.blocks], [kg(40), mm(62.5)]);
  const off = held([60]);
  assert.deepEqual([off.load, off.blocks], [kg(40), mm(60)]);
  assert.ok(off.reasons.some((one) => one.heightOff?.mm === -2.5), JSON.stringify(off.reasons));
});

test("row_12: a hex bar has two heights of the hands", () => {
  const hex = { bar: { ...bar(20).bar, kind: { hex: { lowHandle: mm(0), highHandle: mm(130) } } } };
  const { height } = squatOf(pull([disc(20, 2, 450)], [], 60, hex));
  assert.deepEqual(loading.gripHeight({ bar: hex.bar, centre: height }), { low: mm(225), high: mm(355) });
});

test("row_13: a warm-up rises to the work", () => {
  const ladder = (today) => today.warmUp.map((set) => [set.load.kg, set.reps]);
  assert.deepEqual(ladder(squatOf(parameters())), [[24, 5], [36, 3], [48, 2]]);
  assert.deepEqual(ladder(squatAtMost(57)), [[22, 5], [34, 3], [45, 2]]);
});

/** Discs of 20 and 10 kg: warm-ups of 20, 40 and 60 kg before 80. */
const tens = (load) => new World(gym(bar(20), [disc(20, 2), disc(10, 6)], load)).well();

test("row_14: the fewest discs are handled", () => {
  const found = atTheRack(tens(80), "squat");
  assert.deepEqual(found.sets.map((set) => set.load.kg), [20, 40, 60, 80]);
  assert.deepEqual([found.proved, found.movesEachEnd], [true, 3]);
});

test("row_15: two share a bar", () => {
  const lifters = [80, 60].map((load) => ({ log: tens(load).log, plan: planOf(["squat"]), lift: "squat" }));
  const found = answers.share({ lifters, today: "2026-01-05" });
  assert.deepEqual(found.lifters.map((one) => one.loads.map((load) => load.kg)), [[20, 40, 60, 80, 80], [20, 40, 60, 60]]);
  assert.deepEqual([found.bar.turns[0].lifter, found.bar.movesEachEnd, found.bar.proved], [1, 3, true]);
});

test("row_16: the bar does not tip on the way", () => {
  // 24, 36, 48 and 60 kg: 2 on each end; 2 off, then 5, 2 and 1 on; those off, then 10 and two of 2 on; two of 2 off, 10 on. The
  // most by which one end is heavier, followed here disc by disc: the ends in turn, and one end first and then the other.
  const { discs } = parameters().stock;
  const followed = (order) => {
    const ends = { left: 0, right: 0 };
    return Math.max(...order.map(({ end, kind, on }) => {
      ends[end] += on ? discs[kind].nominal.kg : -discs[kind].nominal.kg;
      return Math.abs(ends.left - ends.right);
    }));
  };
  const sets = atTheRack(new World().well(), "squat").sets.map(({ load, handling: { order, mostImbalance, oneEndFirst } }) => {
    const inTurn = followed(order);
    const oneFirst = followed(["left", "right"].flatMap((end) => order.filter((one) => one.end === end)));
    assert.deepEqual([mostImbalance, oneEndFirst], [kg(inTurn), kg(oneFirst)]);
    return [load.kg, inTurn, oneFirst];
  });
  assert.deepEqual(sets, [[24, 2, 2], [36, 5, 8], [48, 10, 14], [60, 10, 10]]);
});

const withBells = () =>
  parameters((all) => {
    all.lifts[1].implement = "bells";
    all.lifts[1].start.work.load = kg(8);
  });

test("row_17: dumbbells come in their own steps", () => {
  const world = new World(withBells()).well();
  const { loaded } = world.today("press");
  assert.deepEqual([loaded.setting, loaded.nextBelow, loaded.nextAbove], [{ piece: kg(8) }, kg(6), kg(10)]);
  assert.deepEqual(world.overruled("press", 7, 7).today("press").load, kg(6));
});

test("row_18: a step that is too large is not offered", () => {
  // From 8 to 10 kg is 25 %, where 10 % are allowed; 2 kg on 20 are 10 %, 2.5 are 12.5 %.
  const against = new World(withBells()).passing("press", 4).well().against("press");
  assert.deepEqual(against, [{ noLoadableStep: { cap: kg(8.8), next: kg(10) } }]);
  for (const [smallest, to] of [[1, 22], [1.25, undefined]]) {
    const world = new World(gym(bar(20), [disc(10, 2), disc(smallest, 2)], 20)).passing("squat", 4).well();
    assert.equal(world.offered("squat")?.work.load.kg, to, String(smallest));
  }
});

test("row_19: repetitions bridge a step that is too large", () => {
  const { step } = atTheRack(new World(withBells()).well(), "press");
  assert.deepEqual([step.next.total, step.percent, step.size, step.repsFirst], [kg(10), 25, "above_range", 14]);
  const squat = atTheRack(new World().well(), "squat").step;
  assert.deepEqual([squat.next.total, squat.size, squat.repsFirst], [kg(61), "below_range", 6]);
});

test("row_20: more help is less load", () => {
  const all = parameters((change) => {
    const stack = (id, ratio) => ({ id, start: kg(0), plates: Array.from({ length: 6 }, () => kg(10)), addOns: [], ratio });
    change.implements.push({ assistance: stack("helper", 1) }, { machine: stack("cable", 0.5) });
    change.lifts.push({ ...lift("pull-up", "back", -30), implement: "helper" }, { ...lift("row", "back", 15), implement: "cable" });
  });
  const world = new World(all);
  world.add({ bodyMassRecorded: kg(80) });
  world.well();
  assert.deepEqual([world.today("pull-up").load, world.today("row").load], [kg(-30), kg(15)]);
  assert.deepEqual(world.today("row").loaded.setting, { selected: { plates: 3, addOns: [] } });
  assert.deepEqual(world.after(work(kg(-30), 1, false), { lift: "pull-up" }).then, { downTo: kg(-40) });
});

const evidence = (effort = "failure") => [{ load: kg(100), reps: 5, effort, technique: "passed", day: monday(0) }];
const epley = { ...oneRm.estimateOptionsDefault, equations: ["epley_1985"] };

/** What the log of that set says about the squat, and what one equation alone says there. */
const newestOf = (set) => answers.trend({ log: weekly(1, () => ({ squat: [set] })), lift: "squat", today: monday(1) }).newest;
const alone = (estimate, equation) => estimate.byEquation.find((one) => one.equation === equation).value.kg;

test("row_21: published equations over a set of the log", () => {
  for (const [name, spelled, kilograms] of [["epley1985", "epley_1985", 116.666667], ["brzycki1993", "brzycki_1993", 112.5], ["oconner1989", "oconner_1989", 112.5], ["lombardi1989", "lombardi_1989", 117.461894]]) {
    near(oneRm[name]({ load: kg(100), reps: 5 }).kg, kilograms, 1e-5, name);
    near(oneRm.estimate({ evidence: evidence(), options: { ...oneRm.estimateOptionsDefault, equations: [spelled] } }).value.kg, kilograms, 1e-5, name);
    near(alone(newestOf(missedAfter(100, 5)).asCalled, spelled), kilograms, 1e-5, name);
  }
});

test("row_22: an estimate is a range over the equations", () => {
  const log = weekly(1, () => ({ squat: [missedAfter(100, 5)] }));
  const [point] = answers.trend({ log, lift: "squat", today: monday(1) }).points;
  const { byEquation } = oneRm.estimate({ evidence: evidence(), options: oneRm.estimateOptionsDefault });
  const each = byEquation.flatMap((one) => (one.value ? [one.value.kg] : []));
  assert.ok(each.length >= 6);
  const [low, value, high] = [point.low, point.value, point.high].map((one) => one.kg ?? one);
  assert.ok(each.every((one) => low < one && one < high), `${each} in ${JSON.stringify(point)}`);
  assert.ok(each.some((one) => one < value) && each.some((one) => one > value));
});

test("row_23: the load for repetitions and reserve, and back", () => {
  const max = oneRm.epley1985({ load: kg(100), reps: 5 });
  const load = oneRm.loadFor({ oneRm: max, reps: 5, rir: 3, equation: "epley_1985" });
  near(load.kg, 92.105263, 1e-5);
  near(oneRm.repsFor({ fraction: load.kg / max.kg, rir: 3, equation: "epley_1985" }), 5, 1e-9);
  // From a log: five at 60 kg with 1 left are 72 kg, of which five with 3 left are 56.842; 56 can be made. What five at 61 ask for
  // is 5.58 repetitions at 60.
  const world = new World().well();
  const next = world.after([done(60, 5, { effort: { rir: 1 } })]);
  assert.deepEqual([next.then, next.work.reps], [{ downTo: kg(56) }, 5]);
  near(next.reasons.find((one) => one.byEffort).byEffort.part, 56.842105 / 60 - 1, 1e-6);
  const { step } = atTheRack(world, "squat");
  assert.deepEqual([step.next.total, step.repsFirst], [kg(61), 6]);
});

test("row_24: the own curve recovers a simulated lifter", () => {
  const log = weekly(10, () => ({ squat: [missedAfter(88.69, 4), missedAfter(81.87, 6), missedAfter(69.77, 10)] }));
  const { curve, enough } = answers.curve({ log, lift: "squat", today: monday(10) });
  near(curve.slope, 0.04, 0.002);
  assert.ok(enough && curve.slopeInterval.low < 0.04 && 0.04 < curve.slopeInterval.high);
});

test("row_25: ratings and reserves are two ways to say it", () => {
  const world = new World().well();
  const after = (effort) => world.after([done(60, 5, { effort })]);
  assert.deepEqual(after({ rpe: 9 }), after({ rir: 1 }));
  assert.notDeepEqual(after({ rpe: 1 }).then, after({ rir: 1 }).then);
  assert.equal(refusal(() => after({ rpe: 11 })).field, "done.sets[0].effort.rpe");
});

test("row_26: what people leave unsaid can be counted", () => {
  const with_ = (reps) => oneRm.estimate({ evidence: evidence({ rir: 2 }), options: { ...epley, bias: { reps } } });
  near(with_(0).value.kg, 123.333333, 1e-5);
  near(with_(oneRm.halperin2022UnderCall).value.kg, 126.5, 1e-5);
  assert.ok(with_(0).leftUnsaid > 0 && with_(0).interval.high > 126.5);
  // A log answers with both; a set to failure leaves nothing unsaid.
  const { asCalled, withUnsaid } = newestOf(done(100, 5, { effort: { rir: 2 }, marks: marks(5, 5, "met") }));
  near(alone(asCalled, "epley_1985"), 123.333333, 1e-5);
  near(alone(withUnsaid, "epley_1985"), 126.5, 1e-5);
  assert.ok(asCalled.interval.high > withUnsaid.value.kg);
  assert.equal(newestOf(missedAfter(100, 5)).withUnsaid, undefined);
});

/** How a squat of sets with those marks ended. */
const outcome = (world) => answers.handover({ log: world.log, today: world.day, since: world.day }).lifts.find((one) => one.lift === "squat").last?.outcome;
const afterMarks = (each) => {
  const world = new World().well();
  world.add(session({ squat: each.map((one) => done(60, 5, { effort: { rir: 3 }, ...(one ? { marks: one } : {}) })) }));
  return outcome(world);
};

test("row_27: a session passes by its marks", () => {
  const clean = marks(5, 5, "met");
  const table = [[clean, clean], [clean, marks(5, 5, "not_met")], [clean, marks(5, 2, "met")], [undefined, undefined], [clean, undefined], [clean, marks(5, 5, "not_seen")]];
  assert.deepEqual(table.map(afterMarks), ["pass", "fail", "fail", "not_scored", "not_scored", "not_scored"]);
});

test("row_28: the first repetition that failed is kept", () => {
  const slipped = { ...marks(5, 3, "met"), firstFailingRep: 3 };
  const world = new World();
  world.add(session({ squat: [marks(5, 5, "met"), slipped].map((one) => done(60, 5, { marks: one })) }));
  const { last } = answers.handover({ log: world.log, today: world.day, since: world.day }).lifts[0];
  const [{ pass, criteria }] = parameters().lifts;
  assert.deepEqual(gate.sessionPass({ rules: pass, criteria, sets: last.sets.map((set) => set.marks) }).firstFailing, { set: 2, rep: 3 });
});

test("row_29: the cold first set is judged by itself", () => {
  // Of 20 repetitions 2 may be missed, of the 5 of one set 1, and none of the first two of the first set.
  const missed = (acceptable, firstFailingRep) => ({ ...marks(5, acceptable, "met"), firstFailingRep });
  const inSet = (number, one) => afterMarks([1, 2, 3, 4].map((at) => (at === number ? one : marks(5, 5, "met"))));
  for (const [one, cold, later] of [
    [missed(4, 3), "pass", "pass"],
    [missed(4, 2), "fail", "pass"],
    [missed(3, 3), "fail", "pass"],
    [marks(5, 5, "not_met"), "fail", "fail"],
    [undefined, "not_scored", "not_scored"],
  ]) assert.deepEqual([inSet(1, one), inSet(2, one)], [cold, later], JSON.stringify(one));
});

const passing = (world) => {
  const found = world.today("squat").gate.missing.find((one) => one.passingSessions)?.passingSessions;
  return found && [found.have, found.need];
};

test("row_30: a gate opens by sessions on distinct days", () => {
  const world = new World().well();
  assert.deepEqual(passing(world), [0, 2]);
  world.train("squat");
  world.train("squat");
  world.morning();
  assert.deepEqual(passing(world), [1, 2]);
  world.wait(1).passing("squat");
  assert.equal(passing(world), undefined);
  world.well().train("squat", false);
  world.morning();
  assert.deepEqual(passing(world), [0, 2]);
});

test("row_31: how long a gate holds a lifter of some skill", () => {
  // 10 x 0.9^9 x 0.1 + 0.9^10 = 0.736099 a session, two in a row take (1 + p) / p^2.
  const found = gate.operatingCharacteristic({ gate: parameters().lifts[0].gate, skill: { rate: 0.9 }, sessions: 12 });
  const p = 0.7360989295;
  near(found.session, p, 1e-9);
  near(found.meanSessions, (1 + p) / (p * p), 1e-6);
});

test("row_32: a lift that is kept is looked at every four weeks", () => {
  const world = new World().passing("squat", 2);
  const last = plus(world.day, -3);
  world.add({ roleSet: { lift: "squat", role: "maintain" } });
  assert.equal(world.today("squat").reasons.find((one) => one.probeDue).probeDue.by, plus(last, 28));
});

test("row_33: the course of a lift is a fold of its events", () => {
  const world = new World();
  const course = [world.status("squat")];
  for (let at = 0; at < 3; at += 1) course.push(world.passing("squat").status("squat"));
  assert.deepEqual(course, ["learning", "holding", "readyToAdvance", "readyToAdvance"]);
  world.well().add({ advanceAccepted: { lift: "squat", who: "coach" } });
  assert.equal(world.status("squat"), "consolidating");
  for (let at = 0; at < 2; at += 1) {
    world.wait(3).well().train("squat", false);
    world.morning();
  }
  assert.equal(world.status("squat"), "steppingBack");
  const progress = new Progress({ ...world.log, events: [] });
  world.log.events.forEach((event) => progress.apply(event));
  assert.deepEqual(progress.state(), world.state());
  progress.close();
});

test("row_34: a decision names everything in its way", () => {
  const world = new World().well("below");
  world.train("squat");
  const first = codes(world.against("squat"));
  for (const one of ["gate_not_open", "passProvisional", "day_below"]) assert.ok(first.includes(one), `${one}: ${first}`);
  world.morning();
  const then = codes(world.well().against("squat"));
  assert.deepEqual(["gate_not_open", "passProvisional", "day_below"].map((one) => then.includes(one)), [true, false, false]);
  // With a step on offer each guard alone is in its way, and is the only one.
  const offered = new World().passing("squat", 4).well();
  for (const [guard, expected] of [
    [(own) => own.well("below"), ["day_below"]],
    [(own) => own.well("below_single"), ["day_below_single"]],
    [(own) => own.wait(1), ["painNotAsked", "day_unknown", "asks_not_asked"]],
    [(own) => own.pain("knee", 4), ["painBlock"]],
    [(own) => own.add({ roleSet: { lift: "squat", role: "maintain" } }), ["maintaining"]],
    [(own) => own.add({ dayReport: { class: "within", pain: [], asks: ["new_medicine"] } }), ["asksFirst"]],
    [(own) => own.add({ clearanceRecorded: { status: "cleared", who: "clinic", expires: own.day } }) && own.wait(1).well(), ["clearanceExpired"]],
    [(own) => own.train("squat"), ["gate_not_open", "passProvisional"]],
  ]) {
    const own = Object.assign(new World(), { log: offered.log, day: offered.day });
    assert.deepEqual(own.against("squat"), []);
    guard(own);
    assert.deepEqual(codes(own.against("squat")), expected);
  }
});

test("row_35: pain falls into zones", () => {
  const at = (score) => {
    const world = new World().passing("squat", 4).well();
    world.pain("knee", score);
    return [world.today("squat").verdict, world.offered("squat") !== undefined, world.today("press").verdict];
  };
  assert.deepEqual(at(0), ["train", true, "train"]);
  assert.equal(at(2)[0], "train");
  assert.deepEqual(at(4), ["ease_off", false, "train"]);
  assert.deepEqual(at(6), ["stop", false, "train"]);
});

test("row_36: the morning after takes a pass back", () => {
  const told = (pain) => {
    const world = new World().passing("squat", 2).well();
    world.train("squat");
    assert.ok(codes(world.against("squat")).includes("passProvisional"));
    world.morning(pain);
    return outcome(world);
  };
  assert.deepEqual([told([]), told([{ region: "knee", score: 4, features: ["rising"] }])], ["pass", "fail"]);
});

test("row_37: a symptom stops everything", () => {
  const world = new World().well();
  world.add({ symptomReport: { signs: ["chest_pain"] } });
  const verdicts = () => ["squat", "press"].map((id) => world.today(id).verdict);
  assert.deepEqual(verdicts(), ["stop", "stop"]);
  world.clear();
  assert.deepEqual(verdicts(), ["stop", "stop"]);
  world.add({ coachSignOff: { who: "coach", scope: "everything" } });
  world.wait(1).well();
  assert.ok(!verdicts().includes("stop"), String(verdicts()));
});

test("row_38: an override has its name, its reason and its end", () => {
  const world = new World().passing("squat", 2).well().overruled("squat", 62, 3);
  const until = plus(world.day, 3);
  const inForce = () => world.today("squat").reasons.find((one) => one.overrideInForce)?.overrideInForce;
  assert.deepEqual([inForce(), world.today("squat").load], [{ load: kg(62), who: "coach", until }, kg(62)]);
  world.wait(4).well();
  assert.deepEqual([inForce(), world.today("squat").limit], [undefined, kg(60)]);
  world.add({ coachOverride: { lift: "squat", load: kg(62), who: "coach", expires: plus(world.day, 7) } });
  assert.deepEqual(world.today("squat").limit, kg(60));
  assert.ok(codes(world.today("squat").reasons).includes("overrideRefused"));
});

test("row_39: a clearance holds to its last day", () => {
  const world = new World();
  world.add({ clearanceRecorded: { status: "cleared", who: "clinic", expires: plus(world.day, 30) } });
  const expired = () => codes(world.against("squat")).includes("clearanceExpired");
  assert.deepEqual([world.wait(30).day, expired()], ["2026-02-04", false]);
  world.wait(1);
  assert.equal(expired(), true);
});

test("row_40: a break is followed by less", () => {
  const trained = new World(parameters((all) => { all.lifts[0].stepCap = 0.05; })).passing("squat", 2);
  const last = plus(trained.day, -3);
  const after = (days) => {
    const world = new World(parameters());
    Object.assign(world, { log: trained.log, day: plus(last, days) });
    return world.well().today("squat").load.kg;
  };
  assert.deepEqual([10, 20, 21, 41, 42, 84].map(after), [60, 57, 54, 54, 48, 39]);
});

test("row_41: a missed session is shifted, merged or dropped", () => {
  const log = logOf([start(), ["2026-03-02", session({ squat: sets(2, 5, 60) })], ["2026-03-04", { sessionMissed: { reason: "travel" } }]]);
  const then = (day) => answers.missed({ log, plan: planOf(["squat"]), today: "2026-03-05", next: { day, lifts: ["squat"] } }).lifts[0].then;
  assert.deepEqual([then("2026-03-07"), then("2026-03-15")], ["drop", { shiftTo: "2026-03-05" }]);
  // On Saturday the other lift of the knee is planned: the squats go into that session. Nothing is added to what would have been done.
  const both = parameters((all) => all.lifts.push(lift("box squat", "knee", 50)));
  const events = [start(both), ["2026-03-02", session({ squat: sets(2, 5, 60) })]];
  const [kept, missed] = [events, [...events, ["2026-03-04", { sessionMissed: { reason: "travel" } }]]].map((one) => logOf(one));
  const plan = planOf(["squat", "box squat"]);
  const found = answers.missed({ log: missed, plan, today: "2026-03-05", next: { day: "2026-03-07", lifts: ["box squat"] } });
  assert.deepEqual(found.lifts[0].then, { mergeInto: "2026-03-07" });
  for (const today of ["2026-03-05", "2026-03-07", "2026-03-15"]) {
    const asked = (of) => prescription.nextSession({ log: of, plan, today }).lifts.map((one) => [one.load, one.sets, one.reps, one.limit]);
    assert.deepEqual(asked(missed), asked(kept), today);
  }
});

/** Two ways up from the easy rung, and one rung above both. */
const ladder = () =>
  parameters((all) => {
    const above = { easy: [], goblet: ["easy"], box: ["easy"], full: ["goblet", "box"] };
    all.lifts[0].rungs = Object.entries(above).map(([id, harderThan]) => ({ id, harderThan }));
    all.lifts[0].moving = "variant";
  });

test("row_42: rungs are ordered where a chain connects them", () => {
  // From the goblet squat the step is the full one, past the box squat that is not comparable, at four fifths or less.
  const to = new World(ladder()).passing("squat", 4).well().offered("squat");
  assert.deepEqual([to.place.rung, to.work.load], [3, kg(48)]);
  const circle = ladder();
  circle.lifts[0].rungs[0].harderThan = ["full"];
  assert.ok(refusal(() => new World(circle)).field.includes("rungs"));
});

test("row_43: a range grows by one height", () => {
  const world = new World(parameters((all) => Object.assign(all.lifts[0], { startsFrom: "pins", ranges: [300, 262.5, 225].map(mm), moving: "range" })));
  world.passing("squat", 4).well();
  assert.deepEqual(world.today("squat").height, mm(300));
  const to = world.offered("squat");
  assert.deepEqual([to.place.range, to.place.rung, to.work.reps], [1, 1, 5]);
  assert.ok(to.work.load.kg <= 60);
  world.add({ advanceAccepted: { lift: "squat", who: "coach" } });
  assert.deepEqual(world.today("squat").height, mm(262.5));
});

test("row_44: a tempo is seconds down, held and up, and stays so in a log", async () => {
  const slow = { down: 3, hold: 1, up: 1 };
  const at = (tempos) => new World(parameters((all) => {
    all.lifts[0].tempos = tempos;
    all.lifts[0].start.place.tempo = 1;
  }));
  const { log } = at([{ down: 2, hold: 0, up: 1 }, slow]);
  const read = fromJson(JSON.parse(JSON.stringify(toJson(log))));
  assert.deepEqual(read, log);
  const [, { grant: { place } }] = progression.fold({ log: read }).lifts[0];
  assert.deepEqual(read.events[0].kind.parametersChanged.lifts[0].tempos[place.tempo], slow);
  assert.match(refusal(() => at([slow, { down: 300, hold: 0, up: 1 }])).field, /tempos\[1\]\.down$/);
  // In words where the sentences are built; they are read from words in Rust alone.
  const said = (await sentences())?.handover({ log: read, today: "2026-01-05", since: "2026-01-05", unit: "kg" }) ?? ["3 s down, 1 s hold, 1 s up"];
  assert.ok(said.some((line) => line.includes("3 s down, 1 s hold, 1 s up")), String(said));
});

test("row_45: two places are compared one thing at a time", () => {
  // Granted are 2 x 5 at 60 kg on the harder of two rungs.
  const { log, day: today } = new World();
  const grant = (rung, sets, load, reps = 5) => ({ place: { rung, range: 0, tempo: 0 }, work: { sets, reps, load: kg(load) } });
  const found = (to, from) => {
    const { harder, easier, sideways } = answers.compare({ log, lift: "squat", today, to, ...(from ? { from } : {}) });
    return [harder, easier, sideways];
  };
  assert.deepEqual(found(grant(1, 2, 60)), [[], [], false]);
  assert.deepEqual(found(grant(0, 3, 62)), [["sets", "load"], ["variant"], false]);
  assert.deepEqual(found(grant(1, 2, 60), grant(0, 3, 62)), [["variant"], ["sets", "load"], false]);
  assert.equal(refusal(() => found(grant(2, 2, 60))).field, "to.place.rung");
});

test("row_46: the strict lift waits for the forgiving one", () => {
  // 0.6 x 60 = 36 kg.
  const world = new World(parameters((all) => { all.pairs = [{ strict: "press", forgiving: "squat", ratioCap: 0.6 }]; }));
  for (let at = 0; at < 4; at += 1) {
    world.passing("squat");
    world.passing("press");
  }
  world.well();
  assert.deepEqual(world.against("press").find((one) => one.pairCap), { pairCap: { load: kg(36) } });
  assert.ok(!codes(world.against("squat")).includes("pairCap"));
});

test("row_47: the own ratio of a pair replaces the prior", () => {
  const log = weekly(10, () => ({ squat: [missedAfter(60, 1)], press: [missedAfter(72, 1)] }));
  const found = answers.pair({ log, strict: "squat", forgiving: "press", today: monday(10) });
  near(found.own.ratio, 1.2, 0.005);
  assert.deepEqual([found.replacesPrior, found.place], [true, "usual"]);
});

test("row_48: pain concerns every lift of its region", () => {
  const world = new World(parameters((all) => all.lifts.push(lift("split squat", "knee", 40)))).passing("squat");
  world.pain("knee", 4);
  const blocks = ["squat", "split squat", "press"].map((id) => world.against(id).find((one) => one.painBlock)?.painBlock);
  const block = { region: "knee", clearSessions: 2, score: 4 };
  assert.deepEqual(blocks, [block, block, undefined]);
});

test("row_49: nothing moves before calibration is done", () => {
  const world = new World(parameters((all) => { all.lifts[0].learningSessions = 4; }));
  const [offered, learning] = [[], []];
  for (let at = 0; at < 6; at += 1) {
    world.well();
    offered.push(world.offered("squat") !== undefined);
    learning.push(world.today("squat").status === "learning");
    world.train("squat");
    world.morning();
    world.wait(2);
  }
  assert.deepEqual(learning, [true, true, true, true, false, false]);
  assert.deepEqual([offered.slice(0, 4).includes(true), offered[5]], [false, true]);
});

/** Six days on which these markers had this value. */
const six = (kinds, value, conditions) =>
  logOf([start(), ...Array.from({ length: 6 }, (_, at) => [plus("2026-02-02", at), { dayReport: { markers: kinds.map((kind) => ({ kind, value, conditions })) } }])]);
const judged = (log, markers) => answers.day({ log, today: "2026-02-10", answers: { markers, technique: "not_scored" } }).verdict;

test("row_50: a marker is read against the own baseline", () => {
  const [vote] = judged(six(["recovery"], 7, {}), [{ kind: "recovery", value: 5, conditions: {} }]).votes;
  near(vote.score, -2 / 0.59, 1e-9);
  assert.equal(vote.baseline.values, 6);
  // 5, 6, 7, 7, 8, 9: the middle is 7, the middle distance from it 1, so the spread is 1.4826; moved by one it is the same, of
  // stress more is worse, and who scatters twice as much is half as far below with the same 3.
  const score = (kind, values, now) => {
    const log = logOf([start(), ...values.map((value, at) => [plus("2026-02-02", at), { dayReport: { markers: [{ kind, value, conditions: {} }] } }])]);
    const [own] = judged(log, [{ kind, value: now, conditions: {} }]).votes;
    assert.equal(own.baseline.floored, false);
    return own.score;
  };
  const own = [5, 9, 7, 6, 7, 8];
  for (const [kind, by, now] of [["recovery", 0, 4], ["recovery", 1, 3], ["stress", 3, 7]]) near(score(kind, own.map((value) => value - by), now), -3 / 1.4826, 1e-3, kind);
  near(score("recovery", [3, 9, 6, 4, 6, 8], 3), -3 / (2 * 1.4826), 1e-3);
});

test("row_51: markers vote, and what is missing is never good", () => {
  const kinds = ["recovery", "sleep", "mood"];
  const log = six(kinds, 7, {});
  const of = (values) => judged(log, values.map((value, at) => ({ kind: kinds[at], value, conditions: {} }))).class;
  assert.deepEqual([of([3, 7, 7]), of([3, 3, 7]), of([10])], ["below_single", "below", "unknown"]);
  const silent = answers.day({ log, today: "2026-02-10" });
  assert.deepEqual([silent.verdict, silent.missing], [undefined, ["day_answers"]]);
});

test("row_52: verdicts that are chance are called chance", () => {
  const days = Array.from({ length: 24 }, (_, at) => {
    const on = plus("2026-02-02", 4 * at);
    return [[on, allWell(at % 2 === 0 ? "below" : "within")], [on, session({ squat: [done(60, 5, { failed: at % 4 < 2 })] })]];
  });
  const { calibration } = answers.verdicts({ log: logOf([start(), ...days.flat()]), today: "2026-06-30" });
  assert.deepEqual([calibration.hits, calibration.falseAlarms, calibration.misses, calibration.quiet, calibration.skill], [6, 6, 6, 6, "no_better_than_chance"]);
});

test("row_53: the fixed set is compared under equal conditions", () => {
  const morning = { lift: "squat", load: kg(40), reps: 5, timeOfDay: "morning", caffeine: false };
  const log = six(["warm_up_effort"], 3, morning);
  const vote = (conditions) => judged(log, [{ kind: "warm_up_effort", value: 6, conditions }]).votes[0].vote;
  assert.deepEqual([vote(morning), vote({ ...morning, caffeine: true }), vote({ ...morning, load: kg(45) })], ["below", "not_enough_history", "not_enough_history"]);
});

test("row_54: velocity is compared at its load and makes no maximum", () => {
  const log = weekly(6, (week) => ({ squat: [done(60, 3, { velocity: 0.5 + 0.01 * week })] }));
  const found = answers.trend({ log, lift: "squat", today: monday(6) });
  near(found.velocity.perWeek, 0.01, 1e-12);
  assert.deepEqual([found.report, found.missing], [undefined, [{ usableSet: "squat" }]]);
  // Sets that do speak about strength: with and without a velocity, slow or fast, every estimate and the day's load are the same.
  const told = (velocity) => {
    const own = weekly(10, (week) => ({ squat: [[88.69, 4], [81.87, 6], [69.77, 10]].map(([load, reps]) => ({ ...missedAfter(load, reps), ...velocity(week) })) }));
    const { velocity: seen, ...strength } = answers.trend({ log: own, lift: "squat", today: monday(10) });
    return [seen?.perWeek, [strength, answers.curve({ log: own, lift: "squat", today: monday(10) }), prescription.nextSession({ log: own, plan: planOf(["squat"]), today: monday(10) }).lifts[0].load]];
  };
  const [none, plain] = told(() => ({}));
  assert.ok(none === undefined && plain[0].report);
  for (const [from, by] of [[0.5, 0.01], [1.6, -0.01]]) {
    const [perWeek, same] = told((week) => ({ velocity: from + by * week }));
    near(perWeek, by, 1e-9);
    assert.deepEqual(same, plain);
  }
});

/** A squat of 4 x 5 at 60 kg. */
const four = () => new World(parameters((all) => { all.lifts[0].start.work.sets = 4; })).well();
const clean = (load, reps, effort) => done(load, reps, { effort, marks: marks(reps, reps, "met") });
const lost = (load) => done(load, 5, { effort: { rir: 3 }, marks: marks(5, 4, "not_met") });
const then = (rule, each) => four().after(each, { rule }).then;

test("row_55: the load after a set, by rating and by curve", () => {
  const rule = { fixedPerPoint: {} };
  assert.deepEqual([1, 2, 3].map((rir) => then(rule, [clean(60, 5, { rir })])), [{ downTo: kg(55) }, { downTo: kg(57) }, "same"]);
  assert.deepEqual(then({ fixedPerPoint: { part: 0.02 } }, [clean(60, 5, { rir: 1 })]), { downTo: kg(57) });
  // By Epley 1985: 60 (1 + 6/30) = 72; 72 / (1 + 8/30) = 56.84.
  assert.deepEqual(then("own_curve", [clean(60, 5, { rir: 1 })]), { downTo: kg(56) });
});

test("row_56: back-off sets end when the rating is reached again", () => {
  const rule = (reduction) => ({ backOff: { reduction, rating: 8 } });
  const top = clean(60, 5, { rpe: 8 });
  assert.deepEqual([0.02, 0.04, 0.06].map((part) => then(rule(part), [top])), [58, 57, 56].map((load) => ({ downTo: kg(load) })));
  const easy = clean(57, 5, { rpe: 7.5 });
  assert.deepEqual([then(rule(0.04), [top, easy]), then(rule(0.04), [top, easy, clean(57, 5, { rpe: 8 })])], ["same", "stop"]);
});

test("row_57: double progression lowers below the range and raises nothing", () => {
  const rule = { doubleProgression: { bottom: 5, top: 8 } };
  assert.deepEqual(then(rule, [clean(60, 4, { rir: 3 })]), { downTo: kg(54) });
  const top = four().after([clean(60, 8, { rir: 3 }), clean(60, 8, { rir: 3 })], { rule });
  assert.deepEqual([top.then, codes(top.reasons), top.work.reps], ["same", ["topOfRange"], 5]);
});

test("row_58: the table of repetitions", () => {
  const rule = "repetition_table";
  assert.deepEqual([2, 4].map((reps) => then(rule, [clean(60, reps, { rir: 0 })])), [{ downTo: kg(55) }, "same"]);
  const more = four().after([clean(60, 6, { rir: 0 })], { rule });
  assert.deepEqual([more.then, codes(more.reasons)], ["same", ["byTable", "limited"]]);
  // Every row, from 50 kg: of a decrease the larger, of an increase the smaller; 52.5 kg cannot be made, 52 can.
  const rows = [[0, 2, -5, -2.5, { downTo: kg(45) }], [3, 4, 0, 0, "same"], [5, 6, 2.5, 5, { upTo: kg(52) }], [7, 10, 2.5, 7.5, { upTo: kg(52) }], [11, 15, 5, 10, { upTo: kg(55) }]];
  for (const [from, to, least, most, expected] of rows) {
    for (let reps = from; reps <= to; reps += 1) {
      const found = four().after([clean(50, reps, { rir: 0 })], { rule });
      assert.deepEqual([found.then, found.reasons], [expected, [{ byTable: { least: kg(least), most: kg(most) } }]], String(reps));
    }
  }
});

test("row_59: technique ends the set, and then the lift", () => {
  for (const rule of ["technique_stop", { fixedPerPoint: {} }, "own_curve"]) {
    assert.deepEqual(then(rule, [clean(60, 5, { rir: 3 }), lost(60)]), { downTo: kg(54) });
    const twice = four().after([lost(60), lost(54)], { rule });
    assert.deepEqual([twice.then, twice.work, twice.instead], ["stop", undefined, "easier"]);
  }
});

test("row_60: nothing passes the day, and rounding goes down", () => {
  const rule = { fixedPerPoint: {} };
  // 50 x 1.04 = 52; 58 x 1.04 = 60.32, above the day's 60.
  assert.deepEqual([50, 58].map((load) => then(rule, [clean(load, 5, { rir: 4 })])), [{ upTo: kg(52) }, { upTo: kg(60) }]);
  assert.deepEqual(four().after([clean(64, 5, { rir: 3 })], { rule }).work.load, kg(60));
  assert.equal(four().after([clean(50, 5, { rir: 4 })], { rule, pain: [{ region: "knee", score: 1, features: [] }] }).then, "same");
  // From 59 kg the rule asks for 61.36, which can be made as 61: only the cap keeps it at 60. At most 58.6 kg by the coach: 59 is
  // the nearest to it, and what is given is 58, in the session and after a set that asks for 59.28.
  assert.deepEqual(then(rule, [clean(59, 5, { rir: 4 })]), { upTo: kg(60) });
  const capped = four().overruled("squat", 58.6, 7);
  const { load, limit, loaded } = capped.today("squat");
  assert.deepEqual([limit, load, loaded.nextAbove], [kg(58.6), kg(58), kg(59)]);
  assert.deepEqual(capped.after([clean(57, 5, { rir: 4 })], { rule }).then, { upTo: kg(58) });
});

test("row_61: volume load and sets by region", () => {
  // The demo log's last session, 24 August 2026: 15 x 33.5 + 15 x 23.5359237 = 855.5388555 kg.
  const week = answers.week({ log: demo.log, today: "2026-08-27" });
  assert.deepEqual([week.total.sets, week.total.repetitions], [6, 30]);
  near(week.total.volumeLoad.kg, 855.5388555, 1e-9);
  assert.deepEqual(week.regions.map((part) => [part.id, part.sets]), [["back", 3], ["elbow", 0], ["hip", 0], ["knee", 3], ["shoulder", 3]]);
});

test("row_62: session effort, monotony and strain", () => {
  const one = (on, effort, minutes) => [on, session({ squat: sets(3, 5, 60) }, { effort, minutes })];
  const { load } = answers.week({ log: logOf([start(), one("2026-02-23", 6, 50), one("2026-02-26", 3, 100)]), today: "2026-03-01" }).felt;
  assert.equal(load.total, 600);
  near(load.monotony.value, 0.632455532, 1e-9);
  near(load.strain, 379.473319, 1e-6);
});

test("row_63: the week against the own band is quiet after a holiday", () => {
  const verdict = (away) => {
    const one = (week, count) => [monday(week), session({ squat: sets(count, 5, 60) })];
    const log = logOf([start(), ...Array.from({ length: 8 }, (_, week) => one(week, 3)), one(8 + away, 6)]);
    return answers.week({ log, today: plus(monday(8 + away), 6) }).change.verdict;
  };
  assert.deepEqual([verdict(0), verdict(2)], ["more_than_usual", { quiet: "after_break" }]);
});

test("row_64: an easy week counts what life gave", () => {
  const status = (weeks) => {
    const log = logOf([start(), ...weeks.map((week) => [plus("2026-01-12", 7 * week), session({ squat: sets(4, 5, 60) })])]);
    return answers.easyWeek({ log, today: plus("2026-01-18", 42) }).status;
  };
  assert.deepEqual([status([0, 1, 2, 3, 4, 5, 6]), status([0, 1, 2, 4, 5, 6])], [{ consider: { weeksSince: 7 } }, { notYet: { weeksSince: 3 } }]);
});

test("row_65: the trend has an interval", () => {
  const rising = answers.trend({ log: weekly(9, (week) => ({ squat: [missedAfter(100 + week, 1)] })), lift: "squat", today: monday(9) }).report;
  assert.equal(rising.verdict, "rising");
  assert.ok(rising.slope.interval.low < 1 && 1 < rising.slope.interval.high);
  assert.ok(rising.slope.interval.high - rising.slope.interval.low < 2, JSON.stringify(rising.slope));
  // Holding at 100 kg is told apart from it: the interval holds nought, and nobody says "rising".
  const held = answers.trend({ log: weekly(9, () => ({ squat: [missedAfter(100, 1)] })), lift: "squat", today: monday(9) }).report;
  assert.equal(held.verdict, "within_noise");
  assert.ok(held.slope.interval.low < 0 && 0 < held.slope.interval.high && held.slope.interval.high < 1);
});

test("row_66: the smallest difference that is real", () => {
  const log = weekly(12, (week) => ({ squat: [missedAfter(week % 2 === 0 ? 99 : 101, 1)] }));
  const report = answers.trend({ log, lift: "squat", today: monday(12) }).report;
  assert.equal(report.verdict, "within_noise");
  const least = report.slope.smallestRealDifference;
  assert.ok(least > 2 && least < 15, String(least));
  // 1.96 x the square root of 2 x 2.9 kg, 2.9 % of 100 kg.
  near(oneRm.smallestRealChange({ oneRm: kg(100), cv: 0.029, level: 0.95 }).kg, 8.04, 0.01);
});

test("row_67: the card of a block", () => {
  const world = new World();
  world.add({ blockStarted: "spring" });
  world.passing("squat", 8);
  world.add({ blockEnded: "spring" });
  const answer = answers.blockReview({ log: world.log, today: world.day });
  const squat = answer.lifts.find((one) => one.lift === "squat");
  assert.deepEqual([squat.sessions, squat.passed, squat.notPassed, squat.unmarked, squat.acceptable, squat.scored], [8, 8, 0, 0, 80, 80]);
  assert.deepEqual([squat.advice, squat.trend, answer.block.name], [["keep"], "within_noise", "spring"]);
});

const shown = () => new World().passing("squat", 3);
const keep = (world, more = {}) => {
  const plan = planOf([], { years: { keep: [{ lift: "squat", name: "the sack", load: kg(50), atAge: 60 }] } });
  return answers.year({ log: world.log, plan, today: world.day, ...more });
};

test("row_68: a load to keep is held against what was shown", () => {
  const [kept] = keep(shown()).keep;
  assert.deepEqual(kept.shown.at(-1), kg(60));
  // 4.14 years at 1.2 % and ten at 1.7 %: 50 / (0.988^4.14 x 0.983^10) = 62.4.
  near(kept.plan.neededNow.low, 50, 1e-9);
  near(kept.plan.neededNow.high, 62.4, 0.1);
  assert.ok(keep(new World()).missing.some((one) => one.passOf === "squat"));
});

test("row_69: function tests are held against their floors", () => {
  const world = new World();
  world.add({ functionTested: { test: "grip", result: 24 } });
  const grip = (sex) => {
    const { margin } = answers.year({ log: world.log, plan: planOf([]), today: world.day, ...(sex ? { sex } : {}) }).tests.find((one) => one.test === "grip");
    return [margin.place, margin.margin.low, margin.margin.high];
  };
  assert.deepEqual([grip("female"), grip("male"), grip()[0]], [["above", 8, 8], ["below", -3, -3], "between"]);
});

test("row_70: what if it is held, raised, or lapses", () => {
  const known = (part) => ({ low: part, middle: part, high: part });
  const atSixty = (phases) => {
    const last = keep(shown(), { phases }).keep[0].whatIf.years.at(-1);
    return [last.median.kg ?? last.median, last.shareAboveFloor];
  };
  const hold = { until: 60, course: "hold" };
  const [held, raised, lapsed] = [[hold], [{ until: 50, course: { gain: known(0.02) } }, hold], [{ until: 50, course: { lapse: known(1 / 3) } }, hold]].map(atSixty);
  near(held[0], 60, 1e-9);
  near(raised[0], 65.1, 0.1);
  near(lapsed[0], 40, 1e-9);
  assert.deepEqual([held[1], raised[1], lapsed[1]], [1, 1, 0]);
});

test("row_71: a lift that is kept moves nowhere and says down to where", () => {
  const world = new World().passing("squat", 4).well();
  assert.deepEqual(world.offered("squat").work.load, kg(66));
  world.add({ roleSet: { lift: "squat", role: "maintain", notBelow: kg(54) } });
  assert.equal(world.offered("squat"), undefined);
  assert.ok(codes(world.against("squat")).includes("maintaining"));
  assert.deepEqual(world.today("squat").reasons.find((one) => one.maintainingBand), { maintainingBand: { notBelow: kg(54) } });
});

test("row_72: every answer names rows that have their source", () => {
  const { log, plan, today } = demo;
  const rows = new Map(registry().rows.map((row) => [row.key, row]));
  const asked = [
    answers.day({ log, today }), answers.trend({ log, lift: "strict press", today }), answers.curve({ log, lift: "strict press", today }),
    answers.week({ log, today }), answers.easyWeek({ log, today }), answers.missed({ log, plan, today }),
    answers.pair({ log, strict: "front squat", forgiving: "box squat", today }), answers.verdicts({ log, today }),
    answers.blockReview({ log, today }), answers.year({ log, plan, today }), answers.raters({ log, today }),
  ];
  for (const { sources } of asked) {
    assert.ok(sources.length > 0);
    for (const key of sources) assert.ok(rows.get(key)?.source.citation && rows.get(key).place, key);
  }
  assert.equal(rows.get("loading.step_low").source.doi, "10.1249/MSS.0b013e3181915670");
  assert.equal(prescription.nextSession({ log, plan, today }).version, JSON.parse(readFileSync(join(pkg, "package.json"), "utf8")).version);
});

test("row_73: a state is kept and read again", () => {
  const { log, plan, today } = demo;
  const text = JSON.stringify(toJson(progression.fold({ log })));
  const whole = prescription.nextSession({ log, plan, today });
  assert.deepEqual(prescription.nextSessionFrom({ state: fromJson(JSON.parse(text)), plan, today }), whole);
  const older = fromJson({ ...JSON.parse(text), version: "0.0.9" });
  assert.equal(refusal(() => prescription.nextSessionFrom({ state: older, plan, today })).code, "other_version");
  const progress = Progress.fromState(older, log);
  assert.deepEqual(progress.nextSession(plan, today), whole);
  progress.close();
});

test("row_74: a correction speaks, and nothing is lost", () => {
  const [typo, meant] = [600, 60].map((load) => session({ squat: sets(2, 5, load) }));
  const on = "2026-02-02";
  const log = logOf([start(), [on, typo], ["2026-02-03", { correction: { replaces: 2, with: meant } }]]);
  const before = copy(log);
  const volume = (of) => answers.week({ log: of, today: "2026-02-03" }).total.volumeLoad.kg;
  assert.deepEqual([volume(log), volume(logOf([start(), [on, typo]])), volume(logOf([start(), [on, meant]]))], [600, 6000, 600]);
  assert.deepEqual(log, before);
});

test("row_75: days are counted without a clock", () => {
  // 21 days from 8 to 29 March, with a clock put forward in between: a step less after 20, nine tenths after 21.
  const world = new World(parameters((all) => { all.lifts[0].stepCap = 0.05; })).wait(62);
  assert.equal(world.day, "2026-03-08");
  world.clear();
  world.train("squat");
  for (const [on, load] of [["2026-03-28", 57], ["2026-03-29", 54]]) {
    const then = Object.assign(new World(), { log: world.log, day: on });
    assert.deepEqual(then.well().today("squat").load, kg(load), on);
  }
  assert.equal(refusal(() => answers.week({ log: demo.log, today: "2027-02-29" })).field, "today");
  // Neither the clock nor the time zone of the machine is asked.
  const { Date: clock } = globalThis;
  globalThis.Date = class { constructor() { throw new Error("the clock was asked"); } static now() { throw new Error("the clock was asked"); } };
  try {
    assert.equal(prescription.nextSession({ log: demo.log, plan: demo.plan, today: demo.today }).lifts.length, 4);
  } finally {
    globalThis.Date = clock;
  }
});

test("row_76: an error says what, where and what would do", () => {
  const wrong = refusal(() => answers.week({ log: logOf([start(), ["2026-01-06", session({ squat: [done(60, 5.25)] })]]), today: "2026-01-06" }));
  assert.match(wrong.field, /sets\[0\]\.reps$/);
  assert.match(wrong.message, /reps/);
  const nobody = refusal(() => new World().add(session({ deadlift: sets(1, 5, 60) })));
  assert.equal(nobody.code, "unknown_lift");
  assert.equal(refusal(() => new World().well().after([], { lift: "deadlift" })).code, "unknown_lift");
});

test("row_77: one function, one number, by every way in", () => {
  const { oneRm: own } = bismar.flat;
  assert.equal(own.epley1985(100, 15), 150);
  assert.deepEqual([bismar.call("one_rm.epley_1985", { load: kg(100), reps: 15 }), [...bismar.batch.oneRm.epley1985({ load: new Float64Array([100]), reps: 15 })]], [kg(150), [150]]);
  assert.ok(keys().length > 400);
});

test("row_78: what the page asks of the library is in the package, and the page reckons with nothing else", () => {
  // The questions themselves are answered in the tests of the page; the texts of the page are read here.
  const source = join(root, "www-demo/src");
  const texts = readdirSync(source, { recursive: true }).filter((name) => name.endsWith(".ts")).map((name) => readFileSync(join(source, name), "utf8"));
  const all = (pattern) => [...new Set(texts.flatMap((text) => [...text.matchAll(pattern)].map((found) => found[1])))];
  const asked = all(/\b(?:ask|attempt)\("([a-z_]+\.[a-z0-9_]+)"/g).filter((key) => !key.startsWith("page."));
  assert.ok(asked.length > 10, String(asked));
  const known = new Set(keys());
  assert.deepEqual(asked.filter((key) => !known.has(key)), []);
  const from = all(/\bfrom "([^".][^"]*(?:\.[^"]*)?)";/g).filter((name) => !name.endsWith(".txt"));
  assert.deepEqual(from.sort(), ["bismar-page-package", "idb", "uplot"]);
});

test("row_79: a handover says place, gate, override, limits, pain and what was said", () => {
  const world = new World();
  const since = world.day;
  const limits = [{ effort: 8, noBreathHold: true }, { region: "shoulder", load: kg(42.5) }];
  world.add({ clearanceRecorded: { status: "cleared_with_limits", who: "clinic", expires: plus(world.day, 100), limits } });
  world.wait(1).add({ bodyMassRecorded: kg(80) });
  world.well();
  const trained = world.day;
  world.add({ sessionRecorded: { lifts: [{ lift: "squat", sets: work(kg(60), 2, true), cue: "knees out" }], pain: [] } }, { note: "slept little" });
  world.morning();
  world.wait(1).pain("knee", 2);
  world.overruled("squat", 62, 7).wait(1);
  const told = answers.handover({ log: world.log, today: world.day, since });
  const [squat, press] = told.lifts;
  assert.deepEqual([squat.granted.work.load, squat.status], [kg(60), "holding"]);
  assert.deepEqual(squat.gateState.missing.find((one) => one.passingSessions).passingSessions.have, 1);
  assert.deepEqual([squat.overruled.load, squat.overruled.why], [kg(62), "to look at one set"]);
  assert.deepEqual([squat.limits.length, press.limits.length], [1, 2]);
  assert.deepEqual([squat.last.day, squat.last.sets.length, squat.last.outcome, squat.last.cue, squat.last.note], [trained, 2, "pass", "knees out", "slept little"]);
  assert.deepEqual([told.pain[0].last[1], told.bodyMass[1], told.missing], [2, kg(80), [{ sessionOf: "press" }]]);
});

test("row_80: invented lifters are made anew from their seed, and a lifter without a miss goes as by hand", () => {
  const made = (acceptable, seed) => {
    const model = { lifts: [{ lift: "squat", acceptable, milestone: { load: kg(66) } }], week: [{ weekday: 0, lifts: ["squat"] }] };
    return rehearsal.simulate({ parameters: parameters(), plan: planOf(["squat"]), model, weeks: 13, lifters: 20, seed });
  };
  assert.deepEqual(made(0.9, 7), made(0.9, 7));
  assert.notDeepEqual(made(0.9, 7).lifts, made(0.9, 8).lifts);
  // Sessions on days 0 and 7 pass, so that the step from 60 to 66 kg is taken on day 14.
  const [{ reached, days }] = made(1, 7).lifts;
  assert.deepEqual([reached, days.half], [1, 14]);
});

/** The sentences, where their part is built. */
async function sentences() {
  if (!existsSync(join(pkg, "english/node.js"))) return undefined;
  const part = await import("../pkg/english/node.js");
  await part.default();
  return part.text;
}

test("row_81: every safety text is data that a translation can replace, and a key that there is not is found", async () => {
  const { phrases } = registry();
  // Every caution, verdict and missing thing of answers over the demo log has its sentence.
  const { log, plan, today } = demo;
  const { lifts } = prescription.nextSession({ log, plan, today });
  const said = [
    ...lifts.flatMap((one) => [`verdict.${one.verdict}`, ...one.cautions.map((caution) => `caution.${caution}`)]),
    ...answers.week({ log, today }).cautions.map((caution) => `caution.${caution}`),
  ];
  assert.ok(said.includes("verdict.ease_off") && said.includes("caution.gates_unproven"), String(said));
  for (const key of said) assert.match(phrases[key] ?? "", /\S/, key);
  // By the library's own look-up, where the sentences are built: each safety text replaced stands in its place in the answer of a
  // stop, and a key that there is not, as of a phrase that went away, is found and named.
  const english = await sentences();
  if (!english) return;
  const stopped = new World();
  stopped.add({ symptomReport: { signs: ["chest_pain"] } });
  const asked = { log: stopped.log, plan: planOf(["squat"]), today: stopped.day, unit: "kg" };
  const plain = english.session(asked).cautions;
  for (const key of Object.keys(phrases).filter((one) => one.startsWith("caution."))) {
    const own = english.session({ ...asked, phrases: fromJson({ [key]: "Eigene Worte." }) }).cautions;
    assert.deepEqual(own, plain.map((line) => (line === phrases[key] ? "Eigene Worte." : line)), key);
  }
  assert.ok(plain.includes(phrases["caution.emergency_signs"]), String(plain));
  const gone = refusal(() => english.session({ ...asked, phrases: fromJson({ "caution.went_away": "x" }) }));
  assert.deepEqual([gone.code, gone.field], ["unknown_name", "phrases.key"]);
});

test("row_82: kappa between two who marked the same sets", () => {
  // Both met 20, coach alone 5, video alone 10, both lost 15: (0.7 - 0.5) / (1 - 0.5) = 0.4.
  const seen = (mark, rater) => marks(5, mark === "met" ? 5 : 3, mark, rater);
  const set = (coach, video) => done(60, 5, { marks: seen(coach, "coach"), alsoMarked: [seen(video, "video")] });
  const all = [[20, "met", "met"], [5, "met", "not_met"], [10, "not_met", "met"], [15, "not_met", "not_met"]].flatMap(([count, coach, video]) => Array.from({ length: count }, () => set(coach, video)));
  const world = new World();
  for (const half of [all.slice(0, 25), all.slice(25)]) {
    world.add(session({ squat: half }));
    world.wait(3);
  }
  const [pair] = answers.raters({ log: world.log, lift: "squat", today: world.day }).pairs;
  assert.deepEqual([pair.sets, pair.counted, pair.sameCount, pair.all.pairs, pair.all.same], [50, 50, 35, 50, 35]);
  near(pair.all.agreement.kappa, 0.4, 1e-12);
});

test("somebody new: from a list of lifts to a first session, by the public calls", () => {
  // As in tests/doors/beginning.rs: the pair of 450 mm holds a bar at 225 mm, 8 + 2 x 10 and 20 + 2 x 10.
  const straight = (id, mass) => ({ bar: { id, mass: kg(mass), collar: kg(0), kind: "straight" } });
  const disc = (nominal, mm, count) => ({ nominal: kg(nominal), diameter: { mm }, count });
  const own = { implements: [straight("bar 20", 20), straight("bar 8", 8)], stock: { discs: [disc(10, 450, 2), disc(2.5, 200, 2)] }, blocks: [] };
  assert.equal(prescription.firstLifts().length, 8);
  const offers = prescription.firstBars({ lift: "straight-bar pull", ...own });
  assert.deepEqual(offers.map((offer) => [offer.implement, offer.load]), [["bar 8", kg(28)], ["bar 20", kg(40)]]);
  const lifts = [{ lift: "straight-bar pull", implement: "bar 8", load: offers[0].load }];
  const begun = prescription.begin({ lifter: { id: "New" }, day: "2026-01-05", lifts, ...own, clearedBy: "clinic" });
  const [today] = prescription.nextSession({ ...begun, today: "2026-01-05" }).lifts;
  assert.deepEqual([today.sets, today.loaded.total], [3, kg(28)]);
  assert.deepEqual(prescription.otherBars({ log: begun.log, lift: "straight-bar pull" }).map((offer) => offer.fits), [true, false]);
  const set = prescription.withKit({ log: begun.log, ...own, stock: { discs: [disc(5, 450, 2)] } });
  assert.deepEqual(set.lifts[0].start.work.load, kg(18), "the next lighter load at the height: 8 + 2 x 5");
  assert.equal(refusal(() => prescription.begin({ lifter: { id: "New" }, day: "2026-01-05", lifts: [{ lift: "curl", implement: "bar 8", load: kg(8) }], ...own })).field, "lifts[0].lift");
});
