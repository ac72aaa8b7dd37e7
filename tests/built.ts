import { mkdir, readdir, readFile, rm, writeFile } from 'node:fs/promises'
import { dirname } from 'node:path'
import { pathToFileURL } from 'node:url'
import ts from 'typescript'

/**
 * The service as JavaScript, in a folder of this process: a thread or a process of its own cannot run TypeScript on
 * every Node this project supports. Types are not checked here; `tsc` does that. Ended by the `remove` that it gives.
 */
export async function builtService() {
  const folder = `${process.cwd()}/node_modules/.cache/built-${process.pid}-${Math.random().toString(36).slice(2)}`
  const names = (await readdir('src', { recursive: true })).filter((name) => name.endsWith('.ts'))
  await Promise.all(
    names.map(async (name) => {
      const { outputText } = ts.transpileModule(await readFile(`src/${name}`, 'utf8'), {
        compilerOptions: {
          target: ts.ScriptTarget.ES2023,
          module: ts.ModuleKind.ESNext,
          verbatimModuleSyntax: true,
          rewriteRelativeImportExtensions: true,
        },
      })
      const target = `${folder}/${name.replace(/\.ts$/, '.js')}`
      await mkdir(dirname(target), { recursive: true })
      await writeFile(target, outputText)
    }),
  )
  await writeFile(`${folder}/package.json`, '{"type":"module"}')
  return {
    url: pathToFileURL(`${folder}/`),
    remove: () => rm(folder, { recursive: true, force: true }),
  }
}
