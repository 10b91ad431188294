import { Button, ProgressBar } from 'react-aria-components';
import { Findings } from '../../parts/sheet/findings.tsx';
import type { LayoutTask } from '../../worker/messages.ts';
import type { LongTaskState } from '../../worker/use-long-task.ts';
import type { PlaceOffer } from './place-offer.ts';

interface PlaceButtonProps {
  best: LongTaskState<LayoutTask>;
  /** The best marks, on the tape. */
  marks: readonly number[] | undefined;
  offer: PlaceOffer;
  onPlace(fromTipM: readonly number[]): void;
}

/** "Place the guides for this blank": the layout is worked out beforehand, so that pressing only puts it in. */
export function PlaceButton({ best, marks, offer, onPlace }: PlaceButtonProps) {
  const { answer, working, failure } = best;
  const refused = answer?.status === 'refused' ? answer.findings : [];
  const ready = !working && marks !== undefined;
  return (
    <div className="place screen-only">
      {offer === 'placed' && <p>The guides stand as placed for this blank.</p>}
      {(offer === 'first' || offer === 'offered' || offer === 'keep') && (
        <Button
          className={offer === 'offered' ? 'button' : 'button button-main'}
          isDisabled={!ready}
          onPress={() => ready && onPlace(marks)}
        >
          {offer === 'keep' ? 'Use the start’s marks' : 'Place the guides for this blank'}
        </Button>
      )}
      {working && <Working best={best} />}
      {failure && (
        <p className="attention" role="alert">
          No layout could be worked out: {failure}. Load the page again.
        </p>
      )}
      <Findings findings={refused} />
    </div>
  );
}

function Working({ best: { progress } }: { best: LongTaskState<LayoutTask> }) {
  const words =
    progress === undefined
      ? 'bending the rod'
      : progress.stage === 'least'
        ? 'lowering the worst'
        : 'smoothing';
  return (
    <ProgressBar isIndeterminate aria-label="Working out the best layout" className="place-progress quiet">
      Working out the best layout: {words} …
    </ProgressBar>
  );
}
