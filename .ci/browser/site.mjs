// Serves a page that app/desk wrote, each file in its smallest coding, and can
// be switched off and on again at the same address.
import { createServer } from "node:http";
import { existsSync, readFileSync } from "node:fs";
import { extname, join } from "node:path";

const MEDIA = { ".html": "text/html; charset=utf-8", ".css": "text/css", ".js": "text/javascript", ".wasm": "application/wasm",
  ".webmanifest": "application/manifest+json", ".png": "image/png" };

export async function site(folder) {
  const answer = (request, response) => {
    const name = request.url === "/" ? "index.html" : request.url.slice(1).split("?")[0];
    const file = join(folder, name);
    if (name.includes("..") || !existsSync(file)) { response.writeHead(404); return response.end(); }
    const head = { "content-type": MEDIA[extname(name)], "cache-control": "no-cache" };
    const packed = existsSync(`${file}.br`);
    if (packed) head["content-encoding"] = "br";
    response.writeHead(200, head);
    response.end(readFileSync(packed ? `${file}.br` : file));
  };
  const listen = (port) => new Promise((done) => {
    const s = createServer(answer).listen(port, "127.0.0.1", () => done(s));
  });
  let server = await listen(0);
  const port = server.address().port;
  return {
    origin: `http://127.0.0.1:${port}`,
    async off() { server.closeAllConnections(); await new Promise((done) => server.close(done)); },
    async on() { server = await listen(port); },
  };
}
