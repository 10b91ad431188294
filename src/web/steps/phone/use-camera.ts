import { type RefObject, useEffect, useRef, useState } from 'react';

/** Browsers show a camera to pages over https and on this computer's own address only. */
export function hasCamera(): boolean {
  return window.isSecureContext && typeof navigator.mediaDevices?.getUserMedia === 'function';
}

export interface Camera {
  video: RefObject<HTMLVideoElement | null>;
  isOpen: boolean;
  /** Why there is no picture, in words; empty while there is none. */
  trouble: string;
}

/** The camera at the back, as finely as it goes, for as long as the component stands. */
export function useCamera(): Camera {
  const video = useRef<HTMLVideoElement>(null);
  const [isOpen, setOpen] = useState(false);
  const [trouble, setTrouble] = useState('');
  useEffect(() => {
    let left = false;
    let stream: MediaStream | undefined;
    const stop = () => {
      for (const track of stream?.getTracks() ?? []) track.stop();
    };
    openCamera().then(
      async (opened) => {
        stream = opened;
        if (left || !video.current) return stop();
        video.current.srcObject = opened;
        opened.getVideoTracks()[0]?.addEventListener('ended', () => setTrouble(endedWords));
        await video.current.play();
        setOpen(true);
      },
      (error: unknown) => !left && setTrouble(troubleWords(error)),
    );
    return () => {
      left = true;
      stop();
    };
  }, []);
  return { video, isOpen, trouble };
}

function openCamera(): Promise<MediaStream> {
  return navigator.mediaDevices.getUserMedia({
    audio: false,
    video: { facingMode: { ideal: 'environment' }, width: { ideal: 4096 }, height: { ideal: 3072 } },
  });
}

const endedWords = 'The camera was taken away by another program. Close it and take the picture again.';

function troubleWords(error: unknown): string {
  const name = error instanceof DOMException ? error.name : '';
  if (name === 'NotAllowedError')
    return 'The camera was refused. Allow it for this page in the browser’s settings, or use the device’s camera app below.';
  if (name === 'NotFoundError' || name === 'OverconstrainedError')
    return 'This device has no camera the browser can use. Choose a picture below.';
  if (name === 'NotReadableError')
    return 'Another program holds the camera. Close it, or use the device’s camera app below.';
  return 'The camera did not open. Use the device’s camera app below.';
}
