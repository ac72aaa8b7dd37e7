/** Addresses for whoever keeps the service running: never refused, limited or logged. */
export const isForKeepers = (url: string): boolean =>
  url.startsWith('/health/') || url.split('?', 1)[0] === '/metrics'
