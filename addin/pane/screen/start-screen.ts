import type { Place } from "../../loopwright-pane.js";
import type { Engine, EngineState, FileToSave, LoopDrawing } from "../engine/engine-state.js";
import { answers } from "./answers.js";
import { type Child, el } from "./elements.js";
import { formatsFor } from "./formats.js";
import { keepingPlace } from "./keep-place.js";
import { rowsAtOnce } from "./loops.js";
import { notices, problemBox, progressBar } from "./notices.js";
import { opening } from "./opening.js";
import { partSection, printedParts } from "./part-content.js";
import { partsNav } from "./parts-nav.js";
import { priceLine } from "./price-line.js";
import { saveFile } from "./save-file.js";
import type { Acts, Look, Shown } from "./shown.js";
import { topBar } from "./top-bar.js";

const firstLook: Look = {
  part: "answers",
  find: "",
  sieve: "all",
  order: "survey",
  open: [],
  most: rowsAtOnce,
  pointed: null,
  jumped: null,
  printing: false,
};

/** Places that index.html holds ready; none of them is ever replaced, only filled. */
const placeNames = ["top", "notices", "problem", "progress", "price", "parts", "answers", "part", "said"] as const;
type PlaceName = (typeof placeNames)[number];

/** Draws the engine's state into the page and hands it what the reader does, until the returned function is called. */
export function startScreen(given: {
  readonly engine: Engine;
  /** BCP 47 tag of the reader. */
  readonly language: string;
}): () => void {
  const { engine, language } = given;
  const places = placesIn(document);
  let look = firstLook;
  let drawnFor: unknown[][] = [];
  let pictures = new Map<string, LoopDrawing | null>();
  let picturesOf: EngineState["estimate"] = null;

  const draw = () => {
    const { state } = engine;
    if (state.estimate !== picturesOf) {
      picturesOf = state.estimate;
      pictures = new Map();
    }
    const currency = state.estimate?.currency ?? state.survey?.site.currency ?? "USD";
    const shown: Shown = { state, look, formats: formatsFor({ language, currency, units: state.units }), act };
    keepingPlace(document.body, () => drawPlaces(shown));
  };

  /** Fills a place unless nothing changed of what it is drawn from. */
  const fill = (place: PlaceName, from: unknown[], content: () => readonly Child[]) => {
    const index = placeNames.indexOf(place);
    const before = drawnFor[index];
    if (before !== undefined && before.length === from.length && before.every((one, i) => Object.is(one, from[i])))
      return;
    drawnFor[index] = from;
    const children = content().filter((child) => child !== null && child !== undefined && child !== false);
    places[place].replaceChildren(...children.map((child) => (child instanceof Node ? child : String(child))));
  };

  const drawPlaces = (shown: Shown) => {
    const { state } = shown;
    const { estimate, survey, source, queries, wishes, choices, progress, problem } = state;
    const busy = progress !== null;
    document.body.dataset["part"] = survey === null ? "opening" : look.part;
    document.body.toggleAttribute("data-stale", state.stale);
    fill("top", [source, state.host, state.canUndo, state.canRedo, estimate, busy], () => topBar(shown));
    fill("notices", [estimate], () => notices(shown));
    fill("problem", [problem], () => [problemBox(shown)]);
    fill("progress", [progress], () => [progressBar(shown)]);
    fill("price", [estimate, survey, state.stale, state.before, busy, language], () => [priceLine(shown)]);
    if (survey === null) {
      fill("parts", [], () => []);
      fill("answers", [], () => []);
      fill("part", ["opening", state.host, busy], () => [opening(shown)]);
      return;
    }
    fill("parts", [look.part, queries, estimate], () => [partsNav(shown)]);
    fill("answers", [estimate, state.units], () => answersIn(shown));
    const from = [
      look,
      estimate,
      survey,
      queries,
      wishes,
      choices,
      busy,
      state.units,
      state.paper,
      state.headings,
      pictures.size,
    ];
    fill("part", [...from, state.sheets], () =>
      look.printing
        ? printedParts.map((part) => partSection(shown, part))
        : [partSection(shown, look.part === "answers" ? "loops" : look.part)],
    );
  };

  const act: Acts = {
    engine,
    look: (change) => {
      look = { ...look, ...change };
      draw();
    },
    go: (part, change = {}) => {
      look = { ...look, jumped: null, ...change, part };
      draw();
      focusOn(part === "answers" ? "title-answers" : `title-${part}`);
    },
    goToLoop: (key, change = {}) => {
      const row = engine.state.estimate?.loops.findIndex((loop) => loop.key === key) ?? 0;
      const open = look.open.includes(key) ? look.open : [...look.open, key];
      look = { ...look, jumped: null, sieve: "all", find: "", order: "survey", open, ...change, part: "loops" };
      look = { ...look, most: Math.max(look.most, row + 1) };
      draw();
      const button = document.querySelector(`[data-keep="${CSS.escape(`loop ${key}`)}"]`);
      if (!(button instanceof HTMLElement)) return;
      button.focus({ preventScroll: true });
      const marked = look.pointed?.key === key ? document.querySelector("tr.marked") : null;
      (marked ?? button).scrollIntoView({ block: marked === null ? "start" : "center" });
    },
    jump: (place, query, key) => void jump(place, query, key),
    say: (words) => {
      places.said.textContent = words;
    },
    pickFiles: () => {
      const input = document.getElementById("files");
      if (input instanceof HTMLInputElement) input.click();
    },
    openDemo: () => void openWith(() => engine.demo()),
    readWorkbook: () => void openWith(() => engine.readFromWorkbook()),
    workOut: (how) => void workOut(how),
    save: (file) => void save(file),
    picture: (key) => {
      const known = pictures.get(key);
      if (known === undefined && !pictures.has(key)) void fetchPicture(key);
      return known;
    },
  };

  async function fetchPicture(key: string): Promise<void> {
    const of = picturesOf;
    const drawing = await engine.loopPicture(key);
    if (of !== picturesOf || pictures.has(key)) return;
    pictures.set(key, drawing);
    draw();
  }

  /** Opens something, then works it out at once: nobody opens a survey for its own sake. */
  async function openWith(open: () => Promise<void>): Promise<void> {
    const before = engine.state.survey;
    await open();
    const { survey, problem } = engine.state;
    if (survey === null || survey === before || problem !== null) return;
    look = firstLook;
    draw();
    focusOn("title-answers", "title-loops");
    if (engine.state.estimate === null || engine.state.stale) await workOut();
  }

  async function workOut(how?: { readonly prove: boolean }): Promise<void> {
    await engine.workOut(how);
    const { estimate, stale, problem } = engine.state;
    if (estimate !== null && !stale && problem === null) act.say(workedOutWords());
  }

  function workedOutWords(): string {
    const { state } = engine;
    if (state.estimate === null) return "";
    const { currency, price } = state.estimate;
    const { money } = formatsFor({ language, currency, units: state.units });
    return `Worked out: ${money(price.totalCents)} with tax. ${state.queries.length} queries.`;
  }

  async function save(file: () => Promise<FileToSave | null>): Promise<void> {
    const made = await file();
    if (made === null) return;
    saveFile(made);
    act.say(`${made.name} saved`);
  }

  async function jump(place: Place, query: number, key: string | undefined): Promise<void> {
    const { shown, words } = await engine.jumpTo(place);
    act.say(words);
    if (!shown && key !== undefined && engine.state.estimate?.loops.some((loop) => loop.key === key)) {
      act.goToLoop(key, { pointed: { key, column: place.column } });
    } else act.look({ jumped: { query, words } });
  }

  const endings = [
    engine.subscribe(draw),
    listenForFiles((files) => {
      void openWith(async () => {
        const read = await Promise.all(
          files.map(async (file) => ({ name: file.name, bytes: new Uint8Array(await file.arrayBuffer()) })),
        );
        await engine.openFiles(read);
      });
    }),
    listenForPrinting((printing) => act.look({ printing })),
    sayProgress(engine, act.say),
  ];
  draw();
  return () => {
    for (const end of endings) end();
    drawnFor = [];
  };
}

function answersIn(shown: Shown): readonly Child[] {
  const { estimate } = shown.state;
  const title = el("h2", { id: "title-answers", tabindex: -1 }, "Answers");
  if (estimate === null) return [title, el("p", {}, "They come with the estimate.")];
  return [title, ...answers({ ...shown, estimate })];
}

function placesIn(page: Document): Readonly<Record<PlaceName, HTMLElement>> {
  const found = placeNames.map((name) => {
    const place = page.getElementById(name);
    if (place === null) throw new Error(`index.html has no place "${name}"`);
    return [name, place] as const;
  });
  return Object.fromEntries(found) as Record<PlaceName, HTMLElement>;
}

/** Puts the keyboard on the first of these that can be seen. */
function focusOn(...ids: readonly string[]): void {
  for (const id of ids) {
    const element = document.getElementById(id);
    if (element === null || element.getClientRects().length === 0) continue;
    element.focus();
    return;
  }
}

/** Files that are picked, or dropped anywhere on the page. */
function listenForFiles(open: (files: readonly File[]) => void): () => void {
  const input = document.getElementById("files");
  const picked = () => {
    if (!(input instanceof HTMLInputElement) || input.files === null) return;
    const files = [...input.files];
    // The same file picked once more is to be read once more.
    input.value = "";
    if (files.length > 0) open(files);
  };
  const over = (event: DragEvent) => {
    if (event.dataTransfer?.types.includes("Files") !== true) return;
    event.preventDefault();
    document.body.toggleAttribute("data-dragging", event.type !== "dragleave");
  };
  const dropped = (event: DragEvent) => {
    if (event.dataTransfer === null || event.dataTransfer.files.length === 0) return;
    event.preventDefault();
    document.body.removeAttribute("data-dragging");
    open([...event.dataTransfer.files]);
  };
  input?.addEventListener("change", picked);
  document.addEventListener("dragover", over);
  document.addEventListener("dragleave", over);
  document.addEventListener("drop", dropped);
  return () => {
    input?.removeEventListener("change", picked);
    document.removeEventListener("dragover", over);
    document.removeEventListener("dragleave", over);
    document.removeEventListener("drop", dropped);
  };
}

/** On paper every part stands below the other. */
function listenForPrinting(print: (printing: boolean) => void): () => void {
  const before = () => {
    print(true);
    for (const one of document.querySelectorAll<HTMLDetailsElement>("details:not(.help)")) one.open = true;
  };
  const after = () => print(false);
  window.addEventListener("beforeprint", before);
  window.addEventListener("afterprint", after);
  return () => {
    window.removeEventListener("beforeprint", before);
    window.removeEventListener("afterprint", after);
  };
}

/** What is going on, once for each step of it: a figure that moves would never stop talking. */
function sayProgress(engine: Engine, say: (words: string) => void): () => void {
  let last: string | null = null;
  return engine.subscribe(({ progress }) => {
    const words = progress?.words ?? null;
    if (words !== last && words !== null) say(words);
    last = words;
  });
}
