import type { SVGProps } from 'react';
import { fractionPieces } from './fraction-pieces.ts';

/** A `<text>` with its fractions set as true fractions; `12 3/16 in` or `12 3⁄16 in`. */
export function SvgFigure({ text, ...rest }: { text: string } & SVGProps<SVGTextElement>) {
  const pieces = fractionPieces(text);
  return (
    <text {...rest}>
      {pieces.map((piece, index) => {
        if (index % 2 === 0) {
          // A shift stays in force until it is taken back.
          const afterFraction = index > 0 && piece !== '';
          const words = index < pieces.length - 1 ? piece.replace(/(\d) $/, '$1') : piece;
          return (
            <tspan key={`${index}${piece}`} dy={afterFraction ? '-0.08em' : undefined}>
              {words}
            </tspan>
          );
        }
        const [numerator, denominator] = piece.split(/[/⁄]/);
        return (
          <tspan key={`${index}${piece}`}>
            <tspan dx="0.1em" dy="-0.32em" fontSize="70%">
              {numerator}
            </tspan>
            <tspan dy="0.22em">⁄</tspan>
            <tspan dy="0.18em" fontSize="70%">
              {denominator}
            </tspan>
          </tspan>
        );
      })}
    </text>
  );
}
