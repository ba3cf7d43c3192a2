import { expect, test } from "vitest";
import { bundleAddin, serve } from "../../../tools/build-addin.mjs";

test("the pane's start: no package in it, nothing that judges a job, plans, reads files or writes them", async () => {
  const { pane, later } = await bundleAddin({ write: false });
  expect(pane.modules).toContain("addin/pane/start.ts");
  expect(pane.modules).toContain("addin/pane/engine/create-engine.ts");
  expect(pane.packages).toEqual([]);
  expect(pane.modules.filter((id) => /^lib\/(estimate|plan|workbook|solver|report|sheets)\//.test(id))).toEqual([]);
  expect(pane.kilobytes).toBeGreaterThan(20);
  expect(pane.kilobytes).toBeLessThanOrEqual(160);
  // Inside Excel the sheets are written from the page itself; even there it comes later.
  expect(later.modules).toContain("addin/sheet/write-report.ts");
});

test("without a certificate the pane is served over http, with its content rule and without a word from elsewhere", async () => {
  const { page, close } = await serve({ port: 0, https: null });
  try {
    expect(page).toMatch(/^http:\/\/localhost:\d+\/pane\/index\.html$/);
    const answer = await fetch(page);
    expect(answer.status).toBe(200);
    const html = await answer.text();
    expect(html).toContain("default-src 'none'; script-src 'self' https://appsforoffice.microsoft.com;");
    const named = [...html.matchAll(/(?:src|href)="([^"]+)"/g)].map(([, address]) => address ?? "");
    expect(named.length).toBeGreaterThan(0);
    expect(named.filter((address) => /^(https?:)?\/\//.test(address))).toEqual([]);
    const functions = await fetch(new URL("../functions/register.js", page));
    expect(functions.status).toBe(200);
    expect(await functions.text()).toContain("registerFunctions");
  } finally {
    await close();
  }
});
