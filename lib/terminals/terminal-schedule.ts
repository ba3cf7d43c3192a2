import { placeSets } from "../plan/pack-modules.js";
import type { PlannedLoop } from "../plan/planned-loop.js";
import type { InputModuleProfile, SurveyLoop } from "../survey/survey.js";
import type { ModuleSetting } from "../treatments/treatment.js";

/** One module on the wall, with the inputs it carries. */
export interface FittedModule {
  readonly panel: string;
  /** Number over the whole job, in installation order: M1, M2 … */
  readonly name: string;
  readonly type: string;
  readonly eolOhms: number;
  readonly inputs: readonly FittedInput[];
  /** Inputs left free. */
  readonly spare: number;
}

/** One used input: the loops on it, the carrier of its resistor first. */
export interface FittedInput {
  readonly number: number;
  readonly loops: readonly string[];
}

/** One conductor and where it goes. */
export interface TerminalRow {
  readonly panel: string;
  readonly module: string;
  /** "input 3", "return 2", or "strip" where no return terminal has room. */
  readonly terminal: string;
  /** A or B of the pair; "B shared" is a return that another loop on the module has brought already: one conductor. */
  readonly conductor: string;
  readonly tag: string;
  readonly loop: string;
  readonly eolOhms: number | null;
  readonly eolAt: "device" | "panel" | null;
}

/**
 * Lays the plan's inputs onto modules: panel by panel, setting by setting, in the order of the survey; loops that share
 * a return go to one module.
 */
export function fitModules({
  planned,
  profiles,
  settings,
  modules,
  sharedReturns = [],
}: {
  readonly planned: readonly PlannedLoop[];
  readonly profiles: readonly InputModuleProfile[];
  readonly settings: readonly ModuleSetting[];
  /** Number of modules by panel and module setting, from the plan. */
  readonly modules: Readonly<Record<string, Readonly<Record<string, number>>>>;
  /** Keys of loops on one return conductor, set by set. */
  readonly sharedReturns?: readonly (readonly string[])[];
}): readonly FittedModule[] {
  const fitted: FittedModule[] = [];
  for (const [panel, counts] of Object.entries(modules)) {
    for (const [settingId, count] of Object.entries(counts)) {
      if (count === 0) continue;
      const here = planned.filter((loop) => loop.panel === panel && loop.input?.setting.id === settingId);
      const setting = settings.find(({ id }) => id === settingId);
      const profile = profiles.find(({ type }) => type === setting?.type);
      if (!setting || !profile) continue;
      const groups = byModule(inputGroups(here), { count, inputs: profile.inputs, sharedReturns });
      for (let index = 0; index < count; index++) {
        const inputs = (groups[index] ?? []).map((loops, at) => ({ number: at + 1, loops }));
        fitted.push({
          panel,
          name: `M${fitted.length + 1}`,
          type: profile.type,
          eolOhms: setting.eolOhms,
          inputs,
          spare: profile.inputs - inputs.length,
        });
      }
    }
  }
  return fitted;
}

type InputGroup = readonly string[];

/** The inputs of each module: sets on one return whole, then the others into the first room, each in survey order. */
function byModule(
  groups: readonly InputGroup[],
  {
    count,
    inputs,
    sharedReturns,
  }: {
    readonly count: number;
    readonly inputs: number;
    readonly sharedReturns: readonly (readonly string[])[];
  },
): readonly (readonly InputGroup[])[] {
  const sets = sharedReturns
    .map((set) => groups.filter((group) => group.some((key) => set.includes(key))))
    .filter((set) => set.length > 1);
  const singles = groups.filter((group) => !sets.some((set) => set.includes(group)));
  const sizes = sets.map(({ length }) => length);
  // The plan has made sure that there is a way.
  const placed = placeSets({ sizes, singles: singles.length, bins: count, capacity: inputs }) ?? sets.map(() => 0);
  const modules = Array.from({ length: count }, (_, module) =>
    sets.flatMap((set, at) => (placed[at] === module ? set : [])),
  );
  for (const group of singles) modules.find((module) => module.length < inputs)?.push(group);
  return modules.map((module) => groups.filter((group) => module.includes(group)));
}

function inputGroups(loops: readonly PlannedLoop[]): readonly (readonly string[])[] {
  const groups = new Map<string, string[]>();
  for (const { key, input } of loops) {
    if (!input) continue;
    const group = groups.get(input.input) ?? [];
    if (input.carrier === key) group.unshift(key);
    else group.push(key);
    groups.set(input.input, group);
  }
  return [...groups.values()];
}

/**
 * The terminal schedule: every conductor of every kept loop, which terminal takes it, and where its resistor sits.
 * Returns are filled in order, each with as many conductors as the profile says it holds; a conductor that finds none
 * goes to a terminal strip. Loops that come back on one return seat that one conductor once. Loops in series on one input take one input and one return between them: the pair nearest
 * the module first, the carrier of the resistor last.
 */
export function terminalSchedule({
  fitted,
  planned,
  loops,
  profiles,
}: {
  readonly fitted: readonly FittedModule[];
  readonly planned: readonly PlannedLoop[];
  readonly loops: readonly SurveyLoop[];
  readonly profiles: readonly InputModuleProfile[];
}): readonly TerminalRow[] {
  const loopOf = new Map(loops.map((loop) => [loop.key, loop]));
  const plannedOf = new Map(planned.map((loop) => [loop.key, loop]));
  return fitted.flatMap((module) => {
    const seats = (profiles.find(({ type }) => type === module.type)?.returns ?? []).flatMap(({ holds }, index) =>
      new Array<string>(holds).fill(`return ${index + 1}`),
    );
    const returns = returnsOf(module, loopOf, seats);
    return module.inputs.flatMap(({ number, loops: keys }) => {
      const order = [...keys.slice(1), ...keys.slice(0, 1)];
      return order.flatMap((key, position) => {
        const loop = loopOf.get(key);
        const eol = plannedOf.get(key)?.eol ?? null;
        const before = order[position - 1];
        const after = order[position + 1];
        const shared = {
          panel: module.panel,
          module: module.name,
          tag: loop?.label ?? loop?.loop ?? key,
          loop: key,
          eolOhms: eol?.ohms ?? null,
          eolAt: eol?.at ?? null,
        };
        const name = (other: string) => loopOf.get(other)?.label ?? loopOf.get(other)?.loop ?? other;
        return [
          {
            ...shared,
            conductor: "A",
            terminal: before === undefined ? `input ${number}` : `splice to B of ${name(before)}`,
          },
          {
            ...shared,
            conductor: after === undefined && returns.get(number)?.shared === true ? "B shared" : "B",
            terminal:
              after === undefined
                ? (returns.get(number)?.terminal ?? "terminal strip, then a return")
                : `splice to A of ${name(after)}`,
          },
        ];
      });
    });
  });
}

/** Terminal of each input's return; inputs on one return share the seat of the first of them. */
function returnsOf(
  module: FittedModule,
  loopOf: ReadonlyMap<string, SurveyLoop>,
  seats: readonly string[],
): ReadonlyMap<number, { readonly terminal: string | undefined; readonly shared: boolean }> {
  const returns = new Map<number, { readonly terminal: string | undefined; readonly shared: boolean }>();
  let used = 0;
  for (const { number, loops } of module.inputs) {
    const partners = loops.flatMap((key) => loopOf.get(key)?.returnSharedWith ?? []);
    const before = module.inputs.find(
      (other) => other.number < number && other.loops.some((key) => partners.includes(key)),
    );
    const seat = before === undefined ? undefined : returns.get(before.number);
    if (seat !== undefined) returns.set(number, { terminal: seat.terminal, shared: true });
    else {
      returns.set(number, { terminal: seats[used], shared: false });
      used += 1;
    }
  }
  return returns;
}
