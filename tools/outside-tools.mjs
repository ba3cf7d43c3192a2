// The programs outside npm that some suites compare with, how to tell that they are there, and their Debian packages.
import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";

/** @param {string} command @param {string[]} args */
const runs = (command, args) => spawnSync(command, args, { stdio: "ignore", timeout: 60_000 }).status === 0;

export const outsideTools = [
  { name: "ngspice", suffix: "ngspice", packages: ["ngspice"], present: () => runs("ngspice", ["--version"]) },
  {
    name: "LibreOffice, openpyxl and poppler",
    suffix: "libreoffice",
    packages: ["libreoffice-calc-nogui", "python3-uno", "python3-openpyxl", "poppler-utils"],
    present: () =>
      existsSync("/usr/bin/soffice") &&
      existsSync("/usr/bin/pdftoppm") &&
      runs("/usr/bin/python3", ["-c", "import openpyxl"]),
  },
  { name: "Chromium", suffix: "chromium", packages: ["chromium"], present: () => existsSync("/usr/bin/chromium") },
];

/** Installs what is missing when root on a machine with apt-get; returns the tools still missing. */
export function ensureOutsideTools() {
  let missing = outsideTools.filter((tool) => !tool.present());
  if (missing.length === 0) return missing;
  const packages = missing.flatMap((tool) => tool.packages);
  const install = ["install", "-y", "--no-install-recommends", ...packages];
  if (process.getuid?.() === 0 && existsSync("/usr/bin/apt-get")) {
    console.log(`Installing ${packages.join(" ")} with apt-get: suites compare with them.`);
    const env = { ...process.env, DEBIAN_FRONTEND: "noninteractive" };
    spawnSync("apt-get", ["update"], { stdio: "ignore", env });
    spawnSync("apt-get", install, { stdio: ["ignore", "ignore", "inherit"], env });
    missing = outsideTools.filter((tool) => !tool.present());
  } else console.log(`To run every suite: sudo apt-get ${install.join(" ")}`);
  return missing;
}
