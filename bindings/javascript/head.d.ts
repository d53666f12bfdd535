// Generated; do not edit.
// Objects in and out are plain; field names are camelCase, names of kinds are texts in snake_case.

/** Where the wasm may come from. */
export type WasmSource = BufferSource | WebAssembly.Module | Response | PromiseLike<BufferSource | WebAssembly.Module | Response>;

/**
 * Sets the instance up; call and await it once before anything else. Later calls wait for the first.
 * @param source The wasm, where the package's own way of finding it does not suit.
 * @throws {BismarError} `build_mismatch` if wasm and JavaScript come from different builds; `instance_failed`.
 */
export default function init(source?: WasmSource): Promise<void>;

/** Everything that an instance offers: what the package itself offers, but for the ways to make one. */
export type Instance = Omit<typeof import("./index.js"), "default" | "create" | "BismarError">;

/**
 * Makes a new instance beside that of the package, with memory and failures of its own: after `instance_failed`, or to keep
 * one caller's work from another's.
 * @throws {BismarError} as `init`.
 */
export declare function create(source?: WasmSource): Promise<Instance>;

/** What would have been accepted. */
export type Allowed =
  | { low: number; high: number; unit?: string; oneOf?: undefined; rule?: undefined }
  | { oneOf: string[]; low?: undefined; high?: undefined; unit?: undefined; rule?: undefined }
  | { rule: string; low?: undefined; high?: undefined; unit?: undefined; oneOf?: undefined };

/** An error of the library. Nothing is half done when one is thrown, and the instance stays usable. */
export declare class BismarError extends Error {
  private constructor();
  /** Stable code; `instance_failed` is the one after which nothing works any more. */
  readonly code: Code;
  /** Path to the field, for example `sets[2].reps`; empty where there is none. */
  readonly field: string;
  /** The value as given, where it has a short form. */
  readonly value: number | string | undefined;
  /** What would have been accepted, where the code alone does not say it. */
  readonly allowed: Allowed | undefined;
  /** Sequence number of the event it concerns. */
  readonly event: number | undefined;
  /** The same as a plain object, as `text.error` of `bismar/english` takes it to tell it in a sentence. */
  readonly told: { code: Code; field: string; value?: number | string; allowed?: Allowed; event?: number };
}

/**
 * Calls any function by its key in the registry.
 * @throws {BismarError}
 */
export declare function call<K extends keyof Functions>(key: K, ...given: Parameters<Functions[K]>): ReturnType<Functions[K]>;

/** A JSON document, as parsed, with its field names in this package's spelling. */
export declare function fromJson(document: unknown): any;

/** An object of this package with its field names as JSON documents spell them; for `JSON.stringify`. */
export declare function toJson(value: object): unknown;

/** What a host may want to log. */
export declare function diagnostics(): {
  version: string;
  build: string;
  ready: boolean;
  failed: boolean;
  memoryBytes: number;
};

/** A column of a batch: one number a row, or one number for all rows. */
export type Column = Float64Array | Float32Array | Uint8Array | Uint16Array | Uint32Array | Int8Array | Int16Array | Int32Array | number;

