import { Hono } from 'hono';
import type { Keeper } from '../keeper.ts';
import { ProofsOfShop } from '../proofs-of-shop.ts';

/** What was predicted and seen, over all builds. */
export function proofRoutes(keeper: Keeper): Hono {
  const proofs = new ProofsOfShop(keeper);
  const app = new Hono();
  app.get('/proofs', async (c) => c.json(await proofs.all()));
  return app;
}
