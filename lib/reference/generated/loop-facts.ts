// Generated from reference-data/loop-facts.json by tools/generate-reference.mjs. Do not edit.
/** Facts that a record settles or raises by itself, in words */
export interface LoopFactsRow {
  /** Name in code [text] */
  readonly fact: string;
  /** What is printed; {…} is filled in [text] */
  readonly words: string;
  /** Key into the table's sources. */
  readonly source: string;
}

export const loopFacts: readonly LoopFactsRow[] = [
  {"fact":"markedLifeSafety","words":"Marked as life safety: stop, leave alone.","source":"practice"},
  {"fact":"wordedLifeSafety","words":"Worded life safety (\"{word}\" in {field}): have a named person see it. Excluded until then.","source":"practice"},
  {"fact":"seenNotLifeSafety","words":"Worded life safety (\"{word}\" in {field}); {name} has seen the device and writes: {what}.","source":"practice"},
  {"fact":"redCable","words":"Red cable: stop and ask what it feeds before touching it. No red jacket proves nothing.","source":"practice"},
  {"fact":"voltsUnknown","words":"No volts reading on the lifted pair: volts come before ohms.","source":"practice"},
  {"fact":"foreignVolts","words":"{volts} V {kind} on the lifted pair: no ohms reading on it counts.","source":"practice"},
  {"fact":"pickupVolts","words":"{volts} V dc on the lifted pair may be pickup: read again on a low-impedance range.","source":"practice"},
  {"fact":"detectorSupply","words":"{volts} V dc at a supplied detector is its supply and says nothing of the pair.","source":"practice"},
  {"fact":"detectorVolts","words":"{volts} V dc at the detector: compare with its lowest supply on battery.","source":"practice"},
  {"fact":"notLifted","words":"The pair was not lifted: ohms read on the old panel do not count.","source":"practice"},
  {"fact":"oneLifted","words":"Only one conductor was lifted: lift both and read again where the readings do not fit.","source":"practice"},
  {"fact":"maybeNotLifted","words":"Volts on the pair and an opened reading under over-range: was the pair lifted?","source":"practice"},
  {"fact":"polarity","words":"The reversed reading differs: a wet joint, a semiconductor output, a diode, or a polarised life-safety circuit. Hold, see the device.","source":"practice"},
  {"fact":"climbing","words":"The reading moves by itself untouched: electronics on the pair, possibly a two-wire smoke detector. Stop and look.","source":"practice"},
  {"fact":"jumping","words":"The reading jumps: a joint or contact that makes badly.","source":"practice"},
  {"fact":"earthFault","words":"{ohms} to earth: an earth fault.","source":"practice"},
  {"fact":"earthDamp","words":"{ohms} to earth: damp.","source":"practice"},
  {"fact":"movesTapped","words":"Moves from {low} to {high} when tapped.","source":"practice"},
  {"fact":"shockMoves","words":"Moves when tapped, as a shock sensor does.","source":"practice"},
  {"fact":"lowToOtherPair","words":"{ohms} to another pair: one conductor only is a shared return, both are crossed.","source":"practice"},
  {"fact":"sharedReturnNoted","words":"Shares its return with {loops}: these loops stay together, and a bad joint or a leak in that one conductor moves all their readings at once.","source":"practice"},
  {"fact":"lifeSafetyReturn","words":"Shares its return with {loop}, which is left alone as life safety: lifting this return would lift that circuit's too. Left alone with it.","source":"practice"},
  {"fact":"heldReturn","words":"Shares its return with {loop}, which is held until somebody has seen its device. Held with it.","source":"practice"},
  {"fact":"foreignReturn","words":"Shares its return with {loop}, on which foreign volts stand: hands off this pair too, no ohms reading on it counts.","source":"practice"},
  {"fact":"unpoweredReading","words":"The detector had no supply: its ohms reading does not count against it.","source":"practice"},
  {"fact":"poweredOutput","words":"A supplied detector: 5 to 50 Ω of output resistance is normal, an opened reading in the MΩ is its off-leakage, end-of-line resistors may be inside.","source":"practice"},
  {"fact":"resistorAcross","words":"A resistor across the terminals of a loop that reads near zero: the zone was probably disabled. Ask why.","source":"practice"},
  {"fact":"legsInParallel","words":"Half the end-of-line value at rest and one value when opened: two legs in parallel.","source":"practice"},
  {"fact":"eolsInSeries","words":"Twice the end-of-line value: two resistors in series.","source":"practice"},
  {"fact":"eolsInParallel","words":"Half the end-of-line value: two resistors in parallel.","source":"practice"},
  {"fact":"unitSlip","words":"{ohms} is the expected end-of-line value with another unit ({expected}): was k left out or put in for nothing?","source":"practice"},
  {"fact":"swappedColumns","words":"Over-range shut and {ohms} opened: were the two readings swapped?","source":"practice"},
  {"fact":"noOpened","words":"No opened reading: nothing proves that any opening is on the loop.","source":"practice"},
  {"fact":"foilNoted","words":"Window foil on the loop.","source":"practice"},
  {"fact":"tamperPair","words":"A tamper pair: kept apart from alarm zones.","source":"practice"},
  {"fact":"noClosed","words":"No reading with everything shut.","source":"practice"},
];

export const loopFactsSources: Readonly<Record<string, string>> = {
  "practice": "common practice, no source",
};
