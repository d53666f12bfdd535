// A table of sets that is opened: what it would add to a log, every guess and every row that is left out, before it does anything.
import type { App } from "./app.ts";
import { list } from "./answer.ts";
import { choices, el, fill, type Child } from "./element.ts";
import type { RowLeftOut, SetsToLog, TableGuess, TableIn } from "bismar-page-package";
import { ask, attempt, kindOf, type Given } from "./engine.ts";
import { previewPart, readDocument, type Done } from "./incoming.ts";
import { logOf } from "./kept.ts";
import { shownName } from "./names.ts";
import { count } from "./numbers.ts";
import type { Loaded } from "./store.ts";

type Reading = Given<"page.table_in">["reading"];

/** Whether a file holds a table: by its name, since what is in it may be damaged; but what begins as a document is one,
 * whatever it is called. */
export function isTable(name: string, text: string): boolean {
  return /\.(csv|tsv|tab|txt)$/i.test(name) && !/^[\s\ufeff]*\{/.test(text);
}

const SEPARATORS: Record<string, string> = { ",": "commas", ";": "semicolons", "\t": "tabs" };

/** What a column says, in words. */
const FIELDS: Record<string, string> = {
  day: "the day",
  session: "the number of the session",
  lift: "the lift",
  load_kg: "the load in kg",
  load_lb: "the load in lb",
  load: "the load",
  reps: "repetitions",
  sets: "how many equal sets",
  reps_in_reserve: "repetitions left in reserve",
  rating: "the rating of effort (RPE)",
  missed: "missed repetitions",
  warm_up: "warm-ups",
  cue: "the cue",
};

const quoted = (text: string): string => `\u201c${shownName(text)}\u201d`;

function columnWords(field: string): string {
  return FIELDS[field] ?? field.replaceAll("_", " ");
}

function guessWords(app: App, lifter: Loaded, guess: TableGuess): string {
  const separator = kindOf(guess, "separator");
  if (separator !== undefined) return `Cells stand between ${SEPARATORS[separator] ?? quoted(separator)}.`;
  const column = kindOf(guess, "columnReadAs");
  if (column) return `The column ${quoted(column.column)} was read as ${columnWords(column.field)}.`;
  const days = kindOf(guess, "dayOrder");
  if (days) return `Days were read with the ${days.order === "day_first" ? "day" : "month"} first, since ${count(days.rows, "row")} can be read in no other way.`;
  const timed = kindOf(guess, "timeLeftOut");
  if (timed !== undefined) return `The time of day in ${count(timed, "row")} is left out: a log keeps days.`;
  const commas = kindOf(guess, "decimalComma");
  if (commas !== undefined) return `A comma in ${count(commas, "row")} was read as the decimal mark.`;
  const pounds = kindOf(guess, "pounds");
  if (pounds !== undefined) return `${count(pounds, "load")} in pounds.`;
  const lift = kindOf(guess, "liftReadAs");
  if (lift) return `${quoted(lift.text)} was read as ${app.liftName(lift.lift, lifter)}.`;
  if (guess === "one_session_a_day") return "The rows of one day are one session, since no column tells sessions apart.";
  if (guess === "every_row_a_work_set") return "Every row is a work set, since no column tells warm-ups apart.";
  if (guess === "place_as_granted") return "Every set counts as done at the rung, range and tempo of that day, since the table says nothing of them.";
  // Nothing that a later version guesses stays unsaid.
  return JSON.stringify(guess);
}

const REASONS: Record<string, string> = {
  warm_up: "A warm-up",
  already_there: "A session of these sets is in the log already",
};

/** So many names, columns and guesses are listed; of more it is said how many. Rows that are left out are all told. */
const MOST_LISTED = 40;

/** The first of these, and how many more there are. */
function firstOf<T>(all: T[], words: (one: T) => string): string[] {
  const rest = all.length - MOST_LISTED;
  const first = all.slice(0, MOST_LISTED).map(words);
  return rest > 0 ? [...first, `and ${rest} more`] : first;
}

/** Numbers of lines, those that follow each other as one piece. */
export function lineWords(lines: number[]): string {
  const pieces: [number, number][] = [];
  for (const line of lines) {
    const last = pieces.at(-1);
    if (last && line === last[1] + 1) last[1] = line;
    else pieces.push([line, line]);
  }
  const words = pieces.map(([from, to]) => (from === to ? String(from) : `${from}${to === from + 1 ? ", " : "\u2013"}${to}`));
  return `${lines.length === 1 ? "Line" : "Lines"} ${words.join(", ")}`;
}

/** So many rows are listed each with what stands there; of more, those with the same reason stand together. */
const MOST_APART = 300;

/** Every row that is left out, with its line: those that say the same stand together. */
function leftOut(rows: RowLeftOut[]): Child {
  const apart = (one: RowLeftOut): string => [one.why, one.field, one.given].join("\u0000");
  const few = new Set(rows.map(apart)).size <= MOST_APART;
  const alike = new Map<string, RowLeftOut[]>();
  for (const row of rows) {
    const key = few ? apart(row) : [row.why, row.field].join("\u0000");
    const known = alike.get(key);
    if (known) known.push(row);
    else alike.set(key, [row]);
  }
  const words = ([first, ...more]: RowLeftOut[]): string => {
    if (!first) return "";
    const why = REASONS[first.why] ?? ask("page.explain", { code: first.why }).replace(/\.$/, "");
    const what = first.why in REASONS ? "" : ` (${columnWords(first.field)}${few && first.given !== "" ? `: ${quoted(first.given)}` : ""})`;
    return `${lineWords([first, ...more].map((row) => row.line))}: ${why}${what}.`;
  };
  return list([...alike.values()].map(words), "left-out");
}

/** What one lifter's log would be with the table, and what the coach said about the table so far. */
interface Told {
  whose: string | undefined;
  unit: Reading["unit"] | undefined;
  dayOrder: Reading["dayOrder"] | undefined;
  /** What the table calls a lift, with its id here; an empty one is left out. */
  lifts: Map<string, string>;
  /** How many more names there are that are not asked about. */
  more: number;
}

/** Asks the library; what it has to be told first is the name of the field. */
function read(lifter: Loaded, text: string, told: Told): { answer: TableIn; asks?: undefined } | { answer?: undefined; asks: "unit" | "dayOrder" } {
  const lifts = [...told.lifts].filter(([, lift]) => lift !== "").map(([spelled, lift]) => ({ text: spelled, lift }));
  const reading: Reading = { ...(told.unit ? { unit: told.unit } : {}), ...(told.dayOrder ? { dayOrder: told.dayOrder } : {}), lifts };
  const { answer, refused } = attempt("page.table_in", { log: logOf(lifter, lifter.events), csv: text, reading });
  if (answer) return { answer };
  if (refused.field === "reading.unit") return { asks: "unit" };
  if (refused.field === "reading.dayOrder") return { asks: "dayOrder" };
  throw new Error(`This table cannot be read. ${refused.message}`);
}

/** Everything that the table does not say, everything of it that is left out, each with its line. */
function report(app: App, lifter: Loaded, told: SetsToLog): Child {
  const { guesses, columnsLeftOut: columns, leftOut: rows } = told;
  return [
    el("p", { class: "big", "data-answer": true }, `${told.taken} of ${count(told.rows, "row")} would be added, as ${count(told.sessions, "session")}`),
    el("p", { class: "soft" }, "No set of a table is a pass: it does not say who watched, nor what was seen. Pain counts as not asked."),
    guesses.length > 0 && el("section", { "data-guesses": true }, el("h3", {}, "What the table does not say, and how it was read"), list(firstOf(guesses, (guess) => guessWords(app, lifter, guess)))),
    columns.length > 0 && el("section", { "data-columns-left-out": true }, el("h3", {}, "Columns that are left out"), list(firstOf(columns, quoted))),
    rows.length > 0 && el("section", { "data-rows-left-out": true }, el("h3", {}, `Rows that are left out: ${rows.length}`), leftOut(rows)),
  ];
}

/** Shows what a table would add to whose log, asks what it does not say, and leaves the adding to what adds any file. */
export function openTable(app: App, text: string, found: HTMLElement, refuse: (error: unknown) => void, done: Done): void {
  const ids = app.store.ids();
  if (ids.length === 0) throw new Error("A table of sets is added to somebody who is here, and nobody is. Begin with somebody new, or open their file, first.");
  const told: Told = { whose: ids.length === 1 ? ids[0] : undefined, unit: undefined, dayOrder: undefined, lifts: new Map(), more: 0 };
  const pick = <T,>(change: (value: T) => void) => (value: T): void => {
    change(value);
    try {
      draw();
    } catch (error) {
      refuse(error);
    }
  };
  const whosePart = (): Child =>
    ids.length > 1 && choices("Whose sets are these?", ids.map((id) => ({ value: id, label: shownName(id) })), told.whose, pick((id: string) => {
      told.whose = id;
      told.lifts.clear();
    }));
  const liftsPart = (lifter: Loaded): Child => {
    const here = (app.parameters(lifter)?.lifts ?? []).map((one) => ({ value: one.id, label: app.liftName(one.id, lifter) }));
    const more = told.more === 0 ? undefined : el("p", { class: "caution", "data-more-lifts": told.more }, `${told.more} more names of lifts are not known here, and their rows are left out. Give the lifts of the table the names that they have here, or cut it in pieces.`);
    return [...told.lifts].map(([spelled, lift]): Child => choices(`The table says ${quoted(spelled)}. Which lift is that?`, [...here, { value: "", label: "None: leave it out" }], lift, pick((id: string) => void told.lifts.set(spelled, id)))).concat([more]);
  };
  const draw = (): void => {
    const lifter = told.whose === undefined ? undefined : app.store.lifter(told.whose);
    const head = el("h2", {}, lifter ? `What this table would add to the log of ${shownName(lifter.id)}` : "A table of sets");
    if (!lifter) return fill(found, head, el("article", { class: "card" }, whosePart()));
    const { answer, asks } = read(lifter, text, told);
    const unit = (asks === "unit" || told.unit) && choices("In which unit are the loads? The table does not say.", [{ value: "kg", label: "kg" }, { value: "lb", label: "lb" }], told.unit, pick((value: string) => (told.unit = value as Told["unit"])));
    const order = (asks === "dayOrder" || told.dayOrder) && choices("Which comes first in its days? The table does not say.", [{ value: "day_first", label: "The day: 29.3.2026" }, { value: "month_first", label: "The month: 3/29/2026" }], told.dayOrder, pick((value: string) => (told.dayOrder = value as Told["dayOrder"])));
    const unknown = new Set((answer?.told.leftOut ?? []).flatMap((row) => (row.why === "unknown_lift" && !told.lifts.has(row.given) ? [row.given] : [])));
    const asked = [...unknown].slice(0, Math.max(0, MOST_LISTED - told.lifts.size));
    for (const name of asked) told.lifts.set(name, "");
    told.more = unknown.size - asked.length;
    fill(
      found,
      head,
      el("article", { class: "card", "data-table": true }, whosePart(), unit, order, answer && report(app, lifter, answer.told), answer && liftsPart(lifter)),
      answer && answer.told.sessions > 0 ? addingPart(lifter, answer) : answer && el("p", {}, "Nothing would be added."),
    );
  };
  /** The entries of the log as they are, and the new ones behind them, as any file that adds to it. */
  const addingPart = (lifter: Loaded, { texts }: TableIn): Child =>
    readDocument(app, logOf(lifter, [...lifter.events, ...texts])).map((one) => previewPart(app, one, "replaced by a file", done));
  draw();
}
