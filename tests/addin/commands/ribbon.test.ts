import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { associateCommands, type CommandName, commandNames, ribbonCommand } from "../../../addin/commands/ribbon.js";
import { commandWorks } from "../../../addin/commands/works.js";
import { ExcelHost } from "../../excel-host/excel-host.js";
import { connectionTo } from "../sheet/demo.js";

const today = () => "2026-03-02";

/** Runs a command as the ribbon does and gives back what was reported, in order. */
async function pressed(host: ExcelHost, name: CommandName) {
  const said: string[] = [];
  let completed = 0;
  const command = ribbonCommand({
    name,
    work: commandWorks({ today })[name],
    connect: () => connectionTo(host),
    report: {
      onProgress: ({ words }) => said.push(words),
      onDone: (done) => said.push(`done ${done}`),
      onProblem: (failed, words) => said.push(`problem ${failed}: ${words}`),
    },
  });
  await command({ completed: () => completed++ });
  return { said, completed };
}

describe("the ribbon's buttons", () => {
  test("set the survey up, say how far it is and give the button back", async () => {
    const host = new ExcelHost();
    const { said, completed } = await pressed(host, "setUpSurvey");
    expect(completed).toBe(1);
    expect(said.length).toBeGreaterThan(10);
    expect(said.at(-1)).toBe("done setUpSurvey");
    expect(host.book.sheets.map(({ name }) => name)).toContain("Survey Loops");
  });

  test("give the button back when the work is refused, with the reason in words", async () => {
    const host = new ExcelHost();
    host.cellEdit = true;
    const { said, completed } = await pressed(host, "setUpSurvey");
    expect(completed).toBe(1);
    expect(said.at(-1)).toMatch(/^problem setUpSurvey: A cell is still being edited/);
    host.cellEdit = false;
    const rebuild = await pressed(host, "rebuildSheets");
    expect(rebuild.completed).toBe(1);
    expect(rebuild.said.at(-1)).toMatch(/^problem rebuildSheets: /);
  });

  test("are all associated, under the names that the manifest calls", () => {
    const manifest = readFileSync(new URL("../../../manifest.xml", import.meta.url), "utf8");
    const called = [...manifest.matchAll(/<FunctionName>(\w+)<\/FunctionName>/g)].map(([, name]) => name);
    expect(called.length).toBe(3);
    const associated: string[] = [];
    const office = { actions: { associate: (name: string) => associated.push(name) } };
    const page = globalThis as { Office?: unknown };
    page.Office = office;
    try {
      const nothing = () => undefined;
      associateCommands(commandWorks({ today }), { onProgress: nothing, onDone: nothing, onProblem: nothing });
    } finally {
      page.Office = undefined;
    }
    expect(associated.sort()).toEqual(called.sort());
    expect(associated).toEqual([...commandNames].sort());
  });
});
