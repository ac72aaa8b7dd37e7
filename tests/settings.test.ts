import { describe, expect, it } from 'vitest'
import { buildApp } from '../src/app.ts'
import { settingsFrom } from '../src/settings.ts'
import { LONGEST_MS, LONGEST_WAIT_MS } from '../src/workers/pool.ts'

describe('the settings', () => {
  it('are safe on one machine when nothing is set', () => {
    expect(settingsFrom({})).toEqual({
      host: '127.0.0.1',
      port: 8080,
      logLevel: 'warn',
      allowedHosts: [],
      corsOrigins: [],
      trustProxy: [],
      rateLimit: 0,
      metrics: true,
      shutdownSeconds: 125,
    })
  })
  it('leave time at the end for the longest work that the service takes', () => {
    const settings = settingsFrom({})
    if ('faults' in settings) throw new Error(settings.faults.join())
    expect(settings.shutdownSeconds * 1000).toBeGreaterThan(LONGEST_MS + LONGEST_WAIT_MS)
  })
  it('take lists parted by commas', () => {
    const set = { ALLOWED_HOSTS: 'box.lan, box', CORS_ORIGINS: 'http://a.example,https://b.example:8443' }
    expect(settingsFrom(set)).toMatchObject({
      allowedHosts: ['box.lan', 'box'],
      corsOrigins: ['http://a.example', 'https://b.example:8443'],
    })
  })
  it('name every fault with its variable', () => {
    const told = settingsFrom({
      PORT: '80a',
      LOG_LEVEL: 'loud',
      CORS_ORIGINS: 'http://a.example/page',
      TRUST_PROXY: 'loopback, 10.0.0.0/33, ::1/128',
      RATE_LIMIT: '-1',
      METRICS: 'yes',
      SHUTDOWN_SECONDS: '1e9',
    })
    expect(told).toEqual({
      faults: [
        expect.stringContaining('PORT'),
        expect.stringContaining('LOG_LEVEL'),
        expect.stringContaining('http://a.example/page'),
        expect.stringContaining('"10.0.0.0/33"'),
        expect.stringContaining('RATE_LIMIT'),
        expect.stringContaining('METRICS'),
        expect.stringContaining('SHUTDOWN_SECONDS'),
      ],
    })
  })
  it('refuse an empty address, which would be every address of the machine', () => {
    for (const HOST of ['', ' '])
      expect(settingsFrom({ HOST })).toEqual({ faults: [expect.stringContaining('HOST')] })
    for (const name of ['PORT', 'LOG_LEVEL', 'RATE_LIMIT', 'METRICS', 'SHUTDOWN_SECONDS'])
      expect(settingsFrom({ [name]: '' })).toEqual({ faults: [expect.stringContaining(name)] })
  })
  it('take names of hosts as a browser sends them', () => {
    // The second by Punycode (RFC 3492).
    expect(settingsFrom({ ALLOWED_HOSTS: 'Boxwright.Local, b\u00fccher.lan, a_b' })).toMatchObject({
      allowedHosts: ['boxwright.local', 'xn--bcher-kva.lan', 'a_b'],
    })
  })
  it.each([
    'boxwright.local:9105',
    'http://x/',
    'x/y',
    'a b',
    'a..b',
    '-a',
    '*',
    '[::1]',
    'a@b',
    'x'.repeat(64),
  ])('refuse as the name of a host %j', (ALLOWED_HOSTS) => {
    expect(settingsFrom({ ALLOWED_HOSTS })).toEqual({
      faults: [expect.stringContaining(`"${ALLOWED_HOSTS}"`)],
    })
  })
  it.each([
    '10.0.0.0/0',
    '10.0.0.0/8/9',
    '::/0',
    '10.0.0.0/',
    '10.0.0.0/-1',
    '10.0.0.0/1e1',
    '/8',
    'box.lan',
  ])('refuse as a proxy %j', (TRUST_PROXY) => {
    expect(settingsFrom({ TRUST_PROXY })).toEqual({ faults: [expect.stringContaining(`"${TRUST_PROXY}"`)] })
  })
  it('take only proxies that the server takes too', async () => {
    const TRUST_PROXY =
      '10.0.0.0/1,10.0.0.1,10.0.0.1/32,::1,fd00::/8,::ffff:10.0.0.1,::ffff:10.0.0.0/104,fe80::1%eth0,loopback,linklocal,uniquelocal'
    const settings = settingsFrom({ TRUST_PROXY })
    if ('faults' in settings) throw new Error(settings.faults.join())
    for (const one of settings.trustProxy) await (await buildApp({ trustProxy: [one] })).close()
    await (await buildApp({ trustProxy: settings.trustProxy })).close()
  })
})
