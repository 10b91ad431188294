import pg from 'pg';
import { newId } from '../../src/server/keeper.ts';

export interface ScratchDatabase {
  address: string;
  drop(): Promise<void>;
}

/** A new, empty database of its own on a PostgreSQL server. */
export async function scratchDatabase(server = process.env.TEST_DATABASE_URL!): Promise<ScratchDatabase> {
  const name = `fairbend_test_${newId().replaceAll(/[_-]/g, '0')}`.toLowerCase();
  const admin = new pg.Client({ connectionString: server });
  admin.on('error', () => undefined);
  await admin.connect();
  await admin.query(`create database ${name}`);
  const address = new URL(server);
  address.pathname = `/${name}`;
  return {
    address: address.href,
    async drop() {
      await admin.query(`drop database if exists ${name} with (force)`);
      await admin.end();
    },
  };
}
