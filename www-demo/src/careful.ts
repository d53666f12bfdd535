// What is left out of a damaged log and made a day more careful stays in force: limits, the coach's lower word, breaks, lifts
// at rest, ceilings. Each is tried on a copy of the log first; one that would open something is not put, and named.
import type { App } from "./app.ts";
import type { ClearanceLimits, EventKindInput, LifterAnswer } from "bismar-page-package";
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

/** What a careful entry must not open, beside stops; what else it takes the place of is its own affair. */
const NOT_OPEN = ["limit", "work", "load"];

/** An entry on a copy of the log, and whether the copy opens a stop, or more. */
interface Trial {
  copy: number;
  text: string | undefined;
  stop: boolean;
  more: boolean;
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
  const close = (one: number): void => void ask("page.close", { log: one });
  let log = open();
  const trial = (write: (copy: number) => string | undefined): Trial => {
    const copy = open();
    const text = write(copy);
    const opened = attempt("page.opens", { log, instead: copy, today: app.day(lifter), unit: unitNow() }).answer;
    return { copy, text, stop: !opened || opened.stops.length > 0, more: !opened || opened.less.some((one) => NOT_OPEN.includes(one.kind)) };
  };
  /** The copy takes the place of the log where the entry fits and opens nothing. */
  const taken = ({ copy, text, stop, more }: Trial, words: string): boolean => {
    if (text === undefined || stop || more) {
      close(copy);
      return false;
    }
    close(log);
    log = copy;
    found.texts.push(text);
    found.kept.push(words);
    return true;
  };
  const append = (day: string, kind: EventKindInput, words: string): boolean => taken(trial((copy) => attempt("page.append", { log: copy, day, kind }).answer?.text), words);
  try {
    for (const text of entries) {
      const event = parsed(text) as StoredEvent;
      const facts = ask("page.lifter", { log });
      const { lastDay = event.day } = facts;
      const day = event.day < lastDay ? lastDay : event.day;
      const set = event.kind.parameters_changed as Ceilings | undefined;
      if (set) {
        const lower = lowered(app, lifter, facts, set);
        if (lower && !append(day, lower.kind, lower.words)) found.not.push(lower.words);
        continue;
      }
      const joined = trial((copy) => ask("page.join", { log: copy, events: [JSON.stringify({ ...event, day })] }).texts[0]);
      const clearance = event.kind.clearance_recorded as Told | undefined;
      const given = clearance?.limits ? ask("page.lifter", { log: joined.copy }).limits : [];
      const words = wordsOf(app, lifter, event.kind, given);
      if (taken(joined, words)) continue;
      // One that takes the place of limits in force goes in together with them.
      const { who = "", expires } = clearance ?? {};
      const both = joined.text !== undefined && given.length > 0 && !joined.stop;
      if (both && append(day, { clearanceRecorded: { status: "cleared_with_limits", who, limits: [...facts.limits, ...given], ...(expires ? { expires } : {}) } }, words)) continue;
      found.not.push(words);
    }
  } finally {
    close(log);
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
