import { Button } from 'react-aria-components';
import type { PhotoTrace } from '../../../record/read-load-photo.ts';
import { traceWords } from '../../../words/trace.ts';
import { Figure } from '../../fields/figure.tsx';
import { useShop } from '../../read/shop.tsx';
import { type PhotoReading, placedNames } from './photo-request.ts';
import { useFineLength } from './use-fine-length.ts';
import type { TraceState } from './use-trace.ts';

const stageWords = {
  picture: 'Opening the picture',
  marks: 'Looking for printed marks',
  camera: 'Finding the camera from the marks',
  ridges: 'Looking for thin dark and light lines',
  path: 'Following the blank',
  edges: 'Measuring its edges',
  done: 'Done',
};

export interface TraceBarProps {
  reading: PhotoReading;
  trace: TraceState;
  standing: PhotoTrace | undefined;
}

/** What to do next with this picture, or how the reading of its curve goes on. */
export function TraceSay({ reading, trace: { progress }, standing }: TraceBarProps) {
  const show = useFineLength();
  return (
    <div className="photo-bar" role="status">
      {progress ? (
        <>
          <progress value={progress.share} max={1} aria-label="Reading the curve" />
          <span>{stageWords[progress.stage]} …</span>
        </>
      ) : (
        <p className="photo-say">
          <Figure text={reading.next ?? standingWords(standing, show)} />
        </p>
      )}
    </div>
  );
}

/** The reading of the curve, and what is odd about the picture. */
export function TraceBar({ reading, trace, standing }: TraceBarProps) {
  const { progress, troubles } = trace;
  const { writer } = useShop();
  const doubts = reading.findings.map(({ message }) => message);
  const shown = standing && !standing.outOfDate && troubles.length === 0 ? standing.findings : [];
  const odd = traceWords(shown, placedNames(reading.marks), writer);
  const sentences = [...doubts, ...troubles, ...odd];
  return (
    <>
      <div className="photo-bar screen-only">
        {progress ? (
          <Button className="button" onPress={trace.cancel}>
            Stop
          </Button>
        ) : (
          <Button
            className={standing && !standing.outOfDate ? 'button' : 'button button-main'}
            isDisabled={!reading.request}
            onPress={() => trace.run()}
          >
            {standing ? 'Read the curve again' : 'Read the curve'}
          </Button>
        )}
      </div>
      {sentences.length > 0 && (
        <ul className="photo-findings attention" aria-label="What is odd about this picture">
          {sentences.map((words) => (
            <li key={words}>
              <Figure text={words} />
            </li>
          ))}
        </ul>
      )}
    </>
  );
}

function standingWords(standing: PhotoTrace | undefined, show: (lengthM: number) => string): string {
  if (!standing) return 'All is set: read the curve.';
  if (standing.outOfDate) return 'Something was changed since this curve was read: read it again.';
  const { points, marksRmsM, seenShare, lensEstimated } = standing;
  const lengthM = points
    .slice(1)
    .reduce((sum, at, i) => sum + Math.hypot(at.xM - points[i].xM, at.yM - points[i].yM), 0);
  const marks = `the marks fit to ${show(marksRmsM)}`;
  const seen = seenShare === undefined ? '' : `, both edges seen along ${Math.round(seenShare * 100)} %`;
  const lens = lensEstimated ? 'lens estimated' : 'lens taken as usual; six marks or more would estimate it';
  return `Curve read: ${show(lengthM)} from butt to tip, ${marks}${seen}; ${lens}. Look along it with the zoom; pull it where it leaves the blank.`;
}
