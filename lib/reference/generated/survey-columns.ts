// Generated from reference-data/survey-columns.json by tools/generate-reference.mjs. Do not edit.
/** Columns of the survey sheets: heading, unit, meaning and what may be typed */
export interface SurveyColumnsRow {
  /** Sheet the column stands on; the items of Site stand below each other [text] */
  readonly sheet: string;
  /** Our name of the column, also the JSON key [text] */
  readonly column: string;
  /** Heading in the survey workbook, before its unit [text] */
  readonly heading: string;
  /** Unit of a bare number typed there [text] */
  readonly unit: string;
  /** What belongs there [text] */
  readonly meaning: string;
  /** How the cell is read [text] */
  readonly kind: string;
  /** Something that can be typed [text] */
  readonly example: string;
  /** The only values, where there is a choice [list of text] */
  readonly allowed?: readonly (string)[];
  /** Whether it is the estimator's edit rather than the surveyor's reading [text] */
  readonly edit: boolean;
  /** Whether a sheet without this column cannot be read [text] */
  readonly needed: boolean;
  /** Column width in the workbook, in characters [count] */
  readonly width: number;
  /** Key into the table's sources. */
  readonly source: string;
}

export const surveyColumns: readonly SurveyColumnsRow[] = [
  {"sheet":"Loops","column":"key","heading":"Key","unit":"text","meaning":"Stable name of the row, given on first read. Leave it alone: edits and former results hang on it","kind":"text","example":"R001","edit":false,"needed":false,"width":7,"source":"ours"},
  {"sheet":"Loops","column":"panel","heading":"Panel","unit":"text","meaning":"Old panel the pair comes back to; one name per place where a panel hangs","kind":"text","example":"P1","edit":false,"needed":false,"width":8,"source":"ours"},
  {"sheet":"Loops","column":"loop","heading":"Loop","unit":"text","meaning":"Loop or terminal number at the old panel","kind":"text","example":"7","edit":false,"needed":true,"width":7,"source":"ours"},
  {"sheet":"Loops","column":"oldZone","heading":"Old zone","unit":"text","meaning":"Zone number in the old control","kind":"text","example":"07","edit":false,"needed":false,"width":8,"source":"ours"},
  {"sheet":"Loops","column":"label","heading":"Label on wire","unit":"text","meaning":"What stands on the tag or sheath, as written","kind":"text","example":"KITCHEN","edit":false,"needed":false,"width":16,"source":"ours"},
  {"sheet":"Loops","column":"protects","heading":"What it protects","unit":"text","meaning":"Doors, windows or room behind the loop","kind":"text","example":"kitchen back door","edit":false,"needed":false,"width":26,"source":"ours"},
  {"sheet":"Loops","column":"place","heading":"Place","unit":"text","meaning":"Where the far end is","kind":"text","example":"ground floor, rear","edit":false,"needed":false,"width":16,"source":"ours"},
  {"sheet":"Loops","column":"floor","heading":"Floor","unit":"text","meaning":"Storey","kind":"text","example":"G","edit":false,"needed":false,"width":7,"source":"ours"},
  {"sheet":"Loops","column":"openings","heading":"Openings","unit":"count","meaning":"Moving leaves and devices that each need proving; double doors count 2","kind":"openings","example":"5+1","edit":false,"needed":false,"width":9,"source":"ours"},
  {"sheet":"Loops","column":"device","heading":"Device","unit":"text","meaning":"Kind of contact or detector","kind":"device","example":"recessed contact","edit":false,"needed":false,"width":20,"source":"ours"},
  {"sheet":"Loops","column":"contactForm","heading":"NC or NO","unit":"text","meaning":"Contact closed (NC) or open (NO) with everything shut","kind":"choice","example":"NC","allowed":["NC","NO","mixed","unknown"],"edit":false,"needed":false,"width":9,"source":"ours"},
  {"sheet":"Loops","column":"cable","heading":"Cable","unit":"text","meaning":"Wire size and conductors","kind":"cable","example":"22/4","edit":false,"needed":false,"width":10,"source":"ours"},
  {"sheet":"Loops","column":"run","heading":"Run one way","unit":"m","meaning":"One-way length along the cable; a bare number is metres, feet are written 55 ft","kind":"run","example":"55 ft","edit":false,"needed":false,"width":13,"source":"ours"},
  {"sheet":"Loops","column":"fedFrom","heading":"Fed from","unit":"text","meaning":"Loop or place whose supply reaches this powered detector","kind":"text","example":"5","edit":false,"needed":false,"width":10,"source":"ours"},
  {"sheet":"Loops","column":"returnSharedWith","heading":"Return shared with","unit":"text","meaning":"Loops of the same panel that come back on the same return conductor; commas between","kind":"text","example":"4, 5","edit":false,"needed":false,"width":12,"source":"ours"},
  {"sheet":"Loops","column":"eolPlace","heading":"EOL place","unit":"text","meaning":"Where the end-of-line resistor is","kind":"eolPlace","example":"device","allowed":["device","panel","none","unknown"],"edit":false,"needed":false,"width":10,"source":"ours"},
  {"sheet":"Loops","column":"eolValue","heading":"EOL value","unit":"Ω","meaning":"Value of that resistor","kind":"ohms","example":"2.2k","edit":false,"needed":false,"width":10,"source":"ours"},
  {"sheet":"Loops","column":"closed","heading":"Shut","unit":"Ω","meaning":"Reading across the lifted pair with every opening shut","kind":"ohmsReading","example":"5.57k","edit":false,"needed":true,"width":12,"source":"ours"},
  {"sheet":"Loops","column":"opened","heading":"One opening open","unit":"Ω","meaning":"Reading with one opening open; OL is over-range. Several: \"1: OL; 2: OL\", 1 is nearest the panel","kind":"opened","example":"OL","edit":false,"needed":false,"width":13,"source":"ours"},
  {"sheet":"Loops","column":"openedTogether","heading":"All open together","unit":"Ω","meaning":"Reading with all openings open at once","kind":"ohmsReading","example":"OL","edit":false,"needed":false,"width":12,"source":"ours"},
  {"sheet":"Loops","column":"reversed","heading":"Leads swapped","unit":"Ω","meaning":"Shut reading with the meter leads swapped","kind":"ohmsReading","example":"5.57k","edit":false,"needed":false,"width":12,"source":"ours"},
  {"sheet":"Loops","column":"earth","heading":"To earth","unit":"Ω","meaning":"Lowest reading from either conductor to earth","kind":"ohmsReading","example":"OL","edit":false,"needed":false,"width":11,"source":"ours"},
  {"sheet":"Loops","column":"toOtherPair","heading":"To other pairs","unit":"Ω","meaning":"Lowest reading from this pair to any other","kind":"ohmsReading","example":"OL","edit":false,"needed":false,"width":12,"source":"ours"},
  {"sheet":"Loops","column":"voltsPairDc","heading":"Volts DC on lifted pair","unit":"V","meaning":"Direct voltage across the lifted pair, nothing connected","kind":"volts","example":"0","edit":false,"needed":false,"width":12,"source":"ours"},
  {"sheet":"Loops","column":"voltsPairAc","heading":"Volts AC on lifted pair","unit":"V","meaning":"Alternating voltage across the lifted pair","kind":"volts","example":"0","edit":false,"needed":false,"width":12,"source":"ours"},
  {"sheet":"Loops","column":"voltsAtDetector","heading":"Volts at detector","unit":"V","meaning":"Supply at the detector with everything on","kind":"volts","example":"13.4","edit":false,"needed":false,"width":12,"source":"ours"},
  {"sheet":"Loops","column":"milliamps","heading":"Detector current","unit":"mA","meaning":"Supply current of the detectors on this loop","kind":"milliamps","example":"18","edit":false,"needed":false,"width":11,"source":"ours"},
  {"sheet":"Loops","column":"lifted","heading":"Lifted","unit":"text","meaning":"Conductors taken off the old terminals while metering","kind":"choice","example":"both","allowed":["both","one","no","unknown"],"edit":false,"needed":false,"width":8,"source":"ours"},
  {"sheet":"Loops","column":"powered","heading":"Detector powered","unit":"text","meaning":"Whether the detector had its supply while the loop was metered","kind":"choice","example":"yes","allowed":["yes","no","unknown"],"edit":false,"needed":false,"width":10,"source":"ours"},
  {"sheet":"Loops","column":"behaviour","heading":"Reading moved","unit":"text","meaning":"What the reading did while nobody touched the loop","kind":"choice","example":"steady","allowed":["steady","climbing","falling","jumping"],"edit":false,"needed":false,"width":10,"source":"ours"},
  {"sheet":"Loops","column":"tapped","heading":"Tapped, low to high","unit":"Ω","meaning":"Lowest and highest reading while contacts and cable were tapped","kind":"ohmsReading","example":"47-80","edit":false,"needed":false,"width":12,"source":"ours"},
  {"sheet":"Loops","column":"restingState","heading":"Old panel at rest","unit":"text","meaning":"What the old panel showed for this zone before lifting","kind":"choice","example":"normal","allowed":["normal","faulted","unknown"],"edit":false,"needed":false,"width":10,"source":"ours"},
  {"sheet":"Loops","column":"resistorAtPanel","heading":"Resistor at panel","unit":"text","meaning":"A resistor seen at the zone terminals of the old panel","kind":"choice","example":"none","allowed":["inSeries","acrossTerminals","seenNotTraced","none","notLooked"],"edit":false,"needed":false,"width":14,"source":"ours"},
  {"sheet":"Loops","column":"lifeSafety","heading":"Life safety","unit":"text","meaning":"Mark yes where the circuit has to do with fire, gas, medical help, escape or the like","kind":"choice","example":"yes","allowed":["yes","no"],"edit":false,"needed":false,"width":8,"source":"ours"},
  {"sheet":"Loops","column":"use","heading":"Use","unit":"text","meaning":"What the zone is for","kind":"choice","example":"perimeter","allowed":["entryExit","perimeter","interior","interiorFollower","audible24h","holdUp","tamper","environmental","arming","lifeSafety"],"edit":false,"needed":false,"width":12,"source":"ours"},
  {"sheet":"Loops","column":"area","heading":"Area","unit":"text","meaning":"Part of the building that is armed by itself","kind":"text","example":"1","edit":false,"needed":false,"width":8,"source":"ours"},
  {"sheet":"Loops","column":"access","heading":"Access","unit":"text","meaning":"Ladder, lift, hours, key","kind":"text","example":"ladder","edit":false,"needed":false,"width":12,"source":"ours"},
  {"sheet":"Loops","column":"finish","heading":"Finish","unit":"text","meaning":"Wall and frame: drywall, masonry, steel frame","kind":"text","example":"drywall","edit":false,"needed":false,"width":12,"source":"ours"},
  {"sheet":"Loops","column":"measuredBy","heading":"Measured by","unit":"text","meaning":"Initials and day","kind":"text","example":"first initials, day","edit":false,"needed":false,"width":12,"source":"ours"},
  {"sheet":"Loops","column":"notes","heading":"Notes","unit":"text","meaning":"Anything else, in your own words","kind":"text","example":"reads same with windows open","edit":false,"needed":false,"width":40,"source":"ours"},
  {"sheet":"Loops","column":"pinTreatment","heading":"Pin treatment","unit":"text","meaning":"Treatment the estimator insists on","kind":"choice","example":"wireless","allowed":["keep","fitEol","changeEol","repair","rewire","split","wireless","measureAgain","retire","excluded"],"edit":true,"needed":false,"width":12,"source":"ours"},
  {"sheet":"Loops","column":"forbid","heading":"Forbid treatments","unit":"text","meaning":"Treatments the plan must not choose; commas between","kind":"list","example":"repair, rewire","edit":true,"needed":false,"width":14,"source":"ours"},
  {"sheet":"Loops","column":"supplyCure","heading":"Supply cure","unit":"text","meaning":"How a kept detector that falls short of supply is helped on the wire; its parts and hours go into the price","kind":"choice","example":"localSupply","allowed":["joints","heavierPair","ownPair","localSupply"],"edit":true,"needed":false,"width":12,"source":"ours"},
  {"sheet":"Loops","column":"estimatorNote","heading":"Estimator note","unit":"text","meaning":"Kept over every re-run","kind":"text","example":"owner repaints in May","edit":true,"needed":false,"width":24,"source":"ours"},
  {"sheet":"Loops","column":"asLeftClosed","heading":"As left, shut","unit":"Ω","meaning":"Reading after the work, everything shut","kind":"ohmsReading","example":"2.20k","edit":true,"needed":false,"width":11,"source":"ours"},
  {"sheet":"Loops","column":"asLeftOpened","heading":"As left, open","unit":"Ω","meaning":"Reading after the work, one opening open","kind":"ohmsReading","example":"OL","edit":true,"needed":false,"width":11,"source":"ours"},
  {"sheet":"Loops","column":"repairOutcome","heading":"Repair outcome","unit":"text","meaning":"How a repair ended","kind":"choice","example":"repaired","allowed":["repaired","notRepaired","notTried"],"edit":true,"needed":false,"width":12,"source":"ours"},
  {"sheet":"Loops","column":"hoursSpent","heading":"Hours spent","unit":"h","meaning":"Time spent on this loop","kind":"number","example":"0.5","edit":true,"needed":false,"width":9,"source":"ours"},
  {"sheet":"Loops","column":"seenWhat","heading":"Device seen","unit":"text","meaning":"What the device really is, where a word alone took it for life safety","kind":"text","example":"contact of the fire exit door","edit":true,"needed":false,"width":20,"source":"ours"},
  {"sheet":"Loops","column":"seenBy","heading":"Seen by","unit":"text","meaning":"Who has seen that device with his own eyes","kind":"text","example":"full name","edit":true,"needed":false,"width":14,"source":"ours"},
  {"sheet":"Site","column":"name","heading":"Site","unit":"text","meaning":"Name of the job","kind":"text","example":"Mill Lane 4","edit":false,"needed":false,"width":12,"source":"ours"},
  {"sheet":"Site","column":"surveyed","heading":"Surveyed","unit":"text","meaning":"Day and people","kind":"text","example":"2 Mar, 1 technician","edit":false,"needed":false,"width":12,"source":"ours"},
  {"sheet":"Site","column":"startOn","heading":"First day on site","unit":"text","meaning":"Planned first day of the work, YYYY-MM-DD; orders get their dates from it","kind":"text","example":"2026-03-16","edit":false,"needed":false,"width":12,"source":"ours"},
  {"sheet":"Site","column":"currency","heading":"Currency","unit":"text","meaning":"Three-letter code of the one currency of the job","kind":"text","example":"USD","edit":false,"needed":false,"width":12,"source":"ours"},
  {"sheet":"Site","column":"yearBuilt","heading":"Year built","unit":"1","meaning":"Year the building was built","kind":"number","example":"1994","edit":false,"needed":false,"width":12,"source":"ours"},
  {"sheet":"Site","column":"hazardRegister","heading":"Hazard register","unit":"text","meaning":"Asbestos, lead paint and the like","kind":"text","example":"asbestos floor tile","edit":false,"needed":false,"width":12,"source":"ours"},
  {"sheet":"Site","column":"temperatureCelsius","heading":"Temperature","unit":"°C","meaning":"Where most of the cable runs; write F after Fahrenheit","kind":"temperature","example":"21","edit":false,"needed":false,"width":12,"source":"ours"},
  {"sheet":"Site","column":"meter","heading":"Meter accuracy","unit":"text","meaning":"Percent of reading + counts of the last digit","kind":"meter","example":"0.8% + 3","edit":false,"needed":false,"width":12,"source":"ours"},
  {"sheet":"Site","column":"leads","heading":"Meter leads","unit":"text","meaning":"Zeroed, or their resistance in Ω","kind":"leads","example":"0.3 not zeroed","edit":false,"needed":false,"width":12,"source":"ours"},
  {"sheet":"Site","column":"standbyHours","heading":"Standby wanted","unit":"h","meaning":"Hours the system must run without mains","kind":"hours","example":"24","edit":false,"needed":false,"width":12,"source":"ours"},
  {"sheet":"Site","column":"monitored","heading":"Monitored","unit":"text","meaning":"Whether a centre receives the old alarm","kind":"text","example":"yes, other company","edit":false,"needed":false,"width":12,"source":"ours"},
  {"sheet":"Site","column":"accountOnTest","heading":"Account on test","unit":"text","meaning":"Centre has put the account on test","kind":"yesNo","example":"no","allowed":["yes","no"],"edit":false,"needed":false,"width":12,"source":"ours"},
  {"sheet":"Site","column":"releaseName","heading":"Life-safety release by","unit":"text","meaning":"Responsible contractor who released the life-safety circuits in writing","kind":"text","example":"","edit":false,"needed":false,"width":12,"source":"ours"},
  {"sheet":"Site","column":"releaseDate","heading":"Life-safety release on","unit":"text","meaning":"Date of that release","kind":"text","example":"","edit":false,"needed":false,"width":12,"source":"ours"},
  {"sheet":"Site","column":"panelCount","heading":"Panels","unit":"count","meaning":"Old panels on the site","kind":"number","example":"1","edit":false,"needed":false,"width":12,"source":"ours"},
  {"sheet":"Panels","column":"panel","heading":"Panel","unit":"text","meaning":"Short name used in the loops sheet","kind":"text","example":"P1","edit":false,"needed":true,"width":8,"source":"ours"},
  {"sheet":"Panels","column":"place","heading":"Panel place","unit":"text","meaning":"Where it hangs","kind":"text","example":"utility room","edit":false,"needed":false,"width":28,"source":"ours"},
  {"sheet":"Panels","column":"mains","heading":"Mains","unit":"text","meaning":"How it is fed","kind":"text","example":"plug-in transformer 16.5 V AC","edit":false,"needed":false,"width":28,"source":"ours"},
  {"sheet":"Panels","column":"battery","heading":"Battery","unit":"text","meaning":"Size, date, state","kind":"text","example":"7 Ah, dated 2021","edit":false,"needed":false,"width":24,"source":"ours"},
  {"sheet":"Panels","column":"auxMilliamps","heading":"Aux load","unit":"mA","meaning":"Measured current of the detectors on the auxiliary output","kind":"milliamps","example":"30","edit":false,"needed":false,"width":10,"source":"ours"},
  {"sheet":"Panels","column":"auxVolts","heading":"Aux volts","unit":"V","meaning":"Auxiliary output with the charger on","kind":"volts","example":"13.4","edit":false,"needed":false,"width":10,"source":"ours"},
  {"sheet":"Panels","column":"auxVoltsOnBattery","heading":"Aux volts on battery","unit":"V","meaning":"Auxiliary output on battery alone","kind":"volts","example":"11.9","edit":false,"needed":false,"width":12,"source":"ours"},
  {"sheet":"Panels","column":"temperatureCelsius","heading":"Temperature","unit":"°C","meaning":"At the panel; write F after Fahrenheit","kind":"temperature","example":"21","edit":false,"needed":false,"width":12,"source":"ours"},
  {"sheet":"Old zones","column":"zone","heading":"Zone","unit":"text","meaning":"Zone number in the old control","kind":"text","example":"07","edit":false,"needed":true,"width":8,"source":"ours"},
  {"sheet":"Old zones","column":"name","heading":"Printed name","unit":"text","meaning":"Name on the zone list","kind":"text","example":"Exam corridor","edit":false,"needed":false,"width":24,"source":"ours"},
  {"sheet":"Old zones","column":"type","heading":"Type on list","unit":"text","meaning":"Type on the zone list","kind":"text","example":"Perim","edit":false,"needed":false,"width":16,"source":"ours"},
  {"sheet":"Radio tests","column":"from","heading":"From","unit":"text","meaning":"Radio that listened","kind":"text","example":"control radio at reception","edit":false,"needed":false,"width":24,"source":"ours"},
  {"sheet":"Radio tests","column":"location","heading":"Location tested","unit":"text","meaning":"Where the test transmitter was","kind":"text","example":"bedroom 3 window","edit":false,"needed":true,"width":26,"source":"ours"},
  {"sheet":"Radio tests","column":"kind","heading":"Device kind","unit":"text","meaning":"What will transmit from there","kind":"text","example":"recessed","edit":false,"needed":false,"width":16,"source":"ours"},
  {"sheet":"Radio tests","column":"distance","heading":"Distance","unit":"m","meaning":"Straight distance; a bare number is metres, feet are written 40 ft","kind":"run","example":"12 m","edit":false,"needed":false,"width":12,"source":"ours"},
  {"sheet":"Radio tests","column":"walls","heading":"Walls and floors","unit":"text","meaning":"What is in between","kind":"text","example":"2 stud walls","edit":false,"needed":false,"width":18,"source":"ours"},
  {"sheet":"Radio tests","column":"signalDbm","heading":"Received","unit":"dBm","meaning":"Signal strength received","kind":"number","example":"-84","edit":false,"needed":false,"width":10,"source":"ours"},
  {"sheet":"Radio tests","column":"noiseDbm","heading":"Background","unit":"dBm","meaning":"Noise without the transmitter","kind":"number","example":"-101","edit":false,"needed":false,"width":11,"source":"ours"},
  {"sheet":"Radio tests","column":"heard","heading":"Heard","unit":"count","meaning":"Messages heard","kind":"number","example":"10","edit":false,"needed":false,"width":8,"source":"ours"},
  {"sheet":"Radio tests","column":"sent","heading":"Sent","unit":"count","meaning":"Messages sent","kind":"number","example":"10","edit":false,"needed":false,"width":8,"source":"ours"},
  {"sheet":"Radio tests","column":"note","heading":"Note","unit":"text","meaning":"Door open or closed, and the like","kind":"text","example":"fire door closed","edit":false,"needed":false,"width":28,"source":"ours"},
  {"sheet":"Price book","column":"code","heading":"Code","unit":"text","meaning":"Article code","kind":"text","example":"RES22K","edit":false,"needed":true,"width":14,"source":"ours"},
  {"sheet":"Price book","column":"class","heading":"Class","unit":"text","meaning":"Material class the quantity rules use","kind":"text","example":"eolResistor","edit":false,"needed":true,"width":18,"source":"ours"},
  {"sheet":"Price book","column":"description","heading":"Description","unit":"text","meaning":"Words for people","kind":"text","example":"Resistor 2.2 kΩ 0.25 W","edit":false,"needed":false,"width":34,"source":"ours"},
  {"sheet":"Price book","column":"unit","heading":"Unit","unit":"text","meaning":"What one unit is: each, ft, m","kind":"text","example":"each","edit":false,"needed":false,"width":8,"source":"ours"},
  {"sheet":"Price book","column":"unitPrice","heading":"Unit price","unit":"currency","meaning":"Price of one unit","kind":"money","example":"0.22","edit":false,"needed":true,"width":11,"source":"ours"},
  {"sheet":"Price book","column":"packSize","heading":"Pack size","unit":"count","meaning":"Units that are sold together","kind":"number","example":"10","edit":false,"needed":false,"width":9,"source":"ours"},
  {"sheet":"Price book","column":"fromQuantity","heading":"From quantity","unit":"count","meaning":"Units from which this price holds; one row per tier","kind":"number","example":"1","edit":false,"needed":false,"width":9,"source":"ours"},
  {"sheet":"Price book","column":"stock","heading":"Stock","unit":"count","meaning":"Units in the van or store","kind":"number","example":"0","edit":false,"needed":false,"width":8,"source":"ours"},
  {"sheet":"Price book","column":"supplier","heading":"Supplier","unit":"text","meaning":"Who sells it","kind":"text","example":"supplier A","edit":false,"needed":false,"width":16,"source":"ours"},
  {"sheet":"Price book","column":"shipping","heading":"Shipping per order","unit":"currency","meaning":"Flat cost of one order at this supplier","kind":"money","example":"12.00","edit":false,"needed":false,"width":11,"source":"ours"},
  {"sheet":"Price book","column":"leadDays","heading":"Lead time","unit":"d","meaning":"Days until it arrives","kind":"number","example":"3","edit":false,"needed":false,"width":9,"source":"ours"},
  {"sheet":"Price book","column":"taxClass","heading":"Tax class","unit":"text","meaning":"material or labour, or a class of your own","kind":"text","example":"material","edit":false,"needed":false,"width":10,"source":"ours"},
  {"sheet":"Price book","column":"radioBand","heading":"Radio band","unit":"text","meaning":"Band of a radio device; empty for all else","kind":"text","example":"","edit":false,"needed":false,"width":12,"source":"ours"},
  {"sheet":"Price book","column":"eolOhms","heading":"Resistance","unit":"Ω","meaning":"Value of an end-of-line resistor","kind":"ohms","example":"2.2k","edit":false,"needed":false,"width":11,"source":"ours"},
  {"sheet":"Price book","column":"ampereHours","heading":"Capacity","unit":"Ah","meaning":"Capacity of a battery","kind":"number","example":"7","edit":false,"needed":false,"width":10,"source":"ours"},
  {"sheet":"Price book","column":"gaugeAwg","heading":"Wire size","unit":"AWG","meaning":"Conductor size of wire","kind":"number","example":"22","edit":false,"needed":false,"width":9,"source":"ours"},
  {"sheet":"Price book","column":"conductors","heading":"Wire conductors","unit":"count","meaning":"Conductors of wire","kind":"number","example":"4","edit":false,"needed":false,"width":9,"source":"ours"},
  {"sheet":"Input modules","column":"type","heading":"Type","unit":"text","meaning":"Your name of the module","kind":"text","example":"six","edit":false,"needed":true,"width":10,"source":"ours"},
  {"sheet":"Input modules","column":"inputs","heading":"Inputs","unit":"count","meaning":"Loops one module takes","kind":"number","example":"6","edit":false,"needed":true,"width":8,"source":"ours"},
  {"sheet":"Input modules","column":"returns","heading":"Returns hold","unit":"list of count","meaning":"Conductors each return terminal holds, one number per terminal","kind":"list","example":"3, 3, 3","edit":false,"needed":true,"width":22,"source":"ours"},
  {"sheet":"Input modules","column":"eolScope","heading":"EOL set per","unit":"text","meaning":"What one EOL setting holds for","kind":"choice","example":"bank","allowed":["input","bank","module"],"edit":false,"needed":false,"width":10,"source":"ours"},
  {"sheet":"Input modules","column":"bankSize","heading":"Inputs per bank","unit":"count","meaning":"Inputs that share one EOL setting, where it is set per bank","kind":"number","example":"3","edit":false,"needed":false,"width":9,"source":"ours"},
  {"sheet":"Input modules","column":"eolOhms","heading":"EOL values","unit":"Ω","meaning":"Values that can be set: a list, or a range like 1k-10k of preferred values","kind":"ohmsList","example":"2.2k, 4.7k","edit":false,"needed":true,"width":26,"source":"ours"},
  {"sheet":"Input modules","column":"bandLow","heading":"Band low","unit":"1","meaning":"Lower end of the normal band as a fraction of the EOL value","kind":"number","example":"0.80","edit":false,"needed":false,"width":9,"source":"ours"},
  {"sheet":"Input modules","column":"bandHigh","heading":"Band high","unit":"1","meaning":"Upper end of the normal band as a fraction of the EOL value","kind":"number","example":"1.20","edit":false,"needed":false,"width":9,"source":"ours"},
  {"sheet":"Input modules","column":"alarmOn","heading":"Alarm on","unit":"text","meaning":"Side of the band that is an alarm","kind":"choice","example":"either","allowed":["open","short","either"],"edit":false,"needed":false,"width":9,"source":"ours"},
  {"sheet":"Input modules","column":"minPulseMs","heading":"Shortest pulse","unit":"ms","meaning":"Shortest opening the input notices","kind":"number","example":"250","edit":false,"needed":false,"width":10,"source":"ours"},
  {"sheet":"Input modules","column":"maxConductorOhms","heading":"Most conductor","unit":"Ω","meaning":"Largest loop resistance without the EOL","kind":"number","example":"100","edit":false,"needed":false,"width":10,"source":"ours"},
  {"sheet":"Input modules","column":"minLeakOhms","heading":"Least leak","unit":"Ω","meaning":"Smallest leakage resistance the input bears","kind":"ohms","example":"100k","edit":false,"needed":false,"width":10,"source":"ours"},
  {"sheet":"Input modules","column":"minLeakTimesEol","heading":"Least leak, times EOL","unit":"1","meaning":"The same as a multiple of the EOL value","kind":"number","example":"20","edit":false,"needed":false,"width":10,"source":"ours"},
  {"sheet":"Input modules","column":"milliamps","heading":"Current","unit":"mA","meaning":"Supply current of one module","kind":"number","example":"60","edit":false,"needed":false,"width":10,"source":"ours"},
  {"sheet":"Input modules","column":"priceCode","heading":"Price code","unit":"text","meaning":"Its code in the price book","kind":"text","example":"MOD6","edit":false,"needed":true,"width":12,"source":"ours"},
  {"sheet":"Input modules","column":"stock","heading":"Stock","unit":"count","meaning":"Modules at hand","kind":"number","example":"0","edit":false,"needed":false,"width":8,"source":"ours"},
  {"sheet":"Labour","column":"task","heading":"Task","unit":"text","meaning":"Labour unit","kind":"text","example":"verifyLoop","edit":false,"needed":true,"width":34,"source":"ours"},
  {"sheet":"Labour","column":"lowHours","heading":"Low","unit":"h","meaning":"Hours on a lucky day","kind":"number","example":"0.05","edit":false,"needed":true,"width":9,"source":"ours"},
  {"sheet":"Labour","column":"likelyHours","heading":"Likely","unit":"h","meaning":"Hours mostly","kind":"number","example":"0.08","edit":false,"needed":true,"width":9,"source":"ours"},
  {"sheet":"Labour","column":"highHours","heading":"High","unit":"h","meaning":"Hours on a bad day","kind":"number","example":"0.15","edit":false,"needed":true,"width":9,"source":"ours"},
  {"sheet":"Settings","column":"setting","heading":"Setting","unit":"text","meaning":"Name of the setting","kind":"text","example":"labourCostPerHour","edit":false,"needed":true,"width":30,"source":"ours"},
  {"sheet":"Settings","column":"value","heading":"Value","unit":"1","meaning":"Its value in the unit beside it","kind":"number","example":"52","edit":false,"needed":true,"width":10,"source":"ours"},
  {"sheet":"Settings","column":"unit","heading":"Unit","unit":"text","meaning":"Unit of the value","kind":"text","example":"currency/h","edit":false,"needed":false,"width":14,"source":"ours"},
  {"sheet":"Settings","column":"meaning","heading":"Meaning","unit":"text","meaning":"What it does","kind":"text","example":"","edit":false,"needed":false,"width":60,"source":"ours"},
  {"sheet":"Finished jobs","column":"job","heading":"Job","unit":"text","meaning":"Name of the finished job; all its rows bear the same","kind":"text","example":"Harbour shed","edit":false,"needed":true,"width":24,"source":"ours"},
  {"sheet":"Finished jobs","column":"finished","heading":"Finished on","unit":"text","meaning":"Day it was finished","kind":"text","example":"2026-03-02","edit":false,"needed":false,"width":13,"source":"ours"},
  {"sheet":"Finished jobs","column":"kind","heading":"What was counted","unit":"text","meaning":"What the figures of this row count","kind":"choice","example":"repair","allowed":["loops","asLeft","repair","hours"],"edit":false,"needed":true,"width":17,"source":"ours"},
  {"sheet":"Finished jobs","column":"name","heading":"Of what","unit":"text","meaning":"Condition that was repaired, or task of the hours; empty for loops and asLeft","kind":"text","example":"open","edit":false,"needed":false,"width":22,"source":"ours"},
  {"sheet":"Finished jobs","column":"first","heading":"First figure","unit":"1","meaning":"Loops counted, readings inside their band, repairs tried, or observations of the hours","kind":"number","example":"6","edit":false,"needed":true,"width":13,"source":"ours"},
  {"sheet":"Finished jobs","column":"second","heading":"Second figure","unit":"1","meaning":"Of them faulty, readings outside their band, repairs that held, or the sum of ln(hours)","kind":"number","example":"3","edit":false,"needed":true,"width":14,"source":"ours"},
  {"sheet":"Finished jobs","column":"third","heading":"Third figure","unit":"1","meaning":"Sum of ln(hours) squared; empty or 0 for everything else","kind":"number","example":"0","edit":false,"needed":false,"width":13,"source":"ours"},
  {"sheet":"Finished jobs","column":"use","heading":"Use","unit":"text","meaning":"no leaves this row out of every estimate; empty = yes","kind":"yesNo","example":"yes","allowed":["yes","no"],"edit":false,"needed":false,"width":7,"source":"ours"},
];

export const surveyColumnsSources: Readonly<Record<string, string>> = {
  "ours": "our own layout of the survey",
};
