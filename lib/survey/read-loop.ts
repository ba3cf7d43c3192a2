import { parseMilliamps } from "../quantities/parse-milliamps.js";
import { present } from "../quantities/present.js";
import { isNothing } from "../quantities/typed-cell.js";
import { lengthKind } from "./neighbours.js";
import { fedFromIn, feedsIn, noteFactsIn } from "./note-facts.js";
import type { RawRow, RawTable } from "./raw-table.js";
import { readDevices } from "./read-devices.js";
import { readEdits } from "./read-edits.js";
import { readEol } from "./read-eol.js";
import { readOpened, readOtherReadings, readSupplyVolts, readTapped } from "./read-loop-readings.js";
import { RowReader, verbatim } from "./row-reader.js";
import type { DeviceKind, MeasuredRun, NoteFact, SurveyCable, SurveyLoop } from "./survey.js";
import { hasPhrase } from "./words.js";

/** What a row needs to know of its sheet. */
export interface LoopContext {
  readonly table: RawTable;
  readonly key: string;
  /** Panel of rows that name none. */
  readonly panel: string;
  /** Unit of bare run lengths, when something settles it. */
  readonly bareUnit?: "ft" | "m";
}

export interface LoopRead {
  readonly loop: SurveyLoop;
  readonly queries: RowReader["queries"];
  /** Volts without "pair" in their heading were taken for the supply at the detector. */
  readonly voltsTakenAsSupply: boolean;
}

/** Kinds that are never asked to be metered, whatever the row leaves out. */
const LEAVE_ALONE: ReadonlySet<DeviceKind> = new Set(["smokeOrHeat", "flowSwitch", "otherLifeSafety"]);

/** Reads one row of the loops sheet. Whatever is not settled becomes a query; nothing is corrected in silence. */
export function readLoop(raw: RawRow, context: LoopContext): LoopRead {
  const { table, key } = context;
  const row = new RowReader(table, raw, key);
  const spare = raw.spare.map(({ heading, text }) => `${heading}: ${text}`);
  const notes = [row.text("notes"), ...spare].filter((text) => text !== undefined).join("; ");
  const facts = noteFactsIn(notes);
  const openings = readOpenings(row);
  const cable = readCable(row);
  const milliamps = row.parsed("milliamps", (cell, mark) => parseMilliamps(cell, mark))?.milliamps;
  const supply = readSupplyVolts(row, cable, milliamps);
  const device = row.text("device");
  const { devices, shared } = readDevices({
    text: device ?? "",
    others: openings.others.join(", "),
    openings: openings.count,
    hasSupply: (milliamps ?? 0) > 0,
    parts: openings.parts,
    readers: row.readers,
  });
  if (shared && openings.others.length === 0)
    row.ask(
      "device",
      `The ${openings.count} openings were shared out as ${devices.map(({ kind, count }) => `${count} ${kind}`).join(" and ")}. Write how many of each.`,
    );
  if (device !== undefined && !isNothing(device) && devices[0]?.kind === "unknown")
    row.ask(
      "device",
      "No kind of device was recognised. Write for instance recessed contact, surface contact, motion, glass-break.",
    );
  if (device === undefined)
    row.askOnSite("device", "What stands on this loop? Write for instance recessed contact, motion.");
  else if (device.includes("?")) row.askOnSite("device", "The device carries a question mark. Find out what it is.");
  const poweredDetector = devices.some(({ powered }) => powered);
  const closed = row.ohms("closed");
  const opened = readOpened(row, closed?.reading);
  const readings = readOtherReadings(row, closed);
  const tapped = readTapped(row, closed, facts, notes);
  const powered =
    row.yesNo("powered") ??
    (closed?.powered !== undefined || supply.atDetector !== undefined
      ? true
      : closed?.unpowered !== undefined && closed.powered === undefined
        ? false
        : undefined);
  const run = readRun(row, context.bareUnit);
  const eol = readEol(row, facts, notes);
  const marked = row.yesNo("lifeSafety");
  const behaviour =
    row.choice("behaviour", ["steady", "climbing", "falling", "jumping"], {
      drifting: "jumping",
      moves: "jumping",
      moving: "jumping",
    }) ?? closed?.behaviour;
  const leaveAlone = marked === true || devices.some(({ kind }) => LEAVE_ALONE.has(kind));
  if (closed === undefined && !leaveAlone) row.askOnSite("closed", unreadWords(row, facts));
  const loop = present<SurveyLoop>({
    key,
    sheet: table.name,
    row: raw.row,
    typed: Object.fromEntries([...raw.cells].map(([column, cell]) => [column, verbatim(cell)])),
    panel: row.text("panel") ?? context.panel,
    loop: row.text("loop") ?? key,
    oldZone: row.text("oldZone"),
    label: row.text("label"),
    protects: row.text("protects"),
    place: row.text("place"),
    floor: row.known("floor"),
    openings: { count: openings.count, assumed: openings.assumed },
    devices,
    device,
    contactForm: readContactForm(row),
    cable,
    run,
    fedFrom: row.known("fedFrom"),
    fedFromProposed: row.known("fedFrom") === undefined ? proposedFeed(row, notes) : undefined,
    eolPlace: eol.place,
    eolOhms: eol.ohms,
    closed: closed?.reading,
    closedUnpowered: closed?.unpowered,
    opened,
    ...readings,
    voltsDc: supply.pairDc,
    voltsAc: supply.pairAc,
    voltsAtDetector: supply.atDetector,
    milliamps,
    lifted: readLifted(row, facts),
    poweredDetector,
    powered: poweredDetector ? powered : undefined,
    markedLifeSafety: marked === true,
    tapped,
    behaviour,
    restingState: row.choice("restingState", ["normal", "faulted", "unknown"], {
      ready: "normal",
      closed: "normal",
      fault: "faulted",
      open: "faulted",
      notready: "faulted",
    }),
    resistorAtPanel: eol.resistorAtPanel,
    use: row.known("use"),
    area: row.known("area"),
    access: row.known("access"),
    finish: row.known("finish"),
    measuredBy: row.text("measuredBy"),
    notes: notes === "" ? undefined : notes,
    noteFacts: facts.length === 0 ? undefined : facts,
    edits: readEdits(row),
  });
  askLoopName(row, loop);
  return {
    loop,
    queries: leaveAlone ? row.queries.filter(({ asksOnSite }) => asksOnSite !== true) : row.queries,
    voltsTakenAsSupply: supply.taken,
  };
}

function askLoopName(row: RowReader, loop: SurveyLoop): void {
  if (row.text("loop") === undefined)
    row.ask("loop", `This row has no loop name; it goes by its key ${loop.key}. Write the terminal or loop number.`);
}

function unreadWords(row: RowReader, facts: readonly NoteFact[]): string {
  if (row.text("closed") !== undefined)
    return "No reading could be taken from this cell. Write what the meter shows with everything shut.";
  const why = facts.find(({ fact }) => fact === "noAccess" || fact === "acOnPair");
  return why === undefined
    ? "Not measured with everything shut. Without that reading the loop cannot be judged."
    : `Not measured ("${why.words}" in the notes). Without that reading the loop cannot be judged.`;
}

interface Openings {
  readonly count: number;
  readonly assumed: boolean;
  readonly parts: readonly number[];
  readonly others: readonly string[];
}

function readOpenings(row: RowReader): Openings {
  const typed = row.parsed("openings", row.readers.openings);
  const words = `${row.text("protects") ?? ""} ${row.text("device") ?? ""}`;
  const doubles = /\bdouble(?:-|\s)(?:leaf\s)?(?:doors?|gates?)\b|\bpair of doors\b|\bfrench doors?\b/i.exec(
    words,
  )?.[0];
  if (typed === undefined) {
    row.ask("openings", "How many leaves and devices open on this loop? 1 is assumed.");
    return { count: 1, assumed: true, parts: [], others: [] };
  }
  if (typed.count === 1 && doubles !== undefined) {
    row.ask(
      "openings",
      `"${doubles}" have two moving leaves, 1 opening is written: 2 are counted. If one leaf is bolted for good, write so and keep 1.`,
    );
    return { count: 2, assumed: true, parts: [], others: typed.others };
  }
  if (typed.count === 0)
    row.ask("openings", "A loop without an opening proves nothing. Count the leaves and devices on it.");
  return {
    count: Math.max(1, typed.count),
    assumed: typed.assumed || typed.count === 0,
    parts: typed.parts,
    others: typed.others,
  };
}

function readCable(row: RowReader): SurveyCable | undefined {
  const typed = row.parsed("cable", row.readers.cable);
  if (typed === undefined) {
    if (row.known("cable") === undefined)
      row.ask(
        "cable",
        "No cable size. Write gauge and conductors such as 22/4; the size sets what reading is expected.",
      );
    return undefined;
  }
  const { cables: _, ...cable } = typed;
  return cable;
}

function readRun(row: RowReader, bareUnit: "ft" | "m" | undefined): MeasuredRun | undefined {
  const text = row.known("run");
  if (text === undefined) {
    row.ask(
      "run",
      "No length. Write the one-way run, even a guess such as 35-55 ft; without it the expected reading is wide.",
    );
    return undefined;
  }
  const unit = row.isOurHeading("run") ? "m" : bareUnit;
  // The question about the unit of bare lengths has been asked once for the sheet.
  if (unit === undefined && lengthKind(text) === "bare") return undefined;
  const { runWithUnit, runInFeet, runInMeters } = row.readers;
  const typed = row.parsed("run", unit === undefined ? runWithUnit : unit === "m" ? runInMeters : runInFeet);
  if (typed === undefined) return undefined;
  const words = typed.words.filter((word) => !/^total$/i.test(word));
  if (words.length > 0)
    row.ask(
      "run",
      `"${words.join(", ")}" was not used; the number was read as the one-way run. Write half of it if out and back were counted.`,
    );
  return { meters: typed.meters, lowMeters: typed.lowMeters, highMeters: typed.highMeters, assumed: false };
}

function readContactForm(row: RowReader): SurveyLoop["contactForm"] {
  return (
    row.choice("contactForm", ["NC", "NO", "mixed", "unknown"], {
      normallyclosed: "NC",
      normallyopen: "NO",
      closed: "NC",
      open: "NO",
      both: "mixed",
      ncno: "mixed",
    }) ?? "unknown"
  );
}

function readLifted(row: RowReader, facts: readonly NoteFact[]): SurveyLoop["lifted"] | undefined {
  const typed = row.choice("lifted", ["both", "one", "no", "unknown"], {
    yes: "both",
    y: "both",
    n: "no",
    off: "both",
    oneleg: "one",
  });
  if (typed !== undefined) return typed;
  return facts.some(({ fact }) => fact === "notLifted") ? "no" : undefined;
}

/** Where the notes say supply comes from or goes to: asked, never applied. */
function proposedFeed(row: RowReader, notes: string): string | undefined {
  const from = fedFromIn(notes);
  if (from !== undefined) {
    row.ask(
      "notes",
      `The notes say "fed from ${from}". Write it in the column Fed from (loop number or label) if the supply of this detector comes that way.`,
      notes,
    );
    return from;
  }
  const to = feedsIn(notes);
  if (to !== undefined)
    row.ask(
      "notes",
      `The notes say supply goes on to ${to}. Write this loop's number under Fed from in those rows if so.`,
      notes,
    );
  else if (hasPhrase(notes, "end of chain"))
    row.ask(
      "notes",
      "The notes call this the end of a chain. Write under Fed from which detector's supply it takes.",
      notes,
    );
  return undefined;
}
