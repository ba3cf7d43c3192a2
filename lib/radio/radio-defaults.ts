import { radioDefaults } from "../reference/generated/radio-defaults.js";
import { onlyRow } from "../reference/rows.js";

/** A default of reference-data/radio-defaults.json by its key, in the unit named there. */
export function radioDefault(setting: string): number {
  return onlyRow("radio-defaults", radioDefaults, (row) => row.setting === setting).value;
}
