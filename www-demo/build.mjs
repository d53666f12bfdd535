// Puts wasm, script and style into one file that asks nobody for anything, and lays out the hosted variant.
import { createHash } from "node:crypto";
import { existsSync } from "node:fs";
import { mkdir, readFile, rm, writeFile } from "node:fs/promises";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { gzipSync } from "node:zlib";
import { build } from "esbuild";

const here = dirname(fileURLToPath(import.meta.url));
const dist = join(here, "dist");
const packaged = join(dist, "package", "slim.js");
if (!existsSync(packaged)) throw new Error("the package is not there; run: cargo run -p bismar-build -- page");

const wasm = await readFile(join(dist, "package", "bismar.wasm"));
const packed = gzipSync(wasm, { level: 9 });
const demo = join(here, "..", "examples", "data");

const bundled = await build({
  entryPoints: [join(here, "src", "main.ts")],
  bundle: true,
  minify: true,
  write: false,
  format: "iife",
  target: ["chrome111", "firefox115", "safari16.4"],
  legalComments: "inline",
  // Packed: the page is read, checked and parsed sooner with a third of the text.
  define: {
    WASM_BASE64: JSON.stringify(packed.toString("base64")),
    SAME_BITS: JSON.stringify((await readFile(join(here, "answers", "src", "same_bits.txt"), "utf8")).trim()),
  },
  // Script inside a script element must not end it.
  charset: "ascii",
  plugins: [
    {
      name: "page",
      setup(setup) {
        setup.onResolve({ filter: /^bismar-page-package$/ }, () => ({ path: packaged }));
        setup.onResolve({ filter: /^demo-(log|plan)\.txt$/ }, (found) => ({
          path: join(demo, found.path.replace(".txt", ".json")),
          namespace: "demo",
        }));
        setup.onLoad({ filter: /.*/, namespace: "demo" }, async (found) => ({
          contents: JSON.stringify(JSON.parse(await readFile(found.path, "utf8"))),
          loader: "text",
        }));
      },
    },
  ],
});
const script = bundled.outputFiles[0].text.replaceAll("</script", "<\\/script").trim();
const plotStyle = await readFile(join(here, "node_modules", "uplot", "dist", "uPlot.min.css"), "utf8");
const ownStyle = await readFile(join(here, "src", "style.css"), "utf8");
const style = (await build({ stdin: { contents: plotStyle + ownStyle, loader: "css" }, minify: true, write: false })).outputFiles[0].text.trim();

const hash = (text) => `'sha256-${createHash("sha256").update(text).digest("base64")}'`;

function policy(hosted) {
  return [
    "default-src 'none'",
    `script-src ${hash(script)} 'wasm-unsafe-eval'`,
    `style-src ${hash(style)}`,
    "img-src data:",
    "base-uri 'none'",
    "form-action 'none'",
    ...(hosted ? ["connect-src 'self'", "manifest-src 'self'", "worker-src 'self'", "img-src 'self' data:"] : ["connect-src 'none'"]),
  ]
    .filter((rule, at, all) => !rule.startsWith("img-src") || all.findLastIndex((other) => other.startsWith("img-src")) === at)
    .join("; ");
}

const ICON = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 512 512"><rect width="512" height="512" rx="96" fill="#14584f"/><path d="M72 220h368" stroke="#fff" stroke-width="28" stroke-linecap="round"/><path d="M330 220v56" stroke="#fff" stroke-width="24"/><circle cx="150" cy="220" r="62" fill="#fff"/><path d="M290 372l40-96 40 96z" fill="#fff"/></svg>`;

function page(hosted, head = "") {
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy(hosted)}">
<meta name="viewport" content="width=device-width, initial-scale=1, viewport-fit=cover">
<meta name="color-scheme" content="light dark">
<meta name="referrer" content="no-referrer">
<title>Bismar</title>
<link rel="icon" href="data:image/svg+xml;base64,${Buffer.from(ICON).toString("base64")}">
${head}<style>${style}</style>
</head>
<body>
<div id="page"><main><h1>One moment</h1><noscript><p>The page does its sums in script and WebAssembly; both are switched off here.</p></noscript></main></div>
<script>${script}</script>
</body>
</html>
`;
}

const single = page(false);
await writeFile(join(dist, "bismar.html"), single);

// Hosted: the same page, installable and kept for offline by a service worker.
const hosted = join(dist, "hosted");
await rm(hosted, { recursive: true, force: true });
await mkdir(hosted, { recursive: true });
const online = page(true, `<link rel="manifest" href="manifest.webmanifest">\n<meta name="theme-color" content="#14584f">\n`);
const version = createHash("sha256").update(online).digest("hex").slice(0, 16);
await writeFile(join(hosted, "index.html"), online);
await writeFile(join(hosted, "icon.svg"), ICON);
await writeFile(
  join(hosted, "manifest.webmanifest"),
  JSON.stringify({
    name: "Bismar",
    short_name: "Bismar",
    start_url: "./",
    scope: "./",
    display: "standalone",
    background_color: "#f7f5f0",
    theme_color: "#14584f",
    icons: [{ src: "icon.svg", sizes: "any", type: "image/svg+xml", purpose: "any" }],
  }),
);
await writeFile(join(hosted, "worker.js"), (await readFile(join(here, "src", "worker.js"), "utf8")).replace("\"VERSION\"", JSON.stringify(version)));
const kilobytes = (text) => Math.round(Buffer.byteLength(text) / 1000);
console.log(`www-demo/dist/bismar.html  ${kilobytes(single)} kB, of it wasm ${Math.round(wasm.length / 1000)} kB, packed ${Math.round(packed.length / 1000)} kB`);
console.log("www-demo/dist/hosted/      the same for a web server");
