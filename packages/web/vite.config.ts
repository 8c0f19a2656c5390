import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

/** What so many pages and workers share comes in one piece: a dozen small ones zip worse, and each is one more to ask for. */
const manyShare = {
  name: 'shared',
  test: /\/packages\//u,
  minShareCount: 10,
} as const;

export default defineConfig({
  root: import.meta.dirname,
  plugins: [react()],
  worker: { format: 'es' },
  build: {
    target: 'es2022',
    sourcemap: true,
    assetsInlineLimit: 0,
    rolldownOptions: {
      output: { codeSplitting: { includeDependenciesRecursively: false, groups: [manyShare] } },
    },
  },
});
