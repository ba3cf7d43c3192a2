import * as library from "../loopwright-functions.js";
import { type Answer, type CellValue, inCells, NoResult, spill } from "./answer.js";
import { celsius, choice, conductor, ifGiven, number, ohmsOrOpen, run } from "./arguments.js";

/** Conductor of a cable cell with the temperature cell beside it. */
export function warmConductor(cable: unknown, temperature: unknown) {
  const wire = conductor({ name: "cable", cell: cable });
  const warmth = ifGiven({ name: "celsius", cell: temperature }, celsius);
  const value = { ...wire.value, ...(warmth === undefined ? {} : { temperatureCelsius: warmth.value }) };
  return { value, remarks: [...wire.remarks, ...(warmth?.remarks ?? [])] };
}

/**
 * Size and resistance of one conductor of a cable, in one row of five cells: diameter of one strand in mm, copper area in mm², strands, resistance in Ω per metre, nearest whole AWG. Sizes 10 to 30 AWG or 0.05 to 6 mm². Source: ASTM B258 (gauge series), IEC 60028 (copper), ASTM B496 (lay of strands).
 * @customfunction WIRE WIRE
 * @param cable Size as text such as "22/4", "24 AWG", "7/0.2", "0.5 mm2", or a gauge number in AWG.
 * @param celsius Conductor temperature as text such as "95 F", or a number in °C, -40 to 90. Left out: 20.
 * @returns Strand diameter mm | area mm² | strands | Ω per metre | nearest AWG.
 * @example =LOOPW.WIRE("22 AWG") → 0.6438 | 0.32553 | 1 | 0.05296 | 22
 */
export function wire(cable: unknown, celsius?: unknown): unknown[][] {
  return inCells(() => wireAnswer(cable, celsius));
}

export function wireAnswer(cable: unknown, temperature?: unknown): Answer<CellValue[][]> {
  const { value, remarks } = warmConductor(cable, temperature);
  const { areaMm2, strands, strandDiameterMm, metal } = library.conductorSize(value);
  const perMeter = library.conductorOhmsPerMeter(value);
  const { gaugeAwg } = library.nearestAwg(areaMm2);
  const words = `${strands} × ${strandDiameterMm.toFixed(4)} mm of ${metal}, ${areaMm2.toFixed(4)} mm², at ${value.temperatureCelsius ?? 20} °C: ${perMeter.toFixed(5)} Ω/m; nearest gauge ${gaugeAwg} AWG.`;
  return { value: spill([[strandDiameterMm, areaMm2, strands, perMeter, gaugeAwg]]), words: [words, ...remarks] };
}

/**
 * Resistance in Ω of a pair shorted at its far end: out and back, 2 × run × Ω per metre. Run 0 to 3000 m. Source: ASTM B258 (gauge series), IEC 60028 (copper).
 * @customfunction PAIR_OHMS PAIR_OHMS
 * @param cable Size as text such as "22/4", "24 AWG", "7/0.2", "0.5 mm2", or a gauge number in AWG.
 * @param run One-way length along the cable as text such as "120 ft" or "36 m", or a number in metres.
 * @param celsius Conductor temperature as text such as "95 F", or a number in °C, -40 to 90. Left out: 20.
 * @param conductorsPerLeg Conductors twisted together to make one leg, 1 to 50. Left out: 1.
 * @returns Resistance of the pair in Ω.
 * @example =LOOPW.PAIR_OHMS("22 AWG", "120 ft") → 3.874
 * @example =LOOPW.PAIR_OHMS(22, 30, , 2) → 1.589
 */
export function pairOhms(cable: unknown, run: unknown, celsius?: unknown, conductorsPerLeg?: unknown): number {
  return inCells(() => pairOhmsAnswer(cable, run, celsius, conductorsPerLeg));
}

export function pairOhmsAnswer(
  cable: unknown,
  length: unknown,
  temperature?: unknown,
  perLeg?: unknown,
): Answer<number> {
  const { value, remarks } = warmConductor(cable, temperature);
  const oneWay = run({ name: "run", cell: length });
  const conductorsPerLeg = ifGiven({ name: "conductorsPerLeg", cell: perLeg }, number) ?? 1;
  const stretch = { conductor: value, runMeters: oneWay.value.meters, conductorsPerLeg };
  const steps = library.pairArithmetic(stretch);
  const words = steps.map(
    ({ name, formula, value: result, unit }) => `${name} = ${formula} = ${round(result)} ${unit};`,
  );
  return { value: library.pairOhms(stretch), words: [...words, ...remarks, ...oneWay.remarks] };
}

/**
 * One-way run of a pair from its resistance, in one row of three cells: likely, lowest and highest, for a cable 10 °C colder or warmer than stated. Only for a pair that is shorted at its far end or closed through contacts, never with an end-of-line resistor in it. Ω 0 to 100 000. Source: ASTM B258, IEC 60028.
 * @customfunction RUN_FROM_OHMS RUN_FROM_OHMS
 * @param ohms Reading as text such as "3.2" or "1.1k", or a number in Ω.
 * @param cable Size as text such as "22/4", "24 AWG", "7/0.2", "0.5 mm2", or a gauge number in AWG.
 * @param otherOhms What in the reading is not cable: contacts, joints, test leads, in Ω. Left out: 0.
 * @param celsius Conductor temperature as text such as "95 F", or a number in °C, -30 to 80. Left out: 20.
 * @param unit "m" or "ft" for the answer. Left out: m.
 * @returns Likely | lowest | highest one-way run, in metres or feet.
 * @example =LOOPW.RUN_FROM_OHMS(3.18, "22 AWG") → 30.02 | 28.89 | 31.25
 */
export function runFromOhms(
  ohms: unknown,
  cable: unknown,
  otherOhms?: unknown,
  celsius?: unknown,
  unit?: unknown,
): unknown[][] {
  return inCells(() => runFromOhmsAnswer(ohms, cable, otherOhms, celsius, unit));
}

export function runFromOhmsAnswer(
  reading: unknown,
  cable: unknown,
  other?: unknown,
  temperature?: unknown,
  wanted?: unknown,
): Answer<CellValue[][]> {
  const read = ohmsOrOpen({ name: "ohms", cell: reading });
  if (read.value === "OL") throw new NoResult("ohms: the pair reads over-range; an open pair tells no length");
  const { value, remarks } = warmConductor(cable, temperature);
  const rest = ifGiven({ name: "otherOhms", cell: other }, ohmsOrOpen);
  if (rest?.value === "OL") throw new NoResult("otherOhms: over-range leaves nothing to reckon with");
  const unit = ifGiven({ name: "unit", cell: wanted }, (given) => choice(given, ["m", "ft"])) ?? "m";
  const otherOhms = rest && { lowOhms: rest.value, likelyOhms: rest.value, highOhms: rest.value };
  const found = library.runMetersFromOhms({
    conductor: value,
    ohms: read.value,
    ...(otherOhms === undefined ? {} : { otherOhms }),
  });
  if (found === null) {
    throw new NoResult(
      "ohms: nothing is left for cable once the other parts are taken off; such a reading tells no length",
    );
  }
  const { meters, lowMeters, highMeters, assumptions } = found;
  const cells = [meters, lowMeters, highMeters].map((length) => length / (library.metersPerUnit(unit) ?? 1));
  const shown = [lowMeters, highMeters].map((length) => library.formatLength({ meters: length, unit }));
  const words = `${library.formatLength({ meters, unit })}, between ${shown[0]} and ${shown[1]}.`;
  return { value: spill([cells]), words: [words, ...assumptions.map((one) => `${one}.`), ...read.remarks, ...remarks] };
}

const round = (value: number): number => Number(value.toPrecision(5));
