import { z } from 'zod';
import { anyFieldValue } from '../../record/field-value.ts';
import { engineVersionShape, validateOperation } from '../../record/validate.ts';
import type { WholeDocument } from '../repository.ts';

const shape = z.object({
  id: z.string().regex(/^[A-Za-z0-9_-]{1,60}$/),
  kind: z.enum(['build', 'ticket', 'shop']),
  createdAt: z.iso.datetime(),
  updatedAt: z.iso.datetime(),
  revisions: z.array(
    z.object({
      revision: z.string().regex(/^[0-9a-f]{6,64}$/),
      seq: z.int().min(0),
      madeAt: z.iso.datetime(),
      engineVersion: engineVersionShape,
      values: z.record(z.string(), anyFieldValue),
    }),
  ),
});
const instant = z.iso.datetime();

/** What of a document from elsewhere would not be taken as an edit either; undefined where all is well. */
export function findingOf(whole: WholeDocument): string | undefined {
  const read = shape.safeParse(whole);
  if (!read.success) {
    const { path, message } = read.error.issues[0];
    return `${path.join('/')}: ${message}`;
  }
  const ids = new Set<string>();
  for (const [index, { seq, receivedAt, ...operation }] of whole.history.entries()) {
    if (seq !== index + 1) return `change ${index + 1} has the number ${seq}`;
    const [finding] = validateOperation(whole.kind, operation);
    if (finding) return `change ${seq}: ${finding.message}`;
    if (!instant.safeParse(receivedAt).success) return `change ${seq}: it arrived at no instant`;
    if (ids.has(operation.id)) return `change ${seq}: its id comes twice`;
    ids.add(operation.id);
  }
  return undefined;
}
