import { type ReactNode, type RefObject, useEffect, useRef } from 'react';
import { Button, DropZone, FileTrigger, Text } from 'react-aria-components';
import { useBuild } from '../../read/build-context.ts';
import { PhoneInvitation } from './phone-invitation.tsx';
import { type AddedPhotos, useAddPhotos } from './use-add-photos.ts';

/** What the file dialogue offers; what the browser shows but the server does not take is converted. */
export const pictureKinds = ['image/jpeg', 'image/png', 'image/webp', 'image/*'];

/** A picture for a test: from this computer, dropped, pasted, or from the telephone. */
export function AddPhoto({ test, first }: { test: string; first: boolean }) {
  const { id } = useBuild();
  const added = useAddPhotos(test, 'this computer');
  const { add } = added;
  const place = useRef<HTMLDivElement>(null);
  usePaste(place, (files) => void add(files));
  return (
    <div className="screen-only" ref={place}>
      <DropZone
        className="photo-drop"
        // What is no picture is taken too, and refused with the reason.
        getDropOperation={() => 'copy'}
        onDrop={async ({ items }) => {
          const files = items.flatMap((item) => (item.kind === 'file' ? [item.getFile()] : []));
          await add(await Promise.all(files));
        }}
      >
        <Text slot="label">
          {first ? 'Add a picture of this test' : 'Add another picture'}: choose, drop or paste it.
        </Text>
        <FileTrigger
          acceptedFileTypes={pictureKinds}
          allowsMultiple
          onSelect={(files) => files && add([...files])}
        >
          <Button className="button">Choose a picture</Button>
        </FileTrigger>
        <p className="small quiet">
          JPEG, PNG or WebP of up to 50 megapixels. Where and with what it was taken is not kept; its pixels
          are.
        </p>
        <SendingWords {...added} />
      </DropZone>
      <PhoneInvitation path={`/photo/${id}/${test}`} />
    </div>
  );
}

export function SendingWords({
  sending,
  troubles,
  waiting,
}: Pick<AddedPhotos, 'sending' | 'troubles' | 'waiting'>): ReactNode {
  return (
    <div role="status">
      {waiting > 0 && (
        <p className="attention">
          The shop’s computer cannot be reached.{' '}
          {waiting === 1 ? 'The picture is' : `${waiting} pictures are`} kept on this device and sent by
          itself when the network is back.
        </p>
      )}
      {sending && waiting === 0 && <p>Sending {sending} …</p>}
      {troubles.map((words) => (
        <p key={words} className="attention">
          {words}
        </p>
      ))}
    </div>
  );
}

/**
 * A picture in the clipboard goes into the test that has the focus, else into the newest, which stands first. Text
 * pasted into a field stays text, though a table copied elsewhere comes with its own picture.
 */
function usePaste(place: RefObject<HTMLElement | null>, add: (files: readonly File[]) => void): void {
  useEffect(() => {
    const paste = (event: ClipboardEvent) => {
      const files = [...(event.clipboardData?.files ?? [])].filter(({ type }) => type.startsWith('image/'));
      const own = place.current?.closest('.test-card');
      const focused = document.activeElement?.closest('.test-card') ?? document.querySelector('.test-card');
      if (files.length === 0 || own !== focused) return;
      const target = event.target instanceof Element ? event.target : undefined;
      if (target?.closest('input, textarea') && event.clipboardData?.types.includes('text/plain')) return;
      event.preventDefault();
      // The drop field's own paste takes no picture that is only in the clipboard; it must not see this one.
      event.stopPropagation();
      add(files);
    };
    addEventListener('paste', paste, true);
    return () => removeEventListener('paste', paste, true);
  });
}
