import type { FileToSave } from "../engine/engine-state.js";
import { el } from "./elements.js";

/** How long a browser may take to begin with a download. [ms] */
const keepMilliseconds = 60_000;

/** Hands a file to the reader's downloads. */
export function saveFile({ name, type, bytes }: FileToSave): void {
  const url = URL.createObjectURL(new Blob([bytes], { type }));
  const link = el("a", { href: url, download: name, hidden: true });
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(url), keepMilliseconds);
}
