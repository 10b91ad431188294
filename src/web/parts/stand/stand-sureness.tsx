import { typicalBandPercent } from '../../../words/fit.ts';
import { useBench } from '../../read/bench.tsx';
import { StiffnessChart } from '../charts/stiffness-chart.tsx';
import type { StandPicture } from './use-stand-pictures.ts';

/** What the pictures so far tell: the stiffness with its band, drawn. */
export function StandSureness({ pictures }: { pictures: readonly StandPicture[] }) {
  const { blank, stiffness } = useBench();
  const { solved, working, failure } = stiffness;
  const read = pictures.filter(({ isRead }) => isRead).length;
  if (read === 0) return null;
  const words = solved
    ? `Stiffness known to ${band(typicalBandPercent(solved))} along most of the blank, after ${read === 1 ? 'one picture' : `${read} pictures`}.`
    : '';
  return (
    <div className="stand-sureness">
      <p role="status" className={working ? 'quiet' : 'verdict'}>
        {failure ?? (working ? 'Working the stiffness out …' : words)}
      </p>
      {solved && blank && <StiffnessChart stiffness={solved.stiffness} blank={blank} />}
      <p className="small quiet">{notTriedYet}</p>
    </div>
  );
}

function band(percent: number): string {
  return percent < 100 ? `±${percent} %` : `a factor of ${(1 + percent / 100).toFixed(1)}`;
}

const notTriedYet =
  'Tried on simulated and painted pictures only: no real photograph has been part of this yet. Guard it with one flag read by tape.';
