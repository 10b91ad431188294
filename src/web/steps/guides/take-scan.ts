import { useState } from 'react';
import { formatMm } from '../../../engine/units/format-quantity.ts';
import type { ScannedGuide } from '../../../image/index.ts';
import type { Change } from '../../../record/operation.ts';
import { rowChanges } from '../../../record/operation.ts';
import { type SentPhoto, sendPhoto } from '../../parts/photo/send-photo.ts';
import { useBuild } from '../../read/build-context.ts';
import { useSay } from '../../read/messages.tsx';
import { reasonOf } from '../../read/open-store.ts';
import type { ScanFile } from './use-scan.ts';

interface TakenGuide {
  guide: ScannedGuide;
  size: string;
  /** Its number on the scan. */
  onScan: number;
  order: number;
}

/**
 * Puts what was measured into the bag and keeps the picture it was measured on with the build. Where the picture
 * cannot be kept the measures are in the bag all the same, and it is said.
 */
export function useTakeScan(file: ScanFile, dpi: number, done: () => void) {
  const { write, newRowId, rows } = useBuild();
  const say = useSay();
  const [taking, setTaking] = useState(false);
  const take = async (guides: readonly TakenGuide[]) => {
    setTaking(true);
    const sent = await sendPhoto(file.picture).catch(reasonOf);
    const kept = typeof sent === 'string' ? undefined : newRowId();
    const bag = guides.flatMap((guide) => bagRow(guide, newRowId(), file.name, kept));
    const scan =
      kept === undefined || typeof sent === 'string'
        ? []
        : scanRow(sent, {
            ids: { scan: kept, attachment: newRowId() },
            order: rows('scans').length,
            takenBy: file.onSheet ? 'phone' : 'flatbed',
            dpi,
          });
    write('scanBag', [...scan, ...bag]);
    say(
      typeof sent === 'string'
        ? `Measured guides are in the bag, but the picture is not kept with them: ${sent}`
        : 'Measured guides are in the bag, and the picture is kept with the build. Lay them on the rack sheet by their numbers.',
    );
    setTaking(false);
    done();
  };
  return { take, taking };
}

function scanRow(
  { hash, type, name }: SentPhoto,
  row: { ids: { scan: string; attachment: string }; order: number; takenBy: string; dpi: number },
): Change[] {
  const { ids, order, takenBy, dpi } = row;
  const readAt = new Date().toISOString();
  return [
    ...rowChanges('attachments', ids.attachment, { content: hash, name, type }),
    ...rowChanges('scans', ids.scan, { order, attachment: ids.attachment, takenBy, dpi, readAt }),
  ];
}

function bagRow(
  { guide: { offsetM, angleRad, lengthM }, size, onScan, order }: TakenGuide,
  id: string,
  scan: string,
  kept: string | undefined,
): Change[] {
  const degrees = (Math.abs(angleRad) * 180) / Math.PI;
  const lengthValue = (si: number) => ({ si, text: formatMm(si, 2) });
  return rowChanges('bag', id, {
    order,
    size,
    feetOffset: lengthValue(Math.abs(offsetM)),
    feetAngle: { si: Math.abs(angleRad), text: `${degrees.toFixed(1)} deg` },
    length: lengthValue(lengthM),
    scan: scan.slice(0, 80),
    onScan,
    ...(kept === undefined ? {} : { scanRow: kept }),
  });
}
