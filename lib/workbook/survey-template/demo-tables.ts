import { roundCents } from "../../quantities/money.js";
import { inputModules } from "../../reference/generated/demo/input-modules.js";
import { moneySettings } from "../../reference/generated/demo/money-settings.js";
import { priceBook } from "../../reference/generated/demo/price-book.js";
import { labourUnits } from "../../reference/generated/labour-units.js";
import type { InputModuleProfile, LabourUnit, PriceBookRow, Survey } from "../../survey/survey.js";

/** The invented price book, module profiles and settings and the usual labour units, as survey tables. */
export function demoTables(): Pick<Survey, "priceBook" | "inputModules" | "labour" | "settings"> {
  return {
    priceBook: priceBook.map(
      ({ unitPrice, shipping, source: _, ...row }): PriceBookRow => ({
        ...row,
        unitCents: roundCents(unitPrice * 100),
        shippingCents: roundCents(shipping * 100),
      }),
    ),
    inputModules: inputModules.map(
      ({ source: _, returns, ...row }): InputModuleProfile => ({
        ...row,
        eolScope: row.eolScope as InputModuleProfile["eolScope"],
        alarmOn: row.alarmOn as InputModuleProfile["alarmOn"],
        returns: returns.map((holds) => ({ holds })),
      }),
    ),
    labour: labourUnits.map(
      ({ task, lowHours, likelyHours, highHours }): LabourUnit => ({ task, lowHours, likelyHours, highHours }),
    ),
    settings: Object.fromEntries(moneySettings.map(({ setting, value }) => [setting, value])),
  };
}
