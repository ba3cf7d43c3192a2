import type { Spool } from "../../lib/purchasing/cut-records.js";

/**
 * Cost of the best cutting by the textbook assignment model (piece i in spool j, spool j used), written as LP text
 * and given to HiGHS directly: nothing of the library takes part.
 */
export async function assignmentModelCents(lengths: readonly number[], spools: readonly Spool[]): Promise<number> {
  const loader = (await import("highs")) as unknown as {
    default: () => Promise<{ solve(text: string, options: object): { Status: string; ObjectiveValue: number } }>;
  };
  const highs = await loader.default();
  const total = lengths.reduce((sum, length) => sum + length, 0);
  const bins = spools.flatMap((one) => {
    const enough = Math.min(lengths.length, Math.ceil((2 * total) / one.meters));
    return [
      ...Array.from({ length: one.stock }, () => ({ meters: one.meters, cents: one.stockCents ?? 0, kind: "" })),
      ...Array.from({ length: enough }, () => ({ meters: one.meters, cents: one.cents, kind: one.code })),
    ];
  });
  const x = (i: number, j: number) => `x${i}_${j}`;
  const place = lengths.map((_, i) => ` p${i}: ${bins.map((_, j) => x(i, j)).join(" + ")} = 1`);
  const room = bins.map(({ meters }, j) => {
    const load = lengths.map((length, i) => `${length} ${x(i, j)}`).join(" + ");
    return ` r${j}: ${load} - ${meters} u${j} <= 0`;
  });
  const order = bins.flatMap(({ kind }, j) =>
    kind !== "" && bins[j + 1]?.kind === kind ? [` o${j}: u${j} - u${j + 1} >= 0`] : [],
  );
  const names = [...bins.map((_, j) => `u${j}`), ...lengths.flatMap((_, i) => bins.map((_, j) => x(i, j)))];
  const text = [
    "Minimize",
    ` cost: ${bins.map(({ cents }, j) => `${cents} u${j}`).join(" + ")}`,
    "Subject To",
    ...place,
    ...room,
    ...order,
    "Binary",
    ...names.map((name) => ` ${name}`),
    "End",
  ].join("\n");
  const answer = highs.solve(text, { mip_rel_gap: 0, time_limit: 60, output_flag: false });
  if (answer.Status !== "Optimal") throw new Error(`the assignment model ended as ${answer.Status}`);
  return Math.round(answer.ObjectiveValue);
}
