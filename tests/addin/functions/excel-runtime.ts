import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { createContext, runInContext } from "node:vm";

/** What the tests use of Excel's own custom functions runtime. */
export interface ExcelRuntime {
  readonly associate: (id: string, implementation: unknown) => void;
  readonly Error: new (code: string, message?: string) => { readonly code: string; readonly message?: string };
  readonly ErrorCode: { readonly invalidValue: string; readonly notAvailable: string };
  readonly _association: { readonly mappings: Readonly<Record<string, unknown>> };
}

/** The vendor's client library, unmodified, in a stub window; it brings the real CustomFunctions. */
export function excelRuntime(): ExcelRuntime {
  const folder = join(dirname(createRequire(import.meta.url).resolve("@microsoft/office-js/package.json")), "dist");
  const element = () => ({
    setAttribute() {},
    appendChild() {},
    removeChild() {},
    getAttribute: () => null,
    insertBefore() {},
    style: {},
    parentNode: { insertBefore() {} },
    src: "https://appsforoffice.microsoft.com/lib/1/hosted/office.js",
    getElementsByTagName: () => [],
  });
  const location = { href: "https://localhost/", search: "", hash: "", protocol: "https:", host: "localhost" };
  const document = {
    createElement: element,
    getElementsByTagName: () => [element()],
    getElementById: () => null,
    documentElement: element(),
    head: element(),
    body: element(),
    addEventListener() {},
    cookie: "",
    URL: location.href,
    location,
    readyState: "complete",
  };
  const storage = { getItem: () => null, setItem() {}, removeItem() {} };
  const window: Record<string, unknown> = {
    console,
    setTimeout,
    clearTimeout,
    setInterval,
    clearInterval,
    performance,
    URL,
    TextEncoder,
    TextDecoder,
    location,
    document,
    navigator: { userAgent: "node", language: "en-US", platform: "linux" },
    addEventListener() {},
    removeEventListener() {},
    postMessage() {},
    sessionStorage: storage,
    localStorage: storage,
    history: {},
    XMLHttpRequest: class {},
  };
  Object.assign(window, { window, self: window, globalThis: window, global: window });
  createContext(window);
  // As on Excel's page: the loader brings the association, the client of the host brings the rest.
  for (const file of ["office.js", "excel-web-16.00.js"]) {
    runInContext(readFileSync(join(folder, file), "utf8"), window, { filename: file });
  }
  return window["CustomFunctions"] as ExcelRuntime;
}
