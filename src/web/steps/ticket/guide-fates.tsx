import type { GuideFate, TipRepair } from '../../../engine/repair/broken-tip.ts';
import { formatLength } from '../../../engine/units/format-quantity.ts';
import { sentenceOf } from '../../../words/sentence.ts';
import { Table } from '../../parts/sheet/table.tsx';
import { useShop } from '../../read/shop.tsx';

/** Every guide of the old rod: gone, taken off, moved or left. */
export function GuideFates({
  repair,
  label = 'Guides before and after',
}: {
  repair: TipRepair;
  label?: string;
}) {
  const { system, writer } = useShop();
  const length = (lengthM: number) => formatLength(lengthM, { system, denominator: 16, decimals: 0 });
  const touched = repair.guides.filter(({ kind }) => kind === 'moved' || kind === 'taken-off').length;
  return (
    <>
      <p>{repair.trouble ? sentenceOf(repair.trouble, writer) : summary(repair.guides, touched)}</p>
      <Table
        label={label}
        className="ticket-fates"
        spoken="Guides from the old tip and from the new one"
        heads={['Guide', 'From old tip', 'From new tip', 'To do']}
        rows={repair.guides.map((fate, index) => [
          index + 1,
          length(fate.wasFromTipM),
          'fromTipM' in fate ? length(fate.fromTipM) : '–',
          {
            of: toDo(fate, length),
            className: fate.kind === 'stays' ? 'ticket-to-do quiet' : 'ticket-to-do',
          },
        ])}
      />
      <p className="small quiet">
        Common practice, no source: the first interval at least three quarters of what it was, intervals
        growing down the rod, as few wraps cut as possible. Tape the guides on and bend the rod before you
        wrap.
      </p>
    </>
  );
}

function summary(guides: readonly GuideFate[], touched: number): string {
  const lost = guides.filter(({ kind }) => kind === 'lost').length;
  const gone = lost === 0 ? '' : `${lost === 1 ? 'One guide is' : `${lost} guides are`} gone with the tip. `;
  if (touched === 0) return `${gone}No other guide has to move.`;
  return `${gone}${touched === 1 ? 'One guide has' : `${touched} guides have`} to come off or move; the rest stay where they are.`;
}

function toDo(fate: GuideFate, length: (lengthM: number) => string): string {
  switch (fate.kind) {
    case 'lost':
      return 'gone with the tip';
    case 'taken-off':
      return 'take it off';
    case 'stays':
      return 'stays';
    case 'moved':
      return `move ${length(Math.abs(fate.byM))} towards the ${fate.byM < 0 ? 'tip' : 'butt'}`;
  }
}
