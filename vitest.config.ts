import { defineConfig } from 'vitest/config'

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    exclude: ['tests/clients/**'],
    benchmark: { include: ['tests/**/*.bench.ts'] },
    testTimeout: 60_000,
    reporters: ['default', ['json', { outputFile: '.test-report.json' }]],
  },
})
