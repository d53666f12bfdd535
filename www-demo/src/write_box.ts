// A box that asks a few things and writes one event down.
import type { App } from "./app.ts";
import type { EventKindInput } from "bismar-page-package";
import { showEntry } from "./boxes.ts";
import { button, el, fill, type Child } from "./element.ts";
import { attempt } from "./engine.ts";
import { stopsOf } from "./stops_told.ts";
import type { Loaded } from "./store.ts";

type Made = EventKindInput | string;

/** Why the log here takes no such event today; what was entered stays in the box then. */
export function refusal(app: App, { id }: Loaded, kind: EventKindInput): string | undefined {
  const now = app.store.lifter(id);
  return now && attempt("page.takes", { log: app.log(now), day: app.day(now), kind }).refused?.message;
}

/** Writes what a box holds. The box goes once that is in the log; what refuses it is said where it was entered. */
export async function recordEntry(app: App, lifter: Loaded, kind: EventKindInput, wrong: HTMLElement, close: () => void): Promise<boolean> {
  // A second tap while it is on its way.
  if (wrong.dataset.busy !== undefined) return false;
  wrong.dataset.busy = "";
  const refused = refusal(app, lifter, kind);
  const done = refused === undefined && (await app.record(lifter, kind));
  delete wrong.dataset.busy;
  if (done) close();
  else {
    wrong.textContent = refused ?? app.notice;
    // Not below the edge of a small screen.
    wrong.scrollIntoView({ block: "center" });
  }
  app.refresh();
  return done;
}

/** A box that asks a few things and writes one event; `make` gives the event, or words for what is missing; where it only
 * looks (`peek`), nothing is taken as asked by it. `begun` where the tap
 * that opened it said something already. */
export function writeBox(app: App, title: string, parts: (redraw: () => void) => Child, make: (peek?: boolean) => Made, { opens = false, begun = false } = {}): void {
  const lifter = app.lifter;
  if (!lifter) return;
  const box = el("dialog", { class: "pad wide", "aria-label": title, "data-opens": opens });
  const wrong = el("p", { class: "wrong", role: "alert" });
  const write = async (): Promise<boolean> => {
    const made = make();
    if (typeof made !== "string") return recordEntry(app, lifter, made, wrong, () => own.close());
    wrong.textContent = made;
    wrong.scrollIntoView({ block: "center" });
    return false;
  };
  const draw = (): void =>
    fill(
      box,
      el("h2", {}, title),
      parts(draw),
      wrong,
      el(
        "div",
        { class: "row" },
        button("Cancel", () => own.cancel(), { class: "quiet" }),
        button("Write it down", () => void write(), { class: "main", "data-act": "write-down" }),
      ),
    );
  draw();
  box.addEventListener("told", draw);
  const made = (): EventKindInput | undefined => {
    const kind = make(true);
    return typeof kind === "string" ? undefined : kind;
  };
  const stops = (): string[] => {
    const kind = made();
    return kind ? stopsOf(app, kind) : [];
  };
  const own = showEntry(box, { stops, write: () => made() && write }, begun);
}

/** The same of what may open something: it closes where another window records what it was not made for. */
export function openingBox(app: App, title: string, parts: (redraw: () => void) => Child, make: (peek?: boolean) => Made): void {
  writeBox(app, title, parts, make, { opens: true });
}

/** Who said it. */
export function who(label: string): { field: HTMLElement; name: () => string } {
  const input = el("input", { type: "text", maxlength: 60, autocomplete: "off", id: "who" });
  return { field: el("div", { class: "field" }, el("label", { class: "label", for: "who" }, label), input), name: () => input.value.trim() };
}

/** What is said where nobody is named. */
export const NAME = "Who, please.";
