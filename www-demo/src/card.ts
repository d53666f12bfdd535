// One printable page per lifter for whoever coaches next.
import type { App } from "./app.ts";
import { answer, caution, list } from "./answer.ts";
import { button, choices, el, type Child } from "./element.ts";
import type { Tree } from "./engine.ts";
import { sideWords } from "./bar_drawing.ts";
import { statusWords } from "./charts.ts";
import { dayLong, face, mass, plain } from "./numbers.ts";
import { implementName } from "./kit.ts";
import { liftLine } from "./today_view.ts";

export function cardView(app: App): Child {
  const lifter = app.lifter;
  if (!lifter) return answer({ big: "Needs a lifter", why: "The card is made from a lifter\u2019s log." });
  const health: boolean = app.kept.health ?? false;
  const found = app.today(lifter);
  if (!found.answer) return answer({ big: "No card can be made", why: found.refused?.message ?? "" });
  const history = app.history(lifter);
  const { session, lines } = found.answer;
  const parameters: Tree = history.parameters;
  const last: Tree = history.sessions.at(-1);
  const stopped = history.stops.length > 0;
  const asked = choices("Health detail on the card", [{ value: "no", label: "Left out" }, { value: "yes", label: "Shown" }], health ? "yes" : "no", (value) => {
    app.kept.health = value === "yes";
    app.refresh();
  });
  const hidden = /pain|clear|symptom|stop|day|morning|asks|limit|flexion|body_mass|suspended/i;
  const told = /pain|clear|clinician|ill\b|illness|unwell|fever|morning/i;
  const reasons = (line: Tree): string[] => line.why.filter((one: Tree) => health || !(hidden.test(one.code) || told.test(one.text))).map((one: Tree) => one.text);
  return [
    el("div", { class: "no-print" }, asked, button("Print", () => globalThis.print(), { class: "main" })),
    el(
      "section",
      { class: "handover", "aria-label": "Handover card" },
      el("h2", {}, lifter.id),
      el("p", { class: "big", "data-answer": true }, stopped ? "Stopped: a clearance comes first" : session.lifts.map((lift: Tree) => `${app.liftName(lift.lift)} ${lift.load ? mass(lift.load) : lift.verdict}`).join(", ")),
      el("p", { class: "soft", "data-why": true }, `${dayLong(session.today)}${health && history.age !== undefined ? `, ${history.age} years old` : ""}${app.header(lifter).invented ? ", invented" : ""}.`),
      session.lifts.map((lift: Tree, at: number) => {
        const line = lines[at];
        return el(
          "section",
          { class: "handover-lift" },
          el("h3", {}, `${app.liftName(lift.lift)}: ${statusWords(lift.status)}`),
          el("p", {}, `Granted ${mass(lift.limit)}. Today ${liftLine(lift)}.${lift.loaded?.setting?.discs ? ` Each end: ${sideWords(lift.loaded.setting.discs)}.` : ""}`),
          line.missing.length > 0 && el("p", {}, `The gate: ${line.missing.filter((one: string) => health || !/block|pain|morning/.test(one)).join("; ") || "nothing that can be shown here"}.`),
          list(reasons(line)),
        );
      }),
      el("h3", {}, "Last session"),
      last ? el("p", {}, `${dayLong(last.day)}: ${last.lifts.map((lift: Tree) => `${app.liftName(lift.lift)} ${mass(lift.load)} \u00d7 ${lift.sets.map((set: Tree) => plain(set.reps)).join(", ")}${lift.cue ? ` (\u201c${lift.cue}\u201d)` : ""}`).join("; ")}.`) : el("p", {}, "None yet."),
      health && last?.pain.length > 0 && el("p", {}, `Pain then: ${last.pain.join(", ")}.`),
      health && stopped && el("p", {}, `Stopped: ${history.stops.join(", ")}.`),
      el("h3", {}, "Bars and discs"),
      el("p", {}, `${parameters.implements.map(implementName).join(", ")}; discs ${parameters.stock.discs.map((disc: Tree) => `${disc.count} \u00d7 ${face(disc.nominal)}`).join(", ")}.`),
      caution("holding_is_good"),
      caution("examines_nobody"),
      el("p", { class: "soft" }, `Rules of version ${session.version}, settings ${session.parameters}.`),
    ),
  ];
}
