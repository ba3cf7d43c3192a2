/** A formula of the documentation and what it should give. */
export interface ExampleFormula {
  readonly formula: string;
  readonly id: string;
  readonly args: readonly unknown[];
  /** Cells of the first row, as printed. */
  readonly printed: readonly string[];
}

/** Text in quotes, a number, a word, an empty argument; `{…}` is an array with `,` between cells and `;` between rows. */
function argument(text: string): unknown {
  const typed = text.trim();
  if (typed === "") return null;
  if (typed.startsWith("{")) {
    return parts(typed.slice(1, -1), ";").map((row) => parts(row, ",").map(argument));
  }
  if (typed === "TRUE" || typed === "FALSE") return typed === "TRUE";
  return JSON.parse(typed) as unknown;
}

/** Splits at a mark that stands neither in quotes nor in braces. */
function parts(text: string, mark: string): readonly string[] {
  const found: string[] = [""];
  let quoted = false;
  let depth = 0;
  for (const letter of text) {
    if (letter === '"') quoted = !quoted;
    if (!quoted && letter === "{") depth += 1;
    if (!quoted && letter === "}") depth -= 1;
    if (letter === mark && !quoted && depth === 0) found.push("");
    else found[found.length - 1] += letter;
  }
  return found;
}

/** The examples of the reference page: a formula and, below it, its result. */
export function exampleFormulas(page: string): readonly ExampleFormula[] {
  return [...page.matchAll(/^(=LOOPW\.([A-Z_]+)\((.*)\))\n→ (.*)$/gm)].map(([, formula, id, inside, result]) => ({
    formula: formula ?? "",
    id: id ?? "",
    args: parts(inside ?? "", ",").map(argument),
    printed: (result ?? "").split(" | "),
  }));
}

/** Whether a cell is what was printed: to the digits printed, within "a to b", or letter by letter with `*` for any text. */
export function isAsPrinted(cell: unknown, printed: string): boolean {
  const range = /^(-?[\d.]+) to (-?[\d.]+)$/.exec(printed);
  if (range !== null) return typeof cell === "number" && cell >= Number(range[1]) && cell <= Number(range[2]);
  if (/^-?[\d.]+$/.test(printed)) {
    const decimals = printed.split(".")[1]?.length ?? 0;
    return typeof cell === "number" && Math.abs(cell - Number(printed)) <= 0.5 * 10 ** -decimals + 1e-12;
  }
  const text = printed.replace(/^"|"$/g, "");
  const pattern = text
    .split("*")
    .map((part) => part.replace(/[.*+?^${}()|[\]\\]/g, "\\$&"))
    .join(".*");
  return typeof cell === "string" && new RegExp(`^${pattern}$`, "s").test(cell);
}
