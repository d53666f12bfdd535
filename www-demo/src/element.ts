// Elements without a framework: tag, attributes, children.

export type Child = Node | string | number | null | undefined | false | Child[];

type Handler = (event: Event) => void;
export type Attributes = Record<string, string | number | boolean | undefined | null | Handler>;

function place(parent: Node, child: Child): void {
  if (child === null || child === undefined || child === false) return;
  if (Array.isArray(child)) {
    for (const one of child) place(parent, one);
  } else {
    parent.appendChild(child instanceof Node ? child : document.createTextNode(String(child)));
  }
}

function dress(node: Element, attributes: Attributes): void {
  for (const [name, value] of Object.entries(attributes)) {
    if (value === undefined || value === null || value === false) continue;
    if (typeof value === "function") node.addEventListener(name, value as EventListener);
    else node.setAttribute(name, value === true ? "" : String(value));
  }
}

/** A number and its unit, with how often there is of it. */
const WHOLE = /((?:\d+ \u00d7 )?\d\S* (?:kg|lb|mm|%)(?![\w]))/;

/** Text of a paragraph: no line ends between a number and its unit. */
function wholes(child: Child): Child {
  if (typeof child !== "string" || !WHOLE.test(child)) return child;
  // What is split by one group has that group at every other place.
  return child.split(WHOLE).map((part, at) => (at % 2 === 1 ? el("span", { class: "as-one" }, part) : part));
}

/** An HTML element. Text never passes through a parser, so that names cannot carry script. */
export function el<K extends keyof HTMLElementTagNameMap>(
  tag: K,
  attributes: Attributes = {},
  ...children: Child[]
): HTMLElementTagNameMap[K] {
  const node = document.createElement(tag);
  dress(node, attributes);
  place(node, tag === "p" || tag === "figcaption" ? children.map(wholes) : children);
  return node;
}

/** An SVG element. */
export function svg(tag: string, attributes: Attributes = {}, ...children: Child[]): SVGElement {
  const node = document.createElementNS("http://www.w3.org/2000/svg", tag);
  dress(node, attributes);
  place(node, children);
  return node;
}

export function button(label: Child, act: () => void, attributes: Attributes = {}): HTMLButtonElement {
  return el("button", { type: "button", ...attributes, click: act }, label);
}

export function fill(node: Element, ...children: Child[]): void {
  node.replaceChildren();
  place(node, children);
}

/** Puts a box above everything; closed, it is gone. */
export function showBox(box: HTMLDialogElement): void {
  box.addEventListener("close", () => box.remove());
  document.body.append(box);
  box.showModal();
}

/** Milliseconds that let the answer be painted first. */
const AFTER_PAINT = 50;

/** What may come a moment after the answer: made once the view is on screen. */
export function later(make: () => Child): HTMLElement {
  const place = el("div", { "data-soon": true });
  const show = (): void => {
    if (!place.isConnected) return;
    fill(place, make());
    place.removeAttribute("data-soon");
  };
  requestAnimationFrame(() => setTimeout(show, AFTER_PAINT));
  return place;
}

/** A row of choices of which one is taken. */
export function choices<T extends string | number>(
  label: string,
  options: { value: T; label: string }[],
  now: T | undefined,
  pick: (value: T) => void,
): HTMLElement {
  const scale = options.length > 8 && options.every((one) => one.label.length < 3);
  const row = el("div", { class: scale ? "choices scale" : "choices", role: "group", "aria-label": label });
  for (const option of options) {
    row.append(
      button(option.label, () => pick(option.value), {
        class: "choice",
        "aria-pressed": option.value === now ? "true" : "false",
        "data-value": String(option.value),
      }),
    );
  }
  return el("div", { class: scale ? "field whole" : "field" }, el("span", { class: "label" }, label), row);
}
