// The shape of every answer: one big line, one line why and how sure, then working and sources on request.
import { ask } from "./engine.ts";
import { el, type Child } from "./element.ts";

export interface AnswerParts {
  big: string;
  why: string;
  body?: Child;
  working?: Child;
  sources?: string[];
  cautions?: string[];
  tone?: "stop" | "plain";
}

/** A number and its unit stay on one line. */
function unbroken(text: string): string {
  return text.replace(/(\d) (?=%|kg|lb|mm|\u00d7)/g, "$1\u00a0").replace(/\u00d7 (?=\d)/g, "\u00d7\u00a0");
}

export function answer(parts: AnswerParts): HTMLElement {
  return el(
    "section",
    { class: `answer ${parts.tone ?? "plain"}`, "aria-live": "polite" },
    el("p", { class: "big", "data-answer": true }, unbroken(parts.big)),
    el("p", { class: "why", "data-why": true }, parts.why),
    parts.body,
    parts.cautions?.map((code) => caution(code)),
    (parts.working || parts.sources) &&
      el(
        "details",
        { class: "working" },
        el("summary", {}, "Working and sources"),
        parts.working,
        parts.sources && el("ul", { class: "sources" }, parts.sources.map((key) => el("li", {}, source(key)))),
      ),
  );
}

export function caution(code: string): HTMLElement {
  return el("p", { class: "caution" }, el("b", {}, "Note. "), ask("page.explain", { code }));
}

/** Where a number comes from, in one line. */
export function source(key: string): Child {
  const row = ask("page.source", { key });
  const parts = [row.place, row.population && `people: ${row.population}`, row.domain && `holds for: ${row.domain}`];
  return [
    el("b", {}, key.replace(/^.*\./, "").replaceAll("_", " ")),
    ` \u2014 ${row.citation}${row.doi ? `, doi ${row.doi}` : ""}. ${parts.filter(Boolean).join("; ")}. `,
    el("i", {}, `${row.standing}${row.seen ? `, ${row.seen}` : ""}.`),
  ];
}

export function table(head: string[], rows: Child[][], caption: string): HTMLElement {
  return el(
    "div",
    { class: "table", tabindex: 0, role: "region", "aria-label": caption },
    el(
      "table",
      {},
      el("caption", {}, caption),
      el("thead", {}, el("tr", {}, head.map((one) => el("th", { scope: "col" }, one)))),
      el("tbody", {}, rows.map((row) => el("tr", {}, row.map((one, at) => el(at === 0 ? "th" : "td", at === 0 ? { scope: "row" } : {}, one))))),
    ),
  );
}

export function list(items: Child[], kind = ""): HTMLElement | undefined {
  return items.length > 0 ? el("ul", { class: kind }, items.map((one) => el("li", {}, one))) : undefined;
}

export function refused(text: string): HTMLElement {
  return answer({ big: "No answer", why: text });
}
