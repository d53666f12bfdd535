// The page in the other engines: `node tests/engines.mjs firefox` (firefox-esr, spoken to in WebDriver BiDi) or
// `node tests/engines.mjs webkit` (WebKitWebDriver under xvfb). Each opens the built file, and the hosted form whose
// server is then ended; in both, all questions are asked with no lifter, an empty log and a full one, and a session
// is written down and found again after opening anew; then what keeping must hold is tried. Needs no package beyond what this folder has.
import { spawn } from "node:child_process";
import { once } from "node:events";
import { existsSync } from "node:fs";
import { mkdtemp, readdir } from "node:fs/promises";
import { createConnection } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { randomBytes } from "node:crypto";
import { FILE } from "./browser.mjs";
import { IMPROPER, MOST_TAPS, NEWCOMER, QUESTIONS } from "./expected.mjs";
import { fileOf, logOf } from "./keep.mjs";
import { serve } from "../serve.mjs";

const TABLE = QUESTIONS.map(([number, act, full, empty, nobody]) => ({ number, act, expected: [nobody.source, empty.source, full.source] }));

/** What every script in the page begins with. */
const HANDS = `
  const sleep = (time) => new Promise((done) => setTimeout(done, time));
  const find = (selector) => document.querySelector(selector);
  const until = async (found) => { for (let at = 0; at < 1200; at += 1) { const got = found(); if (got) return got; await sleep(25); } throw new Error("waited in vain: " + found + "; the page says: " + document.body.textContent.slice(0, 200)); };
  const tap = async (selector) => (await until(() => find(selector))).click();
  const faults = [];
  addEventListener("error", (event) => faults.push(String(event.message)));
  await until(() => document.documentElement.dataset.ready);
`;

/** Every question with no lifter, a new one, the invented one; then one lift is written into the draft. */
const ASK_ALL = `${HANDS}
  const act = async ({ tap: where, pad, number }) => {
    if (where) return tap(where);
    // A box that was shut is taken away a moment later.
    await until(() => !find("dialog"));
    await tap('[data-pad="' + pad + '"]');
    for (const digit of number) await tap('dialog [data-key="' + digit + '"]');
    await tap('dialog [data-key="ok"]');
    await until(() => !find("dialog"));
  };
  const arrange = [
    async () => undefined,
    async () => {
      await tap('[data-place="lifters"]');
      await tap('[data-act="begin"]');
      (await until(() => find("#name"))).value = ${JSON.stringify(NEWCOMER)};
      await tap('[data-act="begin-now"]');
      await until(() => find("[data-lift]"));
    },
    async () => {
      await tap('[data-place="lifters"]');
      await tap('main [data-act="demo"]');
      await until(() => find('[data-lift="box squat"]'));
    },
  ];
  let asked = 0;
  for (const [state, words] of ["no lifter", "an empty log", "a full log"].entries()) {
    await arrange[state]();
    for (const { number, act: does, expected } of ${JSON.stringify(TABLE)}) {
      try {
        await tap('[data-place="today"]');
        await tap('[data-place="questions"]');
        await tap('[data-question="' + number + '"]');
        await until(() => find('main[data-view="q' + number + '"]'));
        const said = () => find("main [data-answer]")?.textContent.replaceAll("\u00a0", " ") ?? "";
        if (does && said() !== "Needs a lifter") await act(does);
        const wanted = new RegExp(expected[state]);
        for (let at = 0; at < 40 && !wanted.test(said()); at += 1) await sleep(25);
        if (!wanted.test(said())) faults.push(words + ", " + number + ": " + said());
        if (${IMPROPER}.test(find("main").textContent)) faults.push(words + ", " + number + ": no proper words");
        if ((does ? 3 : 2) > ${MOST_TAPS}) faults.push(words + ", " + number + ": too many taps");
        asked += 1;
      } catch (error) {
        faults.push(words + ", " + number + ": " + error);
        for (const box of document.querySelectorAll("dialog")) box.close();
      }
    }
  }
  await tap('[data-place="today"]');
  await tap('[data-act="all-good"]');
  await tap('dialog [data-value="yes"]');
  await tap('dialog [data-value="3"]');
  await tap('[data-act="save-good"]');
  await until(() => find(".done"));
  await sleep(300);
  return JSON.stringify({ asked, faults, kept: !find(".fault"), worker: navigator.serviceWorker ? (await Promise.race([navigator.serviceWorker.ready.then(() => "ready"), sleep(5000).then(() => "none")])) : "none" });
`;

/** After opening anew: what was written is there. */
const LOOK_AGAIN = `${HANDS}
  await until(() => find("[data-lift]") || find('main [data-act="demo"]'));
  return JSON.stringify({ asked: 0, faults: [...faults, ...(find(".done") ? [] : ["the sets written before are gone"])], kept: true });
`;

const short = (id, change = () => undefined) => logOf(id, (log) => {
  log.events.length = 60;
  change(log);
});
/** Keeping: a stop that comes in is shown at once, names that turn the text are refused, other encodings are read, and of
 * somebody who was erased nothing stays. */
const KEEP = `${HANDS}
  const put = async (content) => {
    await tap('[data-place="files"]');
    const input = await until(() => find("#open-file"));
    const all = new DataTransfer();
    all.items.add(new File([content], "file.json"));
    input.files = all.files;
    input.dispatchEvent(new Event("change"));
    await until(() => find("[data-incoming], [data-refused]"));
  };
  const calm = ${JSON.stringify(fileOf(short("Noor, invented")))};
  const stopped = ${JSON.stringify(fileOf(short("Noor, invented", (log) => (log.events.at(-2).kind = { symptom_report: { signs: ["chest_pain"] } }))))};
  await put(calm);
  await tap('[data-act="bring-in"]');
  await until(() => !find("#open-file"));
  if (find(".stop-band")) faults.push("a stop where there is none");
  await put(stopped);
  await tap('[data-act="replace"]');
  await tap("dialog [data-yes]");
  await until(() => find(".stop-band"));
  await put(calm.replace("Noor, invented", "Noor\u202e"));
  if (!find("[data-refused]")) faults.push("a name that turns the text around came in");
  const wide = "\ufeff" + calm.replace("Noor, invented", "Zo\u00eb, invented");
  await put(Uint16Array.from(wide, (letter) => letter.charCodeAt(0)));
  await tap('[data-act="bring-in"]');
  await until(() => find("header .who").textContent.startsWith("Zo\u00eb"));
  await tap('[data-place="lifters"]');
  await tap('[data-lifter="Noor, invented"]');
  await tap('[data-place="files"]');
  await tap('[data-act="erase"]');
  await tap("dialog [data-yes]");
  await until(() => document.body.textContent.includes("was erased"));
  await sleep(300);
  const base = await new Promise((done) => (indexedDB.open("bismar lifters").onsuccess = (event) => done(event.target.result)));
  for (const name of base.objectStoreNames) {
    const rows = await new Promise((done) => (base.transaction(name).objectStore(name).getAll().onsuccess = (event) => done(event.target.result)));
    if (JSON.stringify(rows).includes("Noor")) faults.push("somebody who was erased is still in " + name);
  }
  base.close();
  return JSON.stringify({ asked: 0, faults, kept: true });
`;

/** Says what came of one round. */
function report(name, where, text) {
  const { asked, faults, kept, worker } = JSON.parse(text);
  console.log(`${name}, ${where}: ${asked > 0 ? `${asked} answers of ${3 * QUESTIONS.length}, storage ${kept ? "keeps" : "refused and said so"}${worker ? `, worker ${worker}` : ""}` : "opened anew"}, faults: ${faults.length === 0 ? "none" : `\n  ${faults.join("\n  ")}`}`);
  if (faults.length > 0 || (asked > 0 && asked !== 3 * QUESTIONS.length)) process.exitCode = 1;
}

/** The rounds of every engine, which gives how to open an address and how to run a script in it. */
async function rounds(name, open, run) {
  const step = async (where, script) => report(name, where, await run(script).catch((error) => JSON.stringify({ asked: 0, faults: [String(error)], kept: false })));
  await open(FILE);
  await step("from a file", ASK_ALL);
  await open(FILE);
  await step("from a file, again", LOOK_AGAIN);
  await step("from a file, keeping", KEEP);
  const server = await serve(0);
  const address = `http://localhost:${server.address().port}/`;
  await open(address);
  await step("from localhost", ASK_ALL);
  await new Promise((resolve) => { server.close(resolve); server.closeAllConnections(); });
  await open(address).catch(() => undefined);
  await step("from localhost, its server ended", LOOK_AGAIN);
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
    this.stream.write(Buffer.concat([headOf(body.length), mask, body.map((byte, at) => byte ^ mask[at & 3])]));
    return new Promise((resolve, reject) => this.waiting.set(id, (message) => (message.type === "error" ? reject(new Error(message.message)) : resolve(message.result))));
  }
}

/** The head of one masked text frame: its length in one byte, in two, or in eight. */
function headOf(length) {
  if (length < 126) return Buffer.from([0x81, 0x80 | length]);
  const wide = length >= 65536;
  const head = Buffer.alloc(wide ? 10 : 4);
  head[0] = 0x81;
  head[1] = wide ? 0xff : 0xfe;
  if (wide) head.writeBigUInt64BE(BigInt(length), 2);
  else head.writeUInt16BE(length, 2);
  return head;
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
    const run = async (script) => {
      const found = await socket.send("script.callFunction", { functionDeclaration: `async () => {${script}}`, target: { context }, awaitPromise: true });
      if (found.type === "exception") throw new Error(found.exceptionDetails.text);
      return found.result.value;
    };
    await rounds("Firefox", (url) => socket.send("browsingContext.navigate", { context, url, wait: "complete" }), run);
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
    const run = (script) => ask("POST", `/session/${sessionId}/execute/async`, { script: `const done = arguments[0]; (async () => {${script}})().then(done, (error) => done(JSON.stringify({ asked: 0, faults: [String(error)], kept: false })));`, args: [] });
    await rounds("WebKit", (url) => ask("POST", `/session/${sessionId}/url`, { url }), run);
    await ask("DELETE", `/session/${sessionId}`);
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
