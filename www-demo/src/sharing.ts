// Several at one bar: the order in which the fewest discs move, from their logs. The library says it, and who has no turn.
import type { App } from "./app.ts";
import { table } from "./answer.ts";
import { el, type Child } from "./element.ts";
import { attempt, type Answered } from "./engine.ts";
import { count, mass, plain } from "./numbers.ts";
import { shownName } from "./names.ts";
import { movesInWords } from "./today_view.ts";

/** One of them: whose lift, and how many sets of it are on the list of the session going on. */
export interface AtTheBar {
  id: string;
  lift: string;
  done: number;
}

type Shared = Answered<"page.shared">;

/** The turns of these, or why there are none. */
export function sharedBy(app: App, at: AtTheBar[]): { shared: Shared; no?: undefined } | { shared?: undefined; no: string } {
  const found = at.flatMap((one) => {
    const lifter = app.store.lifter(one.id);
    return lifter ? [{ day: app.day(lifter), given: { log: app.log(lifter), plan: lifter.plan, lift: one.lift, done: one.done } }] : [];
  });
  const [first] = found;
  if (!first || found.some((one) => one.day !== first.day)) return { no: "Their logs are of different days." };
  const tried = attempt("page.shared", { lifters: found.map((one) => one.given), today: first.day });
  return tried.answer ? { shared: tried.answer } : { no: tried.refused.message };
}

/** Whose turn it is, with which load, and which discs move. */
export function turnsTable(at: AtTheBar[], { turns }: Shared, name: string): HTMLElement {
  const rows = turns.turns.map((turn) => [shownName(at[turn.lifter]?.id ?? ""), `${mass(turn.moves.total)}${turn.blocks ? `, on blocks of ${plain(turn.blocks.mm, 0)} mm` : ""}`, movesInWords(turn.moves) || "\u2013"]);
  return table(["Who", "Load", "Each end"], rows, name);
}

/** In which order the fewest discs move, set by set; nothing where nobody shares. */
export function fewestMoves(app: App, at: AtTheBar[]): Child {
  if (at.length < 2) return undefined;
  const { shared, no } = sharedBy(app, at);
  if (!shared) return el("p", { class: "soft" }, `An order with the fewest disc moves cannot be worked out here. ${no}`);
  const [first] = shared.turns.turns;
  const who = first && (at[first.lifter]?.id ?? "");
  return [
    who !== undefined && el("p", { "data-first": who }, el("b", {}, `${shownName(who)} first`), `: with turns in this order ${count(shared.turns.movesEachEnd, "disc move")} on each end${shared.turns.proved ? ", the fewest there are" : ""}.`),
    el("details", { class: "more" }, el("summary", {}, "Turn by turn"), turnsTable(at, shared, "Turns at this bar")),
  ];
}
