import type { Unread } from './quantity-kinds.ts';

/**
 * Brings what people type or paste to plain ASCII with a decimal point: ½ and ″ and ′ and curly quotes,
 * fraction slashes, dashes of every length, odd spaces, the decimal comma.
 */
type CleanText = { ok: true; text: string } | ({ ok: false } & Unread);

export function cleanText(typed: string): CleanText {
  const ascii = typed
    .replace(/[¼-¾⅐-⅞]/g, (glyph) => ` ${glyph}`)
    .replace(/[º˚]/g, '°')
    .normalize('NFKC')
    .replace(/[“”„‟]/g, '"')
    .replace(/[′‘’‚‛`´]/g, "'")
    .replace(/''/g, '"')
    .replace(/[⁄∕]/g, '/')
    .replace(/[−–—‐‑]/g, '-')
    .replace(/\s+/g, ' ')
    .trim();
  return decimalPoint(ascii);
}

/** `31,5` is 31.5; `1,234` could be either of two numbers a thousandfold apart, so it is asked back. */
function decimalPoint(text: string): CleanText {
  if (/\d,\d/.test(text) && /\d\.\d/.test(text)) {
    return { ok: false, why: 'comma-and-point' };
  }
  const grouped = /(?<![\d,])[1-9]\d{0,2}(?:,\d{3})+(?!\d)/.exec(text);
  if (grouped) {
    const [point, plain] = [grouped[0].replace(',', '.'), grouped[0].replaceAll(',', '')];
    return { ok: false, why: 'two-readings', part: grouped[0], other: `${point} or ${plain}` };
  }
  return { ok: true, text: text.replace(/(\d),(?=\d)/g, '$1.').replace(/,/g, ' ') };
}
