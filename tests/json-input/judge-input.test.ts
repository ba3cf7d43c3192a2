import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { readJudgeInput } from "../../lib/json-input/judge-input.js";
import { SurveyRefused } from "../../lib/survey/survey-refused.js";

const cases = JSON.parse(
  readFileSync(new URL("../fixtures/judge-cases/cases.json", import.meta.url), "utf8"),
) as readonly { readonly loop: object }[];
const oneLoop = { id: "1", openings: 2, readings: { closedOhms: 2.4 } };

describe("JSON of the judge command", () => {
  it("takes all 400 recorded loops unchanged", () => {
    const loops = cases.map((one) => one.loop);
    expect(loops.length).toBe(400);
    expect(readJudgeInput({ loops })).toEqual(loops);
  });

  it.each([
    [{ loops: [{ ...oneLoop, volts: 1 }] }, "loops[0].volts: unknown field"],
    [{ loops: [oneLoop, { ...oneLoop, readings: { closed: 1 } }] }, "loops[1].readings.closed: unknown field"],
    [{ loops: [{ ...oneLoop, readings: { earth: { cOhms: 3 } } }] }, "loops[0].readings.earth.cOhms: unknown field"],
    [{ loops: [{ ...oneLoop, openings: -1 }] }, "loops[0].openings"],
    [{ loops: [{ ...oneLoop, readings: { closedOhms: "open" } }] }, "loops[0].readings.closedOhms"],
    [{ loops: [{ ...oneLoop, readings: { closedOhms: -4 } }] }, "loops[0].readings.closedOhms"],
    [{ loops: [{ id: "1", readings: {} }] }, "loops[0].openings"],
    [{ loops: [{ ...oneLoop, lifted: "perhaps" }] }, "loops[0].lifted"],
    [{ loops: [] }, "loops"],
    [{}, "loops"],
    [null, "the whole file"],
    [{ loops: [oneLoop], more: 1 }, "more: unknown field"],
  ])("refuses %j at %s", (json, place) => {
    expect(() => readJudgeInput(json)).toThrow(SurveyRefused);
    expect(() => readJudgeInput(json)).toThrow(place);
  });

  it("keeps apart not measured, over-range and 0 Ω", () => {
    const [none, over, zero] = readJudgeInput({
      loops: [
        { ...oneLoop, readings: {} },
        { ...oneLoop, readings: { closedOhms: "OL" } },
        { ...oneLoop, readings: { closedOhms: 0 } },
      ],
    }).map((loop) => loop.readings.closedOhms);
    expect([none, over, zero]).toEqual([undefined, "OL", 0]);
  });
});
