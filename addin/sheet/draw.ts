/// <reference types="office-js" />
import {
  type Area,
  areaAddress,
  cellAddress,
  numberFormat,
  type PictureBlock,
  type PlannedChart,
  type PlannedSeries,
  type PlannedSheet,
} from "../loopwright.js";
import { type Batch, bytesPerAction } from "./batch.js";

/** Draws a picture's SVG as a PNG, in base64. */
export type RenderPicture = (picture: PictureBlock) => Promise<string>;

/** A picture ready to be sent. */
export interface DrawnPicture {
  readonly sheet: string;
  readonly area: Area;
  readonly picture: PictureBlock;
  readonly png: string;
}

const points = (pixels: number): number => pixels * 0.75;

/** Pictures hang on their first cell, whose place Excel knows once widths and heights are set. */
export async function writePictures(batch: Batch, pictures: readonly DrawnPicture[]): Promise<void> {
  if (pictures.length === 0) return;
  const { worksheets } = batch.context.workbook;
  const placed = pictures.map((drawn) => ({
    drawn,
    cell: worksheets.getItem(drawn.sheet).getRange(cellAddress(drawn.area.top, drawn.area.left)).load("left,top"),
  }));
  await batch.send();
  for (const [index, { drawn, cell }] of placed.entries()) {
    await batch.room(drawn.png.length + bytesPerAction * 8);
    const image = worksheets.getItem(drawn.sheet).shapes.addImage(drawn.png);
    image.name = `Picture ${index + 1}`;
    image.lockAspectRatio = false;
    image.left = cell.left;
    image.top = cell.top;
    image.width = points(drawn.picture.widthPixels);
    image.height = points(drawn.picture.heightPixels);
    image.altTextDescription = drawn.picture.alt;
    image.placement = "OneCell";
  }
}

const fills = ["#1F4E79", "#A6A6A6", "#BDD7EE", "#404040", "#D9D9D9", "#7F7F7F"] as const;
const dashes = ["Continuous", "Dash", "Dot", "DashDot", "DashDotDot", "RoundDot"] as const;
const markers = ["Circle", "Square", "Triangle", "Diamond", "X", "Plus"] as const;
const chartTypes = { bar: "BarClustered", stackedBar: "BarStacked", line: "LineMarkers" } as const;

/** Native charts over the sheet's own cells, so that they stay alive. */
export async function writeCharts(batch: Batch, planned: PlannedSheet, currency: string): Promise<void> {
  const sheet = batch.context.workbook.worksheets.getItem(planned.name);
  for (const chart of planned.charts) {
    await batch.room(bytesPerAction * (20 + chart.series.length * 9));
    writeChart(batch.context.workbook.worksheets, sheet, chart, currency);
  }
}

function writeChart(
  worksheets: Excel.WorksheetCollection,
  sheet: Excel.Worksheet,
  planned: PlannedChart,
  currency: string,
): void {
  const cells = (series: PlannedSeries) => worksheets.getItem(series.sheet).getRange(areaAddress(series.area));
  const all = planned.band === undefined ? planned.series : [planned.band.low, planned.band.spread, ...planned.series];
  const [first, ...others] = all;
  if (first === undefined) return;
  const chart = sheet.charts.add(chartTypes[planned.chart], cells(first), "Columns");
  chart.title.text = planned.title;
  chart.width = points(planned.widthPixels);
  chart.height = points(planned.heightPixels);
  chart.setPosition(sheet.getRange(cellAddress(planned.area.top, planned.area.left)));
  const made = [chart.series.getItemAt(0), ...others.map((series) => chart.series.add(series.name))];
  made.forEach((series, index) => {
    const from = all[index];
    if (from === undefined) return;
    if (index === 0) series.name = from.name;
    else series.setValues(cells(from));
    series.setXAxisValues(cells(planned.categories));
    styleSeries(series, planned, index);
  });
  chart.legend.visible = all.length > 1;
  if (all.length > 1) chart.legend.position = "Bottom";
  const { categoryAxis, valueAxis } = chart.axes;
  if (planned.categoryTitle !== undefined) categoryAxis.title.text = planned.categoryTitle;
  if (planned.valueTitle !== undefined) valueAxis.title.text = planned.valueTitle;
  // Bars count from the bottom; turned round, the table's first row stands on top.
  if (planned.chart !== "line") categoryAxis.reversePlotOrder = true;
  const format = planned.series[0]?.format ?? "general";
  valueAxis.numberFormat = format === "money" ? `#,##0"\u00a0${currency}"` : numberFormat(format, currency);
}

/** Series stay apart in black and white too: by shade, dash and marker. A band is two stacked areas, the lower unseen. */
function styleSeries(series: Excel.ChartSeries, { chart, band }: PlannedChart, index: number): void {
  if (chart !== "line") {
    series.format.fill.setSolidColor(fills[index % fills.length] ?? "#1F4E79");
    series.gapWidth = 60;
    return;
  }
  const inBand = band !== undefined && index < 2;
  if (inBand) {
    series.chartType = "AreaStacked";
    if (index === 0) series.format.fill.clear();
    else series.format.fill.setSolidColor("#D9D9D9");
    return;
  }
  const own = band === undefined ? index : index - 2;
  series.format.line.color = "#1F4E79";
  series.format.line.lineStyle = dashes[own % dashes.length] ?? "Continuous";
  series.markerStyle = markers[own % markers.length] ?? "Circle";
}
