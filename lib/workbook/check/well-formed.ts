/** Attributes of one opening tag, and how it is called. */
export interface OpenTag {
  readonly name: string;
  readonly attributes: ReadonlyMap<string, string>;
  /** How many elements it stands in. */
  readonly depth: number;
}

const nameMarks = /^[A-Za-z_][\w.-]*(?::[A-Za-z_][\w.-]*)?$/;
const attribute = /^\s+([^\s=>/"']+)\s*=\s*("([^"<]*)"|'([^'<]*)')/;

/**
 * Reads a part from end to end and tells what keeps it from being well-formed XML, or undefined. `onTag` hears of every
 * opening tag, `onText` of text (also none at all) right after a tag, with the element it stands in. Document types and CDATA are refused: no part
 * of a workbook we write has them.
 */
export function wellFormedProblem(
  xml: string,
  listen: { readonly onTag?: (tag: OpenTag) => void; readonly onText?: (text: string, element: string) => void } = {},
): string | undefined {
  const open: string[] = [];
  let roots = 0;
  let opened = false;
  let at = xml.startsWith("\ufeff") ? 1 : 0;
  if (xml.startsWith("<?xml", at)) at = xml.indexOf("?>", at) + 2;
  while (at < xml.length) {
    const next = xml.indexOf("<", at);
    const text = xml.slice(at, next < 0 ? xml.length : next);
    const inside = open.at(-1);
    if (inside === undefined && text.trim() !== "") return `text outside the root: ${text.trim().slice(0, 20)}`;
    const problem = textProblem(text);
    if (problem !== undefined) return problem;
    if (inside !== undefined && (text !== "" || opened)) listen.onText?.(unescapeXml(text), inside);
    if (next < 0) break;
    const end = xml.indexOf(">", next);
    if (end < 0) return "a tag is not closed";
    const tag = xml.slice(next + 1, end);
    opened = !tag.startsWith("/") && !tag.endsWith("/");
    if (tag.startsWith("/")) {
      const expected = open.pop();
      if (tag.slice(1).trim() !== expected) return `</${tag.slice(1)}> closes <${expected ?? "nothing"}>`;
    } else {
      const read = readTag(tag, open.length);
      if (typeof read === "string") return read;
      if (open.length === 0) roots += 1;
      listen.onTag?.(read);
      if (!tag.endsWith("/")) open.push(read.name);
    }
    at = end + 1;
  }
  if (open.length > 0) return `<${open.at(-1)}> is not closed`;
  return roots === 1 ? undefined : `${roots} root elements`;
}

function readTag(tag: string, depth: number): OpenTag | string {
  const body = tag.endsWith("/") ? tag.slice(0, -1) : tag;
  const name = /^\S+/.exec(body)?.[0] ?? "";
  if (!nameMarks.test(name)) return `"${name}" is no element name`;
  const attributes = new Map<string, string>();
  let rest = body.slice(name.length);
  while (rest.trim() !== "") {
    const found = attribute.exec(rest);
    const key = found?.[1];
    if (found === null || key === undefined) return `attributes of <${name}>: ${rest.trim().slice(0, 30)}`;
    const value = found[3] ?? found[4] ?? "";
    const problem = textProblem(value);
    if (problem !== undefined) return problem;
    if (attributes.has(key)) return `<${name}> has the attribute ${key} twice`;
    attributes.set(key, unescapeXml(value));
    rest = rest.slice(found[0].length);
  }
  return { name, attributes, depth };
}

function textProblem(text: string): string | undefined {
  const stray = /&(?!(?:amp|lt|gt|quot|apos|#\d+|#x[0-9A-Fa-f]+);)/.exec(text);
  if (stray !== null) return `stray & before "${text.slice(stray.index + 1, stray.index + 12)}"`;
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for
  return /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/.test(text)
    ? "a character XML does not allow"
    : undefined;
}

const entities: Readonly<Record<string, string>> = { amp: "&", lt: "<", gt: ">", quot: '"', apos: "'" };

function unescapeXml(text: string): string {
  return text.replace(/&(#x?)?([0-9A-Za-z]+);/g, (whole, hash: string | undefined, body: string) =>
    hash === undefined
      ? (entities[body] ?? whole)
      : String.fromCodePoint(Number.parseInt(body, hash === "#x" ? 16 : 10)),
  );
}
