import { Link } from 'wouter';
import { Field } from '../../fields/field.tsx';
import { LearntTable } from '../../parts/learnt-table.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { useBench } from '../../read/bench.tsx';
import { useSentence } from '../../read/use-sentence.ts';
import { mostBlanks } from '../../read/use-series.ts';
import { isSpared } from './spared-words.ts';

/** What the shop has learnt about the series this blank is one of; nothing while no series is named. */
export function SeriesPart() {
  const { series } = useBench();
  const sentence = useSentence();
  const { name, wanted, others, passedOver, answer, working, failure } = series;
  if (name === undefined) return null;
  const learnt = answer?.learnt;
  return (
    <Part
      title={`Series “${name}”`}
      anchor="series"
      aside={
        learnt
          ? `${learnt.blanks === 1 ? 'one other blank' : `${learnt.blanks} other blanks`} measured`
          : undefined
      }
    >
      <Field path={['blank', '-', 'withSeries']} />
      <div role="status">
        {failure && <p className="attention">{failure}.</p>}
        {wanted && !failure && others === 0 && (
          <p className="quiet">
            No other blank of this name has readings yet. The next one will have this one’s.
          </p>
        )}
        {wanted && working && <p className="quiet">Looking at the other blanks …</p>}
        {answer?.use && (
          <p className={answer.use.innovation?.verdict === 'unlike' ? 'attention' : undefined}>
            {sentence(answer.use.why)}
          </p>
        )}
        {answer?.use && !answer.use.used && isSpared(series) && (
          <p>
            Was it read by the half protocol? Then take the twenty-minute protocol too: under the readings,
            “Measure in another way as well”.
          </p>
        )}
        {answer && answer.leftOut > 0 && (
          <p className="quiet">
            {answer.leftOut === 1 ? 'One blank was' : `${answer.leftOut} blanks were`} left out: of another
            length, or with too few readings.
          </p>
        )}
        {answer && passedOver > 0 && (
          <p className="quiet">
            The {mostBlanks} blanks last edited are used here; {passedOver} older{' '}
            {passedOver === 1 ? 'one is' : 'ones are'} not. All of them are held side by side in{' '}
            <Link href="/settings#jobs">Settings, in the background</Link>.
          </p>
        )}
      </div>
      {learnt && <LearntTable learnt={learnt} />}
      <p className="small quiet">
        On simulated series, after five blanks with 32 readings each, 16 readings of the next were as sure as
        32 of its own. How alike real blanks of a series are is not known here: the first few of yours will
        tell. The command line and saved files read every blank by itself.
      </p>
    </Part>
  );
}
