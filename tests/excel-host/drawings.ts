import { addressOf, type Box } from "./cells.js";
import { aColour, aFlag, aNumber, aText, HostError, type HostObject, invalid, oneOf, settings } from "./host-object.js";
import { rangeAt, type Sheet, toBox } from "./sheet.js";

type Bag = Map<string, unknown>;
export interface Series {
  readonly bag: Bag;
  readonly line: Bag;
  fill: string | undefined;
  values?: string;
  categories?: string;
}
export interface Chart {
  readonly id: string;
  readonly type: unknown;
  readonly bag: Bag;
  readonly title: Bag;
  readonly categoryTitle: Bag;
  readonly valueTitle: Bag;
  readonly legend: Bag;
  readonly axes: Bag;
  at?: Box;
  series: Series[];
}
export interface Shape {
  readonly id: string;
  readonly image: string;
  readonly bag: Bag;
}

const placeOf = (at: unknown): string => {
  const { sheet, box } = rangeAt(at);
  return `${sheet.name}!${addressOf(box)}`;
};

export function shapeCollection(sheet: Sheet): HostObject {
  const face = (shape: Shape): HostObject =>
    settings(
      "Shape",
      shape.bag,
      {
        Name: aText,
        Left: aNumber,
        Top: aNumber,
        Width: aNumber,
        Height: aNumber,
        LockAspectRatio: aFlag,
        AltTextDescription: aText,
        Placement: oneOf(sheet.enums.Placement),
      },
      {
        id: shape.id,
        call: {
          Delete: () => {
            sheet.shapes = sheet.shapes.filter((one) => one !== shape);
          },
        },
      },
    );
  return {
    kind: "ShapeCollection",
    items: () => sheet.shapes.map(face),
    call: {
      GetItem: (id) => {
        const shape = sheet.shapes.find((one) => one.id === id || one.bag.get("Name") === id);
        if (shape === undefined) throw new HostError("ItemNotFound", `there is no shape ${String(id)}`);
        return face(shape);
      },
      AddImage: (image) => {
        sheet.allowLooks();
        const text = aText(image, "image") as string;
        const head = Buffer.from(text.slice(0, 16), "base64");
        if (head[1] !== 0x50 || head[2] !== 0x4e || head[3] !== 0x47) throw invalid("the image is no PNG in base64");
        const shape: Shape = { id: `shape${++sheet.book.counter}`, image: text, bag: new Map() };
        sheet.shapes.push(shape);
        return face(shape);
      },
    },
  };
}

export function chartCollection(sheet: Sheet): HostObject {
  const enums = sheet.enums;
  const seriesFace = (series: Series): HostObject =>
    settings(
      "ChartSeries",
      series.bag,
      {
        Name: aText,
        ChartType: oneOf(enums.ChartType),
        MarkerStyle: oneOf(enums.ChartMarkerStyle),
        GapWidth: aNumber,
      },
      {
        id: "series",
        child: {
          Format: () => ({
            kind: "ChartSeriesFormat",
            child: {
              Fill: () => ({
                kind: "ChartFill",
                call: {
                  Clear: () => {
                    series.fill = "none";
                  },
                  SetSolidColor: (colour: unknown) => {
                    series.fill = aColour(colour, "fill") as string;
                  },
                },
              }),
              Line: () =>
                settings("ChartLineFormat", series.line, {
                  Color: aColour,
                  LineStyle: oneOf(enums.ChartLineStyle),
                  Weight: aNumber,
                }),
            },
          }),
        },
        call: {
          SetValues: (at) => {
            series.values = placeOf(at);
          },
          SetXAxisValues: (at) => {
            series.categories = placeOf(at);
          },
        },
      },
    );
  const axisFace = (chart: Chart, title: Bag, prefix: string): HostObject => {
    const own = new Map<string, unknown>();
    const bag = settings("ChartAxis", own, { ReversePlotOrder: aFlag, NumberFormat: aText });
    return {
      ...bag,
      set: Object.fromEntries(
        Object.entries(bag.set ?? {}).map(([name, set]) => [
          name,
          (value: unknown) => {
            set(value);
            chart.axes.set(`${prefix}.${name}`, value);
          },
        ]),
      ),
      child: { Title: () => settings("ChartAxisTitle", title, { Text: aText, Visible: aFlag }) },
    };
  };
  const face = (chart: Chart): HostObject =>
    settings(
      "Chart",
      chart.bag,
      { Name: aText, Width: aNumber, Height: aNumber, Left: aNumber, Top: aNumber },
      {
        id: chart.id,
        child: {
          Title: () => settings("ChartTitle", chart.title, { Text: aText, Visible: aFlag }),
          Legend: () =>
            settings("ChartLegend", chart.legend, { Visible: aFlag, Position: oneOf(enums.ChartLegendPosition) }),
          Axes: () => ({
            kind: "ChartAxes",
            child: {
              CategoryAxis: () => axisFace(chart, chart.categoryTitle, "category"),
              ValueAxis: () => axisFace(chart, chart.valueTitle, "value"),
            },
          }),
          Series: () => ({
            kind: "ChartSeriesCollection",
            items: () => chart.series.map(seriesFace),
            call: {
              GetItemAt: (index: unknown) => {
                const one = chart.series[Number(index)];
                if (one === undefined) throw invalid(`the chart has no series ${String(index)}`);
                return seriesFace(one);
              },
              Add: (name: unknown) => {
                const one: Series = { bag: new Map([["Name", name]]), line: new Map(), fill: undefined };
                chart.series.push(one);
                return seriesFace(one);
              },
            },
          }),
        },
        call: {
          Delete: () => {
            sheet.charts = sheet.charts.filter((one) => one !== chart);
          },
          SetPosition: (first) => {
            chart.at = toBox(sheet, first);
          },
        },
      },
    );
  return {
    kind: "ChartCollection",
    items: () => sheet.charts.map(face),
    call: {
      GetItem: (id) => {
        const chart = sheet.charts.find((one) => one.id === id || one.bag.get("Name") === id);
        if (chart === undefined) throw new HostError("ItemNotFound", `there is no chart ${String(id)}`);
        return face(chart);
      },
      Add: (type, source, by) => {
        sheet.allowLooks();
        oneOf(enums.ChartSeriesBy)(by, "seriesBy");
        const chart: Chart = {
          id: `chart${++sheet.book.counter}`,
          type: oneOf(enums.ChartType)(type, "chart type"),
          bag: new Map(),
          title: new Map(),
          categoryTitle: new Map(),
          valueTitle: new Map(),
          legend: new Map(),
          axes: new Map(),
          series: [{ bag: new Map(), line: new Map(), fill: undefined, values: placeOf(source) }],
        };
        sheet.charts.push(chart);
        return face(chart);
      },
    },
  };
}
