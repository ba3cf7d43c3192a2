// Generated from reference-data/zone-words.json by tools/generate-reference.mjs. Do not edit.
/** Words about zones on tags and old lists, matched as whole words */
export interface ZoneWordsRow {
  /** unused: the list says nothing is there; entryPath: a place one crosses between the entry door and the keypad; generic: says what kind of thing, not which one; ownArea: the loop is armed apart; door, window: contacts whose device was not written [text] */
  readonly means: string;
  /** Whole words or phrases, small letters [list of text] */
  readonly words: readonly (string)[];
  /** Key into the table's sources. */
  readonly source: string;
}

export const zoneWords: readonly ZoneWordsRow[] = [
  {"means":"unused","words":["spare","not used","unused","missing","blank","empty","free","n a","none","not in use","disconnected"],"source":"practice"},
  {"means":"entryPath","words":["hall","hallway","foyer","lobby","corridor","corr","entrance","reception","recep","landing","stair","stairs","porch","passage"],"source":"practice"},
  {"means":"generic","words":["door","doors","dr","window","windows","win","motion","pir","contact","contacts","room","rm","zone","sensor","detector","alarm","the","and","of","in","area","loop","switch","button","buttons","24hr","24h","x2","x3"],"source":"practice"},
  {"means":"ownArea","words":["own area","separate area","own partition","separate partition","armed separately","armed apart"],"source":"practice"},
  {"means":"door","words":["door","doors","dr","hatch","gate","shutter"],"source":"practice"},
  {"means":"window","words":["window","windows","win","skylight"],"source":"practice"},
];

export const zoneWordsSources: Readonly<Record<string, string>> = {
  "practice": "common practice, no source",
};
