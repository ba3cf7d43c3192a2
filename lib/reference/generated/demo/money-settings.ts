// Generated from reference-data/demo/money-settings.json by tools/generate-reference.mjs. Do not edit.
/** Demo settings of a job: rates, margins, taxes, limits */
export interface MoneySettingsRow {
  /** Name of the setting [text] */
  readonly setting: string;
  /** Value [as the row's unit] */
  readonly value: number;
  /** Unit of the value [text] */
  readonly unit: string;
  /** What it does [text] */
  readonly meaning: string;
  /** Least value accepted [as the row's unit] */
  readonly least: number;
  /** Most value accepted [as the row's unit] */
  readonly most: number;
  /** Key into the table's sources. */
  readonly source: string;
}

export const moneySettings: readonly MoneySettingsRow[] = [
  {"setting":"labourCostPerHour","value":52,"unit":"currency/h","meaning":"What one hour of labour costs us","least":0,"most":1000,"source":"demo"},
  {"setting":"marginMaterial","value":0.35,"unit":"fraction","meaning":"Margin on material: (sell − cost) / sell","least":0,"most":0.95,"source":"demo"},
  {"setting":"marginLabour","value":0.45,"unit":"fraction","meaning":"Margin on labour: (sell − cost) / sell","least":0,"most":0.95,"source":"demo"},
  {"setting":"taxMaterial","value":0.08,"unit":"fraction","meaning":"Tax on material sold","least":0,"most":1,"source":"demo"},
  {"setting":"taxLabour","value":0,"unit":"fraction","meaning":"Tax on labour sold","least":0,"most":1,"source":"demo"},
  {"setting":"freight","value":0.03,"unit":"fraction","meaning":"Freight on material cost","least":0,"most":1,"source":"demo"},
  {"setting":"returnTripHours","value":1.5,"unit":"h","meaning":"Hours a second trip costs","least":0,"most":24,"source":"demo"},
  {"setting":"returnTripCost","value":40,"unit":"currency","meaning":"Travel money a second trip costs","least":0,"most":10000,"source":"demo"},
  {"setting":"returnFraction","value":0.15,"unit":"fraction","meaning":"What a device costs that comes back unused, as a share of its price: restocking and freight","least":0,"most":1,"source":"demo"},
  {"setting":"waste","value":0.1,"unit":"fraction","meaning":"Waste on wire lengths","least":0,"most":1,"source":"demo"},
  {"setting":"slackMeters","value":2,"unit":"m","meaning":"Slack at each end of an extension","least":0,"most":50,"source":"demo"},
  {"setting":"extensionMeters","value":1.5,"unit":"m","meaning":"From the old panel's tails to the module's terminals, where nothing else is said","least":0,"most":100,"source":"demo"},
  {"setting":"repairSucceeds","value":0.7,"unit":"probability","meaning":"A repair succeeds, where no odds for its condition are given","least":0,"most":1,"source":"demo"},
  {"setting":"confidenceOneTrip","value":0.9,"unit":"probability","meaning":"Wanted confidence of no second trip","least":0.5,"most":0.999,"source":"demo"},
  {"setting":"controllerModules","value":4,"unit":"count","meaning":"Modules the controller takes","least":0,"most":1000,"source":"demo"},
  {"setting":"controllerDevices","value":96,"unit":"count","meaning":"Radio devices the controller takes","least":0,"most":10000,"source":"demo"},
  {"setting":"spareFraction","value":0.1,"unit":"fraction","meaning":"Spare inputs wanted per panel, at least 1","least":0,"most":1,"source":"demo"},
  {"setting":"productiveHoursPerDay","value":6.75,"unit":"h","meaning":"Productive hours in a working day","least":1,"most":24,"source":"demo"},
  {"setting":"minimumCallHours","value":3,"unit":"h","meaning":"Least labour charged","least":0,"most":24,"source":"demo"},
  {"setting":"joinLoops","value":2,"unit":"count","meaning":"Most loops on one input","least":1,"most":20,"source":"demo"},
  {"setting":"joinOpenings","value":6,"unit":"count","meaning":"Most openings on one input","least":1,"most":50,"source":"demo"},
  {"setting":"joinMinutes","value":6,"unit":"min","meaning":"Extra minutes for each loop joined beyond the first","least":0,"most":240,"source":"demo"},
  {"setting":"detectorMinimumVolts","value":9.5,"unit":"V","meaning":"Least supply a kept detector works at","least":1,"most":60,"source":"demo"},
  {"setting":"batteryEndVolts","value":10.5,"unit":"V","meaning":"Battery volts at the end of discharge","least":1,"most":60,"source":"demo"},
  {"setting":"panelDropVolts","value":0.5,"unit":"V","meaning":"Panel's internal drop on battery, unless measured","least":0,"most":10,"source":"demo"},
  {"setting":"supplyRatedMilliamps","value":2000,"unit":"mA","meaning":"Rated output of the new supply that modules and kept detectors hang on","least":50,"most":20000,"source":"demo"},
  {"setting":"radioMarginDb","value":10,"unit":"dB","meaning":"Least radio margin","least":0,"most":60,"source":"demo"},
  {"setting":"quoteValidDays","value":30,"unit":"days","meaning":"The quote is valid this long","least":1,"most":365,"source":"demo"},
  {"setting":"repairCapHours","value":1,"unit":"h","meaning":"Fault finding per loop before the fall-back is offered","least":0,"most":24,"source":"demo"},
];

export const moneySettingsSources: Readonly<Record<string, string>> = {
  "demo": "invented for the demo",
};
