import { expect, test } from "vitest";
import { budgets, bundleAddin } from "../../../tools/build-addin.mjs";

test("functions bundle: at most 90 kB gzip, no package at all in it, nor any module that reads JSON or general units", async () => {
  const { functions, pane } = await bundleAddin({ write: false });
  expect(budgets).toEqual({ functions: 90, pane: 160 });
  expect(functions.modules.length).toBeGreaterThan(50);
  expect(functions.modules).toContain("addin/functions/register.ts");
  expect(functions.modules).toContain("lib/findings/judge-loop.ts");
  expect(functions.packages).toEqual([]);
  expect(functions.modules.filter((id) => /lib\/(units|json-input|solver|workbook)\/|survey-json/.test(id))).toEqual(
    [],
  );
  expect(functions.kilobytes).toBeGreaterThan(20);
  expect(functions.kilobytes).toBeLessThanOrEqual(budgets.functions);
  expect(pane.kilobytes).toBeLessThanOrEqual(budgets.pane);
});

test("the estimate, the solver and the workbook writer are loaded when wanted, not with the functions", async () => {
  const { functions, later } = await bundleAddin({ write: false });
  expect(functions.modules.filter((id) => id.startsWith("lib/estimate/"))).toEqual([]);
  expect(later.modules).toContain("lib/estimate/estimate-job.ts");
});
