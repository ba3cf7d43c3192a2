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
  /** A or B of the pair, or "A of … to B of …" inside a series join. */
  readonly conductor: string;
  readonly tag: string;
  readonly loop: string;
  readonly eolOhms: number | null;
  readonly eolAt: "device" | "panel" | null;
}

/** Lays the plan's inputs onto modules: panel by panel, setting by setting, in the order of the survey. */
export function fitModules({
  planned,
  profiles,
  settings,
  modules,
}: {
  readonly planned: readonly PlannedLoop[];
  readonly profiles: readonly InputModuleProfile[];
  readonly settings: readonly ModuleSetting[];
  /** Number of modules by panel and module setting, from the plan. */
  readonly modules: Readonly<Record<string, Readonly<Record<string, number>>>>;
}): readonly FittedModule[] {
  const fitted: FittedModule[] = [];
  for (const [panel, counts] of Object.entries(modules)) {
    for (const [settingId, count] of Object.entries(counts)) {
      if (count === 0) continue;
      const here = planned.filter((loop) => loop.panel === panel && loop.input?.setting.id === settingId);
      const setting = settings.find(({ id }) => id === settingId);
      const profile = profiles.find(({ type }) => type === setting?.type);
      if (!setting || !profile) continue;
      const groups = inputGroups(here);
      for (let index = 0; index < count; index++) {
        const inputs = groups
          .slice(index * profile.inputs, (index + 1) * profile.inputs)
          .map((loops, at) => ({ number: at + 1, loops }));
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
 * goes to a terminal strip. Loops in series on one input take one input and one return between them: the pair nearest
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
    return module.inputs.flatMap(({ number, loops: keys }, at) => {
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
            conductor: "B",
            terminal:
              after === undefined ? (seats[at] ?? "terminal strip, then a return") : `splice to A of ${name(after)}`,
          },
        ];
      });
    });
  });
}
