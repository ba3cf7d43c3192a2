import { stubWindow } from "../../excel-host/stub-window.js";

/** What the tests use of Excel's own custom functions runtime. */
export interface ExcelRuntime {
  readonly associate: (id: string, implementation: unknown) => void;
  readonly Error: new (code: string, message?: string) => { readonly code: string; readonly message?: string };
  readonly ErrorCode: { readonly invalidValue: string; readonly notAvailable: string };
  readonly _association: { readonly mappings: Readonly<Record<string, unknown>> };
}

/** The vendor's client library, unmodified, in a stub window; it brings the real CustomFunctions. */
export function excelRuntime(): ExcelRuntime {
  // As on Excel's page: the loader brings the association, the client of the host brings the rest.
  return stubWindow(["office.js", "excel-web-16.00.js"])["CustomFunctions"] as ExcelRuntime;
}
