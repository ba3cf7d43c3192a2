// Generated from reference-data/disposal-kinds.json by tools/generate-reference.mjs. Do not edit.
/** Where what comes out of the building goes */
export interface DisposalKindsRow {
  /** Key [text] */
  readonly kind: string;
  /** What it is [text] */
  readonly words: string;
  /** Where it goes [text] */
  readonly route: string;
  /** Key into the table's sources. */
  readonly source: string;
}

export const disposalKinds: readonly DisposalKindsRow[] = [
  {"kind":"electronics","words":"electronic devices","route":"electronics recycling; clear the user data where there is any","source":"practice"},
  {"kind":"smallParts","words":"contacts, magnets and leads","route":"scrap metal or small parts","source":"practice"},
  {"kind":"leadAcidBattery","words":"sealed lead-acid batteries","route":"battery recycling, leads taped; a swollen or leaking one apart","source":"practice"},
  {"kind":"transformer","words":"transformers","route":"electronics recycling; a hardwired one is taken out by an electrician","source":"practice"},
];

export const disposalKindsSources: Readonly<Record<string, string>> = {
  "practice": "common practice, no source",
};
