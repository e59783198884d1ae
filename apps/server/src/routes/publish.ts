import {
  type Book,
  changeLinks,
  clipOf,
  lookAtBundleFile,
  noteMadeElsewhere,
  openBundleFile,
  presentationOf,
  publicationsPage,
  publishPageOf,
  publishRequest,
  reportOf,
  settingsOf,
  shownRemarks,
  stillOf,
} from '@pullbook/workshop';
import type { FastifyInstance } from 'fastify';
import { attachment } from '../attachment.ts';
import { shaped } from '../bodies.ts';
import { lookedAt, lookingFrom } from '../looking.ts';
import {
  clipQuery,
  linksWanted,
  publicationsQuery,
  publicationToNote,
  publishPageQuery,
  publishWanted,
  reportQuery,
  stillQuery,
} from '../publish-bodies.ts';
import { Publishing } from '../publishing.ts';
import { valueOrTrouble } from '../trouble.ts';
import { incomingFolder, withUpload } from '../upload.ts';

type WithId = { Params: { id: string } };

const viewOf = ({ units, decimal }: { units: 'us' | 'si'; decimal: '.' | ',' }) => ({
  units,
  decimalMark: decimal,
});

/** What leaves the shop: to look at, to be made, what was published, a bundle to be opened. */
export async function publishRoutes(app: FastifyInstance, book: Book): Promise<void> {
  previewRoutes(app, book);
  await makingRoutes(app, book);
  publicationRoutes(app, book);
  const incoming = await incomingFolder(book.folder);
  app.post('/api/bundles/look', async (request) => {
    const look = await withUpload(request, incoming, ({ path }) => lookAtBundleFile(book, path));
    const remarks = shownRemarks(look.remarks, await settingsOf(book));
    return { ...valueOrTrouble(look), remarks };
  });

  app.post('/api/bundles', async (request, reply) => {
    const opened = await withUpload(request, incoming, ({ path }) => openBundleFile(book, path));
    const { trialId, question, pulls, isNew } = valueOrTrouble(opened);
    const remarks = shownRemarks(opened.remarks, await settingsOf(book));
    return reply.status(isNew ? 201 : 200).send({ trialId, question, pulls, isNew, remarks });
  });
}

function previewRoutes(app: FastifyInstance, book: Book): void {
  app.get<WithId>('/api/trials/:id/publish', async (request) => {
    const asked = shaped(publishPageQuery, request.query);
    return valueOrTrouble(await publishPageOf(book, request.params.id, viewOf(asked), lookedAt(asked)));
  });

  app.get<WithId>('/api/trials/:id/still', async (request, reply) => {
    const asked = shaped(stillQuery, request.query);
    const { picture, key, format, size, theme, ground, privateToo } = asked;
    const wanted = { picture, key, format, size, theme, ground: ground === 'true', privateToo };
    const still = valueOrTrouble(
      await stillOf(book, request.params.id, viewOf(asked), { ...lookedAt(asked), ...wanted }),
    );
    if (asked.download === '1') reply.header('content-disposition', attachment(still.fileName));
    return reply.type(still.mediaType).send(Buffer.from(still.bytes));
  });

  app.get<WithId>('/api/trials/:id/clip', async (request) => {
    const asked = shaped(clipQuery, request.query);
    const wanted = { ...lookedAt(asked), privateToo: asked.privateToo };
    return valueOrTrouble(await clipOf(book, request.params.id, viewOf(asked), wanted));
  });

  app.get<WithId>('/api/trials/:id/presentation', async (request) => {
    const { view, looking } = lookingFrom(request.query);
    return valueOrTrouble(await presentationOf(book, request.params.id, view, looking));
  });

  app.get<WithId>('/api/trials/:id/report', async (request, reply) => {
    const asked = shaped(reportQuery, request.query);
    const { format, paper, privateToo } = asked;
    const report = valueOrTrouble(
      await reportOf(book, request.params.id, viewOf(asked), {
        ...lookedAt(asked),
        ...{ format, paper, privateToo },
      }),
    );
    if (asked.download === '1') reply.header('content-disposition', attachment(report.fileName));
    if (format === 'html') {
      reply.header('content-security-policy', SELF_CONTAINED).header('x-frame-options', 'SAMEORIGIN');
      // In a sandbox it has no origin to be kept apart by, and the browser would complain that it asks for one.
      reply.removeHeader('origin-agent-cluster');
    }
    return reply.type(report.mediaType).send(Buffer.from(report.bytes));
  });
}

/** A report holds all that it needs in itself, and may ask for nothing. */
const SELF_CONTAINED =
  "default-src 'none'; style-src 'unsafe-inline'; script-src 'unsafe-inline'; img-src data:; font-src data:; frame-ancestors 'self'; sandbox allow-scripts allow-popups allow-modals";

async function makingRoutes(app: FastifyInstance, book: Book): Promise<void> {
  const publishing = await Publishing.over(book);
  app.addHook('onClose', () => publishing.close());

  app.post<WithId>('/api/trials/:id/publish', async (request, reply) => {
    const asked = shaped(publishWanted, request.body ?? {});
    const { units, decimal, from: _, to: __, ...wanted } = asked;
    const checked = { ...valueOrTrouble(publishRequest(wanted)), ...lookedAt(asked) };
    const job = await publishing.start(request.params.id, { units, decimalMark: decimal }, checked);
    return reply.status(202).send(job);
  });

  app.get<WithId>('/api/trials/:id/publishing', (request) => publishing.open(request.params.id));

  app.get<WithId>('/api/publishing/:id', (request) => publishing.find(request.params.id));

  app.delete<WithId>('/api/publishing/:id', (request) => publishing.stop(request.params.id));

  app.get<WithId>('/api/publishing/:id/file', (request, reply) => {
    const { name, stream, bytes } = publishing.file(request.params.id);
    return reply
      .header('content-disposition', attachment(name))
      .header('content-length', bytes)
      .type('application/octet-stream')
      .send(stream);
  });
}

function publicationRoutes(app: FastifyInstance, book: Book): void {
  app.post<WithId>('/api/trials/:id/publications', async (request, reply) => {
    const asked = shaped(publicationToNote, request.body);
    const { files, privateToo } = asked;
    const noted = await noteMadeElsewhere(book, request.params.id, viewOf(asked), {
      ...lookedAt(asked),
      ...{ files, privateToo },
    });
    const remarks = shownRemarks(noted.remarks, viewOf(asked));
    return reply.status(201).send({ ...valueOrTrouble(noted), remarks });
  });

  app.get('/api/publications', async (request) => {
    const asked = shaped(publicationsQuery, request.query);
    return valueOrTrouble(await publicationsPage(book, viewOf(asked), asked.trial ?? null));
  });

  app.patch<WithId>('/api/publications/:id', async (request) => {
    const { links, stamp } = shaped(linksWanted, request.body);
    return valueOrTrouble(await changeLinks(book, request.params.id, links, stamp));
  });
}
