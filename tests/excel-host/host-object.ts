/** An error the host answers with, by Excel's own code. */
export class HostError extends Error {
  readonly code: string;
  constructor(code: string, message: string) {
    super(message);
    this.code = code;
  }
}

/** Something the add-in asked for that this host does not know: a mistake of the add-in or a gap here, never ignored. */
export const unknownMember = (kind: string, what: string): HostError =>
  new HostError("HostDoesNotKnow", `this host knows no ${what} on ${kind}`);

export const invalid = (message: string): HostError => new HostError("InvalidArgument", message);

/** One object of Excel's model. Every member that may be used is listed; everything else is refused. */
export interface HostObject {
  readonly kind: string;
  readonly id?: string;
  /** Ranges have no id: the host hands out a reference. */
  readonly byReference?: boolean;
  readonly get?: Readonly<Record<string, () => unknown>>;
  readonly set?: Readonly<Record<string, (value: unknown) => void>>;
  readonly child?: Readonly<Record<string, () => HostObject | null>>;
  readonly call?: Readonly<Record<string, (...given: readonly unknown[]) => unknown>>;
  /** Members of a collection. */
  readonly items?: () => readonly HostObject[];
}

export const isHostObject = (value: unknown): value is HostObject =>
  typeof value === "object" && value !== null && "kind" in value;

type Guard = (value: unknown, name: string) => unknown;

export const aText: Guard = (value, name) => {
  if (typeof value !== "string") throw invalid(`${name}: got ${JSON.stringify(value)}, expected text`);
  return value;
};
export const aFlag: Guard = (value, name) => {
  if (typeof value !== "boolean") throw invalid(`${name}: got ${JSON.stringify(value)}, expected true or false`);
  return value;
};
export const aNumber: Guard = (value, name) => {
  if (typeof value !== "number" || !Number.isFinite(value)) throw invalid(`${name}: got ${JSON.stringify(value)}`);
  return value;
};
export const aColour: Guard = (value, name) => {
  if (typeof value !== "string" || !/^#[0-9A-F]{6}$/i.test(value)) throw invalid(`${name}: ${JSON.stringify(value)}`);
  return value;
};
export const atMost =
  (longest: number): Guard =>
  (value, name) => {
    const text = aText(value, name) as string;
    if (text.length > longest) throw invalid(`${name}: ${text.length} characters, at most ${longest}`);
    return text;
  };
/** One of the library's own enumeration, for example Excel.BorderIndex. */
export const oneOf =
  (enumeration: object): Guard =>
  (value, name) => {
    const allowed = Object.values(enumeration);
    if (!allowed.includes(value)) throw invalid(`${name}: ${JSON.stringify(value)} is none of ${allowed.join(", ")}`);
    return value;
  };
/** An object with just these fields. */
export const record =
  (fields: Readonly<Record<string, Guard>>): Guard =>
  (value, name) => {
    if (typeof value !== "object" || value === null) throw invalid(`${name}: got ${JSON.stringify(value)}`);
    for (const [field, one] of Object.entries(value)) {
      const guard = fields[field];
      if (guard === undefined) throw invalid(`${name}: no field ${field}`);
      guard(one, `${name}.${field}`);
    }
    return value;
  };

/** Plain properties kept in a bag: each readable and settable, with its guard. */
export function settings(
  kind: string,
  bag: Map<string, unknown>,
  guards: Readonly<Record<string, Guard>>,
  more: Omit<HostObject, "kind" | "set"> = {},
): HostObject {
  return {
    kind,
    ...more,
    get: {
      ...Object.fromEntries(Object.keys(guards).map((name) => [name, () => bag.get(name) ?? null])),
      ...more.get,
    },
    set: Object.fromEntries(
      Object.entries(guards).map(([name, guard]) => [
        name,
        (value: unknown) => void bag.set(name, guard(value, `${kind}.${name}`)),
      ]),
    ),
  };
}
