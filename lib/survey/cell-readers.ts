import { parseCable } from "../quantities/parse-cable.js";
import { parseOhms } from "../quantities/parse-ohms.js";
import { parseOpenings } from "../quantities/parse-openings.js";
import { parseRun } from "../quantities/parse-run.js";
import { parseVolts } from "../quantities/parse-volts.js";
import type { DecimalMark } from "../quantities/typed-number.js";
import { namedDevices } from "./read-devices.js";
import type { TypedCell } from "./survey.js";
import { wordsOf } from "./words.js";

/** Sign before the decimals, when something settles it. */
export interface NumberMark {
  readonly decimalMark?: DecimalMark;
}

/** The readers of the loops sheet's cells, made anew for each table: a cell typed a hundred times is read once. */
export type CellReaders = ReturnType<typeof cellReaders>;

/** Readers that remember their answers for as long as the table they were made for is held. */
export function cellReaders() {
  return {
    cable: remembering((cell: TypedCell) => parseCable(cell)),
    openings: remembering((cell: TypedCell) => parseOpenings(cell)),
    ohms: byMark(parseOhms),
    volts: byMark(parseVolts),
    runInMeters: byMark((cell, mark) => parseRun(cell, { bareUnit: "m", ...mark })),
    runInFeet: byMark((cell, mark) => parseRun(cell, { bareUnit: "ft", ...mark })),
    runWithUnit: byMark(parseRun),
    devices: remembering(namedDevices),
    words: remembering(wordsOf),
  };
}

function remembering<K, V>(read: (key: K) => V): (key: K) => V {
  const answers = new Map<K, V>();
  return (key) => {
    const known = answers.get(key);
    if (known !== undefined) return known;
    const answer = read(key);
    answers.set(key, answer);
    return answer;
  };
}

type Reader<V> = (cell: TypedCell, mark: NumberMark) => V;

/** The same cell may say two things under two decimal marks. */
function byMark<V>(read: Reader<V>): Reader<V> {
  const point = remembering((cell: TypedCell) => read(cell, { decimalMark: "." }));
  const comma = remembering((cell: TypedCell) => read(cell, { decimalMark: "," }));
  const either = remembering((cell: TypedCell) => read(cell, {}));
  return (cell, { decimalMark }) => (decimalMark === undefined ? either : decimalMark === "." ? point : comma)(cell);
}
