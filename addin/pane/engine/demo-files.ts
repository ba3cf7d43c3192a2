/// <reference lib="dom" />
import type { FileToOpen } from "./engine-state.js";

// The bundler copies the files and puts their addresses here.
const addresses = {
  "loops.csv": new URL("../../../reference-data/demo/boathouse/loops.csv", import.meta.url),
  "site.csv": new URL("../../../reference-data/demo/boathouse/site.csv", import.meta.url),
  "radio-tests.csv": new URL("../../../reference-data/demo/boathouse/radio-tests.csv", import.meta.url),
  "old-zones.csv": new URL("../../../reference-data/demo/boathouse/old-zones.csv", import.meta.url),
};

/** Files of the invented boathouse, which lie beside the page. */
export const demoFiles = (): Promise<readonly FileToOpen[]> =>
  Promise.all(
    Object.entries(addresses).map(async ([name, address]) => {
      const answer = await fetch(address);
      if (!answer.ok) throw new Error(`${name} is not there (${answer.status})`);
      return { name, bytes: new Uint8Array(await answer.arrayBuffer()) };
    }),
  );
