import { Hono } from 'hono';
import { setCookie } from 'hono/cookie';
import { z } from 'zod';
import type { SharingAnswer } from '../../record/api.ts';
import { RefusedError } from '../errors.ts';
import { sessionCookie } from '../sharing/admit.ts';
import type { PairingCodes } from '../sharing/pairing.ts';
import { type Sessions, sessionLivesMs } from '../sharing/sessions.ts';
import { readJson } from './read-body.ts';

export interface Sharing {
  pairing: PairingCodes;
  sessions: Sessions;
  /** Where other devices find this server. */
  addresses(): string[];
  /** Reached by https only (our own or a proxy's): the cookie then never travels without. */
  secure: boolean;
  /** Of the certificate made for this shop. */
  fingerprint?: string;
}

const pairRequest = z.strictObject({ code: z.string().max(40), name: z.string().max(60) });
const largestRequest = 10_000;

/** Pairing (for strangers) and, for this computer alone, codes and paired devices. */
export function sharingRoutes(sharing: Sharing | undefined): Hono {
  const app = new Hono();
  app.get('/sharing', async (c) => {
    const addresses = sharing?.addresses() ?? [];
    return c.json({
      shared: !!sharing,
      addresses,
      sessions: (await sharing?.sessions.list()) ?? [],
      fingerprint: sharing?.fingerprint,
    } satisfies SharingAnswer);
  });
  if (!sharing) return app;
  const { pairing, sessions, secure } = sharing;
  app.post('/sharing/code', async (c) => c.json(await pairing.makeCode(), 201));
  app.post('/sharing/sessions/:id/end', async (c) => {
    await sessions.end(c.req.param('id'));
    return c.json({ sessions: await sessions.list() });
  });
  app.post('/pair', async (c) => {
    const { code, name } = await readJson(c, pairRequest, largestRequest);
    if (!(await pairing.accept(code))) {
      const message =
        'This code does not hold: it is mistyped, used, or older than ten minutes. Ask for a new one in Settings on the shop’s computer';
      throw new RefusedError([{ path: 'code', message }]);
    }
    const token = await sessions.begin(name.trim() || 'a device');
    const maxAge = sessionLivesMs / 1000;
    setCookie(c, sessionCookie, token, { httpOnly: true, sameSite: 'Strict', path: '/', maxAge, secure });
    return c.json({ paired: true }, 201);
  });
  return app;
}
