import { defineConfig } from 'vitest/config'

/** Tests with real programs of other makers, which the machine has to have: a spreadsheet, a browser, a PDF reader. */
export default defineConfig({
  test: {
    include: ['tests/clients/**/*.test.ts'],
    testTimeout: 180_000,
    hookTimeout: 180_000,
    reporters: ['default', ['json', { outputFile: '.test-report.clients.json' }]],
  },
})
