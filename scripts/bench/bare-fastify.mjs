// The ceiling: a bare Fastify that reads the body as JSON, checks nothing, logs nothing, and sends answers that it
// was given beforehand, each in turn, made to text anew for every request as the service does: the engine remembers the
// text of numbers that it wrote lately, and one answer again and again would be too cheap.
//   node scripts/bench/bare-fastify.mjs [file of lists of answers by path]
import { readFile } from 'node:fs/promises'
import Fastify from 'fastify'

const [file] = process.argv.slice(2)
const answers = file === undefined ? { '/echo': [{}] } : JSON.parse(await readFile(file, 'utf8'))

const app = Fastify()
for (const [path, list] of Object.entries(answers)) {
  let count = 0
  app.post(path, (_request, reply) =>
    reply.type('application/json; charset=utf-8').send(JSON.stringify(list[count++ % list.length])),
  )
}
console.log(await app.listen({ host: '127.0.0.1', port: 0 }))
process.once('SIGTERM', () => process.exit(0))
