// Prints what the reports of the test runner counted, as the last line of CI.
import { readFile } from 'node:fs/promises'

const reports = await Promise.all(
  ['.test-report.json', '.test-report.clients.json'].map(async (name) =>
    JSON.parse(await readFile(new URL(`../${name}`, import.meta.url), 'utf8')),
  ),
)
const total = (field) => reports.reduce((sum, report) => sum + report[field], 0)
console.log(`${total('numPassedTests')} passed, ${total('numFailedTests')} failed`)
