// Generated from reference-data/demo/price-book.json by tools/generate-reference.mjs. Do not edit.
/** Demo price book: every price, supplier and stock figure is invented */
export interface PriceBookRow {
  /** Article code [text] */
  readonly code: string;
  /** What it is in the bill's quantity rules [text] */
  readonly class: string;
  /** Words for the purchaser [text] */
  readonly description: string;
  /** Unit the price is for [text] */
  readonly unit: string;
  /** Price of one unit at this quantity [currency per unit] */
  readonly unitPrice: number;
  /** Units in one pack [units] */
  readonly packSize: number;
  /** Least quantity this price holds for [units] */
  readonly fromQuantity: number;
  /** Units on the van [units] */
  readonly stock: number;
  /** Who sells it [text] */
  readonly supplier: string;
  /** Flat shipping of one order at this supplier [currency] */
  readonly shipping: number;
  /** Working days from order to door [days] */
  readonly leadDays: number;
  /** Tax class of the line [text] */
  readonly taxClass: string;
  /** Radio band family, where it has a radio [text] */
  readonly radioBand?: string;
  /** Resistance, for end-of-line resistors [Ω] */
  readonly eolOhms?: number;
  /** Capacity, for batteries [Ah] */
  readonly ampereHours?: number;
  /** Conductor size, for wire [AWG] */
  readonly gaugeAwg?: number;
  /** Conductors, for wire [count] */
  readonly conductors?: number;
  /** Key into the table's sources. */
  readonly source: string;
}

export const priceBook: readonly PriceBookRow[] = [
  {"code":"MOD-6","class":"inputModule","description":"Wired-input radio module \"six\": 6 inputs, 2 banks of 3","unit":"each","unitPrice":98,"packSize":1,"fromQuantity":1,"stock":0,"supplier":"Harbour Supply","shipping":9.5,"leadDays":2,"taxClass":"material","radioBand":"sub-GHz","source":"demo"},
  {"code":"MOD-6","class":"inputModule","description":"Wired-input radio module \"six\": 6 inputs, 2 banks of 3","unit":"each","unitPrice":92.12,"packSize":1,"fromQuantity":5,"stock":0,"supplier":"Harbour Supply","shipping":9.5,"leadDays":2,"taxClass":"material","radioBand":"sub-GHz","source":"demo"},
  {"code":"MOD-10","class":"inputModule","description":"Wired-input radio module \"ten\": 10 inputs, one EOL value","unit":"each","unitPrice":138,"packSize":1,"fromQuantity":1,"stock":0,"supplier":"Harbour Supply","shipping":9.5,"leadDays":2,"taxClass":"material","radioBand":"sub-GHz","source":"demo"},
  {"code":"MOD-10","class":"inputModule","description":"Wired-input radio module \"ten\": 10 inputs, one EOL value","unit":"each","unitPrice":129.72,"packSize":1,"fromQuantity":5,"stock":0,"supplier":"Harbour Supply","shipping":9.5,"leadDays":2,"taxClass":"material","radioBand":"sub-GHz","source":"demo"},
  {"code":"REP","class":"repeater","description":"Radio repeater, mains supplied","unit":"each","unitPrice":68,"packSize":1,"fromQuantity":1,"stock":0,"supplier":"Harbour Supply","shipping":9.5,"leadDays":2,"taxClass":"material","radioBand":"sub-GHz","source":"demo"},
  {"code":"WL-REC","class":"wirelessContactRecessed","description":"Wireless contact, recessed, with magnet","unit":"each","unitPrice":38,"packSize":1,"fromQuantity":1,"stock":2,"supplier":"Harbour Supply","shipping":9.5,"leadDays":2,"taxClass":"material","radioBand":"sub-GHz","source":"demo"},
  {"code":"WL-REC","class":"wirelessContactRecessed","description":"Wireless contact, recessed, with magnet","unit":"each","unitPrice":35.34,"packSize":1,"fromQuantity":10,"stock":2,"supplier":"Harbour Supply","shipping":9.5,"leadDays":2,"taxClass":"material","radioBand":"sub-GHz","source":"demo"},
  {"code":"WL-SURF","class":"wirelessContactSurface","description":"Wireless contact, surface, with magnet and spacer","unit":"each","unitPrice":31,"packSize":1,"fromQuantity":1,"stock":4,"supplier":"Harbour Supply","shipping":9.5,"leadDays":2,"taxClass":"material","radioBand":"sub-GHz","source":"demo"},
  {"code":"WL-SURF","class":"wirelessContactSurface","description":"Wireless contact, surface, with magnet and spacer","unit":"each","unitPrice":28.83,"packSize":1,"fromQuantity":10,"stock":4,"supplier":"Harbour Supply","shipping":9.5,"leadDays":2,"taxClass":"material","radioBand":"sub-GHz","source":"demo"},
  {"code":"WL-OUT","class":"wirelessContactOutdoor","description":"Wireless contact for outdoor use, sealed","unit":"each","unitPrice":54,"packSize":1,"fromQuantity":1,"stock":0,"supplier":"Harbour Supply","shipping":9.5,"leadDays":2,"taxClass":"material","radioBand":"sub-GHz","source":"demo"},
  {"code":"WL-ROLL","class":"wirelessContactRoller","description":"Wireless transmitter with wide-gap roller-door contact and armoured lead","unit":"each","unitPrice":62,"packSize":1,"fromQuantity":1,"stock":0,"supplier":"Harbour Supply","shipping":9.5,"leadDays":2,"taxClass":"material","radioBand":"sub-GHz","source":"demo"},
  {"code":"WL-TILT","class":"wirelessContactTilt","description":"Wireless tilt sensor for sectional or up-and-over door","unit":"each","unitPrice":54,"packSize":1,"fromQuantity":1,"stock":0,"supplier":"Harbour Supply","shipping":9.5,"leadDays":2,"taxClass":"material","radioBand":"sub-GHz","source":"demo"},
  {"code":"WL-GB","class":"wirelessGlassBreak","description":"Wireless glass-break detector","unit":"each","unitPrice":58,"packSize":1,"fromQuantity":1,"stock":0,"supplier":"Harbour Supply","shipping":9.5,"leadDays":2,"taxClass":"material","radioBand":"sub-GHz","source":"demo"},
  {"code":"WL-MOT","class":"wirelessMotion","description":"Wireless motion detector","unit":"each","unitPrice":52,"packSize":1,"fromQuantity":1,"stock":1,"supplier":"Harbour Supply","shipping":9.5,"leadDays":2,"taxClass":"material","radioBand":"sub-GHz","source":"demo"},
  {"code":"WL-HU","class":"wirelessHoldUp","description":"Wireless hold-up button, latching","unit":"each","unitPrice":49,"packSize":1,"fromQuantity":1,"stock":0,"supplier":"Harbour Supply","shipping":9.5,"leadDays":2,"taxClass":"material","radioBand":"sub-GHz","source":"demo"},
  {"code":"WL-FLOOD","class":"wirelessWater","description":"Wireless water sensor","unit":"each","unitPrice":44,"packSize":1,"fromQuantity":1,"stock":0,"supplier":"Harbour Supply","shipping":9.5,"leadDays":2,"taxClass":"material","radioBand":"sub-GHz","source":"demo"},
  {"code":"WC-SURF","class":"wiredContactSurface","description":"Wired contact, surface, with magnet","unit":"each","unitPrice":6.5,"packSize":1,"fromQuantity":1,"stock":3,"supplier":"Harbour Supply","shipping":9.5,"leadDays":2,"taxClass":"material","source":"demo"},
  {"code":"WC-REC","class":"wiredContactRecessed","description":"Wired contact, recessed, with magnet","unit":"each","unitPrice":7,"packSize":1,"fromQuantity":1,"stock":2,"supplier":"Harbour Supply","shipping":9.5,"leadDays":2,"taxClass":"material","source":"demo"},
  {"code":"WC-ARM","class":"wiredContactArmoured","description":"Wired overhead-door contact with armoured lead","unit":"each","unitPrice":24,"packSize":1,"fromQuantity":1,"stock":0,"supplier":"Harbour Supply","shipping":9.5,"leadDays":2,"taxClass":"material","source":"demo"},
  {"code":"WD-MOT","class":"wiredMotion","description":"Wired motion detector, 12 V","unit":"each","unitPrice":36,"packSize":1,"fromQuantity":1,"stock":0,"supplier":"Harbour Supply","shipping":9.5,"leadDays":2,"taxClass":"material","source":"demo"},
  {"code":"R-1K","class":"eolResistor","description":"End-of-line resistor 1k Ω, 1 %, 0.25 W, in sleeve","unit":"each","unitPrice":0.22,"packSize":10,"fromQuantity":1,"stock":0,"supplier":"Harbour Supply","shipping":9.5,"leadDays":2,"taxClass":"material","eolOhms":1000,"source":"demo"},
  {"code":"R-2K2","class":"eolResistor","description":"End-of-line resistor 2k2 Ω, 1 %, 0.25 W, in sleeve","unit":"each","unitPrice":0.22,"packSize":10,"fromQuantity":1,"stock":6,"supplier":"Harbour Supply","shipping":9.5,"leadDays":2,"taxClass":"material","eolOhms":2200,"source":"demo"},
  {"code":"R-3K3","class":"eolResistor","description":"End-of-line resistor 3k3 Ω, 1 %, 0.25 W, in sleeve","unit":"each","unitPrice":0.22,"packSize":10,"fromQuantity":1,"stock":0,"supplier":"Harbour Supply","shipping":9.5,"leadDays":2,"taxClass":"material","eolOhms":3300,"source":"demo"},
  {"code":"R-4K7","class":"eolResistor","description":"End-of-line resistor 4k7 Ω, 1 %, 0.25 W, in sleeve","unit":"each","unitPrice":0.22,"packSize":10,"fromQuantity":1,"stock":0,"supplier":"Harbour Supply","shipping":9.5,"leadDays":2,"taxClass":"material","eolOhms":4700,"source":"demo"},
  {"code":"R-5K6","class":"eolResistor","description":"End-of-line resistor 5k6 Ω, 1 %, 0.25 W, in sleeve","unit":"each","unitPrice":0.22,"packSize":10,"fromQuantity":1,"stock":0,"supplier":"Harbour Supply","shipping":9.5,"leadDays":2,"taxClass":"material","eolOhms":5600,"source":"demo"},
  {"code":"R-6K8","class":"eolResistor","description":"End-of-line resistor 6k8 Ω, 1 %, 0.25 W, in sleeve","unit":"each","unitPrice":0.22,"packSize":10,"fromQuantity":1,"stock":0,"supplier":"Harbour Supply","shipping":9.5,"leadDays":2,"taxClass":"material","eolOhms":6800,"source":"demo"},
  {"code":"R-10K","class":"eolResistor","description":"End-of-line resistor 10k Ω, 1 %, 0.25 W, in sleeve","unit":"each","unitPrice":0.22,"packSize":10,"fromQuantity":1,"stock":0,"supplier":"Harbour Supply","shipping":9.5,"leadDays":2,"taxClass":"material","eolOhms":10000,"source":"demo"},
  {"code":"SP-GEL","class":"gelSplice","description":"Gel-filled splice 19–26 AWG","unit":"each","unitPrice":0.16,"packSize":25,"fromQuantity":1,"stock":12,"supplier":"Fenwick Cable","shipping":14,"leadDays":4,"taxClass":"material","source":"demo"},
  {"code":"SP-DRY","class":"drySplice","description":"Dry crimp splice 19–26 AWG","unit":"each","unitPrice":0.07,"packSize":100,"fromQuantity":1,"stock":40,"supplier":"Fenwick Cable","shipping":14,"leadDays":4,"taxClass":"material","source":"demo"},
  {"code":"STRIP-12","class":"terminalStrip","description":"Terminal strip, 12 ways","unit":"each","unitPrice":4.2,"packSize":1,"fromQuantity":1,"stock":0,"supplier":"Harbour Supply","shipping":9.5,"leadDays":2,"taxClass":"material","source":"demo"},
  {"code":"ENC","class":"enclosure","description":"Enclosure with lock and tamper switch","unit":"each","unitPrice":34,"packSize":1,"fromQuantity":1,"stock":0,"supplier":"Harbour Supply","shipping":9.5,"leadDays":2,"taxClass":"material","source":"demo"},
  {"code":"PSU","class":"supplyCharger","description":"Supply with charger 12 V, 2 A","unit":"each","unitPrice":58,"packSize":1,"fromQuantity":1,"stock":0,"supplier":"Harbour Supply","shipping":9.5,"leadDays":2,"taxClass":"material","source":"demo"},
  {"code":"BAT-4.5","class":"battery","description":"Sealed lead-acid battery 12 V 4.5 Ah","unit":"each","unitPrice":18,"packSize":1,"fromQuantity":1,"stock":0,"supplier":"Harbour Supply","shipping":9.5,"leadDays":2,"taxClass":"material","ampereHours":4.5,"source":"demo"},
  {"code":"BAT-7","class":"battery","description":"Sealed lead-acid battery 12 V 7 Ah","unit":"each","unitPrice":24,"packSize":1,"fromQuantity":1,"stock":0,"supplier":"Harbour Supply","shipping":9.5,"leadDays":2,"taxClass":"material","ampereHours":7,"source":"demo"},
  {"code":"BAT-12","class":"battery","description":"Sealed lead-acid battery 12 V 12 Ah","unit":"each","unitPrice":36,"packSize":1,"fromQuantity":1,"stock":0,"supplier":"Harbour Supply","shipping":9.5,"leadDays":2,"taxClass":"material","ampereHours":12,"source":"demo"},
  {"code":"BAT-18","class":"battery","description":"Sealed lead-acid battery 12 V 18 Ah","unit":"each","unitPrice":49,"packSize":1,"fromQuantity":1,"stock":0,"supplier":"Harbour Supply","shipping":9.5,"leadDays":2,"taxClass":"material","ampereHours":18,"source":"demo"},
  {"code":"FUSE","class":"fuse","description":"Fuse 2 A, slow","unit":"each","unitPrice":1.2,"packSize":5,"fromQuantity":1,"stock":0,"supplier":"Harbour Supply","shipping":9.5,"leadDays":2,"taxClass":"material","source":"demo"},
  {"code":"W22-4-500","class":"wire","description":"Cable 22 AWG 4 conductors, solid copper, 500 ft","unit":"ft","unitPrice":0.17,"packSize":500,"fromQuantity":1,"stock":0,"supplier":"Fenwick Cable","shipping":14,"leadDays":4,"taxClass":"material","gaugeAwg":22,"conductors":4,"source":"demo"},
  {"code":"W22-4-1000","class":"wire","description":"Cable 22 AWG 4 conductors, solid copper, 1000 ft","unit":"ft","unitPrice":0.16,"packSize":1000,"fromQuantity":1,"stock":0,"supplier":"Fenwick Cable","shipping":14,"leadDays":4,"taxClass":"material","gaugeAwg":22,"conductors":4,"source":"demo"},
  {"code":"W22-2-500","class":"wire","description":"Cable 22 AWG 2 conductors, solid copper, 500 ft","unit":"ft","unitPrice":0.11,"packSize":500,"fromQuantity":1,"stock":0,"supplier":"Fenwick Cable","shipping":14,"leadDays":4,"taxClass":"material","gaugeAwg":22,"conductors":2,"source":"demo"},
  {"code":"W22-2-1000","class":"wire","description":"Cable 22 AWG 2 conductors, solid copper, 1000 ft","unit":"ft","unitPrice":0.1,"packSize":1000,"fromQuantity":1,"stock":0,"supplier":"Fenwick Cable","shipping":14,"leadDays":4,"taxClass":"material","gaugeAwg":22,"conductors":2,"source":"demo"},
  {"code":"W20-2-500","class":"wire","description":"Cable 20 AWG 2 conductors, solid copper, 500 ft","unit":"ft","unitPrice":0.14,"packSize":500,"fromQuantity":1,"stock":0,"supplier":"Fenwick Cable","shipping":14,"leadDays":4,"taxClass":"material","gaugeAwg":20,"conductors":2,"source":"demo"},
  {"code":"W20-2-1000","class":"wire","description":"Cable 20 AWG 2 conductors, solid copper, 1000 ft","unit":"ft","unitPrice":0.13,"packSize":1000,"fromQuantity":1,"stock":0,"supplier":"Fenwick Cable","shipping":14,"leadDays":4,"taxClass":"material","gaugeAwg":20,"conductors":2,"source":"demo"},
  {"code":"W18-2-500","class":"wire","description":"Cable 18 AWG 2 conductors, solid copper, 500 ft","unit":"ft","unitPrice":0.19,"packSize":500,"fromQuantity":1,"stock":0,"supplier":"Fenwick Cable","shipping":14,"leadDays":4,"taxClass":"material","gaugeAwg":18,"conductors":2,"source":"demo"},
  {"code":"W18-2-1000","class":"wire","description":"Cable 18 AWG 2 conductors, solid copper, 1000 ft","unit":"ft","unitPrice":0.17,"packSize":1000,"fromQuantity":1,"stock":0,"supplier":"Fenwick Cable","shipping":14,"leadDays":4,"taxClass":"material","gaugeAwg":18,"conductors":2,"source":"demo"},
  {"code":"W18-4-500","class":"wire","description":"Cable 18 AWG 4 conductors, solid copper, 500 ft","unit":"ft","unitPrice":0.31,"packSize":500,"fromQuantity":1,"stock":0,"supplier":"Fenwick Cable","shipping":14,"leadDays":4,"taxClass":"material","gaugeAwg":18,"conductors":4,"source":"demo"},
  {"code":"W18-4-1000","class":"wire","description":"Cable 18 AWG 4 conductors, solid copper, 1000 ft","unit":"ft","unitPrice":0.29,"packSize":1000,"fromQuantity":1,"stock":0,"supplier":"Fenwick Cable","shipping":14,"leadDays":4,"taxClass":"material","gaugeAwg":18,"conductors":4,"source":"demo"},
  {"code":"PLATE","class":"blankPlate","description":"Blank plate for a removed device","unit":"each","unitPrice":1.8,"packSize":1,"fromQuantity":1,"stock":0,"supplier":"Harbour Supply","shipping":9.5,"leadDays":2,"taxClass":"material","source":"demo"},
  {"code":"LABEL","class":"labelKit","description":"Wire markers and labels, kit for 30 loops","unit":"each","unitPrice":14,"packSize":1,"fromQuantity":1,"stock":0,"supplier":"Harbour Supply","shipping":9.5,"leadDays":2,"taxClass":"material","source":"demo"},
  {"code":"GROM","class":"grommet","description":"Grommet","unit":"each","unitPrice":0.3,"packSize":10,"fromQuantity":1,"stock":0,"supplier":"Harbour Supply","shipping":9.5,"leadDays":2,"taxClass":"material","source":"demo"},
  {"code":"FIX","class":"fixingsLot","description":"Screws, ties and fixings, lot for 30 loops","unit":"each","unitPrice":12,"packSize":1,"fromQuantity":1,"stock":0,"supplier":"Harbour Supply","shipping":9.5,"leadDays":2,"taxClass":"material","source":"demo"},
  {"code":"PATCH","class":"patchKit","description":"Patch kit for wall holes, paint-ready","unit":"each","unitPrice":16,"packSize":1,"fromQuantity":1,"stock":0,"supplier":"Harbour Supply","shipping":9.5,"leadDays":2,"taxClass":"material","source":"demo"},
  {"code":"CELLS","class":"cellsSet","description":"Spare cells for sensors, set for 10","unit":"each","unitPrice":9,"packSize":1,"fromQuantity":1,"stock":0,"supplier":"Harbour Supply","shipping":9.5,"leadDays":2,"taxClass":"material","source":"demo"},
  {"code":"BACK","class":"backing","description":"Backing board for the modules","unit":"each","unitPrice":8,"packSize":1,"fromQuantity":1,"stock":0,"supplier":"Harbour Supply","shipping":9.5,"leadDays":2,"taxClass":"material","source":"demo"},
];

export const priceBookSources: Readonly<Record<string, string>> = {
  "demo": "invented for the demo",
};
