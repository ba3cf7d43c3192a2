import { drawn } from "./elements.js";
import type { Estimated } from "./shown.js";

const WIDTH = 320;
const HEIGHT = 84;
const EDGE = 14;

/**
 * Where the price may end: a bar from P10 to P90 with the middle and what is quoted; told by shape and text, in the
 * colour of the text around it. null where no range was worked out.
 */
export function rangePicture({ estimate, formats }: Estimated): SVGElement | null {
  const { p10Cents, p50Cents, p90Cents, totalCents } = estimate.price;
  if (p10Cents === null || p50Cents === null || p90Cents === null) return null;
  const values = [p10Cents, p50Cents, p90Cents, totalCents];
  const low = Math.min(...values);
  const span = Math.max(...values) - low || 1;
  const at = (cents: number) => EDGE + ((cents - low) / span) * (WIDTH - 2 * EDGE);
  const words = `Price range: one job of 10 ends below ${formats.roundMoney(p10Cents)}, half below ${formats.roundMoney(p50Cents)}, 9 of 10 below ${formats.roundMoney(p90Cents)}; quoted ${formats.roundMoney(totalCents)}.`;
  const picture = drawn("svg", { viewBox: `0 0 ${WIDTH} ${HEIGHT}`, class: "range", role: "img", "aria-label": words });
  const label = (x: number, y: number, text: string, anchor: string) =>
    drawn("text", { x, y, "text-anchor": anchor, class: "range-text" }, text);
  const quoted = at(totalCents);
  const anchorOf = (x: number) => (x < WIDTH * 0.3 ? "start" : x > WIDTH * 0.7 ? "end" : "middle");
  picture.append(
    drawn("line", { x1: EDGE, y1: 44, x2: WIDTH - EDGE, y2: 44, class: "range-axis" }),
    drawn("rect", {
      x: at(p10Cents),
      y: 34,
      width: Math.max(1, at(p90Cents) - at(p10Cents)),
      height: 20,
      rx: 3,
      class: "range-bar",
    }),
    drawn("line", { x1: at(p50Cents), y1: 34, x2: at(p50Cents), y2: 54, class: "range-middle" }),
    drawn("path", { d: `M${quoted} 33 l-6 -9 h12 z`, class: "range-quoted" }),
    label(quoted, 18, `quoted ${formats.roundMoney(totalCents)}`, anchorOf(quoted)),
    label(at(p10Cents), 72, formats.roundMoney(p10Cents), anchorOf(at(p10Cents))),
    label(at(p50Cents), 72, formats.roundMoney(p50Cents), "middle"),
    label(at(p90Cents), 72, formats.roundMoney(p90Cents), anchorOf(at(p90Cents))),
  );
  return picture;
}
