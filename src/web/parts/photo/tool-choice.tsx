import { Label, Radio, RadioGroup } from 'react-aria-components';

export type Tool = 'mark' | 'butt' | 'tip' | 'via' | 'ring' | 'look';

const tools: readonly { tool: Tool; name: string }[] = [
  { tool: 'mark', name: 'Mark' },
  { tool: 'butt', name: 'Butt' },
  { tool: 'tip', name: 'Tip' },
  { tool: 'via', name: 'Point between' },
  { tool: 'ring', name: 'Ring' },
  { tool: 'look', name: 'Nothing' },
];

/** What a tap on the picture sets. A bare blank has no rings. */
export function ToolChoice({
  tool,
  onPick,
  rod,
}: {
  tool: Tool;
  onPick(tool: Tool): void;
  rod: 'bare' | 'taped';
}) {
  return (
    <RadioGroup className="field choice" value={tool} onChange={(value) => onPick(value as Tool)}>
      <Label className="field-label">A tap sets</Label>
      <div className="choice-options">
        {tools
          .filter((one) => one.tool !== 'ring' || rod === 'taped')
          .map((one) => (
            <Radio key={one.tool} value={one.tool} className="choice-option">
              {one.name}
            </Radio>
          ))}
      </div>
    </RadioGroup>
  );
}
