import { InputError } from "../problems/input-error.js";
import type { CutPiece, Spool } from "./cut-records.js";

/** One thing that bins come from: spools of one code, new or from the van. Lengths in whole millimetres. */
export interface SpoolKind {
  readonly code: string;
  readonly meters: number;
  readonly millimeters: number;
  readonly cents: number;
  readonly fromStock: boolean;
  /** Most that can be had; never more than there are pieces. */
  readonly most: number;
}

export interface CutProblem {
  /** Longest first; equal lengths in the order given. */
  readonly pieces: readonly (CutPiece & { readonly millimeters: number })[];
  /** From the van at no charge: always at hand, one entry per spool. */
  readonly free: readonly SpoolKind[];
  /** Everything that costs money. */
  readonly priced: readonly SpoolKind[];
}

/** Rounds pieces up and spools down to the millimetre and parts what is free from what costs money. */
export function cutProblem({
  pieces,
  spools,
}: {
  readonly pieces: readonly CutPiece[];
  readonly spools: readonly Spool[];
}): CutProblem {
  const refuse = (field: string, got: number, expected: string) => new InputError({ field, got: `${got}`, expected });
  for (const { meters } of pieces) {
    if (!(meters > 0 && Number.isFinite(meters))) throw refuse("pieces.meters", meters, "more than 0 m");
  }
  for (const { meters, cents, stock } of spools) {
    if (!(meters > 0 && Number.isFinite(meters))) throw refuse("spools.meters", meters, "more than 0 m");
    if (!(Number.isInteger(cents) && cents >= 0)) throw refuse("spools.cents", cents, "whole cents, 0 or more");
    if (!(Number.isInteger(stock) && stock >= 0)) throw refuse("spools.stock", stock, "a whole number of 0 or more");
  }
  const kinds = spools.flatMap((spool): SpoolKind[] => {
    const { code, meters } = spool;
    const base = { code, meters, millimeters: Math.floor(meters * 1000 + 1e-6) };
    const bought = Math.min(spool.mostBought ?? pieces.length, pieces.length);
    const onVan = Math.min(spool.stock, pieces.length);
    return [
      { ...base, cents: spool.stockCents ?? 0, fromStock: true, most: onVan },
      { ...base, cents: spool.cents, fromStock: false, most: bought },
    ].filter(({ most }) => most > 0);
  });
  const free = kinds.filter(({ cents, fromStock }) => fromStock && cents === 0);
  return {
    pieces: pieces
      .map((piece) => ({ ...piece, millimeters: Math.ceil(piece.meters * 1000 - 1e-6) }))
      .sort((a, b) => b.millimeters - a.millimeters),
    free: free.flatMap((kind) => Array.from({ length: kind.most }, () => kind)),
    priced: kinds.filter((kind) => !free.includes(kind)),
  };
}
