import { beforeEach, describe, expect, test } from "vitest";
import { ExcelHost } from "./excel-host.js";
import { installedVersion, pinnedVersion } from "./load-client.js";

let host = new ExcelHost();
beforeEach(() => {
  host = new ExcelHost();
});
const cells = (context: Excel.RequestContext, address: string) =>
  context.workbook.worksheets.getItem("Sheet1").getRange(address);

test("the client library is the version this host was checked against", () => {
  expect(installedVersion()).toBe(pinnedVersion);
});

test("values written through the vendor's library are read back", async () => {
  const read = await host.excel.run(async (context) => {
    cells(context, "A1:B2").values = [
      ["Ohms", "Loop"],
      [12.5, "1"],
    ];
    await context.sync();
    const range = cells(context, "A1:B2").load("values,address");
    await context.sync();
    return { values: range.values, address: range.address };
  });
  expect(read).toEqual({
    values: [
      ["Ohms", "Loop"],
      [12.5, 1],
    ],
    address: "Sheet1!A1:B2",
  });
  expect(host.requests.length).toBe(3);
});

describe("mistakes are not swallowed", () => {
  const mistakes: readonly (readonly [string, (context: Excel.RequestContext) => unknown])[] = [
    ["reading before load", (context) => cells(context, "A1").values],
    ["an array of the wrong shape", (context) => Object.assign(cells(context, "A1:B2"), { values: [[1, 2]] })],
    ["a sheet that is not there", (context) => context.workbook.worksheets.getItem("Nope").activate()],
    ["a property nobody knows", (context) => cells(context, "A1").load("valuez")],
    ["a load without names", (context) => cells(context, "A1").load()],
    ["a method this host does not answer", (context) => cells(context, "A1").flashFill()],
    ["a value that is no enumeration's", (context) => cells(context, "A1").conditionalFormats.add("None" as "Custom")],
    ["not a number", (context) => Object.assign(cells(context, "A1").format, { rowHeight: "tall" })],
    [
      "a formula over a table that is not there",
      (context) => Object.assign(cells(context, "A1"), { formulas: [["=SUM(bill[Line])"]] }),
    ],
    [
      "a method on an object that is not there",
      (context) => Object.assign(context.workbook.tables.getItemOrNullObject("bill"), { showTotals: true }),
    ],
  ];
  test.each(mistakes)("%s", async (_, mistake) => {
    await expect(
      host.excel.run(async (context) => {
        mistake(context);
        await context.sync();
      }),
    ).rejects.toThrow();
  });
});

test("a requirement set the host lacks is refused by the library itself", async () => {
  host.version = 8;
  await expect(
    host.excel.run(async (context) => {
      context.workbook.worksheets.getItem("Sheet1").getRanges("A1,C3");
      await context.sync();
    }),
  ).rejects.toMatchObject({ code: "ApiNotFound" });
});

test("failures come when they are asked for", async () => {
  host.failure = { request: 1, action: 2 };
  const write = () =>
    host.excel.run(async (context) => {
      const sheet = context.workbook.worksheets.getItem("Sheet1");
      sheet.getRange("A1").values = [[1]];
      sheet.getRange("A2").values = [[2]];
      await context.sync();
    });
  await expect(write()).rejects.toMatchObject({ code: "GeneralException" });
  host.cellEdit = true;
  await expect(write()).rejects.toMatchObject({ code: "InvalidOperationInCellEditMode" });
});
