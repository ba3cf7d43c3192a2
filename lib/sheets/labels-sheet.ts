import type { CutOverLoop } from "../cut-over/cut-over-loop.js";
import { type CableLabel, labels } from "../cut-over/labels.js";
import type { EstimatedLoop } from "../estimate/estimate.js";
import type { Cell, Sheet } from "../report/model.js";
import { column, paragraph, title } from "./cells.js";
import { zoneName } from "./loop-words.js";
import { isExcluded, isHandsOff, type SheetInput } from "./sheet-input.js";

/** Pairs of labels side by side. */
const pairsAcross = 2;

/** Labels to cut out: both ends of every pair that is taken over or given up; none for what is left alone. */
export function labelsSheet(input: SheetInput): Sheet | undefined {
  const loops = input.estimate.loops.filter((loop) => !isExcluded(loop) && !isHandsOff(loop));
  const names = new Map(loops.map((loop) => [loop.key, zoneName(loop)]));
  const made = labels({ loops: loops.map(cutOverLoop) });
  const keys = [...new Set(made.map(({ key }) => key))];
  if (keys.length === 0) return undefined;
  const pair = (key: string | undefined): readonly Cell[] =>
    (["panel", "field"] as const).map((end) => {
      const label = made.find((one) => one.key === key && one.end === end);
      return label === undefined
        ? { kind: "blank" }
        : labelCell(label, end === "panel" ? names.get(label.key) : undefined);
    });
  const rows = Array.from({ length: Math.ceil(keys.length / pairsAcross) }, (_, row) =>
    Array.from({ length: pairsAcross }, (_, at) => pair(keys[row * pairsAcross + at])).flat(),
  );
  return {
    name: "Labels",
    headingOf: "labels",
    blocks: [
      title("Labels: cut along the lines, one at each end"),
      paragraph(
        "Tag a pair before it is lifted. The label at the far end names no zone and no use. Pairs that are left alone have none.",
        "note",
      ),
      {
        kind: "table",
        name: "labels",
        plain: true,
        whenEmpty: "",
        rowHeight: 62,
        columns: Array.from({ length: pairsAcross }, (_, at) => [
          column(`panel_${at + 1}`, `Panel end${at === 0 ? "" : ", next pair"}`, "wrapped", 24, {
            role: "handwriting",
          }),
          column(`field_${at + 1}`, `Far end${at === 0 ? "" : ", next pair"}`, "wrapped", 24, { role: "handwriting" }),
        ]).flat(),
        rows,
      },
    ],
  };
}

const labelCell = ({ lines }: CableLabel, zone: string | undefined): Cell => ({
  kind: "text",
  text: [...new Set([lines[0], ...(zone === undefined ? [] : [zone]), ...lines.slice(1)])].join("\n"),
});

/** What the labels need of a loop. */
function cutOverLoop(loop: EstimatedLoop): CutOverLoop {
  const { key, panel, tag, treatment, input, openingsProved } = loop;
  return {
    key,
    panel,
    loop: loop.loop,
    tag: tag ?? loop.loop,
    zones: [],
    treatment,
    input: input === null ? null : { module: input.module, number: input.number },
    eol: null,
    openings: { count: openingsProved.total, assumed: false },
    devices: [],
    contactForm: "unknown",
  };
}
