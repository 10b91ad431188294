import { Button } from 'react-aria-components';
import { rowChanges } from '../../../record/operation.ts';
import { useBuild } from '../../read/build-context.ts';
import { numberOf, textOf } from '../../read/values.ts';
import { api } from '../../store/open-document.ts';

/** The pictures that guides of the bag were measured on; a discarded one leaves their numbers as they are. */
export function KeptScans() {
  const { rows, write } = useBuild();
  const scans = rows('scans');
  if (scans.length === 0) return null;
  const attachments = new Map(rows('attachments').map((row) => [row.id, row]));
  const bag = rows('bag');
  return (
    <ul className="kept-scans" aria-label="Scans kept with this build">
      {scans.map((scan) => {
        const attachment = attachments.get(textOf(scan, 'attachment') ?? '');
        const name = (attachment && textOf(attachment, 'name')) ?? 'scan';
        const content = attachment && textOf(attachment, 'content');
        const numbers = bag.flatMap((row, index) => (textOf(row, 'scanRow') === scan.id ? [index + 1] : []));
        return (
          <li key={scan.id}>
            {content && (
              <a href={api.attachmentAddress(content)} target="_blank" rel="noreferrer">
                <img src={api.attachmentAddress(content)} alt={name} loading="lazy" />
              </a>
            )}
            <span>
              {name}, read with {Math.round(numberOf(scan, 'dpi') ?? 0)} dpi
              {numbers.length > 0 &&
                `: ${numbers.length === 1 ? 'number' : 'numbers'} ${numbers.join(', ')} of the bag`}
              .{' '}
              <Button
                className="inline"
                onPress={() => write('removeScan', rowChanges('scans', scan.id, { gone: true }))}
              >
                Discard the picture<span className="visually-hidden"> {name}</span>
              </Button>
            </span>
          </li>
        );
      })}
    </ul>
  );
}
