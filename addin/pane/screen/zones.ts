import { dataTable } from "./data-table.js";
import { button, type Child, el, list } from "./elements.js";
import { type Estimated, nameOfLoop } from "./shown.js";

/** Zones of the new system in short; the printed schedule has them with their reasons. */
export function zones(shown: Estimated): readonly Child[] {
  const { estimate, act } = shown;
  const { zones: all, armingInputs, excluded, offers } = estimate.zones;
  const loopOf = (key: string) => estimate.loops.find((loop) => loop.key === key);
  const nameOf = (key: string) => {
    const loop = loopOf(key);
    return loop === undefined ? key : nameOfLoop(loop);
  };
  return [
    el(
      "p",
      {},
      "Confirm every use with the owner before programming. Who sees this list knows where the building is watched: share it with care.",
    ),
    dataTable({
      caption: "Zones",
      hideCaption: true,
      columns: [
        { words: "Name" },
        { words: "Zone", figures: true },
        { words: "Behaviour" },
        { words: "Area" },
        { words: "From" },
      ],
      rows: [...all, ...armingInputs].map((zone) => ({
        cells: [
          zone.name,
          zone.number ?? "no zone",
          zone.source === "proposed" ? `${zone.useWords} (proposed: confirm)` : zone.useWords,
          zone.area ?? "",
          nameOf(zone.key),
        ],
      })),
    }),
    ...(offers.length === 0
      ? []
      : [
          el("h3", {}, "Offers to split a loop"),
          list(
            offers.map(({ key, words }) =>
              el(
                "span",
                {},
                button({
                  words: nameOf(key),
                  keep: `offer ${key}`,
                  kind: "quiet",
                  label: `${nameOf(key)}: show this loop`,
                  click: () => act.goToLoop(key),
                }),
                ` ${words}`,
              ),
            ),
          ),
        ]),
    ...(excluded.length === 0
      ? []
      : [
          el("h3", {}, "No zone"),
          list(
            excluded.map(({ key, words }) => `${nameOf(key)}: ${words}`),
            { class: "stop-list" },
          ),
        ]),
  ];
}
