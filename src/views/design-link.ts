import { deflateRawSync } from 'node:zlib'

/**
 * The address that opens a design on the page of the service: the design travels in it, nothing is stored.
 * Behind `#d=` stands its JSON in UTF-8, packed by raw deflate (RFC 1951) and written in base64url (RFC 4648).
 * @param origin  scheme and host of the service, `http://192.168.1.20:8080`
 */
export const designLink = (origin: string, design: unknown): string =>
  `${origin}/#d=${deflateRawSync(JSON.stringify(design), { level: 9 }).toString('base64url')}`
