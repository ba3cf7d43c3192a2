import type { RadioTestRecord } from "../estimate/radio-of.js";
import type { Block, Sheet } from "../report/model.js";
import { column, number, paragraph, text, title, wrapped } from "./cells.js";
import { loopsShort, type SheetInput } from "./sheet-input.js";

const verdictWords: Readonly<Record<RadioTestRecord["verdict"], string>> = {
  enough: "the readings carry it",
  testAgain: "test again",
  repeater: "too weak",
  testOnSite: "test on site",
};

/** Radio tests judged, repeaters and where, places still to be tested. */
export function radioSheet(input: SheetInput): Sheet | undefined {
  const { radio } = input.estimate;
  if (radio.length === 0) return undefined;
  const tests = radio.filter((one) => one.record === "test");
  const repeaters = radio.filter((one) => one.record === "repeater");
  const untested = radio.filter((one) => one.record === "untested");
  const needed = input.job.radioMarginDb;
  return {
    name: "Radio",
    orientation: "landscape",
    ...(tests.length === 0 ? {} : { headingOf: "radio_judged" }),
    blocks: [
      title("Radio"),
      paragraph(
        `At least ${needed} dB of signal over background, doors and covers as in use; count 50 messages where it is under 15 dB or one was lost. A few messages heard prove little, see the words of each row.`,
        "note",
      ),
      ...(tests.length === 0 ? [] : [testTable(input, tests)]),
      ...(repeaters.length === 0
        ? []
        : [title("Repeaters in the bill", 2), ...repeaters.map(({ words }) => paragraph(sentence(words)))]),
      ...untested.flatMap(({ words }) => [title("Not tested yet", 2), paragraph(sentence(words), "warning")]),
    ],
  };
}

const sentence = (words: string) =>
  `${words.charAt(0).toUpperCase()}${words.slice(1)}${words.endsWith(".") ? "" : "."}`;

function testTable(input: SheetInput, tests: readonly RadioTestRecord[]): Block {
  return {
    kind: "table",
    name: "radio_judged",
    whenEmpty: "",
    columns: [
      column("from", "Tested from", "wrapped", 20),
      column("location", "At", "wrapped", 20),
      column("stands", "Stands for", "wrapped", 18),
      column("signal", "Signal dBm", "general", 11),
      column("noise", "Background dBm", "general", 15),
      column("margin", "Margin dB", "general", 11),
      column("heard", "Heard", "text", 10),
      column("verdict", "So", "wrapped", 18),
      column("words", "Why", "wrapped", 50),
    ],
    rows: tests.map((test) => [
      wrapped(test.from),
      wrapped(test.location),
      wrapped(standsFor(input, test)),
      number(test.signalDbm),
      number(test.noiseDbm),
      number(test.marginDb),
      text(test.heard === null || test.sent === null ? "" : `${test.heard} of ${test.sent}`),
      wrapped(`${verdictWords[test.verdict]}${test.planned ? "" : "; nothing planned there"}`),
      wrapped(test.words.join("; ")),
    ]),
  };
}

function standsFor(input: SheetInput, { panels, loops }: RadioTestRecord): string {
  if (panels.length > 0) return panels.map((panel) => `modules at ${panel}`).join(", ");
  return loops.length === 0 ? "no loop recognised" : loopsShort(input, loops);
}
