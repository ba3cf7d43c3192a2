/// <reference types="office-js" />
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { clientFolder, stubWindow } from "./stub-window.js";

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

/** Version of the installed library. */
export function installedVersion(): string {
  return (JSON.parse(readFileSync(join(clientFolder, "package.json"), "utf8")) as { version: string }).version;
}

/** Loads the unmodified library into a stub window; no network. */
export function loadClient(): Client {
  const requirements = { isSetSupported: () => true };
  const sandbox = stubWindow(["excel-web-16.00.js"]);
  sandbox["Office"] = { context: { requirements } };
  const extension = sandbox["OfficeExtension"] as Client["OfficeExtension"];
  // The vendor's start-up code, which needs an Office host, turns this check on.
  extension.CommonUtility._doApiNotSupportedCheck = true;
  extension.Utility._doApiNotSupportedCheck = true;
  return { Excel: sandbox["Excel"] as Client["Excel"], OfficeExtension: extension, requirements };
}
