// What a screen reader gets of each screen of the app, in both languages, in
// the app's own page, judged by axe-core:
//   node readings.mjs
import { execFileSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { createServer } from "node:http";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { serious } from "./axe.mjs";
import { launch, page, profile } from "./chrome.mjs";
import { ROOT } from "./testpage.mjs";

const folder = mkdtempSync(join(tmpdir(), "readings-"));
execFileSync("go", ["test", "./app/screens", "-run", "TestReading$", "-readings", folder], { cwd: ROOT, stdio: "inherit" });

// The page as it is, but that nothing starts the program in it.
const files = { "/": ["text/html", "app/phone/web/index.html"], "/page.css": ["text/css", "app/phone/web/page.css"],
  "/reading.js": ["text/javascript", "sensors/device/web/reading.js"] };
const server = createServer((request, answer) => {
  const file = files[request.url];
  answer.writeHead(file ? 200 : 404, { "content-type": file?.[0] ?? "text/plain" });
  answer.end(file && readFileSync(join(ROOT, file[1])));
});
await new Promise((done) => server.listen(0, "127.0.0.1", done));
const origin = `http://127.0.0.1:${server.address().port}`;

const kept = profile();
const chrome = await launch(kept.folder);
const { page: p, protocol } = await page(chrome, origin);
await p.goto(origin);
const faults = new Map();
let screens = 0, fields = 0;
for (const name of readdirSync(folder)) {
  const told = await p.evaluate(([lang, json]) => {
    document.documentElement.lang = lang;
    document.getElementById("before").hidden = true;
    globalThis.stillairReading.show(json);
    return [document.querySelectorAll("#reading > *").length, document.querySelectorAll("#reading > input, #reading > textarea").length];
  }, [name.slice(0, 2), readFileSync(join(folder, name), "utf8")]);
  if (told[0] === 0) throw new Error(`${name}: nothing is said`);
  for (const f of await serious(protocol)) faults.set(f, [...(faults.get(f) ?? []), name]);
  screens++;
  fields += told[1];
}
// A name that is missing must be found, or nothing was looked at.
await p.evaluate(() => document.querySelector("#reading").append(document.createElement("button")));
const caught = (await serious(protocol)).some((f) => f.includes("button-name"));
await chrome.kill();
kept.remove();
server.close();
rmSync(folder, { recursive: true });
for (const [fault, names] of faults) console.log(`FAIL ${fault}\n     in ${names.length} screens, such as ${names[0]}`);
const enough = screens >= 100 && fields >= 20;
console.log(`${faults.size || !caught || !enough ? "FAIL" : "ok  "} ${screens} screens with ${fields} fields read out, ${faults.size} serious faults${caught ? "" : ", and a button without a name was not one"}`);
process.exit(faults.size || !caught || !enough ? 1 : 0);
