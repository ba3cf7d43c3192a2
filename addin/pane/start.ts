/// <reference lib="dom" />
import type { Engine } from "./engine/engine-state.js";
import { startEngine } from "./engine/start-engine.js";
import { startScreen } from "./screen/start-screen.js";

/** The page's window, where tests find the engine that the screen shows. */
export interface PaneWindow {
  loopwright?: Engine;
}

const engine = await startEngine();
(window as PaneWindow).loopwright = engine;
startScreen({ engine, language: navigator.language });
if (engine.state.host === "excel") void engine.readFromWorkbook();
