import { readFile, stat } from "node:fs/promises";
import { basename } from "node:path";
import { legalText } from "../report/legal-text.js";
import { UsageError } from "./usage-error.js";

/** Bytes of a file the user named. A missing file or a directory is wrong use. */
export async function readInput(path: string): Promise<{ readonly name: string; readonly bytes: Uint8Array }> {
  const found = await stat(path).catch((error: unknown) => {
    if (codeOf(error) === "ENOENT") throw new UsageError(`There is no file ${path}.`);
    throw new UsageError(`${path} cannot be read (${codeOf(error)}).`);
  });
  if (found.isDirectory()) throw new UsageError(`${path} is a directory: name a file.`);
  const bytes = await readFile(path).catch((error: unknown) => {
    throw new UsageError(`${path} cannot be read (${codeOf(error)}). Is it open elsewhere, or not yours?`);
  });
  return { name: basename(path), bytes };
}

/** JSON from a file, or from standard input when the path is "-". */
export async function readJsonInput(path: string): Promise<unknown> {
  const text = path === "-" ? await standardInput() : new TextDecoder().decode((await readInput(path)).bytes);
  try {
    // What no spreadsheet can hold is shown as such from the start.
    return JSON.parse(text.replace(/^\uFEFF/, ""), (_, value: unknown) =>
      typeof value === "string" ? legalText(value) : value,
    );
  } catch (error) {
    throw new NotJson(path === "-" ? "standard input" : path, error instanceof Error ? error.message : "");
  }
}

/** The text is no JSON; the message says where. */
export class NotJson extends Error {
  override readonly name = "NotJson";
  constructor(name: string, detail: string) {
    super(`${name} is no JSON: ${detail}`);
  }
}

async function standardInput(): Promise<string> {
  const chunks: Buffer[] = [];
  for await (const chunk of process.stdin) chunks.push(Buffer.from(chunk));
  return Buffer.concat(chunks).toString("utf8");
}

const codeOf = (error: unknown) =>
  typeof error === "object" && error !== null && "code" in error ? String(error.code) : "unknown error";
