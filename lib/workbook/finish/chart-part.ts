import { fixedAddress, fixedArea, quotedSheet } from "../../report/addresses.js";
import type { Format } from "../../report/model.js";
import type { PlannedChart, PlannedSeries } from "../../report/printable-plan.js";
import { numberFormat } from "../write/formats.js";
import { escapeXml } from "../xml/escape.js";
import { chartNamespace, declaration, drawingNamespace, relationshipsOfDocument } from "../xml/namespaces.js";

const categoryAxis = 111_111_111;
const valueAxis = 222_222_222;

/** Fills that stay apart in black and white: dark, hatched, light, dotted, then over again. */
const fills: readonly string[] = [
  '<a:solidFill><a:srgbClr val="1F4E79"/></a:solidFill>',
  '<a:pattFill prst="wdUpDiag"><a:fgClr><a:srgbClr val="404040"/></a:fgClr><a:bgClr><a:srgbClr val="FFFFFF"/></a:bgClr></a:pattFill>',
  '<a:solidFill><a:srgbClr val="BDD7EE"/></a:solidFill>',
  '<a:pattFill prst="pct30"><a:fgClr><a:srgbClr val="000000"/></a:fgClr><a:bgClr><a:srgbClr val="FFFFFF"/></a:bgClr></a:pattFill>',
  '<a:solidFill><a:srgbClr val="7F7F7F"/></a:solidFill>',
  '<a:pattFill prst="wdDnDiag"><a:fgClr><a:srgbClr val="1F4E79"/></a:fgClr><a:bgClr><a:srgbClr val="FFFFFF"/></a:bgClr></a:pattFill>',
];
const dashes = ["solid", "dash", "sysDot", "dashDot", "lgDash", "sysDashDot"] as const;
const markers = ["circle", "square", "triangle", "diamond", "x", "plus"] as const;
const pick = <T>(list: readonly T[], index: number): T | undefined => list[index % list.length];

/** The chart part. Its values are references to cells, with their present values so that a viewer need not work them out. */
export function chartPart(chart: PlannedChart, currency: string): string {
  return [
    declaration,
    `<c:chartSpace xmlns:c="${chartNamespace}" xmlns:a="${drawingNamespace}" xmlns:r="${relationshipsOfDocument}">`,
    '<c:roundedCorners val="0"/>',
    `<c:chart>${titleXml(chart.title, 1200)}<c:autoTitleDeleted val="0"/>`,
    `<c:plotArea><c:layout/>${plots(chart)}${axes(chart, currency)}</c:plotArea>`,
    legendXml(chart),
    '<c:plotVisOnly val="1"/><c:dispBlanksAs val="gap"/></c:chart>',
    '<c:spPr><a:solidFill><a:srgbClr val="FFFFFF"/></a:solidFill><a:ln w="6350"><a:solidFill><a:srgbClr val="BFBFBF"/></a:solidFill></a:ln></c:spPr>',
    '<c:txPr><a:bodyPr/><a:lstStyle/><a:p><a:pPr><a:defRPr sz="900"/></a:pPr><a:endParaRPr lang="en-US"/></a:p></c:txPr>',
    "</c:chartSpace>",
  ].join("");
}

function legendXml(chart: PlannedChart): string {
  if (chart.series.length === 1 && chart.band === undefined) return "";
  // The band's lower edge is drawn without fill; its line in the legend would say nothing.
  const hidden = chart.band === undefined ? "" : '<c:legendEntry><c:idx val="0"/><c:delete val="1"/></c:legendEntry>';
  return `<c:legend><c:legendPos val="b"/>${hidden}<c:overlay val="0"/></c:legend>`;
}

function plots(chart: PlannedChart): string {
  if (chart.chart === "line") return `${bandXml(chart)}${linesXml(chart)}`;
  const stacked = chart.chart === "stackedBar";
  const series = chart.series.map((each, index) => {
    const shape = `<c:spPr>${pick(fills, index) ?? ""}<a:ln w="6350"><a:solidFill><a:srgbClr val="000000"/></a:solidFill></a:ln></c:spPr>`;
    return `<c:ser>${seriesHead(each, index)}${shape}<c:invertIfNegative val="0"/>${dataXml(chart.categories, each)}</c:ser>`;
  });
  return [
    `<c:barChart><c:barDir val="bar"/><c:grouping val="${stacked ? "stacked" : "clustered"}"/><c:varyColors val="0"/>`,
    ...series,
    `<c:gapWidth val="60"/>${stacked ? '<c:overlap val="100"/>' : ""}${axisIds}</c:barChart>`,
  ].join("");
}

const axisIds = `<c:axId val="${categoryAxis}"/><c:axId val="${valueAxis}"/>`;

/** A band is two stacked areas: an unfilled one up to its lower edge and a shaded one above. */
function bandXml(chart: PlannedChart): string {
  if (chart.band === undefined) return "";
  const area = (series: PlannedSeries, index: number, fill: string): string =>
    `<c:ser>${seriesHead(series, index)}<c:spPr>${fill}<a:ln><a:noFill/></a:ln></c:spPr>${dataXml(chart.categories, series)}</c:ser>`;
  return [
    '<c:areaChart><c:grouping val="stacked"/><c:varyColors val="0"/>',
    area(chart.band.low, 0, "<a:noFill/>"),
    area(chart.band.spread, 1, '<a:solidFill><a:srgbClr val="D9D9D9"/></a:solidFill>'),
    `${axisIds}</c:areaChart>`,
  ].join("");
}

function linesXml(chart: PlannedChart): string {
  const first = chart.band === undefined ? 0 : 2;
  const series = chart.series.map((each, index) => {
    const line = `<a:ln w="22225"><a:solidFill><a:srgbClr val="1F4E79"/></a:solidFill><a:prstDash val="${pick(dashes, index)}"/></a:ln>`;
    const marker = `<c:marker><c:symbol val="${pick(markers, index)}"/><c:size val="6"/></c:marker>`;
    return `<c:ser>${seriesHead(each, first + index)}<c:spPr>${line}</c:spPr>${marker}${dataXml(chart.categories, each)}<c:smooth val="0"/></c:ser>`;
  });
  return `<c:lineChart><c:grouping val="standard"/><c:varyColors val="0"/>${series.join("")}<c:marker val="1"/>${axisIds}</c:lineChart>`;
}

function seriesHead(series: PlannedSeries, index: number): string {
  const { sheet, row, column } = series.nameAt;
  const at = escapeXml(`${quotedSheet(sheet)}!${fixedAddress(row, column)}`);
  const cache = `<c:strCache><c:ptCount val="1"/><c:pt idx="0"><c:v>${escapeXml(series.name)}</c:v></c:pt></c:strCache>`;
  return `<c:idx val="${index}"/><c:order val="${index}"/><c:tx><c:strRef><c:f>${at}</c:f>${cache}</c:strRef></c:tx>`;
}

function dataXml(categories: PlannedSeries, values: PlannedSeries): string {
  const numeric = categories.values.every((value) => typeof value !== "string");
  const category = numeric ? numberReference(categories) : textReference(categories);
  return `<c:cat>${category}</c:cat><c:val>${numberReference(values)}</c:val>`;
}

const cellsOf = (series: PlannedSeries): string => escapeXml(`${quotedSheet(series.sheet)}!${fixedArea(series.area)}`);

function points(values: readonly (number | string | null)[]): string {
  const given = values.map((value, index) =>
    value === null ? "" : `<c:pt idx="${index}"><c:v>${escapeXml(String(value))}</c:v></c:pt>`,
  );
  return `<c:ptCount val="${values.length}"/>${given.join("")}`;
}

const textReference = (series: PlannedSeries): string =>
  `<c:strRef><c:f>${cellsOf(series)}</c:f><c:strCache>${points(series.values)}</c:strCache></c:strRef>`;

function numberReference(series: PlannedSeries): string {
  const numbers = series.values.map((value) => (typeof value === "number" ? value : null));
  return `<c:numRef><c:f>${cellsOf(series)}</c:f><c:numCache><c:formatCode>General</c:formatCode>${points(numbers)}</c:numCache></c:numRef>`;
}

function titleXml(text: string, size: number): string {
  const run = `<a:r><a:rPr lang="en-US" sz="${size}" b="1"/><a:t>${escapeXml(text)}</a:t></a:r>`;
  return `<c:title><c:tx><c:rich><a:bodyPr/><a:lstStyle/><a:p><a:pPr><a:defRPr sz="${size}" b="1"/></a:pPr>${run}</a:p></c:rich></c:tx><c:overlay val="0"/></c:title>`;
}

/** Axis figures are round: money shows no cents there, and the axis title says the currency. */
const axisFormat = (format: Format, currency: string): string =>
  format === "money" ? "#,##0" : numberFormat(format, currency);

function axes(chart: PlannedChart, currency: string): string {
  const bars = chart.chart !== "line";
  const format = chart.series[0]?.format ?? "general";
  const axisTitle = (text: string | undefined): string => (text === undefined ? "" : titleXml(text, 900));
  const grid =
    '<c:majorGridlines><c:spPr><a:ln w="6350"><a:solidFill><a:srgbClr val="D9D9D9"/></a:solidFill></a:ln></c:spPr></c:majorGridlines>';
  return [
    // Bars count from the bottom; turned round, the table's first row stands on top and the figures below.
    `<c:catAx><c:axId val="${categoryAxis}"/><c:scaling><c:orientation val="${bars ? "maxMin" : "minMax"}"/></c:scaling>`,
    `<c:delete val="0"/><c:axPos val="${bars ? "l" : "b"}"/>${axisTitle(chart.categoryTitle)}`,
    '<c:numFmt formatCode="General" sourceLinked="0"/><c:majorTickMark val="out"/><c:minorTickMark val="none"/><c:tickLblPos val="low"/>',
    `<c:crossAx val="${valueAxis}"/><c:crosses val="autoZero"/><c:auto val="0"/><c:lblAlgn val="ctr"/><c:lblOffset val="100"/>${bars ? '<c:tickLblSkip val="1"/>' : ""}<c:noMultiLvlLbl val="1"/></c:catAx>`,
    `<c:valAx><c:axId val="${valueAxis}"/><c:scaling><c:orientation val="minMax"/></c:scaling>`,
    `<c:delete val="0"/><c:axPos val="${bars ? "b" : "l"}"/>${grid}${axisTitle(chart.valueTitle)}`,
    `<c:numFmt formatCode="${escapeXml(axisFormat(format, currency))}" sourceLinked="0"/>`,
    '<c:majorTickMark val="out"/><c:minorTickMark val="none"/><c:tickLblPos val="nextTo"/>',
    `<c:crossAx val="${categoryAxis}"/><c:crosses val="${bars ? "max" : "autoZero"}"/><c:crossBetween val="between"/></c:valAx>`,
  ].join("");
}
