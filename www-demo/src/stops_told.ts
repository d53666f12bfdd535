// What of something entered stops a lift, or everything, in words: it counts whether it is written down yet or not.
import type { Ask, EventKindInput, PainAnswer } from "bismar-page-package";
import type { App } from "./app.ts";
import { attempt, kindOf } from "./engine.ts";
import { ASKS } from "./kinds.ts";

export function stopsTold(app: App, told: { asks?: Ask[] | undefined; pain?: PainAnswer[] | undefined }): string[] {
  const { lifter } = app;
  const asks = (told.asks ?? []).map((code) => ASKS.find(([one]) => one === code)?.[1] ?? code);
  const stops = (pain: PainAnswer): boolean => attempt("page.pain", { pain, ...(lifter ? { log: app.log(lifter) } : {}) }).answer?.zone === "stop";
  return [...asks, ...(told.pain ?? []).filter(stops).map((one) => `${app.regionName(one.region)}, ${one.score} of 10`)];
}

/** The same of an entry as it would be written. */
export function stopsOf(app: App, kind: EventKindInput): string[] {
  const [day, morning] = [kindOf(kind, "dayReport"), kindOf(kind, "nextDayReport")];
  if (day ?? morning) return stopsTold(app, { asks: day?.asks, pain: day?.pain ?? morning?.pain });
  if (kindOf(kind, "clearanceRecorded")?.status === "not_cleared") return ["Not cleared"];
  return kindOf(kind, "layoffNoted")?.reason === "ill" ? ["Ill in bed, hospital, operation"] : [];
}
