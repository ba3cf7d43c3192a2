import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { describe, expect, test } from "vitest";
import { openedByOffice } from "../../../addin/pane/engine/office.js";

const plain = { search: "", windowName: "", framed: false, session: null, external: false };

describe("whether Office opened the page", () => {
  test("a page of a plain browser was not, whatever else is in its address", () => {
    expect(openedByOffice(plain)).toBe(false);
    expect(openedByOffice({ ...plain, search: "?site=boathouse", windowName: "pane" })).toBe(false);
  });

  test("every place where the vendor's library looks for its host counts (@microsoft/office-js 1.1.110, office.debug.js)", () => {
    const source = readFileSync(
      createRequire(import.meta.url).resolve("@microsoft/office-js/dist/office.debug.js"),
      "utf8",
    );
    const signs = source.slice(source.indexOf("_retrieveHostInfo = function"));
    for (const place of ["_host_Info", '["hostInfo"]', '"hostInfoValue"', "external.GetHostInfo", "agaveHost"]) {
      expect(signs).toContain(place);
    }
    const info = "Excel$Win32$16.01$en-US$$$$0";
    expect(openedByOffice({ ...plain, search: `?_host_Info=${info}` })).toBe(true);
    expect(openedByOffice({ ...plain, search: `?et=&_host_Info=${info}` })).toBe(true);
    expect(openedByOffice({ ...plain, windowName: JSON.stringify({ hostInfo: info }) })).toBe(true);
    expect(openedByOffice({ ...plain, session: info })).toBe(true);
    expect(openedByOffice({ ...plain, external: true })).toBe(true);
    expect(openedByOffice({ ...plain, framed: true })).toBe(true);
  });
});
