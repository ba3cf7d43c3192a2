/// <reference types="office-js" />
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import vm from "node:vm";

/** The client library is undocumented on the wire: this host was checked against exactly this version. */
export const pinnedVersion = "1.1.110";

/** What the vendor's library puts into its window. */
export interface Client {
  readonly Excel: typeof Excel;
  readonly OfficeExtension: {
    readonly SessionBase: { _overrideSession: unknown };
    readonly CommonUtility: { _doApiNotSupportedCheck: boolean };
    readonly Utility: { _doApiNotSupportedCheck: boolean };
  };
  /** Answers the library's own question which requirement sets the host knows. */
  readonly requirements: { isSetSupported: (set: string, version?: string) => boolean };
}

const folder = dirname(createRequire(import.meta.url).resolve("@microsoft/office-js/package.json"));

/** Version of the installed library. */
export function installedVersion(): string {
  return (JSON.parse(readFileSync(join(folder, "package.json"), "utf8")) as { version: string }).version;
}

/** Loads the unmodified library into a stub window; no network. */
export function loadClient(): Client {
  const requirements = { isSetSupported: () => true };
  const element = () => ({
    style: {},
    setAttribute() {},
    appendChild() {},
    removeChild() {},
    getElementsByTagName: () => [],
  });
  const location = { href: "http://localhost/", search: "", hash: "", protocol: "http:", host: "localhost" };
  const storage = { getItem: () => null, setItem() {}, removeItem() {} };
  const sandbox: Record<string, unknown> = {
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
  for (const name of ["window", "self", "globalThis", "global"]) sandbox[name] = sandbox;
  vm.createContext(sandbox);
  const file = "excel-web-16.00.js";
  vm.runInContext(readFileSync(join(folder, "dist", file), "utf8"), sandbox, { filename: file });
  sandbox["Office"] = { context: { requirements } };
  const extension = sandbox["OfficeExtension"] as Client["OfficeExtension"];
  // The vendor's start-up code, which needs an Office host, turns this check on.
  extension.CommonUtility._doApiNotSupportedCheck = true;
  extension.Utility._doApiNotSupportedCheck = true;
  return { Excel: sandbox["Excel"] as Client["Excel"], OfficeExtension: extension, requirements };
}
