import { strFromU8, unzipSync } from "fflate";
import { type Area, overlaps } from "../../report/addresses.js";
import { workbookOrder, worksheetOrder } from "../xml/worksheet-order.js";
import { type OpenTag, wellFormedProblem } from "./well-formed.js";

/** Something in a finished .xlsx file that a spreadsheet program would mend, refuse or lose. */
export interface FileProblem {
  /** Part of the package. */
  readonly part: string;
  readonly message: string;
}

interface ReadPart {
  readonly tags: readonly OpenTag[];
  readonly texts: readonly { readonly text: string; readonly element: string }[];
}

/**
 * Checks a finished workbook: every part well-formed and of a declared type, relationships that lead somewhere and are
 * used, children in the standard's order, cells in order with known styles and finite numbers, tables that agree with
 * their heading cells, merges and tables apart, shape numbers unique.
 */
export function checkFile(file: Uint8Array): readonly FileProblem[] {
  const zipped = unzipSync(file);
  const problems: FileProblem[] = [];
  const say = (part: string, message: string): unknown => problems.push({ part, message });
  if (Object.keys(zipped)[0] !== "[Content_Types].xml") say("", "the content types are not the first part");
  const parts = new Map<string, ReadPart>();
  for (const [name, bytes] of Object.entries(zipped)) {
    if (!/\.(xml|rels)$/.test(name)) continue;
    const tags: OpenTag[] = [];
    const texts: { text: string; element: string }[] = [];
    const problem = wellFormedProblem(strFromU8(bytes), {
      onTag: (tag) => tags.push(tag),
      onText: (text, element) => texts.push({ text, element }),
    });
    if (problem !== undefined) say(name, problem);
    parts.set(name, { tags, texts });
  }
  const names = new Set(Object.keys(zipped));
  checkTypes(parts, names, say);
  checkRelationships(parts, names, say);
  const strings = sharedStrings(parts.get("xl/sharedStrings.xml"));
  const styles = countIn(parts.get("xl/styles.xml"), "cellXfs", "xf");
  for (const [name, part] of parts) {
    if (/^xl\/worksheets\/[^/]+\.xml$/.test(name)) {
      checkOrder(name, part, worksheetOrder, say);
      checkCells(name, part, styles, say);
      checkTables({ name, part, parts, strings }, say);
    }
    if (name === "xl/workbook.xml") checkOrder(name, part, workbookOrder, say);
    if (/^xl\/drawings\/[^/]+\.xml$/.test(name)) checkShapes(name, part, say);
  }
  checkTableNames(parts, say);
  return problems;
}

type Say = (part: string, message: string) => unknown;

function checkTypes(parts: ReadonlyMap<string, ReadPart>, names: ReadonlySet<string>, say: Say): void {
  const part = "[Content_Types].xml";
  const tags = parts.get(part)?.tags ?? [];
  const ends = tags.filter((tag) => tag.name === "Default").map((tag) => tag.attributes.get("Extension") ?? "");
  const named = tags.filter((tag) => tag.name === "Override").map((tag) => tag.attributes.get("PartName") ?? "");
  if (new Set(ends).size !== ends.length) say(part, "a file ending is declared twice");
  if (new Set(named).size !== named.length) say(part, "a part is declared twice");
  for (const path of named) if (!names.has(path.slice(1))) say(part, `declares ${path}, which is missing`);
  for (const name of names) {
    if (name === part) continue;
    const ending = name.slice(name.lastIndexOf(".") + 1);
    if (!named.includes(`/${name}`) && (!ends.includes(ending) || ending === "xml")) say(name, "has no content type");
  }
}

/** The part a relationships file belongs to: "xl/_rels/workbook.xml.rels" belongs to "xl/workbook.xml". */
const ownerOf = (rels: string): string => rels.replace(/_rels\/([^/]*)\.rels$/, "$1");

/** A target's path in the package, from where its owner stands. */
function resolved(owner: string, target: string): string {
  if (target.startsWith("/")) return target.slice(1);
  const path = owner.split("/").slice(0, -1);
  for (const step of target.split("/")) {
    if (step === "..") path.pop();
    else if (step !== ".") path.push(step);
  }
  return path.join("/");
}

function checkRelationships(parts: ReadonlyMap<string, ReadPart>, names: ReadonlySet<string>, say: Say): void {
  const known = new Map<string, Set<string>>();
  for (const [name, { tags }] of parts) {
    if (!name.endsWith(".rels")) continue;
    const owner = ownerOf(name);
    if (owner !== "" && !names.has(owner)) say(name, `belongs to ${owner}, which is missing`);
    const ids = new Set<string>();
    for (const tag of tags.filter((each) => each.name === "Relationship")) {
      const id = tag.attributes.get("Id") ?? "";
      const target = tag.attributes.get("Target") ?? "";
      if (ids.has(id)) say(name, `has ${id} twice`);
      ids.add(id);
      if (tag.attributes.get("TargetMode") === "External") say(name, `leads outside the workbook: ${target}`);
      else if (!names.has(resolved(owner, target))) say(name, `${id} leads to ${target}, which is missing`);
    }
    known.set(owner, ids);
  }
  for (const [name, { tags }] of parts) {
    const used = new Set(
      tags.flatMap((tag) => ["r:id", "r:embed"].flatMap((attribute) => tag.attributes.get(attribute) ?? [])),
    );
    const ids = known.get(name) ?? new Set<string>();
    for (const id of used) if (!ids.has(id)) say(name, `uses ${id}, which leads nowhere`);
    if (!/^xl\/(worksheets|drawings)\//.test(name)) continue;
    for (const id of ids) if (!used.has(id)) say(name, `does not use its relationship ${id}`);
  }
}

function checkOrder(name: string, part: ReadPart, order: readonly string[], say: Say): void {
  let before = -1;
  const seen = new Set<string>();
  for (const tag of part.tags.filter((each) => each.depth === 1)) {
    const place = order.indexOf(tag.name);
    if (place < 0) say(name, `does not know the child ${tag.name}`);
    if (place < before) say(name, `${tag.name} comes too late`);
    if (seen.has(tag.name) && tag.name !== "conditionalFormatting") say(name, `${tag.name} comes twice`);
    seen.add(tag.name);
    before = Math.max(before, place);
  }
}

function checkCells(name: string, part: ReadPart, styles: number, say: Say): void {
  let lastRow = 0;
  let lastColumn = 0;
  for (const tag of part.tags) {
    if (tag.name === "row") {
      const row = Number(tag.attributes.get("r"));
      if (!(row > lastRow)) say(name, `row ${row} is out of order`);
      lastRow = row;
      lastColumn = 0;
    }
    if (tag.name !== "c") continue;
    const at = areaOf(tag.attributes.get("r") ?? "");
    if (at === undefined || at.top !== lastRow || at.left <= lastColumn) {
      say(name, `cell ${tag.attributes.get("r")} is out of order`);
      continue;
    }
    lastColumn = at.left;
    const style = Number(tag.attributes.get("s") ?? 0);
    if (!(style < styles)) say(name, `cell ${tag.attributes.get("r")} has the unknown style ${style}`);
  }
  for (const { text, element } of part.texts) {
    if (element === "v" && /^(NaN|-?Infinity|undefined|null)$/.test(text)) say(name, `a cell holds ${text}`);
    if (element === "f" && text.startsWith("=")) say(name, `a formula begins with "=": ${text.slice(0, 30)}`);
  }
}

interface SheetWithTables {
  readonly name: string;
  readonly part: ReadPart;
  readonly parts: ReadonlyMap<string, ReadPart>;
  readonly strings: readonly string[];
}

function checkTables({ name, part, parts, strings }: SheetWithTables, say: Say): void {
  const rels = parts.get(name.replace(/([^/]+)$/, "_rels/$1.rels"));
  const targets = (rels?.tags ?? [])
    .filter((tag) => tag.attributes.get("Type")?.endsWith("/table") === true)
    .map((tag) => resolved(name, tag.attributes.get("Target") ?? ""));
  const cells = cellTexts(part, strings);
  const merged = areasOf(part, "mergeCell", "ref");
  const areas: Area[] = [];
  for (const target of targets) {
    const tags = parts.get(target)?.tags ?? [];
    const area = areaOf(tags.find((tag) => tag.name === "table")?.attributes.get("ref") ?? "");
    const columns = tags.filter((tag) => tag.name === "tableColumn").map((tag) => tag.attributes.get("name") ?? "");
    if (area === undefined || area.right - area.left + 1 !== columns.length) {
      say(target, "has not as many columns as its area is wide");
      continue;
    }
    if (area.bottom === area.top) say(target, "has no data row");
    if (new Set(columns.map((each) => each.toLowerCase())).size !== columns.length) say(target, "has a column twice");
    columns.forEach((column, index) => {
      const shown = cells.get(`${area.top}:${area.left + index}`);
      if (shown !== column) say(target, `column "${column}" stands under the heading "${shown ?? ""}"`);
    });
    for (const merge of merged) if (overlaps(merge, area)) say(target, "has merged cells in it");
    for (const other of areas) if (overlaps(other, area)) say(target, "shares cells with another table");
    areas.push(area);
  }
  merged.forEach((one, index) => {
    if (merged.slice(index + 1).some((other) => overlaps(one, other))) say(name, "has merged areas that share cells");
  });
}

function checkTableNames(parts: ReadonlyMap<string, ReadPart>, say: Say): void {
  const seen = new Set<string>();
  const ids = new Set<string>();
  for (const [part, { tags }] of parts) {
    const table = tags.find((tag) => tag.name === "table" && tag.depth === 0);
    if (table === undefined) continue;
    const name = table.attributes.get("displayName")?.toLowerCase() ?? "";
    const id = table.attributes.get("id") ?? "";
    if (seen.has(name)) say(part, `the table name ${name} stands twice`);
    if (ids.has(id)) say(part, `the table number ${id} stands twice`);
    seen.add(name);
    ids.add(id);
  }
  for (const tag of parts.get("xl/workbook.xml")?.tags ?? []) {
    if (tag.name !== "definedName") continue;
    const name = `${tag.attributes.get("name")?.toLowerCase()} ${tag.attributes.get("localSheetId") ?? ""}`.trim();
    if (seen.has(name)) say("xl/workbook.xml", `the name ${name} stands twice`);
    seen.add(name);
  }
}

function checkShapes(name: string, part: ReadPart, say: Say): void {
  const ids = part.tags.filter((tag) => tag.name === "xdr:cNvPr").map((tag) => tag.attributes.get("id"));
  if (new Set(ids).size !== ids.length) say(name, "two shapes have the same number");
  const silent = part.tags.filter((tag) => tag.name === "xdr:cNvPr" && (tag.attributes.get("descr") ?? "") === "");
  if (silent.length > 0) say(name, "a shape has no words for a reader who cannot see it");
  if (part.tags.some((tag) => tag.name === "xdr:oneCellAnchor" && tag.attributes.has("editAs"))) {
    say(name, "a one-cell anchor has the attribute editAs");
  }
}

function sharedStrings(part: ReadPart | undefined): readonly string[] {
  return (part?.texts ?? []).filter(({ element }) => element === "t").map(({ text }) => text);
}

function countIn(part: ReadPart | undefined, parent: string, child: string): number {
  let inside = false;
  let count = 0;
  for (const tag of part?.tags ?? []) {
    if (tag.depth === 1) inside = tag.name === parent;
    if (inside && tag.depth === 2 && tag.name === child) count += 1;
  }
  return count;
}

/** Texts of cells that hold a shared string, by "row:column". */
function cellTexts(part: ReadPart, strings: readonly string[]): ReadonlyMap<string, string> {
  const values = part.texts.filter(({ element }) => element === "v");
  const found = new Map<string, string>();
  let next = 0;
  let cell: OpenTag | undefined;
  for (const tag of part.tags) {
    if (tag.name === "c") cell = tag;
    if (tag.name !== "v") continue;
    const value = values[next]?.text ?? "";
    next += 1;
    const at = areaOf(cell?.attributes.get("r") ?? "");
    if (at !== undefined && cell?.attributes.get("t") === "s")
      found.set(`${at.top}:${at.left}`, strings[Number(value)] ?? "");
  }
  return found;
}

const areasOf = (part: ReadPart, element: string, attribute: string): readonly Area[] =>
  part.tags.filter((tag) => tag.name === element).flatMap((tag) => areaOf(tag.attributes.get(attribute) ?? "") ?? []);

function areaOf(text: string): Area | undefined {
  const found = /^([A-Z]{1,3})(\d+)(?::([A-Z]{1,3})(\d+))?$/.exec(text);
  if (found === null) return undefined;
  const column = (letters: string): number => [...letters].reduce((sum, each) => sum * 26 + each.charCodeAt(0) - 64, 0);
  const [left, top] = [column(found[1] ?? ""), Number(found[2])];
  return { top, left, bottom: Number(found[4] ?? top), right: found[3] === undefined ? left : column(found[3]) };
}
