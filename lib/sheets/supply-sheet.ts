import type { SupplyAtPanel, SupplyDetectorAtPanel } from "../estimate/supply-of.js";
import type { Block, Cell, Sheet } from "../report/model.js";
import type { PerState, SupplyState } from "../supply/supply-tree.js";
import { column, line, money, number, paragraph, text, title, wrapped } from "./cells.js";
import type { SheetInput } from "./sheet-input.js";

const stateWords: Readonly<Record<SupplyState, string>> = {
  charger: "charger on",
  batteryEnd: "battery end",
  batteryEndLessDrop: "battery end less the panel's drop",
};

/** Volts at every powered detector, joints found on the way, load and battery of each place. */
export function supplySheet(input: SheetInput): Sheet | undefined {
  const places = input.estimate.supply.filter(({ detectors, place }) => detectors.length > 0 || place !== null);
  if (places.length === 0) return undefined;
  return {
    name: "Supply",
    orientation: "landscape",
    blocks: [
      title("Supply of kept detectors and modules"),
      paragraph(
        "Volts reckoned along the wire with the joints that were found, at what each detector draws. Battery end is the battery at the end of its discharge. Detectors that leave the wire are shown as found. Read the volts at each kept detector on battery when the work is done.",
        "note",
      ),
      ...places.flatMap((place, index) => placeBlocks(input, place, index + 1)),
    ],
  };
}

function placeBlocks(input: SheetInput, place: SupplyAtPanel, at: number): readonly Block[] {
  return [
    title(`Panel ${place.panel}`, 2),
    { kind: "keyValue", labelColumns: 3, valueColumns: 7, rows: sourceRows(place) },
    ...(place.detectors.length === 0 ? [] : [detectorTable(place, at)]),
    ...place.words.map((words) => paragraph(words)),
    ...jointParagraphs(input, place),
    ...place.detectors
      .filter(({ cures }) => cures.length > 0)
      .map((one) => paragraph(`${nameOf(one)} falls short: ${cureWords(one)}.`, "warning")),
    ...choiceTable(place, at),
  ];
}

function sourceRows({ source, place }: SupplyAtPanel) {
  const assumed = (yes: boolean) => (yes ? " (assumed)" : "");
  const drop = `${source.internalDropVolts} V${assumed(source.internalDropAssumed)}`;
  const rows = [
    line("Supply, charger on", text(`${source.volts.charger} V${assumed(source.chargerAssumed)}`)),
    line("Battery end; drop inside the panel", text(`${source.volts.batteryEnd} V; ${drop}`)),
    line("Least a detector works at", text(`${source.minimumVolts} V`)),
  ];
  if (place === null) return rows;
  const { budget, battery, classTwo } = place;
  const fuse = battery.fuseAmps === null ? "beyond the sizes listed" : `${battery.fuseAmps} A`;
  const recharge =
    battery.rechargeHours === null ? "nothing left to charge with" : `about ${Math.ceil(battery.rechargeHours)} h`;
  return [
    ...rows,
    line("Load", wrapped(`${budget.words}: ${budget.loads.map(loadWords).join(", ")}`)),
    line("Battery", wrapped(`${battery.words}${battery.standbyAssumed ? "; standby hours assumed" : ""}`)),
    line("Alarm time by", wrapped(battery.rule)),
    line("Battery fuse; recharge", wrapped(`${fuse}; ${recharge}. ${sentence(battery.notes.join("; "))}`)),
    line("Class 2", wrapped(sentence(classTwo.words))),
  ];
}

const loadWords = ({ name, count, milliamps }: { name: string; count: number; milliamps: number }) =>
  `${name} ${count > 1 ? `${count} × ` : ""}${milliamps} mA`;
const sentence = (words: string) =>
  `${words.charAt(0).toUpperCase()}${words.slice(1)}${words.endsWith(".") ? "" : "."}`;

function detectorTable(place: SupplyAtPanel, at: number): Block {
  return {
    kind: "table",
    name: `supply_detectors_${at}`,
    whenEmpty: "",
    columns: [
      column("loop", "Loop", "text", 8),
      column("tag", "Tag", "wrapped", 14),
      column("stays", "Stays", "text", 9),
      column("milliamps", "Draws", "milliamps", 9),
      column("fed", "Last stretch of its feed", "wrapped", 36),
      column("measured", "Read", "volts", 9),
      column("charger", "Charger on", "volts", 11),
      column("batteryEnd", "Battery end", "volts", 11),
      column("lessDrop", "Less drop", "volts", 10),
      column("short", "Under its minimum", "wrapped", 24),
    ],
    rows: place.detectors.map((one) => [
      text(one.loop),
      wrapped(one.tag),
      text(one.kept ? "on wire" : "no"),
      number(one.milliamps),
      wrapped(`${one.stretchWords}${one.milliampsAssumed ? "; current assumed" : ""}`),
      number(one.measuredVolts),
      ...voltCells(one.asPlanned ?? one.asFound),
      wrapped(shortWords(one)),
    ]),
  };
}

/** Priced ways on the wire of every detector that falls short, or would without its cure. */
function choiceTable(place: SupplyAtPanel, at: number): readonly Block[] {
  const rows = place.detectors.flatMap((one) =>
    one.choices.map((choice) => [
      text(one.loop),
      wrapped(one.tag),
      text(choice.kind),
      wrapped(choice.words),
      money(choice.costCents),
      number(choice.batteryEndMillivolts / 1000),
      text(one.cure?.kind === choice.kind ? "chosen, in the price" : ""),
    ]),
  );
  if (rows.length === 0) return [];
  const columns = [
    column("loop", "Loop", "text", 8),
    column("tag", "Tag", "wrapped", 14),
    column("cure", "Supply cure", "text", 13),
    column("what", "What is done", "wrapped", 44),
    column("cost", "Costs us", "money", 12),
    column("volts", "Less drop", "volts", 10),
    column("chosen", "Chosen", "wrapped", 20),
  ];
  return [
    paragraph(
      "Ways on the wire that reach the minimum: parts by the unit and mean hours, before whole packs, margin and tax. Write the word under Supply cure on the loops sheet to have one in the price.",
      "note",
    ),
    { kind: "table", name: `supply_cures_${at}`, whenEmpty: "", columns, rows },
  ];
}

const voltCells = (volts: PerState<number> | null): readonly Cell[] =>
  [volts?.charger, volts?.batteryEnd, volts?.batteryEndLessDrop].map((value) => number(value));

function shortWords({ asPlanned, asFound, fails }: SupplyDetectorAtPanel): string {
  if (asPlanned === null && asFound === null) return "cannot be told";
  return fails.map((state) => stateWords[state]).join(", ");
}

const nameOf = ({ loop, tag }: SupplyDetectorAtPanel) => (tag === null ? `Loop ${loop}` : `${loop} ${tag}`);

function cureWords({ cures, wireless }: SupplyDetectorAtPanel): string {
  return [...cures, ...(wireless === null ? [] : [`wireless costs us ${wireless.words}`])].join("; ");
}

/** Stretches that lose more than plain wire and the meter explain, where to open a joint. */
function jointParagraphs(input: SheetInput, { joints, detectors }: SupplyAtPanel): readonly Block[] {
  const known = new Map(input.survey.loops.map(({ key, loop, label }) => [key, label ?? loop]));
  const named = (node: string) => known.get(node) ?? "the panel";
  return joints
    .filter(({ beyondBound, key }) => beyondBound && detectors.some((one) => one.key === key))
    .map((joint) => {
      const range = `${joint.lowOhms.toFixed(0)} to ${joint.highOhms.toFixed(0)} Ω`;
      return paragraph(
        `Between ${named(joint.from)} and ${named(joint.at)}: ${joint.extraVolts.toFixed(2)} V more lost than plain wire would, an extra ${range} in joints, or wire thinner or longer than written.`,
      );
    });
}
