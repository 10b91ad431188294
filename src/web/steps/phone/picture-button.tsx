import { useRef } from 'react';
import { Button } from 'react-aria-components';

export interface PictureButtonProps {
  label: string;
  main?: boolean;
  /** Straight to the camera. */
  capture?: boolean;
  onFiles(files: readonly File[]): void;
}

export function PictureButton({ label, main, capture, onFiles }: PictureButtonProps) {
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <Button className={main ? 'button button-main' : 'button'} onPress={() => input.current?.click()}>
        {label}
      </Button>
      <input
        ref={input}
        hidden
        type="file"
        accept="image/*"
        capture={capture ? 'environment' : undefined}
        aria-label={label}
        onChange={({ target }) => {
          onFiles([...(target.files ?? [])]);
          target.value = '';
        }}
      />
    </>
  );
}
