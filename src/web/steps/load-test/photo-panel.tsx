import { useMemo, useState } from 'react';
import { Button } from 'react-aria-components';
import { rowChanges } from '../../../record/operation.ts';
import type { LoadPhoto, PlaceRole } from '../../../record/read-load-photo.ts';
import type { LoadTest } from '../../../record/read-load-tests.ts';
import type { DeedId } from '../../../words/deeds.ts';
import { Field } from '../../fields/field.tsx';
import { MarksFields } from '../../parts/photo/marks-fields.tsx';
import { type PhotoReading, photoReading } from '../../parts/photo/photo-request.ts';
import { PhotoStage, type StageCurve } from '../../parts/photo/photo-stage.tsx';
import { movePlace, removePlace, setPlace } from '../../parts/photo/place-changes.ts';
import { handlesOf, nextRing } from '../../parts/photo/stage-handles.ts';
import { StandOffField } from '../../parts/photo/stand-off-field.tsx';
import { type Tool, ToolChoice } from '../../parts/photo/tool-choice.tsx';
import { TraceBar, TraceSay } from '../../parts/photo/trace-bar.tsx';
import { useFineLength } from '../../parts/photo/use-fine-length.ts';
import { useFoundMarks } from '../../parts/photo/use-found-marks.ts';
import { useTrace } from '../../parts/photo/use-trace.ts';
import { useBuild } from '../../read/build-context.ts';
import { api } from '../../store/open-document.ts';
import { CurveTable } from './curve-table.tsx';

interface PhotoPanelProps {
  test: LoadTest;
  photo: LoadPhoto;
}

/** One picture of a load test: its marks, the blank's ends, the curve that was read. */
export function PhotoPanel({ test, photo }: PhotoPanelProps) {
  const build = useBuild();
  const show = useFineLength();
  const reading = useMemo(() => photoReading(photo, show), [photo, show]);
  const trace = useTrace(photo.id, show);
  const [picked, setPicked] = useState<Tool>();
  const marksSought = useFoundMarks(photo);
  const tool = picked ?? wantedTool(photo, reading);
  const picture =
    photo.widthPx && photo.heightPx ? { widthPx: photo.widthPx, heightPx: photo.heightPx } : undefined;
  if (!photo.hash || !picture) return <Missing photo={photo} />;

  /** What is changed on a picture whose curve stands reads it anew; undo takes both back. */
  const change = (deed: DeedId, changes: ReturnType<typeof movePlace>) => {
    const gesture = build.gesture(deed);
    build.write(gesture, changes);
    if (photo.trace) trace.run(gesture);
  };
  const ring = nextRing(photo, build.rows('guides'));
  const set = (role: PlaceRole, px: [number, number]) => {
    if (role === 'ring' && !ring) return;
    const guide = role === 'ring' ? ring?.id : undefined;
    change('setPlace', setPlace(photo, role, px, { id: build.newRowId(), guide }));
  };
  const { curves, standing } = curvesOf(photo);
  return (
    <section className="photo-panel" aria-label={`Picture ${photo.name}`}>
      <TraceSay reading={reading} trace={trace} standing={standing} />
      <ToolChoice tool={tool} onPick={setPicked} rod={test.rod} />
      {tool === 'ring' && (
        <p className="quiet" role="status">
          {ring
            ? `Tap the middle of the ring of ${ring.name === 'tip-top' ? 'the tip-top' : ring.name}.`
            : 'Every ring has its tap.'}
        </p>
      )}
      <PhotoStage
        address={api.attachmentAddress(photo.hash)}
        picture={picture}
        label={`Photograph ${photo.name}`}
        handles={handlesOf(photo, reading, build.rows('guides'))}
        curves={curves}
        lostPx={trace.lostPx}
        sets={tool === 'look' ? undefined : toolWords[tool]}
        actions={{
          tap: (px) => tool !== 'look' && set(tool, px),
          move: (id, px) => change('movePlace', movePlace(id, px)),
          bend: (px) => set('via', px),
          remove: (id) => change('removePlace', removePlace(id)),
        }}
      />
      <TraceBar reading={reading} trace={trace} standing={standing} />
      <MarksFields photo={photo} reading={reading} sought={marksSought} />
      <StandOffField photo={photo} reading={reading} show={show} />
      <Field path={['loadPhotos', photo.id, 'part']} />
      {standing && <CurveTable points={standing.points} show={show} />}
      <div className="print-line screen-only">
        <Button
          className="button"
          onPress={() => build.write('removePicture', rowChanges('loadPhotos', photo.id, { gone: true }))}
        >
          Discard this picture
        </Button>
      </div>
    </section>
  );
}

const toolWords: Record<string, string | undefined> = {
  mark: 'a mark',
  butt: 'the butt',
  tip: 'the tip',
  via: 'a point between',
  ring: 'a ring',
};

/** What is still missing is what a tap sets; of points with places six are better than four. */
function wantedTool({ marksBy }: LoadPhoto, { marks, butt, tip }: PhotoReading): Tool {
  if (marks.length < (marksBy === 'rectangle' ? 4 : 6) && !butt) return 'mark';
  if (!butt) return 'butt';
  return tip ? 'look' : 'tip';
}

function curvesOf(photo: LoadPhoto) {
  const standing = photo.trace;
  const curves: StageCurve[] = [];
  if (standing)
    curves.push({ kind: standing.outOfDate ? 'stale' : 'traced', px: standing.points.map(({ px }) => px) });
  return { curves, standing };
}

function Missing({ photo }: { photo: LoadPhoto }) {
  return (
    <p className="attention">
      The picture {photo.name} is named in the record, but it is not in this data folder. Add it again.
    </p>
  );
}
