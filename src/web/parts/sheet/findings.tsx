import type { Finding } from '../../../engine/finding.ts';
import { Figure } from '../../fields/figure.tsx';
import { useSentence } from '../../read/use-sentence.ts';

/** What looks odd, or stops, each said on a line of its own; `of` names what it is about: a file. */
export function Findings({ findings, of }: { findings: readonly Finding[]; of?: string }) {
  const sentence = useSentence();
  return findings.map((one) => {
    const message = `${of ? `${of}: ` : ''}${sentence(one)}`;
    return (
      <p key={one.path + message} className="attention">
        ▲ <Figure text={message} />
      </p>
    );
  });
}
