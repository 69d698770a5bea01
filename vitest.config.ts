import { defineConfig } from 'vitest/config';
import { pageModules } from './test/developers-page.ts';

export default defineConfig({
  plugins: [pageModules()],
  test: {
    include: ['test/**/*.test.ts'],
    setupFiles: ['test/seed.ts'],
    maxWorkers: 2,
    testTimeout: 30_000,
    hookTimeout: 60_000,
  },
});
