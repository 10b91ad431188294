import { Hono } from 'hono';
import { NotFoundError } from '../errors.ts';
import type { ShopImport } from '../shop-files/shop-import.ts';

/** A whole shop, as an archive of plain files, in the place of a record that holds nothing yet. */
export function shopImportRoutes(shopImport: ShopImport | undefined): Hono {
  const app = new Hono();
  const orNone = () => {
    if (shopImport) return shopImport;
    throw new NotFoundError(
      'On PostgreSQL a shop is taken in on the command line, into an empty database that DATABASE_URL names: npm run fairbend -- import-shop FILE',
    );
  };
  app.get('/shop/import', async (c) => c.json(await orNone().standing()));
  app.post('/shop/import', async (c) => {
    const total = Number(c.req.header('content-length') ?? 0);
    return c.json(await orNone().takeIn(c.req.raw.body ?? nothing(), total), 201);
  });
  app.post('/shop/import/cancel', async (c) => {
    orNone().cancel();
    return c.json(await orNone().standing());
  });
  return app;
}

async function* nothing(): AsyncGenerator<Uint8Array> {}
