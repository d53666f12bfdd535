// Asked before something entered is left.
import { button, el, showBox } from "./element.ts";

/** What was entered and not written down: what it is, how it is written, and what leaving it means. */
export interface Unsaid {
  title: string;
  text: string;
  /** Whether it was written; nothing where it cannot be. */
  write?: () => Promise<boolean>;
  leave: string;
}

/** Asked before something entered is left. */
export function leaveBox({ title, text, write, leave }: Unsaid, yes: () => void, no: () => void): HTMLDialogElement {
  const box = el("dialog", { class: "pad wide", "aria-label": title });
  const then = (act: () => void) => (): void => {
    box.close();
    act();
  };
  box.append(
    el("h2", {}, title),
    el("p", {}, text),
    el(
      "div",
      { class: "stack" },
      write && button("Write it down", then(yes), { class: "main", "data-act": "leave-write" }),
      button(leave, then(no), { "data-act": "leave-so" }),
      button("Stay here", () => box.close(), { class: "quiet", "data-act": "leave-not" }),
    ),
  );
  showBox(box);
  return box;
}
