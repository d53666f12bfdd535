// Bars and discs of a gym, until somebody says otherwise.
import type { Tree } from "./engine.ts";

export interface Kit {
  implements: Tree[];
  stock: { discs: Tree[] };
}

function straight(id: string, kg: number): Tree {
  return { bar: { id, mass: { kg }, collar: { kg: 0 }, kind: "straight" } };
}

function disc(kg: number, mm: number, thick: number, count: number): Tree {
  return { nominal: { kg }, diameter: { mm }, thickness: { mm: thick }, count };
}

/** A small gym, invented: what a first list of bars and discs may look like. */
export function homeKit(): Kit {
  return {
    implements: [
      straight("bar 20", 20),
      straight("bar 15", 15),
      straight("technique bar 8", 8),
      {
        bar: {
          id: "hex bar 25",
          mass: { kg: 25 },
          collar: { kg: 0 },
          kind: { hex: { lowHandle: { mm: 0 }, highHandle: { mm: 100 } } },
        },
      },
    ],
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

export function implementName(one: Tree): string {
  const kind = Object.keys(one)[0] as string;
  return one[kind].id;
}

export const LIFTS = [
  { lift: "front squat", bar: "bar 20" },
  { lift: "box squat", bar: "bar 20" },
  { lift: "straight-bar pull", bar: "bar 20" },
  { lift: "hex-bar pull", bar: "hex bar 25" },
  { lift: "strict press", bar: "bar 15" },
  { lift: "seated press", bar: "bar 15" },
  { lift: "bench press", bar: "bar 20" },
  { lift: "supported row", bar: "bar 15" },
];
