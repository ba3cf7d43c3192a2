// The public face of the library, in data-flow order. Spreadsheet files are in "loopwright/workbook".

// Order of work and papers
export { type AsBuiltZone, asBuiltZones } from "./cut-over/as-built-zones.js";
export { type CommissioningRow, commissioningSheet } from "./cut-over/commissioning-sheet.js";
export type { CutOverHold, CutOverLoop, CutOverPanel, CutOverZone } from "./cut-over/cut-over-loop.js";
export { cutOverLoops } from "./cut-over/cut-over-loops.js";
export { type CutOverInput, type CutOverOrder, type CutOverStep, cutOverOrder } from "./cut-over/cut-over-order.js";
export { type DisposalLine, disposalList } from "./cut-over/disposal-list.js";
export { type HandoverSection, handoverSheet } from "./cut-over/handover-sheet.js";
export { type HazardFlag, hazardFlags } from "./cut-over/hazard-flags.js";
export { type CableLabel, labels as cableLabels } from "./cut-over/labels.js";
export { type RemovedDevice, removedDevices } from "./cut-over/removed-devices.js";
export { type WalkTest, type WalkTestLine, walkTest } from "./cut-over/walk-test.js";
// Survey to everything
export type { EstimatedCutOver } from "./estimate/cut-over-of.js";
export type { BillLine, Estimate, EstimatedLoop, EstimatePrice } from "./estimate/estimate.js";
export { type EstimateInput, estimateJob as estimate, NoEstimate } from "./estimate/estimate-job.js";
export { type Summary, summaryOf } from "./estimate/summary.js";
export { loopRecord } from "./findings/from-survey.js";
export { type JobJudgement, judgeJob } from "./findings/judge-job.js";
export { judgeLoop } from "./findings/judge-loop.js";
export type { JudgeOptions } from "./findings/judge-options.js";
export { lifeSafetyMatch } from "./findings/life-safety.js";
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
export { measureNextForJob, type WalkReading } from "./findings/measure-next-for-job.js";
export { type LabourLine, labourLines } from "./labour/labour-lines.js";
// Finished jobs
export { type FinishedJobs, withJob, withoutJob } from "./learning/finished-jobs.js";
export type { JobStatistics } from "./learning/job-statistics.js";
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
export { billOfMaterials, type MaterialNeed } from "./materials/bill-of-materials.js";
export { type LoopWiring, loopNetwork, loopTerminalOhms } from "./network/loop-network.js";
export { terminalOhms } from "./network/terminal-ohms.js";
// The plan and what follows from it
export { type ChoosePlanInput, choosePlan } from "./plan/choose-plan.js";
export { greedyPlan } from "./plan/greedy-plan.js";
export type { MilpModel, Solve, SolverResult } from "./plan/milp-model.js";
export type { Plan } from "./plan/plan.js";
export { type PricedPlan, pricePlan } from "./plan/price-plan.js";
export type { PlanningProblem } from "./plan/problem.js";
// What things and hours cost; what a loop may get
export type { Article, PriceBook } from "./price-book/article.js";
export { type JobSettings, jobSettings } from "./price-book/job-settings.js";
export { readPriceBook } from "./price-book/read-price-book.js";
export { type JobPrice, priceFormulas, priceJob } from "./pricing/price-job.js";
export { type PriceRange, priceRange } from "./pricing/price-range.js";
// What can go wrong, and questions to the surveyor
export { InputError, type InputErrorFacts } from "./problems/input-error.js";
export type { Place, Query } from "./problems/query.js";
export { type CarryList, carryList } from "./purchasing/carry-list.js";
export { cutFrom } from "./purchasing/cut-from.js";
export { orderFor } from "./purchasing/order-for.js";
export type { Order, OrderResult } from "./purchasing/order-records.js";
// Text as typed to quantities, and back
export { formatHours } from "./quantities/format-hours.js";
export { formatLength } from "./quantities/format-length.js";
export { formatMoney } from "./quantities/format-money.js";
export { formatOhms } from "./quantities/format-ohms.js";
export { formatPercentOnPaper } from "./quantities/format-percent-on-paper.js";
export { type Cents, roundCents } from "./quantities/money.js";
export type { Ohms, OhmsReading } from "./quantities/ohms-reading.js";
export { parseCable, type TypedCable } from "./quantities/parse-cable.js";
export { parseOhms, type TypedOhms } from "./quantities/parse-ohms.js";
export { parseRun, type TypedRun } from "./quantities/parse-run.js";
export type { Parsed } from "./quantities/parsed.js";
export {
  type PreferredNeighbours,
  type PreferredSeries,
  preferredNeighbours,
} from "./quantities/preferred-numbers.js";
export { bandsFromOhms, ohmsFromBands } from "./quantities/resistor-code.js";
export { deliveryProved } from "./radio/delivery-proved.js";
export { indoorLoss } from "./radio/indoor-loss.js";
export { placeRepeaters } from "./radio/place-repeaters.js";
export { radioMargin } from "./radio/radio-margin.js";
// Readings and judgement
export { type ExpectedLoop, expectedLoopOhms, type OhmsBand } from "./readings/expected-loop-ohms.js";
export { type MeterBound, meterBoundOhms } from "./readings/meter-bound.js";
export { combinedUncertainty, propagateUncertainty, standardUncertainty } from "./readings/standard-uncertainty.js";
export { solveWithHighs } from "./solver/highs.js";
export { auxBudget } from "./supply/aux-budget.js";
export { batteryAmpHours } from "./supply/battery-amp-hours.js";
export { classTwoCaution } from "./supply/class-two-caution.js";
export { extraJointOhms } from "./supply/extra-joint-ohms.js";
export { supplyCures } from "./supply/supply-cures.js";
export { type SupplyTree, type SupplyTreeInput, supplyTree } from "./supply/supply-tree.js";
// The survey
export type { HeadingMapping, HeadingMatch } from "./survey/map-headings.js";
export { readSurvey, type SurveyInput, type SurveyRead } from "./survey/read-survey.js";
export type {
  DeviceKind,
  InputModuleProfile,
  LabourUnit,
  PriceBookRow,
  Survey,
  SurveyLoop,
  SurveyPanel,
  SurveySite,
  TypedCell,
  TypedSheet,
} from "./survey/survey.js";
export { SurveyRefused } from "./survey/survey-refused.js";
export { type TerminalRow, terminalSchedule } from "./terminals/terminal-schedule.js";
// Termination
export { eolValueFor } from "./termination/eol-value-for.js";
export { fitsInput, type InputFit } from "./termination/fits-input.js";
export { type InputWindow, windowFromBand, windowFromDivider } from "./termination/input-window.js";
export type { TerminatedLoop } from "./termination/loop-range.js";
export { resistorFor } from "./termination/resistor-for.js";
export { type LoopTreatments, type Treatment, treatmentWords } from "./treatments/treatment.js";
// Wire and networks
export type { Conductor, ConductorMetal } from "./wiring/conductor.js";
export { conductorOhmsPerMeter, type WarmConductor } from "./wiring/conductor-ohms-per-meter.js";
export { mixedPairOhms, type PairStretch, pairOhms } from "./wiring/pair-ohms.js";
export { runMetersFromOhms } from "./wiring/run-meters-from-ohms.js";
export { awgAreaMm2, awgDiameterMm, nearestAwg } from "./wiring/wire-gauge.js";
// Zones
export { type EntryExitCheck, entryExitTimes } from "./zones/entry-exit-times.js";
export type { ExcludedLoop, SplitOffer, Zone, ZoneSchedule } from "./zones/zone.js";
export { zoneConflicts } from "./zones/zone-conflicts.js";
export { zoneSchedule } from "./zones/zone-schedule.js";
export { type ZoneUse, zoneUse, zoneUseWords } from "./zones/zone-use.js";
