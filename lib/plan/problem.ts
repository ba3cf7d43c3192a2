import type { Cents } from "../quantities/money.js";

/** What a loop can become in the plan. A life-safety loop offers `excluded` and nothing else. */
export type TreatmentKind = "keep" | "repair" | "wireless" | "retire" | "excluded";

/** One price step: whoever buys at least `from` pieces pays `unitCents` for every piece bought. */
export interface PriceTier {
  /** Smallest quantity bought at this price, whole number from 1. [pieces] */
  readonly from: number;
  /** Price of every piece of the purchase. [cents] */
  readonly unitCents: Cents;
}

/** Where an article comes from: the van first or not, then everything else in one price step. */
export interface ArticleSupply {
  /** Pieces in stock; using them is optional. [pieces] */
  readonly stock: number;
  /** What one piece from stock is charged at. [cents] */
  readonly stockUnitCents: Cents;
  /** Price steps; none means that nothing can be bought. Buying more than needed to reach a step is allowed. */
  readonly tiers: readonly PriceTier[];
}

/** A wired-input module that can be fitted. */
export interface ModuleArticle {
  readonly type: string;
  /** Inputs of one module. [inputs] */
  readonly inputs: number;
  /** Common terminals × conductors each holds, of one module. [conductors] */
  readonly conductorSeats: number;
  /** Most conductor resistance of all loops on one input together. [Ω] */
  readonly maxOhms: number;
  /** Fitting one module. [cents] */
  readonly fitCents: Cents;
  /** Ignored where `sharesSupplyWith` is given. */
  readonly supply?: ArticleSupply | undefined;
  /** Type whose supply this one is drawn from: variants of one article, for example by end-of-line value. */
  readonly sharesSupplyWith?: string | undefined;
}

/** A wireless device that can be bought. */
export interface DeviceArticle {
  readonly code: string;
  readonly supply: ArticleSupply;
}

/** The control that modules and wireless devices are enrolled to. */
export interface Controller {
  readonly id: string;
  readonly maxModules: number;
  readonly maxRadioDevices: number;
}

/** A place where loops end and modules are fitted. */
export interface PanelPlace {
  readonly id: string;
  readonly controller: string;
  /** Work and parts of the place itself, once it holds a module, default 0. [cents] */
  readonly openCents?: Cents | undefined;
  /** Inputs that must stay free at this panel, default 0. [inputs] */
  readonly spareInputs?: number | undefined;
  /** Inputs that must stay free once the place holds a module, default 0. [inputs] */
  readonly spareInputsWhenUsed?: number | undefined;
  /** Most current that kept powered detectors may draw here; absent = no limit. [mA] */
  readonly supplyMilliamps?: number | undefined;
}

/** Series joining of loops onto one input. */
export interface JoinRule {
  /** Most loops on one input; 1 = no joins. */
  readonly maxLoops: number;
  /** Most openings on one shared input, default 6. A loop alone on its input is not bound by it. */
  readonly maxOpenings?: number | undefined;
  /** Each loop joined beyond the first. [cents] */
  readonly cents: Cents;
}

/** Pieces of each device, by code. */
export type DeviceCounts = Readonly<Record<string, number>>;

/** A treatment that needs no input. */
export interface OfferWithoutInput {
  readonly kind: "wireless" | "retire" | "excluded";
  /** Work and small parts; the devices come on top. [cents] */
  readonly cents: Cents;
  readonly items: DeviceCounts;
  /** Places taken at the controller. */
  readonly radioDevices: number;
}

/** Keeping the loop on an input of one module type. */
export interface KeepOffer {
  readonly module: string;
  /** Work that keeping takes in any case. [cents] */
  readonly baseCents: Cents;
  /** Work for the end-of-line resistor when this loop carries the one of its input. [cents] */
  readonly setCents: Cents;
  /** Work for taking the resistor out when another loop of the input carries it. [cents] */
  readonly removeCents: Cents;
  /** Devices that come with keeping (a split loop), default none. */
  readonly items?: DeviceCounts | undefined;
  /** Places taken at the controller, default 0. */
  readonly radioDevices?: number | undefined;
  /** Current of the kept powered detectors, default 0. [mA] */
  readonly supplyMilliamps?: number | undefined;
}

/** Repair, then keep on an input of its own; the fall-back devices are already in `cents`. */
export interface RepairOffer {
  readonly module: string;
  readonly cents: Cents;
  /** Places reserved at the controller for the fall-back. */
  readonly radioDevices: number;
}

/** One loop with everything that may become of it. */
export interface LoopOffers {
  readonly id: string;
  readonly panel: string;
  /** null = never joined; equal key at an equal panel = may share an input in series. */
  readonly joinKey: string | null;
  /** Conductor resistance; "OL" or absent where no keep is offered. [Ω] */
  readonly ohms?: number | "OL" | null | undefined;
  readonly withoutInput: readonly OfferWithoutInput[];
  readonly keep: readonly KeepOffer[];
  readonly repair: readonly RepairOffer[];
  /** Openings on the loop, default 0. */
  readonly openings?: number | undefined;
}

/** Loops that share a return conductor: never joined. */
export interface SharedReturn {
  readonly loops: readonly string[];
  /** true: those on an input are all on one and the same module. */
  readonly sameModule: boolean;
  /** Conductor seats their return takes, in place of one for each input. */
  readonly returnSeats: number;
}

/** The estimator's wish for one loop: exactly one of `kind` (only this) and `forbid` (anything but this). */
export interface Pin {
  readonly loop: string;
  readonly kind?: TreatmentKind | undefined;
  readonly forbid?: TreatmentKind | undefined;
}

/** Everything the choice of treatments depends on, as plain data; all money in integer cents of one currency. */
export interface PlanningProblem {
  readonly modules: readonly ModuleArticle[];
  readonly items: readonly DeviceArticle[];
  readonly controllers: readonly Controller[];
  readonly panels: readonly PanelPlace[];
  readonly join: JoinRule;
  /** Each conductor beyond the seats of that module type at that panel. [cents] */
  readonly extraConductorCents: Cents;
  readonly loops: readonly LoopOffers[];
  readonly together?: readonly SharedReturn[] | undefined;
  readonly pins?: readonly Pin[] | undefined;
}

/** Most openings on a shared input where the problem does not say. */
export const defaultMaxOpenings = 6;
