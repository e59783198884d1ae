export * from '../match-model.ts';
export { type BandsThatCame, bandsAtHand } from './bands-at-hand.ts';
export { type MapPageInput, mapCard, mapPage } from './map-page.ts';
export { bandCases } from './match-in-view.ts';
export { matchPage } from './match-page.ts';
export { noMatchLines } from './no-match.ts';
export { revivedBands, revivedBundle } from './revived.ts';
export { triedKey, whatIfCase } from './what-if-case.ts';
export { asWhatIfText, type WhatIfField, type WhatIfForm, whatIfForm } from './what-if-form.ts';
export {
  isTried,
  type WhatIfFigure,
  type WhatIfName,
  type WhatIfText,
  whatIfFromText,
} from './what-if-text.ts';
