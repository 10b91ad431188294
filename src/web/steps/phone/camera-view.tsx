import { useEffect, useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import type { TakePicture } from '../../parts/stand/stand-card.tsx';
import { reasonOf } from '../../read/open-store.ts';
import { mostLooks, watchForRest } from './at-rest.ts';
import { frameTrouble, hasMoved } from './frame-check.ts';
import { grabFrame, smallFrame } from './grab-frame.ts';
import { PictureButton } from './picture-button.tsx';
import { useCamera } from './use-camera.ts';

/** Time to step back, so that nobody touches the stand. */
const countdownS = 5;
interface CameraViewProps extends TakePicture {
  onClose(): void;
}

/** What the camera sees, and one button: it counts down, waits until nothing moves, and takes the picture. */
export function CameraView({ name, onFiles, onClose }: CameraViewProps) {
  const { video, isOpen, trouble } = useCamera();
  const shot = useShot(video, (file) => onFiles([file]), `${name.toLowerCase().replace(' ', '-')}.jpg`);
  return (
    <div className="phone-page">
      {trouble === '' && (
        <div className="camera-frame">
          <video ref={video} muted playsInline className="camera-video" aria-label="What the camera sees" />
          {shot.count !== undefined && <p className="camera-count">{shot.count}</p>}
        </div>
      )}
      <p role="status" className={trouble || shot.words ? 'attention' : 'quiet'}>
        {trouble || shot.words || 'Set the telephone on a stand: all marks, clamp and weight in the picture.'}
      </p>
      {trouble === '' && (
        <Button
          className="button button-main phone-button"
          isDisabled={!isOpen}
          onPress={shot.isRunning ? shot.stop : shot.start}
        >
          {shot.isRunning ? 'Stop' : `Take ${name.toLowerCase()} in ${countdownS} s`}
        </Button>
      )}
      {trouble !== '' && (
        <>
          <PictureButton main capture label="Use the device’s camera app" onFiles={onFiles} />
          <PictureButton label="Choose one that was taken" onFiles={onFiles} />
        </>
      )}
      <Button className="button" onPress={onClose}>
        Close the camera
      </Button>
    </div>
  );
}

function useShot(video: ReturnType<typeof useCamera>['video'], done: (file: File) => void, fileName: string) {
  const [count, setCount] = useState<number>();
  const [words, setWords] = useState('');
  const [isRunning, setRunning] = useState(false);
  const run = useRef<{ stopped: boolean }>(undefined);
  const stop = () => {
    if (run.current) run.current.stopped = true;
    setRunning(false);
    setCount(undefined);
  };
  useEffect(
    () => () => {
      if (run.current) run.current.stopped = true;
    },
    [],
  );
  const start = async () => {
    const mine = { stopped: false };
    run.current = mine;
    setWords('');
    setRunning(true);
    for (let left = countdownS; left > 0 && !mine.stopped; left--) {
      setCount(left);
      await pause(1000);
    }
    setCount(undefined);
    const seen = video.current;
    if (mine.stopped || !seen) return;
    const trouble = await stillFrame(seen, mine, setWords);
    if (mine.stopped) return;
    setRunning(false);
    setWords(trouble ?? '');
    if (trouble === undefined)
      await grabFrame(seen, fileName).then(done, (error) => setWords(`${reasonOf(error)}.`));
  };
  return { count, words, isRunning, start: () => void start(), stop };
}

/** Waits until nothing moves from one look to the next; answers why the picture cannot be taken. */
async function stillFrame(
  video: HTMLVideoElement,
  run: { stopped: boolean },
  say: (words: string) => void,
): Promise<string | undefined> {
  const watch = watchForRest(hasMoved);
  for (let look = 0; look < mostLooks && !run.stopped; look++) {
    const now = smallFrame(video);
    const { moved, rests, nextLookMs } = watch.see(now);
    if (rests) return frameTrouble(now);
    if (moved) say('Something still moves: waiting until the weight hangs still.');
    await pause(nextLookMs);
  }
  return 'It never hung still. Steady the weight, keep out of the picture, and try again.';
}

function pause(ms: number): Promise<void> {
  return new Promise((done) => setTimeout(done, ms));
}
