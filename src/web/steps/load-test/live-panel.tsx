import type { RefObject } from 'react';
import { Button } from 'react-aria-components';
import type { OrientedCurve } from '../../../engine/load-test/curve-beside.ts';
import type { LoadTest } from '../../../record/read-load-tests.ts';
import { hangWords, limitWords, missWords, restWords, spanWords } from '../../../words/live.ts';
import { Figure } from '../../fields/figure.tsx';
import { SendingWords } from '../../parts/photo/add-photo.tsx';
import { useAddPhotos } from '../../parts/photo/use-add-photos.ts';
import { useShop } from '../../read/shop.tsx';
import { proofMiss } from './live-proof.ts';
import type { LiveReadings } from './live-readings.ts';
import { TestCaution } from './test-caution.tsx';
import type { LiveProofState } from './use-live-proof.ts';

export interface LivePanelProps {
  test: LoadTest;
  video: RefObject<HTMLVideoElement | null>;
  readings: LiveReadings | undefined;
  curve: OrientedCurve | undefined;
  proof: LiveProofState;
  isSeen: boolean;
}

/** The worst of the picture in large figures, the next weight, and the one button that keeps something. */
export function LivePanel({ test, video, readings, curve, proof, isSeen }: LivePanelProps) {
  const photos = useAddPhotos(test.id, 'the live view');
  const { add, sending, added } = photos;
  const keep = async () => {
    const file = await pictureOf(video.current);
    if (!file) return;
    proof.keepSeen();
    await add([file]);
  };
  return (
    <>
      {readings && <Worst readings={readings} />}
      <ProofCall proof={proof} curve={curve} />
      <Button className="button button-main live-keep" isDisabled={!isSeen} onPress={keep}>
        Keep this picture
      </Button>
      <SendingWords {...photos} />
      {added > 0 && !sending && (
        <p role="status">{added === 1 ? 'One picture is' : `${added} pictures are`} in the load test.</p>
      )}
    </>
  );
}

function Worst({ readings: { worstAngle, worstGap } }: { readings: LiveReadings }) {
  const { writer } = useShop();
  const over = worstAngle && worstAngle.value.value - worstAngle.value.plusMinus > worstAngle.limitRad;
  return (
    <div className="live-worst">
      {worstAngle && (
        <p className={over ? 'attention' : undefined}>
          <strong className="figures">{writer.angle(worstAngle.value.value)}</strong>
          <span>
            guide {worstAngle.ring}
            <br />
            <span className="quiet">
              {limitWords(writer.angle(worstAngle.limitRad))}, ±{writer.angle(worstAngle.value.plusMinus)}
            </span>
          </span>
        </p>
      )}
      {worstGap && (
        <p className="live-gap">
          <Figure
            text={`gap ${writer.fine(Math.max(0, worstGap.value.value))}, ${limitWords(writer.fine(worstGap.limitM))}`}
          />{' '}
          <span className="quiet">{spanWords(worstGap.ring)}</span>
        </p>
      )}
    </div>
  );
}

function ProofCall({ proof, curve }: { proof: LiveProofState; curve: OrientedCurve | undefined }) {
  const { writer } = useShop();
  const { made, nextKg, trouble } = proof;
  if (!made) {
    return (
      <div>
        {nextKg !== undefined && (
          <Button className="button" isDisabled={!curve} onPress={proof.predict}>
            Predict {writer.load(nextKg)}
          </Button>
        )}
        {trouble && (
          <p className="attention" role="status">
            {trouble}
          </p>
        )}
      </div>
    );
  }
  const miss = curve && proofMiss(curve, made);
  const near = miss?.allowedM !== undefined && miss.tipApartM <= miss.allowedM;
  return (
    <div className="live-proof">
      <h2>{hangWords(made.hungKg, writer)}</h2>
      <p>
        <Figure text={restWords(miss?.allowedM, writer)} />
      </p>
      {miss && (
        <p className={near ? 'live-near' : undefined} role="status">
          <Figure text={missWords(miss.tipApartM, writer)} />
        </p>
      )}
      <TestCaution />
      <Button className="button" onPress={proof.end}>
        End this proof
      </Button>
    </div>
  );
}

/** The camera's picture of this moment, as a file. */
async function pictureOf(video: HTMLVideoElement | null): Promise<File | undefined> {
  if (!video || video.videoWidth === 0) return undefined;
  const canvas = document.createElement('canvas');
  canvas.width = video.videoWidth;
  canvas.height = video.videoHeight;
  canvas.getContext('2d')?.drawImage(video, 0, 0);
  const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/jpeg', 0.95));
  return blob ? new File([blob], 'live.jpg', { type: 'image/jpeg' }) : undefined;
}
