import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { commandNames } from "../../../addin/commands/ribbon.js";
import { developmentUrl, namespace } from "../../../tools/build-addin.mjs";
import { checkManifest, type ManifestContext, type ManifestRule } from "./check-manifest.js";
import { everyElement, manifestTree } from "./manifest-tree.js";

const root = join(import.meta.dirname, "../../..");
const manifest = readFileSync(join(root, "manifest.xml"), "utf8");

/** A file behind a path of the development server; a script is served from its source. */
function fileAt(path: string): Uint8Array | undefined {
  const file = join(root, "addin", path.replace(/\.js$/, ".ts"));
  return existsSync(file) ? readFileSync(file) : undefined;
}

const context: ManifestContext = {
  origin: developmentUrl,
  namespace,
  packageVersion: (JSON.parse(readFileSync(join(root, "package.json"), "utf8")) as { version: string }).version,
  actions: commandNames,
  fileAt,
};

const rulesBrokenBy = (xml: string): readonly ManifestRule[] => checkManifest(xml, context).map(({ rule }) => rule);

test("the manifest has a ribbon with four buttons and nothing is found wrong with it", () => {
  const tree = manifestTree(manifest);
  if (typeof tree === "string") throw new Error(tree);
  expect(everyElement(tree).filter(({ name }) => name === "Control")).toHaveLength(4);
  expect(checkManifest(manifest, context)).toEqual([]);
});

/** One change for every rule that breaks it. */
const breaks: Readonly<Record<ManifestRule, readonly [string | RegExp, string]>> = {
  wellFormed: ["</Permissions>", "</Permission>"],
  childOrder: [/(<Version>.*?<\/Version>)\s*(<ProviderName>.*?<\/ProviderName>)/s, "$2$1"],
  oneEach: [/<SupportUrl[^>]*\/>/, ""],
  id: [/<Id>.*?<\/Id>/, "<Id>loopwright</Id>"],
  version: [/<Version>.*?<\/Version>/, "<Version>0.1.0</Version>"],
  versionFollowsPackage: [/<Version>.*?<\/Version>/, "<Version>77.0.0.0</Version>"],
  residDefined: ['<Label resid="SetUp.Label"/>', '<Label resid="SetUp.Labels"/>'],
  residOnce: ['<bt:String id="Rebuild.Tip"', '<bt:String id="WorkOut.Tip"'],
  residLength: [/SetUp\.Label/g, "SetUp.LabelOfTheButtonThatSetsUpTheSurvey"],
  residUsed: ['<bt:String id="Group.Label"', '<bt:String id="Spare" DefaultValue="x"/><bt:String id="Group.Label"'],
  residKind: ['<Description resid="SetUp.Tip"/>', '<Description resid="SetUp.Label"/>'],
  shortString: ['DefaultValue="Show the pane"', `DefaultValue="${"x".repeat(126)}"`],
  longString: [/(id="SetUp.Tip" DefaultValue=)"[^"]*"/, `$1"${"x".repeat(251)}"`],
  https: [/https:\/\/(localhost:3000\/icons\/icon-64)/, "http://$1"],
  origin: [/https:\/\/localhost:3000(\/icons\/icon-64)/, "https://localhost:4000$1"],
  sharedPage: ['<FunctionFile resid="Page.Url"/>', '<FunctionFile resid="Help.Url"/>'],
  lifetime: ['lifetime="long"', 'lifetime="short"'],
  action: ["<FunctionName>rebuildSheets", "<FunctionName>rebuildSheet"],
  file: ["/icons/icon-80.png", "/icons/icon-81.png"],
  iconSize: ['<bt:Image size="80" resid="Icon.80"/>', '<bt:Image size="80" resid="Icon.32"/>'],
  iconSet: ['<bt:Image size="16" resid="Icon.16"/>', ""],
  namespace: ['DefaultValue="LOOPW"', 'DefaultValue="LOOP"'],
  controlIds: ['id="Loopwright.SetUp"', 'id="Loopwright.Rebuild"'],
  sharedRuntimeRequired: ['Name="SharedRuntime"', 'Name="AddinCommands"'],
};

describe("each rule is broken by a change to the real manifest", () => {
  test.each(Object.entries(breaks))("%s", (rule, [from, to]) => {
    const broken = manifest.replace(from, to);
    expect(broken).not.toBe(manifest);
    expect(rulesBrokenBy(broken)).toContain(rule);
  });
});

test("the add-in's code has a command for every button of the manifest, and no other", () => {
  const wanted = [...manifest.matchAll(/<FunctionName>(\w+)</g)].map((match) => match[1] ?? "");
  expect([...commandNames].sort()).toEqual([...wanted].sort());
  expect(wanted).toHaveLength(3);
});
