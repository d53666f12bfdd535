// The part of the package that is written by hand; the tool puts the glue before it and the functions after it.

// Why the instance can no longer be used; undefined while it can.
let fault;
let starting;

/** Instantiates once; `source` is called only if nothing has been started yet. */
export function startWith(source) {
  if (fault !== undefined) return Promise.reject(translated(fault));
  starting ??= instantiate(source).catch((reason) => {
    starting = undefined;
    throw reason;
  });
  return starting;
}

async function instantiate(source) {
  const { instance, module } = await __wbg_load(await source(), __wbg_get_imports());
  __wbg_finalize_init(instance, module);
  const found = unpack(raw_build());
  if (found !== BUILD_ID) {
    wasm = undefined;
    throw new BismarError({ code: "build_mismatch", field: "build", value: found, allowed: { rule: BUILD_ID } });
  }
}

/** Turns what was thrown inside a call into the package's error. */
function translated(thrown) {
  if (thrown instanceof BismarError && fault === undefined) return thrown;
  if (fault === undefined) {
    if (wasm === undefined) return new BismarError({ code: "not_ready", allowed: { rule: "await init() first" } });
    // A fault inside the instance: its memory is not to be trusted from here on.
    fault = thrown;
    wasm = undefined;
  }
  const message = fault instanceof Error ? fault.message : String(fault);
  return new BismarError({ code: "instance_failed", value: message }, fault);
}

// ---- Packing: the caller's objects, walked strictly, as one piece of bytes (layout: `parcel` in the wasm).

const DEEPEST = 48;
const MOST_VALUES = 4_000_000;
const MOST_NAMES = 2_048;
const LOOSE = 0xffff;
const encoder = new TextEncoder();
const namesSent = new Map();

class Packing {
  bytes = new Uint8Array(1 << 12);
  view = new DataView(this.bytes.buffer);
  at = 0;
  left = MOST_VALUES;
  path = [];
  fresh = new Map();
  interns = true;

  room(length) {
    if (this.at + length <= this.bytes.length) return;
    const larger = new Uint8Array(Math.max(this.bytes.length * 2, this.at + length));
    larger.set(this.bytes);
    this.bytes = larger;
    this.view = new DataView(larger.buffer);
  }

  tag(tag) {
    this.room(16);
    this.bytes[this.at++] = tag;
  }

  counted(tag, count) {
    this.tag(tag);
    this.view.setUint32(this.at, count, true);
    this.at += 4;
  }

  text(text) {
    this.room(4 + text.length * 3);
    const start = this.at + 4;
    let end = start;
    let place = 0;
    for (; place < text.length; place += 1) {
      const unit = text.charCodeAt(place);
      if (unit > 0x7f) break;
      this.bytes[end++] = unit;
    }
    if (place < text.length) {
      const rest = text.slice(place);
      if (!wellFormed(rest)) throw refusal("wrong_type", "text without half characters");
      end += encoder.encodeInto(rest, this.bytes.subarray(end)).written;
    }
    this.view.setUint32(this.at, end - start, true);
    this.at = end;
  }

  key(key) {
    let place = namesSent.get(key) ?? this.fresh.get(key);
    this.room(2);
    if (place !== undefined) {
      this.view.setUint16(this.at, place, true);
      this.at += 2;
      return;
    }
    // One spelling only: what is written with underscores in JSON is written in camelCase here.
    if (key === "__proto__" || /_[a-z]/.test(key)) throw refusal("unknown_field");
    place = LOOSE;
    if (this.interns && namesSent.size + this.fresh.size < MOST_NAMES) {
      place = namesSent.size + this.fresh.size;
      this.fresh.set(key, place);
    }
    this.view.setUint16(this.at, place, true);
    this.at += 2;
    this.text(key);
  }

  number(number) {
    if (!Number.isFinite(number)) throw refusal("not_finite", undefined, number);
    this.tag(3);
    this.view.setFloat64(this.at, number, true);
    this.at += 8;
  }

  value(value, depth) {
    this.left -= 1;
    if (this.left < 0) throw refusal("wrong_type", `at most ${MOST_VALUES} values in one call`);
    switch (typeof value) {
      case "number":
        return this.number(value);
      case "string":
        this.tag(4);
        return this.text(value);
      case "boolean":
        return this.tag(value ? 2 : 1);
      case "object":
        if (value === null) throw refusal("null_not_allowed", LEAVE_OUT, "null");
        if (depth >= DEEPEST) throw refusal("wrong_type", "less deeply nested values, without cycles");
        if (Array.isArray(value)) return this.list(value, depth);
        if (ArrayBuffer.isView(value)) return this.column(value);
        return this.map(value, depth);
      case "undefined":
        throw refusal("null_not_allowed", LEAVE_OUT, "undefined");
      default:
        throw refusal("wrong_type", "a number, a text, true, false, an array or a plain object", `a ${typeof value}`);
    }
  }

  list(list, depth) {
    const above = Object.getPrototypeOf(list);
    // Array.prototype is an array itself, in every frame; the prototype of a class over it is not.
    if (above !== Array.prototype && !Array.isArray(above)) throw refusal("wrong_type", "a plain array");
    const { length } = list;
    if (length > this.left) throw refusal("wrong_type", `at most ${MOST_VALUES} values in one call`);
    this.counted(5, length);
    for (let place = 0; place < length; place += 1) {
      this.path.push(place);
      this.value(list[place], depth + 1);
      this.path.pop();
    }
  }

  column(list) {
    const numbers = column(list);
    this.left -= numbers.length;
    if (this.left < 0) throw refusal("wrong_type", `at most ${MOST_VALUES} values in one call`);
    const place = numbers.findIndex((number) => !Number.isFinite(number));
    if (place >= 0) {
      this.path.push(place);
      throw refusal("not_finite", undefined, numbers[place]);
    }
    this.counted(7, numbers.length);
    this.room(numbers.length * 8);
    for (const number of numbers) {
      this.view.setFloat64(this.at, number, true);
      this.at += 8;
    }
  }

  map(map, depth) {
    const above = Object.getPrototypeOf(map);
    // An object of a class, or with fields in its prototype, is not plain. Another frame has its own Object.
    const plain = above === null || above === Object.prototype || Object.getPrototypeOf(above) === null;
    if (!plain || Object.getOwnPropertySymbols(map).length > 0) throw refusal("wrong_type", "a plain object");
    const keys = Object.keys(map);
    this.counted(6, keys.length);
    for (const key of keys) {
      this.path.push(key);
      this.key(key);
      this.value(map[key], depth + 1);
      this.path.pop();
    }
  }
}

const LEAVE_OUT = "a value, or leave the field out";

function wellFormed(text) {
  return !/[\uD800-\uDBFF](?![\uDC00-\uDFFF])|(?<![\uD800-\uDBFF])[\uDC00-\uDFFF]/.test(text);
}

// What a typed array is, by its own slots: nothing that a caller can put over them is asked.
const TYPED = Object.getPrototypeOf(Uint8Array.prototype);
const slot = (name) => Object.getOwnPropertyDescriptor(TYPED, name).get;
const [kindOf, lengthOf, bufferOf] = [slot(Symbol.toStringTag), slot("length"), slot("buffer")];
const COLUMNS = /^(Float32|Float64|Uint8|Uint16|Uint32|Int8|Int16|Int32)Array$/;

/** A copy of a typed array's numbers, taken at once; what is none, or has lost its buffer, is refused. */
function column(list) {
  if (!COLUMNS.test(kindOf.call(list) ?? "")) throw refusal("wrong_type", "an array of numbers");
  const length = lengthOf.call(list);
  try {
    // A buffer that was handed over has no bytes to look at.
    new Uint8Array(bufferOf.call(list), 0, 0);
    if (length === 0 && bufferOf.call(list).byteLength === 0 && bufferOf.call(list).detached === true) throw new TypeError();
    const copy = new Float64Array(length);
    copy.set(list);
    return copy;
  } catch {
    throw refusal("wrong_type", "an array that still has its numbers");
  }
}

// Thrown while packing; becomes an error with the path once it is known.
class Refusal {
  constructor(code, allowed, value) {
    this.code = code;
    this.allowed = allowed;
    this.value = value;
  }
}

function refusal(code, rule, value) {
  return new Refusal(code, rule === undefined ? undefined : { rule }, value);
}

function spelledPath(path) {
  let text = "";
  for (const part of path) {
    if (typeof part === "number") text += `[${part}]`;
    else text += text === "" ? part : `.${part}`;
  }
  return text;
}

let spare;
let walks = 0;

/** Packs a value and puts it into the instance's memory; `still` may refuse once it was walked, before any of it is there. */
function put(given, still) {
  // A getter of the caller's may call the library again while its object is walked: each walk has its own
  // bytes, and only the outermost gives names to the table.
  const packing = spare ?? new Packing();
  spare = undefined;
  packing.at = 0;
  packing.left = MOST_VALUES;
  packing.path.length = 0;
  packing.fresh.clear();
  packing.interns = walks === 0;
  walks += 1;
  try {
    packing.value(given, 0);
  } catch (thrown) {
    const { code, allowed, value } =
      thrown instanceof Refusal ? thrown : refusal("wrong_type", "values that can be read");
    throw new BismarError({ code, field: spelledPath(packing.path), value, allowed });
  } finally {
    walks -= 1;
  }
  still?.();
  const place = wasm.raw_room(packing.at) >>> 0;
  memory().set(packing.bytes.subarray(0, packing.at), place);
  for (const [key, number] of packing.fresh) namesSent.set(key, number);
  if (packing.bytes.length <= 1 << 20) spare = packing;
}

function memory() {
  return getUint8ArrayMemory0();
}

// ---- Unpacking: answers.

const namesRead = [];
const decoder = new TextDecoder("utf-8", { ignoreBOM: true });
let from;
let view;
let at;

/** Reads the value that lies ready; a negative length is an error. */
function unpack(length) {
  from = memory();
  if (view === undefined || view.buffer !== from.buffer) view = new DataView(from.buffer);
  at = wasm.raw_answer() >>> 0;
  const value = read();
  if (length < 0) throw new BismarError(value);
  return value;
}

function count() {
  const number = view.getUint32(at, true);
  at += 4;
  return number;
}

function readText() {
  const length = count();
  const end = at + length;
  let text = "";
  if (length > 40) {
    text = decoder.decode(from.subarray(at, end));
  } else {
    let place = at;
    for (; place < end && from[place] < 0x80; place += 1) text += String.fromCharCode(from[place]);
    if (place < end) text = decoder.decode(from.subarray(at, end));
  }
  at = end;
  return text;
}

function readKey() {
  const place = view.getUint16(at, true);
  at += 2;
  if (place < namesRead.length) return namesRead[place];
  const name = readText();
  if (place !== LOOSE) namesRead.push(name);
  return name;
}

function read() {
  const tag = from[at++];
  switch (tag) {
    case 0:
      return null;
    case 1:
      return false;
    case 2:
      return true;
    case 3: {
      const number = view.getFloat64(at, true);
      at += 8;
      return number;
    }
    case 4:
      return readText();
    case 5: {
      const length = count();
      const list = [];
      for (let place = 0; place < length; place += 1) list.push(read());
      return list;
    }
    default: {
      const length = count();
      const map = {};
      for (let place = 0; place < length; place += 1) {
        const key = readKey();
        const value = read();
        // A key that is data may be `__proto__`; it becomes a field, not the prototype.
        if (key === "__proto__") {
          Object.defineProperty(map, key, { value, enumerable: true, writable: true, configurable: true });
        } else {
          map[key] = value;
        }
      }
      return map;
    }
  }
}

// ---- Calls.

function invoke(index, given) {
  try {
    put(given);
    return unpack(wasm.raw_call(index));
  } catch (thrown) {
    throw translated(thrown);
  }
}

/** Calls any function by its key in the registry, for example `call("one_rm.epley_1985", { ... })`. */
export function call(key, given = {}) {
  const index = KEYS.indexOf(key);
  return invoke(index < 0 ? 4294967295 : index, given);
}

// A flat call gave NaN, which is never an answer.
function flatError(names, given) {
  for (let place = 0; place < names.length; place += 1) {
    if (typeof given[place] !== "number") {
      const code = given[place] === undefined ? "missing_field" : "wrong_type";
      return new BismarError({ code, field: names[place], allowed: { rule: "a number" } });
    }
  }
  try {
    return unpack(wasm.raw_error());
  } catch (thrown) {
    return translated(thrown);
  }
}

function runBatch(index, names, given) {
  const columns = takeColumns(names, given);
  try {
    for (const one of columns) {
      if (typeof one === "number") {
        wasm.raw_same(one);
      } else {
        const place = wasm.raw_column(one.length) >>> 0;
        new Float64Array(wasm.memory.buffer, place, one.length).set(one);
      }
    }
    const rows = wasm.raw_batch(index);
    if (rows < 0) unpack(wasm.raw_error());
    const answers = new Float64Array(wasm.memory.buffer, wasm.raw_answers() >>> 0, rows).slice();
    wasm.raw_forget();
    return answers;
  } catch (thrown) {
    throw translated(thrown);
  }
}

/** The columns in order, each a number or a typed array; nothing else is touched before all are known. */
function takeColumns(names, given) {
  let field = "";
  try {
    if (typeof given !== "object" || given === null) throw refusal("wrong_type", "an object of columns");
    for (field of Object.keys(given)) if (!names.includes(field)) throw refusal("unknown_field");
    const columns = [];
    let rows;
    // All are read before any is copied: a getter may change what was read before it.
    const read = names.map((name) => {
      field = name;
      if (!Object.hasOwn(given, name)) throw refusal("missing_field");
      return given[name];
    });
    for (const [at, one] of read.entries()) {
      field = names[at];
      if (typeof one === "number") {
        columns.push(one);
        continue;
      }
      if (!ArrayBuffer.isView(one)) throw refusal("wrong_type", "a number or a typed array of numbers");
      const copy = column(one);
      rows ??= copy.length;
      if (copy.length !== rows || rows > MOST_VALUES) throw refusal("wrong_type", "columns of one length");
      columns.push(copy);
    }
    return columns;
  } catch (thrown) {
    const { code, allowed, value } =
      thrown instanceof Refusal ? thrown : refusal("wrong_type", "values that can be read");
    throw new BismarError({ code, field, value, allowed });
  }
}

// ---- JSON documents: the same values, with field names in snake_case.

/** A JSON document, as parsed, with its field names in this package's spelling. */
export function fromJson(document) {
  return respelled(document, (key) => key.replace(/_([a-z])/g, (_, letter) => letter.toUpperCase()));
}

/** An object of this package with its field names as JSON documents spell them. */
export function toJson(value) {
  return respelled(value, (key) => key.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`));
}

function respelled(value, spell) {
  if (Array.isArray(value)) return value.map((item) => respelled(item, spell));
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, inside]) => [spell(key), respelled(inside, spell)]));
}

/** What a host may want to log: version, build, memory, and whether the instance has failed. */
export function diagnostics() {
  return {
    version: VERSION,
    build: BUILD_ID,
    ready: wasm !== undefined,
    failed: fault !== undefined,
    memoryBytes: wasm === undefined ? 0 : wasm.memory.buffer.byteLength,
  };
}
