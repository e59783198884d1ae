import type { FastifyInstance, FastifyRequest } from 'fastify';
import { RequestTrouble } from './trouble.ts';

const LOOPBACK_NAMES = ['127.0.0.1', 'localhost', '[::1]'];

/**
 * Refuses what does not come from this machine's own pages. A page of another site can make a browser ask 127.0.0.1, by a
 * name of its own that resolves there (DNS rebinding) or by a form; both are seen in `Host` and `Origin`, which a page
 * cannot forge.
 */
export function guardRequests(app: FastifyInstance, port: () => number): void {
  app.addHook('onRequest', async (request) => {
    const hosts = LOOPBACK_NAMES.flatMap((name) => withPort(name, port()));
    if (!hosts.includes((request.headers.host ?? '').toLowerCase())) {
      throw new RequestTrouble(
        403,
        'foreign-host',
        `Pullbook answers only as ${hosts[0]} on this machine, not as "${request.headers.host ?? ''}".`,
      );
    }
    if (!isReading(request) && !isOwnOrigin(request, hosts)) {
      throw new RequestTrouble(
        403,
        'foreign-origin',
        `Changes are only taken from Pullbook's own pages (origin http://${hosts[0]}), not from "${request.headers.origin ?? 'no origin'}".`,
      );
    }
  });
}

/** A browser leaves the port out where it is the scheme's own. */
const withPort = (name: string, port: number): string[] =>
  port === 80 ? [`${name}:80`, name] : [`${name}:${port}`];

const isReading = (request: FastifyRequest): boolean => request.method === 'GET' || request.method === 'HEAD';

function isOwnOrigin(request: FastifyRequest, hosts: string[]): boolean {
  const origin = request.headers.origin?.toLowerCase();
  return hosts.some((host) => origin === `http://${host}`);
}
