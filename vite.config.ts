import react from '@vitejs/plugin-react';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: 'src',
  publicDir: '../public',
  plugins: [react()],
  build: { outDir: '../dist', emptyOutDir: true, target: 'es2022' },
  worker: { format: 'es' },
  test: { root: '.', include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'], exclude: ['tests/browser/**'] },
});
