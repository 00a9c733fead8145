// The loopback server: who is answered and with what.
import { request } from 'node:http';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Served, servePage } from '../../src/app/page/serve.js';

let served: Served;
beforeAll(async () => {
  served = await servePage({ html: '<p>page</p>', policy: "default-src 'none'" }, 0);
});
afterAll(() => served?.close());

type Answer = {
  readonly status: number;
  readonly headers: Readonly<Record<string, unknown>>;
  readonly body: string;
};

function ask(path: string, headers: Record<string, string>, method = 'GET'): Promise<Answer> {
  const { port } = new URL(served.url);
  return new Promise((answered, failed) => {
    const asking = request({ host: '127.0.0.1', port, path, method, headers }, (response) => {
      let body = '';
      response.on('data', (part) => {
        body += String(part);
      });
      response.on('end', () =>
        answered({ status: response.statusCode ?? 0, headers: response.headers, body }),
      );
    });
    asking.on('error', failed);
    asking.end();
  });
}

const own = () => ({ host: new URL(served.url).host });

describe('the page’s server', () => {
  it('listens on the loopback address alone', () => {
    expect(new URL(served.url).hostname).toBe('127.0.0.1');
  });

  it('gives the page to its own address, never to be kept or framed', async () => {
    const { status, headers, body } = await ask('/', own());
    expect(status).toBe(200);
    expect(body).toBe('<p>page</p>');
    expect(headers['cache-control']).toBe('no-store');
    expect(headers['content-security-policy']).toContain("frame-ancestors 'none'");
    expect(headers['cross-origin-resource-policy']).toBe('same-origin');
  });

  // DNS rebinding: a foreign name that was made to point here. RFC 9110, 15.5.20: 421 Misdirected Request.
  it.each(['evil.example', 'evil.example:80', '127.0.0.1', 'localhost:1'])(
    'answers 421 to the host %s',
    async (host) => {
      expect((await ask('/', { host })).status).toBe(421);
    },
  );

  // Fetch Metadata: another port of this computer is same-site, not same-origin.
  it.each(['cross-site', 'same-site'])('answers 403 to a request from a %s page', async (site) => {
    expect((await ask('/', { ...own(), 'sec-fetch-site': site })).status).toBe(403);
  });

  it('has one page and takes nothing in', async () => {
    expect((await ask('/other', own())).status).toBe(404);
    expect((await ask('/', own(), 'POST')).status).toBe(405);
  });
});
