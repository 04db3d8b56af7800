// Whether the browser's own picture shows every sign that the app writes: the
// minus above all, which a toolkit's font may lack, and then draws as a box.
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { sleep } from "./chrome.mjs";
import { ROOT } from "./testpage.mjs";

const LINE = 14; // signs that a field holds beside each other, apart
const GAP = "    ";
const MISSING = "\ue000"; // of a range that no font fills

// written is every sign of the texts, in all languages, and of plain typing.
function written() {
  const signs = new Set(Array.from({ length: 94 }, (_, i) => String.fromCharCode(33 + i)));
  for (const folder of ["app/text", "app/view", "export/words", "export/shown"]) {
    for (const name of readdirSync(join(ROOT, folder))) {
      if (!name.endsWith(".go") || name.endsWith("_test.go")) continue;
      for (const sign of readFileSync(join(ROOT, folder, name), "utf8")) if (sign > "\x7e") signs.add(sign);
    }
  }
  signs.delete("\ufffd"); // looked for in texts, and written nowhere
  return [...signs];
}

// drawn gives the picture of each sign of a line as the canvas shows it in a
// field: the stretches of columns that hold ink, which columns without part.
async function drawn({ p, protocol }, field, line) {
  const box = await p.evaluate(([name, text]) => {
    const e = [...document.querySelectorAll("#reading > input")].find((x) => x.getAttribute("aria-label") === name);
    e.value = text;
    e.dispatchEvent(new Event("input"));
    const { x, y, width, height } = e.getBoundingClientRect();
    return { x, y, width, height };
  }, [field, line]);
  await sleep(350);
  const { data } = await protocol.send("Page.captureScreenshot", { format: "png", clip: { ...box, scale: 1 } });
  return p.evaluate(async (png) => {
    const bytes = Uint8Array.from(atob(png), (c) => c.charCodeAt(0));
    const image = await createImageBitmap(new Blob([bytes], { type: "image/png" }));
    const { width, height } = image, edge = Math.round(height / 6);
    const pen = new OffscreenCanvas(width, height).getContext("2d");
    pen.drawImage(image, 0, 0);
    const pixels = pen.getImageData(0, 0, width, height).data;
    const at = (x, y, c) => pixels[4 * (y * width + x) + c];
    const ground = [0, 1, 2].map((c) => at(edge, edge, c));
    const column = (x) => {
      let ink = "";
      for (let y = edge; y < height - edge; y++) ink += ground.reduce((most, g, c) => Math.max(most, Math.abs(at(x, y, c) - g)), 0) > 60 ? "#" : ".";
      return ink;
    };
    const signs = [];
    let apart = Infinity;
    for (let x = edge; x < width - edge; x++) {
      const ink = column(x);
      if (!ink.includes("#")) { apart++; continue; }
      if (apart > height / 6) signs.push([]); else while (apart-- > 0) signs.at(-1).push(ink.replace(/#/g, "."));
      signs.at(-1).push(ink);
      apart = 0;
    }
    return signs.map((s) => s.join("|"));
  }, data);
}

// signs lists what is wrong with the signs that a field of the app shows.
export async function signs(phone, field) {
  const faults = [], all = written();
  const box = await drawn(phone, field, MISSING + GAP + MISSING);
  for (let i = 0; i < all.length; i += LINE) {
    const line = all.slice(i, i + LINE), seen = await drawn(phone, field, line.join(GAP));
    if (seen.length !== line.length) faults.push(`${seen.length} signs are drawn for ${line.join(" ")}`);
    else line.forEach((sign, n) => { if (box.includes(seen[n])) faults.push(`${sign} is drawn as a missing sign`); });
  }
  const [minus, , hyphen] = await drawn(phone, field, ["−", "+", "-"].join(GAP));
  if (!minus || minus === hyphen || minus.length <= hyphen.length) faults.push("the minus is no longer than the hyphen");
  await drawn(phone, field, "");
  return { count: all.length, faults };
}
