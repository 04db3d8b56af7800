// Reads the tables of a plain log, whose lines end as RFC 4180 says, in CR LF.
import { readFileSync } from "node:fs";

export function table(path) {
  const [head, ...lines] = readFileSync(path, "utf8").trim().split(/\r?\n/);
  const names = head.split(",");
  return lines.map((line) => {
    const cells = line.split(",");
    return Object.fromEntries(names.map((n, i) => [n, cells[i] === "" ? NaN : Number(cells[i])]));
  });
}
