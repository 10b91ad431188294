import { Fragment } from 'react';
import { figuresWithUnits } from '../../words/figures-with-units.ts';
import { fractionPieces } from './fraction-pieces.ts';

/**
 * A text with its fractions set as true fractions: `12 3/16 in` or `12 3⁄16 in`; read aloud as `12 3/16 in`. No line
 * ends between a figure and its unit.
 */
export function Figure({ text }: { text: string }) {
  // One element, so that a flex container does not part its words.
  return (
    <span>
      {figuresWithUnits(text).map((piece, index) => {
        const key = `${index}${piece}`;
        if (index % 2 === 0) return <Fragment key={key}>{withFractions(piece)}</Fragment>;
        return (
          <span key={key} className="together">
            {withFractions(piece)}
          </span>
        );
      })}
    </span>
  );
}

function withFractions(text: string) {
  const pieces = fractionPieces(text);
  return pieces.map((piece, index) => {
    if (index % 2 === 1) return <Fraction key={`${index}${piece}`} text={piece} />;
    // The space before a mixed number's fraction is the fraction's own margin.
    return index < pieces.length - 1 ? piece.replace(/(\d) $/, '$1') : piece;
  });
}

function Fraction({ text }: { text: string }) {
  const [numerator, denominator] = text.split(/[/⁄]/);
  return (
    <>
      <span className="visually-hidden">{`\u00a0${numerator}/${denominator}`}</span>
      <span className="fraction" aria-hidden="true">
        <sup>{numerator}</sup>⁄<sub>{denominator}</sub>
      </span>
    </>
  );
}
