import fc from "fast-check";

// Under CI property tests draw the same cases every time, so that a red run is the change's own; elsewhere they draw
// fresh ones, and a counterexample found there is mended and kept as an example.
if (process.env["CI"] === "true") fc.configureGlobal({ ...fc.readConfigureGlobal(), seed: 4_2026 });
