import type { Area } from "../../report/addresses.js";
import { escapeXml } from "../xml/escape.js";
import {
  chartNamespace,
  declaration,
  drawingNamespace,
  relationshipsOfDocument,
  spreadsheetDrawing,
} from "../xml/namespaces.js";

/** English metric units of one pixel at 96 per inch. */
const emuPerPixel = 9525;

/** One picture or chart hung on its top left cell. */
export interface Hung {
  readonly kind: "picture" | "chart";
  readonly relationship: string;
  readonly area: Area;
  readonly widthPixels: number;
  readonly heightPixels: number;
  readonly alt: string;
}

/** The drawing part of a sheet. */
export function drawingPart(all: readonly Hung[]): string {
  const open = `<xdr:wsDr xmlns:xdr="${spreadsheetDrawing}" xmlns:a="${drawingNamespace}">`;
  return `${declaration}${open}${all.map(anchor).join("")}</xdr:wsDr>`;
}

function anchor(hung: Hung, index: number): string {
  const width = Math.round(hung.widthPixels * emuPerPixel);
  const height = Math.round(hung.heightPixels * emuPerPixel);
  // Shape ids are unique on the sheet; 1 is the sheet itself.
  const own = `id="${index + 2}" name="${hung.kind === "picture" ? "Picture" : "Chart"} ${index + 1}"`;
  const properties = `<xdr:cNvPr ${own} descr="${escapeXml(hung.alt)}"/>`;
  const from = `<xdr:from><xdr:col>${hung.area.left - 1}</xdr:col><xdr:colOff>0</xdr:colOff><xdr:row>${hung.area.top - 1}</xdr:row><xdr:rowOff>0</xdr:rowOff></xdr:from>`;
  const size = `<a:off x="0" y="0"/><a:ext cx="${width}" cy="${height}"/>`;
  const body = hung.kind === "picture" ? picture(hung, properties, size) : graphicFrame(hung, properties);
  return `<xdr:oneCellAnchor>${from}<xdr:ext cx="${width}" cy="${height}"/>${body}<xdr:clientData/></xdr:oneCellAnchor>`;
}

function picture(hung: Hung, properties: string, size: string): string {
  return [
    `<xdr:pic><xdr:nvPicPr>${properties}<xdr:cNvPicPr><a:picLocks noChangeAspect="1"/></xdr:cNvPicPr></xdr:nvPicPr>`,
    `<xdr:blipFill><a:blip xmlns:r="${relationshipsOfDocument}" r:embed="${hung.relationship}"/>`,
    "<a:stretch><a:fillRect/></a:stretch></xdr:blipFill>",
    `<xdr:spPr><a:xfrm>${size}</a:xfrm><a:prstGeom prst="rect"><a:avLst/></a:prstGeom></xdr:spPr></xdr:pic>`,
  ].join("");
}

function graphicFrame(hung: Hung, properties: string): string {
  return [
    `<xdr:graphicFrame macro=""><xdr:nvGraphicFramePr>${properties}<xdr:cNvGraphicFramePr/></xdr:nvGraphicFramePr>`,
    '<xdr:xfrm><a:off x="0" y="0"/><a:ext cx="0" cy="0"/></xdr:xfrm>',
    `<a:graphic><a:graphicData uri="${chartNamespace}">`,
    `<c:chart xmlns:c="${chartNamespace}" xmlns:r="${relationshipsOfDocument}" r:id="${hung.relationship}"/>`,
    "</a:graphicData></a:graphic></xdr:graphicFrame>",
  ].join("");
}
