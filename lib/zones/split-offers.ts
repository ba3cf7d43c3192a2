import type { SurveyLoop } from "../survey/survey.js";
import { dailyDoorOf } from "./daily-door.js";
import { phraseIn } from "./phrases.js";
import type { SplitOffer } from "./zone.js";

/** Offers to split a loop, each with what the owner said to it by the pinned or forbidden treatment. */
export function splitOffers(
  loop: SurveyLoop,
  most: { readonly windows: number; readonly motions: number },
): readonly SplitOffer[] {
  const contacts = loop.devices.some(({ kind }) => kind.startsWith("contact"));
  const offer = (reason: SplitOffer["reason"], words: string): SplitOffer => ({
    key: loop.key,
    reason,
    words: `${words} Pin the treatment "split" to have it, forbid "split" to record that the owner keeps it as it is.`,
    ownerChoice: choiceOf(loop),
  });
  const offers: SplitOffer[] = [];
  const door = contacts ? dailyDoorOf(loop) : null;
  if (door?.sharesLoop === true) {
    offers.push(
      offer(
        "dailyDoor",
        `"${door.words}" is used daily and shares its pair: while it is open or its delay runs, nobody hears of the other openings. Offer the door a zone of its own.`,
      ),
    );
  }
  const detectors = loop.devices.filter(({ kind }) => kind === "motion" || kind === "glassBreak");
  const motions = detectors.filter(({ kind }) => kind === "motion").reduce((sum, { count }) => sum + count, 0);
  if (contacts && detectors.length > 0) {
    offers.push(
      offer(
        "mixedDetector",
        "Contacts and a detector share one pair: a lost supply looks like an opened window. Offer the detector a zone of its own.",
      ),
    );
  } else if (motions > most.motions) {
    offers.push(
      offer(
        "severalMotions",
        `${motions} motion detectors share one pair: nobody can tell which one reported. Offer one zone per detector.`,
      ),
    );
  }
  const windows = phraseIn(loop.protects ?? loop.label, "window") !== undefined;
  if (contacts && windows && door === null && loop.openings.count > most.windows) {
    offers.push(
      offer(
        "manyWindows",
        `${loop.openings.count} openings on one zone; up to ${most.windows} of one room are usual. Offer more zones.`,
      ),
    );
  }
  return offers;
}

function choiceOf(loop: SurveyLoop): SplitOffer["ownerChoice"] {
  if (loop.edits.pinTreatment === "split") return "split";
  return loop.edits.forbid?.includes("split") === true ? "keepTogether" : "notRecorded";
}
