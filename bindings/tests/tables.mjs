// The cases of tables of sets, those of `tests/doors/tables.json`: what is asked in each.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { root } from "./files.mjs";
import { camel } from "./published-runner.mjs";

/** The log that the cases begin with, and the cases, in the package's spelling. */
export function tableCases() {
  const { log, cases } = JSON.parse(readFileSync(join(root, "tests/doors/tables.json"), "utf8"));
  return { log: camel(log), cases: cases.map(camel) };
}

/** What the library is asked about a case, beginning with that log. */
export function askedOf({ rows, csv, lines, reading }, log) {
  const table = rows === undefined ? { csv: csv ?? lines.map((line) => `${line}\n`).join("") } : { rows };
  return { table, log, ...(reading === undefined ? {} : { reading }) };
}
