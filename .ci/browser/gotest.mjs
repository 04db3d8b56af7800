// Runs the Go tests that need a real browser inside one:
//   node gotest.mjs PACKAGE... [-- test flags]
// Each package is compiled for the browser and run in a page that has the
// program's scripts and a phone lying still for its sensors.
import { execFileSync } from "node:child_process";
import { createServer } from "node:http";
import { readFileSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { launch, page, profile } from "./chrome.mjs";
import { enable, rest } from "./sensors.mjs";

const ROOT = resolve(dirname(fileURLToPath(import.meta.url)), "../..");
const split = process.argv.indexOf("--");
const packages = process.argv.slice(2, split < 0 ? undefined : split);
const flags = split < 0 ? [] : process.argv.slice(split + 1);

const goroot = execFileSync("go", ["env", "GOROOT"], { encoding: "utf8" }).trim();
const scripts = ["sensing.js", "keeping.js", "helping.js"];
const html = `<!doctype html><meta charset=utf-8><script src=wasm_exec.js></script>
${scripts.map((s) => `<script src=${s}></script>`).join("")}
<script>onload = async () => {
  const go = new Go();
  go.argv = ["test", "-test.v", ...${JSON.stringify(flags)}];
  go.exit = (code) => { window.code = code; };
  const { instance } = await WebAssembly.instantiateStreaming(fetch("test.wasm"), go.importObject);
  await go.run(instance);
  if (window.code === undefined) window.code = 0;
}</script>`;

function server(wasm) {
  const files = { "/": ["text/html", Buffer.from(html)], "/test.wasm": ["application/wasm", readFileSync(wasm)],
    "/wasm_exec.js": ["text/javascript", readFileSync(join(goroot, "lib/wasm/wasm_exec.js"))] };
  for (const s of scripts) files[`/${s}`] = ["text/javascript", readFileSync(join(ROOT, "sensors/device/web", s))];
  const s = createServer((request, answer) => {
    const file = files[request.url];
    if (!file) { answer.writeHead(404); return answer.end(); }
    answer.writeHead(200, { "content-type": file[0] });
    answer.end(file[1]);
  });
  return new Promise((done) => s.listen(0, "127.0.0.1", () => done(s)));
}

async function run(pkg, folder) {
  const wasm = join(folder, "test.wasm");
  execFileSync("go", ["test", "-c", "-o", wasm, pkg],
    { cwd: ROOT, stdio: "inherit", env: { ...process.env, GOOS: "js", GOARCH: "wasm" } });
  const s = await server(wasm);
  const origin = `http://127.0.0.1:${s.address().port}`;
  const kept = profile();
  const chrome = await launch(kept.folder);
  try {
    const { page: p, protocol } = await page(chrome, origin);
    p.on("console", (m) => console.log(m.text()));
    p.on("pageerror", (e) => console.log(`page: ${e.message}`));
    await enable(protocol);
    const phone = rest(protocol);
    await p.goto(origin);
    await p.waitForFunction("window.code !== undefined", undefined, { timeout: 300000 });
    await phone.stop();
    return await p.evaluate("window.code");
  } finally {
    await chrome.kill();
    kept.remove();
    s.close();
  }
}

const folder = mkdtempSync(join(tmpdir(), "gotest-"));
let failed = false;
for (const pkg of packages) {
  const code = await run(pkg, folder);
  console.log(`${code === 0 ? "ok" : "FAIL"}  ${pkg}`);
  failed ||= code !== 0;
}
rmSync(folder, { recursive: true });
process.exit(failed ? 1 : 0);
