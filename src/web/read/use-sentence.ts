import { useMemo } from 'react';
import type { Reason } from '../../engine/finding.ts';
import { sentenceOf } from '../../words/sentence.ts';
import { useShop } from './shop.tsx';

/** Says a finding in the shop's units. */
export type Sentence = (finding: Reason) => string;

export function useSentence(): Sentence {
  const { writer } = useShop();
  return useMemo(() => (finding) => sentenceOf(finding, writer), [writer]);
}
