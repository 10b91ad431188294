import type { TipTubeChoice } from '../../../engine/handle/tip-tube.ts';
import { Figure } from '../../fields/figure.tsx';
import { useShop } from '../../read/shop.tsx';

interface TubeWordsProps {
  after: TipTubeChoice;
  outsideM: number;
  /** At the break, or read off the record's taper. */
  measured: boolean;
  before: TipTubeChoice | undefined;
}

/** The tube to take, and the two to have at hand beside it. */
export function TubeWords({ after, outsideM, measured, before }: TubeWordsProps) {
  const { best, neighbours, fit } = after;
  const { writer } = useShop();
  const there = `${writer.calliper(outsideM)} there${measured ? '' : ' by the record’s taper'}`;
  const left = `${writer.calliper(best.clearanceM)} are left for the cement`;
  return (
    <p>
      <strong>Tip-top with a tube of {best.size64}/64 in</strong>
      {before && before.best.size64 !== best.size64 && <> instead of {before.best.size64}/64 in</>}: the blank
      is <Figure text={`${there}, ${left}`} />
      {fit === 'good' ? '' : fit === 'tight' ? ', which is tight' : ', which is loose'}. Keep{' '}
      {neighbours[0].size64}/64 and {neighbours[1].size64}/64 at hand: plating narrows tubes.
    </p>
  );
}
