import type { AddressInfo } from 'node:net';
import { type Book, fontFolder, listInBackground, webBuildFolder } from '@pullbook/workshop';
import { buildApp } from './app.ts';

export interface RunningServer {
  /** `http://127.0.0.1:4680` */
  address: string;
  port: number;
  /** Stops answering; the book stays open and is its owner's to close. */
  close: () => Promise<void>;
}

/** Another program listens at the port. */
export class PortTaken extends Error {
  readonly port: number;
  constructor(port: number) {
    super(`Port ${port} is taken by another program.`);
    this.port = port;
  }
}

/**
 * Serves an open book to this machine's own browser. Port 0 takes any free one.
 *
 * @throws {PortTaken} where another program has the port
 */
export async function startServer(options: {
  book: Book;
  port: number;
  host?: string;
}): Promise<RunningServer> {
  let port = options.port;
  const app = await buildApp({
    book: options.book,
    folders: { web: webBuildFolder(), fonts: fontFolder() },
    port: () => port,
  });
  const host = options.host ?? '127.0.0.1';
  try {
    await app.listen({ host, port: options.port });
  } catch (trouble) {
    await app.close();
    if ((trouble as NodeJS.ErrnoException).code === 'EADDRINUSE') throw new PortTaken(options.port);
    throw trouble;
  }
  port = (app.server.address() as AddressInfo).port;
  void listInBackground(options.book);
  return { address: `http://${host}:${port}`, port, close: () => app.close() };
}
