import type { Migration } from 'kysely';
import { record } from './0001-record.ts';

/** In the order they are carried out; a released one is never changed, only followed by another. */
export const migrations: Record<string, Migration> = {
  '0001-record': record,
};
