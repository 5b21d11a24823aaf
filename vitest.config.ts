import { defineConfig } from 'vitest/config'

const common = { testTimeout: 60_000, pool: 'threads' } as const

export default defineConfig({
  test: {
    maxWorkers: 2,
    projects: [
      {
        test: {
          ...common,
          name: 'parts',
          // Nothing here leaves anything behind: a module that is loaded once serves all files.
          isolate: false,
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/cli/**', 'tests/page/browse/**'],
        },
      },
      // Whole processes of the built program: it is bundled once, before the first of them.
      {
        test: {
          ...common,
          name: 'cli',
          isolate: false,
          include: ['tests/cli/**/*.test.ts'],
          globalSetup: 'tests/cli/bundle.ts',
        },
      },
      // The built page in a browser, served by the built program: both are built once, before the first of them.
      {
        test: {
          ...common,
          name: 'page',
          isolate: false,
          include: ['tests/page/browse/**/*.test.ts'],
          globalSetup: 'tests/page/built.ts',
        },
      },
      // What the page takes: measured by `npm run bench`, never where it could fail because others are at work.
      ...(process.env['BENCH'] === undefined
        ? []
        : [
            {
              test: {
                ...common,
                name: 'bench',
                // One at a time, or each would measure the other.
                fileParallelism: false,
                include: ['tests/page/browse/*.speed.ts'],
                globalSetup: 'tests/page/built.ts',
              },
            },
          ]),
    ],
  },
})
