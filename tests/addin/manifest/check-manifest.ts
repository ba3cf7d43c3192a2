import { type Element, elementsAt, everyElement, manifestTree, typeOf } from "./manifest-tree.js";

/** What the manifest must agree with. */
export interface ManifestContext {
  /** Address all files are served from. */
  readonly origin: string;
  /** Namespace of the custom functions. */
  readonly namespace: string;
  /** Version of the package, three parts. */
  readonly packageVersion: string;
  /** Names that Office.actions.associate is called with. */
  readonly actions: readonly string[];
  /** Bytes of the file behind a path of the server, or undefined. */
  readonly fileAt: (path: string) => Uint8Array | undefined;
}

export type ManifestRule =
  | "wellFormed"
  | "childOrder"
  | "oneEach"
  | "id"
  | "version"
  | "versionFollowsPackage"
  | "residDefined"
  | "residOnce"
  | "residLength"
  | "residUsed"
  | "residKind"
  | "shortString"
  | "longString"
  | "https"
  | "origin"
  | "sharedPage"
  | "lifetime"
  | "action"
  | "file"
  | "iconSize"
  | "iconSet"
  | "namespace"
  | "controlIds"
  | "sharedRuntimeRequired";

export interface ManifestProblem {
  readonly rule: ManifestRule;
  readonly words: string;
}

/** Children in the order of the vendor's schema, by the parent's name and type; those with ! must stand there. */
const order: Readonly<Record<string, string>> = {
  OfficeApp:
    "Id! AlternateId Version! ProviderName! DefaultLocale! DisplayName! Description! IconUrl! HighResolutionIconUrl! SupportUrl! AppDomains Hosts! Requirements DefaultSettings! Permissions! Dictionary VersionOverrides!",
  VersionOverrides: "Description Requirements Hosts! Resources! WebApplicationInfo EquivalentAddins VersionOverrides",
  "Host Workbook": "Runtimes! AllFormFactors! DesktopFormFactor!",
  "ExtensionPoint CustomFunctions": "Script! Page! Metadata! Namespace!",
  DesktopFormFactor: "GetStarted FunctionFile! ExtensionPoint!",
  GetStarted: "Title! Description! LearnMoreUrl!",
  "Control Button": "Label! Supertip! Icon! Action! Enabled OverriddenByRibbonApi",
  Group: "OverriddenByRibbonApi Label! Icon! Control!",
  Supertip: "Title! Description!",
  Resources: "Images! Urls! ShortStrings! LongStrings!",
  "Action ShowTaskpane": "TaskpaneId SourceLocation! Title",
  "Action ExecuteFunction": "FunctionName!",
};

/** Where the resource that an element names must stand. */
const kindOf = (element: Element): string => {
  if (element.name === "Image") return "Images";
  if (["Label", "Title", "Namespace"].includes(element.name)) return "ShortStrings";
  return element.name === "Description" ? "LongStrings" : "Urls";
};

/** Everything that is wrong with the manifest; none = nothing was found. */
export function checkManifest(xml: string, context: ManifestContext): readonly ManifestProblem[] {
  const root = manifestTree(xml);
  if (typeof root === "string") return [{ rule: "wellFormed", words: root }];
  return [
    ...orderProblems(root),
    ...identityProblems(root, context),
    ...resourceProblems(root),
    ...textProblems(root),
    ...addressProblems(root, context),
    ...pageProblems(root),
    ...commandProblems(root, context),
    ...iconProblems(root, context),
  ];
}

function problem(rule: ManifestRule, words: string): ManifestProblem {
  return { rule, words };
}

function orderProblems(root: Element): readonly ManifestProblem[] {
  return everyElement(root).flatMap((element) => {
    const rule = order[`${element.name} ${typeOf(element)}`] ?? order[element.name];
    if (rule === undefined || (element.name === "Host" && typeOf(element) === "")) return [];
    const wanted = rule.split(" ").map((name) => name.replace("!", ""));
    const places = element.children.map(({ name }) => wanted.indexOf(name));
    const found: ManifestProblem[] = [];
    if (places.some((place, i) => place < 0 || place < (places[i - 1] ?? 0))) {
      found.push(problem("childOrder", `${element.name}: ${element.children.map(({ name }) => name).join(", ")}`));
    }
    for (const name of rule.split(" ").filter((one) => one.endsWith("!"))) {
      const count = elementsAt(element, name.replace("!", "")).length;
      const several = ["Control!", "ExtensionPoint!"].includes(name) ? count >= 1 : count === 1;
      if (!several) found.push(problem("oneEach", `${element.name}: ${count} of ${name.replace("!", "")}`));
    }
    return found;
  });
}

function identityProblems(root: Element, { packageVersion }: ManifestContext): readonly ManifestProblem[] {
  const found: ManifestProblem[] = [];
  const id = elementsAt(root, "Id")[0]?.text ?? "";
  if (!/^[0-9a-f]{8}-[0-9a-f]{4}-[1-5][0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/i.test(id)) {
    found.push(problem("id", id));
  }
  const version = elementsAt(root, "Version")[0]?.text ?? "";
  if (!/^\d{1,5}(\.\d{1,5}){3}$/.test(version)) found.push(problem("version", version));
  if (!version.startsWith(`${packageVersion}.`)) {
    found.push(problem("versionFollowsPackage", `${version}, package ${packageVersion}`));
  }
  const sets = elementsAt(root, "Requirements", "Sets", "Set").map(({ attributes }) => attributes.get("Name"));
  if (!sets.includes("SharedRuntime")) found.push(problem("sharedRuntimeRequired", sets.join(", ")));
  return found;
}

function resourceProblems(root: Element): readonly ManifestProblem[] {
  const kinds = elementsAt(root, "VersionOverrides", "Resources")[0]?.children ?? [];
  const defined = kinds.flatMap((kind) =>
    kind.children.map((one) => ({ kind: kind.name, id: one.attributes.get("id") ?? "" })),
  );
  const uses = everyElement(root).flatMap((element) => {
    const resid = element.attributes.get("resid");
    return resid === undefined ? [] : [{ element, resid }];
  });
  const found: ManifestProblem[] = [];
  for (const { element, resid } of uses) {
    const target = defined.find(({ id }) => id === resid);
    if (target === undefined) found.push(problem("residDefined", `${element.name} ${resid}`));
    else if (target.kind !== kindOf(element))
      found.push(problem("residKind", `${element.name} ${resid}: ${target.kind}`));
  }
  for (const { id } of defined) {
    if (defined.filter((other) => other.id === id).length > 1) found.push(problem("residOnce", id));
    if (id.length < 1 || id.length > 32) found.push(problem("residLength", id));
    if (!uses.some(({ resid }) => resid === id)) found.push(problem("residUsed", id));
  }
  return found;
}

function textProblems(root: Element): readonly ManifestProblem[] {
  const resources = elementsAt(root, "VersionOverrides", "Resources")[0];
  const short = [
    ...elementsAt(root, "DisplayName"),
    ...(resources ? elementsAt(resources, "ShortStrings", "String") : []),
  ];
  const long = [
    ...elementsAt(root, "Description"),
    ...(resources ? elementsAt(resources, "LongStrings", "String") : []),
  ];
  const overlong = (elements: readonly Element[], most: number, rule: ManifestRule) =>
    elements
      .map(({ attributes }) => attributes.get("DefaultValue") ?? "")
      .filter((text) => text.length < 1 || text.length > most)
      .map((text) => problem(rule, `${text.length} characters: ${text.slice(0, 30)}`));
  return [...overlong(short, 125, "shortString"), ...overlong(long, 250, "longString")];
}

/** Every address of the manifest. */
function addressesOf(root: Element): readonly string[] {
  const holders = ["IconUrl", "HighResolutionIconUrl", "SupportUrl", "SourceLocation", "Image", "Url"];
  return everyElement(root).flatMap(({ name, attributes }) => {
    const value = attributes.get("DefaultValue");
    return holders.includes(name) && value !== undefined ? [value] : [];
  });
}

function addressProblems(root: Element, { origin, fileAt }: ManifestContext): readonly ManifestProblem[] {
  return addressesOf(root).flatMap((address) => {
    if (!address.startsWith("https://")) return [problem("https", address)];
    if (!address.startsWith(`${origin}/`)) return [problem("origin", address)];
    return fileAt(address.slice(origin.length + 1)) === undefined ? [problem("file", address)] : [];
  });
}

function pageProblems(root: Element): readonly ManifestProblem[] {
  const host = elementsAt(root, "VersionOverrides", "Hosts", "Host")[0];
  if (host === undefined) return [problem("oneEach", "VersionOverrides: no Host")];
  const runtimes = elementsAt(host, "Runtimes", "Runtime");
  const pages = [
    ...runtimes,
    ...elementsAt(host, "AllFormFactors", "ExtensionPoint", "Page", "SourceLocation"),
    ...elementsAt(host, "DesktopFormFactor", "FunctionFile"),
    ...everyElement(host)
      .filter((element) => element.name === "Action")
      .flatMap((action) => elementsAt(action, "SourceLocation")),
  ];
  const resids = new Set(pages.map(({ attributes }) => attributes.get("resid")));
  const found: ManifestProblem[] = [];
  if (resids.size !== 1 || pages.length < 4) found.push(problem("sharedPage", [...resids].join(", ")));
  const resources = elementsAt(root, "VersionOverrides", "Resources", "Urls", "Url");
  const page = resources.find(({ attributes }) => attributes.get("id") === [...resids][0]);
  const start = elementsAt(root, "DefaultSettings", "SourceLocation")[0];
  if (page?.attributes.get("DefaultValue") !== start?.attributes.get("DefaultValue")) {
    found.push(problem("sharedPage", `starts at ${start?.attributes.get("DefaultValue")}`));
  }
  if (runtimes.some(({ attributes }) => attributes.get("lifetime") !== "long")) {
    found.push(problem("lifetime", "custom functions live as long as the workbook"));
  }
  return found;
}

function commandProblems(root: Element, { actions, namespace }: ManifestContext): readonly ManifestProblem[] {
  const all = everyElement(root);
  const found = all
    .filter(({ name, text }) => name === "FunctionName" && !actions.includes(text))
    .map(({ text }) => problem("action", text));
  const ids = all
    .filter(({ name }) => ["Control", "Group"].includes(name))
    .map(({ attributes }) => attributes.get("id"));
  if (new Set(ids).size < ids.length || ids.some((id) => id === undefined || id.length > 125)) {
    found.push(problem("controlIds", ids.join(", ")));
  }
  const resid = all.find(({ name }) => name === "Namespace")?.attributes.get("resid");
  const named = all.find(({ name, attributes }) => name === "String" && attributes.get("id") === resid);
  const value = named?.attributes.get("DefaultValue") ?? "";
  if (value !== namespace || !/^[A-Z][A-Z0-9._]{0,31}$/.test(value)) found.push(problem("namespace", value));
  return found;
}

/** Width and height of a PNG; undefined for any other bytes. */
function pngPixels(bytes: Uint8Array | undefined): readonly [number, number] | undefined {
  const signature = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];
  if (bytes === undefined || bytes.length < 24 || signature.some((byte, i) => bytes[i] !== byte)) return undefined;
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  return [view.getUint32(16), view.getUint32(20)];
}

function iconProblems(root: Element, { origin, fileAt }: ManifestContext): readonly ManifestProblem[] {
  const images = elementsAt(root, "VersionOverrides", "Resources", "Images", "Image");
  const addressOf = (resid: string | undefined): string =>
    images.find(({ attributes }) => attributes.get("id") === resid)?.attributes.get("DefaultValue") ?? "";
  const used = everyElement(root).flatMap(({ name, attributes }) => {
    const size = attributes.get("size");
    return name === "Image" && size !== undefined ? [[Number(size), addressOf(attributes.get("resid"))] as const] : [];
  });
  const top = (name: string) => elementsAt(root, name)[0]?.attributes.get("DefaultValue") ?? "";
  const wanted = [...used, [32, top("IconUrl")] as const, [64, top("HighResolutionIconUrl")] as const];
  const sizes = wanted.flatMap(([pixels, address]) => {
    const [width, height] = pngPixels(fileAt(address.slice(origin.length + 1))) ?? [0, 0];
    return width === pixels && height === pixels ? [] : [problem("iconSize", `${address}: ${width} × ${height}`)];
  });
  const sets = everyElement(root).flatMap((element) => {
    if (element.name !== "Icon") return [];
    const given = elementsAt(element, "Image").map(({ attributes }) => attributes.get("size"));
    const missing = ["16", "32", "80"].filter((size) => !given.includes(size));
    return missing.length === 0 ? [] : [problem("iconSet", `without ${missing.join(", ")}`)];
  });
  return [...sizes, ...sets];
}
