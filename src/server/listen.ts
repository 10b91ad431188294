import type { Server } from 'node:http';
import { boundConnections } from './sharing/stranger-bounds.ts';

/** The port used unless another is wanted; the next free one where it is taken. */
export const firstPort = 4870;
/** The same for https. */
export const firstTlsPort = 4970;
const portsTried = 50;

/** The wanted port is in use. */
export class PortTaken extends Error {}

/** Starts listening and answers the port. @throws PortTaken */
export async function listen(
  server: Server,
  host: string,
  wanted: number | undefined,
  first = firstPort,
): Promise<number> {
  boundConnections(server);
  const ports =
    wanted === undefined ? Array.from({ length: portsTried }, (_, step) => first + step) : [wanted];
  for (const port of ports) {
    const listening = await tryPort(server, host, port);
    if (listening !== undefined) return listening;
  }
  const taken =
    wanted === undefined
      ? `The ports ${first} to ${first + portsTried - 1} of ${host} are`
      : `Port ${wanted} of ${host} is`;
  throw new PortTaken(`${taken} in use by another program. Choose another with --port`);
}

/** The port listened on (0 asks the system for any); undefined when it is taken. */
function tryPort(server: Server, host: string, port: number): Promise<number | undefined> {
  return new Promise((resolve, reject) => {
    const failed = (error: NodeJS.ErrnoException) => {
      if (error.code === 'EADDRINUSE') resolve(undefined);
      else if (error.code === 'EACCES')
        reject(new PortTaken(`Port ${port} may not be used by this account. Choose one above 1023`));
      else reject(error);
    };
    server.once('error', failed);
    server.listen(port, host, () => {
      server.off('error', failed);
      const at = server.address();
      resolve(typeof at === 'object' && at ? at.port : port);
    });
  });
}

/** How long answers on their way may take when the server ends. */
const graceMs = 300;

/** Stops listening; a stream or a connection kept open does not keep the server. */
export function closeServer(server: Server): Promise<void> {
  return new Promise((resolve) => {
    // The answer also comes, as an error, where it never listened.
    server.close(() => resolve());
    server.closeIdleConnections();
    setTimeout(() => server.closeAllConnections(), graceMs).unref();
  });
}
