// The log: what is in it, taking back, correcting. Nothing is overwritten; a correction is an event of its own.
import type { App } from "./app.ts";
import { button, el, fill, type Child } from "./element.ts";
import type { Tree } from "./engine.ts";
import type { Loaded } from "./store.ts";
import { count, dayShort, mass, plain } from "./numbers.ts";
import { sheet } from "./record.ts";
import { trackPart } from "./questions/years.ts";
import { writeDownPart } from "./write_down.ts";

interface Chain {
  root: number;
  day: string;
  /** What it said, one after the other; nothing means taken back. */
  said: (Tree | undefined)[];
  last: number;
}

/** Each entry with what corrections made of it. */
function chains(lifter: Loaded): { byRoot: Map<number, Chain>; lastRoot: number | undefined } {
  const byRoot = new Map<number, Chain>();
  const rootOf = new Map<number, number>();
  let lastRoot: number | undefined;
  for (const text of lifter.events) {
    const event = JSON.parse(text);
    const correction = event.kind.correction;
    const root: number = correction ? (rootOf.get(correction.replaces) ?? correction.replaces) : event.sequence;
    rootOf.set(event.sequence, root);
    lastRoot = root;
    const chain = byRoot.get(root);
    if (chain) {
      chain.said.push(correction?.with);
      chain.last = event.sequence;
    } else byRoot.set(root, { root, day: event.day, said: [event.kind], last: event.sequence });
  }
  return { byRoot, lastRoot };
}

function correct(app: App, lifter: Loaded, chain: Chain, kind: Tree | undefined): void {
  const on = app.lastDay(lifter);
  void app.record(lifter, { correction: { replaces: chain.last, ...(kind ? { with: kind } : {}) } }, undefined, false, on).then(() => app.refresh());
}

const KINDS: Record<string, string> = {
  session_recorded: "Session",
  next_day_report: "Morning after",
  session_missed: "Session missed",
  layoff_noted: "Break",
  pain_report: "Pain",
  usual_pain_agreed: "Usual pain agreed",
  symptom_report: "Stop sign",
  day_report: "The day\u2019s questions",
  coach_sign_off: "Coach signed off",
  coach_override: "Coach overruled",
  advance_accepted: "Step taken",
  advance_declined: "Step declined",
  variant_changed: "Another rung",
  range_changed: "Another range",
  bar_or_discs_changed: "Other bar or discs",
  rater_changed: "Other eyes",
  body_mass_recorded: "Body mass",
  clearance_recorded: "Clearance",
  clearance_expired: "Clearance ended",
  parameters_changed: "Settings of the lifts",
  block_started: "Block begins",
  block_ended: "Block ends",
  role_set: "Role of a lift",
  function_tested: "Everyday test",
};
export function kindWords(kind: string): string {
  return KINDS[kind] ?? kind.replaceAll("_", " ");
}

function summary(kind: Tree): string {
  const [name, body] = Object.entries(kind)[0] as [string, Tree];
  if (name === "session_recorded") {
    return body.lifts.map((lift: Tree) => `${lift.track} ${lift.sets.map((set: Tree) => `${mass({ kg: set.load.kg ?? 0 })} \u00d7 ${set.reps}`).join(", ")}`).join("; ");
  }
  if (name === "parameters_changed") return "lifts, bars, discs and rules";
  if (typeof body === "string") return body;
  return Object.entries(body as Record<string, Tree>)
    .filter(([, value]) => typeof value === "string" || typeof value === "number")
    .map(([key, value]) => `${key.replaceAll("_", " ")}: ${value}`)
    .join(", ");
}

/** Correcting a session: pick the set, change it. */
function correctBox(app: App, lifter: Loaded, chain: Chain, kind: Tree): void {
  const box = el("dialog", { class: "pad wide", "aria-label": "Correct a session" });
  const session = structuredClone(kind.session_recorded);
  const criteriaOf = (track: string): Tree[] => app.parameters(lifter)?.tracks.find((one: Tree) => one.name === track)?.criteria ?? [];
  const edit = (lift: Tree, at: number): void => {
    const set = lift.sets[at];
    box.close();
    sheet(
      app,
      `${lift.track}: set ${at + 1}`,
      {
        load: set.load,
        reps: set.reps,
        good: set.marks?.acceptable,
        first: set.marks?.first_failing_rep,
        reserve: set.effort?.rir,
        marks: Object.fromEntries((set.marks?.marks ?? []).map((one: Tree) => [one.criterion, one.mark])),
        cue: "",
        setup: { company: undefined, pins: undefined },
      },
      criteriaOf(lift.track),
      (facts) => {
        const marks = facts.good === undefined ? undefined : {
          ...(set.marks ?? { rater: "coach" }),
          reps: facts.reps,
          acceptable: facts.good,
          marks: Object.entries(facts.marks).map(([criterion, mark]) => ({ criterion, mark })),
        };
        if (marks) delete marks.first_failing_rep;
        if (marks && facts.first !== undefined && (facts.good ?? 0) < facts.reps) marks.first_failing_rep = facts.first;
        const next = { ...set, load: facts.load, reps: facts.reps };
        delete next.marks;
        if (marks) next.marks = marks;
        if (facts.reserve === undefined) { if (set.effort?.rir !== undefined) delete next.effort; }
        else next.effort = { rir: facts.reserve };
        lift.sets[at] = next;
        correct(app, lifter, chain, { session_recorded: session });
      },
    );
  };
  fill(
    box,
    el("h2", {}, "Which set was wrong?"),
    el("div", { class: "stack" }, session.lifts.map((lift: Tree) => lift.sets.map((set: Tree, at: number) => button(`${lift.track}: set ${at + 1}, ${mass(set.load)} \u00d7 ${plain(set.reps)}`, () => edit(lift, at), { "data-act": "correct-set" })))),
    button("Cancel", () => box.close(), { class: "quiet" }),
  );
  box.addEventListener("close", () => box.remove());
  document.body.append(box);
  box.showModal();
}

const PAGE = 30;

export function logView(app: App): Child {
  const lifter = app.lifter;
  if (!lifter) return [el("h1", { tabindex: -1 }, "Log"), el("p", {}, "No lifter is in view.")];
  const { byRoot, lastRoot } = chains(lifter);
  const shown: number = app.kept.shown ?? PAGE;
  const entries = [...byRoot.values()].toReversed();
  const last = lastRoot === undefined ? undefined : byRoot.get(lastRoot);
  const tracks: string[] = (app.parameters(lifter)?.tracks ?? []).map((one: Tree) => one.name);
  return [
    el("h1", { tabindex: -1 }, `Log of ${lifter.id}`),
    el("p", { class: "soft" }, `${count(lifter.events.length, "event")}. Nothing is ever overwritten: taking back and correcting add an event.`),
    last && button("Undo the last entry", () => correct(app, lifter, last, last.said.length > 1 ? last.said.at(-2) : undefined), { "data-act": "undo" }),
    writeDownPart(app),
    el("details", {}, el("summary", {}, "Tracks of the lifts over time"), tracks.map((track) => [el("h2", {}, track), trackPart(app, track)])),
    el("h2", {}, "Entries, latest first"),
    el(
      "ul",
      { class: "log" },
      entries.slice(0, shown).map((chain) => {
        const now = chain.said.at(-1);
        const first = chain.said.find((one) => one !== undefined);
        const name = Object.keys(now ?? first)[0] as string;
        return el(
          "li",
          { class: now ? "" : "gone" },
          el("p", {}, el("b", {}, `${dayShort(chain.day)} \u00b7 ${kindWords(name)}`), chain.said.length > 1 ? ` (${now ? "corrected" : "taken back"})` : ""),
          el("p", { class: "soft" }, summary(now ?? first)),
          el(
            "div",
            { class: "row" },
            name === "session_recorded" && now && button("Correct", () => correctBox(app, lifter, chain, now), { "aria-label": `Correct the session of ${dayShort(chain.day)}`, "data-act": "correct" }),
            now && name !== "parameters_changed" && button("Take back", () => correct(app, lifter, chain, undefined), { "aria-label": `Take back ${kindWords(name)} of ${dayShort(chain.day)}` }),
            !now && button("Put back", () => correct(app, lifter, chain, chain.said.findLast((one) => one !== undefined)), { "aria-label": `Put back ${kindWords(name)} of ${dayShort(chain.day)}` }),
          ),
        );
      }),
    ),
    entries.length > shown && button("Earlier entries", () => { app.kept.shown = shown + PAGE; app.refresh(); }),
  ];
}
