// Questions about the bar: 1 to 7, 22, 23.
import { answer, refused, table } from "../answer.ts";
import type { App } from "../app.ts";
import { barDrawing, loadedDrawing, sideWords } from "../bar_drawing.ts";
import { button, choices, el, type Child } from "../element.ts";
import { barWords, discsOf } from "../kit.ts";
import type { Disc, EndMoves, Loaded } from "bismar-page-package";
import { ask, attempt, type Answered, type Refused, type Tried } from "../engine.ts";
import { atLeast, atMost, count, difference, face, inPounds, mass, otherUnit, plain, signed, unitNow, written, type Mass } from "../numbers.ts";
import { shownName } from "../names.ts";
import { numberField } from "../pad.ts";
import { sharedBy, turnsTable, type AtTheBar } from "../sharing.ts";
import { barChoice, countField, fields, kept, massField, put, usual, type Question } from "./shape.ts";

function load(app: App, target: Mass, policy: "below"): Tried<Answered<"loading.load_on">> {
  return attempt("loading.load_on", { implement: app.bar(), stock: app.kit().stock, target, policy });
}

/** Why there is no such load: lighter than the bar itself is said as that. */
function notLoaded(app: App, target: Mass, no: Refused): HTMLElement {
  if (no.code !== "below_lightest") return refused(no.message);
  const bar = app.bar();
  return answer({ big: bar.bar ? `Too light: the empty bar is ${mass(bar.bar.mass)}` : "Too light for this bar", why: `${written(target)} is less than ${barWords(bar)} alone. A lighter bar, if there is one here.` });
}

function around(loaded: Loaded): string {
  const parts = [loaded.nextBelow && `next below ${mass(loaded.nextBelow)}`, loaded.nextAbove && `next above ${mass(loaded.nextAbove)}`];
  return parts.filter(Boolean).join(", ");
}

function height(loaded: Loaded): string {
  return loaded.centreHeight ? `bar at ${plain(loaded.centreHeight.mm, 0)} mm` : "no disc holds the bar up";
}

function eachSide(app: App): Child {
  const { field, value } = massField(app, "load", "Load on the bar", () => app.startLoad());
  const found = load(app, value, "below");
  if (found.refused) return [fields(field, barChoice(app)), notLoaded(app, value, found.refused)];
  const loaded = found.answer;
  const exact = loaded.difference.kg === 0;
  return [
    fields(field, barChoice(app)),
    answer({
      big: `${mass(loaded.total)}: ${discsOf(loaded).length === 0 ? "the empty bar" : `each end ${sideWords(discsOf(loaded))}`}`,
      why: `${exact ? "" : `${written(value)} cannot be made here; this is the closest that is not over (${difference(loaded.difference)}, ${signed(loaded.differencePercent ?? 0, 1)} %). `}With ${barWords(app.bar())}; ${otherUnit(loaded.total)}, ${height(loaded)}.`,
      body: loadedDrawing(loaded, app.kit().stock, barWords(app.bar())),
      working: el("p", {}, `Bar ${mass(app.bar().bar.mass)} and twice the discs of one end; discs are used in pairs. ${around(loaded)}.`),
      sources: ["loading.load_on"],
    }),
  ];
}

function readBar(app: App): Child {
  const on = kept<number[]>(app, "on", () => []);
  const { stock } = app.kit();
  const found = attempt("loading.read_bar", { bar: app.bar().bar, stock, left: on, right: on, uneven: false, tolerance: { part: 0.02 } });
  const disc = (one: Disc, kind: number): HTMLElement =>
    button([el("b", {}, face(one.nominal)), ` \u2300 ${plain(one.diameter?.mm ?? 0, 0)}`], () => put(app, "on", [...on, kind]), { class: "choice", "data-disc": kind });
  const side = on.map((kind) => ({ ...stock.discs[kind], kind }));
  return [
    fields(
      barChoice(app),
      el("div", { class: "field" }, el("span", { class: "label" }, "Tap the discs of one end, inside first"), el("div", { class: "choices" }, stock.discs.map(disc))),
      button("Take the last one off", () => put(app, "on", on.slice(0, -1)), { disabled: on.length === 0 }),
    ),
    found.refused
      ? refused(found.refused.message)
      : answer({
          big: `${mass(found.answer.total)} = ${otherUnit(found.answer.total)}`,
          why: on.length === 0 ? "The empty bar; tap discs to add them to both ends." : `Both ends alike. If every disc is within 2 % of its face: ${atMost(found.answer.band.low)} to ${atLeast(found.answer.band.high)}.`,
          body: barDrawing(side, stock, found.answer.centreHeight?.mm, barWords(app.bar())),
          // In pounds most sums have no last digit, and nothing in kilograms is shown.
          ...(unitNow() === "kg" ? { working: el("p", { "data-exact": true }, `Exactly ${ask("page.exact", { mass: found.answer.total })} kg. Masses are whole numbers of a millionth of a milligram here: sums are exact, and only what is shown is rounded.`) } : {}),
          sources: ["loading.read_bar"],
        }),
  ];
}

function notOver(app: App): Child {
  const { field, value } = massField(app, "load", "Wanted, not over", usual(63.4, 140));
  const found = load(app, value, "below");
  if (found.refused) return [fields(field, barChoice(app)), notLoaded(app, value, found.refused)];
  const loaded = found.answer;
  return [
    fields(field, barChoice(app)),
    answer({
      big: mass(loaded.total),
      why: loaded.difference.kg === 0 ? "Exactly what was wanted." : `${difference(loaded.difference)} (${signed(loaded.differencePercent ?? 0, 1)} %). Each end: ${sideWords(discsOf(loaded))}.`,
      body: loadedDrawing(loaded, app.kit().stock, barWords(app.bar())),
      working: el("p", {}, loaded.nextAbove ? `The next load above would be ${mass(loaded.nextAbove)}.` : "Nothing heavier can be loaded."),
      sources: ["loading.load_on"],
    }),
  ];
}

function sameHeight(app: App): Child {
  const { field, value } = massField(app, "load", "Load", () => app.startLoad());
  const wanted = countField(app, "height", "Middle of the bar", () => 225, "mm");
  const found = attempt("loading.keep_height", { bar: app.bar().bar, stock: app.kit().stock, target: value, policy: "below", height: { mm: wanted.value } });
  const inputs = fields(field, wanted.field, barChoice(app));
  if (found.refused) return [inputs, refused(found.refused.message)];
  const { held, plain: other, blocks, lightestHeld } = found.answer;
  if (held) {
    const same = held.difference.kg === 0;
    return [
      inputs,
      answer({
        big: same ? `Yes: ${sideWords(discsOf(held))} on each end` : `${mass(held.total)} keeps the height`,
        why: `${same ? "" : `${sideWords(discsOf(held))} on each end. `}Middle of the bar at ${plain(held.centreHeight?.mm ?? wanted.value, 0)} mm.${lightestHeld ? ` Lightest load at this height: ${mass(lightestHeld)}.` : ""}`,
        body: loadedDrawing(held, app.kit().stock, barWords(app.bar())),
        sources: ["loading.keep_height"],
      }),
    ];
  }
  return [
    inputs,
    answer({
      big: blocks ? `Only with blocks of ${plain(blocks.mm, 1)} mm` : "Not at this height",
      why: `${lightestHeld ? `The lightest load that holds this height by its discs is ${mass(lightestHeld)}. ` : "No disc here is large enough. "}Each end: ${sideWords(discsOf(other))}, then ${height(other)}.`,
      body: loadedDrawing(other, app.kit().stock, barWords(app.bar()), blocks ? { blocks: blocks.mm } : {}),
      cautions: ["lower_start"],
      sources: ["loading.keep_height", "loading.drop_below_full"],
    }),
  ];
}

function howHigh(app: App): Child {
  const { discs } = app.kit().stock;
  const sizes = [...new Set(discs.map((one) => one.diameter?.mm).filter((mm): mm is number => mm !== undefined))];
  const chosen = kept(app, "diameter", () => sizes[0] ?? 450);
  const drop = attempt("loading.drop_below_full", { diameter: { mm: chosen } });
  const centre = attempt("loading.centre_height", { left: [{ mm: chosen }], right: [{ mm: chosen }] });
  const inputs = fields(
    choices("Largest disc on each end", sizes.map((mm) => ({ value: mm, label: `${mm} mm` })), chosen, (mm) => put(app, "diameter", mm)),
    numberField("Another diameter", String(chosen), "mm", (mm) => put(app, "diameter", mm)),
    barChoice(app),
  );
  if (drop.refused || centre.refused) return [inputs, refused((drop.refused ?? centre.refused)?.message ?? "")];
  const grip = attempt("loading.grip_height", { bar: app.bar().bar, centre: centre.answer }).answer;
  return [
    inputs,
    answer({
      big: `${plain(centre.answer.mm, 1)} mm`,
      why: drop.answer.mm === 0 ? "As high as with full-size discs." : `${plain(drop.answer.mm, 1)} mm lower than with full-size discs; blocks of that height bring it back.`,
      body: grip?.high && el("p", {}, `High handles at ${plain(grip.high.mm, 0)} mm.`),
      sources: ["loading.centre_height", "loading.drop_below_full"],
    }),
  ];
}

function movesWords(discs: EndMoves["off"]): string {
  return discs.length === 0 ? "\u2013" : discs.map((disc) => face(disc.nominal)).join(", ");
}

function warmUps(app: App): Child {
  const { field, value } = massField(app, "load", "Work load", usual(80, 145));
  const inputs = fields(field, barChoice(app));
  const { bar } = app.bar();
  const { stock } = app.kit();
  const steps = attempt("loading.warm_up_steps", { empty: bar.mass, work: value });
  if (steps.refused) return [inputs, refused(steps.refused.message)];
  const found = attempt("loading.warm_up", { bar, stock, work: value, steps: steps.answer });
  if (found.refused) return [inputs, refused(found.refused.message)];
  const warm = found.answer;
  const rows = warm.sets.map((set) => [
    mass(set.moves.total),
    set.step === undefined ? "work" : `\u00d7 ${steps.answer[set.step]?.reps ?? ""}`,
    movesWords(set.moves.off),
    movesWords(set.moves.on),
  ]);
  return [
    inputs,
    answer({
      big: warm.sets.map((set) => mass(set.moves.total)).join(" \u2192 "),
      why: `${count(warm.movesEachEnd, "disc move")} on each end${warm.proved ? ", the fewest there are" : ""}, with ${barWords(app.bar())}.`,
      body: table(["Load", "Reps", "Off each end", "On each end"], rows, "Warm-up sets"),
      sources: ["loading.warm_up_steps", "loading.warm_up"],
    }),
  ];
}

/** Two of those who are here, each with a lift of today, by their own logs. */
function twoFromLogs(app: App, from: Child): Child {
  const ids = app.store.ids();
  const who = (key: string, label: string, begin: () => string): { chosen: AtTheBar | undefined; field: Child; stop: string | undefined } => {
    const id = kept(app, key, begin);
    const lifter = app.store.lifter(id);
    const lifts = (lifter && app.today(lifter).answer?.session.lifts.filter((one) => one.sets > 0).map((one) => one.lift)) ?? [];
    const lift = kept(app, `${key} ${id}`, () => lifts[0] ?? "");
    const done = lifter ? app.draft(lifter).filter((one) => one.lift === lift).length : 0;
    return {
      chosen: lifts.includes(lift) ? { id, lift, done } : undefined,
      stop: lifter && app.stops(lifter).lines[0],
      field: [
        choices(label, ids.map((value) => ({ value, label: shownName(value) })), id, (value) => put(app, key, value)),
        lifts.length > 0 && choices(`Lift of ${shownName(id)}`, lifts.map((value) => ({ value, label: app.liftName(value, lifter) })), lift, (value) => put(app, `${key} ${id}`, value)),
      ],
    };
  };
  const first = who("first", "First lifter", () => app.current ?? ids[0] ?? "");
  const second = who("second", "Second lifter", () => ids.find((id) => id !== (app.current ?? ids[0])) ?? "");
  const inputs = fields(from, first.field, second.field);
  const stop = first.stop ?? second.stop;
  if (stop !== undefined) return [answer({ big: "No load: a stop is in force", why: stop, tone: "stop" }), inputs];
  if (!first.chosen || !second.chosen || first.chosen.id === second.chosen.id) return [inputs, answer({ big: "Two lifters with something to lift today", why: "Each lifts what the own log and plan give for today." })];
  const at = [first.chosen, second.chosen];
  const { shared, no } = sharedBy(app, at);
  if (!shared) return [inputs, refused(no)];
  const whose = shared.turns.turns[0]?.lifter ?? 0;
  return [
    inputs,
    answer({
      big: `${count(shared.turns.movesEachEnd, "disc move")} on each end`,
      why: `${shownName(at[whose]?.id ?? "")} first${shared.turns.proved ? "; no order needs fewer" : ""}. Each lifts what the own log and plan give for today, warm-ups among it; nobody\u2019s load changes for another\u2019s sake.`,
      body: turnsTable(at, shared, "In this order"),
      sources: ["loading.shared_bar"],
    }),
  ];
}

function twoOfUs(app: App): Child {
  const ids = app.store.ids();
  const of = kept<"typed" | "logs">(app, "of", () => "typed");
  const from = ids.length > 1 && choices("Loads", [{ value: "typed" as const, label: "Typed here" }, { value: "logs" as const, label: "Of two lifters here" }], of, (value) => put(app, "of", value));
  return of === "logs" && ids.length > 1 ? twoFromLogs(app, from) : twoTyped(app, from);
}

function twoTyped(app: App, from: Child): Child {
  const one = massField(app, "one", "First lifter", usual(60, 145));
  const two = massField(app, "two", "Second lifter", usual(85, 185));
  const sets = countField(app, "sets", "Sets each", () => 3);
  const inputs = fields(from, one.field, two.field, sets.field, barChoice(app));
  const own = (target: Mass) => ({ sets: Array.from({ length: Math.min(Math.max(Math.trunc(sets.value), 1), 10) }, () => ({ load: target, tolerance: { kg: 0 } })) });
  const exact = (target: Mass): Mass => load(app, target, "below").answer?.total ?? target;
  const loads = [exact(one.value), exact(two.value)] as [Mass, Mass];
  const found = attempt("loading.shared_bar", { bar: app.bar().bar, stock: app.kit().stock, lifters: [own(loads[0]), own(loads[1])] });
  if (found.refused) return [inputs, refused(found.refused.message)];
  const shared = found.answer;
  const wanted = [one.value, two.value];
  // A load that these discs cannot make is never changed in silence.
  const changedWords = wanted.map((value, at) => (loads[at] && loads[at].kg !== value.kg ? `${written(value)} cannot be made here; ${mass(loads[at])} is the closest that is not over. ` : "")).join("");
  const names = ["First", "Second"];
  const rows = shared.turns.map((turn) => [names[turn.lifter] ?? "", mass(turn.moves.total), movesWords(turn.moves.off), movesWords(turn.moves.on)]);
  return [
    inputs,
    answer({
      big: `${count(shared.movesEachEnd, "disc move")} on each end`,
      why: `${changedWords}${mass(loads[0])} and ${mass(loads[1])} on ${barWords(app.bar())}${shared.proved ? "; no order needs fewer" : ""}. Discs both use stay innermost.`,
      body: table(["Who", "Load", "Off each end", "On each end"], rows, "In this order"),
      sources: ["loading.shared_bar"],
    }),
  ];
}

function kgOrLb(app: App): Child {
  const value = kept(app, "number", () => 155);
  const asKg = ask("page.mass", { mass: { kg: value } });
  const asLb = ask("page.mass", { mass: { lb: value } });
  return [
    fields(
      numberField("Number", plain(value), "", (number) => put(app, "number", number)),
      choices("The page shows", [{ value: "kg", label: "kg" }, { value: "lb", label: "lb" }], unitNow(), (unit) => {
        void import("../settings.ts").then((module) => module.useUnit(app, unit as "kg" | "lb"));
      }),
    ),
    answer({
      big: `${plain(value)} lb = ${plain(asLb.kg)} kg`,
      why: `And ${plain(value)} kg = ${inPounds(asKg)}. One pound is exactly 0.45359237 kg.`,
      sources: ["quantity.pound"],
    }),
  ];
}

function whatCanIMake(app: App): Child {
  const low = massField(app, "low", "From", usual(30, 65));
  const high = massField(app, "high", "To", usual(50, 115));
  const inputs = fields(low.field, high.field, barChoice(app));
  const range = { implement: app.bar(), stock: app.kit().stock, low: low.value, high: high.value };
  const found = attempt("loading.reachable", range);
  if (found.refused) return [inputs, refused(found.refused.message)];
  const { totals, largestGap } = found.answer;
  const offered = unitNow() === "kg" ? [0.25, 0.5, 1, 1.25, 2.5].map((kg) => ({ kg })) : [0.5, 1.25, 2.5, 5].map((lb) => ({ lb }));
  const best = attempt("loading.buy", { ...range, offered }).answer?.best;
  return [
    inputs,
    answer({
      big: count(totals.length, "load"),
      why: largestGap ? `Largest gap: ${mass(largestGap.size)}, from ${mass(largestGap.from)} to ${mass(largestGap.to)}.` : "No gap in this range.",
      body: el("p", { class: "loads" }, totals.map((total) => mass(total)).join(" \u00b7 ")),
      working: best && el("p", {}, `A pair of ${mass(best.disc)} discs would help most${best.largestGap ? `: the largest gap would be ${mass(best.largestGap.size)}` : ""}.`),
      sources: ["loading.reachable", "loading.buy"],
    }),
  ];
}

export const BAR: Question[] = [
  { number: 1, title: "What goes on each end?", group: "The bar", view: eachSide },
  { number: 2, title: "What is on the bar now?", group: "The bar", view: readBar },
  { number: 3, title: "Closest load, but not over", group: "The bar", view: notOver },
  { number: 4, title: "Same load at the same height?", group: "The bar", view: sameHeight },
  { number: 5, title: "How high is the bar?", group: "The bar", view: howHigh },
  { number: 6, title: "Warm-up sets", group: "The bar", view: warmUps },
  { number: 7, title: "Two lifters, one bar", group: "The bar", view: twoOfUs },
  { number: 22, title: "Kilograms or pounds?", group: "The bar", view: kgOrLb },
  { number: 23, title: "What can these discs make?", group: "The bar", view: whatCanIMake },
];

