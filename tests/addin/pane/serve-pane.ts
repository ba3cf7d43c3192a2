import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { createServer } from "node:http";
import { tmpdir } from "node:os";
import { extname, join, normalize } from "node:path";
import { bundleAddin } from "../../../tools/build-addin.mjs";

const types: Readonly<Record<string, string>> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript",
  ".css": "text/css",
  ".csv": "text/csv",
  ".svg": "image/svg+xml",
  ".wasm": "application/wasm",
};

/** The add-in built into a temporary folder and served from a sub-path, as a static host would; call `close` at the end. */
export async function servePane(): Promise<{ readonly address: string; readonly close: () => void }> {
  const folder = mkdtempSync(join(tmpdir(), "loopwright-pane-"));
  await bundleAddin({ folder });
  const base = "/some/folder/";
  const server = createServer((request, response) => {
    const path = normalize(decodeURIComponent(new URL(request.url ?? "/", "http://localhost").pathname));
    try {
      if (!path.startsWith(base)) throw new Error("outside");
      const content = readFileSync(join(folder, path.slice(base.length)));
      response.writeHead(200, { "content-type": types[extname(path)] ?? "application/octet-stream" }).end(content);
    } catch {
      response.writeHead(404).end();
    }
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  const address = server.address();
  if (address === null || typeof address === "string") throw new Error("the server has no port");
  return {
    address: `http://127.0.0.1:${address.port}${base}pane/index.html`,
    close: () => {
      server.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}
