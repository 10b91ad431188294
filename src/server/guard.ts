import type { MiddlewareHandler } from 'hono';
import { secureHeaders as honoSecureHeaders } from 'hono/secure-headers';

/**
 * No script, style, font or connection from anywhere but this server, and no inline script. Styles may be
 * inline: the component library sets a few, and they cannot run code.
 */
export function secureHeaders(): MiddlewareHandler {
  return honoSecureHeaders({
    contentSecurityPolicy: {
      defaultSrc: ["'none'"],
      scriptSrc: ["'self'"],
      workerSrc: ["'self'"],
      styleSrc: ["'self'", "'unsafe-inline'"],
      imgSrc: ["'self'", 'blob:', 'data:'],
      fontSrc: ["'self'"],
      connectSrc: ["'self'"],
      manifestSrc: ["'self'"],
      frameSrc: ['blob:'],
      baseUri: ["'none'"],
      formAction: ["'none'"],
      frameAncestors: ["'none'"],
    },
    referrerPolicy: 'no-referrer',
    xFrameOptions: 'DENY',
    strictTransportSecurity: false,
    permissionsPolicy: { geolocation: [], microphone: [], payment: [], usb: [] },
  });
}

/**
 * Answers only requests that name this server (a page elsewhere whose name was pointed here has another Host)
 * and, from browsers, only its own page's (Origin, Sec-Fetch-Site). What a form can send is not taken.
 */
export function guardRequests(allowedHost: (host: string) => boolean): MiddlewareHandler {
  return async (c, next) => {
    const url = new URL(c.req.url);
    const host = c.req.header('host') ?? url.host;
    if (!allowedHost(host)) return c.json(refuse(`This server is not called ${host.slice(0, 100)}`), 421);
    const origin = c.req.header('origin');
    if (origin !== undefined && origin !== `${url.protocol}//${host}`)
      return c.json(refuse('Requests of other pages are not taken'), 403);
    // No name here holds a NUL, and PostgreSQL's texts cannot.
    if (/%00/.test(c.req.url)) return c.json(refuse('The address holds a NUL character'), 400);
    const api = url.pathname.startsWith('/api/');
    if (api && ['cross-site', 'same-site'].includes(c.req.header('sec-fetch-site') ?? ''))
      return c.json(refuse('Requests of other pages are not taken'), 403);
    if (c.req.method === 'POST' && !typesTaken.test(c.req.header('content-type') ?? ''))
      return c.json(refuse('Send application/json (attachments: application/octet-stream)'), 415);
    await next();
    if (api) c.header('cache-control', c.res.headers.get('cache-control') ?? 'no-store');
    return undefined;
  };
}

const typesTaken = /^application\/(json|octet-stream)\s*(;|$)/i;

function refuse(message: string) {
  return { message, findings: [] };
}
