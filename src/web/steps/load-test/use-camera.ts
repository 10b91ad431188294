import { type RefObject, useEffect, useRef, useState } from 'react';

export type CameraState = 'asking' | 'on' | 'resting' | 'refused' | 'none' | 'insecure';

/** About 2 MP, away from the user where a device has two. */
const wanted: MediaStreamConstraints = {
  audio: false,
  video: { facingMode: 'environment', width: { ideal: 1600 }, height: { ideal: 1200 } },
};

/** The camera in a video element while the page is open and seen; it is let go when the page is left or hidden. */
export function useCamera(): { video: RefObject<HTMLVideoElement | null>; state: CameraState; ask(): void } {
  const video = useRef<HTMLVideoElement>(null);
  const [state, setState] = useState<CameraState>('asking');
  const [asked, setAsked] = useState(0);
  const seen = useSeen();
  useEffect(() => {
    if (!seen) return setState('resting');
    let left = false;
    let stream: MediaStream | undefined;
    setState('asking');
    openCamera().then(
      (opened) => {
        if (left) return stop(opened);
        stream = opened;
        show(video.current, opened);
        setState('on');
      },
      (error: unknown) => !left && setState(stateOf(error)),
    );
    return () => {
      left = true;
      stop(stream);
    };
  }, [seen, asked]);
  return { video, state, ask: () => setAsked((times) => times + 1) };
}

async function openCamera(): Promise<MediaStream> {
  // Browsers hide the camera from a page that is not served over https or from this computer.
  if (!navigator.mediaDevices) throw new DOMException('not over https', 'SecurityError');
  return navigator.mediaDevices.getUserMedia(wanted);
}

function stateOf(error: unknown): CameraState {
  const name = error instanceof DOMException ? error.name : '';
  if (name === 'SecurityError') return 'insecure';
  return name === 'NotAllowedError' ? 'refused' : 'none';
}

function show(video: HTMLVideoElement | null, stream: MediaStream): void {
  if (!video) return;
  video.srcObject = stream;
  video.play().catch(() => undefined);
}

function stop(stream: MediaStream | undefined): void {
  for (const track of stream?.getTracks() ?? []) track.stop();
}

/** Whether the page is the one that is looked at. */
function useSeen(): boolean {
  const [seen, setSeen] = useState(() => document.visibilityState !== 'hidden');
  useEffect(() => {
    const look = () => setSeen(document.visibilityState !== 'hidden');
    document.addEventListener('visibilitychange', look);
    return () => document.removeEventListener('visibilitychange', look);
  }, []);
  return seen;
}
