import { allRows, type Row } from '../../../record/document.ts';
import { useBuild } from '../../read/build-context.ts';
import { useSay } from '../../read/messages.tsx';
import { useAttempt } from '../../read/use-attempt.ts';
import { textOf } from '../../read/values.ts';
import { api } from '../../store/open-document.ts';
import { AskFirst } from '../sheet/ask-first.tsx';
import { Part } from '../sheet/part.tsx';

/** Every picture and paper this document keeps, those taken off too, each to be erased for good. */
export function KeptPictures() {
  const { document } = useBuild();
  const kept = allRows(document, 'attachments').filter((row) => textOf(row, 'content') !== undefined);
  if (kept.length === 0) return null;
  return (
    <Part title="Pictures kept" aside={kept.length === 1 ? '1 picture' : `${kept.length} pictures`} folded>
      <ul>
        {kept.map((row) => (
          <KeptPicture key={row.id} row={row} />
        ))}
      </ul>
    </Part>
  );
}

function KeptPicture({ row }: { row: Row }) {
  const { id } = useBuild();
  const say = useSay();
  const { attempt } = useAttempt();
  const name = textOf(row, 'name') ?? 'picture';
  const erase = () =>
    attempt('Nothing was erased', async () => {
      await api.erasePicture(id, row.id);
      say(`${name} is erased. The history keeps that there was one; older backups still hold it.`);
    });
  const ask = (
    <>
      Erase for good<span className="visually-hidden"> {name}</span>
    </>
  );
  return (
    <li>
      <a href={api.attachmentAddress(textOf(row, 'content') ?? '')} target="_blank" rel="noreferrer">
        {name}
      </a>
      {row.fields.gone === true && <span className="quiet"> taken off</span>}{' '}
      <AskFirst ask={ask} deed="Erase" carryOut={erase}>
        {name} will be gone for good, from the history too; what was read from it stays. This cannot be
        undone. Backups made before still hold it.
      </AskFirst>
    </li>
  );
}
