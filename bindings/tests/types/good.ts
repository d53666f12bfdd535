// Uses that must compile under --strict, and uses that must not.
import init, { BismarError, Progress, answers, batch, call, diagnostics, flat, fromJson, oneRm, prescription, progression, toJson } from "bismar";
import type { Code, Functions, Kilograms, Mass, MassInput } from "bismar";
import initInline from "bismar/inline";
import initSlim from "bismar/slim";

await init();
await initInline();
await initSlim(new Uint8Array());

const estimate: Kilograms = oneRm.epley1985({ load: { kg: 100 }, reps: 8 });
const kilograms: number = estimate.kg;
const inPounds: MassInput = { lb: 137.5 };
oneRm.epley1985({ load: inPounds, reps: 8 });
const same: Kilograms = call("one_rm.epley_1985", { load: { kg: 100 }, reps: 8 });
const number: number = flat.oneRm.epley1985(100, 8);
const column: Float64Array = batch.oneRm.epley1985({ load: new Float64Array(3), reps: 5 });
const log: Parameters<typeof progression.fold>[0]["log"] = fromJson(JSON.parse("{}"));
const progress = new Progress(log);
const state = progression.fold({ log });
progress.nextSession({ format: "bismar-plan", version: 1, lifts: [] }, "2026-03-29").lifts.length;
prescription.nextSessionFrom({ state, plan: { format: "bismar-plan", version: 1, lifts: [] }, today: "2026-03-29" });
JSON.stringify(toJson(progress.state()));
diagnostics().memoryBytes.toFixed();
const table = answers.setsToLog({ table: { csv: "day,lift,load_kg,reps" }, log, reading: { unit: "lb", dayOrder: "month_first", lifts: [{ text: "Squats!", lift: "squat" }] } });
const lost: [number, string, string, string][] = table.leftOut.map(({ line, why, field, given }) => [line, why, field, given]);
for (const guess of table.guesses) if (typeof guess === "object" && "columnReadAs" in guess) lost.push([0, guess.columnReadAs.column, guess.columnReadAs.field, ""]);
new Progress(table.log);

try {
  init();
} catch (error) {
  if (error instanceof BismarError) {
    const code: Code = error.code;
    const low: number | undefined = error.allowed?.low;
    console.log(code, low, error.field, error.event, error.value);
  }
}

const answered: Mass = { kg: 1 };
// @ts-expect-error answers are in kilograms
answered.lb;
// @ts-expect-error a missing argument
oneRm.epley1985({ load: { kg: 100 } });
// @ts-expect-error an unknown argument
oneRm.epley1985({ load: { kg: 100 }, reps: 8, rest: 1 });
// @ts-expect-error an unknown unit
oneRm.epley1985({ load: { stone: 100 }, reps: 8 });
// @ts-expect-error a text for a number
oneRm.epley1985({ load: { kg: "100" }, reps: 8 });
// @ts-expect-error null
oneRm.epley1985(null);
// @ts-expect-error a bare number is not a mass
oneRm.epley1985({ load: 100, reps: 8 });
// @ts-expect-error no such function
oneRm.nobody2000({});
// @ts-expect-error no such key
call("one_rm.nobody_2000", {});
// @ts-expect-error a text
flat.oneRm.epley1985("100", 8);
// @ts-expect-error one argument too few
flat.oneRm.epley1985(100);
// @ts-expect-error a plain array is no column
batch.oneRm.epley1985({ load: [1, 2], reps: 5 });
// @ts-expect-error no such kind of table
answers.setsToLog({ table: { text: "" }, log });
// @ts-expect-error no such order
answers.setsToLog({ table: { csv: "" }, log, reading: { dayOrder: "year_first" } });
// @ts-expect-error slim needs the wasm
await initSlim();
// @ts-expect-error errors are made by the library
new BismarError();
// @ts-expect-error functions are not to be replaced
oneRm.epley1985 = oneRm.epley1985 as never as undefined;
// @ts-expect-error not a code
const wrong: Code = "not_a_code";

export type Keys = keyof Functions;
export { column, kilograms, log, lost, number, same, wrong };
