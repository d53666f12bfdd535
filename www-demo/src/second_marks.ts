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
export function secondMarks(app: App, was: Session, criteriaOf: (lift: string) => Criterion[], save: (kind: EventKindInput, wrong: HTMLElement, close: () => void) => void, { last, hands }: { last: number; hands: string[] }): void {
  const sets = was.lifts.flatMap((lift) => lift.sets.map((set, at) => ({ of: lift, lift: lift.lift, at, set })));
  const box = el("dialog", { class: "pad wide", "aria-label": "Somebody else\u2019s marks" });
  const name = el("input", { type: "text", maxlength: 60, autocomplete: "off", id: "rater" });
  let chosen: (typeof sets)[number] | undefined;
  let good: number | undefined;
  const wrong = el("p", { class: "wrong", role: "alert" });
  const marks: Record<string, Mark> = {};
  const write = (): void => {
    const who = name.value.trim();
    const own = chosen ? criteriaOf(chosen.lift) : [];
    const known = [chosen?.set.marks, ...(chosen?.set.alsoMarked ?? [])].some((one) => one?.raterId === who);
    const lacks = who === "" ? "Who, please." : known ? `${who} marked this set already.` : !chosen ? "Which set, please." : good === undefined ? "How many were good, please." : own.some((one) => marks[one.id] === undefined) ? "Every point, please; \u201cnot seen\u201d is an answer." : "";
    wrong.textContent = lacks;
    if (lacks !== "" || !chosen || good === undefined) return;
    const seen = { reps: chosen.set.reps, acceptable: good, marks: own.map((one) => ({ criterion: one.id, mark: marks[one.id] ?? ("not_seen" as const) })), rater: "coach" as const, raterId: who };
    // What was there stays as it was until the log has taken it: it may be asked again.
    const marked = ({ set }: { set: WorkSet }): WorkSet => ({ ...set, alsoMarked: [...(set.alsoMarked ?? []), seen] });
    const session = { ...was, lifts: was.lifts.map((lift) => (lift === chosen?.of ? { ...lift, sets: lift.sets.map((set) => (set === chosen?.set ? marked(chosen) : set)) } : lift)) };
    save({ correction: { replaces: last, with: { sessionRecorded: session } } }, wrong, entry.close);
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
      wrong,
      el("div", { class: "row" }, button("Cancel", () => entry.close(), { class: "quiet" }), button("Write it down", write, { class: "main", "data-act": "save-marks" })),
    );
  draw();
  const entry = showEntry(box);
}
