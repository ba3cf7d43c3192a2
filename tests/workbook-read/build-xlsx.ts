import { strToU8, type Zippable, zipSync } from "fflate";

const main = 'xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"';
const office = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";

/** Parts of a small workbook written by hand, so that a test can spoil any of them. */
export interface Parts {
  /** Content of sheetData and what follows it. */
  readonly sheet?: string;
  readonly strings?: readonly string[];
  readonly styles?: string;
  readonly workbook?: string;
  readonly state?: string;
  readonly more?: Readonly<Record<string, Uint8Array>>;
}

/** The entries of a one-sheet workbook named "Loops". */
export function entries(parts: Parts): Zippable {
  const strings = (parts.strings ?? []).map((text) => `<si><t>${text}</t></si>`).join("");
  const state = parts.state === undefined ? "" : ` state="${parts.state}"`;
  return {
    "[Content_Types].xml": strToU8(
      '<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="xml" ContentType="application/xml"/></Types>',
    ),
    "_rels/.rels": strToU8(
      `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="r1" Type="${office}/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
    ),
    "xl/workbook.xml": strToU8(
      parts.workbook ??
        `<workbook ${main} xmlns:r="${office}"><sheets><sheet name="Loops" sheetId="1"${state} r:id="rId1"/></sheets></workbook>`,
    ),
    "xl/_rels/workbook.xml.rels": strToU8(
      `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="${office}/worksheet" Target="worksheets/sheet1.xml"/></Relationships>`,
    ),
    "xl/sharedStrings.xml": strToU8(`<sst ${main}>${strings}</sst>`),
    ...(parts.styles === undefined ? {} : { "xl/styles.xml": strToU8(parts.styles) }),
    "xl/worksheets/sheet1.xml": strToU8(parts.sheet ?? `<worksheet ${main}><sheetData/></worksheet>`),
    ...(parts.more ?? {}),
  };
}

export const xlsx = (parts: Parts): Uint8Array => zipSync(entries(parts), { level: 6 });
export const worksheet = (inside: string): string => `<worksheet ${main}>${inside}</worksheet>`;
export const text = (at: string, words: string): string => `<c r="${at}" t="inlineStr"><is><t>${words}</t></is></c>`;

/** Heading row and one loop, as inline texts. */
export const smallTable =
  `<row r="1">${text("A1", "Loop")}${text("B1", "R closed")}</row>` +
  `<row r="2">${text("A2", "1")}<c r="B2"><v>5.4</v></c></row>`;
