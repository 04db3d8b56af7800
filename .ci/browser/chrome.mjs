// A Chromium of our own making, driven over its debugging protocol: it can be
// killed like a phone that dies, and started again on the same profile.
import { spawn } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { chromium } from "playwright-core";

const PROGRAM = process.env.CHROMIUM || "/usr/bin/chromium";
export const PHONE = { width: 390, height: 844, deviceScaleFactor: 2, mobile: true };

export const sleep = (ms) => new Promise((done) => setTimeout(done, ms));

export function profile() {
  const folder = mkdtempSync(join(tmpdir(), "profile-"));
  return { folder, remove: () => rmSync(folder, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 }) };
}

// endpoint waits for the line with the address on which the browser listens.
function endpoint(child) {
  return new Promise((resolve, reject) => {
    let said = "";
    const late = setTimeout(() => reject(new Error(`chromium does not answer:\n${said}`)), 60000);
    child.stderr.on("data", (d) => {
      said += d;
      const found = /DevTools listening on (ws:\S+)/.exec(said);
      if (found) { clearTimeout(late); resolve(found[1]); }
    });
    child.on("exit", (code) => { clearTimeout(late); reject(new Error(`chromium ended with ${code}:\n${said}`)); });
  });
}

// launch starts a browser. kill ends it and its children at once, as a crash
// or an empty battery does; close lets it finish.
export async function launch(folder, extra = []) {
  const child = spawn(PROGRAM, ["--headless=new", "--no-sandbox", "--no-first-run", "--disable-background-networking",
    "--disable-renderer-backgrounding", "--disable-backgrounding-occluded-windows", "--disable-background-timer-throttling",
    "--use-angle=swiftshader", "--enable-unsafe-swiftshader", "--ignore-certificate-errors",
    "--remote-debugging-port=0", `--user-data-dir=${folder}`, ...extra, "about:blank"],
  { detached: true, stdio: ["ignore", "ignore", "pipe"] });
  const browser = await chromium.connectOverCDP(await endpoint(child));
  const gone = new Promise((done) => child.on("exit", done));
  // Nothing stays behind of a test that failed.
  const end = () => { try { process.kill(-child.pid, "SIGKILL"); } catch { /* it is gone */ } };
  process.on("exit", end);
  gone.then(() => process.off("exit", end));
  return {
    browser,
    pid: child.pid,
    async kill() {
      process.kill(-child.pid, "SIGKILL");
      await gone;
      await browser.close().catch(() => {});
    },
    async close() {
      const session = await browser.newBrowserCDPSession();
      await session.send("Browser.close").catch(() => {});
      await gone;
    },
  };
}

// page opens a page that believes it is on a phone, with leave for the sensors
// at origin, and a session to its debugging protocol.
export async function page({ browser }, origin, screen = PHONE) {
  const context = browser.contexts()[0];
  await context.grantPermissions(["geolocation", "accelerometer", "gyroscope", "magnetometer", "screen-wake-lock"], { origin });
  const p = await context.newPage();
  await p.bringToFront();
  const protocol = await context.newCDPSession(p);
  await protocol.send("Emulation.setDeviceMetricsOverride", screen);
  await protocol.send("Emulation.setTouchEmulationEnabled", { enabled: true, maxTouchPoints: 2 });
  return { page: p, protocol };
}
