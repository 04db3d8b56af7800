// Judges pages by axe-core's rules of accessibility, whose names and degrees the
// complaints have (https://github.com/dequelabs/axe-core).
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";

const source = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const SERIOUS = ["serious", "critical"];

// serious lists what of a page is a serious fault or worse. The script comes in
// by the debugging protocol, past the page's own policy of what may run in it.
export async function serious(protocol) {
  const run = async (expression, awaitPromise = false) => {
    const { result, exceptionDetails } = await protocol.send("Runtime.evaluate", { expression, awaitPromise, returnByValue: true });
    if (exceptionDetails) throw new Error(exceptionDetails.exception?.description ?? exceptionDetails.text);
    return result.value;
  };
  if (!await run("Boolean(globalThis.axe)")) await run(source);
  const { judged, faults } = await run(`axe.run(document, { resultTypes: ["violations"] }).then((r) => ({ judged: r.passes.length,
    faults: r.violations.map((v) => [v.impact, v.id, v.nodes.map((n) => n.html).slice(0, 3).join(" ")]) }))`, true);
  if (judged < 5) throw new Error(`axe judged by ${judged} rules only`);
  return faults.filter(([impact]) => SERIOUS.includes(impact)).map((f) => f.join(": "));
}
