// Today's session in Node: reads a log and a plan from files, prints a line a lift, keeps the state for tomorrow.
//
//   npm install ../../bindings/pkg        (once, in this folder; or the published package)
//   node next_session.mjs ../data/demo-log.json ../data/demo-plan.json 2026-08-27 [STATE.json]
//
// Exit codes: 0 printed, 2 a file was refused (nothing is loaded half), 3 a lift is stopped today.
import { readFile, writeFile } from "node:fs/promises";
import init, { BismarError, Progress, fromJson, toJson } from "bismar";

await init();
const [logFile, planFile, today, stateFile] = process.argv.slice(2);
const read = async (file) => fromJson(JSON.parse(await readFile(file, "utf8")));

try {
  // Yesterday's state is taken where the log has told nothing since; else the log is folded, once.
  const [log, stored] = [await read(logFile), stateFile && (await read(stateFile).catch(() => undefined))];
  const progress = stored ? Progress.fromState(stored, log) : new Progress(log);
  const session = progress.nextSession(await read(planFile), today);
  for (const lift of session.lifts) {
    const load = lift.load ? `${Math.round(lift.load.kg * 100) / 100} kg` : "no load";
    console.log(`${lift.lift}: ${lift.verdict}, ${load}, ${lift.sets ?? 0} sets of ${lift.reps ?? 0}`);
  }
  if (stateFile) await writeFile(stateFile, JSON.stringify(toJson(progress.state())));
  process.exitCode = session.lifts.some((lift) => lift.verdict === "stop") ? 3 : 0;
  progress.close();
} catch (error) {
  if (!(error instanceof BismarError)) throw error;
  console.error(`event ${error.event ?? "-"}: ${error.field} is ${JSON.stringify(error.value)}; allowed: ${error.allowed}`);
  process.exitCode = 2;
}
