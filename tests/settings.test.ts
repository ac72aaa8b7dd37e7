import { describe, expect, it } from 'vitest'
import { settingsFrom } from '../src/settings.ts'

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
      shutdownSeconds: 20,
    })
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
})
