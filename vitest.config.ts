import { defineConfig } from 'vitest/config';
import { pageModules } from './test/developers-page.ts';

export default defineConfig({
  plugins: [pageModules()],
  test: {
    setupFiles: ['test/seed.ts'],
    maxWorkers: 2,
    testTimeout: 30_000,
    hookTimeout: 60_000,
    projects: [
      {
        extends: true,
        test: {
          name: 'answers',
          include: [
            'test/{core,lessons,outside,commands,asked,chat,paper,pictures}/**/*.test.ts',
            'test/{bad-input,figures,sweep}.test.ts',
          ],
          // What these test keeps nothing between two answers, and loading it anew for each file takes longer than testing it.
          isolate: false,
        },
      },
      {
        extends: true,
        test: {
          name: 'rooms',
          globalSetup: ['test/postgres/setup.ts'],
          include: ['test/{attack,projects,rooms,tools}/**/*.test.ts', 'test/*.test.ts'],
          exclude: ['test/{bad-input,figures,sweep}.test.ts'],
        },
      },
    ],
  },
});
