// Published checks through the package: the same cases and the same rules of comparison as `tests/published.rs`.
// Knows no host: Node and the browser hand it the package and the documents.

/** Keys in the package's spelling, all the way down. */
export function camel(value) {
  if (Array.isArray(value)) return value.map(camel);
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, inside]) => [camelKey(key), camel(inside)]));
}

export function camelKey(key) {
  return key.replace(/_([a-z])/g, (_, letter) => letter.toUpperCase());
}

/** Every difference between the named fields and the answer, as texts. */
export function compare(path, expected, within, actual) {
  if (Array.isArray(expected)) {
    if (!Array.isArray(actual)) return [`${path}: ${JSON.stringify(actual)} instead of a list`];
    if (actual.length !== expected.length) return [`${path}: ${actual.length} items instead of ${expected.length}`];
    return expected.flatMap((item, at) => {
      return compare(`${path}[${at}]`, item, Array.isArray(within) ? within[at] : within, actual[at]);
    });
  }
  if (typeof expected === "object" && expected !== null) {
    if (typeof actual !== "object" || actual === null) return [`${path}: ${JSON.stringify(actual)} instead of fields`];
    return Object.keys(expected).flatMap((key) => {
      return compare(`${path}.${key}`, expected[key], typeof within === "number" ? within : within?.[key], actual[key]);
    });
  }
  if (typeof expected === "number" && typeof actual === "number") {
    if (typeof within !== "number" && !Number.isInteger(expected)) return [`${path}: ${expected} has no tolerance`];
    const tolerance = typeof within === "number" ? within : 0;
    // A tolerance of half a printed digit must not fail on the last bit of that half.
    const slack = tolerance > 0 ? Math.abs(expected) * 1e-15 : 0;
    return Math.abs(actual - expected) <= tolerance + slack ? [] : [`${path}: ${actual} instead of ${expected}`];
  }
  // An absent field stands for null.
  return expected === actual || (expected === null && actual === undefined)
    ? []
    : [`${path}: ${JSON.stringify(actual)} instead of ${JSON.stringify(expected)}`];
}

function runCase(bismar, place, body) {
  let actual;
  try {
    actual = bismar.call(body.function, camel(body.given));
  } catch (error) {
    if (!(error instanceof bismar.BismarError)) return [`${place}: threw ${error}`];
    return error.code === body.expect_error ? [] : [`${place}: ${error.message}`];
  }
  if (body.expect_error !== undefined) return [`${place}: an answer instead of ${body.expect_error}`];
  return compare(place, camel(body.expect), camel(body.within), actual);
}

/**
 * Runs every case whose function the package knows.
 * @param bismar the package, set up
 * @param documents `{ name, document }` each
 * @param keys the registry's keys
 */
export function run(bismar, documents, keys) {
  const known = new Set(keys);
  const report = { cases: 0, functions: new Set(), unmapped: new Set(), failures: [] };
  for (const { name, document } of documents) {
    let mapped = 0;
    document.cases.forEach((body, at) => {
      if (!known.has(body.function)) {
        report.unmapped.add(body.function);
        return;
      }
      mapped += 1;
      report.cases += 1;
      report.functions.add(body.function);
      report.failures.push(...runCase(bismar, `${name}[${at}] ${body.function}`, body));
    });
    if (mapped === 0) report.failures.push(`${name}: nothing maps`);
  }
  return { ...report, functions: report.functions.size, unmapped: [...report.unmapped] };
}
