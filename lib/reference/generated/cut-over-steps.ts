// Generated from reference-data/cut-over-steps.json by tools/generate-reference.mjs. Do not edit.
/** Steps of a cut-over with their words; the order is worked out per job */
export interface CutOverStepsRow {
  /** Key [text] */
  readonly step: string;
  /** The step, as printed; {names}, {place}, {area}, {minutes}, {release} are filled in [text] */
  readonly words: string;
  /** Who does it [text] */
  readonly who: string;
  /** any: always; held: only while a life-safety hold stands; released: never while it stands [text] */
  readonly printed: string;
  /** What is filled in by hand [list of text] */
  readonly blanks: readonly (string)[];
  /** Key into the table's sources. */
  readonly source: string;
}

export const cutOverSteps: readonly CutOverStepsRow[] = [
  {"step":"obtainRelease","words":"Obtain the written release of the responsible contractor for {names}. Nothing at the old control changes before it is at hand; leave {names} as they are.","who":"estimator, responsible contractor","printed":"held","blanks":["released by","date"],"source":"practice"},
  {"step":"recordRelease","words":"Have the written release at hand: {release}. Its terms come before this order of work.","who":"technician","printed":"released","blanks":["seen by","date"],"source":"practice"},
  {"step":"permits","words":"Licences, permits, local codes, insurer and certificate terms come first: have them at hand, with the owner's authority to work and the keys.","who":"estimator","printed":"any","blanks":["permit","owner's signature","date"],"source":"practice"},
  {"step":"accountOnTest","words":"Have the old account put on test. Life-safety signals on the same account stay live: ask the centre to say so.","who":"technician, monitoring centre","printed":"any","blanks":["on test until","centre's phone","name at the centre"],"source":"practice"},
  {"step":"agreeHoldUpSubstitute","words":"Agree with the owner, in writing, what takes the place of hold-up {names} while it cannot call.","who":"technician, owner","printed":"any","blanks":["substitute","owner's signature","date and time"],"source":"practice"},
  {"step":"holdUpSubstituteInPlace","words":"Bring the agreed substitute for hold-up {names} into use and try it with the centre told. It stays until the new hold-up is received.","who":"technician, owner, monitoring centre","printed":"any","blanks":["received at","initials"],"source":"practice"},
  {"step":"photographAndTag","words":"Photograph the terminals at {place} and tag the pairs listed at both ends before a conductor is lifted; what is left alone is only photographed.","who":"technician","printed":"any","blanks":["photographs taken by","time"],"source":"practice"},
  {"step":"mountModules","words":"Mount modules, supply and enclosure at {place}; set the EOL values and addresses. The old control works on.","who":"technician","printed":"any","blanks":["initials"],"source":"practice"},
  {"step":"powerUpNew","words":"Power up the new supply at {place}: mains first, then battery, unless the maker says otherwise. Wait 60 s before any sensor counts.","who":"technician","printed":"any","blanks":["time","volts on charger"],"source":"cp01draft"},
  {"step":"fitWireless","words":"Fit and enrol the wireless devices for {names}, with doors and windows as used. The old loops still watch.","who":"technician","printed":"any","blanks":["initials"],"source":"practice"},
  {"step":"moveLoops","words":"Area {area}: volts before ohms, lift, mend or fit what the loop card says, land and label in installation order: {names}. About {minutes}.","who":"technician","printed":"any","blanks":["from","to","initials"],"source":"practice"},
  {"step":"proveLoops","words":"Area {area}: walk test of every opening of {names} before the next pairs are lifted. Write down what differs and stop there.","who":"technician","printed":"any","blanks":["openings proved","time","initials"],"source":"practice"},
  {"step":"disconnectHoldUp","words":"Hold-up {names}: owner present, centre told, substitute working. Then lift the old pair and land it, or hand over to the new button.","who":"technician, owner, monitoring centre","printed":"any","blanks":["from","to","initials"],"source":"practice"},
  {"step":"pressHoldUp","words":"Press hold-up {names}, have it received at the centre on the new account, reset, read again. Only then end the substitute.","who":"technician, owner, monitoring centre","printed":"any","blanks":["received at","reset at","initials"],"source":"practice"},
  {"step":"retireLoops","words":"Tag {names} at both ends as given up, signed for by the owner.","who":"technician, owner","printed":"any","blanks":["owner's signature","date"],"source":"practice"},
  {"step":"walkTestAll","words":"Walk test of every opening of the whole site, every line of the walk-test sheet.","who":"technician, owner","printed":"any","blanks":["n of m openings proved","date and time","initials"],"source":"practice"},
  {"step":"signalsReceived","words":"Send one signal of every kind on the new account and have the centre read them back: burglary per area, hold-up, tamper, environmental, mains, low battery.","who":"technician, monitoring centre","printed":"any","blanks":["received by","time","initials"],"source":"practice"},
  {"step":"powerDownOld","words":"Old control at {place}, when nothing hangs on it any more: {mains}, then the battery; insulate its leads. Photograph what is left.","who":"technician","printed":"released","blanks":["time","initials"],"source":"practice"},
  {"step":"checkPhoneLine","words":"Old control at {place}: take its dialler off the line at the jack, then check dial tone and any other phone on the line.","who":"technician","printed":"released","blanks":["dial tone at","initials"],"source":"practice"},
  {"step":"removeSiren","words":"Old siren of {place}: silence it by its own procedure first, ear protection on the ladder, then take it down.","who":"technician, two people","printed":"released","blanks":["time","initials"],"source":"practice"},
  {"step":"stripOut","words":"Take out the old control at {place}; bridge what runs through it, keep the pairs tagged.","who":"technician","printed":"released","blanks":["initials"],"source":"practice"},
  {"step":"blankPlates","words":"Cover what the removed devices leave, line by line of the list: {names}.","who":"technician","printed":"any","blanks":["initials"],"source":"practice"},
  {"step":"closeOldAccount","words":"Close the old account in writing, after its last signal is received on the new one and the owner agrees.","who":"owner, estimator","printed":"released","blanks":["closed on","confirmed by"],"source":"practice"},
  {"step":"keepOldAccount","words":"The old account and line stay as they are while the old control carries life safety.","who":"owner, estimator","printed":"held","blanks":["told the owner on"],"source":"practice"},
  {"step":"handOver","words":"Hand over: show arming, disarming, hold-up and what to do on a false alarm; the owner sets the codes himself. Give the papers.","who":"technician, owner","printed":"any","blanks":["owner's signature","date"],"source":"practice"},
  {"step":"accountRestored","words":"Have the account taken off test and confirmed, with the time.","who":"technician, monitoring centre","printed":"any","blanks":["off test at","name at the centre"],"source":"practice"},
  {"step":"disposal","words":"Take away and recycle by the disposal list.","who":"technician","printed":"any","blanks":["handed in at","date"],"source":"practice"},
  {"step":"review","words":"30 days on: go through alarms and faults with the owner, and enter as-left readings, repairs and hours of the job.","who":"estimator","printed":"any","blanks":["date"],"source":"practice"},
];

export const cutOverStepsSources: Readonly<Record<string, string>> = {
  "practice": "common practice, no source",
  "cp01draft": "SIA CP-01-200x draft clause 4.4.3, read (60 s after power); the rest common practice, no source",
};
