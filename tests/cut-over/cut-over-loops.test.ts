import { expect, test } from "vitest";
import { cutOverLoops } from "../../lib/cut-over/cut-over-loops.js";
import type { PlannedLoop } from "../../lib/plan/planned-loop.js";
import { noWork } from "../../lib/treatments/treatment.js";
import { zoneSchedule } from "../../lib/zones/zone-schedule.js";
import { siteJob } from "./job.js";

test("plan, modules and zones of a clinic come together by loop key; what the zones leave alone is excluded", () => {
  const { survey } = siteJob("b");
  const planned = survey.loops.map(
    ({ key, panel }): PlannedLoop => ({
      key,
      panel,
      treatment: "keep",
      recommended: "keep",
      needsSupply: false,
      input: null,
      eol: { ohms: 5600, at: "device", isNew: false },
      work: noWork,
      items: {},
      supplyMilliamps: 0,
      risk: null,
      why: "",
    }),
  );
  const fitted = [
    {
      panel: "P1",
      name: "M1",
      type: "six",
      eolOhms: 5600,
      spare: 4,
      inputs: [
        { number: 1, loops: ["R012", "R013"] },
        { number: 2, loops: ["R015"] },
      ],
    },
  ];
  const zones = zoneSchedule({ loops: survey.loops, oldZones: survey.oldZones });
  const loops = cutOverLoops({
    loops: survey.loops,
    planned,
    fitted,
    zones,
    expectedShut: () => ({ lowOhms: 5300, highOhms: 5900 }),
  });
  const of = (key: string) => loops.find((loop) => loop.key === key);
  expect(loops.length).toBe(34);
  expect(of("R013")).toMatchObject({ tag: "EXAM 5-8", input: { module: "M1", number: 1 }, eol: { ohms: 5600 } });
  expect(of("R013")?.asFound).toEqual({ shut: "5.04k", opened: "51k" });
  expect(of("R016")?.zones).toMatchObject([{ number: null, use: "arming" }]);
  // The plan of this test would keep the sprinkler pair on an input.
  expect(of("R015")).toMatchObject({ treatment: "excluded", input: null, eol: null, zones: [] });
  expect(of("R015")?.expectedShut).toBeUndefined();
});
