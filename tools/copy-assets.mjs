// Files the built library needs beside its code: nothing is transformed, only copied.
import { chmodSync, existsSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const root = join(dirname(fileURLToPath(import.meta.url)), "..");
const main = join(root, "dist/command/main.js");
if (existsSync(main)) chmodSync(main, 0o755);
