import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { createContext, runInContext } from "node:vm";

/** Folder of the installed client library. */
export const clientFolder = dirname(createRequire(import.meta.url).resolve("@microsoft/office-js/package.json"));

/** A window that holds as much of a page as the vendor's client library asks for, with the named files of it run; no network. */
export function stubWindow(files: readonly string[]): Record<string, unknown> {
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
    navigator: { userAgent: "node", language: "en-US", platform: "linux" },
    document: {
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
    },
    addEventListener() {},
    removeEventListener() {},
    postMessage() {},
    sessionStorage: storage,
    localStorage: storage,
    history: {},
    XMLHttpRequest: class {},
  };
  for (const name of ["window", "self", "globalThis", "global"]) window[name] = window;
  createContext(window);
  for (const file of files) {
    runInContext(readFileSync(join(clientFolder, "dist", file), "utf8"), window, { filename: file });
  }
  return window;
}
