// Generated from reference-data/hazard-words.json by tools/generate-reference.mjs. Do not edit.
/** Words of a survey that name a hazard, and the caution they call for */
export interface HazardWordsRow {
  /** Key [text] */
  readonly hazard: string;
  /** What is flagged, for people [text] */
  readonly flag: string;
  /** Whole words or phrases, small letters [list of text] */
  readonly words: readonly (string)[];
  /** Words just before that deny it [list of text] */
  readonly unlessAfter: readonly (string)[] | readonly never[];
  /** Words just after that make it something else [list of text] */
  readonly unlessBefore: readonly (string)[] | readonly never[];
  /** Texts it is looked for in: register, siteItem, access, finish, notes, place, device, protects, panel [list of text] */
  readonly looksIn: readonly (string)[];
  /** Key in the cautions table [text] */
  readonly caution: string;
  /** Key into the table's sources. */
  readonly source: string;
}

export const hazardWords: readonly HazardWordsRow[] = [
  {"hazard":"asbestos","flag":"asbestos named or suspected","words":["asbestos","acm","duct wrap","popcorn ceiling","textured ceiling","vermiculite","transite"],"unlessAfter":["no","without","not"],"unlessBefore":["free"],"looksIn":["register","siteItem","finish","notes"],"caution":"beforeDrilling","source":"practice"},
  {"hazard":"leadPaint","flag":"lead paint named or untested","words":["lead paint","paint not tested","lead based paint","lead in paint"],"unlessAfter":["no"],"unlessBefore":["rule","free"],"looksIn":["register","siteItem","finish","notes"],"caution":"beforeDrilling","source":"practice"},
  {"hazard":"height","flag":"work at height","words":["ladder","lift hire","scaffold","scaffolding","scissor lift","boom lift","cherry picker","attic","loft","roof","roof hatch","roof space","roofspace","roof void","ceiling void","gutter","stairwell","high level","high up","skylight","high ceiling"],"unlessAfter":["no"],"unlessBefore":["lobby","phone"],"looksIn":["siteItem","access","notes","place","protects"],"caution":"twoPeople","source":"practice"},
  {"hazard":"outOfSight","flag":"out of sight or confined","words":["crawl space","crawlspace","attic","loft","roof space","roofspace","roof void","manhole","pit"],"unlessAfter":["no"],"unlessBefore":[],"looksIn":["siteItem","access","notes","place","protects"],"caution":"twoPeople","source":"practice"},
  {"hazard":"fireRated","flag":"fire-rated door, frame or wall","words":["fire door","fire rated","rated wall","rated door","fire wall","firewall"],"unlessAfter":["no","not"],"unlessBefore":[],"looksIn":["siteItem","access","finish","notes","protects","device","place"],"caution":"fireRatedParts","source":"practice"},
  {"hazard":"hardwiredMains","flag":"transformer without a plug","words":["hardwired","hard wired","no plug"],"unlessAfter":["not"],"unlessBefore":[],"looksIn":["panel"],"caution":"hardwiredTransformer","source":"practice"},
  {"hazard":"battery","flag":"battery swollen or leaking","words":["swollen","leaking","bulging","leaked"],"unlessAfter":["not","no"],"unlessBefore":[],"looksIn":["panel","siteItem"],"caution":"swollenBattery","source":"practice"},
  {"hazard":"drillingLimits","flag":"drilling is limited","words":["no drilling","no holes"],"unlessAfter":[],"unlessBefore":[],"looksIn":["siteItem","access","finish","notes"],"caution":"beforeDrilling","source":"practice"},
  {"hazard":"abandonedPair","flag":"a pair that nobody uses","words":["abandoned","cut off above ceiling","cut behind can"],"unlessAfter":["not"],"unlessBefore":[],"looksIn":["siteItem","notes"],"caution":"abandonedCable","source":"practice"},
];

export const hazardWordsSources: Readonly<Record<string, string>> = {
  "practice": "common practice, no source",
};
