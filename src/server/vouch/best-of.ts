import type { StoredAttachment, WholeDocument } from '../repository.ts';
import type { ReadDocument } from './read-document.ts';

/** What a damaged part is taken from instead. */
export interface Donor {
  document(id: string): Promise<WholeDocument | undefined>;
  attachment(hash: string): Promise<(StoredAttachment & { addedAt: string }) | undefined>;
  identity(): Promise<string | undefined>;
}

/** What can be made of a damaged document, if anything, and in words what is wrong with it and what is lost. */
export async function bestOf(
  read: ReadDocument,
  donor: Donor | undefined,
): Promise<{ best: WholeDocument | undefined; what: string }> {
  const found = await donor?.document(read.id);
  const merged = found ? merge(found, read) : undefined;
  const readable = read.bad.length === 0 ? read.whole : undefined;
  const best = merged?.document ?? readable;
  return { best, what: [...read.faults, ...lossWords(merged?.lost ?? 0)].join('; ') };
}

function lossWords(lost: number): string[] {
  return lost > 0 ? [`${lost} of its last changes are in no backup and are lost`] : [];
}

/** The donor's history, and after it what is good and newer; undefined where the two are not of one history. */
function merge(found: WholeDocument, { whole, bad }: ReadDocument) {
  const good = whole?.history ?? [];
  const known = new Map(found.history.map((operation) => [operation.seq, operation.id]));
  if (good.some(({ seq, id }) => known.has(seq) && known.get(seq) !== id)) return undefined;
  const newer = good.filter(({ seq }) => seq > found.history.length);
  const history = [...found.history, ...newer].map((operation, index) => ({ ...operation, seq: index + 1 }));
  const lost = bad.filter((seq) => seq > found.history.length).length;
  const revisions = new Map(
    [...found.revisions, ...(whole?.revisions ?? [])].map((made) => [made.revision, made]),
  );
  const updatedAt = newer.at(-1)?.receivedAt ?? found.updatedAt;
  return { document: { ...found, updatedAt, history, revisions: [...revisions.values()] }, lost };
}
