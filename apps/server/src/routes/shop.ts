import {
  addCalibration,
  addCell,
  addInstrument,
  type Book,
  cellsReport,
  changeCell,
  changeSettings,
  markOf,
  removeInstrument,
  setAudience,
  settingsReport,
} from '@pullbook/workshop';
import type { FastifyInstance } from 'fastify';
import { shaped } from '../bodies.ts';
import { lookingFrom } from '../looking.ts';
import {
  audienceChange,
  cellChange,
  instrumentTakenOut,
  newCalibration,
  newCell,
  newInstrument,
  settingsChange,
} from '../shop-bodies.ts';
import { RequestTrouble, valueOrTrouble } from '../trouble.ts';

type OfCell = { Params: { id: string } };
type OfInstrument = { Params: { id: string; instrument: string } };

/** What is the shop's: its settings and mark, its cells with their instruments, and who may see a thing. */
export function shopRoutes(app: FastifyInstance, book: Book): void {
  app.get('/api/settings', () => settingsReport(book));

  app.patch('/api/settings', async (request) => {
    const { stamp, ...change } = shaped(settingsChange, request.body);
    return valueOrTrouble(await changeSettings(book, change, stamp));
  });

  app.get('/api/settings/mark', async (_request, reply) => {
    const mark = await markOf(book);
    if (!mark) throw new RequestTrouble(404, 'unknown-id', 'The shop has no mark yet.');
    return (
      reply
        // Opened by itself an SVG is a page of this address: it may do nothing at all there.
        .header('content-security-policy', "default-src 'none'; style-src 'unsafe-inline'; sandbox")
        .type(mark.mediaType)
        .send(Buffer.from(mark.base64, 'base64'))
    );
  });

  app.get('/api/cells', (request) => cellsReport(book, lookingFrom(request.query).view));

  app.post('/api/cells', async (request, reply) =>
    reply.status(201).send(valueOrTrouble(await addCell(book, shaped(newCell, request.body)))),
  );

  app.patch<OfCell>('/api/cells/:id', async (request) => {
    const { change, reason, stamp } = shaped(cellChange, request.body);
    return valueOrTrouble(await changeCell(book, request.params.id, change, reason, stamp));
  });

  app.post<OfCell>('/api/cells/:id/instruments', async (request, reply) => {
    const { stamp, ...instrument } = shaped(newInstrument, request.body);
    const added = await addInstrument(book, request.params.id, instrument, stamp);
    return reply.status(201).send(valueOrTrouble(added));
  });

  app.post<OfInstrument>('/api/cells/:id/instruments/:instrument/take-out', async (request) => {
    const { id, instrument } = request.params;
    const { reason, stamp } = shaped(instrumentTakenOut, request.body);
    return valueOrTrouble(await removeInstrument(book, id, instrument, reason, stamp));
  });

  app.post<OfInstrument>('/api/cells/:id/instruments/:instrument/calibrations', async (request, reply) => {
    const { id, instrument } = request.params;
    const { stamp, ...calibration } = shaped(newCalibration, request.body);
    const added = await addCalibration(book, id, instrument, calibration, stamp);
    return reply.status(201).send(valueOrTrouble(added));
  });

  app.patch<OfCell>('/api/audience/:id', async (request) => {
    const { reason, stamp, ...audience } = shaped(audienceChange, request.body);
    return valueOrTrouble(await setAudience(book, request.params.id, audience, reason, stamp));
  });
}
