// Generated from reference-data/cautions.json by tools/generate-reference.mjs. Do not edit.
/** Cautions printed on papers for people on site, in the order of the job */
export interface CautionsRow {
  /** Key [text] */
  readonly caution: string;
  /** The caution, as printed [text] */
  readonly words: string;
  /** When it applies [text] */
  readonly when: string;
  /** Who has to act [text] */
  readonly who: string;
  /** Key into the table's sources. */
  readonly source: string;
}

export const cautions: readonly CautionsRow[] = [
  {"caution":"accountOnTest","words":"Put the monitoring account on test before the first conductor is touched; have it restored and confirmed when the work is done.","when":"before the first reading; again at the end","who":"technician, monitoring centre","source":"practice"},
  {"caution":"leaveLifeSafetyAlone","words":"Leave every life-safety or egress circuit as it is: do not disconnect, meter, move or power it down. Red cable or the word fire means stop and ask.","when":"always","who":"everybody on site","source":"practice"},
  {"caution":"releaseFirst","words":"Where the old control feeds a life-safety circuit, nothing on it changes before the responsible contractor has released it in writing, with name and date.","when":"before any change at the old control","who":"estimator, responsible contractor","source":"practice"},
  {"caution":"holdUp","words":"Hold-up: owner present and centre told; press, reset, then read again. It stays working, or the owner agrees to a substitute in writing.","when":"before and after any work on a hold-up loop","who":"technician, owner, monitoring centre","source":"practice"},
  {"caution":"selfContainedSiren","words":"A self-contained siren sounds when its feed goes away. Silence it by its own procedure first; wear ear protection on the ladder.","when":"before a siren feed is removed","who":"technician","source":"practice"},
  {"caution":"phoneLineInSeries","words":"The old panel may sit in series with the phone line: unplug it at its jack, then check dial tone and any lift or medical phone.","when":"before the old panel is taken out","who":"technician","source":"practice"},
  {"caution":"mainsThenBattery","words":"Unplug the mains transformer first, then the battery. Restore mains first, then the battery, unless the maker says otherwise.","when":"when the panel is powered down and up","who":"technician","source":"practice"},
  {"caution":"hardwiredTransformer","words":"A hardwired transformer is an electrician's job.","when":"when the transformer has no plug","who":"licensed electrician","source":"practice"},
  {"caution":"batteryLeads","words":"Insulate and tape battery leads; wear no jewellery.","when":"whenever a battery is moved","who":"technician","source":"practice"},
  {"caution":"swollenBattery","words":"A swollen or leaking battery: gloves and eye cover, then recycle.","when":"when a battery is found so","who":"technician","source":"practice"},
  {"caution":"lithiumCells","words":"Lithium cells are never charged, crushed or put in the bin.","when":"when cells are changed","who":"technician","source":"practice"},
  {"caution":"voltsBeforeOhms","words":"Volts before ohms, on every pair. An unknown pair counts as live until proven otherwise.","when":"before every resistance reading","who":"technician","source":"practice"},
  {"caution":"liftBothConductors","words":"Take both conductors off the panel before a resistance reading, and zero the leads.","when":"before every resistance reading","who":"technician","source":"practice"},
  {"caution":"fingersOffTips","words":"Keep fingers off the probe tips above 100 kΩ.","when":"on high readings","who":"technician","source":"practice"},
  {"caution":"noInsulationTester","words":"No insulation tester on pairs with electronics on them.","when":"always","who":"technician","source":"practice"},
  {"caution":"bridgeBeforeRemoval","words":"Bridge feed, tamper and series loops before a device comes out; otherwise everything behind it stops.","when":"before a device is removed","who":"technician","source":"practice"},
  {"caution":"photographAndTag","words":"Photograph and tag both ends before a conductor is lifted.","when":"before lifting wires","who":"technician","source":"practice"},
  {"caution":"beforeDrilling","words":"Before drilling: look for hidden services, read the asbestos register, and mind lead paint in buildings from before 1978 (US).","when":"before drilling or cutting","who":"technician, estimator","source":"practice"},
  {"caution":"fireRatedParts","words":"No hole or fixing in a fire-rated door, frame or wall without leave of its maker or the inspector.","when":"before drilling or cutting","who":"technician, inspector","source":"practice"},
  {"caution":"twoPeople","words":"Ladders, lifts and attics take two people.","when":"during work at height or out of sight","who":"technician","source":"practice"},
  {"caution":"firestop","words":"Firestop every hole through a rated wall; run plenum or riser cable where the code asks for it.","when":"when cable is run","who":"technician","source":"practice"},
  {"caution":"abandonedCable","words":"Remove abandoned cable or tag it for later use, as the local code asks.","when":"when a pair is given up","who":"technician, estimator","source":"necMemory"},
  {"caution":"lawComesFirst","words":"Licences, permits, local codes, insurer and certificate terms come before anything printed here.","when":"before the job is sold and before work starts","who":"estimator","source":"practice"},
  {"caution":"sensitivePapers","words":"Zone lists, codes and photographs are sensitive: keep and share them as such.","when":"always","who":"everybody with the papers","source":"practice"},
  {"caution":"estimatesOnly","words":"Results are estimates from the readings given. A competent person decides.","when":"always","who":"estimator, technician","source":"practice"},
];

export const cautionsSources: Readonly<Record<string, string>> = {
  "practice": "common practice, no source",
  "necMemory": "NFPA 70 (NEC) 725.25 up to 2020, 722.25 from 2023, from memory, not checked",
};
