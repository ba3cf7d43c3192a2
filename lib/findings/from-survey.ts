import type { Ohms, OhmsReading } from "../quantities/ohms-reading.js";
import { present } from "../quantities/present.js";
import type { OldZone, SurveyLoop, SurveySite } from "../survey/survey.js";
import type { LoopRecord } from "./loop-record.js";

/** Devices that mean life safety by what they are, whatever the words around them. */
const lifeSafetyDevices: readonly string[] = ["smokeOrHeat", "flowSwitch", "otherLifeSafety"];

/** Loops of one survey share installer, meter and old panels, so they are one job. */
const wholeSurvey = "survey";

const ohmsOf = (reading: OhmsReading | undefined): Ohms | undefined => reading?.ohms;

/**
 * A survey row as the judge takes it. Words stay words: label, device, notes, cable, what it protects, its use and its
 * row on the old list are searched for life safety by the judge. A reading whose opening was not said counts for the
 * opening in the middle of the loop.
 */
export function loopRecord({
  loop,
  site,
  oldZone,
  nameOf = (key) => key,
}: {
  readonly loop: SurveyLoop;
  readonly site: SurveySite;
  /** What people call the loop of a key. */
  readonly nameOf?: (key: string) => string;
  /** The loop's row on the old zone list. */
  readonly oldZone?: OldZone | undefined;
}): LoopRecord {
  const { edits, cable } = loop;
  const kinds = loop.devices.map(({ kind }) => kind);
  const seen =
    edits.seenBy !== undefined && edits.seenWhat !== undefined
      ? { name: edits.seenBy, what: edits.seenWhat }
      : undefined;
  return present<LoopRecord>({
    id: loop.key,
    job: wholeSurvey,
    label: loop.label,
    protects: [loop.protects, loop.place].filter((words) => words !== undefined).join("; ") || undefined,
    device: loop.device,
    notes: loop.notes,
    use: loop.use,
    oldListWords: [oldZone?.name, oldZone?.type].filter((words) => words !== undefined).join(", ") || undefined,
    panel: loop.panel,
    cableWords: cable?.words,
    cable:
      cable &&
      present<NonNullable<LoopRecord["cable"]>>({
        gaugeAwg: cable.gaugeAwg,
        areaMm2: cable.areaMm2,
        strands: cable.strands,
        metal: cable.metal,
      }),
    runMeters: loop.run?.meters,
    openings: Math.max(1, loop.openings.count),
    temperatureCelsius: site.temperatureCelsius,
    contactForm: loop.contactForm,
    poweredDetector:
      loop.poweredDetector || loop.devices.some(({ powered, kind }) => powered && !kind.startsWith("contact")),
    powered: loop.powered,
    markedLifeSafety:
      loop.markedLifeSafety || (seen === undefined && kinds.some((kind) => lifeSafetyDevices.includes(kind))),
    foil: kinds.includes("foil"),
    shockSensor: kinds.includes("shockSensor"),
    tamperPair: kinds.length > 0 && kinds.every((kind) => kind === "tamper"),
    eolPlace: loop.eolPlace,
    returnSharedWith: loop.returnSharedWith,
    returnSharedNames: loop.returnSharedWith?.map(nameOf),
    seen,
    lifted: loop.lifted,
    oldPanel: present<NonNullable<LoopRecord["oldPanel"]>>({
      expectedEolOhms: loop.eolOhms,
      restingState: loop.restingState,
      resistorAtPanel: loop.resistorAtPanel,
    }),
    meter: meterOf(site),
    readings: readingsOf(loop),
  });
}

function meterOf({ meter }: SurveySite): LoopRecord["meter"] {
  if (!meter) return undefined;
  const { percent, counts, displayCounts = 6000, overRangeOhms = 40e6, leadsZeroed } = meter;
  return { percent, counts, displayCounts, overRangeOhms, leadsZeroed };
}

function readingsOf(loop: SurveyLoop): LoopRecord["readings"] {
  const middle = Math.max(1, Math.ceil(loop.openings.count / 2));
  const { closed, tapped, earth } = loop;
  const jumps =
    closed && closed.lowOhms !== closed.highOhms ? { minOhms: closed.lowOhms, maxOhms: closed.highOhms } : undefined;
  return present<LoopRecord["readings"]>({
    closedOhms: ohmsOf(closed),
    opened: loop.opened?.map(({ opening, reading }) => ({ opening: opening ?? middle, ohms: reading.ohms })),
    openedTogetherOhms: ohmsOf(loop.openedTogether),
    voltsDc: loop.voltsDc,
    voltsAc: loop.voltsAc,
    voltsAtDetector: loop.voltsAtDetector,
    tapped: tapped ? { minOhms: tapped.low.ohms, maxOhms: tapped.high.ohms } : jumps,
    earth:
      earth &&
      present<NonNullable<LoopRecord["readings"]["earth"]>>({ aOhms: ohmsOf(earth.aOhms), bOhms: ohmsOf(earth.bOhms) }),
    reversedOhms: ohmsOf(loop.reversed),
    toOtherPairOhms: ohmsOf(loop.toOtherPair),
    behaviour: closed?.behaviour,
  });
}
