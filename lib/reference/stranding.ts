import type { StrandingsRow } from "./generated/strandings.js";
import { strandings } from "./generated/strandings.js";

/**
 * How a stranding is made up ("7/30", "7/0.2", "0.5 mm² class 5"); undefined when the table does not have it.
 * @example stranding("7/0.2")?.nominalAreaMm2; // 0.22
 * @see reference-data/strandings.json
 */
export function stranding(name: string): StrandingsRow | undefined {
  const wanted = name.trim();
  return strandings.find((row) => row.name === wanted);
}
