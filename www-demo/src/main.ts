// The shell: header, views, the way between them.
import { App } from "./app.ts";
import { openBase } from "./base.ts";
import { somethingEntered } from "./boxes.ts";
import { withoutHealth } from "./card.ts";
import { button, el, fill, type Child } from "./element.ts";
import { ask, start } from "./engine.ts";
import { filesView, saveFile, wholeDocument } from "./files.ts";
import { beginView, liftersView, loadDemo } from "./lifters.ts";
import { liftView } from "./lift_view.ts";
import { onRecord } from "./less.ts";
import { logView } from "./log.ts";
import { shownName } from "./names.ts";
import { notesView } from "./notes.ts";
import { dayLong, deviceDay, setLimiting, unitNow } from "./numbers.ts";
import { planView } from "./plan_view.ts";
import { BAR } from "./questions/bar.ts";
import { DAY } from "./questions/day.ts";
import type { Question } from "./questions/shape.ts";
import { TOLD } from "./questions/told.ts";
import { YEARS } from "./questions/years.ts";
import { applyTheme, settingsView, useUnit } from "./settings.ts";
import { Store } from "./store.ts";
import { todayView } from "./today_view.ts";

const QUESTIONS: Question[] = [...DAY, ...BAR, ...YEARS, ...TOLD];
const GROUPS = ["Today", "The bar", "Loads", "Weeks and years"] as const;

function questionsView(app: App): Child {
  return [
    el("h1", { tabindex: -1 }, "Questions"),
    GROUPS.map((group) =>
      el(
        "section",
        {},
        el("h2", {}, group),
        el("div", { class: "asks" }, QUESTIONS.filter((one) => one.group === group).map((one) => button(one.title, () => app.go(`q${one.number}`), { class: "ask", "data-question": one.number }))),
      ),
    ),
  ];
}

function questionView(app: App, question: Question): Child {
  const body = question.view(app);
  if (question.number === 25) return body;
  return [el("h1", { tabindex: -1 }, question.title), body];
}

/** Where the day of the device is none: stops, signs and the files stay within reach, and no load is shown. */
const WITHOUT_DAY = ["q13", "files"];
function withoutDay(app: App, why: string): Child {
  const last = app.lifter && app.lastDay(app.lifter);
  return [
    el("h1", { tabindex: -1 }, "The date of this device"),
    el("p", { class: "big", "data-answer": true }, "No load without a day that can be counted with"),
    el("p", { class: "why", "data-why": true }, `This device says ${deviceDay()}. ${why} Set the date of the device, then come back to this page; nothing that was written is lost.`),
    last !== undefined && el("p", { class: "soft" }, `Stops are shown as of the last entry, ${dayLong(last)}; a sign that is tapped now is written on that day.`),
  ];
}

function viewOf(app: App): Child {
  const why = app.dayWrong();
  if (why !== undefined && !WITHOUT_DAY.includes(app.view)) return withoutDay(app, why);
  const question = /^q(\d+)$/.exec(app.view);
  if (question) {
    const found = QUESTIONS.find((one) => one.number === Number(question[1]));
    if (found) return questionView(app, found);
  }
  switch (app.view) {
    case "questions":
      return questionsView(app);
    case "log":
      return logView(app);
    case "lifters":
      return liftersView(app);
    case "begin":
      return beginView(app);
    case "files":
      return filesView(app);
    case "gym":
      return settingsView(app);
    case "notes":
      return notesView(app);
    case "plan":
      return planView(app);
    case "lift":
      return liftView(app);
    default:
      return todayView(app);
  }
}

const PLACES = [
  ["today", "Today"],
  ["questions", "Questions"],
  ["lifters", "Lifters"],
  ["log", "Log"],
  ["files", "Files"],
  ["gym", "Gym"],
] as const;

function placeOf(view: string): string {
  return view.startsWith("q") ? "questions" : ["begin", "plan", "lift"].includes(view) ? "lifters" : view;
}

function header(app: App): Child {
  const lifter = app.lifter;
  return [
    button(
      [
        el("span", { class: "unseen" }, "Lifter: "),
        el("span", { class: "who" }, lifter ? shownName(lifter.id) : "nobody"),
        lifter && app.header(lifter).invented ? el("span", { class: "tag" }, "invented") : "",
      ],
      () => app.go("lifters"),
      { class: "lifter" },
    ),
    button(unitNow() === "kg" ? "kg" : "lb", () => void useUnit(app, unitNow() === "kg" ? "lb" : "kg"), { class: "unit", "aria-label": unitNow() === "kg" ? "kg. Switch to pounds" : "lb. Switch to kilograms" }),
    button([el("span", { "aria-hidden": "true" }, "\u2b23 "), "Stop signs"], () => app.go("q13"), { class: "stop-button" }),
  ];
}

function saysPart(app: App): Child {
  return [faultPart(app), app.notice && el("p", { class: "notice", role: "status" }, app.notice)];
}

function faultPart(app: App): Child {
  const { fault } = app.store;
  const said = [...app.damaged(!withoutHealth(app)), ...app.store.said.map(({ words }) => words)];
  return [
    fault &&
      el(
        "div",
        { class: "fault", role: "alert" },
        el("p", {}, el("b", {}, "Not kept on this device. "), `${fault.what} ${fault.detail}. The page works on; save a file before you close it.`),
        app.store.ids().length > 0 && button("Save a file now", () => saveFile("bismar-rescue.json", wholeDocument(app, app.store.ids(), true), "application/json"), { "data-act": "rescue" }),
      ),
    said.length > 0 && el("div", { class: "fault", role: "alert", "data-said": true }, said.map((words) => el("p", {}, words))),
    [...app.store.unreadable.values()].map((one) => el("div", { class: "fault", role: "alert" }, el("p", {}, el("b", {}, `${shownName(one.id)} cannot be read. `), one.words, " The log lies on this device as it was written: see Files."))),
  ];
}

/** Where there is room, all that belongs to a stop stands open. */
const ROOMY = matchMedia("(min-width: 37.01rem)");

/** A recorded stop stands above every view until it is cleared, in words and by its shape. What was recorded and what to
 * do at once stand open everywhere; the other signs, and what opens it again, are one tap away on a telephone. */
function stopBand(app: App): Child {
  const { lines: words, lifts } = app.lifter ? app.stops(app.lifter) : { lines: [], lifts: [] };
  app.drawn = { id: app.lifter?.id, stop: [...words, ...lifts.map((one) => `${app.liftName(one.lift)}: stop`)] };
  if (words.length === 0) return undefined;
  const general: string[] = ask("page.cautions", {}).map((one) => one.text);
  // The last paragraph is that of the clinician; before it come the general signs, where they belong to the stop.
  const own = words.findIndex((line) => general.includes(line));
  const end = own > 0 ? own : Math.max(1, words.length - 1);
  const rest = words.slice(end);
  return el(
    "section",
    { class: "stop-band", role: "alert", "aria-label": "Stopped", "data-no-print": withoutHealth(app) },
    el("p", { class: "stop-words" }, el("span", { "aria-hidden": "true" }, "\u2b23 "), words.slice(0, end).join(" ")),
    rest.length > 0 && el("details", { open: ROOMY.matches }, el("summary", {}, "All signs that call for help, and what opens it again"), rest.map((line) => el("p", {}, line))),
    app.view !== "log" && button("Clearance and sign-off: under Log", () => app.go("log"), {}),
  );
}

/** A stop, or what narrows a lift, of a lifter of the same name: said first, by both names. */
function copiesPart(app: App): Child {
  const name = shownName(app.current ?? "");
  const look = (id: string): Child => el("div", { class: "row" }, button(`Look at ${shownName(id)}`, () => void app.choose(id), {}));
  const narrower = app.lessElsewhere().map(({ id, less }) =>
    el(
      "section",
      { class: "caution", role: "alert", "data-other-less": id, "data-no-print": withoutHealth(app) },
      el("p", {}, onRecord(shownName(id), less).map((words) => el("b", {}, `${words} `)), `${name} is here under another name, and nothing of it is in this log. Where both are one person, it holds for either: is that one person? Then write it down here too.`),
      look(id),
    ),
  );
  const stopped = app.stopElsewhere().map(({ id, stop }) =>
    el(
      "section",
      { class: "caution", role: "alert", "data-other-stop": id, "data-no-print": withoutHealth(app) },
      el("p", {}, el("b", {}, `${shownName(id)} is stopped. `), `${stop.replace(/\.?$/, ".")} ${name} is here under another name and does not have that stop. Where both are one person, nothing is lifted by either until it is cleared.`),
      look(id),
    ),
  );
  return [stopped, narrower];
}

/** How often a window that nobody comes back to looks at the day. */
const LOOK_EVERY = 20_000;

/** A window that is left open shows the day that it is, not the day on which it was drawn. */
function followDay(app: App): void {
  const look = (): void => void (document.hidden || app.dayTurned());
  for (const name of ["focus", "pageshow"]) addEventListener(name, look);
  document.addEventListener("visibilitychange", look);
  setInterval(look, LOOK_EVERY);
}

function render(app: App, root: HTMLElement): void {
  app.drawnOn = deviceDay();
  const open = document.activeElement;
  const label = open instanceof HTMLElement ? nameOf(open) : null;
  const scroll = globalThis.scrollY;
  const opened = [...root.querySelectorAll("details")].map((one) => one.open);
  const here = placeOf(app.view);
  app.unsaid = undefined;
  let body: Child;
  setLimiting([]);
  try {
    setLimiting(app.lifter ? app.facts(app.lifter).most : []);
    body = viewOf(app);
  } catch (error) {
    body = [el("h1", { tabindex: -1 }, "Something went wrong"), el("p", { class: "wrong" }, error instanceof Error ? error.message : String(error)), el("p", {}, "Nothing was written. Save a file under Files, then open the page anew.")];
    console.warn(error);
  }
  fill(
    root,
    el("header", { class: "top" }, header(app)),
    el(
      "nav",
      { "aria-label": "Places" },
      PLACES.map(([view, words]) => button(words, () => app.go(view), { "data-place": view, ...(here === view ? { "aria-current": "page" } : {}) })),
    ),
    el("main", { "data-view": app.view }, stopBand(app), copiesPart(app), el("div", { class: "says" }, saysPart(app)), body),
  );
  // No name in the title: it stays in the browser's history.
  document.title = "Bismar";
  [...root.querySelectorAll("details")].forEach((one, at) => {
    if (opened[at] === true && app.view === shown) one.open = true;
  });
  if (app.view === shown) {
    globalThis.scrollTo(0, scroll);
    if (label) {
      const again = [...root.querySelectorAll<HTMLElement>("button")].find((one) => nameOf(one) === label);
      again?.focus({ preventScroll: true });
    }
  }
  shown = app.view;
}
let shown = "";

/** What a button is known by when the view is drawn anew; the number that a pad changes is no part of it. */
function nameOf(node: HTMLElement): string {
  const group = node.parentElement?.getAttribute("aria-label") ?? "";
  return `${group} ${node.dataset.pad ?? node.dataset.value ?? node.getAttribute("aria-label") ?? node.textContent ?? ""}`;
}

/** A hosted page is kept for offline, and says when a newer version of it was fetched. */
function followVersions(app: App): void {
  const workers = navigator.serviceWorker;
  // The first worker of a page takes over too; that is no newer version.
  let had = workers.controller !== null;
  workers.addEventListener("controllerchange", () => {
    if (!had) {
      had = true;
      return;
    }
    app.notice = "A newer version of this page is here. Open the page anew to use it; nothing that was written is lost.";
    app.refresh();
  });
  void workers.register("worker.js", { updateViaCache: "none" }).catch(() => undefined);
}

async function begin(): Promise<void> {
  const root = document.getElementById("page") as HTMLElement;
  applyTheme(undefined);
  const base = openBase();
  // Refused, it is told by whoever waits for it.
  base.catch(() => undefined);
  const ready = start();
  const opening = Store.open(base, ready);
  try {
    await ready;
  } catch (error) {
    fill(root, el("main", {}, el("h1", {}, "This browser cannot run the page"), el("p", {}, error instanceof Error ? error.message : String(error)), el("p", {}, "A browser of the last few years is needed; no network is.")));
    return;
  }
  const store = await opening;
  applyTheme(store.setting("theme"));
  const app = new App(store);
  const changed = (): void => {
    if (app.view === "demo") {
      // An address, not a place: going back to it does nothing, and nobody who is here is put out of view for it.
      app.view = "today";
      history.replaceState(null, "", "#today");
      if (app.store.ids().length === 0) return void loadDemo(app);
    }
    render(app, root);
  };
  app.onChange(changed, () => {
    const says = root.querySelector(".says");
    if (says) fill(says, saysPart(app));
  });
  const fromAddress = (): void => {
    app.open(location.hash.replace("#", "") || "today");
    app.refresh();
  };
  addEventListener("popstate", () => {
    if (!app.unsaid) return fromAddress();
    const to = location.hash.replace("#", "") || "today";
    history.pushState(null, "", `#${app.view}`);
    app.leave(() => app.go(to));
  });
  // What is not on the device goes with the page.
  addEventListener("beforeunload", (event) => {
    const unkept = store.fault !== undefined && store.ids().length > 0;
    if (!unkept && !app.unsaid && !somethingEntered()) return;
    event.preventDefault();
    app.say(unkept ? "What was entered is not kept on this device yet. Save a file before you leave." : "What is entered here is not written down yet.");
  });
  fromAddress();
  followDay(app);
  performance.mark("first-answer");
  document.documentElement.dataset.ready = "true";
  // Only a hosted page has a worker; from a file there is none and none is needed.
  if (location.protocol.startsWith("http") && "serviceWorker" in navigator) {
    followVersions(app);
  }
}

void begin();
