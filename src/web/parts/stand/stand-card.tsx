import { type ReactNode, useMemo, useState } from 'react';
import { Button } from 'react-aria-components';
import type { Change } from '../../../record/operation.ts';
import { rowChanges } from '../../../record/operation.ts';
import type { Stand } from '../../../record/read-load-tests.ts';
import type { QuantityValue } from '../../../record/schema.ts';
import { Field, FieldsRow } from '../../fields/field.tsx';
import { Figure } from '../../fields/figure.tsx';
import { useBuild } from '../../read/build-context.ts';
import { useShop } from '../../read/shop.tsx';
import { useSentence } from '../../read/use-sentence.ts';
import { SendingWords } from '../photo/add-photo.tsx';
import { useAddPhotos } from '../photo/use-add-photos.ts';
import { Fold } from '../sheet/fold.tsx';
import { HangSketch } from './hang-sketch.tsx';
import { PictureOfStand } from './picture-of-stand.tsx';
import { picturesOfStand } from './stand-changes.ts';
import { StandSureness } from './stand-sureness.tsx';
import { type StandPicture, useHangingShape, useStandPictures } from './use-stand-pictures.ts';
import '../photo/photo.css';
import './stand.css';

/** How a device takes a picture. */
export interface TakePicture {
  /** “Picture 2”. */
  name: string;
  onFiles(files: readonly File[]): void;
}

export interface StandCardProps {
  stand: Stand;
  takenBy: string;
  take(how: TakePicture): ReactNode;
}

/** The pictures of one stand, one at a time: what to hang, the picture, its curve, and what is known after it. */
export function StandCard({ stand, takenBy, take }: StandCardProps) {
  const { pictures, now, clampHeightNeededM } = useStandPictures(stand);
  const [picked, pick] = useState<number>();
  const at = pictures.find(({ number }) => number === picked) ?? now ?? pictures.at(-1);
  if (!at) return null;
  return (
    <section className="stand-card" aria-label="Pictures of one stand">
      <nav className="stand-rail screen-only" aria-label="Pictures">
        {pictures.map((picture) => (
          <Button
            key={picture.test.id}
            className="setup-tab"
            aria-current={picture === at ? 'step' : undefined}
            onPress={() => pick(picture.number)}
          >
            <span>Picture {picture.number}</span>
            <span className="small">{stateWords(picture)}</span>
          </Button>
        ))}
      </nav>
      <PictureNow
        key={at.test.id}
        stand={stand}
        picture={at}
        takenBy={takenBy}
        take={take}
        onTaken={() => pick(at.number)}
        onward={now && now !== at && at.isRead ? () => pick(now.number) : undefined}
      />
      <StandSureness pictures={pictures} />
      <StandFields stand={stand} clampHeightNeededM={clampHeightNeededM} />
    </section>
  );
}

function stateWords({ isRead, photo, findings }: StandPicture): string {
  if (findings.length > 0) return 'look again';
  if (isRead) return 'read';
  return photo ? 'not read yet' : 'to take';
}

interface PictureNowProps extends StandCardProps {
  picture: StandPicture;
  /** Its curve is looked at before the next one's turn. */
  onTaken(): void;
  /** To the next picture, once this one is read. */
  onward: (() => void) | undefined;
}

function PictureNow({ stand, picture, takenBy, take, onTaken, onward }: PictureNowProps) {
  const { writer } = useShop();
  const sentence = useSentence();
  const { test, photo, number, hungKg, findings } = picture;
  const photos = useAddPhotos(test.id, takenBy);
  const others = useMemo(
    () => stand.tests.filter(({ id }) => id !== test.id).flatMap((other) => other.photos),
    [stand, test.id],
  );
  const [again, setAgain] = useState(false);
  const onFiles = (files: readonly File[]) => {
    setAgain(false);
    onTaken();
    void photos.add(files.slice(0, 1), withPicture(picture, writer.mass));
  };
  const weight = hungKg ? writer.mass(hungKg) : '';
  const name = `Picture ${number}`;
  return (
    <div className="stand-now">
      {(!photo || again) && <Hang stand={stand} picture={picture} weight={weight} />}
      {photo && !again && (
        <PictureOfStand
          key={photo.id}
          photo={photo}
          isOwn={photos.own.has(photo.id)}
          others={others}
          heldFromTipM={stand.heldFromTipM}
        />
      )}
      {findings.length > 0 && (
        <ul className="attention" aria-label={`What is odd about picture ${number}`}>
          {findings.map((one) => (
            <li key={one.code}>
              <Figure text={sentence(one)} />
            </li>
          ))}
        </ul>
      )}
      {(!photo || again) && take({ name, onFiles })}
      <SendingWords {...photos} />
      {photo && !again && (
        <div className="print-line screen-only">
          {onward && (
            <Button className="button button-main" onPress={onward}>
              Next picture
            </Button>
          )}
          <Button className="button" onPress={() => setAgain(true)}>
            Take picture {number} again
          </Button>
        </div>
      )}
    </div>
  );
}

/** The weight that was proposed counts as hung where nobody wrote another; a picture taken again takes the old one's place. */
function withPicture({ test, photo, proposedKg }: StandPicture, mass: (massKg: number) => string): Change[] {
  const hung = (si: number): QuantityValue => ({ si, text: mass(si) });
  return [
    ...(test.hungKg === undefined && proposedKg !== undefined
      ? rowChanges('loadTests', test.id, { hung: hung(proposedKg) })
      : []),
    ...(photo ? rowChanges('loadPhotos', photo.id, { gone: true }) : []),
  ];
}

function Hang({ stand, picture, weight }: { stand: Stand; picture: StandPicture; weight: string }) {
  const { number, hungKg, test, proposedKg } = picture;
  const { writer } = useShop();
  const shape = useHangingShape(stand, hungKg);
  return (
    <div className="reading-now">
      {shape && <HangSketch shape={shape} weight={weight} />}
      <div className="reading-question">
        <p className="reading-ask" role="status">
          <Figure
            text={
              weight === ''
                ? `Picture ${number}. Hang nothing.`
                : `Picture ${number}. Hang ${weight} at the tip.`
            }
          />
        </p>
        <p>Wait until it is still. Do not touch the stand, the clamp or the marks between the pictures.</p>
        {number === picturesOfStand && (
          <p className="quiet">
            This third picture tells most: more than the clamp moved up, or the blank turned half over.
          </p>
        )}
        {number > 1 && (
          <Field
            path={['loadTests', test.id, 'hung']}
            pale={proposedKg === undefined ? undefined : writer.mass(proposedKg)}
            hint="weigh what you hang, to 1 %"
          />
        )}
      </div>
    </div>
  );
}

function StandFields({
  stand,
  clampHeightNeededM,
}: {
  stand: Stand;
  clampHeightNeededM: number | undefined;
}) {
  const { writer } = useShop();
  const { write } = useBuild();
  const { heldFromTipM } = stand;
  const held =
    heldFromTipM === undefined ? 'where it is held' : `clamp ${writer.length(heldFromTipM)} from the tip`;
  return (
    <Fold title="Clamp and marks" aside={held} holds={[`stands/${stand.id}/`]}>
      <FieldsRow of="stands" row={stand.id} names={['heldFromTip', 'buttAngle', 'standOff', 'leftOut']} />
      {clampHeightNeededM !== undefined && (
        <p>Clamp at least {writer.length(clampHeightNeededM)} above the floor, or the weight touches.</p>
      )}
      <Button
        className="button"
        onPress={() => write('removeStand', rowChanges('stands', stand.id, { gone: true }))}
      >
        Put these pictures away
      </Button>
    </Fold>
  );
}
