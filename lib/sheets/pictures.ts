import type { EstimatedLoop } from "../estimate/estimate.js";
import { formatLength } from "../quantities/format-length.js";
import { formatOhms } from "../quantities/format-ohms.js";
import type { Block, PictureBlock } from "../report/model.js";
import { loopSchematic } from "../report/pictures/loop-schematic.js";
import { moduleWiring } from "../report/pictures/module-wiring.js";
import { fitsNewEol } from "./loop-words.js";
import { type SheetInput, surveyLoopOf } from "./sheet-input.js";

/**
 * The drawing without title and list, which the card has in words already: only the rows from `top` on, `height` of
 * them. [px]
 */
function cropped(svg: string, top: number, height: number): string {
  return svg
    .replace(/(<svg[^>]*? height=")[\d.]+"/, `$1${height}"`)
    .replace(/viewBox="0 0 ([\d.]+) [\d.]+"/, `viewBox="0 ${top} $1 ${height}"`);
}

function picture(svg: string, alt: string, widthPixels: number): PictureBlock {
  const size = /<svg[^>]*?\bwidth="([\d.]+)"[^>]*?\bheight="([\d.]+)"/.exec(svg);
  const [width, height] = [Number(size?.[1] ?? 760), Number(size?.[2] ?? 260)];
  return { kind: "picture", svg, widthPixels, heightPixels: Math.round((height * widthPixels) / width), alt };
}

/** The loop as it is to be left, where a resistor is fitted or the pair is worked on; plain keeps need no picture. */
export function cardPicture(input: SheetInput, loop: EstimatedLoop): PictureBlock | undefined {
  const worked = fitsNewEol(loop, input.estimate.bill) || loop.treatment === "repair" || loop.treatment === "rewire";
  if (!worked) return undefined;
  const survey = surveyLoopOf(input, loop);
  const eol = input.estimate.terminals.find(({ loop: key, eolOhms }) => key === loop.key && eolOhms !== null);
  const form = survey?.contactForm === "NO" || loop.condition === "normallyOpen" ? ("NO" as const) : ("NC" as const);
  const cable = [
    survey?.cable?.words ?? "size not written",
    ...(survey?.run === undefined ? [] : [formatLength({ meters: survey.run.meters, unit: "m" })]),
  ].join(", ");
  const svg = loopSchematic({
    title: `${loop.panel} loop ${loop.loop}, as it is to be left`,
    panel: loop.panel,
    cable,
    openings: Array.from({ length: Math.max(1, loop.openingsProved.total) }, (_, index) => ({
      label: `opening ${index + 1}`,
      form,
    })),
    eol:
      eol === undefined || eol.eolOhms === null
        ? null
        : { at: eol.eolAt === "panel" ? "panelAcross" : "farEnd", label: formatOhms(eol.eolOhms) },
  });
  return picture(
    cropped(svg, 36, 204),
    `Loop ${loop.loop} of ${loop.panel} with its openings and where the resistor sits.`,
    560,
  );
}

/** From so many loops on only loops that are worked on have a picture: the schedule says the same of a module in words. */
const manyLoops = 200;

/** The terminal strip of one module, on a page of its own. */
export function modulePicture(input: SheetInput, name: string): readonly Block[] {
  const rows = input.estimate.terminals.filter(({ module }) => module === name);
  const first = rows[0];
  if (first === undefined) return [];
  if (input.estimate.loops.length > manyLoops) return [];
  const loopOf = (key: string) => input.estimate.loops.find((loop) => loop.key === key);
  const onStrip = rows.filter(({ terminal }) => !terminal.startsWith("splice"));
  const terminals = [...new Set(onStrip.map(({ terminal }) => terminal))].sort(inStripOrder);
  const splices = rows.filter(({ terminal }) => terminal.startsWith("splice"));
  const setting = input.estimate.modules.filter(({ panel }) => panel === first.panel);
  const svg = moduleWiring({
    title: `${first.panel}, module ${name}`,
    settings: setting.map(({ type, eolOhms }) => `type ${type}, ${formatOhms(eolOhms)}`),
    terminals: terminals.map((terminal) => ({
      terminal,
      conductors: onStrip
        .filter((row) => row.terminal === terminal)
        .map((row) => {
          const loop = loopOf(row.loop);
          const eol = row.eolOhms === null || row.conductor !== "A" ? {} : { eol: eolWords(row.eolOhms, row.eolAt) };
          return {
            conductor: `${row.conductor} ________`,
            tag: row.tag,
            loop: `${loop?.loop ?? row.loop}${loop?.protects === null || loop === undefined ? "" : ` ${loop.protects}`}`,
            ...eol,
          };
        }),
    })),
    ...(splices.length === 0
      ? {}
      : { notes: splices.map(({ tag, conductor, terminal }) => `${tag}: ${conductor} ${terminal}`) }),
  });
  return [{ kind: "pageBreak" }, picture(svg, `Terminals of module ${name} with the conductor and loop on each.`, 900)];
}

const eolWords = (ohms: number, at: "device" | "panel" | null): string =>
  `${formatOhms(ohms)} ${at === "panel" ? "at the panel" : "at the far end"}`;

/** Inputs first, then returns, each by number; the rest last. */
function inStripOrder(a: string, b: string): number {
  const rank = (terminal: string) => (terminal.startsWith("input") ? 0 : terminal.startsWith("return") ? 1 : 2);
  const numberIn = (terminal: string) => Number(/\d+/.exec(terminal)?.[0] ?? 0);
  return rank(a) - rank(b) || numberIn(a) - numberIn(b);
}
