import { type Child, el } from "./elements.js";
import { files } from "./files.js";
import { loops } from "./loops.js";
import { options } from "./options.js";
import { orderOfWork } from "./order-of-work.js";
import { orders } from "./orders.js";
import { plan } from "./plan.js";
import { price } from "./price.js";
import { queries } from "./queries.js";
import { readNext } from "./read-next.js";
import { type Estimated, type Part, parts, type Shown } from "./shown.js";
import { terminals } from "./terminals.js";
import { zones } from "./zones.js";

type OwnPart = Exclude<Part, "answers">;

const always: Readonly<Partial<Record<OwnPart, (shown: Shown) => readonly Child[]>>> = { queries, files };

const withEstimate: Readonly<Partial<Record<OwnPart, (shown: Estimated) => readonly Child[]>>> = {
  loops,
  readNext,
  plan,
  options,
  price,
  orders,
  terminals,
  zones,
  work: orderOfWork,
};

/** One part with its heading; beside the answers stand the loops. */
export function partSection(shown: Shown, part: OwnPart): HTMLElement {
  const { estimate } = shown.state;
  const words = parts.find(([one]) => one === part)?.[1] ?? "";
  const draw = withEstimate[part];
  const content =
    draw === undefined
      ? (always[part]?.(shown) ?? [])
      : estimate === null
        ? [el("p", {}, "This comes with the estimate: work it out first.")]
        : draw({ ...shown, estimate });
  return el(
    "section",
    { class: `part part-${part}`, "aria-labelledby": `title-${part}` },
    el("h2", { id: `title-${part}`, tabindex: -1 }, words),
    ...content,
  );
}

/** What is printed, in this order. */
export const printedParts: readonly OwnPart[] = parts.flatMap(([part]) =>
  part === "answers" || part === "files" ? [] : [part],
);
