// A box that asks a few things and writes one event down.
import type { App } from "./app.ts";
import type { EventKindInput } from "bismar-page-package";
import { button, el, fill, showBox, type Child } from "./element.ts";
import { attempt } from "./engine.ts";
import type { Loaded } from "./store.ts";

type Made = EventKindInput | string;

/** Why the log here takes no such event today; what was entered stays in the box then. */
export function refusal(app: App, { id }: Loaded, kind: EventKindInput): string | undefined {
  const now = app.store.lifter(id);
  return now && attempt("page.takes", { log: app.log(now), day: app.day(now), kind }).refused?.message;
}

/** A box that asks a few things and writes one event; `make` gives the event, or words for what is missing. */
export function writeBox(app: App, title: string, parts: (redraw: () => void) => Child, make: () => Made, opens = false): void {
  const lifter = app.lifter;
  if (!lifter) return;
  const box = el("dialog", { class: "pad wide", "aria-label": title, "data-opens": opens });
  const wrong = el("p", { class: "wrong", role: "alert" });
  const draw = (): void =>
    fill(
      box,
      el("h2", {}, title),
      parts(draw),
      wrong,
      el(
        "div",
        { class: "row" },
        button("Cancel", () => box.close(), { class: "quiet" }),
        button(
          "Write it down",
          () => {
            const made = make();
            const missing = typeof made === "string" ? made : refusal(app, lifter, made);
            if (typeof made === "string" || missing !== undefined) {
              wrong.textContent = missing ?? "";
              // Not below the edge of a small screen.
              wrong.scrollIntoView({ block: "center" });
              return;
            }
            box.close();
            void app.record(lifter, made).then(() => app.refresh());
          },
          { class: "main", "data-act": "write-down" },
        ),
      ),
    );
  draw();
  showBox(box);
}

/** The same of what may open something: it closes where another window records what it was not made for. */
export function openingBox(app: App, title: string, parts: (redraw: () => void) => Child, make: () => Made): void {
  writeBox(app, title, parts, make, true);
}

/** Who said it. */
export function who(label: string): { field: HTMLElement; name: () => string } {
  const input = el("input", { type: "text", maxlength: 60, autocomplete: "off", id: "who" });
  return { field: el("div", { class: "field" }, el("label", { class: "label", for: "who" }, label), input), name: () => input.value.trim() };
}

/** What is said where nobody is named. */
export const NAME = "Who, please.";
