import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import ts from "typescript";
import { repository } from "./packed-package.js";

/** One block of TypeScript in a page. */
export interface DocExample {
  readonly page: string;
  /** Line of the page on which the block begins. */
  readonly line: number;
  readonly code: string;
}

function pages(folder: string): readonly string[] {
  return readdirSync(join(repository, folder), { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    return entry.isDirectory() ? pages(path) : path.endsWith(".md") ? [path] : [];
  });
}

/** Every ```ts block of README, DEVELOPERS and docs. */
export function docExamples(): readonly DocExample[] {
  return ["README.md", "DEVELOPERS.md", ...pages("docs")].flatMap((page) => {
    const text = readFileSync(join(repository, page), "utf8");
    return [...text.matchAll(/^```ts\n([\s\S]*?)^```$/gm)].map((match) => ({
      page,
      line: text.slice(0, match.index).split("\n").length,
      code: match[1] ?? "",
    }));
  });
}

/** A value as a comment behind a statement states it: a number, whose decimals may be cut by "…", or a text in quotes. */
const STATED = /^\/\/ (?:(-?\d[\d,]*(?:\.\d*)?)(…?)|("[^"]*"))/;

/**
 * The example as a module that checks itself: each statement with a stated value behind it throws when it gives another.
 * `checks` counts them.
 */
export function checkingModule(code: string): { readonly module: string; readonly checks: number } {
  const source = ts.createSourceFile("example.ts", code, ts.ScriptTarget.ES2022, true);
  let module = "";
  let from = 0;
  let checks = 0;
  for (const statement of source.statements) {
    if (!ts.isExpressionStatement(statement)) continue;
    const [comment] = ts.getTrailingCommentRanges(code, statement.end) ?? [];
    const stated = comment === undefined ? null : STATED.exec(code.slice(comment.pos, comment.end));
    if (stated === null) continue;
    const [, digits, cut, quoted] = stated;
    const written = (digits ?? quoted ?? "").replaceAll(",", digits === undefined ? "," : "");
    const expression = code.slice(statement.expression.getStart(), statement.expression.end);
    const same = cut === "…" ? `String(got).startsWith(${JSON.stringify(written)})` : `got === ${written}`;
    module += `${code.slice(from, statement.getStart())}{ const got: unknown = (${expression}); if (!(${same})) throw new Error("got " + String(got) + ", the page says " + ${JSON.stringify(written)}); }`;
    from = statement.end;
    checks += 1;
  }
  return { module: `${module}${code.slice(from)}\nexport {};\n`, checks };
}
