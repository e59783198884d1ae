import { type CombinationSheet, sheetNumber } from '../../combination/index.ts';
import { figureOf } from '../../quantity/index.ts';
import { remark, said } from '../../remark/index.ts';
import type { Baseline, FlowLoss, MatchInput, StatedModel } from '../model.ts';
import { airFlowFigure } from '../way/air-flow-figure.ts';
import { carburettorLoss } from '../way/carburettor-loss.ts';
import { lossFrom, NO_LOSS } from '../way/loss.ts';
import { wordsOf } from './sheet-words.ts';
import type { Taken } from './taken.ts';

/** Pa lost where nobody measured it, at the air a supercharged engine takes (common practice, no source). */
const USUAL_INLET_LOSS = 1000;
const USUAL_PIPE_LOSS = 1000;
/** What a supercharged engine swallows at the top over what it did without (common practice, no source). */
const USUAL_RISE_OF_FLOW = 1.4;
/** kg/m³ of air about an engine brake, and behind a compressor. */
const DENSITY_BEFORE = 1.17;
const DENSITY_BEHIND = 1.6;

/** Pressure lost before the compressor, behind it, and in throttle or carburettor. */
export function lossesOfSheet(
  sheet: CombinationSheet,
  baseline: Baseline,
  stated: StatedModel,
  taken: Taken,
): Pick<MatchInput, 'inletLoss' | 'pipeLoss' | 'throttleLoss'> {
  const highestFlow = Math.max(...baseline.airFlow.filter(Number.isFinite));
  const flow = USUAL_RISE_OF_FLOW * highestFlow;
  const hasNoFilter = /^(none|no\b|not fitted)/.test(wordsOf(sheet, 'intake', 'airFilter'));
  const assumed = (pressureDifference: number, atDensity: number, code: string, what: string) => () => ({
    value: { pressureDifference, atFlow: flow, atDensity },
    because: remark(
      'note',
      code,
      said`${what} is not on the sheet: ${figureOf(pressureDifference, 'pressureDifference')} at ${airFlowFigure(flow)} is taken (common practice, no source).`,
    ),
  });
  return {
    inletLoss: taken.first(
      [
        stated.inletLoss,
        lossOnSheet(sheet, ['intake', 'filterLoss', 'filterLossFlow'], flow, DENSITY_BEFORE),
        hasNoFilter ? NO_LOSS : null,
      ],
      assumed(
        USUAL_INLET_LOSS,
        DENSITY_BEFORE,
        'inlet-loss-assumed',
        'The pressure lost in filter and inlet pipe',
      ),
    ),
    pipeLoss: taken.first(
      [
        stated.pipeLoss,
        lossOnSheet(sheet, ['supercharger', 'pipeLoss', 'pipeLossFlow'], flow, DENSITY_BEHIND),
      ],
      assumed(
        USUAL_PIPE_LOSS,
        DENSITY_BEHIND,
        'pipe-loss-assumed',
        'The pressure lost in the pipe behind the compressor',
      ),
    ),
    throttleLoss:
      stated.throttleLoss ??
      (stated.throttleLoss === null
        ? null
        : (lossOnSheet(sheet, ['intake', 'throttleLoss', 'throttleLossFlow'], flow, DENSITY_BEHIND) ??
          carburettorOnSheet(sheet))),
  };
}

type LossFields = [section: 'intake' | 'supercharger' | 'cooler', loss: string, flow: string];

/** A loss on the sheet; where the flow it was told at is not, it is taken at the flow given. `null`: not on the sheet. */
export function lossOnSheet(
  sheet: CombinationSheet,
  [section, loss, flow]: LossFields,
  otherwiseAt: number,
  atDensity: number,
): FlowLoss | null {
  const pressureDifference = sheetNumber(sheet, section, loss);
  const atFlow = sheetNumber(sheet, section, flow) ?? otherwiseAt;
  return pressureDifference === null ? null : lossFrom({ pressureDifference, atFlow, atDensity });
}

function carburettorOnSheet(sheet: CombinationSheet): FlowLoss | null {
  const volumeFlow = sheetNumber(sheet, 'intake', 'carburettorFlow');
  const pressureDifference = sheetNumber(sheet, 'intake', 'carburettorFlowPressure');
  return volumeFlow === null || pressureDifference === null
    ? null
    : carburettorLoss({ volumeFlow, pressureDifference });
}
