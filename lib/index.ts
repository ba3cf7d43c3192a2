// The public face of the library, in data-flow order. Spreadsheet files are in "loopwright/workbook".

// What can go wrong, and questions to the surveyor

export { InputError, type InputErrorFacts } from "./problems/input-error.js";
export type { Place, Query } from "./problems/query.js";

// Text as typed to quantities, and back

export { formatHours } from "./quantities/format-hours.js";
export { formatLength } from "./quantities/format-length.js";
export { formatMoney } from "./quantities/format-money.js";
export { formatOhms } from "./quantities/format-ohms.js";
export { formatPercentOnPaper } from "./quantities/format-percent-on-paper.js";
export { type Cents, roundCents } from "./quantities/money.js";
export type { Ohms, OhmsReading } from "./quantities/ohms-reading.js";
export { parseCable, type TypedCable } from "./quantities/parse-cable.js";
export { parseCount } from "./quantities/parse-count.js";
export { parseFraction } from "./quantities/parse-fraction.js";
export { parseHours } from "./quantities/parse-hours.js";
export { parseMilliamps, type TypedMilliamps } from "./quantities/parse-milliamps.js";
export { parseMoney } from "./quantities/parse-money.js";
export { type OhmsOptions, parseOhms, type TypedOhms } from "./quantities/parse-ohms.js";
export { parseOpenings, type TypedOpenings } from "./quantities/parse-openings.js";
export { parseRun, type RunOptions, type TypedRun } from "./quantities/parse-run.js";
export { parseTemperature, type TemperatureOptions, type TypedTemperature } from "./quantities/parse-temperature.js";
export { parseVolts, type TypedVolts } from "./quantities/parse-volts.js";
export type { EmptyCell, Parsed, ReadCell, UnreadableCell } from "./quantities/parsed.js";
export {
  type PreferredNeighbours,
  type PreferredSeries,
  type PreferredValue,
  preferredNeighbours,
} from "./quantities/preferred-numbers.js";
export { type BandedResistor, bandsFromOhms, ohmsFromBands, type ResistorToCode } from "./quantities/resistor-code.js";
export type { CellTyped } from "./quantities/typed-cell.js";
export type { DecimalMark } from "./quantities/typed-number.js";

// Wire and networks

export {
  type LoopFault,
  type LoopOpening,
  type LoopWiring,
  loopNetwork,
  loopTerminalOhms,
} from "./network/loop-network.js";
export type { NetworkElement, NetworkNode, ResistorNetwork } from "./network/resistor-network.js";
export { terminalOhms } from "./network/terminal-ohms.js";
export type { SurveyColumnsRow } from "./reference/generated/survey-columns.js";
export type { LoopPart, PartOhms } from "./reference/loop-part.js";
export type { OhmMeter } from "./reference/meter.js";
export type { Conductor, ConductorMetal } from "./wiring/conductor.js";
export { conductorOhmsPerMeter, type WarmConductor } from "./wiring/conductor-ohms-per-meter.js";
export { type MixedPairOhms, mixedPairOhms, type PairStretch, pairOhms } from "./wiring/pair-ohms.js";
export { type MeasuredPair, type RunFromOhms, runMetersFromOhms } from "./wiring/run-meters-from-ohms.js";
export { awgAreaMm2, awgDiameterMm, type NearestAwg, nearestAwg } from "./wiring/wire-gauge.js";

// The survey

export { columnsOf, type SurveyColumn, type SurveySheetName, surveySheets } from "./survey/columns.js";
export { type ConfirmedFeeds, confirmFeeds } from "./survey/confirm-feeds.js";
export type { HeadingMapping, HeadingMatch, HeadingUnit } from "./survey/map-headings.js";
export { readSurvey, type SheetToRead, type SurveyInput, type SurveyRead } from "./survey/read-survey.js";
export type {
  DeviceKind,
  FinishedJobRow,
  InputModuleProfile,
  LabourUnit,
  LoopDevice,
  LoopEdits,
  MeasuredRun,
  NoteFact,
  OldZone,
  PriceBookRow,
  RadioTest,
  SupplyCure,
  Survey,
  SurveyCable,
  SurveyLoop,
  SurveyPanel,
  SurveySite,
  TypedCell,
  TypedSheet,
} from "./survey/survey.js";
export { SurveyRefused, type SurveyRefusedCode } from "./survey/survey-refused.js";

// Readings and judgement

export { actions, conditions } from "./findings/conditions.js";
export { loopRecord } from "./findings/from-survey.js";
export type { GradedClass, GradedReadings } from "./findings/graded-readings.js";
export type { JobHabit } from "./findings/job-posterior.js";
export { type JobJudgement, judgeJob } from "./findings/judge-job.js";
export { judgeLoop, judgeLoopWith } from "./findings/judge-loop.js";
export { type JudgeModel, judgeModel } from "./findings/judge-model.js";
export type { FigureName, Figures, JudgeOptions } from "./findings/judge-options.js";
export { type LifeSafetyMatch, type LoopTexts, lifeSafetyMatch, redCable } from "./findings/life-safety.js";
export type {
  Action,
  Condition,
  Fact,
  Finding,
  LoopJudgement,
  LoopRecord,
  NextReading,
} from "./findings/loop-record.js";
export { measureNext } from "./findings/measure-next.js";
export { measureNextForJob, type WalkLimits, type WalkReading } from "./findings/measure-next-for-job.js";
export type { OutcomeTable } from "./findings/outcome-loss.js";
export type { FixedOutcomes } from "./findings/outcome-tables.js";
export {
  type CandidateReading,
  type ConditionShares,
  type ReadingOutcome,
  type ReadingOutcomes,
  readingOutcomes,
} from "./findings/reading-outcomes.js";
export {
  type ExpectedLoop,
  type ExpectedOhms,
  expectedLoopOhms,
  type OhmsBand,
} from "./readings/expected-loop-ohms.js";
export { type MeterBound, meterBoundOhms } from "./readings/meter-bound.js";
export { meteredBand } from "./readings/metered-band.js";
export { countsAsOverRange } from "./readings/over-range.js";
export { type LoopOhmsEstimate, loopOhmsFromReading, type ReadOhms } from "./readings/reading-uncertainty.js";
export {
  type Correlation,
  combinedUncertainty,
  propagateUncertainty,
  type Spread,
  standardUncertainty,
  type UncertainInput,
  type UncertainResult,
} from "./readings/standard-uncertainty.js";

// Termination

export { type EolLoop, type EolModule, type EolValueChoice, eolValueFor } from "./termination/eol-value-for.js";
export { fitsInput, type InputFit } from "./termination/fits-input.js";
export {
  type DividerInput,
  type EolBand,
  type InputWindow,
  type Span,
  windowFromBand,
  windowFromDivider,
} from "./termination/input-window.js";
export type { ResistorPart, TerminatedLoop } from "./termination/loop-range.js";
export {
  type ResistorAdvice,
  type ResistorOffer,
  type ResistorQuestion,
  type ResistorSeries,
  resistorFor,
} from "./termination/resistor-for.js";

// Supply and radio

export { deliveryProved, type MessageCount } from "./radio/delivery-proved.js";
export { type Building, type IndoorLoss, type IndoorPath, indoorLoss } from "./radio/indoor-loss.js";
export { placeRepeaters, type RadioLink, type RepeaterPlace, type RepeaterPlan } from "./radio/place-repeaters.js";
export { radioDefault } from "./radio/radio-defaults.js";
export {
  type MeasuredRadio,
  type RadioMargin,
  type RadioPath,
  type RadioQuestion,
  radioMargin,
} from "./radio/radio-margin.js";
export { type AuxBudget, type AuxLoad, auxBudget } from "./supply/aux-budget.js";
export { type BatteryAnswer, type BatteryQuestion, batteryAmpHours } from "./supply/battery-amp-hours.js";
export { type ClassTwoCaution, classTwoCaution } from "./supply/class-two-caution.js";
export { type ExtraJoint, extraJointOhms, type MeasuredVolts } from "./supply/extra-joint-ohms.js";
export { type SupplyCures, supplyCures } from "./supply/supply-cures.js";
export { supplyDefault } from "./supply/supply-defaults.js";
export {
  type PerState,
  type SupplyDetector,
  type SupplyDetectorVolts,
  type SupplySegment,
  type SupplySource,
  type SupplyState,
  type SupplyTree,
  type SupplyTreeInput,
  supplyTree,
} from "./supply/supply-tree.js";

// Zones

export { type CheckedTime, type EntryExitCheck, entryExitTimes } from "./zones/entry-exit-times.js";
export { type ProposedUse, proposeUse } from "./zones/propose-use.js";
export type { ExcludedLoop, SplitOffer, Zone, ZonePart, ZoneSchedule } from "./zones/zone.js";
export { zoneConflicts } from "./zones/zone-conflicts.js";
export { zoneSchedule } from "./zones/zone-schedule.js";
export { mayJoin, type ZoneUse, zoneUse, zoneUseWords } from "./zones/zone-use.js";

// What things and hours cost; what a loop may get

export type { ThreePointHours } from "./labour/hours-spread.js";
export { type LabourLine, labourLines } from "./labour/labour-lines.js";
export type { Article, PriceBook, PriceTier, Supplier, SupplierOffer } from "./price-book/article.js";
export { type JobSettings, jobSettings } from "./price-book/job-settings.js";
export { type PlacedPriceRow, type PriceBookRows, readPriceBook } from "./price-book/read-price-book.js";
export { loopTreatments, type TreatmentContext } from "./treatments/loop-treatments.js";
export { type OddsTable, type Recommendation, recommendTreatment } from "./treatments/recommend.js";
export {
  type KeepWork,
  type LoopRisk,
  type LoopTreatments,
  type ModuleSetting,
  type RepairWork,
  type Treatment,
  treatmentWords,
  type WithoutInputWork,
  type Work,
} from "./treatments/treatment.js";
export type { WorkRates } from "./treatments/work-cents.js";

// The plan and what follows from it

export {
  billOfMaterials,
  type MaterialInputs,
  type MaterialNeed,
  type WirePiece,
} from "./materials/bill-of-materials.js";
export { checkPlanProblem, type PlanDataFault } from "./plan/check-problem.js";
export { type ChoosePlanInput, choosePlan, PlanCheckError, type PlanProgress } from "./plan/choose-plan.js";
export {
  type Alternative,
  type BillDifference,
  type ExplainLoopInput,
  explainLoop,
  explainLoops,
  type LoopExplanation,
} from "./plan/explain-loop.js";
export { type GreedyPlan, greedyPlan } from "./plan/greedy-plan.js";
export type { CancelSignal, MilpModel, Solve, SolveOptions, SolverProgress, SolverResult } from "./plan/milp-model.js";
export type { ModuleCounts, Plan, PlanChoice, PlanDraft } from "./plan/plan.js";
export type { PlannedLoop } from "./plan/planned-loop.js";
export { type PlanBillLine, type PricedPlan, pricePlan } from "./plan/price-plan.js";
export type {
  ArticleSupply,
  Controller,
  DeviceArticle,
  DeviceCounts,
  JoinRule,
  KeepOffer,
  LoopOffers,
  ModuleArticle,
  OfferWithoutInput,
  PanelPlace,
  Pin,
  PlanningProblem,
  PriceTier as PlanPriceTier,
  RepairOffer,
  SharedReturn,
  TreatmentKind,
} from "./plan/problem.js";
export { type PlanningInputs, planningProblem } from "./plan/problem-from-treatments.js";
export type { Purchase } from "./plan/purchase.js";
export { type ZonesFrontier, type ZonesFrontierInput, type ZonesPoint, zonesFrontier } from "./plan/zones-frontier.js";
export { allocateCents } from "./pricing/allocate-cents.js";
export { type BreakEvenInput, breakEvenHours } from "./pricing/break-even-hours.js";
export { type Clause, type ClauseInput, type ClauseLoop, clausesFor } from "./pricing/clauses.js";
export type { CommonFactor } from "./pricing/common-factor.js";
export { type ComparedOption, compareOptions, type PricedOption } from "./pricing/compare-options.js";
export { contingencyFor } from "./pricing/contingency.js";
export { type PaymentShare, paymentStages } from "./pricing/payment-stages.js";
export {
  type ClassTotal,
  type CostLine,
  type JobPrice,
  type PricedLine,
  type PriceRules,
  priceFormulas,
  priceJob,
} from "./pricing/price-job.js";
export {
  type PriceOutcome,
  type PriceRange,
  type PriceRangeInput,
  priceRange,
  type RangeDriver,
} from "./pricing/price-range.js";
export {
  type Posterior,
  type ReadingValue,
  type ReadingValueInput,
  valueOfReading,
} from "./pricing/value-of-reading.js";
export { type CarryInput, type CarryLine, type CarryList, carryList } from "./purchasing/carry-list.js";
export { type CutInput, cutFrom } from "./purchasing/cut-from.js";
export type { CutPiece, CutPlan, CutSpool, Spool } from "./purchasing/cut-records.js";
export { cutWire, type WireOrder, type WireSpool } from "./purchasing/cut-wire.js";
export type { LoopOutcome } from "./purchasing/joint-counts.js";
export { type OrderInput, orderFor } from "./purchasing/order-for.js";
export type { Alternate, Need, NeedCover, Order, OrderLine, OrderResult } from "./purchasing/order-records.js";
export { workingDaysFrom } from "./purchasing/working-days.js";
export {
  type FittedInput,
  type FittedModule,
  type TerminalRow,
  terminalSchedule,
} from "./terminals/terminal-schedule.js";

// Order of work and papers

export { type AsBuiltZone, asBuiltZones } from "./cut-over/as-built-zones.js";
export { type CommissioningRow, commissioningSheet } from "./cut-over/commissioning-sheet.js";
export type { CutOverHold, CutOverLoop, CutOverPanel, CutOverZone } from "./cut-over/cut-over-loop.js";
export { cutOverLoops } from "./cut-over/cut-over-loops.js";
export { type CutOverInput, type CutOverOrder, type CutOverStep, cutOverOrder } from "./cut-over/cut-over-order.js";
export { type DisposalLine, disposalList } from "./cut-over/disposal-list.js";
export { type HandoverSection, handoverSheet } from "./cut-over/handover-sheet.js";
export { type HazardFlag, hazardFlags } from "./cut-over/hazard-flags.js";
export type { WrittenRelease } from "./cut-over/is-held.js";
export { type CableLabel, labels as cableLabels } from "./cut-over/labels.js";
export { type RemovedDevice, removedDevices } from "./cut-over/removed-devices.js";
export { type WalkTest, type WalkTestLine, walkTest } from "./cut-over/walk-test.js";

// Finished jobs

export type { BetaFigure } from "./learning/beta-update.js";
export { type FinishedJobs, withJob, withoutJob } from "./learning/finished-jobs.js";
export type { HoursSums, JobStatistics, RepairCounts } from "./learning/job-statistics.js";
export {
  type Learned,
  type LearnedHours,
  type LearnedOdds,
  type LearningWeights,
  learn,
  learningWeights,
} from "./learning/learn.js";
export { jobsFromRows, type LearningRow, learningRows } from "./learning/learning-rows.js";
export { type FinishedLoop, statisticsOfJob, type TaskHours } from "./learning/statistics-of-job.js";

// Survey to everything

export type { CarriedSpare, EstimatedCarry } from "./estimate/carry-of.js";
export type { EstimatedCutOver } from "./estimate/cut-over-of.js";
export type {
  BillLine,
  Estimate,
  EstimatedLoop,
  EstimatedReading,
  EstimatePrice,
  Hold,
  LoopCost,
  PrintedCaution,
} from "./estimate/estimate.js";
export { type EstimateInput, estimateJob as estimate, NoEstimate } from "./estimate/estimate-job.js";
export type { WhyTreatment } from "./estimate/explanations.js";
export type { EstimateChange, HeldPlan, PacksWanted } from "./estimate/held-plan.js";
export type { EstimatedLearning, LearnedFigure } from "./estimate/learning-of.js";
export type { QuoteTerms } from "./estimate/quote-of.js";
export type { RadioRecord, RadioTestRecord, RepeaterRecord, UntestedRecord } from "./estimate/radio-of.js";
export type { TestedPlace } from "./estimate/radio-places.js";
export { type Summary, summaryOf } from "./estimate/summary.js";
export type { PlaceSupply } from "./estimate/supply-battery.js";
export type { WirelessChoice } from "./estimate/supply-choices.js";
export type { NotPriced, SupplyChoice } from "./estimate/supply-cure-offers.js";
export type { SupplyAtPanel, SupplyDetectorAtPanel } from "./estimate/supply-of.js";

// Sheets as plain data

export type { Area } from "./report/addresses.js";
export type { Formula, Operator, Reference } from "./report/formula.js";
export type { FunctionName } from "./report/functions.js";
export type {
  Block,
  CachedValue,
  Cell,
  ChartBlock,
  ColumnOf,
  ColumnTotal,
  Format,
  Highlight,
  KeyValueBlock,
  KeyValueRow,
  PictureBlock,
  Report,
  Role,
  Sheet,
  TableBlock,
  TableColumn,
  Validation,
} from "./report/model.js";
export {
  type PlannedCell,
  type PlannedChart,
  type PlannedContent,
  type PlannedSeries,
  type PlannedSheet,
  type PlannedTable,
  type PlannedTableColumn,
  type PlannedValidation,
  type PrintablePlan,
  printablePlan,
} from "./report/printable-plan.js";
export { type EstimateReportInput, estimateReport } from "./sheets/estimate-report.js";
export { packsWantedIn } from "./sheets/packs-wanted.js";
export { planRecordIn } from "./sheets/plan-record-sheet.js";
export { completedSurvey } from "./sheets/sheet-input.js";

// JSON as the command line takes it

export { type HeldPlanRecord, readHeldPlan } from "./json-input/held-plan-input.js";
export { readJudgeInput } from "./json-input/judge-input.js";
export { readPlanInput } from "./json-input/plan-input.js";

// The solver

export { solveWithHighs } from "./solver/highs.js";
