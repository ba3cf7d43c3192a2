import { readFileSync } from "node:fs";
import { evaluate } from "mathjs";
import { beforeAll, describe, expect, it } from "vitest";
import type { Estimate } from "../../lib/estimate/estimate.js";
import { boathouse, estimateOf } from "./estimate-of.js";

const page = readFileSync(new URL("../../docs/three-loops.md", import.meta.url), "utf8");
const rows = page
  .split("\n")
  .filter((line) => line.startsWith("|") && !line.startsWith("|---") && !line.startsWith("| what"))
  .map((line) =>
    line
      .split("|")
      .slice(1, -1)
      .map((cell) => cell.trim()),
  );

describe("docs/three-loops.md, worked by hand", () => {
  let estimate: Estimate;
  beforeAll(async () => {
    estimate = await estimateOf(boathouse());
  });

  /** Figures of the estimate by the page's names, put into an arithmetic. */
  const filledIn = (text: string): string =>
    text
      .replace(/loops\.([A-Z ]+)\.([a-zA-Z.]+)/g, (_, tag: string, path: string) =>
        String(
          at(
            estimate.loops.find((loop) => loop.tag === tag),
            path,
          ),
        ),
      )
      .replace(/labour\.([a-zA-Z]+)\.([a-zA-Z]+)/g, (_, task: string, path: string) =>
        String(
          at(
            estimate.labour.find((line) => line.task === task),
            path,
          ),
        ),
      )
      .replace(/lines\.([A-Za-z0-9-]+)\.([a-zA-Z]+)/g, (_, id: string, path: string) =>
        String(
          at(
            estimate.price.lines.find((line) => line.id === id),
            path,
          ),
        ),
      );
  const at = (value: unknown, path: string): unknown =>
    path.split(".").reduce((inside: unknown, name) => (inside as Record<string, unknown> | undefined)?.[name], value);
  const worked = (text: string): number => Number(evaluate(filledIn(text)));

  it("has more than thirty lines, most of them held against the estimate", () => {
    expect(rows.length).toBeGreaterThan(30);
    expect(rows.filter(([, , , where]) => where !== "").length).toBeGreaterThan(15);
  });

  it.each(rows.map(([what, arithmetic, result, where]) => [what ?? "", arithmetic ?? "", result ?? "", where ?? ""]))(
    "%s: %s",
    (_, arithmetic, result, where) => {
      const printed = /^-?[\d.]+/.exec(result)?.[0];
      const decimals = printed?.split(".")[1]?.length ?? 2;
      // The page's arithmetic runs on printed figures, so it may be one unit of the last printed digit off.
      const allowed = 1.01 * 10 ** -decimals;
      const value = worked(arithmetic);
      if (printed !== undefined) expect(Math.abs(value - Number(printed))).toBeLessThanOrEqual(allowed);
      if (where !== "") expect(Math.abs(worked(where) - value)).toBeLessThanOrEqual(Math.max(allowed, value * 2e-4));
    },
  );
});
