import { type AsBuiltZone, asBuiltZones } from "../cut-over/as-built-zones.js";
import { type CommissioningRow, commissioningSheet } from "../cut-over/commissioning-sheet.js";
import { type CutOverLoop, type CutOverPanel, loopName } from "../cut-over/cut-over-loop.js";
import { cutOverLoops } from "../cut-over/cut-over-loops.js";
import { type CutOverStep, cutOverOrder } from "../cut-over/cut-over-order.js";
import { type DisposalLine, disposalList } from "../cut-over/disposal-list.js";
import { type HandoverSection, handoverSheet } from "../cut-over/handover-sheet.js";
import { type HazardFlag, hazardFlags } from "../cut-over/hazard-flags.js";
import { isHeld } from "../cut-over/is-held.js";
import { type CableLabel, labels } from "../cut-over/labels.js";
import { type RemovedDevice, removedDevices } from "../cut-over/removed-devices.js";
import { type WalkTest, walkTest } from "../cut-over/walk-test.js";
import type { PlannedLoop } from "../plan/planned-loop.js";
import type { Query } from "../problems/query.js";
import type { Survey, SurveyPanel } from "../survey/survey.js";
import type { FittedModule } from "../terminals/terminal-schedule.js";
import { entryExitTimes } from "../zones/entry-exit-times.js";
import type { ZoneSchedule } from "../zones/zone.js";
import type { EstimatedLoop } from "./estimate.js";
import type { PreparedJob } from "./prepare-job.js";
import { zonesOf } from "./zones-of.js";

/** Order of work and the papers of a cut-over. */
export interface EstimatedCutOver {
  /** The order of work; each step with what has to be done before it. */
  readonly steps: readonly CutOverStep[];
  /** Life safety hangs on the old control without a written release: no step takes it away. */
  readonly held: boolean;
  /** Names of the loops nobody touches; heads every paper. */
  readonly doNotTouch: readonly string[];
  /** Names of the loops nobody works on before they were read again; they stand in no step and on no other paper. */
  readonly readAgainFirst: readonly string[];
  readonly walkTest: Omit<WalkTest, "queries">;
  readonly labels: readonly CableLabel[];
  readonly removed: readonly RemovedDevice[];
  readonly disposal: readonly DisposalLine[];
  readonly hazards: readonly HazardFlag[];
  readonly commissioning: { readonly rows: readonly CommissioningRow[]; readonly lastLine: string };
  readonly handover: readonly HandoverSection[];
  readonly asBuilt: readonly AsBuiltZone[];
}

/** Order of work, walk test, labels, lists and papers of a planned job, and every question they raise. */
export function cutOverOf({
  prepared,
  planned,
  fitted,
  zones,
  loops: estimated,
}: {
  readonly prepared: PreparedJob;
  readonly planned: readonly PlannedLoop[];
  readonly fitted: readonly FittedModule[];
  readonly zones: ZoneSchedule;
  readonly loops: readonly EstimatedLoop[];
}): { readonly cutOver: EstimatedCutOver; readonly queries: readonly Query[] } {
  const { survey, holds, rates } = prepared;
  const expectedShut = (key: string) => estimated.find((loop) => loop.key === key)?.expectedAsLeft?.shut;
  const every = cutOverLoops({ loops: survey.loops, planned, fitted, zones, expectedShut });
  const waiting = every.filter(isReadAgainFirst);
  const loops = every.filter((loop) => !waiting.includes(loop));
  const { panels, queries: panelQueries } = cutOverPanels(survey);
  const agreedDarkMinutes = agreedMinutes(survey);
  const release = survey.site.lifeSafetyRelease;
  const order = (removedPlaces: readonly string[]) =>
    cutOverOrder({ loops, panels, holds, release, agreedDarkMinutes, labour: rates.labour, removedPlaces });
  const { held } = order([]);
  const removed = removedDevices({ loops, panels, held });
  const uncovered = removed.filter(({ comesOff }) => comesOff).map(({ place }) => place);
  const { steps, doNotTouch, queries } = order([...new Set(uncovered)]);
  const hazards = hazardFlags({ site: survey.site, panels: survey.panels, loops: survey.loops });
  const times = entryExitTimes(delaysOf(survey));
  const { queries: walkQueries, ...walked } = walkTest({ loops, settleSeconds: times.settleSeconds });
  const asked = new Set(
    survey.queries.filter(({ message }) => /\bopenings?\b|how many leaves/i.test(message)).map(({ key }) => key),
  );
  return {
    cutOver: {
      steps,
      held,
      doNotTouch,
      readAgainFirst: waiting.map(loopName),
      walkTest: walked,
      labels: labels({ loops }),
      removed,
      disposal: disposalList({ removed, panels, held }),
      hazards: hazards.flags,
      commissioning: commissioningSheet({ loops }),
      handover: handoverSheet({ loops, held, times: times.times }),
      asBuilt: asBuiltZones({ loops }),
    },
    queries: [
      ...queries,
      ...panelQueries,
      ...times.queries,
      ...hazards.queries,
      ...walkQueries.filter(({ key }) => !asked.has(key)).map((query) => atRow(query, survey)),
    ],
  };
}

function atRow(query: Query, { loops }: Survey): Query {
  const loop = loops.find(({ key }) => key === query.key);
  return loop === undefined ? query : { ...query, sheet: loop.sheet, row: loop.row };
}

/** Blank plates that the devices going out of use leave to buy: removed less replaced. [count] */
export function blankPlates({
  prepared,
  planned,
  fitted,
}: {
  readonly prepared: PreparedJob;
  readonly planned: readonly PlannedLoop[];
  readonly fitted: readonly FittedModule[];
}): number {
  const { survey, holds } = prepared;
  const { zones } = zonesOf({ prepared, planned, fitted });
  const loops = cutOverLoops({ loops: survey.loops, planned, fitted, zones }).filter((loop) => !isReadAgainFirst(loop));
  const held = isHeld({ loops, holds, release: survey.site.lifeSafetyRelease });
  const { panels } = cutOverPanels(survey);
  return removedDevices({ loops, panels, held }).reduce((sum, { plates }) => sum + plates, 0);
}

/** A pair that is only read again: it has no input yet, so nothing is lifted, moved or tried. */
const isReadAgainFirst = ({ treatment, input }: CutOverLoop): boolean => treatment === "measureAgain" && input === null;

/** Minutes agreed with the owner, where the settings hold a number that can be meant so. [min] */
function agreedMinutes({ settings }: Survey): number | undefined {
  const minutes = settings["agreedDarkMinutes"];
  return minutes !== undefined && minutes >= 1 && minutes <= 10_080 ? minutes : undefined;
}

/** Delays that the settings give; a figure that is no delay is left out and the table's default stands. [s] */
function delaysOf({ settings }: Survey): Parameters<typeof entryExitTimes>[0] {
  const given = (name: string) => {
    const seconds = settings[name];
    return seconds !== undefined && seconds >= 0 && seconds <= 3600 ? { [name]: seconds } : {};
  };
  return { ...given("exitSeconds"), ...given("entrySeconds"), ...given("abortSeconds") };
}

/** Places of the old controls with keypads and sirens as typed; with several controls only where it says which one. */
function cutOverPanels(survey: Survey): {
  readonly panels: readonly CutOverPanel[];
  readonly queries: readonly Query[];
} {
  const [only, ...others] = survey.panels;
  const queries: Query[] = [];
  const count = (panel: SurveyPanel, item: RegExp, name: string): number | undefined => {
    const typed = panel === only && others.length === 0 ? { ...survey.site.typed, ...panel.typed } : panel.typed;
    const [column, words] = Object.entries(typed).find(([heading]) => item.test(heading)) ?? [];
    if (column === undefined || words === undefined || words.trim() === "") return undefined;
    const counts = [...words.matchAll(/\b(\d{1,2})\b(?!\s*(?:v|volts?|ma|w|%)\b)/gi)].map(([, digits]) =>
      Number(digits),
    );
    if (counts.length === 1 && counts[0] !== undefined) return counts[0];
    const message = `How many ${name} the old control at ${panel.panel} has was not read. Write one number.`;
    queries.push({ sheet: "Site", row: null, column, typed: words, message });
    return undefined;
  };
  const panels = survey.panels.map((panel): CutOverPanel => {
    const keypads = count(panel, /^keypads?\b/i, "keypads");
    const sirens = count(panel, /^(sirens?|sounders?|bells?)\b/i, "sirens");
    return {
      panel: panel.panel,
      ...(panel.place === undefined ? {} : { place: panel.place }),
      ...(panel.mains === undefined ? {} : { mains: panel.mains }),
      ...(panel.battery === undefined ? {} : { battery: panel.battery }),
      ...(keypads === undefined ? {} : { keypads }),
      ...(sirens === undefined ? {} : { sirens }),
    };
  });
  return { panels, queries };
}
