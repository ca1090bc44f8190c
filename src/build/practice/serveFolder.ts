import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import sirv from "sirv";

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
  const give = sirv(folder, {
    // Looks at the folder at each request: a file may be built again, or vanish, while the page is open.
    dev: true,
    etag: true,
    extensions: ["html"],
    setHeaders: (response) => response.setHeader("X-Content-Type-Options", "nosniff"),
  });
  const server = createServer((request, response) => {
    if (request.method === "GET" || request.method === "HEAD") give(request, response);
    else response.writeHead(405, { Allow: "GET, HEAD" }).end();
  });
  for (const port of ports) {
    if (!(await listens(server, port))) continue;
    const taken = (server.address() as AddressInfo).port;
    return { address: `http://localhost:${taken}`, port: taken, close: () => server.close() };
  }
  throw new Error(`The ports ${ports.join(", ")} are all taken; end a program that uses one of them and try again.`);
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
