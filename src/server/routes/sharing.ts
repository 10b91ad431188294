import { type Context, Hono } from 'hono';
import { setCookie } from 'hono/cookie';
import { z } from 'zod';
import type { SharingAnswer } from '../../record/sharing-api.ts';
import { ConflictError, NotFoundError, RefusedError } from '../errors.ts';
import { sessionCookie } from '../sharing/admit.ts';
import type { Entrance } from '../sharing/entrance.ts';
import type { PairingCodes } from '../sharing/pairing.ts';
import { type Sessions, sessionLivesMs } from '../sharing/sessions.ts';
import { readJson } from './read-body.ts';

export interface Sharing {
  entrance: Pick<Entrance, 'open' | 'switchable' | 'addresses' | 'secure' | 'certificate'>;
  pairing: PairingCodes;
  sessions: Sessions;
  /** Lets phones in, or shuts the door, from now on. */
  letIn(open: boolean): Promise<void>;
}

const pairRequest = z.strictObject({ code: z.string().max(40), name: z.string().max(60) });
const openRequest = z.strictObject({ open: z.boolean() });
const largestRequest = 10_000;

/** Pairing (for strangers) and, for this computer alone, the switch, codes and paired devices. */
export function sharingRoutes(sharing: Sharing | undefined): Hono {
  const app = new Hono();
  app.get('/sharing', async (c) => c.json(await answerOf(sharing)));
  if (!sharing) return app;
  const { entrance, pairing, sessions } = sharing;
  app.post('/sharing/open', async (c) => {
    const { open } = await readJson(c, openRequest, largestRequest);
    if (!entrance.switchable)
      throw new ConflictError(
        'Phones are let in by how Fairbend was started. Start it without --share to switch here',
      );
    await sharing.letIn(open);
    return c.json(await answerOf(sharing));
  });
  app.post('/sharing/code', async (c) => {
    assertOpen(sharing);
    return c.json(await pairing.makeCode(), 201);
  });
  app.post('/sharing/sessions/:id/end', async (c) => {
    await sessions.end(c.req.param('id'));
    return c.json({ sessions: await sessions.list() });
  });
  app.post('/pair', async (c) => {
    assertOpen(sharing);
    const { code, name } = await readJson(c, pairRequest, largestRequest);
    if (!(await pairing.accept(code))) {
      const message =
        'This code does not hold: it is mistyped, used, or older than ten minutes. Ask for a new one in Settings on the shop’s computer';
      throw new RefusedError([{ path: 'code', message }]);
    }
    return begin(c, sharing, name);
  });
  return app;
}

async function begin(c: Context, { sessions, entrance: { secure } }: Sharing, name: string) {
  const token = await sessions.begin(name.trim() || 'a device');
  const maxAge = sessionLivesMs / 1000;
  setCookie(c, sessionCookie, token, { httpOnly: true, sameSite: 'Strict', path: '/', maxAge, secure });
  return c.json({ paired: true }, 201);
}

function assertOpen({ entrance }: Sharing): void {
  if (!entrance.open)
    throw new NotFoundError(
      'No phones are let in. Switch it on: Settings on the shop’s computer, Phones and tablets',
    );
}

async function answerOf(sharing: Sharing | undefined): Promise<SharingAnswer> {
  const entrance = sharing?.entrance;
  return {
    shared: entrance?.open ?? false,
    switchable: entrance?.switchable ?? false,
    addresses: entrance?.addresses() ?? [],
    sessions: (await sharing?.sessions.list()) ?? [],
    fingerprint: entrance?.certificate?.fingerprint,
  };
}
