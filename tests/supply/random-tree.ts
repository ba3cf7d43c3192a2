import type { SupplyTreeInput } from "../../lib/supply/supply-tree.js";
import { seededRandom } from "../termination/seeded-random.js";

/** A random tree of 1 to 9 stretches: chains, branches, mixed sizes, some joints, a load at every end. */
export function randomTree(seed: number): SupplyTreeInput {
  const random = seededRandom(seed);
  const count = 1 + Math.floor(random() * 9);
  const segments = Array.from({ length: count }, (_, i) => {
    const parent = Math.floor(random() * (i + 1));
    return {
      id: `s${i + 1}`,
      from: parent === 0 ? "panel" : `n${parent}`,
      to: `n${i + 1}`,
      meters: 2 + random() * 40,
      conductor: { gaugeAwg: [18, 20, 22, 24][Math.floor(random() * 4)] ?? 22 },
      ...(random() < 0.3 ? { extraOhms: random() * 4 } : {}),
    };
  });
  const detectors = segments
    .filter((segment) => random() < 0.6 || !segments.some((other) => other.from === segment.to))
    .map((segment) => ({ id: `d-${segment.to}`, at: segment.to, milliamps: 5 + random() * 40 }));
  return {
    source: { chargerVolts: 13.2 + random(), internalDropVolts: random() * 0.6 },
    segments,
    detectors,
    temperatureCelsius: -10 + random() * 50,
  };
}
