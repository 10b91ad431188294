import { crc32, deflateSync } from 'node:zlib';

/** A picture as a PNG of at most 256 colours: a screen of ink and paper loses nothing that is seen. */
export function smallPng({ width, height, data, channels }) {
  const keyAt = (pixel) => {
    const at = pixel * channels;
    return (coarse(data[at]) << 16) | (coarse(data[at + 1]) << 8) | coarse(data[at + 2]);
  };
  const counts = new Map();
  for (let pixel = 0; pixel < width * height; pixel++) {
    const key = keyAt(pixel);
    counts.set(key, (counts.get(key) ?? 0) + 1);
  }
  const palette = [...counts]
    .sort(([, a], [, b]) => b - a)
    .slice(0, 256)
    .map(([key]) => key);
  const place = new Map(palette.map((key, index) => [key, index]));
  for (const key of counts.keys()) if (!place.has(key)) place.set(key, nearest(palette, key));
  const rows = Buffer.alloc(height * (width + 1));
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) rows[y * (width + 1) + 1 + x] = place.get(keyAt(y * width + x));
  }
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  head.set([8, 3, 0, 0, 0], 8);
  const colours = Buffer.from(palette.flatMap((key) => [key >> 16, (key >> 8) & 255, key & 255]));
  const signature = Buffer.from([137, 80, 78, 71, 13, 10, 26, 10]);
  const parts = [chunk('IHDR', head), chunk('PLTE', colours), chunk('IDAT', deflateSync(rows, { level: 9 }))];
  return Buffer.concat([signature, ...parts, chunk('IEND', Buffer.alloc(0))]);
}

/** In steps of 8, white staying white. */
function coarse(value) {
  return Math.min(255, Math.round(value / 8) * 8);
}

function nearest(palette, key) {
  const distance = (other) =>
    [16, 8, 0].reduce((sum, shift) => sum + (((key >> shift) & 255) - ((other >> shift) & 255)) ** 2, 0);
  return palette.reduce(
    (best, other, index) => (distance(other) < distance(palette[best]) ? index : best),
    0,
  );
}

function chunk(type, body) {
  const named = Buffer.concat([Buffer.from(type, 'latin1'), body]);
  const [length, sum] = [Buffer.alloc(4), Buffer.alloc(4)];
  length.writeUInt32BE(body.length);
  sum.writeUInt32BE(crc32(named));
  return Buffer.concat([length, named, sum]);
}
