import { conductorOhmsPerMeter, metalFacts, temperatureFactor } from "../wiring/conductor-ohms-per-meter.js";
import type { Figures } from "./judge-options.js";
import type { LoopRecord } from "./loop-record.js";

/** Cable, contacts, splices and leads of a loop without its end-of-line part. */
export interface BaseLoop {
  /** Expected reading. [Ω] */
  readonly ohms: number;
  /** Its standard deviation. [Ω] */
  readonly spreadOhms: number;
  /** Part of it that is leads. [Ω] */
  readonly leadOhms: number;
  /** Both conductors together. [Ω/m] of one-way run */
  readonly pairOhmsPerMeter: number;
  /** Run taken. [m] */
  readonly runMeters: number;
  /** Standard deviation of the run. [m] */
  readonly runSpreadMeters: number;
  /** Standard deviation of everything but the run. [Ω] */
  readonly restSpreadOhms: number;
}

/**
 * Base loop B = 2Lρ(T) + n·contact + (n + 1)·splice + leads, mean and spread.
 * The spreads are common practice without a source (reference-data/judge-figures.json).
 */
export function baseLoop(record: LoopRecord, figures: Figures): BaseLoop {
  const pair = 2 * conductorOhms(record, figures);
  const known = record.runMeters !== undefined && record.runMeters > 0;
  const run = known ? (record.runMeters ?? 0) : figures.unknownRunMeters;
  const gaugeKnown = record.cable?.gaugeAwg !== undefined || record.cable?.areaMm2 !== undefined;
  const lengthVariation = known ? figures.lengthVariation : figures.unknownRunVariation;
  const cableVariation = Math.hypot(lengthVariation, gaugeKnown ? 0 : figures.unknownGaugeVariation);
  const contacts = Math.max(1, record.openings);
  const zeroed = record.meter?.leadsZeroed === true;
  const lead = zeroed ? 0 : figures.leadOhms;
  const leadSpread = zeroed ? figures.leadZeroedSpreadOhms : figures.leadSpreadOhms;
  const restVariance =
    contacts * figures.contactSpreadOhms ** 2 + (contacts + 1) * figures.spliceSpreadOhms ** 2 + leadSpread ** 2;
  const cable = pair * run;
  return {
    ohms: cable + contacts * figures.contactOhms + (contacts + 1) * figures.spliceOhms + lead,
    spreadOhms: Math.sqrt((cable * cableVariation) ** 2 + restVariance),
    leadOhms: lead,
    pairOhmsPerMeter: pair,
    runMeters: run,
    runSpreadMeters: run * cableVariation,
    restSpreadOhms: Math.sqrt(restVariance),
  };
}

const metals = ["copper", "tinnedCopper", "copperCladAluminium", "aluminium", "copperCladSteel"] as const;

/** Solid copper at 20 °C by gauge number 10 to 30; other places are 0. [Ω/m] */
const copperOhmsPerMeter = Array.from({ length: 31 }, (_, gaugeAwg) =>
  gaugeAwg >= 10 ? conductorOhmsPerMeter({ gaugeAwg }) : 0,
);
const copperAlpha = metalFacts("copper", 0.6).alpha20PerCelsius;

/** One conductor by what is known of it; a size or temperature outside the table's range counts as not known. [Ω/m] */
function conductorOhms(record: LoopRecord, figures: Figures): number {
  const cable = record.cable;
  const celsius = record.temperatureCelsius ?? 20;
  const { gaugeAwg, areaMm2 } = cable ?? {};
  const metal = metals.find((known) => known === cable?.metal) ?? "copper";
  const gauge = gaugeAwg ?? figures.unknownGaugeAwg;
  if (metal === "copper" && areaMm2 === undefined) {
    const at20 = copperOhmsPerMeter[gauge] ?? copperOhmsPerMeter[figures.unknownGaugeAwg] ?? 0;
    if (at20 > 0) return at20 * temperatureFactor(copperAlpha, celsius >= -40 && celsius <= 90 ? celsius : 20);
  }
  const warm = { temperatureCelsius: celsius >= -40 && celsius <= 90 ? celsius : 20, metal };
  if (areaMm2 !== undefined && areaMm2 >= 0.05 && areaMm2 <= 6) return conductorOhmsPerMeter({ ...warm, areaMm2 });
  const known = gaugeAwg !== undefined && Number.isInteger(gaugeAwg) && gaugeAwg >= 10 && gaugeAwg <= 30;
  return conductorOhmsPerMeter({ ...warm, gaugeAwg: known ? gaugeAwg : figures.unknownGaugeAwg });
}
