import { Link } from 'wouter';
import type { DocumentSummary } from '../../../record/api.ts';
import { dayWords } from '../../../words/intl.ts';
import { Part } from '../../parts/sheet/part.tsx';
import { TagLine } from './tag-line.tsx';
import type { Builds } from './use-builds.ts';

/** The repairs that wait, those promised soonest first; the ones handed over folded away below. */
export function RepairsPart({ repairs, find }: { repairs: Builds; find(text: string): void }) {
  if (repairs.kind !== 'found' || repairs.list.total === 0) return null;
  const { documents } = repairs.list;
  const open = documents.filter(({ card }) => !card.handedOverAt).sort(bySoonest);
  const closed = documents.filter(({ card }) => card.handedOverAt);
  return (
    <Part title="Repairs" aside={open.length === 0 ? 'none waits' : `${open.length} in the shop`}>
      {open.length > 0 && <RepairList repairs={open} find={find} />}
      {closed.length > 0 && (
        <details>
          <summary>
            {closed.length === 1 ? 'One that was handed over' : `${closed.length} that were handed over`}
          </summary>
          <RepairList repairs={closed} find={find} />
        </details>
      )}
    </Part>
  );
}

function RepairList({ repairs, find }: { repairs: readonly DocumentSummary[]; find(text: string): void }) {
  return (
    <ul className="repairs">
      {repairs.map(({ id, title, customer, card }) => (
        <li key={id}>
          <Link href={`/repairs/${id}`} className="repair-open">
            <strong>{title || 'A repair'}</strong>{' '}
            <span className="quiet">
              {[customer, card.broken && `broken: ${card.broken}`].filter(Boolean).join(' · ')}
            </span>
          </Link>
          <span className="repair-state">{stateWords(card)}</span>
          <TagLine tags={card.tags ?? []} find={find} />
        </li>
      ))}
    </ul>
  );
}

function stateWords({ promisedFor, doneAt, handedOverAt }: DocumentSummary['card']): string {
  if (handedOverAt) return `handed over ${dayWords(handedOverAt)}`;
  if (doneAt) return `done ${dayWords(doneAt)}, waits for its owner`;
  return promisedFor ? `promised for ${dayWords(promisedFor)}` : 'no day promised';
}

function bySoonest(a: DocumentSummary, b: DocumentSummary): number {
  const day = ({ card }: DocumentSummary) => card.promisedFor ?? '9999';
  return day(a) < day(b) ? -1 : day(a) > day(b) ? 1 : 0;
}
