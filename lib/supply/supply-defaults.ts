import { supplyDefaults } from "../reference/generated/supply-defaults.js";
import { onlyRow } from "../reference/rows.js";

/** A default of reference-data/supply-defaults.json by its key, in the unit named there. */
export function supplyDefault(setting: string): number {
  return onlyRow("supply-defaults", supplyDefaults, (row) => row.setting === setting).value;
}
