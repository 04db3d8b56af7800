// Runs the Go tests that need a real browser inside one:
//   node gotest.mjs PACKAGE... [-- test flags]
// A phone lying still is played into the sensors meanwhile, and two tones into
// the microphone.
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { launch, page, profile } from "./chrome.mjs";
import { enable, rest } from "./sensors.mjs";
import { address, compile, serve } from "./testpage.mjs";

const split = process.argv.indexOf("--");
const packages = process.argv.slice(2, split < 0 ? undefined : split);
const flags = split < 0 ? [] : process.argv.slice(split + 1);

// tones is a WAV file of 10 s with 200 Hz and 2900 Hz, each a quarter of full
// scale (RIFF, 16 bits, one channel). The browser plays it again and again.
function tones(file, rate = 48000, seconds = 10) {
  const n = rate * seconds, b = Buffer.alloc(44 + 2 * n);
  b.write("RIFF", 0); b.writeUInt32LE(36 + 2 * n, 4); b.write("WAVEfmt ", 8); b.writeUInt32LE(16, 16);
  b.writeUInt16LE(1, 20); b.writeUInt16LE(1, 22); b.writeUInt32LE(rate, 24); b.writeUInt32LE(2 * rate, 28);
  b.writeUInt16LE(2, 32); b.writeUInt16LE(16, 34); b.write("data", 36); b.writeUInt32LE(2 * n, 40);
  for (let i = 0; i < n; i++) {
    const turn = (2 * Math.PI * i) / rate;
    b.writeInt16LE(Math.round(8192 * (Math.sin(200 * turn) + Math.sin(2900 * turn))), 44 + 2 * i);
  }
  writeFileSync(file, b);
  return file;
}

// please does for a test what only the browser's user can.
function please(protocol, origin, what, bytes) {
  if (what === "clear") return protocol.send("Storage.clearDataForOrigin", { origin, storageTypes: "all" });
  return protocol.send("Storage.overrideQuotaForOrigin", bytes ? { origin, quotaSize: Number(bytes) } : { origin });
}

async function run(pkg, folder) {
  const wasm = join(folder, "test.wasm");
  compile(pkg, wasm);
  const server = await serve(wasm);
  const kept = profile();
  const chrome = await launch(kept.folder, ["--use-fake-ui-for-media-stream", "--use-fake-device-for-media-stream",
    `--use-file-for-fake-audio-capture=${tones(join(folder, "tones.wav"))}`]);
  try {
    const { page: p, protocol } = await page(chrome, server.origin);
    p.on("console", (m) => {
      if (m.text().startsWith("PLEASE ")) please(protocol, server.origin, ...m.text().split(" ").slice(1));
      else console.log(m.text());
    });
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
