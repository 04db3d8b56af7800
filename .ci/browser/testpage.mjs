// Compiles Go tests for the browser and serves them in a page that has the
// program's scripts.
import { execFileSync } from "node:child_process";
import { createServer } from "node:http";
import { readFileSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import { fileURLToPath } from "node:url";

export const ROOT = resolve(dirname(fileURLToPath(import.meta.url)), "../..");
const SCRIPTS = ["sensing.js", "keeping.js", "keeping-disk.js", "helping.js", "listening.js"];
const HTML = `<!doctype html><meta charset=utf-8><link rel=icon href="data:,"><script src=wasm_exec.js></script>
${SCRIPTS.map((s) => `<script src=${s}></script>`).join("")}
<script>onload = async () => {
  const go = new Go();
  go.argv = ["test", "-test.v", ...JSON.parse(decodeURIComponent(location.hash.slice(1)) || "[]")];
  go.exit = (code) => { window.code = code; };
  const { instance } = await WebAssembly.instantiateStreaming(fetch("test.wasm"), go.importObject);
  await go.run(instance);
  if (window.code === undefined) window.code = 0;
}</script>`;

export function compile(pkg, wasm) {
  execFileSync("go", ["test", "-c", "-o", wasm, pkg],
    { cwd: ROOT, stdio: "inherit", env: { ...process.env, GOOS: "js", GOARCH: "wasm" } });
}

// address is where the page runs the tests with these flags.
export const address = (origin, flags) => `${origin}/#${encodeURIComponent(JSON.stringify(flags))}`;

export async function serve(wasm) {
  const goroot = execFileSync("go", ["env", "GOROOT"], { encoding: "utf8" }).trim();
  const files = { "/": ["text/html", Buffer.from(HTML)], "/test.wasm": ["application/wasm", readFileSync(wasm)],
    "/wasm_exec.js": ["text/javascript", readFileSync(join(goroot, "lib/wasm/wasm_exec.js"))] };
  for (const s of [...SCRIPTS, "listening-work.js", "keeping-work.js"]) files[`/${s}`] = ["text/javascript", readFileSync(join(ROOT, "sensors/device/web", s))];
  const server = createServer((request, answer) => {
    const file = files[request.url];
    if (!file) { answer.writeHead(404); return answer.end(); }
    answer.writeHead(200, { "content-type": file[0] });
    answer.end(file[1]);
  });
  await new Promise((done) => server.listen(0, "127.0.0.1", done));
  return { origin: `http://127.0.0.1:${server.address().port}`, close: () => server.close() };
}
