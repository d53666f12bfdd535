// One printable page per lifter for whoever coaches next.
import type { App } from "./app.ts";
import { answer, caution } from "./answer.ts";
import { button, choices, el, type Child } from "./element.ts";
import type { Face, LiftToday, Override, TodayLine } from "bismar-page-package";
import { kindOf } from "./engine.ts";
import { sideWords } from "./bar_drawing.ts";
import { statusWords } from "./charts.ts";
import { atMost, dayLong, face, limitOfDay, mass, plain } from "./numbers.ts";
import { barWords } from "./kit.ts";
import { gateInWords } from "./plan_view.ts";
import { limitsOf } from "./limits.ts";
import { shownName } from "./names.ts";
import { EACH_HAND, eachHand } from "./setup.ts";
import { liftLine, placeWords } from "./today_view.ts";

function endsWords(discs: { nominal: Face }[] | undefined): string {
  return discs === undefined ? "" : discs.length === 0 ? " The empty bar." : ` Each end: ${sideWords(discs)}.`;
}

/** Whether the view is a card that is to say nothing of health where it is printed. */
export function withoutHealth(app: App): boolean {
  return app.view === "q24" && app.kept.health !== true;
}

/** All that a card without health detail says of a stop. */
const STOP = "Stop: no training until a clinician and the coach have said so.";

export function cardView(app: App): Child {
  const lifter = app.lifter;
  if (!lifter) return answer({ big: "Needs a lifter", why: "The card is made from a lifter\u2019s log." });
  const health = app.kept.health === true;
  const found = app.today(lifter);
  const stopped = app.stops(lifter).lines.length > 0;
  if (!found.answer) return [stopped && !health && el("p", { class: "big" }, STOP), answer({ big: "No card can be made", why: found.refused?.message ?? "" })];
  const history = app.history(lifter);
  // Which lift is stopped and which is not would tell what kind of stop it is: without health detail they all say the same.
  const held = !health && (stopped || found.answer.session.lifts.some((one) => one.verdict === "stop"));
  const { session, lines } = found.answer;
  const { parameters } = history;
  const last = history.sessions.at(-1);
  const asked = choices("Health detail on the card", [{ value: "no", label: "Left out" }, { value: "yes", label: "Shown" }], health ? "yes" : "no", (value) => {
    app.kept.health = value === "yes";
    app.refresh();
  });
  // Nothing where no point is set.
  const points = (lift: string): string =>
    (parameters?.lifts.find((one) => one.id === lift)?.criteria ?? []).map((one) => (one.critical ? `${one.id} (critical)` : one.id)).join(", ");
  const gateOf = (lift: string) => parameters?.lifts.find((one) => one.id === lift)?.gate;
  /** What the gate still asks for; a count says how far it is. */
  const gateMissing = (line: TodayLine): string => {
    const all = line.missing.filter((one) => health || !/block|pain|morning/.test(one));
    return all.length === 0 ? "Nothing is missing that can be shown here." : all.map((one) => `${/^\d+ of /.test(one) ? "So far" : "Missing:"} ${one}.`).join(" ");
  };
  const decided: Override[] = history.events.flatMap((one) => (one.said && kindOf(one.said, "coachOverride")) ?? []);
  const overrides = (lift: string): string[] =>
    decided
      .filter((one) => one.lift === lift && !(one.expires && one.expires < session.today))
      .slice(-1)
      .map((one) => `The coach decided: at most ${atMost(one.load)}${eachHand(app, one.lift)}${one.expires ? ` until ${dayLong(one.expires)}` : ""}${health ? `, ${one.who}` : ""}.`);
  const lastWords = (lift: string): string | undefined => {
    const cue = history.sessions.flatMap((one) => one.lifts).filter((one) => one.lift === lift && one.cue).at(-1)?.cue;
    // Words of somebody's own may tell of health.
    return cue === undefined || !health ? undefined : `\u201c${cue}\u201d`;
  };
  const limits: string[] = limitsOf(app);
  const hidden = /pain|clear|symptom|stop|day|morning|asks|limit|flexion|body_mass|suspended/i;
  const told = /pain|clear|clinician|ill\b|illness|unwell|fever|morning/i;
  // A limit's own figure is health detail too: where less than the granted load is allowed, neither it nor what was rounded from it is said.
  const less = (lift: LiftToday): boolean => lift.limit.kg < lift.granted.work.load.kg;
  const reasons = (line: TodayLine, at: number): string[] => {
    const lift = session.lifts[at];
    const figure = (code: string): boolean => code === "rounded_down" && lift !== undefined && less(lift);
    return line.why.filter((one) => health || !(hidden.test(one.code) || told.test(one.text) || figure(one.code))).map((one) => one.text);
  };
  // What holds for every lift is said once.
  const [first = [], ...others] = lines.map(reasons);
  const shared: string[] = others.length > 0 ? first.filter((one) => others.every((all) => all.includes(one))) : [];
  const own = (line: TodayLine, at: number): string[] => reasons(line, at).filter((one) => !shared.includes(one));
  return [
    el("div", { class: "no-print" }, asked, button("Print", () => globalThis.print(), { class: "main" })),
    el(
      "section",
      { class: "handover", "aria-label": "Handover card" },
      el("h2", {}, shownName(lifter.id)),
      held && el("p", { "data-stop": true }, el("b", {}, STOP)),
      el("p", { class: "big", "data-answer": true }, stopped || held ? "Stopped: a clearance comes first" : session.lifts.map((lift) => `${app.liftName(lift.lift)} ${lift.load ? `${mass(lift.load)}${eachHand(app, lift.lift)}` : lift.verdict}`).join(", ")),
      el("p", { class: "soft", "data-why": true }, `${dayLong(session.today)}${health && history.age !== undefined ? `, ${history.age} years old` : ""}${app.header(lifter).invented ? ", invented" : ""}.`),
      el("div", { class: "handover-lifts" }, session.lifts.map((lift, at) => {
        const line = lines[at] as TodayLine;
        if (held) return el("section", { class: "handover-lift" }, el("h3", {}, app.liftName(lift.lift)), el("p", {}, "Nothing until this is cleared."), points(lift.lift) && el("p", {}, `Watched for: ${points(lift.lift)}.`));
        return el(
          "section",
          { class: "handover-lift" },
          el("h3", {}, `${app.liftName(lift.lift)}: ${statusWords(lift.status)}`),
          lift.sets > 0 && el("p", {}, `${placeWords(app, lift)}${lift.blocks ? ` \u00b7 blocks of ${plain(lift.blocks.mm, 0)} mm` : ""}.`),
          el("p", {}, `${health || !less(lift) ? `Working load ${limitOfDay(lift)}${eachHand(app, lift.lift)}. ` : ""}Today: ${liftLine(app, lift).replace(/^[NL](?=othing|eave)/, (letter) => letter.toLowerCase())}.${lift.sets > 0 ? endsWords(lift.loaded && kindOf(lift.loaded.setting, "discs")) : ""}`),
          el("p", {}, `Gate: ${gateInWords(gateOf(lift.lift))}. ${lift.gate.open ? "Open." : gateMissing(line)}`),
          points(lift.lift) && el("p", {}, `Watched for: ${points(lift.lift)}.`),
          overrides(lift.lift).map((one) => el("p", {}, one)),
          lastWords(lift.lift) && el("p", {}, `Last cue: ${lastWords(lift.lift)}.`),
          own(line, at).length > 0 && el("p", {}, own(line, at).join(" ")),
        );
      })),
      !held && shared.length > 0 && el("p", {}, el("b", {}, "For every lift: "), shared.join(" ")),
      el("h3", {}, "Last session"),
      last && held ? el("p", {}, `${dayLong(last.day)}.`) : last ? el("p", {}, `${dayLong(last.day)}: ${last.lifts.map((lift) => `${app.liftName(lift.lift)} ${mass(lift.load)}${lift.eachHand ? EACH_HAND : ""} \u00d7 ${lift.sets.map((set) => plain(set.reps)).join(", ")}${lift.cue && health ? ` (\u201c${lift.cue}\u201d)` : ""}`).join("; ")}.`) : el("p", {}, "None yet."),
      health && last !== undefined && last.pain.length > 0 && el("p", {}, `Pain then: ${last.pain.join(", ")}.`),
      health && limits.length > 0 && el("p", { "data-limits": true }, `Limits: ${limits.join("; ")}.`),
      !health && limits.length > 0 && el("p", {}, "There is more to ask about before lifting; it is left out here."),
      health && stopped && el("p", {}, `Stopped: ${app.stops(lifter).inForce.map((one) => `${one.what}, ${dayLong(one.since)}`).join("; ")}.`),
      el("h3", {}, "Bars and discs"),
      el("p", {}, `${(parameters?.implements ?? []).map(barWords).join(", ")}; discs ${(parameters?.stock.discs ?? []).map((disc) => `${disc.count} \u00d7 ${face(disc.nominal)}`).join(", ")}.`),
      caution("holding_is_good"),
      caution("examines_nobody"),
      el("p", { class: "soft" }, `Rules of version ${session.version}, settings ${session.parameters}.`),
    ),
  ];
}
