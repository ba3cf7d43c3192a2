import { strFromU8, strToU8, unzipSync, type Zippable, zipSync } from "fflate";
import { areaAddress, cellAddress, quotedSheet } from "../../report/addresses.js";
import type { PictureBlock } from "../../report/model.js";
import type { PlannedSheet, PrintablePlan } from "../../report/printable-plan.js";
import { cellFont } from "../write/styles.js";
import { escapeXml } from "../xml/escape.js";
import { relationshipsOfDocument } from "../xml/namespaces.js";
import { joinTopLevel, type TopLevelChild, topLevel } from "../xml/top-level.js";
import { workbookOrder, worksheetOrder } from "../xml/worksheet-order.js";
import { chartPart } from "./chart-part.js";
import { definedNames } from "./defined-names.js";
import { drawingPart, type Hung } from "./drawing-part.js";
import { Relationships } from "./relationships.js";
import { tablePart } from "./table-part.js";

/** Draws a picture's SVG as a PNG file, about twice as fine as its size on the sheet. */
export type RenderPicture = (picture: PictureBlock) => Uint8Array | Promise<Uint8Array>;

/**
 * Mends what exceljs wrote and adds what it cannot write: tables with column formulas, links inside the workbook, names,
 * pictures with words, live charts; then sets children in the standard's order and zips with fixed times.
 */
export async function finishWorkbook({
  written,
  plan,
  renderPicture,
}: {
  readonly written: Uint8Array;
  readonly plan: PrintablePlan;
  readonly renderPicture: RenderPicture;
}): Promise<Uint8Array> {
  const parts = new Map(Object.entries(unzipSync(written)).filter(([name]) => !name.endsWith("/")));
  const adding = new Adding(parts, plan.currency);
  plan.sheets.forEach((sheet, index) => {
    adding.finishSheet(sheet, index + 1);
  });
  await adding.drawImages(renderPicture);
  editPart(
    parts,
    "xl/workbook.xml",
    (children) => [
      ...children.filter((child) => child.name !== "definedNames"),
      { name: "definedNames", xml: definedNames(plan) },
    ],
    workbookOrder,
  );
  setNormalFont(parts);
  editPart(parts, "[Content_Types].xml", (children) => [...children, ...adding.contentTypes()]);
  return zipParts(parts);
}

/** New parts of the package, numbered through the whole workbook. */
class Adding {
  private tables = 0;
  private drawings = 0;
  private charts = 0;
  private readonly images = new Map<string, { readonly name: string; readonly picture: PictureBlock }>();
  private readonly types: TopLevelChild[] = [];
  private readonly parts: Map<string, Uint8Array>;
  private readonly currency: string;

  constructor(parts: Map<string, Uint8Array>, currency: string) {
    this.parts = parts;
    this.currency = currency;
  }

  finishSheet(sheet: PlannedSheet, number: number): void {
    const relationships = new Relationships();
    const added: TopLevelChild[] = [];
    if (sheet.merges.length > 0) added.push({ name: "mergeCells", xml: mergeCells(sheet) });
    if (sheet.links.length > 0) added.push({ name: "hyperlinks", xml: hyperlinks(sheet) });
    const drawing = this.addDrawing(sheet);
    if (drawing !== undefined) {
      const id = relationships.add("drawing", `../drawings/${drawing}`);
      added.push({ name: "drawing", xml: `<drawing xmlns:r="${relationshipsOfDocument}" r:id="${id}"/>` });
    }
    if (sheet.tables.length > 0) {
      const ids = sheet.tables.map((table) => {
        this.tables += 1;
        this.addPart(
          `xl/tables/table${this.tables}.xml`,
          tablePart(table, this.tables),
          `${spreadsheetType}.table+xml`,
        );
        return relationships.add("table", `../tables/table${this.tables}.xml`);
      });
      const list = ids.map((id) => `<tablePart xmlns:r="${relationshipsOfDocument}" r:id="${id}"/>`).join("");
      added.push({ name: "tableParts", xml: `<tableParts count="${ids.length}">${list}</tableParts>` });
    }
    const replaced = new Set(["mergeCells", "hyperlinks", "drawing", "tableParts"]);
    editPart(
      this.parts,
      `xl/worksheets/sheet${number}.xml`,
      (children) => [...children.filter((child) => !replaced.has(child.name)), ...added],
      worksheetOrder,
    );
    if (relationships.isEmpty) return;
    this.parts.set(`xl/worksheets/_rels/sheet${number}.xml.rels`, strToU8(relationships.toXml()));
  }

  /** Writes the sheet's drawing part and gives its file name; undefined when nothing is drawn. */
  private addDrawing(sheet: PlannedSheet): string | undefined {
    const relationships = new Relationships();
    const pictures = sheet.pictures.map(({ area, picture }): Hung => {
      const target = `../media/${this.image(picture)}`;
      return { ...picture, area, kind: "picture", relationship: relationships.add("image", target) };
    });
    const charts = sheet.charts.map((chart): Hung => {
      this.charts += 1;
      const type = "application/vnd.openxmlformats-officedocument.drawingml.chart+xml";
      this.addPart(`xl/charts/chart${this.charts}.xml`, chartPart(chart, this.currency), type);
      const target = `../charts/chart${this.charts}.xml`;
      return { ...chart, kind: "chart", relationship: relationships.add("chart", target) };
    });
    if (pictures.length + charts.length === 0) return undefined;
    this.drawings += 1;
    const name = `drawing${this.drawings}.xml`;
    const type = "application/vnd.openxmlformats-officedocument.drawing+xml";
    this.addPart(`xl/drawings/${name}`, drawingPart([...pictures, ...charts]), type);
    this.parts.set(`xl/drawings/_rels/${name}.rels`, strToU8(relationships.toXml()));
    return name;
  }

  /** The same drawing is stored once, however often it is shown. */
  private image(picture: PictureBlock): string {
    const key = `${picture.widthPixels}\n${picture.svg}`;
    const before = this.images.get(key);
    if (before !== undefined) return before.name;
    const name = `image${this.images.size + 1}.png`;
    this.images.set(key, { name, picture });
    return name;
  }

  async drawImages(renderPicture: RenderPicture): Promise<void> {
    for (const { name, picture } of this.images.values()) {
      this.parts.set(`xl/media/${name}`, await renderPicture(picture));
    }
  }

  private addPart(path: string, xml: string, type: string): void {
    this.parts.set(path, strToU8(xml));
    this.types.push({ name: "Override", xml: `<Override PartName="/${path}" ContentType="${type}"/>` });
  }

  contentTypes(): readonly TopLevelChild[] {
    const png = { name: "Default", xml: '<Default Extension="png" ContentType="image/png"/>' };
    return this.images.size === 0 ? this.types : [png, ...this.types];
  }
}

/**
 * The first font is that of the normal style, by whose digits programs count column widths: made the font of our cells,
 * so that columns are as wide as planned wherever exceljs's own default is missing.
 */
function setNormalFont(parts: Map<string, Uint8Array>): void {
  const path = "xl/styles.xml";
  const bytes = parts.get(path);
  if (bytes === undefined) return;
  const font = `<font><sz val="10"/><color rgb="FF000000"/><name val="${cellFont}"/><family val="2"/></font>`;
  parts.set(path, strToU8(strFromU8(bytes).replace(/<font>.*?<\/font>/s, font)));
}

const spreadsheetType = "application/vnd.openxmlformats-officedocument.spreadsheetml";

function mergeCells({ merges }: PlannedSheet): string {
  const list = merges.map((area) => `<mergeCell ref="${areaAddress(area)}"/>`);
  return `<mergeCells count="${list.length}">${list.join("")}</mergeCells>`;
}

function hyperlinks(sheet: PlannedSheet): string {
  const lines = sheet.links.map(({ row, column, sheet: target, to }) => {
    const location = escapeXml(`${quotedSheet(target)}!${areaAddress(to)}`);
    return `<hyperlink ref="${cellAddress(row, column)}" location="${location}"/>`;
  });
  return `<hyperlinks>${lines.join("")}</hyperlinks>`;
}

/** Rewrites one part's children, set in order when one is given (equal names keep their order). */
function editPart(
  parts: Map<string, Uint8Array>,
  path: string,
  edit: (children: readonly TopLevelChild[]) => readonly TopLevelChild[],
  order?: readonly string[],
): void {
  const bytes = parts.get(path);
  if (bytes === undefined) throw new Error(`the written workbook has no part ${path}`);
  const cut = topLevel(strFromU8(bytes));
  const edited = [...edit(cut.children)];
  if (order !== undefined) edited.sort((one, other) => order.indexOf(one.name) - order.indexOf(other.name));
  parts.set(path, strToU8(joinTopLevel({ ...cut, children: edited })));
}

/** Content types first, as readers that stream expect it; the rest by name; every time stamp the zip format's first. */
function zipParts(parts: ReadonlyMap<string, Uint8Array>): Uint8Array {
  const rank = (name: string): number => (name === "[Content_Types].xml" ? 0 : name === "_rels/.rels" ? 1 : 2);
  const names = [...parts.keys()].sort((one, other) => rank(one) - rank(other) || (one < other ? -1 : 1));
  const files: Zippable = {};
  for (const name of names) {
    const bytes = parts.get(name);
    if (bytes !== undefined) files[name] = [bytes, { level: name.endsWith(".png") ? 0 : 6 }];
  }
  // The zip format stores local time, so the first day it knows is made in local time too.
  return zipSync(files, { mtime: new Date(1980, 0, 1) });
}
