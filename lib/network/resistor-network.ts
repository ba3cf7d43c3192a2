/** Name of a node; 1 and "1" are the same node. */
export type NetworkNode = string | number;

/** One resistor, contact, splice or leak between two nodes. */
export interface NetworkElement {
  readonly from: NetworkNode;
  readonly to: NetworkNode;
  /** 0 = joined, Infinity = open contact. [Ω] */
  readonly ohms: number;
}

/** A network and the two nodes where the meter's leads stand. */
export interface ResistorNetwork {
  readonly probe: readonly [NetworkNode, NetworkNode];
  readonly elements: readonly NetworkElement[];
}
