import { BUILT_IN_PRIOR, priorInForce, type ShopFigures, shopFigures } from '@pullbook/core/shop';
import type { Book } from '@pullbook/store';
import {
  type PredictionLedger,
  type PriorRow,
  predictionLedger,
  priorRows,
  type ShopFiguresPage,
  shareText,
  shopFiguresPage,
  type ViewOptions,
} from '@pullbook/views';
import { type CalibrationRow, calibrationLog } from './calibration-log.ts';
import { type KeptPrediction, keptPredictions } from './predictions.ts';
import { shopDigestsOf } from './pull-digests.ts';
import { remembered } from './remembered.ts';
import { settingsOf } from './settings.ts';

/** What a shop's pulls, instruments and predictions say about itself. */
export interface FiguresOfShop {
  figures: ShopFigures;
  calibrations: CalibrationRow[];
  predictions: KeptPrediction[];
  /** Pulls the figures do not rest on yet: they are being read. */
  pullsNotRead: number;
}

/** The same, ready to show. */
export interface FiguresPage extends ShopFiguresPage {
  calibrations: CalibrationRow[];
  predictions: PredictionLedger;
  pullsNotRead: number;
}

export async function figuresOf(book: Book, now = new Date()): Promise<FiguresOfShop> {
  const { scatterPrior } = await settingsOf(book);
  const { clusters, unread, stamp } = await shopDigestsOf(book);
  const key = JSON.stringify(['shop figures', stamp, scatterPrior]);
  return {
    figures: await remembered(book, key, async () => shopFigures(clusters, priorInForce(scatterPrior ?? {}))),
    calibrations: calibrationLog(await book.cells(), now.toISOString().slice(0, 10)),
    predictions: await keptPredictions(book),
    pullsNotRead: unread,
  };
}

export async function figuresPageOf(book: Book, options: ViewOptions): Promise<FiguresPage> {
  const { figures, calibrations, predictions, pullsNotRead } = await figuresOf(book);
  return {
    ...shopFiguresPage(figures, options),
    calibrations,
    predictions: predictionLedger(predictions, options),
    pullsNotRead,
  };
}

/** The shop's own guess of its scatter, for the form that changes it. */
export interface ScatterPriorForm {
  rows: PriorRow[];
  /** `1.0 %` */
  worthwhileGain: string;
}

export async function scatterPriorForm(book: Book, options: ViewOptions): Promise<ScatterPriorForm> {
  const { scatterPrior, worthwhileGain } = await settingsOf(book);
  return {
    rows: priorRows(BUILT_IN_PRIOR, scatterPrior, options),
    worthwhileGain: shareText(worthwhileGain, options),
  };
}
