// Prints what the test runner's own report counted, as the last line of CI.
import { readFile } from 'node:fs/promises'

const report = JSON.parse(await readFile(new URL('../.test-report.json', import.meta.url), 'utf8'))
console.log(`${report.numPassedTests} passed, ${report.numFailedTests} failed`)
