import type { KeyboardEvent } from 'react';
import type { ScreenPoint } from './photo-frame.ts';

export interface StageHandle {
  id: string;
  kind: 'mark' | 'end' | 'via' | 'ring';
  /** Beside it on the picture. */
  short: string;
  /** In full, for the screen reader. */
  name: string;
  px: readonly [number, number];
}

export interface PhotoHandleProps {
  handle: StageHandle;
  at: ScreenPoint;
  onNudge(x: number, y: number): void;
  onRemove(): void;
  /** It has the focus: it should be seen. */
  onLook(): void;
}

export const arrows: Record<string, [number, number] | undefined> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** Something tapped: 44 px to take hold of, a fine cross to aim with. */
export function PhotoHandle({ handle, at, onNudge, onRemove, onLook }: PhotoHandleProps) {
  const { id, kind, short, name, px } = handle;
  const keys = (event: KeyboardEvent) => {
    const step = arrows[event.key];
    const by = event.shiftKey ? 10 : 1;
    if (step) onNudge(by * step[0], by * step[1]);
    else if (event.key === 'Delete' || event.key === 'Backspace') onRemove();
    else return;
    event.preventDefault();
    event.stopPropagation();
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: SVG has no button of its own
    <g
      className={`photo-handle photo-handle-${kind}`}
      transform={`translate(${at.x} ${at.y})`}
      data-handle={id}
      role="button"
      tabIndex={0}
      aria-label={`${name}, at ${Math.round(px[0])}, ${Math.round(px[1])}. Arrow keys move it, Delete takes it away`}
      onKeyDown={keys}
      onFocus={onLook}
    >
      <circle className="photo-handle-hold" r="22" />
      {kind === 'mark' && <rect className="photo-handle-sign" x="-8" y="-8" width="16" height="16" />}
      {kind === 'end' && <circle className="photo-handle-sign" r="9" />}
      {kind === 'via' && <path className="photo-handle-sign" d="M0 -8L8 0L0 8L-8 0z" />}
      {kind === 'ring' && <circle className="photo-handle-sign" r="6" />}
      <path className="photo-handle-cross" d="M-4 0h8M0 -4v8" />
      <text x="13" y="-9">
        {short}
      </text>
    </g>
  );
}
