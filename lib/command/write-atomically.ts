import { randomBytes } from "node:crypto";
import { constants } from "node:fs";
import { access, lstat, open, realpath, rename, rm, stat } from "node:fs/promises";
import { basename, dirname, join, resolve } from "node:path";

/** A file that could not be written, with what the user can do about it. The old file, if any, is as it was. */
export class FileNotWritten extends Error {
  readonly path: string;
  constructor(path: string, reason: string, cause?: unknown) {
    super(`${path}: ${reason}`, cause === undefined ? undefined : { cause });
    this.name = "FileNotWritten";
    this.path = path;
  }
}

/**
 * Writes a file so that it is either wholly there or as it was before: into a temporary file in the same folder, onto
 * the disk, then renamed. A link is followed, an existing file's permissions are kept.
 * @throws {@link FileNotWritten} when the folder is missing, the target is a folder, or the target is read-only or open
 * in another program; no temporary file is left behind.
 */
export async function writeAtomically(path: string, content: Uint8Array | string): Promise<void> {
  const target = await realTarget(path);
  const mode = await permissions(target, path);
  await refuseWhenOpen(target, path);
  const temporary = join(dirname(target), `.${basename(target)}.${randomBytes(6).toString("hex")}.tmp`);
  try {
    const handle = await open(temporary, "wx", mode);
    try {
      await handle.writeFile(content);
      await handle.chmod(mode);
      await handle.sync();
    } finally {
      await handle.close();
    }
    await rename(temporary, target);
  } catch (error) {
    await rm(temporary, { force: true });
    throw new FileNotWritten(path, reasonOf(error, path), error);
  }
  await syncFolder(dirname(target));
}

/**
 * Refuses, before anything is worked out for it, a target that {@link writeAtomically} would refuse.
 * @throws {@link FileNotWritten}
 */
export async function checkTarget(path: string): Promise<void> {
  const target = await realTarget(path);
  await permissions(target, path);
  await refuseWhenOpen(target, path);
  const folder = dirname(target);
  const found = await stat(folder).catch((error: unknown) => {
    throw new FileNotWritten(path, reasonOf(error, path), error);
  });
  if (!found.isDirectory())
    throw new FileNotWritten(path, "a part of the path is a file, not a folder; name another file");
  if (!(await mayWrite(folder))) {
    throw new FileNotWritten(path, "its folder does not let you write; name a file in another folder");
  }
}

/** Where the bytes really go: the end of a link, or the path itself. */
async function realTarget(path: string): Promise<string> {
  const whole = resolve(path);
  const link = await lstat(whole).then(
    (facts) => facts.isSymbolicLink(),
    () => false,
  );
  if (!link) return whole;
  return realpath(whole).catch((error: unknown) => {
    throw new FileNotWritten(path, "is a link to a file that does not exist; name the file itself", error);
  });
}

/** Permissions the new file gets; refuses folders and read-only files before anything is written. */
async function permissions(target: string, path: string): Promise<number> {
  const facts = await stat(target).catch((error: unknown) => {
    if (codeOf(error) === "ENOENT") return undefined;
    throw new FileNotWritten(path, reasonOf(error, path), error);
  });
  if (facts === undefined) return 0o644;
  if (facts.isDirectory()) throw new FileNotWritten(path, "is a folder; name a file in it");
  if (!facts.isFile()) throw new FileNotWritten(path, "is not an ordinary file; name another file");
  // A rename would replace a read-only file all the same: whoever protected it meant it.
  const writable = (facts.mode & 0o222) !== 0 && (await mayWrite(target));
  if (!writable) throw new FileNotWritten(path, "is read-only; remove the protection or name another file");
  return facts.mode & 0o777;
}

const mayWrite = (target: string): Promise<boolean> =>
  access(target, constants.W_OK).then(
    () => true,
    () => false,
  );

/** Spreadsheet programs put a file beside the one they have open; where they do not lock it, this is the only sign. */
async function refuseWhenOpen(target: string, path: string): Promise<void> {
  for (const sign of [`.~lock.${basename(target)}#`, `~$${basename(target)}`]) {
    const found = await lstat(join(dirname(target), sign)).then(
      () => true,
      () => false,
    );
    if (!found) continue;
    throw new FileNotWritten(
      path,
      `is open in a spreadsheet program; close it there, or name another file (if no program has it open, remove ${sign} beside it)`,
    );
  }
}

const codeOf = (error: unknown): string =>
  error instanceof Error && "code" in error && typeof error.code === "string" ? error.code : "";

function reasonOf(error: unknown, path: string): string {
  switch (codeOf(error)) {
    case "ENOENT":
      return `the folder ${dirname(resolve(path))} does not exist; make it first or name another`;
    case "ENOTDIR":
      return "a part of the path is a file, not a folder; name another file";
    case "EACCES":
    case "EROFS":
      return "its folder does not let you write; name a file in another folder";
    case "EBUSY":
    case "EPERM":
    case "ETXTBSY":
      return "is open in another program or protected; close it there, or name another file";
    case "ENOSPC":
    case "EDQUOT":
      return "the disk is full; free some space or name a file on another disk";
    case "ENAMETOOLONG":
      return "the name is too long; name a shorter one";
    default:
      return `could not be written (${error instanceof Error ? error.message : String(error)})`;
  }
}

/** Puts the renaming itself onto the disk where the system can do that for folders. */
async function syncFolder(folder: string): Promise<void> {
  const handle = await open(folder, "r").catch(() => undefined);
  if (handle === undefined) return;
  await handle.sync().catch(() => undefined);
  await handle.close();
}
