// One finished page arrives; a server on this computer alone that gives it out leaves.
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { Page } from './assemble.js';

export type Served = { readonly url: string; readonly close: () => Promise<void> };

/**
 * Serves the page on the loopback address. Only requests that name this address and port are answered:
 * a foreign name made to point here (DNS rebinding) gets status 421 (RFC 9110, 15.5.20).
 * @param port 0 lets the system choose.
 * @example (await servePage(page, 0)).url // 'http://127.0.0.1:41234/'
 */
export async function servePage(page: Page, port: number): Promise<Served> {
  const server: Server = createServer((request, response) => {
    const { port: bound } = server.address() as AddressInfo;
    answer(page, bound, request, response);
  });
  await new Promise<void>((ready, failed) => {
    server.once('error', failed);
    server.listen(port, '127.0.0.1', ready);
  });
  const { port: bound } = server.address() as AddressInfo;
  return {
    url: `http://127.0.0.1:${bound}/`,
    close: () =>
      new Promise((closed) => {
        server.close(() => closed());
        server.closeAllConnections();
      }),
  };
}

function answer(page: Page, port: number, request: IncomingMessage, response: ServerResponse) {
  const own = [`127.0.0.1:${port}`, `localhost:${port}`, `[::1]:${port}`];
  if (!own.includes(request.headers.host ?? '')) return end(response, 421);
  const site = request.headers['sec-fetch-site'];
  if (site !== undefined && site !== 'same-origin' && site !== 'none') return end(response, 403);
  if (request.method !== 'GET' && request.method !== 'HEAD') return end(response, 405);
  if (request.url !== '/') return end(response, 404);
  response.writeHead(200, {
    'content-type': 'text/html; charset=utf-8',
    'content-security-policy': `${page.policy}; frame-ancestors 'none'`,
    ...always,
  });
  response.end(request.method === 'HEAD' ? undefined : page.html);
}

const always = {
  'cache-control': 'no-store',
  'referrer-policy': 'no-referrer',
  'x-content-type-options': 'nosniff',
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
} as const;

function end(response: ServerResponse, status: number) {
  response.writeHead(status, always);
  response.end();
}
