import type { BenchFit } from '../../../engine/stiffness/from-bench.ts';
import { agreementWords, surenessWords, tiltWords } from '../../../words/fit.ts';
import { Figure } from '../../fields/figure.tsx';
import { StiffnessChart } from '../../parts/charts/stiffness-chart.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { useBench } from '../../read/bench.tsx';
import { useShop } from '../../read/shop.tsx';
import { useSentence } from '../../read/use-sentence.ts';
import { StiffnessTable } from './stiffness-table.tsx';

/** What the readings say: stiffness along the blank with its band, the tilt of every set-up, what is odd. */
export function StiffnessPart() {
  const sentence = useSentence();
  const { blank, fit, stiffness } = useBench();
  const { writer } = useShop();
  const { solved, working, failure, findings } = stiffness;
  if (!solved || !blank) {
    return (
      <Part title="Stiffness" anchor="stiffness">
        <p className={failure ? 'attention' : 'quiet'} role="status">
          {failure ??
            (working
              ? 'Working the stiffness out …'
              : 'It appears here as soon as a drop or a picture is read.')}
        </p>
      </Part>
    );
  }
  return (
    <Part
      title="Stiffness"
      anchor="stiffness"
      aside="the true stiffness lies in the shaded band, 19 times in 20"
    >
      <div role="status">
        <p className="verdict">
          <Figure text={surenessWords(solved, readingsIn(fit), picturesIn(fit))} />
        </p>
        <p className={working ? 'quiet' : undefined}>
          <Figure text={working ? 'Working it out again …' : agreementWords(solved, writer)} />
        </p>
      </div>
      {failure && <p className="attention">{failure}</p>}
      {findings.length > 0 && (
        <ul className="attention">
          {findings
            .map((one) => [one.path, sentence(one)] as const)
            .map(([path, message]) => (
              <li key={path + message}>{message}</li>
            ))}
        </ul>
      )}
      <StiffnessChart stiffness={solved.stiffness} blank={blank} />
      <StiffnessTable stiffness={solved.stiffness} />
      <ul className="tilts">
        {(fit?.request.setups ?? []).map((setup, index) =>
          setup.kind === 'span' ||
          solved.tiltRad[index] === undefined ||
          isLaterOfStand(fit, index) ? null : (
            <li key={fit?.rows[index].setupId}>
              <SetupName id={fit?.rows[index].setupId ?? ''} />:{' '}
              <Figure text={tiltWords(solved.tiltRad[index], setup.clampFromTipM ?? blank.lengthM, writer)} />
            </li>
          ),
        )}
      </ul>
    </Part>
  );
}

/** Pictures of one stand share the clamp: the first says its tilt for all. */
function isLaterOfStand(fit: BenchFit | undefined, index: number): boolean {
  const setups = fit?.request.setups ?? [];
  const own = setups[index];
  if (own.kind !== 'curve' || own.shared === undefined) return false;
  return setups.findIndex((other) => other.kind === 'curve' && other.shared === own.shared) < index;
}

function picturesIn(fit: BenchFit | undefined): number {
  return (fit?.request.setups ?? []).filter(({ kind }) => kind === 'curve').length;
}

/** Drops, and sags on two supports. */
function readingsIn(fit: BenchFit | undefined): number {
  return (fit?.rows ?? []).reduce((sum, { tests }, index) => {
    if (fit?.request.setups[index].kind === 'span') return sum + tests.length;
    return sum + tests.reduce((drops, { readings }) => drops + readings.length, 0);
  }, 0);
}

function SetupName({ id }: { id: string }) {
  const { bench } = useBench();
  const isPicture = bench?.curves?.some((curve) => curve.id === id);
  const name = bench?.setups.find((setup) => setup.id === id)?.name;
  return <strong>{name ?? (isPicture ? 'Pictures' : 'A set-up')}</strong>;
}
