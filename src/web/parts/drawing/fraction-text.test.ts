import { describe, expect, it } from 'vitest';
import { raisedFractions } from './fraction-text.ts';

describe('fractions in drawings', () => {
  it('raises and lowers the figures of a fraction and nothing else', () => {
    expect(raisedFractions('22 1⁄8 in')).toBe('22¹⁄₈ in');
    expect(raisedFractions('15⁄32 in')).toBe('¹⁵⁄₃₂ in');
    expect(raisedFractions('563 mm')).toBe('563 mm');
    expect(raisedFractions('from 3 3⁄8 to 4 1⁄2 in')).toBe('from 3³⁄₈ to 4¹⁄₂ in');
    expect(raisedFractions('snake 1/0')).toBe('snake 1/0');
    expect(raisedFractions('gap 3⁄32 in')).toBe('gap ³⁄₃₂ in');
  });
});
