// Generated from reference-data/strandings.json by tools/generate-reference.mjs. Do not edit.
/** How common cable conductors are made up of single wires */
export interface StrandingsRow {
  /** As typed: strands / strand gauge, or strands / strand diameter in mm, or size and class [text] */
  readonly name: string;
  /** awg, metric or iec60228 [text] */
  readonly system: string;
  /** Single wires in one conductor; 1 = solid [count] */
  readonly strands: number;
  /** Diameter of one bare wire; for awg by the series of ASTM B258, for classes 1 and 2 from the nominal area [mm] */
  readonly strandDiameterMm: number;
  /** What the conductor is sold as [AWG] */
  readonly nominalGaugeAwg?: number;
  /** What the conductor is sold as [mm²] */
  readonly nominalAreaMm2?: number;
  /** Class of IEC 60228: 1 solid, 2 stranded, 5 flexible [1] */
  readonly iecClass?: number;
  /** Key into the table's sources. */
  readonly source: string;
}

export const strandings: readonly StrandingsRow[] = [
  {"name":"7/30","system":"awg","strands":7,"strandDiameterMm":0.254639,"nominalGaugeAwg":22,"source":"chart"},
  {"name":"7/32","system":"awg","strands":7,"strandDiameterMm":0.201938,"nominalGaugeAwg":24,"source":"chart"},
  {"name":"10/30","system":"awg","strands":10,"strandDiameterMm":0.254639,"nominalGaugeAwg":20,"source":"chart"},
  {"name":"7/26","system":"awg","strands":7,"strandDiameterMm":0.404892,"nominalGaugeAwg":18,"source":"chart"},
  {"name":"16/30","system":"awg","strands":16,"strandDiameterMm":0.254639,"nominalGaugeAwg":18,"source":"chart"},
  {"name":"7/24","system":"awg","strands":7,"strandDiameterMm":0.510559,"nominalGaugeAwg":16,"source":"chart"},
  {"name":"19/34","system":"awg","strands":19,"strandDiameterMm":0.160144,"nominalGaugeAwg":22,"source":"chart"},
  {"name":"7/28","system":"awg","strands":7,"strandDiameterMm":0.321094,"nominalGaugeAwg":20,"source":"makers"},
  {"name":"7/34","system":"awg","strands":7,"strandDiameterMm":0.160144,"nominalGaugeAwg":26,"source":"memory"},
  {"name":"7/36","system":"awg","strands":7,"strandDiameterMm":0.127,"nominalGaugeAwg":28,"source":"memory"},
  {"name":"19/30","system":"awg","strands":19,"strandDiameterMm":0.254639,"nominalGaugeAwg":18,"source":"memory"},
  {"name":"26/30","system":"awg","strands":26,"strandDiameterMm":0.254639,"nominalGaugeAwg":16,"source":"memory"},
  {"name":"19/29","system":"awg","strands":19,"strandDiameterMm":0.285942,"nominalGaugeAwg":16,"source":"memory"},
  {"name":"7/22","system":"awg","strands":7,"strandDiameterMm":0.643803,"nominalGaugeAwg":14,"source":"memory"},
  {"name":"19/27","system":"awg","strands":19,"strandDiameterMm":0.360567,"nominalGaugeAwg":14,"source":"memory"},
  {"name":"41/30","system":"awg","strands":41,"strandDiameterMm":0.254639,"nominalGaugeAwg":14,"source":"memory"},
  {"name":"7/20","system":"awg","strands":7,"strandDiameterMm":0.811821,"nominalGaugeAwg":12,"source":"memory"},
  {"name":"19/25","system":"awg","strands":19,"strandDiameterMm":0.454666,"nominalGaugeAwg":12,"source":"memory"},
  {"name":"7/0.2","system":"metric","strands":7,"strandDiameterMm":0.2,"nominalAreaMm2":0.22,"source":"trade"},
  {"name":"1/0.5","system":"metric","strands":1,"strandDiameterMm":0.5,"nominalAreaMm2":0.2,"source":"practice"},
  {"name":"1/0.6","system":"metric","strands":1,"strandDiameterMm":0.6,"nominalAreaMm2":0.28,"source":"practice"},
  {"name":"13/0.2","system":"metric","strands":13,"strandDiameterMm":0.2,"nominalAreaMm2":0.4,"source":"memory"},
  {"name":"14/0.2","system":"metric","strands":14,"strandDiameterMm":0.2,"nominalAreaMm2":0.44,"source":"memory"},
  {"name":"16/0.2","system":"metric","strands":16,"strandDiameterMm":0.2,"nominalAreaMm2":0.5,"source":"memory"},
  {"name":"24/0.2","system":"metric","strands":24,"strandDiameterMm":0.2,"nominalAreaMm2":0.75,"source":"memory"},
  {"name":"32/0.2","system":"metric","strands":32,"strandDiameterMm":0.2,"nominalAreaMm2":1,"source":"memory"},
  {"name":"30/0.25","system":"metric","strands":30,"strandDiameterMm":0.25,"nominalAreaMm2":1.5,"source":"memory"},
  {"name":"50/0.25","system":"metric","strands":50,"strandDiameterMm":0.25,"nominalAreaMm2":2.5,"source":"memory"},
  {"name":"56/0.3","system":"metric","strands":56,"strandDiameterMm":0.3,"nominalAreaMm2":4,"source":"memory"},
  {"name":"0.5 mm² class 1","system":"iec60228","strands":1,"strandDiameterMm":0.797885,"nominalAreaMm2":0.5,"iecClass":1,"source":"iec60228"},
  {"name":"0.5 mm² class 2","system":"iec60228","strands":7,"strandDiameterMm":0.301572,"nominalAreaMm2":0.5,"iecClass":2,"source":"iec60228"},
  {"name":"0.75 mm² class 1","system":"iec60228","strands":1,"strandDiameterMm":0.977205,"nominalAreaMm2":0.75,"iecClass":1,"source":"iec60228"},
  {"name":"0.75 mm² class 2","system":"iec60228","strands":7,"strandDiameterMm":0.369349,"nominalAreaMm2":0.75,"iecClass":2,"source":"iec60228"},
  {"name":"1 mm² class 1","system":"iec60228","strands":1,"strandDiameterMm":1.128379,"nominalAreaMm2":1,"iecClass":1,"source":"iec60228"},
  {"name":"1 mm² class 2","system":"iec60228","strands":7,"strandDiameterMm":0.426487,"nominalAreaMm2":1,"iecClass":2,"source":"iec60228"},
  {"name":"1.5 mm² class 1","system":"iec60228","strands":1,"strandDiameterMm":1.381977,"nominalAreaMm2":1.5,"iecClass":1,"source":"iec60228"},
  {"name":"1.5 mm² class 2","system":"iec60228","strands":7,"strandDiameterMm":0.522338,"nominalAreaMm2":1.5,"iecClass":2,"source":"iec60228"},
  {"name":"2.5 mm² class 1","system":"iec60228","strands":1,"strandDiameterMm":1.784124,"nominalAreaMm2":2.5,"iecClass":1,"source":"iec60228"},
  {"name":"2.5 mm² class 2","system":"iec60228","strands":7,"strandDiameterMm":0.674336,"nominalAreaMm2":2.5,"iecClass":2,"source":"iec60228"},
  {"name":"4 mm² class 1","system":"iec60228","strands":1,"strandDiameterMm":2.256758,"nominalAreaMm2":4,"iecClass":1,"source":"iec60228"},
  {"name":"4 mm² class 2","system":"iec60228","strands":7,"strandDiameterMm":0.852974,"nominalAreaMm2":4,"iecClass":2,"source":"iec60228"},
  {"name":"0.5 mm² class 5","system":"iec60228","strands":16,"strandDiameterMm":0.2,"nominalAreaMm2":0.5,"iecClass":5,"source":"memory"},
  {"name":"0.75 mm² class 5","system":"iec60228","strands":24,"strandDiameterMm":0.2,"nominalAreaMm2":0.75,"iecClass":5,"source":"memory"},
  {"name":"1 mm² class 5","system":"iec60228","strands":32,"strandDiameterMm":0.2,"nominalAreaMm2":1,"iecClass":5,"source":"memory"},
  {"name":"1.5 mm² class 5","system":"iec60228","strands":30,"strandDiameterMm":0.25,"nominalAreaMm2":1.5,"iecClass":5,"source":"memory"},
  {"name":"2.5 mm² class 5","system":"iec60228","strands":50,"strandDiameterMm":0.25,"nominalAreaMm2":2.5,"iecClass":5,"source":"memory"},
  {"name":"4 mm² class 5","system":"iec60228","strands":56,"strandDiameterMm":0.3,"nominalAreaMm2":4,"iecClass":5,"source":"memory"},
];

export const strandingsSources: Readonly<Record<string, string>> = {
  "chart": "Generic stranded-wire chart in a public repository, read",
  "makers": "Wire data sheets, makers withheld, read",
  "memory": "from memory, not checked",
  "practice": "common practice, no source",
  "trade": "BS 4737 alarm cable as described on two trade pages, read",
  "iec60228": "IEC 60228:2004 tables 1 and 2: one wire, at least seven wires; diameter computed from the nominal area",
};
