// Generated from reference-data/cannot-tell.json by tools/generate-reference.mjs. Do not edit.
/** What no reading of this kind can tell, in words */
export interface CannotTellRow {
  /** Name in code [text] */
  readonly id: string;
  /** What is printed [text] */
  readonly words: string;
  /** Key into the table's sources. */
  readonly source: string;
}

export const cannotTell: readonly CannotTellRow[] = [
  {"id":"eolAtPanel","words":"No end-of-line resistor and one at the panel read alike; only looking tells.","source":"practice"},
  {"id":"bypassHidden","words":"A bypassed contact reads like this too until that opening is opened.","source":"practice"},
  {"id":"earthHidden","words":"An earth fault or a commoned loop reads like this too until earth and the other pairs are read.","source":"practice"},
  {"id":"openKinds","words":"Over-range does not tell ajar from stuck, cut, an unsupplied relay or a normally-open device.","source":"practice"},
  {"id":"jointInTolerance","words":"A joint of up to {ohms} Ω hides in the tolerance of the end-of-line resistor.","source":"practice"},
  {"id":"cladCopper","words":"Copper-clad cable looks like a run 55 to 60 % longer.","source":"practice"},
  {"id":"zeroVolts","words":"0 V on a meter does not prove that nothing feeds the pair.","source":"practice"},
  {"id":"insulation","words":"Ohms say nothing about insulation.","source":"practice"},
  {"id":"oneOpening","words":"Each opened reading proves one opening: {proved} of {total} proved.","source":"practice"},
  {"id":"foilJoint","words":"Stable foil and a stable bad joint read alike.","source":"practice"},
  {"id":"doubleHidden","words":"A second resistor across a contact shows only when that contact is opened.","source":"practice"},
  {"id":"leakBeyond","words":"A leak beyond the opened contact still reads over-range.","source":"practice"},
  {"id":"shortAtEnd","words":"A short across the end-of-line resistor at the far end reads like a loop without one.","source":"practice"},
  {"id":"lifeSafetyHidden","words":"An unmarked life-safety circuit without polarity reads like an end-of-line loop.","source":"practice"},
  {"id":"unpowered","words":"A detector read without supply says nothing of the detector.","source":"practice"},
  {"id":"normallyOpenDevice","words":"Ohms do not tell a normally-open intrusion device from a heat detector, pull station or flow switch.","source":"practice"},
];

export const cannotTellSources: Readonly<Record<string, string>> = {
  "practice": "common practice, no source",
};
