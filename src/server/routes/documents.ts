import { type Context, Hono } from 'hono';
import { z } from 'zod';
import { anyFieldValue } from '../../record/field-value.ts';
import { engineVersionShape, largestBatch } from '../../record/validate.ts';
import { copyBuild, repeatBuild } from '../build-files.ts';
import { erasable } from '../erase.ts';
import { NotFoundError } from '../errors.ts';
import { freeze } from '../freeze.ts';
import { type Keeper, operationsPerAnswer } from '../keeper.ts';
import { readJson } from './read-body.ts';

/** Most bytes of a request of operations. */
const largestRequest = 8 * 1024 ** 2;

const createRequest = z.strictObject({
  kind: z.enum(['build', 'ticket']),
  changes: z
    .array(z.strictObject({ path: z.tuple([z.string(), z.string(), z.string()]), value: anyFieldValue }))
    .max(largestBatch)
    .optional(),
});
const freezeRequest = z.strictObject({ engineVersion: engineVersionShape });
const eraseRequest = z.strictObject({
  what: z.enum(['customer', 'picture']),
  row: z.string().max(40).optional(),
});
const appendRequest = z.strictObject({ operations: z.array(z.unknown()).min(1).max(largestBatch) });

/** Documents and their operations. */
export function documentRoutes(keeper: Keeper): Hono {
  const app = new Hono();
  app.get('/documents', async (c) =>
    c.json(
      await keeper.repository.list({
        kind: c.req.query('kind') === 'ticket' ? 'ticket' : 'build',
        search: (c.req.query('search') ?? '').slice(0, 200),
        series: (c.req.query('series') ?? '').slice(0, 120),
        gone: c.req.query('gone') === 'true',
        limit: wholeNumber(c, 'limit', 50, 1, 200),
        offset: wholeNumber(c, 'offset', 0, 0, 1e9),
      }),
    ),
  );
  app.post('/documents', async (c) =>
    c.json(await keeper.create(await readJson(c, createRequest, largestRequest)), 201),
  );
  app.get('/documents/:id', async (c) => c.json(await keeper.answer(c.req.param('id'))));
  app.get('/documents/:id/opening', async (c) => c.json(await keeper.opening(c.req.param('id'))));
  app.get('/documents/:id/operations', async (c) => {
    const after = wholeNumber(c, 'after', 0, 0, 2 ** 31 - 1);
    const limit = wholeNumber(c, 'limit', operationsPerAnswer, 1, operationsPerAnswer);
    return c.json(await keeper.operationsAfter(c.req.param('id'), after, limit));
  });
  app.get('/documents/:id/after/:seq{[0-9]{1,9}}', async (c) =>
    c.json(await keeper.answerAfter(c.req.param('id'), Number(c.req.param('seq')))),
  );
  app.post('/documents/:id/operations', async (c) => {
    const { operations } = await readJson(c, appendRequest, largestRequest);
    const { accepted, lastSeq } = await keeper.append(c.req.param('id'), operations);
    return c.json({ accepted, lastSeq });
  });
  app.post('/documents/:id/put-away', async (c) =>
    c.json(await keeper.repository.setGone(c.req.param('id'), true)),
  );
  app.post('/documents/:id/bring-back', async (c) =>
    c.json(await keeper.repository.setGone(c.req.param('id'), false)),
  );
  app.post('/documents/:id/erase', async (c) => {
    const { what, row } = await readJson(c, eraseRequest, largestRequest);
    return c.json(await keeper.erase(c.req.param('id'), erasable(what, row)));
  });
  app.post('/documents/:id/copy', async (c) => c.json(await copyBuild(keeper, c.req.param('id')), 201));
  app.post('/documents/:id/again', async (c) => c.json(await repeatBuild(keeper, c.req.param('id')), 201));
  app.post('/documents/:id/revisions', async (c) => {
    const { engineVersion } = await readJson(c, freezeRequest, largestRequest);
    return c.json(await freeze(keeper, c.req.param('id'), engineVersion), 201);
  });
  app.get('/documents/:id/revisions', async (c) => {
    const { id } = await keeper.findOrThrow(c.req.param('id'));
    return c.json({ revisions: await keeper.repository.revisions(id) });
  });
  app.get('/documents/:id/revisions/:revision', async (c) => {
    const { id, revision } = c.req.param();
    const found = await keeper.repository.revision(id, revision);
    if (!found) throw new NotFoundError(`Build ${id} has no revision ${revision}`);
    return c.json(found);
  });
  app.get('/shop', async (c) => c.json(await keeper.shop()));
  return app;
}

/** A number of the query, forced into its range; anything else counts as not given. */
export function wholeNumber(c: Context, name: string, otherwise: number, min: number, max: number): number {
  const text = c.req.query(name) ?? '';
  return /^\d{1,15}$/.test(text) ? Math.min(max, Math.max(min, Number(text))) : otherwise;
}
