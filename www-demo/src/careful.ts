// What is left out of a damaged log and made a day more careful stays in force: limits, the coach's lower word, breaks, lifts
// at rest, ceilings. Each is tried on a copy of the log first; one that would open something is not put, and named.
import type { App } from "./app.ts";
import type { ClearanceLimits, EventKindInput, LifterAnswer, StopsAnswer, TodayAnswer } from "bismar-page-package";
import { ask, attempt } from "./engine.ts";
import { logOf, parsed, type Loaded, type StoredEvent } from "./kept.ts";
import { limitWords } from "./limits.ts";
import { atMost, dayShort, unitNow } from "./numbers.ts";

/** What goes into the log, what that is in words, and what does not. */
export interface Careful {
  texts: string[];
  kept: string[];
  not: string[];
}

/** Where somebody stands with a log. */
interface Standing {
  facts: LifterAnswer;
  stops: StopsAnswer["inForce"];
  today: TodayAnswer | undefined;
}

function standing(app: App, lifter: Loaded, log: number): Standing {
  const facts = ask("page.lifter", { log });
  const device = app.day(lifter);
  const today = facts.lastDay !== undefined && facts.lastDay > device ? facts.lastDay : device;
  return { facts, stops: ask("page.stops", { log, today }).inForce, today: attempt("page.today", { log, plan: lifter.plan, today, unit: unitNow() }).answer };
}

/** Whether limits hold all that another one does. */
function hold(all: ClearanceLimits[], one: ClearanceLimits): boolean {
  const near = all.filter((other) => other.region === undefined || other.region === one.region);
  const { load, effort, range } = one;
  return (
    (!one.noBreathHold || near.some((other) => other.noBreathHold)) &&
    (!one.noLoadedFlexion || near.some((other) => other.noLoadedFlexion)) &&
    (load === undefined || near.some((other) => other.load !== undefined && other.load.kg <= load.kg)) &&
    (effort === undefined || near.some((other) => other.effort !== undefined && other.effort <= effort)) &&
    (range === undefined || near.some((other) => other.range !== undefined && other.range.mm === range.mm))
  );
}

/** Whether a stop, a limit or a lower load of the one is gone with the other. */
function opens(before: Standing, after: Standing): { stop: boolean; limit: boolean; load: boolean } {
  const lifts = before.today?.session.lifts ?? [];
  const heavier = (lift: (typeof lifts)[number]): boolean => {
    const then = after.today?.session.lifts.find((one) => one.lift === lift.lift);
    return then !== undefined && then.sets > 0 && (lift.sets === 0 || (then.load?.kg ?? 0) > (lift.load?.kg ?? 0));
  };
  return {
    stop: before.stops.some((one) => !after.stops.some((other) => other.kind === one.kind && other.what === one.what)),
    limit: before.facts.limits.some((one) => !hold(after.facts.limits, one)),
    load: lifts.some(heavier),
  };
}

interface Ceilings {
  lifts: { id: string; ceiling: { kg: number } | { lb: number } }[];
}

/** The settings there are, with those of these ceilings that are lower; nothing where none is. */
function lowered(app: App, lifter: Loaded, facts: LifterAnswer, { lifts }: Ceilings): { kind: EventKindInput; words: string } | undefined {
  const { parameters } = facts;
  const words: string[] = [];
  const next = parameters?.lifts.map((one) => {
    const given = lifts.find((other) => other.id === one.id);
    const ceiling = given && attempt("page.mass", { mass: given.ceiling }).answer;
    if (!ceiling || (one.ceiling && one.ceiling.kg <= ceiling.kg)) return one;
    words.push(`a ceiling of ${atMost(ceiling)} for ${app.liftName(one.id, lifter)}`);
    return { ...one, ceiling };
  });
  return parameters && next && words.length > 0 ? { kind: { parametersChanged: { ...parameters, lifts: next } }, words: words.join(", ") } : undefined;
}

interface Told {
  lift?: string;
  load?: { kg: number } | { lb: number };
  role?: string;
  from?: string;
  who?: string;
  expires?: string;
  limits?: unknown[];
}

function wordsOf(app: App, lifter: Loaded, kind: Record<string, unknown>, limits: ClearanceLimits[]): string {
  const [name = "", body = {}] = (Object.entries(kind)[0] ?? []) as [string?, Told?];
  if (name === "clearance_recorded") return `Clearance with limits: ${limits.map((one) => limitWords(app, one, lifter)).join("; ")}`;
  if (name === "layoff_noted") return `A break from ${body.from ? dayShort(body.from) : "a day"}`;
  if (name === "role_set") return `${app.liftName(body.lift ?? "", lifter)}: ${body.role === "retire" ? "retired" : "rest"}`;
  const load = body.load && attempt("page.mass", { mass: body.load }).answer;
  return `The coach\u2019s word for ${app.liftName(body.lift ?? "", lifter)}: ${load ? atMost(load) : "another load"}`;
}

/** What of these entries goes behind a log, in their order. */
export function carefulOf(app: App, lifter: Loaded, events: string[], entries: string[]): Careful {
  const found: Careful = { texts: [], kept: [], not: [] };
  const open = (): number => ask("page.open", { log: logOf(lifter, [...events, ...found.texts]) });
  let log = open();
  let before = standing(app, lifter, log);
  const again = (): void => {
    ask("page.close", { log });
    log = open();
  };
  const taken = (text: string, after: Standing, words: string): void => {
    found.texts.push(text);
    found.kept.push(words);
    before = after;
  };
  const append = (day: string, kind: EventKindInput, words: string): boolean => {
    const { answer } = attempt("page.append", { log, day, kind });
    if (!answer) return false;
    const after = standing(app, lifter, log);
    const opened = opens(before, after);
    if (opened.stop || opened.limit || opened.load) return false;
    taken(answer.text, after, words);
    return true;
  };
  try {
    for (const text of entries) {
      const event = parsed(text) as StoredEvent;
      const { lastDay = event.day } = before.facts;
      const day = event.day < lastDay ? lastDay : event.day;
      const set = event.kind.parameters_changed as Ceilings | undefined;
      if (set) {
        const lower = lowered(app, lifter, before.facts, set);
        if (lower && !append(day, lower.kind, lower.words)) {
          found.not.push(lower.words);
          again();
        }
        continue;
      }
      const [one] = ask("page.join", { log, events: [JSON.stringify({ ...event, day })] }).texts;
      const after = standing(app, lifter, log);
      const given = (event.kind.clearance_recorded as Told | undefined)?.limits ? after.facts.limits : [];
      const words = wordsOf(app, lifter, event.kind, given);
      const opened = opens(before, after);
      if (one !== undefined && !opened.stop && !opened.limit && !opened.load) {
        taken(one, after, words);
        continue;
      }
      again();
      // One that takes the place of limits in force goes in together with them.
      const { who = "", expires } = event.kind.clearance_recorded as Told | undefined ?? {};
      const together = one !== undefined && given.length > 0 && !opened.stop && append(day, { clearanceRecorded: { status: "cleared_with_limits", who, limits: [...before.facts.limits, ...given], ...(expires ? { expires } : {}) } }, words);
      if (together) continue;
      again();
      found.not.push(words);
    }
  } finally {
    ask("page.close", { log });
  }
  return found;
}

/** What leaving a damaged part out means, before it is done. */
export function leaveWords(name: string, { kept, not }: Careful): string {
  const signs = `Signs, pain and refusals that can be read in it are put into the log of ${name}`;
  const more = kept.length > 0 ? `, and what makes a day more careful: ${kept.join("; ")}` : "";
  const less = not.length > 0 ? ` Not put into the log, since it would open something or does not fit: ${not.join("; ")}.` : "";
  return `${signs}${more}.${less} The rest stays set aside, and loads are shown again.`;
}
