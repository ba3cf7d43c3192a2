// Generated from reference-data/findings-words.json by tools/generate-reference.mjs. Do not edit.
/** What is said of each condition: words, first checks, usual repair */
export interface FindingsWordsRow {
  /** Name of the condition in code [text] */
  readonly condition: string;
  /** The condition in words [text] */
  readonly words: string;
  /** What to look at first, in order [list of text] */
  readonly firstChecks: readonly (string)[];
  /** What usually mends it [text] */
  readonly usualRepair: string;
  /** Usual time of check and repair, a guess [min] */
  readonly minutes: number;
  /** Key into the table's sources. */
  readonly source: string;
}

export const findingsWords: readonly FindingsWordsRow[] = [
  {"condition":"soundEolAtEnd","words":"Reads as expected: cable, contacts and an end-of-line resistor at the far end.","firstChecks":["Open every opening once and see the reading go over-range each time"],"usualRepair":"Keep if the reading is in the new input's band.","minutes":2,"source":"practice"},
  {"condition":"soundNoEol","words":"Reads as expected for cable and contacts; no end-of-line resistor on the pair.","firstChecks":["Look inside the old panel for a resistor"],"usualRepair":"Fit the end-of-line resistor past the last contact.","minutes":20,"source":"practice"},
  {"condition":"eolInPanel","words":"Reads as expected for cable and contacts; the end-of-line resistor sits at the old panel.","firstChecks":["Look inside the old panel: in series with one conductor, or across the terminals?"],"usualRepair":"Fit the end-of-line resistor past the last contact and remove the one at the panel.","minutes":20,"source":"practice"},
  {"condition":"shorted","words":"A short across the pair.","firstChecks":["Look for a staple, nail, pinched frame or splice","Unwire the contact and read again"],"usualRepair":"Re-pull the cable or go wireless.","minutes":35,"source":"practice"},
  {"condition":"open","words":"Open with everything shut.","firstChecks":["Shut and latch everything","Look for a missing or shifted magnet","Halve the loop","Look at contact, splice, cut wire"],"usualRepair":"Restore the magnet, contact, splice or wire.","minutes":25,"source":"practice"},
  {"condition":"highResistance","words":"More resistance than the cable and contacts explain: a bad joint or a worn contact.","firstChecks":["Tap each contact and splice while reading"],"usualRepair":"Remake the splice first, then replace the contact.","minutes":20,"source":"practice"},
  {"condition":"leakage","words":"A leak between the two conductors.","firstChecks":["Look for a damp window, a staple, a corroded contact","Read again after rain"],"usualRepair":"Re-terminate; wireless if the leak is in the wall.","minutes":40,"source":"practice"},
  {"condition":"wrongEol","words":"An end-of-line value that the old panel does not expect: two in series or parallel, one per door, or another part.","firstChecks":["Look for two resistors in series or in parallel, one per door"],"usualRepair":"Leave one resistor of the right value.","minutes":15,"source":"practice"},
  {"condition":"normallyOpen","words":"Reads like a normally-open device.","firstChecks":["See the device first: heat detectors, pull stations and flow switches are wired like this"],"usualRepair":"Seen, and intrusion, hold-up or environmental: an input that alarms on short, end-of-line resistor across the farthest contact. Not seen: leave alone.","minutes":20,"source":"practice"},
  {"condition":"bypassed","words":"At least one opening changes nothing: its contact is bypassed.","firstChecks":["Open all together: over-range means wired in parallel","Still no change: jumper, defeated contact or short","Pull the contact: its own terminals must read over-range when apart"],"usualRepair":"Rewire in series, replace the contact or remove the jumper.","minutes":15,"source":"practice"},
  {"condition":"foreignVoltage","words":"Volts on the lifted pair: no ohms reading on it counts.","firstChecks":["Hands off the copper; insulate and tag the pair; record ac and dc volts","Known low-voltage source: its owner removes it, then prove with a meter proved before and after, and read again","Over 30 V, mains suspected or source unknown: stop, licensed electrician"],"usualRepair":"None by us until the source is known and gone.","minutes":10,"source":"practice"},
  {"condition":"earthFault","words":"A conductor touches earth.","firstChecks":["Look at metal frames and conduit edges","Disconnect halves and read again"],"usualRepair":"Clear the contact with metal, re-terminate.","minutes":30,"source":"practice"},
  {"condition":"crossed","words":"Crossed with another pair.","firstChecks":["Trace and relabel both pairs"],"usualRepair":"Separate the splice and land each pair by itself.","minutes":20,"source":"practice"},
  {"condition":"doubleEol","words":"Two end-of-line values: one of them across a contact.","firstChecks":["See what the new input takes: one end-of-line value only?"],"usualRepair":"Remove the resistor across the contact; with a tamper in series that distinction is lost.","minutes":10,"source":"practice"},
  {"condition":"foil","words":"Window foil in the loop.","firstChecks":["Look for cracked foil and loose take-off blocks"],"usualRepair":"Usually wireless.","minutes":30,"source":"practice"},
  {"condition":"poweredDevice","words":"A detector that takes supply was read without it, or through its output.","firstChecks":["Give it supply, wait for warm-up, read again"],"usualRepair":"None until it has been read with supply.","minutes":10,"source":"practice"},
  {"condition":"lifeSafety","words":"Life safety or egress: stop, leave alone.","firstChecks":["Have a named person see the device; the responsible contractor decides"],"usualRepair":"None by us.","minutes":0,"source":"practice"},
  {"condition":"unexplained","words":"The readings do not fit any loop we know.","firstChecks":["Read again with units written out and fresh leads"],"usualRepair":"None until it has been read again.","minutes":5,"source":"practice"},
  {"condition":"parallelContacts","words":"Contacts wired in parallel: nothing changes until all are open.","firstChecks":["Open all openings together"],"usualRepair":"Rewire the contacts in series.","minutes":30,"source":"practice"},
  {"condition":"sharedReturn","words":"Shares one conductor with another pair.","firstChecks":["Read each conductor by itself to the other pair: one low is a shared return, both low is crossed"],"usualRepair":"Give each pair its own return, or land both on inputs with one common return.","minutes":24,"source":"practice"},
  {"condition":"doubledPair","words":"Two zones on one pair, each contact with its own resistor across it.","firstChecks":["Open each contact alone, then both: the rises add"],"usualRepair":"Give each zone its own pair or go wireless for one.","minutes":40,"source":"practice"},
  {"condition":"tamperLoop","words":"Reads as expected for a tamper pair without an end-of-line resistor.","firstChecks":["Open each cover once"],"usualRepair":"Fit the end-of-line resistor past the last tamper switch.","minutes":20,"source":"practice"},
];

export const findingsWordsSources: Readonly<Record<string, string>> = {
  "practice": "common practice, no source",
};
