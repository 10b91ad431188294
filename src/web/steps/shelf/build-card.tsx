import { useState } from 'react';
import { Button } from 'react-aria-components';
import { Link, useLocation } from 'wouter';
import type { DocumentSummary } from '../../../record/api.ts';
import { instantWords } from '../../../words/intl.ts';
import { originInWords } from '../../../words/rod-facts.ts';
import { WorkBars } from '../../parts/work-bars.tsx';
import { useSay } from '../../read/messages.tsx';
import { useAttempt } from '../../read/use-attempt.ts';
import { api } from '../../store/open-document.ts';
import { EraseCustomer } from './erase-customer.tsx';
import { TagLine } from './tag-line.tsx';

export interface BuildCardProps {
  summary: DocumentSummary;
  changed(): void;
  /** Searches the shelf. */
  find(text: string): void;
}

/** One build on the shelf, and what can be done with the whole of it. */
export function BuildCard({ summary, changed, find }: BuildCardProps) {
  const { id, title, customer, rodKind, lineWeight, demo, gone, updatedAt, card, damaged } = summary;
  const [, navigate] = useLocation();
  const say = useSay();
  const { attempt } = useAttempt();
  const [saving, setSaving] = useState(false);
  const name = title || 'Untitled build';
  const facts = [originInWords(card), rodKind, lineWeight && `line ${lineWeight}`, customer, card.label]
    .filter(Boolean)
    .join(' · ');
  const carryOut = (work: () => Promise<unknown>, done: string) =>
    attempt('Nothing was changed', async () => {
      await work();
      say(done);
      changed();
    });
  const openMade = async (making: Promise<{ id: string }>) => navigate(`/builds/${(await making).id}/blank`);
  const copy = () => attempt('No copy was made', () => openMade(api.copy(id)));
  const again = () => attempt('It was not begun again', () => openMade(api.again(id)));
  const putAwayOrBack = () =>
    gone
      ? carryOut(() => api.bringBack(id), `${name} is back on the shelf.`)
      : carryOut(() => api.putAway(id), `${name} is archived. Tick “Archived” to find it.`);
  return (
    <li className="shelf-card">
      <Link href={`/builds/${id}/blank`} className="shelf-open">
        <h2>{name}</h2>
        {damaged && <p className="attention">Not as stored: the disk or the file is damaged.</p>}
        {demo && <p className="shelf-demo">demo · an invented blank, nobody’s rod</p>}
        <p className="quiet">{facts}</p>
        <p className="aside small">
          changed <time dateTime={updatedAt}>{instantWords(updatedAt)}</time>
        </p>
      </Link>
      <div className="shelf-actions">
        <TagLine tags={card.tags ?? []} find={find} />
        <Button className="plain" onPress={copy}>
          {demo ? 'Copy this and make it yours' : 'Copy'}
          <OfBuild name={name} />
        </Button>
        {!demo && (
          <Button className="plain" onPress={again}>
            Same again
            <OfBuild name={name} />
          </Button>
        )}
        <a className="plain" href={api.fileAddress(id)} download onClick={() => setSaving(true)}>
          Save as a file
          <OfBuild name={name} />
        </a>
        {demo && (
          <Button
            className="plain"
            onPress={() => carryOut(() => api.showDemo(id), 'The demo is as it was.')}
          >
            Reset the demo
            <OfBuild name={name} />
          </Button>
        )}
        {id !== firstDemo && (
          <Button className="plain" onPress={putAwayOrBack}>
            {gone ? 'Bring back' : 'Archive'}
            <OfBuild name={name} />
          </Button>
        )}
        {saving && <WorkBars kinds={['build out']} />}
        {!demo && customer && <EraseCustomer id={id} customer={customer} attempt={carryOut} />}
      </div>
    </li>
  );
}

/** It stays where a newcomer looks for it. */
const firstDemo = 'demo';

/** The same words stand on every card; read aloud they name their build. */
function OfBuild({ name }: { name: string }) {
  return <span className="visually-hidden"> ({name})</span>;
}
