import { describe, expect, it } from 'vitest';
import { formatInches } from './format-inches.ts';
import { formatDegrees, formatLength, formatMm } from './format-quantity.ts';

describe('inches as a tape reads them', () => {
  it('gives the parts of a true fraction in lowest terms', () => {
    expect(formatInches(0.3095625)).toMatchObject({ whole: 12, numerator: 3, denominator: 16 });
    expect(formatInches(0.1143, { denominator: 64 })).toMatchObject({
      whole: 4,
      numerator: 1,
      denominator: 2,
    });
    expect(formatInches(0.3048)).toMatchObject({ whole: 12, numerator: 0, denominator: 1, text: '12 in' });
    expect(formatInches(0.001190625, { denominator: 64 }).text).toBe('3⁄64 in');
  });
  it('counts feet where asked', () => {
    expect(formatInches(1.4097, { feet: true }).text).toBe('4 ft 7 1⁄2 in');
    expect(formatInches(0.3048, { feet: true }).text).toBe('1 ft 0 in');
  });
  it('carries a rounding up into the next inch and foot', () => {
    expect(formatInches(0.3047, { feet: true }).text).toBe('1 ft 0 in');
  });
  it('never shows a negative nothing', () => {
    expect(formatInches(-0.0001).text).toBe('0 in');
    expect(formatMm(-0.00001)).toBe('0.0 mm');
    expect(formatDegrees(-0.0001)).toBe('0.0°');
  });
  it('follows the shop', () => {
    expect(formatLength(0.3095625, { system: 'mm' })).toBe('309.6 mm');
    expect(formatLength(0.3095625, { system: 'inch' })).toBe('12 3⁄16 in');
  });
});
