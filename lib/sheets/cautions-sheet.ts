import type { HazardFlag } from "../cut-over/hazard-flags.js";
import type { Block, Sheet } from "../report/model.js";
import { column, paragraph, title, wrapped } from "./cells.js";
import type { SheetInput } from "./sheet-input.js";

/** Cautions that apply to this job, in the order of the job; holds first. */
export function cautionsSheet({ estimate }: SheetInput): Sheet | undefined {
  const { cautions, holds } = estimate;
  if (cautions.length === 0 && holds.length === 0) return undefined;
  return {
    name: "Cautions",
    headingOf: "cautions",
    blocks: [
      title("Cautions, in the order of the job"),
      ...holds.map(({ words }) => paragraph(words, "stop")),
      {
        kind: "table",
        name: "cautions",
        whenEmpty: "None for this job.",
        columns: [
          column("words", "Caution", "wrapped", 66),
          column("when", "When", "wrapped", 22),
          column("who", "Who", "wrapped", 20),
        ],
        rows: cautions.map(({ words, when, who }) => [wrapped(words), wrapped(when), wrapped(who)]),
      },
      ...hazardBlocks(estimate.cutOver.hazards),
    ],
  };
}

/** What the survey says of hazards, each once with the places that say so. */
function hazardBlocks(hazards: readonly HazardFlag[]): readonly Block[] {
  if (hazards.length === 0) return [];
  const kinds = [...new Map(hazards.map((flag) => [`${flag.hazard} ${flag.words}`, flag])).values()];
  return [
    title("Hazards the survey names or does not rule out", 2),
    {
      kind: "table",
      name: "hazards",
      whenEmpty: "",
      columns: [
        column("caution", "Hazard, and what to mind", "wrapped", 66),
        column("typed", "As written", "wrapped", 22),
        column("where", "Where", "wrapped", 20),
      ],
      rows: kinds.map((kind) => {
        const same = hazards.filter(({ hazard, words }) => hazard === kind.hazard && words === kind.words);
        const joined = (texts: readonly string[]) => [...new Set(texts)].join("; ");
        return [
          wrapped(`${kind.words.charAt(0).toUpperCase()}${kind.words.slice(1)}. ${kind.caution}`),
          wrapped(joined(same.map(({ typed }) => typed))),
          wrapped(joined(same.map(({ where }) => where))),
        ];
      }),
    },
  ];
}
