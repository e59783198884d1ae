import type { Chip } from '@pullbook/views';

type Word = NonNullable<Chip['verdict']>;

/** A shape for each verdict, so that no colour has to tell them apart; the word beside it says the same. */
const SHAPES: Record<Word, string> = {
  clear: 'M6 1a5 5 0 1 1 0 10A5 5 0 0 1 6 1Z',
  likely: 'M6 1a5 5 0 0 1 0 10Z',
  'no-difference': 'M1.5 3h9v1.8h-9ZM1.5 7.2h9V9h-9Z',
  'within-noise': 'M0.8 7.4C2.6 3 4.4 3 6 6s3.4 3 5.2-1.4',
};

export function VerdictShape({ word }: { word: Word }) {
  const isLine = word === 'within-noise';
  return (
    <svg width="12" height="12" viewBox="0 0 12 12" aria-hidden="true">
      <path
        d={SHAPES[word]}
        fill={isLine ? 'none' : 'currentColor'}
        stroke="currentColor"
        strokeWidth={isLine ? 1.8 : 0}
        strokeLinecap="round"
      />
      {word === 'likely' && (
        <circle cx="6" cy="6" r="4.3" fill="none" stroke="currentColor" strokeWidth="1.4" />
      )}
    </svg>
  );
}
