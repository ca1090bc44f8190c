import { readFileSync } from "node:fs";
import { readdir } from "node:fs/promises";
import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { extname, join, relative, sep } from "node:path";

const kinds: Readonly<Record<string, string>> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".png": "image/png",
  ".xlsx": "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
};

export interface Serving {
  readonly address: string;
  readonly port: number;
  readonly close: () => void;
}

/**
 * Serves the files of one folder, and of the folders in it, to this machine only.
 *
 * @param ports - tried in turn; 0 stands for any free one
 * @throws Error when none of the ports is free
 */
export async function serveFolder(folder: string, ports: readonly number[]): Promise<Serving> {
  // Only files that were there at the start are given out, so no address can lead out of the folder.
  const files = new Set(await filesIn(folder));
  const server = createServer((request, response) => {
    const path = decoded((request.url ?? "/").split("?")[0] ?? "/");
    const name = path === "/" ? "index.html" : path.slice(1);
    if (!files.has(name) || (request.method !== "GET" && request.method !== "HEAD")) {
      response.writeHead(404).end();
      return;
    }
    response.writeHead(200, {
      "Content-Type": kinds[extname(name)] ?? "application/octet-stream",
      "Cache-Control": "no-cache",
      "X-Content-Type-Options": "nosniff",
    });
    response.end(request.method === "HEAD" ? undefined : readFileSync(join(folder, name)));
  });
  for (const port of ports) {
    if (!(await listens(server, port))) continue;
    const taken = (server.address() as AddressInfo).port;
    return { address: `http://localhost:${taken}`, port: taken, close: () => server.close() };
  }
  throw new Error(`The ports ${ports.join(", ")} are all taken; end a program that uses one of them and try again.`);
}

async function filesIn(folder: string): Promise<readonly string[]> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  return entries
    .filter((entry) => entry.isFile())
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)).split(sep).join("/"));
}

function decoded(path: string): string {
  try {
    return decodeURIComponent(path);
  } catch {
    return "";
  }
}

const listens = (server: Server, port: number): Promise<boolean> =>
  new Promise((resolve, reject) => {
    const failed = (error: NodeJS.ErrnoException): void => {
      if (error.code === "EADDRINUSE" || error.code === "EACCES") resolve(false);
      else reject(error);
    };
    server.once("error", failed);
    server.listen(port, "localhost", () => {
      server.off("error", failed);
      resolve(true);
    });
  });
