// Invented lifters for the rows: the demo log with something changed at its end, so that the page shows it.
import { demoPlan, further, logOf } from "./keep.mjs";

const LAST = "2026-08-27";
const kg = (value) => ({ kg: value });

/** The lift settings in force, changed. */
function changed(log, change) {
  const latest = structuredClone(log.events.findLast((one) => one.kind.parameters_changed).kind.parameters_changed);
  change(latest);
  further(log, LAST, { parameters_changed: latest });
}

const invented = (id, change) => logOf(id, change, { invented: true });
const plan = (...lifts) => ({ ...demoPlan, lifts });

/** Another gym and other lifts: collars of 2.5 kg, discs of 20 kg that weigh 20.1, a hex bar, dumbbells, a stack that helps. */
export function lifterA() {
  const log = invented("A, invented", (own) =>
    changed(own, (all) => {
      const [front, , press] = all.lifts;
      all.implements[0].bar.collar = kg(2.5);
      all.stock.discs[0].measured = kg(20.1);
      all.implements.push(
        { bar: { id: "hex bar", mass: kg(20), collar: kg(0), kind: { hex: { low_handle: { mm: 0 }, high_handle: { mm: 130 } } } } },
        { pieces: { id: "bells", masses: [4, 6, 8, 10, 12].map(kg) } },
        { assistance: { id: "helper", start: kg(0), plates: Array.from({ length: 6 }, () => kg(10)), add_ons: [], ratio: 1 } },
      );
      const lift = (id, implement, load, more = {}) => ({ ...structuredClone(press), id, implement, regions: ["elbow"], start: { place: { rung: 0, range: 0, tempo: 0 }, work: { sets: 2, reps: 5, load: kg(load) } }, ...more });
      all.lifts.push(lift("bell press", "bells", 8), lift("helped pull-up", "helper", -30));
      all.lifts.push({ ...lift("slow squat", "bar 15", 35, { tempos: [{ down: 3, hold: 1, up: 1 }] }), criteria: front.criteria });
    }),
  );
  return { log, plan: plan({ lift: "bell press" }, { lift: "helped pull-up" }, { lift: "slow squat" }) };
}

/** Rules for the sets of today, and a strict lift that may carry 0.6 of what the forgiving one has proven. */
export function lifterB() {
  const log = invented("B, invented", (own) => changed(own, (all) => { all.pairs[0].ratio_cap = 0.6; }));
  const rules = {
    "box squat": { back_off: { reduction: 0.04, rating: 8 } },
    "supported row": { double_progression: { bottom: 5, top: 8 } },
    "strict press": "repetition_table",
    "front squat": { fixed_per_point: {} },
  };
  return { log, plan: plan(...Object.entries(rules).map(([lift, rule]) => ({ lift, reserve: 3, rule }))) };
}

/** A last session in which the first set of one lift lost its critical point and nobody marked another; both of the week are rated. */
export function lifterC() {
  const log = invented("C, invented", (own) => {
    const before = own.events.findLast((one) => one.kind.session_recorded);
    Object.assign(before.kind.session_recorded, { effort: 3, minutes: 100 });
    const [front] = structuredClone(before.kind.session_recorded.lifts);
    const box = structuredClone(own.events.findLast((one) => one.kind.session_recorded?.lifts.some((lift) => lift.lift === "box squat")).kind.session_recorded.lifts.find((lift) => lift.lift === "box squat"));
    for (const lift of [front, box]) {
      for (const set of lift.sets) {
        for (const mark of set.marks.marks) mark.mark = "met";
        set.marks.acceptable = set.marks.reps;
        delete set.marks.first_failing_rep;
      }
    }
    front.sets[0].marks.marks[0].mark = "not_met";
    Object.assign(box.sets[1].marks, { acceptable: 4, first_failing_rep: 3 });
    const row = { lift: "supported row", sets: Array.from({ length: 3 }, () => ({ load: kg(39), reps: 5 })) };
    further(own, LAST, { session_recorded: { lifts: [front, box, row], pain: [], effort: 6, minutes: 50 } });
  });
  return { log, plan: demoPlan };
}

/** Eight days with answers about the day; an override and a lift that is kept. */
export function lifterD() {
  const log = invented("D, invented", (own) => {
    const reports = own.events.filter((one) => one.kind.day_report && one.day < LAST).slice(-8);
    for (const { kind } of reports) kind.day_report.markers = [["recovery", 7], ["sleep", 7], ["stress", 3]].map(([marker, value]) => ({ kind: marker, value }));
    further(own, LAST, { coach_override: { lift: "box squat", load: kg(45), who: "invented coach", why: "to look at one set", expires: "2026-09-03" } });
    further(own, LAST, { role_set: { lift: "supported row", role: "maintain", not_below: kg(36) } });
  });
  return { log, plan: demoPlan };
}

/** A clearance with that last day. */
export function lifterE(expires) {
  const log = invented(`E to ${expires}, invented`, (own) => further(own, LAST, { clearance_recorded: { status: "cleared", who: "invented clinic", expires } }));
  return { log, plan: demoPlan };
}

/** The day so many days later. */
export function plus(day, days) {
  const at = new Date(`${day}T00:00:00Z`);
  at.setUTCDate(at.getUTCDate() + days);
  return at.toISOString().slice(0, 10);
}

/** Only what is set for the lifts, on that day; then what `change` appends. */
const begun = (id, day, change) =>
  invented(id, (own) => {
    const set = own.events.findLast((one) => one.kind.parameters_changed).kind;
    own.events = [{ sequence: 1, day, kind: set }];
    change(own);
  });

const seen = (load, reps, more = {}) => ({
  load: kg(load),
  reps,
  effort: { rir: 3 },
  marks: { reps, acceptable: reps, marks: ["brace held", "depth reached", "knees track feet"].map((criterion) => ({ criterion, mark: "met" })), rater: "coach" },
  ...more,
});
const front = (...sets) => ({ session_recorded: { lifts: [{ lift: "front squat", sets }], pain: [] } });

/** Ten weeks of sets to failure at 4, 6 and 10 repetitions, from a curve that loses 4 % a repetition. */
export function lifterF() {
  const log = begun("F, invented", "2026-01-05", (own) => {
    for (let week = 0; week < 10; week += 1) further(own, plus("2026-01-06", 7 * week), front(...[[88.69, 4], [81.87, 6], [69.77, 10]].map(([load, reps]) => seen(load, reps, { failed: true, effort: { rir: 0 } }))));
  });
  return { log, plan: plan({ lift: "front squat" }) };
}

/** A block of 24 weeks: every other day said to lie below the usual, two of four with a set that was missed, faster each week. */
export function lifterG() {
  const log = begun("G, invented", "2026-01-05", (own) => {
    further(own, "2026-01-05", { block_started: "spring" });
    for (let week = 0; week < 24; week += 1) {
      const day = plus("2026-01-06", 7 * week);
      further(own, day, { day_report: { class: week % 2 === 0 ? "below" : "within", pain: [], asks: [] } });
      further(own, day, front(seen(33.5, 5, { effort: { rir: 4 }, velocity: 0.5 + 0.01 * week, ...(week % 4 < 2 ? { failed: true } : {}) })));
    }
  });
  return { log, plan: plan({ lift: "front squat" }) };
}

/** Seven trained weeks, or six with one left out; the fixed warm-up set on six days, and a grip of 24 kg. */
export function lifterH(left) {
  const log = begun(left === undefined ? "H, invented" : "H with a gap, invented", "2026-01-05", (own) => {
    further(own, "2026-01-06", { function_tested: { test: "grip", result: 24 } });
    for (let week = 0; week < 7; week += 1) {
      const day = plus("2026-01-12", 7 * week);
      if (week === left) continue;
      const conditions = { lift: "front squat", load: kg(20), reps: 5, time_of_day: "morning", caffeine: false };
      further(own, day, { day_report: { markers: [{ kind: "warm_up_effort", value: 3, conditions }] } });
      further(own, day, front(seen(33.5, 5), seen(33.5, 5), seen(33.5, 5), seen(33.5, 5)));
    }
  });
  return { log, plan: plan({ lift: "front squat" }) };
}

/** A session, and one two days later that did not happen. */
export function lifterI() {
  const log = begun("I, invented", "2026-03-01", (own) => {
    further(own, "2026-03-02", front(seen(33.5, 5), seen(33.5, 5)));
    further(own, "2026-03-04", { session_missed: { reason: "travel" } });
  });
  return { log, plan: plan({ lift: "front squat" }) };
}

/** Ten sets that two people marked: six met by both, two by neither, one by each alone. */
export function lifterJ() {
  const both = ["met met", "met met", "met met", "met not_met", "not_met not_met", "met met", "met met", "met met", "not_met met", "not_met not_met"];
  const marked = (words) => {
    const [first, second] = words.split(" ").map((mark) => ({ reps: 5, acceptable: 5, marks: [{ criterion: "depth reached", mark }], rater: "coach" }));
    return { load: kg(33.5), reps: 5, marks: { ...first, rater_id: "Ann" }, also_marked: [{ ...second, rater_id: "Bob" }] };
  };
  const log = begun("J, invented", "2026-03-01", (own) => {
    further(own, "2026-03-02", front(...both.slice(0, 5).map(marked)));
    further(own, "2026-03-05", front(...both.slice(5).map(marked)));
  });
  return { log, plan: plan({ lift: "front squat" }) };
}

/** The settings of the demo log on that day, changed; then what `change` appends. */
const begunWith = (id, day, set, change = () => undefined) =>
  begun(id, day, (own) => {
    set(own.events[0].kind.parameters_changed);
    change(own);
  });
const liftOf = (all, id) => all.lifts.find((one) => one.id === id);

/** A front squat from that load, nothing done yet. */
export function lifterL(load) {
  const log = begunWith(`L at ${load} kg, invented`, "2026-03-01", (all) => { liftOf(all, "front squat").start.work.load = kg(load); });
  return { log, plan: plan({ lift: "front squat" }) };
}

/** Two sets of five at 33.5 kg, each rated 8 of 10. */
export function lifterM() {
  const log = begun("M, invented", "2026-03-01", (own) => further(own, "2026-03-02", front(...[1, 2].map(() => seen(33.5, 5, { effort: { rpe: 8 } })))));
  return { log, plan: plan({ lift: "front squat" }) };
}

/** More than the working load by the coach's word of 24 August, with a reason or without, to a last day. */
export function lifterN(name, more) {
  const log = invented(`N ${name}, invented`, (own) => {
    further(own, "2026-08-26", { coach_override: { lift: "box squat", load: kg(49), who: "invented coach", ...more } });
    further(own, LAST, { body_mass_recorded: kg(80) });
  });
  return { log, plan: demoPlan };
}

/** Front squats on Mondays and box squats on Wednesdays, which load the same regions; the Monday of 16 March is missed. */
export function lifterO(missed = true) {
  const log = begun(missed ? "O, invented" : "O without a miss, invented", "2026-03-01", (own) => {
    const box = (day) => further(own, day, { session_recorded: { lifts: [{ lift: "box squat", sets: [1, 2, 3].map(() => ({ load: kg(40), reps: 5 })) }], pain: [] } });
    for (const day of ["2026-03-02", "2026-03-09"]) {
      further(own, day, front(seen(30, 5), seen(30, 5), seen(30, 5)));
      box(plus(day, 2));
    }
    further(own, "2026-03-16", missed ? { session_missed: { reason: "travel" } } : { body_mass_recorded: kg(80) });
  });
  return { log, plan: plan({ lift: "front squat" }) };
}

/** A deadlift from 60 kg whose range moves: 325, 275, 225 mm. */
export function lifterP() {
  const log = begunWith("P, invented", "2026-03-01", (all) => {
    const set = liftOf(all, "deadlift");
    Object.assign(set, { moving: "range", start: { ...set.start, place: { ...set.start.place, range: 0 }, work: { ...set.start.work, load: kg(60) } } });
  });
  return { log, plan: plan({ lift: "deadlift" }) };
}

/** At most that load for every lift, by a clearance. */
export function lifterQ(most) {
  const log = invented(`Q under ${most} kg, invented`, (own) => further(own, LAST, { clearance_recorded: { status: "cleared_with_limits", who: "invented clinic", limits: [{ load: kg(most) }] } }));
  return { log, plan: demoPlan };
}

/** Born on 1 March 1986: 40 on the day of three passing sessions at the load that is granted; a sack of 25 kg is to be there at 60. */
export function lifterR() {
  const log = begun("R, invented", "2026-03-01", (own) => {
    own.lifter.born = "1986-03-01";
    const granted = liftOf(own.events[0].kind.parameters_changed, "front squat").start.work.load.kg;
    for (const day of ["2026-03-02", "2026-03-05", "2026-03-08"]) {
      further(own, day, front(seen(granted, 5), seen(granted, 5), seen(granted, 5)));
      further(own, plus(day, 1), { next_day_report: { session: own.events.at(-1).sequence, pain: [] } });
    }
  });
  return { log, plan: { ...plan({ lift: "front squat" }), years: { keep: [{ lift: "front squat", name: "the sack", load: kg(25), at_age: 60 }] } } };
}

/** One session of four sets of five, in one of which the third and the fourth repetition were missed; six days with answers before. */
export function lifterK(number) {
  const log = begun(`K with set ${number} missed, invented`, "2026-03-01", (own) => {
    [5, 9, 7, 6, 7, 8].forEach((value, at) => further(own, plus("2026-03-01", at), { day_report: { markers: [{ kind: "recovery", value }] } }));
    // At what is granted: above it nothing is shown.
    const granted = own.events[0].kind.parameters_changed.lifts.find((one) => one.id === "front squat").start.work.load.kg;
    const clean = seen(granted, 5);
    const missed = seen(granted, 5, { marks: { ...clean.marks, acceptable: 3, first_failing_rep: 3 } });
    further(own, "2026-03-07", front(...[1, 2, 3, 4].map((at) => (at === number ? missed : clean))));
  });
  return { log, plan: plan({ lift: "front squat" }) };
}
