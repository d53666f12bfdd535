// A state kept between calls; only what has the functions of logs has it.

const closing = new FinalizationRegistry((number) => wasm?.raw_close(number));

function ask(progress, request, given) {
  const open = () => {
    if (!PLACES.has(progress)) throw closed();
  };
  open();
  try {
    // Looked at again once all is read: a getter of the caller's may have closed this one, and another may have its number.
    put(given, open);
    return unpack(wasm.raw_ask(PLACES.get(progress), request));
  } catch (thrown) {
    throw translated(thrown);
  }
}

const PLACES = new WeakMap();

function closed() {
  return new BismarError({ code: "not_ready", field: "progress", allowed: { rule: "not closed" } });
}

function open(progress, given) {
  try {
    put(given);
    const number = wasm.raw_open();
    if (number < 0) unpack(wasm.raw_error());
    PLACES.set(progress, number);
    closing.register(progress, number, progress);
  } catch (thrown) {
    throw translated(thrown);
  }
}

/** A folded log that stays inside the instance, so that only what is new crosses. */
export class Progress {
  constructor(log) {
    open(this, { log });
  }

  static fromState(state, log) {
    const progress = Object.create(Progress.prototype);
    open(progress, { state, log });
    return progress;
  }

  apply(event) {
    ask(this, 0, { event });
  }

  decide(today) {
    return ask(this, 1, { today });
  }

  nextSession(plan, today) {
    return ask(this, 2, { plan, today });
  }

  state() {
    return ask(this, 3, {});
  }

  close() {
    const number = PLACES.get(this);
    if (number === undefined) return;
    PLACES.delete(this);
    closing.unregister(this);
    wasm?.raw_close(number);
  }
}
