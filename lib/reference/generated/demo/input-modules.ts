// Generated from reference-data/demo/input-modules.json by tools/generate-reference.mjs. Do not edit.
/** Demo module profiles of our own invention */
export interface InputModulesRow {
  /** Name of the profile [text] */
  readonly type: string;
  /** Inputs [count] */
  readonly inputs: number;
  /** One entry per return terminal: how many conductors it holds [list of conductors] */
  readonly returns: readonly (number)[];
  /** What one EOL setting covers: input, bank or module [text] */
  readonly eolScope: string;
  /** Inputs in one bank, where eolScope is bank [inputs] */
  readonly bankSize?: number;
  /** EOL values that can be set [list of Ω] */
  readonly eolOhms: readonly (number)[];
  /** Lower edge of the normal band [fraction of EOL] */
  readonly bandLow: number;
  /** Upper edge of the normal band [fraction of EOL] */
  readonly bandHigh: number;
  /** open, short or either [text] */
  readonly alarmOn: string;
  /** Shortest change that is reported [ms] */
  readonly minPulseMs: number;
  /** Most conductor resistance, out and back [Ω] */
  readonly maxConductorOhms: number;
  /** Least leak across the pair as a multiple of the EOL value [times EOL] */
  readonly minLeakTimesEol: number;
  /** Current drawn [mA] */
  readonly milliamps: number;
  /** Article in the price book [text] */
  readonly priceCode: string;
  /** Units on the van [units] */
  readonly stock: number;
  /** Key into the table's sources. */
  readonly source: string;
}

export const inputModules: readonly InputModulesRow[] = [
  {"type":"six","inputs":6,"returns":[3,3,3],"eolScope":"bank","bankSize":3,"eolOhms":[1000,1200,1500,1800,2200,2700,3300,3900,4700,5600,6800,8200,10000],"bandLow":0.8,"bandHigh":1.2,"alarmOn":"either","minPulseMs":300,"maxConductorOhms":100,"minLeakTimesEol":20,"milliamps":60,"priceCode":"MOD-6","stock":0,"source":"demo"},
  {"type":"ten","inputs":10,"returns":[1,1,1,1,1,1,1,1,1,1],"eolScope":"module","eolOhms":[2200,4700],"bandLow":0.8,"bandHigh":1.2,"alarmOn":"either","minPulseMs":300,"maxConductorOhms":100,"minLeakTimesEol":20,"milliamps":60,"priceCode":"MOD-10","stock":0,"source":"demo"},
];

export const inputModulesSources: Readonly<Record<string, string>> = {
  "demo": "invented for the demo",
};
