// A number pad: big keys, comma or point, the device's own keyboard as well.
import { showEntry } from "./boxes.ts";
import { button, el, showBox } from "./element.ts";
import { read } from "./numbers.ts";

/** A button that shows a number and opens the pad. */
export function numberField(label: string, shown: string, unit: string, take: (value: number, unit: string) => void, asked = unit): HTMLElement {
  return el(
    "div",
    { class: "field" },
    el("span", { class: "label", "aria-hidden": "true" }, label),
    button([el("b", {}, shown), unit ? ` ${unit}` : ""], () => openPad(label, asked, take), {
      class: "number",
      "aria-label": `${label}: ${shown} ${unit}. Change`,
      "data-pad": label,
    }),
  );
}

/** The number goes with the unit that the pad names, whatever the page shows by then: another window may change that. */
export function openPad(label: string, unit: string, take: (value: number, unit: string) => void): void {
  const field = el("input", {
    type: "text",
    inputmode: "none",
    autocomplete: "off",
    "aria-label": unit ? `${label} in ${unit}` : label,
    class: "pad-field",
  });
  const wrong = el("p", { class: "wrong", role: "alert" });
  const box = el("dialog", { class: "pad", "aria-label": label, "data-opens": true });
  const done = (): void => {
    const value = read(field.value);
    if (value === undefined) {
      wrong.textContent = "A number, please, such as 62.5 or 62,5.";
      field.focus();
      return;
    }
    entry.close();
    take(value, unit);
  };
  const type = (text: string): void => {
    if (field.value.length < 9) field.value += text;
    wrong.textContent = "";
  };
  const keys = ["7", "8", "9", "4", "5", "6", "1", "2", "3", ".", "0"].map((key) =>
    button(key, () => type(key), { class: "key", "data-key": key }),
  );
  keys.push(
    button("\u232b", () => (field.value = field.value.slice(0, -1)), { class: "key", "aria-label": "Delete last digit" }),
  );
  box.append(
    el("p", { class: "pad-title" }, label, unit ? ` (${unit})` : ""),
    field,
    wrong,
    el("div", { class: "keys" }, keys),
    el(
      "div",
      { class: "row" },
      button("Cancel", () => entry.cancel(), { class: "quiet" }),
      button("OK", done, { class: "main", "data-key": "ok" }),
    ),
  );
  field.addEventListener("keydown", (event) => {
    if ((event as KeyboardEvent).key === "Enter") {
      event.preventDefault();
      done();
    }
  });
  const entry = showEntry(box);
  field.focus();
}

/** A question that must be answered before something that cannot be taken back. */
export function confirmBox(title: string, text: string | string[], yes: string, act: () => void): void {
  const box = el("dialog", { class: "pad wide", "aria-label": title, "data-opens": true });
  box.append(
    el("h2", {}, title),
    ...[text].flat().map((one) => el("p", {}, one)),
    el(
      "div",
      { class: "row" },
      button("Cancel", () => box.close(), { class: "quiet" }),
      button(
        yes,
        () => {
          box.close();
          act();
        },
        { class: "main", "data-yes": true },
      ),
    ),
  );
  showBox(box);
}
