import type { PriceBook } from "../price-book/article.js";
import { articlesOfClass } from "../price-book/look-up.js";
import { formatOhms } from "../quantities/format-ohms.js";
import type { InputModuleProfile } from "../survey/survey.js";
import type { ModuleSetting } from "./treatment.js";

/** Most EOL values considered for one module profile: the ones most loops already carry. */
const settingsPerProfile = 3;

/**
 * Module settings worth considering: each profile at the EOL values that loops already carry and the profile can be set
 * to, the commonest first, and always one for which the price book sells a resistor.
 * @param found Nominal EOL values found on the loops, one entry for each loop. [Ω]
 */
export function moduleSettings({
  profiles,
  found,
  book,
}: {
  readonly profiles: readonly InputModuleProfile[];
  readonly found: readonly number[];
  readonly book: PriceBook;
}): readonly ModuleSetting[] {
  const sold = new Set(articlesOfClass({ book, class: "eolResistor" }).map(({ eolOhms }) => eolOhms));
  const count = new Map<number, number>();
  for (const ohms of found) count.set(ohms, (count.get(ohms) ?? 0) + 1);
  return profiles.flatMap((profile) => {
    const carried = profile.eolOhms
      .filter((ohms) => count.has(ohms))
      .sort((a, b) => (count.get(b) ?? 0) - (count.get(a) ?? 0) || a - b)
      .slice(0, settingsPerProfile);
    const buyable = [...carried, ...profile.eolOhms].find((ohms) => sold.has(ohms));
    const values = new Set([...carried, ...(buyable === undefined ? [] : [buyable])]);
    if (values.size === 0 && profile.eolOhms[0] !== undefined) values.add(profile.eolOhms[0]);
    return [...values].map((eolOhms) => ({
      id: `${profile.type} at ${formatOhms(eolOhms)}`,
      type: profile.type,
      eolOhms,
    }));
  });
}
