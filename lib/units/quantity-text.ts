import { create, unitDependencies } from "mathjs";

const math = create({ ...unitDependencies });

/** A general unit text ("120 yd", "35 degC") as a number of `unit`; undefined when it is no such quantity. */
function numberOf(text: string, unit: string): number | undefined {
  // A unit text is a number and one unit name. Anything longer is not ours to interpret.
  if (!/^[-+]?\d+(\.\d+)?(e[-+]?\d+)?\s*[a-zA-Z]+$/.test(text.trim())) return undefined;
  try {
    const value = math.unit(text.trim()).toNumber(unit);
    return Number.isFinite(value) ? value : undefined;
  } catch {
    return undefined;
  }
}

/**
 * Length of a general unit text such as "120 yd" or "3 furlong"; undefined when it is no length. [m]
 * @example metersFromText("120 yd"); // 109.728
 */
export function metersFromText(text: string): number | undefined {
  return numberOf(text, "m");
}

/**
 * Temperature of a general unit text such as "35 degC", "95 degF" or "308 K"; undefined when it is none. [°C]
 * @example celsiusFromText("95 degF"); // 35
 */
export function celsiusFromText(text: string): number | undefined {
  return numberOf(text, "degC");
}
