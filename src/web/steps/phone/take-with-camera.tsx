import { useState } from 'react';
import { Button } from 'react-aria-components';
import type { TakePicture } from '../../parts/stand/stand-card.tsx';
import { CameraView } from './camera-view.tsx';
import { PictureButton } from './picture-button.tsx';
import { hasCamera } from './use-camera.ts';

/** The browser's own camera, with a countdown; where there is none, or it is refused, the device's own. */
export function TakeWithCamera({ name, onFiles }: TakePicture) {
  const [isOpen, setOpen] = useState(false);
  if (isOpen) return <CameraView name={name} onFiles={onFiles} onClose={() => setOpen(false)} />;
  const ownCamera = hasCamera();
  return (
    <div className="phone-page">
      {ownCamera && (
        <Button className="button button-main phone-button" onPress={() => setOpen(true)}>
          Take {name.toLowerCase()}
        </Button>
      )}
      <PictureButton
        main={!ownCamera}
        capture
        label={ownCamera ? 'Use the device’s camera app' : `Take ${name.toLowerCase()}`}
        onFiles={onFiles}
      />
      <PictureButton label="Choose one that was taken" onFiles={onFiles} />
    </div>
  );
}
