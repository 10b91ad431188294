import { readSingle } from '../record/read-values.ts';
import { ConflictError } from './errors.ts';
import { type Keeper, shopId } from './keeper.ts';

/** As people count the bytes of a disk. */
const bytesPerMegabyte = 1e6;

/**
 * Refuses what would take the record past the limit the shop set itself. Changes of builds and backups are never
 * refused: they are small, and losing them would be worse. @throws ConflictError
 */
export async function assertRoom(keeper: Keeper, bytes: number): Promise<void> {
  if (!(await keeper.repository.find(shopId))) return;
  const limitMb = readSingle(await keeper.state(shopId), 'settings').number('spaceLimitMb');
  if (limitMb === undefined) return;
  const taken = await keeper.repository.size();
  if (taken + bytes <= limitMb * bytesPerMegabyte) return;
  const needs = `${megabytes(bytes)} MB more would take the record to ${megabytes(taken + bytes)} MB; the shop’s limit is ${limitMb} MB`;
  throw new ConflictError(
    `${needs}. Erase pictures for good (History of a build), or raise the limit in Settings. Nothing was changed`,
  );
}

function megabytes(bytes: number): string {
  return (Math.ceil(bytes / 1e5) / 10).toString();
}
