import { spawnSync } from "node:child_process";
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";

export const repository = new URL("../..", import.meta.url).pathname;
const modules = join(repository, "node_modules");

/** A program run to its end. @throws when it ends with another code than 0. */
export function run(command: string, args: readonly string[], folder: string): string {
  const { status, stdout, stderr, error } = spawnSync(command, [...args], { cwd: folder, encoding: "utf8" });
  if (status !== 0) throw new Error(`${command} ${args.join(" ")}: ${error?.message ?? ""}${stdout}${stderr}`);
  return stdout;
}

/** The package as somebody gets it, and an empty project in which it is installed. */
export interface PackedPackage {
  readonly tarball: string;
  readonly files: readonly string[];
  /** Holds the unpacked tarball and the packages that its package.json names, and nothing else. */
  readonly project: string;
  readonly remove: () => void;
}

/** Builds from the sources as they stand, packs, and unpacks into an empty project; no network. */
export function packedPackage(): PackedPackage {
  const folder = mkdtempSync(join(tmpdir(), "loopwright-packed-"));
  const source = join(folder, "source");
  const project = join(folder, "project");
  mkdirSync(source);
  for (const name of ["package.json", "README.md", "CHANGELOG.md", "LICENSE", "reference-data"]) {
    cpSync(join(repository, name), join(source, name), { recursive: true });
  }
  const compiler = join(modules, "typescript/bin/tsc");
  run(
    process.execPath,
    [compiler, "-p", "lib/tsconfig.json", "--noCheck", "--outDir", join(source, "dist")],
    repository,
  );
  const [packed] = JSON.parse(run("npm", ["pack", "--json", "--ignore-scripts", "--pack-destination", folder], source));
  const tarball = join(folder, packed.filename);
  const installed = join(project, "node_modules/loopwright");
  mkdirSync(installed, { recursive: true });
  run("tar", ["-xzf", tarball, "--strip-components=1", "-C", installed], project);
  const { dependencies } = JSON.parse(readFileSync(join(installed, "package.json"), "utf8"));
  for (const name of Object.keys(dependencies)) {
    const link = join(project, "node_modules", name);
    mkdirSync(dirname(link), { recursive: true });
    symlinkSync(join(modules, name), link);
  }
  writeFileSync(join(project, "package.json"), JSON.stringify({ name: "a-project", private: true, type: "module" }));
  return {
    tarball,
    files: packed.files.map(({ path }: { readonly path: string }) => path),
    project,
    remove: () => rmSync(folder, { recursive: true, force: true }),
  };
}
