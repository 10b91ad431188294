/**
 * Inches as a tape reads them. One length gives the nearest tick and what is left over, so that nothing is
 * hidden by the rounding: 310 mm is 12 3/16 in + 0.4 mm.
 */
export type InchDenominator = 1 | 2 | 4 | 8 | 16 | 32 | 64;

interface InchFraction {
  negative: boolean;
  /** 0 unless feet were asked for. */
  feet: number;
  whole: number;
  /** 0 where there is no fraction; otherwise in lowest terms. */
  numerator: number;
  denominator: number;
  /** What the tick leaves out [m]: value − tick, so a positive one lies beyond the tick. */
  remainderM: number;
  /** `12 3⁄16 in`, `4 ft 7 1⁄2 in`; reads back to exactly the tick. */
  text: string;
}
interface InchOptions {
  denominator?: InchDenominator;
  feet?: boolean;
}

const inchM = 0.0254;
const fractionSlash = '⁄';

/** Nearest tick of a tape divided in 1/denominator in (16 where left out). */
export function formatInches(
  lengthM: number,
  { denominator = 16, feet = false }: InchOptions = {},
): InchFraction {
  const ticks = Math.round((Math.abs(lengthM) / inchM) * denominator);
  const negative = lengthM < 0 && ticks > 0;
  const wholeInches = Math.floor(ticks / denominator);
  const left = ticks % denominator;
  const divisor = left === 0 ? denominator : greatestCommonDivisor(left, denominator);
  const parts = {
    negative,
    feet: feet ? Math.floor(wholeInches / 12) : 0,
    whole: feet ? wholeInches % 12 : wholeInches,
    numerator: left / divisor,
    denominator: left === 0 ? 1 : denominator / divisor,
  };
  const tickM = tickLength(ticks, denominator) * (negative ? -1 : 1);
  return { ...parts, remainderM: lengthM - tickM, text: showInches(parts) };
}

/** Ticks in metres by one correctly rounded division: 254 × ticks and 10⁴ × denominator are whole numbers. */
function tickLength(ticks: number, denominator: number): number {
  return (ticks * 254) / (10_000 * denominator);
}

function showInches(parts: Omit<InchFraction, 'text' | 'remainderM'>): string {
  const fraction = parts.numerator === 0 ? '' : `${parts.numerator}${fractionSlash}${parts.denominator}`;
  const whole = parts.whole === 0 && fraction !== '' ? '' : `${parts.whole}`;
  const inches = [whole, fraction].filter((piece) => piece !== '').join(' ');
  const feet = parts.feet === 0 ? '' : `${parts.feet} ft `;
  return `${parts.negative ? '-' : ''}${feet}${inches} in`;
}

function greatestCommonDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestCommonDivisor(b, a % b);
}
