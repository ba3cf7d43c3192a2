// Generated from reference-data/life-safety-words.json by tools/generate-reference.mjs. Do not edit.
/** Words that name a life-safety or egress function. Matched whole, without regard to case; hyphens and dots count as spaces. */
export interface LifeSafetyWordsRow {
  /** Word or words that match [text] */
  readonly words: string;
  /** Texts of a loop in which it is looked for [list of text] */
  readonly fields: readonly (string)[];
  /** lifeSafety [text] */
  readonly kind: string;
  /** No match when one of these words follows [list of text] */
  readonly unlessFollowedBy?: readonly (string)[];
  /** No match when one of these words stands before [list of text] */
  readonly unlessPrecededBy?: readonly (string)[];
  /** No match when spelled exactly so [list of text] */
  readonly notSpelled?: readonly (string)[];
  /** Key into the table's sources. */
  readonly source: string;
}

export const lifeSafetyWords: readonly LifeSafetyWordsRow[] = [
  {"words":"fire","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"fires","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"smoke","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"smokes","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"sprinkler","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"sprinklers","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"sprk","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"sprklr","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"waterflow","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"water flow","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"flow switch","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"flow switches","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"heat detector","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"heat detectors","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"heat det","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"heat dets","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"heat sensor","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"heat head","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"heat heads","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"heat alarm","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"rate of rise","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"pull station","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"pull stations","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"call point","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"call points","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"break glass unit","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"manual call","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"gas","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"gas detector","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"carbon monoxide","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"co detector","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"co detectors","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"co alarm","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"co sensor","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"co2","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"refrigerant","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"medical","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"medical alert","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"nurse","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"nurse call","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"patient call","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"emergency phone","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"emergency telephone","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"emergency exit","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"egress","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"delayed egress","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"mag lock","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"maglock","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"mag locks","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"maglocks","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"magnetic lock","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"magnetic locks","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"door release","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"door holder","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"door holders","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"hold open","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"smoke control","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"smoke vent","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"fuel cut off","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"fuel cutoff","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"fuel shut off","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"gas valve","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"life safety","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"lifesafety","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"evacuation","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"strobe","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"strobes","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"facp","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"fdc","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"standpipe","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"piv","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"lift phone","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"lift recall","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"lift shaft","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"lift car","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"lift alarm","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"elevator phone","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"elevator recall","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"elevator shaft","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"elevator car","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"duct detector","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"beam detector","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"methane","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"lpg","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"emergency lighting","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"area of refuge","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"refuge","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"lift","fields":["label","protects","device"],"kind":"lifeSafety","unlessFollowedBy":["lobby","lobbies","hall","hallway","foyer","landing","lounge","corridor","corr"],"source":"practice"},
  {"words":"lifts","fields":["label","protects","device"],"kind":"lifeSafety","unlessFollowedBy":["lobby","lobbies","hall","hallway","foyer","landing","lounge","corridor","corr"],"source":"practice"},
  {"words":"elevator","fields":["label","protects","device"],"kind":"lifeSafety","unlessFollowedBy":["lobby","lobbies","hall","hallway","foyer","landing","lounge","corridor","corr"],"source":"practice"},
  {"words":"elevators","fields":["label","protects","device"],"kind":"lifeSafety","unlessFollowedBy":["lobby","lobbies","hall","hallway","foyer","landing","lounge","corridor","corr"],"source":"practice"},
  {"words":"heat","fields":["device","label","protects"],"kind":"lifeSafety","unlessFollowedBy":["pump","pumps","exchanger","recovery","store"],"source":"practice"},
  {"words":"heats","fields":["device","label","protects"],"kind":"lifeSafety","source":"practice"},
  {"words":"co","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","unlessFollowedBy":["ltd","inc","llc","op","working","worker"],"unlessPrecededBy":["&","and"],"notSpelled":["Co"],"source":"practice"},
  {"words":"med alert","fields":["label","protects","device","cable","notes"],"kind":"lifeSafety","source":"practice"},
  {"words":"pendant","fields":["device","label","protects"],"kind":"lifeSafety","source":"practice"},
];

export const lifeSafetyWordsSources: Readonly<Record<string, string>> = {
  "practice": "common practice, no source",
};
