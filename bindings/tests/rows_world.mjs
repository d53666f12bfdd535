// A small invented world for the rows: the gym, the two lifts and the lifter of the Rust tests (tests/rules/world.rs), so that
// what was worked out by hand there is the number here; and the demo log.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import init, * as bismar from "../pkg/node.js";
import { root } from "./files.mjs";

await init();
const { answers, fromJson, prescription, progression, record } = bismar;

export const kg = (value) => ({ kg: value });
export const lb = (value) => ({ lb: value });
export const mm = (value) => ({ mm: value });

/** That many days later. */
export function plus(day, days) {
  return new Date(Date.parse(`${day}T00:00:00Z`) + days * 86_400_000).toISOString().slice(0, 10);
}

const document = (name) => fromJson(JSON.parse(readFileSync(join(root, `examples/data/${name}.json`), "utf8")));
/** The demo lifter: two years of invented sessions, the plan, and the day after the last of them. */
export const demo = { log: document("demo-log"), plan: document("demo-plan"), today: "2026-08-28" };

/** A copy that may be changed. */
export const copy = (value) => structuredClone(value);
/** What an answer that is of one kind carries: `kindOf({ downTo: mass }, "downTo")`. */
export const kindOf = (value, kind) => (typeof value === "object" && value !== null ? value[kind] : undefined);
/** The kind of a value that is a text or an object of one key. */
export const code = (value) => (typeof value === "string" ? value : Object.keys(value)[0]);

export const bar = (mass, collar = 0, id = "bar") => ({ bar: { id, mass: kg(mass), collar: kg(collar), kind: "straight" } });
export const disc = (mass, count, across) => ({ nominal: typeof mass === "number" ? kg(mass) : mass, count, ...(across ? { diameter: mm(across) } : {}) });

const demoParameters = demo.log.events[0].kind.parametersChanged;
const { pass } = demoParameters.lifts[0];

export function lift(id, region, load) {
  return {
    id,
    body: "lower",
    regions: [region],
    implement: "bar",
    rungs: [{ id: "easier" }, { id: "full", harderThan: ["easier"] }],
    start: { place: { rung: 1, range: 0, tempo: 0 }, work: { sets: 2, reps: 5, load: kg(load) } },
    moving: "load",
    criteria: [{ id: "brace", critical: true }],
    pass,
    gate: { passRun: { acceptable: 9, of: 10, sessions: 2 } },
    stepCap: 0.1,
    learningSessions: 1,
  };
}

/** A squat and a press of two regions. */
export function parameters(change = () => undefined) {
  const all = {
    regions: ["knee", "back", "shoulder", "neck"].map((id) => ({ id })),
    lifts: [lift("squat", "knee", 60), lift("press", "shoulder", 40)],
    implements: [bar(20), { pieces: { id: "bells", masses: [4, 6, 8, 10, 12].map(kg) } }],
    stock: { discs: [disc(20, 4, 450), disc(10, 4, 325), disc(5, 2, 228), disc(2.5, 2, 190), disc(2, 4, 170), disc(1, 4, 160)] },
    policy: record.policyDefault,
  };
  change(all);
  return all;
}

/** A squat from that load, on that bar, with those discs. */
export const gym = (implement, discs, load) =>
  parameters((all) => {
    all.implements[0] = implement;
    all.stock.discs = discs;
    all.lifts = [lift("squat", "knee", 0)];
    all.lifts[0].start.work.load = typeof load === "number" ? kg(load) : load;
  });

export const planOf = (lifts, more = {}) => ({ format: "bismar-plan", version: 1, lifts: lifts.map((one) => (typeof one === "string" ? { lift: one } : one)), ...more });

/** A log of an invented lifter: these events, each with its day. */
export function logOf(events, lifter = {}) {
  return {
    format: "bismar-log",
    version: 1,
    lifter: { id: "invented", invented: true, ...lifter },
    events: events.map(([day, kind], at) => ({ sequence: at + 1, day, kind })),
  };
}

/** Marks of a set of that many repetitions, so many acceptable, and the critical point. */
export const marks = (reps, acceptable, brace, rater = "coach") => ({ reps, acceptable, marks: [{ criterion: "brace", mark: brace }], rater });
export const done = (load, reps, more = {}) => ({ load: kg(load), reps, ...more });
export const sets = (count, reps, load) => Array.from({ length: count }, () => done(load, reps));
export const session = (lifts, more = {}) => ({ sessionRecorded: { lifts: Object.entries(lifts).map(([id, of]) => ({ lift: id, sets: of })), pain: [], ...more } });
export const allWell = (kind = "within") => ({ dayReport: { class: kind, pain: [], asks: [] } });

/** Work sets: clean, or with the critical point lost. */
export const work = (load, count, clean) =>
  Array.from({ length: count }, () => ({ load, reps: 5, effort: { rir: 3 }, marks: marks(5, clean ? 5 : 2, clean ? "met" : "not_met") }));

/** A log that grows, and its day. */
export class World {
  constructor(all = parameters(), lifter = { born: "1980-03-01" }) {
    this.day = "2026-01-05";
    this.log = logOf([], lifter);
    this.add({ parametersChanged: all });
    this.clear();
  }

  add(kind, more = {}) {
    const sequence = Math.max(0, ...this.log.events.map((event) => event.sequence)) + 1;
    const log = { ...this.log, events: [...this.log.events, { sequence, day: this.day, kind, ...more }] };
    progression.fold({ log });
    this.log = log;
    return sequence;
  }

  clear() {
    return this.add({ clearanceRecorded: { status: "cleared", who: "clinic", expires: plus(this.day, 900) } });
  }

  wait(days) {
    this.day = plus(this.day, days);
    return this;
  }

  well(kind) {
    this.add(allWell(kind));
    return this;
  }

  pain(region, score, features = []) {
    this.add({ painReport: { region, score, features } });
  }

  /** What that lift is today, in a plan of its own. */
  today(id, more = {}) {
    const { log, day } = this;
    return prescription.nextSession({ log, plan: planOf([{ lift: id, ...more }]), today: day }).lifts[0];
  }

  state() {
    return progression.fold({ log: this.log });
  }

  status(id) {
    return code(this.decision(id).status);
  }

  decision(id) {
    return progression.decide({ state: this.state(), today: this.day }).find((one) => one.lift === id);
  }

  /** Trains it as prescribed, pain asked and none. */
  train(id, clean = true) {
    const today = this.today(id);
    return this.add(session({ [id]: work(today.load, today.sets, clean) }));
  }

  morning(pain = []) {
    const last = this.log.events.findLast((event) => event.kind.sessionRecorded);
    this.wait(1).add({ nextDayReport: { session: last.sequence, pain } });
  }

  passing(id, times = 1) {
    for (let at = 0; at < times; at += 1) {
      this.well().train(id);
      this.morning();
      this.wait(2);
    }
    return this;
  }

  overruled(id, load, days, why = "to look at one set") {
    this.add({ coachOverride: { lift: id, load: kg(load), who: "coach", why, expires: plus(this.day, days) } });
    return this;
  }

  offered(id) {
    return kindOf(this.today(id).outlook, "onOffer")?.to;
  }

  /** What stands in the way of a step. */
  against(id) {
    return kindOf(this.today(id).outlook, "blocked")?.by ?? [];
  }

  /** What comes after these sets of the squat. */
  after(done, { rule, pain = [], lift: id = "squat" } = {}) {
    const { log, day } = this;
    return answers.nextSet({ log, plan: planOf([{ lift: id, ...(rule ? { rule } : {}) }]), today: day, done: { lift: id, sets: done, pain } });
  }
}
