import type { RackKind } from '../../engine/kinds/guide-kinds.ts';
import { guideInWords } from '../../engine/kinds/guides.ts';
import type { SizeKinds } from '../../engine/kinds/size-kinds.ts';
import type { Sentences } from './sentences.ts';

export const kindsSentences: Sentences<SizeKinds> = {
  'kinds/size-unknown': ({ kind, size, example }) =>
    `${unknown(kind, size)} Give a size such as ${example}, or measure the height of its ring. Until then it is drawn as ${example}.`,
  'kinds/size-by-height': ({ kind, size, like }) =>
    `${unknown(kind, size)} Measure its feet and weigh it. Until then they are those of size ${like}, whose ring is as high.`,
};

function unknown(kind: string, size: string): string {
  const guide = guideInWords(kind as RackKind);
  return size === '' ? `This ${guide} has no size.` : `No usual numbers for a ${guide} of size “${size}”.`;
}
