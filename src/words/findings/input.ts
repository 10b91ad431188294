import type { InputKinds } from '../../engine/finding.ts';
import type { Writer } from '../writer.ts';
import type { Sentences } from './sentences.ts';

export const inputSentences: Sentences<InputKinds> = {
  'input/out-of-range': ({ value, unit, low, over, high, whole }, w) => {
    const write = (one: number) => inUnit(one, unit, w);
    if (low === undefined && over === undefined && high === undefined)
      return `${write(value)} is no number. Give one.`;
    const number = whole ? 'a whole number' : 'a value';
    const from = low === undefined ? `over ${write(over ?? 0)}` : `from ${write(low)}`;
    return `${write(value)} does not fit. Give ${number} ${from}${high === undefined ? ' up' : ` to ${write(high)}`}.`;
  },
  'input/one-for-each': ({ given, wanted }) =>
    `There are ${given} values for ${wanted} guides. Give one for each guide.`,
  'input/not-a-choice': ({ value, choices }) =>
    `"${value}" is not known here. Give ${choices.map((one) => `"${one}"`).join(' or ')}.`,
};

function inUnit(value: number, unit: string | undefined, writer: Writer): string {
  if (!Number.isFinite(value)) return `${value}`;
  if (unit === 'm') return writer.length(value);
  if (unit === 'kg') return writer.mass(value);
  if (unit === 'rad') return writer.angle(value);
  return unit ? `${value} ${unit}` : `${value}`;
}
