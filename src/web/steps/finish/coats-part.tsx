import { Button } from 'react-aria-components';
import { coatSchedule, recoatAt } from '../../../engine/finish/schedule.ts';
import type { Row } from '../../../record/document.ts';
import { rowChanges } from '../../../record/operation.ts';
import { dueWords } from '../../../words/due.ts';
import { finishFaultOf } from '../../../words/finish-faults.ts';
import { clockWords, sinceWords } from '../../../words/intl.ts';
import { Field } from '../../fields/field.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { Table } from '../../parts/sheet/table.tsx';
import { useBuild } from '../../read/build-context.ts';
import { useShop } from '../../read/shop.tsx';
import type { FinishOnRod } from '../../read/use-finish.ts';
import { flagOf, textOf } from '../../read/values.ts';

const gate = [
  { field: 'guidesChecked' },
  { field: 'wrapsChecked' },
  { field: 'levelChecked' },
  { field: 'dustFree' },
];

/** What nobody has looked at yet. */
export function openChecks(finish: Row): string[] {
  return gate.map(({ field }) => field).filter((field) => !flagOf(finish, field));
}

/** The gate before the first coat, each coat by one tap, and what is due when. */
export function CoatsPart({ finish, nowMs }: { finish: FinishOnRod; nowMs: number }) {
  const { single, write, newRowId } = useBuild();
  const row = single('finish');
  const open = openChecks(row);
  const last = finish.coats.at(-1);
  const isPlanned = finish.coats.length < finish.coatsInAll;
  const recoat = last && recoatAt(nowMs, last, finish.times);
  const brush = () => {
    const id = newRowId();
    write(
      `brushCoat:${finish.coats.length + 1}`,
      rowChanges('coats', id, {
        order: finish.coats.length,
        brushedAt: new Date().toISOString(),
        roomC: finish.roomC,
      }),
    );
  };
  const waits = open.length > 0 || recoat?.status === 'too-early';
  return (
    <Part title="Coats" aside="the first cannot be taken off again">
      <div className="gates">
        {gate.map(({ field }) => (
          <Field key={field} path={['finish', '-', field]} />
        ))}
      </div>
      <div role="status">
        {open.length > 0 && <p className="quiet">{open.length} to look at before a coat goes on.</p>}
        {isPlanned && recoat?.status === 'too-early' && (
          <p>
            The next coat waits until {clockWords(recoat.fromMs, nowMs)}; the finish below is still too soft.
          </p>
        )}
        {isPlanned && recoat?.status === 'now' && (
          <p>Another coat may go on until {clockWords(recoat.untilMs, nowMs)}.</p>
        )}
        {isPlanned && recoat?.status === 'sand-first' && (
          <p className="attention">
            ▲ The recoat window is over {sinceWords(recoat.untilMs, nowMs)}: scuff with 400 to 600 grit before
            another coat.
          </p>
        )}
      </div>
      <div>
        <Button className={isPlanned ? 'button button-main' : 'button'} isDisabled={waits} onPress={brush}>
          Coat {finish.coats.length + 1} is brushed on now
        </Button>
      </div>
      {finish.coats.length > 0 && <CoatsTable finish={finish} nowMs={nowMs} />}
    </Part>
  );
}

/** The usual remedy of what went wrong, at the coat itself. */
function Remedy({ coat }: { coat: string }) {
  const { rows } = useBuild();
  const row = rows('coats').find(({ id }) => id === coat);
  const found = row && finishFaultOf(textOf(row, 'fault'));
  if (!found) return null;
  return (
    <p role="status">
      {found.fault}: <span className="quiet">{found.cause}.</span> {found.remedy}
    </p>
  );
}

function CoatsTable({ finish, nowMs }: { finish: FinishOnRod; nowMs: number }) {
  const { writer } = useShop();
  const { coats, times } = finish;
  return (
    <>
      {coats.map(({ id, brushedAtMs, roomC }, index) => (
        <div key={id}>
          <div className="fields-row">
            <Field label={`Coat ${index + 1} brushed on`} path={['coats', id, 'brushedAt']} />
            <Field label={`Room then, coat ${index + 1}`} path={['coats', id, 'roomC']} />
            <Field label={`What went wrong with coat ${index + 1}`} path={['coats', id, 'fault']} />
            <Field label={`Note on coat ${index + 1}`} path={['coats', id, 'note']} />
          </div>
          <Remedy coat={id} />
          <Table
            label={`Times of coat ${index + 1}`}
            caption={
              <>
                Coat {index + 1} <span className="quiet">at {writer.temperature(roomC)}</span>
              </>
            }
            heads={['What', 'When']}
            rows={coatSchedule(brushedAtMs, times, { roomC, latest: index === coats.length - 1 }).map(
              ({ due, atMs }) => [dueWords[due], sinceWords(atMs, nowMs)],
            )}
          />
        </div>
      ))}
    </>
  );
}
