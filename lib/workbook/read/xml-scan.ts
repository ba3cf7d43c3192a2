import { FileRefused } from "./file-refused.js";

/** What a part's reader wants to hear. Names come without their prefix: prefixes differ from writer to writer. */
export interface XmlListener {
  /** `attributes` is the raw text between name and bracket; see {@link xmlAttribute}. */
  open?(name: string, attributes: string): void;
  close?(name: string): void;
  text?(text: string): void;
}

const entities: ReadonlyMap<string, string> = new Map([
  ["lt", "<"],
  ["gt", ">"],
  ["amp", "&"],
  ["quot", '"'],
  ["apos", "'"],
]);

/** Replaces the five XML entities and character references; anything else stays as written. */
export function xmlText(raw: string): string {
  if (!raw.includes("&")) return raw;
  return raw.replace(/&(#x[0-9a-fA-F]{1,6}|#[0-9]{1,7}|[a-z]{2,4});/g, (whole, name: string) => {
    if (!name.startsWith("#")) return entities.get(name) ?? whole;
    const code = name.startsWith("#x") ? Number.parseInt(name.slice(2), 16) : Number.parseInt(name.slice(1), 10);
    return code > 0 && code <= 0x10ffff ? String.fromCodePoint(code) : "";
  });
}

/** Value of one attribute by its local name, or undefined. */
export function xmlAttribute(attributes: string, name: string): string | undefined {
  for (let from = 0; ; ) {
    const at = attributes.indexOf(`${name}=`, from);
    if (at < 0) return undefined;
    const before = at === 0 ? " " : attributes.charAt(at - 1);
    const quote = attributes.charAt(at + name.length + 1);
    const end = attributes.indexOf(quote, at + name.length + 2);
    if (/[\s:]/.test(before) && (quote === '"' || quote === "'") && end >= 0) {
      return xmlText(attributes.slice(at + name.length + 2, end));
    }
    from = at + name.length + 1;
  }
}

/** Where the tag that opens at `from` ends; quoted brackets do not end it. */
function tagEnd(xml: string, from: number): number {
  let end = xml.indexOf(">", from);
  for (let at = from; end >= 0; ) {
    const quote = xml.slice(at, end).match(/["']/);
    if (quote?.index === undefined) return end;
    const close = xml.indexOf(quote[0], at + quote.index + 1);
    if (close < 0) return -1;
    at = close + 1;
    if (at > end) end = xml.indexOf(">", at);
  }
  return end;
}

const localName = (name: string) => name.slice(name.indexOf(":") + 1);
const unfinished = () =>
  new FileRefused(
    "damaged",
    "The file is damaged (its XML is cut off). Open it in a spreadsheet program and save it again.",
  );

/**
 * Walks through one XML part once, from front to back, without building a tree.
 * A document type is refused: it is the door for entity bombs, and no spreadsheet writes one.
 * @throws {@link FileRefused}
 */
export function scanXml(xml: string, listener: XmlListener): void {
  let at = 0;
  while (at < xml.length) {
    const open = xml.indexOf("<", at);
    if (open < 0) break;
    if (open > at) listener.text?.(xmlText(xml.slice(at, open)));
    if (xml.startsWith("<![CDATA[", open)) {
      const end = xml.indexOf("]]>", open);
      if (end < 0) throw unfinished();
      listener.text?.(xml.slice(open + 9, end));
      at = end + 3;
    } else if (xml.startsWith("<!--", open)) {
      const end = xml.indexOf("-->", open);
      if (end < 0) throw unfinished();
      at = end + 3;
    } else if (xml.startsWith("<!", open)) {
      throw new FileRefused(
        "forbiddenXml",
        "The file declares a document type, which no spreadsheet writes. Save it again as .xlsx.",
      );
    } else {
      const end = tagEnd(xml, open);
      if (end < 0) throw unfinished();
      element(xml.slice(open + 1, end), listener);
      at = end + 1;
    }
  }
}

function element(tag: string, listener: XmlListener): void {
  if (tag.startsWith("?")) return;
  if (tag.startsWith("/")) {
    listener.close?.(localName(tag.slice(1).trim()));
    return;
  }
  const empty = tag.endsWith("/");
  const body = empty ? tag.slice(0, -1) : tag;
  const space = body.search(/\s/);
  const name = localName(space < 0 ? body : body.slice(0, space));
  listener.open?.(name, space < 0 ? "" : body.slice(space));
  if (empty) listener.close?.(name);
}
