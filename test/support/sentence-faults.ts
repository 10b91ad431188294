/** What a sentence must not hold: shared words (never), the other shop's units, holes, length. */
const banned =
  /\b(blocks?|is reckoned|comes? out|came out|is heard|is told|is said|stands for good|mend this|anew|rms|prior|significant|residual)\b/i;
const metric = /\d\s?(mm|cm|m|kg|°C)\b(?! rings?| rule|.*Did you mean)/;
const imperial = /\d\s?(in|ft|yd|oz)\b(?! rule)|[⁄½¼¾]|°F/;
const mostWords = 20;

export function faultsOf(said: string, units: string, whole = true): string[] {
  const faults: string[] = [];
  if (/undefined|NaN|Infinity|null|\[object/.test(said)) faults.push('a hole');
  if (banned.test(said)) faults.push(`a banned word: ${banned.exec(said)?.[0]}`);
  if (units === 'inch' && metric.test(said)) faults.push(`a metric figure: ${metric.exec(said)?.[0]}`);
  if (units !== 'inch' && imperial.test(said)) faults.push(`an inch figure: ${imperial.exec(said)?.[0]}`);
  if (whole && !/[.?!]["’)]?$/.test(said)) faults.push('no full stop');
  for (const sentence of said.split(/(?<=[.?!])\s+(?=[A-Z"±])/)) {
    const words = sentence.split(/\s+/).filter((word) => /[A-Za-z0-9]/.test(word) && !units_.test(word));
    if (words.length > mostWords) faults.push(`${words.length} words: ${sentence}`);
  }
  return faults;
}

/** A figure and its unit are read as one. */
const units_ = /^(mm|m|in|ft|kg|g|oz|rad|s|min|h|d|ml)[,.;:)]*$/;
