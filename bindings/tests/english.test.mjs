// The sentences: a part of their own, which takes the logs, plans and states of the others.
import assert from "node:assert/strict";
import { existsSync } from "node:fs";
import { join } from "node:path";
import test from "node:test";
import whole, * as bismar from "../pkg/node.js";
import { pkg, registry } from "./files.mjs";

const built = existsSync(join(pkg, "english/node.js"));
const there = { skip: !built && "the part is not built" };
const english = built ? await import("../pkg/english/node.js") : undefined;
const session = existsSync(join(pkg, "session/node.js")) ? await import("../pkg/session/node.js") : undefined;
await whole();
await Promise.all([english?.default(), session?.default()]);
const { copy, demo: world, disc, lb, lift, parameters, planOf, World } = await import("./rows_world.mjs");
const { text } = english ?? {};

/** The demo lifter; lifts and regions with names that are not their ids. */
const named = () => {
  const { log, plan, today } = copy(world);
  for (const { kind } of log.events) {
    for (const one of [kind.parametersChanged?.lifts ?? [], kind.parametersChanged?.regions ?? []].flat()) one.name = `${one.id} by name`;
  }
  return { log, plan, today };
};
const refused = (run) => {
  try {
    run();
  } catch (error) {
    assert.ok(error instanceof bismar.BismarError, `${error}`);
    return error;
  }
  return assert.fail("an answer instead of an error");
};

test("the demo log is told in kilograms and in pounds, with names", there, () => {
  const { log, plan, today } = named();
  for (const [unit, other] of [["kg", " lb"], ["lb", " kg"]]) {
    const week = text.week({ log, today, unit });
    assert.ok(week.some((line) => line.includes(` ${unit}`)) && !week.some((line) => line.includes(other)), `${week}`);
    const answers = [week, text.handover({ log, today, since: "2026-06-01", unit }), text.trend({ log, lift: "box squat", today, unit }), text.year({ log, plan, today, unit })];
    for (const lines of answers) assert.ok(lines.length > 0 && lines.every((line) => typeof line === "string" && line !== "" && !/[{}]/.test(line)), `${lines}`);
    assert.ok(answers[1].some((line) => /box squat by name/i.test(line)), `${answers[1]}`);
  }
  const empty = { format: "bismar-log", version: 1, lifter: { id: "invented" }, events: [] };
  assert.equal(text.review({ log: empty, today, unit: "kg" })[0], "No session is in the log.");
});

test("a session has a sentence for everything that the plan of the other part has", there, () => {
  const { log, plan, today } = named();
  const other = session ?? bismar;
  const answer = other.prescription.nextSession({ log, plan, today });
  const said = text.session({ log, plan, today, unit: "kg" });
  assert.deepEqual(Object.keys(said)[0], "sheet");
  assert.deepEqual(Object.keys(said.sheet)[0], "stop");
  const counts = (one) => [one.reasons, one.wouldChange, one.cautions].map((list) => list.length);
  assert.deepEqual(said.lifts.map((one) => [one.lift, ...counts(one)]), answer.lifts.map((one) => [one.lift, ...counts(one)]));
  assert.deepEqual(said.lifts.map(({ missing }) => missing.length), answer.lifts.map(({ gate }) => gate.missing.length));
  assert.deepEqual(said.lifts.map(({ by }) => by.length), answer.lifts.map(({ outlook }) => outlook.blocked?.by.length ?? 0));
  assert.deepEqual([said.stops.length, said.cautions.length], [answer.stops.length, answer.cautions.length]);
  assert.ok(said.lifts.flatMap(({ reasons }) => reasons).length > 3);
  for (const { name, lift: id } of said.lifts) assert.equal(name, `${id} by name`);
  const progress = new other.Progress(log);
  assert.deepEqual(text.sessionFrom({ state: progress.state(), plan, today, unit: "kg" }), said);
  progress.close();
});

test("a gym of pounds hears nothing in kilograms", there, () => {
  const gym = new World(parameters((all) => {
    all.implements = [{ bar: { id: "bar", mass: lb(45), collar: lb(0), kind: "straight" } }];
    all.stock.discs = [45, 25, 10, 5, 2.5].map((face) => disc(lb(face), 8));
    all.lifts = [lift("squat", "knee", 0)];
    all.lifts[0].start.work.load = lb(135);
  }));
  const said = JSON.stringify(text.session({ log: gym.log, plan: planOf(["squat"]), today: gym.day, unit: "lb" }));
  assert.ok(said.includes("135 lb") && !said.includes(" kg"), said);
});

test("a German phrase stands in its place; keys are spelled as in every object here", there, () => {
  const { log, today } = world;
  const given = { log, today, unit: "kg" };
  const phrases = bismar.fromJson({ "caution.examines_nobody": "Dies untersucht niemanden." });
  const [plain, own] = [text.week(given), text.week({ ...given, phrases })];
  assert.equal(own.filter((line) => line === "Dies untersucht niemanden.").length, 1, `${own}`);
  assert.deepEqual(own.filter((line, at) => line !== plain[at]).length, 1);
  assert.deepEqual(own, text.week({ ...given, phrases: { "caution.examinesNobody": "Dies untersucht niemanden." } }));
  const all = text.phrases();
  assert.deepEqual(Object.fromEntries(all.map(({ key, text: said }) => [key, said])), registry().phrases);
  const everything = bismar.fromJson(Object.fromEntries(all.map(({ key, text: said }) => [key, said])));
  const reasonless = Object.fromEntries(Object.entries(everything).filter(([key]) => !key.startsWith("reason.")));
  assert.deepEqual(text.week({ ...given, phrases: reasonless }), plain);
  for (const [wrong, code, field] of [
    [{ "caution.examines_nobody": "x" }, "unknown_field", "phrases.caution.examines_nobody"],
    [{ "week.nothing": "x" }, "unknown_name", "phrases.key"],
    [{ "week.band": "von {low} an" }, "wrong_format", "phrases.week.band.text"],
  ]) {
    const error = refused(() => text.week({ ...given, phrases: wrong }));
    assert.deepEqual([error.code, error.field], [code, field]);
  }
});

test("an error is told in a sentence, in the unit and in the words of a translation", there, () => {
  const heavy = refused(() => bismar.oneRm.epley1985({ load: { kg: 2500 }, reps: 5 }));
  const said = (unit, phrases) => text.error({ error: heavy.told, unit, ...(phrases && { phrases }) });
  assert.match(said("kg"), /^The value lies outside the range that its type allows: load(\.mass)? is 2500\. Allowed: -2000 to 2000 kg\.$/);
  assert.match(said("lb"), /is 5511\.56\. Allowed: -4409\.24 to 4409\.24 lb\.$/);
  const own = bismar.fromJson({ "error.out_of_range": "Nicht im Bereich.", "refused.allowed": "{refusal} Erlaubt: {allowed}.", "refused.between_in_unit": "{low} bis {high} {unit}" });
  assert.match(said("kg", own), /^Nicht im Bereich: .* Erlaubt: -2000 bis 2000 kg\.$/);
  const others = [
    [() => bismar.oneRm.epley1985({ load: { kg: NaN }, reps: 5 }), /: .* is NaN\./],
    [() => bismar.oneRm.epley1985({ load: { stone: 9 }, reps: 5 }), /Allowed: kg, lb\.$/],
    [() => bismar.oneRm.epley1985({ reps: 5 }), /: load\.$/],
    [() => bismar.answers.week({ log: world.log, today: "2020-01-01" }), /before the last event of the log: today is "2020-01-01"\. Allowed: .* or later\.$/],
  ];
  for (const [run, shape] of others) assert.match(text.error({ error: refused(run).told, unit: "kg" }), shape);
  for (const [error, code, field] of [
    [{ code: "nothing" }, "unknown_name", "error.code"],
    [{ code: "out_of_range", allowed: { low: 1 } }, "wrong_format", "error.allowed"],
    [{ code: "out_of_range", surplus: 1 }, "unknown_field", "error.surplus"],
    [heavy, "wrong_type", "error"],
  ]) {
    const wrong = refused(() => text.error({ error, unit: "kg" }));
    assert.deepEqual([wrong.code, wrong.field], [code, field]);
  }
});

test("what stops and the line of a lift are said by their translation", there, () => {
  const stopped = new World();
  stopped.add({ symptomReport: { signs: ["chest_pain"] } });
  const phrases = bismar.fromJson({ "stop.signs": "Halt: {signs}, am {day}.", "sign.chest_pain": "Brustschmerz", "stop.call_now": "Jetzt den Notruf." , "stop.heading": "{lift}: Halt" });
  const said = text.session({ log: stopped.log, plan: planOf(["squat"]), today: stopped.day, unit: "kg", phrases });
  assert.match(said.sheet.stop[0], /^Halt: Brustschmerz, am /);
  assert.equal(said.sheet.stop[1], "Jetzt den Notruf.");
  assert.match(said.sheet.lifts[0].line, /: Halt$/);
});

test("a stop comes first", there, () => {
  const stopped = new World();
  stopped.add({ symptomReport: { signs: ["chest_pain"] } });
  const { sheet, lifts } = text.session({ log: stopped.log, plan: planOf(["squat"]), today: stopped.day, unit: "kg" });
  assert.match(sheet.stop[0], /^Stop: /);
  assert.equal(lifts[0].verdict, "stop");
  assert.match(text.week({ log: stopped.log, today: stopped.day, unit: "kg" })[0], /^Stop: /);
});

test("what is given is refused as by the other parts, and units by name", there, () => {
  const { log, today } = world;
  const same = (given) => {
    const [here, elsewhere] = [refused(() => text.week({ ...given, unit: "kg" })), refused(() => bismar.answers.week(given))];
    assert.deepEqual([here.code, here.field, here.value, here.allowed], [elsewhere.code, elsewhere.field, elsewhere.value, elsewhere.allowed]);
  };
  same({ log });
  same({ log, today: "2026-02-30" });
  same({ log, today: "2020-01-01" });
  same({ log: { ...log, surplus: 1 }, today });
  const stone = refused(() => text.week({ log, today, unit: "stone" }));
  assert.deepEqual([stone.code, stone.field, stone.allowed], ["unknown_variant", "unit", { oneOf: ["kg", "lb"] }]);
  assert.equal(refused(() => text.week({ log, today })).field, "unit");
  assert.throws(() => bismar.call("text.week", { log, today, unit: "kg" }), { code: "unknown_function" });
});
