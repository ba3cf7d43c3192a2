// Writes docs/public-api.txt: every name that the package's entry points export, with kind and signature, sorted, so
// that a reader sees in a diff what a change means for those who import the library.
//   node tools/api-report.mjs           writes it
//   node tools/api-report.mjs --check   fails when it is stale or when a signature names a type that cannot be imported
import { readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import ts from "typescript";

const root = join(dirname(fileURLToPath(import.meta.url)), "..");
const file = join(root, "docs/public-api.txt");
const entryPoints = [
  { name: "loopwright", source: "lib/index.ts" },
  { name: "loopwright/workbook", source: "lib/workbook/index.ts" },
];
const printer = ts.createPrinter({ removeComments: true });
const format = ts.TypeFormatFlags.NoTruncation | ts.TypeFormatFlags.UseSingleQuotesForStringLiteralType;

/** @param {string} text */
const oneLine = (text) => text.replace(/\s+/g, " ").replace(/; }/g, " }").trim();

/** The declarations that matter of a symbol. @param {ts.TypeChecker} checker @param {ts.Symbol} exported */
function target(checker, exported) {
  const symbol = exported.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(exported) : exported;
  return { symbol, declaration: symbol.declarations?.[0] };
}

/** @param {ts.TypeChecker} checker @param {string} name @param {ts.Symbol} exported */
function entryText(checker, name, exported) {
  const { symbol, declaration } = target(checker, exported);
  if (declaration === undefined) throw new Error(`${name} is declared nowhere`);
  const typeOf = () => checker.getTypeOfSymbolAtLocation(symbol, declaration);
  const print = (/** @type {ts.Node} */ node) =>
    oneLine(printer.printNode(ts.EmitHint.Unspecified, node, declaration.getSourceFile()));
  if (ts.isFunctionDeclaration(declaration)) {
    const signatures = typeOf().getCallSignatures();
    return signatures.map((one) => `function ${name}${oneLine(checker.signatureToString(one, declaration, format))}`);
  }
  if (ts.isInterfaceDeclaration(declaration) || ts.isTypeAliasDeclaration(declaration)) {
    return [print(declaration).replace(/^export (interface|type) \w+/, `$1 ${name}`)];
  }
  if (ts.isClassDeclaration(declaration)) {
    const members = declaration.members
      .filter((one) => !(ts.getCombinedModifierFlags(one) & ts.ModifierFlags.Private))
      .filter((one) => one.name === undefined || !ts.isPrivateIdentifier(one.name))
      .map((one) => oneLine(memberText(checker, one)));
    const heritage = (declaration.heritageClauses ?? []).map(print).join(" ");
    return [`class ${name} ${heritage} { ${members.join("; ")} }`];
  }
  return [`const ${name}: ${oneLine(checker.typeToString(typeOf(), declaration, format))}`];
}

/** @param {ts.TypeChecker} checker @param {ts.ClassElement} member */
function memberText(checker, member) {
  const signature =
    ts.isConstructorDeclaration(member) || ts.isMethodDeclaration(member)
      ? checker.getSignatureFromDeclaration(member)
      : undefined;
  if (signature) {
    const name = ts.isConstructorDeclaration(member) ? "new " : member.name?.getText();
    return `${name}${checker.signatureToString(signature, member, format)}`;
  }
  const name = member.name?.getText() ?? "";
  return `${name}: ${checker.typeToString(checker.getTypeAtLocation(member), member, format)}`;
}

/** Nodes of a declaration that its users see: no bodies, no private members. @param {ts.Node} node @returns {ts.Node[]} */
function seen(node) {
  if (ts.isFunctionDeclaration(node) || ts.isConstructorDeclaration(node) || ts.isMethodDeclaration(node)) {
    return [
      ...(node.typeParameters ?? []),
      ...node.parameters.flatMap((one) => one.type ?? []),
      ...(node.type ? [node.type] : []),
    ];
  }
  if (ts.isClassDeclaration(node)) {
    return node.members.filter((one) => one.name === undefined || !ts.isPrivateIdentifier(one.name)).flatMap(seen);
  }
  if (ts.isPropertyDeclaration(node) || ts.isVariableDeclaration(node)) return node.type ? [node.type] : [];
  return [node];
}

/** @param {ts.Node} node */
const isOurs = (node) => node.getSourceFile().fileName.startsWith(join(root, "lib/"));

/** Types of ours that the declaration names. @param {ts.TypeChecker} checker @param {ts.Node} node @param {Set<ts.Symbol>} found */
function namedTypes(checker, node, found) {
  const name = ts.isTypeReferenceNode(node)
    ? node.typeName
    : ts.isExpressionWithTypeArguments(node)
      ? node.expression
      : undefined;
  if (name !== undefined) {
    const at = checker.getSymbolAtLocation(name);
    const symbol = at && at.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(at) : at;
    const declared = symbol?.declarations?.[0];
    if (symbol && declared && !ts.isTypeParameterDeclaration(declared) && isOurs(declared) && !found.has(symbol)) {
      if (ts.getCombinedModifierFlags(declared) & ts.ModifierFlags.Export) found.add(symbol);
      else for (const part of seen(declared)) namedTypes(checker, part, found);
    }
  }
  ts.forEachChild(node, (child) => namedTypes(checker, child, found));
}

/** The report, and the types that a signature names and nobody can import. */
export function apiReport() {
  const config = ts.readConfigFile(join(root, "lib/tsconfig.json"), ts.sys.readFile).config;
  const { options } = ts.parseJsonConfigFileContent(config, ts.sys, join(root, "lib"));
  const program = ts.createProgram(
    entryPoints.map(({ source }) => join(root, source)),
    { ...options, noEmit: true },
  );
  const checker = program.getTypeChecker();
  const exported = entryPoints.map(({ name, source }) => {
    const module = checker.getSymbolAtLocation(
      /** @type {ts.SourceFile} */ (program.getSourceFile(join(root, source))),
    );
    if (module === undefined) throw new Error(`${source} exports nothing`);
    return { name, symbols: checker.getExportsOfModule(module) };
  });
  const parts = exported.map(({ name, symbols }) => {
    const lines = symbols.flatMap((one) => entryText(checker, one.name, one));
    return `${name}: ${symbols.length} names\n\n${lines.sort().join("\n")}\n`;
  });
  const known = new Set(exported.flatMap(({ symbols }) => symbols.map((one) => target(checker, one).symbol)));
  const missing = exported.flatMap(({ symbols }) =>
    symbols.flatMap((one) => {
      /** @type {Set<ts.Symbol>} */
      const named = new Set();
      for (const node of seen(target(checker, one).declaration ?? failed(one.name))) namedTypes(checker, node, named);
      return [...named]
        .filter((symbol) => !known.has(symbol))
        .map(
          (symbol) =>
            `${one.name} names ${symbol.name} (${symbol.declarations?.[0]?.getSourceFile().fileName.replace(`${root}/lib/`, "")})`,
        );
    }),
  );
  return {
    text: `Public names by entry point. Generated by tools/api-report.mjs. Do not edit.\n\n${parts.join("\n")}`,
    missing,
  };
}

/** @param {string} name @returns {never} */
function failed(name) {
  throw new Error(`${name} is declared nowhere`);
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const { text, missing } = apiReport();
  if (missing.length > 0) {
    console.error(`types that signatures name and no entry point exports:\n  ${missing.sort().join("\n  ")}`);
    process.exitCode = 1;
  }
  if (process.argv[2] !== "--check") writeFileSync(file, text);
  else if (readFileSync(file, "utf8") !== text) {
    console.error("docs/public-api.txt is stale: run node tools/api-report.mjs and read its diff");
    process.exitCode = 1;
  }
}
