// Pictures over time. Each has the same in words beside it, since a canvas says nothing to a screen reader.
import type uPlot from "uplot";
import type { Done, Status, Step, TrendPoint } from "bismar-page-package";
import { el } from "./element.ts";
import { EACH_HAND } from "./setup.ts";
import { dayOfMonth, mass, massNumber, plain, unitNow } from "./numbers.ts";

function colour(name: string): string {
  return getComputedStyle(document.documentElement).getPropertyValue(name).trim();
}

const FONT = "14px system-ui, sans-serif";

/** The axis of loads, with its unit; `hand` where they are one of two. */
function loadAxis(hand = ""): uPlot.Axis {
  return axis({ values: (_u, values) => values.map((kg) => massNumber({ kg })), size: 56, label: `${unitNow()}${hand}`, labelSize: 20, labelFont: FONT });
}

/** The axis of days; with years where it spans more than one. */
function dayAxis(): uPlot.Axis {
  return axis({ values: (u, values) => days(values, (u.scales.x?.max ?? 0) - (u.scales.x?.min ?? 0) > LONG), space: 84 });
}

function axis(more: Partial<uPlot.Axis> = {}): uPlot.Axis {
  return {
    stroke: colour("--ink-soft"),
    font: FONT,
    space: 64,
    grid: { stroke: colour("--line"), width: 1 },
    ticks: { stroke: colour("--line"), width: 1 },
    ...more,
  };
}

function seconds(day: string): number {
  return Date.parse(`${day}T00:00:00Z`) / 1000;
}

type Plot = typeof uPlot;
/** Once loaded, a picture is drawn at once: printing does not wait. */
let loaded: Plot | undefined;

function draw(make: (width: number, plot: Plot) => uPlot.Options, data: uPlot.AlignedData, label: string): HTMLElement {
  const place = el("div", { class: "plot" });
  const figure = el("figure", { class: "chart", role: "img", "aria-label": label }, place);
  let chart: uPlot | undefined;
  let known = 0;
  // Loaded when the first picture is wanted: where it cannot run, the words beside the picture remain.
  const begin = async (): Promise<void> => {
    try {
      loaded ??= (await import("uplot")).default;
      chart?.destroy();
      chart = new loaded(make(known, loaded), data, place);
    } catch {
      place.textContent = "No picture can be drawn here; the same stands in words and in the table.";
    }
  };
  charts.add({ place, begin });
  // Drawn once it stands in the page and has a width; again when that changes.
  new ResizeObserver(() => {
    const width = place.clientWidth;
    if (width > 0 && width !== known) {
      known = width;
      // The words are on screen first.
      setTimeout(() => void begin());
    }
  }).observe(place);
  return figure;
}

const HEIGHT = 260;

/** Every picture on the page: on paper it is drawn in the colours of paper, since a canvas keeps those it was drawn in. */
const charts = new Set<{ place: HTMLElement; begin: () => Promise<void> }>();
function redrawAll(): void {
  for (const one of charts) {
    if (one.place.isConnected) void one.begin();
    else charts.delete(one);
  }
}
let before: string | undefined;
addEventListener("beforeprint", () => {
  before = document.documentElement.dataset.theme;
  if (before !== "dark") return;
  document.documentElement.dataset.theme = "light";
  redrawAll();
});
addEventListener("afterprint", () => {
  if (before !== "dark") return;
  document.documentElement.dataset.theme = before;
  redrawAll();
});

/** Seconds from which on a picture names the year. */
const LONG = 300 * 86_400;

function days(values: number[], long: boolean): string[] {
  return values.map((value) => {
    const day = new Date(value * 1000).toISOString().slice(0, 10);
    return long ? `${dayOfMonth(day).replace(/^\d+ /, "")} ${day.slice(0, 4)}` : dayOfMonth(day);
  });
}

const SHAPES: Record<string, string> = {
  learning: "learning",
  holding: "holding",
  ready_to_advance: "gate open",
  consolidating: "settling in",
  stepping_back: "stepped back",
  resting: "resting",
  returning: "coming back",
  maintaining: "kept",
  stopped_refer: "stopped",
  retired: "retired",
};
/** The state of a lift in words; a state that carries numbers comes as an object of one field. */
export function statusWords(status: string | Status): string {
  const name = typeof status === "string" ? status : (Object.keys(status)[0] ?? "").replaceAll(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);
  return SHAPES[name] ?? name;
}

/** What the track of a lift shows besides the loads. */
export interface Around {
  /** Breaks, from the first day to the last. */
  breaks: { from: string; to: string }[];
  /** Days on which something hurt, in words. */
  pain: { day: string; words: string }[];
  /** Today, and its load where there is one. */
  today: { day: string; load: { kg: number } | undefined };
}

/** Steps that get a label: every change of the load, as long as they do not stand on one another. */
const LABEL_ROOM = 54;

/** Labels at the steps, shades for breaks, marks for pain, a line for today's load: drawn over the picture. */
function around(own: Step[], extra: Around): (u: uPlot) => void {
  return (u) => {
    const { ctx } = u;
    const scale = devicePixelRatio;
    const across = (day: string): number => u.valToPos(seconds(day), "x", true);
    const up = (kg: number): number => u.valToPos(kg, "y", true);
    const { left, top, width, height } = u.bbox;
    ctx.save();
    ctx.font = `${13 * scale}px system-ui, sans-serif`;
    for (const { from, to } of extra.breaks) {
      const [begin, end] = [Math.max(left, across(from)), Math.min(left + width, across(to))];
      if (end <= begin) continue;
      ctx.fillStyle = colour("--band");
      ctx.fillRect(begin, top, end - begin, height);
      ctx.fillStyle = colour("--ink-soft");
      ctx.fillText("break", begin + 3 * scale, top + 14 * scale);
    }
    ctx.fillStyle = colour("--stop");
    for (const { day } of extra.pain) {
      const x = across(day);
      if (x >= left && x <= left + width) ctx.fillText("\u25b2", x - 6 * scale, top + height - 3 * scale);
    }
    ctx.fillStyle = colour("--ink");
    let free = -1;
    own.forEach((step, at) => {
      if (at > 0 && own[at - 1].load.kg === step.load.kg) return;
      const x = across(step.day);
      if (x < free) return;
      ctx.fillText(`${massNumber(step.load)}${handOf(step)}`, x + 2 * scale, up(step.load.kg) - 8 * scale);
      free = x + LABEL_ROOM * scale;
    });
    if (extra.today.load) {
      const y = up(extra.today.load.kg);
      ctx.strokeStyle = colour("--ink");
      ctx.setLineDash([7 * scale, 5 * scale]);
      ctx.beginPath();
      ctx.moveTo(left, y);
      ctx.lineTo(left + width, y);
      ctx.stroke();
    }
    ctx.restore();
  };
}

/** Said behind a load that was one of two. */
const handOf = (step: Step): string => (step.eachHand ? EACH_HAND : "");

/** The working load over time, with passed and failed sessions by shape, its steps labelled, breaks, pain, today's load. */
export function courseChart(lift: string, name: string, steps: Step[], sessions: Done[], extra: Around): HTMLElement {
  const own = steps.filter((step) => step.lift === lift);
  const marks = new Map<string, string>();
  for (const session of sessions) {
    const done = session.lifts.find((one) => one.lift === lift);
    if (done) marks.set(session.day, done.passed);
  }
  const x = own.map((step) => seconds(step.day));
  const y = own.map((step) => step.load.kg);
  const passed = own.map((step) => (marks.get(step.day) === "pass" ? step.load.kg : null));
  const failed = own.map((step) => (marks.get(step.day) === "fail" ? step.load.kg : null));
  const [first, last] = [own[0], own.at(-1)];
  const told = first && last ? `: from ${mass(first.load)}${handOf(first)} on ${dayOfMonth(first.day)} to ${mass(last.load)}${handOf(last)} on ${dayOfMonth(last.day)}` : "";
  return draw(
    (width, plot) => ({
      width,
      height: HEIGHT,
      cursor: { show: false },
      legend: { show: false },
      hooks: { draw: [around(own, extra)] },
      scales: { y: { range: (_u, low, high) => [Math.min(low, extra.today.load?.kg ?? low) - 2, Math.max(high, extra.today.load?.kg ?? high) + 3] } },
      axes: [dayAxis(), loadAxis(own.every((step) => step.eachHand) ? EACH_HAND : "")],
      series: [
        {},
        { stroke: colour("--accent"), width: 3, paths: plot.paths.stepped?.({ align: 1 }), points: { show: false } },
        { stroke: colour("--accent"), paths: () => null, points: { show: true, size: 8, fill: colour("--accent") } },
        { stroke: colour("--ink"), paths: () => null, points: { show: true, size: 9, fill: colour("--paper"), width: 2 } },
      ],
    }),
    [x, y, passed, failed] as uPlot.AlignedData,
    `Working load of ${name} over time${told}. The same stands in words below.`,
  );
}

/** Estimates of single sessions, the level behind them, and the band of that level. */
export function trendChart(points: TrendPoint[], hand: string): HTMLElement {
  const column = (key: "value" | "low" | "high" | "level" | "levelLow" | "levelHigh"): number[] => points.map((point) => point[key]);
  const hidden = { stroke: "transparent", points: { show: false } };
  return draw(
    (width) => ({
      width,
      height: HEIGHT,
      cursor: { show: false },
      legend: { show: false },
      scales: { y: { range: (_u, low, high) => [low - 1, high + 1] } },
      axes: [dayAxis(), loadAxis(hand)],
      series: [
        {},
        { stroke: colour("--ink"), paths: () => null, points: { show: true, size: 8, fill: colour("--paper"), width: 2 } },
        hidden,
        hidden,
        { stroke: colour("--accent"), width: 3, points: { show: false } },
      ],
      bands: [{ series: [3, 2], fill: colour("--band") }],
    }),
    [points.map((point) => seconds(point.day)), column("value"), column("levelLow"), column("levelHigh"), column("level")] as uPlot.AlignedData,
    `Estimates of the maximum${hand}, the level behind them and its band`,
  );
}

/** A band of strength over the decades, with the floor that is to be kept. */
export function decadesChart(rows: { age: number; low: number; high: number; middle?: number }[], floor: number): HTMLElement {
  return draw(
    (width) => ({
      width,
      height: HEIGHT,
      cursor: { show: false },
      legend: { show: false },
      scales: { x: { time: false }, y: { range: (_u, _low, high) => [0, high + 5] } },
      axes: [axis({ label: "age", labelSize: 20, labelFont: FONT, incrs: [1, 2, 5, 10, 20] }), loadAxis()],
      series: [
        {},
        { stroke: colour("--accent"), width: 1, points: { show: false } },
        { stroke: colour("--accent"), width: 1, points: { show: false } },
        { stroke: colour("--accent"), width: 3, points: { show: false } },
        { stroke: colour("--ink"), width: 2, dash: [8, 5], points: { show: false } },
      ],
      bands: [{ series: [2, 1], fill: colour("--band") }],
    }),
    [
      rows.map((row) => row.age),
      rows.map((row) => row.low),
      rows.map((row) => row.high),
      rows.map((row) => row.middle ?? null),
      rows.map(() => floor),
    ] as uPlot.AlignedData,
    `Strength by age as a band from ${plain(rows[0]?.age ?? 0, 0)} years on, with the floor to keep, in ${unitNow()}`,
  );
}

/** A gate as filled and open circles, with the count in words. */
export function gateDots(have: number, need: number): HTMLElement {
  const dots = Array.from({ length: need }, (_, at) => el("span", { class: at < have ? "dot full" : "dot" }, at < have ? "\u2713" : ""));
  return el("p", { class: "gate", role: "img", "aria-label": `${have} of ${need} passing sessions in a row` }, dots);
}
