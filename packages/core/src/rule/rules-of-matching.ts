import type { Rule } from './model.ts';
import { bare, COMMON_PRACTICE, FROM_MEMORY, rule, share } from './rule.ts';

/** Whether a matched supercharger, its belt and the engine get on with each other. */
export const RULES_OF_MATCHING: readonly Rule[] = [
  rule('V41', {
    title: 'Belt against its pull',
    statement:
      'What a ribbed belt has to pull at its hardest stays below what its ribs are known to hold at this wrap; where crank pulley or wrap are not known, the drive’s power below the class of its ribs. Toothed belts and V belts are not looked at.',
    places: ['match', 'plan'],
    level: 'caution',
    thresholds: [
      share('V41.near', 'Share of what the belt holds: note', 85),
      share('V41.full', 'Share of what the belt holds: caution', 100),
    ],
    provenance: {
      ...COMMON_PRACTICE,
      source: 'power by ribs: common practice, no source; grip by wrap: Euler and Eytelwein',
    },
  }),
  rule('V42', {
    title: 'Surge and choke',
    statement:
      'By the match the compressor’s flow keeps clear of the surge edge and of the largest flow of its speed line, and lies where the map was measured.',
    places: ['match', 'plan'],
    level: 'caution',
    thresholds: [
      share('V42.surge', 'Flow above the surge edge by less than', 10),
      share('V42.surgePlan', 'A plan: flow above the surge edge by less than', 0),
      bare('V42.ratio', 'Surge is looked at above a pressure ratio of', 1.2, 1),
      share('V42.choke', 'Flow below the largest by less than', 5),
    ],
    provenance: FROM_MEMORY,
  }),
  rule('V43', {
    title: 'What the drive takes',
    statement: 'By the match the drive of a centrifugal takes a share of brake power that such drives take.',
    places: ['match'],
    level: 'note',
    thresholds: [share('V43.share', 'Share of brake power above', 15)],
    provenance: {
      kind: 'derived',
      source:
        'm·cp·(T₂ − T₁)/η over usual power for the air: 5 % at 0.4 bar to 13 % at 1.4 bar; the limit: common practice, no source',
    },
  }),
];
