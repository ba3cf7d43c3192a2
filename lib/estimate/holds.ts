import type { LoopJudgement } from "../findings/loop-record.js";
import type { Survey } from "../survey/survey.js";
import { isLeftAlone } from "../treatments/recommend.js";
import type { Hold } from "./estimate.js";

/**
 * Holds of a job: a life-safety or egress function on the old control stops power-down, strip-out and siren removal
 * until the responsible contractor's written release, name and date, stands in the survey.
 */
export function holdsOf({
  survey,
  judgements,
}: {
  readonly survey: Survey;
  readonly judgements: readonly LoopJudgement[];
}): readonly Hold[] {
  const loops = judgements.filter(isLeftAlone).map(({ id }) => id);
  if (loops.length === 0 || survey.site.lifeSafetyRelease !== undefined) return [];
  const names = loops.map((key) => {
    const loop = survey.loops.find((row) => row.key === key);
    return `${loop?.panel ?? ""} ${loop?.loop ?? key}${loop?.label === undefined ? "" : ` ${loop.label}`}`.trim();
  });
  return [
    {
      hold: "lifeSafetyOnOldControl",
      words:
        `DO NOT TOUCH ${names.join(", ")}: life safety on the old control. No power-down, strip-out or siren work is ` +
        "planned until the responsible contractor's written release, with name and date, is entered on the Site sheet.",
      loops,
    },
  ];
}
