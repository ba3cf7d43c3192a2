/** One child of an XML document's root element. */
export interface TopLevelChild {
  readonly name: string;
  readonly xml: string;
}

/** An XML document cut at the children of its root. */
export interface TopLevel {
  /** Declaration and opening tag of the root. */
  readonly head: string;
  readonly rootName: string;
  readonly children: readonly TopLevelChild[];
}

/**
 * Cuts a document that we wrote ourselves at its root's children, without reading what is inside them. The document
 * must have no comments, and no child may hold another of its own name.
 */
export function topLevel(xml: string): TopLevel {
  const open = /<([A-Za-z][\w:.-]*)[^>]*>/.exec(xml);
  if (open === null) throw new Error("the part has no root element");
  const rootName = open[1] ?? "";
  const head = xml.slice(0, open.index + open[0].length);
  if (head.endsWith("/>")) return { head: `${head.slice(0, -2)}>`, rootName, children: [] };
  const end = xml.lastIndexOf(`</${rootName}>`);
  const children: TopLevelChild[] = [];
  let at = head.length;
  while (at < end) {
    const start = xml.indexOf("<", at);
    if (start < 0 || start >= end) break;
    const close = endOfElement(xml, start);
    children.push({ name: /^<([\w:.-]+)/.exec(xml.slice(start, start + 80))?.[1] ?? "", xml: xml.slice(start, close) });
    at = close;
  }
  return { head, rootName, children };
}

function endOfElement(xml: string, start: number): number {
  const name = /^<([\w:.-]+)/.exec(xml.slice(start, start + 80))?.[1] ?? "";
  const tagEnd = xml.indexOf(">", start);
  if (xml.charAt(tagEnd - 1) === "/") return tagEnd + 1;
  const closing = `</${name}>`;
  const close = xml.indexOf(closing, tagEnd);
  if (close < 0) throw new Error(`the element ${name} is not closed`);
  return close + closing.length;
}

/** The document of its parts again. */
export const joinTopLevel = ({ head, rootName, children }: TopLevel): string =>
  `${head}${children.map((child) => child.xml).join("")}</${rootName}>`;
