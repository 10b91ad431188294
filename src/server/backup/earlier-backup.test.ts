import { createHash } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { openDatabase } from '../database.ts';
import { restoreBackup } from './restore-backup.ts';

const fixture = (name: string) =>
  fileURLToPath(new URL(`../../../test/fixtures/backup-of-0.1/${name}`, import.meta.url));
const sha256 = (bytes: string | Uint8Array) => createHash('sha256').update(bytes).digest('hex');

interface Expected {
  documents: { id: string; kind: string; title: string; operations: number; sha256: string }[];
  picture: string;
}

test('a backup of an earlier version is restored equal: every change in its order, and the picture', async () => {
  const expected = JSON.parse(readFileSync(fixture('expected.json'), 'utf8')) as Expected;
  const folder = mkdtempSync(join(tmpdir(), 'fairbend-earlier-'));
  try {
    await restoreBackup(fixture('record.zip'), folder, new Date('2026-12-01T09:00:00Z'));
    const { db, repository } = await openDatabase(join(folder, 'fairbend.sqlite'));
    try {
      for (const { id, kind, title, operations, sha256: told } of expected.documents) {
        const document = await repository.find(id);
        expect([document?.kind, document?.title]).toEqual([kind, title]);
        const kept = await repository.operationsAfter(id, 0, 10_000);
        expect([kept.length, sha256(JSON.stringify(kept))]).toEqual([operations, told]);
      }
      const picture = await repository.attachment(expected.picture);
      expect(picture && sha256(picture.bytes)).toBe(expected.picture);
    } finally {
      await db.destroy();
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});
