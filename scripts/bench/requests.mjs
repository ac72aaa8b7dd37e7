// What the bench asks: the examples of the contract, each in many slightly different bodies, for the service remembers
// its last few answers and a bench of its memory would say nothing.

const VARIANTS = 64

/** The number of each example that is changed a little; the answers stay as long as they are. */
const CHANGED = {
  '/v1/port': (body, factor) => ({ ...body, netVolumeL: body.netVolumeL * factor }),
  '/v1/load-impedance': (body, factor) => ({
    ...body,
    drivers: body.drivers.map((driver) => ({
      ...driver,
      parameters: { ...driver.parameters, fsHz: driver.parameters.fsHz * factor },
    })),
  }),
  '/v1/power-budget': (body, factor) => ({ ...body, loadOhm: body.loadOhm * factor }),
  '/v1/box-tuning': (body, factor) => ({
    ...body,
    box: { ...body.box, netVolumeL: body.box.netVolumeL * factor },
    curve: { ...body.curve, points: 200 },
  }),
  '/v1/design-check': (body, factor) => ({
    ...body,
    wants: { ...body.wants, listeningDistanceM: body.wants.listeningDistanceM * factor },
  }),
}

export const OPERATIONS = Object.keys(CHANGED)

/** Bodies by path, as text, and the answer to each. */
export async function requestsOf(address) {
  const contract = await (await fetch(`${address}/openapi.json`)).json()
  const found = {}
  for (const path of OPERATIONS) {
    const { example } = contract.paths[path].post.requestBody.content['application/json']
    const bodies = Array.from({ length: VARIANTS }, (_, i) =>
      JSON.stringify(CHANGED[path](example, 1 + i / 10_000)),
    )
    const answers = []
    for (const body of bodies) answers.push(await answerTo(`${address}${path}`, body))
    found[path] = { bodies, answers }
  }
  return found
}

async function answerTo(url, body) {
  const headers = { 'content-type': 'application/json' }
  const response = await fetch(url, { method: 'POST', headers, body })
  if (response.status !== 200) throw new Error(`${url}: ${response.status} ${await response.text()}`)
  return response.json()
}
