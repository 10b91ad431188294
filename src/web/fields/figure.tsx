import { fractionPieces } from './fraction-pieces.ts';

/** A text with its fractions set as true fractions: `12 3/16 in` or `12 3⁄16 in`; read aloud as `12 3/16 in`. */
export function Figure({ text }: { text: string }) {
  const pieces = fractionPieces(text);
  // One element, so that a flex container does not part its words.
  return (
    <span>
      {pieces.map((piece, index) => {
        const key = `${index}${piece}`;
        if (index % 2 === 1) return <Fraction key={key} text={piece} />;
        // The space before a mixed number's fraction is the fraction's own margin.
        return index < pieces.length - 1 ? piece.replace(/(\d) $/, '$1') : piece;
      })}
    </span>
  );
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
