import { compareStamps } from '../../record/operation.ts';
import type { Api } from './api.ts';
import type { Outbox } from './outbox.ts';
import { Sender } from './sender.ts';

/**
 * Sends what earlier pages left unsent, of whatever document, so that nobody has to open it here again for
 * others to see it. What an open document sends at the same time is stored once all the same.
 */
export async function flushOutbox(
  api: Pick<Api, 'info' | 'append'>,
  outbox: Outbox,
  options: { retryFirstMs?: number } = {},
): Promise<void> {
  const record = await api.info().then(
    (info) => info.record,
    () => undefined,
  );
  if (record === undefined) return;
  const prefix = `${record}.`;
  const names = (await outbox.documents()).filter((name) => name.startsWith(prefix));
  const senders = await Promise.all(
    names.map(async (name) => {
      const sender = new Sender({
        ...options,
        post: (operations) => api.append(name.slice(prefix.length), operations),
        acknowledged: (operations) =>
          void outbox.remove(
            name,
            operations.map((operation) => operation.id),
          ),
        changed: () => undefined,
      });
      sender.enqueue((await outbox.list(name)).sort(compareStamps));
      return sender;
    }),
  );
  await Promise.all(senders.map((sender) => sender.settled()));
}
