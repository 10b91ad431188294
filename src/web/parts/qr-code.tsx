import { encode } from 'uqr';

/** Dark on white in either colouring: many readers want it so. */
export function QrCode({ text }: { text: string }) {
  const { data, size } = encode(text, { border: 4 });
  const path = data.flatMap((row, y) => row.map((dark, x) => (dark ? `M${x} ${y}h1v1h-1z` : ''))).join('');
  return (
    <svg
      viewBox={`0 0 ${size} ${size}`}
      width="220"
      height="220"
      role="img"
      aria-label="QR code of the address"
    >
      <rect width={size} height={size} fill="#fff" />
      <path d={path} fill="#000" shapeRendering="crispEdges" />
    </svg>
  );
}
