import type { Survey, SurveyLoop } from "../../loopwright-pane.js";
import type { LoopWish, PinKind } from "./engine-state.js";

/** Treatments that may stand in the pin and forbid columns, and the pin they mean. */
const pinOf: Readonly<Record<string, PinKind>> = {
  keep: "keep",
  fitEol: "keep",
  changeEol: "keep",
  split: "split",
  repair: "repair",
  rewire: "repair",
  measureAgain: "repair",
  wireless: "wireless",
  retire: "retire",
};

const pinIn = (word: string): PinKind | undefined => (Object.hasOwn(pinOf, word) ? pinOf[word] : undefined);

/** The wish typed beside a loop; undefined where there is none. */
function typedWish({ edits }: SurveyLoop): LoopWish | undefined {
  const pin = edits.pinTreatment === undefined ? null : (pinIn(edits.pinTreatment) ?? null);
  const forbid = (edits.forbid ?? []).flatMap((word) => pinIn(word) ?? []);
  return pin === null && forbid.length === 0 ? undefined : { pin, forbid };
}

const isEmpty = ({ pin, forbid }: LoopWish): boolean => pin === null && forbid.length === 0;

/** Wishes by loop: those chosen in the pane, else those typed in the survey. */
export function wishesOf(
  survey: Survey,
  chosen: Readonly<Record<string, LoopWish>>,
): Readonly<Record<string, LoopWish>> {
  const all: Record<string, LoopWish> = {};
  for (const loop of survey.loops) {
    const wish = Object.hasOwn(chosen, loop.key) ? chosen[loop.key] : typedWish(loop);
    if (wish !== undefined && !isEmpty(wish)) all[loop.key] = wish;
  }
  return all;
}

/** The survey as if the wishes chosen in the pane had been typed in their columns. */
export function withWishes(survey: Survey, chosen: Readonly<Record<string, LoopWish>>): Survey {
  if (Object.keys(chosen).length === 0) return survey;
  return {
    ...survey,
    loops: survey.loops.map((loop) => {
      const wish = Object.hasOwn(chosen, loop.key) ? chosen[loop.key] : undefined;
      return wish === undefined ? loop : withWish(loop, wish);
    }),
  };
}

function withWish(loop: SurveyLoop, { pin, forbid }: LoopWish): SurveyLoop {
  const { pinTreatment: _pin, forbid: _forbid, ...edits } = loop.edits;
  const { pinTreatment: _typedPin, forbid: _typedForbid, ...typed } = loop.typed;
  return {
    ...loop,
    edits: { ...edits, ...(pin === null ? {} : { pinTreatment: pin }), ...(forbid.length === 0 ? {} : { forbid }) },
    typed: {
      ...typed,
      ...(pin === null ? {} : { pinTreatment: pin }),
      ...(forbid.length === 0 ? {} : { forbid: forbid.join(", ") }),
    },
  };
}

/** The wish with one kind pinned; forbidding that kind falls away. */
export const pinned = (wish: LoopWish | undefined, kind: PinKind): LoopWish => ({
  pin: kind,
  forbid: (wish?.forbid ?? []).filter((one) => one !== kind),
});

/** The wish with one kind forbidden; pinning that kind falls away. */
export const forbidden = (wish: LoopWish | undefined, kind: PinKind): LoopWish => ({
  pin: wish?.pin === kind ? null : (wish?.pin ?? null),
  forbid: [...(wish?.forbid ?? []).filter((one) => one !== kind), kind],
});
