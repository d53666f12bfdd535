// Files in and out: a full copy, one without health detail, a table of sets; and what a file would change.
import type { App } from "./app.ts";
import { list } from "./answer.ts";
import { button, el, type Child } from "./element.ts";
import { ask, attempt, type Tree } from "./engine.ts";
import { count, dayLong, deviceDay } from "./numbers.ts";
import { confirmBox } from "./pad.ts";

/** Larger files are refused before they are read; a log of decades is far smaller. */
const LARGEST_FILE = 30_000_000;

export function saveFile(name: string, text: string, type: string): void {
  const url = URL.createObjectURL(new Blob([text], { type }));
  const link = el("a", { href: url, download: name });
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}

function fileName(of: string, kind: string): string {
  const tidy = of.replace(/[^\p{L}\p{N}]+/gu, "-").slice(0, 40) || "lifter";
  return `bismar-${tidy}-${deviceDay()}.${kind}`;
}

export function wholeDocument(app: App, ids: string[], health: boolean): string {
  const parts = ids.flatMap((id) => {
    const lifter = app.store.lifter(id);
    if (!lifter) return [];
    const log = health ? app.logText(lifter) : (ask("page.without_health", { log: app.logText(lifter) }) as string);
    return [`{"log":${log},"plan":${lifter.plan}}`];
  });
  return `{"format":"bismar-lifters","version":1,"health_left_out":${!health},"lifters":[${parts.join(",")}]}\n`;
}

interface Incoming {
  preview: Tree;
  plan: string | undefined;
}

/** What a file holds; throws words where it holds nothing that can be read. */
function readDocument(app: App, text: string): Incoming[] {
  let document: Tree;
  try {
    document = JSON.parse(text);
  } catch {
    throw new Error("This is not a whole JSON file; it may be cut off.");
  }
  const entries: { log: Tree; plan?: Tree }[] =
    document?.format === "bismar-lifters"
      ? document.version === 1 && Array.isArray(document.lifters)
        ? document.lifters
        : []
      : [{ log: document }];
  if (entries.length === 0) throw new Error("No lifter is in this file, or it was written by a newer version.");
  if (entries.length > 200) throw new Error("More than 200 lifters in one file are refused.");
  return entries.map((entry) => {
    const incoming = JSON.stringify(entry?.log ?? null);
    const id = typeof entry?.log?.lifter?.id === "string" ? entry.log.lifter.id : "";
    const here = app.store.lifter(id);
    const found = attempt("page.preview", { incoming, ...(here ? { here: app.logText(here) } : {}) });
    if (found.refused) throw new Error(found.refused.message);
    return { preview: found.answer, plan: entry.plan === undefined ? undefined : JSON.stringify(entry.plan) };
  });
}

function header(lifter: Tree, id: string): string {
  return JSON.stringify({ ...lifter, id });
}

/** A plan with every lift, where none came with the log. */
function usualPlan(log: string): string {
  const history = attempt("page.history", { log, today: "2999-01-01" }).answer;
  const lifts = (history?.parameters?.lifts ?? []).map((one: Tree) => ({ lift: one.id }));
  return JSON.stringify({ format: "bismar-plan", version: 1, lifts });
}

export async function bringIn(app: App, one: Incoming, as: string, why: string): Promise<void> {
  const log = one.preview.log as string;
  const { events: all, version } = JSON.parse(log);
  const events = (all as Tree[]).map((event) => JSON.stringify(event));
  const plan = one.plan ?? usualPlan(log);
  await app.store.put({ id: as, header: header(one.preview.lifter, as), plan, version }, events, why);
  app.current = as;
  await app.store.set("lifter", as);
}

function freeName(app: App, id: string): string {
  let number = 2;
  while (app.store.lifter(`${id} (${number})`)) number += 1;
  return `${id} (${number})`;
}

function changes(title: string, items: Tree[]): Child {
  if (items.length === 0) return undefined;
  return el(
    "details",
    {},
    el("summary", {}, `${title}: ${count(items.length, "entry").replace("entrys", "entries")}`),
    list(items.slice(0, 200).map((one) => `${dayLong(one.day)}, number ${one.sequence}: ${one.kind.replaceAll("_", " ")}`)),
  );
}

function previewPart(app: App, one: Incoming, done: (words: string) => void): Child {
  const { preview } = one;
  const { id } = preview.lifter;
  const here = app.store.lifter(id);
  const conflict = preview.changed.length > 0 || preview.onlyHere > 0;
  const words = !here
    ? `New here: ${count(preview.events, "event")}.`
    : `Same: ${preview.same}. Added: ${preview.added.length}. Different: ${preview.changed.length}. Only on this device: ${preview.onlyHere}.`;
  const act = (as: string, said: string) => (): void => void bringIn(app, one, as, "replaced by a file").then(() => done(said));
  return el(
    "article",
    { class: "card" },
    el("h2", {}, id),
    el("p", { class: "big", "data-answer": true }, words),
    preview.lastDay && el("p", { class: "soft" }, `Last day in the file: ${dayLong(preview.lastDay)}.`),
    here && changes("Would be added", preview.added),
    changes("Would be different", preview.changed),
    el(
      "div",
      { class: "row" },
      !here && button("Bring in", act(id, `${id} is here now.`), { class: "main", "data-act": "bring-in" }),
      here && !conflict && preview.added.length > 0 && button("Add these", act(id, "Added."), { class: "main", "data-act": "bring-in" }),
      here && !conflict && preview.added.length === 0 && el("p", {}, "Nothing would change."),
      conflict && button("Keep both", act(freeName(app, id), "Both are here."), { class: "main", "data-act": "keep-both" }),
      conflict && button("Replace what is here", () => confirmBox("Replace?", `The log of ${id} on this device is set aside whole; it can still be saved under Files.`, "Replace", act(id, "Replaced; the old log is set aside."))),
    ),
  );
}

export function filesView(app: App): Child {
  const lifter = app.lifter;
  const found = el("div", { "aria-live": "polite" });
  const open = el("input", { type: "file", accept: ".json,application/json", id: "open-file", class: "file" });
  open.addEventListener("change", () => {
    const file = open.files?.[0];
    if (!file) return;
    const refuse = (text: string): void => found.replaceChildren(el("p", { class: "wrong", role: "alert", "data-refused": true }, `Nothing was changed. ${text}`));
    if (file.size > LARGEST_FILE) {
      refuse("The file is larger than 30 MB.");
      return;
    }
    void file.text().then((text) => {
      try {
        const incoming = readDocument(app, text);
        found.replaceChildren(
          el("h2", {}, "What this file would change"),
          ...incoming.map((one) => {
            const part = el("div", {});
            part.append(previewPart(app, one, (words) => {
              app.notice = words;
              app.go("today");
              app.notice = words;
              app.refresh();
            }) as Node);
            return part;
          }),
        );
      } catch (error) {
        refuse(error instanceof Error ? error.message : String(error));
      }
    });
  });
  const all = app.store.ids();
  return [
    el("h1", { tabindex: -1 }, "Files"),
    el("section", {}, el("h2", {}, "Open a file"), el("label", { class: "file-label", for: "open-file" }, "Choose a file. It shows what would change before anything does."), open, found),
    lifter &&
      el(
        "section",
        {},
        el("h2", {}, `Save ${lifter.id}`),
        el(
          "div",
          { class: "stack" },
          button("Full copy, with health detail", () => saveFile(fileName(lifter.id, "json"), wholeDocument(app, [lifter.id], true), "application/json"), { "data-act": "save-full" }),
          button("Copy without health detail", () => saveFile(fileName(lifter.id, "json"), wholeDocument(app, [lifter.id], false), "application/json"), { "data-act": "save-plain" }),
          button("Sets as a table (CSV)", () => saveFile(fileName(lifter.id, "csv"), ask("page.sets_table", { log: app.logText(lifter) }), "text/csv"), { "data-act": "save-csv" }),
        ),
        el("p", { class: "soft" }, "A copy without health detail begins stopped wherever it is opened: what was left out may have held a limit, so a new clearance comes first."),
      ),
    all.length > 1 && button("Full copy of every lifter", () => saveFile(fileName("all", "json"), wholeDocument(app, all, true), "application/json")),
    el("section", {}, el("h2", {}, "Set aside"), button("Save what was set aside", () => void app.store.asides().then((rows) => saveFile(fileName("set-aside", "json"), JSON.stringify(rows, null, 1), "application/json")))),
    lifter &&
      el(
        "section",
        {},
        el("h2", {}, "Erase"),
        el("p", { class: "soft" }, "Takes the lifter and everything set aside for them off this device. Files that were saved elsewhere stay."),
        button(`Erase ${lifter.id}`, () =>
          confirmBox(`Erase ${lifter.id}?`, "This cannot be undone on this device. Save a full copy first if anyone may want it.", "Erase", () => {
            void app.store.erase(lifter.id).then((written) => {
              app.current = app.store.ids()[0];
              app.go("lifters");
              app.notice = written ? `${lifter.id} was erased.` : `${lifter.id} is gone from the screen, but the device refused to erase what it keeps.`;
              app.refresh();
            });
          }), { class: "danger", "data-act": "erase" }),
      ),
  ];
}
