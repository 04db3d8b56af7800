// Runs the Go tests that need a real browser inside one:
//   node gotest.mjs PACKAGE... [-- test flags]
// A phone lying still is played into the sensors meanwhile.
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { launch, page, profile } from "./chrome.mjs";
import { enable, rest } from "./sensors.mjs";
import { address, compile, serve } from "./testpage.mjs";

const split = process.argv.indexOf("--");
const packages = process.argv.slice(2, split < 0 ? undefined : split);
const flags = split < 0 ? [] : process.argv.slice(split + 1);

async function run(pkg, folder) {
  const wasm = join(folder, "test.wasm");
  compile(pkg, wasm);
  const server = await serve(wasm);
  const kept = profile();
  const chrome = await launch(kept.folder);
  try {
    const { page: p, protocol } = await page(chrome, server.origin);
    p.on("console", (m) => console.log(m.text()));
    p.on("pageerror", (e) => console.log(`page: ${e.message}`));
    await enable(protocol);
    const phone = rest(protocol);
    await p.goto(address(server.origin, flags));
    await p.waitForFunction("window.code !== undefined", undefined, { timeout: 300000 });
    const { refused } = await phone.stop();
    if (refused.length > 0) console.log(`the browser refused what was played: ${refused[0]}`);
    return refused.length || await p.evaluate("window.code");
  } finally {
    await chrome.kill();
    kept.remove();
    server.close();
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
