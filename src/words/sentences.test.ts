import { describe, expect, it } from 'vitest';
import { faultsOf } from '../../test/support/sentence-faults.ts';
import type { FindingValue } from '../engine/finding.ts';
import type { Sentences } from './findings/sentences.ts';
import { allSentences } from './sentence.ts';
import { shopWriter, siWriter, type Writer } from './writer.ts';

const readers: [string, Writer][] = [
  ['inch', shopWriter({ system: 'inch', weighsIn: 'oz' })],
  ['inch', shopWriter({ system: 'inch' })],
  ['mm', shopWriter({ system: 'mm' })],
  ['si', siWriter],
];

/** Quantities as their names say: metres, kilograms ... in sizes that a bench has; small ones and large ones. */
function valuesBySuffix(scale: number): object {
  const made = (key: string): FindingValue | undefined => {
    if (key === 'unit') return scale > 1 ? 'm' : 'kg';
    if (key === 'wrap' || key === 'next') return 'foot/2/tip';
    if (key === 'straightness') return 'slight';
    if (key === 'marks') return [3, 7];
    if (key === 'what') return 'partA';
    if (key === 'kind') return 'snake';
    if (key === 'dimension') return 'length';
    if (key === 'orKind') return scale > 1 ? 'flag-check' : scale < 1 ? undefined : 'reading';
    if (/^(look|else)Kind$/.test(key)) return scale > 1 ? 'flag' : 'read';
    if (key === 'choices') return ['growing', 'free'];
    if (/Percent$|^(value|low|high|over|lowest|highest)$/.test(key)) return 0.3 * scale;
    if (/M$/.test(key)) return 0.123456 * scale;
    if (/Kg$/.test(key)) return 0.0123456 * scale;
    if (/Rad$/.test(key)) return 0.1234;
    if (/Px$/.test(key)) return 123.456;
    if (/Hz$/.test(key)) return 1.2345;
    if (/C$/.test(key)) return 12.345 * scale;
    if (/S$/.test(key)) return 12_345 * scale;
    if (/N$/.test(key)) return 1.23;
    if (/^(allWeighed|measured|freeHelps|atEnd)$|^(is|has)[A-Z]/.test(key)) return scale > 1;
    if (names.test(key)) return 'Section 2';
    return Math.round(3 * scale);
  };
  return new Proxy({}, { get: (_, key) => made(String(key)) });
}
const names =
  /^(section|upper|lower|setup|wrap|next|size|nextSize|typed|part|other|quantity|words|name|mark|otherMark|end|title|format|reason|from|axis|file|why|example|like)$/;

const noReason = new Set(['units/not-read']);
const sentences = Object.entries(allSentences as Sentences<Record<string, object>>).filter(
  ([code]) => !noReason.has(code),
);

describe('every finding, to every reader', () => {
  it.each(sentences)('%s', (code, say) => {
    for (const [units, writer] of readers) {
      for (const scale of [0.1, 1, 12]) {
        const sentence = say(valuesBySuffix(scale), writer);
        expect(faultsOf(sentence, units, !code.startsWith('assumed/')), sentence).toEqual([]);
      }
    }
  });
  it('knows them all', () => expect(sentences.length).toBeGreaterThan(120));
});

describe('the judge of sentences bites', () => {
  it.each([
    ['inch', 'The clamp is 27 mm from the tip.'],
    ['inch', 'The clamp is 1.2 cm from the tip.'],
    ['inch', 'Weigh it: 0.4 kg.'],
    ['mm', 'The clamp is 27 1⁄2 in from the tip.'],
    ['mm', 'Bring the room to 70 °F.'],
    ['mm', 'It is undefined mm long.'],
    ['mm', 'It is NaN mm long.'],
    ['mm', 'Set the blocks to half.'],
    ['mm', 'The tilt is reckoned with.'],
    ['mm', 'No full stop'],
    [
      'mm',
      'One two three four five six seven eight nine ten eleven twelve one two three four five six seven eight nine.',
    ],
  ])('%s: %s', (units, sentence) => {
    expect(faultsOf(sentence, units)).not.toEqual([]);
  });
  it('and lets a good one pass', () => {
    expect(
      faultsOf('The clamp is 27 1⁄2 in from the tip. Ring sizes such as 12 mm rings stay.', 'inch'),
    ).toEqual([]);
  });
});
