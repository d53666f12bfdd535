// Runs the seeded corpus through the package and digests what comes back. Knows no host but `crypto.subtle`.

const encoder = new TextEncoder();
const decoder = new TextDecoder();

class Input {
  constructor(bytes) {
    this.bytes = bytes;
    this.view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
    this.at = 0;
  }

  count() {
    this.at += 4;
    return this.view.getUint32(this.at - 4, true);
  }

  text() {
    const length = this.count();
    this.at += length;
    return decoder.decode(this.bytes.subarray(this.at - length, this.at));
  }

  value() {
    const tag = this.bytes[this.at++];
    if (tag === 0) return null;
    if (tag < 3) return tag === 2;
    if (tag === 3) {
      this.at += 8;
      return this.view.getFloat64(this.at - 8, true);
    }
    if (tag === 4) return this.text();
    const length = this.count();
    if (tag === 5) return Array.from({ length }, () => this.value());
    const map = {};
    for (let field = 0; field < length; field += 1) {
      const key = this.text();
      map[key] = this.value();
    }
    return map;
  }
}

class Output {
  bytes = new Uint8Array(1 << 16);
  view = new DataView(this.bytes.buffer);
  at = 0;

  room(length) {
    if (this.at + length <= this.bytes.length) return;
    const larger = new Uint8Array(Math.max(this.bytes.length * 2, this.at + length));
    larger.set(this.bytes);
    this.bytes = larger;
    this.view = new DataView(larger.buffer);
  }

  tag(tag, count) {
    this.room(16);
    this.bytes[this.at++] = tag;
    if (count !== undefined) this.count(count);
  }

  count(count) {
    this.room(4);
    this.view.setUint32(this.at, count, true);
    this.at += 4;
  }

  text(text) {
    const bytes = encoder.encode(text);
    this.count(bytes.length);
    this.room(bytes.length);
    this.bytes.set(bytes, this.at);
    this.at += bytes.length;
  }

  value(value) {
    if (value === null) return this.tag(0);
    if (typeof value === "boolean") return this.tag(value ? 2 : 1);
    if (typeof value === "number") {
      this.tag(3);
      // The bits of NaN differ between machines and mean nothing; it occurs as a refused value only.
      if (Number.isNaN(value)) this.view.setBigUint64(this.at, 0x7ff8000000000000n, true);
      else this.view.setFloat64(this.at, value, true);
      this.at += 8;
      return undefined;
    }
    if (typeof value === "string") {
      this.tag(4);
      return this.text(value);
    }
    if (Array.isArray(value)) {
      this.tag(5, value.length);
      for (const item of value) this.value(item);
      return undefined;
    }
    const keys = Object.keys(value).filter((key) => value[key] !== undefined).sort(byBytes);
    this.tag(6, keys.length);
    for (const key of keys) {
      this.text(key);
      this.value(value[key]);
    }
    return undefined;
  }
}

// The order of UTF-8 bytes, which differs from that of UTF-16 units beyond the basic plane.
function byBytes(a, b) {
  const [left, right] = [encoder.encode(a), encoder.encode(b)];
  for (let at = 0; at < Math.min(left.length, right.length); at += 1) {
    if (left[at] !== right[at]) return left[at] - right[at];
  }
  return left.length - right.length;
}

/** The digest of every function's answers: `{ key: { count, digest } }`. */
export async function digests(bismar, corpus) {
  const input = new Input(corpus);
  const found = {};
  while (input.at < corpus.length) {
    const key = input.text();
    const count = input.count();
    const output = new Output();
    for (let at = 0; at < count; at += 1) {
      const given = input.value();
      let answer;
      try {
        answer = bismar.call(key, given);
      } catch (error) {
        if (!(error instanceof bismar.BismarError)) throw error;
        const { code, field, value, allowed, event } = error;
        output.tag(9);
        output.value({ code, field, value, allowed, event });
        continue;
      }
      output.value(answer);
    }
    const digest = await crypto.subtle.digest("SHA-256", output.bytes.subarray(0, output.at));
    found[key] = { count, digest: [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, "0")).join("") };
  }
  return found;
}

/** Names of the functions whose bits differ. */
export function differing(expected, found) {
  const keys = new Set([...Object.keys(expected), ...Object.keys(found)]);
  return [...keys].filter((key) => {
    return expected[key]?.digest !== found[key]?.digest || expected[key]?.count !== found[key]?.count;
  });
}
