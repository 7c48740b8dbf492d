/** Starts an app on loopback, at the port asked for or, if that is taken, at the next free one. */
import type { Server } from "node:http";
import { createAdaptorServer } from "@hono/node-server";
import type { Hono } from "hono";

export type Listening = { readonly url: string; readonly port: number; readonly close: () => Promise<void> };

const HOST = "127.0.0.1";
const PORTS_TRIED = 50;

export async function listen(app: Hono, firstPort: number): Promise<Listening> {
  for (let port = firstPort; port < firstPort + PORTS_TRIED && port < 65_536; port++) {
    const server = await tryPort(app, port);
    if (server !== null) return { url: `http://${HOST}:${port}/`, port, close: () => close(server) };
  }
  throw new Error(`No free port between ${firstPort} and ${firstPort + PORTS_TRIED - 1}.`);
}

/** null where the port is taken or not allowed */
function tryPort(app: Hono, port: number): Promise<Server | null> {
  return new Promise((resolve, reject) => {
    const server = createAdaptorServer({ fetch: app.fetch }) as Server;
    server.once("error", (error: NodeJS.ErrnoException) => {
      if (error.code === "EADDRINUSE" || error.code === "EACCES") resolve(null);
      else reject(error);
    });
    server.listen(port, HOST, () => resolve(server));
  });
}

function close(server: Server): Promise<void> {
  return new Promise((resolve, reject) => {
    server.close((error) => (error === undefined ? resolve() : reject(error)));
    server.closeAllConnections();
  });
}
