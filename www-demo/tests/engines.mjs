// The page in the other engines: `node tests/engines.mjs firefox` (firefox-esr, spoken to in WebDriver BiDi) or
// `node tests/engines.mjs webkit` (WebKitWebDriver under xvfb). Opens the built file, takes the invented lifter and
// asks all 29 questions; needs no package beyond what this folder has.
import { spawn } from "node:child_process";
import { once } from "node:events";
import { existsSync } from "node:fs";
import { mkdtemp, readdir } from "node:fs/promises";
import { createConnection } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { randomBytes } from "node:crypto";
import { FILE } from "./browser.mjs";

/** Runs in the page: every question in turn, what it says, and what went wrong. */
const ASK_ALL = `
  const sleep = (time) => new Promise((done) => setTimeout(done, time));
  const until = async (found) => { for (let at = 0; at < 1200; at += 1) { if (found()) return; await sleep(50); } throw new Error("waited in vain: " + found + "; the page says: " + document.body.textContent.slice(0, 200)); };
  const faults = [];
  addEventListener("error", (event) => faults.push(String(event.message)));
  await until(() => document.documentElement.dataset.ready);
  document.querySelector('main [data-act="demo"]').click();
  await until(() => document.querySelector("[data-lift]"));
  const said = [];
  for (let number = 1; number <= 29; number += 1) {
    document.querySelector('[data-place="questions"]').click();
    await until(() => document.querySelector('[data-question="' + number + '"]'));
    document.querySelector('[data-question="' + number + '"]').click();
    await sleep(30);
    if (number === 13) document.querySelector('[data-act="no-sign"]').click();
    await sleep(30);
    const big = document.querySelector("main [data-answer]");
    said.push(number + ": " + (big ? big.textContent : "nothing"));
    if (!big || /NaN|undefined|Something went wrong/.test(document.querySelector("main").textContent)) faults.push("question " + number);
  }
  document.querySelector('[data-place="today"]').click();
  document.querySelector('[data-act="all-good"]').click();
  await until(() => document.querySelector(".done"));
  const kept = !document.querySelector(".fault");
  return JSON.stringify({ said, faults, kept });
`;

function report(name, text) {
  const { said, faults, kept } = JSON.parse(text);
  console.log(said.join("\n"));
  console.log(`${name}: ${said.length} questions, storage ${kept ? "kept" : "refused and said so"}, faults: ${faults.length === 0 ? "none" : faults.join("; ")}`);
  process.exitCode = faults.length === 0 && said.length === 29 ? 0 : 1;
}

/** The little of the WebSocket protocol that speaking to a local browser takes. */
class Socket {
  static async open(port, path) {
    const socket = new Socket();
    socket.stream = createConnection(port, "127.0.0.1");
    await once(socket.stream, "connect");
    socket.stream.write(`GET ${path} HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\nUpgrade: websocket\r\nConnection: Upgrade\r\nSec-WebSocket-Key: ${randomBytes(16).toString("base64")}\r\nSec-WebSocket-Version: 13\r\n\r\n`);
    socket.read = Buffer.alloc(0);
    socket.waiting = new Map();
    socket.next = 1;
    let upgraded = false;
    await new Promise((resolve) => {
      socket.stream.on("data", (bytes) => {
        socket.read = Buffer.concat([socket.read, bytes]);
        if (!upgraded) {
          const end = socket.read.indexOf("\r\n\r\n");
          if (end < 0) return;
          socket.read = socket.read.subarray(end + 4);
          upgraded = true;
          resolve();
        }
        socket.take();
      });
    });
    return socket;
  }

  take() {
    for (;;) {
      if (this.read.length < 2) return;
      let length = this.read[1] & 127;
      let start = 2;
      if (length === 126) {
        if (this.read.length < 4) return;
        length = this.read.readUInt16BE(2);
        start = 4;
      } else if (length === 127) {
        if (this.read.length < 10) return;
        length = Number(this.read.readBigUInt64BE(2));
        start = 10;
      }
      if (this.read.length < start + length) return;
      const text = this.read.subarray(start, start + length).toString();
      const kind = this.read[0] & 15;
      this.read = this.read.subarray(start + length);
      if (kind !== 1) continue;
      const message = JSON.parse(text);
      this.waiting.get(message.id)?.(message);
    }
  }

  send(method, params) {
    const id = this.next++;
    const body = Buffer.from(JSON.stringify({ id, method, params }));
    const mask = randomBytes(4);
    const head = body.length < 126 ? Buffer.from([0x81, 0x80 | body.length]) : Buffer.from([0x81, 0xfe, body.length >> 8, body.length & 255]);
    this.stream.write(Buffer.concat([head, mask, body.map((byte, at) => byte ^ mask[at & 3])]));
    return new Promise((resolve, reject) => this.waiting.set(id, (message) => (message.type === "error" ? reject(new Error(message.message)) : resolve(message.result))));
  }
}

async function firefox() {
  const profile = await mkdtemp(join(tmpdir(), "bismar-firefox-"));
  const port = 9300 + Math.floor(Math.random() * 500);
  const child = spawn(process.env.BISMAR_FIREFOX ?? "firefox-esr", ["--headless", "--no-remote", "--profile", profile, `--remote-debugging-port=${port}`, "about:blank"], { stdio: ["ignore", "ignore", "pipe"] });
  try {
    await new Promise((resolve, reject) => {
      child.on("error", reject);
      child.stderr.on("data", (text) => String(text).includes("WebDriver BiDi listening") && resolve());
    });
    const socket = await Socket.open(port, "/session");
    await socket.send("session.new", { capabilities: {} });
    const { contexts } = await socket.send("browsingContext.getTree", {});
    const { context } = contexts[0];
    await socket.send("browsingContext.navigate", { context, url: FILE, wait: "complete" });
    const found = await socket.send("script.callFunction", { functionDeclaration: `async () => {${ASK_ALL}}`, target: { context }, awaitPromise: true });
    if (found.type === "exception") throw new Error(found.exceptionDetails.text);
    report("Firefox", found.result.value);
  } finally {
    child.kill();
  }
}

async function browserOf() {
  for (const folder of ["/usr/lib/x86_64-linux-gnu", "/usr/lib/aarch64-linux-gnu", "/usr/libexec"]) {
    const names = existsSync(folder) ? await readdir(folder) : [];
    for (const name of names.filter((one) => one.startsWith("webkit2gtk-"))) {
      const browser = join(folder, name, "MiniBrowser");
      if (existsSync(browser)) return browser;
    }
  }
  throw new Error("no MiniBrowser found; install webkit2gtk-driver");
}

async function webkit() {
  const port = 9800 + Math.floor(Math.random() * 100);
  const child = spawn("xvfb-run", ["-a", "WebKitWebDriver", `--port=${port}`], { stdio: "ignore", detached: true, env: { ...process.env, WEBKIT_DISABLE_SANDBOX_THIS_IS_DANGEROUS: "1" } });
  const ask = async (method, path, body) => {
    const response = await fetch(`http://127.0.0.1:${port}${path}`, { method, ...(body ? { body: JSON.stringify(body), headers: { "content-type": "application/json" } } : {}) });
    const { value } = await response.json();
    if (value?.error) throw new Error(`${value.error}: ${value.message}`);
    return value;
  };
  try {
    for (let at = 0; at < 60; at += 1) {
      if (await ask("GET", "/status").catch(() => undefined)) break;
      await new Promise((resolve) => setTimeout(resolve, 500));
    }
    const { sessionId } = await ask("POST", "/session", { capabilities: { alwaysMatch: { "webkitgtk:browserOptions": { binary: await browserOf(), args: ["--automation"] } } } });
    await ask("POST", `/session/${sessionId}/timeouts`, { script: 240_000, pageLoad: 120_000 });
    await ask("POST", `/session/${sessionId}/url`, { url: FILE });
    const text = await ask("POST", `/session/${sessionId}/execute/async`, { script: `const done = arguments[0]; (async () => {${ASK_ALL}})().then(done, (error) => done(JSON.stringify({ said: [], faults: [String(error)], kept: false })));`, args: [] });
    await ask("DELETE", `/session/${sessionId}`);
    report("WebKit", text);
  } finally {
    process.kill(-child.pid);
  }
}

const engines = { firefox, webkit };
const engine = engines[process.argv[2]];
if (!engine) {
  console.error("usage: node tests/engines.mjs firefox | webkit");
  process.exitCode = 2;
} else await engine();
