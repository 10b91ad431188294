import { readdirSync, readFileSync } from 'node:fs';
import { extname, join, relative, sep } from 'node:path';

export interface StaticFiles {
  /** The file at this path, or the page itself for a path of the page's own; undefined where there is neither. */
  answer(path: string): Response | undefined;
}

/** The built page, read once: only what was there can be asked for, so no path leads out of the folder. */
export function readStaticFiles(folder: string): StaticFiles | undefined {
  const files = new Map<string, { body: Uint8Array<ArrayBuffer>; type: string }>();
  try {
    for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true })) {
      if (!entry.isFile()) continue;
      const file = join(entry.parentPath, entry.name);
      const path = `/${relative(folder, file).split(sep).join('/')}`;
      files.set(path, { body: new Uint8Array(readFileSync(file)), type: typeOf(path) });
    }
  } catch {
    return undefined;
  }
  if (!files.has('/index.html')) return undefined;
  return {
    answer(path) {
      // A path of the page's own (/builds/k3p9) has no extension; a missing asset is not answered with the page.
      const found = files.get(path) ?? (extname(path) === '' ? files.get('/index.html') : undefined);
      if (!found) return undefined;
      return new Response(found.body, {
        headers: { 'content-type': found.type, 'cache-control': cachingOf(path) },
      });
    },
  };
}

/** What the bundler puts under /assets carries a hash of its content in the name. */
function cachingOf(path: string): string {
  return path.startsWith('/assets/') ? 'public, max-age=31536000, immutable' : 'no-cache';
}

function typeOf(path: string): string {
  return types[extname(path)] ?? 'application/octet-stream';
}

const types: Record<string, string> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.webmanifest': 'application/manifest+json; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.woff2': 'font/woff2',
  '.ttf': 'font/ttf',
  '.wasm': 'application/wasm',
  '.txt': 'text/plain; charset=utf-8',
};
