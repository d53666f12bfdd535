// A box in which something is entered goes once that is written down or knowingly left. Escape, the way back of a telephone and what
// another window writes close it only while nothing is entered; else it stays, and asks.
import { button, el } from "./element.ts";
import { leaveBox } from "./leave.ts";

/** What a box holds that is not written down yet. */
export interface Holds {
  /** What of it stops something, in words: that is not left by a tap on Cancel alone. */
  stops?: () => string[];
  /** How it is written down as it is; nothing while something is missing. */
  write?: () => (() => Promise<boolean>) | undefined;
}

/** How a box is closed by what it offers itself. */
export interface Entry {
  /** It is written down, or nothing of it is to be kept. */
  close: () => void;
  /** Cancel: asks where what is entered stops something. */
  cancel: () => void;
}

/** What the page may do with a box that it did not open. */
interface Open {
  close: () => void;
  tell: (words: string[]) => void;
  entered: () => boolean;
}
const OPEN = new Map<HTMLDialogElement, Open>();

/** Shows a box for entering something; `begun` where the tap that opened it said something already. */
export function showEntry(box: HTMLDialogElement, { stops = () => [], write = () => undefined }: Holds = {}, begun = false): Entry {
  let entered = begun;
  let over = false;
  let happened: HTMLElement | undefined;
  const close = (): void => {
    over = true;
    if (box.open) box.close();
    OPEN.delete(box);
    box.remove();
  };
  let question: HTMLDialogElement | undefined;
  const ask = (): void => {
    if (question?.open) return;
    const said = stops();
    const text = said.length > 0 ? `${said.join("; ")}: that is a stop, and it is not in the log yet. It counts only once it is written down.` : "It is not written down yet.";
    const written = write();
    question = leaveBox({ title: said.length > 0 ? "Leave it unwritten?" : "Leave what is entered?", text, ...(written ? { write: written } : {}), leave: said.length > 0 ? "It was not so: leave it" : "Leave it" }, () => void written?.().then((done) => done && close()), close);
  };
  const cancel = (): void => (stops().length > 0 ? ask() : close());
  /** What happened stands above what is entered, which is not gone on with before it was seen. */
  const hold = (): void => {
    if (happened && happened.parentElement !== box) box.prepend(happened);
    for (const child of box.children) (child as HTMLElement).inert = happened !== undefined && child !== happened;
  };
  const tell = (words: string[]): void => {
    happened?.remove();
    happened = el(
      "div",
      { class: "asking", role: "alert", "data-happened": true },
      words.map((one) => el("p", {}, el("b", {}, one))),
      el("p", {}, "Another window wrote that. What is entered here is still here, and not written down."),
      el("div", { class: "row" }, button("Leave it", () => (stops().length > 0 ? ask() : close()), { "data-act": "leave-entered" }), button("Seen: go on here", seen, { class: "main", "data-act": "seen" })),
    );
    hold();
    // What is shown of the log is another by now.
    box.dispatchEvent(new CustomEvent("told"));
    happened.scrollIntoView({ block: "nearest" });
  };
  const seen = (): void => {
    happened?.remove();
    happened = undefined;
    hold();
  };
  const mark = (event: Event): void => {
    const { target } = event;
    const tapped = target instanceof Element ? target.closest("button") : null;
    if (event.type === "input" || (tapped && !tapped.matches(".quiet, [data-happened] *"))) entered = true;
  };
  // Before whatever the tap does.
  for (const name of ["input", "click"]) box.addEventListener(name, mark, true);
  box.addEventListener("cancel", (event) => {
    // Some browsers close a box whatever it says, where nothing was tapped since it was asked last.
    if (!entered || !event.cancelable) return;
    event.preventDefault();
    ask();
  });
  box.addEventListener("close", () => {
    if (over || !entered) return close();
    box.showModal();
    ask();
  });
  new MutationObserver(hold).observe(box, { childList: true });
  OPEN.set(box, { close, tell, entered: () => entered });
  document.body.append(box);
  box.showModal();
  return { close, cancel };
}

/** Whether anything is entered in a box that is open. */
export function somethingEntered(): boolean {
  return [...OPEN.values()].some((one) => one.entered());
}

/** Closes a box for what another window wrote; one in which something is entered stays, with the words above it. Without words
 * nothing of it may stay. */
export function closeFor(box: HTMLDialogElement, words: string[]): void {
  const own = OPEN.get(box);
  if (own?.entered() && words.length > 0) own.tell(words);
  else if (own) own.close();
  else box.close();
}
