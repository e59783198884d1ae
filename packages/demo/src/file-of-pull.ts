import type { AirReading } from '@pullbook/core/air';
import type { PullEvent } from '@pullbook/core/pull';
import type { DemoBuild } from './full-throttle.ts';
import { type FileLayout, loggerFile } from './logger-file.ts';
import type { DemoFile } from './model.ts';
import { sweepRows } from './sweep.ts';

/** One pull of the story, told in a few lines; what is left out is as usual. */
export interface PlannedPull {
  ref: string;
  build: DemoBuild;
  combinationRef: string;
  setUpRef: string;
  sessionRef: string;
  /** In its session, from 1. */
  order: number;
  /** ISO 8601 with offset */
  at: string;
  weather: AirReading;
  oilStartCelsius: number;
  /** Warmth left in the intake by the pulls before, K. */
  soak?: number;
  layout: FileLayout;
  torqueSpikeRpm?: number;
  liftRpm?: number;
  outcome?: 'aborted';
  event?: PullEvent;
  note?: string;
}

const TOP_RPM = 6524;

/** Makes the logger's file of a pull and what was written down beside it. */
export function fileOfPull(seed: number, planned: PlannedPull): DemoFile {
  const rows = sweepRows(seed, {
    ref: planned.ref,
    setUpRef: planned.setUpRef,
    build: planned.build,
    weather: planned.weather,
    oilStart: planned.oilStartCelsius + 273.15,
    coolantStart: 351.4,
    soak: planned.soak ?? 0,
    liftRpm: planned.liftRpm ?? TOP_RPM,
    torqueSpikeRpm: planned.torqueSpikeRpm ?? null,
  });
  const day = planned.at.slice(0, 10);
  const number = planned.ref.replace('pull-', '');
  return {
    name: `${day}-pull-${planned.order}.csv`,
    bytes: loggerFile(rows, planned.layout),
    pull: {
      ref: planned.ref,
      name: `Pull ${number}`,
      combinationRef: planned.combinationRef,
      setUpRef: planned.setUpRef,
      sessionRef: planned.sessionRef,
      orderInSession: planned.order,
      recordedAt: planned.at,
      cell: 'cell 1',
      operator: null,
      weather: planned.weather,
      tune: tuneOf(planned.build),
      places: {
        boostTap: 'manifold, behind the throttle',
        chargeProbe: 'manifold, cylinder 3 runner',
        inletProbe: 'in the air box',
      },
      notes: planned.note ? [{ at: planned.at, text: planned.note }] : [],
      events: planned.event ? [planned.event] : [],
      outcome: planned.outcome ?? 'completed',
      momentOfInertia: 0.32,
    },
  };
}

function tuneOf(build: DemoBuild): DemoFile['pull']['tune'] {
  return build === 'naturally aspirated'
    ? { sparkAdvance: '31 deg', targetLambda: '0.88', fuelPressure: '300 kPa' }
    : { sparkAdvance: '22 deg', targetLambda: '0.79', fuelPressure: '300 kPa', coolerWater: '26 °C' };
}
