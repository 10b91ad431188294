import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

export default defineConfig({
  root: fileURLToPath(new URL('src/web', import.meta.url)),
  plugins: [react()],
  worker: { format: 'es' },
  build: {
    outDir: fileURLToPath(new URL('dist/web', import.meta.url)),
    emptyOutDir: true,
    // The content security policy takes scripts, fonts and pictures from files of this server alone.
    assetsInlineLimit: 0,
    target: 'es2022',
    // The page comes from this computer or its own network; the PDF writer is a chunk of its own already.
    chunkSizeWarningLimit: 1000,
  },
});
