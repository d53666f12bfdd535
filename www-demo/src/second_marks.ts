// What a second person saw in a set, beside the marks that are there: read by "Do two people mark alike?". The first marks are
// not shown meanwhile, since they would lead the eye.
import type { App } from "./app.ts";
import { showEntry } from "./boxes.ts";
import { button, choices, el, fill } from "./element.ts";
import type { Criterion, EventKindInput, Mark, Session, WorkSet } from "bismar-page-package";
import { mass } from "./numbers.ts";
import { EACH_HAND } from "./setup.ts";

const MARKS: { value: Mark; label: string }[] = [
  { value: "met", label: "Met" },
  { value: "borderline", label: "Borderline" },
  { value: "not_met", label: "Not met" },
  { value: "not_seen", label: "Not seen" },
];

/** Asks who, which set, and what was seen; gives the session with it. */
export function secondMarks(app: App, was: Session, criteriaOf: (lift: string) => Criterion[], save: (kind: EventKindInput) => void, { last, hands }: { last: number; hands: string[] }): void {
  const session = structuredClone(was);
  const sets = session.lifts.flatMap((lift) => lift.sets.map((set, at) => ({ lift: lift.lift, at, set })));
  const box = el("dialog", { class: "pad wide", "aria-label": "Somebody else\u2019s marks" });
  const name = el("input", { type: "text", maxlength: 60, autocomplete: "off", id: "rater" });
  let chosen: { lift: string; at: number; set: WorkSet } | undefined;
  let good: number | undefined;
  let wrong = "";
  const marks: Record<string, Mark> = {};
  const write = (): void => {
    const who = name.value.trim();
    const own = chosen ? criteriaOf(chosen.lift) : [];
    const known = [chosen?.set.marks, ...(chosen?.set.alsoMarked ?? [])].some((one) => one?.raterId === who);
    wrong = who === "" ? "Who, please." : known ? `${who} marked this set already.` : !chosen ? "Which set, please." : good === undefined ? "How many were good, please." : own.some((one) => marks[one.id] === undefined) ? "Every point, please; \u201cnot seen\u201d is an answer." : "";
    if (wrong !== "" || !chosen || good === undefined) return draw();
    chosen.set.alsoMarked = [...(chosen.set.alsoMarked ?? []), { reps: chosen.set.reps, acceptable: good, marks: own.map((one) => ({ criterion: one.id, mark: marks[one.id] ?? "not_seen" })), rater: "coach", raterId: who }];
    entry.close();
    save({ correction: { replaces: last, with: { sessionRecorded: session } } });
  };
  const draw = (): void =>
    fill(
      box,
      el("h2", {}, "Somebody else\u2019s marks"),
      el("p", { class: "soft" }, "Of a set that this person saw too. The first marks are not shown: they would lead the eye. Whoever marks more carefully counts for the gate."),
      el("div", { class: "field" }, el("label", { class: "label", for: "rater" }, "Who"), name),
      choices("Which set", sets.map((one, value) => ({ value, label: `${app.liftName(one.lift)}: set ${one.at + 1}, ${mass(one.set.load)}${hands.includes(one.lift) ? EACH_HAND : ""}` })), chosen ? sets.indexOf(chosen) : undefined, (value) => {
        chosen = sets[value];
        good = undefined;
        for (const one of Object.keys(marks)) delete marks[one];
        draw();
      }),
      chosen && choices("Good repetitions", Array.from({ length: chosen.set.reps + 1 }, (_, value) => ({ value, label: String(value) })), good, (value) => {
        good = value;
        draw();
      }),
      chosen && criteriaOf(chosen.lift).map((one) => choices(one.id, MARKS, marks[one.id], (value) => {
        marks[one.id] = value;
        draw();
      })),
      wrong && el("p", { class: "wrong", role: "alert" }, wrong),
      el("div", { class: "row" }, button("Cancel", () => entry.close(), { class: "quiet" }), button("Write it down", write, { class: "main", "data-act": "save-marks" })),
    );
  draw();
  const entry = showEntry(box);
}
