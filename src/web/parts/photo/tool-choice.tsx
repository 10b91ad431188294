import { FewChoices } from '../../fields/few-choices.tsx';

export type Tool = 'mark' | 'butt' | 'tip' | 'via' | 'ring' | 'look';

const tools: readonly { value: Tool; name: string }[] = [
  { value: 'mark', name: 'Mark' },
  { value: 'butt', name: 'Butt' },
  { value: 'tip', name: 'Tip' },
  { value: 'via', name: 'Point between' },
  { value: 'ring', name: 'Ring' },
  { value: 'look', name: 'Nothing' },
];

interface ToolChoiceProps {
  tool: Tool;
  onPick(tool: Tool): void;
  rod: 'bare' | 'taped';
}

/** What a tap on the picture sets. A bare blank has no rings. */
export function ToolChoice({ tool, onPick, rod }: ToolChoiceProps) {
  const options = tools.filter(({ value }) => value !== 'ring' || rod === 'taped');
  return <FewChoices label="A tap sets" options={options} value={tool} choose={onPick} />;
}
