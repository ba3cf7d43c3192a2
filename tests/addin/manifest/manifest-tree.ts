import { wellFormedProblem } from "../../../lib/workbook/check/well-formed.js";

/** One element of the manifest; names without their prefix. */
export interface Element {
  readonly name: string;
  readonly attributes: ReadonlyMap<string, string>;
  readonly children: Element[];
  text: string;
}

const localName = (name: string): string => name.slice(name.indexOf(":") + 1);

/** The manifest as a tree, or what keeps it from being well-formed. */
export function manifestTree(xml: string): Element | string {
  const top: Element = { name: "", attributes: new Map(), children: [], text: "" };
  const path: Element[] = [top];
  let last = top;
  const problem = wellFormedProblem(xml, {
    onTag: ({ name, attributes, depth }) => {
      path.length = depth + 1;
      last = { name: localName(name), attributes, children: [], text: "" };
      path[depth]?.children.push(last);
      path.push(last);
    },
    onText: (text, element) => {
      if (last.children.length === 0 && localName(element) === last.name && last.text === "") last.text = text.trim();
    },
  });
  if (problem !== undefined) return problem;
  return top.children[0] ?? "no element at all";
}

/** Every element below one, itself included. */
export function everyElement(element: Element): readonly Element[] {
  return [element, ...element.children.flatMap(everyElement)];
}

/** Elements reached by these names one below the other, or all descendants of the last name with "**" in front. */
export function elementsAt(element: Element, ...names: readonly string[]): readonly Element[] {
  return names.reduce<readonly Element[]>(
    (found, name) => found.flatMap(({ children }) => children.filter((child) => child.name === name)),
    [element],
  );
}

/** Type by which elements of one name differ. */
export const typeOf = ({ attributes }: Element): string => attributes.get("xsi:type") ?? "";
