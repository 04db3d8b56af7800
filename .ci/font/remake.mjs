// Makes the app's two fonts again: the signs that the app draws, out of Source
// Sans 3 (SIL Open Font License 1.1). "Source" is a reserved name, so what comes
// out is called Stllar Sans: the new name takes the room of the old.
//
//   npm install && node remake.mjs
import { readFile, writeFile } from "node:fs/promises";
import subset from "subset-font";

const from = (first, last) => Array.from({ length: last - first + 1 }, (_, i) => String.fromCodePoint(first + i)).join("");
const SIGNS = from(0x20, 0x7e) + from(0xa0, 0x17f) // Latin, also for the names that riders give
  + from(0x391, 0x3a1) + from(0x3a3, 0x3a9) + from(0x3b1, 0x3c9) // Greek
  + "‐‑–—‘’‚“”„†•…‰‹›\u2007\u2009\u202f" + "⁰⁴⁵⁶⁷⁸⁹⁺⁻₀₁₂₃₄₅₆₇₈₉" + "€Ωℓ←↑→↓∂∆∏∑−√∞∫≈≠≤≥■□▲△▶▼▽◀○●✓�";
const here = (path) => new URL(path, import.meta.url);

for (const [weight, style] of [["400Regular", "regular"], ["600SemiBold", "bold"]]) {
  const whole = await readFile(here(`node_modules/@expo-google-fonts/source-sans-3/${weight}/SourceSans3_${weight}.ttf`));
  // Of the name table the notices of copyright (0) and licence (13, 14) stay;
  // the names (1 to 6, 16, 17) give way to the font's own.
  const part = await subset(whole, SIGNS, { targetFormat: "sfnt", noLayoutClosure: true, preserveNameIds: [0, 13, 14] });
  await writeFile(here(`../../app/screens/kit/font/${style}.ttf`), renamed(Buffer.from(part), style));
}

// renamed gives the font its own name: the reserved one is replaced in every
// record but the notices, by a name of as many letters.
function renamed(font, style) {
  const tables = font.readUInt16BE(4);
  for (let i = 0; i < tables; i++) {
    const entry = 12 + 16 * i;
    if (font.toString("latin1", entry, entry + 4) !== "name") continue;
    const at = font.readUInt32BE(entry + 8), length = font.readUInt32BE(entry + 12);
    rename(font.subarray(at, at + length));
    font.writeUInt32BE(sum(font.subarray(at, at + length)), entry + 4);
  }
  return font;
}

function rename(table) {
  const strings = table.readUInt16BE(4);
  for (let i = 0; i < table.readUInt16BE(2); i++) {
    const record = 6 + 12 * i, id = table.readUInt16BE(record + 6);
    if (id === 0 || id === 7 || id === 13 || id === 14) continue;
    const at = strings + table.readUInt16BE(record + 10), length = table.readUInt16BE(record + 8);
    const words = table.subarray(at, at + length), wide = table.readUInt16BE(record) === 3;
    for (const [old, own] of [["Source", "Stllar"]]) {
      const bytes = (s) => wide ? Buffer.from([...s].flatMap((c) => [0, c.charCodeAt(0)])) : Buffer.from(s, "latin1");
      for (let j = words.indexOf(bytes(old)); j >= 0; j = words.indexOf(bytes(old))) bytes(own).copy(words, j);
    }
  }
}

// sum is the checksum of a table, OpenType 1.9.1, "Calculating checksums".
function sum(table) {
  const padded = Buffer.concat([table, Buffer.alloc((4 - table.length % 4) % 4)]);
  let s = 0;
  for (let i = 0; i < padded.length; i += 4) s = (s + padded.readUInt32BE(i)) >>> 0;
  return s;
}
