/** What may stand in an element: elements, text, or nothing. Text is only ever set as text. */
export type Child = Node | string | number | null | undefined | false;
type Handler = (event: Event) => void;
/** Attributes by name, true = present without a value; a function listens to the event of that name. */
export type Attributes = Readonly<Record<string, string | number | boolean | null | undefined | Handler>>;

/** One element with its attributes and children. */
export function el<Name extends keyof HTMLElementTagNameMap>(
  name: Name,
  attributes: Attributes = {},
  ...children: readonly Child[]
): HTMLElementTagNameMap[Name] {
  const element = document.createElement(name);
  for (const [key, value] of Object.entries(attributes)) {
    if (typeof value === "function") element.addEventListener(key, value);
    else if (value === true) element.setAttribute(key, "");
    else if (value !== false && value !== null && value !== undefined) element.setAttribute(key, String(value));
  }
  element.append(...present(children));
  return element;
}

/** One element of a drawing. */
export function drawn(name: string, attributes: Readonly<Record<string, string | number>>, text?: string): SVGElement {
  const element = document.createElementNS("http://www.w3.org/2000/svg", name);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, String(value));
  if (text !== undefined) element.textContent = text;
  return element;
}

const present = (children: readonly Child[]): (Node | string)[] =>
  children.flatMap((child) =>
    child === null || child === undefined || child === false ? [] : [typeof child === "number" ? String(child) : child],
  );

/** A button. `keep` names it across re-drawing, so that the keyboard stays on it. */
export function button(
  given: {
    readonly words: Child;
    readonly keep: string;
    readonly click: () => void;
    readonly kind?: "main" | "plain" | "quiet";
    readonly disabled?: boolean;
    /** A longer name for those who hear it out of its surroundings; it begins with the words shown. */
    readonly label?: string;
  } & { readonly more?: Attributes },
): HTMLButtonElement {
  const { words, keep, click, kind = "plain", disabled = false, label, more = {} } = given;
  return el(
    "button",
    {
      type: "button",
      class: kind,
      "data-keep": keep,
      // Still reachable, so that nobody loses their place when a button has nothing to do for a while.
      "aria-disabled": disabled ? "true" : undefined,
      "aria-label": label,
      click: () => {
        if (!disabled) click();
      },
      ...more,
    },
    words,
  );
}

/** Help where a person would ask: closed until wanted. */
export function help(keep: string, question: string, ...answer: readonly Child[]): HTMLDetailsElement {
  return el(
    "details",
    { class: "help", "data-keep-open": keep },
    el("summary", { "data-keep": `help ${keep}` }, question),
    el("div", {}, ...answer.map((child) => (typeof child === "string" ? el("p", {}, child) : child))),
  );
}

/** A list of lines. */
export function list(lines: readonly Child[], attributes: Attributes = {}): HTMLUListElement {
  return el("ul", attributes, ...lines.map((line) => el("li", {}, line)));
}

/** A choice among values with its label. */
export function choice<Value extends string>(given: {
  readonly label: string;
  readonly keep: string;
  readonly value: Value;
  readonly values: readonly (readonly [value: Value, words: string])[];
  readonly change: (value: Value) => void;
  readonly hideLabel?: boolean;
}): HTMLElement {
  const { label, keep, value, values, change, hideLabel = false } = given;
  const select = el(
    "select",
    {
      "data-keep": keep,
      change: () => {
        const chosen = values.find(([one]) => one === select.value);
        if (chosen !== undefined) change(chosen[0]);
      },
    },
    ...values.map(([one, words]) => el("option", { value: one, selected: one === value }, words)),
  );
  return el("label", { class: "field" }, el("span", { class: hideLabel ? "unseen" : undefined }, label), select);
}
