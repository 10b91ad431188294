/** A text with its fractions set as true fractions: `12 3/16 in` or `12 3⁄16 in`; read aloud as plain text. */
export function Figure({ text }: { text: string }) {
  const pieces = text.split(/(?<![\d.])(\d+[/⁄]\d+)(?![\d.])/);
  if (pieces.length === 1) return <>{text}</>;
  return (
    <span>
      <span className="visually-hidden">{text.replaceAll('⁄', '/')}</span>
      <span aria-hidden="true">
        {pieces.map((piece, index) =>
          index % 2 === 0 ? (
            // The space before a fraction is the fraction's own margin.
            <span key={index}>{index < pieces.length - 1 ? piece.replace(/(\d) $/, '$1') : piece}</span>
          ) : (
            <Fraction key={index} text={piece} />
          ),
        )}
      </span>
    </span>
  );
}

function Fraction({ text }: { text: string }) {
  const [numerator, denominator] = text.split(/[/⁄]/);
  return (
    <span className="fraction">
      <sup>{numerator}</sup>⁄<sub>{denominator}</sub>
    </span>
  );
}
