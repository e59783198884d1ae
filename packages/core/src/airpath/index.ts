export { gripRatio, openBeltLength, wrapOfPulleys } from './drive/belt.ts';
export { beltClassFor } from './drive/belt-class.ts';
export { type DriveFigures, driveFigures } from './drive/drive-figures.ts';
export { hasTeeth, highestImpellerSpeed, impellerSpeed, slipOf, tipSpeedOf } from './drive/impeller-speed.ts';
export { type AirOfPull, airOfPull } from './from/air-of-pull.ts';
export { airOfViewedPull } from './from/air-of-viewed-pull.ts';
export {
  baselineFromPulls,
  commonSpeeds,
  meanAir,
  observedFactor,
  readAt,
  type ViewedPull,
} from './from/from-pulls.ts';
export { matchInputOf, type SheetToMatch, withDriveOf } from './from/from-sheet.ts';
export { type BaselineTable, baselineFromTable } from './from/from-table.ts';
export { BENDS, type Bend, bendAt, SPREAD_OF_BEND } from './from/prior-bends.ts';
export { keyOfBaseline, keyOfCooler, keyOfMap, powerSpreadOf } from './from/prior-spread.ts';
export { beyondMeasured } from './map/beyond-measured.ts';
export { correctedFlow, correctedSpeed, flowFromCorrected, speedFromCorrected } from './map/corrected.ts';
export { equalEfficiency, type MapPath } from './map/equal-efficiency.ts';
export { fitMap } from './map/fit-map.ts';
export { type LineLeftOut, type LinesLeftOut, leaveLineOut } from './map/leave-line-out.ts';
export { type LineTerms, lineTerms } from './map/line-terms.ts';
export { stanitzSlip, wiesnerSlip } from './map/slip-factor.ts';
export { efficiencyOn, pressureRatioOn, speedLineAt, workRiseOn } from './map/speed-line.ts';
export { baselineAtNodes, caseAtNodes, inputAtNodes } from './match/at-nodes.ts';
export { chargeAtLoad } from './match/charge-at-load.ts';
export { troubleOfInput } from './match/input-trouble.ts';
export { bandsOfDraws, matchBands } from './match/match-bands.ts';
export { type MatchDraws, matchDraws } from './match/match-draws.ts';
export { solveMatch } from './match/solve-match.ts';
export { type OtherFuel, withFuelBehind, withOtherFuel } from './match/with-other-fuel.ts';
export * from './model.ts';
export { airFlowFigure } from './way/air-flow-figure.ts';
export { carburettorLoss } from './way/carburettor-loss.ts';
export { isentropicRise, pressureRatioFromRise } from './way/compression.ts';
export { iceMelted } from './way/cooler-ice.ts';
export { coolerRemarks } from './way/cooler-remarks.ts';
export { lossFrom, NO_LOSS, pressureLost } from './way/loss.ts';
export { chargeHeatTerm, pressureTerm } from './way/swallow.ts';
