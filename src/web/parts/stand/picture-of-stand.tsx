import { useEffect, useMemo, useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import { rowChanges } from '../../../record/operation.ts';
import type { LoadPhoto } from '../../../record/read-load-photo.ts';
import { fewestMarks, readWalls, wallOfMarks } from '../../../record/read-walls.ts';
import type { DeedId } from '../../../words/deeds.ts';
import { Field } from '../../fields/field.tsx';
import { useBuild } from '../../read/build-context.ts';
import { useShop } from '../../read/shop.tsx';
import { api } from '../../store/open-document.ts';
import { MarksFields } from '../photo/marks-fields.tsx';
import { type PhotoReading, photoReading } from '../photo/photo-request.ts';
import { PhotoStage } from '../photo/photo-stage.tsx';
import { movePlace, removePlace, setPlace } from '../photo/place-changes.ts';
import { handlesOf } from '../photo/stage-handles.ts';
import { type Tool, ToolChoice } from '../photo/tool-choice.tsx';
import { TraceBar, TraceSay } from '../photo/trace-bar.tsx';
import { useFineLength } from '../photo/use-fine-length.ts';
import { useFoundEnds } from '../photo/use-found-ends.ts';
import { useFoundMarks } from '../photo/use-found-marks.ts';
import type { TraceState } from '../photo/use-trace.ts';
import { useTrace } from '../photo/use-trace.ts';
import { Fold } from '../sheet/fold.tsx';
import { whereTheBlankIs } from './where-the-blank-is.ts';

export interface PictureOfStandProps {
  photo: LoadPhoto;
  /** Added on this device, which then looks for its marks and reads its curve by itself. */
  isOwn: boolean;
  /** The other pictures of its stand. */
  others: readonly LoadPhoto[];
  /** Clamp to tip. */
  heldFromTipM: number | undefined;
}

/** One picture of a stand: marks found, ends tapped, the curve laid over it as soon as it can be read. */
export function PictureOfStand({ photo, isOwn, others, heldFromTipM }: PictureOfStandProps) {
  const build = useBuild();
  const show = useFineLength();
  const reading = useMemo(() => photoReading(photo, show), [photo, show]);
  const trace = useTrace(photo.id, show);
  const sought = useFoundMarks(photo, isOwn);
  const shop = useShop();
  const known = useMemo(() => {
    const { marks } = reading;
    const numbers = photo.places.flatMap(({ number }) => number ?? []);
    const wall = wallOfMarks(readWalls(shop.document), numbers);
    return whereTheBlankIs({ marks, heldFromTipM, others, wall });
  }, [reading, photo, shop.document, others, heldFromTipM]);
  const endsWords = useFoundEnds(photo, known, isOwn && !sought.looking);
  const [picked, setPicked] = useState<ReturnType<typeof wantedTap>>();
  const [touched, setTouched] = useState(false);
  useReadByItself(photo, trace, (isOwn || touched) && reading.request !== undefined);
  const { widthPx, heightPx } = photo;
  if (!photo.hash || !widthPx || !heightPx) {
    return <p className="attention">The picture {photo.name} is not in this data folder. Take it again.</p>;
  }
  const change = (deed: DeedId, changes: ReturnType<typeof movePlace>) => {
    setTouched(true);
    build.write(deed, changes);
  };
  const tool = picked ?? wantedTap(reading);
  const set = (px: [number, number]) => {
    if (tool === 'look' || tool === 'ring') return;
    change('setPlace', setPlace(photo, tool, px, { id: build.newRowId() }));
    setPicked(undefined);
  };
  const standing = photo.trace;
  return (
    <section className="photo-panel" aria-label={`Picture ${photo.name}`}>
      <TraceSay reading={reading} trace={trace} standing={standing} />
      <PhotoStage
        address={api.attachmentAddress(photo.hash)}
        picture={{ widthPx, heightPx }}
        label={`Photograph ${photo.name}`}
        handles={handlesOf(photo, reading, [])}
        curves={
          standing
            ? [{ kind: standing.outOfDate ? 'stale' : 'traced', px: standing.points.map(({ px }) => px) }]
            : []
        }
        lostPx={trace.lostPx}
        sets={tapWords[tool]}
        actions={{
          tap: set,
          move: (id, px) => change('movePlace', movePlace(id, px)),
          bend: (px) => change('setPlace', setPlace(photo, 'via', px, { id: build.newRowId() })),
          remove: (id) => change('removePlace', removePlace(id)),
        }}
      />
      <p role="status" className="small">
        {sought.words} {endsWords}
      </p>
      <TraceBar reading={reading} trace={trace} standing={standing} />
      <Fold
        title="Marks and taps of this picture"
        holds={[`loadPhotos/${photo.id}/`, `photoPlaces/`]}
        startOpen={
          reading.marks.length > 0 && reading.next !== undefined && reading.marks.some(({ atM }) => !atM)
        }
      >
        <ToolChoice tool={tool} onPick={setPicked} rod="bare" />
        <MarksFields photo={photo} reading={reading} sought={sought} />
        <Field path={['loadPhotos', photo.id, 'standOff']} />
        <Button
          className="button"
          onPress={() => build.write('removePicture', rowChanges('loadPhotos', photo.id, { gone: true }))}
        >
          Discard this picture
        </Button>
      </Fold>
    </section>
  );
}

/** Once for every state of its taps. */
function useReadByItself(photo: LoadPhoto, trace: TraceState, may: boolean): void {
  const tried = useRef('');
  const { madeFrom } = photo;
  const stands = photo.trace !== undefined && !photo.trace.outOfDate;
  useEffect(() => {
    if (!may || stands || tried.current === madeFrom) return;
    tried.current = madeFrom;
    trace.run();
  });
}

/** What is still missing is what a tap sets: marks where the printed ones were not found, then the ends. */
function wantedTap({ marks, butt, tip }: PhotoReading): Tool {
  if (marks.length < fewestMarks && !butt) return 'mark';
  if (!butt) return 'butt';
  return tip ? 'look' : 'tip';
}

const tapWords: Record<Tool, string | undefined> = {
  mark: 'a mark',
  butt: 'the butt',
  tip: 'the tip',
  via: 'a point between',
  ring: undefined,
  look: undefined,
};
