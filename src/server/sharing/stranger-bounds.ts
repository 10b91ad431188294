import type { Server } from 'node:http';
import type { Socket } from 'node:net';
import type { HttpBindings } from '@hono/node-server';
import type { Context, MiddlewareHandler } from 'hono';

export interface StrangerBounds {
  /** Requests of strangers that are answered at the same time, and how long each may take. */
  atOnce: number;
  longestMs: number;
}

export const usualBounds: StrangerBounds = { atOnce: 20, longestMs: 10_000 };

/** What nobody paired may ask is short: who takes longer over it, or asks too often at once, is cut off. */
export function boundStrangers({ atOnce, longestMs }: StrangerBounds): MiddlewareHandler {
  let underWay = 0;
  return async (c, next) => {
    if (underWay >= atOnce)
      return c.json({ message: 'Too many devices ask at once. Try again in a moment', findings: [] }, 429, {
        connection: 'close',
      });
    underWay += 1;
    const timer = setTimeout(() => socketOf(c)?.destroy(), longestMs);
    try {
      await next();
    } finally {
      clearTimeout(timer);
      underWay -= 1;
    }
    return undefined;
  };
}

/** Undefined for a request made in this process (tests). */
export function socketOf(c: Context): Socket | undefined {
  return (c.env as Partial<HttpBindings> | undefined)?.incoming?.socket;
}

/** A browser keeps six; what one device holds beyond this many is not let in. */
const mostConnectionsOfOne = 100;
/** A request's head comes at once; a body as large as a picture over a slow network in this time. */
const headMs = 10_000;
const wholeMs = 300_000;

/** Bounds for all that connect from elsewhere; this computer's own proxy may hold as many as it likes. */
export function boundConnections(server: Server): void {
  server.headersTimeout = headMs;
  server.requestTimeout = wholeMs;
  const held = new Map<string, number>();
  server.on('connection', (socket) => {
    const address = socket.remoteAddress ?? '';
    if (/^(::ffff:)?127\.|^::1$/.test(address)) return;
    const count = (held.get(address) ?? 0) + 1;
    if (count > mostConnectionsOfOne) return void socket.destroy();
    held.set(address, count);
    socket.once('close', () => {
      const left = (held.get(address) ?? 1) - 1;
      if (left > 0) held.set(address, left);
      else held.delete(address);
    });
  });
}
