/** Where the reader is: what has the keyboard, what is marked in it, which closed parts were opened. */
interface Place {
  readonly keep: string | null;
  readonly selection: readonly [start: number, end: number] | null;
}

/** Draws anew and leaves the reader where they were. */
export function keepingPlace(root: HTMLElement, draw: () => void): void {
  const place = placeIn(root);
  const toggled = new Map(
    [...root.querySelectorAll("details[data-keep-open]")].map((one) => [nameOf(one), isOpen(one)]),
  );
  draw();
  for (const one of root.querySelectorAll("details[data-keep-open]")) {
    const open = toggled.get(nameOf(one));
    if (open !== undefined && one instanceof HTMLDetailsElement) one.open = open;
  }
  backTo(root, place);
}

const nameOf = (one: Element): string => one.getAttribute("data-keep-open") ?? "";
const isOpen = (one: Element): boolean => one instanceof HTMLDetailsElement && one.open;

function placeIn(root: HTMLElement): Place {
  const active = document.activeElement;
  if (!(active instanceof HTMLElement) || !root.contains(active)) return { keep: null, selection: null };
  const typing = active instanceof HTMLInputElement && (active.type === "text" || active.type === "search");
  return {
    keep: active.getAttribute("data-keep"),
    selection: typing ? [active.selectionStart ?? 0, active.selectionEnd ?? 0] : null,
  };
}

function backTo(root: HTMLElement, { keep, selection }: Place): void {
  if (keep === null) return;
  const found = root.querySelector(`[data-keep="${CSS.escape(keep)}"]`);
  if (!(found instanceof HTMLElement) || found === document.activeElement) return;
  found.focus({ preventScroll: true });
  if (selection !== null && found instanceof HTMLInputElement) found.setSelectionRange(...selection);
}
