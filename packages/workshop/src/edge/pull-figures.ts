import { MEANINGS, type Pull, type PullView } from '@pullbook/core/pull';
import { fromInside } from '@pullbook/core/quantity';
import { type EdgeTreatment, edgeFromTreatment } from '@pullbook/formats';
import { type ListView, listView } from '@pullbook/views';
import { edgeNumber, edgeRange } from './number.ts';

/** What torque and power are in, for the JSON at the edge. */
export interface EdgeCorrection {
  asked: string;
  standard: string;
  factor: number | null;
  reached: boolean;
}

/** The figures of a pull as they leave the program: kW, N·m, r/min. */
export interface PullFigures {
  name: string;
  form: 'curve' | 'summary';
  channels: { name: string; meaning: string; label: string; unit: string; count: number }[];
  /** Accepted engine speeds. */
  windowRpm: [number, number] | null;
  peakPowerKw: number | null;
  peakPowerRpm: number | null;
  peakTorqueNm: number | null;
  peakTorqueRpm: number | null;
  /** Of power: the highest figure is the last row of the sweep, so it is no peak. */
  stillClimbing: boolean;
  correction: EdgeCorrection;
  /** How the pull is read, as a person decided. */
  treatment: EdgeTreatment;
}

/** The figures of one pull through its recipe. */
export function pullFigures(pull: Pull, view: PullView): PullFigures {
  return listedFigures(pull, listView(view));
}

/** The same from what a list remembers of the view. */
export function listedFigures(pull: Pull, view: ListView): PullFigures {
  return {
    name: pull.name,
    form: pull.form,
    channels: pull.channels.map((channel) => ({
      name: channel.name,
      meaning: channel.meaning,
      label: MEANINGS[channel.meaning].label,
      unit: channel.unit,
      count: channel.values.reduce((count, value) => (Number.isFinite(value) ? count + 1 : count), 0),
    })),
    windowRpm: edgeRange(view.windowRpm),
    peakPowerKw: edgeNumber(view.peakPower && fromInside(view.peakPower.value, 'kW', 'power')),
    peakPowerRpm: edgeNumber(view.peakPower?.atRpm),
    peakTorqueNm: edgeNumber(view.peakTorque?.value),
    peakTorqueRpm: edgeNumber(view.peakTorque?.atRpm),
    stillClimbing: view.peakPower?.stillClimbing ?? false,
    correction: edgeCorrection(view.correction),
    treatment: edgeFromTreatment(pull.treatment),
  };
}

/** The correction of a view or a comparison at the edge. */
export function edgeCorrection(correction: PullView['correction']): EdgeCorrection {
  return {
    asked: correction.asked,
    standard: correction.standard,
    factor: edgeNumber(correction.factor),
    reached: correction.reached,
  };
}
