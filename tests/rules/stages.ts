/** The stages in data-flow order; a stage imports itself and earlier ones. */
export const stageOrder = [
  "problems",
  "reference",
  "quantities",
  "wiring",
  "network",
  "survey",
  "readings",
  "findings",
  "termination",
  "supply",
  "radio",
  "zones",
  "price-book",
  "labour",
  "treatments",
  "plan",
  "terminals",
  "materials",
  "purchasing",
  "pricing",
  "cut-over",
  "learning",
  "json-input",
  "estimate",
  "report",
  "sheets",
  "workbook",
  "command",
] as const;

/** Folders that stand beside the flow: any impure stage may call them, calculation stages never. */
export const besideTheFlow = ["solver", "linear-algebra", "units"] as const;

/** Which folder may import which package. Every folder not named here imports none. */
export const packagesOf: Readonly<Record<string, readonly string[]>> = {
  survey: ["zod"],
  "json-input": ["zod"],
  "linear-algebra": ["mathjs"],
  units: ["mathjs"],
  solver: ["highs"],
  workbook: ["exceljs", "fflate", "@resvg/resvg-js", "csv-parse", "dejavu-fonts-ttf"],
};

/** Folders that may use Node. */
export const nodeFolders = ["workbook", "command", "solver"] as const;
