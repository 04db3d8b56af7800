// Whether anything of a page is cut off: every piece of text is asked for the
// boxes it takes, on a phone of 360 and 390, on a screen of 1200 and on paper of
// A4, where every word that the page shows must also be in the printed file.
//
//   node geometry.mjs PAGE.html...
import { execFileSync } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { launch, profile } from "./chrome.mjs";

const A4 = { width: 680, height: 1009 }; // CSS pixels between margins of 15 mm
const SCREENS = [[360, "screen"], [390, "screen"], [1200, "screen"], [A4.width, "print"]];

// clipped runs on the page and lists what does not fit.
function clipped() {
  const out = [];
  const width = document.documentElement.clientWidth;
  const tell = (what, element, box) => out.push(`${what}: “${(element.textContent || element.tagName).trim().slice(0, 60)}” from ${box.left.toFixed(0)} to ${box.right.toFixed(0)} of ${width}`);
  if (document.documentElement.scrollWidth > width) out.push(`the page is ${document.documentElement.scrollWidth} wide, the screen ${width}`);
  for (const e of document.body.querySelectorAll("*")) {
    const style = getComputedStyle(e);
    if (style.overflowX !== "visible" && e.clientWidth > 0 && e.scrollWidth > e.clientWidth + 1) tell("scrolls sideways or is cut", e, e.getBoundingClientRect());
  }
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  const range = document.createRange();
  for (let n = walker.nextNode(); n; n = walker.nextNode()) {
    const parent = n.parentElement;
    if (!n.data.trim() || ["SCRIPT", "STYLE", "TITLE", "title"].includes(parent.tagName)) continue;
    range.selectNodeContents(n);
    let block = parent;
    while (getComputedStyle(block).display.startsWith("inline") && block.parentElement && !block.ownerSVGElement) block = block.parentElement;
    const svg = parent.closest("svg");
    const home = svg ? svg.getBoundingClientRect() : block.getBoundingClientRect();
    for (const box of range.getClientRects()) {
      if (box.width === 0 || box.height === 0) continue;
      if (box.left < -0.5 || box.right > width + 0.5) tell("beyond the edge", parent, box);
      else if (box.left < home.left - 2 || box.right > home.right + 2) tell("beyond its box", parent, box);
    }
  }
  return out;
}

// words are those that the page shows, as they are on paper.
function words() {
  const out = new Set();
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  const range = document.createRange();
  for (let n = walker.nextNode(); n; n = walker.nextNode()) {
    if (["SCRIPT", "STYLE", "TITLE", "title"].includes(n.parentElement.tagName)) continue;
    range.selectNodeContents(n);
    if ([...range.getClientRects()].some((b) => b.width > 0)) for (const w of n.data.split(/\s+/)) if (w) out.add(w);
  }
  return [...out];
}

async function size(protocol, width, media) {
  await protocol.send("Emulation.setDeviceMetricsOverride", { width, height: 900, deviceScaleFactor: 1, mobile: media === "screen" && width < 700 });
  await protocol.send("Emulation.setScrollbarsHidden", { hidden: true });
  await protocol.send("Emulation.setEmulatedMedia", { media });
}

// examine lists what is wrong with a page.
async function examine(browser, address, pictures) {
  const p = await browser.contexts()[0].newPage();
  const protocol = await browser.contexts()[0].newCDPSession(p);
  const wrong = [];
  for (const [width, media] of SCREENS) {
    await size(protocol, width, media);
    await p.goto(address);
    for (const w of await p.evaluate(clipped)) wrong.push(`${width} ${media}: ${w}`);
    if (!pictures) continue;
    const height = await p.evaluate(() => document.documentElement.scrollHeight);
    for (let y = 0, n = 1; y < height; y += 4000, n++) {
      await p.screenshot({ path: `${pictures}-${width}-${n}.png`, fullPage: true, clip: { x: 0, y, width, height: Math.min(4000, height - y) } });
    }
  }
  const shown = await p.evaluate(words);
  const { data } = await protocol.send("Page.printToPDF", { preferCSSPageSize: true, printBackground: true });
  const file = join(tmpdir(), `geometry-${process.pid}.pdf`);
  writeFileSync(file, Buffer.from(data, "base64"));
  // A letter that a font joins, or that stands for itself in another form, is compared in its plain form.
  const plain = (s) => s.normalize("NFKC").replace(/[\s\u00ad]+/g, "");
  const printed = plain(execFileSync("pdftotext", ["-raw", file, "-"], { maxBuffer: 1 << 28 }).toString());
  for (const w of shown) if (!printed.includes(plain(w))) wrong.push(`A4: “${w}” is not in what is printed`);
  await p.close();
  return { wrong, words: shown.length };
}

const folder = profile();
const chrome = await launch(folder.folder);
let failed = 0;
try {
  // What must be found: a word that does not break, a table that is cut, a word that paper loses.
  const bad = join(folder.folder, "bad.html");
  writeFileSync(bad, `<!doctype html><meta name="viewport" content="width=device-width"><style>.cut{width:5rem;overflow:hidden;white-space:nowrap}@media print{.gone{height:0;overflow:hidden}}</style>
    <p>${"unbreakable".repeat(20)}</p><p class="cut">some words that are cut off</p><p class="gone">lost</p><svg width="50" height="20"><text x="40" y="15">beyond</text></svg>`);
  const found = (await examine(chrome.browser, pathToFileURL(bad).href)).wrong.join("\n");
  for (const must of ["the page is", "scrolls sideways or is cut", "beyond its box", "“lost” is not in what is printed"]) {
    if (!found.includes(must)) { console.error(`the check is blind: it does not find “${must}” in\n${found}`); failed++; }
  }
  for (const file of process.argv.slice(2)) {
    readFileSync(file);
    const { wrong, words } = await examine(chrome.browser, pathToFileURL(file).href, process.env.PICTURES && join(process.env.PICTURES, file.split("/").pop()));
    console.log(`${file.split("/").pop()}: ${words} different words, ${wrong.length} do not fit`);
    for (const w of wrong.slice(0, 40)) console.error("  " + w);
    failed += wrong.length;
  }
} finally {
  await chrome.close();
  folder.remove();
}
process.exit(failed ? 1 : 0);
