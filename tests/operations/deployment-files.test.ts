import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { parseAllDocuments } from 'yaml'
import { buildApp } from '../../src/app.ts'
import { settingsFrom } from '../../src/settings.ts'

const read = (name: string): string => readFileSync(new URL(`../../docker/${name}`, import.meta.url), 'utf8')

/** Every document of a YAML file (YAML 1.2, read by a parser of others); warnings count as faults. */
function documents(name: string) {
  return parseAllDocuments(read(name)).map((document) => {
    expect([...document.errors, ...document.warnings]).toEqual([])
    return document.toJS()
  })
}

/** Before the service stops listening, and for the last answers (src/service/shutdown.ts). */
const NOTICE_S = 1 + 2

function shutdownSeconds(environment: Record<string, string>): number {
  const settings = settingsFrom(environment)
  if ('faults' in settings) throw new Error(settings.faults.join('; '))
  return settings.shutdownSeconds
}

const dockerfile = read('Dockerfile')
const imagePort = /^EXPOSE (\d+)$/m.exec(dockerfile)?.[1] ?? ''

describe('the image', () => {
  it('runs by the number of a user that is not root', () => {
    expect(Number(/^USER (\S+)$/m.exec(dockerfile)?.[1])).toBeGreaterThan(0)
  })
  it('copies all that its build calls', () => {
    const scripts: string = JSON.parse(readFileSync('package.json', 'utf8')).scripts.build
    for (const [path] of scripts.matchAll(/scripts\/\S+/g))
      expect(readFileSync(path).length, path).toBeGreaterThan(0)
    expect(dockerfile).toMatch(/^COPY scripts /m)
  })
})

describe('compose', () => {
  const [compose] = documents('compose.yaml')
  const { boxwright, proxy } = compose.services
  it('runs several instances, none of which can write or gain rights', () => {
    expect(boxwright.deploy.replicas).toBeGreaterThan(1)
    for (const one of [boxwright, proxy]) {
      expect(one).toMatchObject({
        read_only: true,
        cap_drop: ['ALL'],
        security_opt: ['no-new-privileges:true'],
      })
    }
  })
  it('puts the nginx of this folder before them, at the port that the image listens on', () => {
    expect(proxy.volumes).toEqual(['./nginx.conf:/etc/nginx/nginx.conf:ro'])
    expect(read('nginx.conf')).toContain(`server boxwright:${imagePort} `)
    const inside = /listen (\d+);/.exec(read('nginx.conf'))?.[1]
    expect(proxy.ports[0].split(':').at(-1)).toBe(inside)
  })
  it('sets nothing that the service would refuse, and does not end it before its time', () => {
    expect(shutdownSeconds(boxwright.environment) + NOTICE_S).toBeLessThan(
      Number.parseInt(boxwright.stop_grace_period, 10),
    )
  })
})

describe('the cluster', () => {
  const all = documents('kubernetes.yaml')
  const [deployment, service, scaler, budget] = all
  const { spec } = deployment.spec.template
  const [container] = spec.containers
  it('has a deployment, a service, a scaler and a budget for the same pods', () => {
    expect(all.map(({ kind }) => kind)).toEqual([
      'Deployment',
      'Service',
      'HorizontalPodAutoscaler',
      'PodDisruptionBudget',
    ])
    const { labels } = deployment.spec.template.metadata
    expect(deployment.spec.selector.matchLabels).toEqual(labels)
    expect(service.spec.selector).toEqual(labels)
    expect(budget.spec.selector.matchLabels).toEqual(labels)
    expect(scaler.spec.scaleTargetRef).toMatchObject({
      kind: 'Deployment',
      name: deployment.metadata.name,
    })
    // A scaler by utilisation counts in shares of what is requested.
    expect(container.resources.requests).toHaveProperty('cpu')
  })
  it('sends to the port that the image listens on', () => {
    expect(container.ports).toEqual([{ name: 'http', containerPort: Number(imagePort) }])
    expect(service.spec.ports[0].targetPort).toBe('http')
  })
  it('runs as the user of the image, who can neither write nor gain rights', () => {
    expect(spec.securityContext).toMatchObject({
      runAsNonRoot: true,
      runAsUser: Number(/^USER (\S+)$/m.exec(dockerfile)?.[1]),
    })
    expect(container.securityContext).toEqual({
      allowPrivilegeEscalation: false,
      readOnlyRootFilesystem: true,
      capabilities: { drop: ['ALL'] },
    })
  })
  it('probes what the service answers', async () => {
    const app = await buildApp()
    for (const probe of ['startupProbe', 'livenessProbe', 'readinessProbe']) {
      const { path, port } = container[probe].httpGet
      expect(port).toBe('http')
      expect((await app.inject(path)).statusCode, path).toBe(200)
    }
    await app.close()
  })
  it('sets nothing that the service would refuse, and does not end it before its time', () => {
    const environment = Object.fromEntries(
      container.env.map(({ name, value }: { name: string; value: string }) => [name, value]),
    )
    const [, sleep] = container.lifecycle.preStop.exec.command
    expect(Number(sleep) + NOTICE_S + shutdownSeconds(environment)).toBeLessThan(
      spec.terminationGracePeriodSeconds,
    )
  })
})
