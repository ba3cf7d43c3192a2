import {
  chmodSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { FileNotWritten, writeAtomically } from "../../lib/command/write-atomically.js";

let folder = "";
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "loopwright-write-"));
});
afterEach(() => {
  rmSync(folder, { recursive: true, force: true });
});
const at = (name: string): string => join(folder, name);
const failure = (path: string): Promise<unknown> =>
  writeAtomically(path, "new").then(
    () => undefined,
    (error: unknown) => error,
  );

test("writes a new file and replaces an old one, leaving nothing else behind", async () => {
  await writeAtomically(at("a.xlsx"), new Uint8Array([1, 2, 3]));
  await writeAtomically(at("a.xlsx"), "second");
  expect(readFileSync(at("a.xlsx"), "utf8")).toBe("second");
  expect(readdirSync(folder)).toEqual(["a.xlsx"]);
});

test("keeps the permissions of the file it replaces", async () => {
  writeFileSync(at("a.xlsx"), "old");
  chmodSync(at("a.xlsx"), 0o600);
  await writeAtomically(at("a.xlsx"), "new");
  expect(statSync(at("a.xlsx")).mode & 0o777).toBe(0o600);
});

test("follows a link and leaves it a link", async () => {
  writeFileSync(at("real.xlsx"), "old");
  symlinkSync(at("real.xlsx"), at("link.xlsx"));
  await writeAtomically(at("link.xlsx"), "new");
  expect(readFileSync(at("real.xlsx"), "utf8")).toBe("new");
  expect(readdirSync(folder).sort()).toEqual(["link.xlsx", "real.xlsx"]);
});

test.each<[string, string, () => void, RegExp]>([
  ["a missing folder", "no/where.xlsx", () => {}, /the folder .* does not exist; make it first/],
  ["a folder as target", "sub", () => mkdirSync(at("sub")), /is a folder; name a file in it/],
  ["a file taken for a folder", "f/x.xlsx", () => writeFileSync(at("f"), "file"), /a file, not a folder/],
  ["a read-only file", "ro.xlsx", () => writeFileSync(at("ro.xlsx"), "old", { mode: 0o444 }), /is read-only/],
  ["a link to nothing", "l.xlsx", () => symlinkSync(at("gone"), at("l.xlsx")), /link to a file that does not exist/],
  [
    "a file open in LibreOffice",
    "o.xlsx",
    () => writeFileSync(at(".~lock.o.xlsx#"), ""),
    /open in a spreadsheet program/,
  ],
  ["a file open in Excel", "e.xlsx", () => writeFileSync(at("~$e.xlsx"), ""), /open in a spreadsheet program/],
  ["a name too long", `${"n".repeat(300)}.xlsx`, () => {}, /name is too long/],
])("%s: says what to do, and nothing is left behind", async (_, name, prepare, message) => {
  prepare();
  const before = readdirSync(folder);
  const error = await failure(at(name));
  expect(error).toBeInstanceOf(FileNotWritten);
  expect(String(error)).toMatch(message);
  expect(String(error)).toContain(at(name));
  expect(readdirSync(folder)).toEqual(before);
});

test("a target that turns into a full folder is left alone, and no temporary file stays", async () => {
  // A full folder cannot be replaced by a file, whether it is met by the check or by the renaming.
  const writing = writeAtomically(at("race.xlsx"), new Uint8Array(8_000_000));
  mkdirSync(at("race.xlsx"));
  writeFileSync(join(at("race.xlsx"), "x"), "kept");
  await writing.catch((error: unknown) => expect(error).toBeInstanceOf(FileNotWritten));
  expect(readdirSync(folder)).toEqual(["race.xlsx"]);
  expect(readFileSync(join(at("race.xlsx"), "x"), "utf8")).toBe("kept");
});
