// Generated from reference-data/note-words.json by tools/generate-reference.mjs. Do not edit.
/** Phrases in notes that state a fact about a loop, matched as whole words */
export interface NoteWordsRow {
  /** Our name of the fact [text] */
  readonly fact: string;
  /** What it says [text] */
  readonly value: string;
  /** The fact in words [text] */
  readonly meaning: string;
  /** Phrases, small letters without punctuation [list of text] */
  readonly words: readonly (string)[];
  /** Key into the table's sources. */
  readonly source: string;
}

export const noteWords: readonly NoteWordsRow[] = [
  {"fact":"jumping","value":"jumping","meaning":"The reading moved when the loop was touched or by itself","words":["goes all over","all over the place","jumps","jumping","jumpy","intermittent","comes and goes","drifting","drifts","wiggled","worse when"],"source":"practice"},
  {"fact":"sameWhenOpened","value":"same","meaning":"Opening it changed nothing","words":["reads same","read same","no change","same when open","same with windows open","does not change","doesn t change"],"source":"practice"},
  {"fact":"notLifted","value":"no","meaning":"The pair was on the old terminals while it was metered","words":["did not lift","not lifted","read live","didn t lift","still landed","metered in place"],"source":"practice"},
  {"fact":"resistorInCan","value":"seenNotTraced","meaning":"A resistor was seen at the old panel","words":["in the can","in can","in panel","at the panel","on terminal","on the terminal","at panel","at the zone terminal"],"source":"practice"},
  {"fact":"resistorInSeries","value":"inSeries","meaning":"That resistor sits in one leg of the pair","words":["in one leg","in series with the loop","in one conductor","in line at the panel"],"source":"practice"},
  {"fact":"resistorAcross","value":"acrossTerminals","meaning":"That resistor sits across the two zone terminals","words":["across the terminals","across terminals","across the zone","in parallel at the panel"],"source":"practice"},
  {"fact":"fedFrom","value":"proposed","meaning":"Supply reaches this detector through another one","words":["fed from","powered from","supply from"],"source":"practice"},
  {"fact":"daisyChained","value":"proposed","meaning":"Supply or loop runs through several devices one after another","words":["daisy chained","daisy chain","end of chain","power daisy chained"],"source":"practice"},
  {"fact":"acOnPair","value":"ac","meaning":"Alternating voltage was found on the pair","words":["ac on pair","ac on the pair","ac volts","hum on pair"],"source":"practice"},
  {"fact":"cutCable","value":"cut","meaning":"The cable ends somewhere short of a device","words":["cut off","cut above","cable cut","cut behind","chopped"],"source":"practice"},
  {"fact":"noAccess","value":"locked","meaning":"The far end could not be reached","words":["locked","no key","no access","could not reach","not accessible"],"source":"practice"},
  {"fact":"noTrip","value":"noTrip","meaning":"The device was tried and the loop did not open","words":["no trip","did not trip","doesn t trip","never trips","won t trip","does not go ol when open","does not open"],"source":"practice"},
  {"fact":"reversedDiffers","value":"OL","meaning":"The reading depends on which lead is where","words":["reads one way","swap leads","leads reversed reads","one way only"],"source":"practice"},
  {"fact":"usedDaily","value":"daily","meaning":"An opening of this loop is in daily use","words":["used every day","daily door","in daily use"],"source":"practice"},
  {"fact":"magnetMissing","value":"missing","meaning":"Magnets are missing, so those openings prove nothing","words":["magnets missing","magnet missing","no magnet"],"source":"practice"},
  {"fact":"unlabelled","value":"unlabelled","meaning":"Nobody knows where the pair goes","words":["no label","unlabelled","unlabeled","unknown pair"],"source":"practice"},
  {"fact":"silentHoldUp","value":"silent","meaning":"Goes out silently","words":["silent","police"],"source":"practice"},
];

export const noteWordsSources: Readonly<Record<string, string>> = {
  "practice": "common practice, no source",
};
