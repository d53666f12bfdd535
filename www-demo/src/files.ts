// Files in and out: a full copy, one without health detail, a table of sets; and erasing.
import type { App } from "./app.ts";
import { asidesPart, damagePart, unreadablePart } from "./asides.ts";
import { button, el, fill, type Child } from "./element.ts";
import { ask } from "./engine.ts";
import { bringInAll, previewPart, readDocument, textOf, type Done, type Incoming } from "./incoming.ts";
import { shownName } from "./names.ts";
import { deviceDay } from "./numbers.ts";
import { confirmBox } from "./pad.ts";
import { isTable, openTable } from "./table_in.ts";

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

/** A name for a file: of whom or of what, and which sort of copy, where there are several. */
export function fileName(of: string, kind: string, sort = ""): string {
  const tidy = of.replace(/[^\p{L}\p{N}]+/gu, "-").slice(0, 40) || "lifter";
  return `bismar-${tidy}${sort}-${deviceDay()}.${kind}`;
}

/** Log, plan and the session going on of these lifters; without health detail, none of what somebody wrote in own words. */
export function wholeDocument(app: App, ids: string[], health: boolean): string {
  const parts = ids.flatMap((id) => {
    const lifter = app.store.lifter(id);
    if (!lifter) return [];
    if (!health) return [`{"log":${ask("page.without_health", { log: app.logText(lifter) }) as string},"plan":${ask("page.plan_without_health", { plan: lifter.plan })}}`];
    const draft = app.draft(lifter);
    return [`{"log":${app.logText(lifter)},"plan":${lifter.plan}${draft.length > 0 ? `,"draft":${JSON.stringify(draft)}` : ""}${lifter.damage ? `,"damage":${JSON.stringify(lifter.damage)}` : ""}}`];
  });
  return `{"format":"bismar-lifters","version":1,"health_left_out":${!health},"lifters":[${parts.join(",")}]}\n`;
}

/** What a file would change, one lifter after the other; it stays open until every one is dealt with. */
export function openDocument(app: App, text: string, why: string, found: HTMLElement, done: Done): void {
  let incoming: Incoming[] = readDocument(app, text);
  const several = incoming.length > 1;
  const all = (fresh: Incoming[]) => (): void => {
    const way = app.wayTo("today");
    void bringInAll(app, fresh).then((words) => done(words, way, false));
  };
  const draw = (): void => {
    const fresh = incoming.filter((one) => !app.store.lifter(one.id));
    fill(
      found,
      el("h2", {}, "What this file would change"),
      fresh.length > 1 && button(`Bring in all ${fresh.length} who are new here`, all(fresh), { class: "main", "data-act": "bring-in-all" }),
      incoming.map((one) =>
        previewPart(app, one, why, (words, way, whole) => {
          incoming = incoming.filter((other) => other !== one);
          if (incoming.length === 0 || !several) return done(words, way, whole);
          if (!found.isConnected) return app.say(words);
          draw();
          found.prepend(el("p", { class: "notice", role: "status" }, words));
        }),
      ),
    );
  };
  draw();
}

function openPart(app: App): Child {
  const found = el("div", { "aria-live": "polite", id: "incoming" });
  const open = el("input", { type: "file", accept: ".json,application/json,.csv,.tsv,.tab,.txt,text/csv,text/tab-separated-values,text/plain", id: "open-file", class: "file" });
  const refuse = (text: string): void => fill(found, el("p", { class: "wrong", role: "alert", "data-refused": true }, `Nothing was changed. ${text}`));
  const failed = (error: unknown): void => refuse(error instanceof Error ? error.message : String(error));
  const done: Done = (words, way) => way(words);
  open.addEventListener("change", () => {
    const file = open.files?.[0];
    if (!file) return;
    if (file.size > LARGEST_FILE) return refuse("The file is larger than 30 MB.");
    void file
      .arrayBuffer()
      .then((bytes) => textOf(new Uint8Array(bytes)))
      .then((text) => (isTable(file.name, text) ? openTable(app, text, found, failed, done) : openDocument(app, text, "replaced by a file", found, done)))
      .catch(failed);
  });
  return el("section", {}, el("h2", {}, "Open a file"), el("label", { class: "file-label", for: "open-file" }, "Choose a file. It shows what would change before anything does."), open, el("p", { class: "soft" }, "A copy that was saved here, or a table of sets from elsewhere (CSV: day, lift, load and repetitions, a row a set)."), found);
}

function savePart(app: App): Child {
  const { lifter } = app;
  if (!lifter) return undefined;
  const all = app.store.ids();
  return [
    el(
      "section",
      {},
      el("h2", {}, `Save ${shownName(lifter.id)}`),
      el(
        "div",
        { class: "stack" },
        button("Full copy, with health detail", () => saveFile(fileName(lifter.id, "json"), wholeDocument(app, [lifter.id], true), "application/json"), { "data-act": "save-full" }),
        button("Copy without health detail", () => saveFile(fileName(lifter.id, "json", "-without-health"), wholeDocument(app, [lifter.id], false), "application/json"), { "data-act": "save-plain" }),
        button("Sets as a table (CSV)", () => saveFile(fileName("sets", "csv"), ask("page.sets_table", { log: app.logText(lifter) }), "text/csv"), { "data-act": "save-csv" }),
      ),
      el("p", { class: "soft" }, "A copy without health detail begins stopped wherever it is opened: what was left out may have held a limit, so a new clearance comes first."),
      el("p", { class: "soft" }, "It leaves out what was written in own words: notes, cues, reasons, who said something, names of blocks and of planned gaps, and the session going on. What stays as it was written: the lifter\u2019s name, and the names of lifts, bars, regions and points to watch. In the table and its file name, the lifter\u2019s name is not."),
    ),
    all.length > 1 && button("Full copy of every lifter", () => saveFile(fileName("all", "json"), wholeDocument(app, all, true), "application/json")),
  ];
}

/** Asks, erases, and says whether it is gone from the device. */
export function eraseBox(app: App, id: string): void {
  const name = shownName(id);
  confirmBox(`Erase ${name}?`, "This cannot be undone on this device. Save a full copy first if anyone may want it.", "Erase", () => {
    const way = app.wayTo("lifters");
    const erased = app.store.erase(id);
    // Whoever else is in view stays there.
    if (!app.lifter) app.current = app.store.ids()[0];
    void erased.then((written) => {
      app.forgetAnswers();
      way(written ? `${name} was erased.` : `${name} is gone from the screen, but the device refused to erase what it keeps.`);
    });
  });
}

export function filesView(app: App): Child {
  const { lifter } = app;
  return [
    el("h1", { tabindex: -1 }, "Files"),
    openPart(app),
    damagePart(app),
    savePart(app),
    unreadablePart(app),
    asidesPart(app),
    lifter &&
      el(
        "section",
        {},
        el("h2", {}, "Erase"),
        el("p", { class: "soft" }, "Takes the lifter and everything set aside for them off this device, in every window. Files that were saved elsewhere stay."),
        button(`Erase ${shownName(lifter.id)}`, () => eraseBox(app, lifter.id), { class: "danger", "data-act": "erase" }),
      ),
  ];
}
