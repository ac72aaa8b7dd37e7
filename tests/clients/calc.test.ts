import { execFile } from 'node:child_process'
import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { pathToFileURL } from 'node:url'
import { promisify } from 'node:util'
import { parse } from 'csv-parse/sync'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { ANSWER_ROWS } from '../../src/docs/example-sheet.ts'
import { buildApp } from '../held-app.ts'

// A real spreadsheet pulls from the running service. What it needs to be let to: a profile of its own, a folder that
// it trusts, and a macro that opens, stores and ends (found by trying LibreOffice 7.4).

const run = promisify(execFile)
const app = await buildApp()
const address = await app.listen({ host: '127.0.0.1', port: 0 })
const folder = await mkdtemp(`${tmpdir()}/calc-`)
const profile = `-env:UserInstallation=${pathToFileURL(`${folder}/profile`)}`
afterAll(async () => {
  await app.close()
  await rm(folder, { recursive: true, force: true })
})

const MACRO = (from: string, to: string) => `<?xml version="1.0" encoding="UTF-8"?>
<!DOCTYPE script:module PUBLIC "-//OpenOffice.org//DTD OfficeDocument 1.0//EN" "module.dtd">
<script:module xmlns:script="http://openoffice.org/2000/script" script:name="M" script:language="StarBasic">Sub Pull
  Dim load(0) As New com.sun.star.beans.PropertyValue
  load(0).Name = "UpdateDocMode"
  load(0).Value = 3
  doc = StarDesktop.loadComponentFromURL("${from}", "_blank", 0, load())
  ' The cells are filled as their answers come in: look again until the last one is.
  For i = 1 To 60
    Wait 250
    doc.calculateAll()
    If doc.Sheets.getByIndex(0).getCellByPosition(1, ${ANSWER_ROWS.first + ANSWER_ROWS.count - 2}).getError() = 0 Then Exit For
  Next i
  Dim store(1) As New com.sun.star.beans.PropertyValue
  store(0).Name = "FilterName"
  store(0).Value = "Text - txt - csv (StarCalc)"
  store(1).Name = "FilterOptions"
  store(1).Value = "44,34,76,1,,0,false,false"
  doc.storeToURL("${to}", store())
  doc.close(True)
  StarDesktop.terminate()
End Sub
</script:module>`

const SCRIPTS = `<?xml version="1.0" encoding="UTF-8"?>
<!DOCTYPE library:library PUBLIC "-//OpenOffice.org//DTD OfficeDocument 1.0//EN" "library.dtd">
<library:library xmlns:library="http://openoffice.org/2000/library" library:name="Standard" library:readonly="false" library:passwordprotected="false"><library:element library:name="M"/></library:library>`

/** Opens a sheet in a Calc of its own and gives its cells back. */
async function cellsOf(name: string, sheet: string): Promise<string[][]> {
  const [from, to] = [`${folder}/${name}.fods`, `${folder}/${name}.csv`]
  await writeFile(from, sheet)
  await writeFile(
    `${folder}/profile/user/basic/Standard/M.xba`,
    MACRO(`${pathToFileURL(from)}`, `${pathToFileURL(to)}`),
  )
  await run('soffice', [profile, '--headless', '--norestore', 'macro:///Standard.M.Pull'], {
    timeout: 120_000,
  })
  return parse(await readFile(to, 'utf8'), { relax_column_count: true })
}

/** What the service answers when it is asked directly. */
const answered = async (path: string) => (await app.inject(path)).json()

const exampleSheet = async () =>
  (await app.inject({ url: '/docs/example-sheet.fods', headers: { host: new URL(address).host } })).body

async function setting(lines: string): Promise<void> {
  const file = `${folder}/profile/user/registrymodifications.xcu`
  const text = await readFile(file, 'utf8')
  await writeFile(file, text.replace('</oor:items>', `${lines}</oor:items>`))
}

beforeAll(async () => {
  await run('soffice', [profile, '--headless', '--terminate_after_init'], { timeout: 120_000 })
  await mkdir(`${folder}/profile/user/basic/Standard`, { recursive: true })
  await writeFile(`${folder}/profile/user/basic/Standard/script.xlb`, SCRIPTS)
  await setting(
    `<item oor:path="/org.openoffice.Office.Common/Security/Scripting"><prop oor:name="SecureURL" oor:op="fuse"><value><it>${pathToFileURL(folder)}</it></value></prop></item>`,
  )
})

describe('Calc', () => {
  it('fills the ten cells of the example workbook with what the service answers', async () => {
    const sheet = await exampleSheet()
    const cells = await cellsOf('example', sheet)
    const answers = cells.slice(ANSWER_ROWS.first - 1, ANSWER_ROWS.first - 1 + ANSWER_ROWS.count)
    expect(answers).toHaveLength(10)
    const shown = new Map(answers.map(([label = '', value = '']) => [label, value]))
    const port = await answered('/v1/port?netVolumeL=4&innerDiameterMm=30&tuningHz=80')
    expect(Number(shown.get('Length of the tube'))).toBeCloseTo(port.port.lengthMm, 6)
    expect(shown.get('Verdict on the supply')).toMatch(/^(ready|review|blocked)$/)
    for (const [label, value] of shown)
      if (!label.startsWith('Verdict')) expect(Number(value), `${label}: ${value}`).toBeGreaterThan(0)
  })

  it('shows a fault as one readable line', async () => {
    const sheet = await exampleSheet()
    const cells = await cellsOf('fault', sheet.replace('office:value="80"', 'office:value="-80"'))
    expect(cells[ANSWER_ROWS.first - 1]?.[1]).toMatch(/^error: \/tuningHz /)
  })

  it('in a sheet with decimal commas gets the same numbers', async () => {
    await setting(
      '<item oor:path="/org.openoffice.Setup/L10N"><prop oor:name="ooSetupSystemLocale" oor:op="fuse"><value>de-DE</value></prop></item>',
    )
    const sheet = await exampleSheet()
    const cells = await cellsOf('comma', sheet.replace('office:value="0.45"', 'office:value="0.55"'))
    const qtc = cells[ANSWER_ROWS.first + 2]?.[1] ?? ''
    expect(qtc).toMatch(/^\d,\d+$/)
    const query = 'driver.fsHz=110&driver.qts=0.55&driver.vasL=2.5&driver.sdCm2=50&driver.reOhm=3.4'
    const box = await answered(`/v1/box-tuning?${query}&box.kind=closed&box.netVolumeL=4`)
    expect(Number(qtc.replace(',', '.'))).toBeCloseTo(box.tuning.qtc, 6)
  })

  it('links a table as real numbers', async () => {
    const text = (await app.inject('/v1/port?netVolumeL=4&innerDiameterMm=30&tuningHz=80&format=csv')).body
    const from = `${folder}/table.csv`
    await writeFile(from, text)
    await run('soffice', [profile, '--headless', '--convert-to', 'fods', '--outdir', folder, from], {
      timeout: 120_000,
    })
    const table = await readFile(`${folder}/table.fods`, 'utf8')
    expect(table).toMatch(/office:value-type="float" office:value="\d/)
  })
})
