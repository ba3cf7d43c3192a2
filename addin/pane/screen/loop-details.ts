import type { EstimatedLoop, SurveyLoop } from "../../loopwright-pane.js";
import { formatHours, formatOhms, formatPercentOnPaper, treatmentWords } from "../../loopwright-screen.js";
import { dataTable } from "./data-table.js";
import { button, type Child, el, help, list } from "./elements.js";
import { loopWish } from "./loop-wish.js";
import { placeWords } from "./queries.js";
import { type Estimated, isLeftAlone, nameOfLoop } from "./shown.js";

/** Everything known of one loop: picture, verdict, doubts, checks, money, wishes, the row as typed. */
export function loopDetails(shown: Estimated, loop: EstimatedLoop): readonly Child[] {
  const { estimate, state } = shown;
  const row = state.survey?.loops.find(({ key }) => key === loop.key);
  if (isLeftAlone(loop)) {
    return [
      el("p", {}, el("strong", {}, "DO NOT TOUCH. "), loop.reason),
      list(estimate.holds.filter((hold) => hold.loops.includes(loop.key)).map(({ words }) => words)),
      ...asTyped(shown, loop, row),
    ];
  }
  return [
    picture(shown, loop),
    ...verdicts(loop),
    ...said(
      "What the record says",
      loop.facts.map(({ words }) => words),
    ),
    ...said("What the readings cannot tell", loop.cannotTell),
    ...said("First checks", loop.findings[0]?.firstChecks ?? []),
    ...money(shown, loop),
    ...loopWish(shown, loop),
    ...asLeft(loop),
    ...nextReadings(shown, loop),
    ...questions(shown, loop),
    ...asTyped(shown, loop, row),
  ];
}

const part = (heading: string, ...content: readonly Child[]): readonly Child[] => [el("h4", {}, heading), ...content];

const said = (heading: string, lines: readonly string[]): readonly Child[] =>
  lines.length === 0 ? [] : part(heading, list(lines));

/** Drawn by the library as SVG text; shown as an image, so that nothing in it can run. */
function picture({ act }: Estimated, loop: EstimatedLoop): Child {
  const drawing = act.picture(loop.key);
  if (drawing === null) return null;
  if (drawing === undefined) return el("p", { class: "small" }, "The picture is being drawn.");
  const { svg, alt, widthPixels, heightPixels } = drawing;
  return el(
    "div",
    { class: "drawing", tabindex: 0, role: "group", "aria-label": `Picture of ${nameOfLoop(loop)}` },
    el("img", {
      src: `data:image/svg+xml;charset=utf-8,${encodeURIComponent(svg)}`,
      alt,
      width: widthPixels,
      height: heightPixels,
    }),
  );
}

function verdicts({ findings, openingsProved }: EstimatedLoop): readonly Child[] {
  const { proved, total } = openingsProved;
  return part(
    "Verdict",
    dataTable({
      caption: "What it may be, most probable first",
      hideCaption: true,
      columns: [{ words: "What it may be" }, { words: "Probability", figures: true }, { words: "Usual repair" }],
      rows: findings.map(({ words, probability, usualRepair }) => ({
        cells: [words, formatPercentOnPaper(probability), usualRepair],
      })),
    }),
    el("p", {}, `${proved} of ${total} openings proved.`),
    help(
      "probability",
      "Where do the probabilities come from?",
      "From how common each fault is in such jobs and how well each explains the readings taken, meter and leads allowed for. They are rounded to 5 %: nothing here is known more finely.",
    ),
  );
}

function money({ estimate, formats }: Estimated, loop: EstimatedLoop): readonly Child[] {
  const why = estimate.whys?.find(({ key }) => key === loop.key);
  const { cost } = loop;
  const nameOf = (key: string) => {
    const other = estimate.loops.find((one) => one.key === key);
    return other === undefined ? key : nameOfLoop(other);
  };
  const replanned = why?.replanned ?? null;
  return part(
    "Treatment and why",
    el(
      "p",
      {},
      el("strong", {}, treatmentWords[loop.treatment]),
      loop.needsSupply && "; its detector keeps its supply",
    ),
    el("p", { class: "as-typed" }, loop.reason),
    why === undefined ? null : el("p", {}, why.words),
    replanned !== null &&
      replanned.otherLoops.length > 0 &&
      el("p", {}, `That would also change ${replanned.otherLoops.map(nameOf).join(", ")}.`),
    replanned !== null &&
      el(
        "details",
        { class: "help", "data-keep-open": `difference ${loop.key}` },
        el("summary", { "data-keep": `difference ${loop.key}` }, "What the next choice would change, line by line"),
        dataTable({
          caption: `Difference in our cost: ${formats.moreMoney(replanned.moreCents)} in all`,
          columns: [{ words: "Line" }, { words: "Quantity", figures: true }, { words: "Cost", figures: true }],
          rows: replanned.differences.map(({ line, quantity, cents }) => ({
            cells: [line, formats.count(quantity), formats.moreMoney(cents)],
          })),
        }),
      ),
    dataTable({
      caption: "What this loop causes by itself, our cost",
      columns: [{ words: "Cause" }, { words: "Amount", figures: true }],
      rows: [
        { cells: [`Labour, ${formatHours(cost.hours)}`, formats.money(cost.labourCents)] },
        { cells: ["Parts", formats.money(cost.partsCents)] },
        { cells: ["Devices", formats.money(cost.devicesCents)] },
        {
          cells: [
            `What may still go wrong (${formatPercentOnPaper(cost.riskProbability)})`,
            formats.money(cost.riskCents),
          ],
        },
        { cells: ["Together", formats.money(cost.costCents)], total: true },
      ],
    }),
  );
}

function asLeft({ input, expectedAsLeft }: EstimatedLoop): readonly Child[] {
  if (expectedAsLeft === null) return [];
  const { shut, opened } = expectedAsLeft;
  const band = ({ lowOhms, highOhms }: typeof shut) => `${formatOhms(lowOhms)} to ${formatOhms(highOhms)}`;
  return part(
    "To be read when done",
    list([
      ...(input === null ? [] : [`Lands on ${input.module}, input ${input.number}`]),
      `Shut: ${band(shut)}`,
      `One opening open: ${opened === "OL" ? "over-range" : band(opened)}`,
    ]),
    el("p", { class: "small" }, "Not in the band? Write it down and stop. Do not change a resistor to make it fit."),
  );
}

function nextReadings({ formats }: Estimated, { next }: EstimatedLoop): readonly Child[] {
  if (next.length === 0) return [];
  return part(
    "Further readings",
    list(
      next.map(
        ({ words, minutes, saving }) =>
          `${words} (${Math.max(1, Math.round(minutes))} min; worth ${formats.money(saving * 100)} on average)`,
      ),
    ),
  );
}

function questions({ state }: Estimated, loop: EstimatedLoop): readonly Child[] {
  const asked = state.queries.filter(({ key }) => key === loop.key);
  return said(
    "Queries",
    asked.map((query) => `${placeWords(query)}: ${query.message}`),
  );
}

/** The row as it was typed, with the cell marked that a query pointed at. */
function asTyped(shown: Estimated, loop: EstimatedLoop, row: SurveyLoop | undefined): readonly Child[] {
  if (row === undefined) return [];
  const { state, look, act } = shown;
  const pointed = look.pointed?.key === loop.key ? look.pointed.column : null;
  const headingOf = (column: string) =>
    state.headings.find((one) => one.sheet === row.sheet && one.column === column)?.heading ?? column;
  const typed = Object.entries(row.typed).filter(([, value]) => value !== "");
  return part(
    "The row as typed",
    dataTable({
      caption: `${row.sheet}, row ${row.row}`,
      columns: [{ words: "Column" }, { words: "Typed" }],
      rows: typed.map(([column, value]) => ({
        cells: [headingOf(column), el("span", { class: "as-typed" }, value)],
        marked: pointed !== null && (pointed === column || pointed === headingOf(column)),
      })),
    }),
    row.run !== undefined &&
      el(
        "p",
        { class: "small" },
        `Run taken as ${shown.formats.length(row.run.meters)}${row.run.assumed ? ", assumed" : ""}.`,
      ),
    state.host === "excel" &&
      button({
        words: "Go to the row",
        keep: `row ${loop.key}`,
        click: () => act.jump({ sheet: row.sheet, row: row.row, column: null }, -1, undefined),
      }),
  );
}
