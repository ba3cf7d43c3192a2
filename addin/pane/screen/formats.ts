import { formatLength, formatMoney } from "../../loopwright-screen.js";

/** Figures as this reader writes them. */
export interface Formats {
  /** Cents to the cent. */
  readonly money: (cents: number) => string;
  /** Cents in whole units: for what is not known more finely. */
  readonly roundMoney: (cents: number) => string;
  /** A difference with its sign, in whole units. */
  readonly moreMoney: (cents: number) => string;
  readonly count: (value: number) => string;
  /** A rate that was set or reckoned exactly, such as a margin. */
  readonly rate: (fraction: number | null) => string;
  readonly length: (meters: number) => string;
}

/** @param given language: BCP 47 tag of the reader; currency: ISO 4217 code of the job. */
export function formatsFor(given: {
  readonly language: string;
  readonly currency: string;
  readonly units: "metric" | "imperial";
}): Formats {
  const { language, currency, units } = given;
  const whole = new Intl.NumberFormat(language, { style: "currency", currency, maximumFractionDigits: 0 });
  const signed = new Intl.NumberFormat(language, {
    style: "currency",
    currency,
    maximumFractionDigits: 0,
    signDisplay: "exceptZero",
  });
  const counted = new Intl.NumberFormat(language, { maximumFractionDigits: 2 });
  const percent = new Intl.NumberFormat(language, { style: "percent", maximumFractionDigits: 1 });
  return {
    money: (cents) => formatMoney({ cents: Math.round(cents), currency, locale: language }),
    roundMoney: (cents) => whole.format(cents / 100),
    moreMoney: (cents) => signed.format(cents / 100),
    count: (value) => counted.format(value),
    rate: (fraction) => (fraction === null ? "none" : percent.format(fraction)),
    length: (meters) => formatLength({ meters, unit: units === "imperial" ? "ft" : "m" }),
  };
}
