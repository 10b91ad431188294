import { createHash } from 'node:crypto';
import type { MiddlewareHandler } from 'hono';
import { secureHeaders as honoSecureHeaders } from 'hono/secure-headers';

/** The inline style sheets of the component library (react-aria: presses, and scrolling on iOS), to the letter. */
const libraryStyles = [
  '@layer {\n  [data-react-aria-pressable] {\n    touch-action: pan-x pan-y pinch-zoom;\n  }\n}',
  '@layer {\n  * {\n    overscroll-behavior: contain;\n  }\n}',
];

/** No script, style, font or connection from anywhere but this server; nothing inline but the styles above. */
export function secureHeaders(): MiddlewareHandler {
  return honoSecureHeaders({
    contentSecurityPolicy: {
      defaultSrc: ["'none'"],
      scriptSrc: ["'self'"],
      workerSrc: ["'self'"],
      styleSrc: ["'self'", ...libraryStyles.map(styleHash)],
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

/** Of what others made and this server only hands on: opened by itself, nothing in it runs or asks for anything. */
export function inertHeaders(): MiddlewareHandler {
  return async (c, next) => {
    await next();
    c.header('content-security-policy', "default-src 'none'; sandbox");
    c.header('x-content-type-options', 'nosniff');
  };
}

function styleHash(text: string): string {
  return `'sha256-${createHash('sha256').update(text).digest('base64')}'`;
}

/**
 * Answers only requests that name this server (a page elsewhere whose name was pointed here has another Host)
 * and, from browsers, only its own page's (Origin, Sec-Fetch-Site). What a form can send is not taken.
 */
export function guardRequests(
  allowedHost: (host: string) => boolean,
  proxyOrigin?: string,
): MiddlewareHandler {
  const proxyHost = proxyOrigin && new URL(proxyOrigin).host;
  return async (c, next) => {
    const url = new URL(c.req.url);
    const host = c.req.header('host') ?? url.host;
    if (!allowedHost(host) && host !== proxyHost)
      return c.json(refuse(`This server is not called ${host.slice(0, 100)}`), 421);
    const origin = c.req.header('origin');
    const ownOrigin = host === proxyHost ? proxyOrigin : `${url.protocol}//${host}`;
    if (origin !== undefined && origin !== ownOrigin)
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
