import type { Remark, Result } from '@pullbook/core/remark';
import { type Book, BookTrouble, settingsOf, shownRemarks, wordsOfSince } from '@pullbook/workshop';
import type { FastifyError, FastifyInstance } from 'fastify';

/** Trouble with a request that its sender can mend. */
export class RequestTrouble extends Error {
  readonly status: number;
  readonly code: string;
  readonly remarks: Remark[];
  constructor(status: number, code: string, message: string, remarks: Remark[] = []) {
    super(message);
    this.status = status;
    this.code = code;
    this.remarks = remarks;
  }
}

/** The value of a result; a refusal becomes the answer to the request: 404 for an unknown id, else 400. */
export function valueOrTrouble<T>(result: Result<T>): T {
  if (result.ok) return result.value;
  const first = result.remarks[0]!;
  const status = first.code === 'unknown-id' ? 404 : 400;
  throw new RequestTrouble(status, first.code, first.message, result.remarks);
}

const STATUS_OF_BOOK_TROUBLE: Partial<Record<BookTrouble['code'], number>> = { locked: 423, full: 507 };

/**
 * Every error leaves as `{ error: { code, message, remarks? } }` with a message for a person. Where somebody else wrote
 * meanwhile, `since` says what, and `stamp` is what a change that is meant all the same gives back.
 */
export function answerTroubles(app: FastifyInstance, uploadLimitBytes: number, book: Book): void {
  app.setErrorHandler(async (trouble: FastifyError | Error, request, reply) => {
    if (trouble instanceof RequestTrouble) {
      const { code, message } = trouble;
      if (trouble.remarks.length === 0)
        return reply.status(trouble.status).send({ error: { code, message } });
      const remarks = shownRemarks(trouble.remarks, await settingsOf(book));
      return reply.status(trouble.status).send({ error: { code, message: remarks[0]!.text, remarks } });
    }
    if (trouble instanceof BookTrouble) {
      const status = STATUS_OF_BOOK_TROUBLE[trouble.code] ?? 409;
      const { code, message, since } = trouble;
      if (since.length === 0) return reply.status(status).send({ error: { code, message } });
      const steps = await wordsOfSince(book, trouble, await settingsOf(book));
      return reply.status(status).send({ error: { code, message, since: steps, stamp: since.at(-1)!.uid } });
    }
    const status = 'statusCode' in trouble ? (trouble.statusCode ?? 500) : 500;
    if (status === 413 && request.headers['content-type']?.startsWith('application/json')) {
      const message = 'This request is longer than any that the pages send. Nothing was done.';
      return reply.status(413).send({ error: { code: 'too-large', message } });
    }
    if (status === 413) {
      const allowed = `${Math.floor(uploadLimitBytes / 1_048_576)} MB`;
      const message = `This is more than Pullbook takes at once. Allowed: ${allowed} a file. Cut the log into its pulls first.`;
      return reply.status(413).send({ error: { code: 'too-large', message } });
    }
    if (status < 500) {
      return reply.status(status).send({ error: { code: 'bad-request', message: trouble.message } });
    }
    process.stderr.write(`${request.method} ${request.url}: ${trouble.stack ?? trouble.message}\n`);
    const message = `Pullbook failed at this: ${trouble.message.replace(/\.$/u, '')}. What is in the book is untouched; the terminal says more.`;
    return reply.status(500).send({ error: { code: 'internal', message } });
  });
}
