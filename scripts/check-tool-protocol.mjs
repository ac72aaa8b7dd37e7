// Starts the built service and runs the protocol's own conformance scenarios that apply to a server with tools alone.
// The runner needs Node 22; on an older one it is started with a newer one from the registry.
import { spawn } from 'node:child_process'
import { once } from 'node:events'

const SCENARIOS = ['server-initialize', 'ping', 'tools-list', 'dns-rebinding-protection']
const RUNNER = 'node_modules/@modelcontextprotocol/conformance/dist/index.js'

process.chdir(new URL('..', import.meta.url).pathname)
process.env.PORT = '0'
const { address } = await import('../dist/main.js')

const isOld = Number(process.versions.node.split('.')[0]) < 22
const [command, ...before] = isOld ? ['npx', '-y', 'node@22', RUNNER] : [process.execPath, RUNNER]
let failed = 0
for (const scenario of SCENARIOS) {
  const runner = spawn(command, [...before, 'server', '--url', `${address}/mcp`, '--scenario', scenario], {
    stdio: ['ignore', 'pipe', 'pipe'],
  })
  let told = ''
  runner.stdout.on('data', (part) => (told += part))
  runner.stderr.on('data', (part) => (told += part))
  const [code] = await once(runner, 'close')
  console.log(`${scenario}: ${code === 0 ? 'passed' : `failed\n${told}`}`)
  if (code !== 0) failed += 1
}
process.exit(failed === 0 ? 0 : 1)
