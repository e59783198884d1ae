/** What two books can both have, in the order in which each may refer to the others. */
export interface MergeKind {
  /** As the log and `withdrawn` name it. */
  kind: string;
  table: string;
  key: 'id' | 'hash' | 'fingerprint';
  /** Lines that belong to a thing, in tables of their own. */
  parts: { table: string; owner: string }[];
  /** Never altered once stored, so never compared and never taken. */
  fixed: string[];
}

const plain = (kind: string, table = kind): MergeKind => ({ kind, table, key: 'id', parts: [], fixed: [] });

export const MERGE_KINDS: readonly MergeKind[] = [
  plain('engine'),
  plain('package'),
  plain('cell'),
  // Before the combinations, whose sheets name it.
  plain('compressorMap'),
  {
    ...plain('combination'),
    parts: [{ table: 'combinationPackage', owner: 'combinationId' }],
  },
  plain('set-up', 'setUp'),
  plain('session'),
  // Bytes with the same hash are the same file, whatever it was called and whenever it came: ours stands.
  { ...plain('file'), key: 'hash', fixed: ['name', 'byteLength', 'addedAt', 'mapping'] },
  { ...plain('pull'), fixed: ['form', 'summary', 'origin', 'fileHash', 'invented', 'channelsHash'] },
  {
    ...plain('trial'),
    parts: [
      { table: 'trialCombination', owner: 'trialId' },
      { table: 'trialPull', owner: 'trialId' },
    ],
  },
  { ...plain('layout'), key: 'fingerprint' },
  plain('silenced'),
  // Never altered once made.
  {
    ...plain('prediction'),
    fixed: ['trialId', 'key', 'what', 'value', 'low', 'high', 'basis', 'at', 'curve', 'madeBy'],
  },
  // Never altered once it left the shop, but for where it appeared.
  {
    ...plain('publication'),
    fixed: [
      'trialId',
      'question',
      'sentence',
      'kinds',
      'files',
      'pullIds',
      'correction',
      'figures',
      'privateToo',
      'at',
    ],
  },
  // Never altered once answered, but for what became of its rungs and the cards that left.
  {
    ...plain('enquiry'),
    fixed: ['question', 'combinationId', 'asked', 'answer', 'pullIds', 'madeBy', 'at'],
  },
];
