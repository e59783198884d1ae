import helmet from '@fastify/helmet';
import multipart from '@fastify/multipart';
import { type Book, settingsReport } from '@pullbook/workshop';
import Fastify, { type FastifyInstance } from 'fastify';
import { guardRequests } from './guard.ts';
import { bookRoutes } from './routes/book.ts';
import { combinationRoutes } from './routes/combinations.ts';
import { figureRoutes } from './routes/figures.ts';
import { fileRoutes } from './routes/files.ts';
import { historyRoutes } from './routes/history.ts';
import { matchRoutes } from './routes/match.ts';
import { planRoutes } from './routes/plan.ts';
import { publishRoutes } from './routes/publish.ts';
import { pullRoutes } from './routes/pulls.ts';
import { reachRoutes } from './routes/reach.ts';
import { rememberedRoutes } from './routes/remembered.ts';
import { ruleRoutes } from './routes/rules.ts';
import { safetyRoutes } from './routes/safety.ts';
import { type ScreenFolders, screenRoutes } from './routes/screens.ts';
import { shopRoutes } from './routes/shop.ts';
import { trialRoutes } from './routes/trials.ts';
import { answerTroubles } from './trouble.ts';

export interface AppOptions {
  book: Book;
  folders: ScreenFolders;
  /** Port it is reached at, once known. */
  port: () => number;
  /** Bytes a file may have. */
  uploadLimitBytes?: number;
}

/** What the reader takes too; see its limits. */
const UPLOAD_LIMIT_BYTES = 2e9;
const SHEET_LIMIT_BYTES = 1_048_576;

/** The whole server over one open book, not listening yet. */
export async function buildApp(options: AppOptions): Promise<FastifyInstance> {
  const uploadLimitBytes = options.uploadLimitBytes ?? UPLOAD_LIMIT_BYTES;
  const app = Fastify({ logger: false, bodyLimit: SHEET_LIMIT_BYTES, forceCloseConnections: true });
  answerTroubles(app, uploadLimitBytes, options.book);
  await app.register(helmet, {
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        defaultSrc: ["'self'"],
        imgSrc: ["'self'", 'data:', 'blob:'],
        // What encodes transparent clips starts a thread of its own from its own text. Pages still run no script but ours.
        workerSrc: ["'self'", 'blob:'],
        objectSrc: ["'none'"],
        baseUri: ["'none'"],
        formAction: ["'self'"],
        frameAncestors: ["'none'"],
      },
    },
    frameguard: { action: 'deny' },
    referrerPolicy: { policy: 'no-referrer' },
    // Plain HTTP on loopback: a promise of HTTPS would only lock the browser out.
    strictTransportSecurity: false,
  });
  guardRequests(app, options.port);
  app.addHook('onSend', async (request, reply) => {
    if (request.url.startsWith('/api/')) reply.header('cache-control', 'no-store');
  });
  await app.register(multipart, {
    limits: { fileSize: uploadLimitBytes, files: 1, fields: 4, fieldSize: SHEET_LIMIT_BYTES },
  });
  bookRoutes(app, options.book);
  trialRoutes(app, options.book);
  await publishRoutes(app, options.book);
  planRoutes(app, options.book);
  matchRoutes(app, options.book);
  reachRoutes(app, options.book);
  pullRoutes(app, options.book);
  await fileRoutes(app, options.book);
  rememberedRoutes(app, options.book);
  combinationRoutes(app, options.book);
  historyRoutes(app, options.book);
  shopRoutes(app, options.book);
  figureRoutes(app, options.book);
  ruleRoutes(app, options.book);
  safetyRoutes(app, options.book);
  await screenRoutes(app, options.folders, () => settingsReport(options.book));
  return app;
}
