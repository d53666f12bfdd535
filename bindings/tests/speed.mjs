// What a call costs, printed; not a test, since a shared machine would make it fail for nothing. `--enforce` makes
// the budgets count; `--json` prints the nanoseconds by name, for `benches/package.rs`.
import { existsSync, readFileSync } from "node:fs";
import { cpus } from "node:os";
import { join } from "node:path";
import init, * as bismar from "../pkg/node.js";
import { pkg, root } from "./files.mjs";

const started = performance.now();
await init();
const ready = performance.now() - started;
const document = (name) => bismar.fromJson(JSON.parse(readFileSync(join(root, `examples/data/${name}.json`), "utf8")));
const rounds = (count, repeats, run) => {
  let best = Infinity;
  for (let round = 0; round < repeats; round += 1) {
    const from = performance.now();
    for (let at = 0; at < count; at += 1) run();
    best = Math.min(best, (performance.now() - from) / count);
  }
  return best * 1e6; // ns
};
const { epley1985 } = bismar.flat.oneRm;
const given = { load: { kg: 100 }, reps: 8 };
const size = 100_000;
const columns = { load: new Float64Array(size).fill(100), reps: new Float64Array(size).fill(8) };
const [log, plan] = [document("demo-log"), document("demo-plan")];
const today = log.events.at(-1).day;
const progress = new bismar.Progress(log);
// The part that is built for speed, where it is built.
const quick = existsSync(join(pkg, "session/node.js")) ? await import("../pkg/session/node.js") : undefined;
await quick?.default();
const kept = quick && new quick.Progress(log);
const lines = [
  ["flat call, one function of two numbers", rounds(100_000, 15, () => epley1985(100, 8)), 200],
  ["the same through objects", rounds(20_000, 10, () => bismar.oneRm.epley1985(given))],
  ["the same in a batch, a row", rounds(1, 30, () => bismar.batch.oneRm.epley1985(columns)) / size],
  ["nextSession of a kept state", rounds(20, 10, () => progress.nextSession(plan, today))],
  [`fold of the demo log, ${log.events.length} events`, rounds(1, 10, () => bismar.progression.fold({ log }))],
  ["nextSession from the whole demo log", rounds(1, 10, () => bismar.prescription.nextSession({ log, plan, today }))],
];
if (kept) lines.push(["nextSession of a kept state, bismar/session", rounds(20, 30, () => kept.nextSession(plan, today))]);
if (process.argv.includes("--json")) {
  const names = ["call", "objects", "batch", "session", "fold", "whole", "quick"];
  console.log(JSON.stringify(Object.fromEntries(lines.map(([, nanoseconds], at) => [names[at], nanoseconds]))));
  process.exit(0);
}
console.log(`speed in Node ${process.version} on ${cpus()[0].model}, best of several rounds; set up in ${ready.toFixed(0)} ms`);
let over = 0;
for (const [what, nanoseconds, budget] of lines) {
  const verdict = budget === undefined ? "" : nanoseconds <= budget ? `, budget ${budget}: met` : `, budget ${budget}: NOT MET`;
  if (verdict.endsWith("NOT MET")) over += 1;
  console.log(`  ${what.padEnd(44)} ${nanoseconds.toFixed(nanoseconds < 1000 ? 1 : 0).padStart(12)} ns${verdict}`);
}
if (over > 0 && process.argv.includes("--enforce")) process.exitCode = 1;
