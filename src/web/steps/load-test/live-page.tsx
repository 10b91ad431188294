import { useMemo, useState } from 'react';
import { Button } from 'react-aria-components';
import { Link } from 'wouter';
import type { LiveKnown } from '../../../image/live/look-live.ts';
import { type LoadTest, readLoadTests } from '../../../record/read-load-tests.ts';
import {
  cameraWords,
  fewMarksWords,
  lostWords,
  spiralLiveWords,
  tapsWantedWords,
  triedWords,
  wallUnknownWords,
} from '../../../words/live.ts';
import { BuildProvider } from '../../parts/open-build.tsx';
import { Page } from '../../parts/sheet/page.tsx';
import { SaveBanner } from '../../parts/sheet/save-line.tsx';
import { useBuild } from '../../read/build-context.ts';
import type { SheetModel } from '../../read/sheet-model.ts';
import { useShop } from '../../read/shop.tsx';
import { useStayAwake } from '../../read/stay-awake.ts';
import { useSheetModel } from '../../read/use-rod-sheet.ts';
import { useSentence } from '../../read/use-sentence.ts';
import { knownNow } from './live-known.ts';
import { LivePanel } from './live-panel.tsx';
import { lookCurve, proofPixels, type TracedLook } from './live-proof.ts';
import { lastGuideRead, liveReadings } from './live-readings.ts';
import { LiveStage } from './live-stage.tsx';
import { useCamera } from './use-camera.ts';
import { type Live, useLive } from './use-live.ts';
import { useLiveProof } from './use-live-proof.ts';
import './live.css';

type Pixel = readonly [number, number];

/** A camera on its stand shows how the rod bends while the builder works on it. */
export function LivePage({ build, test }: { build: string; test: string }) {
  return (
    <BuildProvider id={build}>
      <LiveSheet test={test} />
    </BuildProvider>
  );
}

function LiveSheet({ test: id }: { test: string }) {
  const { document, id: build } = useBuild();
  const model = useSheetModel();
  const test = useMemo(() => readLoadTests(document).find((one) => one.id === id), [document, id]);
  const back = <Link href={`/builds/${build}/load-test`}>Back to the load test</Link>;
  if (!test || !model) {
    return (
      <Page title="Live">
        <p className="attention">
          {test
            ? 'Give the blank’s sections, a diameter and the guides first. The live view needs their lengths.'
            : 'This test is not in the build any more. Open the live view from another one.'}
        </p>
        <p>{back}</p>
      </Page>
    );
  }
  return (
    <Page title="Live">
      <SaveBanner />
      <Watch test={test} model={model} />
      <p>{back}</p>
    </Page>
  );
}

function Watch({ test, model }: { test: LoadTest; model: SheetModel }) {
  const { document } = useBuild();
  const { document: shop } = useShop();
  const camera = useCamera();
  const [taps, setTaps] = useState<readonly Pixel[]>([]);
  const [clamp, setClamp] = useState<LiveKnown['clamp']>();
  const [seen, setSeen] = useState('');
  const ofWall = useMemo(() => knownNow(document, shop, numbersIn(seen)), [document, shop, seen]);
  const known = useMemo(() => withTaps(ofWall, model, clamp, taps), [ofWall, model, clamp, taps]);
  const live = useLive(camera.video, known.wall.length >= 4 ? known : undefined, camera.state === 'on');
  useStayAwake(camera.state === 'on');
  const { look } = live;
  const traced = look?.status === 'traced' ? look : undefined;
  const shown = look ? look.marks.map(({ number }) => number).join(' ') : seen;
  if (shown !== seen) setSeen(shown);
  // Taps hold for one look: the tip moves with the next weight, the clamp stays.
  if (traced && taps.length === 2) {
    setClamp(clampIn(traced));
    setTaps([]);
  }
  const curve = useMemo(() => traced && lookCurve(traced), [traced]);
  const proof = useLiveProof({ model, test, curve });
  const readings = useMemo(
    () => (traced && test.rod === 'taped' ? liveReadings(traced.points, model) : undefined),
    [traced, model, test.rod],
  );
  const wanted = tapWanted(look, taps.length);
  return (
    <div className="live">
      <LiveStage
        video={camera.video}
        look={look}
        readings={readings}
        limitRad={model.limits.lineAngleRad}
        predicted={predictedIn(traced, curve, proof.made)}
        taps={traced ? [] : taps}
        onTap={wanted && ((px) => setTaps((before) => (before.length < 2 ? [...before, px] : [px])))}
      />
      <div className="live-beside">
        <LiveState live={live} camera={camera} wall={known.wall.length} wanted={wanted} />
        <LivePanel
          test={test}
          video={camera.video}
          readings={readings}
          curve={curve}
          proof={proof}
          isSeen={traced !== undefined}
        />
        {test.rod === 'taped' && model.choices.spiral && (
          <p className="small">
            {spiralLiveWords(lastGuideRead(model.request), model.field.fromTipM.length)}
          </p>
        )}
        <p className="small quiet">{triedWords}</p>
      </div>
    </div>
  );
}

function numbersIn(seen: string): number[] {
  return seen.split(' ').filter(Boolean).map(Number);
}

function withTaps(
  ofWall: Pick<LiveKnown, 'wall' | 'clamp'>,
  { rod }: SheetModel,
  clamp: LiveKnown['clamp'],
  [butt, tip]: readonly Pixel[],
): LiveKnown {
  const ends = butt && tip ? { ends: { butt, tip } } : {};
  return { ...ofWall, clamp: clamp ?? ofWall.clamp, lengthM: rod.lengthM, ...ends };
}

function clampIn({ points: [{ xM, yM }] }: TracedLook): LiveKnown['clamp'] {
  return { atM: [xM, yM], sigmaM: 0.002 };
}

function tapWanted(look: Live['look'], taps: number): 'butt' | 'tip' | undefined {
  if (taps === 1) return 'tip';
  return taps === 0 && (look?.status === 'taps-wanted' || look?.status === 'lost') ? 'butt' : undefined;
}

function predictedIn(
  traced: TracedLook | undefined,
  curve: ReturnType<typeof lookCurve>,
  made: ReturnType<typeof useLiveProof>['made'],
) {
  return traced && curve && made ? proofPixels(traced, curve, made) : undefined;
}

interface LiveStateProps {
  live: Live;
  camera: ReturnType<typeof useCamera>;
  wall: number;
  wanted: 'butt' | 'tip' | undefined;
}

/** One line: what is seen, or what to do so that something is. */
function LiveState({ live: { look, secondsEach, trouble }, camera, wall, wanted }: LiveStateProps) {
  const sentence = useSentence();
  if (wall < 4) return <p className="attention">{wallUnknownWords}</p>;
  if (camera.state !== 'on') {
    return (
      <div role="status">
        <p className="attention">{cameraWords[camera.state]}</p>
        {(camera.state === 'refused' || camera.state === 'none') && (
          <Button className="button" onPress={camera.ask}>
            Try again
          </Button>
        )}
      </div>
    );
  }
  const known = look?.marks.filter((mark) => mark.known).length ?? 0;
  if (trouble) return <p className="attention">{trouble}</p>;
  if (!look) return <p role="status">Looking for the marks …</p>;
  if (look.status === 'few-marks') return <p className="attention">{fewMarksWords(known)}</p>;
  if (wanted === 'tip' || look.status !== 'traced') {
    const finding = look.status === 'traced' ? undefined : look.findings[0];
    const tap = wanted ? tapsWantedWords[wanted] : lostWords;
    return <p className="attention">{finding && wanted !== 'tip' ? sentence(finding) : tap}</p>;
  }
  return (
    <p className="quiet figures" role="status">
      {known} marks{secondsEach === undefined ? '' : ` · ${secondsEach.toFixed(1)} s a picture`}
    </p>
  );
}
