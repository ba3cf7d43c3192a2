import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { type Browser, chromium, type Locator, type Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { parts } from "../../../addin/pane/screen/shown.js";
import type { PaneWindow } from "../../../addin/pane/start.js";
import { servePane } from "./serve-pane.js";

const flags = [
  "--headless",
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];

const hostile = '<img src=x onerror="window.ran=1">';
/** A small invented job: words that look like markup, one loop that nobody touches, one row with an open question. */
const loopsSheet = [
  "Panel,Loop,Label on wire,What it protects,Openings,Device,Cable,Run,Ohms shut,Ohms one opened,Volts DC,Lifted,Notes",
  "P1,1,FRONT,front door,1,recessed contact,22/2,48 ft,2.19k,OL,0,both,",
  `P1,2,"${hostile.replaceAll('"', '""')}",store windows,2,surface contact,22/2,60 ft,3.1,OL,0,both,"${hostile.replaceAll('"', '""')}"`,
  "P1,3,BAY,bay door,?,overhead door track contact,22/2,70 ft,61 jumps to 140,OL,0,both,",
  "P1,4,FIRE 24H,smoke detectors,2,two-wire smoke detectors,18/2 red,100 ft,,,,no,red jacket",
].join("\n");

const narrow = { width: 320, height: 700 };
const wide = { width: 1200, height: 900 };
const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

let pane: Awaited<ReturnType<typeof servePane>>;
let browser: Browser;
let page: Page;
const errors: string[] = [];

beforeAll(async () => {
  pane = await servePane();
  browser = await chromium.launch({ executablePath: "/usr/bin/chromium", args: flags });
  page = await (await browser.newContext({ locale: "de-DE", viewport: narrow })).newPage();
  page.on("pageerror", (error) => errors.push(error.message));
  await page.goto(pane.address);
  await page.getByRole("heading", { name: "Open a survey" }).waitFor();
});

afterAll(async () => {
  await browser?.close();
  pane?.close();
});

/** What axe-core finds that is serious or worse, with the place. */
async function serious(): Promise<readonly string[]> {
  await page.evaluate(axe);
  return page.evaluate(async () => {
    const { axe } = globalThis as unknown as {
      axe: {
        run(): Promise<{
          violations: { id: string; impact: string; nodes: { html: string }[] }[];
          passes: unknown[];
        }>;
      };
    };
    const { violations, passes } = await axe.run();
    if (passes.length < 10) throw new Error("axe looked at next to nothing");
    return violations
      .filter(({ impact }) => impact === "serious" || impact === "critical")
      .map(({ id, nodes }) => `${id}: ${nodes[0]?.html ?? ""}`);
  });
}

const overflow = () => page.evaluate("document.documentElement.scrollWidth - innerWidth") as Promise<number>;
const textIn = async (place: Locator) => (await place.textContent()) ?? "";
const at = (keep: string) => page.locator(`[data-keep="${keep}"]`);
const focused = () =>
  page.evaluate("document.activeElement?.getAttribute('data-keep') ?? null") as Promise<string | null>;
const totalCents = () =>
  page.evaluate(() => (globalThis as PaneWindow).loopwright?.state.estimate?.price.totalCents ?? 0);
const workedOut = () =>
  page.waitForFunction(
    () => {
      const state = (globalThis as PaneWindow).loopwright?.state;
      return state !== undefined && state.estimate !== null && !state.stale && state.progress === null;
    },
    undefined,
    { timeout: 120_000 },
  );

test("before a survey is open: nothing serious for axe-core, narrow and dark, nothing wider than 320 px", async () => {
  expect(await serious()).toEqual([]);
  expect(await overflow()).toBeLessThanOrEqual(0);
  await page.emulateMedia({ colorScheme: "dark" });
  expect(await serious()).toEqual([]);
  await page.emulateMedia({ colorScheme: "light" });
});

describe("with a job open", () => {
  beforeAll(async () => {
    await page
      .locator("#files")
      .setInputFiles({ name: "loops.csv", mimeType: "text/csv", buffer: Buffer.from(loopsSheet) });
    await workedOut();
  }, 180_000);

  test("hold and demo prices stand on top; money is written as the reader's language writes it (CLDR, by Intl)", async () => {
    const notices = await textIn(page.locator("#notices"));
    expect(notices).toContain("DO NOT TOUCH");
    expect(notices).toContain("FIRE 24H");
    expect(notices).toContain("DEMO PRICES: invented, not to be quoted");
    const cents = await totalCents();
    expect(cents).toBeGreaterThan(0);
    const german = new Intl.NumberFormat("de-DE", { style: "currency", currency: "USD" }).format(cents / 100);
    expect(await textIn(page.locator("#price .price"))).toBe(german);
    const answers = await textIn(page.locator("#answers"));
    for (const heading of [
      "What stays",
      "What it costs",
      "The two readings worth most",
      "What to order today",
      "What must not be touched",
    ])
      expect(answers).toContain(heading);
  });

  test("typed markup stays text, and a loop's picture is an image that cannot run", async () => {
    await page.getByRole("combobox", { name: "Show", exact: true }).selectOption("loops");
    await at("loop R002").click();
    const picture = page.locator(".drawing img");
    await picture.waitFor();
    expect(await picture.getAttribute("src")).toMatch(/^data:image\/svg\+xml/);
    expect(await textIn(page.locator("#part"))).toContain(hostile);
    const images = (await page.evaluate("[...document.images].map((one) => one.src.slice(0, 14))")) as string[];
    expect(images).toEqual(["data:image/svg"]);
    expect(await page.evaluate("window.ran")).toBeUndefined();
  });

  test.each([
    ["narrow", narrow, "light"],
    ["wide", wide, "light"],
    ["narrow and dark", narrow, "dark"],
  ] as const)(
    "every part, %s, a loop open: nothing serious for axe-core, nothing wider than the page",
    async (_, size, colorScheme) => {
      await page.setViewportSize(size);
      await page.emulateMedia({ colorScheme });
      expect(parts.length).toBeGreaterThan(10);
      // Colours come from one list of names: in dark, three parts show all of them.
      const looked = parts.filter(([part]) => colorScheme === "light" || ["answers", "loops", "price"].includes(part));
      expect(looked.length).toBeGreaterThanOrEqual(3);
      for (const [part] of parts) {
        await showPart(part);
        expect(await overflow(), part).toBeLessThanOrEqual(0);
        if (looked.some(([one]) => one === part)) expect(await serious(), part).toEqual([]);
      }
      await page.emulateMedia({ colorScheme: "light" });
    },
  );

  test("zoomed to 200 % (1280 px wide: 640 left) and with letters of twice the size nothing is cut off", async () => {
    await page.setViewportSize({ width: 640, height: 400 });
    for (const size of ["100%", "200%"]) {
      await page.evaluate((fontSize) => document.documentElement.style.setProperty("font-size", fontSize), size);
      for (const [part] of parts) {
        await showPart(part);
        expect(await overflow(), `${part} at ${size}`).toBeLessThanOrEqual(0);
      }
    }
    await page.evaluate("document.documentElement.style.removeProperty('font-size')");
    await page.setViewportSize(narrow);
  });

  test("by keyboard alone: every stop in reading order, visible and ringed; opening, wishing and undoing keep the place", async () => {
    await showPart("loops");
    await page.evaluate("document.activeElement.blur(); scrollTo(0, 0); getSelection().removeAllRanges()");
    await page.locator(".skip").focus();
    const stops: string[] = [];
    let last = -1;
    for (let step = 0; step < 200; step++) {
      await page.keyboard.press("Tab");
      const stop = (await page.evaluate(`(() => {
        const one = document.activeElement;
        if (one === null || one === document.body) return null;
        const look = getComputedStyle(one);
        return { keep: one.dataset.keep ?? one.className, index: [...document.querySelectorAll("*")].indexOf(one),
          seen: one.getClientRects().length > 0, ring: look.outlineStyle !== "none" && parseFloat(look.outlineWidth) >= 2 };
      })()`)) as { keep: string; index: number; seen: boolean; ring: boolean } | null;
      if (stop === null || stop.index <= last) break;
      expect(stop, stop.keep).toMatchObject({ seen: true, ring: true });
      last = stop.index;
      stops.push(stop.keep);
    }
    for (const keep of ["open", "undo", "save", "part choice", "find", "sieve", "loop R001", "loop R003", "loop R004"])
      expect(stops).toContain(keep);

    await at("loop R001").focus();
    await page.keyboard.press("Enter");
    expect(await focused()).toBe("loop R001");
    expect(await at("loop R001").getAttribute("aria-expanded")).toBe("true");

    await at("pin wireless R001").focus();
    await page.keyboard.press("Space");
    expect(await focused()).toBe("pin wireless R001");
    expect(await at("pin wireless R001").getAttribute("aria-pressed")).toBe("true");
    expect(await textIn(page.locator("#said"))).toContain("must become wireless");
    expect(await textIn(page.locator("#price"))).toContain("the figures shown are the old ones");
    await at("undo").focus();
    await page.keyboard.press("Enter");
    expect(await focused()).toBe("undo");
    expect(await at("pin wireless R001").getAttribute("aria-pressed")).toBe("false");
    expect(await textIn(page.locator("#price"))).not.toContain("old ones");
  });

  test("a wish moves the price once it is worked out again, and what it was before stands beside it", async () => {
    const before = await totalCents();
    const [key, kind] = await page.evaluate(() => {
      const state = (globalThis as PaneWindow).loopwright?.state;
      const offers = Object.entries(state?.choices ?? {}).flatMap(([loop, kinds]) => kinds.map((one) => [loop, one]));
      const planned = (loop: string | undefined) => state?.estimate?.loops.find((one) => one.key === loop)?.treatment;
      return offers.find(([loop, one]) => one !== "retire" && one !== planned(loop)) ?? [];
    });
    await showPart("plan");
    await at(`plan pin ${key}`).selectOption(kind ?? "");
    await at("quick plan").click();
    await workedOut();
    const now = await totalCents();
    expect(now).not.toBe(before);
    const money = (cents: number) =>
      new Intl.NumberFormat("de-DE", { style: "currency", currency: "USD" }).format(cents / 100);
    const line = await textIn(page.locator("#price"));
    expect(line).toContain(money(before));
    expect(line).toContain(money(now));
  });

  test("the list is found by text and sieved by state while typing keeps its place", async () => {
    await showPart("loops");
    await at("find").focus();
    await page.keyboard.type("bay door");
    expect(await focused()).toBe("find");
    expect(await at("find").inputValue()).toBe("bay door");
    expect(await page.locator(".loops > li").count()).toBe(1);
    await at("find").fill("");
    await at("sieve").selectOption("treatment excluded");
    expect(await page.locator(".loops > li").count()).toBe(1);
    expect(await textIn(page.locator(".loops"))).toContain("No verdict, no reading");
    await at("sieve").selectOption("all");
    expect(await page.locator(".loops > li").count()).toBe(4);
  });

  test("a loop that is left alone has no wish, no reading and no picture", async () => {
    await showPart("loops");
    await at("loop R004").click();
    const card = page.locator("#loop-R004");
    expect(await textIn(card)).toContain("DO NOT TOUCH");
    expect(await card.locator("[data-keep^='pin '], [data-keep^='forbid '], .drawing").count()).toBe(0);
    expect(await card.getByRole("heading", { name: /reading|wish|verdict/i }).count()).toBe(0);
  });

  test("a query leads to the row as typed, with its cell marked by more than colour", async () => {
    await showPart("queries");
    const asked = page.locator(".card", { hasText: "Openings" }).first();
    await asked.getByRole("button", { name: /^Show the row/ }).click();
    expect(await focused()).toBe("loop R003");
    const marked = page.locator("#loop-R003 tr.marked");
    expect(await textIn(marked)).toContain("?");
    expect(await marked.locator("td").evaluate((one) => getComputedStyle(one).fontWeight)).toBe("600");
  });

  test("paper holds every part and no command; less motion is honoured", async () => {
    await page.evaluate("window.dispatchEvent(new Event('beforeprint'))");
    await page.emulateMedia({ media: "print" });
    const printed = (await page.evaluate(
      "[...document.querySelectorAll('h2')].filter((one) => one.getClientRects().length > 0).map((one) => one.textContent)",
    )) as string[];
    expect(printed).toEqual(parts.map(([, words]) => words).filter((words) => words !== "Files and settings"));
    expect(await at("save").isVisible()).toBe(false);
    expect(await textIn(page.locator("#notices"))).toContain("DEMO PRICES");
    await page.emulateMedia({ media: "screen", reducedMotion: "reduce" });
    await page.evaluate("window.dispatchEvent(new Event('afterprint'))");
    expect(await at("save").evaluate((one) => getComputedStyle(one).transitionDuration)).toBe("0s");
  });

  test("a file that is none is refused on the screen, and what was open stays", async () => {
    await page.locator("#files").setInputFiles({
      name: "picture.xlsx",
      mimeType: "application/octet-stream",
      buffer: Buffer.from("no workbook"),
    });
    const problem = page.locator("#problem");
    await problem.getByText("Not opened").waitFor();
    expect(await textIn(problem)).toContain("picture");
    expect(await totalCents()).toBeGreaterThan(0);
    await at("dismiss").click();
    expect(await textIn(problem)).toBe("");
    expect(errors).toEqual([]);
  });
});

/** Goes to a part as the reader of this width does. */
async function showPart(part: string): Promise<void> {
  const choice = at("part choice");
  if (await choice.isVisible()) await choice.selectOption(part);
  else if (await at(`part ${part}`).isVisible()) await at(`part ${part}`).click();
}
