import type { Migration } from 'kysely/migration';
import { record } from './0001-record.ts';
import { identity } from './0002-identity.ts';
import { shelf } from './0003-shelf.ts';
import { sharedServers } from './0004-shared-servers.ts';
import { vouchedFor } from './0005-vouched-for.ts';
import { pairingCodes } from './0006-pairing-codes.ts';
import { snapshots } from './0007-snapshots.ts';

/** In the order they are carried out; a released one is never changed, only followed by another. */
export const migrations: Record<string, Migration> = {
  '0001-record': record,
  '0002-identity': identity,
  '0003-shelf': shelf,
  '0004-shared-servers': sharedServers,
  '0005-vouched-for': vouchedFor,
  '0006-pairing-codes': pairingCodes,
  '0007-snapshots': snapshots,
};
