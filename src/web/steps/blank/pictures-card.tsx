import { Button, DropZone, FileTrigger, Text } from 'react-aria-components';
import type { Stand } from '../../../record/read-load-tests.ts';
import { pictureKinds } from '../../parts/photo/add-photo.tsx';
import { PhoneInvitation } from '../../parts/photo/phone-invitation.tsx';
import { StandCard, type TakePicture } from '../../parts/stand/stand-card.tsx';
import { useBuild } from '../../read/build-context.ts';

/** The blank measured by pictures, on this computer or with the telephone. */
export function PicturesCard({ stand }: { stand: Stand }) {
  const { id } = useBuild();
  return (
    <>
      <StandCard stand={stand} takenBy="this computer" take={(how) => <ChoosePicture {...how} />} />
      <PhoneInvitation path={`/stand/${id}/${stand.id}`} />
    </>
  );
}

function ChoosePicture({ name, onFiles }: TakePicture) {
  return (
    <DropZone
      className="photo-drop screen-only"
      getDropOperation={() => 'copy'}
      onDrop={async ({ items }) => {
        const files = items.flatMap((item) => (item.kind === 'file' ? [item.getFile()] : []));
        onFiles(await Promise.all(files));
      }}
    >
      <Text slot="label">{name}: take, choose or drop it.</Text>
      <FileTrigger acceptedFileTypes={pictureKinds} onSelect={(files) => files && onFiles([...files])}>
        <Button className="button button-main">Take or choose the picture</Button>
      </FileTrigger>
    </DropZone>
  );
}
