import { useEffect, useRef, useState } from 'react';
import type { LoadPhoto } from '../../../record/read-load-photo.ts';
import { readPhotos } from '../../../record/read-load-tests.ts';
import { traceWords } from '../../../words/trace.ts';
import type { Writer } from '../../../words/writer.ts';
import { type Build, useBuild } from '../../read/build-context.ts';
import { reasonOf } from '../../read/open-store.ts';
import { useShop } from '../../read/shop.tsx';
import { api } from '../../store/open-document.ts';
import type { Gesture } from '../../store/store-snapshot.ts';
import { openPhotoDesk, type PhotoDesk } from './photo-desk.ts';
import type { PhotoProgress, TraceAnswer } from './photo-messages.ts';
import { photoReading, placedNames, type ShowLength } from './photo-request.ts';
import { traceChanges } from './trace-changes.ts';

export interface TraceState {
  progress: PhotoProgress | undefined;
  /** What went wrong the last time, in sentences; empty when it did not. */
  troubles: readonly string[];
  lostPx: readonly [number, number] | undefined;
  /** Reads the curve anew from what the record says now; under a gesture, so that undo takes both back. */
  run(gesture?: Gesture): void;
  cancel(): void;
}

type Outcome = Pick<TraceState, 'troubles' | 'lostPx'>;
const well: Outcome = { troubles: [], lostPx: undefined };

/** Follows the blank in a picture, in the background, and keeps the curve in the record. */
export function useTrace(photoId: string, show: ShowLength): TraceState {
  const build = useBuild();
  const { writer } = useShop();
  const desk = useRef<PhotoDesk>(undefined);
  const stop = useRef<AbortController>(undefined);
  const [progress, setProgress] = useState<PhotoProgress>();
  const [outcome, setOutcome] = useState<Outcome>(well);
  useEffect(
    () => () => {
      desk.current?.close();
      desk.current = undefined;
    },
    [],
  );
  const run = (gesture?: Gesture) => {
    stop.current?.abort();
    const mine = new AbortController();
    stop.current = mine;
    desk.current ??= openPhotoDesk();
    setOutcome(well);
    setProgress({ stage: 'picture', share: 0 });
    look(build, desk.current, { photoId, show, writer, gesture, signal: mine.signal, setProgress })
      .then(setOutcome, (error: unknown) => {
        if (!mine.signal.aborted) setOutcome({ troubles: [`${reasonOf(error)}.`], lostPx: undefined });
      })
      .finally(() => stop.current === mine && setProgress(undefined));
  };
  return { ...outcome, progress, run, cancel: () => stop.current?.abort() };
}

interface Look {
  photoId: string;
  show: ShowLength;
  writer: Writer;
  gesture: Gesture | undefined;
  signal: AbortSignal;
  setProgress(progress: PhotoProgress): void;
}

async function look(build: Build, desk: PhotoDesk, wanted: Look): Promise<Outcome> {
  const { photoId, show, gesture, signal, setProgress } = wanted;
  const photo = photoNow(build, photoId);
  const reading = photo && photoReading(photo, show);
  if (!photo?.hash || !reading?.request) return well;
  const answer = await desk.look(
    {
      does: 'trace',
      address: api.attachmentAddress(photo.hash),
      request: reading.request,
      standOffM: photo.standOffM ?? 0,
      rings: reading.rings.map(({ guide, px }) => ({ guide, px })),
    },
    { signal, progress: setProgress },
  );
  const { traced } = answer;
  const words = traceWords(traced.findings, placedNames(reading.marks), wanted.writer);
  if (traced.status === 'refused') return { troubles: words, lostPx: undefined };
  if (traced.status === 'lost') return { troubles: words, lostPx: traced.reachedPx };
  const { version } = await api.info();
  build.store.write(gesture ?? 'readCurve', newTrace(photo, answer, version));
  return well;
}

/** The picture as the record has it now, not as it was when the sheet was last drawn. */
function photoNow(build: Build, photoId: string): LoadPhoto | undefined {
  return readPhotos(build.store.getSnapshot().document).find(({ id }) => id === photoId);
}

function newTrace(photo: LoadPhoto, { traced, rings, cameraAwayM }: TraceAnswer, engineVersion: string) {
  if (traced.status !== 'converged') return [];
  return traceChanges({
    photo,
    points: traced.points,
    rings,
    marksRmsM: traced.marksRmsM,
    cameraAwayM,
    seenShare: traced.seenShare,
    lensEstimated: traced.lens.estimated,
    findings: traced.findings,
    madeAt: new Date().toISOString(),
    engineVersion,
  });
}
