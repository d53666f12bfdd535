// Stop signs and notes, always one tap away.
import type { App } from "./app.ts";
import { button, el, type Child } from "./element.ts";
import { ask } from "./engine.ts";

const TITLES: Record<string, string> = {
  emergency_signs: "Stop and call for help",
  back_emergency: "Emergency care today",
  see_clinician_first: "See a clinician before lifting again",
  not_while_unwell: "Not today",
  ask_before_starting: "Before starting",
  breathing_plan: "Breathing and bracing",
  estimates_are_ranges: "Estimates",
  holding_is_good: "Holding",
  gates_unproven: "What gates do not show",
  examines_nobody: "What this page is",
};

export function notesView(app: App): Child {
  const notes = ask("page.cautions", {});
  return [
    el("h1", { tabindex: -1 }, "Stop signs and notes"),
    notes.map((note, at) =>
      el("section", { class: at < 2 ? "card stopped" : "card" }, el("h2", {}, TITLES[note.code] ?? note.code), el("p", { class: at < 2 ? "stop-words" : "" }, note.text)),
    ),
    button("Somebody has one of these now", () => app.go("q13"), { class: "main" }),
  ];
}
