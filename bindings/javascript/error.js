// The error of the package: one class for the whole and all its parts.

/** An error of the library: `code` is stable, `field` is the path, `allowed` says what would have been accepted. */
export class BismarError extends Error {
  constructor({ code, field = "", value, allowed, event }, cause) {
    super(sentence(code, field, value, allowed, event), cause === undefined ? undefined : { cause });
    this.name = "BismarError";
    this.code = code;
    this.field = field;
    this.value = value;
    this.allowed = allowed;
    this.event = event;
  }

  /** The same as a plain object, as `text.error` of the sentences takes it. */
  get told() {
    const { code, field, value, allowed, event } = this;
    // A number that no document can say is told by its name.
    const said = typeof value === "number" && !Number.isFinite(value) ? String(value) : value;
    const all = { code, field, value: said, allowed, event };
    return Object.fromEntries(Object.entries(all).filter(([, one]) => one !== undefined));
  }
}

// What a message shows of a long text; the error itself has all of it.
const LONGEST = 120;
function shortened(text) {
  return text.length <= LONGEST ? text : `${text.slice(0, LONGEST)}\u2026 (${text.length} characters)`;
}
// Nothing in a message that a terminal would obey, or that would turn the message around.
const MOVES = /[\u0000-\u001f\u007f-\u009f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069]/g;
function tame(text) {
  return text.replace(MOVES, (letter) => `\\u{${letter.charCodeAt(0).toString(16)}}`);
}

function sentence(code, field, value, allowed, event) {
  return tame(told(code, field, value, allowed, event));
}

function told(code, field, value, allowed, event) {
  let text = event === undefined ? code : `event ${event}: ${code}`;
  if (field !== "") text += `: ${shortened(field)}`;
  if (value !== undefined) text += ` = ${typeof value === "string" ? JSON.stringify(shortened(value)) : value}`;
  if (allowed === undefined) return text;
  if (allowed.oneOf !== undefined) return `${text} (allowed: ${allowed.oneOf.join(", ")})`;
  if (allowed.rule !== undefined) return `${text} (allowed: ${allowed.rule})`;
  const unit = allowed.unit === undefined ? "" : ` ${allowed.unit}`;
  return `${text} (allowed: ${allowed.low} to ${allowed.high}${unit})`;
}
