// One end of the bar, to scale in millimetres: discs from the inside out, and the height above the floor.
import type { Disc, Face, Loaded, Stock } from "bismar-page-package";
import { kindOf } from "./engine.ts";
import { el, svg } from "./element.ts";
import { face, mass, plain } from "./numbers.ts";

const SHAFT = 28;
const SLEEVE = 50;
const INNER = 150;
const THIN = 24;
const FULL = 450;
const LABELS = 70;

/** The discs on one end in words, inside first. */
export function sideWords(side: { nominal: Face }[]): string {
  if (side.length === 0) return "nothing, the empty bar";
  return side.map((disc) => face(disc.nominal)).join(" + ");
}

/** How high the bar lies matters only where the lift starts from there; blocks under the discs are drawn. */
export interface Stand {
  height?: boolean;
  blocks?: number;
}

/** A disc on the bar, by its place in the stock. */
interface OnBar {
  nominal: Face;
  diameter?: Disc["diameter"];
  kind: number;
}

export function barDrawing(side: OnBar[], stock: Stock, resting: number | undefined, bar?: string, stand: Stand = {}): HTMLElement {
  const blocks = stand.blocks ?? 0;
  const centre = stand.height === false || resting === undefined ? undefined : resting + blocks;
  const discs = side.map((disc) => ({
    label: face(disc.nominal),
    height: disc.diameter?.mm ?? 250,
    width: stock.discs[disc.kind]?.thickness?.mm ?? THIN,
  }));
  const above = centre ?? (resting ?? FULL / 2);
  const tallest = discs.reduce((most, disc) => (disc.height > most ? disc.height : most), 2 * SLEEVE);
  // Labels stand in a row over the tallest disc; the floor is the bottom edge.
  const middle = LABELS + tallest / 2;
  const floor = middle + above;
  let at = INNER;
  let label = INNER + 20;
  const shapes: SVGElement[] = [];
  for (const disc of discs) {
    const x = at + 4;
    at += disc.width + 4;
    const room = disc.label.length * 17;
    const lx = label + room / 2;
    label += room + 22;
    shapes.push(
      svg("rect", { class: "disc", x, y: middle - disc.height / 2, width: disc.width, height: disc.height, rx: 5 }),
      svg("path", { class: "leader", d: `M ${x + disc.width / 2} ${middle - disc.height / 2} L ${lx} 36` }),
      svg("text", { class: "face", x: lx, y: 28, "text-anchor": "middle" }, disc.label),
    );
  }
  const end = INNER + 415;
  const right = end + 190;
  const height = centre === undefined ? [] : [
    svg("path", { class: "dimension", d: `M ${end + 30} ${middle} H ${end + 70} M ${end + 50} ${middle} V ${floor}` }),
    svg("text", { class: "height", x: end + 66, y: middle + above / 2 + 10 }, `${plain(centre, 0)} mm`),
  ];
  const picture = svg(
    "svg",
    { viewBox: `0 0 ${right} ${floor + 6}`, class: "bar", "aria-hidden": "true", focusable: "false" },
    svg("rect", { class: "shaft", x: 0, y: middle - SHAFT / 2, width: INNER, height: SHAFT }),
    svg("rect", { class: "sleeve", x: INNER, y: middle - SLEEVE / 2, width: 415, height: SLEEVE, rx: 4 }),
    svg("rect", { class: "collar", x: INNER - 14, y: middle - 40, width: 14, height: 80, rx: 3 }),
    ...shapes,
    ...(bar ? [svg("text", { class: "face", x: INNER + 425, y: middle - 40, "text-anchor": "middle" }, bar)] : []),
    ...(blocks > 0 && centre !== undefined ? [svg("rect", { class: "collar", x: INNER - 60, y: floor - blocks, width: 360, height: blocks }), svg("text", { class: "face", x: INNER + 120, y: floor - blocks / 2 + 10, "text-anchor": "middle" }, `${plain(blocks, 0)} mm`)] : []),
    svg("path", { class: "floor", d: `M 0 ${floor} H ${right}` }),
    ...height,
  );
  // An empty bar is no picture; it is said.
  if (discs.length === 0) return el("p", { class: "soft" }, bar ? `${bar}, empty: no discs.` : "The empty bar, no discs.");
  const words = `${bar ? `${bar}. ` : ""}Each end, inside first: ${sideWords(side)}.`;
  return el(
    "figure",
    { class: "bar-figure" },
    picture,
    el(
      "figcaption",
      {},
      words,
      centre === undefined ? "" : ` ${blocks > 0 ? `On blocks of ${plain(blocks, 0)} mm: middle` : "Middle"} of the bar ${plain(centre, 0)} mm above the floor.`,
    ),
  );
}

/** A loaded bar as the library gives it. */
export function loadedDrawing(loaded: Loaded, stock: Stock, bar?: string, stand: Stand = {}): HTMLElement {
  const side = kindOf(loaded.setting, "discs");
  if (!side) return el("p", {}, mass(loaded.total));
  return barDrawing(side, stock, loaded.centreHeight?.mm, bar, stand);
}
