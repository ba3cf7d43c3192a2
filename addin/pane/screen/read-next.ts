import { dataTable } from "./data-table.js";
import { button, type Child, el } from "./elements.js";
import { type RankedReading, rankedReadings } from "./ranked-readings.js";
import { type Estimated, nameOfLoop } from "./shown.js";

/** Most readings listed on the screen; a walk takes fewer. */
const mostListed = 60;

/** Readings that are worth their time, by money. */
export function readNext(shown: Estimated): readonly Child[] {
  const ranked = rankedReadings(shown.estimate);
  if (ranked.length === 0) return [el("p", {}, "No further reading is worth its time by the figures entered.")];
  const telling = ranked.filter(({ changesPlan }) => changesPlan);
  const others = ranked.filter(({ changesPlan }) => !changesPlan);
  return [
    el(
      "p",
      {},
      "By money, the most first. Volts before ohms on every pair, both conductors lifted. Write the answers into the survey and work it out again. The workbook has them in walking order.",
    ),
    telling.length > 0 && readingsTable(shown, telling.slice(0, mostListed), "Loops on the wire: the plan may change"),
    others.length > 0 &&
      readingsTable(
        shown,
        others.slice(0, mostListed),
        "Loops that leave the wire as planned: worth it before that is settled",
      ),
  ];
}

function readingsTable({ formats, act }: Estimated, ranked: readonly RankedReading[], caption: string): HTMLElement {
  return dataTable({
    caption,
    columns: [
      { words: "Loop" },
      { words: "Reading" },
      { words: "Time", figures: true },
      { words: "Worth on average", figures: true },
      { words: "Less its time", figures: true },
      { words: "Loop widens the range by", figures: true },
    ],
    rows: ranked.map(({ loop, reading, savingCents, netCents, spreadCents }) => ({
      cells: [
        button({
          words: nameOfLoop(loop),
          keep: `read ${loop.key} ${reading.reading}`,
          kind: "quiet",
          label: `${nameOfLoop(loop)}: show this loop`,
          click: () => act.goToLoop(loop.key),
        }),
        reading.words,
        `${Math.max(1, Math.round(reading.minutes))} min`,
        formats.money(savingCents),
        formats.money(netCents),
        spreadCents === null ? "not among its causes" : `± ${formats.roundMoney(spreadCents)}`,
      ],
    })),
  });
}
