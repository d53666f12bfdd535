// Bars and discs of a gym, until somebody says otherwise.
import type { BarOffer, Disc, Implement, Length, Loaded, Mass, PlacedDisc, Stock } from "bismar-page-package";
import { ask, attempt, kindOf } from "./engine.ts";
import { mass, plain } from "./numbers.ts";

export interface Kit {
  implements: Implement[];
  stock: Stock;
  /** Heights of blocks to put under the discs; nothing where nobody entered any. */
  blocks?: Length[];
}

/** A mass in pounds as the library keeps it. */
function pounds(lb: number): Mass {
  return ask("page.mass", { mass: { lb } });
}

function straight(id: string, kg: number): Implement {
  return { bar: { id, mass: { kg }, collar: { kg: 0 }, kind: "straight" } };
}

function disc(kg: number, mm: number, thick: number, count: number): Disc {
  return { nominal: { kg }, diameter: { mm }, thickness: { mm: thick }, count };
}

/** Height of a hand on the high handles of a hex bar above its discs' centres, mm (common; measure your own). */
const HIGH_HANDLE = 100;

function hex(id: string, mass: Mass): Implement {
  return { bar: { id, mass, collar: { kg: 0 }, kind: { hex: { lowHandle: { mm: 0 }, highHandle: { mm: HIGH_HANDLE } } } } };
}

/** A disc of pounds. */
function iron(lb: number, mm: number, thick: number, count: number): Disc {
  return { nominal: { lb }, diameter: { mm }, thickness: { mm: thick }, count };
}

function barOf(lb: number, id = `bar ${lb} lb`): Implement {
  return { bar: { id, mass: pounds(lb), collar: { kg: 0 }, kind: "straight" } };
}

/** A small gym, invented: what a first list of bars and discs may look like. */
export function homeKit(): Kit {
  return {
    implements: [straight("bar 20 kg", 20), straight("bar 15 kg", 15), straight("technique bar 8 kg", 8), hex("hex bar 25 kg", { kg: 25 })],
    stock: {
      discs: [
        disc(20, 450, 54, 4),
        disc(15, 450, 42, 2),
        disc(10, 450, 33, 2),
        disc(5, 450, 30, 2),
        disc(5, 230, 26, 2),
        disc(2.5, 200, 20, 4),
        disc(1.25, 160, 12, 2),
        disc(0.5, 130, 10, 2),
      ],
    },
  };
}

/** The same in pounds, by the sizes in which such bars and discs are commonly made: weigh and measure your own. */
export function poundsKit(): Kit {
  return {
    implements: [barOf(45), barOf(35), barOf(15, "technique bar 15 lb"), hex("hex bar 55 lb", pounds(55))],
    stock: {
      discs: [
        iron(45, 450, 45, 4),
        iron(35, 360, 38, 2),
        iron(25, 280, 32, 2),
        iron(10, 450, 28, 2),
        iron(10, 228, 25, 4),
        iron(5, 200, 20, 4),
        iron(2.5, 160, 15, 4),
        iron(1.25, 130, 10, 2),
      ],
    },
  };
}

/** Full-size discs from 10 kg up, small ones to half a kilogram: the set of weightlifting. */
function weightlifting(): Kit {
  return {
    implements: [straight("bar 20 kg", 20), straight("bar 15 kg", 15), straight("technique bar 8 kg", 8)],
    stock: {
      discs: [
        disc(25, 450, 65, 2),
        disc(20, 450, 54, 2),
        disc(15, 450, 43, 2),
        disc(10, 450, 33, 2),
        disc(5, 450, 30, 2),
        disc(5, 230, 26, 2),
        disc(2.5, 200, 20, 2),
        disc(2, 190, 19, 2),
        disc(1.5, 175, 18, 2),
        disc(1, 160, 15, 2),
        disc(0.5, 135, 13, 2),
      ],
    },
  };
}

/** Thin discs, one bar: the set of powerlifting. */
function powerlifting(): Kit {
  return {
    implements: [straight("bar 20 kg", 20)],
    stock: {
      discs: [
        disc(25, 450, 27, 6),
        disc(20, 450, 23, 2),
        disc(15, 400, 23, 2),
        disc(10, 325, 22, 2),
        disc(5, 228, 22, 2),
        disc(2.5, 190, 16, 2),
        disc(1.25, 160, 12, 2),
        disc(0.5, 130, 10, 2),
        disc(0.25, 110, 8, 2),
      ],
    },
  };
}

/** Rubber discs of pounds, all of full size, and iron ones below them. */
function rubberPounds(): Kit {
  return {
    implements: [barOf(45), barOf(35), barOf(15, "technique bar 15 lb"), hex("hex bar 55 lb", pounds(55))],
    stock: {
      discs: [
        iron(55, 450, 100, 2),
        iron(45, 450, 87, 2),
        iron(35, 450, 70, 2),
        iron(25, 450, 55, 2),
        iron(15, 450, 35, 2),
        iron(10, 450, 28, 2),
        iron(5, 200, 20, 4),
        iron(2.5, 160, 15, 4),
        iron(1.25, 130, 10, 2),
      ],
    },
  };
}

/** A ready list of bars and discs, by its name. */
export interface Gym {
  id: string;
  title: string;
  kit: () => Kit;
}

/** Ready gyms. Masses and 450 mm are those of federation rules as remembered; other sizes are common ones. */
export const GYMS: Gym[] = [
  { id: "kit-kg", title: "A gym in kilograms", kit: homeKit },
  { id: "kit-lb", title: "A gym in pounds", kit: poundsKit },
  { id: "kit-lb-rubber", title: "A gym in pounds, rubber discs", kit: rubberPounds },
  { id: "kit-weightlifting", title: "Weightlifting set", kit: weightlifting },
  { id: "kit-powerlifting", title: "Powerlifting set", kit: powerlifting },
];

/** A bar by its name and its mass: a name that says neither unit nor mass leaves no doubt which bar is meant. */
export function barWords(one: Implement): string {
  const name = implementName(one);
  const bar = kindOf(one, "bar");
  return bar && !/\d ?(kg|lb)\b/.test(name) ? `${name} (${mass(bar.mass)})` : name;
}

export function implementName(one: Implement): string {
  return (Object.values(one) as { id: string }[])[0]?.id ?? "";
}

let lifts: string[] | undefined;
/** Lifts to begin with; the library says which, and which bars are right for each. */
export function firstLifts(): string[] {
  lifts ??= ask("page.first_lifts", {});
  return lifts;
}

/** A bar on offer for a lift: its lightest load at the height of the lift, on blocks where it needs some. */
export type Offer = BarOffer;

/** The discs of one end; nothing where there are none, or none are put on. */
export function discsOf(loaded: Loaded | undefined): PlacedDisc[] {
  return (loaded && kindOf(loaded.setting, "discs")) ?? [];
}

/** The bars of a gym that are right for a lift, the one with the lightest load first; those that fit the limits of a log. */
export function firstBars(lift: string, kit: Kit, log?: number): Offer[] {
  return attempt("page.first_bars", { lift, implements: kit.implements, stock: kit.stock, blocks: kit.blocks ?? [], ...(log === undefined ? {} : { log }) }).answer?.offers ?? [];
}

/** The implement of that name. */
export function implementNamed(kit: Kit, name: string): Implement | undefined {
  return kit.implements.find((one) => implementName(one) === name);
}

/** An offer in words: the bar, empty or with what load, the blocks it stands on, or how far it lies off its height. */
export function offerWords(kit: Kit, offer: Offer): string {
  const bar = implementNamed(kit, offer.implement);
  const load = discsOf(offer.loaded).length === 0 ? ", empty" : `: ${mass(offer.load)}`;
  const blocks = offer.blocks ? `, on blocks of ${plain(offer.blocks.mm, 0)} mm` : "";
  const off = offer.offByMm === 0 ? "" : `, ${plain(Math.abs(offer.offByMm), 0)} mm too ${offer.offByMm < 0 ? "low" : "high"}`;
  return `${bar ? barWords(bar) : offer.implement}${load}${blocks}${off}`;
}
