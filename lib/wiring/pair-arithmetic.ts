import { conductorSize } from "./conductor.js";
import { conductorOhmsPerMeter, LAY_FACTOR, metalFacts, temperatureFactor } from "./conductor-ohms-per-meter.js";
import { type PairStretch, pairOhms } from "./pair-ohms.js";

/** One step of a calculation, ready to print: `name = formula = value unit`. */
export interface ArithmeticLine {
  readonly name: string;
  readonly formula: string;
  readonly value: number;
  readonly unit: string;
}

/**
 * How the resistance of a pair comes about, step by step; the last line is the answer of {@link pairOhms}.
 * @throws {@link InputError} when the run or the conductor is outside its range.
 * @example pairArithmetic({ conductor: { gaugeAwg: 22 }, runMeters: 36.576 }).at(-1)?.value; // 3.874…
 */
export function pairArithmetic(stretch: PairStretch): readonly ArithmeticLine[] {
  const { conductor, runMeters, conductorsPerLeg = 1 } = stretch;
  const { areaMm2, strands, strandDiameterMm, metal } = conductorSize(conductor);
  const { words, percentIacs, alpha20PerCelsius } = metalFacts(metal, strandDiameterMm);
  const celsius = conductor.temperatureCelsius ?? 20;
  const perMeter = conductorOhmsPerMeter(conductor);
  const circle = strands > 1 ? `${strands} × π/4 · d²` : "π/4 · d²";
  const lay = strands > 1 ? ` · ${LAY_FACTOR} lay` : "";
  const legs = conductorsPerLeg > 1 ? ` / ${conductorsPerLeg} conductors per leg` : "";
  return [
    {
      name: strands > 1 ? "strand diameter" : "wire diameter",
      formula: conductor.gaugeAwg === undefined ? "from the size given" : "from the gauge, ASTM B258",
      value: strandDiameterMm,
      unit: "mm",
    },
    { name: "area", formula: circle, value: areaMm2, unit: "mm²" },
    {
      name: "warmth",
      formula: `1 + ${alpha20PerCelsius} · (${celsius} − 20)`,
      value: temperatureFactor(alpha20PerCelsius, celsius),
      unit: "",
    },
    {
      name: `${words} conductor`,
      formula: `1/58 / ${percentIacs} % / area${lay} · warmth`,
      value: perMeter,
      unit: "Ω/m",
    },
    {
      name: "out and back",
      formula: `2 · ${runMeters} m · Ω/m${legs}`,
      value: pairOhms(stretch),
      unit: "Ω",
    },
  ];
}
