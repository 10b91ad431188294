import { useEffect, useMemo, useRef } from 'react';
import { Button } from 'react-aria-components';
import { type Alarm, alarmsDue } from '../../engine/finish/alarms.ts';
import type { Due } from '../../engine/finish/schedule.ts';
import { rowChanges } from '../../record/operation.ts';
import { readFinish } from '../../record/read-finish.ts';
import { dueWords, isCalm } from '../../words/due.ts';
import { sinceWords } from '../../words/intl.ts';
import { useBench } from '../read/bench.tsx';
import { useBuild } from '../read/build-context.ts';
import { useNow } from '../read/use-now.ts';
import { textOf } from '../read/values.ts';
import '../style/finish.css';

/**
 * What of the finish has come due and was not yet heard, on every step of the build. The coats are in the record,
 * so a reload, another tablet or a night switched off loses no alarm.
 */
export function AlarmBar() {
  const { rows, write, newRowId } = useBuild();
  const nowMs = useNow();
  const alarms = useDueAlarms(nowMs);
  useSound(alarms.filter(({ due }) => !isCalm(due)).length);
  if (alarms.length === 0) return null;
  const spoken = alarms.every(({ due }) => isCalm(due)) ? 'status' : 'alert';
  const heard = ({ coat, due }: Alarm) => {
    const id = newRowId();
    write('hearAlarm', rowChanges('alarmsHeard', id, { coat, due }));
  };
  return (
    <div className="alarm-bar screen-only" role={spoken} data-heard={rows('alarmsHeard').length}>
      {alarms.map((alarm) => (
        <p key={alarm.coat + alarm.due} className={isCalm(alarm.due) ? 'calm' : undefined}>
          <span>
            {!isCalm(alarm.due) && '▲ '}Coat {alarm.number}: {dueWords[alarm.due]} (
            {sinceWords(alarm.atMs, nowMs)})
          </span>
          <Button className="button" onPress={() => heard(alarm)}>
            Heard
          </Button>
        </p>
      ))}
    </div>
  );
}

function useDueAlarms(nowMs: number): Alarm[] {
  const { rows, single } = useBuild();
  const { filled } = useBench();
  const delivered = textOf(single('delivery'), 'deliveredAt') !== undefined;
  const asked = useMemo(() => {
    const heard = new Set(
      // earlier versions kept `stop turning` where this one keeps `stop-turning`
      rows('alarmsHeard').map((row) => `${textOf(row, 'coat')} ${textOf(row, 'due')?.replace(' ', '-')}`),
    );
    return { ...readFinish(filled), heard: (coat: string, due: Due) => heard.has(`${coat} ${due}`) };
  }, [filled, rows]);
  // a rod that was handed over asks for nothing
  return delivered ? none : alarmsDue(asked, nowMs);
}

const none: Alarm[] = [];

/** Two short tones for each new alarm; a page nobody has touched yet may stay silent, the bar does not. */
function useSound(count: number): void {
  const before = useRef(0);
  useEffect(() => {
    const more = count > before.current;
    before.current = count;
    if (!more || typeof AudioContext === 'undefined') return;
    const audio = new AudioContext();
    for (const startS of [0, 0.35]) {
      const tone = audio.createOscillator();
      tone.frequency.value = 880;
      tone.connect(audio.destination);
      tone.start(audio.currentTime + startS);
      tone.stop(audio.currentTime + startS + 0.2);
    }
    const closing = setTimeout(() => void audio.close(), 1500);
    return () => clearTimeout(closing);
  }, [count]);
}
