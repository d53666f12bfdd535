// Serves the hosted page on this machine and prints the address.
import { createServer } from "node:http";
import { readFile } from "node:fs/promises";
import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";

const folder = join(dirname(fileURLToPath(import.meta.url)), "dist", "hosted");
const FILES = {
  "/": ["index.html", "text/html; charset=utf-8"],
  "/index.html": ["index.html", "text/html; charset=utf-8"],
  "/worker.js": ["worker.js", "text/javascript; charset=utf-8"],
  "/manifest.webmanifest": ["manifest.webmanifest", "application/manifest+json"],
  "/icon.svg": ["icon.svg", "image/svg+xml"],
};

export function serve(port) {
  const server = createServer(async (request, response) => {
    const found = FILES[new URL(request.url, "http://localhost").pathname];
    if (!found) return void response.writeHead(404).end();
    response.writeHead(200, { "content-type": found[1], "cache-control": "no-cache" }).end(await readFile(join(folder, found[0])));
  });
  return new Promise((resolve) => server.listen(port, "127.0.0.1", () => resolve(server)));
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const server = await serve(Number(process.env.PORT ?? 8640));
  console.log(`http://localhost:${server.address().port}/`);
}
