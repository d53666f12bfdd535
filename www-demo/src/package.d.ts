// The package in the form in which the page takes it; `build.mjs` says where it lies.
declare module "bismar-page-package" {
  export default function init(source: BufferSource): Promise<void>;
  export class BismarError extends Error {
    readonly code: string;
    readonly field: string;
    readonly value: number | string | undefined;
    readonly allowed: unknown;
    readonly event: number | undefined;
  }
  export function call(key: string, given: object): unknown;
  export const flat: { quantity: { massInPounds(kg: number): number } };
}
declare module "*.css";
declare module "*.txt" {
  const text: string;
  export default text;
}
