import { useCallback, useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import type { RecordStanding } from '../../../record/record-api.ts';
import { Figure } from '../../fields/figure.tsx';
import { WorkBars } from '../../parts/work-bars.tsx';
import { useSay } from '../../read/messages.tsx';
import { useAttempt } from '../../read/use-attempt.ts';
import { api } from '../../store/open-document.ts';
import { recordSentences } from './record-sentences.ts';

/** How far the record can be relied on: a quiet line while all is well, else what is wrong and what to press. */
export function RecordLine({ changed }: { changed(): void }) {
  const say = useSay();
  const [standing, setStanding] = useState<RecordStanding>();
  const { busy, attempt } = useAttempt();
  const look = useCallback(() => void api.record().then(setStanding, () => undefined), []);
  useEffect(look, []);
  if (!standing) return null;
  const carryOut = async (work: () => Promise<string>) => {
    await attempt('Nothing was changed', async () => say(await work()));
    look();
    changed();
  };
  const repair = () =>
    carryOut(async () => {
      const { mended, leftOut } = await api.repairRecord();
      const out = leftOut.length > 0 ? ` Not brought back: ${namesOf(leftOut)}.` : '';
      return `Brought back: ${namesOf(mended)}.${out} What was damaged is kept.`;
    });
  const bringBack = (name: string) =>
    carryOut(async () => {
      await api.restoreBackup(name);
      return 'The backup is in place.';
    });
  const { wrong, quiet } = recordSentences(standing, new Date());
  return (
    <div className="screen-only" role={wrong.length > 0 ? 'alert' : undefined}>
      {wrong.map((sentence) => (
        <p key={sentence} className="attention">
          {sentence}
        </p>
      ))}
      {standing.damaged.length > 0 && (
        <Button className="button" isDisabled={busy} onPress={repair}>
          {busy ? 'Repairing …' : 'Repair'}
        </Button>
      )}
      {standing.found && (
        <Button className="button" isDisabled={busy} onPress={() => bringBack(standing.found!.name)}>
          {busy ? 'Bringing it back …' : 'Bring it back'}
        </Button>
      )}
      {busy && <WorkBars kinds={['check', 'repair', 'restore']} />}
      {quiet && (
        <p className="aside">
          <Figure text={quiet} />
        </p>
      )}
    </div>
  );
}

function namesOf(notes: readonly { id: string; title: string }[]): string {
  return notes.map(({ id, title }) => title || id).join(', ') || 'nothing';
}
