import { Button, FileTrigger } from 'react-aria-components';
import { rowChanges } from '../../../record/operation.ts';
import { Part } from '../../parts/sheet/part.tsx';
import { useBuild } from '../../read/build-context.ts';
import { useSay } from '../../read/messages.tsx';
import { reasonOf } from '../../read/open-store.ts';
import { textOf } from '../../read/values.ts';
import { api } from '../../store/open-document.ts';

/** Types every browser can show; others are offered as a file. */
const shown = /^image\/(jpeg|png|webp|avif)$/;

/** Pictures of the damage, taken at the counter or chosen from the device. */
export function PicturesPart() {
  const { rows, newRowId, write } = useBuild();
  const say = useSay();
  const pictures = rows('attachments').filter((row) => textOf(row, 'content') !== undefined);
  const add = async (files: FileList | null) => {
    for (const file of files ?? []) {
      try {
        const { hash, type } = await api.addAttachment(file);
        const id = newRowId();
        write(
          'addPicture',
          rowChanges('attachments', id, { content: hash, name: file.name.slice(0, 200), type }),
        );
      } catch (error) {
        say(`${file.name}: ${reasonOf(error)}`);
      }
    }
  };
  return (
    <Part
      title="Pictures"
      tools={
        <FileTrigger acceptedFileTypes={['image/*', 'application/pdf']} allowsMultiple onSelect={add}>
          <Button className="button">Add a picture</Button>
        </FileTrigger>
      }
    >
      {pictures.length === 0 ? (
        <p className="quiet">One of the break, one of the whole rod. It saves a quarrel later.</p>
      ) : (
        <ul className="ticket-pictures">
          {pictures.map((row) => {
            const name = textOf(row, 'name') ?? 'picture';
            const address = api.attachmentAddress(textOf(row, 'content') ?? '');
            return (
              <li key={row.id}>
                <a href={address} target="_blank" rel="noreferrer">
                  {shown.test(textOf(row, 'type') ?? '') ? <img src={address} alt={name} /> : name}
                </a>
                <Button
                  className="plain"
                  onPress={() =>
                    write('removePicture', [{ path: ['attachments', row.id, 'gone'], value: true }])
                  }
                >
                  Take off<span className="visually-hidden"> {name}</span>
                </Button>
              </li>
            );
          })}
        </ul>
      )}
    </Part>
  );
}
